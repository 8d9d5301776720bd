//! One run through time: devices at one edge of their times, sources at their strongest or weakest.

use super::base::Base;
use super::circuit::{Circuit, GIVES_UP, What, source_law};
use super::device::Edge;
use super::scenario::{Happening, Moment, Scenario};
use super::switching::{Consumer, consumer};
use super::{HORIZON, MOST_EVENTS, MOST_STEPS};
use crate::network::{BODY, Draw, LEAST_RESISTANCE};
use crate::solve::{Element, Law, SourceModel, System};
use model::PartId;
use model::quantity::{Amps, Celsius, Seconds};

/// Change of temperature in a step, over the temperature above −234.5 °C, at which copper would have no resistance.
const STEP: f64 = 0.04;
/// First step while capacitors discharge, in seconds.
const FIRST_STEP: f64 = 2e-4;

/// A piece of wire as it warms.
pub(super) struct Wire {
    item: usize,
    pub(super) run: usize,
    pub(super) temperature: f64,
    /// Current at the beginning of the step.
    pub(super) current: f64,
    damaged: bool,
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

    /// The law of an item as things stand.
    fn law(&self, at: usize) -> Law {
        if !self.closed[at] {
            return Law::Open;
        }
        match &self.circuit.items[at].what {
            // Laid by piece, see `lay`.
            What::Wire { .. } => self.elements[at].law,
            What::Plain(ohms) | What::Touch(ohms) | What::Device { ohms, .. } | What::Thrown { ohms, .. } => {
                Law::Resistance(*ohms)
            }
            What::TurnOnOut { part, .. } if self.part_off[*part] => Law::Open,
            What::TurnOnOut { ohms, .. } => Law::Resistance(*ohms),
            What::Diode { drop, ohms } => Law::Diode {
                drop: *drop,
                resistance: *ohms,
            },
            What::Source { source } => {
                let part = self.base.net.sources.get(*source).map(|it| it.part);
                match part.filter(|part| self.part_off.get(*part) == Some(&true)) {
                    Some(_) => Law::Open,
                    None => source_law(self.base, *source, self.strong),
                }
            }
            What::Capacitor { farads, ohms } => {
                let volts = self
                    .capacitors
                    .iter()
                    .find(|it| it.0 == at)
                    .map_or(0.0, |it| it.1);
                // Seen over a step, by the voltage at its end: a source behind dt/C.
                Law::Source {
                    emf: volts,
                    resistance: ohms + self.step / farads.max(1e-9),
                }
            }
            What::Load { part, draw, law } => self.load(at, *part, *draw, *law),
        }
    }

    /// A load as the resistance that draws what it asks at the voltage it had: what it asks follows the voltage within a few
    /// rounds, and there is an answer at any voltage.
    fn load(&self, at: usize, part: usize, draw: Draw, law: Law) -> Law {
        if self.part_off[part] && draw != Draw::Coil {
            return Law::Open;
        }
        let v = self.across[at].max(GIVES_UP);
        let law = match self.base.net.sources.iter().position(|it| it.part == part) {
            // The input of a converter.
            Some(source) if draw == Draw::Supply => Law::Power(self.drawn[source]),
            _ => law,
        };
        match law {
            Law::Power(watts) if watts > 0.0 => Law::Resistance((v * v / watts).max(LEAST_RESISTANCE)),
            Law::Current(amps) if amps > 0.0 => Law::Resistance((v / amps).max(LEAST_RESISTANCE)),
            Law::Resistance(ohms) => Law::Resistance(ohms.max(LEAST_RESISTANCE)),
            Law::Power(_) | Law::Current(_) => Law::Open,
            other => other,
        }
    }

    fn lay(&mut self) {
        for wire in &self.wires {
            let What::Wire { run, share, endings } = self.circuit.items[wire.item].what else {
                continue;
            };
            let factor = self.base.heats[run].factor(Celsius(wire.temperature));
            let ohms = self.base.cold[run] * share * factor + endings;
            self.elements[wire.item].law = Law::Resistance(ohms.max(LEAST_RESISTANCE));
        }
        for at in 0..self.elements.len() {
            self.elements[at].law = self.law(at);
        }
    }

    /// Solves as things stand. False when there is no answer.
    fn solve(&mut self) -> bool {
        self.lay();
        if self.system.solve(&self.elements, &self.first, 1.0).is_err() {
            self.system.restart();
            if self.system.solve(&self.elements, &self.first, 1.0).is_err() {
                return false;
            }
        }
        true
    }

    /// Takes over the voltages of loads. The largest relative change.
    fn follow(&mut self) -> f64 {
        let mut most = 0.0_f64;
        for (at, item) in self.circuit.items.iter().enumerate() {
            if let What::Load { .. } = item.what {
                let v = self.system.across(&self.elements[at]);
                most = most.max((v - self.across[at]).abs() / v.abs().max(GIVES_UP));
                self.across[at] = v;
            }
        }
        for (at, source) in self.base.net.sources.iter().enumerate() {
            if let Some(SourceModel::Limited {
                efficiency: Some(efficiency),
                ..
            }) = self.base.models.get(at)
            {
                let out = &self.elements[source.branch];
                let gives = -self.system.currents()[source.branch] * self.system.across(out);
                let asks = (gives / efficiency).max(0.0);
                most = most.max((asks - self.drawn[at]).abs() / asks.max(1.0));
                self.drawn[at] = asks;
            }
        }
        most
    }

    /// Solves until loads and everything that switches by itself rest. False when there is no answer.
    fn settle(&mut self) -> bool {
        for _ in 0..60 {
            if !self.solve() {
                return false;
            }
            let change = self.follow();
            // What gives up is looked at only once the voltages are right.
            if change > 1e-3 {
                continue;
            }
            if !self.switch() {
                return true;
            }
            self.system.restart();
        }
        true
    }

    pub(super) fn current(&self, item: usize) -> f64 {
        self.system.currents().get(item).copied().unwrap_or(0.0)
    }

    /// The current through the short.
    pub(super) fn fault(&self) -> f64 {
        let through = self.circuit.touches.iter().map(|&at| self.current(at).abs());
        through.fold(0.0, f64::max)
    }

    fn take_currents(&mut self) {
        for at in 0..self.wires.len() {
            self.wires[at].current = self.current(self.wires[at].item);
        }
    }

    /// Pace of ageing of each device, per second.
    fn ageing(&self, device: usize) -> f64 {
        let item = self.device_items[device];
        if item == usize::MAX || !self.closed[item] {
            return 0.0;
        }
        1.0 / self.base.devices[device]
            .opens_after(self.current(item), self.edge)
            .max(1e-6)
    }

    /// Time to the next event at the currents as they are; infinite where none comes.
    fn next_event(&self) -> f64 {
        let mut next = f64::INFINITY;
        for device in 0..self.ages.len() {
            let pace = self.ageing(device);
            if pace > 0.0 {
                next = next.min((1.0 - self.ages[device]).max(0.0) / pace);
            }
            if let Some(at) = self.resets[device] {
                next = next.min((at - self.time).max(0.0));
            }
        }
        for wire in &self.wires {
            let heat = &self.base.heats[wire.run];
            let squared = wire.current * wire.current;
            if !wire.damaged {
                next = next.min(heat.until(wire.temperature, heat.limit.0, squared));
            } else if self.closed[wire.item] {
                next = next.min(heat.until(wire.temperature, heat.melts.0, squared));
            }
        }
        next
    }

    /// The longest step in which no conductor changes its resistance by more than [`STEP`]; and whether all of them rest.
    fn longest_step(&self) -> (f64, bool) {
        let mut step = f64::INFINITY;
        let mut rests = true;
        for wire in &self.wires {
            let heat = &self.base.heats[wire.run];
            let squared = wire.current * wire.current;
            let pace = heat.pace(wire.temperature, squared).abs();
            let span = STEP * (wire.temperature + 234.5);
            let unrest = heat.unrest(wire.temperature, squared);
            if unrest > 0.02 * span {
                rests = false;
                step = step.min(span / pace.max(1e-9)).min(0.7 * heat.settles_in());
            }
        }
        (step, rests)
    }

    fn discharging(&self) -> bool {
        let most = self.fault().max(1.0);
        self.capacitors
            .iter()
            .any(|(at, _)| self.current(*at).abs() > 0.02 * most)
    }

    /// Where the wires would have been damaged had the current gone on: the time from now.
    fn would_last(&self) -> f64 {
        self.wires
            .iter()
            .map(|wire| {
                let heat = &self.base.heats[wire.run];
                if wire.damaged {
                    0.0
                } else {
                    heat.until(wire.temperature, heat.limit.0, wire.current * wire.current)
                }
            })
            .fold(f64::INFINITY, f64::min)
    }

    /// What has come to pass at the end of a step. True when the network has changed.
    fn pass(&mut self) -> bool {
        let mut changed = false;
        for device in 0..self.ages.len() {
            let name = || {
                self.base
                    .net
                    .devices
                    .get(device)
                    .map(|it| it.name.clone())
                    .unwrap_or_default()
            };
            if self.resets[device].is_some_and(|at| self.time >= at - 1e-9) {
                let name = name();
                self.resets[device] = None;
                self.ages[device] = 0.0;
                self.closed[self.device_items[device]] = true;
                self.happens(Happening::Closes(name));
                changed = true;
            } else if self.ages[device] >= 0.999 && self.device_items[device] != usize::MAX {
                let item = self.device_items[device];
                if self.closed[item] {
                    let name = name();
                    self.ages[device] = 1.0;
                    self.closed[item] = false;
                    self.resets[device] = self.base.devices[device].resets.map(|after| self.time + after);
                    self.happens(Happening::Opens(name));
                    changed = true;
                }
            }
        }
        for at in 0..self.wires.len() {
            let (run, item, temperature) = (
                self.wires[at].run,
                self.wires[at].item,
                self.wires[at].temperature,
            );
            let heat = &self.base.heats[run];
            let id = self.base.net.runs.get(run).map(|it| it.id).unwrap_or_default();
            if !self.wires[at].damaged && temperature >= heat.limit.0 - 0.05 {
                self.wires[at].damaged = true;
                let known = self
                    .moments
                    .iter()
                    .any(|it| it.happening == Happening::Damaged(id));
                if !known {
                    self.happens(Happening::Damaged(id));
                }
            }
            if self.closed[item] && temperature >= heat.melts.0 - 0.5 {
                self.closed[item] = false;
                changed = true;
                self.happens(Happening::Melts(id));
            }
        }
        changed
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

    /// Goes one step on: temperatures, ages, capacitors. False when there is no answer at its end.
    fn advance(&mut self, step: f64) -> bool {
        let begins: Vec<f64> = self.wires.iter().map(|it| it.temperature).collect();
        let paces: Vec<f64> = (0..self.ages.len()).map(|device| self.ageing(device)).collect();
        let through = |run: &Self, device: usize| match run.device_items[device] {
            usize::MAX => 0.0,
            item => run.current(item),
        };
        let before: Vec<f64> = (0..self.ages.len()).map(|device| through(self, device)).collect();
        let touched: f64 = self.touch_power();
        for wire in &mut self.wires {
            let heat = &self.base.heats[wire.run];
            wire.temperature = heat.after_step(wire.temperature, wire.current * wire.current, step);
        }
        self.time += step;
        if !self.solve() {
            return false;
        }
        self.follow();
        for (at, begin) in begins.iter().enumerate() {
            let now = self.current(self.wires[at].item);
            let wire = &mut self.wires[at];
            let heat = &self.base.heats[wire.run];
            let squared = 0.5 * (wire.current * wire.current + now * now);
            wire.temperature = heat.after_step(*begin, squared, step);
            wire.current = now;
            if let Law::Resistance(ohms) = self.elements[wire.item].law {
                self.heat += squared * ohms * step;
            }
            self.hottest[wire.run] = self.hottest[wire.run].max(wire.temperature);
        }
        self.heat += 0.5 * (touched + self.touch_power()) * step;
        for device in 0..self.ages.len() {
            let now = through(self, device);
            let pace = 0.5 * (paces[device] + self.ageing(device));
            self.ages[device] += pace * step;
            self.let_through[device] += 0.5 * (before[device] * before[device] + now * now) * step;
        }
        for at in 0..self.capacitors.len() {
            let (item, volts) = self.capacitors[at];
            if let What::Capacitor { farads, .. } = self.circuit.items[item].what {
                // Charging current flows from its first node to its second.
                self.capacitors[at].1 = volts + self.current(item) * step / farads.max(1e-9);
            }
        }
        true
    }

    /// Power in the shorts.
    fn touch_power(&self) -> f64 {
        self.circuit
            .touches
            .iter()
            .map(|&at| {
                let amps = self.current(at);
                match self.elements[at].law {
                    Law::Resistance(ohms) => amps * amps * ohms,
                    _ => 0.0,
                }
            })
            .sum()
    }
}
