//! A connected piece of the network in one view, drawn together as far as it goes, and its solution.
//!
//! Joined nodes become one, what hangs by one end falls away, and what lies in series becomes one branch. Of a usual
//! channel one branch is left. The rest is modified nodal analysis: node voltages and source currents are the unknowns,
//! each source is put in with 1 V in turn, and everything else follows by superposition.

use super::complex::{Complex, Equations};
use super::element::{Element, Impedance, Taken, View};
use super::few::Few;
use super::network::{Groups, SUPPLY};
use ordered::OrderedMap;

/// Most unknowns that are solved for at once. A piece with more, which no real system has, is left unsolved.
pub(crate) const MOST_UNKNOWNS: usize = 160;

/// A source between two nodes.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Source {
    pub(crate) plus: usize,
    pub(crate) minus: usize,
}

/// Elements in series between two nodes.
#[derive(Clone, Debug)]
pub(crate) struct Branch {
    a: usize,
    b: usize,
    impedance: Impedance,
    /// Elements by number, and whether each goes from `a` to `b`.
    pub(crate) members: Few<(usize, bool)>,
}

/// The elements and sources of a piece by numbers of its own, so that the cost follows the size of the piece. The same in
/// every view of it.
pub(crate) struct Members<'e> {
    /// Number among all elements, the element, and its ends.
    elements: Vec<(usize, &'e Element, usize, usize)>,
    /// Ends of the sources.
    sources: Vec<(usize, usize)>,
    /// Number of nodes; the supply keeps number 0.
    nodes: usize,
}

impl<'e> Members<'e> {
    /// `members` are numbers into `elements`.
    pub(crate) fn new(elements: &'e [Element], members: &[usize], sources: &[Source]) -> Self {
        let mut local: OrderedMap<usize, usize> = OrderedMap::from([(SUPPLY, 0)]);
        let mut number = |node: usize| {
            let next = local.len();
            *local.entry(node).or_insert(next)
        };
        let elements = members
            .iter()
            .filter_map(|at| elements.get(*at).map(|element| (*at, element)))
            .map(|(at, element)| (at, element, number(element.a), number(element.b)))
            .collect();
        let sources = sources
            .iter()
            .map(|source| (number(source.plus), number(source.minus)))
            .collect();
        Self {
            elements,
            sources,
            nodes: local.len(),
        }
    }

    /// The same with one of its sources alone.
    pub(crate) fn of_source(&self, source: usize) -> Option<Self> {
        Some(Self {
            elements: self.elements.clone(),
            sources: vec![*self.sources.get(source)?],
            nodes: self.nodes,
        })
    }
}

/// A piece of network in one view, ready to be solved.
pub(crate) struct Reduced {
    pub(crate) branches: Vec<Branch>,
    /// Row of each node that has one; nodes without are at zero.
    rows: Vec<Option<usize>>,
    /// Number of rows.
    height: usize,
    sources: Vec<Live>,
    /// Number of sources asked for.
    asked: usize,
}

struct Live {
    /// Which of the sources asked for.
    source: usize,
    plus: usize,
    minus: usize,
}

/// What flows when one source gives 1 V and all others 0 V.
pub(crate) struct Solution {
    /// `source_amps[driven][source]`: current that leaves the source's positive end; `None` of a source whose ends are joined.
    pub(crate) source_amps: Vec<Vec<Complex>>,
    /// `branch_amps[driven][branch]`: current from `a` to `b`.
    pub(crate) branch_amps: Vec<Vec<Complex>>,
    /// Currents of a branch below this are rounding: 1e-11 of what 1 V across it would make.
    pub(crate) rounding: Vec<f64>,
}

fn rounding(admittances: &[Complex]) -> Vec<f64> {
    admittances.iter().map(|y| y.size() * 1e-11).collect()
}

impl Reduced {
    /// Draws elements together. Sources of which both ends come together are left out (see [`Reduced::is_shorted`]).
    pub(crate) fn new(members: &Members<'_>, view: View) -> Self {
        let picked = &members.elements;
        let mut groups = Groups::new(members.nodes);
        for (_, element, a, b) in picked {
            if matches!(element.in_view(view), Taken::Short) {
                groups.join(*a, *b);
            }
        }
        let mut branches = Vec::with_capacity(picked.len());
        for (at, element, a, b) in picked {
            if let Taken::As(impedance) = element.in_view(view) {
                let (a, b) = (groups.find(*a), groups.find(*b));
                if a != b {
                    branches.push(Branch {
                        a,
                        b,
                        impedance,
                        members: Few::of((*at, true)),
                    });
                }
            }
        }
        let live: Vec<Live> = members
            .sources
            .iter()
            .enumerate()
            .map(|(source, (plus, minus))| Live {
                source,
                plus: groups.find(*plus),
                minus: groups.find(*minus),
            })
            .filter(|live| live.plus != live.minus)
            .collect();
        let mut keep = vec![false; members.nodes];
        for node in live
            .iter()
            .flat_map(|live| [live.plus, live.minus])
            .chain([SUPPLY])
        {
            if let Some(keep) = keep.get_mut(node) {
                *keep = true;
            }
        }
        let branches = draw_together(branches, &keep);
        let (rows, height) = rows(&branches, &live, members.nodes);
        Self {
            branches,
            rows,
            height,
            sources: live,
            asked: members.sources.len(),
        }
    }

    /// Whether both ends of a source are one node.
    pub(crate) fn is_shorted(&self, source: usize) -> bool {
        !self.sources.iter().any(|live| live.source == source)
    }

    /// Solves it at an angular frequency. `None` when the currents are not settled (sources straight across one another)
    /// or there are more than [`MOST_UNKNOWNS`].
    pub(crate) fn solve(&self, omega: f64) -> Option<Solution> {
        let (nodes, live) = (self.height, self.sources.len());
        let row = |node: usize| self.rows.get(node).copied().flatten();
        let admittances: Vec<Complex> = self
            .branches
            .iter()
            .map(|branch| Complex::ONE / branch.impedance.at(omega))
            .collect();
        if admittances.iter().any(|y| !y.is_finite()) {
            return None;
        }
        if let Some(only) = self.only_straight() {
            return Some(self.straight(only, &admittances));
        }
        if nodes + live > MOST_UNKNOWNS {
            return None;
        }
        let mut equations = Equations::new(nodes + live, live);
        for (branch, y) in self.branches.iter().zip(&admittances) {
            let (a, b) = (row(branch.a), row(branch.b));
            for (one, other) in [(a, b), (b, a)] {
                if let Some(one) = one {
                    equations.add(one, one, *y);
                    if let Some(other) = other {
                        equations.add(one, other, -*y);
                    }
                }
            }
        }
        for (at, source) in self.sources.iter().enumerate() {
            for (node, sign) in [(source.plus, Complex::ONE), (source.minus, -Complex::ONE)] {
                if let Some(node) = row(node) {
                    equations.add(node, nodes + at, -sign);
                    equations.add(nodes + at, node, sign);
                }
            }
            equations.add(nodes + at, nodes + live + at, Complex::ONE);
        }
        let found = equations.solve()?;
        let zero = || vec![Complex::ZERO; self.asked];
        let mut source_amps: Vec<Vec<Complex>> = (0..self.asked).map(|_| zero()).collect();
        let mut branch_amps: Vec<Vec<Complex>> = (0..self.asked)
            .map(|_| vec![Complex::ZERO; self.branches.len()])
            .collect();
        for (driven, unknowns) in self.sources.iter().zip(&found) {
            let volts = |node: usize| {
                row(node)
                    .and_then(|row| unknowns.get(row))
                    .copied()
                    .unwrap_or_default()
            };
            if let Some(amps) = source_amps.get_mut(driven.source) {
                for (at, source) in self.sources.iter().enumerate() {
                    if let (Some(slot), Some(value)) = (amps.get_mut(source.source), unknowns.get(nodes + at))
                    {
                        *slot = *value;
                    }
                }
            }
            if let Some(amps) = branch_amps.get_mut(driven.source) {
                for ((slot, branch), y) in amps.iter_mut().zip(&self.branches).zip(&admittances) {
                    *slot = (volts(branch.a) - volts(branch.b)) * *y;
                }
            }
        }
        Some(Solution {
            source_amps,
            branch_amps,
            rounding: rounding(&admittances),
        })
    }

    /// The one source, when everything lies straight across it.
    fn only_straight(&self) -> Option<&Live> {
        match self.sources.as_slice() {
            [only] => self
                .branches
                .iter()
                .all(|it| (it.a, it.b) == (only.plus, only.minus) || (it.b, it.a) == (only.plus, only.minus))
                .then_some(only),
            _ => None,
        }
    }

    /// What the one source sees, when it was the only one asked for and everything lies straight across it.
    pub(crate) fn straight_admittance(&self, omega: f64) -> Option<Complex> {
        if self.asked != 1 {
            return None;
        }
        self.only_straight()?;
        let sum = |sum, branch: &Branch| sum + Complex::ONE / branch.impedance.at(omega);
        Some(self.branches.iter().fold(Complex::ZERO, sum))
    }

    /// Whether no branch depends on frequency.
    pub(crate) fn is_resistive(&self) -> bool {
        self.branches
            .iter()
            .all(|it| it.impedance.henries == 0.0 && it.impedance.elastance == 0.0)
    }

    /// One source with everything straight across it.
    fn straight(&self, only: &Live, admittances: &[Complex]) -> Solution {
        let mut source_amps = vec![vec![Complex::ZERO; self.asked]; self.asked];
        let mut branch_amps = vec![vec![Complex::ZERO; self.branches.len()]; self.asked];
        let sum = admittances.iter().fold(Complex::ZERO, |sum, y| sum + *y);
        if let Some(slot) = source_amps
            .get_mut(only.source)
            .and_then(|row| row.get_mut(only.source))
        {
            *slot = sum;
        }
        if let Some(row) = branch_amps.get_mut(only.source) {
            for ((slot, branch), y) in row.iter_mut().zip(&self.branches).zip(admittances) {
                *slot = if branch.a == only.plus { *y } else { -*y };
            }
        }
        Solution {
            source_amps,
            branch_amps,
            rounding: rounding(admittances),
        }
    }
}

/// Takes away what hangs by one end and makes one branch of two in series, at every node that need not stay.
fn draw_together(branches: Vec<Branch>, keep: &[bool]) -> Vec<Branch> {
    let stays = |node: usize| keep.get(node).copied().unwrap_or(true);
    if branches.iter().all(|it| stays(it.a) && stays(it.b)) {
        return branches;
    }
    let mut at_node: Vec<Few<usize>> = vec![Few::default(); keep.len()];
    let mut all: Vec<Option<Branch>> = Vec::with_capacity(branches.len());
    for (number, branch) in branches.into_iter().enumerate() {
        for node in [branch.a, branch.b] {
            if let Some(list) = at_node.get_mut(node) {
                list.push(number);
            }
        }
        all.push(Some(branch));
    }
    let mut waiting: Vec<usize> = (0..keep.len()).rev().collect();
    while let Some(node) = waiting.pop() {
        if stays(node) {
            continue;
        }
        let Some(list) = at_node.get(node) else { continue };
        match **list {
            [one] => {
                if let Some(branch) = all.get_mut(one).and_then(Option::take) {
                    for end in [branch.a, branch.b] {
                        if let Some(list) = at_node.get_mut(end) {
                            list.retain(|number| *number != one);
                        }
                        waiting.push(end);
                    }
                }
            }
            [one, two] => {
                let (Some(first), Some(second)) = (
                    all.get_mut(one).and_then(Option::take),
                    all.get_mut(two).and_then(Option::take),
                ) else {
                    continue;
                };
                let (mut joined, second) = (towards(first, node), turned(towards(second, node)));
                joined.b = second.b;
                joined.impedance = joined.impedance.plus(second.impedance);
                joined.members.extend(&second.members);
                for end in [node, joined.a, joined.b] {
                    if let Some(list) = at_node.get_mut(end) {
                        list.retain(|number| *number != one && *number != two);
                    }
                }
                let (a, b) = (joined.a, joined.b);
                if a != b {
                    for end in [a, b] {
                        if let Some(list) = at_node.get_mut(end) {
                            list.push(one);
                        }
                    }
                    if let Some(slot) = all.get_mut(one) {
                        *slot = Some(joined);
                    }
                }
                waiting.extend([a, b]);
            }
            _ => {}
        }
    }
    all.into_iter().flatten().collect()
}

/// The branch so that it ends at a node.
fn towards(branch: Branch, node: usize) -> Branch {
    if branch.b == node { branch } else { turned(branch) }
}

fn turned(mut branch: Branch) -> Branch {
    std::mem::swap(&mut branch.a, &mut branch.b);
    branch.members.reverse();
    for (_, forward) in branch.members.iter_mut() {
        *forward = !*forward;
    }
    branch
}

/// Gives rows to nodes, and says how many: one node of each island stays at zero, the supply where the island has it.
fn rows(branches: &[Branch], live: &[Live], nodes: usize) -> (Vec<Option<usize>>, usize) {
    let mut islands = Groups::new(nodes);
    let mut used = vec![false; nodes];
    let pairs = branches.iter().map(|it| (it.a, it.b));
    for (a, b) in pairs.chain(live.iter().map(|it| (it.plus, it.minus))) {
        islands.join(a, b);
        for end in [a, b] {
            if let Some(used) = used.get_mut(end) {
                *used = true;
            }
        }
    }
    let mut height = 0;
    let mut row = |(node, used): (usize, bool)| {
        // The least node of a set stands for it, so the supply, being 0, stands for its island.
        (used && islands.find(node) != node).then(|| {
            height += 1;
            height - 1
        })
    };
    let rows = (0..).zip(used).map(&mut row).collect();
    (rows, height)
}
