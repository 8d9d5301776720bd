//! One step through time: how long it may be, what ages, warms and discharges in it, and what has come to pass at its end.

use super::circuit::What;
use super::run::Run;
use super::scenario::Happening;
use crate::solve::Law;

/// Change of temperature in a step, over the temperature above −234.5 °C, at which copper would have no resistance.
const STEP: f64 = 0.04;

impl Run<'_> {
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
    pub(super) fn next_event(&self) -> f64 {
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
    pub(super) fn longest_step(&self) -> (f64, bool) {
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

    pub(super) fn discharging(&self) -> bool {
        let most = self.fault().max(1.0);
        self.capacitors
            .iter()
            .any(|(at, _)| self.current(*at).abs() > 0.02 * most)
    }

    /// Where the wires would have been damaged had the current gone on: the time from now.
    pub(super) fn would_last(&self) -> f64 {
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
    pub(super) fn pass(&mut self) -> bool {
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

    /// Goes one step on: temperatures, ages, capacitors. False when there is no answer at its end.
    pub(super) fn advance(&mut self, step: f64) -> bool {
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
