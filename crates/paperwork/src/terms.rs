//! What a shop reckons with when it orders and cuts, and its own price list.

use crate::csv;
use crate::table::FOOT;
use assist::sizing::Prices;
use model::property::PropertyType;
use model::quantity::{Hours, Metres, Share};
use model::thread::Money;
use ordered::OrderedMap;
use words::{Lengths, Words};

/// What a shop reckons with.
#[derive(Clone, Debug, PartialEq)]
pub struct Terms {
    /// Share of the cable that is lost to cutting and to what is left on the reel.
    pub waste: Share,
    /// Length left over at each end of a run whose own slack nobody told, and whose length was told and not computed:
    /// a computed one has what its ends need in it.
    pub spare: Metres,
    /// The shop's prices.
    pub prices: PriceList,
    /// What cable is bought in: whole metres or whole feet.
    pub lengths: Lengths,
}

impl Terms {
    /// The usual ones, for who buys cable in the unit that lengths are read in.
    #[must_use]
    pub fn read_by(words: &Words) -> Self {
        Self {
            lengths: words.reader().lengths,
            ..Self::default()
        }
    }
}

impl Default for Terms {
    /// A tenth of waste and a hand's breadth at each end: common practice. Shops reckon with 5 % to 15 %, and 5 cm to
    /// 20 cm.
    fn default() -> Self {
        Self {
            waste: Share(0.1),
            spare: Metres(0.1),
            prices: PriceList::default(),
            lengths: Lengths::Metres,
        }
    }
}

/// What a price of the list is for one of.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Per {
    /// A piece.
    #[default]
    Piece,
    /// A metre.
    Metre,
    /// A foot.
    Foot,
}

impl Per {
    /// The unit of a length, for an article that is sold by it.
    pub(crate) fn of(lengths: Lengths) -> Self {
        match lengths {
            Lengths::Metres => Self::Metre,
            Lengths::Feet => Self::Foot,
        }
    }
    /// How many metres it has; nothing for a piece.
    pub(crate) fn metres(self) -> Option<f64> {
        match self {
            Self::Piece => None,
            Self::Metre => Some(1.0),
            Self::Foot => Some(FOOT),
        }
    }
    /// The unit as a list writes it, in any language; a list without units has its lengths in metres.
    fn read(unit: &str, article: &str, words: &Words) -> Option<Self> {
        let pieces = headings("pieces", "paper-pieces", words);
        match unit.to_lowercase().as_str() {
            "" if is_by_length(article) => Some(Self::Metre),
            "" => Some(Self::Piece),
            "m" | "metre" | "meter" | "metres" | "meters" => Some(Self::Metre),
            "ft" | "foot" | "feet" | "fuß" => Some(Self::Foot),
            unit => pieces
                .iter()
                .any(|it| it.to_lowercase() == unit)
                .then_some(Self::Piece),
        }
    }
}

/// Whether an article is always sold by its length, by its written name.
fn is_by_length(article: &str) -> bool {
    ["cable ", "tube ", "sleeve "]
        .iter()
        .any(|kind| article.starts_with(kind))
}

/// A price in ten-thousandths of a currency: fine enough for a foot of what is priced by the metre.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Rate(pub i64);

impl Rate {
    /// Reads `1.60`, `0,4877`.
    fn read(text: &str) -> Option<Self> {
        let (whole, part) = text.split_once(['.', ',']).unwrap_or((text, ""));
        if part.len() <= 2 {
            return Money::parse(text, None)
                .ok()
                .map(|money| Self(money.0.saturating_mul(100)));
        }
        // Both halves as money reads them, so that its bounds hold here too.
        let (cents, rest) = part.split_at_checked(2)?;
        let money = Money::parse(&format!("{whole}.{cents}"), None).ok()?;
        let digits = rest.len() <= 2 && rest.chars().all(|sign| sign.is_ascii_digit());
        let rest: i64 = format!("{rest:0<2}").parse().ok().filter(|_| digits)?;
        Some(Self(money.0.saturating_mul(100).saturating_add(rest)))
    }
    /// The number of the currency's whole units.
    #[must_use]
    pub fn number(self) -> f64 {
        self.0 as f64 / 10_000.0
    }
    /// What so many cost, rounded once to the nearest hundredth.
    #[must_use]
    pub fn times(self, many: f64) -> Money {
        // Through hundredths of hundredths: a hair that division leaves does not turn a half.
        Money(100).times(libm::round(self.number() * many * 1e6) / 1e6)
    }
}

/// What one article costs, and how long it takes to fit.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Price {
    /// Price of one.
    pub each: Option<Rate>,
    /// Hours of work for one.
    pub hours: Option<Hours>,
    /// One of what.
    pub per: Per,
}

impl Price {
    /// How many of what the price is for lie in one piece, or in one metre. Nothing where a price by the piece is asked for a
    /// length, or the other way round.
    pub(crate) fn in_one(self, is_length: bool) -> Option<f64> {
        match self.per.metres() {
            Some(metres) if is_length => Some(1.0 / metres),
            None if !is_length => Some(1.0),
            _ => None,
        }
    }
}

/// A shop's prices, by the written names of articles: an order list that the shop filled in.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PriceList {
    /// By article.
    pub by_article: OrderedMap<String, Price>,
    /// Lines of the file whose price, hours or unit could not be read, counted from 1.
    pub unread: Vec<usize>,
}

impl PriceList {
    /// Reads an order list that was filled in: the columns are found by their headings, in any language, or
    /// by their written names. Prices and hours may have either decimal sign. Of what is sold by
    /// its length the unit tells whether a price is that of a metre or of a foot. Lines without a price say nothing.
    #[must_use]
    pub fn read(text: &str, words: &Words) -> Self {
        let mut list = Self::default();
        let rows = csv::read(text);
        let Some((head, rows)) = rows.split_first() else {
            return list;
        };
        let at = |name: &str| {
            let known = headings(name, &format!("paper-column-{name}"), words);
            head.iter()
                .map(|heading| heading.trim())
                .position(|heading| heading == name || known.iter().any(|it| it == heading))
        };
        let (Some(article), price, hours, unit) = (at("article"), at("price"), at("hours"), at("unit"))
        else {
            return list;
        };
        for (line, row) in rows.iter().enumerate() {
            let field = |at: Option<usize>| at.and_then(|at| row.get(at)).map_or("", |field| field.trim());
            let mut wrong = false;
            let key = field(Some(article));
            let each = read_as(field(price), Rate::read, &mut wrong);
            let hours = read_as(
                field(hours),
                |text| Hours::parse(text, Some((0.0, 1000.0))).ok(),
                &mut wrong,
            );
            let per = Per::read(field(unit), key, words);
            let says = !key.is_empty() && (each.is_some() || hours.is_some());
            // A price for one of nobody knows what is no price.
            if wrong || (says && per.is_none()) {
                list.unread.push(line + 2);
            }
            if let Some(per) = per.filter(|_| says) {
                list.by_article.insert(key.to_owned(), Price { each, hours, per });
            }
        }
        list
    }
}

/// What a list that was printed in another language has where English has something else. The texts of a language are not there
/// while another one is read, but the shop's list stays the same when the reader changes.
const ELSEWHERE: [(&str, &str); 5] = [
    ("article", "Artikel"),
    ("price", "Preis"),
    ("hours", "Stunden"),
    ("unit", "Einheit"),
    ("pieces", "St."),
];

/// How a message may stand in a list: in the reader's language, in English, and elsewhere.
fn headings(name: &str, key: &str, words: &Words) -> Vec<String> {
    let elsewhere = ELSEWHERE.iter().filter(|it| it.0 == name);
    [words.text(key), Words::english().text(key)]
        .into_iter()
        .chain(elsewhere.map(|it| it.1.to_owned()))
        .collect()
}

/// Sizes are chosen by the same prices as a quote is made with.
impl Prices for PriceList {
    fn wire(&self, wire: &model::Wire) -> Option<f64> {
        let article = crate::order::cable_article(wire, wire.size.value()?);
        let price = self.by_article.get(&article)?;
        Some(price.each?.number() * price.in_one(true)?)
    }
    fn device(&self, kind: &model::PartKind, rating: model::quantity::Amps) -> Option<Money> {
        let article = crate::order::fuse_article(form_of(kind)?.word(), rating);
        let price = self.by_article.get(&article)?;
        Some(price.each?.times(price.in_one(false)?))
    }
}

/// The form of the fuses that go into a part.
pub(crate) fn form_of(kind: &model::PartKind) -> Option<model::kinds::supply::FuseForm> {
    match kind {
        model::PartKind::Fuse(fuse) => Some(fuse.form),
        model::PartKind::Block(block) => Some(block.form),
        _ => None,
    }
}

fn read_as<T>(text: &str, read: impl Fn(&str) -> Option<T>, wrong: &mut bool) -> Option<T> {
    if text.is_empty() {
        return None;
    }
    let value = read(text);
    *wrong |= value.is_none();
    value
}
