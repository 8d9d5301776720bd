//! The cut list: every run that we lay, with what is cut from the reel for it. And the wiring table, which has them all.

use crate::table::{Cell, Column, Table};
use crate::terms::Terms;
use crate::work::{Work, endings};
use model::conductor::{EndingMethod, FittedBy};
use model::quantity::Metres;
use model::{End, Fact, Run, RunId};
use ordered::Sort as _;
use words::{Saying, Unit, figure, say};

/// What is cut for a run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cut {
    /// Length to be cut, what is left over at both ends included; rounded up to the centimetre.
    pub length: Metres,
    /// What of it is left over.
    pub slack: Metres,
    /// Whether somebody told how much is to be left over.
    pub slack_told: bool,
}

/// What is cut for a run; `None` while its length is not known.
#[must_use]
pub fn cut(run: &Run, terms: &Terms) -> Option<Cut> {
    let length = run.wire.length.value()?;
    let (slack, slack_told) = match run.laying.slack.value() {
        Some(slack) => (slack, true),
        // A computed length has what its ends need in it.
        None if run.wire.length.is_computed() => (Metres(0.0), false),
        None => (terms.spare * 2.0, false),
    };
    // A hair above a whole centimetre is that centimetre.
    let whole = ((length + slack).0 * 100.0 - 1e-6).ceil() / 100.0;
    Some(Cut {
        length: Metres(whole.max(0.0)),
        slack,
        slack_told,
    })
}

/// How a value is known, for a column.
pub(crate) fn known<T>(fact: &Fact<T>) -> Cell {
    match fact {
        Fact::Given(_) => Cell::Empty,
        Fact::Assumed(_) => Cell::Said(say!("paper-assumed")),
        Fact::Computed(_) => Cell::Said(say!("paper-computed")),
        Fact::Unknown => Cell::Unknown,
    }
}

/// Where an end is, as people write it: `F1.in`, or that it is loose.
pub(crate) fn end_text(work: &Work<'_>, end: &End) -> Cell {
    match end.terminal() {
        Some(at) => Cell::text(work.sheet.written(at)),
        None => Cell::Said(say!("paper-loose")),
    }
}

/// How an end is finished.
pub(crate) fn ending_text(run: &Run, end: usize) -> Cell {
    match endings(run)[end.min(1)].method.value() {
        Some(method) => Cell::Said(ending_said(method)),
        None => Cell::Unknown,
    }
}

/// How an end is finished, in a word.
pub(crate) fn ending_said(method: EndingMethod) -> Saying {
    Saying::new(format!("paper-end-{}", method.word()))
}

const COLUMNS: [Column; 11] = [
    Column::words("tag"),
    Column::words("name"),
    Column::words("size"),
    Column::words("colour"),
    Column::words("material"),
    Column::number("cut-length", Unit::Metre, 2),
    Column::words("known"),
    Column::words("end-a"),
    Column::words("finish-a"),
    Column::words("end-b"),
    Column::words("finish-b"),
];

fn row(work: &Work<'_>, run: &Run, length: Cell) -> Vec<Cell> {
    let wire = &run.wire;
    vec![
        Cell::text(&run.tag),
        Cell::text(&run.label),
        wire.size.value().map_or(Cell::Unknown, Cell::Size),
        Cell::Colour(wire.jacket),
        wire.material
            .value()
            .map_or(Cell::Unknown, |it| Cell::Said(model::said::choice(it.title()))),
        length,
        known(&wire.length),
        end_text(work, &run.from),
        ending_text(run, 0),
        end_text(work, &run.to),
        ending_text(run, 1),
    ]
}

/// The runs that are cut from the reel, in the order of the sheet.
pub(crate) fn laid<'w>(work: &'w Work<'_>) -> impl Iterator<Item = (RunId, &'w Run)> {
    work.sheet
        .runs
        .iter()
        .filter(|(id, _)| work.is_laid(**id))
        .map(|(id, run)| (*id, run))
}

/// The cut list.
#[must_use]
pub fn cut_list(work: &Work<'_>, terms: &Terms) -> Table {
    let mut table = Table::new("cut", &COLUMNS);
    let mut spared = false;
    for (_, run) in laid(work) {
        let cut = cut(run, terms);
        spared |= cut.is_some_and(|it| !it.slack_told && it.slack.0 > 0.0);
        table
            .rows
            .push(row(work, run, Cell::number(cut.map(|it| it.length.0))));
    }
    if spared {
        let spare = say!("paper-cut-spare", spare = figure(terms.spare.0, Unit::Metre));
        table.notes.push(spare);
    }
    table
}

/// The wiring table: every run of the sheet as it lies, who fitted it and the way it takes.
#[must_use]
pub fn wiring_table(work: &Work<'_>) -> Table {
    let mut columns: Vec<Column> = COLUMNS
        .iter()
        .map(|column| match column.name {
            "cut-length" => Column::number("length", Unit::Metre, 2),
            _ => *column,
        })
        .collect();
    columns.push(Column::words("fitted"));
    columns.push(Column::words("route"));
    let mut table = Table::new("wiring", &columns);
    // One looks a tag up: W2 before W11, whoever fitted it.
    let mut runs: Vec<&Run> = work.sheet.runs.values().collect();
    runs.order_by(|a, b| counted(&a.tag).cmp(&counted(&b.tag)));
    for run in runs {
        let length = Cell::number(run.wire.length.value().map(|length| length.0));
        let mut row = row(work, run, length);
        row.push(Cell::Said(fitted(run.fitted_by)));
        row.push(work.way_said(run).map_or(Cell::Empty, Cell::Said));
        table.rows.push(row);
    }
    table
}

/// A tag for putting in order: what stands before its number, the number, all of it.
fn counted(tag: &str) -> (&str, u64, &str) {
    let letters = tag.trim_end_matches(|sign: char| sign.is_ascii_digit());
    let number = tag.strip_prefix(letters).and_then(|it| it.parse().ok());
    (letters, number.unwrap_or(0), tag)
}

/// Who fitted a thing, in a word.
pub(crate) fn fitted(by: FittedBy) -> Saying {
    Saying::new(format!("paper-fitted-{}", by.word()))
}
