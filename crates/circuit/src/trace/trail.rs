//! One way through the network, and what lies on it and around it.

use super::circuits::Walk;
use super::marks::Marks;
use crate::network::{Kind, Network};

/// A way with what tracing tells of it. One is used for all ways in turn, so that its lists are made only once; everything is
/// named by index.
pub(super) struct Trail<'a> {
    net: &'a Network,
    /// The branches of the way, in order.
    pub(super) way: Vec<usize>,
    /// The runs of the way, in order.
    pub(super) runs: Vec<usize>,
    /// The parts that the way crosses, each once, in order, without those at its ends.
    pub(super) parts: Vec<usize>,
    /// The runs on any way between the same ends, ascending.
    pub(super) any_runs: Vec<usize>,
    /// The parts on some way and not on this one, in no order, and perhaps some of those on it.
    pub(super) any_parts: Vec<usize>,
    /// The devices on any way, in no order.
    pub(super) any_devices: Vec<usize>,
    /// Devices of the way, in order, that stand in every way: each is a block by itself.
    pub(super) cuts: Vec<usize>,
    /// Length of the conductors of the way, in metres.
    pub(super) length: f64,
    /// Whether there is more than one way.
    pub(super) meshed: bool,
    marks: Marks,
    /// The round in which each part was last named, so that nothing is to be cleared between ways.
    named: Vec<usize>,
    round: usize,
}

impl<'a> Trail<'a> {
    pub(super) fn new(net: &'a Network) -> Self {
        Self {
            net,
            way: Vec::new(),
            runs: Vec::new(),
            parts: Vec::new(),
            any_runs: Vec::new(),
            any_parts: Vec::new(),
            any_devices: Vec::new(),
            cuts: Vec::new(),
            length: 0.0,
            meshed: false,
            marks: Marks::new(net.runs.len()),
            named: vec![0; net.parts.len()],
            round: 0,
        }
    }

    /// Takes the branches of a way over, each with the node it leads to.
    pub(super) fn take(&mut self, way: impl Iterator<Item = (usize, usize)>) {
        self.way.clear();
        self.way.extend(way.map(|(branch, _)| branch));
    }

    /// Names a part, unless it was already.
    fn name(&mut self, part: usize) {
        if let Some(round) = self.named.get_mut(part)
            && std::mem::replace(round, self.round) != self.round
        {
            self.parts.push(part);
        }
    }

    /// Finds what lies on the way between these nodes of these parts, and on any other way between them.
    ///
    /// Joints (buses, splices, plugs) that join two branches of the way are found by the terminals on which its runs land. A way
    /// passes all blocks that lie between its ends, one after the other, so that the blocks of its branches are those to look
    /// into. Where no way was found, as none has a finite resistance, the blocks themselves say.
    pub(super) fn read(&mut self, walk: &Walk, ends: [usize; 2], parts: [usize; 2]) {
        let net = self.net;
        self.round += 1;
        parts.into_iter().for_each(|part| self.name(part));
        self.runs.clear();
        self.parts.clear();
        self.cuts.clear();
        self.any_parts.clear();
        self.any_devices.clear();
        self.meshed = false;
        // What a sum of nothing is.
        self.length = -0.0;
        let mut at: Option<usize> = None;
        let mut last = None;
        let way = std::mem::take(&mut self.way);
        for &branch in &way {
            let Some(it) = net.branches.get(branch) else {
                continue;
            };
            let block = walk.block_of.get(branch).copied().unwrap_or_default();
            let bridge = walk.blocks.bridge(block).is_some();
            if !bridge && Some(block) != last {
                self.meshed = true;
                self.look_into(walk, block);
            }
            last = Some(block);
            let (Kind::Wire { run } | Kind::Shield { run }) = it.kind else {
                if let (Kind::Device { device }, true) = (it.kind, bridge) {
                    self.cuts.push(device);
                    self.any_devices.push(device);
                }
                self.name(it.part);
                at = it.nodes.iter().copied().find(|n| Some(*n) != at);
                continue;
            };
            self.runs.push(run);
            if bridge {
                self.marks.insert(run);
            }
            let run = &net.runs[run];
            self.length += run.length;
            // Walk the terminals in the direction of the way.
            let flip = at.is_some_and(|node| node == run.nodes[1] && node != run.nodes[0]);
            let order = if flip { [1, 0] } else { [0, 1] };
            for end in order {
                if let Some(terminal) = run.terminals[end].and_then(|t| net.terminals.get(t)) {
                    self.name(terminal.part);
                }
            }
            at = Some(run.nodes[order[1]]);
        }
        if way.is_empty() {
            for block in walk.blocks.between(ends[0], ends[1]) {
                self.meshed |= walk.blocks.bridge(block).is_none();
                self.look_into(walk, block);
            }
        }
        self.way = way;
        self.marks.take_into(&mut self.any_runs);
    }

    /// Takes note of everything in a block.
    fn look_into(&mut self, walk: &Walk, block: usize) {
        for &branch in walk.blocks.branches(block) {
            let Some(it) = self.net.branches.get(branch) else {
                continue;
            };
            match it.kind {
                Kind::Wire { run } | Kind::Shield { run } => {
                    self.marks.insert(run);
                    continue;
                }
                Kind::Device { device } => self.any_devices.push(device),
                _ => {}
            }
            self.any_parts.push(it.part);
        }
    }
}
