//! The circuit of every part that draws: how each source feeds it, and how its return gets back.
//!
//! Switches, relays and isolators count as closed and blown fuses as put back: a circuit is what is wired. Feeds do not run over the
//! body or over signal shields. Returns run over shields only where nothing else leads back.

use super::marks::Marks;
use super::trail::{Step, Trail};
use super::{Blocks, Resistances, View, Ways};
use crate::network::{Consumer, Kind, Network, NetworkSource};
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
    pub(super) block_of: Vec<BlockOf>,
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
    /// The nodes at the ends of all ways back, in the order of circuits and returns.
    ends: Vec<[usize; 2]>,
}

impl<'a> Tracer<'a> {
    pub(crate) fn new(net: &'a Network, sheet: &Sheet) -> Self {
        Self {
            net,
            ground: sheet
                .parts
                .values()
                .map(|p| matches!(p.is, PartKind::Ground(_)))
                .collect(),
            live: Walk::new(net, is_live_conductor),
            back: Walk::new(net, |kind, _| !matches!(kind, Kind::Shield { .. } | Kind::Tie)),
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

    /// The ways from each source to what it feeds, and back.
    fn ways(&self, cost: &impl Fn(usize) -> f64) -> Vec<FromSource> {
        let net = self.net;
        let fed = |source: &NetworkSource, it: &&Consumer| {
            it.part != source.part && self.live.blocks.joined(source.plus, it.plus)
        };
        let from = |source: &NetworkSource| {
            let mut it = FromSource {
                id: self.id(source.part),
                not_battery: net
                    .branches
                    .get(source.branch)
                    .is_none_or(|b| b.kind != Kind::Battery),
                feeds: Ways::default(),
                returns: Ways::default(),
                by_shield: None,
            };
            let fed = || net.consumers.iter().filter(|it| fed(source, it));
            let feeds = fed().map(|it| it.plus);
            it.feeds.find(&self.live, source.plus, cost, feeds);
            let returns = fed().map(|it| it.minus);
            let returns = returns.filter(|minus| self.back.blocks.joined(*minus, source.minus));
            it.returns.find(&self.back, source.minus, cost, returns);
            it
        };
        net.sources.iter().map(from).collect()
    }

    /// The circuits of all parts that draw, from the resistance of each branch. What depends on how the network conducts is filled in
    /// by [`Traced::fill`].
    pub(crate) fn circuits(&self, ohms: &[f64]) -> Traced {
        let net = self.net;
        let cost = |branch: usize| ohms.get(branch).copied().unwrap_or(1.0);
        let mut from = self.ways(&cost);
        let mut any: Option<Walk> = None;
        let mut trail = Trail::new(net);
        let mut runs = Marks::new(net.runs.len());
        let mut parts = Marks::new(net.parts.len());
        let mut list = Vec::new();
        let mut serves: Vec<Vec<PartId>> = vec![Vec::new(); net.devices.len()];
        let mut served: Vec<Vec<PartId>> = vec![Vec::new(); net.runs.len()];
        let mut nearest = Vec::new();
        let mut ends = Vec::new();
        // The feed terminals of a part stand side by side.
        let of_part = |own: &[Consumer]| {
            let part = own.first().map_or(0, |it| it.part);
            let id = self.id(part);
            let mut circuit = Circuit::default();
            let mut best: Option<(bool, f64, usize)> = None;
            for (source_at, (source, from)) in net.sources.iter().zip(&mut from).enumerate() {
                let mut returned = false;
                for consumer in own {
                    if part == source.part || !self.live.blocks.joined(source.plus, consumer.plus) {
                        continue;
                    }
                    // Batteries first, then whatever feeds it over the least resistance.
                    let rank = (from.not_battery, from.feeds.distance[consumer.plus], source_at);
                    let best = best.get_or_insert(rank);
                    if (rank.0, rank.1) < (best.0, best.1) {
                        *best = rank;
                    }
                    trail.take(from.feeds.back(consumer.plus));
                    trail.way.reverse();
                    trail.read(&self.live, [source.plus, consumer.plus], [source.part, part]);
                    runs.insert_all(&trail.any_runs);
                    parts.insert_all(&trail.any_parts);
                    parts.insert_all(&trail.parts);
                    parts.insert_all(&[source.part, part]);
                    for device in &trail.any_devices {
                        let list = &mut serves[*device];
                        if list.last() != Some(&id) {
                            list.push(id);
                        }
                    }
                    circuit.feeds.push(FeedWay {
                        source: from.id,
                        terminal: consumer.terminal.as_str().to_owned(),
                        length: Metres(trail.length),
                        runs: trail.runs.iter().map(|run| self.run_id(*run)).collect(),
                        parts: trail.parts.iter().map(|part| self.id(*part)).collect(),
                        devices: self.names(&trail.cuts),
                        on_any_way: trail.any_runs.iter().map(|run| self.run_id(*run)).collect(),
                        meshed: trail.meshed,
                    });
                    // Once for each source, however many feed terminals a part has.
                    if std::mem::replace(&mut returned, true) {
                        continue;
                    }
                    let by_shield = !self.back.blocks.joined(consumer.minus, source.minus);
                    let (walk, ways) = if by_shield {
                        let any = any.get_or_insert_with(|| Walk::new(net, |_, _| true));
                        let make = || Ways::from(&any.view, source.minus, cost);
                        (&*any, &*from.by_shield.get_or_insert_with(make))
                    } else {
                        (&self.back, &from.returns)
                    };
                    let mut it = ReturnWay {
                        source: from.id,
                        ..ReturnWay::default()
                    };
                    if walk.blocks.joined(consumer.minus, source.minus) {
                        trail.take(ways.back(consumer.minus));
                        trail.read(walk, [consumer.minus, source.minus], [part, source.part]);
                        self.fill_return(&mut it, &mut trail, ohms);
                        runs.insert_all(&trail.runs);
                        parts.insert_all(&trail.parts);
                        if !it.through_body || by_shield {
                            runs.insert_all(&trail.any_runs);
                        }
                    }
                    ends.push([consumer.minus, source.minus]);
                    circuit.returns.push(it);
                }
            }
            if let Some((_, _, source)) = best {
                nearest.push((id, source));
            }
            runs.take_into(&mut list);
            for run in &list {
                if let Some(served) = served.get_mut(*run) {
                    served.push(id);
                }
            }
            circuit.all_runs = list.iter().map(|run| self.run_id(*run)).collect();
            parts.take_into(&mut list);
            circuit.all_parts = list.iter().map(|part| self.id(*part)).collect();
            (id, circuit)
        };
        let circuits = net
            .consumers
            .chunk_by(|a, b| a.part == b.part)
            .map(of_part)
            .collect();
        let mut by_name: OrderedMap<DeviceRef, OrderedSet<PartId>> = OrderedMap::new();
        for (device, parts) in net.devices.iter().zip(serves) {
            if !parts.is_empty() {
                by_name.entry(device.name.clone()).or_default().extend(parts);
            }
        }
        Traced {
            circuits,
            serves: by_name,
            served,
            nearest: nearest.into_iter().collect(),
            ends,
        }
    }

    /// Tells of the way back that was taken.
    fn fill_return(&self, it: &mut ReturnWay, trail: &mut Trail, ohms: &[f64]) {
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
            let ohms = |x: usize| ohms.get(x).copied().unwrap_or(0.0);
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

/// What is looked for once for each source.
struct FromSource {
    id: PartId,
    not_battery: bool,
    feeds: Ways,
    returns: Ways,
    /// The ways back over anything, shields included; made when one is needed.
    by_shield: Option<Ways>,
}

impl Traced {
    /// The resistance of each way back, in the order of circuits and returns.
    pub(crate) fn resistances(&self, resistances: &Resistances) -> Vec<Option<Ohms>> {
        let returns = self.circuits.values().flat_map(|circuit| &circuit.returns);
        let between = |(it, [from, to]): (&ReturnWay, &[usize; 2])| {
            let between = || resistances.between(*from, *to).map(Ohms);
            it.complete.then(between).flatten()
        };
        returns.zip(&self.ends).map(between).collect()
    }

    /// Fills in what depends on how the network conducts: the resistance of each way back, and what shields of a part carry.
    /// `shield_current` gives the mean current in the shield of a run.
    pub(crate) fn fill(
        &mut self,
        net: &Network,
        resistances: Vec<Option<Ohms>>,
        shield_current: impl Fn(usize) -> f64,
    ) {
        let mut resistances = resistances.into_iter();
        let consumers = net.consumers.chunk_by(|a, b| a.part == b.part);
        for (circuit, consumers) in self.circuits.values_mut().zip(consumers) {
            let Some(part) = consumers.first().map(|it| it.part) else {
                continue;
            };
            for (it, resistance) in circuit.returns.iter_mut().zip(&mut resistances) {
                it.resistance = resistance;
                it.shields = shields_at(net, part, &shield_current);
            }
        }
    }
}

/// Signal runs on a part's own line jacks that carry current in their shields.
fn shields_at(net: &Network, part: usize, current: &impl Fn(usize) -> f64) -> OrderedMap<RunId, Amps> {
    let carrying = net.line_runs_of(part).iter().filter_map(|&run| {
        let amps = current(run).abs();
        (amps > 1e-6).then(|| (net.runs[run].id, Amps(amps)))
    });
    carrying.collect()
}
