//! A job in other people's hands: a link that carries the whole job inside itself, behind the `#`, where no server ever
//! sees it; the printed code of that link; and a page file that carries job and program.
//!
//! *How it is packed.* The job's text form is what is carried, since it is small, complete and stable. [`fragment`] predicts
//! it bit by bit and writes down only by how much the prediction missed (arithmetic coding over a mix of context models).
//! Before the first bit the predictor reads a dictionary made for jobs, so that it knows the words and habits of the text
//! form. A general compressor with the same dictionary takes about twice the room.
//!
//! *Beyond a link.* [`page`] puts a job of any size into a page file: one HTML file that carries the program too and opens
//! offline.
//!
//! *Lessons.* The text of an instructor's own lesson is packed in the same way, under a word of its own, so that nobody takes
//! the one for the other: `#job=…` is a drawing, `#own-lesson=…` a lesson. What a lesson is, this crate does not know.
//!
//! *What stays out.* [`Showing`] says what of a job is private; [`shown`] makes the job that others get, and tells what was
//! left out.
//!
//! *Old links open for ever.* The first byte is the version; a version's dictionary and predictor never change. When the
//! text form changes its meaning, or packing can be bettered, a new version stands beside the old ones; links of all
//! versions are kept in `tests/links`.

mod address;
mod code;
mod coder;
mod line;
mod link;
mod page;
mod predictor;
mod showing;

pub use address::{Address, AddressError};
pub use code::{Code, LONGEST_CODE};
pub use link::{
    Carries, KEY, LESSON_KEY, LONGEST_LINK, LinkError, TooLong, carries, fragment, open, packed, unpacked,
};
pub use page::{PAGE_PLACE, PageError, carried, open_carried, page};
pub use showing::{LeftOut, Showing, shown};
