//! Builds the network of a sheet: joins terminals that are one point, then adds branches, part by part and run by run.

use super::values;
use super::*;
use body::{Metal, MetalPoint};
use model::conductor::Condition;
use model::kinds::sound::InputGround;
use model::kinds::supply::{DeviceState, IsolatorKind};
use model::quantity::{Ohms, Quantity};
use model::{End, Fact, PartKind, Run, Sheet};
use ordered::Sort as _;
use words::say;

/// Collects while ids of points are still provisional: 0 is the body, then the terminals, then points inside parts.
struct Builder {
    net: Network,
    parent: Vec<usize>,
    wired: Vec<bool>,
    /// Shield point of each terminal that has one.
    shield: Vec<Option<usize>>,
    /// Points of the body at which ground points with a place are, beside that of the strap.
    metal: Vec<usize>,
    /// Properties taken for granted; brought into order once.
    assumed: Vec<(Option<PartId>, Option<RunId>, &'static str)>,
    /// Whether mated cavities are branches and not one point.
    apart: bool,
}

impl Network {
    /// The network of a sheet. Defined for every sheet: what does not resolve becomes a loose end and a note.
    #[must_use]
    pub fn build(sheet: &Sheet) -> Self {
        Self::build_on(sheet, &Metal::default())
    }

    /// The same on a body of which it is known what metal lies between the ground points.
    #[must_use]
    pub fn build_on(sheet: &Sheet, metal: &Metal) -> Self {
        Self::build_with(sheet, metal, false)
    }

    /// The same, in which the cavities of plugs and adapters are branches of their own, so that one can be thought open.
    #[must_use]
    pub(crate) fn build_apart(sheet: &Sheet, metal: &Metal) -> Self {
        Self::build_with(sheet, metal, true)
    }

    fn build_with(sheet: &Sheet, metal: &Metal, apart: bool) -> Self {
        let mut net = Self {
            parts: sheet.parts.keys().copied().collect(),
            ..Self::default()
        };
        for (index, part) in sheet.parts.values().enumerate() {
            net.first_terminal.push(net.terminals.len());
            for terminal in part.terminals() {
                net.terminals.push(NetworkTerminal {
                    part: index,
                    name: terminal.name,
                    role: terminal.role,
                    node: net.terminals.len() + 1,
                });
            }
        }
        net.first_terminal.push(net.terminals.len());
        let terminals = net.terminals.len();
        let mut builder = Builder {
            net,
            parent: (0..=terminals).collect(),
            wired: vec![false; terminals],
            shield: vec![None; terminals],
            metal: Vec::new(),
            assumed: Vec::new(),
            apart,
        };
        builder.metal_points(metal);
        builder.runs(sheet);
        for (index, part) in sheet.parts.values().enumerate() {
            let from = builder.assumed.len();
            builder.part(index, &part.is, metal);
            // In order part by part, so that the whole is.
            if let Some(own) = builder.assumed.get_mut(from..) {
                own.order();
            }
        }
        builder.body_metal(sheet, metal);
        builder.alternator_cases(sheet);
        builder.finish()
    }
}

impl Builder {
    fn point(&mut self) -> usize {
        self.parent.push(self.parent.len());
        self.parent.len() - 1
    }

    fn find(&mut self, mut at: usize) -> usize {
        while self.parent[at] != at {
            self.parent[at] = self.parent[self.parent[at]];
            at = self.parent[at];
        }
        at
    }

    fn join(&mut self, a: usize, b: usize) {
        let (a, b) = (self.find(a), self.find(b));
        self.parent[a.max(b)] = a.min(b);
    }

    fn at(&self, part: usize, name: &str) -> Option<usize> {
        self.net.node_by_name(part, name)
    }

    /// The value of a property of a part, with a note where it was taken for granted.
    fn take<Q: Quantity>(&mut self, part: usize, name: &'static str, fact: &Fact<Q>, stand_in: f64) -> f64 {
        if !fact.is_settled() {
            let id = self.net.parts.get(part).copied();
            self.assumed.push((id, None, name));
        }
        fact.value().map_or(stand_in, Quantity::number)
    }

    fn branch(&mut self, branch: Branch) -> usize {
        self.net.branches.push(Branch {
            resistance: branch.resistance.max(LEAST_RESISTANCE),
            ..branch
        });
        self.net.branches.len() - 1
    }

    /// A branch of a part between two points that exist.
    fn link(
        &mut self,
        part: usize,
        kind: Kind,
        nodes: [Option<usize>; 2],
        resistance: f64,
        closes: Closes,
    ) -> Option<usize> {
        let [Some(a), Some(b)] = nodes else { return None };
        let carries = !matches!(
            kind,
            Kind::Load(_) | Kind::Battery | Kind::Alternator | Kind::ConverterOut | Kind::TurnOnOut
        );
        Some(self.branch(Branch {
            kind,
            nodes: [a, b],
            part,
            resistance,
            closes,
            carries,
        }))
    }

    fn load(&mut self, part: usize, draw: Draw, plus: Option<usize>, minus: Option<usize>) -> Option<usize> {
        self.link(
            part,
            Kind::Load(draw),
            [plus, minus],
            LEAST_RESISTANCE,
            Closes::Always,
        )
    }

    fn consumer(&mut self, part: usize, terminal: &str, minus: Option<usize>) {
        if let (Some(plus), Some(minus)) = (self.at(part, terminal), minus) {
            self.net.consumers.push(Consumer {
                part,
                terminal: terminal.into(),
                plus,
                minus,
            });
        }
    }

    fn source(
        &mut self,
        part: usize,
        kind: Kind,
        plus: Option<usize>,
        minus: Option<usize>,
        resistance: f64,
        closes: Closes,
    ) {
        if let (Some(plus_node), Some(minus_node)) = (plus, minus)
            && let Some(branch) = self.link(part, kind, [plus, minus], resistance, closes)
        {
            self.net.sources.push(NetworkSource {
                part,
                plus: plus_node,
                minus: minus_node,
                branch,
            });
        }
    }

    /// One overcurrent device between two points. A blown or missing one does not conduct, yet it is traced: it is
    /// what guards what stands behind it as soon as somebody puts a new one in.
    #[allow(clippy::too_many_arguments)]
    fn device(
        &mut self,
        part: usize,
        output: Option<&str>,
        nodes: [Option<usize>; 2],
        rating: Option<Amps>,
        state: DeviceState,
        resistance: f64,
        mut closes: Closes,
    ) {
        let Some(&id) = self.net.parts.get(part) else {
            return;
        };
        let device = self.net.devices.len();
        let mut resistance = resistance;
        match state {
            DeviceState::Intact => {}
            DeviceState::Open | DeviceState::Missing => closes = Closes::Never,
            DeviceState::Bridged => resistance = values::BRIDGE,
        }
        if let Some(branch) = self.link(part, Kind::Device { device }, nodes, resistance, closes) {
            self.net.devices.push(NetworkDevice {
                name: DeviceRef {
                    part: id,
                    output: output.map(TerminalName::from),
                },
                rating,
                works: state == DeviceState::Intact,
                branch,
            });
        }
    }

    fn runs(&mut self, sheet: &Sheet) {
        for (&id, run) in &sheet.runs {
            let index = self.net.runs.len();
            let mut terminals = [None; 2];
            for (at, end) in run.ends().into_iter().enumerate() {
                if let End::On(to) = end {
                    terminals[at] = self.net.terminal_index(to);
                    match terminals[at] {
                        Some(terminal) => self.wired[terminal] = true,
                        None => self.net.notes.push(say!(
                            "note-no-terminal",
                            run = &run.tag,
                            terminal = sheet.written(to),
                        )),
                    }
                }
            }
            let is_line = |t: Option<usize>| t.is_some_and(|t| self.net.terminals[t].role.is_line());
            let line = is_line(terminals[0]) && is_line(terminals[1]);
            let nodes = terminals.map(|t| match t {
                Some(t) => self.net.terminals[t].node,
                None => {
                    self.parent.push(self.parent.len());
                    self.parent.len() - 1
                }
            });
            let whole = run.wire.condition.value() != Some(Condition::Cut);
            self.assume_run(id, run, line);
            let resistance = values::wire_at_20(&run.wire);
            let endings = [values::ending(sheet, run, 0), values::ending(sheet, run, 1)];
            let closes = if whole { Closes::Always } else { Closes::Never };
            let (kind, branch_nodes, ohms) = if line {
                let shields = terminals.map(|t| match t {
                    Some(t) => self.shield_of(t),
                    None => BODY,
                });
                (Kind::Shield { run: index }, shields, values::shield(run))
            } else {
                (
                    Kind::Wire { run: index },
                    nodes,
                    resistance + endings[0] + endings[1],
                )
            };
            let branch = self.branch(Branch {
                kind,
                nodes: branch_nodes,
                part: 0,
                resistance: ohms,
                closes,
                carries: whole,
            });
            if line {
                for terminal in terminals.into_iter().flatten() {
                    let part = self.net.terminals[terminal].part;
                    self.net.line_runs.entry(part).or_default().push(index);
                }
            }
            self.net.runs.push(NetworkRun {
                id,
                nodes,
                terminals,
                branch,
                length: values::length(&run.wire),
                length_known: !run.wire.length.is_unknown(),
                line,
                whole,
            });
        }
    }

    fn shield_of(&mut self, terminal: usize) -> usize {
        if let Some(point) = self.shield[terminal] {
            return point;
        }
        let point = self.point();
        self.shield[terminal] = Some(point);
        point
    }

    fn assume_run(&mut self, id: RunId, run: &Run, line: bool) {
        let wire = &run.wire;
        let mut note = |given: bool, name: &'static str| {
            if !given {
                self.assumed.push((None, Some(id), name));
            }
        };
        // In the order of their names, so that nothing has to be sorted.
        let sized = wire.stated_resistance.is_given();
        let from = &run.from_ending;
        note(line || wire.bundle.is_settled(), "bundle");
        note(
            line || from.method.is_given() || from.resistance.is_given(),
            "from-ending",
        );
        note(line || wire.insulation.is_given(), "insulation");
        note(wire.length.is_settled(), "length");
        note(sized || wire.material.is_given(), "material");
        note(sized || wire.size.is_given(), "size");
        note(line || wire.surroundings.is_settled(), "surroundings");
        let to = &run.to_ending;
        note(
            line || to.method.is_given() || to.resistance.is_given(),
            "to-ending",
        );
    }

    /// Ties the shields of a part's line jacks to its supply negative.
    fn ties(&mut self, part: usize, minus: Option<usize>, inputs: InputGround) {
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

    fn join_all(&mut self, part: usize, which: impl Fn(&str) -> bool) {
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
    fn join_names(&mut self, part: usize, a: &str, b: &str) {
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

    fn part(&mut self, part: usize, kind: &PartKind, metal: &Metal) {
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
                self.take(part, "rating", &it.rating, 0.0);
                let ohms = values::fuse(it.form, it.rating.value());
                let nodes = [self.at(part, "in"), self.at(part, "out")];
                self.device(
                    part,
                    None,
                    nodes,
                    it.rating.value(),
                    it.state,
                    ohms,
                    Closes::Always,
                );
            }
            PartKind::Breaker(it) => {
                self.take(part, "rating", &it.rating, 0.0);
                let ohms = values::breaker(it.rating.value());
                let nodes = [self.at(part, "in"), self.at(part, "out")];
                self.device(
                    part,
                    None,
                    nodes,
                    it.rating.value(),
                    it.state,
                    ohms,
                    Closes::Always,
                );
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
                self.link(
                    part,
                    Kind::TurnOnOut,
                    [permanent, rem],
                    values::TURN_ON_OUT,
                    Closes::TurnedOn,
                );
                self.consumer(part, "30", minus);
                self.consumer(part, "15", minus);
                self.ties(part, minus, InputGround::Joined);
            }
            PartKind::Processor(it) => {
                self.load(part, Draw::Idle, plus, minus);
                let out = self.at(part, "rem-out");
                self.link(
                    part,
                    Kind::TurnOnOut,
                    [plus, out],
                    values::TURN_ON_OUT,
                    Closes::TurnedOn,
                );
                self.consumer(part, "+", minus);
                self.ties(part, minus, it.input_ground);
            }
            PartKind::LineConverter(it) => {
                if it.powered {
                    self.load(part, Draw::Idle, plus, minus);
                    let out = self.at(part, "rem-out");
                    self.link(
                        part,
                        Kind::TurnOnOut,
                        [plus, out],
                        values::TURN_ON_OUT,
                        Closes::TurnedOn,
                    );
                    self.consumer(part, "+", minus);
                    self.ties(part, minus, InputGround::Joined);
                }
            }
            PartKind::Speaker(_) | PartKind::Crossover(_) | PartKind::InlineCapacitor(_) => {}
        }
    }

    /// The maker's wiring: `+` through the main fuse to the panel, from there the feeds; straps and the charge lead.
    fn vehicle(&mut self, part: usize, it: &model::kinds::supply::Vehicle) {
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

    /// The points of the spots of the body at which ground points are. A spot that lies where the one before it does is
    /// the same point.
    fn metal_points(&mut self, metal: &Metal) {
        for it in &metal.points {
            let point = if it.ohms.0 < LEAST_RESISTANCE {
                self.metal_toward(it)
            } else {
                self.point()
            };
            self.metal.push(point);
        }
    }

    /// The point towards the battery strap.
    fn metal_toward(&self, it: &MetalPoint) -> usize {
        let toward = it.toward.and_then(|toward| self.metal.get(toward).copied());
        toward.unwrap_or(BODY)
    }

    /// The metal between those points. Each branch counts as one of the first ground point there.
    fn body_metal(&mut self, sheet: &Sheet, metal: &Metal) {
        for (spot, it) in metal.points.iter().enumerate() {
            let ends = [
                self.metal.get(spot).copied().unwrap_or(BODY),
                self.metal_toward(it),
            ];
            let first = it.grounds.first();
            let part = first.and_then(|first| sheet.parts.keys().position(|id| id == first));
            if let Some(part) = part
                && ends[0] != ends[1]
            {
                self.link(part, Kind::Metal, ends.map(Some), it.ohms.0, Closes::Always);
            }
        }
    }

    /// An alternator is bolted to the engine: where nothing is on its case, the case is the engine block of the
    /// vehicle, or the body when the sheet has no vehicle.
    fn alternator_cases(&mut self, sheet: &Sheet) {
        let engine = sheet
            .parts
            .values()
            .position(|part| matches!(part.is, PartKind::Vehicle(_)))
            .and_then(|vehicle| self.at(vehicle, "engine"))
            .unwrap_or(BODY);
        for (part, it) in sheet.parts.values().enumerate() {
            if matches!(it.is, PartKind::Alternator(_))
                && let Some(case) = self.at(part, "case")
                && self.wired.get(case - 1) == Some(&false)
            {
                self.join(case, engine);
            }
        }
    }

    /// Numbers the nodes and turns provisional points into them.
    fn finish(mut self) -> Network {
        let mut node = vec![usize::MAX; self.parent.len()];
        let mut count = 0;
        for point in 0..self.parent.len() {
            let root = self.find(point);
            if root == point {
                node[point] = count;
                count += 1;
            } else {
                // Roots have the lowest index of their group, so they were numbered before.
                node[point] = node[root];
            }
        }
        let mut net = self.net;
        net.nodes = count;
        net.assumed = self.assumed.into_iter().collect();
        for terminal in &mut net.terminals {
            terminal.node = node[terminal.node];
        }
        for run in &mut net.runs {
            run.nodes = run.nodes.map(|n| node[n]);
        }
        for branch in &mut net.branches {
            branch.nodes = branch.nodes.map(|n| node[n]);
            if let Closes::Sensing { minus, .. } = &mut branch.closes {
                *minus = node[*minus];
            }
        }
        for source in &mut net.sources {
            (source.plus, source.minus) = (node[source.plus], node[source.minus]);
        }
        for consumer in &mut net.consumers {
            (consumer.plus, consumer.minus) = (node[consumer.plus], node[consumer.minus]);
        }
        super::master::leave_on(&mut net);
        net
    }
}
