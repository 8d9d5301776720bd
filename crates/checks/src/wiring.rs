//! The supply wiring as the checks walk it: points that are one by construction, and what ties them together. Small
//! and without numbers; currents and voltages come from the engine.
//!
//! ```text
//!  B1.+ --run W1-- F1.in =device F1= F1.out --run W2-- A1.+      A1.- --run W3-- E1.stud =body= BODY
//! ```
//!
//! *Invariant:* line-level signal leads are left out: their shields are the engine's business, not a way of supply.

use crate::places::Places;
use circuit::DeviceRef;
use model::conductor::Condition;
use model::kinds::supply::DeviceState;
use model::{PartId, PartKind, Role, RunId, Sheet, Terminal, TerminalName, TerminalRef};
use ordered::Sort as _;
use ordered::{OrderedMap, OrderedSet};
use std::cmp::Reverse;
use std::collections::BinaryHeap;

/// A point of the wiring: everything on it is one by construction.
pub(crate) type Point = usize;

/// The body of the vehicle.
pub(crate) const BODY: Point = 0;

/// What ties two points together.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum TieKind {
    /// A run of wire.
    Run(RunId),
    /// A fuse, a breaker, a fused output, a factory feed of the vehicle.
    Device(DeviceRef, DeviceState),
    /// Contacts of a switch, relay or isolator.
    Contact(PartId),
    /// The vehicle's own leads and straps, or a ground point's hold on the body.
    Own(PartId),
}

/// Two points and what ties them.
#[derive(Clone, Debug)]
pub(crate) struct Tie {
    pub(crate) ends: [Point; 2],
    pub(crate) kind: TieKind,
}

impl Tie {
    /// The end that is not this one.
    pub(crate) fn other(&self, point: Point) -> Point {
        let [a, b] = self.ends;
        if a == point { b } else { a }
    }
}

/// The supply wiring of a sheet.
pub(crate) struct Wiring {
    /// The parts, in the order of their ids.
    parts: Places<PartId>,
    /// The terminals, part by part, with their points; asked for once: their names are made up at every call.
    terminals: Vec<(Terminal, Point)>,
    /// Where those of each part begin, and one entry more.
    first: Vec<usize>,
    count: usize,
    ties: Vec<Tie>,
    /// Numbers of ties by point, and where those of each point begin, and one entry more.
    at: Vec<usize>,
    first_at: Vec<usize>,
    of_run: OrderedMap<RunId, usize>,
}

/// What a part does with its terminals, by their places among them; every other one stands alone.
enum Inside {
    Same(usize, usize),
    Tied(usize, usize, TieKind),
    OnBody(usize),
    BodyTie(usize),
}

/// The place of a terminal among those of its part; of several of one name the last is meant.
fn named(own: &[(Terminal, Point)], is: impl Fn(&str) -> bool) -> Option<usize> {
    own.iter().rposition(|(terminal, _)| is(terminal.name.as_str()))
}

fn inside(id: PartId, kind: &PartKind, own: &[(Terminal, Point)], add: &mut dyn FnMut(Inside)) {
    let device = |output: Option<&str>| DeviceRef {
        part: id,
        output: output.map(TerminalName::from),
    };
    let place = |name: &str| named(own, |other| other == name);
    let tie = |add: &mut dyn FnMut(Inside), a: &str, b: &str, kind: TieKind| {
        if let (Some(a), Some(b)) = (place(a), place(b)) {
            add(Inside::Tied(a, b, kind));
        }
    };
    match kind {
        PartKind::Bus(_) | PartKind::Splice(_) => {
            (1..own.len()).for_each(|at| add(Inside::Same(0, at)));
        }
        PartKind::Block(block) => {
            // What is not fused is one bar.
            for at in 0..own.len() {
                let name = own.get(at).map_or("", |(terminal, _)| terminal.name.as_str());
                let fuse = name
                    .strip_prefix("out")
                    .and_then(|number| number.parse::<usize>().ok())
                    .and_then(|number| block.fuses.0.get(number.checked_sub(1)?));
                if matches!(fuse, Some(Some(_))) {
                    tie(
                        add,
                        "in",
                        name,
                        TieKind::Device(device(Some(name)), DeviceState::Intact),
                    );
                } else {
                    add(Inside::Same(0, at));
                }
            }
        }
        PartKind::Plug(plug) if plug.mated => {
            let through = plug
                .cavities
                .0
                .iter()
                .map(|c| (c.position.as_str(), 'a', c.position.as_str(), 'b'));
            let loops = plug
                .loops
                .0
                .iter()
                .map(|(from, to)| (from.as_str(), 'a', to.as_str(), 'a'));
            through.chain(loops).for_each(|pair| join_halves(own, pair, add));
        }
        PartKind::Adapter(adapter) => {
            let through = adapter.cavities.0.iter();
            let through = through.map(|c| (c.position.as_str(), 'a', c.position.as_str(), 'b'));
            through.for_each(|pair| join_halves(own, pair, add));
        }
        PartKind::Ground(_) => place("stud").into_iter().for_each(|at| add(Inside::BodyTie(at))),
        PartKind::Vehicle(_) => {
            tie(add, "+", "B+", TieKind::Own(id));
            for feed in ["30", "15"] {
                tie(
                    add,
                    "+",
                    feed,
                    TieKind::Device(device(Some(feed)), DeviceState::Intact),
                );
            }
            place("-").into_iter().for_each(|at| add(Inside::BodyTie(at)));
            for name in ["31", "engine"] {
                place(name).into_iter().for_each(|at| add(Inside::OnBody(at)));
            }
        }
        PartKind::Fuse(fuse) => tie(add, "in", "out", TieKind::Device(device(None), fuse.state)),
        PartKind::Breaker(breaker) => tie(add, "in", "out", TieKind::Device(device(None), breaker.state)),
        PartKind::Switch(_) => tie(add, "in", "out", TieKind::Contact(id)),
        PartKind::Relay(_) => {
            tie(add, "30", "87", TieKind::Contact(id));
            tie(add, "30", "87a", TieKind::Contact(id));
        }
        PartKind::Isolator(_) => tie(add, "main", "aux", TieKind::Contact(id)),
        _ => {}
    }
}

/// Joins two terminals of a plug or an adapter, each named by its position and its side.
fn join_halves(
    own: &[(Terminal, Point)],
    (a, a_side, b, b_side): (&str, char, &str, char),
    add: &mut dyn FnMut(Inside),
) {
    let half = |position: &str, side: char| named(own, |name| name.strip_suffix(side) == Some(position));
    if let (Some(a), Some(b)) = (half(a, a_side), half(b, b_side)) {
        add(Inside::Same(a, b));
    }
}

fn name_at(all: &[(Terminal, Point)], at: usize) -> Option<&TerminalName> {
    all.get(at).map(|(terminal, _)| &terminal.name)
}

/// Those of one of the lists that lie one behind the other in `all`, each from its entry in `first` to the next.
fn slice_of<'a, T>(all: &'a [T], first: &[usize], at: usize) -> &'a [T] {
    match (first.get(at), first.get(at + 1)) {
        (Some(from), Some(to)) => all.get(*from..*to).unwrap_or_default(),
        _ => &[],
    }
}

fn root(parents: &mut [usize], mut at: usize) -> usize {
    loop {
        let up = parents.get(at).copied().unwrap_or(at);
        if up == at {
            return at;
        }
        // Path halving keeps later look-ups short.
        let above = parents.get(up).copied().unwrap_or(up);
        if let Some(slot) = parents.get_mut(at) {
            *slot = above;
        }
        at = above;
    }
}

impl Wiring {
    /// The wiring of a sheet.
    pub(crate) fn of(sheet: &Sheet) -> Self {
        let mut it = Self {
            parts: Places::new(sheet.parts.keys().copied()),
            terminals: Vec::new(),
            first: vec![0],
            count: 0,
            ties: Vec::new(),
            at: Vec::new(),
            first_at: Vec::new(),
            of_run: OrderedMap::new(),
        };
        for part in sheet.parts.values() {
            it.terminals
                .extend(part.terminals().into_iter().map(|terminal| (terminal, BODY)));
            it.first.push(it.terminals.len());
        }
        // Each terminal has a slot of its own at first, behind the body's; slots are joined, and at last numbered as points.
        let mut parents: Vec<usize> = (0..=it.terminals.len()).collect();
        for (at, (id, part)) in sheet.parts.iter().enumerate() {
            let base = it.first.get(at).map_or(0, |first| first + 1);
            let mut join = |a: usize, b: usize| {
                let (a, b) = (root(&mut parents, a), root(&mut parents, b));
                // The lesser number wins, so that the body stays 0.
                if let Some(parent) = parents.get_mut(a.max(b)) {
                    *parent = a.min(b);
                }
            };
            let ties = &mut it.ties;
            let mut tie = |ends: [usize; 2], kind: TieKind| ties.push(Tie { ends, kind });
            let own = slice_of(&it.terminals, &it.first, at);
            inside(*id, &part.is, own, &mut |rule| match rule {
                Inside::Same(a, b) => join(base + a, base + b),
                Inside::OnBody(at) => join(BODY, base + at),
                Inside::BodyTie(at) => tie([BODY, base + at], TieKind::Own(*id)),
                Inside::Tied(a, b, kind) => tie([base + a, base + b], kind),
            });
        }
        for (id, run) in &sheet.runs {
            let places = run.ends().map(|end| it.place(end.terminal()?));
            let [Some(a), Some(b)] = places else { continue };
            let is_line = |at: usize| it.terminals.get(at).is_some_and(|(t, _)| t.role.is_line());
            let is_cut = run.wire.condition.value() == Some(Condition::Cut);
            if !is_line(a) && !is_line(b) && !is_cut {
                it.of_run.insert(*id, it.ties.len());
                it.ties.push(Tie {
                    ends: [a + 1, b + 1],
                    kind: TieKind::Run(*id),
                });
            }
        }
        it.number(parents);
        it
    }

    /// Numbers what was joined as points, without gaps; the body keeps 0.
    fn number(&mut self, mut parents: Vec<usize>) {
        let mut numbers: Vec<Option<Point>> = vec![None; parents.len()];
        let count = &mut self.count;
        let mut point = |slot: usize| match numbers.get_mut(root(&mut parents, slot)) {
            Some(number) => *number.get_or_insert_with(|| {
                *count += 1;
                *count - 1
            }),
            None => BODY,
        };
        point(BODY);
        // In the order of names within a part, so that numbers do not hang on the order in which terminals stand.
        let mut by_name: Vec<usize> = Vec::new();
        for pair in self.first.windows(2) {
            let &[from, to] = pair else { continue };
            by_name.clear();
            by_name.extend(from..to);
            by_name.order_by(|a, b| name_at(&self.terminals, *a).cmp(&name_at(&self.terminals, *b)));
            // Terminals of one name are one, the last of them.
            let mut rest = by_name.as_slice();
            while let Some(head) = rest.first() {
                let name = name_at(&self.terminals, *head);
                let same = rest
                    .iter()
                    .take_while(|at| name_at(&self.terminals, **at) == name);
                let same = same.count();
                let (group, behind) = rest.split_at(same.max(1));
                let meant = group.last().map_or(BODY, |at| point(at + 1));
                for at in group {
                    if let Some((_, point)) = self.terminals.get_mut(*at) {
                        *point = meant;
                    }
                }
                rest = behind;
            }
        }
        for tie in &mut self.ties {
            tie.ends = tie.ends.map(&mut point);
        }
        self.first_at = vec![0; self.count + 1];
        for end in self.ties.iter().flat_map(|tie| tie.ends) {
            if let Some(behind) = self.first_at.get_mut(end + 1) {
                *behind += 1;
            }
        }
        let mut sum = 0;
        for first in &mut self.first_at {
            sum += *first;
            *first = sum;
        }
        let mut next = self.first_at.clone();
        self.at = vec![0; sum];
        for (number, tie) in self.ties.iter().enumerate() {
            for end in tie.ends {
                if let Some(next) = next.get_mut(end) {
                    if let Some(slot) = self.at.get_mut(*next) {
                        *slot = number;
                    }
                    *next += 1;
                }
            }
        }
    }

    /// The terminals of a part.
    fn own(&self, part: PartId) -> Option<(usize, &[(Terminal, Point)])> {
        let at = self.parts.of(part)?;
        Some((*self.first.get(at)?, slice_of(&self.terminals, &self.first, at)))
    }
    /// The place of a terminal among all.
    fn place(&self, at: &TerminalRef) -> Option<usize> {
        let (first, own) = self.own(at.part)?;
        named(own, |name| name == at.terminal.as_str()).map(|place| first + place)
    }
    /// The point of a terminal.
    pub(crate) fn point(&self, part: PartId, terminal: &str) -> Option<Point> {
        let (_, own) = self.own(part)?;
        own.get(named(own, |name| name == terminal)?)
            .map(|(_, point)| *point)
    }
    /// The terminals of a part with their points, in the order in which they stand along its sides.
    pub(crate) fn terminals_of(&self, part: PartId) -> impl Iterator<Item = (&Terminal, Point)> {
        let all = self.own(part).map(|(_, own)| own).unwrap_or_default();
        all.iter().map(|(terminal, point)| (terminal, *point))
    }
    /// The two points that a run joins; `None` for one that joins nothing, a signal lead or a cut one.
    pub(crate) fn ends(&self, run: RunId) -> Option<[Point; 2]> {
        self.ties.get(*self.of_run.get(&run)?).map(|tie| tie.ends)
    }
    /// What is tied to a point.
    pub(crate) fn ties_at(&self, point: Point) -> impl Iterator<Item = &Tie> {
        slice_of(&self.at, &self.first_at, point)
            .iter()
            .filter_map(|number| self.ties.get(*number))
    }
    /// All ties.
    pub(crate) fn ties(&self) -> &[Tie] {
        &self.ties
    }
    /// Every point that can be reached from these without leaving ties that `pass`.
    pub(crate) fn reach(
        &self,
        from: impl IntoIterator<Item = Point>,
        pass: impl Fn(&Tie) -> bool,
    ) -> OrderedSet<Point> {
        let mut seen = vec![false; self.count];
        let mut open: Vec<Point> = from.into_iter().collect();
        while let Some(point) = open.pop() {
            let Some(seen) = seen.get_mut(point).filter(|seen| !**seen) else {
                continue;
            };
            *seen = true;
            let ties = self.ties_at(point).filter(|tie| pass(tie));
            open.extend(ties.map(|tie| tie.other(point)));
        }
        (0..)
            .zip(seen)
            .filter(|(_, seen)| *seen)
            .map(|(point, _)| point)
            .collect()
    }
    /// Names every point by the island it lies in when only ties that `pass` join points: islands are numbered by
    /// their lowest point.
    pub(crate) fn islands(&self, pass: impl Fn(&Tie) -> bool) -> Vec<Point> {
        let mut parents: Vec<usize> = (0..self.count).collect();
        for tie in self.ties.iter().filter(|tie| pass(tie)) {
            let [a, b] = tie.ends.map(|end| root(&mut parents, end));
            if let Some(parent) = parents.get_mut(a.max(b)) {
                *parent = a.min(b);
            }
        }
        (0..self.count).map(|point| root(&mut parents, point)).collect()
    }
    /// How far each point is from these along runs (lengths by `length`), over ties that `pass`.
    pub(crate) fn distances(
        &self,
        from: impl IntoIterator<Item = Point>,
        pass: impl Fn(&Tie) -> bool,
        length: impl Fn(RunId) -> f64,
    ) -> OrderedMap<Point, f64> {
        // Whole micrometres order exactly, and no length of a sheet comes near their range.
        let whole = |metres: f64| (metres.clamp(0.0, 1e6) * 1e6) as u64;
        let mut best: Vec<Option<u64>> = vec![None; self.count];
        let mut open: BinaryHeap<Reverse<(u64, Point)>> = from.into_iter().map(|p| Reverse((0, p))).collect();
        while let Some(Reverse((so_far, point))) = open.pop() {
            match best.get_mut(point) {
                Some(best) if best.is_none() => *best = Some(so_far),
                _ => continue,
            }
            for tie in self.ties_at(point).filter(|tie| pass(tie)) {
                let step = match tie.kind {
                    TieKind::Run(run) => whole(length(run)),
                    _ => 0,
                };
                let next = tie.other(point);
                if best.get(next) == Some(&None) {
                    open.push(Reverse((so_far.saturating_add(step), next)));
                }
            }
        }
        (0..)
            .zip(best)
            .filter_map(|(point, far)| Some((point, far? as f64 / 1e6)))
            .collect()
    }
}

/// Whether a terminal of this role on this kind takes the feed of something that uses current.
pub(crate) fn takes_feed(kind: &PartKind, terminal: &TerminalName, role: Role) -> bool {
    match kind {
        PartKind::Battery(_) | PartKind::Alternator(_) | PartKind::Vehicle(_) => false,
        PartKind::Converter(_) => terminal.as_str() == "in",
        _ => role == Role::SupplyPlus,
    }
}

/// Whether a terminal of this role on this kind gives the return of something that uses current.
pub(crate) fn gives_return(kind: &PartKind, role: Role) -> bool {
    !matches!(
        kind,
        PartKind::Battery(_) | PartKind::Alternator(_) | PartKind::Vehicle(_)
    ) && role == Role::SupplyMinus
}

/// The terminal of a source that is live by itself.
pub(crate) fn live_pole(kind: &PartKind) -> Option<&'static str> {
    match kind {
        PartKind::Battery(_) => Some("+"),
        PartKind::Alternator(_) => Some("B+"),
        PartKind::Converter(_) => Some("out"),
        _ => None,
    }
}
