//! What a part is as an article: its kind and what has to be told when one asks for it over the counter.

use model::kinds::supply::Ratings;
use model::property::{Property, PropertySet, PropertyType, Shape, parse_number};
use model::quantity::{Amps, Hertz, Ohms};
use model::written::{Filter, Section, Sections, StatedPower};
use model::{Part, PartKind};
use words::{Saying, Unit, Value, drawn, say};

/// Properties that nobody asks for over a counter: which state the thing is in, how it is set, where it plays.
const NOT_TOLD: &[&str] = &[
    "state",
    "charge",
    "closed",
    "mated",
    "loops",
    "position",
    "when",
    "share",
    "leakage",
    "standby-current",
    "on-current",
    "idle-current",
    "turn-on-current",
    "body",
    "contact",
    "running-load",
    "standing-load",
];

/// The written name of an article, the same in every language: `amplifier class=d`.
pub(crate) fn article_key(part: &Part) -> String {
    let plain = PartKind::from_word(part.is.word());
    let mut key = part.is.word().to_owned();
    for property in part.is.properties() {
        let Some(value) = part.is.get(property.name).filter(|value| value != "?") else {
            continue;
        };
        let usual = plain.as_ref().and_then(|plain| plain.get(property.name));
        if !NOT_TOLD.contains(&property.name) && Some(&value) != usual.as_ref() {
            key.push_str(&format!(" {}={value}", property.name));
        }
    }
    key
}

/// A part as an article: `Amplifier: channels 4x 75W@4ohm, class D`.
#[must_use]
pub fn article(part: &Part) -> Saying {
    let told = spec(&part.is);
    if told.is_empty() {
        return part.is.said();
    }
    say!("paper-article", kind = part.is.said(), what = listed(told))
}

/// What is told of a kind beyond its name: what differs from how it comes from the shelf.
fn spec(kind: &PartKind) -> Vec<Saying> {
    let plain = PartKind::from_word(kind.word());
    kind.properties()
        .iter()
        .filter(|property| !NOT_TOLD.contains(&property.name))
        .filter_map(|property| {
            let value = kind.get(property.name)?;
            let usual = plain.as_ref().and_then(|plain| plain.get(property.name));
            if value == "?" || value.is_empty() || Some(&value) == usual.as_ref() {
                return None;
            }
            Some(say!(
                "paper-property",
                name = property.said(),
                value = value_said(property, &value)
            ))
        })
        .collect()
}

/// The value of a property as a reader reads it.
#[must_use]
pub fn value_said(property: &Property, written: &str) -> Value {
    let value = written.strip_prefix('~').unwrap_or(written);
    let value = value
        .strip_prefix('(')
        .and_then(|it| it.strip_suffix(')'))
        .unwrap_or(value);
    match property.shape {
        Shape::Number { symbol, ascii, .. } => match parse_number(value, ascii, symbol) {
            Ok(number) if symbol.is_empty() => drawn(number, Unit::Percent).into(),
            Ok(number) => drawn(number, Unit::of(symbol)).into(),
            Err(_) => value.into(),
        },
        Shape::Choice(choices) => choices
            .iter()
            .find(|(word, _)| *word == value)
            .map_or_else(|| value.into(), |(_, title)| model::said::choice(title).into()),
        Shape::YesNo => say!("paper-yes-no", answer = value).into(),
        Shape::Text { .. } if property.name == "sections" => match Sections::parse(value, None) {
            Ok(sections) => joined(sections.0.iter().map(section).collect(), "paper-semicolon").into(),
            Err(_) => value.into(),
        },
        Shape::Text { .. } if property.name == "fuses" => match Ratings::parse(value, None) {
            Ok(ratings) => listed(ratings.0.iter().map(|rating| fuse(*rating)).collect()).into(),
            Err(_) => value.into(),
        },
        Shape::Count | Shape::Text { .. } => value.into(),
    }
}

/// The fuse of one output of a block; a dash where it has none.
fn fuse(rating: Option<Amps>) -> Saying {
    match rating {
        Some(rating) => say!("as-it-stands", text = drawn(rating.0, Unit::Plain("A"))),
        None => say!("as-it-stands", text = "–"),
    }
}

/// Channels of an amplifier that are alike, as its maker's sheet tells them. The least load is told where it is not the least that
/// a power is stated at.
fn section(section: &Section) -> Saying {
    let with_least = |said: Saying, all: &[StatedPower], least: Ohms| {
        if all.iter().any(|stated| stated.load <= least) {
            return said;
        }
        say!(
            "paper-section-least",
            section = said,
            load = drawn(least.0, Unit::Plain("Ω"))
        )
    };
    let mut said = say!(
        "paper-section",
        channels = usize::from(section.channels),
        powers = powers(&section.power)
    );
    said = with_least(said, &section.power, section.minimum);
    if let Some(bridged) = &section.bridged {
        said = say!(
            "paper-section-bridged",
            section = said,
            powers = powers(&bridged.power)
        );
        said = with_least(said, &bridged.power, bridged.minimum);
    }
    match section.filter {
        Filter::Full => said,
        Filter::HighPass(at) => say!("paper-section-high", section = said, frequency = hertz(at)),
        Filter::LowPass(at) => say!("paper-section-low", section = said, frequency = hertz(at)),
    }
}

fn hertz(at: Hertz) -> Value {
    drawn(at.0, Unit::Plain("Hz")).into()
}

fn powers(all: &[StatedPower]) -> Saying {
    let one = |stated: &StatedPower| {
        say!(
            "paper-power-at",
            power = drawn(stated.power.0, Unit::Plain("W")),
            load = drawn(stated.load.0, Unit::Plain("Ω"))
        )
    };
    listed(all.iter().map(one).collect())
}

/// The value of a property of a set as a reader reads it; `None` where nobody knows it.
#[must_use]
pub fn property_said(set: &dyn PropertySet, name: &str) -> Option<Value> {
    let property = set.properties().iter().find(|property| property.name == name)?;
    let written = set
        .get(name)
        .filter(|written| written != "?" && !written.is_empty())?;
    Some(value_said(property, &written))
}

/// Sayings with a comma between each two.
pub(crate) fn listed(all: Vec<Saying>) -> Saying {
    joined(all, "paper-and")
}

/// Sayings joined two by two by a message that takes a `first` and a `second`. Joined in the middle first, so that a long list
/// is no deeper than sayings may be.
pub(crate) fn joined(all: Vec<Saying>, by: &'static str) -> Saying {
    let mut level = all;
    while level.len() > 1 {
        level = level
            .chunks(2)
            .map(|two| match two {
                [one, other] => Saying::new(by).with("first", one).with("second", other),
                _ => two.first().cloned().unwrap_or_else(|| say!("list-nothing")),
            })
            .collect();
    }
    level.pop().unwrap_or_else(|| say!("list-nothing"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fuses_of_a_block_have_their_unit() {
        let block = PartKind::from_word("block").expect("a kind");
        let properties = block.properties();
        let fuses = properties
            .iter()
            .find(|it| it.name == "fuses")
            .expect("its fuses");
        let told = say!("as-it-stands", text = value_said(fuses, "60A,30A,-"));
        assert_eq!(told.to_string(), "60 A, 30 A, –");
    }

    #[test]
    fn channels_are_told_in_words() {
        let told = |written: &str| {
            let sections = Sections::parse(written, None).expect("sections");
            joined(sections.0.iter().map(section).collect(), "paper-semicolon").to_string()
        };
        assert_eq!(
            told("2x 150W@4ohm 250W@2ohm bridged 500W@4ohm lp 90Hz"),
            "2 × 150 W at 4 Ω, 250 W at 2 Ω, bridged 500 W at 4 Ω, low-pass 90 Hz"
        );
        // A load that is allowed without a power at it; a second section.
        assert_eq!(
            told("2x 60W@4ohm min 2ohm hp 100Hz; 1x 250W@2ohm"),
            "2 × 60 W at 4 Ω, no less than 2 Ω, high-pass 100 Hz; 1 × 250 W at 2 Ω"
        );
    }
}
