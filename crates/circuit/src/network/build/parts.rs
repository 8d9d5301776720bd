//! Parts: what each kind is electrically.

use super::builder::Builder;
use crate::network::{BODY, Closes, Draw, Kind, LEAST_RESISTANCE, values};
use body::Metal;
use model::kinds::sound::InputGround;
use model::kinds::supply::{DeviceState, IsolatorKind};
use model::quantity::{Amps, Ohms};
use model::{Fact, PartKind, Role};

impl Builder {
    /// Ties the shields of a part's line jacks to its supply negative.
    pub(super) fn ties(&mut self, part: usize, minus: Option<usize>, inputs: InputGround) {
        let Some(minus) = minus else { return };
        let (first, end) = (self.net.first_terminal[part], self.net.first_terminal[part + 1]);
        for terminal in first..end {
            let role = self.net.terminals[terminal].role;
            if let (true, Some(shield)) = (role.is_line(), self.shield[terminal]) {
                // Outputs give their signal against the supply ground.
                let ground = if matches!(role, Role::LineIn(_)) {
                    inputs
                } else {
                    InputGround::Joined
                };
                if let Some(ohms) = values::input_ground(ground) {
                    self.link(part, Kind::Tie, [Some(shield), Some(minus)], ohms, Closes::Always);
                }
            }
        }
    }

    pub(super) fn join_all(&mut self, part: usize, which: impl Fn(&str) -> bool) {
        let mut first = None;
        let (from, to) = (self.net.first_terminal[part], self.net.first_terminal[part + 1]);
        for terminal in from..to {
            let point = self.net.terminals[terminal].node;
            if which(self.net.terminals[terminal].name.as_str()) {
                match first {
                    None => first = Some(point),
                    Some(first) => self.join(first, point),
                }
            }
        }
    }

    /// Joins what two mated contacts make one point.
    pub(super) fn join_names(&mut self, part: usize, a: &str, b: &str) {
        if let (Some(a), Some(b)) = (self.at(part, a), self.at(part, b)) {
            if self.apart {
                self.link(
                    part,
                    Kind::Contact,
                    [Some(a), Some(b)],
                    values::CONTACT,
                    Closes::Always,
                );
                return;
            }
            self.join(a, b);
        }
    }

    /// An output that a part turns others on by.
    fn turn_on_out(&mut self, part: usize, nodes: [Option<usize>; 2]) {
        self.link(
            part,
            Kind::TurnOnOut,
            nodes,
            values::TURN_ON_OUT,
            Closes::TurnedOn,
        );
    }

    /// A fuse or a breaker of its own, from `in` to `out`.
    fn guard(&mut self, part: usize, rating: &Fact<Amps>, state: DeviceState, ohms: f64) {
        self.take(part, "rating", rating, 0.0);
        let nodes = [self.at(part, "in"), self.at(part, "out")];
        self.device(part, None, nodes, rating.value(), state, ohms, Closes::Always);
    }

    pub(super) fn part(&mut self, part: usize, kind: &PartKind, metal: &Metal) {
        let plus = self.at(part, "+");
        let minus = self.at(part, "-");
        match kind {
            PartKind::Battery(it) => {
                for (name, given) in [
                    ("capacity", it.capacity.is_given()),
                    ("charge", it.charge.is_given()),
                ] {
                    if !given {
                        self.assumed.push((self.net.parts.get(part).copied(), None, name));
                    }
                }
                if !it.resistance.is_given() {
                    self.take(part, "cranking", &it.cranking, 0.0);
                }
                self.source(part, Kind::Battery, plus, minus, LEAST_RESISTANCE, Closes::Always);
            }
            PartKind::Alternator(it) => {
                for (name, fact) in [("current", &it.current), ("idle-current", &it.idle_current)] {
                    self.take(part, name, fact, 0.0);
                }
                self.take(part, "voltage", &it.voltage, 0.0);
                self.take(part, "hot-share", &it.hot_share, 0.0);
                let (b, case) = (self.at(part, "B+"), self.at(part, "case"));
                self.source(
                    part,
                    Kind::Alternator,
                    b,
                    case,
                    values::ALTERNATOR_SLOPE,
                    Closes::EngineOn,
                );
            }
            PartKind::Converter(it) => {
                self.take(part, "voltage", &it.voltage, 0.0);
                self.take(part, "current", &it.current, 0.0);
                self.take(part, "efficiency", &it.efficiency, 0.0);
                let (input, output) = (self.at(part, "in"), self.at(part, "out"));
                let closes = if it.with_engine {
                    Closes::EngineOn
                } else {
                    Closes::Always
                };
                self.source(
                    part,
                    Kind::ConverterOut,
                    output,
                    minus,
                    values::CONVERTER_SLOPE,
                    closes,
                );
                self.load(part, Draw::Supply, input, minus);
                self.consumer(part, "in", minus);
            }
            PartKind::Vehicle(it) => self.vehicle(part, it),
            PartKind::Fuse(it) => {
                let ohms = values::fuse(it.form, it.rating.value());
                self.guard(part, &it.rating, it.state, ohms);
            }
            PartKind::Breaker(it) => {
                self.guard(part, &it.rating, it.state, values::breaker(it.rating.value()));
            }
            PartKind::Block(it) => {
                let fused = |name: &str| {
                    name.strip_prefix("out")
                        .and_then(|n| n.parse::<usize>().ok())
                        .and_then(|n| it.fuses.0.get(n.checked_sub(1)?).copied().flatten())
                };
                self.join_all(part, |name| fused(name).is_none());
                let bar = self.at(part, "in");
                let (from, to) = (self.net.first_terminal[part], self.net.first_terminal[part + 1]);
                for terminal in from..to {
                    let name = self.net.terminals[terminal].name.clone();
                    if let Some(rating) = fused(name.as_str()) {
                        let ohms = values::fuse(it.form, Some(rating));
                        let out = Some(self.net.terminals[terminal].node);
                        self.device(
                            part,
                            Some(name.as_str()),
                            [bar, out],
                            Some(rating),
                            DeviceState::Intact,
                            ohms,
                            Closes::Always,
                        );
                    }
                }
            }
            PartKind::Bus(_) | PartKind::Splice(_) => self.join_all(part, |_| true),
            PartKind::Plug(it) => {
                if it.mated {
                    for cavity in &it.cavities.0 {
                        self.join_names(
                            part,
                            &format!("{}a", cavity.position),
                            &format!("{}b", cavity.position),
                        );
                    }
                    for (a, b) in &it.loops.0 {
                        self.join_names(part, &format!("{a}a"), &format!("{b}a"));
                    }
                }
            }
            PartKind::Adapter(it) => {
                for cavity in &it.cavities.0 {
                    self.join_names(
                        part,
                        &format!("{}a", cavity.position),
                        &format!("{}b", cavity.position),
                    );
                }
            }
            PartKind::Ground(it) => {
                let contact = match it.contact {
                    Fact::Given(Ohms(contact)) => contact,
                    _ => {
                        let stand_in = values::ground_contact(it.surface.value());
                        self.take(part, "contact", &it.contact, stand_in)
                    }
                };
                let own = self.take(part, "body", &it.body, values::BODY_METAL);
                // Where the ground point has a place, the metal behind it is shared with others.
                let id = self.net.parts.get(part).copied().unwrap_or_default();
                let spot = metal.point_of(id).and_then(|spot| self.metal.get(spot).copied());
                let (to, own) = match spot {
                    Some(spot) => (spot, reference::body_metal::spreading().0),
                    None => (BODY, own),
                };
                let stud = self.at(part, "stud");
                self.link(
                    part,
                    Kind::Ground,
                    [stud, Some(to)],
                    contact + own,
                    Closes::Always,
                );
            }
            PartKind::Relay(it) => {
                self.take(part, "coil", &it.coil, 85.0);
                let pull_in = self.take(part, "pull-in", &it.pull_in, 7.2);
                let (a, b) = (self.at(part, "86"), self.at(part, "85"));
                if let Some(coil) = self.load(part, Draw::Coil, a, b) {
                    let common = self.at(part, "30");
                    for (name, energised) in [("87", true), ("87a", false)] {
                        let other = self.at(part, name);
                        let closes = Closes::Relay {
                            coil,
                            pull_in,
                            energised,
                        };
                        self.link(part, Kind::Contact, [common, other], values::CONTACT, closes);
                    }
                }
            }
            PartKind::Switch(it) => {
                // Who parks turns off what a switch turned on; master switches stay on, see `super::master`.
                let closes = if it.closed { Closes::InUse } else { Closes::Never };
                let nodes = [self.at(part, "in"), self.at(part, "out")];
                self.link(part, Kind::Contact, nodes, values::CONTACT, closes);
            }
            PartKind::Isolator(it) => {
                let closes = match it.kind {
                    IsolatorKind::Sensing => {
                        let closes_at = self.take(part, "closes-at", &it.closes_at, 13.3);
                        // Unwired, the sensing lead is taken as on the body, where the isolator is bolted.
                        let minus = minus
                            .filter(|m| self.wired.get(m - 1) == Some(&true))
                            .unwrap_or(BODY);
                        Closes::Sensing { minus, closes_at }
                    }
                    IsolatorKind::Ignition => Closes::EngineOn,
                    IsolatorKind::Diode => Closes::Diode {
                        drop: self.take(part, "drop", &it.drop, 0.7),
                    },
                    IsolatorKind::Manual if it.closed => Closes::Always,
                    IsolatorKind::Manual => Closes::Never,
                };
                let nodes = [self.at(part, "main"), self.at(part, "aux")];
                self.link(part, Kind::Contact, nodes, values::CONTACT, closes);
            }
            PartKind::Capacitor(it) => {
                self.take(part, "leakage", &it.leakage, 0.005);
                self.load(part, Draw::Leakage, plus, minus);
                self.consumer(part, "+", minus);
            }
            PartKind::Load(_) => {
                self.load(part, Draw::Supply, plus, minus);
                self.consumer(part, "+", minus);
            }
            PartKind::Amplifier(it) => {
                self.load(part, Draw::Supply, plus, minus);
                self.load(part, Draw::Idle, plus, minus);
                let rem = self.at(part, "rem");
                self.load(part, Draw::TurnOn, rem, minus);
                self.consumer(part, "+", minus);
                self.ties(part, minus, it.input_ground);
            }
            PartKind::HeadUnit(_) => {
                let (permanent, minus) = (self.at(part, "30"), self.at(part, "31"));
                self.load(part, Draw::Supply, permanent, minus);
                self.load(part, Draw::Idle, permanent, minus);
                let rem = self.at(part, "rem");
                self.turn_on_out(part, [permanent, rem]);
                self.consumer(part, "30", minus);
                self.consumer(part, "15", minus);
                self.ties(part, minus, InputGround::Joined);
            }
            PartKind::Processor(it) => {
                self.load(part, Draw::Idle, plus, minus);
                let out = self.at(part, "rem-out");
                self.turn_on_out(part, [plus, out]);
                self.consumer(part, "+", minus);
                self.ties(part, minus, it.input_ground);
            }
            PartKind::LineConverter(it) => {
                if it.powered {
                    self.load(part, Draw::Idle, plus, minus);
                    let out = self.at(part, "rem-out");
                    self.turn_on_out(part, [plus, out]);
                    self.consumer(part, "+", minus);
                    self.ties(part, minus, InputGround::Joined);
                }
            }
            PartKind::Speaker(_) | PartKind::Crossover(_) | PartKind::InlineCapacitor(_) => {}
        }
    }

    /// The maker's wiring: `+` through the main fuse to the panel, from there the feeds; straps and the charge lead.
    pub(super) fn vehicle(&mut self, part: usize, it: &model::kinds::supply::Vehicle) {
        let plus = self.at(part, "+");
        let panel = Some(self.point());
        let lead = self.take(part, "lead-resistance", &it.lead_resistance, 0.002);
        for (output, from, to, name, fact, extra, closes) in [
            ("+", plus, panel, "main-fuse", &it.main_fuse, lead, Closes::Always),
            (
                "30",
                panel,
                self.at(part, "30"),
                "permanent-fuse",
                &it.permanent_fuse,
                0.0,
                Closes::Always,
            ),
            (
                "15",
                panel,
                self.at(part, "15"),
                "switched-fuse",
                &it.switched_fuse,
                values::CONTACT,
                Closes::InUse,
            ),
        ] {
            self.take(part, name, fact, 0.0);
            let ohms = extra + values::factory_fuse(fact.value());
            self.device(
                part,
                Some(output),
                [from, to],
                fact.value(),
                DeviceState::Intact,
                ohms,
                closes,
            );
        }
        let body = Some(BODY);
        let strap = self.take(part, "body-strap", &it.body_strap, 0.0008);
        let engine_strap = self.take(part, "engine-strap", &it.engine_strap, 0.0008);
        let charge = self.take(part, "charge-lead", &it.charge_lead, 0.002);
        for (a, b, ohms) in [
            (self.at(part, "-"), body, strap),
            (self.at(part, "engine"), body, engine_strap),
            (self.at(part, "B+"), plus, charge),
            (self.at(part, "31"), body, values::makers_ground()),
        ] {
            self.link(part, Kind::VehiclePath, [a, b], ohms, Closes::Always);
        }
        self.take(part, "running-load", &it.running_load, 0.0);
        self.take(part, "standing-load", &it.standing_load, 0.0);
        self.load(part, Draw::Base, panel, body);
    }
}
