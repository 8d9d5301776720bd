//! What can go wrong with the browser's storage, in words for the person in front of it: what happened, and what to
//! do. The job itself is never at stake in an error here: it stands in memory, and the app goes on with it.

use super::js;
use std::fmt;
use wasm_bindgen::JsValue;

/// Why something could not be kept, or not be read back.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum StoreError {
    /// The browser lets this page keep nothing: a private window, or a setting.
    Refused {
        /// The browser's own words.
        reason: String,
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
        reason: String,
        /// What is stored, so that it can be saved as a file.
        original: String,
    },
    /// Anything else.
    Failed {
        /// The browser's own words.
        reason: String,
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
    pub(crate) fn what(&self) -> String {
        match self {
            Self::Refused { reason } => format!(
                "This browser keeps no data for this page: perhaps a private window, or storage is turned off ({reason})."
            ),
            Self::Full => "The browser's storage is full: the last change could not be kept.".to_owned(),
            Self::ChangedElsewhere => {
                "This job was changed in another tab since it was opened here.".to_owned()
            }
            Self::NewerPage => "A newer version of this page is open in another tab.".to_owned(),
            Self::Missing => "This job is not in the browser's storage any more.".to_owned(),
            Self::Unreadable { reason, .. } => {
                format!("What is stored of this job cannot be read: {reason}.")
            }
            Self::Failed { reason } => format!("The browser could not keep or read the job ({reason})."),
        }
    }

    /// What to do about it.
    pub(crate) fn what_to_do(&self) -> &'static str {
        match self {
            Self::Refused { .. } => {
                "You can go on working, but the job lives only in this tab. Save it to a file before you close it."
            }
            Self::Full => {
                "Nothing is lost yet: save the job to a file now. Then remove jobs that you no longer need, or free disk space."
            }
            Self::ChangedElsewhere => {
                "What you see here is still whole: save it to a file or as a new job, then open the other state."
            }
            Self::NewerPage => "Save the job to a file, then load this page again.",
            Self::Missing => "If it is still open here, save it to a file or as a new job.",
            Self::Unreadable { .. } => {
                "It is left as it is. Save the stored text to a file, and open an earlier copy."
            }
            Self::Failed { .. } => "Save the job to a file now, then load this page again.",
        }
    }
}

impl fmt::Display for StoreError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{} {}", self.what(), self.what_to_do())
    }
}
