//! A view of the network for walking: some of its branches as a graph.

use crate::network::{Branch, Network};
use petgraph::graph::{NodeIndex, UnGraph, WalkNeighbors};
use petgraph::visit::EdgeRef;

/// Some branches of a network as an undirected graph, in which two nodes may be joined more than once. Its node indices are
/// the network's; each edge carries the name of its branch.
#[derive(Clone, Debug, Default)]
pub struct View {
    graph: UnGraph<(), usize>,
}

/// How far the neighbours of a node were looked at, for walks that come back to it.
#[derive(Clone)]
pub struct Cursor(WalkNeighbors<u32>);

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
        let mut graph = UnGraph::with_capacity(nodes, edges.len());
        for _ in 0..nodes {
            graph.add_node(());
        }
        // The graph gives its latest edge first: put in backwards, neighbours come in the order of the branches. And whichever
        // way a run was drawn, it is the same edge.
        for &(a, b, name) in edges.iter().rev() {
            if a != b && a < nodes && b < nodes {
                graph.add_edge(NodeIndex::new(a.min(b)), NodeIndex::new(a.max(b)), name);
            }
        }
        Self { graph }
    }

    /// Number of nodes.
    #[must_use]
    pub fn nodes(&self) -> usize {
        self.graph.node_count()
    }

    /// Neighbours of a node, each with the branch to it.
    pub fn near(&self, node: usize) -> impl Iterator<Item = (usize, usize)> + '_ {
        let edges = self.graph.edges(NodeIndex::new(node));
        edges.map(|edge| (edge.target().index(), *edge.weight()))
    }

    /// Before the first neighbour of a node.
    #[must_use]
    pub fn cursor(&self, node: usize) -> Cursor {
        Cursor(self.graph.neighbors(NodeIndex::new(node)).detach())
    }

    /// The next neighbour, with the branch to it.
    pub fn next(&self, cursor: &mut Cursor) -> Option<(usize, usize)> {
        let (edge, node) = cursor.0.next(&self.graph)?;
        Some((node.index(), *self.graph.edge_weight(edge)?))
    }
}
