//! The return to stock: what comes out of the vehicle, and what goes back in, should it ever be as its maker left it.

use crate::articles::{article, joined};
use crate::becomes::{out_cell, run_said};
use crate::table::{Cell, Column, Table};
use crate::work::{Becomes, Work};
use model::conductor::FittedBy;
use model::handling::{Handling, OnceOut};
use model::kinds::supply::GroundSurface;
use model::{PartKind, SheetKind};
use words::{Saying, say};

/// What a thing of the maker's is after the work.
fn back(becomes: Becomes, once_out: Option<OnceOut>) -> Option<Saying> {
    match becomes {
        Becomes::Removed | Becomes::Replaced => Some(match once_out {
            Some(OnceOut::Kept) => say!("paper-stock-back"),
            Some(OnceOut::Customer) => say!("paper-stock-customer"),
            Some(OnceOut::Shop | OnceOut::Scrap) => say!("paper-stock-gone"),
            None => say!("paper-stock-unknown"),
        }),
        Becomes::Moved => Some(say!("paper-stock-undo")),
        Becomes::Kept | Becomes::Refitted | Becomes::New | Becomes::Changed => None,
    }
}

/// Whether a part is a ground stud that came with the vehicle.
fn is_makers_stud(kind: &PartKind) -> bool {
    matches!(kind, PartKind::Ground(ground) if ground.surface.value() == Some(GroundSurface::MakersPoint))
}

/// The return to stock: first what comes out, then what goes back or is made as it was.
#[must_use]
pub fn return_to_stock(work: &Work<'_>) -> Table {
    let mut table = Table::new(
        "stock",
        &[
            Column::words("step"),
            Column::words("tag"),
            Column::words("what"),
            Column::words("changes"),
            Column::words("place"),
            Column::words("once-out"),
        ],
    );
    for (id, part) in &work.sheet.parts {
        // What is the maker's on the drawing, but was bought by us, is no return to stock. A stud of the maker's stays, whoever
        // found a use for it: what is on it goes with its run.
        let own = (part.fitted_by == FittedBy::Maker && !work.is_bought(*id)) || is_makers_stud(&part.is);
        if !own {
            table.rows.push(vec![
                Cell::Said(say!("paper-stock-out")),
                Cell::text(&part.tag),
                Cell::Said(if part.label.is_empty() {
                    article(part)
                } else {
                    part.said()
                }),
                Cell::Empty,
                part.place
                    .as_deref()
                    .map_or(Cell::Empty, |place| Cell::Said(work.place_said(place))),
                Cell::Empty,
            ]);
        }
    }
    let runs: Vec<&str> = work
        .sheet
        .runs
        .iter()
        .filter(|(id, run)| run.fitted_by != FittedBy::Maker || work.is_laid(**id))
        .map(|(_, run)| run.tag.as_str())
        .collect();
    if !runs.is_empty() {
        table.rows.push(vec![
            Cell::Said(say!("paper-stock-out")),
            Cell::tags(runs.iter().copied()),
            Cell::Said(say!("handover-runs", count = runs.len())),
            Cell::Empty,
            Cell::Empty,
            Cell::Empty,
        ]);
    }
    let Some((_, before)) = &work.before else {
        if work.kind != SheetKind::Found {
            table.notes.push(say!("paper-stock-no-found"));
        }
        return table;
    };
    let mut row =
        |what: Saying, tag: &str, handling: [Option<&Handling>; 2], becomes, changes: Vec<Saying>, place| {
            let out = work.once_out(handling[0], handling[1]);
            // A state that was found, such as a plug left apart, is no way in which the maker built it.
            let undo = || (!changes.is_empty()).then(|| say!("paper-stock-undo"));
            let step = if becomes == Becomes::Changed {
                undo()
            } else {
                back(becomes, out)
            };
            if let Some(step) = step {
                let changed = matches!(becomes, Becomes::Moved | Becomes::Changed);
                table.rows.push(vec![
                    Cell::Said(step),
                    Cell::text(tag),
                    Cell::Said(what),
                    if changed && !changes.is_empty() {
                        Cell::Said(joined(changes, "paper-semicolon"))
                    } else {
                        Cell::Empty
                    },
                    place,
                    if changed { Cell::Empty } else { out_cell(out) },
                ]);
            }
        };
    for (id, part) in before
        .parts
        .iter()
        .filter(|(_, it)| it.fitted_by == FittedBy::Maker)
    {
        let place = part.place.as_deref();
        row(
            part.said(),
            &part.tag,
            [
                Some(&part.handling),
                work.sheet.parts.get(id).map(|it| &it.handling),
            ],
            work.part(*id),
            // Of parts only where they are can be put back; the rest is their state.
            if work.part(*id) == Becomes::Moved {
                work.part_changes(*id)
            } else {
                Vec::new()
            },
            place.map_or(Cell::Empty, |place| Cell::Said(work.place_said(place))),
        );
    }
    for (id, run) in before
        .runs
        .iter()
        .filter(|(_, it)| it.fitted_by == FittedBy::Maker)
    {
        row(
            run_said(before, run),
            &run.tag,
            [
                Some(&run.handling),
                work.sheet.runs.get(id).map(|it| &it.handling),
            ],
            work.run(*id),
            work.run_changes(*id),
            Cell::Empty,
        );
    }
    table
}
