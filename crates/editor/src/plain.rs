//! A part or run told in plain words, for somebody who knows nothing of circuits: what it is, where its current comes from
//! and goes to, how much there is of it. Every number is the engine's.

use crate::editor::Editor;
use crate::selection::Thing;
use drawing::numbers::with_unit;
use model::conductor::{Condition, FittedBy};
use model::{End, Part, PartId, PartKind, RunId};

/// Currents below this, in amps, are not told: they are what stands still draws.
const LEAST_TOLD: f64 = 0.005;

/// What a kind of part is for.
fn purpose(kind: &PartKind) -> &'static str {
    match kind {
        PartKind::Battery(_) => "It stores energy and gives current when the engine does not run.",
        PartKind::Alternator(_) => {
            "It is driven by the engine, feeds everything while the engine runs and charges the battery."
        }
        PartKind::Vehicle(_) => {
            "It stands for the wiring that the vehicle came with: its feeds, its straps and its body metal."
        }
        PartKind::Converter(_) => {
            "It charges a battery from the vehicle's supply at the voltage that the battery needs."
        }
        PartKind::Fuse(_) => {
            "It melts and cuts the wire off when more current flows than the wire behind it can bear."
        }
        PartKind::Breaker(_) => "It opens when too much current flows, and can be closed again.",
        PartKind::Block(_) => {
            "It takes one thick wire and shares it out to several thinner ones, each with a fuse of its own where it has fuses."
        }
        PartKind::Bus(_) => "It is a piece of metal on which several wires are joined.",
        PartKind::Splice(_) => "It is a place where wires are joined to each other.",
        PartKind::Plug(_) => "It is a plug of the vehicle's own wiring, with one place for each wire.",
        PartKind::Adapter(_) => {
            "It joins new equipment to a plug of the vehicle without cutting the vehicle's wires."
        }
        PartKind::Ground(_) => {
            "It is where wires are bolted to the body of the vehicle. Current goes back to the battery through the body's metal."
        }
        PartKind::Relay(_) => "It is a switch that is worked by a small current and carries a large one.",
        PartKind::Switch(_) => "It closes and opens a circuit by hand.",
        PartKind::Isolator(_) => "It joins two batteries for charging and keeps them apart otherwise.",
        PartKind::HeadUnit(_) => {
            "It is the radio: it makes the signal, and tells the amplifiers when to turn on."
        }
        PartKind::Processor(_) => "It shares the signal out to the speakers and shapes it for each of them.",
        PartKind::LineConverter(_) => {
            "It takes the signal from speaker wires and makes it small enough for an amplifier's input."
        }
        PartKind::Amplifier(_) => {
            "It makes the small signal strong enough to move speakers, and takes more current than anything else in a sound system."
        }
        PartKind::Speaker(_) => "It turns the amplifier's current into sound.",
        PartKind::Crossover(_) => "It sends low notes to one speaker and high notes to another.",
        PartKind::InlineCapacitor(_) => "It keeps low notes away from a small speaker.",
        PartKind::Capacitor(_) => "It holds a little energy close to an amplifier for short moments.",
        PartKind::Load(_) => "It is something that uses current.",
    }
}

fn fitted(by: FittedBy) -> &'static str {
    match by {
        FittedBy::Maker => "The vehicle's maker fitted it.",
        FittedBy::Earlier => "Somebody fitted it earlier.",
        FittedBy::Us => "",
    }
}

/// `A`, `A and B`, `A, B and C`.
fn list(names: &[String]) -> String {
    match names {
        [] => String::new(),
        [only] => only.clone(),
        [front @ .., last] => format!("{} and {last}", front.join(", ")),
    }
}

/// A length: metres from one on, centimetres below.
fn long(metres: f64) -> String {
    if metres < 0.995 {
        format!("{:.0} cm", metres * 100.0)
    } else {
        format!("{metres:.1} m")
    }
}

impl Editor {
    /// A thing in plain sentences, what it is first. Nothing for what is not on the sheet.
    #[must_use]
    pub fn plain(&self, thing: &Thing) -> Vec<String> {
        match thing {
            Thing::Part(id) => self.plain_part(*id),
            Thing::Terminal(at) => self.plain_part(at.part),
            Thing::Run(id) => self.plain_run(*id),
        }
    }

    /// A part by tag and name, for somebody who has not learnt the tags: `B1 (Main battery)`.
    fn called(&self, id: PartId) -> String {
        match self.sheet().parts.get(&id) {
            Some(part) => format!("{} ({})", part.tag, part.name()),
            None => self.tag(id),
        }
    }

    fn plain_part(&self, id: PartId) -> Vec<String> {
        let Some(part) = self.sheet().parts.get(&id) else {
            return Vec::new();
        };
        let mut told = vec![purpose(&part.is).to_owned()];
        told.extend(self.supply(id));
        told.extend(self.taken(id, part));
        told.extend(self.guarding(id));
        told.extend(self.sound(id));
        told.extend(Some(fitted(part.fitted_by).to_owned()).filter(|words| !words.is_empty()));
        told
    }

    /// Where its current comes from and how it gets back.
    fn supply(&self, id: PartId) -> Vec<String> {
        let Some(circuit) = self.analysis().study.circuits.get(&id) else {
            return Vec::new();
        };
        let mut told = Vec::new();
        // The alternator feeds by way of the battery: naming the battery is enough.
        let by_way_of_another =
            |parts: &[PartId]| circuit.feeds.iter().any(|other| parts.contains(&other.source));
        for feed in circuit
            .feeds
            .iter()
            .filter(|feed| !by_way_of_another(&feed.parts))
        {
            let through: Vec<String> = feed.parts.iter().map(|part| self.tag(*part)).collect();
            let through = if through.is_empty() {
                String::new()
            } else {
                format!(" through {}", list(&through))
            };
            told.push(format!(
                "It gets current from {}{through}, over {} of wire.",
                self.called(feed.source),
                long(feed.length.0)
            ));
        }
        if circuit.feeds.is_empty() {
            told.push("Nothing feeds it.".to_owned());
        }
        // Ways back that are told alike are told once, with all their sources.
        let mut ways: Vec<(String, String, Vec<String>)> = Vec::new();
        for back in &circuit.returns {
            let points: Vec<String> = back.ground_points.iter().map(|point| self.tag(*point)).collect();
            let (front, rear) = if !back.complete {
                (
                    "Its current does not get back to",
                    ", so none flows from there".to_owned(),
                )
            } else if back.through_body && points.is_empty() {
                (
                    "The current goes back to",
                    " through the vehicle's body".to_owned(),
                )
            } else if back.through_body {
                (
                    "The current goes back to",
                    format!(" by {} through the vehicle's body", list(&points)),
                )
            } else {
                ("The current goes back to", " by wire alone".to_owned())
            };
            let source = self.called(back.source);
            match ways.iter_mut().find(|way| way.0 == front && way.1 == rear) {
                Some(way) => way.2.push(source),
                None => ways.push((front.to_owned(), rear, vec![source])),
            }
        }
        told.extend(
            ways.iter()
                .map(|(front, rear, sources)| format!("{front} {}{rear}.", list(sources))),
        );
        told
    }

    /// What flows through it.
    fn taken(&self, id: PartId, part: &Part) -> Vec<String> {
        let Some(flow) = self.analysis().study.parts.get(&id) else {
            return Vec::new();
        };
        if let Some(why) = self.why_off(id) {
            return vec![format!("It is {why}.")];
        }
        let conditions = &self.job().settings.conditions;
        let (mean, burst) = (flow.current.mean.0, flow.current.burst.0);
        let when = format!("{}, {}", conditions.state.title(), conditions.duty.title());
        if mean.abs().max(burst.abs()) < LEAST_TOLD {
            return Vec::new();
        }
        let verb = match &part.is {
            PartKind::Battery(_) | PartKind::Alternator(_) if mean < 0.0 => "it is charged with",
            PartKind::Battery(_) | PartKind::Alternator(_) => "it gives",
            PartKind::Amplifier(_) | PartKind::HeadUnit(_) | PartKind::Processor(_) | PartKind::Load(_) => {
                "it takes"
            }
            _ => "it carries",
        };
        let more = if burst.abs() > mean.abs() * 1.05 && burst * mean > 0.0 {
            format!(", for moments {}", with_unit(burst.abs(), "A"))
        } else {
            String::new()
        };
        let mut told = vec![format!(
            "With the vehicle {when}, {verb} {}{more}.",
            with_unit(mean.abs(), "A")
        )];
        let drop = self
            .analysis()
            .study
            .circuits
            .get(&id)
            .and_then(|circuit| circuit.drop);
        if let (Some(drop), Some(volts)) = (drop, flow.burst_voltage.or(flow.voltage)) {
            told.push(format!(
                "{} are lost on the way there and back, so that {} arrive.",
                with_unit(drop.0, "V"),
                with_unit(volts.0, "V")
            ));
        }
        told
    }

    /// What a fuse or breaker guards.
    fn guarding(&self, id: PartId) -> Vec<String> {
        let study = &self.analysis().study;
        let mut told = Vec::new();
        for device in study.devices.iter().filter(|device| device.device.part == id) {
            let name = device
                .device
                .output
                .as_ref()
                .map_or("It".to_owned(), |output| format!("Output {output}"));
            let runs: Vec<String> = device
                .guards
                .iter()
                .filter_map(|run| self.sheet().runs.get(run))
                .map(|run| run.tag.clone())
                .collect();
            if !device.works {
                told.push(format!("{name} does not do its work as it is now."));
            } else if let Some(rating) = device.rating {
                let guards = if runs.is_empty() {
                    "guards no wire".to_owned()
                } else {
                    format!("guards {}", list(&runs))
                };
                told.push(format!(
                    "{name} is made for {} and {guards}.",
                    with_unit(rating.0, "A")
                ));
            }
        }
        told
    }

    /// What its channels drive, or what reaches it.
    fn sound(&self, id: PartId) -> Vec<String> {
        let study = &self.analysis().study;
        let mut told = Vec::new();
        for load in study
            .channels
            .iter()
            .filter(|load| load.part == id && !load.drivers.is_empty())
        {
            let drivers: Vec<String> = load.drivers.iter().map(|driver| self.tag(*driver)).collect();
            let (channels, play) = match load.bridged_with {
                Some(other) => (format!("Channels {} and {other} together", load.channel), "play"),
                None => (format!("Channel {}", load.channel), "plays"),
            };
            let ohms = load
                .nominal
                .map_or(String::new(), |ohms| format!(", {}", with_unit(ohms.0, "Ω")));
            let power = load.power.map_or(String::new(), |watts| {
                format!(", and can give {}", with_unit(watts.0, "W"))
            });
            told.push(format!("{channels} {play} {}{ohms}{power}.", list(&drivers)));
        }
        if let Some(driver) = study.drivers.get(&id) {
            told.push(match (&driver.gap, driver.channel) {
                (Some(gap), _) => format!("It is silent: {}.", gap.what),
                (None, Some((part, channel))) => {
                    let turned = if driver.in_phase == Some(false) {
                        " It is joined the wrong way round and pushes when it should pull."
                    } else {
                        ""
                    };
                    format!(
                        "It plays what channel {channel} of {} gives, up to {}.{turned}",
                        self.called(part),
                        with_unit(driver.power.0, "W")
                    )
                }
                (None, None) => "Nothing plays on it.".to_owned(),
            });
        }
        told
    }

    fn plain_run(&self, id: RunId) -> Vec<String> {
        let Some(run) = self.sheet().runs.get(&id) else {
            return Vec::new();
        };
        let study = &self.analysis().study;
        let wire = &run.wire;
        let end = |end: &End| match end {
            End::On(at) => self.called(at.part),
            End::Loose(_) => "nothing: that end is loose".to_owned(),
        };
        let size = wire
            .size
            .value()
            .map_or("unknown size".to_owned(), |size| with_unit(size.area().0, "mm²"));
        let length = wire
            .length
            .value()
            .map_or("unknown length".to_owned(), |metres| long(metres.0));
        let mut colour = wire.jacket.base.title().to_owned();
        if let Some(tracer) = wire.jacket.tracer {
            colour.push_str(&format!(" with a {} line", tracer.title()));
        }
        let mut told = vec![format!(
            "A wire of {size}, {colour}, {length}, from {} to {}.",
            end(&run.from),
            end(&run.to)
        )];
        if let Some(flow) = study.runs.get(&id) {
            let amps = flow.current.rms.0.abs();
            if amps < LEAST_TOLD {
                told.push("No current to speak of flows in it.".to_owned());
            } else {
                let most = flow.allowable.map_or(String::new(), |most| {
                    format!(" of the {} that it may carry", with_unit(most.0, "A"))
                });
                told.push(format!(
                    "It carries {}{most}, and is {:.0} °C warm where {:.0} °C are around it.",
                    with_unit(amps, "A"),
                    flow.temperature.0,
                    flow.ambient.0
                ));
            }
        }
        for from in study
            .protection
            .get(&id)
            .iter()
            .flat_map(|protection| &protection.from)
        {
            let source = self.called(from.source);
            let guards: Vec<String> = from.guards.iter().map(|guard| self.device(guard)).collect();
            told.push(if from.protected && !guards.is_empty() {
                format!("{} cuts it off from {source} if it is shorted.", list(&guards))
            } else if from.self_limiting {
                format!("{source} cannot give more than it bears.")
            } else {
                format!("Nothing cuts it off from {source} if it is shorted.")
            });
        }
        match wire.condition.value() {
            Some(Condition::Sound) | None => {}
            Some(bad) => told.push(format!("Its condition: {}.", bad.title())),
        }
        told.extend(Some(fitted(run.fitted_by).to_owned()).filter(|words| !words.is_empty()));
        told
    }
}
