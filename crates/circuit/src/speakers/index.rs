//! The terminals of a sheet, numbered, and every link between them: runs, and what parts join inside.
//!
//! Shared by the speaker and the signal side. An open link is kept with its reason, so that a gap can be named.

use model::conductor::Condition;
use model::kinds::supply::{DeviceState, IsolatorKind};
use model::{End, PartId, PartKind, Role, RunId, Sheet, TerminalName, TerminalRef};
use ordered::OrderedMap;

/// A terminal.
#[derive(Clone, Debug)]
pub(crate) struct Spot<'s> {
    pub(crate) part: PartId,
    /// The kind of that part.
    kind: &'s PartKind,
    pub(crate) name: TerminalName,
    pub(crate) role: Role,
}

/// What makes a link.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum By {
    /// A run of wire.
    Run(RunId),
    /// A part that joins two of its terminals.
    Inside(PartId),
}

/// Whether a link conducts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum State {
    /// It conducts.
    Closed,
    /// A fuse or breaker that is blown, tripped or taken out.
    Blown,
    /// A switch that is open, or a relay contact that is open at rest.
    Off,
    /// A plug whose halves are apart.
    Apart,
    /// A loop of a plug, open because its halves are apart.
    LoopOpen,
    /// A run that is cut through.
    Cut,
}

/// A link between two terminals, by their numbers.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Link {
    pub(crate) a: usize,
    pub(crate) b: usize,
    pub(crate) by: By,
    pub(crate) state: State,
}

impl Link {
    /// The other end.
    pub(crate) fn other(&self, from: usize) -> usize {
        if self.a == from { self.b } else { self.a }
    }
    pub(crate) fn is_closed(&self) -> bool {
        self.state == State::Closed
    }
}

/// Terminals and links of one sheet.
pub(crate) struct Index<'s> {
    pub(crate) sheet: &'s Sheet,
    pub(crate) spots: Vec<Spot<'s>>,
    pub(crate) links: Vec<Link>,
    /// Runs with one end on a terminal and the other nowhere, by the terminal.
    pub(crate) stubs: OrderedMap<usize, Vec<RunId>>,
    /// Links by terminal: a start into `order` for each, and one past the end.
    starts: Vec<usize>,
    order: Vec<usize>,
    parts: OrderedMap<PartId, (usize, usize)>,
}

impl<'s> Index<'s> {
    pub(crate) fn new(sheet: &'s Sheet) -> Self {
        let mut spots = Vec::new();
        let mut parts = OrderedMap::new();
        for (id, part) in &sheet.parts {
            let first = spots.len();
            spots.extend(part.terminals().into_iter().map(|t| Spot {
                part: *id,
                kind: &part.is,
                name: t.name,
                role: t.role,
            }));
            parts.insert(*id, (first, spots.len()));
        }
        let mut it = Self {
            sheet,
            spots,
            links: Vec::new(),
            stubs: OrderedMap::new(),
            starts: Vec::new(),
            order: Vec::new(),
            parts,
        };
        for (id, run) in &sheet.runs {
            let on = |end: &End| end.terminal().and_then(|t| it.find(t.part, t.terminal.as_str()));
            match (on(&run.from), on(&run.to)) {
                (Some(a), Some(b)) => {
                    let cut = run.wire.condition.value() == Some(Condition::Cut);
                    let state = if cut { State::Cut } else { State::Closed };
                    it.links.push(Link {
                        a,
                        b,
                        by: By::Run(*id),
                        state,
                    });
                }
                (Some(at), None) | (None, Some(at)) => it.stubs.entry(at).or_default().push(*id),
                (None, None) => {}
            }
        }
        for (id, part) in &sheet.parts {
            it.join_inside(*id, &part.is);
        }
        it.starts = vec![0; it.spots.len() + 1];
        let mut counts = vec![0_usize; it.spots.len()];
        for link in &it.links {
            for at in [link.a, link.b] {
                if let Some(count) = counts.get_mut(at) {
                    *count += 1;
                }
            }
        }
        let mut sum = 0;
        for (start, count) in it.starts.iter_mut().zip(counts.iter().chain([&0])) {
            *start = sum;
            sum += count;
        }
        let mut next = it.starts.clone();
        it.order = vec![0; sum];
        for (number, link) in it.links.iter().enumerate() {
            for at in [link.a, link.b] {
                if let Some(place) = next.get_mut(at) {
                    if let Some(slot) = it.order.get_mut(*place) {
                        *slot = number;
                    }
                    *place += 1;
                }
            }
        }
        it
    }

    /// The number of a terminal.
    pub(crate) fn find(&self, part: PartId, name: &str) -> Option<usize> {
        let (first, end) = *self.parts.get(&part)?;
        self.spots
            .get(first..end)?
            .iter()
            .position(|spot| spot.name.as_str() == name)
            .map(|at| first + at)
    }

    /// The terminals of a part, by number.
    pub(crate) fn of_part(&self, part: PartId) -> std::ops::Range<usize> {
        self.parts.get(&part).map_or(0..0, |(first, end)| *first..*end)
    }

    /// The links that land on a terminal.
    pub(crate) fn links_at(&self, at: usize) -> impl Iterator<Item = &Link> {
        let range = match (self.starts.get(at), self.starts.get(at + 1)) {
            (Some(from), Some(to)) => *from..*to,
            _ => 0..0,
        };
        self.order
            .get(range)
            .unwrap_or_default()
            .iter()
            .filter_map(|number| self.links.get(*number))
    }

    /// The kind of the part that a terminal is on.
    pub(crate) fn kind(&self, at: usize) -> Option<&'s PartKind> {
        self.spots.get(at).map(|spot| spot.kind)
    }

    /// The terminal as people write it.
    pub(crate) fn written(&self, at: usize) -> String {
        self.spots.get(at).map_or_else(String::new, |spot| {
            self.sheet.written(&TerminalRef {
                part: spot.part,
                terminal: spot.name.clone(),
            })
        })
    }

    /// The tag of a part, or its id when the sheet does not have it.
    pub(crate) fn tag(&self, part: PartId) -> String {
        self.sheet.part_tag(part)
    }

    /// The tag of a run.
    pub(crate) fn run_tag(&self, run: RunId) -> String {
        self.sheet.run_tag(run)
    }

    /// Whether the terminal belongs to the supply: a pole of a source, the body, or the feed or return of equipment.
    /// For alternating current all of these are one point.
    pub(crate) fn is_supply(&self, at: usize) -> bool {
        let Some(spot) = self.spots.get(at) else {
            return false;
        };
        match self.kind(at) {
            Some(
                PartKind::Battery(_)
                | PartKind::Alternator(_)
                | PartKind::Vehicle(_)
                | PartKind::Converter(_)
                | PartKind::Ground(_),
            ) => true,
            Some(
                PartKind::Amplifier(_)
                | PartKind::HeadUnit(_)
                | PartKind::Processor(_)
                | PartKind::LineConverter(_),
            ) => matches!(spot.role, Role::SupplyPlus | Role::SupplyMinus),
            _ => false,
        }
    }

    fn join(&mut self, part: PartId, a: &str, b: &str, state: State) {
        if let (Some(a), Some(b)) = (self.find(part, a), self.find(part, b))
            && a != b
        {
            self.links.push(Link {
                a,
                b,
                by: By::Inside(part),
                state,
            });
        }
    }

    fn join_inside(&mut self, part: PartId, kind: &PartKind) {
        let device = |state: DeviceState| match state {
            DeviceState::Intact | DeviceState::Bridged => State::Closed,
            DeviceState::Open | DeviceState::Missing => State::Blown,
        };
        match kind {
            PartKind::Fuse(fuse) => self.join(part, "in", "out", device(fuse.state)),
            PartKind::Breaker(breaker) => self.join(part, "in", "out", device(breaker.state)),
            PartKind::Switch(switch) => {
                self.join(
                    part,
                    "in",
                    "out",
                    if switch.closed { State::Closed } else { State::Off },
                );
            }
            PartKind::Block(_) | PartKind::Bus(_) | PartKind::Splice(_) => {
                let all = self.of_part(part);
                for at in all.clone().skip(1) {
                    self.links.push(Link {
                        a: all.start,
                        b: at,
                        by: By::Inside(part),
                        state: State::Closed,
                    });
                }
            }
            PartKind::Plug(plug) => {
                let (through, looped) = if plug.mated {
                    (State::Closed, State::Closed)
                } else {
                    (State::Apart, State::LoopOpen)
                };
                for cavity in plug.cavities.0.iter().take(60) {
                    self.join(
                        part,
                        &format!("{}a", cavity.position),
                        &format!("{}b", cavity.position),
                        through,
                    );
                }
                for (a, b) in &plug.loops.0 {
                    self.join(part, &format!("{a}a"), &format!("{b}a"), looped);
                }
            }
            PartKind::Adapter(adapter) => {
                for cavity in adapter.cavities.0.iter().take(60) {
                    self.join(
                        part,
                        &format!("{}a", cavity.position),
                        &format!("{}b", cavity.position),
                        State::Closed,
                    );
                }
            }
            PartKind::Isolator(isolator) => {
                let closed = match isolator.kind {
                    IsolatorKind::Diode => true,
                    IsolatorKind::Manual => isolator.closed,
                    IsolatorKind::Sensing | IsolatorKind::Ignition => false,
                };
                self.join(
                    part,
                    "main",
                    "aux",
                    if closed { State::Closed } else { State::Off },
                );
            }
            PartKind::Crossover(_) => {
                self.join(part, "in-", "low-", State::Closed);
                self.join(part, "in-", "high-", State::Closed);
            }
            PartKind::Relay(_) => {
                // At rest: whether the coil is energised is for the direct-current solution to say.
                self.join(part, "30", "87a", State::Closed);
                self.join(part, "30", "87", State::Off);
            }
            _ => {}
        }
    }
}
