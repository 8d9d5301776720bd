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

/// A thin run behind two fuses that carry nearly all of what shorts it, and behind eight more at the ends of long thin leads that carry
/// next to nothing. Which of them come first by their ids is no matter.
#[test]
fn fuses_that_carry_next_to_nothing_do_not_hide_those_that_carry_most() {
    let system = |thin_first: bool| {
        let mut lines = vec![
            "battery B1 agm charge=90%".to_owned(),
            "load L1 law=current current=2A".to_owned(),
            "bus X1 places=12".to_owned(),
        ];
        let thin = |at: usize| if thin_first { at < 8 } else { at >= 2 };
        let fuse = |at: usize| if thin(at) { "regular 10A" } else { "strip61 300A" };
        lines.extend((0..10).map(|at| format!("fuse F{at} {}", fuse(at))));
        for at in 0..10 {
            let lead = if thin(at) { "0.5mm2 30m" } else { "50mm2 1m" };
            lines.push(format!("run A{at} B1.+ F{at}.in 50mm2 0.1m"));
            lines.push(format!("run C{at} F{at}.out X1.{} {lead}", at + 1));
        }
        lines.push("run W1 X1.11 L1.+ 1mm2 2m insulation=105C".to_owned());
        lines.push("run W2 L1.- B1.- 16mm2 1m".to_owned());
        testkit::sheet(&lines.join("\n"))
    };
    let found = |sheet: &Sheet| {
        let study = circuit::study(sheet, &Settings::default());
        let (run, _) = sheet.run_by_tag("W1").expect("it is there");
        assert_eq!(study.protection[&run].from[0].guards.len(), 10);
        let short = study.shorts.iter().find(|short| short.run == run);
        let short = short.expect("a thin wire behind 600 A of fuses is found");
        (short.current.most.0, (short.opens, short.damaged, short.stays))
    };
    let [(amps, thick_first), (same_amps, thin_first)] =
        [false, true].map(|thin_first| found(&system(thin_first)));
    assert_ne!(thick_first.1, Certainty::No);
    assert_eq!(thick_first, thin_first);
    assert!((amps - same_amps).abs() < 1e-9 * amps, "{amps} and {same_amps}");
}
