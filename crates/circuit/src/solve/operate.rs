//! A sheet at work at one level: everything that limits, switches and gives up, settled round the nodal equations.
//!
//! Batteries, alternators, converters and diodes bend; [`System`] settles those together with the loads. `laws` says which law
//! each branch follows as things stand, `switching` throws what its voltage throws; here rounds of both are made until all
//! rests. What has fallen below its cut-off stays off, the worst first: no order of events can cycle.
//! *Invariant:* at most [`MOST_SETTLING`] rounds, whatever the sheet.

mod laws;
mod switching;

pub(crate) use laws::{Piece, SourceModel};

use super::law::HAIR;
use super::{Closure, Demand, Element, Law, Level, NoAnswer, System};
use crate::network::{BODY, Branch, Closes, Draw, Kind, Network, values};
use model::job::VehicleState;
use model::{PartKind, Sheet};
use ordered::Sort as _;
use ordered::{OrderedMap, OrderedSet};

/// Most rounds of settling one operating point.
const MOST_SETTLING: usize = 400;
/// By so many halvings it is found how much of what is asked can be delivered: to eight digits.
const HALVINGS: u32 = 26;

/// An operating point.
#[derive(Clone, Debug)]
pub(crate) struct Operating {
    pub elements: Vec<Element>,
    pub voltages: Vec<f64>,
    pub driven: Vec<bool>,
    /// Nodes against which the voltages of their piece of the network are told.
    pub references: Vec<bool>,
    pub currents: Vec<f64>,
    /// By source of the network.
    pub pieces: Vec<Piece>,
    /// By part: off below its cut-off, and the voltage at which it gave up.
    pub dropped: OrderedMap<usize, f64>,
    /// By part: whether it is on.
    pub on: Vec<bool>,
    /// Share of what is asked that could be delivered with everything on; 1 when all.
    pub deliverable: f64,
    /// Share of what is asked by what is on that it got; less than 1 where nothing is known to give up.
    pub share: f64,
    pub closure: Closure,
    /// Branches that lost most when everything was on at the largest deliverable share, worst first.
    pub blamed: Vec<usize>,
    /// Relays and isolators that would not rest.
    pub restless: Vec<usize>,
    /// False when no operating point was found at all.
    pub settled: bool,
}

/// What an operating point was found at; the voltages stand in the system.
struct Found {
    /// Share of what is asked that it delivers; nothing when no point was found.
    share: f64,
    deliverable: f64,
    blamed: Vec<usize>,
}

/// Solves one network at one level after another.
pub(crate) struct Operator<'a> {
    net: &'a Network,
    sheet: &'a Sheet,
    demands: Vec<Demand>,
    engine: bool,
    in_use: bool,
    pub(crate) models: Vec<SourceModel>,
    /// Relay coil resistance by part.
    coil: OrderedMap<usize, f64>,
    /// Node of a wired ignition terminal by part, for head units.
    ignition: OrderedMap<usize, usize>,
    /// Parts that are on only while their turn-on input is live: part, node of the input, node of the part's return. None as a
    /// rule: wiring is judged for when everything works.
    told: Vec<(usize, usize, usize)>,
    /// Nodes for the reference, in order of preference.
    first: Vec<usize>,
    /// Resistance of each branch at its temperature.
    ohms: Vec<f64>,
    /// Branches whose law is not steady, and whether the steady ones are laid.
    moving: Vec<usize>,
    laid: bool,
    /// Parts with their branches that follow whether the part is on, parts rising.
    turned: Vec<(usize, usize)>,
    /// Those of them that are the working supply of the part.
    drawing: Vec<(usize, usize)>,
    /// Branches that close and open by themselves: contacts of relays and sensing isolators.
    switching: Vec<usize>,
    /// Source of each branch that is one.
    source_of: Vec<Option<usize>>,
    system: System,
    elements: Vec<Element>,
    closed: Vec<bool>,
    toggles: Vec<u8>,
    on: Vec<bool>,
    dropped: OrderedMap<usize, f64>,
    /// By part, whether it is among those dropped: asked for by every law.
    is_dropped: Vec<bool>,
    /// Branch of the input of each source that is a converter.
    inlet: Vec<Option<usize>>,
    /// Input power of converters by part.
    input: OrderedMap<usize, f64>,
    /// Converters whose input has no supply, by source.
    starved: OrderedSet<usize>,
    /// Share of what is asked at which the network is being settled.
    share: f64,
    /// Whether the last operating point delivered all that was asked by what was not turned off.
    whole: bool,
    /// How finely it is told how much can be delivered where that is not all.
    halvings: u32,
}

impl<'a> Operator<'a> {
    pub(crate) fn new(net: &'a Network, sheet: &'a Sheet, state: VehicleState, demands: Vec<Demand>) -> Self {
        let kinds: Vec<&PartKind> = sheet.parts.values().map(|p| &p.is).collect();
        let mut coil = OrderedMap::new();
        let mut ignition = OrderedMap::new();
        let mut wired = vec![false; net.terminals.len()];
        for terminal in net.runs.iter().flat_map(|r| r.terminals).flatten() {
            wired[terminal] = true;
        }
        for (part, kind) in kinds.iter().enumerate() {
            match kind {
                PartKind::Relay(relay) => {
                    coil.insert(part, relay.coil.value().map_or(85.0, |r| r.0).max(values::BRIDGE));
                }
                PartKind::HeadUnit(_) => {
                    let first = net.first_terminal.get(part).copied().unwrap_or(0);
                    for (at, terminal) in net.terminals_of(part).iter().enumerate() {
                        if terminal.name.as_str() == "15" && wired.get(first + at) == Some(&true) {
                            ignition.insert(part, terminal.node);
                        }
                    }
                }
                _ => {}
            }
        }
        let elements: Vec<Element> = net
            .branches
            .iter()
            .map(|b| Element {
                nodes: b.nodes,
                law: Law::Open,
            })
            .collect();
        // Batteries first: voltages are told against battery negative, as a meter would be put.
        let is_battery = |s: &&crate::network::NetworkSource| {
            net.branches
                .get(s.branch)
                .is_some_and(|b| b.kind == Kind::Battery)
        };
        let mut first: Vec<usize> = net.sources.iter().filter(is_battery).map(|s| s.minus).collect();
        first.push(BODY);
        first.extend(net.sources.iter().map(|s| s.minus));
        let mut source_of = vec![None; net.branches.len()];
        for (at, source) in net.sources.iter().enumerate() {
            if let Some(place) = source_of.get_mut(source.branch) {
                *place = Some(at);
            }
        }
        let inlets: OrderedMap<usize, usize> = net
            .branches
            .iter()
            .enumerate()
            .filter(|(_, b)| b.kind == Kind::Load(Draw::Supply))
            .map(|(at, b)| (b.part, at))
            .collect();
        let inlet = net.sources.iter().map(|s| inlets.get(&s.part).copied()).collect();
        let steady: Vec<bool> = net.branches.iter().map(laws::is_steady).collect();
        let mut turned: Vec<(usize, usize)> = net
            .branches
            .iter()
            .enumerate()
            .filter(|(_, b)| match b.kind {
                Kind::Load(draw) => !matches!(draw, Draw::Coil | Draw::TurnOn),
                _ => b.closes == Closes::TurnedOn,
            })
            .map(|(at, b)| (b.part, at))
            .collect();
        turned.order_by(|a, b| a.cmp(b));
        let is_supply = |at: usize| {
            net.branches
                .get(at)
                .is_some_and(|b| b.kind == Kind::Load(Draw::Supply))
        };
        let switches = |b: &Branch| matches!(b.closes, Closes::Relay { .. } | Closes::Sensing { .. });
        let branches = || net.branches.iter().enumerate();
        let mut it = Self {
            net,
            drawing: turned.iter().copied().filter(|(_, at)| is_supply(*at)).collect(),
            switching: branches()
                .filter(|(_, b)| switches(b))
                .map(|(at, _)| at)
                .collect(),
            is_dropped: vec![false; net.parts.len()],
            source_of,
            sheet,
            demands: Vec::new(),
            engine: false,
            in_use: false,
            models: Vec::new(),
            coil,
            ignition,
            told: Vec::new(),
            ohms: net.branches.iter().map(|b| b.resistance).collect(),
            moving: (0..elements.len()).filter(|&at| !steady[at]).collect(),
            laid: false,
            turned,
            system: System::with_steady(net.nodes, &elements, &steady, &first),
            first,
            elements,
            closed: vec![false; net.branches.len()],
            toggles: vec![0; net.branches.len()],
            on: vec![false; net.parts.len()],
            dropped: OrderedMap::new(),
            inlet,
            input: OrderedMap::new(),
            starved: OrderedSet::new(),
            share: 1.0,
            whole: false,
            halvings: HALVINGS,
        };
        it.system
            .watch(switching::watched(net, &it.switching, &it.ignition).into_iter());
        it.set_state(state, demands);
        it
    }

    /// Lets parts be on only while their turn-on input is live: part, node of the input, node of the part's return.
    pub(crate) fn listen(&mut self, told: &[(usize, usize, usize)]) {
        self.told = told.to_vec();
        let inputs = told.iter().flat_map(|&(_, input, minus)| [input, minus]);
        let watched = switching::watched(self.net, &self.switching, &self.ignition);
        self.system.watch(watched.into_iter().chain(inputs));
    }

    /// Another system of the network, for other elements between the same nodes. Nothing of what was solved here shows in what it
    /// answers.
    pub(crate) fn system_anew(&self) -> System {
        let mut system = self.system.clone();
        system.forget();
        system
    }

    /// Gives a branch the resistance that it has at its temperature, in ohms.
    pub(crate) fn set_resistance(&mut self, branch: usize, ohms: f64) {
        if let Some(place) = self.ohms.get_mut(branch) {
            *place = ohms;
            self.laid = false;
        }
    }

    /// Resistance of each branch at its temperature, in ohms.
    pub(crate) fn resistances(&self) -> &[f64] {
        &self.ohms
    }

    /// Turns to another state of the vehicle, in which the parts ask for this.
    pub(crate) fn set_state(&mut self, state: VehicleState, demands: Vec<Demand>) {
        self.engine = matches!(state, VehicleState::Idle | VehicleState::Cruise);
        self.in_use = state != VehicleState::Parked;
        self.demands = demands;
        self.whole = false;
        let kinds: Vec<&PartKind> = self.sheet.parts.values().map(|p| &p.is).collect();
        self.models = self
            .net
            .sources
            .iter()
            .map(|s| laws::source_model(kinds.get(s.part).copied(), state))
            .collect();
    }

    /// Takes no more than so many halvings to find how much can be delivered.
    pub(crate) fn tell_roughly(&mut self, halvings: u32) {
        self.halvings = halvings;
    }

    /// Puts everything that switches back to where it starts from.
    fn reset(&mut self) {
        self.system.restart();
        self.toggles.fill(0);
        for &at in &self.switching {
            let at_rest = matches!(
                self.net.branches[at].closes,
                Closes::Relay { energised: false, .. }
            );
            self.closed[at] = at_rest;
        }
        for (on, demand) in self.on.iter_mut().zip(&self.demands) {
            *on = demand.may_be_on;
        }
        self.input.clear();
        self.starved.clear();
    }

    /// The operating point at a level, with every load that cannot be held above its cut-off turned off.
    pub(crate) fn operate(&mut self, level: Level) -> Operating {
        let found = self.find_point(level);
        self.report(found)
    }

    /// The same, from which only the currents are wanted.
    pub(crate) fn operate_for_currents(&mut self, level: Level) -> &[f64] {
        let found = self.find_point(level);
        self.find_currents(found.share);
        self.system.currents()
    }

    fn find_point(&mut self, level: Level) -> Found {
        self.dropped.clear();
        self.is_dropped.fill(false);
        self.reset();
        let mut deliverable = 1.0;
        let mut blamed = Vec::new();
        let mut collapsed = false;
        let mut share = 1.0;
        // Each round turns at least one part off, or is the last.
        for _ in 0..=self.net.parts.len() {
            match self.settle(level, 1.0, true) {
                Ok(()) => {
                    share = 1.0;
                    break;
                }
                Err(_) => {
                    // Once it is told how much could be delivered, a rough share is enough to see who gives up.
                    let halvings = if collapsed { 7 } else { self.halvings };
                    let largest = self.largest_share(level, halvings);
                    if !collapsed {
                        collapsed = true;
                        deliverable = largest;
                        blamed = self.worst_losses();
                    }
                    if self.drop_worst().is_empty() && !self.drop_untold() {
                        share = largest;
                        break;
                    }
                    self.reset();
                }
            }
        }
        self.whole = !collapsed;
        Found {
            share,
            deliverable,
            blamed,
        }
    }

    /// By branch, how much more is lost on a way for each ohm that is added to the branch, at the operating point found last: in V/Ω. The
    /// way is told by what its ends add to what is lost on it, which is nothing in all.
    ///
    /// The matrix of the last round of Newton is symmetric, so that one answer to the way tells it of all branches (S. W. Director and
    /// R. A. Rohrer, "The generalized adjoint network and network sensitivities", IEEE Transactions on Circuit Theory 16, 1969, from
    /// memory).
    pub(crate) fn slopes(&mut self, way: &[(usize, f64)]) -> Vec<f64> {
        let moved = self.system.answer_to(way);
        let branches = self
            .net
            .branches
            .iter()
            .zip(&self.ohms)
            .zip(self.system.currents());
        branches
            .map(|((branch, ohms), amps)| {
                let [a, b] = branch.nodes;
                if *ohms > 0.0 {
                    (moved[a] - moved[b]) * amps / ohms
                } else {
                    0.0
                }
            })
            .collect()
    }

    /// The operating point once more, after small changes of resistance: from where the last one was left, with what had turned
    /// itself off there still off.
    pub(crate) fn operate_again(&mut self, level: Level) -> Operating {
        let found = self.find_point_again(level);
        self.report(found)
    }

    /// The same, from which only the currents are wanted.
    pub(crate) fn operate_again_for_currents(&mut self, level: Level) -> &[f64] {
        let found = self.find_point_again(level);
        self.find_currents(found.share);
        self.system.currents()
    }

    fn find_point_again(&mut self, level: Level) -> Found {
        if self.whole && self.settle(level, 1.0, true).is_ok() {
            return Found {
                share: 1.0,
                deliverable: 1.0,
                blamed: Vec::new(),
            };
        }
        self.find_point(level)
    }

    /// Finds the currents. Where nothing was found nothing flows, rather than something wrong.
    fn find_currents(&mut self, share: f64) {
        if share > 0.0 {
            self.system.find_currents(&self.elements);
        } else {
            self.system.clear_currents();
        }
    }

    fn report(&mut self, found: Found) -> Operating {
        let Found {
            share,
            deliverable,
            blamed,
        } = found;
        self.find_currents(share);
        let closure = self.system.closure(&self.elements);
        Operating {
            voltages: self.system.voltages().to_vec(),
            driven: (0..self.net.nodes).map(|n| self.system.is_driven(n)).collect(),
            references: self.system.references(),
            currents: self.system.currents().to_vec(),
            elements: self.scaled(share),
            pieces: (0..self.net.sources.len()).map(|s| self.piece(s)).collect(),
            dropped: self.dropped.clone(),
            on: (0..self.on.len()).map(|part| self.is_on(part)).collect(),
            deliverable,
            share,
            closure,
            blamed,
            restless: self.restless(),
            settled: share > 0.0,
        }
    }

    /// The elements as they were solved, with what they asked scaled to what they got.
    fn scaled(&self, share: f64) -> Vec<Element> {
        self.elements
            .iter()
            .enumerate()
            .map(|(at, e)| Element {
                law: match e.law {
                    Law::Power(_) | Law::Current(0.0..) if self.system.is_idle(at) => Law::Open,
                    Law::Power(p) => Law::Power(p * share),
                    Law::Current(i) if i > 0.0 => Law::Current(i * share),
                    law => law,
                },
                ..*e
            })
            .collect()
    }

    /// The largest share of what is asked that can be delivered, by halving; the network is left solved there.
    fn largest_share(&mut self, level: Level, halvings: u32) -> f64 {
        let (mut can, mut cannot) = (0.0, 1.0);
        for _ in 0..halvings {
            let middle = 0.5 * (can + cannot);
            self.reset();
            if self.settle(level, middle, false).is_ok() {
                can = middle;
            } else {
                cannot = middle;
            }
        }
        self.reset();
        if self.settle(level, can, false).is_err() {
            return 0.0;
        }
        can
    }

    /// The branches that lose most, worst first: what stands in the way of more power.
    fn worst_losses(&mut self) -> Vec<usize> {
        self.system.find_currents(&self.elements);
        let mut losses: Vec<(f64, usize)> = self
            .elements
            .iter()
            .enumerate()
            .filter_map(|(at, e)| {
                let i = self.system.currents().get(at)?;
                let ohms = match e.law {
                    Law::Battery { gives, .. } => gives,
                    Law::Resistance(ohms) if !matches!(self.net.branches[at].kind, Kind::Load(_)) => ohms,
                    _ => return None,
                };
                Some((i * i * ohms, at))
            })
            .filter(|(loss, _)| *loss > 0.0)
            .collect();
        losses.order_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
        losses.truncate(12);
        losses.into_iter().map(|(_, at)| at).collect()
    }

    /// Turns off loads below their cut-off: a quarter of them, the furthest below first; and goes on for as long as nothing feels it.
    /// False when nothing has to be solved again.
    fn drop_until_felt(&mut self) -> bool {
        loop {
            let dropped = self.drop_worst();
            if dropped.is_empty() || dropped.iter().any(|part| self.is_felt(*part)) {
                return !dropped.is_empty();
            }
        }
    }

    /// Turns off loads below their cut-off: a quarter of them, the furthest below first. Which parts these are.
    fn drop_worst(&mut self) -> Vec<usize> {
        let mut below: Vec<(f64, usize, f64)> = Vec::new();
        for &(part, at) in &self.drawing {
            if !self.is_on(part) {
                continue;
            }
            let v = self.system.across(&self.elements[at]);
            if let Some(cut_off) = self.demands[part].cut_off
                && v < cut_off
            {
                below.push((v - cut_off, part, v));
            }
        }
        below.order_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
        below.truncate(below.len().div_ceil(4));
        for &(_, part, v) in &below {
            // Where nothing is, rounding must not tell of a voltage the wrong way round.
            self.dropped.insert(part, if v.abs() < HAIR { 0.0 } else { v });
            self.is_dropped[part] = true;
        }
        below.into_iter().map(|(_, part, _)| part).collect()
    }

    /// Turns off for good the part whose turn-on input is lost where no more can be delivered. False when there is none.
    fn drop_untold(&mut self) -> bool {
        let lost = self.told.iter().map(|&(part, ..)| part).find(|&part| {
            self.on.get(part) == Some(&false)
                && self.is_dropped.get(part) == Some(&false)
                && self.demands.get(part).is_some_and(|demand| demand.may_be_on)
        });
        if let Some(part) = lost {
            self.dropped.insert(part, 0.0);
            self.is_dropped[part] = true;
        }
        lost.is_some()
    }

    /// Whether the network feels it when a part turns off: not where it has no supply to draw from and joins nothing.
    fn is_felt(&self, part: usize) -> bool {
        let from = self.turned.partition_point(|(other, _)| *other < part);
        let mut own = self.turned[from..].iter().take_while(|(other, _)| *other == part);
        let draws_nothing = |at: usize| match self.elements[at].law {
            Law::Open => true,
            Law::Power(_) | Law::Current(0.0..) => self.system.is_idle(at),
            _ => false,
        };
        !own.all(|&(_, at)| matches!(self.net.branches[at].kind, Kind::Load(_)) && draws_nothing(at))
            || self.demands.get(part).is_none_or(|demand| demand.off < 0.0)
    }

    fn is_on(&self, part: usize) -> bool {
        self.on.get(part) == Some(&true) && self.is_dropped.get(part) == Some(&false)
    }

    /// Settles everything that limits and switches. The error says that what is asked cannot be delivered.
    fn settle(&mut self, level: Level, share: f64, cut_offs: bool) -> Result<(), NoAnswer> {
        self.share = share;
        for _ in 0..MOST_SETTLING {
            self.lay(level);
            self.system.solve_voltages(&self.elements, &self.first, share)?;
            if self.toggle() || self.feed_converters() || (cut_offs && self.drop_until_felt()) {
                continue;
            }
            // What turned off without being felt.
            self.lay(level);
            return Ok(());
        }
        Err(NoAnswer::Infeasible)
    }
}
