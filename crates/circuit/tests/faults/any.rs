//! What holds on any sheet, whatever breaks.

use circuit::faults::{Certainty, Course, Faults, HORIZON, Happening};
use model::breaks::Break;
use model::quantity::{Ohms, Share};
use model::{Settings, Sheet};
use proptest::prelude::*;
use testkit::random::Dice;

fn check(course: &Course, sheet: &Sheet) {
    assert_eq!(course.scenarios.len(), 4);
    for scenario in &course.scenarios {
        let times = |all: &mut dyn Iterator<Item = f64>| {
            let mut before = 0.0;
            for time in all {
                assert!(time >= before && time <= HORIZON + 1.0, "{time} after {before}");
                before = time;
            }
        };
        times(&mut scenario.moments.iter().map(|it| it.time.0));
        times(&mut scenario.frames.iter().map(|it| it.time.0));
        assert!(!scenario.frames.is_empty());
        for frame in &scenario.frames {
            assert!(
                frame
                    .runs
                    .iter()
                    .all(|run| run.temperature.0.is_finite() && run.current.0.is_finite())
            );
            assert!(frame.devices.iter().all(|it| (0.0..=1.0).contains(&it.age.0)));
        }
        assert!(scenario.heat.is_finite() && scenario.heat >= 0.0);
        assert!(scenario.let_through.iter().all(|it| it.is_finite() && *it >= 0.0));
        assert!(scenario.margin >= 0.99, "{}", scenario.margin);
    }
    for event in &course.events {
        assert!(event.time.least.0 <= event.time.most.0);
        assert_ne!(event.certainty, Certainty::No);
    }
    for (id, run) in &course.runs {
        assert!(sheet.runs.contains_key(id));
        let passes = run.hottest.0 >= run.limit.0 - 0.1;
        assert_eq!(run.damaged != Certainty::No, passes, "{id}: {run:?}");
    }
}

#[test]
fn random_systems_break_in_every_way() {
    for seed in 0..6 {
        let sheet = testkit::random::random_system(seed, 25);
        let faults = Faults::new(&sheet, &Settings::default());
        let mut thrown = 0;
        for (at, broken) in testkit::breaks::every_break(&sheet).iter().enumerate() {
            // A third of them, another third with each seed, so that it is quick.
            if (at as u64 + seed).is_multiple_of(3)
                && let Ok(course) = faults.course(std::slice::from_ref(broken))
            {
                check(&course, &sheet);
                thrown += 1;
            }
        }
        assert!(thrown > 20, "{thrown}");
    }
}

#[test]
fn breaks_may_be_thrown_in_any_order_and_twice_over() {
    let mut random = Dice::new(7);
    for seed in 10..14 {
        let sheet = testkit::random::random_system(seed, 20);
        let faults = Faults::new(&sheet, &Settings::default());
        let can: Vec<Break> = testkit::breaks::every_break(&sheet)
            .into_iter()
            .filter(|it| matches!(it, Break::Cut { .. } | Break::Open { .. } | Break::Joined { .. }))
            .filter(|it| faults.course(std::slice::from_ref(it)).is_ok())
            .collect();
        for _ in 0..6 {
            let mut some: Vec<Break> = (0..3).map(|_| can[random.below(can.len())].clone()).collect();
            some.dedup();
            let Ok(one) = faults.course(&some) else { continue };
            check(&one, &sheet);
            some.reverse();
            let Ok(other) = faults.course(&some) else { continue };
            let told = |course: &Course| -> Vec<(Happening, Certainty)> {
                course
                    .events
                    .iter()
                    .map(|it| (it.happening.clone(), it.certainty))
                    .collect()
            };
            let (mut one, mut other) = (told(&one), told(&other));
            one.sort();
            other.sort();
            assert_eq!(one, other, "{some:?}");
        }
    }
}

/// A short that is looked at further along a wire, or through more resistance, draws less.
#[test]
fn a_short_further_off_draws_less() {
    for seed in 0..6 {
        let sheet = testkit::random::random_system(seed, 20);
        let faults = Faults::new(&sheet, &Settings::default());
        for &run in sheet.runs.keys() {
            let fault = |at: f64, through: f64| {
                let broken = Break::Grounded {
                    run,
                    at: Share(at),
                    through: Ohms(through),
                };
                let course = faults.course(&[broken]).expect("a run can be grounded");
                course.fault.map_or(0.0, |fault| fault.most.0)
            };
            assert!(fault(0.3, 0.02) <= fault(0.3, 0.0) + 1e-6, "{run}");
            let along: Vec<f64> = [0.0, 0.25, 0.5, 0.75, 1.0]
                .iter()
                .map(|at| fault(*at, 0.0))
                .collect();
            // From two sides at once the least is somewhere between; it never is the most.
            let ends = along[0].max(along[4]);
            assert!(
                along.iter().all(|it| *it <= ends * 1.001 + 1e-6),
                "{run}: {along:?}"
            );
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn no_job_makes_it_panic(job in testkit::any::any_job()) {
        for sheet in job.sheets.values() {
            let faults = Faults::new(sheet, &job.settings);
            for broken in testkit::breaks::every_break(sheet).iter().step_by(3) {
                if let Ok(course) = faults.course(std::slice::from_ref(broken)) {
                    check(&course, sheet);
                }
            }
        }
    }
}
