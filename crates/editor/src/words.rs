//! Things of a sheet in words: for the screen reader, the hover slip and the line of messages.

use crate::editor::Editor;
use crate::selection::Thing;
use checks::Grade;
use circuit::{DeviceRef, voltage_key};
use drawing::numbers::with_unit;
use model::{PartId, RunId};

/// What is said of a run in the hover slip: a name and a value each.
pub type Lines = Vec<(&'static str, String)>;

/// How the engine begins to tell of a part that is off at bursts alone.
const WHEN_LOUD: &str = "when it is loud";

/// A number to two places as a meter shows it; what rounds to nothing has no sign.
#[must_use]
pub fn two_places(number: f64, unit: &str) -> String {
    let rounded = (number * 100.0).round() / 100.0;
    format!("{:.2} {unit}", if rounded == 0.0 { 0.0 } else { rounded })
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
    /// A thing in one sentence, for the screen reader.
    #[must_use]
    pub fn spoken(&self, thing: &Thing) -> String {
        let sheet = self.sheet();
        let written = thing.written(sheet);
        let findings = self.findings_of(thing);
        let noted = match findings
            .first()
            .and_then(|place| self.analysis().findings.get(*place))
        {
            Some(finding) if findings.len() == 1 => format!(", one finding: {}", finding.grade.title()),
            Some(finding) => format!(
                ", {} findings, the gravest {}",
                findings.len(),
                finding.grade.title()
            ),
            None => String::new(),
        };
        match thing {
            Thing::Part(id) => match sheet.parts.get(id) {
                Some(part) => {
                    let runs = sheet.runs_of(*id).count();
                    let plural = if runs == 1 { "" } else { "s" };
                    format!("{written}, {}, {runs} run{plural}{noted}", part.name())
                }
                None => written,
            },
            Thing::Terminal(at) => {
                let lands: Vec<&str> = sheet
                    .runs_of(at.part)
                    .filter(|(_, run)| run.ends().iter().any(|end| end.terminal() == Some(at)))
                    .map(|(_, run)| run.tag.as_str())
                    .collect();
                let volts = self.analysis().study.voltages.get(&voltage_key(at));
                let volts = volts.map_or(String::new(), |volts| format!(", {:.2} V", volts.0));
                if lands.is_empty() {
                    format!("terminal {written}, nothing on it{volts}")
                } else {
                    format!("terminal {written}, with {}{volts}", lands.join(" and "))
                }
            }
            Thing::Run(id) => {
                let end = |end: &model::End| {
                    end.terminal()
                        .map_or("nowhere".to_owned(), |at| sheet.written(at))
                };
                match sheet.runs.get(id) {
                    Some(run) => {
                        let numbers = self.run_numbers(*id);
                        let said: Vec<String> = numbers
                            .iter()
                            .take(2)
                            .map(|(name, value)| format!("{name} {value}"))
                            .collect();
                        let said = if said.is_empty() {
                            String::new()
                        } else {
                            format!(", {}", said.join(", "))
                        };
                        format!(
                            "run {written} from {} to {}{said}{noted}",
                            end(&run.from),
                            end(&run.to)
                        )
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
    /// What a run carries, for the hover slip: amps, drop, temperature, guard.
    #[must_use]
    pub fn run_numbers(&self, id: RunId) -> Lines {
        let study = &self.analysis().study;
        let mut lines = Lines::new();
        if self.conceals {
            return lines;
        }
        if let Some(flow) = study.runs.get(&id) {
            let rms = flow.current.rms.0.abs();
            let of = flow.allowable.map_or(String::new(), |most| {
                format!(" of {} allowed", with_unit(most.0, "A"))
            });
            lines.push(("current", format!("{}{of}", with_unit(rms, "A"))));
            lines.push(("burst", with_unit(flow.current.burst.0.abs(), "A")));
            lines.push(("drop", with_unit(flow.drop.0, "V")));
            lines.push((
                "temperature",
                format!("{:.0} °C in {:.0} °C", flow.temperature.0, flow.ambient.0),
            ));
        }
        if let Some(protection) = study.protection.get(&id) {
            for from in &protection.from {
                let source = self.tag(from.source);
                let guards: Vec<String> = from.guards.iter().map(|guard| self.device(guard)).collect();
                let said = if from.protected && !guards.is_empty() {
                    format!("{} against {source}", guards.join(", "))
                } else if from.self_limiting {
                    format!("{source} limits itself")
                } else {
                    match from.unprotected_to {
                        Some(length) => format!("none against {source}, {:.2} m of wire away", length.0),
                        None => format!("none against {source}"),
                    }
                };
                lines.push(("guarded by", said));
            }
        }
        lines
    }
    /// That a part is off and why, where the engine knows a reason: `off: 9.4 V is below its cut-off of 10.0 V`. One that
    /// only goes off when it is loud is on for the rest of the time, and not told here.
    #[must_use]
    pub fn why_off(&self, id: PartId) -> Option<String> {
        let remark = self.off_remark(id)?;
        (!remark.starts_with(WHEN_LOUD)).then(|| format!("off: {remark}"))
    }
    fn off_remark(&self, id: PartId) -> Option<&String> {
        let flow = self.analysis().study.parts.get(&id)?;
        flow.remark.as_ref().filter(|_| flow.on == Some(false))
    }
    /// What a part does, for the hover slip and the details.
    #[must_use]
    pub fn part_numbers(&self, id: PartId) -> Lines {
        let study = &self.analysis().study;
        let mut lines = Lines::new();
        if self.conceals {
            return lines;
        }
        if let Some(flow) = study.parts.get(&id) {
            let off = self.off_remark(id);
            if let Some(why) = self.why_off(id) {
                lines.push(("is", why));
            } else if let Some(why) = off.and_then(|remark| remark.strip_prefix(WHEN_LOUD)) {
                lines.push(("is", format!("off when it is loud:{why}")));
            } else if let Some(on) = flow.on {
                lines.push(("is", if on { "on" } else { "off" }.to_owned()));
            }
            let mean = flow.current.mean.0;
            if mean.abs() >= 5e-4 {
                lines.push((
                    "current",
                    format!(
                        "{}, burst {}",
                        with_unit(mean, "A"),
                        with_unit(flow.current.burst.0, "A")
                    ),
                ));
            }
            if let Some(volts) = flow.voltage {
                let burst = flow.burst_voltage.map_or(String::new(), |burst| {
                    format!(", burst {}", two_places(burst.0, "V"))
                });
                lines.push(("voltage", format!("{}{burst}", two_places(volts.0, "V"))));
            }
            if flow.power.0.abs() >= 5e-4 {
                lines.push(("power", with_unit(flow.power.0, "W")));
            }
            if let Some(remark) = flow.remark.as_ref().filter(|_| off.is_none()) {
                lines.push(("note", remark.clone()));
            }
        }
        let silent = self.why_off(id).is_some();
        for load in study.channels.iter().filter(|channel| channel.part == id) {
            let pair = load
                .bridged_with
                .map_or(String::new(), |other| format!("+{other}"));
            let sees = load
                .nominal
                .map_or("open".to_owned(), |ohms| with_unit(ohms.0, "Ω"));
            let power = load
                .power
                .filter(|_| !silent)
                .map_or(String::new(), |watts| format!(", {}", with_unit(watts.0, "W")));
            lines.push(("channel", format!("{}{pair}: {sees}{power}", load.channel)));
        }
        if let Some(driver) = study.drivers.get(&id) {
            let off = driver.channel.and_then(|(part, _)| {
                let why = self.why_off(part)?;
                Some(format!("nothing: {} is {why}", self.tag(part)))
            });
            let said = match (&driver.gap, driver.in_phase) {
                _ if off.is_some() => off.unwrap_or_default(),
                (Some(gap), _) => format!("silent: {}", gap.what),
                (None, Some(false)) => format!("{}, reversed", with_unit(driver.power.0, "W")),
                (None, _) => with_unit(driver.power.0, "W"),
            };
            lines.push(("gets", said));
        }
        if let Some(drop) = study.circuits.get(&id).and_then(|circuit| circuit.drop) {
            lines.push(("lost on the way", with_unit(drop.0, "V")));
        }
        lines
    }
}
