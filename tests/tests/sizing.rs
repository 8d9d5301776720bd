//! Sizes against an integer programme: trees too large to try all there is, solved anew by another library
//! (`tests/python/least_metal.py`, HiGHS). Loads of constant current, so that what flows does not depend on sizes. And what is told
//! to keep a run from being thinner, held against the run one size thinner.

use assist::sizing::{Ask, By, Limit, Prices, Short, Sizing, size};
use circuit::{Conductor, device_resistance};
use loomwright_tests::python::run_with_scipy;
use model::conductor::{METRIC_SERIES, Size};
use model::quantity::{Amps, SquareMm};
use model::thread::Money;
use model::{Fact, Job, PartKind, RunId, Settings, Sheet, SheetKind, Wire};
use std::fmt::Write as _;
use testkit::conditions;
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

/// An invented shop: some sizes it does not keep, and some are cheap since it sells much of them.
struct Shop;

/// Sizes in mm² with the price of a metre, in hundredths.
const METRE: &[(f64, i64)] = &[
    (0.75, 40),
    (1.0, 52),
    (1.5, 60),
    (2.5, 75),
    (4.0, 170),
    (6.0, 190),
    (10.0, 560),
    (16.0, 620),
    (25.0, 1450),
    (35.0, 1500),
    (50.0, 2900),
];

fn metre(area: f64) -> Option<Money> {
    let found = METRE.iter().find(|(kept, _)| (kept - area).abs() < 1e-9);
    found.map(|(_, price)| Money(*price))
}

impl Prices for Shop {
    fn wire(&self, wire: &Wire) -> Option<f64> {
        Some(metre(wire.size.value()?.area().0)?.number())
    }
    fn device(&self, _: &PartKind, _: Amps) -> Option<Money> {
        None
    }
}

/// The same problem as the other program is told it. `cost` tells what a metre of a size costs, where it can be had.
fn programme(job: &Job, cost: impl Fn(f64) -> Option<f64>) -> serde_json::Value {
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
                if let Some(cost) = cost(area.0)
                    && fits
                    && area.0 >= 0.5
                    && bears >= FUSE
                    && bears >= flow.current.rms.abs().0
                {
                    costs.push(cost * run.wire.length.value().expect("a length").0);
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
        let told = run_with_scipy("least_metal.py", &[], &programme(&job, Some).to_string());
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

#[test]
fn the_cost_is_that_of_an_integer_programme() {
    let (mut compared, mut otherwise) = (0, 0);
    for seed in 0..12 {
        let job = testkit::job(&system(seed));
        let sheet = job.sheet(SheetKind::Plan).expect("a plan");
        let sized = |by: By<'_>| {
            let ask = Ask {
                as_set: true,
                by,
                ..Ask::default()
            };
            size(sheet, &job.settings, &ask)
        };
        let sizing = sized(By::Cost(&Shop));
        #[expect(clippy::cast_precision_loss, reason = "a price of a few euros")]
        let cost = |area: f64| metre(area).map(|price| price.0 as f64);
        let told = run_with_scipy("least_metal.py", &[], &programme(&job, cost).to_string());
        if told.trim() == "none" {
            assert!(!sizing.short.is_empty(), "seed {seed}: nothing is said of it");
            continue;
        }
        let least: f64 = told.trim().parse().expect("a number");
        assert!(
            sizing.proved && sizing.short.is_empty(),
            "seed {seed}: {sizing:?}"
        );
        let ours = sizing.objective * 100.0;
        assert!(
            (ours - least).abs() < 1e-5 * least,
            "seed {seed}: {ours} hundredths, the programme has {least}"
        );
        let sizes = |sizing: &Sizing| sizing.runs.iter().map(|line| line.after).collect::<Vec<_>>();
        otherwise += usize::from(sizes(&sizing) != sizes(&sized(By::Metal)));
        compared += 1;
    }
    assert!(compared >= 6, "only {compared} of them can be sized at all");
    assert!(
        otherwise >= 3,
        "cost and metal choose alike in all but {otherwise}"
    );
}

/// The worked estate cannot keep 0.5 V to its amplifiers with the engine off and test tone, whatever is laid. It is in order as
/// set, and stays so: what is then lost is told by the engine.
#[test]
fn what_cannot_be_kept_at_the_worst_is_kept_as_set() {
    let worked = lessons::WorkedJob::of("estate").expect("it is worked");
    let job = worked.job();
    let sheet = job.sheet(SheetKind::Plan).expect("a plan");
    let sizing = size(sheet, &job.settings, &Ask::default());
    let then = sizing.taken(sheet);
    let lost = |settings: &Settings, load: model::PartId| {
        let study = circuit::study(&then, settings);
        study.circuits[&load].drop.map_or(0.0, |volts| volts.0)
    };
    let mut told = 0;
    for short in &sizing.short {
        let Short::Drop {
            load,
            drop,
            limit,
            at_worst: Some((state, duty)),
        } = short
        else {
            panic!("{short:?}");
        };
        let mut worst = job.settings.clone();
        (worst.conditions.state, worst.conditions.duty) = (*state, *duty);
        assert!(lost(&job.settings, *load) <= *limit);
        // No more than the thickest lose, or than it does now.
        assert!(*drop > *limit && lost(&worst, *load) >= *drop - 1e-6);
        told += 1;
    }
    assert_eq!(told, 2);
    assert!(sizing.metal()[1] < sizing.metal()[0]);
    for worked in lessons::WORKED_JOBS {
        let job = worked.job();
        for sheet in job.sheets.values() {
            let sizing = size(sheet, &job.settings, &Ask::default());
            let grave = |sheet: &Sheet| {
                let all = checks::analyse(sheet, &job.settings).findings.into_iter();
                all.filter(|finding| finding.grade != checks::Grade::Tidy).count()
            };
            assert!(grave(&sizing.taken(sheet)) <= grave(sheet), "{}", worked.key);
        }
    }
}

/// Whether a run breaks a limit, at any of the conditions, on a sheet that has it one size thinner.
fn breaks(sheet: &Sheet, settings: &Settings, run: RunId, limit: &Limit) -> bool {
    conditions(settings).iter().any(|settings| {
        let laid = body::lay(sheet, settings);
        let study = circuit::study_laid(&laid, settings);
        let flow = &study.runs[&run];
        let bears = flow.allowable.map_or(0.0, |amps| amps.0);
        let says = |name: &str| {
            let found = checks::judge(&laid, settings, &study);
            found.iter().any(|finding| finding.check == name)
        };
        match limit {
            // Full power of an output is no current of the supply; its own limit is looked at where it is reckoned.
            Limit::Heat if flow.purpose == circuit::Purpose::Speaker => true,
            Limit::Heat => flow.current.rms.abs().0 > bears * (1.0 - 1e-9),
            Limit::Fuse(device) => {
                let found = study.devices.iter().find(|it| it.device == *device);
                found
                    .and_then(|it| it.rating)
                    .is_some_and(|rating| rating.0 > bears)
            }
            Limit::Drop(load) => {
                let asks = checks::asks(&laid, settings, &study);
                let lost = study.circuits[load].drop.map_or(0.0, |volts| volts.0);
                lost > asks.drops[load].0 * (1.0 - 1e-9)
            }
            Limit::Ground(_) => says("return-too-thin"),
            Limit::Ending => says("hot-joint"),
            Limit::Lead => says("return-too-long"),
            Limit::Check(name) => says(name),
            Limit::Held(_)
            | Limit::Smallest
            | Limit::Price
            | Limit::Together
            | Limit::Load
            | Limit::Burst => true,
        }
    })
}

#[test]
fn one_size_thinner_breaks_the_limit_that_is_told() {
    let worked = lessons::WORKED_JOBS
        .iter()
        .map(|worked| (worked.key.to_owned(), worked.job()));
    let random = (0..4).map(|seed| {
        let mut job = Job::default();
        job.sheets
            .insert(SheetKind::Plan, testkit::random::random_system(seed, 25));
        (format!("random {seed}"), job)
    });
    let mut looked_at = 0;
    for (name, job) in worked.chain(random) {
        let (kind, sheet) = job.sheets.iter().next_back().expect("a sheet");
        let sizing = size(sheet, &job.settings, &Ask::default());
        // What no size suffices for has wider limits here than in the checks.
        if !sizing.short.is_empty() {
            continue;
        }
        let mut sized = job.clone();
        if let Some(edit) = sizing.edit(sheet, *kind) {
            sized.apply(edit);
        }
        let sized = sized.sheet(*kind).expect("a sheet");
        for line in &sizing.runs {
            let Some(after) = line
                .after
                .filter(|_| !matches!(line.limit, Limit::Held(_) | Limit::Smallest))
            else {
                continue;
            };
            assert_ne!(line.limit, Limit::Together, "{name}: {}", line.run);
            let thinner = after
                .series()
                .take_while(|size| size.area().0 < after.area().0)
                .last();
            let mut less = sized.clone();
            let run = less.runs.get_mut(&line.run).expect("a run");
            run.wire.size = Fact::Given(thinner.expect("a thinner one"));
            assert!(
                breaks(&less, &job.settings, line.run, &line.limit),
                "{name}: {} is told to be kept by {:?}",
                run_tag(sheet, line.run),
                line.limit
            );
            looked_at += 1;
        }
    }
    assert!(looked_at >= 15, "only {looked_at} runs are kept by a limit");
}

fn run_tag(sheet: &Sheet, id: RunId) -> &str {
    sheet.runs.get(&id).map_or("", |run| &run.tag)
}
