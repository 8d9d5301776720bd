//! Mends: what one would clear and bring, and all that need nobody's choice made at once.
//!
//! Both ask [`checks::analyse`] what the changed sheet is like, and hold its findings against those of before.

mod all;
mod matching;

pub use all::{Left, Mended, Step, Why, mend_all};

use checks::{Finding, Summary, analyse, mend_for, summary_of};
use matching::matched;
use model::{Edit, Job, SheetKind};

/// What a mend would do.
#[derive(Clone, Debug, PartialEq)]
pub struct Preview {
    /// Findings that would be gone, gravest first.
    pub clears: Vec<Finding>,
    /// Findings that were not there before, or less grave, gravest first.
    pub brings: Vec<Finding>,
    /// Counts of before.
    pub before: Summary,
    /// Counts of after.
    pub after: Summary,
}

/// What an edit that mends a finding of this sheet would do. `before` is what the checks say of the sheet as it is.
#[must_use]
pub fn preview(job: &Job, kind: SheetKind, before: &[Finding], mend: &Edit) -> Preview {
    let mut mended = job.clone();
    mended.apply(mend_for(job, kind, mend));
    let sheet = |job: &Job| job.sheet(kind).cloned().unwrap_or_default();
    let (was, is) = (sheet(job), sheet(&mended));
    let after = analyse(&is, &job.settings).findings;
    let matched = matched((before, &was), (&after, &is));
    let these = |findings: &[Finding], places: &[usize]| -> Vec<Finding> {
        let all = places.iter().filter_map(|place| findings.get(*place));
        all.cloned().collect()
    };
    Preview {
        clears: these(before, &matched.cleared),
        brings: these(&after, &matched.brought),
        before: summary_of(before),
        after: summary_of(&after),
    }
}
