//! What can go wrong with a file, in words for the person in front of it.

use crate::storage::js;
use std::fmt;
use wasm_bindgen::JsValue;

/// Why a file could not be read or written.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum FileTrouble {
    /// It is larger than what is read.
    TooLarge {
        /// Its name.
        name: String,
        /// Its size in bytes.
        bytes: f64,
        /// The most that is read.
        most: usize,
    },
    /// What was dropped is no file: a folder, a picture from a page, a piece of text.
    NoFile,
    /// More than one file was dropped.
    SeveralFiles {
        /// How many.
        count: u32,
    },
    /// The file was moved, renamed or deleted since.
    Gone,
    /// The browser or the person did not allow it.
    NotAllowed,
    /// The disk is full.
    DiskFull,
    /// Another program has it open, or it is protected.
    InUse,
    /// The drawing is too large for a picture.
    PictureTooLarge,
    /// Anything else.
    Failed {
        /// The browser's own words.
        reason: String,
    },
}

impl FileTrouble {
    pub(super) fn of(error: &JsValue) -> Self {
        match js::error_name(error).as_str() {
            "NotFoundError" => Self::Gone,
            "NotAllowedError" | "SecurityError" => Self::NotAllowed,
            "QuotaExceededError" => Self::DiskFull,
            "NoModificationAllowedError" | "InvalidStateError" | "NotReadableError" => Self::InUse,
            _ => Self::Failed {
                reason: js::error_message(error),
            },
        }
    }

    /// Whether the person closed the picker, which is no trouble.
    pub(super) fn is_cancel(error: &JsValue) -> bool {
        js::error_name(error) == "AbortError"
    }
}

impl fmt::Display for FileTrouble {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooLarge { name, bytes, most } => write!(
                out,
                "{name} has {:.1} MB; a job file may have {:.1} MB. It was not opened; is it the right file?",
                bytes / 1e6,
                *most as f64 / 1e6
            ),
            Self::NoFile => write!(
                out,
                "That is not a file. Drop one job file from your file manager here."
            ),
            Self::SeveralFiles { count } => {
                write!(out, "Those are {count} files. Drop one job file at a time.")
            }
            Self::Gone => write!(
                out,
                "The file is not there any more: it was moved, renamed or deleted. Save the job under a new name."
            ),
            Self::NotAllowed => write!(
                out,
                "The browser did not allow it. Try again and agree when it asks, or save the job under a new name."
            ),
            Self::DiskFull => write!(
                out,
                "The disk is full: the file was not written. Free some space and save again."
            ),
            Self::InUse => write!(
                out,
                "The file is in use by another program or protected. Close it there, or save the job under a new name."
            ),
            Self::PictureTooLarge => write!(
                out,
                "The browser cannot make a picture of this size. Choose a smaller scale, or export SVG."
            ),
            Self::Failed { reason } => write!(out, "The file could not be read or written ({reason})."),
        }
    }
}
