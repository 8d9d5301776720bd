//! The speaker and signal side of any sheet at all: it answers, the answers are finite and whole, and the way a run is
//! drawn does not matter.

use circuit::Signal;
use circuit::signal::study_signal;
use circuit::speakers::{Speakers, speaker_deck, study_speakers};
use model::{End, PartKind, Run, RunId, Settings, Sheet, TerminalRef};
use proptest::prelude::*;
use words::Words;

fn study(sheet: &Sheet) -> (Speakers, Signal) {
    let settings = Settings::default();
    let speakers = study_speakers(sheet, &settings);
    let signal = study_signal(sheet, &settings, &speakers);
    (speakers, signal)
}

/// What must hold of every answer.
fn holds(sheet: &Sheet) -> Result<(), TestCaseError> {
    let (speakers, signal) = study(sheet);
    prop_assert_eq!(
        &(speakers.clone(), signal.clone()),
        &study(sheet),
        "the same sheet, two answers"
    );
    for load in &speakers.channels {
        for (name, number) in [
            ("nominal", load.nominal.map(|it| it.0)),
            ("least", load.least.map(|it| it.0)),
            ("dc", load.dc_resistance.map(|it| it.0)),
            ("minimum", load.minimum.map(|it| it.0)),
            ("power", load.power.map(|it| it.0)),
            ("mean", Some(load.mean_power.0)),
        ] {
            let number = number.unwrap_or(0.0);
            prop_assert!(number.is_finite() && number >= 0.0, "{} is {}", name, number);
        }
        prop_assert!(
            load.curve
                .iter()
                .all(|(at, ohms)| at.0.is_finite() && ohms.0.is_finite() && ohms.0 >= 0.0)
        );
        prop_assert!(load.runs.iter().all(|run| sheet.runs.contains_key(run)));
    }
    let count = sheet
        .parts
        .values()
        .filter(|part| matches!(part.is, PartKind::Speaker(_)))
        .count();
    prop_assert_eq!(speakers.drivers.len(), count);
    for driver in speakers.drivers.values() {
        prop_assert_eq!(driver.plays, driver.gap.is_none());
        prop_assert_eq!(driver.plays, driver.in_phase.is_some());
        prop_assert_eq!(driver.plays, driver.channel.is_some());
        prop_assert!(driver.power.0.is_finite() && driver.power.0 >= 0.0 && driver.lead_loss.0 >= 0.0);
        if let Some(gap) = &driver.gap {
            prop_assert!(Words::english().knows(gap.what.key()) && (gap.part.is_some() || gap.run.is_some()));
        }
    }
    for fed in &signal.inputs {
        prop_assert_eq!(fed.level_fits.is_none(), fed.by.is_empty());
    }
    prop_assert!(
        signal
            .turn_on_outputs
            .iter()
            .all(|it| it.asked.0.is_finite() && it.asked.0 >= 0.0)
    );
    let deck = speaker_deck(sheet, &Settings::default());
    prop_assert!(deck.ends_with(".end\n") && !deck.contains("NaN") && !deck.contains("inf"));
    Ok(())
}

const PARTS: &str = "battery B1
vehicle V1
ground E1
amplifier A1 sections=\"4x 75W@4ohm 110W@2ohm min 2ohm bridged 220W@4ohm min 4ohm hp 80Hz; 1x 300W@2ohm min 2ohm lp 80Hz\" inputs=5
amplifier A2 sections=\"2x 100W@4ohm min 2ohm bridged 200W@4ohm\" floating=no inputs=2 turn-on=either
head H1
processor N1
line-converter LC1 powered=yes
speaker LS1 4ohm
speaker LS2 2ohm coils=2 sub
speaker LS3 8ohm inductance=0.5mH tweeter
speaker LS4 4ohm coils=2 dc-resistance=2ohm
crossover Z1 order=1
crossover Z2 order=2
inline-capacitor CS1
plug P1 cavities=\"1; 2; 3; 4\" loops=\"1-3 2-4\"
plug P2 cavities=\"1; 2\" mated=no loops=\"1-2\"
adapter PA1 cavities=\"1; 2\"
splice J1 places=6
bus X1 places=6
fuse F1 regular 5A
fuse F2 regular 5A open
switch S1
relay K1
load L1 power power=10W
";

/// Runs between terminals taken at random, so that everything may hang on everything.
fn any_wiring() -> impl Strategy<Value = Sheet> {
    let parts = testkit::sheet(PARTS);
    let terminals: Vec<TerminalRef> = parts
        .parts
        .iter()
        .flat_map(|(id, part)| {
            part.terminals().into_iter().map(|t| TerminalRef {
                part: *id,
                terminal: t.name,
            })
        })
        .chain([
            TerminalRef::new(model::PartId(999), "+"),
            TerminalRef::new(model::PartId(1), "no-such"),
        ])
        .collect();
    // Where sound is made counts more: legs and coils are taken twice as often.
    let busy: Vec<TerminalRef> = terminals
        .iter()
        .filter(|at| {
            parts.role(at).is_some_and(|role| {
                matches!(
                    role,
                    model::Role::SpeakerOut { .. } | model::Role::Coil { .. } | model::Role::SpeakerThrough
                )
            })
        })
        .cloned()
        .collect();
    let all: Vec<TerminalRef> = terminals.into_iter().chain(busy.clone()).chain(busy).collect();
    let end = prop_oneof![
        30 => proptest::sample::select(all).prop_map(End::On),
        1 => Just(End::Loose(model::BoardPoint { x: 0, y: 0 })),
    ];
    let run = (end.clone(), end, 0_u32..20, 0.0..5.0_f64);
    proptest::collection::vec(run, 0..60).prop_map(move |runs| {
        let mut sheet = parts.clone();
        for (number, (from, to, cut, length)) in (1_u32..).zip(runs) {
            let mut run = Run::new(format!("W{number}"), from, to);
            run.wire.length = model::Fact::Given(model::quantity::Metres(length));
            if cut == 0 {
                run.wire.condition = model::Fact::Given(model::conductor::Condition::Cut);
            }
            sheet.runs.insert(RunId(number), run);
        }
        sheet
    })
}

/// A failing sheet as text, to be read and kept.
fn text_of(sheet: &model::Sheet) -> String {
    let mut job = model::Job::default();
    job.sheets.insert(model::SheetKind::Plan, sheet.clone());
    model::text::print(&job)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 40, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_job_gets_an_answer(job in testkit::any::any_job()) {
        for sheet in job.sheets.values() {
            holds(sheet)?;
        }
    }

    #[test]
    fn any_wiring_gets_an_answer(sheet in any_wiring()) {
        holds(&sheet)?;
    }

    #[test]
    fn the_direction_in_which_a_run_is_drawn_does_not_matter(sheet in any_wiring()) {
        let ((a, signal_a), (b, signal_b)) = (study(&sheet), study(&turned(&sheet)));
        prop_assert_eq!(signal_a.inputs, signal_b.inputs);
        prop_assert_eq!(signal_a.turn_on_outputs, signal_b.turn_on_outputs);
        prop_assert_eq!(a.channels.len(), b.channels.len());
        for (one, other) in a.channels.iter().zip(&b.channels) {
            prop_assert_eq!(&one.drivers, &other.drivers);
            prop_assert_eq!(&one.remarks, &other.remarks, "{}", text_of(&sheet));
            let (x, y) = (one.nominal.map_or(0.0, |it| it.0), other.nominal.map_or(0.0, |it| it.0));
            prop_assert!((x - y).abs() <= 1e-6 * x.abs().max(y.abs()), "{} {}", x, y);
        }
        for (one, other) in a.drivers.values().zip(b.drivers.values()) {
            prop_assert_eq!(one.plays, other.plays);
            prop_assert_eq!(one.gap.as_ref().map(|it| &it.what), other.gap.as_ref().map(|it| &it.what));
        }
    }
}

/// Where every loop is open the only currents are those of rounding, which may not be told as leads that are shared.
#[test]
fn open_loops_share_nothing() {
    let text = "amplifier A1 sections=\"4x 75W@4ohm min 2ohm; 1x 300W@2ohm min 2ohm\" inputs=5\nhead H1\nspeaker LS2 2ohm coils=2 sub\nspeaker LS3 8ohm 0.0005H tweeter\n\
        run W1 LS3.+ LS2.a+ 0m\nrun W2 A1.out1+ H1.fl+ 0m\nrun W3 A1.out5+ LS3.+ 0m\nrun W4 LS2.a+ A1.out1- 0m\nrun W6 A1.out5- A1.out2+ 3.849613649839412m\nrun W7 H1.rr+ A1.out5- 0.26387632035542136m\n";
    let sheet = testkit::text::sheet(text);
    for (load, turned) in study(&sheet)
        .0
        .channels
        .iter()
        .zip(study(&turned(&sheet)).0.channels)
    {
        assert_eq!(load.remarks, turned.remarks);
        assert!(
            load.remarks
                .iter()
                .all(|remark| !Words::english().say(remark).contains("shared")),
            "{:?}",
            load.remarks
        );
    }
}

/// The sheet with every run drawn from its other end.
fn turned(sheet: &model::Sheet) -> model::Sheet {
    let mut turned = sheet.clone();
    for run in turned.runs.values_mut() {
        std::mem::swap(&mut run.from, &mut run.to);
    }
    turned
}
