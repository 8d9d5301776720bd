//! What can go wrong with a file, in words for the person in front of it.

use crate::storage::js;
use std::fmt;
use wasm_bindgen::JsValue;
use words::{Saying, Unit, precise, say};

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
        reason: Saying,
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

impl FileTrouble {
    /// What it is and what to do, for the reader.
    pub(crate) fn said(&self) -> Saying {
        let millions = |bytes: f64| precise(bytes / 1e6, Unit::Plain("MB"), 1);
        match self {
            Self::TooLarge { name, bytes, most } => say!(
                "file-too-large",
                name = name,
                size = millions(*bytes),
                most = millions(*most as f64)
            ),
            Self::NoFile => say!("file-none"),
            Self::SeveralFiles { count } => say!("file-several", count = count.to_string()),
            Self::Gone => say!("file-gone"),
            Self::NotAllowed => say!("file-not-allowed"),
            Self::DiskFull => say!("file-disk-full"),
            Self::InUse => say!("file-in-use"),
            Self::PictureTooLarge => say!("file-picture-too-large"),
            Self::Failed { reason } => say!("file-failed", reason = reason),
        }
    }
}

impl fmt::Display for FileTrouble {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.said().fmt(out)
    }
}
