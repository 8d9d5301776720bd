//! What a break changes of the network of a sheet: elements that open, gain resistance or are added.

use super::linear::{Case, Linear, Straight};
use super::scene::Scene;
use super::views::Beside;
use crate::network::{BODY, Branch, Closes, Kind, LEAST_RESISTANCE, Network};
use model::breaks::{Break, Contact};
use model::{PartKind, Role, RunId, TerminalName, TerminalRef};

/// Nearest that a touch along a run may come to its ends, as a share of its length: beyond, the piece between has no resistance to speak of.
const NEAREST: f64 = 0.01;

/// One change.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Alter {
    /// An element is open.
    Open(usize),
    /// An element has so many ohms more.
    More(usize, f64),
    /// Two nodes touch, through so many ohms.
    Touch([usize; 2], f64),
    /// An element touches the body so far along it, through so many ohms.
    Grounded(usize, f64, f64),
    /// Nothing is left of an element, but the part it belongs to is known by it to be dead.
    Dead(usize),
}

/// What a break does.
#[derive(Clone, Debug, Default)]
pub(super) struct Altered {
    pub(super) alters: Vec<Alter>,
    /// Line leads whose core is open.
    pub(super) cut: Vec<RunId>,
    /// Parts of which nothing is left.
    pub(super) dead: Vec<usize>,
    /// Terminals that have changed places, as their nodes.
    pub(super) swapped: Vec<[usize; 2]>,
    /// Parts with plus and minus exchanged at their supply: these do not work.
    pub(super) reversed: Vec<usize>,
}

/// What a break does to a sheet. `None` where the sheet has no such thing, or it cannot fail in this way.
pub(super) fn altered(scene: &Scene, broken: &Break) -> Option<Altered> {
    let net = &scene.net;
    let run_of = |id: &RunId| net.runs.iter().find(|run| run.id == *id);
    let mut out = Altered::default();
    match broken {
        // An end that is off its terminal cuts as well: what was on it stays where it was.
        Break::Cut { run, .. } | Break::Off { run, .. } => {
            let it = run_of(run)?;
            out.alters.push(Alter::Open(it.branch));
            if it.line {
                out.cut.push(*run);
            }
        }
        Break::Resistive { run, more } => out.alters.push(Alter::More(run_of(run)?.branch, more.0)),
        Break::Grounded { run, at, through } => {
            let it = run_of(run).filter(|run| !run.line)?;
            let at = at.0.clamp(NEAREST, 1.0 - NEAREST);
            let ohms = through.0.max(LEAST_RESISTANCE);
            out.alters.push(Alter::Grounded(it.branch, at, ohms));
        }
        Break::Joined { points, through } => {
            let node = |point: &Contact| match point {
                Contact::Terminal(at) => net.node_of(at),
                Contact::Body => Some(BODY),
                // Nobody suspects one: a run that touches something touches the body.
                Contact::Along(..) => None,
            };
            let [a, b] = [node(&points[0])?, node(&points[1])?];
            if a == b {
                return None;
            }
            out.alters
                .push(Alter::Touch([a, b], through.0.max(LEAST_RESISTANCE)));
        }
        Break::Open { part, output } => {
            let at = net.part_index(*part)?;
            out.alters = passing(scene, at, output.as_ref())
                .into_iter()
                .map(Alter::Open)
                .collect();
            if let (true, Some(output)) = (out.alters.is_empty(), output) {
                // Everything is off one terminal.
                let terminal = net.terminal_index(&TerminalRef {
                    part: *part,
                    terminal: output.clone(),
                });
                for run in net.runs.iter().filter(|run| run.terminals.contains(&terminal)) {
                    out.alters.push(Alter::Open(run.branch));
                    if run.line {
                        out.cut.push(run.id);
                    }
                }
            }
            if out.alters.is_empty() {
                return None;
            }
        }
        Break::Poor { part, more } => {
            let at = net.part_index(*part)?;
            let all = passing(scene, at, None);
            if all.is_empty() {
                return None;
            }
            out.alters = all.into_iter().map(|at| Alter::More(at, more.0)).collect();
        }
        Break::Dead { part } => {
            let at = net.part_index(*part)?;
            out.alters = own(scene, at).into_iter().map(Alter::Dead).collect();
            out.dead.push(at);
        }
        Break::Reversed { part, coil } => reversed(scene, net.part_index(*part)?, *coil, &mut out)?,
    }
    Some(out)
}

/// The elements of a part that pass current on, or that of one output.
fn passing(scene: &Scene, part: usize, output: Option<&TerminalName>) -> Vec<usize> {
    let net = &scene.net;
    let node = output.and_then(|name| net.node_by_name(part, name.as_str()));
    let is_on = |at: &usize| {
        let branch = net.branches.get(*at);
        branch.is_some_and(|branch| branch.nodes.iter().any(|at| Some(*at) == node))
    };
    net.ways_through(part)
        .filter(|at| output.is_none() || is_on(at))
        .collect()
}

/// All elements of a part, runs aside.
fn own(scene: &Scene, part: usize) -> Vec<usize> {
    let net = &scene.net;
    let branches = net
        .branches
        .iter()
        .enumerate()
        .filter(|(_, branch)| {
            branch.part == part
                && !matches!(branch.kind, Kind::Wire { .. } | Kind::Shield { .. } | Kind::Metal)
        })
        .map(|(at, _)| at);
    let from = net.branches.len();
    let extras = scene
        .extras
        .iter()
        .enumerate()
        .filter(|(_, extra)| extra.part() == part)
        .map(|(at, _)| from + at);
    branches.chain(extras).collect()
}

fn reversed(scene: &Scene, part: usize, coil: Option<u8>, out: &mut Altered) -> Option<()> {
    let net = &scene.net;
    let it = scene.sheet.parts.get(net.parts.get(part)?)?;
    let mut pairs: Vec<[usize; 2]> = Vec::new();
    let terminals = it.terminals();
    for plus in &terminals {
        let partner = match plus.role {
            Role::Coil {
                coil: its,
                positive: true,
            } if coil.is_none_or(|wanted| wanted == its) => Some(Role::Coil {
                coil: its,
                positive: false,
            }),
            Role::SupplyPlus if coil.is_none() => Some(Role::SupplyMinus),
            _ => None,
        };
        let minus = partner.and_then(|role| terminals.iter().find(|terminal| terminal.role == role));
        if let Some(minus) = minus {
            let node = |name: &TerminalName| net.node_by_name(part, name.as_str());
            pairs.push([node(&plus.name)?, node(&minus.name)?]);
        }
    }
    if pairs.is_empty() {
        return None;
    }
    if !matches!(it.is, PartKind::Speaker(_)) {
        // The wrong way round equipment draws nothing, as its maker guards it.
        out.reversed.push(part);
        for (at, branch) in net.branches.iter().enumerate() {
            if branch.part == part && matches!(branch.kind, Kind::Load(_)) {
                out.alters.push(Alter::Dead(at));
            }
        }
    }
    out.swapped = pairs;
    Some(())
}

/// A touch of the body along a conductance, as the conductances between its two ends and the body: first to second, first to body,
/// second to body (star to triangle).
fn triangle(conductance: f64, at: f64, through: f64) -> [f64; 3] {
    let legs = [conductance / at, conductance / (1.0 - at), 1.0 / through];
    let sum: f64 = legs.iter().sum();
    [
        legs[0] * legs[1] / sum,
        legs[0] * legs[2] / sum,
        legs[1] * legs[2] / sum,
    ]
}

impl Altered {
    /// Puts the changes on a case: what joins first, what cuts last.
    pub(super) fn put(&self, scene: &Scene, linear: &Linear, case: &mut Case<'_>) {
        let ends_of = |at: usize| {
            let from = scene.net.branches.len();
            match scene.net.branches.get(at) {
                Some(branch) => branch.nodes,
                None => scene.extras.get(at - from).map_or([0; 2], |extra| extra.nodes),
            }
        };
        for alter in &self.alters {
            match *alter {
                Alter::Touch(nodes, ohms) => {
                    case.add(linear.places(nodes), Straight::resistance(ohms));
                }
                Alter::Grounded(at, along, ohms) => {
                    let law = case.law(at);
                    let [a, b] = ends_of(at);
                    if law.conductance <= 0.0 {
                        // Open as things stand: one of its ends touches all the same.
                        case.add(linear.places([a, BODY]), Straight::resistance(ohms));
                        continue;
                    }
                    let [across, first, second] = triangle(law.conductance, along, ohms);
                    let body = |node: usize, conductance: f64| {
                        let given = 0.0;
                        (linear.places([node, BODY]), Straight { conductance, given })
                    };
                    for (places, law) in [body(a, first), body(b, second)] {
                        case.add(places, law);
                    }
                    let given = law.given;
                    let law = Straight {
                        conductance: across,
                        given,
                    };
                    case.put(at, law, None);
                }
                _ => {}
            }
        }
        for alter in &self.alters {
            if let Alter::More(at, ohms) = *alter {
                let law = case.law(at);
                if law.conductance > 0.0 {
                    let share = 1.0 / (1.0 + law.conductance * ohms);
                    let law = Straight {
                        conductance: law.conductance * share,
                        given: law.given * share,
                    };
                    case.put(at, law, None);
                }
            }
        }
        for alter in &self.alters {
            if let Alter::Open(at) | Alter::Dead(at) = *alter {
                case.put(at, Straight::default(), None);
            }
        }
    }

    /// Puts the changes into a network, whose nodes and branches keep their numbers; new ones follow.
    pub(super) fn build_into(&self, net: &mut Network) {
        let add = |net: &mut Network, nodes: [usize; 2], ohms: f64| {
            net.branches.push(Branch {
                kind: Kind::Tie,
                nodes,
                part: 0,
                resistance: ohms.max(LEAST_RESISTANCE),
                closes: Closes::Always,
                carries: true,
            });
        };
        for alter in &self.alters {
            match *alter {
                Alter::Touch(nodes, ohms) => add(net, nodes, ohms),
                Alter::Grounded(at, along, ohms) => {
                    let Some(branch) = net.branches.get(at).copied() else {
                        continue;
                    };
                    let [a, b] = branch.nodes;
                    if branch.closes == Closes::Never {
                        add(net, [a, BODY], ohms);
                        continue;
                    }
                    let [across, first, second] = triangle(1.0 / branch.resistance, along, ohms);
                    if let Some(branch) = net.branches.get_mut(at) {
                        branch.resistance = 1.0 / across;
                    }
                    for (node, conductance) in [(a, first), (b, second)] {
                        if node != BODY {
                            add(net, [node, BODY], 1.0 / conductance);
                        }
                    }
                }
                Alter::More(at, ohms) => {
                    if let Some(branch) = net.branches.get_mut(at) {
                        branch.resistance += ohms;
                    }
                }
                Alter::Open(at) => {
                    if let Some(branch) = net.branches.get_mut(at) {
                        branch.closes = Closes::Never;
                        branch.carries = false;
                    }
                }
                Alter::Dead(at) => {
                    if let Some(branch) = net.branches.get_mut(at) {
                        // No source and no load any more.
                        branch.kind = Kind::Contact;
                        branch.closes = Closes::Never;
                        branch.carries = false;
                    }
                }
            }
        }
    }

    /// Everything that either does.
    pub(super) fn and(mut self, other: Self) -> Self {
        self.alters.extend(other.alters);
        self.cut.extend(other.cut);
        self.dead.extend(other.dead);
        self.swapped.extend(other.swapped);
        self.reversed.extend(other.reversed);
        self
    }

    /// Whether a leg of an extra belongs to what is dead.
    pub(super) fn is_silent(&self, extra: &Beside) -> bool {
        matches!(extra, Beside::Leg { part, .. } if self.dead.contains(part) || self.reversed.contains(part))
    }
}

/// The node that stands where one was, where terminals have changed places.
pub(super) fn swapped(pairs: &[[usize; 2]], node: usize) -> usize {
    pairs.iter().fold(node, |node, pair| {
        if node == pair[0] {
            pair[1]
        } else if node == pair[1] {
            pair[0]
        } else {
            node
        }
    })
}
