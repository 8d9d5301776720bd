//! The checks: what is dangerous, wrong or untidy on a sheet, each in a file of its own with its documentation,
//! limits, source and examples.
//!
//! Start at [`analyse`], the one pure function from which everything shown is derived.

mod finding;
pub use finding::*;

use circuit::Study;
use model::{Settings, Sheet};
use serde::Serialize;

/// Everything that is derived from a sheet: what the engine knows, and what the checks found, gravest first.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Analysis {
    /// What the engine knows.
    pub study: Study,
    /// What the checks found: by grade, undecided ones after decided ones, then by check name and place.
    pub findings: Vec<Finding>,
}

/// Studies a sheet and runs every check on it.
#[must_use]
pub fn analyse(sheet: &Sheet, settings: &Settings) -> Analysis {
    Analysis {
        study: circuit::study(sheet, settings),
        findings: Vec::new(),
    }
}
