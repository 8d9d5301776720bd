//! Suspicions and places to measure in words.

use super::{Finder, Reading, Suspect};
use circuit::Probe;
use model::Sheet;
use words::{Saying, Unit, Value, drawn, say};

/// Where the leads go, and what is read.
#[must_use]
pub fn said_probe(sheet: &Sheet, probe: &Probe) -> Saying {
    let at = |at: &model::TerminalRef| sheet.written(at);
    match probe {
        Probe::Volts(red, black) => say!("fault-at-volts", red = at(red), black = at(black)),
        Probe::Tone(red, black) => say!("fault-at-tone", red = at(red), black = at(black)),
        Probe::Ohms(red, black) => say!("fault-at-ohms", red = at(red), black = at(black)),
        Probe::Amps(run) => {
            let tag = sheet.runs.get(run).map(|run| run.tag.clone());
            say!("fault-at-amps", run = tag.unwrap_or_default())
        }
    }
}

/// A number of a reading at a probe; what is said of an open circuit where there is none.
#[must_use]
pub fn said_number(probe: &Probe, number: Option<f64>) -> Value {
    let unit = match probe {
        Probe::Volts(..) | Probe::Tone(..) => "V",
        Probe::Ohms(..) => "Ω",
        Probe::Amps(_) => "A",
    };
    match number {
        Some(number) => drawn(number, Unit::Plain(unit)).into(),
        None => say!("fault-open").into(),
    }
}

/// Readings that not even the likeliest suspicion explains, each with what it would be.
#[must_use]
pub fn said_unexplained(sheet: &Sheet, finder: &Finder, readings: &[Reading]) -> Vec<Saying> {
    let Some(best) = finder.ranking().into_iter().next() else {
        return Vec::new();
    };
    let of = |at: usize| {
        let reading = readings.get(at)?;
        let foretold = best.foretold.get(at).copied().flatten();
        Some(say!(
            "fault-unexplained",
            at = said_probe(sheet, &reading.probe),
            read = said_number(&reading.probe, reading.number),
            what = said_suspect(sheet, &best),
            foretold = said_number(&reading.probe, foretold),
        ))
    };
    finder.unexplained().into_iter().filter_map(of).collect()
}

/// What is suspected.
#[must_use]
pub fn said_suspect(sheet: &Sheet, suspect: &Suspect) -> Saying {
    match suspect.breaks.as_slice() {
        [] => say!("fault-nothing-broken"),
        [one] => one.said(sheet),
        [one, other, ..] => say!("fault-pair", one = one.said(sheet), other = other.said(sheet)),
    }
}
