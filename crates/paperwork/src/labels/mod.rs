//! The label sheet: two labels for every run that we lay, one for each end. A label says which run it is on, where this
//! end goes, and where the other one is. As a list, and as a sheet of labels of real size to cut out.

mod paint;
mod sheet;

pub use paint::{label_document, label_pages};
pub use sheet::{Label, LabelSheet, Placed, Shape, label_sheets};

use crate::cut::{end_text, laid};
use crate::table::{Cell, Column, Table};
use crate::work::Work;

/// The label sheet.
#[must_use]
pub fn label_sheet(work: &Work<'_>) -> Table {
    let mut table = Table::new(
        "labels",
        &[
            Column::words("tag"),
            Column::words("here"),
            Column::words("other-end"),
            Column::words("size"),
            Column::words("colour"),
        ],
    );
    for (_, run) in laid(work) {
        let ends = run.ends();
        for [here, there] in [[ends[0], ends[1]], [ends[1], ends[0]]] {
            table.rows.push(vec![
                Cell::text(&run.tag),
                end_text(work, here),
                end_text(work, there),
                run.wire.size.value().map_or(Cell::Unknown, Cell::Size),
                Cell::Colour(run.wire.jacket),
            ]);
        }
    }
    table
}
