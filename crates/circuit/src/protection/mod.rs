//! What guards each live run from each source.
//!
//! Take the working overcurrent devices out of the network, and the body with them, and what is live falls into
//! *stretches*: sets of conductors with no device between them. A run is unprotected from a source exactly when it lies in
//! the stretch that holds the source's live pole. A device guards the stretch behind it when the source reaches the
//! device's other side without passing that stretch. Ways are simple on the level of stretches, so a way that leaves a
//! stretch through one device and comes back through another adds no guard. Loads are not crossed, nor is the body.
//!
//! Switches, relays and isolators count as closed and blown fuses as put back: a conductor must be guarded whenever
//! somebody throws a switch. A diode isolator counts as passing both ways, which errs to the careful side.

use crate::network::{BODY, Kind, Network};
use crate::study::{Protection, ProtectionFrom};
use crate::trace::{Blocks, Cursor, View, Ways};
use model::quantity::{Amps, Metres};
use model::{RunId, Sheet};
use ordered::Sort as _;
use ordered::{OrderedMap, OrderedSet};

/// No stretch, no stretch yet.
const NONE: usize = usize::MAX;

/// The stretches of a network, and which devices join them.
#[derive(Clone, Debug, Default)]
pub(crate) struct Stretches {
    /// Stretch of each node.
    pub of_node: Vec<usize>,
    /// Working devices between two different stretches, as a view whose names are device indices.
    between: View,
    count: usize,
}

/// What one source reaches.
#[derive(Clone, Debug, Default)]
pub(crate) struct Reach {
    /// Stretches it reaches.
    pub reached: Vec<bool>,
    /// Devices that guard each stretch, ordered.
    pub guards: Vec<Vec<usize>>,
    /// The stretch that holds its live pole.
    pub home: usize,
}

/// Whether protection looks along this branch: live conductors, not the body, not signal shields.
pub(crate) fn is_live_conductor(kind: Kind, nodes: [usize; 2]) -> bool {
    !nodes.contains(&BODY) && !matches!(kind, Kind::Shield { .. } | Kind::Tie | Kind::Ground | Kind::Metal)
}

impl Stretches {
    pub(crate) fn new(net: &Network) -> Self {
        let works = |kind: Kind| matches!(kind, Kind::Device { device } if net.devices.get(device).is_some_and(|d| d.works || is_out(net, device)));
        let plain = View::new(net, |_, b| is_live_conductor(b.kind, b.nodes) && !works(b.kind));
        let mut of_node = vec![NONE; net.nodes];
        let mut count = 0;
        let mut stack = Vec::new();
        for start in 0..net.nodes {
            if of_node[start] != NONE {
                continue;
            }
            of_node[start] = count;
            stack.push(start);
            while let Some(node) = stack.pop() {
                for (other, _) in plain.near(node) {
                    if of_node[other] == NONE {
                        of_node[other] = count;
                        stack.push(other);
                    }
                }
            }
            count += 1;
        }
        let mut edges = Vec::new();
        for (device, it) in net.devices.iter().enumerate() {
            let Some(branch) = net.branches.get(it.branch) else {
                continue;
            };
            if branch.carries && works(branch.kind) && is_live_conductor(branch.kind, branch.nodes) {
                edges.push((of_node[branch.nodes[0]], of_node[branch.nodes[1]], device));
            }
        }
        Self {
            between: View::of_edges(count, &edges),
            of_node,
            count,
        }
    }

    /// What a source with this live pole reaches, and through which devices. One walk in depth: the device between A
    /// and C guards C when A comes before C on the way from the pole, or when A hangs behind C by a part of the
    /// network that has another way past C (Tarjan's low point). Cost: linear in stretches and devices.
    pub(crate) fn reach(&self, pole: usize) -> Reach {
        let home = self.of_node.get(pole).copied().unwrap_or(NONE);
        let mut it = Reach {
            reached: vec![false; self.count],
            guards: vec![Vec::new(); self.count],
            home,
        };
        if home == NONE || pole == BODY {
            it.home = NONE;
            return it;
        }
        struct Frame {
            at: usize,
            via: usize,
            next: Cursor,
        }
        let mut found = vec![NONE; self.count];
        let mut low = vec![NONE; self.count];
        let mut place = vec![NONE; self.count];
        let mut frames = vec![Frame {
            at: home,
            via: NONE,
            next: self.between.cursor(home),
        }];
        // Devices that lead back to a stretch still being walked: (device, stretch, child it hangs behind).
        let mut from_behind: Vec<(usize, usize, usize)> = Vec::new();
        let mut time = 1;
        (found[home], low[home], place[home], it.reached[home]) = (0, 0, 0, true);
        while let Some(frame) = frames.last_mut() {
            let at = frame.at;
            if let Some((other, device)) = self.between.next(&mut frame.next) {
                if device == frame.via {
                    continue;
                }
                if found[other] == NONE {
                    (found[other], low[other]) = (time, time);
                    time += 1;
                    it.reached[other] = true;
                    it.guards[other].push(device);
                    // The same device seen from its far side hangs behind this very child, which has a way past
                    // only if its low point says so.
                    place[other] = frames.len();
                    from_behind.push((device, at, other));
                    frames.push(Frame {
                        at: other,
                        via: device,
                        next: self.between.cursor(other),
                    });
                } else if found[other] < found[at] {
                    low[at] = low[at].min(found[other]);
                    it.guards[at].push(device);
                    if let Some(child) = frames.get(place[other] + 1) {
                        from_behind.push((device, other, child.at));
                    }
                }
            } else {
                frames.pop();
                if let Some(parent) = frames.last() {
                    low[parent.at] = low[parent.at].min(low[at]);
                }
            }
        }
        for (device, stretch, child) in from_behind {
            if stretch != home && low[child] < found[stretch] {
                it.guards[stretch].push(device);
            }
        }
        for guards in it.guards.iter_mut().filter(|guards| guards.len() > 1) {
            guards.order();
            guards.dedup();
        }
        it.guards[home].clear();
        it
    }
}

/// A device that is blown or taken out: its place in the line guards as soon as it is filled again.
fn is_out(net: &Network, device: usize) -> bool {
    net.devices
        .get(device)
        .and_then(|d| net.branches.get(d.branch))
        .is_some_and(|b| b.closes == crate::network::Closes::Never)
}

/// The unprotected stretch of one source: distances along it, and what a device follows on.
struct Open {
    /// Index within the stretch of each of its nodes.
    local: OrderedMap<usize, usize>,
    /// Distance from the pole by the shortest way, in metres.
    distance: Vec<f64>,
    /// Whether every length on that way is known.
    known: Vec<bool>,
    /// Whether every run on that way lies in a sheath.
    sheathed: Vec<bool>,
    /// Runs behind which a device follows.
    followed: OrderedSet<usize>,
}

impl Open {
    fn new(
        net: &Network,
        sheet: &Sheet,
        stretches: &Stretches,
        members: &[usize],
        view: &View,
        pole: usize,
    ) -> Self {
        let local: OrderedMap<usize, usize> =
            members.iter().enumerate().map(|(at, &node)| (node, at)).collect();
        let home = stretches.of_node[pole];
        let run_of = |branch: usize| match net.branches.get(branch).map(|b| b.kind) {
            Some(Kind::Wire { run }) => net.runs.get(run).map(|r| (run, r)),
            _ => None,
        };
        let mut edges = Vec::new();
        let mut ends = OrderedSet::new();
        let sink = members.len();
        for (&node, &at) in &local {
            for (other, branch) in view.near(node) {
                let Some(&there) = local.get(&other) else { continue };
                let crossing = stretches.of_node[other] != home;
                if at < there && !crossing && !is_guard(net, branch) {
                    edges.push((at, there, branch));
                }
            }
            for (_, branch) in view.near(node) {
                if is_guard(net, branch) {
                    ends.insert(at);
                }
            }
        }
        let graph = View::of_edges(members.len(), &edges);
        let start = local.get(&pole).copied().unwrap_or(0);
        let ways = Ways::from(&graph, start, |branch| {
            run_of(branch).map_or(0.0, |(_, r)| r.length)
        });
        let mut known = vec![true; members.len()];
        let mut sheathed = vec![true; members.len()];
        let sheathed_run = |id: RunId| sheet.runs.get(&id).is_some_and(|r| r.wire.sheathed);
        // From the nearest node outwards, each takes over what holds for the one before it.
        for &at in &ways.order {
            if let Some((before, branch)) = ways.before(at) {
                let run = run_of(branch).map(|(_, run)| run);
                known[at] = known[before] && run.is_none_or(|r| r.length_known);
                sheathed[at] = sheathed[before] && run.is_none_or(|r| sheathed_run(r.id));
            }
        }
        // A run has a device behind it when it lies on a simple way from the pole to one: with all devices drawn
        // together into one more node, and that node tied to the pole, it then lies in the block of that tie.
        let tie = usize::MAX - 1;
        for &end in &ends {
            edges.push((end, sink, usize::MAX - 2));
        }
        let mut followed = OrderedSet::new();
        if !ends.is_empty() {
            edges.push((start, sink, tie));
            let named: Vec<(usize, usize, usize)> = edges
                .iter()
                .enumerate()
                .map(|(name, &(a, b, _))| (a, b, name))
                .collect();
            let blocks = Blocks::new(&View::of_edges(members.len() + 1, &named));
            for block in blocks.between(start, sink) {
                for &name in blocks.branches(block) {
                    if let Some((run, _)) = edges.get(name).and_then(|&(_, _, branch)| run_of(branch)) {
                        followed.insert(run);
                    }
                }
            }
        }
        Self {
            local,
            distance: ways.distance,
            known,
            sheathed,
            followed,
        }
    }

    /// Distance to the far end of a run, and whether everything on the way there is known and sheathed.
    fn to_far_end(&self, run: &crate::network::NetworkRun, run_sheathed: bool) -> (f64, bool, bool) {
        let near = run
            .nodes
            .iter()
            .filter_map(|n| self.local.get(n))
            .min_by(|a, b| self.distance[**a].total_cmp(&self.distance[**b]));
        match near {
            Some(&at) => (
                self.distance[at] + run.length,
                self.known[at] && run.length_known,
                self.sheathed[at] && run_sheathed,
            ),
            None => (run.length, run.length_known, run_sheathed),
        }
    }
}

/// The devices through which a device is fed, from any source: those that guard the stretches on its sides, but itself.
pub(crate) fn feeding(net: &Network, stretches: &Stretches, reaches: &[Reach], device: usize) -> Vec<usize> {
    let branch = net.devices.get(device).and_then(|it| net.branches.get(it.branch));
    let nodes = branch.map_or(&[][..], |branch| &branch.nodes[..]);
    let sides = nodes.iter().filter_map(|node| stretches.of_node.get(*node));
    let guards = sides.flat_map(|side| reaches.iter().filter_map(|reach| reach.guards.get(*side)));
    guards
        .flatten()
        .copied()
        .filter(|other| *other != device)
        .collect()
}

fn is_guard(net: &Network, branch: usize) -> bool {
    matches!(net.branches.get(branch).map(|b| b.kind), Some(Kind::Device { device })
        if net.devices.get(device).is_some_and(|d| d.works || is_out(net, device)))
}

/// Protection of every run that can be live, and by device the runs that it guards. `limits` gives, by source index, the most
/// current that the source gives of itself (converters and alternators), in amperes; `allowable` what each run bears.
pub(crate) fn protect(
    net: &Network,
    sheet: &Sheet,
    stretches: &Stretches,
    reaches: &[Reach],
    limits: &[Option<f64>],
    allowable: &[Option<Amps>],
) -> (OrderedMap<RunId, Protection>, Vec<Vec<RunId>>) {
    let live = View::new(net, |_, b| is_live_conductor(b.kind, b.nodes));
    let mut members: OrderedMap<usize, Vec<usize>> = reaches.iter().map(|r| (r.home, Vec::new())).collect();
    for (node, stretch) in stretches.of_node.iter().enumerate() {
        if node != BODY
            && let Some(list) = members.get_mut(stretch)
        {
            list.push(node);
        }
    }
    // Sources on one pole share their unprotected stretch.
    let mut opens: OrderedMap<usize, Open> = OrderedMap::new();
    for (source, reach) in net.sources.iter().zip(reaches) {
        if reach.home != NONE && !opens.contains_key(&source.plus) {
            let list = members.get(&reach.home).map(Vec::as_slice).unwrap_or_default();
            opens.insert(
                source.plus,
                Open::new(net, sheet, stretches, list, &live, source.plus),
            );
        }
    }
    let mut out = OrderedMap::new();
    let mut guarded: Vec<Vec<RunId>> = vec![Vec::new(); net.devices.len()];
    let mut ends: Vec<usize> = Vec::new();
    let mut guards: Vec<usize> = Vec::new();
    for (index, run) in net.runs.iter().enumerate() {
        if run.line {
            continue;
        }
        ends.clear();
        let at = run.nodes.iter().filter(|n| **n != BODY);
        ends.extend(at.map(|n| stretches.of_node[*n]));
        let sheathed = sheet.runs.get(&run.id).is_some_and(|r| r.wire.sheathed);
        let mut from = Vec::new();
        for (at, (source, reach)) in net.sources.iter().zip(reaches).enumerate() {
            if !ends.iter().any(|s| reach.reached.get(*s) == Some(&true)) {
                continue;
            }
            let protected = !ends.contains(&reach.home);
            let mut it = ProtectionFrom {
                source: net.parts.get(source.part).copied().unwrap_or_default(),
                protected,
                self_limiting: match (limits.get(at), allowable.get(index)) {
                    (Some(Some(limit)), Some(Some(allowable))) => *limit <= allowable.0,
                    _ => false,
                },
                ..ProtectionFrom::default()
            };
            if protected {
                let all = ends.iter().filter_map(|s| reach.guards.get(*s)).flatten();
                guards.clear();
                guards.extend(all.copied());
                guards.order();
                guards.dedup();
                for device in &guards {
                    if let Some(runs) = guarded.get_mut(*device)
                        && runs.last() != Some(&run.id)
                    {
                        runs.push(run.id);
                    }
                }
                it.guards = guards
                    .iter()
                    .filter_map(|d| net.devices.get(*d))
                    .map(|d| d.name.clone())
                    .collect();
            } else if let Some(open) = opens.get(&source.plus) {
                let (distance, known, all_sheathed) = open.to_far_end(run, sheathed);
                it.unprotected_to = (known && distance.is_finite()).then_some(Metres(distance));
                it.device_follows = open.followed.contains(&index);
                it.sheathed = all_sheathed;
            }
            from.push(it);
        }
        if !from.is_empty() {
            out.insert(run.id, Protection { from });
        }
    }
    (out, guarded)
}
