//! The checks: what is dangerous, wrong or untidy on a sheet, each in a file of its own with its documentation,
//! limits, source and examples.
//!
//! Start at [`analyse`], the one pure function from which everything shown is derived; [`CHECKS`] lists the checks.
//! A check reads the engine's [`Study`] and the sheet, and adds [`Finding`]s. *Invariant:* one finding for each cause,
//! not for each symptom: checks run causes first, and a later one looks at what was already found.

mod asks;
mod checks;
mod context;
mod explain;
mod finding;
mod findings;
mod guarding;
mod lie;
mod limits;
mod mends;
mod places;
mod registry;
mod suited;
mod unprotected;
mod wires;
mod wiring;
mod wording;

pub use asks::{Asks, DeviceAsks, LeadAsks, RunAsks, asks};
pub use checks::terminal_overfull::fits;
pub use explain::{Explanation, LimitLine, care, explain, explain_all, explanation_of};
pub use finding::*;
pub use limits::{LimitInForce, limit, limits_in_force};
pub use mends::mend_for;
pub use registry::{CHECKS, Check, CheckGroup, check_named};
pub use suited::suited;
pub use wires::renewed;

use context::{Ctx, SheetCtx};
use findings::Findings;
use registry::BESIDE;

use circuit::Study;
use model::{Settings, Sheet};
use serde::Serialize;
use std::borrow::Cow;

/// Everything that is derived from a sheet: what the engine knows, and what the checks found, gravest first.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Analysis {
    /// What the engine knows.
    pub study: Study,
    /// What the checks found: by grade, undecided ones after decided, then by check name and place.
    pub findings: Vec<Finding>,
}

/// Studies a sheet, laid in the vehicle's body where the settings tell one, and runs every check on it.
#[must_use]
pub fn analyse(sheet: &Sheet, settings: &Settings) -> Analysis {
    analyse_in(sheet, settings, sheet.parts.len() >= circuit::MANY_PARTS)
}

/// The same, with what can be done side by side or one after the other.
fn analyse_in(sheet: &Sheet, settings: &Settings, side_by_side: bool) -> Analysis {
    let laid = body::lay(sheet, settings);
    // What checks ask of the sheet alone is looked up while the engine works. The engine has moments in which it waits for itself.
    let (study, on) = circuit::beside(
        side_by_side,
        || circuit::study_laid(&laid, settings),
        || SheetCtx::of(&laid, settings),
    );
    let mut findings = judge_by(&Ctx::studied(on, &study), side_by_side);
    if let Cow::Owned(_) = laid {
        for mend in findings.iter_mut().flat_map(|finding| &mut finding.mends) {
            body::settle(&mut mend.edit, sheet);
        }
    }
    Analysis { study, findings }
}

/// Runs every check on a sheet that [`body::lay`] made and of which the engine's answer is at hand.
#[must_use]
pub fn judge(sheet: &Sheet, settings: &Settings, study: &Study) -> Vec<Finding> {
    let side_by_side = sheet.parts.len() >= circuit::MANY_PARTS;
    judge_by(&Ctx::new(sheet, settings, study), side_by_side)
}

/// The same, with what can be looked at side by side or one after the other.
fn judge_by(ctx: &Ctx<'_>, side_by_side: bool) -> Vec<Finding> {
    let run = |checks: &[&Check], findings: &mut Findings| {
        for check in checks {
            if !ctx.settings.allowed.contains(check.name) {
                (check.run)(ctx, findings);
            }
        }
    };
    let mut findings = Findings::default();
    if !side_by_side {
        run(CHECKS, &mut findings);
        return findings.sorted();
    }
    let [here, there] = BESIDE.map(|checks| {
        move || {
            let mut findings = Findings::default();
            run(checks, &mut findings);
            findings
        }
    });
    let (own, others) = circuit::beside(true, here, there);
    findings.take_in(own);
    findings.take_in(others);
    let is_done = |check: &&Check| {
        BESIDE
            .iter()
            .any(|list| list.iter().any(|it| it.name == check.name))
    };
    let left: Vec<&Check> = CHECKS.iter().copied().filter(|check| !is_done(check)).collect();
    run(&left, &mut findings);
    findings.sorted()
}

/// How many findings there are of each grade, as the title block shows it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Summary {
    /// Of grade Stop, undecided ones included.
    pub stop: usize,
    /// Of grade Fix, undecided ones included.
    pub fix: usize,
    /// Of grade Tidy, undecided ones included.
    pub tidy: usize,
    /// Undecided ones among all of these.
    pub undecided: usize,
}

/// Counts the findings of an analysis.
#[must_use]
pub fn summary(analysis: &Analysis) -> Summary {
    summary_of(&analysis.findings)
}

/// Counts findings.
#[must_use]
pub fn summary_of(findings: &[Finding]) -> Summary {
    let count = |grade| findings.iter().filter(|f| f.grade == grade).count();
    Summary {
        stop: count(Grade::Stop),
        fix: count(Grade::Fix),
        tidy: count(Grade::Tidy),
        undecided: findings.iter().filter(|f| f.undecided).count(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn side_by_side_or_not_the_same_is_found() {
        let random = (0..40).map(|seed| testkit::random::random_system(seed, 20 + 10 * seed as usize));
        let examples = CHECKS
            .iter()
            .flat_map(|check| [check.example, check.instead])
            .flat_map(|text| testkit::job(&text.replace("#~", "#")).sheets.into_values());
        let mut found = 0;
        for sheet in random.chain(examples) {
            let settings = Settings::default();
            let [together, in_turn] =
                [true, false].map(|side_by_side| analyse_in(&sheet, &settings, side_by_side));
            let tags: Vec<&str> = sheet.parts.values().map(|part| part.tag.as_str()).collect();
            assert_eq!(together.findings, in_turn.findings, "{tags:?}");
            assert!(together.study == in_turn.study, "{tags:?}");
            found += in_turn.findings.len();
        }
        assert!(found > 500, "{found} findings are few to compare");
    }
}
