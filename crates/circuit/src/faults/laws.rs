//! How everything behaves at a moment, and the network solved so: laws of wires as warm as they are, of loads at the voltage they have, of
//! sources and capacitors.

use super::circuit::{GIVES_UP, What, source_law};
use super::run::Run;
use crate::network::{Draw, LEAST_RESISTANCE};
use crate::solve::{Law, SourceModel};
use model::quantity::Celsius;

impl Run<'_> {
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
    pub(super) fn solve(&mut self) -> bool {
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
    pub(super) fn follow(&mut self) -> f64 {
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
    pub(super) fn settle(&mut self) -> bool {
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
}
