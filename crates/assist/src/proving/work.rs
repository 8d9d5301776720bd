//! A proof worked out step by step: on a large sheet it takes its time, and whoever waits wants to be told and to go on with something else.
//!
//! First the faults, a few things of the sheet at a time; then how far each reading may lie beside its number, one corner after the other; what each
//! reading exposes; the fewest readings; and what the engine says of those. Where that says otherwise the readings are chosen again.

use super::cover::{Cover, Row, cover};
use super::hazards::{self, Fault, Hazard, Share};
use super::order;
use super::readings::{Candidate, Corner, Put, Rig, corners, expose, look_beside, readings, rows};
use super::{Look, Proof, Step, Unseen};
use crate::finding::effort::Efforts;
use crate::finding::scale::shown;
use checks::{Analysis, Asks, Grade};
use model::breaks::{Break, Contact};
use model::{Settings, Sheet};
use ordered::{OrderedMap, OrderedSet, Sort as _};

/// Work of the search for the fewest readings.
const WORK: u64 = 3_000_000;
/// How often the choice is made again after the engine has said otherwise than the bench.
const MOST_ROUNDS: usize = 4;
/// How often all readings are gone through for one that makes the walk shorter.
const MOST_PASSES: usize = 3;

/// Faults that are put in within one step: on the bench, and by the engine.
const EXPOSED_AT_ONCE: usize = 24;
const VERIFIED_AT_ONCE: usize = 6;

/// What each chosen reading exposes, and what is read with it.
type Exposes = Vec<Vec<(usize, Option<f64>)>>;

/// How far it has come.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Stage {
    Begin,
    Faults(usize),
    Beside(usize),
    Exposing(usize),
    Choosing,
    /// Of the choice, or of the last one, which makes the walk shorter.
    Verifying(usize, bool),
}

/// What is known of the sheet.
struct Known {
    rig: Rig,
    analysis: Analysis,
    asks: Asks,
    /// Number of the state that the settings ask for.
    state: usize,
    shares: Vec<Share>,
    corners: Vec<Corner>,
    hazards: Vec<Hazard>,
    readings: Vec<Candidate>,
    /// What each reading exposes, as the bench foretells it until the engine says otherwise.
    rows: Vec<Row>,
    cover: Cover,
    exposes: Exposes,
    /// What the engine has said, by reading and fault: nothing where it is not exposed.
    told: OrderedMap<(usize, usize), Option<Option<f64>>>,
    rounds: usize,
    /// The choice before the one that makes the walk shorter.
    before: Option<(Cover, Exposes)>,
}

/// A proof on its way.
pub struct Proving {
    sheet: Sheet,
    settings: Settings,
    stage: Stage,
    known: Option<Known>,
}

impl Known {
    fn of(sheet: &Sheet, settings: &Settings) -> Option<Self> {
        let mut rig = Rig::new(sheet, settings)?;
        let laid = body::lay(sheet, settings);
        let study = circuit::study_laid(&laid, settings);
        let analysis = Analysis {
            findings: checks::judge(&laid, settings, &study),
            study,
        };
        let conditions = &settings.conditions;
        Some(Self {
            asks: checks::asks(&laid, settings, &analysis.study),
            state: rig.bench.ready(conditions.state, conditions.duty)?,
            shares: hazards::shares(rig.bench.sheet()),
            corners: corners(sheet, settings),
            analysis,
            rig,
            hazards: Vec::new(),
            readings: Vec::new(),
            rows: Vec::new(),
            cover: Cover::default(),
            exposes: Vec::new(),
            told: OrderedMap::new(),
            rounds: 0,
            before: None,
        })
    }

    /// What the engine says of some faults with the readings that are chosen.
    fn verify(&mut self, columns: std::ops::Range<usize>) {
        self.exposes.resize(self.cover.rows.len(), Vec::new());
        for column in columns {
            let Some(hazard) = self.hazards.get(column) else {
                continue;
            };
            let wanted = u32::try_from(column).unwrap_or(u32::MAX);
            let mut put: Option<Option<Put>> = None;
            for (row, exposes) in self.cover.rows.iter().zip(&mut self.exposes) {
                let foretold = self.rows.get(*row);
                let foretold = foretold.is_some_and(|row| row.columns.binary_search(&wanted).is_ok());
                let Some(it) = self.readings.get(*row).filter(|_| foretold) else {
                    continue;
                };
                let told = match self.told.get(&(*row, column)) {
                    Some(told) => *told,
                    None => {
                        let put = put.get_or_insert_with(|| Put::of(&self.rig, hazard));
                        let told = put.as_mut().and_then(|put| {
                            let is_it = put.is_exposed(&self.rig, it, true);
                            let read = is_it.then(|| put.reads(&self.rig, it, true));
                            read.map(|read| read.and_then(|read| shown(&it.probe, read)))
                        });
                        self.told.insert((*row, column), told);
                        told
                    }
                };
                exposes.extend(told.map(|read| (column, read)));
            }
        }
    }
}

impl Proving {
    /// Of a sheet as it should be.
    #[must_use]
    pub fn new(sheet: &Sheet, settings: &Settings) -> Self {
        Self {
            sheet: sheet.clone(),
            settings: settings.clone(),
            stage: Stage::Begin,
            known: None,
        }
    }

    /// How much of it is done, roughly: 0 to 1.
    #[must_use]
    pub fn done(&self) -> f64 {
        let Some(known) = &self.known else { return 0.0 };
        let part = |at: usize, of: usize| at as f64 / of.max(1) as f64;
        match self.stage {
            Stage::Begin => 0.0,
            Stage::Faults(at) => 0.05 + 0.45 * part(at, known.shares.len()),
            Stage::Beside(at) => 0.5 + 0.2 * part(at, known.corners.len()),
            Stage::Exposing(at) => 0.7 + 0.1 * part(at, known.hazards.len()),
            Stage::Choosing => 0.8,
            Stage::Verifying(at, last) => {
                let from = if last { 0.95 } else { 0.8 };
                from + (0.98 - from) * part(at, known.hazards.len())
            }
        }
    }

    /// One step: a moment's work. The proof once it is done: `None` where nothing on the sheet is fed.
    pub fn step(&mut self) -> Option<Option<Proof>> {
        if self.stage == Stage::Begin {
            self.known = Known::of(&self.sheet, &self.settings);
        }
        let Some(known) = &mut self.known else {
            return Some(None);
        };
        let (sheet, settings) = (&self.sheet, &self.settings);
        self.stage = match self.stage {
            Stage::Begin => Stage::Faults(0),
            Stage::Faults(at) => match known.shares.get(at) {
                Some(share) => {
                    let Known {
                        rig,
                        analysis,
                        asks,
                        state,
                        hazards: before,
                        ..
                    } = &*known;
                    let more = hazards::hazards(&rig.bench, *state, settings, analysis, asks, share, before);
                    known.hazards.extend(more);
                    Stage::Faults(at + 1)
                }
                None => {
                    known.readings = readings(&known.rig, settings, &known.analysis.study);
                    Stage::Beside(0)
                }
            },
            Stage::Beside(at) => match known.corners.get(at) {
                Some(corner) => {
                    look_beside(&mut known.readings, &known.rig, sheet, settings, *corner);
                    Stage::Beside(at + 1)
                }
                None => {
                    known.rows = rows(&known.readings);
                    Stage::Exposing(0)
                }
            },
            Stage::Exposing(at) if at < known.hazards.len() => {
                let some = known.hazards.iter().enumerate().skip(at).take(EXPOSED_AT_ONCE);
                for (column, hazard) in some {
                    expose(&known.rig, &known.readings, column, hazard, &mut known.rows);
                }
                Stage::Exposing(at + EXPOSED_AT_ONCE)
            }
            Stage::Exposing(_) => Stage::Choosing,
            Stage::Choosing => {
                known.cover = cover(&known.rows, known.hazards.len(), WORK);
                known.exposes.clear();
                known.rounds += 1;
                Stage::Verifying(0, false)
            }
            Stage::Verifying(at, last) if at < known.hazards.len() => {
                known.verify(at..at + VERIFIED_AT_ONCE);
                Stage::Verifying(at + VERIFIED_AT_ONCE, last)
            }
            Stage::Verifying(_, true) => {
                // What the bench foretold wrongly there is not worth another round.
                if let Some((cover, exposes)) = known.before.take()
                    && count(&exposes) != count(&known.exposes)
                {
                    (known.cover, known.exposes) = (cover, exposes);
                }
                return Some(Some(self.proof()?));
            }
            Stage::Verifying(_, false) => {
                let count = known.hazards.len();
                let wrong = correct(&mut known.rows, &known.cover, &known.exposes, count);
                if wrong && known.rounds < MOST_ROUNDS {
                    Stage::Choosing
                } else {
                    let efforts = Efforts::of(known.rig.bench.sheet(), settings);
                    let chosen =
                        shorter_walk(&efforts, &known.readings, &known.rows, known.cover.rows.clone());
                    let other = Cover {
                        rows: chosen,
                        ..known.cover.clone()
                    };
                    known.before = Some((
                        std::mem::replace(&mut known.cover, other),
                        std::mem::take(&mut known.exposes),
                    ));
                    Stage::Verifying(0, true)
                }
            }
        };
        None
    }

    /// What each reading exposes as the bench foretells it, and how many faults there are.
    pub(super) fn problem(mut self) -> Option<(Vec<Row>, usize)> {
        while self.stage != Stage::Choosing {
            if self.step().is_some() {
                return None;
            }
        }
        self.known.map(|known| (known.rows, known.hazards.len()))
    }

    fn proof(&mut self) -> Option<Proof> {
        let Known {
            rig,
            analysis,
            hazards,
            readings: all,
            cover,
            exposes,
            ..
        } = self.known.take()?;
        let efforts = Efforts::of(rig.bench.sheet(), &self.settings);
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
        let is_stop = |finding: &&checks::Finding| finding.grade == Grade::Stop;
        Some(Proof {
            steps: steps.collect(),
            unseen: unseen(&hazards, &seen),
            least: cover.least,
            minutes: order::minutes(&efforts, &picked),
            played: rig.played(),
            stops: analysis.findings.iter().filter(is_stop).count(),
            hazards,
        })
    }
}

/// How many faults are exposed.
fn count(exposes: &[Vec<(usize, Option<f64>)>]) -> usize {
    let all: OrderedSet<usize> = exposes.iter().flatten().map(|(at, _)| *at).collect();
    all.len()
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
