//! A list as a value: columns with their units, rows of typed cells. Every paper that is a list comes to this, and every
//! painter ([`crate::csv`], [`crate::json`], [`crate::html`], the command line) starts from it.

use crate::terms::Rate;
use model::conductor::{Jacket, Size};
use model::property::PropertyType;
use model::quantity::SquareMm;
use model::thread::Money;
use words::{Lengths, Saying, Unit, Value, Words, as_sold, precise, say};

/// One foot in metres, exactly.
pub(crate) const FOOT: f64 = 0.3048;

/// A column of a list.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Column {
    /// Its written name, the same in every language: `length`.
    pub name: &'static str,
    /// The unit of its numbers.
    pub unit: Unit,
    /// How many decimals its numbers have.
    pub places: u8,
}

impl Column {
    /// A column of words.
    #[must_use]
    pub const fn words(name: &'static str) -> Self {
        Self::number(name, Unit::Bare, 0)
    }
    /// A column of numbers in a unit.
    #[must_use]
    pub const fn number(name: &'static str, unit: Unit, places: u8) -> Self {
        Self { name, unit, places }
    }
    /// Whether it holds tags and the like, which no line break may tear.
    #[must_use]
    pub fn is_unbroken(&self) -> bool {
        const UNBROKEN: &[&str] = &[
            "tag", "end-a", "end-b", "red", "black", "fuse", "size", "material", "becomes", "fitted",
            "decision", "need",
        ];
        UNBROKEN.contains(&self.name)
    }
    /// What stands above it, with its unit: `Length (m)`.
    #[must_use]
    pub fn heading(&self, words: &Words) -> String {
        let name = words.text(&format!("paper-column-{}", self.name));
        let unit = match self.unit {
            Unit::Bare => return name,
            Unit::Metre => length_unit(words),
            Unit::SquareMillimetre => "mm²",
            Unit::Percent => "%",
            Unit::Plain(symbol) => symbol,
        };
        format!("{name} ({unit})")
    }
}

/// What stands in a row at a column.
#[derive(Clone, Debug, PartialEq)]
pub enum Cell {
    /// Nothing: it does not apply, or somebody fills it in by hand.
    Empty,
    /// What nobody knows yet.
    Unknown,
    /// Words of the job: tags, names, remarks.
    Text(String),
    /// Words of the program.
    Said(Saying),
    /// A number in the column's unit.
    Number(f64),
    /// What a meter shows, with the places of one that counts to 2000.
    Reading(f64),
    /// How many.
    Count(usize),
    /// A price.
    Money(Money),
    /// The price of one piece.
    Rate(Rate),
    /// The price of one metre, read by the reader's unit.
    RateOfMetre(f64),
    /// Hours for one metre, read by the reader's unit.
    HoursOfMetre(f64),
    /// A length in metres where the column has no one unit.
    Length(f64),
    /// The same, as it is bought: no less, in whole units.
    WholeLength(f64),
    /// The unit that lengths are read in.
    LengthUnit,
    /// A wire's size.
    Size(Size),
    /// A wire's colour.
    Colour(Jacket),
}

impl Cell {
    /// A number, or that nobody knows it.
    #[must_use]
    pub fn number(number: Option<f64>) -> Self {
        number.map_or(Self::Unknown, Self::Number)
    }
    /// Words of the job, or nothing.
    #[must_use]
    pub fn text(text: impl Into<String>) -> Self {
        let text = text.into();
        if text.is_empty() {
            Self::Empty
        } else {
            Self::Text(text)
        }
    }
    /// Tags with blanks between, or nothing.
    #[must_use]
    pub fn tags<'t>(tags: impl IntoIterator<Item = &'t str>) -> Self {
        let all: Vec<&str> = tags.into_iter().collect();
        Self::text(all.join(" "))
    }
    /// Whether it stands at the right of its column, as numbers do.
    #[must_use]
    pub fn is_number(&self) -> bool {
        matches!(
            self,
            Self::Number(_)
                | Self::Reading(_)
                | Self::Count(_)
                | Self::Money(_)
                | Self::Rate(_)
                | Self::RateOfMetre(_)
                | Self::HoursOfMetre(_)
                | Self::Length(_)
                | Self::WholeLength(_)
        )
    }
    /// As a reader of the list reads it, without the unit of the column.
    #[must_use]
    pub fn shown(&self, column: &Column, words: &Words) -> String {
        let number = |number: f64, places: u8| words.figure(precise(number, Unit::Bare, places));
        match self {
            Self::Empty => String::new(),
            Self::Unknown => "?".to_owned(),
            Self::Text(text) => text.clone(),
            Self::Said(said) => words.say(said).replace('\u{ad}', ""),
            Self::Number(value) => number(in_unit(*value, column.unit, words), column.places),
            Self::Reading(value) => number(*value, places_of(*value)),
            Self::Count(count) => count.to_string(),
            Self::Money(money) => number(money.number(), 2),
            Self::Rate(rate) => number(rate.number(), places_of_price(rate.number())),
            Self::RateOfMetre(price) | Self::HoursOfMetre(price) => {
                let one = of_unit(*price, words);
                number(one, places_of_price(one))
            }
            Self::Length(metres) => number(in_unit(*metres, Unit::Metre, words), column.places),
            Self::WholeLength(metres) => number(whole(*metres, words), 0),
            Self::LengthUnit => length_unit(words).to_owned(),
            Self::Size(size) => words.say(&say!("as-it-stands", text = size_value(*size))),
            Self::Colour(jacket) => words.say(&colour(*jacket)),
        }
    }
}

/// Places behind the sign of what a meter that counts to 2000 shows in its best range.
pub(crate) fn places_of(reading: f64) -> u8 {
    match reading.abs() {
        200.0.. => 0,
        20.0.. => 1,
        2.0.. => 2,
        _ => 3,
    }
}

/// A list.
#[derive(Clone, Debug, PartialEq)]
pub struct Table {
    /// Its written name, the same in every language: `cut`.
    pub name: &'static str,
    /// What is to be known of it: what was assumed, what is not in it.
    pub notes: Vec<Saying>,
    /// Its columns.
    pub columns: Vec<Column>,
    /// Its rows, each with a cell for every column.
    pub rows: Vec<Vec<Cell>>,
}

impl Table {
    /// A list without rows.
    #[must_use]
    pub fn new(name: &'static str, columns: &[Column]) -> Self {
        Self {
            name,
            notes: Vec::new(),
            columns: columns.to_vec(),
            rows: Vec::new(),
        }
    }
    /// What it is called.
    #[must_use]
    pub fn title(&self) -> Saying {
        Saying::new(format!("paper-list-{}", self.name))
    }
    /// Its headings as the reader reads them.
    #[must_use]
    pub fn headings(&self, words: &Words) -> Vec<String> {
        self.columns.iter().map(|column| column.heading(words)).collect()
    }
    /// Its rows as the reader reads them.
    #[must_use]
    pub fn shown(&self, words: &Words) -> Vec<Vec<String>> {
        self.rows
            .iter()
            .map(|row| {
                row.iter()
                    .zip(&self.columns)
                    .map(|(cell, column)| cell.shown(column, words))
                    .collect()
            })
            .collect()
    }
    /// Names of the columns in which nothing stands. Those that are filled in by hand are not among them.
    #[must_use]
    pub fn empty_columns(&self) -> Vec<&'static str> {
        let empty = |at: usize| self.rows.iter().all(|row| row.get(at) == Some(&Cell::Empty));
        self.columns
            .iter()
            .enumerate()
            .filter(|(at, column)| {
                let by_hand = match self.name {
                    "meter" | "proof" => column.name == "read",
                    "order" | "quote" => matches!(column.name, "price" | "parts-price" | "sum" | "hours"),
                    _ => false,
                };
                !by_hand && empty(*at)
            })
            .map(|(_, column)| column.name)
            .collect()
    }
    /// The same without some columns, by name.
    #[must_use]
    pub fn without(mut self, names: &[&str]) -> Self {
        let keep: Vec<bool> = self
            .columns
            .iter()
            .map(|column| !names.contains(&column.name))
            .collect();
        let mut at = keep.iter();
        self.columns.retain(|_| at.next().copied().unwrap_or(true));
        for row in &mut self.rows {
            let mut at = keep.iter();
            row.retain(|_| at.next().copied().unwrap_or(true));
        }
        self
    }
}

/// A number in the unit that the reader reads.
pub(crate) fn in_unit(number: f64, unit: Unit, words: &Words) -> f64 {
    match unit {
        Unit::Percent => number * 100.0,
        Unit::Metre if words.reader().lengths == Lengths::Feet => number / FOOT,
        _ => number,
    }
}

/// What is told for one metre, for one of the unit that lengths are read in.
pub(crate) fn of_unit(of_metre: f64, words: &Words) -> f64 {
    match words.reader().lengths {
        Lengths::Metres => of_metre,
        Lengths::Feet => of_metre * FOOT,
    }
}

/// Places of a price: whole hundredths where it has no finer ones, else four.
pub(crate) fn places_of_price(price: f64) -> u8 {
    let hundredths = price * 100.0;
    if (hundredths - libm::round(hundredths)).abs() < 1e-6 {
        2
    } else {
        4
    }
}

/// A length in the reader's unit, rounded up. A hair above a whole one is that one.
pub(crate) fn whole(metres: f64, words: &Words) -> f64 {
    (in_unit(metres, Unit::Metre, words) - 1e-6).ceil().max(0.0)
}

/// The unit that the reader reads lengths in. A list has one unit from top to bottom, so it is feet alone, never inches.
pub(crate) fn length_unit(words: &Words) -> &'static str {
    match words.reader().lengths {
        Lengths::Metres => "m",
        Lengths::Feet => "ft",
    }
}

/// A size as it is sold: that of the metric series in mm², with the gauge number for who reads gauge numbers.
pub(crate) fn size_value(size: Size) -> Value {
    match size {
        Size::Metric(SquareMm(area)) => as_sold(area, Unit::SquareMillimetre).into(),
        Size::Awg(_) => size.print().replace("AWG", " AWG").into(),
    }
}

/// A colour by its letters and its name: `RD red`.
pub(crate) fn colour(jacket: Jacket) -> Saying {
    let Some(base) = jacket.base else {
        return say!("paper-colour-unknown");
    };
    let base = model::said::choice(base.title());
    match jacket.tracer {
        None => say!("paper-colour", letters = jacket.print(), base = base),
        Some(tracer) => say!(
            "paper-colour-two",
            letters = jacket.print(),
            base = base,
            tracer = model::said::choice(tracer.title())
        ),
    }
}
