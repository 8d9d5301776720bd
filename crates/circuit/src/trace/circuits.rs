//! The circuit of every part that draws: how each source feeds it, and how its return gets back.
//!
//! Switches, relays and isolators count as closed and blown fuses as put back: a circuit is what is wired. Feeds do not run over the
//! body or over signal shields. Returns run over shields only where nothing else leads back.

use super::marks::Marks;
use super::trail::{Step, Trail};
use super::{Blocks, Resistances, View, Ways};
use crate::network::{Consumer, Kind, Network};
use crate::protection::is_live_conductor;
use crate::study::{Circuit, DeviceRef, FeedWay, ReturnWay};
use model::quantity::{Amps, Metres, Ohms};
use model::{PartId, PartKind, RunId, Sheet};
use ordered::Sort as _;
use ordered::{OrderedMap, OrderedSet};

/// Some of the branches, for walking, and the blocks they fall into.
pub(crate) struct Walk {
    pub(crate) view: View,
    pub(crate) blocks: Blocks,
    /// Block of each branch; of no meaning for branches that are not in the view.
    block_of: Vec<BlockOf>,
}

/// In which block a branch lies.
#[derive(Clone, Copy, Default)]
pub(super) struct BlockOf {
    pub(super) block: u32,
    /// Whether the branch is all of it.
    pub(super) bridge: bool,
}

impl Walk {
    fn new(net: &Network, keep: impl Fn(Kind, [usize; 2]) -> bool) -> Self {
        let view = View::new(net, |_, b| keep(b.kind, b.nodes));
        let blocks = Blocks::new(&view);
        let block_of = blocks.of_branches(net.branches.len()).into_iter();
        Self {
            block_of: block_of
                .map(|block| BlockOf {
                    block: u32::try_from(block).unwrap_or(u32::MAX),
                    bridge: blocks.bridge(block).is_some(),
                })
                .collect(),
            view,
            blocks,
        }
    }

    /// In which block a branch of the view lies.
    pub(super) fn block_of(&self, branch: usize) -> BlockOf {
        self.block_of.get(branch).copied().unwrap_or_default()
    }
}

/// The views that tracing walks.
pub(crate) struct Tracer<'a> {
    net: &'a Network,
    ground: Vec<bool>,
    pub(crate) live: Walk,
    pub(crate) back: Walk,
    /// Resistance of each branch as solved.
    ohms: &'a [f64],
}

/// What tracing finds.
pub(crate) struct Traced {
    /// The circuit of every part that draws.
    pub(crate) circuits: OrderedMap<PartId, Circuit>,
    /// Parts that each device stands before, on any way.
    pub(crate) serves: OrderedMap<DeviceRef, OrderedSet<PartId>>,
    /// By run, the parts to whose circuits it belongs.
    pub(crate) served: Vec<Vec<PartId>>,
    /// The source against which a part's drop is told.
    pub(crate) nearest: OrderedMap<PartId, usize>,
}

impl<'a> Tracer<'a> {
    pub(crate) fn new(net: &'a Network, sheet: &Sheet, ohms: &'a [f64]) -> Self {
        Self {
            net,
            ground: sheet
                .parts
                .values()
                .map(|p| matches!(p.is, PartKind::Ground(_)))
                .collect(),
            live: Walk::new(net, is_live_conductor),
            back: Walk::new(net, |kind, _| !matches!(kind, Kind::Shield { .. } | Kind::Tie)),
            ohms,
        }
    }

    fn id(&self, part: usize) -> PartId {
        self.net.parts.get(part).copied().unwrap_or_default()
    }

    fn run_id(&self, run: usize) -> RunId {
        self.net.runs.get(run).map(|it| it.id).unwrap_or_default()
    }

    fn names(&self, devices: &[usize]) -> Vec<DeviceRef> {
        let name = |device: &usize| self.net.devices.get(*device).map(|it| it.name.clone());
        devices
            .iter()
            .map(|device| name(device).unwrap_or_default())
            .collect()
    }

    /// The circuits of all parts that draw. `shield_current` gives the mean current in the shield of a run.
    pub(crate) fn circuits(
        &self,
        resistances: &Resistances,
        shield_current: impl Fn(usize) -> f64,
    ) -> Traced {
        let net = self.net;
        let mut serves: Vec<Vec<usize>> = vec![Vec::new(); net.devices.len()];
        let mut all: Vec<Gathered> = Vec::new();
        // Where each part that draws has its circuit in the list.
        let mut place_of: Vec<Option<usize>> = vec![None; net.parts.len()];
        for consumer in &net.consumers {
            if let Some(place) = place_of.get_mut(consumer.part)
                && place.is_none()
            {
                *place = Some(all.len());
                all.push(Gathered {
                    part: consumer.part,
                    feeds: Vec::with_capacity(net.sources.len().min(8)),
                    returns: Vec::with_capacity(net.sources.len().min(8)),
                    ..Gathered::default()
                });
            }
        }
        let cost = |branch: usize| self.ohms.get(branch).copied().unwrap_or(1.0);
        let mut any: Option<Walk> = None;
        let mut trail = Trail::new(net);
        let (mut feed_ways, mut return_ways) = (Ways::default(), Ways::default());
        for (source_at, source) in net.sources.iter().enumerate() {
            let fed: Vec<&Consumer> = net
                .consumers
                .iter()
                .filter(|it| it.part != source.part && self.live.blocks.joined(source.plus, it.plus))
                .collect();
            let feeds = fed.iter().map(|it| it.plus);
            feed_ways.find(&self.live.view, source.plus, cost, feeds);
            let returns = fed.iter().map(|it| it.minus);
            let returns = returns.filter(|minus| self.back.blocks.joined(*minus, source.minus));
            return_ways.find(&self.back.view, source.minus, cost, returns);
            let mut shield_ways: Option<Ways> = None;
            let id = self.id(source.part);
            let not_battery = net
                .branches
                .get(source.branch)
                .is_none_or(|b| b.kind != Kind::Battery);
            for consumer in fed {
                let place = place_of.get(consumer.part).copied().flatten();
                let Some(circuit) = place.and_then(|place| all.get_mut(place)) else {
                    continue;
                };
                // Batteries first, then whatever feeds it over the least resistance.
                let rank = (not_battery, feed_ways.distance[consumer.plus], source_at);
                let best = circuit.nearest.get_or_insert(rank);
                if (rank.0, rank.1) < (best.0, best.1) {
                    *best = rank;
                }
                trail.take(feed_ways.back(consumer.plus));
                trail.way.reverse();
                trail.read(
                    &self.live,
                    [source.plus, consumer.plus],
                    [source.part, consumer.part],
                );
                circuit.all_runs.extend_from_slice(&trail.any_runs);
                circuit.all_parts.extend_from_slice(&trail.any_parts);
                circuit.all_parts.extend_from_slice(&trail.parts);
                circuit.all_parts.extend([source.part, consumer.part]);
                for device in &trail.any_devices {
                    serves[*device].push(consumer.part);
                }
                circuit.feeds.push(FeedWay {
                    source: id,
                    terminal: consumer.terminal.as_str().to_owned(),
                    length: Metres(trail.length),
                    runs: trail.runs.iter().map(|run| self.run_id(*run)).collect(),
                    parts: trail.parts.iter().map(|part| self.id(*part)).collect(),
                    devices: self.names(&trail.cuts),
                    on_any_way: trail.any_runs.iter().map(|run| self.run_id(*run)).collect(),
                    meshed: trail.meshed,
                });
                // Once for each source, however many feed terminals a part has.
                if circuit.returned == Some(source_at) {
                    continue;
                }
                circuit.returned = Some(source_at);
                let by_shield = !self.back.blocks.joined(consumer.minus, source.minus);
                let (walk, ways) = if by_shield {
                    let any = any.get_or_insert_with(|| Walk::new(net, |_, _| true));
                    let ways = shield_ways.get_or_insert_with(|| Ways::from(&any.view, source.minus, cost));
                    (&*any, &*ways)
                } else {
                    (&self.back, &return_ways)
                };
                let mut it = ReturnWay {
                    source: id,
                    ..ReturnWay::default()
                };
                if walk.blocks.joined(consumer.minus, source.minus) {
                    trail.take(ways.back(consumer.minus));
                    trail.read(walk, [consumer.minus, source.minus], [consumer.part, source.part]);
                    self.fill_return(&mut it, &mut trail);
                    it.resistance = resistances.between(consumer.minus, source.minus).map(Ohms);
                    circuit.all_runs.extend_from_slice(&trail.runs);
                    circuit.all_parts.extend_from_slice(&trail.parts);
                    if !it.through_body || by_shield {
                        circuit.all_runs.extend_from_slice(&trail.any_runs);
                    }
                }
                for (run, amps) in self.shields_at(consumer.part, &shield_current) {
                    it.shields.insert(run, Amps(amps));
                }
                circuit.returns.push(it);
            }
        }
        self.traced(all, serves)
    }

    /// Makes maps and sets of what was gathered.
    fn traced(&self, all: Vec<Gathered>, serves: Vec<Vec<usize>>) -> Traced {
        let mut marks = Marks::new(self.net.runs.len().max(self.net.parts.len()));
        let mut list = Vec::new();
        let mut serves_by_name: OrderedMap<DeviceRef, OrderedSet<PartId>> = OrderedMap::new();
        for (device, parts) in self.net.devices.iter().zip(serves) {
            if !parts.is_empty() {
                let named = serves_by_name.entry(device.name.clone()).or_default();
                parts.iter().for_each(|part| marks.insert(*part));
                marks.take_into(&mut list);
                named.extend(list.iter().map(|part| self.id(*part)));
            }
        }
        let nearest = all.iter().filter_map(|it| {
            let (_, _, source) = it.nearest?;
            Some((self.id(it.part), source))
        });
        let nearest = nearest.collect();
        let mut served: Vec<Vec<PartId>> = vec![Vec::new(); self.net.runs.len()];
        let circuits = all
            .into_iter()
            .map(|it| {
                let mut circuit = Circuit {
                    feeds: it.feeds,
                    returns: it.returns,
                    ..Circuit::default()
                };
                it.all_runs.iter().for_each(|run| marks.insert(*run));
                marks.take_into(&mut list);
                for run in &list {
                    if let Some(served) = served.get_mut(*run) {
                        served.push(self.id(it.part));
                    }
                }
                circuit.all_runs = list.iter().map(|run| self.run_id(*run)).collect();
                it.all_parts.iter().for_each(|part| marks.insert(*part));
                marks.take_into(&mut list);
                circuit.all_parts = list.iter().map(|part| self.id(*part)).collect();
                (self.id(it.part), circuit)
            })
            .collect();
        Traced {
            circuits,
            serves: serves_by_name,
            served,
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

    /// Tells of the way back that was taken.
    fn fill_return(&self, it: &mut ReturnWay, trail: &mut Trail) {
        it.complete = true;
        it.runs = trail.runs.iter().map(|run| self.run_id(*run)).collect();
        it.parts = trail.parts.iter().map(|part| self.id(*part)).collect();
        it.on_any_way = trail.any_runs.iter().map(|run| self.run_id(*run)).collect();
        it.length = Metres(trail.length);
        let steps = || trail.way.iter().filter_map(|branch| trail.steps.get(*branch));
        it.through_body = steps().any(|step| step.on_body);
        let lead = steps().take_while(|step| !step.on_body);
        it.lead_length = Metres(lead.filter_map(Step::length_of_run).sum());
        for step in steps().filter(|step| step.is_ground) {
            if self.ground.get(step.part()) == Some(&true) {
                it.ground_points.push(self.id(step.part()));
            }
        }
        let weakest = trail.way.iter().copied().max_by(|a, b| {
            let ohms = |x: usize| self.ohms.get(x).copied().unwrap_or(0.0);
            ohms(*a).total_cmp(&ohms(*b))
        });
        if let Some(branch) = weakest {
            match self.net.run_of(branch) {
                Some(run) => it.weakest_run = Some(self.run_id(run)),
                None => it.weakest_part = self.net.branches.get(branch).map(|b| self.id(b.part)),
            }
        }
        trail.any_devices.order();
        it.devices = self.names(&trail.any_devices);
    }
}

/// A circuit in the making: what belongs to it is named by every source and way, and brought into order once. Runs and
/// parts by index.
#[derive(Default)]
struct Gathered {
    part: usize,
    feeds: Vec<FeedWay>,
    returns: Vec<ReturnWay>,
    all_runs: Vec<usize>,
    all_parts: Vec<usize>,
    /// The source to which its return was last followed.
    returned: Option<usize>,
    /// The best source so far: whether it is no battery, how far it is in ohms, and which it is.
    nearest: Option<(bool, f64, usize)>,
}
