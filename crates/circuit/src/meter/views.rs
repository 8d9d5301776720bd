//! The elements of a sheet as a meter meets them: all branches of the network, then voice coils and what lies in speaker leads, then
//! the outputs of amplifiers; and what each is to direct current, to ohms, and to a test tone.

use super::linear::Straight;
use crate::network::{Branch, Closes, Draw, Kind, LEAST_RESISTANCE, Network, values};
use crate::solve::{Demand, Element, LEAST_SUPPLY, Law};
use crate::speakers;
use model::kinds::supply::LoadLaw;
use model::{PartId, PartKind, Role, Sheet, TerminalRef};

/// DC resistance of a crossover's coil in the low branch, in ohms (common practice: 0.2 to 0.5).
pub(super) const CHOKE_OHMS: f64 = 0.3;
/// Resistance of an amplifier's output, in ohms: a damping factor of 200 on 4 Ω (from memory).
const OUTPUT_OHMS: f64 = 0.02;
/// Conductance of a load that draws nothing, in siemens: electronics that are off take about a milliampere (from memory).
const AT_REST: f64 = 1e-4;
/// Leg of an output that is ground inside its amplifier, in ohms.
const GROUND_LEG: f64 = 1e-3;

/// What is no branch of the supply network.
#[derive(Clone, Debug)]
pub(super) enum Beside {
    /// A voice coil: its part, DC resistance and rated impedance.
    Coil { part: usize, dc: f64, rated: f64 },
    /// A choke or a joint in a crossover: so many ohms to direct current and tone.
    Pass { part: usize, ohms: f64 },
    /// A capacitor in a speaker lead: passes the tone only.
    Capacitor { part: usize },
    /// One leg of an output against the supply negative of its part, with its share of the channel's volts.
    Leg { part: usize, channel: u8, share: f64 },
}

/// An element that is no branch, with its nodes.
#[derive(Clone, Debug)]
pub(super) struct Extra {
    pub(super) nodes: [usize; 2],
    pub(super) is: Beside,
}

impl Extra {
    pub(super) fn part(&self) -> usize {
        match self.is {
            Beside::Coil { part, .. }
            | Beside::Pass { part, .. }
            | Beside::Capacitor { part }
            | Beside::Leg { part, .. } => part,
        }
    }

    /// To an ohmmeter.
    pub(super) fn to_ohms(&self) -> Straight {
        match self.is {
            Beside::Coil { dc, .. } => Straight::resistance(dc),
            Beside::Pass { ohms, .. } => Straight::resistance(ohms.max(LEAST_RESISTANCE)),
            Beside::Capacitor { .. } | Beside::Leg { .. } => Straight::default(),
        }
    }

    /// To a tone in the band that its filters pass; `volts` of its channel, where it is a leg.
    pub(super) fn to_tone(&self, volts: f64) -> Straight {
        match self.is {
            Beside::Coil { rated, .. } => Straight::resistance(rated),
            Beside::Pass { .. } | Beside::Capacitor { .. } => Straight::resistance(GROUND_LEG),
            Beside::Leg { share: 0.0, .. } => Straight::resistance(GROUND_LEG),
            Beside::Leg { share, .. } => Straight {
                conductance: 1.0 / OUTPUT_OHMS,
                given: -share * volts / OUTPUT_OHMS,
            },
        }
    }
}

/// All of a sheet.
pub(super) fn beside(sheet: &Sheet, net: &Network) -> Vec<Extra> {
    let mut all = Vec::new();
    for (part, (id, it)) in sheet.parts.iter().enumerate() {
        let node = |name: &str| net.node_of(&TerminalRef::new(*id, name));
        let mut add = |a: Option<usize>, b: Option<usize>, is: Beside| {
            if let (Some(a), Some(b)) = (a, b) {
                all.push(Extra { nodes: [a, b], is });
            }
        };
        match &it.is {
            PartKind::Speaker(speaker) => {
                let (dc, rated) = speakers::coil(speaker);
                if speaker.coils <= 1 {
                    add(node("+"), node("-"), Beside::Coil { part, dc, rated });
                } else {
                    for (plus, minus) in [("a+", "a-"), ("b+", "b-")] {
                        add(node(plus), node(minus), Beside::Coil { part, dc, rated });
                    }
                }
            }
            PartKind::Crossover(_) => {
                add(
                    node("in+"),
                    node("low+"),
                    Beside::Pass {
                        part,
                        ohms: CHOKE_OHMS,
                    },
                );
                add(node("in+"), node("high+"), Beside::Capacitor { part });
                for minus in ["low-", "high-"] {
                    add(node("in-"), node(minus), Beside::Pass { part, ohms: 0.0 });
                }
            }
            PartKind::InlineCapacitor(_) => add(node("1"), node("2"), Beside::Capacitor { part }),
            PartKind::Amplifier(_) | PartKind::HeadUnit(_) => {
                let minus = node("-").or_else(|| node("31"));
                for terminal in it.terminals() {
                    if let Role::SpeakerOut { channel, positive } = terminal.role {
                        let share = leg_share(&it.is, channel, positive);
                        add(
                            node(terminal.name.as_str()),
                            minus,
                            Beside::Leg { part, channel, share },
                        );
                    }
                }
            }
            _ => {}
        }
    }
    all
}

/// The share of a channel's volts that stands on a leg, against ground.
fn leg_share(kind: &PartKind, channel: u8, positive: bool) -> f64 {
    let sign = if positive { 1.0 } else { -1.0 };
    match kind {
        PartKind::Amplifier(it) if speakers::is_ground_leg(it, channel, positive) => 0.0,
        PartKind::Amplifier(it) if !it.floating => sign,
        _ => 0.5 * sign,
    }
}

/// What a load is that draws nothing as things stand. Through it a meter still sees a point that it alone ties to anything, as a ground
/// terminal whose lead is off is seen to be live.
pub(super) fn at_rest(branch: &Branch, demand: Option<&Demand>) -> Straight {
    let draws = demand.is_some_and(|demand| match branch.kind {
        // What its maker or its time has switched off is open.
        Kind::Load(Draw::Supply) => demand.may_be_on && demand.supply.first() != Some(&Law::Open),
        Kind::Load(Draw::TurnOn) => demand.turn_on > 0.0,
        Kind::Load(Draw::Idle | Draw::Base | Draw::Leakage) => demand.idle.max(demand.off) > 0.0,
        _ => false,
    });
    Straight {
        conductance: if draws { AT_REST } else { 0.0 },
        given: 0.0,
    }
}

/// A branch to direct current, at a voltage across it and a current through it as the engine found them: loads as the resistance that
/// they are just there.
pub(super) fn straight(law: Law, volts: f64, amps: f64) -> Straight {
    match law {
        Law::Open => Straight::default(),
        Law::Current(_) | Law::Power(_) => {
            if volts >= LEAST_SUPPLY && amps > 0.0 {
                Straight {
                    conductance: amps / volts,
                    given: 0.0,
                }
            } else {
                Straight::default()
            }
        }
        // At its limit: through the same point, yet held by its own voltage, so that it gives nothing once it hangs in the air.
        Law::Limited {
            emf,
            resistance,
            limit,
        } if volts <= emf - resistance * limit => {
            let ohms = (emf - volts) / limit.max(1e-3);
            Straight {
                conductance: 1.0 / ohms,
                given: -emf / ohms,
            }
        }
        law => {
            let (conductance, given) = law.piece(volts).unwrap_or((0.0, 0.0));
            Straight { conductance, given }
        }
    }
}

/// A branch to an ohmmeter.
pub(super) fn to_ohms(sheet: &Sheet, net: &Network, branch: &Branch) -> Straight {
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
    match resistance.filter(|ohms| conducts && *ohms > 0.0) {
        Some(ohms) => Straight::resistance(ohms),
        None => Straight::default(),
    }
}

/// A branch to a test tone: metal as it conducts now, batteries as their resistance, nothing else.
pub(super) fn to_tone(branch: &Branch, now: &Element) -> Straight {
    match (branch.kind, now.law) {
        (Kind::Load(_) | Kind::TurnOnOut | Kind::Alternator | Kind::ConverterOut, _) => Straight::default(),
        (Kind::Battery, Law::Battery { gives, .. }) => Straight::resistance(gives.max(values::BRIDGE)),
        (_, Law::Resistance(ohms)) => Straight::resistance(ohms),
        _ => Straight::default(),
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

/// The least load that an output of a part may drive, in ohms; 2 Ω where nobody says.
pub(super) fn least_load(sheet: &Sheet, id: PartId, channel: u8) -> f64 {
    let stated = match sheet.parts.get(&id).map(|part| &part.is) {
        Some(PartKind::Amplifier(it)) => it
            .sections
            .of_channel(channel)
            .map(|(section, _)| section.minimum.0),
        Some(PartKind::HeadUnit(it)) => it.minimum_load.value().map(|ohms| ohms.0),
        _ => None,
    };
    stated.unwrap_or(2.0).max(0.1)
}
