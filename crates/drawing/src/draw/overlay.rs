//! What each overlay says of a run: colour, width, dashes, arrow and number.
//!
//! The ramp's ends: *current* 0 to the allowable current; *heat* 20 °C to what the insulation bears; *voltage* in two
//! stretches, because what matters are the small differences: 0 to 1 V (returns) on the lower half, the top 2 V below
//! the highest voltage (feeds) on the upper half.

use crate::display::Ink;
use crate::look::{Look, Overlay};
use crate::numbers;
use circuit::{Purpose, Study};
use model::{RunId, Sheet, TerminalRef};
use ordered::OrderedMap;
use words::{Words, say};

/// How a run is painted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Paint {
    /// In its insulation colour.
    Insulation,
    /// Stepping back.
    Dimmed,
    /// In an ink, with a width of its own or the conductor's.
    Ink {
        ink: Ink,
        width: Option<f64>,
        dash: Option<(f64, f64)>,
    },
}

/// What the overlay in force says of each run, by look-ups made once for a drawing.
pub(crate) struct Overlays<'a> {
    overlay: Overlay,
    sheet: &'a Sheet,
    study: Option<&'a Study>,
    words: &'a Words,
    highest: f64,
    /// For each run, what group it belongs to: hue and name.
    groups: OrderedMap<RunId, (u8, String)>,
}

/// Currents smaller than this are not drawn, in amps.
const NO_CURRENT: f64 = 0.0005;

/// A share of the ramp, 0 to 1.
pub(crate) fn ramp(share: f64) -> Ink {
    Ink::Ramp((share.clamp(0.0, 1.0) * 255.0) as u8)
}

impl<'a> Overlays<'a> {
    pub(crate) fn new(sheet: &'a Sheet, study: Option<&'a Study>, look: &Look, words: &'a Words) -> Self {
        let mut this = Self {
            overlay: if study.is_some() {
                look.overlay
            } else {
                Overlay::None
            },
            sheet,
            study,
            words,
            highest: 0.0,
            groups: OrderedMap::new(),
        };
        let Some(study) = study else { return this };
        let tag = |part: &model::PartId| sheet.parts.get(part).map_or("?", |part| part.tag.as_str());
        match this.overlay {
            Overlay::Voltage => {
                this.highest = study.voltages.values().map(|volts| volts.0).fold(0.0, f64::max);
            }
            Overlay::Protection => {
                for (number, device) in study.devices.iter().enumerate() {
                    let name = match &device.device.output {
                        Some(output) => format!("{} {output}", tag(&device.device.part)),
                        None => tag(&device.device.part).to_owned(),
                    };
                    for run in &device.guards {
                        this.groups
                            .entry(*run)
                            .or_insert(((number % 250) as u8, name.clone()));
                    }
                }
            }
            Overlay::Speakers => {
                for (number, load) in study.channels.iter().enumerate() {
                    let channels = match load.bridged_with {
                        Some(other) => format!("{}+{other}", load.channel),
                        None => load.channel.to_string(),
                    };
                    let ohms = load.nominal.map_or(String::new(), |ohms| {
                        format!("  {}", numbers::quantity(words, ohms))
                    });
                    let name = words.say(&say!(
                        "drawn-channel",
                        part = tag(&load.part),
                        channels = channels
                    )) + &ohms;
                    for run in &load.runs {
                        this.groups
                            .entry(*run)
                            .or_insert(((number % 250) as u8, name.clone()));
                    }
                }
            }
            Overlay::Signal => {
                for input in &study.signal.inputs {
                    let (hue, side) = match input.side {
                        Some(circuit::ChannelSide::Left) => (0, "drawn-left"),
                        Some(circuit::ChannelSide::Right) => (1, "drawn-right"),
                        Some(circuit::ChannelSide::Bass) => (2, "drawn-bass"),
                        None => (8, "drawn-no-source"),
                    };
                    for run in &input.runs {
                        this.groups.entry(*run).or_insert_with(|| (hue, words.text(side)));
                    }
                }
                for fed in study.signal.turn_on.values() {
                    for run in &fed.runs {
                        this.groups
                            .entry(*run)
                            .or_insert_with(|| (4, words.text("drawn-turn-on")));
                    }
                }
            }
            Overlay::None | Overlay::Current | Overlay::Heat => {}
        }
        this
    }

    /// What the run shares with others: its fuse, its channel, its side.
    pub(crate) fn group(&self, run: RunId) -> Option<&str> {
        self.groups.get(&run).map(|(_, name)| name.as_str())
    }

    /// Whether what the overlay says of a run is worth room off the run: of heat, whether the current warms it by more than
    /// about a hundredth of what its limit allows, which is as the square of its share.
    pub(crate) fn matters(&self, run: RunId) -> bool {
        self.overlay != Overlay::Heat || self.load_share(run).is_none_or(|share| share > 0.1)
    }

    fn load_share(&self, run: RunId) -> Option<f64> {
        let flow = self.study?.runs.get(&run)?;
        let allowable = flow.allowable?.0;
        (allowable > 0.0).then(|| flow.current.rms.0.abs() / allowable)
    }

    pub(crate) fn paint(&self, run: RunId) -> Paint {
        let Some(study) = self.study else {
            return Paint::Insulation;
        };
        let ink = |ink: Ink| Paint::Ink {
            ink,
            width: None,
            dash: None,
        };
        let flow = study.runs.get(&run);
        match self.overlay {
            Overlay::None => Paint::Insulation,
            Overlay::Current => match flow {
                Some(flow) if flow.current.rms.0.abs() > NO_CURRENT => {
                    let share = self.load_share(run);
                    Paint::Ink {
                        ink: share.map_or(Ink::Line, ramp),
                        // From a hair line to the full width of a bundle's lane at the limit.
                        width: Some(2.0 + 6.0 * share.unwrap_or(0.0).clamp(0.0, 1.0)),
                        dash: None,
                    }
                }
                _ => Paint::Dimmed,
            },
            Overlay::Heat => match flow {
                Some(flow) if flow.purpose != Purpose::Nothing || flow.current.rms.0.abs() > NO_CURRENT => {
                    let bears = self
                        .sheet
                        .runs
                        .get(&run)
                        .and_then(|run| run.wire.insulation.value())
                        .map_or(105.0, |limit| limit.0);
                    ink(ramp((flow.temperature.0 - 20.0) / (bears - 20.0).max(1.0)))
                }
                _ => Paint::Dimmed,
            },
            Overlay::Voltage => {
                let ends = self
                    .sheet
                    .runs
                    .get(&run)
                    .map(|run| run.ends().map(|end| end.terminal()));
                let volts: Vec<f64> = ends
                    .into_iter()
                    .flatten()
                    .flatten()
                    .filter_map(|terminal| self.volts(terminal))
                    .collect();
                if volts.is_empty() {
                    Paint::Dimmed
                } else {
                    let mean = volts.iter().sum::<f64>() / volts.len() as f64;
                    ink(self.voltage_ink(mean))
                }
            }
            Overlay::Protection => match (self.groups.get(&run), flow.map(|flow| flow.purpose)) {
                (Some((hue, _)), _) => ink(Ink::Hue(*hue)),
                (None, Some(Purpose::Feed | Purpose::BetweenSources)) if self.unguarded(run) => Paint::Ink {
                    ink: Ink::Stop,
                    width: None,
                    dash: Some((9.0, 5.0)),
                },
                _ => Paint::Dimmed,
            },
            Overlay::Signal | Overlay::Speakers => match self.groups.get(&run) {
                Some((hue, _)) => ink(Ink::Hue(*hue)),
                None => Paint::Dimmed,
            },
        }
    }

    fn unguarded(&self, run: RunId) -> bool {
        self.study
            .and_then(|study| study.protection.get(&run))
            .is_some_and(|protection| {
                protection
                    .from
                    .iter()
                    .any(|from| !from.protected && !from.self_limiting)
            })
    }

    /// Volts at a terminal against battery negative.
    pub(crate) fn volts(&self, terminal: &TerminalRef) -> Option<f64> {
        self.study?
            .voltages
            .get(&circuit::voltage_key(terminal))
            .map(|volts| volts.0)
            .filter(|volts| volts.is_finite())
    }

    /// The ramp's ink for a voltage.
    pub(crate) fn voltage_ink(&self, volts: f64) -> Ink {
        if volts < self.highest / 2.0 {
            ramp(volts.abs().min(1.0) * 0.4)
        } else {
            // The hot end is left for what is hot.
            ramp((0.5 + 0.3 * (volts - self.highest + 2.0) / 2.0).max(0.4))
        }
    }

    /// Whether an arrow stands on the run: along it, its ink and its size.
    pub(crate) fn arrow(&self, run: RunId) -> Option<(bool, Ink, f64)> {
        let flow = self.study?.runs.get(&run)?;
        let amps = flow.current.mean.0;
        if amps.abs() <= NO_CURRENT {
            return None;
        }
        let share = self.load_share(run);
        Some((
            amps > 0.0,
            share.map_or(Ink::Line, ramp),
            3.0 + 2.0 * share.unwrap_or(0.0).clamp(0.0, 1.0),
        ))
    }

    /// What stands on the run instead of its label: `None` for its own label, an empty text for nothing.
    pub(crate) fn label(&self, run: RunId) -> Option<String> {
        let study = self.study?;
        let words = self.words;
        let flow = study.runs.get(&run);
        match self.overlay {
            Overlay::None => None,
            Overlay::Current => Some(match flow {
                Some(flow) if flow.current.mean.0.abs() > NO_CURRENT => {
                    numbers::quantity(words, flow.current.mean.abs())
                }
                _ => String::new(),
            }),
            Overlay::Heat => Some(match flow {
                Some(flow) if flow.purpose != Purpose::Nothing => {
                    let own = words::drawn(libm::round(flow.temperature.0), words::Unit::Plain("°C"));
                    match flow.time_to_limit {
                        Some(time) => words.say(&say!(
                            "drawn-heat-limit",
                            temperature = own,
                            time = words::drawn(time.0, words::Unit::Plain("s"))
                        )),
                        None => words.figure(own),
                    }
                }
                _ => String::new(),
            }),
            Overlay::Voltage => Some(match flow {
                Some(flow) if flow.drop.0 > NO_CURRENT => format!("−{}", numbers::quantity(words, flow.drop)),
                _ => String::new(),
            }),
            Overlay::Protection => Some(match self.groups.get(&run) {
                Some((_, name)) => name.clone(),
                None if matches!(self.paint(run), Paint::Ink { .. }) => words.text("drawn-unguarded"),
                None => String::new(),
            }),
            Overlay::Signal | Overlay::Speakers => Some(
                self.groups
                    .get(&run)
                    .map_or(String::new(), |(_, name)| name.clone()),
            ),
        }
    }
}
