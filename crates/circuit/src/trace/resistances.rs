//! Resistances between any two points of the network as it conducts.

use super::View;
use crate::solve::{Factor, Slot};

/// The conducting branches as they stand, for resistances between two points.
pub(crate) struct Resistances {
    factor: Factor,
    usable: bool,
    component: Vec<usize>,
}

impl Resistances {
    /// From branches that conduct, given as (node, node, ohms).
    pub(crate) fn new(nodes: usize, branches: &[(usize, usize, f64)]) -> Self {
        let pairs: Vec<(usize, usize)> = branches.iter().map(|&(a, b, _)| (a, b)).collect();
        let mut factor = Factor::new(nodes, &pairs);
        let slots: Vec<Option<Slot>> = pairs.iter().map(|&(a, b)| factor.slot(a, b)).collect();
        for (slot, &(_, _, ohms)) in slots.iter().zip(branches) {
            if let Some(slot) = slot {
                factor.add_between(*slot, 1.0 / ohms);
            }
        }
        let edges: Vec<(usize, usize, usize)> =
            pairs.iter().enumerate().map(|(at, &(a, b))| (a, b, at)).collect();
        let view = View::of_edges(nodes, &edges);
        let mut component = vec![usize::MAX; nodes];
        let mut stack = Vec::new();
        for start in 0..nodes {
            if component[start] != usize::MAX {
                continue;
            }
            component[start] = start;
            factor.add_to_reference(start, 1.0);
            stack.push(start);
            while let Some(node) = stack.pop() {
                for (other, _) in view.near(node) {
                    if component[other] == usize::MAX {
                        component[other] = start;
                        stack.push(other);
                    }
                }
            }
        }
        let usable = factor.factor();
        Self {
            factor,
            usable,
            component,
        }
    }

    /// Resistance between two nodes; `None` when nothing that conducts joins them.
    pub(crate) fn between(&self, a: usize, b: usize) -> Option<f64> {
        if a == b {
            return Some(0.0);
        }
        let joined = self.usable && self.component.get(a)? == self.component.get(b)?;
        joined.then(|| {
            let across = [(a, 1.0), (b, -1.0)];
            self.factor.form(&across, &across)
        })
    }
}
