//! What can go wrong with the browser's storage, in words for the person in front of it: what happened, and what to
//! do. The job itself is never at stake in an error here: it stands in memory, and the app goes on with it.

use super::js;
use std::fmt;
use wasm_bindgen::JsValue;
use words::{Saying, say};

/// Why something could not be kept, or not be read back.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum StoreError {
    /// The browser lets this page keep nothing: a private window, or a setting.
    Refused {
        /// The browser's own words, or ours where it has none.
        reason: Saying,
    },
    /// There is no room left.
    Full,
    /// Another tab wrote this job since it was opened here.
    ChangedElsewhere,
    /// Another tab runs a newer version of this page, which has changed the storage.
    NewerPage,
    /// The job is not in the storage: it was removed, or the browser's data was cleared.
    Missing,
    /// What is stored of the job cannot be read at all.
    Unreadable {
        /// Why.
        reason: Saying,
        /// What is stored, so that it can be saved as a file.
        original: String,
    },
    /// Anything else.
    Failed {
        /// The browser's own words.
        reason: Saying,
    },
}

impl StoreError {
    /// Reads an error of the browser.
    pub(super) fn of(error: &JsValue) -> Self {
        let reason = js::error_message(error);
        match js::error_name(error).as_str() {
            "QuotaExceededError" => Self::Full,
            "ConstraintError" => Self::ChangedElsewhere,
            "VersionError" => Self::NewerPage,
            "SecurityError" | "InvalidStateError" | "NotAllowedError" => Self::Refused { reason },
            _ => Self::Failed { reason },
        }
    }

    /// What happened.
    pub(crate) fn what(&self) -> Saying {
        match self {
            Self::Refused { reason } => say!("store-refused", reason = reason),
            Self::Full => say!("store-full"),
            Self::ChangedElsewhere => say!("store-changed"),
            Self::NewerPage => say!("store-newer"),
            Self::Missing => say!("store-missing"),
            Self::Unreadable { reason, .. } => say!("store-unreadable", reason = reason),
            Self::Failed { reason } => say!("store-failed", reason = reason),
        }
    }

    /// What to do about it.
    pub(crate) fn what_to_do(&self) -> Saying {
        match self {
            Self::Refused { .. } => say!("store-refused-do"),
            Self::Full => say!("store-full-do"),
            Self::ChangedElsewhere => say!("store-changed-do"),
            Self::NewerPage => say!("store-newer-do"),
            Self::Missing => say!("store-missing-do"),
            Self::Unreadable { .. } => say!("store-unreadable-do"),
            Self::Failed { .. } => say!("store-failed-do"),
        }
    }

    /// Both, for the reader.
    pub(crate) fn said(&self) -> Saying {
        say!("store-said", what = self.what(), todo = self.what_to_do())
    }
}

impl fmt::Display for StoreError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.said().fmt(out)
    }
}
