//! Which branches lie on *any* simple way between two nodes, and which on *every* one, for all pairs at once.
//!
//! The branches fall into blocks: sets that no single node can part. Blocks and nodes form a tree,
//!
//! ```text
//!   source ─[bridge]─ node ─[ring of four]─ node ─[bridge]─ load
//! ```
//!
//! and a simple way between two nodes passes exactly the blocks on the tree's path between them; within a block every
//! branch lies on some way between any two of its nodes, and only a block of one branch, a bridge, lies on all.
//! After J. Hopcroft and R. Tarjan, "Efficient algorithms for graph manipulation", CACM 16 (1973). Cost: linear.

use super::view::{Cursor, View};

/// Nothing: the parent of a root.
const NONE: usize = usize::MAX;

/// The blocks of a view as a forest.
#[derive(Clone, Debug, Default)]
pub struct Blocks {
    /// Block through which each node hangs on its root.
    parent_block: Vec<usize>,
    depth: Vec<usize>,
    root: Vec<usize>,
    /// Node on which each block hangs.
    top: Vec<usize>,
    first_branch: Vec<usize>,
    branches: Vec<usize>,
    /// Nodes in the order in which they were found: every node after the one its block hangs on.
    order: Vec<usize>,
}

struct Frame {
    node: usize,
    via: usize,
    next: Cursor,
}

impl Blocks {
    /// The blocks of a view.
    #[must_use]
    pub fn new(view: &View) -> Self {
        let nodes = view.nodes();
        let mut it = Self {
            parent_block: vec![NONE; nodes],
            depth: vec![0; nodes],
            root: vec![NONE; nodes],
            ..Self::default()
        };
        let mut found = vec![NONE; nodes];
        let mut low = vec![NONE; nodes];
        let mut time = 0;
        let mut frames: Vec<Frame> = Vec::new();
        // Branches on the way, each with its two nodes.
        let mut open: Vec<(usize, usize, usize)> = Vec::new();
        it.first_branch.push(0);
        for start in 0..nodes {
            if found[start] != NONE {
                continue;
            }
            frames.push(Frame {
                node: start,
                via: NONE,
                next: view.cursor(start),
            });
            (found[start], low[start]) = (time, time);
            it.root[start] = start;
            it.order.push(start);
            time += 1;
            while let Some(frame) = frames.last_mut() {
                let node = frame.node;
                if let Some((other, branch)) = view.next(&mut frame.next) {
                    if branch == frame.via {
                        continue;
                    }
                    if found[other] == NONE {
                        open.push((branch, node, other));
                        (found[other], low[other]) = (time, time);
                        it.root[other] = start;
                        it.order.push(other);
                        time += 1;
                        frames.push(Frame {
                            node: other,
                            via: branch,
                            next: view.cursor(other),
                        });
                    } else if found[other] < found[node] {
                        open.push((branch, node, other));
                        low[node] = low[node].min(found[other]);
                    }
                } else {
                    let via = frame.via;
                    frames.pop();
                    let Some(parent) = frames.last().map(|f| f.node) else {
                        continue;
                    };
                    low[parent] = low[parent].min(low[node]);
                    if low[node] >= found[parent] {
                        let block = it.top.len();
                        it.top.push(parent);
                        while let Some((branch, a, b)) = open.pop() {
                            it.branches.push(branch);
                            for end in [a, b] {
                                if end != parent {
                                    it.parent_block[end] = block;
                                }
                            }
                            if branch == via {
                                break;
                            }
                        }
                        it.first_branch.push(it.branches.len());
                    }
                }
            }
        }
        for &node in &it.order {
            let block = it.parent_block[node];
            if block != NONE {
                it.depth[node] = it.depth[it.top[block]] + 1;
            }
        }
        it
    }

    /// Whether a way leads from one node to the other.
    #[must_use]
    pub fn joined(&self, a: usize, b: usize) -> bool {
        match (self.root.get(a), self.root.get(b)) {
            (Some(x), Some(y)) => x == y,
            _ => false,
        }
    }

    /// The blocks that ways between two nodes pass, in no order; empty when there is no way.
    #[must_use]
    pub fn between(&self, a: usize, b: usize) -> Vec<usize> {
        let mut out = Vec::new();
        if !self.joined(a, b) {
            return out;
        }
        let (mut a, mut b) = (a, b);
        while a != b {
            let (x, y) = (self.parent_block[a], self.parent_block[b]);
            match self.depth[a].cmp(&self.depth[b]) {
                std::cmp::Ordering::Greater => {
                    out.push(x);
                    a = self.top[x];
                }
                std::cmp::Ordering::Less => {
                    out.push(y);
                    b = self.top[y];
                }
                std::cmp::Ordering::Equal => {
                    out.push(x);
                    if x == y {
                        break;
                    }
                    out.push(y);
                    (a, b) = (self.top[x], self.top[y]);
                }
            }
        }
        out
    }

    /// The branches of a block.
    #[must_use]
    pub fn branches(&self, block: usize) -> &[usize] {
        match self.first_branch.get(block..).unwrap_or_default() {
            [from, to, ..] => self.branches.get(*from..*to).unwrap_or_default(),
            _ => &[],
        }
    }

    /// The block of each of so many branches; of no meaning for those that are not in the view.
    #[must_use]
    pub fn of_branches(&self, count: usize) -> Vec<usize> {
        let mut of = vec![NONE; count];
        for block in 0..self.top.len() {
            for branch in self.branches(block) {
                if let Some(slot) = of.get_mut(*branch) {
                    *slot = block;
                }
            }
        }
        of
    }

    /// The one branch of a block that is a bridge.
    #[must_use]
    pub fn bridge(&self, block: usize) -> Option<usize> {
        match self.branches(block) {
            [only] => Some(*only),
            _ => None,
        }
    }

    /// The blocks that lie between any two of the marked nodes.
    #[must_use]
    pub fn between_any(&self, marked: &[usize]) -> Vec<usize> {
        let nodes = self.root.len();
        // Marked nodes hanging below each node and each block, itself counted; the tree is worked from its leaves.
        let mut below = vec![0_usize; nodes];
        let mut of_root = vec![0_usize; nodes];
        for &node in marked {
            if node < nodes {
                below[node] += 1;
                of_root[self.root[node]] += 1;
            }
        }
        let mut in_block = vec![0_usize; self.top.len()];
        let mut children = vec![0_usize; self.top.len()];
        for &node in self.order.iter().rev() {
            let block = self.parent_block[node];
            // All of a node's own blocks hang below it and come later in the order, so its count is complete.
            if block != NONE && below[node] > 0 {
                in_block[block] += below[node];
                children[block] += 1;
                below[self.top[block]] += below[node];
            }
        }
        (0..self.top.len())
            .filter(|&block| {
                let all = of_root[self.root[self.top[block]]];
                children[block] >= 2 || (children[block] == 1 && in_block[block] < all)
            })
            .collect()
    }
}
