//! The prices that sizes are chosen by, to be filled in: every cable and every fuse that is weighed, with what the shop's list already
//! says of it. Handed out as a table file, filled in and taken in again it is the shop's price list.

use crate::order::{Section, cable_article, cable_said, fuse_article, fuse_said};
use crate::order_table::{converted, hours_cell, price_cell};
use crate::table::{Cell, Column, Table};
use crate::terms::{Terms, form_of};
use crate::work::Work;
use assist::sizing::{Article, articles};
use ordered::OrderedMap;
use words::{Saying, Unit, say};

/// Every cable and fuse that may be chosen, thin ones first.
#[must_use]
pub fn price_sheet(work: &Work<'_>, terms: &Terms) -> Table {
    let mut lines: OrderedMap<(Section, u32, String), Saying> = OrderedMap::new();
    for article in articles(&work.sheet, &work.job.settings) {
        let line = match &article {
            Article::Wire(wire) => wire.size.value().map(|size| {
                let (area, name) = (size.area().0, cable_article(wire, size));
                ((Section::Cable, hundredths(area), name), cable_said(wire, size))
            }),
            Article::Device(kind, rating) => form_of(kind).map(|form| {
                let name = fuse_article(form.word(), *rating);
                let key = (Section::Fuses, hundredths(rating.0), name);
                (key, fuse_said(form.said(), *rating))
            }),
        };
        lines.extend(line);
    }
    let mut table = Table::new(
        "prices",
        &[
            Column::words("article"),
            Column::words("section"),
            Column::words("what"),
            Column::words("unit"),
            Column::number("price", Unit::Bare, 2),
            Column::number("hours", Unit::Bare, 2),
        ],
    );
    for ((section, _, article), what) in lines {
        let is_cable = section == Section::Cable;
        let price = terms.prices.by_article.get(&article).copied().unwrap_or_default();
        table.rows.push(vec![
            Cell::text(&article),
            Cell::Said(section.said()),
            Cell::Said(what),
            if is_cable {
                Cell::LengthUnit
            } else {
                Cell::Said(say!("paper-pieces"))
            },
            price_cell(price, is_cable),
            hours_cell(price, is_cable),
        ]);
    }
    table.notes.push(say!("paper-prices-how"));
    table.notes.extend(converted(terms));
    table
}

/// Hundredths tell every size of both series, and every rating, from its neighbours.
fn hundredths(number: f64) -> u32 {
    (number * 100.0).round().clamp(0.0, 1e9) as u32
}
