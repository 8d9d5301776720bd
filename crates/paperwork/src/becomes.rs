//! What becomes of every thing between two sheets, and what comes of it all: findings cleared and left, metal, money.

use crate::articles::{article, joined};
use crate::quote;
use crate::table::{Cell, Column, Table};
use crate::work::{Becomes, Work};
use checks::Finding;
use model::handling::OnceOut;
use model::thread::Money;
use model::{Run, Sheet};
use ordered::{OrderedMap, OrderedSet};
use words::{Saying, Unit, say};

/// Copper and aluminium, in kilograms.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Metal {
    /// Copper.
    pub copper: f64,
    /// Aluminium.
    pub aluminium: f64,
}

impl Metal {
    fn add(&mut self, other: Self) {
        self.copper += other.copper;
        self.aluminium += other.aluminium;
    }
    /// The conductor of a run: nominal cross-section, times length, times density. `None` while size, length or material is
    /// not known. Shields and insulation do not count.
    #[must_use]
    pub fn of(run: &Run) -> Option<Self> {
        let volume = run.wire.size.value()?.area().0 * run.wire.length.value()?.0;
        let [copper, aluminium] = reference::materials::metal_per_volume(run.wire.material.value()?);
        Some(Self {
            copper: copper * volume,
            aluminium: aluminium * volume,
        })
    }
}

/// A thing and what becomes of it.
#[derive(Clone, Debug, PartialEq)]
pub struct BecomesLine {
    /// Whether it is a run; otherwise a part.
    pub is_run: bool,
    /// Its tag.
    pub tag: String,
    /// What it is.
    pub what: Saying,
    /// What becomes of it.
    pub becomes: Becomes,
    /// What differs.
    pub changes: Vec<Saying>,
    /// Where it goes once it is out.
    pub once_out: Option<OnceOut>,
    /// Who fitted it.
    pub fitted: Saying,
}

/// What becomes of everything.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct WhatBecomes {
    /// A line for every thing of either sheet: parts, then runs.
    pub lines: Vec<BecomesLine>,
    /// Findings of the sheet before that the one that is made has no more.
    pub cleared: Vec<Finding>,
    /// Findings of both.
    pub left: Vec<Finding>,
    /// Findings that only the one that is made has.
    pub added: Vec<Finding>,
    /// Metal by what becomes of it, in kilograms. What is replaced stands under both: what comes out under removed, what comes
    /// in under new.
    pub metal: OrderedMap<Becomes, Metal>,
    /// Runs whose metal is not known.
    pub metal_unknown: OrderedSet<String>,
    /// What was approved costs so much; `None` where a price of it is not known.
    pub approved: Option<Money>,
}

impl WhatBecomes {
    /// How many things become this.
    #[must_use]
    pub fn count(&self, becomes: Becomes) -> usize {
        self.lines.iter().filter(|line| line.becomes == becomes).count()
    }
}

fn no_totals() -> Table {
    Table::new(
        "totals",
        &[
            Column::words("total"),
            Column::number("quantity", Unit::Bare, 2),
            Column::words("unit"),
        ],
    )
}

/// What a finding is about, whatever it says: its check and its things.
fn about(finding: &Finding) -> (&'static str, Vec<model::PartId>, Vec<model::RunId>) {
    let (mut parts, mut runs) = (finding.parts.clone(), finding.runs.clone());
    parts.sort_unstable();
    runs.sort_unstable();
    (finding.check, parts, runs)
}

/// What becomes of everything.
#[must_use]
pub fn what_becomes(work: &Work<'_>) -> WhatBecomes {
    let mut out = WhatBecomes {
        lines: lines(work),
        approved: quote::quote(&work.job.thread).approved,
        ..WhatBecomes::default()
    };
    let settings = &work.job.settings;
    let after = checks::analyse(&work.sheet, settings).findings;
    if let Some((_, sheet)) = &work.before {
        let before = checks::analyse(sheet, settings).findings;
        let now: OrderedSet<_> = after.iter().map(about).collect();
        let was: OrderedSet<_> = before.iter().map(about).collect();
        out.cleared = before
            .into_iter()
            .filter(|it| !now.contains(&about(it)))
            .collect();
        let (left, added) = after.into_iter().partition(|it| was.contains(&about(it)));
        (out.left, out.added) = (left, added);
    } else {
        out.left = after;
    }
    for id in work.all_runs() {
        let becomes = work.run(id);
        let (before, now) = (work.run_before(id), work.sheet.runs.get(&id));
        let mut count = |becomes: Becomes, run: Option<&Run>| {
            let Some(run) = run else { return };
            match Metal::of(run) {
                Some(metal) => out.metal.entry(becomes).or_default().add(metal),
                None => {
                    out.metal_unknown.insert(run.tag.clone());
                }
            }
        };
        match becomes {
            Becomes::Removed => count(Becomes::Removed, before),
            Becomes::New => count(Becomes::New, now),
            Becomes::Replaced => {
                count(Becomes::Removed, before);
                count(Becomes::New, now);
            }
            _ => count(Becomes::Kept, now),
        }
    }
    out
}

fn lines(work: &Work<'_>) -> Vec<BecomesLine> {
    let mut lines = Vec::new();
    for id in work.all_parts() {
        let (before, now) = (work.part_before(id), work.sheet.parts.get(&id));
        let Some(part) = now.or(before) else { continue };
        lines.push(BecomesLine {
            is_run: false,
            tag: part.tag.clone(),
            what: if part.label.is_empty() {
                article(part)
            } else {
                part.said()
            },
            becomes: work.part(id),
            changes: work.part_changes(id),
            once_out: work.once_out(before.map(|it| &it.handling), now.map(|it| &it.handling)),
            fitted: crate::cut::fitted(before.unwrap_or(part).fitted_by),
        });
    }
    for id in work.all_runs() {
        let (before, now) = (work.run_before(id), work.sheet.runs.get(&id));
        let Some(run) = now.or(before) else { continue };
        let sheet = match (now, &work.before) {
            (None, Some((_, sheet))) => sheet,
            _ => &work.sheet,
        };
        lines.push(BecomesLine {
            is_run: true,
            tag: run.tag.clone(),
            what: run_said(sheet, run),
            becomes: work.run(id),
            changes: work.run_changes(id),
            once_out: work.once_out(before.map(|it| &it.handling), now.map(|it| &it.handling)),
            fitted: crate::cut::fitted(before.unwrap_or(run).fitted_by),
        });
    }
    lines
}

/// A run by where it goes: `from B1.+ to F1.in, 16 mm²`.
pub(crate) fn run_said(sheet: &Sheet, run: &Run) -> Saying {
    let end = |end: &model::End| -> Saying {
        end.terminal()
            .map_or_else(|| say!("paper-loose-end"), |at| sheet.written(at).into())
    };
    let (from, to) = (end(&run.from), end(&run.to));
    match run.wire.size.value() {
        Some(size) => say!(
            "paper-run",
            from = from,
            to = to,
            size = crate::table::size_value(size)
        ),
        None => say!("paper-run-any", from = from, to = to),
    }
}

/// What goes with a thing that comes out, if anything is said of it.
pub(crate) fn out_cell(once_out: Option<OnceOut>) -> Cell {
    once_out.map_or(Cell::Empty, |it| Cell::Said(model::said::choice(it.title())))
}

impl WhatBecomes {
    /// A line for every thing. Those that stay as they are come last.
    #[must_use]
    pub fn table(&self) -> Table {
        let mut table = Table::new(
            "becomes",
            &[
                Column::words("becomes"),
                Column::words("tag"),
                Column::words("what"),
                Column::words("changes"),
                Column::words("fitted"),
                Column::words("once-out"),
            ],
        );
        for becomes in [
            Becomes::Removed,
            Becomes::Replaced,
            Becomes::Moved,
            Becomes::Refitted,
            Becomes::Changed,
            Becomes::New,
            Becomes::Kept,
        ] {
            for line in self.lines.iter().filter(|line| line.becomes == becomes) {
                let out = match becomes {
                    Becomes::Removed | Becomes::Replaced | Becomes::Refitted => line.once_out,
                    _ => None,
                };
                table.rows.push(vec![
                    Cell::Said(becomes.said()),
                    Cell::text(&line.tag),
                    Cell::Said(line.what.clone()),
                    if line.changes.is_empty() {
                        Cell::Empty
                    } else {
                        Cell::Said(joined(line.changes.clone(), "paper-semicolon"))
                    },
                    Cell::Said(line.fitted.clone()),
                    out_cell(out),
                ]);
            }
        }
        table
    }
    /// What comes of it, as a list of names and numbers.
    #[must_use]
    pub fn totals(&self, work: &Work<'_>) -> Table {
        let mut table = no_totals();
        let mut row =
            |said: Saying, cell: Cell, unit: Cell| table.rows.push(vec![Cell::Said(said), cell, unit]);
        let pieces = || Cell::Said(say!("paper-things"));
        for becomes in Becomes::ALL {
            row(becomes.said(), Cell::Count(self.count(*becomes)), pieces());
        }
        let findings = || Cell::Said(say!("paper-findings"));
        row(say!("paper-cleared"), Cell::Count(self.cleared.len()), findings());
        row(say!("paper-left"), Cell::Count(self.left.len()), findings());
        row(say!("paper-added"), Cell::Count(self.added.len()), findings());
        let worth = self.worth(work);
        table.rows.extend(worth.rows);
        table.notes.extend(worth.notes);
        table
    }
    /// Metal and money alone, as they stand in the totals.
    #[must_use]
    pub fn worth(&self, work: &Work<'_>) -> Table {
        let mut table = no_totals();
        let mut row =
            |said: Saying, cell: Cell, unit: Cell| table.rows.push(vec![Cell::Said(said), cell, unit]);
        for (becomes, metal) in &self.metal {
            for (kilograms, said) in [
                (metal.copper, say!("paper-copper", becomes = becomes.said())),
                (metal.aluminium, say!("paper-aluminium", becomes = becomes.said())),
            ] {
                if kilograms > 0.0 {
                    row(said, Cell::Number(kilograms), Cell::text("kg"));
                }
            }
        }
        if !work.job.thread.offers.is_empty() {
            let currency = Cell::text(&work.job.thread.rates.currency);
            let sum = self.approved.map_or(Cell::Unknown, Cell::Money);
            row(say!("paper-approved-sum"), sum, currency);
        }
        if !self.metal_unknown.is_empty() {
            let tags: Vec<&str> = self.metal_unknown.iter().map(String::as_str).collect();
            table.notes.push(say!("paper-metal-unknown", runs = tags));
        }
        table
    }
    /// Findings cleared, left and added, in words.
    #[must_use]
    pub fn findings(&self) -> Table {
        let mut table = Table::new(
            "findings",
            &[
                Column::words("becomes"),
                Column::words("grade"),
                Column::words("finding"),
            ],
        );
        for (said, findings) in [
            (say!("paper-cleared"), &self.cleared),
            (say!("paper-left"), &self.left),
            (say!("paper-added"), &self.added),
        ] {
            for finding in findings {
                table.rows.push(vec![
                    Cell::Said(said.clone()),
                    Cell::Said(finding.grade.said()),
                    Cell::Said(finding.what.clone()),
                ]);
            }
        }
        table
    }
}
