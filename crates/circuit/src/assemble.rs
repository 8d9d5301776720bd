//! Puts the whole study of a sheet together, in the order in which one result needs another.

use crate::beside::beside;
use crate::faults::{self, far_shorts};
use crate::flows::{self, Points};
use crate::measured::as_measured;
use crate::network::{BODY, Closes, Kind, Network, NetworkRun, NetworkTerminal, values};
use crate::solve::{Demand, Level, Operating, Operator, demands, stay_on};
use crate::speakers::Speakers;
use crate::study::*;
use crate::trace::Resistances;
use crate::wired::Wired;
use crate::{devices, energy, protection};
use model::job::{Conditions, VehicleState};
use model::quantity::{Amps, Hours, Volts};
use model::{PartId, PartKind, Settings, Sheet, TerminalRef, Wire};
use ordered::Sort as _;
use ordered::{OrderedMap, OrderedSet};
use std::sync::OnceLock;
use words::say;

/// Rounds in which currents and temperatures settle together; each brings the error down by the share of the
/// resistance that warming adds, a fifth or less in sound systems.
const HEAT_ROUNDS: usize = 4;
/// Where the supply collapses and only what flows is asked, it is found to a part in ten thousand, by so many halvings: each is a search of its
/// own.
pub(crate) const ROUGHLY: u32 = 14;
/// Largest relative imbalance of an answer.
const BALANCE_LIMIT: f64 = 1e-6;

/// From so many parts on, what needs nothing of one another is worked side by side: below, a thread costs more than it saves.
pub const MANY_PARTS: usize = 500;

/// Everything the engine can say of a sheet under these settings, laid in the vehicle's body where the settings tell one.
#[must_use]
pub fn study(sheet: &Sheet, settings: &Settings) -> Study {
    study_laid(&body::lay(sheet, settings), settings)
}

/// The same of a sheet that [`body::lay`] made.
#[must_use]
pub fn study_laid(sheet: &Sheet, settings: &Settings) -> Study {
    study_in(sheet, settings, sheet.parts.len() >= MANY_PARTS)
}

/// The same as far as steady currents tell it, for whoever asks of hundreds of faults what each makes the wiring carry. Bursts are taken for no
/// more than what flows steadily; shorts, and so what could flow through devices, charging and standing are not looked at.
#[must_use]
pub fn study_steady(sheet: &Sheet, settings: &Settings) -> Study {
    let sheet = &*as_measured(sheet);
    let net = Network::build_on(sheet, &body::Metal::of(sheet, settings));
    let sound = crate::speakers::study_sound(sheet, settings);
    study_on(&net, sheet, settings, sound, Extent::Steady)
}

/// The whole, with what can be worked side by side or one after the other.
fn study_in(sheet: &Sheet, settings: &Settings, side_by_side: bool) -> Study {
    let sheet = &*as_measured(sheet);
    // The network is built beside the sound and lent to all that follows, so that it needs a place which outlives both.
    let built = OnceLock::new();
    // The sound side asks nothing of the network.
    let (sound, ready) = beside(
        side_by_side,
        || crate::speakers::study_sound(sheet, settings),
        || {
            let build = || Network::build_on(sheet, &body::Metal::of(sheet, settings));
            Ready::of(built.get_or_init(build), sheet, &settings.conditions)
        },
    );
    study_ready(ready, sheet, settings, sound, Extent::Whole { side_by_side })
}

/// How much of a sheet is studied.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Extent {
    /// Everything.
    Whole {
        /// Whether what can be is worked side by side.
        side_by_side: bool,
    },
    /// What [`study_steady`] tells.
    Steady,
}

/// What a network, with the sound side of its sheet, tells to this extent. The network is one that was built of this sheet, into which what was
/// measured of its wires is put already.
pub(crate) fn study_on(
    net: &Network,
    sheet: &Sheet,
    settings: &Settings,
    sound: (Speakers, Signal),
    extent: Extent,
) -> Study {
    let ready = Ready::of(net, sheet, &settings.conditions);
    study_ready(ready, sheet, settings, sound, extent)
}

/// A network made ready for solving, in the state of the vehicle that is asked for.
struct Ready<'a> {
    net: &'a Network,
    operator: Operator<'a>,
    heat: RunHeat,
}

impl<'a> Ready<'a> {
    fn of(net: &'a Network, sheet: &'a Sheet, conditions: &Conditions) -> Self {
        Self {
            net,
            operator: Operator::new(net, sheet, conditions.state, Vec::new()),
            heat: RunHeat::of(net, sheet, conditions),
        }
    }
}

fn study_ready(
    ready: Ready<'_>,
    sheet: &Sheet,
    settings: &Settings,
    (speakers, signal): (Speakers, Signal),
    extent: Extent,
) -> Study {
    let Ready {
        net,
        mut operator,
        heat,
    } = ready;
    let side_by_side = extent == Extent::Whole { side_by_side: true };
    let whole = extent != Extent::Steady;
    let conditions = &settings.conditions;
    let mut study = Study {
        notes: net.notes.clone(),
        ..Study::default()
    };
    study.assumed = net
        .assumed
        .iter()
        .map(|(part, run, name)| Assumption {
            part: *part,
            run: *run,
            property: name,
        })
        .collect();

    study.signal = signal;
    let delivered = |part: PartId| speakers.output.get(&part).copied().unwrap_or_default();
    let asked = |state: VehicleState| asked_of(sheet, conditions, state, &study.signal.turn_on, delivered);
    operator.set_state(conditions.state, asked(conditions.state));
    if !whole {
        operator.tell_roughly(ROUGHLY);
    }
    let (wired, temperatures) = beside(
        side_by_side,
        || Wired::new(net, sheet, conditions),
        || settle_heat(&mut operator, net, &heat),
    );
    let ohms = operator.resistances().to_vec();
    let models = operator.models.clone();
    // Ordered once: shorts are solved on the same pattern.
    let system = whole.then(|| operator.system_anew());
    // What shorts do is asked of the network alone, and so is worked beside what flows in it.
    let ((mut traced, (prospective, shorts)), (points, resting)) = beside(
        side_by_side,
        || {
            let shorts = system.map(|system| {
                devices::prospective(net, sheet, system, |solved| {
                    far_shorts(
                        solved,
                        &faults::Device::all(net, sheet),
                        &wired.protection,
                        &wired.guarded,
                        &temperatures,
                        conditions,
                        &models,
                        &|device| protection::feeding(net, &wired.stretches, &wired.reaches, device),
                    )
                })
            });
            (wired.tracer.circuits(&ohms), shorts.unwrap_or_default())
        },
        || {
            let rms = operator.operate_again(Level::Rms);
            let mean = operator.operate(Level::Mean);
            let burst = if whole {
                operator.operate(Level::Burst)
            } else {
                rms.clone()
            };
            let resting = whole.then(|| {
                energy::resting_points(
                    &mut operator,
                    asked(VehicleState::EngineOff),
                    asked(VehicleState::Parked),
                )
            });
            (Points { mean, rms, burst }, resting)
        },
    );
    drop(operator);
    study.protection = wired.protection;
    study.shorts = shorts;

    study.outcome = outcome(net, sheet, &points);
    study.balance = balance(&points);
    if !balanced(&points) {
        study.outcome = Outcome::Failed {
            why: say!(
                "unbalanced",
                current = format!("{:.1e}", study.balance.relative_residual),
                power = format!("{:.1e}", study.balance.relative_power),
            ),
        };
    }
    // Resistances along ways are found on a matrix that is ordered anew: without the loads it falls into much shorter ways.
    let (nodes, conducting) = net.nodes_and_ohms(&points.mean);
    let shield = |run: usize| {
        net.runs
            .get(run)
            .and_then(|r| points.mean.currents.get(r.branch))
            .copied()
            .unwrap_or(0.0)
    };
    let solved = !matches!(study.outcome, Outcome::Failed { .. });
    let mut served = std::mem::take(&mut traced.served);
    let (devices, (resistances, served)) = beside(
        side_by_side,
        || {
            if solved {
                study.runs = flows::runs(
                    net,
                    sheet,
                    conditions,
                    &points,
                    &temperatures,
                    &wired.purposes,
                    &wired.allowable,
                );
                study.parts = flows::parts(net, sheet, &points);
                study.voltages = voltages(net, &points.mean);
            }
            devices::devices(
                net,
                &points,
                &wired.stretches,
                &wired.reaches,
                &wired.tracer.back.blocks,
                wired.guarded,
                &traced.serves,
                &prospective,
            )
        },
        || {
            let served: Vec<OrderedSet<PartId>> = std::mem::take(&mut served)
                .into_iter()
                .map(|parts| parts.into_iter().collect())
                .collect();
            (traced.resistances(&Resistances::new(nodes, &conducting)), served)
        },
    );
    study.devices = devices;
    traced.fill(net, resistances, shield);
    study.circuits = traced.circuits;
    if solved {
        drops(net, &points, &traced.nearest, &mut study);
        offsets(net, sheet, &points, &mut study);
        if let Some((off, parked)) = resting {
            let parking = conditions.parking.or(Hours(336.0));
            study.energy = energy::energy(net, sheet, parking, &models, &points.mean, &off, &parked);
        }
    }
    study.channels = speakers.channels;
    study.drivers = speakers.drivers;
    study.assumed.extend(speakers.assumed);
    // Where runs are told of, all of them are, in the same order.
    for (flow, served) in study.runs.values_mut().zip(served) {
        flow.serves = served;
    }
    notes(net, sheet, &mut study);
    study
}

/// The voltages of all terminals that a conducting way ties to a source.
fn voltages(net: &Network, point: &Operating) -> OrderedMap<String, Volts> {
    let voltage = |terminal: &NetworkTerminal| {
        let driven = point.driven.get(terminal.node) == Some(&true);
        let part = *net.parts.get(terminal.part).filter(|_| driven)?;
        let key = voltage_key(&TerminalRef {
            part,
            terminal: terminal.name.clone(),
        });
        Some((key, Volts(point.voltages[terminal.node])))
    };
    // In the order of its keys a map is made far sooner than otherwise.
    in_order_of_keys(net).filter_map(voltage).collect()
}

/// The terminals in the order of their keys, `p1.in`, `p10.in`, `p2.in`: by the digits of their part, then by name.
fn in_order_of_keys(net: &Network) -> impl Iterator<Item = &NetworkTerminal> {
    let mut parts: Vec<(u64, usize)> = net.parts.iter().map(|id| u64::from(id.0)).zip(0..).collect();
    // Filled up with noughts to ten digits, numbers are in the order of their digits; of two alike, as 1 and 10, the shorter is first.
    parts.order_by_key(|(number, _)| {
        let mut filled = *number;
        while filled < 1_000_000_000 && filled != 0 {
            filled *= 10;
        }
        (filled, *number)
    });
    parts.into_iter().flat_map(|(_, part)| {
        let mut own: Vec<&NetworkTerminal> = net.terminals_of(part).iter().collect();
        own.order_by(|a, b| a.name.cmp(&b.name));
        own
    })
}

/// A sheet made ready at one level.
pub(crate) struct Prepared {
    pub(crate) net: Network,
    pub(crate) point: Operating,
    /// Of each source, in the order of the network.
    pub(crate) models: Vec<crate::solve::SourceModel>,
    /// Temperature of the conductor of each run in °C, settled at RMS level.
    pub(crate) temperatures: Vec<f64>,
}

/// The operating point of a sheet at one level, as [`study`] finds it: temperatures settled at RMS level.
pub(crate) fn prepare(sheet: &Sheet, settings: &Settings, level: Level) -> Prepared {
    prepare_measured(&as_measured(sheet), settings, level)
}

/// The same of a sheet into which what was measured is put already.
pub(crate) fn prepare_measured(sheet: &Sheet, settings: &Settings, level: Level) -> Prepared {
    let conditions = &settings.conditions;
    let net = Network::build_on(sheet, &body::Metal::of(sheet, settings));
    let speakers = crate::speakers::study_speakers(sheet, settings);
    let asked = demands(sheet, conditions, |part| {
        speakers.output.get(&part).copied().unwrap_or_default()
    });
    let mut operator = Operator::new(&net, sheet, conditions.state, asked);
    let temperatures = warm_up(&mut operator, &net, sheet, conditions);
    let point = operator.operate(level);
    let models = operator.models.clone();
    drop(operator);
    Prepared {
        net,
        point,
        models,
        temperatures,
    }
}

/// What every part asks in a state of the vehicle. Parked, what its turn-on lead keeps awake stays on.
pub(crate) fn asked_of(
    sheet: &Sheet,
    conditions: &Conditions,
    state: VehicleState,
    turn_on: &OrderedMap<PartId, TurnOnFed>,
    delivered: impl Fn(PartId) -> crate::speakers::OutputPower,
) -> Vec<Demand> {
    let asked_in = |state: VehicleState| {
        let conditions = Conditions {
            state,
            ..conditions.clone()
        };
        demands(sheet, &conditions, &delivered)
    };
    let mut all = asked_in(state);
    if state == VehicleState::Parked && turn_on.values().any(|fed| fed.always_live) {
        stay_on(sheet, turn_on, &asked_in(VehicleState::EngineOff), &mut all);
    }
    all
}

/// What the temperatures of runs follow from, run by run.
pub(crate) struct RunHeat {
    /// How the wire of each run warms with its current.
    pub(crate) warming: Vec<values::Warming>,
    /// Resistance at 20 °C of what warms in its branch, in ohms: of the wire without its endings. Nothing of a signal lead between line
    /// jacks, whose branch is a shield: it is no part of the core, and its table tells a range of one to seven at no temperature.
    pub(crate) cold: Vec<f64>,
    /// Resistance of its whole branch at 20 °C, in ohms: the wire with its endings, or a shield with its plugs.
    pub(crate) whole: Vec<f64>,
}

impl RunHeat {
    pub(crate) fn of(net: &Network, sheet: &Sheet, conditions: &Conditions) -> Self {
        // Runs of a network stand as those of its sheet: in the order of their ids.
        let wires = || sheet.runs.values().map(|run| &run.wire);
        let warms = |(run, wire): (&NetworkRun, &Wire)| {
            if run.line { 0.0 } else { values::wire_at_20(wire) }
        };
        let runs = net.runs.iter();
        Self {
            warming: wires()
                .map(|wire| values::Warming::of(wire, conditions))
                .collect(),
            cold: net.runs.iter().zip(wires()).map(warms).collect(),
            whole: runs.map(|run| net.branches[run.branch].resistance).collect(),
        }
    }
}

/// Settles temperatures and currents together at RMS level: by run, the temperature of its conductor in °C. Leaves the resistances in the
/// operator.
pub(crate) fn warm_up(
    operator: &mut Operator<'_>,
    net: &Network,
    sheet: &Sheet,
    conditions: &Conditions,
) -> Vec<f64> {
    settle_heat(operator, net, &RunHeat::of(net, sheet, conditions))
}

/// The same of runs of which it is known what their temperatures follow from.
pub(crate) fn settle_heat(operator: &mut Operator<'_>, net: &Network, heat: &RunHeat) -> Vec<f64> {
    let RunHeat { warming, cold, whole } = heat;
    let mut temperatures: Vec<f64> = warming.iter().map(|w| w.ambient).collect();
    for round in 0..HEAT_ROUNDS {
        let wires = cold.iter().zip(whole).zip(warming.iter().zip(&temperatures));
        for (run, ((at_20, whole), (warming, temperature))) in net.runs.iter().zip(wires) {
            let warmer = at_20 * (warming.factor(*temperature) - 1.0);
            operator.set_resistance(run.branch, whole + warmer);
        }
        if round + 1 == HEAT_ROUNDS {
            break;
        }
        let currents = if round == 0 {
            operator.operate_for_currents(Level::Rms)
        } else {
            operator.operate_again_for_currents(Level::Rms)
        };
        for ((run, warming), temperature) in net.runs.iter().zip(warming).zip(&mut temperatures) {
            let current = if run.line { 0.0 } else { currents[run.branch] };
            *temperature = warming.temperature(current);
        }
    }
    temperatures
}

impl Network {
    /// The branches that conduct at a point, as (node, node, ohms), with the number of nodes.
    fn nodes_and_ohms(&self, point: &Operating) -> (usize, Vec<(usize, usize, f64)>) {
        let list = self
            .branches
            .iter()
            .zip(&point.elements)
            .filter(|(b, _)| b.carries)
            .filter_map(|(b, e)| match e.law {
                crate::solve::Law::Resistance(ohms) => Some((b.nodes[0], b.nodes[1], ohms)),
                _ => None,
            })
            .collect();
        (self.nodes, list)
    }
}

fn outcome(net: &Network, sheet: &Sheet, points: &Points) -> Outcome {
    if !points.mean.driven.iter().any(|d| *d) && !points.burst.driven.iter().any(|d| *d) {
        return Outcome::NothingToSolve;
    }
    let burst = &points.burst;
    if burst.deliverable >= 1.0 {
        return Outcome::Solved;
    }
    let mut blamed_runs = Vec::new();
    let mut blamed_parts = Vec::new();
    for &branch in &burst.blamed {
        let Some(it) = net.branches.get(branch) else {
            continue;
        };
        match it.kind {
            Kind::Wire { run } | Kind::Shield { run } => blamed_runs.extend(net.runs.get(run).map(|r| r.id)),
            _ => {
                if let Some(&id) = net.parts.get(it.part)
                    && sheet.parts.contains_key(&id)
                    && !blamed_parts.contains(&id)
                {
                    blamed_parts.push(id);
                }
            }
        }
    }
    Outcome::Collapsed {
        deliverable: model::quantity::Share(burst.deliverable),
        blamed_runs,
        blamed_parts,
    }
}

fn closures(points: &Points) -> [&crate::solve::Closure; 3] {
    [&points.mean.closure, &points.rms.closure, &points.burst.closure]
}

fn balance(points: &Points) -> Balance {
    let mut out = Balance::default();
    for closure in closures(points) {
        out.residual = out.residual.max(Amps(closure.residual));
        out.relative_residual = out.relative_residual.max(closure.relative_residual());
        out.relative_power = out.relative_power.max(closure.relative_power().abs());
    }
    out
}

/// Whether all three points were found and balance. Written so that a number that is not one fails.
fn balanced(points: &Points) -> bool {
    let settled = [&points.mean, &points.rms, &points.burst]
        .iter()
        .all(|p| p.settled);
    settled
        && closures(points)
            .iter()
            .all(|c| c.relative_residual() < BALANCE_LIMIT && c.relative_power().abs() < BALANCE_LIMIT)
}

/// Voltage lost between the poles of a source and a part: of the battery with the least resistance to it, as that is where
/// a meter is put; of another source where no battery feeds the part.
fn drops(net: &Network, points: &Points, nearest: &OrderedMap<PartId, usize>, study: &mut Study) {
    let point = &points.burst;
    for consumer in &net.consumers {
        let Some(id) = net.parts.get(consumer.part) else {
            continue;
        };
        let Some(source) = nearest.get(id).and_then(|s| net.sources.get(*s)) else {
            continue;
        };
        let Some(circuit) = study.circuits.get_mut(id).filter(|c| c.drop.is_none()) else {
            continue;
        };
        let feed = flows::across(point, source.plus, consumer.plus);
        let back = flows::across(point, consumer.minus, source.minus);
        circuit.feed_drop = feed.map(Volts);
        circuit.return_drop = back.map(Volts);
        circuit.drop = feed.zip(back).map(|(a, b)| Volts(a + b));
    }
}

/// Voltage between the grounds of equipment that signal leads join, and what their shields carry, at burst level.
fn offsets(net: &Network, sheet: &Sheet, points: &Points, study: &mut Study) {
    let minus = |terminal: usize| {
        let part = net.terminals.get(terminal)?.part;
        ["-", "31"].iter().find_map(|name| net.node_by_name(part, name))
    };
    for run in &net.runs {
        if !run.line {
            continue;
        }
        let [Some(a), Some(b)] = run.terminals else {
            continue;
        };
        let (Some(x), Some(y)) = (minus(a), minus(b)) else {
            continue;
        };
        let joined = |terminal: usize| {
            let Some(it) = net.terminals.get(terminal) else {
                return false;
            };
            if matches!(it.role, model::Role::LineOut(_)) {
                return true;
            }
            use model::kinds::sound::InputGround::Joined;
            match net
                .parts
                .get(it.part)
                .and_then(|id| sheet.parts.get(id))
                .map(|p| &p.is)
            {
                Some(PartKind::Amplifier(it)) => it.input_ground == Joined,
                Some(PartKind::Processor(it)) => it.input_ground == Joined,
                _ => true,
            }
        };
        let offset = flows::across(&points.burst, x, y).unwrap_or(0.0).abs();
        let current = points
            .burst
            .currents
            .get(run.branch)
            .copied()
            .unwrap_or(0.0)
            .abs();
        study.signal.offsets.insert(
            run.id,
            GroundOffset {
                offset: Volts(offset),
                shield_current: Amps(current),
                joined: joined(a) && joined(b),
            },
        );
    }
}

/// What was odd: sources whose poles nothing but wire joins.
fn notes(net: &Network, sheet: &Sheet, study: &mut Study) {
    let mut wired = crate::speakers::Groups::new(net.nodes);
    for branch in &net.branches {
        let is_wire = branch.carries && branch.closes == Closes::Always;
        if is_wire && !matches!(branch.kind, Kind::Shield { .. } | Kind::Tie) {
            wired.join(branch.nodes[0], branch.nodes[1]);
        }
    }
    let mut joined = |a: usize, b: usize| wired.find(a) == wired.find(b);
    for source in &net.sources {
        let tag = net
            .parts
            .get(source.part)
            .and_then(|id| sheet.parts.get(id))
            .map_or("", |p| p.tag.as_str());
        if joined(source.plus, source.minus) {
            study.notes.push(say!("note-shorted", source = tag));
        }
        if source.plus == BODY || joined(source.plus, BODY) && !joined(source.minus, BODY) {
            study.notes.push(say!("note-pole-on-body", source = tag));
        }
    }
    if study.outcome == Outcome::NothingToSolve && net.sources.is_empty() && !net.parts.is_empty() {
        study.notes.push(say!("note-no-source"));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn side_by_side_or_not_a_study_is_the_same() {
        for seed in 0..3 {
            let sheet = testkit::random::random_system(seed, 150);
            let settings = Settings::default();
            let [together, in_turn] =
                [true, false].map(|side_by_side| study_in(&sheet, &settings, side_by_side));
            assert_eq!(together, in_turn, "seed {seed}");
        }
    }

    #[test]
    fn a_steady_study_tells_what_flows_steadily_and_looks_at_no_shorts() {
        let (mut compared, mut shorts) = (0, 0);
        for seed in 0..12 {
            let sheet = testkit::random::random_system(seed, 40);
            let settings = Settings::default();
            let (whole, steady) = (study(&sheet, &settings), study_steady(&sheet, &settings));
            shorts += whole.devices.iter().filter(|it| it.prospective.is_some()).count();
            assert!(steady.devices.iter().all(|it| it.prospective.is_none()) && steady.shorts.is_empty());
            if whole.outcome != Outcome::Solved {
                continue;
            }
            for (run, flow) in &whole.runs {
                compared += 1;
                let (told, other) = (flow.current, steady.runs[run].current);
                assert_eq!(
                    (told.mean, told.rms),
                    (other.mean, other.rms),
                    "seed {seed} {run}"
                );
            }
        }
        assert!(compared > 100 && shorts > 20, "{compared} and {shorts}");
    }

    /// A head unit whose ground is lifted over body metal, joined to an amplifier by five metres of signal lead whose core resists 1 Ω/m.
    const LIFTED: &str = "battery B1 agm charge=90% resistance=0.004ohm\nload L1 law=current current=80A\n\
        ground E1 contact=0ohm body=0.003ohm\nground E2 contact=0ohm body=0ohm\nhead H1\namplifier A1 input-ground=joined\n\
        ground E3 contact=0ohm body=0ohm\nbus X1 places=4\n\
        run W1 B1.+ L1.+ 50mm2 1m\nrun W2 L1.- X1.1 50mm2 1m\nrun W3 X1.2 E1.stud 50mm2 1m\nrun W4 E2.stud B1.- 50mm2 1m\n\
        run W5 B1.+ H1.30 2.5mm2 1m\nrun W6 H1.31 B1.- 2.5mm2 1m\nrun W7 X1.3 A1.- 50mm2 1m\n\
        run W8 H1.front-l A1.in1 0.35mm2 5m stated-resistance=1ohm/m\n";

    /// The shield is no part of the core: it resists what its own table says, 50 mΩ/m and two plugs, however cold and thin the core is.
    #[test]
    fn the_core_of_a_signal_lead_does_not_warm_its_shield() {
        let sheet = testkit::sheet(LIFTED);
        let (id, run) = sheet.run_by_tag("W8").expect("the signal lead");
        let shield_at = |cabin: f64| {
            let mut settings = Settings::default();
            settings.conditions.cabin = model::Fact::Given(model::quantity::Celsius(cabin));
            let it = prepare(&sheet, &settings, Level::Burst);
            assert!(it.point.settled, "{cabin} °C");
            let run = it.net.runs.iter().find(|run| run.id == id).expect("it is there");
            assert!(run.line);
            let crate::solve::Law::Resistance(ohms) = it.point.elements[run.branch].law else {
                panic!("a shield conducts");
            };
            (ohms, it.point.currents[run.branch])
        };
        let (_, usual) = shield_at(20.0);
        assert!(usual.abs() > 0.01, "{usual}");
        for cabin in [-40.0, 40.0, 90.0] {
            let (ohms, amps) = shield_at(cabin);
            approx::assert_relative_eq!(ohms, values::shield(run), max_relative = 1e-12);
            assert!(ohms >= 5.0 * 0.05, "{ohms}");
            // The leads of the supply warm, and move the grounds a little.
            approx::assert_relative_eq!(amps, usual, max_relative = 0.3);
        }
    }
}
