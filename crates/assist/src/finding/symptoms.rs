//! What can be seen and heard of a suspicion.

use super::evidence::Symptom;
use circuit::{Bench, DeviceRef, Foreseen, Placed, Probe};
use model::breaks::Break;
use model::{PartId, PartKind, RunId, Settings, Sheet, TerminalName, TerminalRef};
use ordered::OrderedMap;

/// A speaker is silent below this share of its volts, and weak below that: −26 dB, and −3 dB (common practice: less is not heard).
const SILENT: f64 = 0.05;
const WEAK: f64 = 0.71;
/// Grounds that signal leads join differ by so many volts more than they should where it hums (our own judgement; the check for ground
/// offset looks closer).
const HUMS: f64 = 0.1;

/// What symptoms are read from.
#[derive(Debug)]
pub(crate) struct Symptoms {
    /// Signal leads: run, parts at its ends, and volts between their grounds.
    leads: Vec<(RunId, [PartId; 2], Option<Placed>)>,
    /// What drives each speaker.
    channel: OrderedMap<PartId, PartId>,
}

impl Symptoms {
    pub(crate) fn of(sheet: &Sheet, settings: &Settings, bench: &Bench) -> Self {
        let ground = |part: PartId| {
            let name = match sheet.parts.get(&part).map(|part| &part.is) {
                Some(PartKind::HeadUnit(_)) => "31",
                _ => "-",
            };
            TerminalRef::new(part, name)
        };
        let leads = sheet
            .runs
            .iter()
            .filter_map(|(&id, run)| {
                let ends = [run.from.terminal()?, run.to.terminal()?];
                let line = ends
                    .iter()
                    .all(|at| sheet.role(at).is_some_and(model::Role::is_line));
                let parts = ends.map(|at| at.part);
                let probe = Probe::Volts(ground(parts[0]), ground(parts[1]));
                line.then(|| (id, parts, bench.place(&probe)))
            })
            .collect();
        let study = circuit::speakers::study_speakers(sheet, settings);
        let channel = study
            .drivers
            .iter()
            .filter_map(|(id, driver)| Some((*id, driver.channel?.0)))
            .collect();
        Self { leads, channel }
    }

    /// Whether a symptom follows from a suspicion.
    pub(crate) fn holds(
        &self,
        bench: &Bench,
        state: usize,
        foreseen: &Foreseen,
        breaks: &[Break],
        symptom: &Symptom,
    ) -> bool {
        match symptom {
            Symptom::Silent(speaker) => {
                // Two coils against one another move nothing.
                let against = |broken: &Break| matches!(broken, Break::Reversed { part, coil: Some(_) } if part == speaker);
                level(bench, state, foreseen, *speaker).is_some_and(|it| it < SILENT)
                    || breaks.iter().any(against)
            }
            Symptom::Weak(speaker) => {
                let turned =
                    |broken: &Break| matches!(broken, Break::Reversed { part, .. } if part == speaker);
                let weak = level(bench, state, foreseen, *speaker)
                    .is_some_and(|level| (SILENT..WEAK).contains(&level));
                weak || breaks.iter().any(turned)
            }
            Symptom::Plays(speaker) => {
                let against = |broken: &Break| matches!(broken, Break::Reversed { part, coil: Some(_) } if part == speaker);
                level(bench, state, foreseen, *speaker).is_none_or(|it| it >= WEAK)
                    && !breaks.iter().any(against)
            }
            Symptom::Off(part) => !bench.works(foreseen, *part),
            Symptom::On(part) => bench.works(foreseen, *part),
            Symptom::Opened(part, output) => opened(bench, foreseen, breaks, *part, output.as_ref()),
            Symptom::Hum(part) => self.hums(bench, state, foreseen, breaks, *part),
        }
    }

    fn hums(&self, bench: &Bench, state: usize, foreseen: &Foreseen, breaks: &[Break], part: PartId) -> bool {
        let part = self.channel.get(&part).copied().unwrap_or(part);
        self.leads
            .iter()
            .filter(|(_, parts, _)| parts.contains(&part))
            .any(|(run, _, placed)| {
                let on_it = |broken: &Break| {
                    matches!(broken, Break::Cut { run: it, .. } | Break::Resistive { run: it, .. } if it == run)
                };
                let volts = |foreseen: &Foreseen| {
                    let shown = bench.read(state, foreseen, placed.as_ref()?)?;
                    match shown {
                        circuit::Shown::Volts(volts) => Some(volts.0.abs()),
                        _ => None,
                    }
                };
                let more = bench
                    .normal(state)
                    .and_then(volts)
                    .zip(volts(foreseen))
                    .is_some_and(|(normal, now)| now > normal + HUMS);
                more || breaks.iter().any(on_it)
            })
    }
}

/// The tone at a speaker as a share of what it should be, its weakest coil; `None` where none should reach it.
fn level(bench: &Bench, state: usize, foreseen: &Foreseen, speaker: PartId) -> Option<f64> {
    let normal = bench.coils(state, bench.normal(state)?, speaker);
    let now = bench.coils(state, foreseen, speaker);
    normal
        .iter()
        .zip(&now)
        .filter(|(normal, _)| normal.0.abs() > 1e-3)
        .map(|(normal, now)| (now.0 / normal.0).abs())
        .reduce(f64::min)
}

fn opened(
    bench: &Bench,
    foreseen: &Foreseen,
    breaks: &[Break],
    part: PartId,
    output: Option<&TerminalName>,
) -> bool {
    let is =
        |device: &DeviceRef| device.part == part && (output.is_none() || device.output.as_ref() == output);
    let by_itself = |broken: &Break| matches!(broken, Break::Open { part: it, output: at } if *it == part && (output.is_none() || at.as_ref() == output));
    bench.opened(foreseen).iter().any(is) || breaks.iter().any(by_itself)
}
