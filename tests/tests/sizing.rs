//! Sizes against an integer programme: trees too large to try all there is, solved anew by another library
//! (`tests/python/least_metal.py`, HiGHS). Loads of constant current, so that what flows does not depend on sizes.

use assist::sizing::{Ask, size};
use circuit::{Conductor, device_resistance};
use loomwright_tests::python::run_with_scipy;
use model::conductor::{METRIC_SERIES, Size};
use model::quantity::SquareMm;
use model::{Fact, Job, RunId, SheetKind};
use std::fmt::Write as _;
use testkit::random::Dice;

const FUSE: f64 = 60.0;

/// A battery, a fuse, a bus, some buses beyond it, and loads on those; their returns meet in one.
fn system(seed: u64) -> String {
    let mut dice = Dice::new(seed);
    let mut text = format!(
        "battery B1 agm 90Ah cranking=800A\nfuse F1 maxi {FUSE}A rating-locked=yes\nbus X1 places=8\n\
         bus X9 places=12\nrun W1 B1.+ F1.in 35mm2 0.3m RD copper\nrun W2 F1.out X1.1 35mm2 {:.1}m RD copper\n\
         run W3 X9.1 B1.- 35mm2 {:.1}m BK copper\n",
        dice.between(1.0, 4.0),
        dice.between(0.5, 2.0)
    );
    let (mut run, mut load) = (4, 1);
    for branch in 0..3 {
        let bus = branch + 2;
        let _ = write!(
            text,
            "bus X{bus} places=8\nrun W{run} X1.{} X{bus}.1 35mm2 {:.1}m RD copper\n",
            branch + 2,
            dice.between(1.0, 5.0)
        );
        run += 1;
        for place in 2..5 {
            let _ = write!(
                text,
                "load L{load} {:.1}A\nrun W{run} X{bus}.{place} L{load}.+ 35mm2 {:.1}m RD copper\n\
                 run W{} L{load}.- X9.{} 35mm2 {:.1}m BK copper\n",
                dice.between(2.0, 6.0),
                dice.between(0.5, 4.0),
                run + 1,
                load + 1,
                dice.between(1.0, 6.0)
            );
            run += 2;
            load += 1;
        }
    }
    text
}

/// Copper, in mm²·m.
fn metal(job: &Job) -> f64 {
    let sheet = job.sheet(SheetKind::Plan).expect("a plan");
    let runs = sheet.runs.values();
    runs.map(|run| {
        run.wire.size.value().expect("a size").area().0 * run.wire.length.value().expect("a length").0
    })
    .sum()
}

/// The same problem as the other program is told it.
fn programme(job: &Job) -> serde_json::Value {
    let sheet = job.sheet(SheetKind::Plan).expect("a plan");
    let study = circuit::study(sheet, &job.settings);
    let asks = checks::asks(sheet, &job.settings, &study);
    let runs: Vec<(RunId, serde_json::Value)> = sheet
        .runs
        .iter()
        .map(|(id, run)| {
            let flow = &study.runs[id];
            let (mut costs, mut drops) = (Vec::new(), Vec::new());
            for area in METRIC_SERIES.iter().map(|area| SquareMm(*area)) {
                let mut other = run.clone();
                other.wire.size = Fact::Given(Size::Metric(area));
                let wire = Conductor::of(sheet, &other, &job.settings.conditions);
                let bears = wire.allowable().expect("it is known").0;
                let fits = asks.runs[id].largest.is_none_or(|largest| area.0 <= largest.0);
                // 0.5 mm² is the least that the profile allows a supply conductor (common practice).
                if fits && area.0 >= 0.5 && bears >= FUSE && bears >= flow.current.rms.abs().0 {
                    costs.push(area.0 * run.wire.length.value().expect("a length").0);
                    drops.push(flow.current.burst.abs().0 * wire.resistance(flow.current.rms.abs()).0);
                }
            }
            (*id, serde_json::json!({ "costs": costs, "drops": drops }))
        })
        .collect();
    let fuse = sheet.part_by_tag("F1").expect("the fuse").1;
    let through = &study.devices[0].current;
    let lost = through.burst.abs().0
        * device_resistance(&fuse.is, model::quantity::Amps(FUSE))
            .expect("a fuse")
            .0;
    let loads: Vec<serde_json::Value> = asks
        .drops
        .iter()
        .map(|(load, limit)| {
            let circuit = &study.circuits[load];
            let way = circuit.feeds[0].runs.iter().chain(&circuit.returns[0].runs);
            let way: Vec<usize> = way
                .map(|run| runs.iter().position(|(id, _)| id == run).expect("a run"))
                .collect();
            serde_json::json!({ "limit": limit.0 - lost, "way": way })
        })
        .collect();
    let runs: Vec<serde_json::Value> = runs.into_iter().map(|(_, run)| run).collect();
    serde_json::json!({ "runs": runs, "loads": loads })
}

#[test]
fn the_metal_is_that_of_an_integer_programme() {
    let mut compared = 0;
    for seed in 0..12 {
        let job = testkit::job(&system(seed));
        let sheet = job.sheet(SheetKind::Plan).expect("a plan");
        let sizing = size(
            sheet,
            &job.settings,
            &Ask {
                as_set: true,
                ..Ask::default()
            },
        );
        let told = run_with_scipy("least_metal.py", &[], &programme(&job).to_string());
        if told.trim() == "none" {
            assert!(
                !sizing.short.is_empty(),
                "seed {seed}: nothing suffices, and nothing is said of it"
            );
            continue;
        }
        let least: f64 = told.trim().parse().expect("a number");
        assert!(sizing.short.is_empty(), "seed {seed}: {:?}", sizing.short);
        assert!(
            sizing.proved,
            "seed {seed}: {} above {}",
            sizing.objective, sizing.bound
        );
        let mut sized = job.clone();
        if let Some(edit) = sizing.edit(sheet, SheetKind::Plan) {
            sized.apply(edit);
        }
        let ours = metal(&sized);
        assert!(
            (ours - least).abs() < 1e-6 * least,
            "seed {seed}: {ours} mm²·m, the programme has {least}"
        );
        compared += 1;
    }
    assert!(compared >= 8, "only {compared} of them can be sized at all");
}
