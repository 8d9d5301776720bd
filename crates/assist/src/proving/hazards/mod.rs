//! Every single fault of grade Stop: what it is, and why it is that grave.
//!
//! **Which faults.** What can break on a sheet by itself: every wire cut, with a bad joint on it, touching the body; every fuse, switch,
//! relay and ground with a bad contact, or open; supply terminals that touch; equipment dead or with its supply the wrong way
//! round. And what can have been fitted otherwise than drawn: a wire too thin for its fuse, a fuse too large for its wire, or
//! something that is no fuse. A bad joint is put in as the least that is grave, and as up to three times
//! that. Of what is wrong with speakers, signal
//! leads and turn-on leads nothing is of grade Stop, unless a source can make it live.
//!
//! **Grade Stop** is a fault with which the checks say something of grade Stop that they do not say of the sheet without it, of what flows
//! and what is bare: `damaged-run`, `hot-joint`, `overloaded-run`, `return-through-shield`; for what was fitted otherwise, `fuse-outsizes-wire`. Left
//! out is what only tells how a fault was put on the sheet (the wires of a dead part lie loose on paper, not in the vehicle), and
//! what a *second* fault would do (`short-never-clears`, `wire-before-fuse`). A short that damages a wire before a fuse opens carries more than the
//! wire bears, so the time course finds nothing that these do not.
//!
//! **How it is told without an analysis for each.** Most follow at once from what the checks ask, which a test holds against the checks
//! themselves: a live wire that is cut ends bare and live; what a joint turns to heat is I²R, with the current that the engine finds
//! with the joint in it ([`Trial::with_joint`]); what a touch draws is the voltage over the resistance of the way. Where that comes near a
//! limit, and where the bench sees other wires carry more, or grounds drift apart, the sheet with the fault in it is analysed.

mod fitted;
mod touches;

use checks::{Asks, Grade};
use circuit::{Bench, DeviceRef, Foreseen, Placed, Probe, Purpose, Shown, Study, Trial, TrialNet};
use model::breaks::{Break, HALF_WAY};
use model::conductor::{Condition, Size};
use model::quantity::{Amps, Ohms};
use model::{PartId, PartKind, Role, RunId, Settings, Sheet, TerminalRef};
use ordered::{OrderedMap, OrderedSet};
use std::ops::Range;

/// A single fault.
#[derive(Clone, Debug, PartialEq)]
pub enum Fault {
    /// Something is broken.
    Broken(Break),
    /// A run is thinner than drawn.
    Thinner {
        /// The run.
        run: RunId,
        /// What it is instead: the thickest that is too thin for its fuse.
        size: Size,
        /// By how much more it resists.
        more: Ohms,
    },
    /// A fuse is larger than drawn.
    Larger {
        /// The device.
        device: DeviceRef,
        /// What it is instead: the smallest that is too large for its wires; `None` for something that is no fuse.
        rating: Option<Amps>,
    },
}

/// Why a fault is of grade Stop.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Harm {
    /// A wire ends bare and live.
    LiveEnd,
    /// A source is shorted: more flows than the wire bears until a fuse opens, where there is one.
    Short,
    /// A joint becomes so hot that plastic melts.
    HotJoint,
    /// Something else carries more than it bears.
    Overload,
    /// The fuse lets more through than the wire bears.
    Fuse,
}

/// A fault of grade Stop.
#[derive(Clone, Debug, PartialEq)]
pub struct Hazard {
    /// What is wrong.
    pub fault: Fault,
    /// Why it is that grave.
    pub harm: Harm,
}

impl Hazard {
    /// What it is to the meter; nothing for what no meter sees.
    #[must_use]
    pub fn broken(&self) -> Option<Break> {
        match &self.fault {
            Fault::Broken(broken) => Some(broken.clone()),
            Fault::Thinner { run, more, .. } => Some(Break::Resistive {
                run: *run,
                more: *more,
            }),
            Fault::Larger { .. } => None,
        }
    }
}

/// Checks that tell what a fault does by itself.
const COUNTS: [&str; 4] = [
    "damaged-run",
    "hot-joint",
    "overloaded-run",
    "return-through-shield",
];
/// Checks whose findings these look at: the cause is told, not what follows from it.
const CAUSES: [&str; 4] = ["ground-forbidden", "ground-surface", "hot-place", "poor-ending"];
/// Voltage that is there to be divided, in volts.
const SUPPLY: f64 = 12.0;
/// The least bad joint is put in so that it turns this many times the limit to heat, whatever law its load draws by.
const OVER: f64 = 1.5;
/// Volts that a joint may take in bursts without turning anything off.
const LOST: f64 = 1.2;
/// A load of constant power draws the more the less is left to it, until at half the voltage nothing holds any more: just before that, this
/// is the share of what it resists at the full voltage.
const HALVES: f64 = 0.24;
/// Nearer to a limit than this, the checks are asked.
const NEAR: f64 = 1.2;
/// By how many volts more grounds have to drift apart until shields are asked for, and by what a current has to rise.
const DRIFT: f64 = 0.02;
const RISE: f64 = 1.02;

struct Universe<'a> {
    bench: &'a Bench,
    /// Number of the state that the settings ask for.
    state: usize,
    sheet: &'a Sheet,
    settings: &'a Settings,
    /// The same with no other checks than those that count, and those that they look at.
    counting: Settings,
    study: &'a Study,
    asks: &'a Asks,
    /// What the checks say of grade Stop without a fault.
    known: OrderedSet<(&'static str, Vec<PartId>, Vec<RunId>)>,
    flows: OrderedMap<RunId, Flow>,
    /// Volts between the grounds of equipment that signal leads join, with nothing wrong.
    grounds: Vec<(Placed, f64)>,
    melts: f64,
    /// The sheet, in which joints are tried.
    trial: Option<Trial<'a>>,
    out: Vec<Hazard>,
}

/// What a run carries with nothing wrong.
struct Flow {
    placed: Placed,
    /// Its place among the runs of the sheet.
    place: usize,
    mean: f64,
    /// Steady over mean.
    steady: f64,
    burst: f64,
    bears: Option<f64>,
}

/// A share of all faults, as many as are told in a moment: runs and parts by their places.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Share {
    Runs(Range<usize>),
    /// Runs that touch the body.
    Touches(Range<usize>),
    /// Supply terminals that touch: those on the runs of which a touch was found to be grave.
    Joined,
    Parts(Range<usize>),
    Fitted,
}

/// Runs or parts of one share.
const AT_ONCE: usize = 12;

/// All of a sheet, in their order.
pub(super) fn shares(sheet: &Sheet) -> Vec<Share> {
    let parts = |count: usize| {
        (0..count)
            .step_by(AT_ONCE)
            .map(move |at| at..(at + AT_ONCE).min(count))
    };
    let mut all: Vec<Share> = parts(sheet.runs.len()).map(Share::Runs).collect();
    all.extend(parts(sheet.runs.len()).map(Share::Touches));
    all.push(Share::Joined);
    all.extend(parts(sheet.parts.len()).map(Share::Parts));
    all.push(Share::Fitted);
    all
}

/// Those of a share; what the checks say of grade Stop as it stands counts for nothing here. `before` are those of the shares before it.
pub(super) fn hazards(
    bench: &Bench,
    state: usize,
    settings: &Settings,
    analysis: &checks::Analysis,
    asks: &Asks,
    share: &Share,
    before: &[Hazard],
) -> Vec<Hazard> {
    let sheet = bench.sheet();
    let study = &analysis.study;
    let factor = checks::limit(settings, "ampacity-factor").unwrap_or(1.0);
    let flows = study.runs.iter().filter_map(|(id, flow)| {
        let mean = flow.current.mean.0.abs();
        let rms = flow.current.rms.0.abs();
        Some((
            *id,
            Flow {
                placed: bench.place(&Probe::Amps(*id))?,
                place: sheet.runs.keys().position(|run| run == id)?,
                mean,
                steady: if mean > 1e-3 { rms / mean } else { 1.0 },
                burst: flow.current.burst.0.abs(),
                bears: flow.allowable.map(|allowable| allowable.0 * factor),
            },
        ))
    });
    let net = TrialNet::of(sheet, settings);
    let mut it = Universe {
        trial: Trial::all(&net, std::slice::from_ref(settings)).pop(),
        flows: flows.collect(),
        known: stops(&analysis.findings).collect(),
        grounds: Vec::new(),
        melts: checks::limit(settings, "joint-power-melt").unwrap_or(10.0),
        out: Vec::new(),
        bench,
        state,
        sheet,
        settings,
        counting: counting(settings),
        study,
        asks,
    };
    it.grounds = it.grounds();
    match share {
        Share::Runs(range) => it.of_runs(range),
        Share::Touches(range) => it.touches(range),
        Share::Joined => it.joined(before),
        Share::Parts(range) => it.of_parts(range),
        Share::Fitted => it.fitted_otherwise(),
    }
    it.out
}

/// Settings under which no check is asked but those that count, and those that they look at.
fn counting(settings: &Settings) -> Settings {
    let mut only = settings.clone();
    let is_asked = |name: &str| COUNTS.contains(&name) || CAUSES.contains(&name);
    let others = checks::CHECKS.iter().map(|check| check.name);
    only.allowed
        .extend(others.filter(|name| !is_asked(name)).map(str::to_owned));
    only
}

/// What counts of what the checks say, by check, parts and runs.
fn stops(findings: &[checks::Finding]) -> impl Iterator<Item = (&'static str, Vec<PartId>, Vec<RunId>)> + '_ {
    let count = |finding: &&checks::Finding| {
        finding.grade == Grade::Stop && !finding.undecided && COUNTS.contains(&finding.check)
    };
    findings
        .iter()
        .filter(count)
        .map(|it| (it.check, it.parts.clone(), it.runs.clone()))
}

impl<'a> Universe<'a> {
    fn add(&mut self, broken: Break, harm: Harm) {
        let fault = Fault::Broken(broken);
        self.out.push(Hazard { fault, harm });
    }

    fn volts(&self, foreseen: &Foreseen, placed: &Placed) -> f64 {
        match self.bench.read(self.state, foreseen, placed) {
            Some(Shown::Volts(volts)) => volts.0.abs(),
            _ => 0.0,
        }
    }

    fn amps(&self, foreseen: &Foreseen, placed: &Placed) -> f64 {
        match self.bench.read(self.state, foreseen, placed) {
            Some(Shown::Amps(amps)) => amps.0.abs(),
            _ => 0.0,
        }
    }

    fn grounds(&self) -> Vec<(Placed, f64)> {
        let minus = |part: PartId| {
            let is_head = matches!(self.sheet.parts.get(&part)?.is, PartKind::HeadUnit(_));
            Some(TerminalRef::new(part, if is_head { "31" } else { "-" }))
        };
        let normal = self.bench.normal(self.state);
        let leads = self.sheet.runs.values().filter_map(|run| {
            let ends = [run.from.terminal()?, run.to.terminal()?];
            let line = ends
                .iter()
                .all(|at| self.sheet.role(at).is_some_and(Role::is_line));
            let probe = Probe::Volts(minus(ends[0].part)?, minus(ends[1].part)?);
            let placed = self.bench.place(&probe).filter(|_| line)?;
            Some((placed, self.volts(normal?, &placed)))
        });
        leads.collect()
    }

    /// Whether something else than the fault itself has to be asked for: a wire carries more, near what it bears, or grounds of equipment
    /// drift apart.
    fn stirs(&self, foreseen: &Foreseen) -> bool {
        let rises = |flow: &Flow| {
            flow.bears.is_some_and(|bears| {
                let amps = self.amps(foreseen, &flow.placed);
                amps > flow.mean * RISE + 0.1 && amps * flow.steady * NEAR > bears
            })
        };
        self.drift(foreseen) || self.flows.values().any(rises)
    }

    /// Whether grounds of equipment drift apart.
    fn drift(&self, foreseen: &Foreseen) -> bool {
        let mut grounds = self.grounds.iter();
        grounds.any(|(placed, before)| self.volts(foreseen, placed) > before + DRIFT)
    }

    /// Whether the checks say so of the sheet with the fault in it.
    fn is_grave(&self, broken: &Break) -> bool {
        let Ok(thrown) = broken.thrown(self.sheet) else {
            return false;
        };
        // How warm a touch itself becomes says how it was put on the sheet; what counts is what it makes the wiring carry.
        let touch = matches!(broken, Break::Grounded { .. } | Break::Joined { .. });
        let counts = |runs: &[RunId]| !touch || runs.iter().any(|run| self.sheet.runs.contains_key(run));
        let laid = body::lay(&thrown, self.settings);
        // None of these checks looks at bursts, at shorts, or at what is drawn at rest.
        let study = circuit::study_steady(&laid, self.settings);
        let findings = checks::judge(&laid, &self.counting, &study);
        stops(&findings).any(|it| counts(&it.2) && !self.known.contains(&it))
    }

    fn foresee(&self, broken: &Break) -> Option<Foreseen> {
        let fault = self.bench.fault(std::slice::from_ref(broken))?;
        self.bench.foresee(&fault, self.state)
    }

    /// A fault that is grave only by what it stirs.
    fn weigh(&mut self, broken: Break) {
        let stirs = self.foresee(&broken).is_some_and(|it| self.stirs(&it));
        if stirs && self.is_grave(&broken) {
            self.add(broken, Harm::Overload);
        }
    }

    fn of_runs(&mut self, range: &Range<usize>) {
        let sheet: &'a Sheet = self.sheet;
        for (&id, run) in sheet.runs.iter().skip(range.start).take(range.len()) {
            let lands = run.from.terminal().is_some() && run.to.terminal().is_some();
            if !lands || run.wire.condition.value() == Some(Condition::Cut) {
                continue;
            }
            let asked = self.asks.runs.get(&id).copied();
            let cut = Break::Cut {
                run: id,
                at: HALF_WAY,
            };
            if asked.is_some_and(|it| it.live) {
                self.add(cut, Harm::LiveEnd);
            } else if matches!(self.purpose(id), Purpose::Return | Purpose::Signal) {
                self.weigh(cut);
            }
            if !asked.is_some_and(|it| it.burdened) {
                continue;
            }
            if let Some(flow) = self.flows.get(&id) {
                let (amps, burst) = (flow.mean * flow.steady, flow.burst);
                self.joints(amps, burst, Some(id), &|more| Break::Resistive { run: id, more });
            }
        }
    }

    fn purpose(&self, run: RunId) -> Purpose {
        self.study
            .runs
            .get(&run)
            .map(|flow| flow.purpose)
            .unwrap_or_default()
    }

    /// Bad joints where so much flows steadily, and in bursts: the least that is grave whatever law the load draws by, and up to three times
    /// that, as long as what is lost in bursts turns nothing off. `on` is a run that carries what flows through it.
    fn joints(&mut self, amps: f64, burst: f64, on: Option<RunId>, broken: &dyn Fn(Ohms) -> Break) {
        // A share x of what the load resists takes 12 V · I · x / (1 + x)².
        let share = OVER * self.melts / (SUPPLY * amps.max(1e-9));
        let share = if share <= 0.25 {
            (1.0 - 2.0 * share - libm::sqrt(1.0 - 4.0 * share)) / (2.0 * share)
        } else if share <= 0.6 {
            1.0
        } else if self.melts < SUPPLY * amps {
            HALVES
        } else {
            return;
        };
        let least = share * SUPPLY / amps;
        let most = if self.is_of_source(on) {
            0.0
        } else {
            LOST / burst.max(amps)
        };
        // Where a load turns off with that, a little less may be grave all the same.
        // By constant power, and by constant current as long as there is voltage left.
        let by_current = 1.02 * self.melts / (SUPPLY * amps);
        let of_power = [HALVES, HALVES / 2.0, by_current].map(|it| it / share);
        let others: &[f64] = if self.is_of_source(on) {
            &[0.75, 3.0, 10.0, 30.0]
        } else if share >= HALVES {
            of_power.as_slice()
        } else if least > most {
            &[0.75]
        } else {
            &[]
        };
        if !self.joint(broken(Ohms(least)), least, on) {
            for times in others {
                if self.joint(broken(Ohms(times * least)), times * least, on) {
                    break;
                }
            }
        }
        let larger = most.min(3.0 * least);
        if larger > NEAR * least {
            self.joint(broken(Ohms(larger)), larger, on);
        }
    }

    /// Whether a run lies right at a source, so that what flows in it is what sources give one another, which little changes.
    fn is_of_source(&self, run: Option<RunId>) -> bool {
        let Some(it) = run.and_then(|run| self.sheet.runs.get(&run)) else {
            return false;
        };
        it.ends().iter().filter_map(|end| end.terminal()).any(|at| {
            matches!(
                self.sheet.parts.get(&at.part).map(|part| &part.is),
                Some(
                    PartKind::Battery(_)
                        | PartKind::Alternator(_)
                        | PartKind::Converter(_)
                        | PartKind::Isolator(_)
                )
            )
        }) || run.is_some_and(|run| self.purpose(run) == Purpose::BetweenSources)
    }

    /// A bad joint: grave by its own heat, or by what it stirs. `on` is a run that carries all that flows through it. Whether it is grave.
    fn joint(&mut self, broken: Break, more: f64, on: Option<RunId>) -> bool {
        let with = self.trial.as_mut().and_then(|trial| trial.with_joint(&broken));
        let heat = with
            .as_ref()
            .filter(|_| on.is_some())
            .map(|with| with.through * with.through * more);
        let grave = match heat {
            Some(heat) if heat > self.melts * NEAR => true,
            Some(heat) if heat * NEAR < self.melts => {
                let rises = |flow: &Flow| {
                    let amps = with.as_ref().and_then(|with| with.runs.get(flow.place)).copied();
                    flow.bears.zip(amps).is_some_and(|(bears, amps)| {
                        amps > flow.mean * flow.steady * RISE + 0.1 && amps * NEAR > bears
                    })
                };
                let stirs =
                    self.flows.values().any(rises) || self.foresee(&broken).is_some_and(|it| self.drift(&it));
                stirs && self.is_grave(&broken)
            }
            _ => self.is_grave(&broken),
        };
        if grave {
            self.add(broken, Harm::HotJoint);
        }
        grave
    }

    fn of_parts(&mut self, range: &Range<usize>) {
        let sheet: &'a Sheet = self.sheet;
        for (&id, part) in sheet.parts.iter().skip(range.start).take(range.len()) {
            let open = Break::Open {
                part: id,
                output: None,
            };
            match &part.is {
                PartKind::Fuse(_)
                | PartKind::Breaker(_)
                | PartKind::Switch(_)
                | PartKind::Relay(_)
                | PartKind::Isolator(_)
                | PartKind::Ground(_) => {
                    self.weigh(open);
                    let (amps, burst, on) = self.through(id);
                    self.joints(amps, burst, on, &|more| Break::Poor { part: id, more });
                }
                PartKind::Plug(_) => self.weigh(open),
                PartKind::Block(it) => {
                    for (at, fuse) in it.fuses.0.iter().enumerate() {
                        if fuse.is_some() {
                            let output = Some(format!("out{}", at + 1).as_str().into());
                            self.weigh(Break::Open { part: id, output });
                        }
                    }
                }
                PartKind::Amplifier(_) => {
                    self.weigh(Break::Dead { part: id });
                    let turned = Break::Reversed { part: id, coil: None };
                    if self.is_grave(&turned) {
                        self.add(turned, Harm::Overload);
                    }
                }
                PartKind::Battery(_)
                | PartKind::Alternator(_)
                | PartKind::Converter(_)
                | PartKind::HeadUnit(_)
                | PartKind::Processor(_)
                | PartKind::Load(_) => self.weigh(Break::Dead { part: id }),
                _ => {}
            }
        }
    }

    /// What flows through a part steadily and in bursts, and the run on it that carries most of that: all of it, or nothing is told.
    fn through(&self, id: PartId) -> (f64, f64, Option<RunId>) {
        let first = match self.sheet.parts.get(&id).map(|part| &part.is) {
            Some(PartKind::Ground(_)) => "stud",
            Some(PartKind::Isolator(_)) => "main",
            Some(PartKind::Relay(_)) => "30",
            _ => "in",
        };
        let at = TerminalRef::new(id, first);
        let (mut sum, mut most, mut burst, mut on) = (0.0_f64, 0.0_f64, 0.0_f64, None);
        for (run, it) in self.sheet.runs_of(id) {
            let Some(flow) = self.study.runs.get(&run) else {
                continue;
            };
            let rms = flow.current.rms.0;
            let mut own = 0.0;
            if it.from.terminal() == Some(&at) {
                own -= rms;
            }
            if it.to.terminal() == Some(&at) {
                own += rms;
            }
            sum += own;
            if own.abs() > most {
                (most, on) = (own.abs(), Some(run));
            }
            burst = burst.max(flow.current.burst.0.abs());
        }
        let sum = sum.abs();
        (sum, burst, on.filter(|_| most > 0.95 * sum))
    }
}

#[cfg(test)]
mod tests;
