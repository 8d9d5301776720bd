//! A view of the network for walking: some of its branches, packed so that the neighbours of a node lie side by side.

use crate::network::{Branch, Network};

/// Some branches of a network by node.
#[derive(Clone, Debug, Default)]
pub struct View {
    start: Vec<usize>,
    /// Neighbour and branch.
    step: Vec<(usize, usize)>,
}

impl View {
    /// Those of the branches that tracing passes through that `keep` wants. Branches from a node to itself are left out: no way
    /// uses them.
    #[must_use]
    pub fn new(net: &Network, keep: impl Fn(usize, &Branch) -> bool) -> Self {
        let edges = net.branches.iter().enumerate().filter_map(|(at, branch)| {
            let wanted = branch.carries && keep(at, branch);
            wanted.then_some((branch.nodes[0], branch.nodes[1], at))
        });
        Self::of_edges(net.nodes, &edges.collect::<Vec<_>>())
    }

    /// A view of edges given as (node, node, name).
    #[must_use]
    pub fn of_edges(nodes: usize, edges: &[(usize, usize, usize)]) -> Self {
        let mut start = vec![0; nodes + 1];
        let real = || {
            edges
                .iter()
                .filter(|&&(a, b, _)| a != b && a < nodes && b < nodes)
        };
        for &(a, b, _) in real() {
            start[a + 1] += 1;
            start[b + 1] += 1;
        }
        for at in 0..nodes {
            start[at + 1] += start[at];
        }
        let mut next = start.clone();
        let mut step = vec![(0, 0); start[nodes]];
        for &(a, b, name) in real() {
            step[next[a]] = (b, name);
            next[a] += 1;
            step[next[b]] = (a, name);
            next[b] += 1;
        }
        Self { start, step }
    }

    /// Number of nodes.
    #[must_use]
    pub fn nodes(&self) -> usize {
        self.start.len().saturating_sub(1)
    }

    /// Neighbours of a node, each with the branch to it.
    #[must_use]
    pub fn near(&self, node: usize) -> &[(usize, usize)] {
        match (self.start.get(node), self.start.get(node + 1)) {
            (Some(&from), Some(&to)) => self.step.get(from..to).unwrap_or_default(),
            _ => &[],
        }
    }
}
