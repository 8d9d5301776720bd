//! What an ohmmeter shows between two terminals with the supply isolated: battery and alternator off their leads, nothing
//! turned on. It sees metal (wires, fuses, closed contacts, grounds, straps), coils of relays and voice coils; it sees
//! nothing through electronics, capacitors and open contacts.

use crate::measured::as_measured;
use crate::network::{Branch, Closes, Draw, Kind, LEAST_RESISTANCE, Network};
use crate::solve::{Element, Law, System};
use model::kinds::supply::LoadLaw;
use model::quantity::Ohms;
use model::{PartKind, Role, Sheet, TerminalRef};

/// Share of a voice coil's rated impedance that its DC resistance is taken as where nobody measured it (common practice:
/// 0.7 to 0.85, from memory of loudspeaker textbooks; the engine takes the same).
const COIL_SHARE: f64 = 0.775;
/// DC resistance of a crossover's coil in the low branch, in ohms (common practice: 0.2 to 0.5).
const CHOKE_OHMS: f64 = 0.3;

/// What an ohmmeter shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum OhmsShown {
    /// Both leads are on one point.
    SamePoint,
    /// Nothing joins the two.
    Open,
    /// So much.
    Ohms(Ohms),
}

/// What an ohmmeter shows between two terminals. `None` when a terminal is not on the sheet, or nothing can be solved.
#[must_use]
pub fn ohms_between(sheet: &Sheet, red: &TerminalRef, black: &TerminalRef) -> Option<OhmsShown> {
    let sheet = &*as_measured(sheet);
    let net = Network::build(sheet);
    let (red, black) = (net.node_of(red)?, net.node_of(black)?);
    if red == black {
        return Some(OhmsShown::SamePoint);
    }
    let mut elements: Vec<Element> = net
        .branches
        .iter()
        .map(|branch| passive(sheet, &net, branch))
        .collect();
    add_coils(sheet, &net, &mut elements);
    // The meter itself: one volt behind one ohm, so that the answer follows from the volts it finds.
    elements.push(Element {
        nodes: [red, black],
        law: Law::Source {
            emf: 1.0,
            resistance: 1.0,
        },
    });
    let mut system = System::new(net.nodes, &elements);
    system.solve(&elements, &[], 1.0).ok()?;
    let volts = system.voltages();
    let across = volts.get(red)? - volts.get(black)?;
    let amps = 1.0 - across;
    // Ten megohms: beyond that a common meter shows nothing.
    if amps < 1e-7 {
        return Some(OhmsShown::Open);
    }
    Some(OhmsShown::Ohms(Ohms(across / amps)))
}

fn passive(sheet: &Sheet, net: &Network, branch: &Branch) -> Element {
    let conducts = match branch.closes {
        Closes::Always => true,
        Closes::Relay { energised, .. } => !energised,
        Closes::Never
        | Closes::InUse
        | Closes::EngineOn
        | Closes::Sensing { .. }
        | Closes::Diode { .. }
        | Closes::TurnedOn => false,
    };
    let resistance = match branch.kind {
        Kind::Wire { .. }
        | Kind::Shield { .. }
        | Kind::Tie
        | Kind::Device { .. }
        | Kind::Contact
        | Kind::Ground
        | Kind::Metal
        | Kind::VehiclePath => Some(branch.resistance),
        Kind::Load(draw) => resistor(sheet, net, branch.part, draw),
        Kind::TurnOnOut | Kind::Battery | Kind::Alternator | Kind::ConverterOut => None,
    };
    let law = match resistance.filter(|ohms| conducts && *ohms > 0.0) {
        Some(ohms) => Law::Resistance(ohms),
        None => Law::Open,
    };
    Element {
        nodes: branch.nodes,
        law,
    }
}

/// The resistance of what is a plain resistor to a meter: a relay's coil, a load that is stated as one.
fn resistor(sheet: &Sheet, net: &Network, part: usize, draw: Draw) -> Option<f64> {
    let part = sheet.parts.get(net.parts.get(part)?)?;
    match (&part.is, draw) {
        (PartKind::Relay(relay), Draw::Coil) => relay.coil.value().map(|ohms| ohms.0),
        (PartKind::Load(load), Draw::Supply) if load.law == LoadLaw::Resistance => {
            load.resistance.value().map(|ohms| ohms.0)
        }
        _ => None,
    }
}

/// Voice coils, and the choke of a crossover's low branch: they are no part of the supply network.
fn add_coils(sheet: &Sheet, net: &Network, elements: &mut Vec<Element>) {
    for (id, part) in &sheet.parts {
        let node = |name: &str| net.node_of(&TerminalRef::new(*id, name));
        let mut add = |a: Option<usize>, b: Option<usize>, ohms: f64| {
            if let (Some(a), Some(b)) = (a, b)
                && ohms > 0.0
            {
                elements.push(Element {
                    nodes: [a, b],
                    law: Law::Resistance(ohms),
                });
            }
        };
        match &part.is {
            PartKind::Speaker(speaker) => {
                let rated = speaker.impedance.value().map(|ohms| ohms.0 * COIL_SHARE);
                let Some(ohms) = speaker.dc_resistance.value().map(|ohms| ohms.0).or(rated) else {
                    continue;
                };
                for coil in 1..=speaker.coils {
                    let end = |wanted: bool| {
                        part.terminals()
                            .into_iter()
                            .find_map(|terminal| match terminal.role {
                                Role::Coil { coil: n, positive } if n == coil && positive == wanted => {
                                    Some(terminal.name)
                                }
                                _ => None,
                            })
                    };
                    let plus = end(true).and_then(|name| node(name.as_str()));
                    let minus = end(false).and_then(|name| node(name.as_str()));
                    add(plus, minus, ohms);
                }
            }
            PartKind::Crossover(_) => {
                add(node("in+"), node("low+"), CHOKE_OHMS);
                add(node("in-"), node("low-"), LEAST_RESISTANCE);
                add(node("in-"), node("high-"), LEAST_RESISTANCE);
            }
            _ => {}
        }
    }
}
