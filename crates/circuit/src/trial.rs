//! One sheet while its wires and fuses are tried in other sizes: what flows and what is lost, and nothing else of a study.
//!
//! A whole [`crate::study()`] traces, looks at faults and at speakers; none of that moves with a size, or it is asked once in the end.
//! *Invariant:* what is told here is what a study of the sheet with those sizes tells, as far as the source that a drop is told
//! against stays the one that is nearest at first.

use crate::assemble::{Extent, MANY_PARTS, ROUGHLY, RunHeat, asked_of, settle_heat, study_on};
use crate::conductor::Conductor;
use crate::flows::across;
use crate::measured::as_measured;
use crate::network::Network;
use crate::solve::{LEAST_SUPPLY, Level, Operating, Operator};
use crate::speakers::Speakers;
use crate::study::{Signal, Study};
use crate::trace::Tracer;
use model::breaks::Break;
use model::job::Duty;
use model::quantity::Ohms;
use model::{PartId, PartKind, Settings, Sheet};
use std::borrow::Cow;
use std::sync::Arc;

/// A sheet as a network, on which sizes are tried.
#[derive(Debug)]
pub struct TrialNet<'s> {
    sheet: Cow<'s, Sheet>,
    net: Network,
}

impl<'s> TrialNet<'s> {
    /// Of a sheet that [`body::lay`] made.
    #[must_use]
    pub fn of(sheet: &'s Sheet, settings: &Settings) -> Self {
        let sheet = as_measured(sheet);
        let net = Network::build_on(&sheet, &body::Metal::of(&sheet, settings));
        Self { sheet, net }
    }

    /// Its network.
    #[must_use]
    pub fn net(&self) -> &Network {
        &self.net
    }
}

/// Between what a drop is told: a load, its terminals, and the poles of the source that is nearest.
#[derive(Clone, Copy)]
struct Told {
    load: PartId,
    /// Its part of the network.
    part: usize,
    source: [usize; 2],
    terminals: [usize; 2],
    /// Whether it is a part that can be off.
    turns: bool,
}

/// A sheet under one set of conditions.
pub struct Trial<'a> {
    net: &'a Network,
    /// Its speakers and signals, which no size of a supply wire and no rating moves.
    sound: Arc<(Speakers, Signal)>,
    operator: Operator<'a>,
    heat: RunHeat,
    told: Vec<Told>,
    /// By branch, the resistances at their temperatures; nothing before they were first settled.
    warm: Vec<f64>,
}

/// What flows at RMS level with a bad joint somewhere.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct WithJoint {
    /// By run of the sheet, as sizes, in A.
    pub runs: Vec<f64>,
    /// Through the joint itself: the most, where a part has several ways through.
    pub through: f64,
}

/// What flows and what is lost with the sizes that are set.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Tried {
    /// By run of the sheet: current at RMS and at burst level, as sizes, in A.
    pub runs: Vec<[f64; 2]>,
    /// By device of the network: the same.
    pub devices: Vec<[f64; 2]>,
    /// What is lost to each load that is on and back at burst level, in V, and what is left across it.
    pub loads: Vec<(PartId, [f64; 2])>,
    /// Loads that are on.
    pub on: Vec<PartId>,
    /// Whether the feed cannot deliver what is asked at bursts.
    pub collapsed: bool,
    /// Whether an operating point was found.
    pub answered: bool,
}

impl<'a> Trial<'a> {
    /// One for each of these conditions, which differ in state and duty alone.
    #[must_use]
    pub fn all(on: &'a TrialNet<'_>, scenes: &[Settings]) -> Vec<Self> {
        let (net, sheet) = (&on.net, &*on.sheet);
        let mut sound: Vec<(Duty, Arc<(Speakers, Signal)>)> = Vec::new();
        let mut told: Option<Vec<Told>> = None;
        let mut all = Vec::new();
        for settings in scenes {
            let conditions = &settings.conditions;
            let known = sound.iter().position(|(duty, _)| *duty == conditions.duty);
            let known = known.unwrap_or_else(|| {
                let all = Arc::new(crate::speakers::study_sound(sheet, settings));
                sound.push((conditions.duty, all));
                sound.len() - 1
            });
            let sound = sound[known].1.clone();
            let (speakers, signal) = &*sound;
            let asked = asked_of(sheet, conditions, conditions.state, &signal.turn_on, |part| {
                speakers.output.get(&part).copied().unwrap_or_default()
            });
            let mut operator = Operator::new(net, sheet, conditions.state, asked);
            // What is chosen is judged by a whole study afterwards.
            operator.tell_roughly(ROUGHLY);
            let told = told.get_or_insert_with(|| nearest(net, sheet, operator.resistances()));
            all.push(Self {
                net,
                sound: sound.clone(),
                heat: RunHeat::of(net, sheet, conditions),
                told: told.clone(),
                warm: Vec::new(),
                operator,
            });
        }
        all
    }

    /// What a whole study tells of another sheet, made ready as `on`, that differs from this one in the wires of its supply and in
    /// ratings alone: under these settings, which are those of this trial but for what is judged.
    #[must_use]
    pub fn study(&self, on: &TrialNet<'_>, settings: &Settings) -> Study {
        let side_by_side = on.sheet.parts.len() >= MANY_PARTS;
        let extent = Extent::Whole { side_by_side };
        study_on(&on.net, &on.sheet, settings, (*self.sound).clone(), extent)
    }

    /// Lays a run, by its place on the sheet, anew. One between line jacks stays as it is: there the
    /// shield alone counts, which is no wire of a size and does not warm.
    pub fn lay(&mut self, run: usize, wire: &Conductor) {
        let is_wire = self.net.runs.get(run).is_some_and(|run| !run.line);
        if let (true, Some(warming), Some(cold), Some(whole)) = (
            is_wire,
            self.heat.warming.get_mut(run),
            self.heat.cold.get_mut(run),
            self.heat.whole.get_mut(run),
        ) {
            (*warming, *cold, *whole) = (wire.warming(), wire.at_20(), wire.whole_at_20());
        }
        self.warm.clear();
    }

    /// Gives a device, by its place among those of the network, another resistance.
    pub fn put_in(&mut self, device: usize, ohms: Ohms) {
        if let Some(device) = self.net.devices.get(device) {
            self.operator.set_resistance(device.branch, ohms.0);
        }
        self.warm.clear();
    }

    /// What flows with more resistance in a run, or in every way through a part. `None` where that is no way for a current, and where
    /// nothing is solved.
    pub fn with_joint(&mut self, broken: &Break) -> Option<WithJoint> {
        if self.warm.is_empty() {
            self.warm_up();
            self.warm = self.operator.resistances().to_vec();
        }
        let net = self.net;
        let (on, more): (Vec<usize>, f64) = match broken {
            Break::Resistive { run, more } => {
                let runs = net.runs.iter();
                let own = runs.filter(|it| it.id == *run && !it.line);
                (own.map(|it| it.branch).collect(), more.0)
            }
            Break::Poor { part, more } => (net.ways_through(net.part_index(*part)?).collect(), more.0),
            _ => return None,
        };
        let warm = |at: usize| self.warm.get(at).copied().unwrap_or(0.0);
        for at in &on {
            self.operator.set_resistance(*at, warm(*at) + more);
        }
        let amps = self.operator.operate_again_for_currents(Level::Rms);
        let through = |at: usize| amps.get(at).copied().unwrap_or(0.0).abs();
        let with = WithJoint {
            runs: net
                .runs
                .iter()
                .map(|run| if run.line { 0.0 } else { through(run.branch) })
                .collect(),
            through: on.iter().map(|at| through(*at)).fold(0.0, f64::max),
        };
        let solved = amps.iter().any(|amps| *amps != 0.0);
        for at in &on {
            self.operator.set_resistance(*at, warm(*at));
        }
        (solved && !on.is_empty()).then_some(with)
    }

    /// By how much what is lost to a load and back at burst level grows with what each run resists, and each device, at what
    /// [`Trial::look`] found last: in V/Ω, runs and devices in the same order as there. To first order, with what all other loads
    /// then draw. Nothing for a load of which no drop is told.
    pub fn slopes(&mut self, load: PartId) -> Option<[Vec<f64>; 2]> {
        let told = self.told.iter().find(|told| told.load == load)?;
        let ([out, back], [plus, minus]) = (told.source, told.terminals);
        let slopes = self
            .operator
            .slopes(&[(out, 1.0), (plus, -1.0), (minus, 1.0), (back, -1.0)]);
        let of = |branch: usize| slopes.get(branch).copied().unwrap_or(0.0);
        let run = |run: &crate::network::NetworkRun| if run.line { 0.0 } else { of(run.branch) };
        Some([
            self.net.runs.iter().map(run).collect(),
            self.net.devices.iter().map(|device| of(device.branch)).collect(),
        ])
    }

    fn warm_up(&mut self) {
        settle_heat(&mut self.operator, self.net, &self.heat);
    }

    /// What flows and what is lost.
    pub fn look(&mut self) -> Tried {
        self.warm_up();
        let rms = self.operator.operate_again(Level::Rms);
        let burst = self.operator.operate(Level::Burst);
        let through = |branch: usize| {
            [&rms, &burst].map(|point| point.currents.get(branch).copied().unwrap_or(0.0).abs())
        };
        let runs = self
            .net
            .runs
            .iter()
            .map(|run| if run.line { [0.0; 2] } else { through(run.branch) });
        let mut it = Tried {
            runs: runs.collect(),
            devices: self
                .net
                .devices
                .iter()
                .map(|device| through(device.branch))
                .collect(),
            collapsed: burst.deliverable < 1.0,
            answered: rms.settled && burst.settled,
            ..Tried::default()
        };
        for told in &self.told {
            let is_known = it.loads.last().is_some_and(|(load, _)| *load == told.load);
            let [plus, minus] = told.terminals;
            let across_it = across(&burst, plus, minus);
            let is_on = |point: &Operating| point.on.get(told.part) == Some(&true);
            if told.turns {
                let on = is_on(&rms) && is_on(&burst) && across_it.is_some_and(|volts| volts >= LEAST_SUPPLY);
                if !on {
                    continue;
                }
                if it.on.last() != Some(&told.load) {
                    it.on.push(told.load);
                }
            }
            let there = across(&burst, told.source[0], plus);
            let back = across(&burst, minus, told.source[1]);
            if let (false, Some(there), Some(back), Some(left)) = (is_known, there, back, across_it) {
                it.loads.push((told.load, [there + back, left]));
            }
        }
        it
    }
}

/// The source against which the drop to each load is told, with the resistances as they are.
fn nearest(net: &Network, sheet: &Sheet, ohms: &[f64]) -> Vec<Told> {
    let traced = Tracer::new(net, sheet).circuits(ohms);
    let told = net.consumers.iter().filter_map(|consumer| {
        let load = *net.parts.get(consumer.part)?;
        let source = net.sources.get(*traced.nearest.get(&load)?)?;
        let turns = matches!(
            sheet.parts.get(&load)?.is,
            PartKind::Amplifier(_)
                | PartKind::HeadUnit(_)
                | PartKind::Processor(_)
                | PartKind::LineConverter(_)
                | PartKind::Load(_)
        );
        Some(Told {
            load,
            part: consumer.part,
            source: [source.plus, source.minus],
            terminals: [consumer.plus, consumer.minus],
            turns,
        })
    });
    told.collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::study_laid;
    use model::Fact;
    use model::conductor::{METRIC_SERIES, Size};
    use model::quantity::SquareMm;
    use testkit::random::{Dice, random_system};

    /// What is told here against whole studies of the same sheets, sizes drawn by lot.
    #[test]
    fn what_is_tried_is_what_a_study_tells() {
        for seed in 0..6 {
            let mut sheet = random_system(seed, 40);
            let settings = Settings::default();
            let base = sheet.clone();
            let net = TrialNet::of(&base, &settings);
            let mut trials = Trial::all(&net, std::slice::from_ref(&settings));
            let trial = &mut trials[0];
            let mut dice = Dice::new(seed);
            let before = study_laid(&sheet, &settings);
            let ids: Vec<model::RunId> = sheet.runs.keys().copied().collect();
            for (place, id) in ids.iter().enumerate() {
                if dice.chance(0.5) || net.net.runs[place].line {
                    continue;
                }
                if let Some(run) = sheet.runs.get_mut(id) {
                    run.wire.size = Fact::Given(Size::Metric(SquareMm(dice.one(METRIC_SERIES))));
                }
                let wire = Conductor::of(&sheet, &sheet.runs[id], &settings.conditions);
                trial.lay(place, &wire);
            }
            let tried = trial.look();
            let study = study_laid(&sheet, &settings);
            for (id, tried) in ids.iter().zip(&tried.runs) {
                let flow = &study.runs[id].current;
                for (a, b) in [(flow.rms.0, tried[0]), (flow.burst.0, tried[1])] {
                    assert!(
                        (a.abs() - b).abs() < 1e-6 * (1.0 + b),
                        "seed {seed} {id}: {a} and {b}"
                    );
                }
            }
            for (device, tried) in study.devices.iter().zip(&tried.devices) {
                assert!((device.current.burst.0.abs() - tried[1]).abs() < 1e-6 * (1.0 + tried[1]));
            }
            // Where one source is as near as another, a size decides which it is.
            let same = |load: &PartId| {
                let of = |study: &crate::Study| study.circuits[load].feeds.first().map(|way| way.source);
                of(&before) == of(&study) && study.circuits[load].feeds.len() == 1
            };
            for (load, [drop, _]) in tried.loads.iter().filter(|(load, _)| same(load)) {
                let told = study.circuits[load].drop.map_or(f64::NAN, |volts| volts.0);
                assert!(
                    (told - drop).abs() < 1e-6,
                    "seed {seed} {load}: {told} and {drop}"
                );
                assert_ne!(study.parts[load].on, Some(false), "seed {seed} {load}");
            }
        }
    }

    /// A joint that is tried against a study of the sheet that has it.
    #[test]
    fn a_joint_that_is_tried_is_what_a_study_tells() {
        let settings = Settings::default();
        let (mut count, mut off) = (0, 0);
        for seed in 0..3 {
            let sheet = random_system(seed, 30);
            let net = TrialNet::of(&sheet, &settings);
            let mut trials = Trial::all(&net, std::slice::from_ref(&settings));
            let mut joints: Vec<Break> = Vec::new();
            for (&run, _) in sheet.runs.iter().step_by(3) {
                joints.extend([0.02, 0.3].map(|more| Break::Resistive {
                    run,
                    more: Ohms(more),
                }));
            }
            for (&part, it) in &sheet.parts {
                if matches!(it.is, PartKind::Ground(_)) {
                    joints.push(Break::Poor {
                        part,
                        more: Ohms(0.1),
                    });
                }
            }
            for broken in joints {
                let (Some(tried), Ok(thrown)) = (trials[0].with_joint(&broken), broken.thrown(&sheet)) else {
                    continue;
                };
                let study = study_laid(&body::lay(&thrown, &settings), &settings);
                for (id, amps) in sheet.runs.keys().zip(&tried.runs) {
                    let told = study.runs.get(id).map_or(0.0, |flow| flow.current.rms.0.abs());
                    count += 1;
                    // Wires were warmed without the joint.
                    off += usize::from((told - amps).abs() > 0.02 * told + 0.02 && *amps != 0.0);
                }
            }
        }
        assert!(count > 1000 && off * 100 < count, "{off} of {count} differ");
    }

    /// Slopes against what really changes when a run is laid a little thinner, on random systems with all their meshes, sources and loads
    /// of constant power.
    #[test]
    fn slopes_are_what_a_little_more_resistance_does() {
        let (mut compared, mut near) = (0, 0);
        for seed in 0..6 {
            let sheet = random_system(seed, 40);
            let settings = Settings::default();
            let net = TrialNet::of(&sheet, &settings);
            let mut trials = Trial::all(&net, std::slice::from_ref(&settings));
            let trial = &mut trials[0];
            // Wire that does not warm: how it warms follows its current, and is no matter of slopes.
            trial.heat.cold.fill(0.0);
            let before = trial.look();
            let loads: Vec<PartId> = before.loads.iter().map(|(load, _)| *load).take(4).collect();
            let slopes: Vec<[Vec<f64>; 2]> = loads
                .iter()
                .map(|load| trial.slopes(*load).expect("it is told"))
                .collect();
            for place in 0..net.net.runs.len() {
                let (whole, more) = (trial.heat.whole[place], 1e-6);
                trial.heat.whole[place] = whole + more;
                let after = trial.look();
                trial.heat.whole[place] = whole;
                for (load, slopes) in loads.iter().zip(&slopes) {
                    let lost = |tried: &Tried| {
                        let found = tried.loads.iter().find(|(other, _)| other == load);
                        found.map_or(f64::NAN, |(_, [lost, _])| *lost)
                    };
                    let (told, is) = (slopes[0][place], (lost(&after) - lost(&before)) / more);
                    if is.abs() <= 0.05 {
                        assert!(told.abs() < 0.1, "seed {seed}: {told} and {is}");
                        continue;
                    }
                    compared += 1;
                    near += usize::from((told - is).abs() < 0.01 * is.abs());
                    // The matrix is that of the last round of Newton, made at voltages a little above the answer; beside an alternator at
                    // its limit that shows.
                    assert!(
                        (told - is).abs() < 0.15 * is.abs(),
                        "seed {seed}: {told} and {is}"
                    );
                }
            }
        }
        assert!(compared > 100, "only {compared} runs move a drop");
        assert!(near * 100 >= compared * 80, "{near} of {compared}");
    }
}
