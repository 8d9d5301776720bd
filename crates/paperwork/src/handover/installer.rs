//! What the next installer gets: the drawing, what differs from before, and every table.

use super::Told;
use super::page::Page;
use super::picture::{difference, from_above, large};
use crate::lists::{List, lists};
use crate::table::Cell;
use crate::terms::Terms;
use crate::work::Becomes;
use words::say;

/// The lists, in the order in which one who stands before the car asks for them: before the drawing, as wide as it, after it.
const BEFORE: &[List] = &[List::Fuses, List::Settings, List::Readings];
const WIDE: &[List] = &[List::Wiring];
const AFTER: &[List] = &[List::Parts, List::Meter, List::Becomes, List::Stock];

pub(super) fn write(page: &mut Page<'_>, told: &Told<'_>) {
    page.title(&say!("handover-for-installer", title = told.title()));
    page.facts(&told.title_block());
    page.care(&checks::care());
    let conditions = &told.job.settings.conditions;
    page.paragraph(&say!(
        "handover-conditions",
        state = conditions.state.said(),
        duty = conditions.duty.said(),
        profile = model::said::choice(conditions.profile.title())
    ));
    tables(page, told, BEFORE, "");
    let (whole, parts) = large(&told.after, &told.after_analysis, told.words);
    page.wide(&say!("handover-drawing", sheet = told.work.kind.said()), |page| {
        page.drawing(&whole, &told.work.heading());
    });
    let count = parts.len();
    for (number, (part, svg)) in parts.into_iter().enumerate() {
        let title = say!(
            "handover-drawing-part",
            sheet = told.work.kind.said(),
            part = number + 1,
            count = count
        );
        page.wide(&title, |page| {
            let place = say!("handover-drawing-place", row = part.row, column = part.column);
            page.drawing(&svg, &place);
        });
    }
    if let Some((kind, sheet, _)) = &told.before {
        page.wide(&say!("handover-difference"), |page| {
            let svg = difference(
                (told.work.kind, &told.after),
                (*kind, sheet),
                &told.after_analysis,
                told.words,
            );
            page.drawing(&svg, &told.work.heading());
        });
    }
    if let Some(svg) = from_above(&told.after, told.job, told.words) {
        page.wide(&say!("handover-from-above"), |page| {
            page.drawing(&svg, &say!("handover-from-above-shows"));
        });
    }
    tables(page, told, WIDE, "wide");
    tables(page, told, AFTER, "");
}

fn tables(page: &mut Page<'_>, told: &Told<'_>, wanted: &[List], class: &str) {
    for mut table in lists(told.work, &Terms::default(), wanted) {
        if table.name == "becomes" {
            // What stays as it is stands in the lists before.
            let kept = Cell::Said(Becomes::Kept.said());
            table.rows.retain(|row| row.first() != Some(&kept));
        }
        if !table.rows.is_empty() {
            page.section(&table.title(), class, |page| page.table(&table));
        }
    }
}
