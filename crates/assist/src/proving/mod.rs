//! The shortest proof: the fewest and easiest readings that would expose every single fault of grade Stop, as a list to work through.
//!
//! - **Faults.** Every single one with which the checks would say something of grade Stop (`hazards`).
//! - **Readings.** Wherever leads can be put or a clamp closed: ohms with the supply isolated, volts and amps parked, on, and under a test
//!   tone with the engine off and idling (`readings`).
//! - **Limits.** A sound system is not just as its sheet has it ([`Spread`]); a reading lies within [`Limits`] whatever typical contacts, charge
//!   and loads there are, and exposes a fault if it lies outside of them for certain (`limits`).
//! - **Shortest.** Fewest readings first, least effort second, by an exact search ([`cover`]), which says whether it was brought to its end. Of
//!   equally few, readings that make the whole walk shorter are then taken one for another.
//! - **Shorts** are looked for with the supply isolated and no other way: what would burn once the supply is on is to be found before it is.
//!
//! Faults come from changes of factored networks; those that a chosen reading has to expose are solved anew by the engine, and where that says
//! otherwise the choice is made again. What no reading exposes is told, with what to look at instead ([`Unseen`]).
//!
//! *What a proof is not*: two faults at once may hide one another, a fault that comes and goes is seen only while it is there, and what is
//! drawn wrong is wrong however well it is built: that is for the checks.

mod cover;
mod hazards;
mod limits;
mod order;
mod readings;
mod said;
mod spread;

pub use cover::{Cover, ROW, Row, cover};
pub use hazards::{Fault, Harm, Hazard};
pub use limits::{COUNTED, Limits, UNSEEN};
pub use readings::Doing;
pub use said::{
    figure_of, said_doing, said_expected, said_fault, said_faults, said_harm, said_leads, said_look, said_why,
};
pub use spread::{Spread, varied};

use crate::finding::State;
use crate::finding::effort::Efforts;
use crate::finding::scale::{scatter, shown};
use checks::Grade;
use circuit::{DeviceRef, MOST_OHMS, Probe};
use model::breaks::{Break, Contact};
use model::job::Duty;
use model::readings::{Measured, Reading};
use model::{PartId, RunId, Settings, Sheet};
use ordered::{OrderedMap, OrderedSet, Sort as _};
use readings::{Candidate, Put, Rig, exposed, readings};

/// Work of the search for the fewest readings.
const WORK: u64 = 3_000_000;
/// How often the choice is made again after the engine has said otherwise than the bench.
const MOST_ROUNDS: usize = 4;
/// How often all readings are gone through for one that makes the walk shorter.
const MOST_PASSES: usize = 3;

/// One reading of the list.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// What the vehicle does.
    pub doing: Doing,
    /// The same as a state.
    pub state: State,
    /// Where the leads are put.
    pub probe: Probe,
    /// What is read if all is as drawn; `None` for an open circuit.
    pub expected: Option<f64>,
    /// Between which numbers a sound system lies.
    pub limits: Limits,
    /// What it exposes: the place of a fault in [`Proof::hazards`], and what is read with it; `None` for an open circuit.
    pub exposes: Vec<(usize, Option<f64>)>,
}

/// What to look at instead of measuring.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Look {
    /// What is printed on a fuse or breaker, and that it is one.
    Rating(DeviceRef),
    /// The size of a run.
    Size(RunId),
    /// Both ends of a run, and the wire along its way.
    Run(RunId),
    /// The contacts of a part.
    Part(PartId),
}

/// Faults that no reading exposes.
#[derive(Clone, Debug, PartialEq)]
pub struct Unseen {
    /// What to look at.
    pub look: Look,
    /// Their places in [`Proof::hazards`].
    pub hazards: Vec<usize>,
}

/// A proof.
#[derive(Clone, Debug, PartialEq)]
pub struct Proof {
    /// Every single fault of grade Stop.
    pub hazards: Vec<Hazard>,
    /// The readings, in the order in which they are taken.
    pub steps: Vec<Step>,
    /// What to look at instead.
    pub unseen: Vec<Unseen>,
    /// No list that exposes as much has fewer readings than this.
    pub least: usize,
    /// Minutes for all of it, roughly.
    pub minutes: f64,
    /// How hard the test tone is played.
    pub played: Duty,
    /// Findings of grade Stop that the sheet has by itself: readings say nothing about these.
    pub stops: usize,
}

/// A sheet with all that may be wrong with it and all that may be read on it.
struct LaidOut {
    rig: Rig,
    hazards: Vec<Hazard>,
    readings: Vec<Candidate>,
    /// What each reading exposes, as the bench foretells it.
    rows: Vec<Row>,
    /// Findings of grade Stop of the sheet itself.
    stops: usize,
}

fn lay_out(sheet: &Sheet, settings: &Settings) -> Option<LaidOut> {
    let mut rig = Rig::new(sheet, settings)?;
    let laid = body::lay(sheet, settings);
    let study = circuit::study_laid(&laid, settings);
    let analysis = checks::Analysis {
        findings: checks::judge(&laid, settings, &study),
        study,
    };
    let asks = checks::asks(&laid, settings, &analysis.study);
    let conditions = &settings.conditions;
    let state = rig.bench.ready(conditions.state, conditions.duty)?;
    let hazards = hazards::hazards(&rig.bench, state, settings, &analysis, &asks);
    let readings = readings(&rig, sheet, settings, &analysis.study);
    let rows = exposed(&rig, &readings, &hazards);
    let is_stop = |finding: &&checks::Finding| finding.grade == Grade::Stop;
    Some(LaidOut {
        stops: analysis.findings.iter().filter(is_stop).count(),
        rig,
        hazards,
        readings,
        rows,
    })
}

/// The problem that a proof is the answer to, before the engine has had its say: what each reading that may be taken exposes, and how
/// many faults there are. For whoever wants to solve it by other means.
#[must_use]
pub fn problem(sheet: &Sheet, settings: &Settings) -> Option<(Vec<Row>, usize)> {
    let it = lay_out(sheet, settings)?;
    Some((it.rows, it.hazards.len()))
}

/// The shortest proof of a sheet as it should be. `None` where nothing on it is fed.
#[must_use]
pub fn prove(sheet: &Sheet, settings: &Settings) -> Option<Proof> {
    let LaidOut {
        rig,
        hazards,
        readings: all,
        mut rows,
        stops,
    } = lay_out(sheet, settings)?;
    let (mut cover, mut exposes) = (Cover::default(), Vec::new());
    for _ in 0..MOST_ROUNDS {
        cover = self::cover(&rows, hazards.len(), WORK);
        exposes = verified(&rig, &all, &hazards, &rows, &cover);
        if !correct(&mut rows, &cover, &exposes, hazards.len()) {
            break;
        }
    }
    let efforts = Efforts::of(rig.bench.sheet(), settings);
    let chosen = shorter_walk(&efforts, &all, &rows, cover.rows.clone());
    if chosen != cover.rows {
        let other = Cover {
            rows: chosen,
            ..cover.clone()
        };
        let anew = verified(&rig, &all, &hazards, &rows, &other);
        // What the bench foretold wrongly there is not worth another round.
        if count(&anew) == count(&exposes) {
            (cover, exposes) = (other, anew);
        }
    }
    let mut by_row: OrderedMap<usize, Vec<(usize, Option<f64>)>> =
        cover.rows.iter().copied().zip(exposes).collect();
    let seen: OrderedSet<usize> = by_row.values().flatten().map(|(at, _)| *at).collect();
    let picked: Vec<&Candidate> = cover.rows.iter().filter_map(|at| all.get(*at)).collect();
    let steps = order::order(&efforts, &all, &cover.rows)
        .into_iter()
        .filter_map(|at| {
            let it = all.get(at)?;
            Some(Step {
                doing: it.doing,
                state: it.doing.state(rig.played()),
                probe: it.probe.clone(),
                expected: shown(&it.probe, it.normal),
                limits: it.limits,
                exposes: by_row.remove(&at).unwrap_or_default(),
            })
        });
    Some(Proof {
        steps: steps.collect(),
        unseen: unseen(&hazards, &seen),
        least: cover.least,
        minutes: order::minutes(&efforts, &picked),
        played: rig.played(),
        stops,
        hazards,
    })
}

/// How many faults are exposed.
fn count(exposes: &[Vec<(usize, Option<f64>)>]) -> usize {
    let all: OrderedSet<usize> = exposes.iter().flatten().map(|(at, _)| *at).collect();
    all.len()
}

/// What each chosen reading exposes by the engine, and what is read with it.
fn verified(
    rig: &Rig,
    all: &[Candidate],
    hazards: &[Hazard],
    rows: &[Row],
    cover: &Cover,
) -> Vec<Vec<(usize, Option<f64>)>> {
    let mut out: Vec<Vec<(usize, Option<f64>)>> = vec![Vec::new(); cover.rows.len()];
    for (column, hazard) in hazards.iter().enumerate() {
        let Some(mut put) = Put::of(rig, hazard) else {
            continue;
        };
        let wanted = u32::try_from(column).unwrap_or(u32::MAX);
        for (at, exposes) in cover.rows.iter().zip(&mut out) {
            let foretold = rows
                .get(*at)
                .is_some_and(|row| row.columns.binary_search(&wanted).is_ok());
            let Some(it) = all.get(*at).filter(|_| foretold) else {
                continue;
            };
            if put.is_exposed(rig, it, true) {
                let read = put.reads(rig, it, true).and_then(|read| shown(&it.probe, read));
                exposes.push((column, read));
            }
        }
    }
    out
}

/// Takes back what the bench foretold and the engine did not find, where that leaves a fault unexposed. True when anything was.
fn correct(rows: &mut [Row], cover: &Cover, exposes: &[Vec<(usize, Option<f64>)>], columns: usize) -> bool {
    let mut seen = vec![false; columns];
    for (column, _) in exposes.iter().flatten() {
        if let Some(seen) = seen.get_mut(*column) {
            *seen = true;
        }
    }
    let mut any = false;
    for at in &cover.rows {
        if let Some(row) = rows.get_mut(*at) {
            let before = row.columns.len();
            row.columns
                .retain(|column| seen.get(*column as usize) == Some(&true));
            any |= row.columns.len() < before;
        }
    }
    any
}

/// Takes one reading for another that exposes what only it does, as long as that makes the whole of it quicker.
fn shorter_walk(efforts: &Efforts, all: &[Candidate], rows: &[Row], mut chosen: Vec<usize>) -> Vec<usize> {
    let time = |chosen: &[usize]| {
        let picked: Vec<&Candidate> = chosen.iter().filter_map(|at| all.get(*at)).collect();
        order::minutes(efforts, &picked)
    };
    let columns = |at: usize| rows.get(at).map(|row| row.columns.as_slice()).unwrap_or_default();
    // By fault, the readings that expose it.
    let most = rows
        .iter()
        .flat_map(|row| &row.columns)
        .max()
        .map_or(0, |most| *most as usize + 1);
    let mut by: Vec<Vec<usize>> = vec![Vec::new(); most];
    for (at, row) in rows.iter().enumerate() {
        for column in &row.columns {
            if let Some(list) = by.get_mut(*column as usize) {
                list.push(at);
            }
        }
    }
    for _ in 0..MOST_PASSES {
        let mut moved = false;
        for place in 0..chosen.len() {
            let Some(&at) = chosen.get(place) else { continue };
            let others = chosen.iter().filter(|other| **other != at);
            let covered: OrderedSet<u32> = others.flat_map(|other| columns(*other).iter().copied()).collect();
            let own: Vec<u32> = columns(at)
                .iter()
                .copied()
                .filter(|column| !covered.contains(column))
                .collect();
            let Some(list) = own
                .iter()
                .filter_map(|column| by.get(*column as usize))
                .min_by_key(|list| list.len())
            else {
                continue;
            };
            let does_all = |other: &&usize| {
                own.iter()
                    .all(|column| columns(**other).binary_search(column).is_ok())
            };
            let mut best = (time(&chosen), at);
            for other in list.iter().filter(does_all) {
                let mut with = chosen.clone();
                if let Some(place) = with.get_mut(place) {
                    *place = *other;
                }
                let its = time(&with);
                if its < best.0 - 1e-9 {
                    best = (its, *other);
                }
            }
            if best.1 != at
                && let Some(place) = chosen.get_mut(place)
            {
                *place = best.1;
                moved = true;
            }
        }
        if !moved {
            break;
        }
    }
    chosen.order();
    chosen
}

/// What is to be looked at for what no reading exposes.
fn unseen(hazards: &[Hazard], seen: &OrderedSet<usize>) -> Vec<Unseen> {
    let mut all: OrderedMap<Look, Vec<usize>> = OrderedMap::new();
    for (at, hazard) in hazards.iter().enumerate().filter(|(at, _)| !seen.contains(at)) {
        let look = match &hazard.fault {
            Fault::Larger { device, .. } => Look::Rating(device.clone()),
            Fault::Thinner { run, .. } => Look::Size(*run),
            Fault::Broken(broken) => match broken {
                Break::Cut { run, .. }
                | Break::Off { run, .. }
                | Break::Grounded { run, .. }
                | Break::Resistive { run, .. } => Look::Run(*run),
                Break::Joined { points, .. } => match &points[0] {
                    Contact::Terminal(at) => Look::Part(at.part),
                    Contact::Along(run, _) => Look::Run(*run),
                    // Nothing else touches the body but runs.
                    Contact::Body => continue,
                },
                Break::Open { part, .. }
                | Break::Poor { part, .. }
                | Break::Reversed { part, .. }
                | Break::Dead { part } => Look::Part(*part),
            },
        };
        all.entry(look).or_default().push(at);
    }
    all.into_iter()
        .map(|(look, hazards)| Unseen { look, hazards })
        .collect()
}

impl Proof {
    /// Whether no list that exposes as much has fewer readings.
    #[must_use]
    pub fn is_shortest(&self) -> bool {
        self.steps.len() <= self.least
    }

    /// The faults that a reading outside of its limits points to, by their places, the likeliest first: those with which it would be nearest
    /// to what was read.
    #[must_use]
    pub fn points_to(&self, step: &Step, read: Option<f64>) -> Vec<usize> {
        let scatter = scatter(&step.probe, false);
        let place = |number: Option<f64>| scatter.place(number.unwrap_or(MOST_OHMS));
        let mut all: Vec<(f64, usize)> = step
            .exposes
            .iter()
            .map(|(at, with_it)| ((place(*with_it) - place(read)).abs(), *at))
            .collect();
        all.order_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
        all.into_iter().map(|(_, at)| at).collect()
    }
}

impl Step {
    fn measured(&self) -> Measured {
        match self.probe {
            Probe::Volts(..) => Measured::Volts,
            Probe::Tone(..) => Measured::VoltsAc,
            Probe::Ohms(..) => Measured::Ohms,
            Probe::Amps(_) => Measured::Amps,
        }
    }

    /// The unit of what is read.
    #[must_use]
    pub fn unit(&self) -> &'static str {
        match self.measured() {
            Measured::Volts | Measured::VoltsAc => "V",
            Measured::Ohms => "Ω",
            Measured::Amps => "A",
        }
    }

    /// The unit in which a meter shows it, and how many of these are one of [`Step::unit`].
    #[must_use]
    pub fn shown_in(&self) -> (&'static str, f64) {
        match (self.measured(), self.limits.most) {
            (Measured::Volts | Measured::VoltsAc, Some(most)) if most.max(-self.limits.least) < 1.0 => {
                ("mV", 1000.0)
            }
            _ => (self.unit(), 1.0),
        }
    }

    /// Where the leads are, as they stand in a kept reading: red, black.
    fn places(&self, sheet: &Sheet) -> (String, String) {
        match &self.probe {
            Probe::Volts(red, black) | Probe::Tone(red, black) | Probe::Ohms(red, black) => {
                (sheet.written(red), sheet.written(black))
            }
            Probe::Amps(run) => {
                let tag = sheet.runs.get(run).map(|run| run.tag.clone());
                (tag.unwrap_or_default(), String::new())
            }
        }
    }

    /// A reading of it as it is kept with the job; `None` for an open circuit.
    #[must_use]
    pub fn reading(&self, sheet: &Sheet, read: Option<f64>) -> Reading {
        let (at, against) = self.places(sheet);
        let reading = Reading {
            measured: self.measured(),
            at,
            against,
            state: self.state.vehicle,
            duty: self.state.duty,
            ..Reading::default()
        };
        match read {
            Some(number) => reading.with_number(number),
            None => reading,
        }
    }

    /// Where among the kept readings of the sheet the last one of it is. Ohms are the same in every state.
    #[must_use]
    pub fn kept(&self, sheet: &Sheet) -> Option<usize> {
        let own = self.reading(sheet, None);
        let is_it = |kept: &Reading| {
            kept.measured == own.measured
                && kept.at == own.at
                && kept.against == own.against
                && (own.measured == Measured::Ohms || (kept.state == own.state && kept.duty == own.duty))
        };
        sheet.readings.iter().rposition(is_it)
    }

    /// Whether what was kept of it lies within its limits; `None` where nothing was.
    #[must_use]
    pub fn verdict(&self, sheet: &Sheet) -> Option<bool> {
        let kept = sheet.readings.get(self.kept(sheet)?)?;
        let read = kept.number();
        // Volts and amps without a number say nothing.
        (read.is_some() || self.measured() == Measured::Ohms).then(|| self.limits.hold(read))
    }
}
