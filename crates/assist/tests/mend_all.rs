//! Mending everything never makes a sheet worse, is undone to the byte, and is done when it is done. What is right is not told
//! here: the checks judge before and after, and what they say is held together here by other means than the crate's own.

use assist::mending::{Why, mend_all, preview};
use checks::{CHECKS, Finding, Grade, analyse};
use model::{Job, Sheet, SheetKind};
use ordered::OrderedMap;
use testkit::faults::spoil;
use testkit::random::{Dice, random_system};

fn sheet(job: &Job) -> Sheet {
    job.sheet(SheetKind::Plan).cloned().unwrap_or_default()
}

fn findings(job: &Job) -> Vec<Finding> {
    analyse(&sheet(job), &job.settings).findings
}

fn weight(findings: &[Finding]) -> [usize; 3] {
    [Grade::Stop, Grade::Fix, Grade::Tidy].map(|grade| findings.iter().filter(|it| it.grade == grade).count())
}

/// How many findings of grade Stop and Fix there are of each check.
fn by_check(findings: &[Finding]) -> OrderedMap<(&'static str, Grade), usize> {
    let mut all = OrderedMap::new();
    for it in findings.iter().filter(|it| it.grade != Grade::Tidy) {
        *all.entry((it.check, it.grade)).or_default() += 1;
    }
    all
}

fn told(findings: &[Finding]) -> String {
    let words = words::Words::english();
    let line = |it: &Finding| format!("  {} {}: {}\n", it.grade.title(), it.check, words.say(&it.what));
    findings.iter().map(line).collect()
}

/// All that has to hold of any job; how many mends were made.
fn holds(job: &Job, what: &str) -> usize {
    let words = words::Words::english();
    let before = findings(job);
    let mended = mend_all(job, SheetKind::Plan);
    let mut after_job = job.clone();
    let undo = after_job.apply(mended.edit.clone());
    let after = findings(&after_job);
    let steps: Vec<String> = mended.steps.iter().map(|step| words.say(&step.said)).collect();
    let lists = || {
        let (before, after) = (told(&before), told(&after));
        format!("{what}:\n{before}became by {steps:#?}\n{after}")
    };

    // What it says is so.
    let left: Vec<Finding> = mended.left.iter().map(|it| it.finding.clone()).collect();
    assert_eq!(left, after, "{what}: what is left");
    assert_eq!(mended.before, checks::summary_of(&before), "{what}");
    assert_eq!(mended.after, checks::summary_of(&after), "{what}");
    assert_eq!(
        mended.steps.is_empty(),
        mended.edit.changes.is_empty(),
        "{}",
        lists()
    );

    // Never worse: the counts by grade, and of Stop and Fix the counts of each check; a Stop may have become a Fix.
    assert!(weight(&after) <= weight(&before), "{}", lists());
    assert!(
        steps.is_empty() || weight(&after) < weight(&before),
        "{}",
        lists()
    );
    let (was, is) = (by_check(&before), by_check(&after));
    for ((check, grade), number) in &is {
        let of = |grade: Grade| was.get(&(*check, grade)).copied().unwrap_or_default();
        let more = if *grade == Grade::Fix { of(Grade::Stop) } else { 0 };
        assert!(*number <= of(*grade) + more, "{check} rose. {}", lists());
    }

    // Done again it does nothing.
    let again = mend_all(&after_job, SheetKind::Plan);
    assert!(
        again.edit.changes.is_empty(),
        "{} again {:?}",
        lists(),
        again.steps
    );

    // Undone it is what it was, to the byte.
    let mut back = after_job;
    back.apply(undo);
    assert_eq!(
        model::file::write(&back),
        model::file::write(job),
        "{what}: undone"
    );
    steps.len()
}

#[test]
fn every_example_of_a_check_is_mended_and_never_made_worse() {
    let mut made = 0;
    for check in CHECKS {
        made += holds(&testkit::job(check.example), check.name);
        holds(&testkit::job(check.instead), check.name);
    }
    assert!(made >= 25, "only {made} mends were made");
}

#[test]
fn spoiled_systems_are_mended_and_never_made_worse() {
    let (mut made, mut better) = (0, 0);
    for seed in 0..40 {
        let mut dice = Dice::new(seed);
        let mut job = Job::default();
        let mut sheet = random_system(seed, 12 + 2 * (seed as usize % 12));
        let faults = 1 + dice.below(8);
        spoil(&mut sheet, &mut dice, faults);
        job.sheets.insert(SheetKind::Plan, sheet);
        let steps = holds(&job, &format!("seed {seed}"));
        made += steps;
        better += usize::from(steps > 0);
    }
    assert!(made >= 40 && better >= 20, "{made} mends on {better} sheets");
}

#[test]
fn spoiled_sound_systems_are_mended_and_never_made_worse() {
    let mut made = 0;
    let all = testkit::sound_systems::sound_systems();
    for (seed, (title, text)) in (0..).zip(all).step_by(4) {
        let mut job = testkit::job(&text);
        let mut dice = Dice::new(seed);
        let mut sheet = sheet(&job);
        spoil(&mut sheet, &mut dice, 4);
        job.sheets.insert(SheetKind::Plan, sheet);
        made += holds(&job, &title);
    }
    assert!(made >= 10, "only {made} mends were made");
}

/// A preview says what the mend does, and changes nothing.
#[test]
fn a_preview_tells_what_the_mend_does() {
    let mut seen = 0;
    for check in CHECKS {
        let job = testkit::job(check.example);
        let before = findings(&job);
        for finding in &before {
            for mend in &finding.mends {
                let preview = preview(&job, SheetKind::Plan, &before, &mend.edit);
                let mut mended = job.clone();
                mended.apply(checks::mend_for(&job, SheetKind::Plan, &mend.edit));
                let after = findings(&mended);
                assert_eq!(preview.after, checks::summary_of(&after), "{}", check.name);
                assert!(
                    preview.clears.iter().any(|it| it.check == finding.check),
                    "{}: `{}` is said to clear\n{}",
                    check.name,
                    mend.edit.name,
                    told(&preview.clears)
                );
                // What is there after is what was there, less what is cleared, and what is brought.
                assert_eq!(
                    after.len() + preview.clears.len(),
                    before.len() + preview.brings.len(),
                    "{}: {}",
                    check.name,
                    mend.edit.name
                );
                seen += 1;
            }
        }
    }
    assert!(seen >= 40, "only {seen}");
}

/// What is left says why: a size that nobody knows has to be found out.
#[test]
fn what_is_left_says_why() {
    let job = testkit::job(
        "battery B1 agm 70Ah cranking=640A\nfuse F1 strip61 60A\nload L1 power=100W\nrun W1 B1.+ F1.in 16mm2 0.3m RD\nrun W2 F1.out L1.+ size=? 2m RD\nrun W3 L1.- B1.- 16mm2 2m BK",
    );
    let mended = mend_all(&job, SheetKind::Plan);
    assert!(
        mended.left.iter().any(|it| it.why == Why::Unknown),
        "{:?}",
        mended.left
    );
}
