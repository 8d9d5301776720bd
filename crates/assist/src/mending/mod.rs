//! Mends: what one would clear and bring, and all that need nobody's choice made at once.
//!
//! Both ask [`checks::analyse`] what the changed sheet is like, and hold its findings against those of before.

mod all;
mod matching;

pub use all::{Left, Mended, Mending, Step, Why, mend_all};

use checks::{Finding, Summary, analyse, check_named, mend_for, summary_of};
pub(crate) use matching::matched;
use model::{Edit, Job, SheetKind};
use ordered::OrderedMap;
use words::{Saying, say};

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

impl Preview {
    /// What it clears and what it would bring, in two sentences.
    #[must_use]
    pub fn said(&self) -> [Saying; 2] {
        let brings = if self.brings.is_empty() {
            say!("mending-brings-nothing")
        } else {
            say!("mending-brings", findings = named(&self.brings))
        };
        [say!("mending-clears", findings = named(&self.clears)), brings]
    }
}

/// Findings by the titles of their checks, each once with how often it is, in the order of the first.
#[must_use]
pub fn named(findings: &[Finding]) -> Vec<Saying> {
    let mut counts: OrderedMap<&str, usize> = OrderedMap::new();
    let mut order: Vec<&str> = Vec::new();
    for finding in findings {
        let count = counts.entry(finding.check).or_default();
        *count += 1;
        if *count == 1 {
            order.push(finding.check);
        }
    }
    let said = order.into_iter().map(|name| {
        let title = check_named(name).map_or_else(|| name.into(), |check| check.title());
        match counts.get(name) {
            Some(count) if *count > 1 => say!("mending-of-several", what = title, count = *count),
            _ => say!("mending-of-one", what = title),
        }
    });
    said.collect()
}

/// How counts by grade change.
#[must_use]
pub fn counts(before: Summary, after: Summary) -> Saying {
    say!(
        "mending-counts",
        stop = before.stop,
        stop_after = after.stop,
        fix = before.fix,
        fix_after = after.fix,
        tidy = before.tidy,
        tidy_after = after.tidy,
    )
}
