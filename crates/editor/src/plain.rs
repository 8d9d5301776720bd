//! A part or run told in plain words, for somebody who knows nothing of circuits: what it is, where its current comes from
//! and goes to, how much there is of it. Every number is the engine's.

use crate::editor::Editor;
use crate::selection::Thing;
use model::conductor::{Condition, FittedBy};
use model::{End, Part, PartId, PartKind, RunId};
use words::{Figure, Lengths, Saying, Unit, Words, drawn, figure, precise, say};

/// Currents below this, in amps, are not told: they are what stands still draws.
const LEAST_TOLD: f64 = 0.005;

/// What a kind of part is for.
fn purpose(kind: &PartKind) -> Saying {
    Saying::new(format!("purpose-{}", kind.word()))
}

fn fitted(by: FittedBy) -> Option<Saying> {
    match by {
        FittedBy::Maker => Some(say!("plain-fitted-maker")),
        FittedBy::Earlier => Some(say!("plain-fitted-earlier")),
        FittedBy::Us => None,
    }
}

/// A length: metres from one on, centimetres below; feet and inches for who reads them.
fn long(metres: f64, words: &Words) -> Saying {
    let metric = words.reader().lengths == Lengths::Metres;
    if metric && metres < 0.995 {
        say!(
            "as-it-stands",
            text = precise(metres * 100.0, Unit::Plain("cm"), 0)
        )
    } else if metric {
        say!("as-it-stands", text = precise(metres, Unit::Metre, 1))
    } else {
        say!("as-it-stands", text = figure(metres, Unit::Metre))
    }
}

fn with_unit(number: f64, unit: &'static str) -> Figure {
    drawn(number, Unit::of(unit))
}

/// How a current gets back.
#[derive(PartialEq)]
enum Way {
    /// Not at all.
    None,
    /// Through the body of the vehicle, by these ground points.
    Body(Vec<String>),
    /// By wire alone.
    Wire,
}

impl Editor {
    /// A thing in plain sentences, what it is first. Nothing for what is not on the sheet.
    #[must_use]
    pub fn plain(&self, thing: &Thing) -> Vec<String> {
        let told = match thing {
            Thing::Part(id) => self.plain_part(*id),
            Thing::Terminal(at) => self.plain_part(at.part),
            Thing::Run(id) => self.plain_run(*id),
        };
        told.iter().map(|said| self.words.say(said)).collect()
    }

    /// A part by tag and name, for somebody who has not learnt the tags: `B1 (Main battery)`.
    fn called(&self, id: PartId) -> Saying {
        match self.sheet().parts.get(&id) {
            Some(part) => say!("plain-called", tag = &part.tag, name = part.said()),
            None => self.tag(id).into(),
        }
    }

    fn plain_part(&self, id: PartId) -> Vec<Saying> {
        let Some(part) = self.sheet().parts.get(&id) else {
            return Vec::new();
        };
        let mut told = vec![purpose(&part.is)];
        told.extend(self.supply(id));
        told.extend(self.taken(id, part));
        told.extend(self.guarding(id));
        told.extend(self.sound(id));
        told.extend(fitted(part.fitted_by));
        told
    }

    /// Where its current comes from and how it gets back.
    fn supply(&self, id: PartId) -> Vec<Saying> {
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
            let (source, length) = (self.called(feed.source), long(feed.length.0, &self.words));
            told.push(if through.is_empty() {
                say!("plain-fed", source = source, length = length)
            } else {
                say!(
                    "plain-fed-through",
                    source = source,
                    through = through,
                    length = length
                )
            });
        }
        if circuit.feeds.is_empty() {
            told.push(say!("plain-not-fed"));
        }
        // Ways back that are told alike are told once, with all their sources.
        let mut ways: Vec<(Way, Vec<Saying>)> = Vec::new();
        for back in &circuit.returns {
            let points: Vec<String> = back.ground_points.iter().map(|point| self.tag(*point)).collect();
            let way = if !back.complete {
                Way::None
            } else if back.through_body {
                Way::Body(points)
            } else {
                Way::Wire
            };
            let source = self.called(back.source);
            match ways.iter_mut().find(|(known, _)| *known == way) {
                Some((_, sources)) => sources.push(source),
                None => ways.push((way, vec![source])),
            }
        }
        told.extend(ways.into_iter().map(|(way, sources)| match way {
            Way::None => say!("plain-back-none", sources = sources),
            Way::Body(points) if points.is_empty() => say!("plain-back-body", sources = sources),
            Way::Body(points) => say!("plain-back-by", points = points, sources = sources),
            Way::Wire => say!("plain-back-wire", sources = sources),
        }));
        told
    }

    /// What flows through it.
    fn taken(&self, id: PartId, part: &Part) -> Vec<Saying> {
        let Some(flow) = self.analysis().study.parts.get(&id) else {
            return Vec::new();
        };
        if let Some(why) = self.why_off(id) {
            return vec![say!("plain-is", why = why)];
        }
        let conditions = &self.job().settings.conditions;
        let (mean, burst) = (flow.current.mean.0, flow.current.burst.0);
        if mean.abs().max(burst.abs()) < LEAST_TOLD {
            return Vec::new();
        }
        let verb = match &part.is {
            PartKind::Battery(_) | PartKind::Alternator(_) if mean < 0.0 => "charged",
            PartKind::Battery(_) | PartKind::Alternator(_) => "gives",
            PartKind::Amplifier(_) | PartKind::HeadUnit(_) | PartKind::Processor(_) | PartKind::Load(_) => {
                "takes"
            }
            _ => "carries",
        };
        let amps = with_unit(mean.abs(), "A");
        let more = if burst.abs() > mean.abs() * 1.05 && burst * mean > 0.0 {
            say!("plain-moments", amps = amps, burst = with_unit(burst.abs(), "A"))
        } else {
            say!("as-it-stands", text = amps)
        };
        let mut told = vec![say!(
            "plain-current",
            state = conditions.state.said(),
            duty = conditions.duty.said(),
            verb = verb,
            amps = more
        )];
        let drop = self
            .analysis()
            .study
            .circuits
            .get(&id)
            .and_then(|circuit| circuit.drop);
        if let (Some(drop), Some(volts)) = (drop, flow.burst_voltage.or(flow.voltage)) {
            told.push(say!(
                "plain-lost",
                drop = with_unit(drop.0, "V"),
                volts = with_unit(volts.0, "V")
            ));
        }
        told
    }

    /// What a fuse or breaker guards.
    fn guarding(&self, id: PartId) -> Vec<Saying> {
        let study = &self.analysis().study;
        let mut told = Vec::new();
        for device in study.devices.iter().filter(|device| device.device.part == id) {
            let name = device.device.output.as_ref().map_or(say!("plain-it"), |output| {
                say!("plain-output", output = output.to_string())
            });
            let runs: Vec<String> = device
                .guards
                .iter()
                .filter_map(|run| self.sheet().runs.get(run))
                .map(|run| run.tag.clone())
                .collect();
            if !device.works {
                told.push(say!("plain-idle", name = name));
            } else if let Some(rating) = device.rating {
                let amps = with_unit(rating.0, "A");
                told.push(if runs.is_empty() {
                    say!("plain-guards-none", name = name, amps = amps)
                } else {
                    say!("plain-guards", name = name, amps = amps, runs = runs)
                });
            }
        }
        told
    }

    /// What its channels drive, or what reaches it.
    fn sound(&self, id: PartId) -> Vec<Saying> {
        let study = &self.analysis().study;
        let mut told = Vec::new();
        for load in study
            .channels
            .iter()
            .filter(|load| load.part == id && !load.drivers.is_empty())
        {
            let drivers: Vec<String> = load.drivers.iter().map(|driver| self.tag(*driver)).collect();
            let channels = match load.bridged_with {
                Some(other) => say!(
                    "plain-channels",
                    one = load.channel.to_string(),
                    other = other.to_string(),
                    drivers = drivers
                ),
                None => say!("plain-channel", one = load.channel.to_string(), drivers = drivers),
            };
            let ohms = load.nominal.map(|ohms| with_unit(ohms.0, "Ω"));
            let watts = load.power.map(|watts| with_unit(watts.0, "W"));
            told.push(match (ohms, watts) {
                (None, None) => say!("plain-plays", channels = channels),
                (Some(ohms), None) => say!("plain-plays-into", channels = channels, ohms = ohms),
                (None, Some(watts)) => say!("plain-plays-with", channels = channels, watts = watts),
                (Some(ohms), Some(watts)) => {
                    say!(
                        "plain-plays-into-with",
                        channels = channels,
                        ohms = ohms,
                        watts = watts
                    )
                }
            });
        }
        if let Some(driver) = study.drivers.get(&id) {
            told.push(match (&driver.gap, driver.channel) {
                (Some(gap), _) => say!("plain-silent", why = &gap.what),
                (None, Some((part, channel))) => {
                    let gets = say!(
                        "plain-gets",
                        channel = channel.to_string(),
                        part = self.called(part),
                        power = with_unit(driver.power.0, "W")
                    );
                    if driver.in_phase == Some(false) {
                        say!("plain-gets-turned", gets = gets)
                    } else {
                        gets
                    }
                }
                (None, None) => say!("plain-unplayed"),
            });
        }
        told
    }

    fn plain_run(&self, id: RunId) -> Vec<Saying> {
        let Some(run) = self.sheet().runs.get(&id) else {
            return Vec::new();
        };
        let study = &self.analysis().study;
        let wire = &run.wire;
        let end = |end: &End| match end {
            End::On(at) => self.called(at.part),
            End::Loose(_) => say!("plain-loose"),
        };
        let size = wire.size.value().map_or(say!("plain-size-unknown"), |size| {
            say!(
                "as-it-stands",
                text = drawn(size.area().0, Unit::SquareMillimetre)
            )
        });
        let length = wire
            .length
            .value()
            .map_or(say!("plain-length-unknown"), |metres| long(metres.0, &self.words));
        let base = wire
            .jacket
            .base
            .map_or(say!("plain-colour-unknown"), |it| it.said());
        let colour = match wire.jacket.tracer {
            Some(tracer) => say!("plain-traced", base = base, tracer = tracer.said()),
            None => base,
        };
        let mut told = vec![say!(
            "plain-wire",
            size = size,
            colour = colour,
            length = length,
            from = end(&run.from),
            to = end(&run.to)
        )];
        if let Some(flow) = study.runs.get(&id) {
            let amps = flow.current.rms.0.abs();
            if amps < LEAST_TOLD {
                told.push(say!("plain-no-current"));
            } else {
                let degrees = |celsius: f64| precise(celsius, Unit::Plain("°C"), 0);
                let (own, around) = (degrees(flow.temperature.0), degrees(flow.ambient.0));
                let amps = with_unit(amps, "A");
                told.push(match flow.allowable {
                    Some(most) => say!(
                        "plain-carries-of",
                        amps = amps,
                        most = with_unit(most.0, "A"),
                        own = own,
                        around = around
                    ),
                    None => say!("plain-carries", amps = amps, own = own, around = around),
                });
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
                say!("plain-cut-off", guards = guards, source = source)
            } else if from.self_limiting {
                say!("plain-limits", source = source)
            } else {
                say!("plain-uncut", source = source)
            });
        }
        match wire.condition.value() {
            Some(Condition::Sound) | None => {}
            Some(bad) => told.push(say!("plain-condition", condition = bad.said())),
        }
        told.extend(fitted(run.fitted_by));
        told
    }
}
