//! The network of a sheet with breaks in it, made ready to be run through time: items between nodes, each with what decides
//! how it behaves.

use super::base::Base;
use crate::network::{BODY, Closes, Draw, Kind, LEAST_RESISTANCE, NetworkRun, values};
use crate::solve::{Law, SourceModel};
use model::breaks::{Break, Contact};
use model::{PartKind, RunId, TerminalRef};
use words::{Saying, say};

/// What an item is.
#[derive(Clone, Debug)]
pub(super) enum What {
    /// A wire, or a piece of one, with what its endings have in ohms.
    Wire {
        run: usize,
        /// The share of the run that this piece is.
        share: f64,
        endings: f64,
    },
    /// A resistance that stays.
    Plain(f64),
    /// What a break added.
    Touch(f64),
    /// A fuse or breaker.
    Device { device: usize, ohms: f64 },
    /// A contact that a voltage throws.
    Thrown { closes: Closes, ohms: f64 },
    /// Passes one way.
    Diode { drop: f64, ohms: f64 },
    /// The output that tells others to turn on; closed while its part is on.
    TurnOnOut { part: usize, ohms: f64 },
    /// A battery, alternator or converter.
    Source { source: usize },
    /// What a part draws.
    Load { part: usize, draw: Draw, law: Law },
    /// A capacitor.
    Capacitor { farads: f64, ohms: f64 },
}

/// Something between two nodes.
#[derive(Clone, Debug)]
pub(super) struct Item {
    pub(super) what: What,
    pub(super) nodes: [usize; 2],
    /// Whether it conducts as things stand at first.
    pub(super) closed: bool,
    /// A break has opened it for good.
    pub(super) stuck: bool,
}

/// Voltage across which a touch is a short of the supply, in volts: leads of the same pole lie closer together.
const ACROSS: f64 = 1.0;

/// Items between nodes.
#[derive(Clone, Debug, Default)]
pub(super) struct Circuit {
    pub(super) nodes: usize,
    pub(super) items: Vec<Item>,
    /// The pieces of each run, from its `from` end on.
    pub(super) pieces: Vec<Vec<usize>>,
    /// What shorts added, through which a fault current flows.
    pub(super) touches: Vec<usize>,
    /// Whether any of them is across a voltage: where a return touches the body, there is nothing to clear.
    pub(super) is_short: bool,
}

impl Circuit {
    /// The network as it stood at its operating point.
    pub(super) fn whole(base: &Base) -> Self {
        let net = &base.net;
        let mut it = Self {
            nodes: net.nodes,
            items: Vec::with_capacity(net.branches.len() + 8),
            pieces: vec![Vec::new(); net.runs.len()],
            touches: Vec::new(),
            is_short: false,
        };
        let mut source_of = vec![None; net.branches.len()];
        for (source, at) in net.sources.iter().enumerate() {
            if let Some(place) = source_of.get_mut(at.branch) {
                *place = Some(source);
            }
        }
        for (at, branch) in net.branches.iter().enumerate() {
            let law = base.laws.get(at).copied().unwrap_or(Law::Open);
            let ohms = branch.resistance;
            let mut closed = law != Law::Open;
            let what = match branch.kind {
                Kind::Wire { run } => {
                    if let Some(pieces) = it.pieces.get_mut(run) {
                        pieces.push(at);
                    }
                    closed = branch.closes != Closes::Never;
                    let cold = base.cold.get(run).copied().unwrap_or(0.0);
                    What::Wire {
                        run,
                        share: 1.0,
                        endings: (ohms - cold).max(0.0),
                    }
                }
                Kind::Device { device } => What::Device { device, ohms },
                Kind::Contact => match branch.closes {
                    Closes::Diode { drop } => What::Diode { drop, ohms },
                    closes @ (Closes::Relay { .. } | Closes::Sensing { .. }) => What::Thrown { closes, ohms },
                    _ => What::Plain(ohms),
                },
                Kind::TurnOnOut => What::TurnOnOut {
                    part: branch.part,
                    ohms,
                },
                Kind::Battery | Kind::Alternator | Kind::ConverterOut => match source_of.get(at) {
                    Some(Some(source)) => What::Source { source: *source },
                    _ => What::Plain(ohms),
                },
                Kind::Load(draw) => match base.kind_of(branch.part) {
                    Some(PartKind::Capacitor(it)) => {
                        closed = true;
                        What::Capacitor {
                            farads: it.capacitance.value().map_or(1.0, |c| c.0),
                            ohms: it.resistance.value().map_or(0.002, |r| r.0).max(LEAST_RESISTANCE),
                        }
                    }
                    _ => What::Load {
                        part: branch.part,
                        draw,
                        law,
                    },
                },
                Kind::Shield { run } => {
                    if let Some(pieces) = it.pieces.get_mut(run) {
                        pieces.push(at);
                    }
                    closed = branch.closes != Closes::Never;
                    What::Plain(ohms)
                }
                Kind::Tie | Kind::Ground | Kind::Metal | Kind::VehiclePath => {
                    closed = branch.closes != Closes::Never;
                    What::Plain(ohms)
                }
            };
            it.items.push(Item {
                what,
                nodes: branch.nodes,
                closed,
                stuck: false,
            });
        }
        it
    }

    fn node(&mut self) -> usize {
        self.nodes += 1;
        self.nodes - 1
    }

    fn touch(&mut self, nodes: [usize; 2], ohms: f64) {
        self.touches.push(self.items.len());
        self.items.push(Item {
            what: What::Touch(ohms.max(LEAST_RESISTANCE)),
            nodes,
            closed: true,
            stuck: false,
        });
    }

    /// Throws a break that [`on_network`] says can be thrown here.
    pub(super) fn throw(&mut self, base: &Base, broken: &Break) -> Result<(), Saying> {
        let run_of = |id: &RunId| run_index(base, id);
        match broken {
            Break::Cut { run, at } => self.cut(run_of(run)?, at.0),
            Break::Off { run, far } => {
                let run = run_of(run)?;
                let loose = self.node();
                let pieces = &self.pieces[run];
                let end = if *far { pieces.last() } else { pieces.first() };
                if let Some(&piece) = end {
                    self.items[piece].nodes[usize::from(*far)] = loose;
                }
            }
            Break::Grounded { run, at, through } => {
                self.join(base, &[Contact::Along(*run, *at), Contact::Body], through.0)?;
            }
            Break::Resistive { run, more } => {
                let run = run_of(run)?;
                let between = self.node();
                if let Some(&piece) = self.pieces[run].last() {
                    let end = self.items[piece].nodes[1];
                    self.items[piece].nodes[1] = between;
                    self.items.push(Item {
                        what: What::Plain(more.0.max(LEAST_RESISTANCE)),
                        nodes: [between, end],
                        closed: true,
                        stuck: false,
                    });
                }
            }
            Break::Joined { points, through } => self.join(base, points, through.0)?,
            Break::Open { part, .. }
            | Break::Poor { part, .. }
            | Break::Reversed { part, .. }
            | Break::Dead { part } => {
                let Some(part) = base.net.part_index(*part) else {
                    return Err(say!("break-no-part", part = part.to_string()));
                };
                for (item, branch) in self.items.iter_mut().zip(&base.net.branches) {
                    let own = !matches!(branch.kind, Kind::Wire { .. } | Kind::Shield { .. })
                        && branch.part == part;
                    item.stuck |= own;
                }
            }
        }
        Ok(())
    }

    /// Two points touch.
    fn join(&mut self, base: &Base, points: &[Contact; 2], ohms: f64) -> Result<(), Saying> {
        let mut nodes = [BODY; 2];
        // Before anything broke: of a point along a run, its ends.
        let mut ends = [[BODY; 2]; 2];
        for ((node, ends), point) in nodes.iter_mut().zip(&mut ends).zip(points) {
            match point {
                Contact::Terminal(at) => {
                    *node = base.node_of(at).ok_or_else(|| no_terminal(base, at))?;
                    *ends = [*node; 2];
                }
                Contact::Along(run, at) => {
                    let run = run_index(base, run)?;
                    let known = base.net.runs.get(run);
                    *ends = known.map_or([BODY; 2], |run| run.nodes);
                    *node = self.split(run, at.0, known);
                }
                Contact::Body => {}
            }
        }
        let [one, other] = ends;
        self.is_short |= one
            .iter()
            .any(|a| other.iter().any(|b| base.apart(*a, *b) >= ACROSS));
        if nodes[0] != nodes[1] {
            self.touch(nodes, ohms);
        }
        Ok(())
    }

    /// A gap at a place along a run: what touches it on either side is still fed from there.
    fn cut(&mut self, run: usize, at: f64) {
        let is_wire = |&piece: &usize| matches!(self.items[piece].what, What::Wire { .. });
        if !self.pieces[run].iter().all(is_wire) {
            // The shield of a signal lead has no length here.
            for &piece in &self.pieces[run] {
                self.items[piece].stuck = true;
            }
            return;
        }
        let node = self.split(run, at, None);
        let loose = self.node();
        let beyond = |piece: &&usize| self.items[**piece].nodes[0] == node;
        if let Some(&piece) = self.pieces[run].iter().find(beyond) {
            self.items[piece].nodes[0] = loose;
        }
    }

    /// The node at a place along a run: one of its ends, or a new one between two pieces.
    fn split(&mut self, run: usize, at: f64, known: Option<&NetworkRun>) -> usize {
        let at = if at.is_finite() { at.clamp(0.0, 1.0) } else { 0.5 };
        let mut before = 0.0;
        let pieces = self.pieces[run].clone();
        for (place, &piece) in pieces.iter().enumerate() {
            let What::Wire {
                run: index,
                share,
                endings,
            } = self.items[piece].what
            else {
                // The shield of a signal lead: its nearer end.
                return self.items[piece].nodes[usize::from(at > 0.5)];
            };
            let within = at - before;
            before += share;
            if within > share + 1e-9 && place + 1 < pieces.len() {
                continue;
            }
            // At its very end a wire is touched behind its ending.
            let node = self.node();
            let [from, to] = self.items[piece].nodes;
            let near = within.clamp(0.0, share);
            let of = |share: f64| What::Wire {
                run: index,
                share,
                // Each piece keeps the ending at its end; they are much alike.
                endings: 0.5 * endings,
            };
            let second = Item {
                what: of(share - near),
                nodes: [node, to],
                ..self.items[piece].clone()
            };
            self.items[piece].what = of(near);
            self.items[piece].nodes = [from, node];
            self.pieces[run].insert(place + 1, self.items.len());
            self.items.push(second);
            return node;
        }
        known.map_or(BODY, |run| run.nodes[usize::from(at > 0.5)])
    }
}

fn run_index(base: &Base, id: &RunId) -> Result<usize, Saying> {
    let at = base.net.runs.binary_search_by(|it| it.id.cmp(id));
    at.map_err(|_| say!("break-no-run", run = id.to_string()))
}

fn no_terminal(base: &Base, at: &TerminalRef) -> Saying {
    match base.sheet.parts.get(&at.part) {
        None => say!("break-no-part", part = at.part.to_string()),
        Some(part) => {
            let names: Vec<String> = part
                .terminals()
                .iter()
                .map(|terminal| format!("{}.{}", part.tag, terminal.name))
                .collect();
            let terminal = at.terminal.to_string();
            say!(
                "break-no-terminal",
                part = &part.tag,
                terminal = terminal,
                names = names
            )
        }
    }
}

/// Whether a break only opens or adds branches of the network, so that nothing has to be built anew for it.
pub(super) fn on_network(base: &Base, broken: &Break) -> bool {
    match broken {
        Break::Cut { .. }
        | Break::Off { .. }
        | Break::Grounded { .. }
        | Break::Resistive { .. }
        | Break::Joined { .. } => true,
        Break::Open { part, output: None } => matches!(
            base.sheet.parts.get(part).map(|it| &it.is),
            Some(PartKind::Fuse(_) | PartKind::Breaker(_) | PartKind::Switch(_) | PartKind::Ground(_))
        ),
        _ => false,
    }
}

impl Item {
    /// Whether it conducts as it is, whatever decides about it later.
    pub(super) fn may_conduct(&self) -> bool {
        self.closed && !self.stuck
    }
}

/// How a source gives: its voltage and its resistance, at the credible least of it or the most.
pub(super) fn source_law(base: &Base, source: usize, strong: bool) -> Law {
    let part = base.net.sources.get(source).map(|it| it.part);
    let kind = part.and_then(|part| base.kind_of(part));
    match base.models.get(source) {
        Some(SourceModel::Battery(it)) => {
            let full = match kind {
                Some(PartKind::Battery(battery)) if strong => {
                    reference::battery::open_circuit_voltage(battery.chemistry, model::quantity::Share(1.0)).0
                }
                _ => it.emf,
            };
            Law::Battery {
                emf: full.max(it.emf),
                gives: if strong { it.least } else { it.most },
                takes: it.charging,
            }
        }
        Some(SourceModel::Limited {
            voltage,
            slope,
            limit,
            ..
        }) => Law::Limited {
            emf: *voltage,
            resistance: *slope,
            limit: match kind {
                // Cold, an alternator gives more than it is rated for hot.
                Some(PartKind::Alternator(it)) if strong => {
                    limit.max(it.current.value().map_or(120.0, |i| i.0))
                }
                _ => *limit,
            },
        },
        _ => Law::Open,
    }
}

/// Below this voltage equipment with electronics whose cut-off is not known is off, and one told to turn on by a lead is not told
/// any more.
pub(super) const GIVES_UP: f64 = values::IGNITION_THRESHOLD;
