//! The meter: a red and a black lead, or a clamp around a run. The black lead stays on battery negative until it is
//! moved. It shows what a real meter would read in the state and duty in force.

use super::Tool;
use crate::editor::Editor;
use crate::input::Input;
use crate::selection::Thing;
use circuit::{Probe, voltage_key};
use model::edits::keep_reading;
use model::quantity::Volts;
use model::readings::Measured;
use model::{PartKind, RunId, TerminalRef};
use std::sync::Arc;
use words::{Saying, Unit, Words, drawn, precise, say};

/// What is measured.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Mode {
    /// Volts between the leads.
    #[default]
    Volts,
    /// Amps in a run, by clamp.
    Amps,
    /// Volts of alternating current between the leads, under a test tone.
    Tone,
    /// Ohms between the leads, supply isolated.
    Ohms,
}

impl Mode {
    /// As files hold it.
    fn measured(self) -> Measured {
        match self {
            Self::Volts => Measured::Volts,
            Self::Amps => Measured::Amps,
            Self::Tone => Measured::VoltsAc,
            Self::Ohms => Measured::Ohms,
        }
    }
}

/// The meter in hand.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Meter {
    /// What is measured.
    pub mode: Mode,
    /// Where the red lead is.
    pub red: Option<TerminalRef>,
    /// Where the black lead was put; `None`: on battery negative.
    pub black: Option<TerminalRef>,
    /// The run that the clamp is around.
    pub clamp: Option<RunId>,
    /// Whether the next touch puts the black lead.
    pub black_next: bool,
}

/// What the meter shows.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// The number with its unit, or what a meter shows without one.
    pub shown: String,
    /// The number, where there is one: volts, amps or ohms.
    pub number: Option<f64>,
    /// What it shows without a number, as files hold it.
    pub state: Option<&'static str>,
    /// Between what.
    pub between: String,
    /// A remark, perhaps empty.
    pub remark: String,
}

/// What a meter shows without a number, as files hold it.
pub const OPEN: &str = "open";
const FLOATING: &str = "floating";

/// What a kept reading shows without a number, in the reader's language.
fn reading_words(kept: &str, words: &Words) -> String {
    match kept {
        OPEN => words.text("meter-open"),
        FLOATING => words.text("meter-floating"),
        other => other.to_owned(),
    }
}

/// Volts of alternating current as they are told.
fn ac(words: &Words, number: f64) -> String {
    words.say(&say!("reading-ac", number = precise(number, Unit::Plain("V"), 2)))
}

/// A number as a meter shows it: small ones to three figures, others to a hundredth.
fn as_shown(number: f64) -> f64 {
    let steps = if number.abs() < 0.1 { 100_000.0 } else { 100.0 };
    (number * steps).round() / steps
}

/// A kept reading in one line: `12.34 V at B1.+ against B1.-`.
#[must_use]
pub fn line_of(reading: &model::readings::Reading, words: &Words) -> String {
    let unit = match reading.measured {
        Measured::Volts | Measured::VoltsAc => "V",
        Measured::Amps => "A",
        Measured::Ohms => "Ω",
    };
    let number = match (reading.number(), reading.measured) {
        (Some(number), Measured::VoltsAc) => ac(words, number),
        (Some(number), Measured::Volts) => words.figure(precise(number, Unit::of(unit), 2)),
        (Some(number), _) => words.figure(drawn(number, Unit::of(unit))),
        (None, _) => reading_words(&reading.remark, words),
    };
    if reading.against.is_empty() {
        words.say(&say!("reading-in", number = number, at = &reading.at))
    } else {
        words.say(&say!(
            "reading-at",
            number = number,
            at = &reading.at,
            against = &reading.against
        ))
    }
}

impl Meter {
    /// The state's address.
    #[must_use]
    pub fn address(&self) -> &'static str {
        match self.mode {
            Mode::Volts => "meter/volts",
            Mode::Amps => "meter/amps",
            Mode::Tone => "meter/tone",
            Mode::Ohms => "meter/ohms",
        }
    }
    /// What to do with it.
    #[must_use]
    pub fn hint(&self) -> Saying {
        match (self.mode, self.black_next) {
            (Mode::Amps, _) => say!("hint-meter-amps"),
            (_, false) => say!("hint-meter-red"),
            (_, true) => say!("hint-meter-black"),
        }
    }
}

impl Editor {
    pub(crate) fn meter_input(&mut self, mut meter: Meter, input: Input) {
        match input {
            Input::Move(pointer) => {
                let over = self.thing_at(self.camera.to_board(pointer.at), pointer.kind);
                self.hover(over);
            }
            Input::Down(..) => self.out.taken = true,
            Input::Up(pointer) => {
                self.out.taken = true;
                let at = self.thing_at(self.camera.to_board(pointer.at), pointer.kind);
                if let Some(thing) = at {
                    self.probe(&mut meter, thing, pointer.mods.shift);
                }
                self.out.noticed = true;
                self.out.repaint = true;
                self.tool = Tool::Meter(meter);
            }
            _ => {}
        }
    }

    /// Puts a lead or the clamp on a thing.
    pub(crate) fn probe(&mut self, meter: &mut Meter, thing: Thing, black: bool) {
        match (thing, meter.mode) {
            (Thing::Run(run), Mode::Amps) => meter.clamp = Some(run),
            (Thing::Terminal(at), Mode::Volts | Mode::Tone | Mode::Ohms) => {
                if black || meter.black_next {
                    meter.black = Some(at);
                    meter.black_next = false;
                } else {
                    meter.red = Some(at);
                }
            }
            _ => self.tell(meter.hint()),
        }
        self.ready_tone(meter.mode);
        if let Some(reading) = self.reading_of(meter) {
            self.out.say = Some(format!("{} {}", reading.shown, reading.between));
        }
    }

    /// Battery negative: where the black lead is clamped until it is moved.
    #[must_use]
    pub fn usual_black(&self) -> Option<TerminalRef> {
        let battery = self
            .sheet()
            .parts
            .iter()
            .find(|(_, part)| matches!(part.is, PartKind::Battery(_)))?;
        Some(TerminalRef::new(*battery.0, "-"))
    }

    /// What the meter in hand shows; `None` while a lead hangs free or another tool is in hand.
    #[must_use]
    pub fn reading(&self) -> Option<Reading> {
        match &self.tool {
            Tool::Meter(meter) => self.reading_of(meter),
            _ => None,
        }
    }

    /// Makes a meter of the sheet that reads a test tone, when one is asked for and none is ready.
    pub(crate) fn ready_tone(&mut self, mode: Mode) {
        if mode == Mode::Tone && self.tone.is_none() {
            let settings = &self.job.settings;
            self.tone = circuit::Meter::new(self.sheet(), settings, None).map(Arc::new);
        }
    }

    /// Keeps what the meter shows as a line of the meter sheet, with where its leads are and the state in force. A meter
    /// has two places behind the point, and so has its line.
    pub(crate) fn keep_reading(&mut self) {
        let Tool::Meter(meter) = self.tool.clone() else {
            self.tell(say!("meter-take-first"));
            return;
        };
        let Some(reading) = self.reading_of(&meter) else {
            self.tell(say!("meter-no-reading", hint = meter.hint()));
            return;
        };
        let sheet = self.sheet();
        let written = |at: Option<TerminalRef>| at.map_or(String::new(), |at| sheet.written(&at));
        let conditions = &self.job.settings.conditions;
        let (measured, at, against) = match meter.mode {
            Mode::Amps => {
                let run = meter.clamp.map(|run| Thing::Run(run).written(sheet));
                (Measured::Amps, run.unwrap_or_default(), String::new())
            }
            mode => {
                let black = meter.black.clone().or_else(|| self.usual_black());
                (mode.measured(), written(meter.red.clone()), written(black))
            }
        };
        let line = model::readings::Reading {
            measured,
            at,
            against,
            state: conditions.state,
            duty: conditions.duty,
            remark: if reading.number.is_none() {
                // Files hold it in English; it is shown in the reader's language.
                reading.state.unwrap_or_default().to_owned()
            } else {
                String::new()
            },
            ..model::readings::Reading::default()
        };
        let line = match reading.number {
            Some(number) => line.with_number(as_shown(number)),
            None => line,
        };
        match keep_reading(&self.job, self.on, line) {
            Ok(edit) => {
                self.apply(edit);
                self.tell(say!(
                    "meter-kept",
                    shown = reading.shown,
                    between = reading.between
                ));
            }
            Err(error) => self.tell(error.0),
        }
    }

    /// Keeps readings as lines of the meter sheet: one step.
    pub fn keep_readings(&mut self, lines: Vec<model::readings::Reading>) -> crate::Effects {
        let count = lines.len();
        self.interrupt();
        self.begin_gesture(say!("edit-keep-readings", count = count));
        for line in lines {
            match keep_reading(&self.job, self.on, line) {
                Ok(edit) => self.extend_gesture(edit, &ordered::OrderedSet::new()),
                Err(error) => self.tell(error.0),
            }
        }
        self.commit_gesture();
        self.take_effects()
    }

    fn reading_of(&self, meter: &Meter) -> Option<Reading> {
        let sheet = self.sheet();
        let study = &self.analysis.study;
        if meter.mode == Mode::Amps {
            let id = meter.clamp?;
            let flow = study.runs.get(&id);
            let amps = flow.map_or(0.0, |flow| flow.current.mean.0);
            return Some(Reading {
                shown: self.words.figure(drawn(amps.abs(), Unit::Plain("A"))),
                number: Some(amps.abs()),
                between: self
                    .words
                    .say(&say!("meter-in", run = Thing::Run(id).written(sheet))),
                state: None,
                remark: flow.map_or(String::new(), |flow| {
                    self.words.say(&say!(
                        "meter-rms",
                        rms = drawn(flow.current.rms.0.abs(), Unit::Plain("A")),
                        burst = drawn(flow.current.burst.0.abs(), Unit::Plain("A"))
                    ))
                }),
            });
        }
        let red = meter.red.clone()?;
        let black = meter.black.clone().or_else(|| self.usual_black())?;
        let between = self.words.say(&say!(
            "meter-between",
            red = sheet.written(&red),
            black = sheet.written(&black)
        ));
        if meter.mode == Mode::Ohms {
            return self
                .ohms_between(&red, &black)
                .map(|(number, shown, remark)| Reading {
                    shown: self.words.say(&shown),
                    state: number.is_none().then_some(OPEN),
                    number,
                    between,
                    remark: remark.map_or(String::new(), |remark| self.words.say(&remark)),
                });
        }
        if meter.mode == Mode::Tone {
            let probe = Probe::Tone(red, black);
            let shown = self.tone.as_ref()?.read(&probe)?;
            let number = shown.number(&probe)?;
            return Some(Reading {
                shown: ac(&self.words, number),
                number: Some(number),
                state: None,
                between,
                remark: String::new(),
            });
        }
        let volts = |at: &TerminalRef| study.voltages.get(&voltage_key(at)).copied();
        Some(match (volts(&red), volts(&black)) {
            (Some(Volts(red)), Some(Volts(black))) => Reading {
                shown: self.words.figure(precise(red - black, Unit::Plain("V"), 2)),
                number: Some(red - black),
                state: None,
                between,
                remark: String::new(),
            },
            (red_volts, _) => Reading {
                shown: self.words.text("meter-floating"),
                state: Some(FLOATING),
                number: None,
                between,
                remark: self.words.say(&say!(
                    "meter-floats",
                    terminal = if red_volts.is_none() {
                        sheet.written(&red)
                    } else {
                        sheet.written(&black)
                    }
                )),
            },
        })
    }
}
