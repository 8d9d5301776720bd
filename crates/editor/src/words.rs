//! Things of a sheet in words: for the screen reader, the hover slip and the line of messages.

use crate::editor::Editor;
use crate::selection::Thing;
use checks::Grade;
use circuit::{DeviceRef, voltage_key};
use model::{PartId, RunId};
use words::{Figure, Saying, Unit, drawn, precise, say};

/// What is said of a run in the hover slip: a name, which [`line_name`] gives in the reader's language, and a value each.
pub type Lines = Vec<(&'static str, String)>;

/// A number to two places as a meter shows it; what rounds to nothing has no sign.
#[must_use]
pub fn two_places(number: f64, unit: &'static str) -> Figure {
    precise(number, Unit::of(unit), 2)
}

/// What a line of numbers is called: see [`Lines`].
#[must_use]
pub fn line_name(name: &str) -> Saying {
    Saying::new(format!("numbers-{}", name.replace(' ', "-")))
}

/// A number to three figures with its unit.
fn with_unit(number: f64, unit: &'static str) -> Figure {
    drawn(number, Unit::of(unit))
}

impl Editor {
    /// A part by its tag.
    #[must_use]
    pub fn tag(&self, id: PartId) -> String {
        Thing::Part(id).written(self.sheet())
    }
    /// A device as people write it: `F1`, or `D1.out2` for one of several in a block.
    #[must_use]
    pub fn device(&self, device: &DeviceRef) -> String {
        match &device.output {
            Some(output) => format!("{}.{output}", self.tag(device.part)),
            None => self.tag(device.part),
        }
    }
    /// Between what a run lies: `B1.+ to F1.in`.
    #[must_use]
    pub fn between(&self, run: &model::Run) -> Saying {
        let end = |end: &model::End| -> Saying {
            end.terminal()
                .map_or(say!("run-loose"), |at| self.sheet().written(at).into())
        };
        say!("run-between", from = end(&run.from), to = end(&run.to))
    }
    /// A thing in one sentence, for the screen reader.
    #[must_use]
    pub fn spoken(&self, thing: &Thing) -> String {
        let words = &self.words;
        let sheet = self.sheet();
        let written = thing.written(sheet);
        let findings = self.findings_of(thing);
        let noted = match findings
            .first()
            .and_then(|place| self.analysis().findings.get(*place))
        {
            Some(finding) => words.say(&say!(
                "spoken-findings",
                count = findings.len(),
                grade = finding.grade.said()
            )),
            None => String::new(),
        };
        match thing {
            Thing::Part(id) => match sheet.parts.get(id) {
                Some(part) => {
                    let runs = sheet.runs_of(*id).count();
                    words.say(&say!(
                        "spoken-part",
                        part = written,
                        name = part.said(),
                        runs = say!("things-runs", count = runs),
                        noted = noted
                    ))
                }
                None => written,
            },
            Thing::Terminal(at) => {
                let lands: Vec<&str> = sheet
                    .runs_of(at.part)
                    .filter(|(_, run)| run.ends().iter().any(|end| end.terminal() == Some(at)))
                    .map(|(_, run)| run.tag.as_str())
                    .collect();
                let volts = self.shown_study().voltages.get(&voltage_key(at));
                let volts = volts.map_or(String::new(), |volts| {
                    format!(", {}", words.figure(two_places(volts.0, "V")))
                });
                if lands.is_empty() {
                    words.say(&say!("spoken-terminal-free", terminal = written, volts = volts))
                } else {
                    words.say(&say!(
                        "spoken-terminal",
                        terminal = written,
                        runs = lands,
                        volts = volts
                    ))
                }
            }
            Thing::Run(id) => {
                let end = |end: &model::End| -> Saying {
                    end.terminal()
                        .map_or(say!("spoken-nowhere"), |at| sheet.written(at).into())
                };
                match sheet.runs.get(id) {
                    Some(run) => {
                        let numbers = self.run_numbers(*id);
                        let said: Vec<String> = numbers
                            .iter()
                            .take(2)
                            .map(|(name, value)| format!("{} {value}", words.say(&line_name(name))))
                            .collect();
                        let said = if said.is_empty() {
                            String::new()
                        } else {
                            format!(", {}", said.join(", "))
                        };
                        words.say(&say!(
                            "spoken-run",
                            run = written,
                            from = end(&run.from),
                            to = end(&run.to),
                            numbers = said,
                            noted = noted
                        ))
                    }
                    None => written,
                }
            }
        }
    }
    /// Findings that speak of a thing, by their places in the list.
    #[must_use]
    pub fn findings_of(&self, thing: &Thing) -> Vec<usize> {
        let speaks = |finding: &checks::Finding| match thing {
            Thing::Part(id) => finding.parts.contains(id),
            Thing::Terminal(at) => finding.parts.contains(&at.part),
            Thing::Run(id) => finding.runs.contains(id),
        };
        let findings = self.analysis().findings.iter().enumerate();
        findings
            .filter(|(_, finding)| speaks(finding))
            .map(|(place, _)| place)
            .collect()
    }
    /// How many findings there are of each grade: Stop, Fix, Tidy.
    #[must_use]
    pub fn counts(&self) -> [usize; 3] {
        let count = |grade: Grade| {
            self.analysis()
                .findings
                .iter()
                .filter(|finding| finding.grade == grade)
                .count()
        };
        [count(Grade::Stop), count(Grade::Fix), count(Grade::Tidy)]
    }
    /// The same in words; as long as nothing was looked through, that.
    #[must_use]
    pub fn counted(&self) -> Saying {
        if !self.studied {
            return say!("title-unchecked");
        }
        let [stop, fix, tidy] = self.counts();
        say!("title-counts", stop = stop, fix = fix, tidy = tidy)
    }
    /// What a run carries, for the hover slip: amps, drop, temperature, guard.
    #[must_use]
    pub fn run_numbers(&self, id: RunId) -> Lines {
        let words = &self.words;
        let write = |figure: Figure| words.figure(figure);
        let study = self.shown_study();
        let mut lines = Lines::new();
        if self.conceals {
            return lines;
        }
        if let Some(flow) = study.runs.get(&id) {
            let rms = flow.current.rms.0.abs();
            let current = match flow.allowable {
                Some(most) => words.say(&say!(
                    "told-of-allowed",
                    amps = with_unit(rms, "A"),
                    most = with_unit(most.0, "A")
                )),
                None => write(with_unit(rms, "A")),
            };
            lines.push(("current", current));
            lines.push(("burst", write(with_unit(flow.current.burst.0.abs(), "A"))));
            lines.push(("drop", write(with_unit(flow.drop.0, "V"))));
            let degrees = |celsius: f64| precise(celsius, Unit::Plain("°C"), 0);
            lines.push((
                "temperature",
                words.say(&say!(
                    "told-warm-in",
                    own = degrees(flow.temperature.0),
                    around = degrees(flow.ambient.0)
                )),
            ));
            if let Some(time) = flow.time_to_limit {
                lines.push(("limit after", words.figure(drawn(time.0, Unit::Plain("s")))));
            }
        }
        if let Some(protection) = study.protection.get(&id) {
            for from in &protection.from {
                let source = self.tag(from.source);
                let guards: Vec<String> = from.guards.iter().map(|guard| self.device(guard)).collect();
                let said = if from.protected && !guards.is_empty() {
                    say!("told-guarded", guards = guards.join(", "), source = source)
                } else if from.self_limiting {
                    say!("told-limits-itself", source = source)
                } else {
                    match from.unprotected_to {
                        Some(length) => say!(
                            "told-unguarded-for",
                            source = source,
                            length = precise(length.0, Unit::Metre, 2)
                        ),
                        None => say!("told-unguarded", source = source),
                    }
                };
                lines.push(("guarded by", words.say(&said)));
            }
        }
        lines
    }
    /// That a part is off and why, where the engine knows a reason: `off: 9.4 V is below its cut-off of 10.0 V`. One that
    /// only goes off when it is loud is on for the rest of the time, and not told here.
    #[must_use]
    pub fn why_off(&self, id: PartId) -> Option<Saying> {
        let (remark, only_loud) = self.off_remark(id)?;
        (!only_loud).then(|| say!("told-off", why = remark))
    }
    /// Why a part is off, and whether only when it is loud.
    fn off_remark(&self, id: PartId) -> Option<(&Saying, bool)> {
        let flow = self.shown_study().parts.get(&id)?;
        let remark = flow.remark.as_ref().filter(|_| flow.on == Some(false))?;
        Some((remark, flow.only_loud))
    }
    /// What a part does, for the hover slip and the details.
    #[must_use]
    pub fn part_numbers(&self, id: PartId) -> Lines {
        let words = &self.words;
        let write = |figure: Figure| words.figure(figure);
        let study = self.shown_study();
        let mut lines = Lines::new();
        if self.conceals {
            return lines;
        }
        if let Some(flow) = study.parts.get(&id) {
            let off = self.off_remark(id);
            if let Some(why) = self.why_off(id) {
                lines.push(("is", words.say(&why)));
            } else if let Some((why, true)) = off {
                lines.push(("is", words.say(&say!("told-off-when-loud", why = why))));
            } else if let Some(on) = flow.on {
                lines.push(("is", words.text(if on { "told-is-on" } else { "told-is-off" })));
            }
            let mean = flow.current.mean.0;
            if mean.abs() >= 5e-4 {
                lines.push((
                    "current",
                    words.say(&say!(
                        "told-burst",
                        mean = with_unit(mean, "A"),
                        burst = with_unit(flow.current.burst.0, "A")
                    )),
                ));
            }
            if let Some(volts) = flow.voltage {
                let mean = two_places(volts.0, "V");
                lines.push((
                    "voltage",
                    match flow.burst_voltage {
                        Some(burst) => {
                            words.say(&say!("told-burst", mean = mean, burst = two_places(burst.0, "V")))
                        }
                        None => write(mean),
                    },
                ));
            }
            if flow.power.0.abs() >= 5e-4 {
                lines.push(("power", write(with_unit(flow.power.0, "W"))));
            }
            if let Some(remark) = flow.remark.as_ref().filter(|_| off.is_none()) {
                lines.push(("note", words.say(remark)));
            }
        }
        let silent = self.why_off(id).is_some();
        for load in study.channels.iter().filter(|channel| channel.part == id) {
            let pair = load
                .bridged_with
                .map_or(String::new(), |other| format!("+{other}"));
            let sees = match load.nominal {
                Some(ohms) => write(with_unit(ohms.0, "Ω")),
                None => words.text("meter-open"),
            };
            let power = load.power.filter(|_| !silent).map_or(String::new(), |watts| {
                format!(", {}", write(with_unit(watts.0, "W")))
            });
            lines.push(("channel", format!("{}{pair}: {sees}{power}", load.channel)));
        }
        if let Some(driver) = study.drivers.get(&id) {
            let off = driver.channel.and_then(|(part, _)| {
                let why = self.why_off(part)?;
                Some(say!("told-nothing", part = self.tag(part), why = why))
            });
            let power = with_unit(driver.power.0, "W");
            let said = match (off, &driver.gap, driver.in_phase) {
                (Some(off), ..) => words.say(&off),
                (None, Some(gap), _) => words.say(&say!("told-silent", why = &gap.what)),
                (None, None, Some(false)) => words.say(&say!("told-reversed", power = power)),
                (None, None, _) => write(power),
            };
            lines.push(("gets", said));
        }
        if let Some(drop) = study.circuits.get(&id).and_then(|circuit| circuit.drop) {
            lines.push(("lost on the way", write(with_unit(drop.0, "V"))));
        }
        lines
    }
}
