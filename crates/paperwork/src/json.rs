//! A list as JSON for other programs: the same in every language, numbers in SI units, words in English.

use crate::table::{Cell, Table};
use model::property::PropertyType;
use serde_json::{Map, Number, Value, json};
use words::{Unit, Words};

/// The list as JSON: its name, its columns with their units, and a row as an object by the names of the columns. What
/// does not apply is left out, what nobody knows is `null`.
#[must_use]
pub fn json(table: &Table) -> Value {
    let words = Words::english();
    let columns: Vec<Value> = table
        .columns
        .iter()
        .map(|column| match column.unit {
            Unit::Bare => json!({"name": column.name}),
            Unit::Metre => json!({"name": column.name, "unit": "m"}),
            Unit::SquareMillimetre => json!({"name": column.name, "unit": "mm2"}),
            Unit::Percent => json!({"name": column.name, "unit": "1"}),
            Unit::Plain(symbol) => json!({"name": column.name, "unit": symbol}),
        })
        .collect();
    let rows: Vec<Value> = table
        .rows
        .iter()
        .map(|row| {
            let mut object = Map::new();
            for (cell, column) in row.iter().zip(&table.columns) {
                let value = match cell {
                    Cell::Empty => continue,
                    Cell::Unknown => Value::Null,
                    Cell::Number(number)
                    | Cell::Reading(number)
                    | Cell::Length(number)
                    | Cell::WholeLength(number) => number_of(*number),
                    Cell::Count(count) => (*count).into(),
                    Cell::Money(money) => number_of(money.number()),
                    Cell::Rate(rate) => number_of(rate.number()),
                    Cell::RateOfMetre(of_metre) | Cell::HoursOfMetre(of_metre) => number_of(*of_metre),
                    Cell::LengthUnit => "m".into(),
                    Cell::Size(size) => size.print().into(),
                    Cell::Colour(jacket) if jacket.base.is_none() => Value::Null,
                    Cell::Colour(jacket) => jacket.print().into(),
                    Cell::Text(text) => text.as_str().into(),
                    Cell::Said(said) => words.say(said).replace('\u{ad}', "").into(),
                };
                object.insert(column.name.to_owned(), value);
            }
            Value::Object(object)
        })
        .collect();
    let notes: Vec<String> = table.notes.iter().map(|note| words.say(note)).collect();
    json!({"list": table.name, "columns": columns, "rows": rows, "notes": notes})
}

/// To nine figures: what lies behind is the noise of adding up, and would make two equal lists differ.
fn number_of(number: f64) -> Value {
    let short = format!("{number:.9}").parse().ok().and_then(Number::from_f64);
    short.map_or(Value::Null, Value::Number)
}
