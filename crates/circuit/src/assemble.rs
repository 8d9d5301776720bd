//! Puts the whole study of a sheet together, in the order in which one result needs another.

mod balance;
mod drops;
mod notes;
mod prepared;
mod voltages;
mod warming;

pub(crate) use prepared::{Prepared, prepare, prepare_measured};
pub(crate) use warming::{RunHeat, settle_heat, warm_up};

use crate::beside::beside;
use crate::faults::{self, far_shorts};
use crate::flows::{self, Points};
use crate::measured::as_measured;
use crate::network::Network;
use crate::solve::{Demand, Level, Operating, Operator, demands, stay_on};
use crate::speakers::Speakers;
use crate::study::*;
use crate::trace::Resistances;
use crate::wired::Wired;
use crate::{devices, energy, protection};
use balance::{balance, balanced, outcome};
use drops::{drops, offsets};
use model::job::{Conditions, VehicleState};
use model::quantity::Hours;
use model::{PartId, Settings, Sheet};
use notes::notes;
use ordered::{OrderedMap, OrderedSet};
use std::sync::OnceLock;
use voltages::voltages;
use words::say;

/// Where the supply collapses and only what flows is asked, it is found to a part in ten thousand, by so many halvings: each is a search of its
/// own.
pub(crate) const ROUGHLY: u32 = 14;
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
}
