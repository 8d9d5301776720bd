//! Tables that fit the terminal.

use comfy_table::{ContentArrangement, Table, presets};

/// Width to fit when the terminal does not tell.
const WIDTH: u16 = 100;

/// A table with these headings, ruled as lightly as possible.
pub(crate) fn table(headings: &[&str]) -> Table {
    let mut table = Table::new();
    let width = std::env::var("COLUMNS")
        .ok()
        .and_then(|columns| columns.parse().ok())
        .unwrap_or(WIDTH);
    table
        .load_preset(presets::NOTHING)
        .set_content_arrangement(ContentArrangement::Dynamic)
        .set_width(width)
        .set_header(headings.to_vec());
    table
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
