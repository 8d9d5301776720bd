//! The fuse table: every fuse and breaker, what it guards, what flows through it, and the weakest wire behind it.

use crate::table::{Cell, Column, Table};
use crate::work::Work;
use circuit::{Device, DeviceRef, Study};
use model::PartKind;
use model::quantity::Amps;
use words::{Saying, Unit, say};

/// A device as people write it: `F1`, `D1.out2`.
#[must_use]
pub fn device_text(work: &Work<'_>, device: &DeviceRef) -> String {
    let tag = work.part_tag(device.part);
    match &device.output {
        Some(output) => format!("{tag}.{}", output.as_str()),
        None => tag.to_owned(),
    }
}

/// How a device is built.
fn form(work: &Work<'_>, device: &DeviceRef) -> Option<Saying> {
    match &work.sheet.parts.get(&device.part)?.is {
        PartKind::Fuse(fuse) => Some(model::said::choice(fuse.form.title())),
        PartKind::Block(block) => Some(model::said::choice(block.form.title())),
        PartKind::Breaker(_) => Some(say!("kind-breaker")),
        PartKind::Vehicle(_) => Some(say!("paper-makers-fuse")),
        _ => None,
    }
}

/// The current that the weakest wire behind a device carries for long.
fn weakest(study: &Study, device: &Device) -> Option<Amps> {
    let carries = |id| study.runs.get(id).and_then(|flow| flow.allowable);
    device.guards.iter().filter_map(carries).reduce(Amps::min)
}

const A: Unit = Unit::Plain("A");

/// The fuse table.
#[must_use]
pub fn fuse_table(work: &Work<'_>, study: &Study) -> Table {
    let mut table = Table::new(
        "fuses",
        &[
            Column::words("fuse"),
            Column::words("name"),
            Column::words("form"),
            Column::number("rating", A, 1),
            Column::words("serves"),
            Column::words("guards"),
            Column::number("current-rms", A, 1),
            Column::number("current-burst", A, 1),
            Column::number("weakest", A, 0),
            Column::words("place"),
        ],
    );
    for device in &study.devices {
        let part = work.sheet.parts.get(&device.device.part);
        table.rows.push(vec![
            Cell::text(device_text(work, &device.device)),
            part.map_or(Cell::Empty, |part| Cell::text(&part.label)),
            form(work, &device.device).map_or(Cell::Empty, Cell::Said),
            Cell::number(device.rating.map(|rating| rating.0)),
            Cell::tags(device.serves.iter().map(|id| work.part_tag(*id))),
            Cell::tags(device.guards.iter().map(|id| work.run_tag(*id))),
            Cell::Number(device.current.rms.0.abs()),
            Cell::Number(device.current.burst.0.abs()),
            if device.guards.is_empty() {
                Cell::Empty
            } else {
                Cell::number(weakest(study, device).map(|amps| amps.0))
            },
            part.and_then(|part| part.place.as_deref())
                .map_or(Cell::Empty, |place| Cell::Said(work.place_said(place))),
        ]);
    }
    let conditions = &work.job.settings.conditions;
    table.notes.push(say!(
        "paper-computed-at",
        state = conditions.state.said(),
        duty = conditions.duty.said()
    ));
    table
}
