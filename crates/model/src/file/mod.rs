//! The job file: JSON with sorted keys, `*.loom.json`, read with suspicion and written so that one changed property is
//! one changed line.
//!
//! ```json
//! {
//!   "format": "loomwright-job",
//!   "sheets": { "plan": { "parts": { "p1": { … } }, "runs": { … } } },
//!   "settings": { … },
//!   "title": "…",
//!   "vehicle": { … },
//!   "version": 2
//! }
//! ```
//!
//! [`read`] takes a whole and sound file or none of it. [`read_lenient`] opens what a damaged one still holds, tells
//! what it had to leave out, and keeps that in the job under `unread`, so that saving loses nothing. Neither reads a
//! file of a newer version, not even in part. An older one is brought up step by step, see [`migrations`].

mod check;
mod json;
pub mod migrations;
mod salvage;

pub use check::check;
pub(crate) use json::parse as parse_json;
pub use migrations::VERSION;

use crate::job::Job;
use crate::json::{FromJson, ToJson};
use serde_json::Value;
use std::fmt;
use words::{Saying, Value as Word, say};

/// What the file says it is.
pub const FORMAT: &str = "loomwright-job";

/// Name of the field that keeps what could not be read, by its place.
pub const UNREAD: &str = "unread";

/// Something in a file that is not as it should be.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem {
    /// Where: `sheets.plan.parts.p3.is.fuse.rating`.
    pub place: String,
    /// What is wrong with it, and what it takes instead.
    pub message: Saying,
    /// Whether it had to be left out of the job, or replaced; it is then kept under [`UNREAD`]. Otherwise it is in the
    /// job as it stood, and only worth knowing.
    pub left_out: bool,
}

impl Problem {
    /// Where, and what.
    #[must_use]
    pub fn said(&self) -> Saying {
        say!("file-problem", place = &self.place, what = &self.message)
    }
}

impl fmt::Display for Problem {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.said().fmt(out)
    }
}

/// Why a file could not be opened.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FileError {
    /// It is larger than [`crate::limits::LARGEST_FILE`].
    TooLarge {
        /// Its size.
        bytes: usize,
    },
    /// It is not UTF-8.
    NotText {
        /// The first byte that is not, counted from 0.
        byte: usize,
    },
    /// It is not JSON.
    NotJson {
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
        /// What is wrong there.
        message: Saying,
    },
    /// It is JSON, but hostile or corrupt in its build: a key twice, nested too deep, too many values.
    Misbuilt {
        /// Where.
        place: String,
        /// What is wrong there.
        message: Saying,
    },
    /// It is not a job.
    NotAJob {
        /// What it lacks.
        message: Saying,
    },
    /// A newer version made it.
    Newer {
        /// Which.
        version: u64,
    },
    /// Parts of it could not be read. [`read_lenient`] opens the rest.
    Damaged(Vec<Problem>),
}

impl FileError {
    /// What it says to the reader.
    #[must_use]
    pub fn said(&self) -> Saying {
        match self {
            Self::TooLarge { bytes } => say!(
                "job-file-too-large",
                bytes = *bytes,
                most = crate::limits::LARGEST_FILE
            ),
            Self::NotText { byte } => say!("job-file-no-text", byte = *byte),
            Self::NotJson {
                line,
                column,
                message,
            } => say!("job-file-no-json", line = *line, column = *column, why = message),
            Self::Misbuilt { place, message } if place.is_empty() => {
                say!("job-file-misbuilt", why = message)
            }
            Self::Misbuilt { place, message } => {
                say!(
                    "job-file-misbuilt",
                    why = say!("file-problem", place = place, what = message)
                )
            }
            Self::NotAJob { message } => say!("job-file-no-job", why = message),
            Self::Newer { version } => say!(
                "job-file-newer",
                version = version.to_string(),
                reads = VERSION.to_string()
            ),
            Self::Damaged(problems) => {
                let count = problems.len();
                let mut shown: Vec<Saying> = problems.iter().take(20).map(Problem::said).collect();
                if count > shown.len() {
                    shown.push(say!("file-problems-more", count = count - shown.len()));
                }
                say!(
                    "job-file-damaged",
                    count = count,
                    problems = Word::Joined(shown, "\n  ")
                )
            }
        }
    }
}

impl fmt::Display for FileError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.said().fmt(out)
    }
}
impl std::error::Error for FileError {}

/// A job and what was not as it should be in its file.
#[derive(Clone, Debug, PartialEq)]
pub struct Opened {
    /// The job, without what could not be read.
    pub job: Job,
    /// What was found, in the order of the file.
    pub problems: Vec<Problem>,
    /// The version that wrote the file.
    pub version: u32,
}

impl Opened {
    /// True when something had to be left out: such a file must not be overwritten unasked.
    #[must_use]
    pub fn is_damaged(&self) -> bool {
        self.problems.iter().any(|problem| problem.left_out)
    }
}

/// Reads a job file, whole or not at all. What is readable but odd, as a run on a part that is not there, is kept: see
/// [`check`].
///
/// # Errors
/// Why it cannot be read, with the place.
pub fn read(bytes: &[u8]) -> Result<Job, FileError> {
    let opened = read_lenient(bytes)?;
    if opened.is_damaged() {
        let mut problems = opened.problems;
        problems.retain(|problem| problem.left_out);
        return Err(FileError::Damaged(problems));
    }
    Ok(opened.job)
}

/// Reads a file that is part of the program, as [`write()`] wrote it at this version. Nothing in it is repaired or held against
/// limits; a file from outside is read by [`read`] or [`read_lenient`]. So the page's first picture does without what those need.
///
/// # Errors
/// Why it is no such file.
pub fn read_own(bytes: &[u8]) -> Result<Job, FileError> {
    let misread = |message| FileError::NotAJob { message };
    let mut value = json::parse(bytes)?;
    if let Some(top) = value.as_object_mut() {
        top.remove("format");
        let version = top.remove("version");
        if version != Some(VERSION.into()) {
            return Err(misread(say!("file-no-version", version = VERSION.to_string())));
        }
    }
    Job::from_json(&value).map_err(|error| misread(error.said()))
}

/// Reads what can be read of a job file. What cannot is told, and kept in the job under [`UNREAD`] by its place.
///
/// # Errors
/// When there is nothing to be read: not JSON, not a job, too large, or of a newer version.
pub fn read_lenient(bytes: &[u8]) -> Result<Opened, FileError> {
    let value = json::parse(bytes)?;
    let Value::Object(mut top) = value else {
        return Err(FileError::NotAJob {
            message: say!("file-no-object"),
        });
    };
    match top.get("format") {
        Some(Value::String(format)) if format == FORMAT => {}
        _ => {
            return Err(FileError::NotAJob {
                message: say!("file-no-format", format = FORMAT),
            });
        }
    }
    let version = match top.get("version") {
        Some(Value::Number(number)) => number.as_u64(),
        _ => None,
    };
    let Some(version) = version else {
        let message = say!("file-no-version", version = VERSION.to_string());
        return Err(FileError::NotAJob { message });
    };
    let version = match u32::try_from(version) {
        Ok(known) if known <= VERSION => known,
        _ => return Err(FileError::Newer { version }),
    };
    migrations::bring_up(&mut top, version);
    top.remove("format");
    top.remove("version");
    let (job, problems) = salvage::job(top)?;
    Ok(Opened {
        job,
        problems,
        version,
    })
}

/// The file of a job: keys sorted, two spaces deep, a line break at the end. Equal jobs give equal files.
#[must_use]
pub fn write(job: &Job) -> String {
    let mut value = job.to_json();
    if let Value::Object(top) = &mut value {
        top.insert("format".to_owned(), FORMAT.into());
        top.insert("version".to_owned(), VERSION.into());
    }
    // With `#` the value prints itself indented by two spaces.
    format!("{value:#}\n")
}
