//! The settings sheet: how every channel is set, and for the channels of amplifiers that nobody has set yet, the volts to which
//! the gain is to be set.

use crate::table::{Cell, Column, Table};
use crate::work::Work;
use circuit::{ChannelLoad, Study};
use model::quantity::Volts;
use model::tuning::Tuning;
use model::{Fact, PartKind};
use words::{Unit, say};

/// The volts at an output that gives this power into this load, a resistance as far as the test tone is concerned: √(P·Z).
#[must_use]
pub fn target_volts(load: &ChannelLoad) -> Option<Volts> {
    let (power, nominal) = (load.power?, load.nominal?);
    let square = power.0 * nominal.0;
    (square > 0.0).then(|| Volts(libm::sqrt(square)))
}

const V: Unit = Unit::Plain("V");
const HZ: Unit = Unit::Plain("Hz");
const DB: Unit = Unit::Plain("dB");

/// The settings sheet.
#[must_use]
pub fn settings_sheet(work: &Work<'_>, study: &Study) -> Table {
    let mut table = Table::new(
        "settings",
        &[
            Column::words("equipment"),
            Column::words("channel"),
            Column::number("load", Unit::Plain("Ω"), 1),
            Column::number("power", Unit::Plain("W"), 0),
            Column::number("target", V, 1),
            Column::words("known"),
            Column::words("gain"),
            Column::number("high-pass", HZ, 0),
            Column::number("low-pass", HZ, 0),
            Column::number("slope", DB, 0),
            Column::number("level", DB, 1),
            Column::number("delay", Unit::Metre, 2),
            Column::words("turned"),
            Column::words("remark"),
        ],
    );
    let mut told: Vec<&Tuning> = Vec::new();
    for load in &study.channels {
        let Some(part) = work.sheet.parts.get(&load.part) else {
            continue;
        };
        let channel = load.marking();
        let tuning = work
            .sheet
            .tunings
            .iter()
            .find(|it| it.of == part.tag && it.channel == channel);
        // A head unit has no gain to set; it stands here only with what somebody noted.
        if tuning.is_none() && !matches!(part.is, PartKind::Amplifier(_)) {
            continue;
        }
        told.extend(tuning);
        table.rows.push(row(&part.tag, &channel, Some(load), tuning));
    }
    for tuning in &work.sheet.tunings {
        if !told.contains(&tuning) {
            table
                .rows
                .push(row(&tuning.of, &tuning.channel, None, Some(tuning)));
        }
    }
    if !table.rows.is_empty() {
        table.notes.push(say!("paper-settings-target"));
    }
    table
}

fn row(tag: &str, channel: &str, load: Option<&ChannelLoad>, tuning: Option<&Tuning>) -> Vec<Cell> {
    let plain = Tuning::default();
    let it = tuning.unwrap_or(&plain);
    let (target, known) = match (it.target, load.and_then(target_volts)) {
        (Fact::Unknown, Some(volts)) => (Cell::Number(volts.0), Cell::Said(say!("paper-computed"))),
        (target, _) => (
            target.value().map_or(Cell::Empty, |volts| Cell::Number(volts.0)),
            target.value().map_or(Cell::Empty, |_| crate::cut::known(&target)),
        ),
    };
    let number = |number: Option<f64>| number.map_or(Cell::Empty, Cell::Number);
    vec![
        Cell::text(tag),
        Cell::text(channel),
        number(load.and_then(|it| it.nominal).map(|ohms| ohms.0)),
        number(load.and_then(|it| it.power).map(|watts| watts.0)),
        target,
        known,
        Cell::text(&it.gain),
        number(it.high_pass.value().map(|it| it.0)),
        number(it.low_pass.value().map(|it| it.0)),
        number(it.slope.value().map(|it| it.0)),
        number(it.level.value().map(|it| it.0)),
        number(it.delay.value().map(|it| it.0)),
        if it.turned {
            Cell::Said(say!("paper-turned"))
        } else {
            Cell::Empty
        },
        Cell::text(&it.remark),
    ]
}
