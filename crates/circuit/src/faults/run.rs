//! One run through time: devices at one edge of their times, sources at their strongest or weakest.

use super::base::Base;
use super::circuit::{Circuit, What};
use super::device::Edge;
use super::scenario::{Happening, Moment, Scenario};
use super::switching::{Consumer, consumer};
use super::{HORIZON, MOST_EVENTS, MOST_STEPS};
use crate::network::{BODY, Draw};
use crate::solve::{Element, Law, System};
use model::PartId;
use model::quantity::{Amps, Celsius, Seconds};

/// First step while capacitors discharge, in seconds.
const FIRST_STEP: f64 = 2e-4;

/// A piece of wire as it warms.
pub(super) struct Wire {
    pub(super) item: usize,
    pub(super) run: usize,
    pub(super) temperature: f64,
    /// Current at the beginning of the step.
    pub(super) current: f64,
    pub(super) damaged: bool,
}

pub(super) struct Run<'a> {
    pub(super) base: &'a Base,
    pub(super) circuit: &'a Circuit,
    pub(super) edge: Edge,
    pub(super) strong: bool,
    pub(super) system: System,
    pub(super) first: Vec<usize>,
    pub(super) elements: Vec<Element>,
    pub(super) closed: Vec<bool>,
    pub(super) toggles: Vec<u8>,
    pub(super) wires: Vec<Wire>,
    /// Age of each device.
    pub(super) ages: Vec<f64>,
    /// Item of each device.
    pub(super) device_items: Vec<usize>,
    /// When a device that closes by itself will.
    pub(super) resets: Vec<Option<f64>>,
    pub(super) consumers: Vec<Consumer>,
    pub(super) part_off: Vec<bool>,
    /// Voltage of each capacitor by item.
    pub(super) capacitors: Vec<(usize, f64)>,
    /// Voltage across each load, as last found: what it draws follows from it.
    pub(super) across: Vec<f64>,
    /// What converters draw, by source.
    pub(super) drawn: Vec<f64>,
    /// Length of the step that capacitors see.
    pub(super) step: f64,
    pub(super) time: f64,
    pub(super) moments: Vec<Moment>,
    pub(super) unloaded: Vec<bool>,
    pub(super) let_through: Vec<f64>,
    pub(super) heat: f64,
    pub(super) hottest: Vec<f64>,
}

/// Runs a circuit through time. `unloaded` are alternators that had no battery before.
pub(super) fn run(base: &Base, circuit: &Circuit, unloaded: &[usize], edge: Edge, strong: bool) -> Scenario {
    let mut run = Run::new(base, circuit, edge, strong);
    for &source in unloaded {
        if let Some(place) = run.unloaded.get_mut(source) {
            *place = true;
        }
    }
    run.through()
}

impl<'a> Run<'a> {
    pub(super) fn new(base: &'a Base, circuit: &'a Circuit, edge: Edge, strong: bool) -> Self {
        let net = &base.net;
        let elements: Vec<Element> = circuit
            .items
            .iter()
            .map(|item| Element {
                nodes: item.nodes,
                law: Law::Open,
            })
            .collect();
        let mut first: Vec<usize> = net.sources.iter().map(|source| source.minus).collect();
        first.insert(0, BODY);
        let volts = |node: usize| base.voltages.get(node).copied().unwrap_or(0.0);
        let across: Vec<f64> = circuit
            .items
            .iter()
            .map(|item| volts(item.nodes[0]) - volts(item.nodes[1]))
            .collect();
        let mut wires = Vec::new();
        let mut capacitors = Vec::new();
        let mut device_items = vec![usize::MAX; net.devices.len()];
        let mut consumers = Vec::new();
        for (at, item) in circuit.items.iter().enumerate() {
            match &item.what {
                What::Wire { run, .. } => wires.push(Wire {
                    item: at,
                    run: *run,
                    temperature: base.temperatures.get(*run).copied().unwrap_or(20.0),
                    current: 0.0,
                    damaged: false,
                }),
                What::Capacitor { .. } => capacitors.push((at, across[at].max(0.0))),
                What::Device { device, .. } => device_items[*device] = at,
                What::Load {
                    part,
                    draw: Draw::Supply | Draw::Idle,
                    ..
                } => {
                    // A part that only idles is told by that; one with both by the first of them.
                    let known = consumers.iter().any(|it: &Consumer| it.part == *part);
                    if !known && base.on.get(*part) == Some(&true) {
                        consumers.push(consumer(base, circuit, *part, at, &across));
                    }
                }
                _ => {}
            }
        }
        let count = circuit.items.len();
        let mut hottest = vec![f64::NEG_INFINITY; net.runs.len()];
        for wire in &wires {
            hottest[wire.run] = hottest[wire.run].max(wire.temperature);
        }
        Self {
            system: System::with_steady(circuit.nodes, &elements, &vec![false; count], &first),
            first,
            elements,
            closed: circuit.items.iter().map(|item| item.may_conduct()).collect(),
            toggles: vec![0; count],
            wires,
            ages: vec![0.0; net.devices.len()],
            device_items,
            resets: vec![None; net.devices.len()],
            consumers,
            part_off: vec![false; net.parts.len()],
            capacitors,
            across,
            drawn: vec![0.0; net.sources.len()],
            step: FIRST_STEP,
            time: 0.0,
            moments: Vec::new(),
            unloaded: vec![false; net.sources.len()],
            let_through: vec![0.0; net.devices.len()],
            heat: 0.0,
            hottest,
            base,
            circuit,
            edge,
            strong,
        }
    }

    /// Right after the break.
    pub(super) fn begin(&mut self) -> bool {
        self.settle()
    }

    pub(super) fn happens(&mut self, happening: Happening) {
        self.moments.push(Moment {
            time: Seconds(self.time),
            happening,
        });
    }

    pub(super) fn part_id(&self, part: usize) -> PartId {
        self.base.net.parts.get(part).copied().unwrap_or_default()
    }

    pub(super) fn current(&self, item: usize) -> f64 {
        self.system.currents().get(item).copied().unwrap_or(0.0)
    }

    /// The current through the short.
    pub(super) fn fault(&self) -> f64 {
        let through = self.circuit.touches.iter().map(|&at| self.current(at).abs());
        through.fold(0.0, f64::max)
    }

    pub(super) fn take_currents(&mut self) {
        for at in 0..self.wires.len() {
            self.wires[at].current = self.current(self.wires[at].item);
        }
    }

    fn through(mut self) -> Scenario {
        let mut settled = self.settle();
        self.take_currents();
        self.look_for_unloaded();
        let begins = self.fault();
        let mut peak = begins;
        let mut frames = vec![self.frame()];
        let mut cleared: Option<f64> = None;
        let mut margin = f64::INFINITY;
        let mut last_before = f64::INFINITY;
        let mut steps = 0;
        while settled {
            let none_left = peak > 0.0 && self.fault() <= 0.01 * peak;
            let reset_due = self.resets.iter().any(Option::is_some);
            match (none_left, cleared) {
                (true, None) => {
                    cleared = Some(self.time);
                    margin = if self.time > 0.0 {
                        (self.time + last_before) / self.time
                    } else {
                        f64::INFINITY
                    };
                }
                (false, Some(_)) => cleared = None,
                _ => {}
            }
            let event = self.next_event();
            let (longest, rests) = self.longest_step();
            let left = HORIZON - self.time;
            let discharging = self.discharging();
            let done = !discharging && event > left && (rests || (none_left && !reset_due) || peak == 0.0);
            if done || left <= 0.0 {
                break;
            }
            steps += 1;
            if steps > MOST_STEPS || self.moments.len() > MOST_EVENTS {
                settled = false;
                break;
            }
            let mut step = event.min(longest).min(left).max(1e-6);
            if discharging {
                self.step = if steps == 1 { FIRST_STEP } else { self.step * 1.4 };
                step = step.min(self.step);
            }
            self.step = step;
            if none_left {
                last_before = f64::INFINITY;
            }
            let before_fault = self.fault();
            if !self.advance(step) {
                settled = false;
                break;
            }
            if before_fault > 0.01 * peak {
                last_before = self.would_last();
            }
            peak = peak.max(self.fault());
            // Each event has its frame before and after it.
            frames.push(self.frame());
            let changed = self.pass();
            let before = self.moments.len();
            if changed || self.switch() {
                self.system.restart();
                settled = self.settle();
            }
            if changed || self.moments.len() != before {
                self.take_currents();
                self.look_for_unloaded();
                frames.push(self.frame());
            }
        }
        let ends = self.fault();
        Scenario {
            edge: self.edge,
            strong: self.strong,
            moments: self.moments,
            frames,
            cleared: cleared.map(Seconds),
            margin,
            fault: [Amps(begins), Amps(ends)],
            hottest: self
                .hottest
                .iter()
                .zip(&self.base.heats)
                .map(|(hottest, heat)| Celsius(*hottest).max(heat.ambient()))
                .collect(),
            let_through: self.let_through,
            heat: self.heat,
            settled,
        }
    }
}
