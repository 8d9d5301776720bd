//! The order list as a table: by the shop's own prices, with what could not be put in.

use crate::order::{Order, OrderLine, Quantity, Section};
use crate::table::{Cell, Column, Table};
use crate::terms::Terms;
use crate::work::{Becomes, Work};
use model::RunId;
use model::thread::Money;
use words::{Saying, Unit, figure, say};

impl Order {
    /// What it all costs by a price list, and how many of its lines have no price there.
    #[must_use]
    pub fn cost(&self, terms: &Terms) -> (Money, usize) {
        let mut missing = 0;
        let mut sum = Money(0);
        for line in &self.lines {
            match price(line, terms) {
                Some((_, cost)) => sum = sum.plus(cost),
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
            let hours = terms
                .prices
                .by_article
                .get(&line.article)
                .and_then(|price| price.hours);
            table.rows.push(vec![
                Cell::text(&line.article),
                Cell::Said(line.section.said()),
                Cell::Said(named(work, line)),
                bought,
                unit,
                used,
                Cell::tags(line.tags.iter().map(String::as_str)),
                cost.map_or(Cell::Empty, |(each, _)| Cell::Money(each)),
                cost.map_or(Cell::Empty, |(_, sum)| Cell::Money(sum)),
                hours.map_or(Cell::Empty, |hours| Cell::Number(hours.0)),
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

/// The price of one and of all.
fn price(line: &OrderLine, terms: &Terms) -> Option<(Money, Money)> {
    let each = terms.prices.by_article.get(&line.article)?.each?;
    let many = match line.bought {
        Quantity::Pieces(count) => count as f64,
        Quantity::Metres(metres) => metres.0,
    };
    Some((each, each.times(many)))
}
