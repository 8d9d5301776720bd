//! Tables that fit the terminal.

use crate::speech::{text, words};
use comfy_table::{CellAlignment, ContentArrangement, Table, presets};

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
    let mut table = ruled(list.headings(words()));
    for row in list.shown(words()) {
        table.add_row(row);
    }
    for (at, column) in table.column_iter_mut().enumerate() {
        let cells = || list.rows.iter().filter_map(|row| row.get(at));
        if cells().any(paperwork::Cell::is_number) {
            column.set_cell_alignment(CellAlignment::Right);
        }
    }
    print(&table)
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
