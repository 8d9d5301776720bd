//! The supply wiring as the checks walk it: points that are one by construction, and what ties them together. Small
//! and without numbers; currents and voltages come from the engine.
//!
//! ```text
//!  B1.+ --run W1-- F1.in =device F1= F1.out --run W2-- A1.+      A1.- --run W3-- E1.stud =body= BODY
//! ```
//!
//! *Invariant:* line-level signal leads are left out: their shields are the engine's business, not a way of supply.

use circuit::DeviceRef;
use model::conductor::Condition;
use model::kinds::supply::DeviceState;
use model::{PartId, PartKind, Role, RunId, Sheet, Terminal, TerminalName};
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
    /// The terminals of each part with their points, asked for once: their names are made up at every call.
    terminals: OrderedMap<PartId, Vec<(Terminal, Point)>>,
    count: usize,
    ties: Vec<Tie>,
    at: Vec<Vec<usize>>,
    of_run: OrderedMap<RunId, usize>,
}

/// Terminals of a part that are one point, or are tied; everything else stands alone.
enum Inside {
    Common(Vec<TerminalName>),
    Tied(TerminalName, TerminalName, TieKind),
    OnBody(TerminalName),
    BodyTie(TerminalName),
}

fn inside(id: PartId, kind: &PartKind) -> Vec<Inside> {
    fn name(text: &str) -> TerminalName {
        TerminalName::new(text)
    }
    let device = |output: Option<&str>| DeviceRef {
        part: id,
        output: output.map(str::to_owned),
    };
    let names = |all: &mut dyn Iterator<Item = String>| all.map(|n| name(n.as_str())).collect::<Vec<_>>();
    match kind {
        PartKind::Bus(bus) => vec![Inside::Common(names(
            &mut (1..=bus.places.clamp(2, 24)).map(|n| n.to_string()),
        ))],
        PartKind::Splice(splice) => vec![Inside::Common(names(
            &mut (1..=splice.places.clamp(2, 8)).map(|n| n.to_string()),
        ))],
        PartKind::Block(block) => {
            let mut bar = names(
                &mut (1..=block.inputs.clamp(1, 4))
                    .map(|n| if n == 1 { "in".to_owned() } else { format!("in{n}") }),
            );
            let mut all = Vec::new();
            for n in 1..=block.outputs.clamp(1, 12) {
                let output = format!("out{n}");
                match block.fuses.0.get(usize::from(n) - 1) {
                    Some(Some(_)) => all.push(Inside::Tied(
                        name("in"),
                        name(output.as_str()),
                        TieKind::Device(device(Some(&output)), DeviceState::Intact),
                    )),
                    _ => bar.push(name(output.as_str())),
                }
            }
            all.push(Inside::Common(bar));
            all
        }
        PartKind::Plug(plug) if plug.mated => {
            let half = |position: &str, side: char| name(format!("{position}{side}").as_str());
            let through = plug
                .cavities
                .0
                .iter()
                .map(|c| Inside::Common(vec![half(&c.position, 'a'), half(&c.position, 'b')]));
            let loops = plug
                .loops
                .0
                .iter()
                .map(|(from, to)| Inside::Common(vec![half(from, 'a'), half(to, 'a')]));
            through.chain(loops).collect()
        }
        PartKind::Adapter(adapter) => adapter
            .cavities
            .0
            .iter()
            .map(|c| {
                Inside::Common(vec![
                    name(format!("{}a", c.position).as_str()),
                    name(format!("{}b", c.position).as_str()),
                ])
            })
            .collect(),
        PartKind::Ground(_) => vec![Inside::BodyTie(name("stud"))],
        PartKind::Vehicle(_) => vec![
            Inside::Tied(name("+"), name("B+"), TieKind::Own(id)),
            Inside::Tied(
                name("+"),
                name("30"),
                TieKind::Device(device(Some("30")), DeviceState::Intact),
            ),
            Inside::Tied(
                name("+"),
                name("15"),
                TieKind::Device(device(Some("15")), DeviceState::Intact),
            ),
            Inside::BodyTie(name("-")),
            Inside::OnBody(name("31")),
            Inside::OnBody(name("engine")),
        ],
        PartKind::Fuse(fuse) => vec![Inside::Tied(
            name("in"),
            name("out"),
            TieKind::Device(device(None), fuse.state),
        )],
        PartKind::Breaker(breaker) => vec![Inside::Tied(
            name("in"),
            name("out"),
            TieKind::Device(device(None), breaker.state),
        )],
        PartKind::Switch(_) => vec![Inside::Tied(name("in"), name("out"), TieKind::Contact(id))],
        PartKind::Relay(_) => vec![
            Inside::Tied(name("30"), name("87"), TieKind::Contact(id)),
            Inside::Tied(name("30"), name("87a"), TieKind::Contact(id)),
        ],
        PartKind::Isolator(_) => vec![Inside::Tied(name("main"), name("aux"), TieKind::Contact(id))],
        _ => Vec::new(),
    }
}

/// The entry of a terminal among those of its part; of several of one name the last.
fn named<'a>(own: &'a [(Terminal, usize)], name: &TerminalName) -> Option<&'a (Terminal, usize)> {
    own.iter().rfind(|(terminal, _)| terminal.name == *name)
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
        // Each terminal has a slot of its own at first; slots are joined, and at last numbered as points.
        let mut slots: OrderedMap<PartId, Vec<(Terminal, usize)>> = OrderedMap::new();
        let mut parents = vec![BODY];
        for (id, part) in &sheet.parts {
            let own = part.terminals().into_iter().map(|terminal| {
                parents.push(parents.len());
                (terminal, parents.len() - 1)
            });
            slots.insert(*id, own.collect());
        }
        let mut pending: Vec<([usize; 2], TieKind)> = Vec::new();
        for (id, part) in &sheet.parts {
            let own = slots.get(id).map(Vec::as_slice).unwrap_or_default();
            let slot = |terminal: &TerminalName| named(own, terminal).map(|(_, slot)| *slot);
            let mut join = |a: usize, b: usize| {
                let (a, b) = (root(&mut parents, a), root(&mut parents, b));
                // The lesser number wins, so that the body stays 0.
                if let Some(parent) = parents.get_mut(a.max(b)) {
                    *parent = a.min(b);
                }
            };
            for rule in inside(*id, &part.is) {
                match rule {
                    Inside::Common(terminals) => {
                        let mut found = terminals.iter().filter_map(&slot);
                        if let Some(first) = found.next() {
                            found.for_each(|next| join(first, next));
                        }
                    }
                    Inside::OnBody(terminal) => {
                        if let Some(at) = slot(&terminal) {
                            join(BODY, at);
                        }
                    }
                    Inside::BodyTie(terminal) => {
                        if let Some(at) = slot(&terminal) {
                            pending.push(([BODY, at], TieKind::Own(*id)));
                        }
                    }
                    Inside::Tied(a, b, kind) => {
                        if let (Some(a), Some(b)) = (slot(&a), slot(&b)) {
                            pending.push(([a, b], kind));
                        }
                    }
                }
            }
        }
        for (id, run) in &sheet.runs {
            let landed = run.ends().map(|end| {
                let at = end.terminal()?;
                named(slots.get(&at.part)?, &at.terminal)
            });
            let ends = landed.map(|at| at.map(|(_, slot)| *slot));
            let is_line = landed
                .iter()
                .flatten()
                .any(|(terminal, _)| terminal.role.is_line());
            let is_cut = run.wire.condition.value() == Some(Condition::Cut);
            if let ([Some(a), Some(b)], false, false) = (ends, is_line, is_cut) {
                pending.push(([a, b], TieKind::Run(*id)));
            }
        }
        // Points are renumbered without gaps; the body keeps 0.
        let mut numbers: OrderedMap<usize, Point> = OrderedMap::new();
        let mut point = |slot: usize, parents: &mut Vec<usize>| {
            let root = root(parents, slot);
            let next = numbers.len();
            *numbers.entry(root).or_insert(next)
        };
        point(BODY, &mut parents);
        // In the order of names within a part, so that numbers do not hang on the order in which terminals stand.
        let mut terminals: OrderedMap<PartId, Vec<(Terminal, Point)>> = OrderedMap::new();
        for (id, own) in slots {
            let mut by_name: Vec<&(Terminal, usize)> = own.iter().collect();
            by_name.order_by(|a, b| a.0.name.cmp(&b.0.name));
            // Of terminals of one name the last is meant.
            for (at, (terminal, slot)) in by_name.iter().enumerate() {
                if by_name
                    .get(at + 1)
                    .is_none_or(|(next, _)| next.name != terminal.name)
                {
                    point(*slot, &mut parents);
                }
            }
            let points = own.iter().map(|(terminal, slot)| {
                let meant = named(&own, &terminal.name).map_or(*slot, |(_, slot)| *slot);
                (terminal.clone(), point(meant, &mut parents))
            });
            terminals.insert(id, points.collect());
        }
        let ties: Vec<Tie> = pending
            .into_iter()
            .map(|(ends, kind)| Tie {
                ends: ends.map(|slot| point(slot, &mut parents)),
                kind,
            })
            .collect();
        let count = numbers.len();
        let mut at = vec![Vec::new(); count];
        let mut of_run = OrderedMap::new();
        for (number, tie) in ties.iter().enumerate() {
            for end in tie.ends {
                if let Some(list) = at.get_mut(end) {
                    list.push(number);
                }
            }
            if let TieKind::Run(run) = tie.kind {
                of_run.insert(run, number);
            }
        }
        Self {
            terminals,
            count,
            ties,
            at,
            of_run,
        }
    }

    /// The point of a terminal.
    pub(crate) fn point(&self, part: PartId, terminal: &TerminalName) -> Option<Point> {
        named(self.terminals.get(&part)?, terminal).map(|(_, point)| *point)
    }
    /// The terminals of a part with their points, in the order in which they stand along its sides.
    pub(crate) fn terminals_of(&self, part: PartId) -> impl Iterator<Item = (&Terminal, Point)> {
        let all = self.terminals.get(&part).map(Vec::as_slice).unwrap_or_default();
        all.iter().map(|(terminal, point)| (terminal, *point))
    }
    /// The two points that a run joins; `None` for one that joins nothing, a signal lead or a cut one.
    pub(crate) fn ends(&self, run: RunId) -> Option<[Point; 2]> {
        self.ties.get(*self.of_run.get(&run)?).map(|tie| tie.ends)
    }
    /// What is tied to a point.
    pub(crate) fn ties_at(&self, point: Point) -> impl Iterator<Item = &Tie> {
        self.at
            .get(point)
            .into_iter()
            .flatten()
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
        let mut seen: OrderedSet<Point> = from.into_iter().collect();
        let mut open: Vec<Point> = seen.iter().copied().collect();
        while let Some(point) = open.pop() {
            for tie in self.ties_at(point).filter(|tie| pass(tie)) {
                let next = tie.other(point);
                if seen.insert(next) {
                    open.push(next);
                }
            }
        }
        seen
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
        let mut best: OrderedMap<Point, u64> = OrderedMap::new();
        let mut open: BinaryHeap<Reverse<(u64, Point)>> = from.into_iter().map(|p| Reverse((0, p))).collect();
        while let Some(Reverse((so_far, point))) = open.pop() {
            if best.contains_key(&point) {
                continue;
            }
            best.insert(point, so_far);
            for tie in self.ties_at(point).filter(|tie| pass(tie)) {
                let step = match tie.kind {
                    TieKind::Run(run) => whole(length(run)),
                    _ => 0,
                };
                let next = tie.other(point);
                if !best.contains_key(&next) {
                    open.push(Reverse((so_far.saturating_add(step), next)));
                }
            }
        }
        best.into_iter()
            .map(|(point, far)| (point, far as f64 / 1e6))
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
