//! A fault is put into a random system and looked for with the readings of a hand meter: a small fixed set of what
//! `cargo xtask bench` reports at length. Limit by the project: named, alone or among those that nothing tells apart from it, in 95 of 100.

use assist::finding::{Finder, Symptom};
use loomwright_tests::chase::{chase, chase_known};
use model::breaks::Break;

#[test]
fn the_fault_is_named() {
    let (mut tried, mut named, mut measured) = (0, 0, 0);
    let mut missed = Vec::new();
    for seed in 20..28 {
        let Some(it) = chase(seed, 20, false) else {
            continue;
        };
        tried += 1;
        named += usize::from(it.named);
        measured += it.measured;
        assert!(!it.named || it.measured < 100, "{it:?}");
        if !it.named {
            missed.push(it);
        }
    }
    assert!(tried >= 6, "{tried} could be put in");
    assert!(
        named + 1 >= tried,
        "{named} of {tried} are named, not: {missed:?}"
    );
    assert!(measured < tried * 40, "{measured} measurements for {tried}");
}

/// What a customer tells, each with a fault that makes it: it leads to the fault, which it makes likelier at once than all else that it
/// speaks against.
#[test]
fn every_symptom_leads_to_its_fault() {
    let job = lessons::WorkedJob::of("hatchback").expect("a worked job").job();
    let sheet = job.sheet(model::SheetKind::Plan).expect("a plan");
    let part = |tag: &str| sheet.part_by_tag(tag).expect("a part").0;
    for (symptom, fault, unlikely) in [
        (Symptom::Silent(part("LS3")), "W28 cut", "W17 cut"),
        (Symptom::Off(part("A1")), "F1 open", "W22 cut"),
        (
            Symptom::Opened(part("F1"), None),
            "W12 grounded at 100 %",
            "W17 cut",
        ),
        (Symptom::Hum(part("A1")), "E1 poor 1 ohm", "W22 cut"),
    ] {
        let read = |text: &str| Break::read(text, sheet).expect("a break");
        let (broken, other) = (read(fault), read(unlikely));
        let mut finder = Finder::new(sheet, &job.settings).expect("a finder");
        let share = |finder: &Finder, broken: &Break| {
            let of = finder.ranking().into_iter();
            of.filter(|it| matches!(it.breaks.as_slice(), [one] if one.is_same_thing(broken)))
                .map(|it| it.share)
                .sum::<f64>()
        };
        let before = [share(&finder, &broken), share(&finder, &other)];
        finder.know(&[], std::slice::from_ref(&symptom));
        let after = [share(&finder, &broken), share(&finder, &other)];
        assert!(
            after[0] > 2.0 * before[0] && after[1] < before[1],
            "{symptom:?}: {fault} {before:?} -> {after:?}"
        );
        let it = chase_known(sheet, &job.settings, &broken, std::slice::from_ref(&symptom), 1);
        let it = it.expect("put in");
        assert!(it.named, "{symptom:?}: {it:?}");
        assert!(it.measured <= 25, "{symptom:?}: {it:?}");
    }
}

/// As it is, not as it should be: with its only speaker off, an amplifier draws no more than it does at rest, which the suspicions do not
/// foretell. What a clamp reads of it then speaks for something broken besides, and the cut is named together with that.
#[test]
fn an_amplifier_without_its_speaker_is_taken_for_a_second_fault() {
    let job = lessons::WorkedJob::of("hatchback").expect("a worked job").job();
    let sheet = job.sheet(model::SheetKind::Plan).expect("a plan");
    let broken = Break::read("W17 cut", sheet).expect("a break");
    let silent = Symptom::Silent(sheet.part_by_tag("LS5").expect("a speaker").0);
    let it = chase_known(sheet, &job.settings, &broken, &[silent], 1).expect("put in");
    assert!(!it.named && it.said[0].starts_with("W17 cut and "), "{it:?}");
}
