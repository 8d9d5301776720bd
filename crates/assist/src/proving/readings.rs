//! All readings that may be taken, what each is without a fault, between which numbers it lies, and which faults it exposes.

use super::cover::Row;
use super::hazards::{Harm, Hazard};
use super::limits::{Beside, Limits, Value, exposes, limits};
use super::spread::{Spread, varied};
use crate::finding::State;
use crate::finding::effort::{Efforts, ISOLATE, TONE};
use crate::finding::probes::{black, candidates};
use crate::finding::scale::number;
use circuit::{Bench, Fault, Foreseen, Isolated, Placed, Probe, Purpose, Study};
use model::breaks::Break;
use model::job::{Duty, VehicleState};
use model::{PartId, PartKind, Settings, Sheet, TerminalRef};
use ordered::OrderedSet;

/// What the vehicle does while something is read, in the order in which it is gone through: what would burn once the supply is on is looked
/// for before it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Doing {
    /// The supply is isolated, every fuse is out and every breaker open: each stretch of the wiring by itself.
    FusesOut,
    /// The supply is isolated.
    Isolated,
    /// Parked, all off.
    Parked,
    /// On, engine off, nothing played.
    On,
    /// On, engine off, under a test tone.
    Tone,
    /// Engine idling, under a test tone.
    Idling,
}

impl Doing {
    /// All of them, in their order.
    pub const ALL: [Self; 6] = [
        Self::FusesOut,
        Self::Isolated,
        Self::Parked,
        Self::On,
        Self::Tone,
        Self::Idling,
    ];

    /// Whether ohms are read, and nothing else.
    #[must_use]
    pub fn is_for_ohms(self) -> bool {
        matches!(self, Self::FusesOut | Self::Isolated)
    }

    /// The state of the vehicle, at a duty where something is played.
    #[must_use]
    pub fn state(self, played: Duty) -> State {
        let (vehicle, duty) = match self {
            Self::FusesOut | Self::Isolated | Self::Parked => (VehicleState::Parked, Duty::Idle),
            Self::On => (VehicleState::EngineOff, Duty::Idle),
            Self::Tone => (VehicleState::EngineOff, played),
            Self::Idling => (VehicleState::Idle, played),
        };
        State { vehicle, duty }
    }

    /// Minutes until the vehicle does that, with so many minutes for all fuses.
    fn minutes(self, fuses: f64) -> f64 {
        match self {
            Self::FusesOut => ISOLATE + fuses,
            Self::Isolated => ISOLATE,
            Self::Parked => 0.0,
            Self::On => TONE,
            Self::Tone => 2.0 * TONE,
            Self::Idling => 1.0,
        }
    }
}

/// A reading that may be taken.
#[derive(Clone, Debug)]
pub(super) struct Candidate {
    pub(super) doing: Doing,
    pub(super) probe: Probe,
    placed: Placed,
    pub(super) normal: Value,
    beside: Beside,
    pub(super) limits: Limits,
    /// The parts that the leads or the clamp are put on.
    pub(super) parts: Vec<PartId>,
    /// Minutes by itself, hundredths.
    effort: u32,
    /// Minutes until the vehicle does what it is read in.
    pub(super) first: f64,
}

impl Candidate {
    /// Adds what a system that lies elsewhere within its spread reads otherwise.
    fn lay_beside(&mut self, other: &Rig) {
        let placed = other.bench(self.doing).and_then(|bench| bench.place(&self.probe));
        let now = placed.and_then(|placed| other.normal(self.doing, &self.probe, &placed));
        let Some(now) = now else { return };
        let open = |value: Value| matches!(self.probe, Probe::Ohms(..)) && value >= circuit::MOST_OHMS;
        if !open(now) && !open(self.normal) {
            self.beside.up += (now - self.normal).max(0.0);
            self.beside.down += (self.normal - now).max(0.0);
        }
    }
}

/// A sheet on the bench in every state.
#[derive(Debug)]
pub(super) struct Rig {
    pub(super) bench: Bench,
    /// The same with every fuse out; nothing where there is none.
    fuses_out: Option<Bench>,
    /// By what is done, the number of the state; `None` for ohms, and where nothing is solved.
    states: [Option<usize>; 6],
    played: Duty,
}

/// Minutes to take a fuse out and put it in again, once it is reached (common practice).
const PULL: f64 = 0.3;

/// The fuses and breakers of a sheet, each as what opens it.
fn fuses(sheet: &Sheet) -> Vec<Break> {
    let mut all = Vec::new();
    for (&part, it) in &sheet.parts {
        match &it.is {
            PartKind::Fuse(_) | PartKind::Breaker(_) => all.push(Break::Open { part, output: None }),
            PartKind::Block(block) => {
                let fitted = block
                    .fuses
                    .0
                    .iter()
                    .enumerate()
                    .filter(|(_, fuse)| fuse.is_some());
                all.extend(fitted.map(|(at, _)| Break::Open {
                    part,
                    output: Some(format!("out{}", at + 1).as_str().into()),
                }));
            }
            _ => {}
        }
    }
    all
}

/// A sheet with every fuse out and every breaker open.
#[must_use]
pub fn without_fuses(sheet: &Sheet) -> Sheet {
    Break::all_thrown(&fuses(sheet), sheet)
}

impl Rig {
    /// On a sheet; `played` is the duty of the test tone. `None` where nothing on it is fed.
    fn at(sheet: &Sheet, settings: &Settings, played: Duty, doings: &[Doing]) -> Option<Self> {
        let mut bench = Bench::new(sheet, settings)?;
        let fuses_out = doings.contains(&Doing::FusesOut) && !fuses(sheet).is_empty();
        let mut states = [None; 6];
        for doing in doings.iter().filter(|it| !it.is_for_ohms()) {
            let state = doing.state(played);
            if let Some(place) = states.get_mut(*doing as usize) {
                *place = bench.ready(state.vehicle, state.duty);
            }
        }
        Some(Self {
            fuses_out: fuses_out
                .then(|| Bench::new(&without_fuses(sheet), settings))
                .flatten(),
            bench,
            states,
            played,
        })
    }

    /// On a sheet as it should be, played as hard as nothing opens or turns off: a test tone at full power, else at what loud music has.
    pub(super) fn new(sheet: &Sheet, settings: &Settings) -> Option<Self> {
        let is_engine = |part: &model::Part| {
            matches!(
                part.is,
                PartKind::Alternator(_) | PartKind::Vehicle(_) | PartKind::Converter(_)
            )
        };
        let engine = sheet.parts.values().any(is_engine);
        for played in [Duty::Tone, Duty::Loud] {
            let doings: &[Doing] = if engine {
                &Doing::ALL
            } else {
                &[
                    Doing::FusesOut,
                    Doing::Isolated,
                    Doing::Parked,
                    Doing::On,
                    Doing::Tone,
                ]
            };
            let it = Self::at(sheet, settings, played, doings)?;
            if it.holds(Doing::Tone) && (!engine || it.holds(Doing::Idling)) {
                return Some(it);
            }
        }
        let it = Self::at(
            sheet,
            settings,
            Duty::Loud,
            &[Doing::FusesOut, Doing::Isolated, Doing::Parked, Doing::On],
        )?;
        it.state(Doing::On).is_some().then_some(it)
    }

    /// The bench on which a reading is looked up. `None` where what it asks for cannot be done.
    fn bench(&self, doing: Doing) -> Option<&Bench> {
        if doing == Doing::FusesOut {
            self.fuses_out.as_ref()
        } else {
            Some(&self.bench)
        }
    }

    fn state(&self, doing: Doing) -> Option<usize> {
        self.states.get(doing as usize).copied().flatten()
    }

    /// The duty of the test tone.
    pub(super) fn played(&self) -> Duty {
        self.played
    }

    /// Whether everything that works unplayed goes on working.
    fn holds(&self, doing: Doing) -> bool {
        let normal = |doing| {
            let state = self.state(doing)?;
            self.bench.normal(state)
        };
        let (Some(on), Some(now)) = (normal(Doing::On), normal(doing)) else {
            return false;
        };
        let mut parts = self.bench.sheet().parts.keys();
        self.bench.opened(now).len() <= self.bench.opened(on).len()
            && parts.all(|part| !self.bench.works(on, *part) || self.bench.works(now, *part))
    }

    /// What is read with nothing wrong.
    fn normal(&self, doing: Doing, probe: &Probe, placed: &Placed) -> Option<Value> {
        let shown = if doing.is_for_ohms() {
            self.bench(doing)?.ohms(&Isolated::default(), placed)?
        } else {
            let state = self.state(doing)?;
            self.bench.read(state, self.bench.normal(state)?, placed)?
        };
        Some(number(shown, probe))
    }
}

/// Where leads can be put: all that is worth a thought when a fault is looked for, tones aside, and what is lost from battery
/// positive to every point of a feed, which shows every joint on the way at once.
fn probes(sheet: &Sheet, bench: &Bench, study: &Study) -> Vec<Probe> {
    let mut all: Vec<Probe> = candidates(sheet, bench)
        .into_iter()
        .map(|it| it.probe)
        .filter(|probe| !matches!(probe, Probe::Tone(..)))
        .collect();
    let Some(minus) = black(sheet) else {
        return all;
    };
    let plus = TerminalRef::new(minus.part, "+");
    let mut seen: OrderedSet<Option<usize>> = [bench.point(&plus)].into_iter().collect();
    for (id, run) in &sheet.runs {
        let purpose = study.runs.get(id).map(|flow| flow.purpose).unwrap_or_default();
        if !matches!(purpose, Purpose::Feed | Purpose::BetweenSources) {
            continue;
        }
        for at in run.ends().iter().filter_map(|end| end.terminal()) {
            if seen.insert(bench.point(at)) {
                all.push(Probe::Volts(plus.clone(), at.clone()));
            }
        }
    }
    let mut known: OrderedSet<Probe> = OrderedSet::new();
    all.retain(|probe| known.insert(probe.clone()));
    all
}

/// Everything that may be read on a sheet.
pub(super) fn readings(rig: &Rig, settings: &Settings, study: &Study) -> Vec<Candidate> {
    let laid = rig.bench.sheet();
    let efforts = Efforts::of(laid, settings);
    let mut all: Vec<Candidate> = Vec::new();
    let probes = probes(laid, &rig.bench, study);
    let black = black(laid);
    let pulled = fuses(laid);
    let reach: OrderedSet<PartId> = pulled.iter().flat_map(|it| it.on().1).collect();
    let reach: f64 = reach.iter().map(|part| efforts.to_reach(*part)).sum();
    let pull = PULL * pulled.len() as f64 + reach;
    for doing in Doing::ALL {
        for probe in &probes {
            if matches!(probe, Probe::Ohms(..)) != doing.is_for_ohms() {
                continue;
            }
            // With the fuses out, every stretch against negative: what lies along one is told with them in.
            if doing == Doing::FusesOut
                && !matches!(probe, Probe::Ohms(_, other) if Some(other) == black.as_ref())
            {
                continue;
            }
            let read = |probe: &Probe| {
                let placed = rig.bench(doing)?.place(probe)?;
                Some((probe.clone(), placed, rig.normal(doing, probe, &placed)?))
            };
            // Leads are put so that no sign has to be minded.
            let put = read(probe).and_then(|put| match (&put.0, put.2 < 0.0) {
                (Probe::Volts(red, black), true) => read(&Probe::Volts(black.clone(), red.clone())),
                _ => Some(put),
            });
            let Some((probe, placed, normal)) = put else {
                continue;
            };
            let probe = &probe;
            let first = doing.minutes(pull);
            let minutes = efforts.minutes(laid, probe, &[], doing.is_for_ohms()) + first / 10.0;
            all.push(Candidate {
                doing,
                placed,
                normal,
                beside: Beside::default(),
                limits: limits(probe, normal, Beside::default()),
                parts: on_parts(laid, &efforts, probe),
                // A few minutes: far below the most.
                effort: (minutes * 100.0).clamp(0.0, 60_000.0) as u32,
                first,
                probe: probe.clone(),
            });
        }
    }
    all
}

/// One of the systems that lie beside what the sheet says: which group, or which of it alone, and at which end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Corner {
    group: Spread,
    only: Option<usize>,
    end: f64,
}

/// Adds to every reading what it is otherwise in a corner.
pub(super) fn look_beside(
    all: &mut [Candidate],
    rig: &Rig,
    sheet: &Sheet,
    settings: &Settings,
    corner: Corner,
) {
    // With the supply isolated no source is there.
    let is_of_source = matches!(corner.group, Spread::Charge | Spread::Source);
    let doings: Vec<Doing> = Doing::ALL
        .into_iter()
        .filter(|it| rig.state(*it).is_some() || (it.is_for_ohms() && !is_of_source))
        .collect();
    let mut met = 0;
    let other = varied(sheet, settings, &mut |of| {
        met += usize::from(of == corner.group);
        let is_it = of == corner.group && corner.only.is_none_or(|only| met == only);
        if is_it { corner.end } else { 0.0 }
    });
    if let Some(other) = Rig::at(&other, settings, rig.played, &doings) {
        let read = all.iter_mut().filter(|it| doings.contains(&it.doing));
        read.for_each(|it| it.lay_beside(&other));
    }
    for it in all {
        it.limits = limits(&it.probe, it.normal, it.beside);
    }
}

/// What is varied together: all of a group, but sources one by one, since what lies between two of them moves when they differ.
pub(super) fn corners(sheet: &Sheet, settings: &Settings) -> Vec<Corner> {
    let mut all = Vec::new();
    for group in Spread::ALL {
        if !matches!(group, Spread::Charge | Spread::Source) {
            all.push((group, None));
            continue;
        }
        let mut count = 0;
        let _ = varied(sheet, settings, &mut |of| {
            count += usize::from(of == group);
            0.0
        });
        all.extend((1..=count).map(|only| (group, Some(only))));
    }
    let ends = |(group, only)| [-1.0, 1.0].map(|end| Corner { group, only, end });
    all.into_iter().flat_map(ends).collect()
}

/// The parts that are reached for: of a clamp the end that is easier.
fn on_parts(sheet: &Sheet, efforts: &Efforts, probe: &Probe) -> Vec<PartId> {
    let mut parts = Efforts::touched(sheet, probe);
    if matches!(probe, Probe::Amps(_)) {
        let easiest = parts
            .into_iter()
            .min_by(|a, b| efforts.to_reach(*a).total_cmp(&efforts.to_reach(*b)));
        parts = easiest.into_iter().collect();
    }
    parts
}

/// A fault on the bench.
pub(super) struct Put {
    fault: Fault,
    /// With the fuses in, and with them out.
    isolated: Isolated,
    fuses_out: Option<Isolated>,
    /// By what is done; foreseen when it is first asked for.
    foreseen: [Option<Option<Foreseen>>; 6],
    short: bool,
}

impl Put {
    /// `None` for what no meter sees.
    pub(super) fn of(rig: &Rig, hazard: &Hazard) -> Option<Self> {
        let broken = hazard.broken()?;
        let fault = rig.bench.fault(std::slice::from_ref(&broken))?;
        let fuses_out = rig.fuses_out.as_ref();
        Some(Self {
            fuses_out: fuses_out.and_then(|bench| Some(bench.isolate(&bench.fault(&[broken])?))),
            isolated: rig.bench.isolate(&fault),
            fault,
            foreseen: [const { None }; 6],
            short: hazard.harm == Harm::Short,
        })
    }

    /// What is read with the fault in. Where sources are shorted, nothing is read with the supply on: by then it has burnt.
    /// `exactly`: solved anew by the engine.
    pub(super) fn reads(&mut self, rig: &Rig, it: &Candidate, exactly: bool) -> Option<Value> {
        if it.doing == Doing::Isolated {
            return Some(number(rig.bench.ohms(&self.isolated, &it.placed)?, &it.probe));
        }
        if it.doing == Doing::FusesOut {
            let shown = rig
                .fuses_out
                .as_ref()?
                .ohms(self.fuses_out.as_ref()?, &it.placed)?;
            return Some(number(shown, &it.probe));
        }
        if self.short {
            return None;
        }
        let state = rig.state(it.doing)?;
        let place = self.foreseen.get_mut(it.doing as usize)?;
        let foreseen = place.get_or_insert_with(|| {
            if exactly {
                rig.bench.solve(&self.fault, state)
            } else {
                rig.bench.foresee(&self.fault, state)
            }
        });
        let shown = rig.bench.read(state, foreseen.as_ref()?, &it.placed)?;
        Some(number(shown, &it.probe))
    }

    /// Whether a reading exposes it.
    pub(super) fn is_exposed(&mut self, rig: &Rig, it: &Candidate, exactly: bool) -> bool {
        self.reads(rig, it, exactly)
            .is_some_and(|faulty| exposes(&it.probe, it.normal, it.beside, &it.limits, faulty))
    }
}

/// A row for each reading, without columns as yet.
pub(super) fn rows(all: &[Candidate]) -> Vec<Row> {
    let row = |it: &Candidate| Row {
        columns: Vec::new(),
        effort: it.effort,
    };
    all.iter().map(row).collect()
}

/// Which readings expose a fault: its column is put into their rows.
pub(super) fn expose(rig: &Rig, all: &[Candidate], column: usize, hazard: &Hazard, rows: &mut [Row]) {
    let (Some(mut put), Ok(column)) = (Put::of(rig, hazard), u32::try_from(column)) else {
        return;
    };
    let mut seen = false;
    // Fuses are pulled for what nothing else exposes: so those come last.
    for fuses_out in [false, true] {
        for (row, it) in rows.iter_mut().zip(all) {
            if (it.doing == Doing::FusesOut) == fuses_out && put.is_exposed(rig, it, false) {
                row.columns.push(column);
                seen = true;
            }
        }
        if seen {
            return;
        }
    }
}
