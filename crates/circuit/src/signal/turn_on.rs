//! Who tells each amplifier and processor to turn on, and what that asks of the output that does.
//!
//! A turn-on lead is followed through everything that conducts. A relay in it is looked through: behind its contact
//! stands whoever drives its coil. A feed that is live at all times keeps what hangs on it on for ever.

use super::{Spread, spread_from};
use crate::speakers::index::{By, Index};
use crate::study::{InputFed, TurnOnFed, TurnOnOutput};
use model::kinds::sound::TurnOn;
use model::kinds::supply::LoadLaw;
use model::quantity::{Amps, Ohms, Volts, Watts};
use model::{PartId, PartKind, Role};
use ordered::{OrderedMap, OrderedSet};

/// Voltage at which coils and loads on a turn-on lead are counted: that of the running vehicle.
const VOLTAGE: Volts = reference::audio::RATING_VOLTAGE;
/// What the turn-on input of a processor draws, for which the sheet has no property. Common practice: a few to 20 mA.
const PROCESSOR_INPUT: Amps = Amps(0.01);

/// What is known about a set of terminals that conduct to one another.
#[derive(Clone, Debug, Default)]
struct Net {
    /// A pole that is live at all times is in it.
    permanent: bool,
    /// A pole that is live with the ignition or the engine only is in it.
    ignition: bool,
    /// Turn-on outputs in it.
    outputs: OrderedSet<usize>,
    /// Turn-on inputs, relay coils and loads in it.
    takes: OrderedSet<usize>,
    /// Nets behind switches, isolators and relay contacts that may be open.
    switched: OrderedSet<usize>,
    /// Relays whose working contact is in it: the nets of their contact's other side and of their two coil ends.
    relays: Vec<Relay>,
}

#[derive(Clone, Copy, Debug)]
struct Relay {
    other: Option<usize>,
    coil: [Option<usize>; 2],
}

/// What drives a net, relays looked through.
#[derive(Default)]
struct Driven {
    outputs: OrderedSet<usize>,
    always: bool,
    switched: bool,
}

/// Turn-on by part, and what each turn-on output is asked for.
pub(super) fn find(
    index: &Index<'_>,
    inputs: &[InputFed],
) -> (OrderedMap<PartId, TurnOnFed>, Vec<TurnOnOutput>) {
    let nets = Nets::new(index);
    let mut ways = Ways::new(index);
    let mut turn_on = OrderedMap::new();
    for (id, part) in &index.sheet.parts {
        let how = match &part.is {
            PartKind::Amplifier(it) => it.turn_on,
            PartKind::Processor(it) => it.turn_on,
            _ => continue,
        };
        // Inputs stand in the order of their parts.
        let own = inputs.get(inputs.partition_point(|input| input.part < *id)..);
        let mut own = own
            .unwrap_or_default()
            .iter()
            .take_while(|input| input.part == *id);
        let signal = own.any(|input| !input.by.is_empty());
        let sensed = how != TurnOn::Lead && signal;
        let mut fed = TurnOnFed {
            sensed,
            needs_lead: match how {
                TurnOn::Lead => true,
                TurnOn::Either => !sensed,
                TurnOn::Sensing => false,
            },
            ..TurnOnFed::default()
        };
        if let Some(at) = index.find(*id, "rem") {
            let driven = nets.driven(nets.of(at));
            fed.always_live = driven.always;
            fed.switched_feed = driven.switched && !driven.always;
            let parts: OrderedSet<PartId> = driven
                .outputs
                .iter()
                .filter_map(|at| index.spots.get(*at))
                .map(|spot| spot.part)
                .collect();
            fed.by = parts.into_iter().collect();
            ways.runs(index, at, &mut fed.runs);
        }
        turn_on.insert(*id, fed);
    }
    (turn_on, asked(index, &nets))
}

/// The ways of all turn-on leads, looked for at once: from turn-on outputs, and from where a lead may otherwise hang.
struct Ways {
    outputs: Spread,
    others: Option<Spread>,
}

impl Ways {
    fn new(index: &Index<'_>) -> Self {
        Self {
            outputs: Self::spread(index, true),
            others: None,
        }
    }

    /// From turn-on outputs, or from every other end.
    fn spread(index: &Index<'_>, from_outputs: bool) -> Spread {
        let is_output =
            |at: usize| matches!(index.spots.get(at).map(|spot| spot.role), Some(Role::TurnOnOut));
        let is_start = |at: usize| is_output(at) == from_outputs && is_end(index, at);
        let starts = (0..index.spots.len()).filter(|at| is_start(*at)).collect();
        // A start is an end too: the way out of one must not stop there.
        spread_from(index, starts, |at| is_end(index, at) && !is_start(at))
    }

    /// The runs from an input to the output that drives it or, where there is none, to what feeds it.
    fn runs(&mut self, index: &Index<'_>, at: usize, runs: &mut OrderedSet<model::RunId>) {
        if self.outputs.from.contains_key(&at) {
            self.outputs.runs_to(at, runs);
        } else {
            self.others
                .get_or_insert_with(|| Self::spread(index, false))
                .runs_to(at, runs);
        }
    }
}

/// Where following a turn-on lead ends: at who gives the signal, at a pole, or at a relay or switch.
fn is_end(index: &Index<'_>, at: usize) -> bool {
    let role = index.spots.get(at).map(|spot| spot.role);
    matches!(role, Some(Role::TurnOnOut))
        || matches!(index.kind(at), Some(PartKind::Relay(_) | PartKind::Switch(_)))
        || pole(index, at).is_some()
}

/// For a pole of a source: whether it is live at all times.
fn pole(index: &Index<'_>, at: usize) -> Option<bool> {
    let spot = index.spots.get(at)?;
    match index.kind(at)? {
        PartKind::Battery(_) => (spot.role == Role::SupplyPlus).then_some(true),
        PartKind::Alternator(_) => (spot.role == Role::SupplyPlus).then_some(true),
        PartKind::Vehicle(_) => match spot.name.as_str() {
            "+" | "B+" | "30" => Some(true),
            "15" => Some(false),
            _ => None,
        },
        PartKind::Converter(it) => (spot.name.as_str() == "out").then_some(!it.with_engine),
        _ => None,
    }
}

struct Nets {
    net_of: Vec<usize>,
    /// By net; one that holds nothing of interest has no entry.
    nets: OrderedMap<usize, Net>,
}

impl Nets {
    fn new(index: &Index<'_>) -> Self {
        let mut groups = crate::speakers::Groups::new(index.spots.len());
        let is_switch = |part: PartId| {
            matches!(
                index.sheet.parts.get(&part).map(|it| &it.is),
                Some(PartKind::Switch(_) | PartKind::Isolator(_))
            )
        };
        let may_be_open = |by: By| matches!(by, By::Inside(part) if is_switch(part));
        for link in &index.links {
            if link.is_closed() && !may_be_open(link.by) {
                groups.join(link.a, link.b);
            }
        }
        let net_of: Vec<usize> = (0..index.spots.len()).map(|at| groups.find(at)).collect();
        let mut it = Self {
            nets: OrderedMap::new(),
            net_of,
        };
        for (at, spot) in index.spots.iter().enumerate() {
            let relay = match index.kind(at) {
                Some(PartKind::Relay(_)) if spot.name.as_str() == "87" => {
                    let net = |name: &str| index.find(spot.part, name).map(|at| it.of(at));
                    Some(Relay {
                        other: net("30"),
                        coil: [net("85"), net("86")],
                    })
                }
                Some(PartKind::Relay(_)) if spot.name.as_str() == "30" => {
                    let net = |name: &str| index.find(spot.part, name).map(|at| it.of(at));
                    Some(Relay {
                        other: net("87"),
                        coil: [net("85"), net("86")],
                    })
                }
                _ => None,
            };
            let pole = pole(index, at);
            let is_load = spot.role == Role::SupplyPlus && matches!(index.kind(at), Some(PartKind::Load(_)));
            let takes = is_load || matches!(spot.role, Role::TurnOnIn | Role::Control);
            let gives = spot.role == Role::TurnOnOut;
            if relay.is_none() && pole.is_none() && !takes && !gives {
                continue;
            }
            let of = it.of(at);
            let net = it.nets.entry(of).or_default();
            net.relays.extend(relay);
            match pole {
                Some(true) => net.permanent = true,
                Some(false) => net.ignition = true,
                None => {}
            }
            if gives {
                net.outputs.insert(at);
            }
            if takes {
                net.takes.insert(at);
            }
        }
        for link in index.links.iter().filter(|link| may_be_open(link.by)) {
            let (a, b) = (it.of(link.a), it.of(link.b));
            for (from, to) in [(a, b), (b, a)] {
                it.nets.entry(from).or_default().switched.insert(to);
            }
        }
        it
    }

    fn of(&self, at: usize) -> usize {
        self.net_of.get(at).copied().unwrap_or(at)
    }

    /// What drives a net.
    fn driven(&self, net: usize) -> Driven {
        let mut found = Driven::default();
        // Nets to look at: whether something that may be open lies between, and whether it counts as a feed.
        let mut waiting = vec![(net, false)];
        let mut seen = OrderedSet::new();
        while let Some((at, behind)) = waiting.pop() {
            if !seen.insert((at, behind)) {
                continue;
            }
            let Some(it) = self.nets.get(&at) else { continue };
            found.outputs.extend(it.outputs.iter().copied());
            found.always |= it.permanent && !behind;
            found.switched |= it.ignition || (it.permanent && behind);
            if it.permanent || it.ignition {
                // A pole: what else hangs on it says nothing about this lead.
                continue;
            }
            waiting.extend(it.switched.iter().map(|next| (*next, true)));
            for relay in &it.relays {
                // Whoever drives the coil drives what is behind the contact, if that has a supply to pass on.
                if !relay
                    .other
                    .is_some_and(|other| self.has_pole(other, &mut OrderedSet::new()))
                {
                    waiting.extend(relay.other.map(|other| (other, true)));
                    continue;
                }
                waiting.extend(relay.coil.iter().flatten().map(|coil| (*coil, behind)));
            }
        }
        found
    }

    /// Whether a net has a pole in it, or behind switches.
    fn has_pole(&self, net: usize, seen: &mut OrderedSet<usize>) -> bool {
        let mut waiting = vec![net];
        while let Some(at) = waiting.pop() {
            if !seen.insert(at) {
                continue;
            }
            let Some(it) = self.nets.get(&at) else { continue };
            if it.permanent || it.ignition {
                return true;
            }
            waiting.extend(it.switched.iter().copied());
        }
        false
    }
}

/// What every turn-on output is asked for, by what hangs on its lead.
fn asked(index: &Index<'_>, nets: &Nets) -> Vec<TurnOnOutput> {
    let mut all = Vec::new();
    for (at, spot) in index.spots.iter().enumerate() {
        if spot.role != Role::TurnOnOut {
            continue;
        }
        let capacity = match index.kind(at) {
            Some(PartKind::HeadUnit(it)) => it.turn_on_capacity.value(),
            Some(PartKind::Processor(it)) => it.turn_on_capacity.value(),
            Some(PartKind::LineConverter(it)) => it.turn_on_capacity.value(),
            _ => None,
        };
        let mut output = TurnOnOutput {
            part: spot.part,
            terminal: spot.name.as_str().to_owned(),
            asked: Amps::ZERO,
            capacity,
            serves: Vec::new(),
        };
        let mut serves = OrderedSet::new();
        for taker in nets.nets.get(&nets.of(at)).into_iter().flat_map(|net| &net.takes) {
            let Some(taker_spot) = index.spots.get(*taker) else {
                continue;
            };
            if !serves.insert(taker_spot.part) {
                continue;
            }
            let draws = match index.kind(*taker) {
                Some(PartKind::Amplifier(it)) => it.turn_on_current.or(Amps(0.01)),
                Some(PartKind::Processor(_)) => PROCESSOR_INPUT,
                Some(PartKind::Relay(it)) => VOLTAGE / it.coil.or(Ohms(85.0)).max(Ohms(0.1)),
                Some(PartKind::Load(it)) => match it.law {
                    LoadLaw::Current => it.current.or(Amps(5.0)),
                    LoadLaw::Power => it.power.or(Watts(60.0)) / VOLTAGE,
                    LoadLaw::Resistance => VOLTAGE / it.resistance.or(Ohms(2.4)).max(Ohms(0.01)),
                },
                _ => Amps::ZERO,
            };
            output.asked = output.asked + draws;
        }
        output.serves = serves.into_iter().collect();
        all.push(output);
    }
    all
}
