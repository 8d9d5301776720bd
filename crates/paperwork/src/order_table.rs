//! The order list as a table: by the shop's own prices, with what could not be put in.

use crate::order::{Order, OrderLine, Quantity, Section};
use crate::table::{Cell, Column, Table};
use crate::terms::{Per, Price, Terms};
use crate::work::{Becomes, Work};
use model::RunId;
use model::thread::Money;
use words::{Lengths, Saying, Unit, figure, say};

impl Order {
    /// What it all costs by a price list, and how many of its lines have no price there.
    #[must_use]
    pub fn cost(&self, terms: &Terms) -> (Money, usize) {
        let mut missing = 0;
        let mut sum = Money(0);
        for line in &self.lines {
            match price(line, terms) {
                Some(cost) => sum = sum.plus(cost),
                None => missing += 1,
            }
        }
        (sum, missing)
    }
    /// The list.
    #[must_use]
    pub fn table(&self, work: &Work<'_>, terms: &Terms) -> Table {
        let mut table = Table::new(
            "order",
            &[
                Column::words("article"),
                Column::words("section"),
                Column::words("what"),
                Column::number("quantity", Unit::Bare, 0),
                Column::words("unit"),
                Column::number("used", Unit::Bare, 2),
                Column::words("for"),
                Column::number("price", Unit::Bare, 2),
                Column::number("sum", Unit::Bare, 2),
                Column::number("hours", Unit::Bare, 2),
            ],
        );
        for line in &self.lines {
            let (bought, unit) = match line.bought {
                Quantity::Pieces(count) => (Cell::Count(count), Cell::Said(say!("paper-pieces"))),
                Quantity::Metres(metres) => (Cell::WholeLength(metres.0), Cell::LengthUnit),
            };
            let used = match line.used {
                Quantity::Pieces(_) => Cell::Empty,
                Quantity::Metres(metres) => Cell::Length(metres.0),
            };
            let cost = price(line, terms);
            let told = terms
                .prices
                .by_article
                .get(&line.article)
                .copied()
                .unwrap_or_default();
            let is_length = matches!(line.bought, Quantity::Metres(_));
            table.rows.push(vec![
                Cell::text(&line.article),
                Cell::Said(line.section.said()),
                Cell::Said(named(work, line)),
                bought,
                unit,
                used,
                Cell::tags(line.tags.iter().map(String::as_str)),
                price_cell(told, is_length),
                cost.map_or(Cell::Empty, Cell::Money),
                hours_cell(told, is_length),
            ]);
        }
        table.notes.push(say!(
            "paper-order-waste",
            share = figure(terms.waste.0, Unit::Percent)
        ));
        if !terms.prices.by_article.is_empty() {
            let (sum, missing) = self.cost(terms);
            table.notes.push(say!(
                "paper-order-sum",
                sum = crate::quote::money(sum, &work.job.thread.rates),
                missing = missing
            ));
        }
        table.notes.extend(converted(terms));
        table.notes.extend(self.lacking.iter().map(|lacking| {
            say!(
                "paper-lacking",
                tag = &lacking.tag,
                what = model::said::name_of(lacking.property)
            )
        }));
        let kept = |id: &RunId| !work.is_laid(*id) && work.run(*id) != Becomes::Removed;
        let staying = work.sheet.runs.keys().filter(|id| kept(id)).count();
        if staying > 0 {
            table.notes.push(say!("paper-order-staying", count = staying));
        }
        table
    }
}

/// What a line is, with the name that the job has for a thing that stands alone in it.
fn named(work: &Work<'_>, line: &OrderLine) -> Saying {
    let mut tags = line.tags.iter();
    match (line.section, tags.next(), tags.next()) {
        (Section::Parts, Some(tag), None) => match work.sheet.part_by_tag(tag) {
            Some((_, part)) if !part.label.is_empty() => {
                say!("paper-named", name = part.said(), what = &line.what)
            }
            _ => line.what.clone(),
        },
        _ => line.what.clone(),
    }
}

/// The price of all that is bought of it, from the price as the list tells it.
fn price(line: &OrderLine, terms: &Terms) -> Option<Money> {
    let told = terms.prices.by_article.get(&line.article)?;
    let (many, is_length) = match line.bought {
        Quantity::Pieces(count) => (count as f64, false),
        Quantity::Metres(metres) => (metres.0, true),
    };
    Some(told.each?.times(many * told.in_one(is_length)?))
}

/// The price of one piece, or of one of the unit that lengths are read in; nothing where the list has none for it.
pub(crate) fn price_cell(told: Price, is_length: bool) -> Cell {
    match (told.each, told.in_one(is_length)) {
        (Some(each), Some(in_one)) if is_length => Cell::RateOfMetre(each.number() * in_one),
        (Some(each), Some(_)) => Cell::Rate(each),
        _ => Cell::Empty,
    }
}

/// The same of the hours.
pub(crate) fn hours_cell(told: Price, is_length: bool) -> Cell {
    match (told.hours, told.in_one(is_length)) {
        (Some(hours), Some(in_one)) if is_length => Cell::HoursOfMetre(hours.0 * in_one),
        (Some(hours), Some(_)) => Cell::Number(hours.0),
        _ => Cell::Empty,
    }
}

/// What is to be known where the price list has lengths in another unit than the list that is read.
pub(crate) fn converted(terms: &Terms) -> Option<Saying> {
    let shown = Per::of(terms.lengths);
    let other = |price: &&Price| price.per != Per::Piece && price.per != shown && price.each.is_some();
    let count = terms.prices.by_article.values().filter(other).count();
    (count > 0).then(|| {
        let by = match terms.lengths {
            Lengths::Metres => "metre",
            Lengths::Feet => "foot",
        };
        say!("paper-price-converted", count = count, by = by)
    })
}
