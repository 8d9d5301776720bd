//! Suspicions and places to measure in words.

use super::Suspect;
use circuit::Probe;
use model::Sheet;
use words::{Saying, say};

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

/// What is suspected.
#[must_use]
pub fn said_suspect(sheet: &Sheet, suspect: &Suspect) -> Saying {
    match suspect.breaks.as_slice() {
        [] => say!("fault-nothing-broken"),
        [one] => one.said(sheet),
        [one, other, ..] => say!("fault-pair", one = one.said(sheet), other = other.said(sheet)),
    }
}
