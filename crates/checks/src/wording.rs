//! What the findings of several checks say alike: names of properties, sizes, a second sentence.

use model::conductor::Size;
use words::{Saying, Unit, Value, enough, figure, say};

/// The unit of currents.
pub(crate) const A: Unit = Unit::Plain("A");
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

/// A fact by the written name of its property, as a sentence says it.
pub(crate) fn fact(name: &str) -> Saying {
    Saying::new(format!("fact-{name}"))
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

/// The size of a wire that is to be laid.
pub(crate) fn to_lay(wanted: Size) -> Value {
    match wanted {
        Size::Metric(area) => enough(area.0, Unit::SquareMillimetre).into(),
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
