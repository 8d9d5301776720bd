//! Tables that fit the terminal.

use crate::speech::{text, words};
use comfy_table::{CellAlignment, ColumnConstraint, ContentArrangement, Table, Width, presets};

/// Blanks beside what stands in a column.
const PADDING: usize = 2;
/// Width to fit when the terminal does not tell.
const WIDTH: u16 = 100;

fn width() -> u16 {
    std::env::var("COLUMNS")
        .ok()
        .and_then(|columns| columns.parse().ok())
        .unwrap_or(WIDTH)
        .max(40)
}

/// A table with these headings, by the ends of their messages `cli-column-…` or as they stand, ruled as lightly as possible.
pub(crate) fn table(headings: &[&str]) -> Table {
    let heading = |name: &&str| {
        let key = format!("cli-column-{name}");
        if words().knows(&key) {
            text(&key)
        } else {
            (*name).to_owned()
        }
    };
    ruled(headings.iter().map(heading).collect())
}

fn ruled(headings: Vec<String>) -> Table {
    let mut table = Table::new();
    table
        .load_preset(presets::NOTHING)
        .set_content_arrangement(ContentArrangement::Dynamic)
        .set_width(width())
        .set_header(headings);
    table
}

/// A list of the papers as a table that fits the terminal, numbers at the right. Columns in which nothing stands are left out.
pub(crate) fn paper(list: &paperwork::Table) -> String {
    let list = list.clone().without(&list.empty_columns());
    let (headings, rows) = (list.headings(words()), list.shown(words()));
    let least = unbroken(&headings, &rows);
    let headings = headings.into_iter().enumerate();
    let headings = headings.map(|(at, heading)| match least.get(at) {
        // A word that is torn into three lines is harder to read than one that is cut.
        Some(width) => cut(&heading, usize::from(*width).saturating_sub(PADDING)),
        None => heading,
    });
    let mut table = ruled(headings.collect());
    for row in rows {
        table.add_row(row);
    }
    for (at, column) in table.column_iter_mut().enumerate() {
        if let Some(width) = least.get(at) {
            column.set_constraint(ColumnConstraint::LowerBoundary(Width::Fixed(*width)));
        }
        let cells = || list.rows.iter().filter_map(|row| row.get(at));
        if cells().any(paperwork::Cell::is_number) {
            column.set_cell_alignment(CellAlignment::Right);
        }
    }
    print(&table)
}

/// Letters of a heading for which a column is made wider than its cells.
const USUAL_HEADING: usize = 12;

/// A heading whose words are no longer than this.
fn cut(heading: &str, most: usize) -> String {
    let fitted = |word: &str| {
        if word.chars().count() <= most {
            word.to_owned()
        } else {
            let kept: String = word.chars().take(most.saturating_sub(1)).collect();
            kept + "…"
        }
    };
    heading
        .split_whitespace()
        .map(fitted)
        .collect::<Vec<_>>()
        .join(" ")
}

/// The least width of every column in which no word is torn, headings included where that fits the terminal, else without;
/// where not even that fits, the widest give way.
fn unbroken(headings: &[String], rows: &[Vec<String>]) -> Vec<u16> {
    let longest = |text: &String| {
        let words = text.split_whitespace().map(|word| word.chars().count());
        words.max().unwrap_or(0)
    };
    let of_cells = |at: usize| rows.iter().filter_map(|row| row.get(at)).map(longest).max();
    let cells: Vec<usize> = (0..headings.len())
        .map(|at| of_cells(at).unwrap_or(0).max(3) + PADDING)
        .collect();
    let heads: Vec<usize> = headings.iter().map(|it| longest(it) + PADDING).collect();
    let all: Vec<usize> = cells
        .iter()
        .zip(&heads)
        .map(|(cell, head)| *head.max(cell))
        .collect();
    let room = usize::from(width());
    let capped =
        |widths: &[usize], most: usize| -> Vec<usize> { widths.iter().map(|it| *it.min(&most)).collect() };
    let fits = |widths: &Vec<usize>| widths.iter().sum::<usize>() <= room;
    let narrower = (1..=room).rev().map(|most| capped(&cells, most));
    // Room that cells leave goes to headings, to all alike, up to words of usual length.
    let headed = (3..=USUAL_HEADING).rev().map(|most| -> Vec<usize> {
        let wanted = cells.iter().zip(&heads);
        wanted
            .map(|(cell, head)| *cell.max(head.min(&(most + PADDING))))
            .collect()
    });
    let found = std::iter::once(all)
        .chain(headed)
        .chain(narrower)
        .find(fits)
        .unwrap_or_default();
    found
        .into_iter()
        .filter_map(|it| u16::try_from(it).ok())
        .collect()
}

/// The table as text, without blanks at line ends.
pub(crate) fn print(table: &Table) -> String {
    let mut out = String::new();
    for line in table.to_string().lines() {
        out.push_str(line.trim_end());
        out.push('\n');
    }
    out
}

/// Markdown with its long lines broken at blanks; what stands in code blocks stays as it is.
pub(crate) fn wrap(text: &str) -> String {
    let most = usize::from(width());
    let mut out = String::new();
    let mut in_block = false;
    for line in text.lines() {
        in_block ^= line.starts_with("```");
        if in_block || line.chars().count() <= most {
            out.push_str(line);
            out.push('\n');
            continue;
        }
        // What is indented stays so on every line that comes of it.
        let indent = line.len() - line.trim_start().len();
        let mut column = 0;
        for word in line.split_whitespace() {
            let length = word.chars().count();
            if column > 0 && column + 1 + length > most {
                out.push('\n');
                column = 0;
            }
            if column > 0 {
                out.push(' ');
                column += 1;
            } else {
                out.push_str(&" ".repeat(indent));
                column = indent;
            }
            out.push_str(word);
            column += length;
        }
        out.push('\n');
    }
    out
}
