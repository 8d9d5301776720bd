//! The jobs that this browser keeps: the last full text of each, and a journal of what was done since, one line per
//! committed gesture. Closing or killing the tab loses at most the gesture in hand.
//!
//! Everything that writes has handed its data to the browser when it *returns*; the future it gives only tells how that
//! went, and must be awaited for that (`wasm_bindgen_futures::spawn_local`). Writes take effect in the order of the
//! calls.
//!
//! ```text
//! texts    job                -> full text, revision 7
//! journal  [job, 8], [job, 9] -> entries since           (revision 7 itself is a mark: it stands, empty)
//! jobs     job                -> title, time, revision 9
//! ```
//!
//! *Invariant:* each write of a job adds the next line to its journal, and adding fails when that line is there. So a
//! tab that has missed a write of another one cannot overwrite it, whether or not [`crate::tabs`] told it: see
//! [`StoreError::ChangedElsewhere`].

mod database;
mod error;
pub(crate) mod js;
mod keeping;
mod record;
mod restore;
mod store;

pub(crate) use error::StoreError;
pub(crate) use keeping::Keeping;
pub(crate) use record::{JobInfo, JobKey, Original};
pub(crate) use store::{Loaded, Store};
