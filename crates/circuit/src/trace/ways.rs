//! Shortest ways from one node to all others over a view, by any measure that is not negative.

use super::circuits::{BlockOf, Walk};
use super::view::View;
use crate::narrow::narrow;
use std::cmp::Reverse;
use std::collections::BinaryHeap;

/// No node, no branch.
const NONE: u32 = u32::MAX;

/// The shortest ways from one node. One can be used for many searches in turn, so that its lists are made only once.
#[derive(Clone, Debug, Default)]
pub struct Ways {
    /// Distance of each node; infinite where there is no way, or where the search did not come.
    pub distance: Vec<f64>,
    /// The nodes that were reached, each after the node before it; found by [`Ways::from`], nearest first.
    pub order: Vec<usize>,
    /// The step by which each node was reached: the node before it and the branch.
    before: Vec<[u32; 2]>,
    done: Vec<bool>,
    /// Nodes that are still looked for.
    wanted: Vec<bool>,
    /// All nodes of which a distance was told, some perhaps more than once.
    touched: Vec<usize>,
    /// Distances by their bits: those of numbers that are not negative are in the order of the numbers.
    heap: BinaryHeap<Reverse<(u64, usize)>>,
    /// Nodes behind bridges, with their distances.
    behind: Vec<(f64, usize)>,
}

impl Ways {
    /// Ways over the whole view. `cost` gives the measure of a branch; equal ways are decided by the order of nodes,
    /// so that equal sheets give equal ways. After E. W. Dijkstra, Numerische Mathematik 1 (1959).
    #[must_use]
    pub fn from(view: &View, start: usize, cost: impl Fn(usize) -> f64) -> Self {
        let mut it = Self::default();
        it.begin(view);
        it.search(view, start, &cost, &[], usize::MAX);
        it
    }

    /// The same ways, looked for no further than these nodes; what was found before is gone.
    pub(crate) fn find(
        &mut self,
        walk: &Walk,
        start: usize,
        cost: &impl Fn(usize) -> f64,
        nodes: impl Iterator<Item = usize>,
    ) {
        self.begin(&walk.view);
        let mut count = 0;
        for node in nodes {
            if let Some(wanted) = self.wanted.get_mut(node)
                && !std::mem::replace(wanted, true)
            {
                // To be put back where it is not found.
                self.touched.push(node);
                count += 1;
            }
        }
        if count > 0 {
            self.search(&walk.view, start, cost, &walk.block_of, count);
        }
    }

    /// Puts everything back to where a search starts from.
    fn begin(&mut self, view: &View) {
        let nodes = view.nodes();
        if self.distance.len() == nodes {
            for &node in &self.touched {
                self.distance[node] = f64::INFINITY;
                self.before[node] = [NONE; 2];
                self.done[node] = false;
                self.wanted[node] = false;
            }
        } else {
            self.distance = vec![f64::INFINITY; nodes];
            self.before = vec![[NONE; 2]; nodes];
            self.done = vec![false; nodes];
            self.wanted = vec![false; nodes];
        }
        self.touched.clear();
        self.order.clear();
        self.heap.clear();
        self.behind.clear();
    }

    /// Searches until so many of the wanted nodes are reached. Behind a bridge there is but one way on, which need not wait for
    /// nearer nodes elsewhere: only within blocks of several branches nodes are taken by their distance. Where no
    /// blocks are given, none is taken for a bridge.
    fn search(
        &mut self,
        view: &View,
        start: usize,
        cost: &impl Fn(usize) -> f64,
        block_of: &[BlockOf],
        mut count: usize,
    ) {
        if start < self.distance.len() {
            self.distance[start] = 0.0;
            self.touched.push(start);
            self.behind.push((0.0, start));
        }
        while let Some((so_far, node)) = self.next() {
            if std::mem::replace(&mut self.done[node], true) {
                continue;
            }
            self.order.push(node);
            if self.wanted[node] {
                count -= 1;
                if count == 0 {
                    break;
                }
            }
            for (other, branch) in view.near(node) {
                let there = so_far + cost(branch);
                if there < self.distance[other] {
                    self.distance[other] = there;
                    self.before[other] = [narrow(node), narrow(branch)];
                    self.touched.push(other);
                    if block_of.get(branch).is_some_and(|it| it.bridge) {
                        self.behind.push((there, other));
                    } else {
                        self.heap.push(Reverse((there.to_bits(), other)));
                    }
                }
            }
        }
    }

    /// The next node to look on from, with its distance.
    fn next(&mut self) -> Option<(f64, usize)> {
        self.behind.pop().or_else(|| {
            let Reverse((bits, node)) = self.heap.pop()?;
            Some((f64::from_bits(bits), node))
        })
    }

    /// The step by which a node was reached: the node before it and the branch.
    #[must_use]
    pub fn before(&self, node: usize) -> Option<(usize, usize)> {
        let [before, branch] = *self.before.get(node)?;
        (before != NONE).then_some((before as usize, branch as usize))
    }

    /// The branches from a node back to the start, nearest to the node first, each with the node it leads to.
    pub fn back(&self, node: usize) -> impl Iterator<Item = (usize, usize)> + '_ {
        let mut at = node;
        // A way has no more steps than there are nodes.
        (0..self.before.len()).map_while(move |_| {
            let (before, branch) = self.before(at)?;
            at = before;
            Some((branch, before))
        })
    }
}
