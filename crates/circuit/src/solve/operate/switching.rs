//! What switches while an operating point is settled: relays, sensing isolators, head units on the ignition, and converters
//! that draw what they give. Relays and sensing isolators may change [`MOST_TOGGLES`] times; one that still will not rest is
//! left open and said so.

use super::{Operator, SourceModel};
use crate::network::{Closes, Network, values};
use crate::solve::LEAST_SUPPLY;
use crate::solve::throwing::{MOST_TOGGLES, wants};
use ordered::OrderedMap;

/// Nothing came before an operating point that would hold a relay below its pull-in voltage.
const AT_REST: f64 = 1.0;

/// Nodes whose voltages decide what switches: of coils, sensing isolators, ignition terminals and inputs of converters. `switching`
/// are branches that close by themselves, `ignition` gives the node of the ignition terminal by part.
pub(super) fn watched(net: &Network, switching: &[usize], ignition: &OrderedMap<usize, usize>) -> Vec<usize> {
    let mut out = Vec::new();
    for branch in switching.iter().filter_map(|&at| net.branches.get(at)) {
        match branch.closes {
            Closes::Relay { coil, .. } => out.extend(net.branches.get(coil).map_or([0; 2], |b| b.nodes)),
            Closes::Sensing { minus, .. } => out.extend([branch.nodes[0], minus]),
            _ => {}
        }
    }
    for (&part, &node) in ignition {
        out.push(node);
        out.extend(net.node_by_name(part, "31"));
    }
    for source in &net.sources {
        out.extend(
            ["in", "-"]
                .iter()
                .filter_map(|name| net.node_by_name(source.part, name)),
        );
    }
    out
}

impl Operator<'_> {
    /// Relays and isolators that would not rest.
    pub(super) fn restless(&self) -> Vec<usize> {
        (0..self.toggles.len())
            .filter(|&at| self.toggles[at] > MOST_TOGGLES)
            .collect()
    }

    /// Whether a source may give: a converter whose input was found without supply may not.
    pub(super) fn may_give(&self, source: usize) -> bool {
        !self.starved.contains(&source)
    }

    fn input_voltage(&self, part: usize) -> f64 {
        let of_part = |n: &str| self.net.node_by_name(part, n);
        match (of_part("in"), of_part("-")) {
            (Some(a), Some(b)) if self.system.are_tied(a, b) => {
                self.system.voltages()[a] - self.system.voltages()[b]
            }
            _ => 0.0,
        }
    }

    /// Lets the inputs of converters draw what their outputs give. True while that still changes.
    pub(super) fn feed_converters(&mut self) -> bool {
        let mut moved = false;
        for (at, source) in self.net.sources.iter().enumerate() {
            let SourceModel::Limited {
                efficiency: Some(efficiency),
                ..
            } = self.models[at]
            else {
                continue;
            };
            // Behind a diode that blocks there is a voltage and yet no supply.
            let cut_off = self
                .inlet
                .get(at)
                .copied()
                .flatten()
                .is_some_and(|inlet| self.system.is_idle(inlet));
            let without = cut_off || self.input_voltage(source.part) < LEAST_SUPPLY;
            if !self.starved.contains(&at) && without {
                self.starved.insert(at);
                self.input.remove(&source.part);
                self.system.restart();
                return true;
            }
            let v = self.system.across(&self.elements[source.branch]);
            let gives = -self
                .system
                .current_of(source.branch, &self.elements[source.branch])
                * v;
            let asks = (gives / efficiency).max(0.0);
            let before = self.input.get(&source.part).copied().unwrap_or(0.0);
            if (asks - before).abs() > 1e-9 * asks.max(1e-3) {
                self.input.insert(source.part, asks);
                moved = true;
            }
        }
        moved
    }

    /// Throws relays, sensing isolators and head units whose voltage says so. True when something moved.
    pub(super) fn toggle(&mut self) -> bool {
        let mut moved = false;
        for &at in &self.switching {
            let branch = &self.net.branches[at];
            let coil = |at: usize| self.elements.get(at).map_or(0.0, |it| self.system.across(it));
            let sensed = |minus: usize| {
                let a = branch.nodes[0];
                if self.system.are_tied(a, minus) {
                    self.system.voltages()[a] - self.system.voltages()[minus]
                } else {
                    0.0
                }
            };
            let Some(wants) = wants(branch.closes, self.closed[at], AT_REST, coil, sensed) else {
                continue;
            };
            if wants != self.closed[at] && self.toggles[at] <= MOST_TOGGLES {
                self.toggles[at] += 1;
                // One that will not rest is left open: that is the state in which nothing depends on it.
                self.closed[at] = wants && self.toggles[at] <= MOST_TOGGLES;
                self.system.restart();
                moved = true;
            }
        }
        let ignition = self.ignition.iter().map(|(&part, &node)| {
            let minus = self.net.node_by_name(part, "31");
            (part, node, minus)
        });
        let told = self
            .told
            .iter()
            .map(|&(part, input, minus)| (part, input, Some(minus)));
        for (part, node, minus) in ignition.chain(told) {
            let live = minus.is_some_and(|m| {
                self.system.are_tied(node, m)
                    && self.system.voltages()[node] - self.system.voltages()[m] >= values::IGNITION_THRESHOLD
            });
            let wants = live && self.demands[part].may_be_on;
            // Its own draw must not make it flutter: once off at this level it stays off.
            if self.on[part] && !wants {
                self.on[part] = false;
                self.system.restart();
                moved = true;
            }
        }
        moved
    }
}
