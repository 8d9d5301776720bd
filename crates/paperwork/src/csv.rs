//! A list as comma-separated values (RFC 4180): a line of headings, a comma between fields, lines that end in CR LF,
//! fields in quotes where they need it.
//!
//! Numbers stand bare, their unit is in the heading. They have the reader's decimal sign; where that is a comma, the
//! field stands in quotes, as the standard wants it, so that every program reads the same columns in every language. A
//! text that a spreadsheet would take for a formula gets an apostrophe in front: it may come from a stranger's link.

use crate::table::{Cell, Table, in_unit, of_unit, places_of, places_of_price, whole};
use words::{Unit, Words};

/// The list as a file.
#[must_use]
pub fn csv(table: &Table, words: &Words) -> String {
    let mut out = String::new();
    line(&mut out, table.headings(words).into_iter());
    for row in &table.rows {
        let fields = row.iter().zip(&table.columns).map(|(cell, column)| match cell {
            Cell::Number(number) => plain(in_unit(*number, column.unit, words), column.places, words),
            Cell::Reading(number) => plain(*number, places_of(*number), words),
            Cell::Length(metres) => plain(in_unit(*metres, Unit::Metre, words), column.places, words),
            Cell::WholeLength(metres) => plain(whole(*metres, words), 0, words),
            Cell::Money(money) => plain(money.number(), 2, words),
            Cell::Rate(rate) => plain(rate.number(), places_of_price(rate.number()), words),
            Cell::RateOfMetre(price) | Cell::HoursOfMetre(price) => {
                let one = of_unit(*price, words);
                plain(one, places_of_price(one), words)
            }
            _ => guarded(cell.shown(column, words)),
        });
        line(&mut out, fields);
    }
    out
}

/// A number as programs read it: no thin signs, no unit.
fn plain(number: f64, places: u8, words: &Words) -> String {
    if !number.is_finite() {
        return String::new();
    }
    let text = format!("{number:.*}", usize::from(places));
    text.replace('.', &words.reader().language.decimal().to_string())
}

/// A text that no spreadsheet takes for a formula.
fn guarded(text: String) -> String {
    if text.starts_with(['=', '+', '-', '@', '\t', '\r']) {
        format!("'{text}")
    } else {
        text
    }
}

fn line(out: &mut String, fields: impl Iterator<Item = String>) {
    for (at, field) in fields.enumerate() {
        if at > 0 {
            out.push(',');
        }
        if field.contains([',', '"', '\r', '\n']) || field.starts_with(' ') || field.ends_with(' ') {
            out.push('"');
            out.push_str(&field.replace('"', "\"\""));
            out.push('"');
        } else {
            out.push_str(&field);
        }
    }
    out.push_str("\r\n");
}

/// Reads a file of comma-separated values: rows of fields. Lines may end in LF alone, and a semicolon between fields does
/// where the first line has more of them than commas, as spreadsheets write it where the comma is a decimal sign.
#[must_use]
pub fn read(text: &str) -> Vec<Vec<String>> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let first = text.lines().next().unwrap_or_default();
    let between = if first.matches(';').count() > first.matches(',').count() {
        ';'
    } else {
        ','
    };
    let mut rows = Vec::new();
    let (mut row, mut field, mut quoted) = (Vec::new(), String::new(), false);
    let mut signs = text.chars().peekable();
    while let Some(sign) = signs.next() {
        match sign {
            '"' if quoted && signs.peek() == Some(&'"') => {
                field.push('"');
                signs.next();
            }
            '"' if quoted => quoted = false,
            '"' if field.is_empty() => quoted = true,
            '\r' if !quoted && signs.peek() == Some(&'\n') => {}
            '\n' if !quoted => {
                row.push(std::mem::take(&mut field));
                rows.push(std::mem::take(&mut row));
            }
            sign if sign == between && !quoted => row.push(std::mem::take(&mut field)),
            sign => field.push(sign),
        }
    }
    if !field.is_empty() || !row.is_empty() {
        row.push(field);
        rows.push(row);
    }
    rows
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::table::Column;
    use words::{Language, Reader};

    fn sample() -> Table {
        let mut table = Table::new(
            "cut",
            &[
                Column::words("tag"),
                Column::number("cut-length", Unit::Metre, 2),
                Column::words("remark"),
            ],
        );
        table.rows = vec![
            vec![Cell::text("W1"), Cell::Number(1234.5), Cell::text("a \"b\", c")],
            vec![Cell::text("W2"), Cell::Unknown, Cell::text("=1+2")],
            vec![Cell::text("W3"), Cell::Number(-0.25), Cell::text("two\nlines")],
        ];
        table
    }

    #[test]
    fn fields_are_quoted_as_the_standard_wants_it() {
        // ref: RFC 4180, section 2, rules 1, 5, 6 and 7.
        assert_eq!(
            csv(&sample(), &Words::english())
                .split_once("\r\n")
                .map(|(_, rest)| rest),
            Some("W1,1234.50,\"a \"\"b\"\", c\"\r\nW2,?,'=1+2\r\nW3,-0.25,\"two\nlines\"\r\n")
        );
    }

    #[test]
    fn a_decimal_comma_stands_in_quotes() {
        let german = Words::of(Reader {
            language: Language::German,
            ..Reader::default()
        });
        let text = csv(&sample(), &german);
        assert!(text.contains("W1,\"1234,50\","), "{text}");
        let rows = read(&text);
        assert!(rows.iter().all(|row| row.len() == 3), "{rows:?}");
    }

    #[test]
    fn what_is_written_is_read_back() {
        let english = Words::english();
        let rows = read(&csv(&sample(), &english));
        assert_eq!(rows.len(), 4);
        assert_eq!(
            rows.get(1).and_then(|row| row.get(2)).map(String::as_str),
            Some("a \"b\", c")
        );
        assert_eq!(
            rows.get(3).and_then(|row| row.get(2)).map(String::as_str),
            Some("two\nlines")
        );
        // As a spreadsheet writes it where the comma is the decimal sign.
        assert_eq!(read("a;b\n1,5;\"x;y\""), [["a", "b"], ["1,5", "x;y"]]);
        assert!(read("").is_empty());
    }
}
