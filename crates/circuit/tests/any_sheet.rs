//! Whatever a sheet holds, the engine answers and does not panic: random parts of all kinds, wired at random.

use circuit::solve::Level;
use model::{End, Run, RunId, Sheet, TerminalRef};
use proptest::prelude::*;
use testkit::any::{any_part, any_settings};
use testkit::random::Dice;
use words::Words;

/// Up to 24 random parts, and runs between random terminals, some of which are not there, some loose.
fn any_wiring() -> impl Strategy<Value = Sheet> {
    (
        proptest::collection::vec(any_part(), 1..24),
        any::<u64>(),
        0..60_usize,
    )
        .prop_map(|(parts, seed, runs)| {
            let mut dice = Dice::new(seed);
            let mut sheet = Sheet::default();
            let mut terminals = vec![TerminalRef::new(model::PartId(4000), "nowhere")];
            for (at, part) in parts.into_iter().enumerate() {
                let id = model::PartId(u32::try_from(at).unwrap_or(0) + 1);
                terminals.extend(part.terminals().into_iter().map(|t| TerminalRef {
                    part: id,
                    terminal: t.name,
                }));
                sheet.parts.insert(id, part);
            }
            for at in 0..runs {
                let mut end = || {
                    if dice.chance(0.03) {
                        End::Loose(model::BoardPoint::default())
                    } else {
                        let pick = dice.below(terminals.len());
                        End::On(terminals[pick].clone())
                    }
                };
                let (from, to) = (end(), end());
                let mut run = Run::new(format!("W{at}"), from, to);
                if dice.chance(0.2) {
                    run.wire.length = model::Fact::Given(model::quantity::Metres(0.0));
                    run.from_ending.resistance = model::Fact::Given(model::quantity::Ohms(0.0));
                }
                sheet.runs.insert(RunId(u32::try_from(at).unwrap_or(0)), run);
            }
            sheet
        })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn every_sheet_gets_an_answer(sheet in any_wiring(), settings in any_settings()) {
        let study = circuit::study(&sheet, &settings);
        if !matches!(study.outcome, circuit::Outcome::Failed { .. }) {
            prop_assert!(study.balance.relative_residual < 1e-6);
            for flow in study.runs.values() {
                for amps in [flow.current.mean, flow.current.rms, flow.current.burst] {
                    prop_assert!(amps.0.is_finite());
                }
                prop_assert!(flow.temperature.0.is_finite());
            }
        }
        let deck = circuit::deck(&sheet, &settings, Level::Burst);
        prop_assert!(deck.ends_with(".end\n"));
    }
}

#[test]
fn nothing_on_the_sheet() {
    let study = circuit::study(&Sheet::default(), &model::Settings::default());
    assert_eq!(study.outcome, circuit::Outcome::NothingToSolve);
}

#[test]
fn a_battery_shorted_by_a_run_is_solved_and_told() {
    let sheet = testkit::sheet("battery B1 agm\nrun W1 B1.+ B1.- 16mm2 0.3m\n");
    let study = circuit::study(&sheet, &model::Settings::default());
    assert_eq!(study.outcome, circuit::Outcome::Solved);
    let (w1, _) = sheet.run_by_tag("W1").expect("the run");
    assert!(study.runs[&w1].current.burst.0 > 500.0);
    assert!(
        study
            .notes
            .iter()
            .any(|note| Words::english().say(note).contains("shorted")),
        "{:?}",
        study.notes
    );
}

#[test]
fn an_alternator_alone_feeds_what_it_can() {
    let sheet = testkit::sheet(
        "alternator G1 14.2V 50A hot-share=100%\nload L1 law=power power=400W\nrun W1 G1.B+ L1.+ 16mm2 1m\nrun W2 L1.- G1.case 16mm2 1m\n",
    );
    let study = circuit::study(&sheet, &model::Settings::default());
    assert_eq!(study.outcome, circuit::Outcome::Solved);
    let more = testkit::sheet(
        "alternator G1 14.2V 50A hot-share=100%\nload L1 law=power power=800W\nrun W1 G1.B+ L1.+ 16mm2 1m\nrun W2 L1.- G1.case 16mm2 1m\n",
    );
    let study = circuit::study(&more, &model::Settings::default());
    assert!(
        matches!(study.outcome, circuit::Outcome::Collapsed { .. }),
        "{:?}",
        study.outcome
    );
}

#[test]
fn a_run_to_a_terminal_that_is_not_there_is_loose_and_told() {
    let mut sheet = testkit::sheet("battery B1 agm\nload L1\nrun W1 B1.+ L1.+ 2.5mm2 1m\n");
    for run in sheet.runs.values_mut() {
        run.to = End::On(TerminalRef::new(model::PartId(99), "+"));
    }
    let study = circuit::study(&sheet, &model::Settings::default());
    assert!(
        study
            .notes
            .iter()
            .any(|note| Words::english().say(note).contains("loose")),
        "{:?}",
        study.notes
    );
}
