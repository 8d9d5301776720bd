//! Readings and symptoms as people write them.

use super::evidence::{Reading, State, Symptom};
use circuit::Probe;
use model::job::{Duty, VehicleState};
use model::text::closest;
use model::{PartId, PartKind, Sheet, TerminalRef};
use words::{Saying, say};

/// Reads `A1.+ A1.- 11.9 V on`, `LS1.+ LS1.- open`, `W3 12 A`, `A1.out1+ A1.out1- 5 VAC`, `… 0.2 V ±0.05`. Points first, then what was
/// read, then the state of the vehicle: `off`, `on`, `idle`, `cruise`, and a duty, where it is another one.
///
/// # Errors
/// Where it cannot be read; the text says what would do.
pub fn read_reading(text: &str, sheet: &Sheet) -> Result<Reading, Saying> {
    let mut state = State::ON;
    let mut points: Vec<&str> = Vec::new();
    let mut value: Option<f64> = None;
    let mut unit = "";
    let mut open = false;
    let mut tolerance = None;
    for word in text.split_whitespace() {
        let lower = word.to_ascii_lowercase();
        if let Some(told) = lower.strip_prefix('±').or_else(|| lower.strip_prefix("+-")) {
            let (number, _) = split(told);
            tolerance = Some(number.ok_or_else(|| say!("fault-not-number", text = word))?.abs());
            continue;
        }
        match lower.as_str() {
            "off" | "parked" => (state.vehicle, state.duty) = (VehicleState::Parked, Duty::Idle),
            "on" | "engine-off" => state.vehicle = VehicleState::EngineOff,
            "idle" | "idling" => state.vehicle = VehicleState::Idle,
            "cruise" => state.vehicle = VehicleState::Cruise,
            "quiet" => state.duty = Duty::Idle,
            "open" | "ol" => open = true,
            "v" | "vdc" | "vac" | "v~" | "a" | "ohm" | "ohms" | "Ω" | "ω" | "mv" | "ma" | "kohm" | "kω" => {
                unit = unit_of(&lower);
                value = value.map(|number| number * scale(&lower));
            }
            other => {
                if let Some(duty) = Duty::from_word(other) {
                    state.duty = duty;
                    continue;
                }
                match split(&lower) {
                    (Some(number), "") => value = Some(number),
                    (Some(number), rest) if !unit_of(rest).is_empty() => {
                        value = Some(number * scale(rest));
                        unit = unit_of(rest);
                    }
                    _ => points.push(word),
                }
            }
        }
    }
    let number = if open { None } else { value };
    if number.is_none() && !open {
        return Err(say!("fault-no-number", text = text));
    }
    let probe = match points.as_slice() {
        [run] => match sheet.run_by_tag(run) {
            Some((id, _)) => Probe::Amps(id),
            None => {
                let meant = closest(run, sheet.runs.values().map(|run| run.tag.as_str()));
                return Err(say!("fault-no-run", tag = *run, meant = meant.unwrap_or("?")));
            }
        },
        [red, black] => {
            let (red, black) = (read_point(sheet, red)?, read_point(sheet, black)?);
            match unit {
                "ohm" => Probe::Ohms(red, black),
                "vac" => Probe::Tone(red, black),
                "a" => return Err(say!("fault-amps-in-run", text = text)),
                _ if open => Probe::Ohms(red, black),
                _ => Probe::Volts(red, black),
            }
        }
        _ => return Err(say!("fault-no-points", text = text)),
    };
    Ok(Reading {
        probe,
        state,
        number,
        tolerance,
    })
}

/// Reads what a meter shows where its unit is known: `11.9`, `11,9 ±0.2`, `-0.3 +-0.1`. The number, and by how much it may be wrong.
#[must_use]
pub fn read_shown(text: &str) -> Option<(f64, Option<f64>)> {
    let text = text.replace('−', "-").replace("+-", "±");
    let (number, rest) = split(text.trim());
    let tolerance = match rest.trim().strip_prefix('±') {
        Some(told) => match split(told.trim()) {
            (Some(tolerance), "") => Some(tolerance.abs()),
            _ => return None,
        },
        None if rest.is_empty() => None,
        None => return None,
    };
    Some((number?, tolerance))
}

fn unit_of(word: &str) -> &'static str {
    match word {
        "v" | "vdc" | "mv" => "v",
        "vac" | "v~" => "vac",
        "a" | "ma" => "a",
        "ohm" | "ohms" | "Ω" | "ω" | "kohm" | "kω" => "ohm",
        _ => "",
    }
}

fn scale(unit: &str) -> f64 {
    match unit {
        "mv" | "ma" => 1e-3,
        "kohm" | "kω" => 1e3,
        _ => 1.0,
    }
}

/// A number at the beginning, and what follows.
fn split(text: &str) -> (Option<f64>, &str) {
    let end = text
        .char_indices()
        .find(|(at, c)| {
            !(c.is_ascii_digit() || matches!(c, '.' | ',') || (*at == 0 && matches!(c, '-' | '+')))
        })
        .map_or(text.len(), |(at, _)| at);
    let (number, rest) = text.split_at(end);
    let number = number.replace(',', ".").parse::<f64>();
    (number.ok().filter(|number| number.is_finite()), rest)
}

/// Reads a terminal as people write it: `F1.in`.
///
/// # Errors
/// Where the sheet has no such terminal; the text says which it has.
pub fn read_point(sheet: &Sheet, written: &str) -> Result<TerminalRef, Saying> {
    let (tag, name) = written.split_once('.').unwrap_or((written, ""));
    let Some((id, part)) = sheet.part_by_tag(tag) else {
        let meant = closest(tag, sheet.parts.values().map(|part| part.tag.as_str()));
        return Err(say!("fault-no-part", tag = tag, meant = meant.unwrap_or("?")));
    };
    let at = TerminalRef::new(id, name);
    if part.role(&at.terminal).is_some() {
        return Ok(at);
    }
    let names: Vec<String> = part
        .terminals()
        .iter()
        .map(|terminal| terminal.name.to_string())
        .collect();
    Err(say!(
        "fault-no-terminal",
        part = tag,
        terminal = name,
        names = names.join(" ")
    ))
}

/// Reads `LS1 silent`, `LS1 weak`, `LS2 plays`, `A1 off`, `A1 on`, `F1 opened`, `D1.out2 opened`, `A1 hum`.
///
/// # Errors
/// Where it cannot be read; the text says what would do.
pub fn read_symptom(text: &str, sheet: &Sheet) -> Result<Symptom, Saying> {
    let mut words = text.split_whitespace();
    let (Some(thing), Some(what)) = (words.next(), words.next()) else {
        return Err(say!("fault-symptoms", text = text));
    };
    let (tag, output) = thing.split_once('.').unwrap_or((thing, ""));
    let Some((id, part)) = sheet.part_by_tag(tag) else {
        let meant = closest(tag, sheet.parts.values().map(|part| part.tag.as_str()));
        return Err(say!("fault-no-part", tag = tag, meant = meant.unwrap_or("?")));
    };
    let speaker = |symptom: fn(PartId) -> Symptom| {
        if matches!(part.is, PartKind::Speaker(_)) {
            Ok(symptom(id))
        } else {
            Err(say!("fault-no-speaker", part = tag))
        }
    };
    match what.to_ascii_lowercase().as_str() {
        "silent" => speaker(Symptom::Silent),
        "weak" => speaker(Symptom::Weak),
        "plays" => speaker(Symptom::Plays),
        "off" => Ok(Symptom::Off(id)),
        "on" => Ok(Symptom::On(id)),
        "hum" | "hums" => Ok(Symptom::Hum(id)),
        "opened" | "open" | "blown" => {
            let output = (!output.is_empty()).then(|| output.into());
            Ok(Symptom::Opened(id, output))
        }
        _ => Err(say!("fault-symptoms", text = text)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const SHEET: &str = "battery B1 agm 60Ah\nfuse F1 maxi 30A\nload L1\nrun W1 B1.+ F1.in 6mm2 0.3m\nrun W2 F1.out L1.+ 6mm2 3m\nrun W3 L1.- B1.- 6mm2 3m\n";

    #[test]
    fn readings_are_read_as_they_are_said() {
        let sheet = testkit::sheet(SHEET);
        let read = |text: &str| read_reading(text, &sheet).expect("a reading");
        let volts = read("F1.out B1.- 12,1 V off ±0.2");
        assert!(matches!(volts.probe, Probe::Volts(..)));
        assert_eq!((volts.number, volts.tolerance), (Some(12.1), Some(0.2)));
        assert_eq!(volts.state.vehicle, VehicleState::Parked);
        assert!(matches!(read("F1.in F1.out 3mV").probe, Probe::Volts(..)));
        assert_eq!(read("F1.in F1.out 3mV").number, Some(0.003));
        assert_eq!(read("F1.in F1.out 2.2 kohm").number, Some(2200.0));
        assert_eq!(read("F1.in F1.out open").number, None);
        assert!(matches!(read("F1.in F1.out open").probe, Probe::Ohms(..)));
        assert!(matches!(read("W2 4 A cruise loud").probe, Probe::Amps(_)));
        assert_eq!(read("W2 4 A cruise loud").state.duty, Duty::Loud);
        assert!(matches!(read("F1.in F1.out 5 VAC").probe, Probe::Tone(..)));
        for bad in [
            "",
            "F1.out",
            "F1.out B1.-",
            "F1.out B1.x 3 V",
            "Q9.a B1.- 3 V",
            "W9 3 A",
            "W1 W2 W3 1 V",
        ] {
            assert!(read_reading(bad, &sheet).is_err(), "{bad}");
        }
        assert_eq!(read_shown("11,9"), Some((11.9, None)));
        assert_eq!(read_shown(" −0.3 +-0.1 "), Some((-0.3, Some(0.1))));
        assert_eq!(read_shown("12.1±0.2"), Some((12.1, Some(0.2))));
        for bad in ["", "±0.2", "12 V", "12 ±", "12 ±x"] {
            assert_eq!(read_shown(bad), None, "{bad}");
        }
        assert!(read_symptom("L1 silent", &sheet).is_err());
        assert!(read_symptom("F1 opened", &sheet).is_ok());
    }
}
