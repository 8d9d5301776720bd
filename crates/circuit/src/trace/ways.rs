//! Shortest ways from one node to all others over a view, by any measure that is not negative.

use super::view::View;
use std::cmp::Reverse;
use std::collections::BinaryHeap;

/// The shortest ways from one node.
#[derive(Clone, Debug, Default)]
pub struct Ways {
    /// Distance of each node; infinite where there is no way.
    pub distance: Vec<f64>,
    /// The step by which each node was reached: the node before it and the branch.
    pub before: Vec<Option<(usize, usize)>>,
    /// The nodes that were reached, nearest first; each after the node before it.
    pub order: Vec<usize>,
}

impl Ways {
    /// Ways over the whole view. `cost` gives the measure of a branch; equal ways are decided by the order of nodes,
    /// so that equal sheets give equal ways. After E. W. Dijkstra, Numerische Mathematik 1 (1959).
    #[must_use]
    pub fn from(view: &View, start: usize, cost: impl Fn(usize) -> f64) -> Self {
        let nodes = view.nodes();
        let mut it = Self {
            distance: vec![f64::INFINITY; nodes],
            before: vec![None; nodes],
            order: Vec::new(),
        };
        let mut done = vec![false; nodes];
        // Distances by their bits: those of numbers that are not negative are in the order of the numbers.
        let mut heap: BinaryHeap<Reverse<(u64, usize)>> = BinaryHeap::new();
        if start < nodes {
            it.distance[start] = 0.0;
            heap.push(Reverse((0.0_f64.to_bits(), start)));
        }
        while let Some(Reverse((bits, node))) = heap.pop() {
            let so_far = f64::from_bits(bits);
            if std::mem::replace(&mut done[node], true) {
                continue;
            }
            it.order.push(node);
            for (other, branch) in view.near(node) {
                let there = so_far + cost(branch);
                if there < it.distance[other] {
                    it.distance[other] = there;
                    it.before[other] = Some((node, branch));
                    heap.push(Reverse((there.to_bits(), other)));
                }
            }
        }
        it
    }

    /// The branches from a node back to the start, nearest to the node first, each with the node it leads to.
    pub fn back(&self, node: usize) -> impl Iterator<Item = (usize, usize)> + '_ {
        let mut at = node;
        // A way has no more steps than there are nodes.
        (0..self.before.len()).map_while(move |_| {
            let (before, branch) = *self.before.get(at)?.as_ref()?;
            at = before;
            Some((branch, before))
        })
    }
}
