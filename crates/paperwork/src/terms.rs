//! What a shop reckons with when it orders and cuts, and its own price list.

use crate::csv;
use assist::sizing::Prices;
use model::property::PropertyType;
use model::quantity::{Hours, Metres, Share};
use model::thread::Money;
use ordered::OrderedMap;
use words::Words;

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
}

impl Default for Terms {
    /// A tenth of waste and a hand's breadth at each end: common practice. Shops reckon with 5 % to 15 %, and 5 cm to
    /// 20 cm.
    fn default() -> Self {
        Self {
            waste: Share(0.1),
            spare: Metres(0.1),
            prices: PriceList::default(),
        }
    }
}

/// What one article costs, and how long it takes to fit.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Price {
    /// Price of one piece or one metre.
    pub each: Option<Money>,
    /// Hours of work for one piece or one metre.
    pub hours: Option<Hours>,
}

/// A shop's prices, by the written names of articles: an order list that the shop filled in.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PriceList {
    /// By article.
    pub by_article: OrderedMap<String, Price>,
    /// Lines of the file whose price or hours could not be read, counted from 1.
    pub unread: Vec<usize>,
}

impl PriceList {
    /// Reads an order list that was filled in: the columns are found by their headings, in the reader's language, in English, or
    /// by their written names. Prices and hours may have either decimal sign. Lines without a price say nothing.
    #[must_use]
    pub fn read(text: &str, words: &Words) -> Self {
        let mut list = Self::default();
        let rows = csv::read(text);
        let Some((head, rows)) = rows.split_first() else {
            return list;
        };
        let at = |name: &str| {
            let key = format!("paper-column-{name}");
            let (own, english) = (words.text(&key), Words::english().text(&key));
            head.iter()
                .map(|heading| heading.trim())
                .position(|heading| heading == name || heading == own || heading == english)
        };
        let (Some(article), price, hours) = (at("article"), at("price"), at("hours")) else {
            return list;
        };
        for (line, row) in rows.iter().enumerate() {
            let field = |at: Option<usize>| at.and_then(|at| row.get(at)).map_or("", |field| field.trim());
            let mut wrong = false;
            let each = read_as(field(price), |text| Money::parse(text, None).ok(), &mut wrong);
            let hours = read_as(
                field(hours),
                |text| Hours::parse(text, Some((0.0, 1000.0))).ok(),
                &mut wrong,
            );
            if wrong {
                list.unread.push(line + 2);
            }
            let key = field(Some(article));
            if !key.is_empty() && (each.is_some() || hours.is_some()) {
                list.by_article.insert(key.to_owned(), Price { each, hours });
            }
        }
        list
    }
}

/// Sizes are chosen by the same prices as a quote is made with.
impl Prices for PriceList {
    fn wire(&self, wire: &model::Wire) -> Option<Money> {
        let article = crate::order::cable_article(wire, wire.size.value()?);
        self.by_article.get(&article)?.each
    }
    fn device(&self, kind: &model::PartKind, rating: model::quantity::Amps) -> Option<Money> {
        let article = crate::order::fuse_article(form_of(kind)?.word(), rating);
        self.by_article.get(&article)?.each
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
