//! The quick look at the short at the far end of every run, against the whole time course of that very short.

use circuit::faults::{Certainty, Faults};
use model::breaks::Break;
use model::quantity::{Ohms, Share};
use model::{Settings, Sheet};
use testkit::random::{Dice, random_system};

/// What both say of every run of a sheet: how many were compared, and how many differ by one step of certainty.
fn compare(sheet: &Sheet, name: &str) -> (usize, usize) {
    let settings = Settings::default();
    let study = circuit::study(sheet, &settings);
    let faults = Faults::new(sheet, &settings);
    let (mut compared, mut beside) = (0, 0);
    for (id, protection) in &study.protection {
        let guarded = protection
            .from
            .iter()
            .all(|from| from.protected && !from.guards.is_empty());
        if !guarded || protection.from.is_empty() {
            continue;
        }
        let quick = study.shorts.iter().find(|short| short.run == *id);
        let quick = quick.map_or(Certainty::No, |short| short.damaged);
        // The far end is either: the worse of both. Where other wires are damaged as well, what they let through is no more what
        // the quick look reckons with.
        let mut others = false;
        let whole = [0.0, 1.0]
            .map(|at| {
                let broken = Break::Grounded {
                    run: *id,
                    at: Share(at),
                    through: Ohms(0.0),
                };
                let course = faults.course(&[broken]).expect("a run can be grounded");
                others |= course
                    .runs
                    .iter()
                    .any(|(other, run)| other != id && run.damaged != Certainty::No);
                course.runs.get(id).map_or(Certainty::No, |run| run.damaged)
            })
            .into_iter()
            .max()
            .unwrap_or_default();
        if others {
            continue;
        }
        compared += 1;
        let far = matches!(
            (quick, whole),
            (Certainty::No, Certainty::Certain) | (Certainty::Certain, Certainty::No)
        );
        assert!(
            !far,
            "{name}, run {id}: {quick:?} at once, {whole:?} in the whole course"
        );
        if quick != whole {
            beside += 1;
        }
    }
    (compared, beside)
}

#[test]
fn the_quick_look_says_what_the_whole_course_says() {
    let (mut compared, mut beside, mut found) = (0, 0, 0);
    let mut dice = Dice::new(3);
    for seed in 0..60 {
        let mut sheet = random_system(seed, 12 + dice.below(20));
        // Capacitors discharge through their own leads, which the quick look leaves out.
        sheet
            .parts
            .retain(|_, part| !matches!(part.is, model::PartKind::Capacitor(_)));
        let there = |end: &model::End| end.terminal().is_none_or(|at| sheet.parts.contains_key(&at.part));
        sheet
            .runs
            .retain(|_, run| run.ends().iter().all(|end| there(end)));
        // Slow devices and thin wires, so that there is something to find.
        for run in sheet.runs.values_mut() {
            if dice.chance(0.1) {
                run.wire.size = model::Fact::Given(model::conductor::Size::Metric(
                    model::quantity::SquareMm(dice.one(&[0.35, 0.75, 1.5])),
                ));
            }
        }
        found += circuit::study(&sheet, &Settings::default()).shorts.len();
        let (more, off) = compare(&sheet, &format!("seed {seed}"));
        compared += more;
        beside += off;
    }
    assert!(compared > 100 && found > 20, "{compared} compared, {found} found");
    assert!(beside * 20 <= compared, "{beside} of {compared} differ");
}

#[test]
fn sound_systems_have_no_run_that_burns_before_its_fuse() {
    for (name, text) in testkit::sound_systems::sound_systems() {
        let sheet = testkit::sheet(&text);
        let study = circuit::study(&sheet, &Settings::default());
        let tags: Vec<String> = study
            .shorts
            .iter()
            .map(|short| format!("{} {short:?}", sheet.runs[&short.run].tag))
            .collect();
        assert_eq!(tags, [""; 0], "{name}");
    }
}
