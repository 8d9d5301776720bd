//! The shortest proof on paper: the readings to take, in their order, with their limits and room for what is read; and below, what to look at
//! instead of measuring.

use crate::table::{Cell, Column, Table};
use crate::work::Work;
use assist::proving::{prove, said_doing, said_faults, said_look};
use circuit::Probe;
use words::{Saying, Unit, precise, say};

/// How many faults are told beside a reading.
const TOLD: usize = 4;

/// What to measure so that every single fault of grade Stop would be seen.
#[must_use]
pub(crate) fn proof_sheet(work: &Work<'_>) -> Table {
    let mut table = Table::new(
        "proof",
        &[
            Column::words("state"),
            Column::words("unit"),
            Column::words("red"),
            Column::words("black"),
            Column::number("expected", Unit::Bare, 3),
            Column::number("least", Unit::Bare, 3),
            Column::number("most", Unit::Bare, 3),
            Column::number("read", Unit::Bare, 3),
            Column::words("verdict"),
            Column::words("points"),
        ],
    );
    let sheet = &work.sheet;
    let Some(proof) = prove(sheet, &work.job.settings) else {
        return table;
    };
    let number = |number: Option<f64>| number.map_or(Cell::Said(say!("fault-open")), Cell::Reading);
    for step in &proof.steps {
        let (red, black) = match &step.probe {
            Probe::Volts(red, black) | Probe::Tone(red, black) | Probe::Ohms(red, black) => {
                (sheet.written(red), sheet.written(black))
            }
            Probe::Amps(run) => (work.run_tag(*run).to_owned(), String::new()),
        };
        let kept = step.kept(sheet).and_then(|at| sheet.readings.get(at));
        let verdict = step.verdict(sheet).map(|held| {
            Cell::Said(if held {
                say!("proof-pass")
            } else {
                say!("proof-fail")
            })
        });
        let mut faults = said_faults(sheet, &proof, step.exposes.iter().map(|(at, _)| *at));
        let more = faults.len().saturating_sub(TOLD);
        faults.truncate(TOLD);
        if more > 0 {
            faults.push(say!("proof-more", count = more));
        }
        table.rows.push(vec![
            Cell::Said(said_doing(step.doing, proof.played)),
            Cell::text(step.unit()),
            Cell::text(red),
            Cell::text(black),
            number(step.expected),
            Cell::Reading(step.limits.least),
            step.limits.most.map_or(Cell::Empty, Cell::Reading),
            kept.map_or(Cell::Empty, |kept| number(kept.number())),
            verdict.unwrap_or(Cell::Empty),
            Cell::Said(say!("proof-faults", faults = faults)),
        ]);
    }
    if proof.hazards.is_empty() {
        table.notes.push(say!("proof-none-grave"));
        return table;
    }
    let unseen: usize = proof.unseen.iter().map(|unseen| unseen.hazards.len()).sum();
    table.notes.push(say!(
        "proof-summary",
        readings = say!("proof-count", count = proof.steps.len()),
        exposed = proof.hazards.len() - unseen,
        all = proof.hazards.len(),
        minutes = precise(proof.minutes, Unit::Bare, 0),
    ));
    table.notes.push(if proof.is_shortest() {
        say!("proof-shortest")
    } else {
        say!("proof-bound", least = proof.least)
    });
    if !proof.unseen.is_empty() {
        table.notes.push(say!("proof-unseen"));
        let looks = proof
            .unseen
            .iter()
            .map(|unseen| -> Saying { say!("proof-look-line", look = said_look(sheet, &unseen.look)) });
        table.notes.extend(looks);
    }
    if proof.stops > 0 {
        table.notes.push(say!("proof-stops", count = proof.stops));
    }
    table.notes.push(say!("proof-caution"));
    table
}
