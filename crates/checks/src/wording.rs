//! What the findings of several checks say alike: names of properties, sizes, a second sentence.

use model::conductor::Size;
use words::{Saying, Unit, Value, as_sold, figure, say};

/// The unit of currents.
pub(crate) const A: Unit = Unit::Plain("A");
/// The unit of times.
pub(crate) const SECOND: Unit = Unit::Plain("s");
/// The unit of voltages.
pub(crate) const V: Unit = Unit::Plain("V");
/// The unit of powers.
pub(crate) const W: Unit = Unit::Plain("W");
/// The unit of frequencies.
pub(crate) const HZ: Unit = Unit::Plain("Hz");
/// The unit of impedances.
pub(crate) const OHM: Unit = Unit::Plain("Ω");
/// The unit of the resistances of wires and contacts.
pub(crate) const MILLIOHM: Unit = Unit::Plain("mΩ");

/// Properties that are called otherwise in the midst of a sentence than a field is labelled: a label stands below a heading
/// and has little room.
const CALLED_OTHERWISE: &[&str] = &[
    "body-strap",
    "closes-at",
    "cut-off",
    "ending-resistance",
    "high-pass",
    "hot-share",
    "input-takes",
    "minimum-load",
    "on-current",
    "output-takes",
    "permanent-fuse",
    "pull-in",
    "running-load",
    "standing-load",
    "strap-current",
    "switched-fuse",
    "takes",
    "turn-on-capacity",
    "turn-on-current",
];

/// A fact by the written name of its property, as a sentence says it.
pub(crate) fn fact(name: &str) -> Saying {
    if CALLED_OTHERWISE.contains(&name) {
        Saying::new(format!("fact-{name}"))
    } else {
        model::said::name_of(name)
    }
}

/// A property of the part or run of this tag, which is assumed.
pub(crate) fn assumed(tag: &str, name: &str) -> Saying {
    say!("assumed-of", of = tag, property = fact(name))
}

/// The size of a wire: an area in the reader's unit, while a gauge number is the name that the wire is sold by.
pub(crate) fn size(size: Size) -> Value {
    match size {
        Size::Metric(area) => figure(area.0, Unit::SquareMillimetre).into(),
        Size::Awg(_) => {
            use model::PropertyType;
            size.print().replace("AWG", " AWG").into()
        }
    }
}

/// The size of a wire that is to be laid: as it is sold, whichever series the reader reads, since that is what is bought.
pub(crate) fn to_lay(wanted: Size) -> Value {
    match wanted {
        Size::Metric(area) => as_sold(area.0, Unit::SquareMillimetre).into(),
        Size::Awg(_) => size(wanted),
    }
}

/// A sentence, and a second one where there is more to say.
pub(crate) fn and_then(first: Saying, second: Option<Saying>) -> Saying {
    match second {
        Some(second) => say!("two-sentences", first = first, second = second),
        None => first,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use model::PartKind;
    use model::property::PropertySet;
    use words::Words;

    #[test]
    fn every_fact_that_may_be_unknown_has_a_name_for_sentences() {
        let kinds = PartKind::WORDS
            .iter()
            .filter_map(|word| PartKind::from_word(word));
        let lists = kinds
            .map(|kind| kind.properties())
            .chain([model::job::Wire::list()]);
        for property in lists.flatten().filter(|property| property.may_be_assumed) {
            let fact = fact(property.name);
            assert!(Words::english().knows(fact.key()), "{}", fact.key());
        }
        for name in CALLED_OTHERWISE {
            assert!(Words::english().knows(fact(name).key()), "{name}");
        }
    }
}
