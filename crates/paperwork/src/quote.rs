//! The quote: what must, should and could be done, what it costs, what the customer approved and what he refused.

use crate::table::{Cell, Column, Table};
use model::thread::{Decision, Money, Need, Offer, Rates, Thread};
use words::{Saying, Unit, precise, say};

/// Sums of a quote. A sum is `None` where a price of it is not known.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Quote {
    /// By need, in the order of [`Need::ALL`].
    pub by_need: Vec<(Need, usize, Option<Money>)>,
    /// Of everything.
    pub all: Option<Money>,
    /// Of what was approved.
    pub approved: Option<Money>,
    /// Of what was refused.
    pub declined: Option<Money>,
    /// Of what is not decided.
    pub open: Option<Money>,
    /// Of what was found after strip-out, whatever was decided.
    pub extras: Option<Money>,
}

/// The sums of a quote.
#[must_use]
pub fn quote(thread: &Thread) -> Quote {
    let sum = |wanted: &dyn Fn(&Offer) -> bool| {
        thread
            .offers
            .iter()
            .filter(|offer| wanted(offer))
            .try_fold(Money(0), |sum, offer| Some(sum.plus(offer.price(&thread.rates)?)))
    };
    let by_need = Need::ALL
        .iter()
        .map(|need| {
            let count = thread.offers.iter().filter(|offer| offer.need == *need).count();
            (*need, count, sum(&|offer| offer.need == *need))
        })
        .collect();
    Quote {
        by_need,
        all: sum(&|_| true),
        approved: sum(&|offer| offer.decision == Decision::Approved),
        declined: sum(&|offer| offer.decision == Decision::Declined),
        open: sum(&|offer| offer.decision == Decision::Open),
        extras: sum(&|offer| offer.extra_work),
    }
}

/// Money with the sign of its currency.
#[must_use]
pub fn money(money: Money, rates: &Rates) -> Saying {
    let number = precise(money.number(), Unit::Bare, 2);
    if rates.currency.is_empty() {
        say!("as-it-stands", text = number)
    } else {
        say!("paper-money", number = number, currency = &rates.currency)
    }
}

/// Money, or that a price of it is not known.
#[must_use]
pub fn money_or_unknown(sum: Option<Money>, rates: &Rates) -> Saying {
    sum.map_or_else(|| say!("paper-price-unknown"), |sum| money(sum, rates))
}

/// The quote as a list: what must be done first.
#[must_use]
pub fn quote_table(thread: &Thread) -> Table {
    let mut table = Table::new(
        "quote",
        &[
            Column::words("need"),
            Column::words("tag"),
            Column::words("what"),
            Column::words("answers"),
            Column::number("parts-price", Unit::Bare, 2),
            Column::number("hours", Unit::Bare, 2),
            Column::number("sum", Unit::Bare, 2),
            Column::words("decision"),
            Column::words("decided-on"),
            Column::words("extra"),
            Column::words("done"),
        ],
    );
    let rates = &thread.rates;
    for need in Need::ALL {
        for offer in thread.offers.iter().filter(|offer| offer.need == *need) {
            table.rows.push(vec![
                Cell::Said(model::said::choice(need.title())),
                Cell::text(&offer.tag),
                Cell::text(&offer.words),
                Cell::tags(offer.answers.0.iter().map(String::as_str)),
                offer.parts.value().map_or(Cell::Unknown, Cell::Money),
                Cell::number(offer.hours.value().map(|hours| hours.0)),
                offer.price(rates).map_or(Cell::Unknown, Cell::Money),
                Cell::Said(model::said::choice(offer.decision.title())),
                Cell::text(&offer.decided_on),
                if offer.extra_work {
                    Cell::Said(say!("paper-extra-on", on = &offer.added_on))
                } else {
                    Cell::Empty
                },
                if offer.done {
                    Cell::Said(say!("paper-done"))
                } else {
                    Cell::Empty
                },
            ]);
        }
    }
    if thread.offers.is_empty() {
        return table;
    }
    let quote = quote(thread);
    for (need, count, sum) in &quote.by_need {
        if *count > 0 {
            table.notes.push(say!(
                "paper-sum-of",
                what = model::said::choice(need.title()),
                sum = money_or_unknown(*sum, rates)
            ));
        }
    }
    for (decision, sum) in [
        (Decision::Approved, quote.approved),
        (Decision::Declined, quote.declined),
        (Decision::Open, quote.open),
    ] {
        if thread.offers.iter().any(|offer| offer.decision == decision) {
            table.notes.push(say!(
                "paper-sum-of",
                what = model::said::choice(decision.title()),
                sum = money_or_unknown(sum, rates)
            ));
        }
    }
    if thread.offers.iter().any(|offer| offer.extra_work) {
        table.notes.push(say!(
            "paper-sum-of",
            what = say!("paper-extras"),
            sum = money_or_unknown(quote.extras, rates)
        ));
    }
    table
        .notes
        .push(say!("paper-sum-all", sum = money_or_unknown(quote.all, rates)));
    table
}

/// What the customer refused, as a statement: a sentence for each offer, what that leaves, and what it can do. The gravest first.
/// `None` when nothing was refused.
#[must_use]
pub fn refusals(thread: &Thread) -> Option<Vec<Saying>> {
    let refused: Vec<Saying> = Need::ALL
        .iter()
        .flat_map(|need| {
            thread
                .offers
                .iter()
                .filter(move |offer| offer.need == *need && offer.decision == Decision::Declined)
        })
        .map(|offer| {
            let need = model::said::choice(offer.need.title());
            let what: Saying = if offer.words.is_empty() {
                offer.tag.as_str().into()
            } else {
                offer.words.as_str().into()
            };
            if offer.decided_on.is_empty() {
                say!("paper-refused", what = what, need = need)
            } else {
                say!(
                    "paper-refused-on",
                    what = what,
                    need = need,
                    on = &offer.decided_on
                )
            }
        })
        .collect();
    (!refused.is_empty()).then_some(refused)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn thread(text: &str) -> Thread {
        model::text::parse(text)
            .unwrap_or_else(|errors| panic!("{errors}"))
            .thread
    }

    #[test]
    fn sums_are_those_of_the_lines_by_hand() {
        let thread = thread(
            "offer Q1 \"New main feed\" need=must parts-price=84.50 hours=1.5h decision=approved\n\
             offer Q2 \"Grounds\" need=must parts-price=12.00 hours=0.5h decision=approved extra=yes\n\
             offer Q3 \"Tidy the boot\" need=could parts-price=0 hours=2h decision=declined\n\
             offer Q4 \"Tweeters\" need=should parts-price=99.99 hours=0h\n\
             rates currency=EUR hour-price=80.00\n",
        );
        let quote = quote(&thread);
        // 84.50 + 1.5 · 80 = 204.50; 12 + 0.5 · 80 = 52.00; 2 · 80 = 160.00; 99.99.
        assert_eq!(quote.approved, Some(Money(25_650)));
        assert_eq!(quote.declined, Some(Money(16_000)));
        assert_eq!(quote.open, Some(Money(9_999)));
        assert_eq!(quote.extras, Some(Money(5_200)));
        assert_eq!(quote.all, Some(Money(25_650 + 16_000 + 9_999)));
        assert_eq!(refusals(&thread).map(|all| all.len()), Some(1));
    }

    #[test]
    fn a_price_that_is_not_known_leaves_its_sums_open() {
        let thread = thread(
            "offer Q1 \"a\" parts-price=1 hours=1h\noffer Q2 \"b\" need=must parts-price=? hours=0h\n",
        );
        let quote = quote(&thread);
        assert_eq!(quote.all, None, "an hour has no price, and Q2 none at all");
        assert_eq!(quote.declined, Some(Money(0)));
        assert_eq!(refusals(&thread), None);
    }
}
