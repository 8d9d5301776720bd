//! Mending everything on what comes with the program: the worked jobs, each sheet of them, and both versions of every lesson.
//! The checks judge before and after; that mends are what the trade would do is told by the names of those made on the van.

use assist::mending::{Why, mend_all};
use checks::{Finding, Grade, analyse};
use lessons::{LESSONS, Version, WORKED_JOBS, WorkedJob};
use model::{Job, SheetKind};
use words::Words;

fn weight(findings: &[Finding]) -> [usize; 3] {
    [Grade::Stop, Grade::Fix, Grade::Tidy].map(|grade| findings.iter().filter(|it| it.grade == grade).count())
}

/// Mends a sheet: never worse, done when done, undone to the byte. How many findings of before and after.
fn holds(job: &Job, kind: SheetKind, what: &str) -> [usize; 2] {
    let found = |job: &Job| analyse(job.sheet(kind).expect("the sheet"), &job.settings).findings;
    let before = found(job);
    let mended = mend_all(job, kind);
    let mut after_job = job.clone();
    let undo = after_job.apply(mended.edit.clone());
    let after = found(&after_job);
    let names: Vec<String> = mended.steps.iter().map(|step| step.said.to_string()).collect();
    assert!(weight(&after) <= weight(&before), "{what}: {names:#?}");
    // Of Stop and Fix nothing of a check that had nothing before.
    for now in after.iter().filter(|now| now.grade != Grade::Tidy) {
        assert!(
            before
                .iter()
                .any(|it| it.check == now.check && it.grade <= now.grade),
            "{what}: {} is new after {names:#?}",
            now.check
        );
    }
    let again = mend_all(&after_job, kind);
    assert!(again.steps.is_empty(), "{what}: again {:?}", again.steps);
    after_job.apply(undo);
    assert_eq!(
        model::file::write(&after_job),
        model::file::write(job),
        "{what}: undone"
    );
    [before.len(), after.len()]
}

#[test]
fn every_worked_job_is_mended_and_never_made_worse() {
    for worked in WORKED_JOBS {
        let job = worked.job();
        for kind in job.sheets.keys() {
            holds(&job, *kind, &format!("{} {}", worked.key, kind.word()));
        }
    }
}

#[test]
fn lessons_that_are_wrong_get_better_and_those_that_are_right_stay() {
    let (mut before, mut after) = (0, 0);
    for lesson in LESSONS {
        let lesson_of = lesson.lesson();
        for version in [Version::Bad, Version::Good] {
            let job = lesson_of.taken(version, &Words::english());
            for kind in job.sheets.keys() {
                let [was, is] = holds(&job, *kind, lesson.key);
                before += was;
                after += is;
            }
        }
    }
    assert!(after * 2 < before, "{before} findings became {after}");
}

/// What an installer would do about the van's faults (common practice), and what only he can decide is left to him.
#[test]
fn the_van_is_mended_as_the_trade_would() {
    let job = WorkedJob::of("van").expect("the van").job();
    let kind = *job.sheets.keys().next().expect("a sheet");
    let mended = mend_all(&job, kind);
    let names: Vec<String> = mended.steps.iter().map(|step| step.said.to_string()).collect();
    for wanted in [
        // A fuse at the battery, none in the return, the main one close to the battery.
        "into W39",
        "Take F2 out",
        "Move F1 close to B1",
        // Live end gone, twisted ends made anew, paint off under the ground.
        "Take W45 out",
        "Remake the ends of W42",
        "Clean E1",
        // Turned on by the head unit, sides and polarity right, loads that the outputs bear, the loop-through closed.
        "Take W37 to H1.rem",
        "Swap inputs 1 and 2 of A2",
        "Swap the wires at LS2",
        "Hook up LS5 and LS6 in series",
        "Hook up LS1 in series",
        "Mate P2",
    ] {
        assert!(
            names.iter().any(|name| name.contains(wanted)),
            "{wanted}: {names:#?}"
        );
    }
    assert!(
        mended.after.stop <= 1 && mended.after.fix <= 1,
        "{:?}",
        mended.after
    );
    // Where a ground goes is for whoever sees the metal.
    let choices = mended
        .left
        .iter()
        .filter(|left| matches!(left.why, Why::Choice(_)));
    assert_eq!(choices.count(), mended.left.len(), "{:?}", mended.left);
}
