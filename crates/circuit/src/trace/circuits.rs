//! The circuit of every part that draws: how each source feeds it, and how its return gets back.
//!
//! Switches, relays and isolators count as closed and blown fuses as put back: a circuit is what is wired. Feeds do not run over the
//! body or over signal shields. Returns run over shields only where nothing else leads back.

use super::{Blocks, View, Ways};
use crate::network::{BODY, Kind, Network};
use crate::protection::is_live_conductor;
use crate::solve::{Factor, Slot};
use crate::study::{Circuit, DeviceRef, FeedWay, ReturnWay};
use model::quantity::{Amps, Metres, Ohms};
use model::{PartId, PartKind, RunId, Sheet};
use ordered::Sort as _;
use ordered::{OrderedMap, OrderedSet};

/// The three views that tracing walks, with their blocks.
pub(crate) struct Tracer<'a> {
    net: &'a Network,
    ground: Vec<bool>,
    pub(crate) live: View,
    pub(crate) live_blocks: Blocks,
    pub(crate) back: View,
    pub(crate) back_blocks: Blocks,
    pub(crate) any: View,
    pub(crate) any_blocks: Blocks,
    /// Resistance of each branch as solved.
    ohms: &'a [f64],
}

/// What tracing finds.
pub(crate) struct Traced {
    /// The circuit of every part that draws.
    pub(crate) circuits: OrderedMap<PartId, Circuit>,
    /// Parts that each device stands before, on any way.
    pub(crate) serves: OrderedMap<DeviceRef, OrderedSet<PartId>>,
    /// The source against which a part's drop is told.
    pub(crate) nearest: OrderedMap<PartId, usize>,
}

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
                for &(other, _) in view.near(node) {
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

impl<'a> Tracer<'a> {
    pub(crate) fn new(net: &'a Network, sheet: &Sheet, ohms: &'a [f64]) -> Self {
        let live = View::new(net, |_, b| is_live_conductor(b.kind, b.nodes));
        let back = View::new(net, |_, b| !matches!(b.kind, Kind::Shield { .. } | Kind::Tie));
        let any = View::new(net, |_, _| true);
        Self {
            net,
            ground: sheet
                .parts
                .values()
                .map(|p| matches!(p.is, PartKind::Ground(_)))
                .collect(),
            live_blocks: Blocks::new(&live),
            back_blocks: Blocks::new(&back),
            any_blocks: Blocks::new(&any),
            live,
            back,
            any,
            ohms,
        }
    }

    fn id(&self, part: usize) -> PartId {
        self.net.parts.get(part).copied().unwrap_or_default()
    }

    fn run_of(&self, branch: usize) -> Option<usize> {
        match self.net.branches.get(branch)?.kind {
            Kind::Wire { run } | Kind::Shield { run } => Some(run),
            _ => None,
        }
    }

    fn device_of(&self, branch: usize) -> Option<usize> {
        match self.net.branches.get(branch)?.kind {
            Kind::Device { device } => Some(device),
            _ => None,
        }
    }

    /// The run ids, and parts, of branches that lie in blocks between two nodes.
    fn on_any_way(&self, blocks: &Blocks, a: usize, b: usize, out: &mut OnWay) {
        out.clear();
        for block in blocks.between(a, b) {
            let bridge = blocks.bridge(block);
            out.meshed |= bridge.is_none();
            for &branch in blocks.branches(block) {
                if let Some(run) = self.run_of(branch) {
                    out.runs.push(self.net.runs[run].id);
                } else if let Some(it) = self.net.branches.get(branch) {
                    out.parts.push(self.id(it.part));
                }
                if let Some(device) = self.device_of(branch) {
                    out.devices.push(device);
                    if bridge.is_some() {
                        out.cuts.push(device);
                    }
                }
            }
        }
        out.runs.order();
        out.devices.order();
    }

    /// Runs and parts along a way, in order. Joints (buses, splices, plugs) that join two branches of the way are
    /// found by the terminals on which its runs land.
    fn along(&self, way: &[usize], ends: [usize; 2]) -> (Vec<RunId>, Vec<PartId>) {
        let mut runs = Vec::new();
        let mut parts: Vec<PartId> = Vec::new();
        let ends = ends.map(|part| self.id(part));
        let add = |part: usize, parts: &mut Vec<PartId>| {
            let id = self.id(part);
            if !ends.contains(&id) && !parts.contains(&id) {
                parts.push(id);
            }
        };
        let mut at: Option<usize> = None;
        for &branch in way {
            let Some(it) = self.net.branches.get(branch) else {
                continue;
            };
            match self.run_of(branch) {
                Some(run) => {
                    let run = &self.net.runs[run];
                    runs.push(run.id);
                    // Walk the terminals in the direction of the way.
                    let flip = at.is_some_and(|node| node == run.nodes[1] && node != run.nodes[0]);
                    let order = if flip { [1, 0] } else { [0, 1] };
                    for end in order {
                        if let Some(terminal) = run.terminals[end].and_then(|t| self.net.terminals.get(t)) {
                            add(terminal.part, &mut parts);
                        }
                    }
                    at = Some(run.nodes[order[1]]);
                }
                None => {
                    add(it.part, &mut parts);
                    at = it.nodes.iter().copied().find(|n| Some(*n) != at);
                }
            }
        }
        (runs, parts)
    }

    /// The circuits of all parts that draw. `shield_current` gives the mean current in the shield of a run.
    pub(crate) fn circuits(
        &self,
        resistances: &Resistances,
        shield_current: impl Fn(usize) -> f64,
    ) -> Traced {
        let mut serves: Vec<Vec<PartId>> = vec![Vec::new(); self.net.devices.len()];
        let mut nearest: OrderedMap<PartId, (bool, f64, usize)> = OrderedMap::new();
        let mut out: OrderedMap<PartId, Gathered> = OrderedMap::new();
        for consumer in &self.net.consumers {
            out.entry(self.id(consumer.part)).or_default();
        }
        let cost = |branch: usize| self.ohms.get(branch).copied().unwrap_or(1.0);
        for (source_at, source) in self.net.sources.iter().enumerate() {
            let feed_ways = Ways::from(&self.live, source.plus, cost);
            let return_ways = Ways::from(&self.back, source.minus, cost);
            let mut shield_ways: Option<Ways> = None;
            let id = self.id(source.part);
            let mut on_way = OnWay::default();
            let mut way: Vec<usize> = Vec::new();
            let mut returned: OrderedSet<PartId> = OrderedSet::new();
            for consumer in &self.net.consumers {
                if consumer.part == source.part || !self.live_blocks.joined(source.plus, consumer.plus) {
                    continue;
                }
                let part = self.id(consumer.part);
                // Batteries first, then whatever feeds it over the least resistance.
                let not_battery = self
                    .net
                    .branches
                    .get(source.branch)
                    .is_none_or(|b| b.kind != Kind::Battery);
                let rank = (not_battery, feed_ways.distance[consumer.plus], source_at);
                let best = nearest.entry(part).or_insert(rank);
                if (rank.0, rank.1) < (best.0, best.1) {
                    *best = rank;
                }
                let Some(circuit) = out.get_mut(&part) else {
                    continue;
                };
                way.clear();
                way.extend(feed_ways.back(consumer.plus).map(|(branch, _)| branch));
                way.reverse();
                let (runs, parts) = self.along(&way, [source.part, consumer.part]);
                self.on_any_way(&self.live_blocks, source.plus, consumer.plus, &mut on_way);
                circuit.all_runs.extend_from_slice(&on_way.runs);
                circuit.all_parts.extend_from_slice(&on_way.parts);
                circuit.all_parts.extend_from_slice(&parts);
                circuit.all_parts.extend([id, part]);
                for device in &on_way.devices {
                    serves[*device].push(part);
                }
                let devices: Vec<DeviceRef> = way
                    .iter()
                    .filter_map(|b| self.device_of(*b))
                    .filter(|d| on_way.cuts.contains(d))
                    .map(|d| self.net.devices[d].name.clone())
                    .collect();
                circuit.feeds.push(FeedWay {
                    source: id,
                    terminal: consumer.terminal.to_string(),
                    length: Metres(self.length(&way)),
                    runs,
                    parts,
                    devices,
                    on_any_way: on_way.runs.iter().copied().collect(),
                    meshed: on_way.meshed,
                });
                if !returned.insert(part) {
                    continue;
                }
                let by_shield = !self.back_blocks.joined(consumer.minus, source.minus);
                let (blocks, ways) = if by_shield {
                    let ways = shield_ways.get_or_insert_with(|| Ways::from(&self.any, source.minus, cost));
                    (&self.any_blocks, &*ways)
                } else {
                    (&self.back_blocks, &return_ways)
                };
                let mut it = ReturnWay {
                    source: id,
                    ..ReturnWay::default()
                };
                if blocks.joined(consumer.minus, source.minus) {
                    way.clear();
                    way.extend(ways.back(consumer.minus).map(|(branch, _)| branch));
                    self.on_any_way(blocks, consumer.minus, source.minus, &mut on_way);
                    self.fill_return(&mut it, &way, [consumer.part, source.part], &on_way);
                    it.resistance = resistances.between(consumer.minus, source.minus).map(Ohms);
                    circuit.all_runs.extend_from_slice(&it.runs);
                    circuit.all_parts.extend_from_slice(&it.parts);
                    if !it.through_body || by_shield {
                        circuit.all_runs.extend_from_slice(&on_way.runs);
                    }
                }
                for (run, amps) in self.shields_at(consumer.part, &shield_current) {
                    it.shields.insert(run, Amps(amps));
                }
                circuit.returns.push(it);
            }
        }
        let nearest = nearest
            .into_iter()
            .map(|(part, (_, _, source))| (part, source))
            .collect();
        let mut serves_by_name: OrderedMap<DeviceRef, OrderedSet<PartId>> = OrderedMap::new();
        for (device, parts) in self.net.devices.iter().zip(serves) {
            if !parts.is_empty() {
                let named = serves_by_name.entry(device.name.clone()).or_default();
                named.extend(parts);
            }
        }
        Traced {
            circuits: out.into_iter().map(|(part, it)| (part, it.circuit())).collect(),
            serves: serves_by_name,
            nearest,
        }
    }

    /// Signal runs on a part's own line jacks that carry current in their shields.
    fn shields_at(&self, part: usize, current: &impl Fn(usize) -> f64) -> Vec<(RunId, f64)> {
        let mut out = Vec::new();
        for &run in self.net.line_runs_of(part) {
            let amps = current(run).abs();
            if amps > 1e-6 {
                out.push((self.net.runs[run].id, amps));
            }
        }
        out
    }

    fn length(&self, way: &[usize]) -> f64 {
        way.iter()
            .filter_map(|b| self.run_of(*b))
            .map(|run| self.net.runs[run].length)
            .sum()
    }

    fn fill_return(&self, it: &mut ReturnWay, way: &[usize], ends: [usize; 2], on_way: &OnWay) {
        it.complete = true;
        (it.runs, it.parts) = self.along(way, ends);
        it.on_any_way = on_way.runs.iter().copied().collect();
        it.length = Metres(self.length(way));
        let touches_body = |branch: usize| {
            self.net
                .branches
                .get(branch)
                .is_some_and(|b| b.nodes.contains(&BODY))
        };
        it.through_body = way.iter().any(|b| touches_body(*b));
        let lead: Vec<usize> = way.iter().copied().take_while(|b| !touches_body(*b)).collect();
        it.lead_length = Metres(self.length(&lead));
        for &branch in way {
            if let Some(b) = self.net.branches.get(branch)
                && b.kind == Kind::Ground
                && self.ground.get(b.part) == Some(&true)
            {
                it.ground_points.push(self.id(b.part));
            }
        }
        let weakest = way.iter().copied().max_by(|a, b| {
            let ohms = |x: usize| self.ohms.get(x).copied().unwrap_or(0.0);
            ohms(*a).total_cmp(&ohms(*b))
        });
        if let Some(branch) = weakest {
            match self.run_of(branch) {
                Some(run) => it.weakest_run = Some(self.net.runs[run].id),
                None => it.weakest_part = self.net.branches.get(branch).map(|b| self.id(b.part)),
            }
        }
        it.devices = on_way
            .devices
            .iter()
            .filter_map(|d| self.net.devices.get(*d))
            .map(|d| d.name.clone())
            .collect();
    }
}

/// What lies on any way between two nodes. Lists, runs and devices in their order; made into sets once, where they are kept.
#[derive(Default)]
struct OnWay {
    runs: Vec<RunId>,
    parts: Vec<PartId>,
    devices: Vec<usize>,
    /// Devices on every way.
    cuts: Vec<usize>,
    meshed: bool,
}

impl OnWay {
    fn clear(&mut self) {
        self.runs.clear();
        self.parts.clear();
        self.devices.clear();
        self.cuts.clear();
        self.meshed = false;
    }
}

/// A circuit in the making: what belongs to it is named by every source and way, and sorted once.
#[derive(Default)]
struct Gathered {
    feeds: Vec<FeedWay>,
    returns: Vec<ReturnWay>,
    all_runs: Vec<RunId>,
    all_parts: Vec<PartId>,
}

impl Gathered {
    fn circuit(self) -> Circuit {
        Circuit {
            feeds: self.feeds,
            returns: self.returns,
            all_runs: self.all_runs.into_iter().collect(),
            all_parts: self.all_parts.into_iter().collect(),
            ..Circuit::default()
        }
    }
}
