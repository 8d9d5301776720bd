//! How the things that are sized hang together: which loads' current each carries, and how these sets lie within one another.
//!
//! Take the network with its sources in it, but without its loads and without the shields of signal leads. A run that is a
//! *bridge* there (the only way between its two sides) carries exactly the sum of what the loads across it draw, whatever the
//! sizes of the others, and what is lost in it is lost to exactly those loads. Where the sets of loads of all such runs lie
//! within one another or apart, they form a forest, in which the least metal is found by walking from the leaves to the roots.
//! What is no bridge, or fits into no forest, is *loose*: what it carries depends on what is chosen elsewhere.

use super::things::{Thing, Things};
use checks::Asks;
use circuit::network::{Draw, Kind, Network};
use model::PartId;
use ordered::{OrderedMap, Sort as _};

/// A place of the forest: the things that carry the current of the same loads.
#[derive(Clone, Debug, Default)]
pub(super) struct Node {
    pub(super) parent: Option<usize>,
    pub(super) children: Vec<usize>,
    pub(super) runs: Vec<usize>,
    pub(super) devices: Vec<usize>,
    /// Loads of it that belong to none of its children.
    pub(super) leaves: Vec<usize>,
    /// Leads of amplifiers all of whose runs lie here.
    pub(super) leads: Vec<usize>,
}

/// A ground rule: what the backs conduct per metre, over what the feeds conduct. Each of them is a variable or stays as it is.
#[derive(Clone, Debug)]
pub(super) struct Lead {
    pub(super) amplifier: PartId,
    pub(super) feeds: Vec<Side>,
    pub(super) backs: Vec<Side>,
    pub(super) ratio: f64,
}

#[derive(Clone, Copy, Debug)]
pub(super) enum Side {
    Var(usize),
    Stays(f64),
}

impl Lead {
    /// The variables in it.
    pub(super) fn vars(&self) -> impl Iterator<Item = usize> {
        self.feeds
            .iter()
            .chain(&self.backs)
            .filter_map(|side| match side {
                Side::Var(var) => Some(*var),
                Side::Stays(_) => None,
            })
    }
    /// Whether it holds with these conductances of its variables, in S·m.
    pub(super) fn holds(&self, conducts: impl Fn(usize) -> f64) -> bool {
        let sum = |sides: &[Side]| -> f64 {
            let one = |side: &Side| match side {
                Side::Var(var) => conducts(*var),
                Side::Stays(conducts) => *conducts,
            };
            sides.iter().map(one).sum()
        };
        // A hundredth for sizes that are called differently and are the same, as the check has it.
        sum(&self.backs) >= sum(&self.feeds) * self.ratio * 0.99
    }
}

/// How the things hang together.
pub(super) struct Shape {
    pub(super) nodes: Vec<Node>,
    pub(super) roots: Vec<usize>,
    /// By variable, and by load: the tree it belongs to, as its root; nothing for a load that nothing chosen leads to.
    pub(super) tree: Vec<usize>,
    pub(super) tree_of_leaf: Vec<Option<usize>>,
    /// By variable: whether the forest tells what it carries.
    pub(super) fits: Vec<bool>,
    /// By variable: the loads that lose what is lost in it.
    pub(super) loads: Vec<Vec<usize>>,
    /// By variable: whether its two sides have another way between them.
    pub(super) meshed: Vec<bool>,
    /// Loads as pairs of points, and of which part each limits the drop.
    pub(super) leaves: Vec<([usize; 2], Option<PartId>)>,
    /// By run variable: devices (variables) whose rating it has to bear.
    pub(super) bears: Vec<Vec<usize>>,
    /// Those of them that the walk over the forest holds.
    pub(super) held: Vec<Vec<usize>>,
    /// The same of devices that keep their rating: the largest, with the device.
    pub(super) bears_fixed: Vec<Option<(f64, usize)>>,
    /// By device variable: the least that the runs bear that stay as they are, with the run's place.
    pub(super) guards_fixed: Vec<Option<(f64, usize)>>,
    pub(super) leads: Vec<Lead>,
}

/// Entry and exit of each point on a walk in depth, and for each branch that is a bridge the point behind it.
struct Bridges {
    enter: Vec<usize>,
    leave: Vec<usize>,
    behind: Vec<Option<usize>>,
}

impl Bridges {
    fn new(net: &Network) -> Self {
        let joins = |kind: Kind, carries: bool| match kind {
            Kind::Shield { .. } | Kind::Tie | Kind::Load(_) => false,
            Kind::Battery | Kind::Alternator | Kind::ConverterOut => true,
            _ => carries,
        };
        let mut near: Vec<Vec<(usize, usize)>> = vec![Vec::new(); net.nodes];
        for (at, branch) in net.branches.iter().enumerate() {
            let [a, b] = branch.nodes;
            if joins(branch.kind, branch.carries) && a != b {
                near[a].push((b, at));
                near[b].push((a, at));
            }
        }
        let mut it = Self {
            enter: vec![usize::MAX; net.nodes],
            leave: vec![0; net.nodes],
            behind: vec![None; net.branches.len()],
        };
        let mut low = vec![usize::MAX; net.nodes];
        let mut time = 0;
        for start in 0..net.nodes {
            if it.enter[start] != usize::MAX {
                continue;
            }
            // The point, the branch by which it was entered, and how many of its branches are done.
            let mut stack = vec![(start, usize::MAX, 0)];
            (it.enter[start], low[start]) = (time, time);
            time += 1;
            while let Some((point, by, done)) = stack.last_mut() {
                let (point, by) = (*point, *by);
                if let Some(&(other, branch)) = near[point].get(*done) {
                    *done += 1;
                    if branch == by {
                        continue;
                    }
                    if it.enter[other] == usize::MAX {
                        (it.enter[other], low[other]) = (time, time);
                        time += 1;
                        stack.push((other, branch, 0));
                    } else {
                        low[point] = low[point].min(it.enter[other]);
                    }
                    continue;
                }
                stack.pop();
                it.leave[point] = time;
                if let Some((parent, ..)) = stack.last() {
                    low[*parent] = low[*parent].min(low[point]);
                    if low[point] > it.enter[*parent] {
                        it.behind[by] = Some(point);
                    }
                }
            }
        }
        it
    }

    /// Whether a point lies behind a bridge.
    fn is_behind(&self, far: usize, point: usize) -> bool {
        (self.enter[far]..self.leave[far]).contains(&self.enter[point])
    }
}

/// The loads across a branch: nothing where it is no bridge, or where some draw one way and some the other.
fn across(bridges: &Bridges, leaves: &[([usize; 2], Option<PartId>)], branch: usize) -> Option<Vec<usize>> {
    let far = (*bridges.behind.get(branch)?)?;
    let (mut set, mut ways) = (Vec::new(), [false; 2]);
    for (leaf, ([plus, minus], _)) in leaves.iter().enumerate() {
        let (plus, minus) = (bridges.is_behind(far, *plus), bridges.is_behind(far, *minus));
        if plus != minus {
            set.push(leaf);
            ways[usize::from(plus)] = true;
        }
    }
    (ways != [true; 2]).then_some(set)
}

impl Shape {
    pub(super) fn new(net: &Network, things: &Things, asks: &Asks, judged: &Judged<'_>) -> Self {
        let bridges = Bridges::new(net);
        let mut leaves: Vec<([usize; 2], Option<PartId>)> = Vec::new();
        let mut before = None;
        for consumer in &net.consumers {
            // Of several feed terminals of a part the drop is told of the first.
            let first = before != Some(consumer.part);
            before = Some(consumer.part);
            let part = net.parts.get(consumer.part).copied();
            let part = part.filter(|part| first && asks.drops.contains_key(part));
            leaves.push(([consumer.plus, consumer.minus], part));
        }
        for branch in &net.branches {
            let known = || leaves.iter().any(|(nodes, _)| *nodes == branch.nodes);
            // What tells others to turn on takes so little that it moves nothing.
            let draws = matches!(branch.kind, Kind::Load(draw) if draw != Draw::TurnOn);
            if draws && !known() {
                leaves.push((branch.nodes, None));
            }
        }
        let branch_of = |thing: &Thing| match thing {
            Thing::Run(_, place) => net.runs.get(*place).map_or(usize::MAX, |run| run.branch),
            Thing::Device(place) => net.devices.get(*place).map_or(usize::MAX, |device| device.branch),
        };
        let sets: Vec<Option<Vec<usize>>> = things
            .vars
            .iter()
            .map(|var| across(&bridges, &leaves, branch_of(&var.thing)))
            .collect();
        let device_sets: Vec<Option<Vec<usize>>> = net
            .devices
            .iter()
            .map(|device| across(&bridges, &leaves, device.branch))
            .collect();
        let meshed = sets.iter().map(Option::is_none).collect();
        let mut it = Self {
            nodes: Vec::new(),
            roots: Vec::new(),
            tree: vec![0; sets.len()],
            tree_of_leaf: Vec::new(),
            fits: vec![false; sets.len()],
            loads: sets.into_iter().map(Option::unwrap_or_default).collect(),
            meshed,
            leaves,
            bears: vec![Vec::new(); things.vars.len()],
            held: vec![Vec::new(); things.vars.len()],
            bears_fixed: vec![None; things.vars.len()],
            guards_fixed: vec![None; things.vars.len()],
            leads: judged.leads.clone(),
        };
        it.pairs(things, asks, &device_sets, judged);
        it.forest(things);
        it.attach(things);
        it.name_trees();
        it
    }

    fn name_trees(&mut self) {
        self.tree_of_leaf = vec![None; self.leaves.len()];
        // Parents come before their children.
        let mut root: Vec<usize> = (0..self.nodes.len()).collect();
        for (at, node) in self.nodes.iter().enumerate() {
            if let Some(parent) = node.parent {
                root[at] = root[parent];
            }
            for var in node.runs.iter().chain(&node.devices) {
                self.tree[*var] = root[at];
            }
            for leaf in &node.leaves {
                self.tree_of_leaf[*leaf] = Some(root[at]);
            }
        }
    }

    /// Which ratings each run has to bear: of the devices that guard it, and of those that it lies in line with, before them or
    /// behind, there or back. What lies in line with none, and is guarded by none, bears the rating of the device nearest to each
    /// of its loads: what a fuse lets through for ever flows through all of these.
    fn pairs(
        &mut self,
        things: &Things,
        asks: &Asks,
        device_sets: &[Option<Vec<usize>>],
        judged: &Judged<'_>,
    ) {
        let place_of = |id| judged.sheet.runs.keys().position(|other| *other == id);
        for (device, asked) in asks.devices.iter().enumerate() {
            for id in &asked.guards {
                if let Some(place) = place_of(*id) {
                    self.pair(things, place, device, judged);
                }
            }
        }
        let mut guarded = vec![false; things.of_run.len()];
        let all_guards = asks.devices.iter().flat_map(|asked| &asked.guards);
        for place in all_guards.filter_map(|id| place_of(*id)) {
            guarded[place] = true;
        }
        // The device nearest to each load: the one before the fewest.
        let nearest: Vec<Option<usize>> = (0..self.leaves.len())
            .map(|leaf| {
                let before = device_sets
                    .iter()
                    .enumerate()
                    .filter_map(|(at, set)| Some((at, set.as_ref()?)));
                before
                    .filter(|(at, set)| asks.devices[*at].judged && set.contains(&leaf))
                    .min_by_key(|(at, set)| (set.len(), *at))
                    .map(|(at, _)| at)
            })
            .collect();
        for (var, it) in things.vars.iter().enumerate() {
            let Thing::Run(_, place) = &it.thing else { continue };
            let own = self.loads[var].clone();
            let own = &own;
            if self.meshed[var] || own.is_empty() {
                continue;
            }
            let in_line = device_sets
                .iter()
                .enumerate()
                .filter(|(_, set)| set.as_ref() == Some(own));
            let mut devices: Vec<usize> = in_line
                .map(|(at, _)| at)
                .filter(|at| asks.devices[*at].judged)
                .collect();
            if devices.is_empty() && !guarded[*place] {
                devices.extend(own.iter().filter_map(|leaf| nearest[*leaf]));
            }
            for device in devices {
                self.pair(things, *place, device, judged);
            }
        }
    }

    fn pair(&mut self, things: &Things, place: usize, device: usize, judged: &Judged<'_>) {
        let run = things.of_run.get(place).copied().flatten();
        let var = things.of_device.get(device).copied().flatten();
        match (run, var) {
            (Some(run), Some(device)) => {
                if !self.bears[run].contains(&device) {
                    self.bears[run].push(device);
                }
            }
            (Some(run), None) => {
                let rating = judged.ratings.get(device).copied().flatten();
                let least = self.bears_fixed[run].map_or(0.0, |(amps, _)| amps);
                if let Some(rating) = rating.filter(|rating| *rating > least) {
                    self.bears_fixed[run] = Some((rating, device));
                }
            }
            (None, Some(device)) => {
                let bears = judged.bears.get(place).copied().flatten();
                let most = self.guards_fixed[device].map_or(f64::INFINITY, |(amps, _)| amps);
                if let Some(bears) = bears.filter(|bears| *bears < most) {
                    self.guards_fixed[device] = Some((bears, place));
                }
            }
            (None, None) => {}
        }
    }

    /// Puts the things that lie within one another into nodes, the rest aside.
    fn forest(&mut self, things: &Things) {
        let mut by_set: OrderedMap<Vec<usize>, Vec<usize>> = OrderedMap::new();
        for (var, set) in self.loads.iter().enumerate() {
            if !self.meshed[var] && !set.is_empty() {
                by_set.entry(set.clone()).or_default().push(var);
            }
        }
        let mut sets: Vec<(Vec<usize>, Vec<usize>)> = by_set.into_iter().collect();
        sets.order_by(|a, b| b.0.len().cmp(&a.0.len()).then_with(|| a.0.cmp(&b.0)));
        // The smallest set so far that holds each load; a set whose loads do not agree on it crosses another.
        let mut inner: Vec<Option<usize>> = vec![None; self.leaves.len()];
        for (set, vars) in sets {
            let parent = set.first().and_then(|leaf| inner[*leaf]);
            let agree = set.iter().all(|leaf| inner[*leaf] == parent);
            let holds = |at: usize| set.iter().all(|leaf| self.nodes[at].leaves.contains(leaf));
            if !agree || !parent.is_none_or(holds) {
                continue;
            }
            let at = self.nodes.len();
            for leaf in &set {
                inner[*leaf] = Some(at);
            }
            match parent {
                Some(parent) => self.nodes[parent].children.push(at),
                None => self.roots.push(at),
            }
            let mut node = Node {
                parent,
                leaves: set,
                ..Node::default()
            };
            for var in vars {
                self.fits[var] = true;
                let list = if things.vars[var].is_run() {
                    &mut node.runs
                } else {
                    &mut node.devices
                };
                list.push(var);
            }
            self.nodes.push(node);
        }
        for (at, node) in self.nodes.iter_mut().enumerate() {
            node.leaves.retain(|leaf| inner[*leaf] == Some(at));
        }
    }

    /// Finds a node for what fits into none, sorts out which pairs and rules the walk holds.
    fn attach(&mut self, things: &Things) {
        let mut at: Vec<Option<usize>> = vec![None; things.vars.len()];
        for (number, node) in self.nodes.iter().enumerate() {
            for var in node.runs.iter().chain(&node.devices) {
                at[*var] = Some(number);
            }
        }
        let depth = |nodes: &[Node], mut node: usize| {
            let mut deep = 0;
            while let Some(parent) = nodes[node].parent {
                (node, deep) = (parent, deep + 1);
            }
            deep
        };
        // What loses nothing that is reckoned here hangs on the innermost device whose rating it has to bear.
        for (var, it) in things.vars.iter().enumerate() {
            if at[var].is_some() {
                continue;
            }
            let holders = self.bears[var].iter().filter_map(|device| at[*device]);
            let home = holders.max_by_key(|node| (depth(&self.nodes, *node), *node));
            let home = home.unwrap_or_else(|| {
                self.nodes.push(Node::default());
                self.roots.push(self.nodes.len() - 1);
                self.nodes.len() - 1
            });
            at[var] = Some(home);
            let node = &mut self.nodes[home];
            if it.is_run() {
                node.runs.push(var);
            } else {
                node.devices.push(var);
            }
        }
        self.hold_pairs(things, &at);
        let leads = self.leads.iter().enumerate().filter_map(|(lead, it)| {
            let mut homes = it.vars().map(|var| at[var]);
            let home = homes.next()??;
            homes.all(|other| other == Some(home)).then_some((lead, home))
        });
        let mut taken: Vec<usize> = Vec::new();
        for (lead, home) in leads.collect::<Vec<_>>() {
            // A run is in one rule of the walk at most.
            let vars: Vec<usize> = self.leads[lead].vars().collect();
            if vars.len() <= 3 && !vars.iter().any(|var| taken.contains(var)) {
                taken.extend(vars);
                self.nodes[home].leads.push(lead);
            }
        }
    }

    /// Keeps the pairs that the walk can hold: a run with devices of its own node, and with one of the nearest node above that
    /// has any.
    fn hold_pairs(&mut self, things: &Things, at: &[Option<usize>]) {
        let mut guard: Vec<Option<usize>> = vec![None; self.nodes.len()];
        for var in 0..things.vars.len() {
            let Some(home) = at[var].filter(|_| things.vars[var].is_run()) else {
                continue;
            };
            let mut above = self.nodes[home].parent;
            while let Some(node) = above.filter(|node| self.nodes[*node].devices.is_empty()) {
                above = self.nodes[node].parent;
            }
            let mut kept = Vec::new();
            for &device in &self.bears[var] {
                let of = at[device];
                let holds = of == Some(home)
                    || above.is_some_and(|above| {
                        of == Some(above) && *guard[above].get_or_insert(device) == device
                    });
                // The others are looked at afterwards.
                if holds {
                    kept.push(device);
                }
            }
            self.held[var] = kept;
        }
    }
}

/// What stays as it is and is held against what is chosen.
pub(super) struct Judged<'a> {
    pub(super) sheet: &'a model::Sheet,
    /// By device of the study: its rating.
    pub(super) ratings: Vec<Option<f64>>,
    /// By run of the sheet: what it bears.
    pub(super) bears: Vec<Option<f64>>,
    pub(super) leads: Vec<Lead>,
}
