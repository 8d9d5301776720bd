//! An own lesson as a link that carries all of it.

use crate::lesson::Lesson;
use crate::{read, write};
use sharing::{Carries, LinkError, TooLong};

/// The part of a link behind the `#`, without the `#`: the whole lesson as its text, packed.
///
/// # Errors
/// [`TooLong`] where the link would be cut on its way.
pub fn lesson_fragment(lesson: &Lesson) -> Result<String, TooLong> {
    sharing::packed(Carries::Lesson, &write(lesson))
}

/// The lesson in a link: in the whole link, in what stands behind its `#`, or in the packed lesson alone. As careful as
/// [`sharing::open`]. What is half-written is not a lesson that can be given, and does not open.
///
/// # Errors
/// [`LinkError`], in words for whoever clicked on it.
pub fn open_lesson(link: &str) -> Result<Lesson, LinkError> {
    let text = sharing::unpacked(link, Carries::Lesson)?;
    read(&text).map_err(|errors| LinkError::not_understood(&errors))
}
