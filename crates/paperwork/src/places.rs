//! The list of parts: what is where, what it is, how it is fixed, who fitted it.

use crate::articles::{article, property_said};
use crate::cut::fitted;
use crate::table::{Cell, Column, Table};
use crate::work::Work;
use words::{Value, say};

/// The list of parts of the sheet that is made.
#[must_use]
pub fn parts_list(work: &Work<'_>) -> Table {
    let mut table = Table::new(
        "parts",
        &[
            Column::words("tag"),
            Column::words("name"),
            Column::words("what"),
            Column::words("place"),
            Column::words("mounted"),
            Column::words("fitted"),
            Column::words("remark"),
        ],
    );
    for part in work.sheet.parts.values() {
        let mounted = property_said(&part.mounting, "mounted");
        table.rows.push(vec![
            Cell::text(&part.tag),
            Cell::text(&part.label),
            Cell::Said(article(part)),
            part.place
                .as_deref()
                .map_or(Cell::Empty, |place| Cell::Said(work.place_said(place))),
            match mounted {
                Some(Value::Saying(said)) => Cell::Said(*said),
                Some(value) => Cell::Said(say!("as-it-stands", text = value)),
                None => Cell::Empty,
            },
            Cell::Said(fitted(part.fitted_by)),
            Cell::text(&part.note),
        ]);
    }
    table
}
