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

/// What becomes of a load changes what its amplifier draws, and a clamp sees that: none of it speaks for something broken besides. By
/// the tone at its output and the clamp, on one amplifier of each kind of load: its only speaker cut off and shorted, one of two that
/// share a channel, a bridged pair, a coil of a speaker with two, a crossover.
#[test]
fn what_a_load_takes_is_no_second_fault() {
    let job = lessons::WorkedJob::of("hatchback").expect("a worked job").job();
    let sheet = job.sheet(model::SheetKind::Plan).expect("a plan");
    chased(
        sheet,
        &job.settings,
        &[
            ("W17 cut", Some("LS5")),
            ("LS5.+ joined LS5.- through 5 mohm", None),
        ],
    );
    let system = |sections: &str, speakers: &str| {
        testkit::sheet(&format!(
            "battery B1 agm 60Ah\nhead H1 speaker-outputs=0\namplifier A1 {sections} inputs=2\nfuse F1 maxi 60A\nground E1\n\
             ground E2\nvehicle V1\nrun W1 B1.+ V1.+ 35mm2 0.3m\nrun W2 V1.- B1.- 35mm2 0.3m\nrun W3 V1.30 H1.30 2.5mm2 1m\n\
             run W4 V1.15 H1.15 1mm2 1m\nrun W5 H1.31 V1.31 2.5mm2 1m\nrun W6 B1.+ F1.in 16mm2 0.3m\nrun W7 F1.out A1.+ 16mm2 4m\n\
             run W8 A1.- E1.stud 16mm2 0.5m\nrun W9 H1.rem A1.rem 0.75mm2 4m\nrun W10 H1.front-l A1.in1 0.5mm2 4m\n\
             run W11 H1.front-r A1.in2 0.5mm2 4m\n{speakers}"
        ))
    };
    let settings = model::Settings::default();
    let stereo = "sections=\"2x 75W@4ohm 110W@2ohm min 2ohm\"";
    let two = system(
        stereo,
        "speaker LS1 4ohm\nspeaker LS2 4ohm\nspeaker LS3 4ohm\nrun W12 A1.out1+ LS1.+ 2.5mm2 4m\nrun W13 A1.out1- LS1.- 2.5mm2 4m\n\
         run W14 LS1.+ LS2.+ 2.5mm2 1m\nrun W15 LS1.- LS2.- 2.5mm2 1m\nrun W16 A1.out2+ LS3.+ 2.5mm2 4m\n\
         run W17 A1.out2- LS3.- 2.5mm2 4m\n",
    );
    chased(
        &two,
        &settings,
        &[
            ("W14 cut", Some("LS2")),
            ("W12 cut", Some("LS1")),
            ("W16 cut", None),
        ],
    );
    let bridged = system(
        "sections=\"2x 75W@4ohm bridged 220W@4ohm min 4ohm\"",
        "speaker LS1 4ohm\nrun W12 A1.out1+ LS1.+ 2.5mm2 4m\nrun W13 A1.out2- LS1.- 2.5mm2 4m\n",
    );
    chased(
        &bridged,
        &settings,
        &[("W12 cut", Some("LS1")), ("LS1 dead", Some("LS1"))],
    );
    let coils = system(
        stereo,
        "speaker LS1 2ohm coils=2\nspeaker LS2 4ohm\nrun W12 A1.out1+ LS1.a+ 2.5mm2 4m\nrun W13 LS1.a- LS1.b+ 2.5mm2 0.2m\n\
         run W14 A1.out1- LS1.b- 2.5mm2 4m\nrun W15 A1.out2+ LS2.+ 2.5mm2 4m\nrun W16 A1.out2- LS2.- 2.5mm2 4m\n",
    );
    chased(
        &coils,
        &settings,
        &[
            ("W13 cut", Some("LS1")),
            ("LS1.a reversed", Some("LS1")),
            ("LS1.a+ joined LS1.a- through 5 mohm", None),
        ],
    );
    let passive = system(
        stereo,
        "crossover X1\nspeaker LS1 4ohm\nspeaker LS2 4ohm\nspeaker LS3 4ohm\nrun W12 A1.out1+ X1.in+ 2.5mm2 4m\n\
         run W13 A1.out1- X1.in- 2.5mm2 4m\nrun W14 X1.low+ LS1.+ 2.5mm2 1m\nrun W15 X1.low- LS1.- 2.5mm2 1m\n\
         run W16 X1.high+ LS2.+ 2.5mm2 1m\nrun W17 X1.high- LS2.- 2.5mm2 1m\nrun W18 A1.out2+ LS3.+ 2.5mm2 4m\n\
         run W19 A1.out2- LS3.- 2.5mm2 4m\n",
    );
    chased(
        &passive,
        &settings,
        &[
            ("W12 cut", Some("LS1")),
            ("W16 cut", Some("LS2")),
            ("X1 dead", Some("LS1")),
        ],
    );
}

/// Each fault is put in, told of by a silent speaker where one is named, and has to be named, by itself or among those that nothing tells
/// apart from it.
fn chased(sheet: &model::Sheet, settings: &model::Settings, faults: &[(&str, Option<&str>)]) {
    for (fault, speaker) in faults {
        let broken = Break::read(fault, sheet).expect("a break");
        let silent = speaker.map(|tag| Symptom::Silent(sheet.part_by_tag(tag).expect("a speaker").0));
        let it = chase_known(sheet, settings, &broken, silent.as_slice(), 1).expect("put in");
        assert!(it.named && !it.said[0].contains(" and "), "{it:?}");
        assert!(it.measured <= 25, "{it:?}");
    }
}
