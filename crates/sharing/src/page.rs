//! The page file: one HTML file with the program and a job in it, which opens by a double click, offline.
//!
//! The program's build writes a template, a page that carries the whole program and has one place for a job, a script
//! element of a type that browsers do not run. Here the job is put into that place and read from it.
//!
//! *Invariant:* whatever the job says, nothing of it ends the element or is read as markup. A packed job is letters, digits,
//! `-`, `_` and `=`; in the other form no `<`, `>` or `&` is left, since JSON can write each of them as `\u` and four digits.

use crate::link::{KEY, LinkError, fragment, open};
use model::Job;
use model::file::{FileError, Problem};
use std::fmt;
use words::{Saying, say};

/// Id of the element that holds the job.
pub const PAGE_PLACE: &str = "loomwright-job";
/// The place's beginning, as the template has it.
const BEGIN: &str = "<script type=\"text/plain\" id=\"loomwright-job\">";
/// The place's end.
const END: &str = "</script>";

/// Why a page file is not made, or does not open.
#[derive(Clone, Debug, PartialEq)]
pub enum PageError {
    /// It is no template: there is no place for a job, or one is in it already.
    NoTemplate,
    /// It is no page file: there is no job in it.
    NoJob,
    /// What stands in the job's place was cut short or changed.
    Damaged,
    /// It is whole, but this version does not understand it.
    NotUnderstood(Saying),
}

impl PageError {
    /// What it says to the reader.
    #[must_use]
    pub fn said(&self) -> Saying {
        match self {
            Self::NoTemplate => say!("page-no-template"),
            Self::NoJob => say!("page-no-job"),
            Self::Damaged => say!("page-damaged"),
            Self::NotUnderstood(why) => say!("page-not-understood", why = why),
        }
    }
}

impl fmt::Display for PageError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.said().fmt(out)
    }
}

impl std::error::Error for PageError {}

/// The page file: the template with the job in its place. The job goes in whole; what others may see of a job is
/// [`crate::shown`].
///
/// # Errors
/// [`PageError::NoTemplate`] where the text has no place for a job.
pub fn page(template: &str, job: &Job) -> Result<String, PageError> {
    let (before, after) = template.split_once(BEGIN).ok_or(PageError::NoTemplate)?;
    if !after.starts_with(END) {
        return Err(PageError::NoTemplate);
    }
    let carried = fragment(job).unwrap_or_else(|_| without_markup(&model::file::write(job)));
    Ok([before, BEGIN, &carried, after].concat())
}

/// What stands in the job's place of a page file, or nothing where there is no such place.
#[must_use]
pub fn carried(page: &str) -> Option<&str> {
    let (_, after) = page.split_once(BEGIN)?;
    after.split_once(END).map(|(carried, _)| carried)
}

/// The job that stands in the job's place.
///
/// A page file is input from strangers as a link is: the same limits hold, or those of a job file.
///
/// # Errors
/// [`PageError`], in words for whoever opened the page.
pub fn open_carried(carried: &str) -> Result<Job, PageError> {
    let carried = carried.trim();
    if carried.is_empty() {
        return Err(PageError::NoJob);
    }
    if carried.starts_with(KEY) {
        return open(carried).map_err(|error| match error {
            LinkError::NoJob | LinkError::NoLesson | LinkError::IsLesson | LinkError::IsJob => {
                PageError::NoJob
            }
            LinkError::TooLong | LinkError::Damaged => PageError::Damaged,
            LinkError::Newer(version) => {
                PageError::NotUnderstood(say!("page-packed", version = version.to_string()))
            }
            LinkError::NotUnderstood(why) => PageError::NotUnderstood(why),
        });
    }
    model::file::read(carried.as_bytes()).map_err(|error| {
        PageError::NotUnderstood(match error {
            // One is enough to see that the page has to be made anew.
            FileError::Damaged(problems) => problems.first().map_or_else(|| "".into(), Problem::said),
            other => other.said(),
        })
    })
}

/// JSON without any sign that HTML, or a script, would read as more than text. These signs stand only within strings
/// there, where JSON takes them as `\u` and four digits (RFC 8259, section 7).
fn without_markup(json: &str) -> String {
    let mut out = String::with_capacity(json.len());
    for letter in json.chars() {
        match letter {
            '<' => out.push_str("\\u003c"),
            '>' => out.push_str("\\u003e"),
            '&' => out.push_str("\\u0026"),
            // Ends of lines to a script, though not to JSON.
            '\u{2028}' => out.push_str("\\u2028"),
            '\u{2029}' => out.push_str("\\u2029"),
            letter => out.push(letter),
        }
    }
    out
}
