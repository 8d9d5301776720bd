//! One way through the network, and what lies on it and around it.

use super::circuits::{BlockOf, Walk};
use super::marks::Marks;
use crate::narrow::narrow;
use crate::network::{BODY, Kind, Network};

/// A way with what tracing tells of it. One is used for all ways in turn, so that its lists are made only once; everything is
/// named by index.
pub(super) struct Trail {
    /// By branch.
    pub(super) steps: Vec<Step>,
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
    named: Vec<u32>,
    round: u32,
}

/// All that tracing asks of a branch, side by side: ways through a large network would otherwise fetch it from all over the memory.
#[derive(Clone, Copy)]
pub(super) struct Step {
    pub(super) what: What,
    /// Of a run, the parts on which it lands, `from` first, beyond all parts for a loose end; of anything else its own part and none.
    parts: [u32; 2],
    /// Of a run, the nodes of its ends; of anything else those of the branch.
    nodes: [u32; 2],
    /// Length of the run, in metres.
    pub(super) length: f64,
    /// Whether the branch touches the body.
    pub(super) on_body: bool,
    /// Whether it is a ground point.
    pub(super) is_ground: bool,
}

#[derive(Clone, Copy)]
pub(super) enum What {
    /// Wire or shield of this run.
    Run(u32),
    /// This overcurrent device.
    Device(u32),
    Other,
}

impl Step {
    fn of(net: &Network, branch: &crate::network::Branch) -> Self {
        let mut it = Self {
            what: What::Other,
            parts: [narrow(branch.part), u32::MAX],
            nodes: branch.nodes.map(narrow),
            length: 0.0,
            on_body: branch.nodes.contains(&BODY) || matches!(branch.kind, Kind::Ground | Kind::Metal),
            is_ground: branch.kind == Kind::Ground,
        };
        match branch.kind {
            Kind::Wire { run } | Kind::Shield { run } => {
                it.what = What::Run(narrow(run));
                if let Some(run) = net.runs.get(run) {
                    let part =
                        |terminal: Option<usize>| net.terminals.get(terminal?).map(|it| narrow(it.part));
                    it.parts = run.terminals.map(|terminal| part(terminal).unwrap_or(u32::MAX));
                    it.nodes = run.nodes.map(narrow);
                    it.length = run.length;
                }
            }
            Kind::Device { device } => it.what = What::Device(narrow(device)),
            _ => {}
        }
        it
    }

    /// The part that the branch is of; of no meaning for runs.
    pub(super) fn part(&self) -> usize {
        self.parts[0] as usize
    }

    /// The length of a run.
    pub(super) fn length_of_run(&self) -> Option<f64> {
        matches!(self.what, What::Run(_)).then_some(self.length)
    }
}

impl Trail {
    pub(super) fn new(net: &Network) -> Self {
        Self {
            steps: net.branches.iter().map(|branch| Step::of(net, branch)).collect(),
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
        let mut at: Option<u32> = None;
        let mut last = None;
        let way = std::mem::take(&mut self.way);
        for &branch in &way {
            let Some(it) = self.steps.get(branch).copied() else {
                continue;
            };
            let BlockOf { block, bridge } = walk.block_of(branch);
            if !bridge && Some(block) != last {
                self.meshed = true;
                self.look_into(walk, block as usize);
            }
            last = Some(block);
            let What::Run(run) = it.what else {
                if let (What::Device(device), true) = (it.what, bridge) {
                    self.cuts.push(device as usize);
                    self.any_devices.push(device as usize);
                }
                self.name(it.part());
                at = it.nodes.iter().copied().find(|n| Some(*n) != at);
                continue;
            };
            self.runs.push(run as usize);
            if bridge {
                self.marks.insert(run as usize);
            }
            self.length += it.length;
            // Walk the terminals in the direction of the way.
            let flip = at.is_some_and(|node| node == it.nodes[1] && node != it.nodes[0]);
            let order = if flip { [1, 0] } else { [0, 1] };
            for end in order {
                self.name(it.parts[end] as usize);
            }
            at = Some(it.nodes[order[1]]);
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
            let Some(it) = self.steps.get(branch) else {
                continue;
            };
            match it.what {
                What::Run(run) => {
                    self.marks.insert(run as usize);
                    continue;
                }
                What::Device(device) => self.any_devices.push(device as usize),
                What::Other => {}
            }
            self.any_parts.push(it.part());
        }
    }
}
