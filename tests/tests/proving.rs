//! The shortest proof: as short as an integer programme of another library finds, and what it says is so by the meter itself: with any fault in
//! the sheet a reading is outside of its limits, and a sound system of ordinary parts is within all of them.

use assist::proving::{Doing, Fault, Limits, ROW, Row, Step, cover, problem, prove, varied, without_fuses};
use circuit::{Meter, OhmsShown, Probe, Tones, ohms_between};
use loomwright_tests::python::run_with_scipy;
use model::{Fact, Settings, Sheet};
use serde_json::json;
use testkit::random::Dice;

/// Work enough for the systems below.
const WORK: u64 = 100_000_000;

fn written(rows: &[Row], columns: usize) -> String {
    let rows: Vec<_> = rows.iter().map(|row| json!([row.effort, row.columns])).collect();
    json!({ "columns": columns, "rows": rows }).to_string() + "\n"
}

/// Random systems: readings that expose what is near them, as in a vehicle, and readings that expose anything.
fn random(seed: u64) -> (Vec<Row>, usize) {
    let mut dice = Dice::new(seed);
    let columns = 3 + dice.below(if seed.is_multiple_of(5) { 90 } else { 40 });
    let count = 3 + dice.below(if seed.is_multiple_of(5) { 160 } else { 60 });
    let share = dice.between(0.05, 0.4);
    let rows = (0..count)
        .map(|_| {
            let (from, far) = (dice.below(columns), 1 + dice.below(columns / 2 + 1));
            let near = seed.is_multiple_of(2);
            let all = 0..columns;
            let own = all.filter(|at| (!near || (from..from + far).contains(at)) && dice.chance(share));
            let own: Vec<u32> = own.filter_map(|at| u32::try_from(at).ok()).collect();
            Row {
                columns: own,
                effort: u32::try_from(dice.below(600)).expect("small"),
            }
        })
        .collect();
    (rows, columns)
}

/// Limit: the same number of readings, and the same effort, in every one. Reference: HiGHS, through scipy's `milp`.
#[test]
fn lists_are_as_short_as_an_integer_programme_finds() {
    let mut systems: Vec<(String, Vec<Row>, usize)> = (0..160)
        .map(|seed| {
            let (rows, columns) = random(seed);
            (format!("seed {seed}"), rows, columns)
        })
        .collect();
    for (name, sheet, settings) in worked() {
        let (rows, columns) = problem(&sheet, &settings).expect("something is fed");
        systems.push((name, rows, columns));
    }
    let input: String = systems
        .iter()
        .map(|(_, rows, columns)| written(rows, *columns))
        .collect();
    let output = run_with_scipy("fewest_readings.py", &[], &input);
    let mut lines = output.lines();
    for (name, rows, columns) in &systems {
        let line = lines.next().expect("a line for each system");
        let numbers: Vec<u64> = line.split(' ').map(|it| it.parse().expect("a number")).collect();
        let it = cover(rows, *columns, WORK);
        let cost: u64 = it.rows.iter().map(|at| ROW + u64::from(rows[*at].effort)).sum();
        assert!(it.proven, "{name} is not brought to its end");
        assert_eq!([cost / ROW, cost % ROW], numbers[..], "{name}");
        assert_eq!(it.least, it.rows.len(), "{name}");
    }
}

/// Worked jobs, and systems in good order.
fn worked() -> Vec<(String, Sheet, Settings)> {
    let mut all = Vec::new();
    for worked in lessons::WORKED_JOBS {
        let mut job = worked.job();
        let settings = job.settings.clone();
        if let Some((kind, sheet)) = job.sheets.pop_last() {
            all.push((format!("{} {kind:?}", worked.key), sheet, settings));
        }
    }
    all
}

/// What a meter reads, by solving the whole sheet; ohms by themselves, as they need no operating point.
struct Hand<'a> {
    sheet: Sheet,
    settings: &'a Settings,
    /// An amplifier gives the volts that it gives with its own load: that of the sheet as it should be.
    sound: &'a Sheet,
    meters: Vec<(Doing, Option<Meter>)>,
}

impl<'a> Hand<'a> {
    fn on(sheet: Sheet, settings: &'a Settings, sound: &'a Sheet) -> Self {
        Self {
            sheet,
            settings,
            sound,
            meters: Vec::new(),
        }
    }

    fn meter(&self, step: &Step) -> Option<Meter> {
        let mut settings = self.settings.clone();
        settings.conditions.state = step.state.vehicle;
        settings.conditions.duty = step.state.duty;
        let tones = Tones::of(self.sound, &settings);
        Meter::new(&self.sheet, &settings, Some(&tones))
    }

    /// `None` where nothing is solved; else a number, or nothing for an open circuit.
    fn read(&mut self, step: &Step) -> Option<Option<f64>> {
        if let Probe::Ohms(red, black) = &step.probe {
            let out = (step.doing == Doing::FusesOut).then(|| without_fuses(&self.sheet));
            let laid = body::lay(out.as_ref().unwrap_or(&self.sheet), self.settings);
            let metal = body::Metal::of(&laid, self.settings);
            return Some(match ohms_between(&laid, &metal, red, black)? {
                OhmsShown::SamePoint => Some(0.0),
                OhmsShown::Open => None,
                OhmsShown::Ohms(ohms) => Some(ohms.0),
            });
        }
        if !self.meters.iter().any(|(doing, _)| *doing == step.doing) {
            self.meters.push((step.doing, self.meter(step)));
        }
        let (_, meter) = self.meters.iter().find(|(doing, _)| *doing == step.doing)?;
        Some(meter.as_ref()?.read(&step.probe)?.number(&step.probe))
    }
}

fn put_in(sheet: &Sheet, fault: &Fault) -> Option<Sheet> {
    match fault {
        Fault::Broken(broken) => Some(broken.thrown(sheet).expect("it can be put in")),
        Fault::Thinner { run, size, .. } => {
            let mut other = sheet.clone();
            let wire = &mut other.runs.get_mut(run)?.wire;
            wire.size = Fact::Given(*size);
            wire.stated_resistance = Fact::Unknown;
            Some(other)
        }
        Fault::Larger { .. } => None,
    }
}

fn with(limits: &Limits, step: &Step, read: Option<f64>) -> String {
    format!(
        "{:?} {:?}: {read:?}, limits {limits:?}, expected {:?}",
        step.doing, step.probe, step.expected
    )
}

#[test]
fn with_any_fault_in_it_a_reading_is_outside_of_its_limits() {
    let mut systems = worked();
    systems.push((
        "random".to_owned(),
        testkit::random::random_system(7, 20),
        Settings::default(),
    ));
    for (name, sheet, settings) in systems {
        let proof = prove(&sheet, &settings).expect("something is fed");
        let unseen: Vec<usize> = proof.unseen.iter().flat_map(|it| it.hazards.clone()).collect();
        let (mut tried, mut missed) = (0, Vec::new());
        for (at, hazard) in proof.hazards.iter().enumerate() {
            if unseen.contains(&at) {
                continue;
            }
            tried += 1;
            let other = put_in(&sheet, &hazard.fault).expect("a meter sees it");
            let mut hand = Hand::on(other, &settings, &sheet);
            let is_seen = proof.steps.iter().any(|step| {
                let told = step.exposes.iter().any(|(its, _)| *its == at);
                told && hand.read(step).is_some_and(|read| !step.limits.hold(read))
            });
            if !is_seen {
                let own = proof
                    .steps
                    .iter()
                    .filter(|step| step.exposes.iter().any(|(its, _)| *its == at));
                let told: Vec<String> = own
                    .map(|step| with(&step.limits, step, hand.read(step).flatten()))
                    .collect();
                missed.push(format!("{hazard:?}: {told:?}"));
            }
        }
        assert!(tried > 20, "{name}: {tried} faults are exposed");
        assert!(
            missed.is_empty(),
            "{name}, {} of {tried} are missed: {missed:#?}",
            missed.len()
        );
    }
}

/// Limit: every reading of every one of 50 systems, each with its wires, contacts, charge and loads somewhere else within what
/// [`assist::proving::Spread`] states.
#[test]
fn a_sound_system_of_ordinary_parts_passes() {
    let mut systems = worked();
    systems.retain(|(name, _, _)| name.starts_with("hatchback") || name.starts_with("camper"));
    assert_eq!(systems.len(), 2);
    for (name, sheet, settings) in systems {
        let proof = prove(&sheet, &settings).expect("something is fed");
        for seed in 0..50 {
            let mut dice = Dice::new(seed);
            let other = varied(&sheet, &settings, &mut |_| dice.between(-1.0, 1.0));
            let mut hand = Hand::on(other, &settings, &sheet);
            for step in &proof.steps {
                let read = hand.read(step).expect("a sound system is solved");
                assert!(
                    step.limits.hold(read),
                    "{name}, seed {seed}: {}",
                    with(&step.limits, step, read)
                );
            }
        }
    }
}
