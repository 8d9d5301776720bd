//! Colours of insulation: letter codes, their order, and what leads of radios are by convention.

use crate::Source;

/// A colour of IEC 60757.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ColourCode {
    /// Two letters.
    pub code: &'static str,
    /// Its name.
    pub name: &'static str,
}

/// Where [`COLOURS`] comes from.
pub const IEC_60757: Source =
    Source::read("IEC 60757:1983 table, as GOST 28763-90; IEC 60757:2021 clause 5.1");

const fn colour(code: &'static str, name: &'static str) -> ColourCode {
    ColourCode { code, name }
}

/// Letter codes in the order of the table, which is also the order in which two are joined.
pub const COLOURS: &[ColourCode] = &[
    colour("BK", "black"),
    colour("BN", "brown"),
    colour("RD", "red"),
    colour("OG", "orange"),
    colour("YE", "yellow"),
    colour("GN", "green"),
    colour("BU", "blue"),
    colour("VT", "violet"),
    colour("GY", "grey"),
    colour("WH", "white"),
    colour("PK", "pink"),
    colour("GD", "gold"),
    colour("TQ", "turquoise"),
    colour("SR", "silver"),
];

/// Green-and-yellow: kept for protective conductors (IEC 60445); green and yellow are used in no other combination where
/// they could be mistaken for it.
pub const PROTECTIVE: ColourCode = colour("GNYE", "green-and-yellow");

/// Place of a code in the table.
#[must_use]
pub fn place(code: &str) -> Option<usize> {
    COLOURS.iter().position(|colour| colour.code == code)
}

/// Code of two colours on one item, joined in table order as the standard has it: red and blue is `RDBU`. The written
/// order then does not tell base from stripe. `None` for a letter code that is not in the table, or twice the same.
#[must_use]
pub fn joined(one: &str, other: &str) -> Option<String> {
    let (first, second) = (place(one)?, place(other)?);
    match first.cmp(&second) {
        std::cmp::Ordering::Less => Some(format!("{one}{other}")),
        std::cmp::Ordering::Greater => Some(format!("{other}{one}")),
        std::cmp::Ordering::Equal => None,
    }
}

/// A lead of an aftermarket radio by convention.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RadioLead {
    /// Code in table order.
    pub code: &'static str,
    /// Colour in words, base first.
    pub colour: &'static str,
    /// What it carries.
    pub function: &'static str,
}

/// Where [`RADIO_LEADS`] comes from: no document number was found for it.
pub const RADIO_LEAD_SOURCE: Source = Source::practice("leads of aftermarket radios");

const fn lead(code: &'static str, colour: &'static str, function: &'static str) -> RadioLead {
    RadioLead {
        code,
        colour,
        function,
    }
}

/// Leads of aftermarket radios. A convention, not a promise: measure before joining.
pub const RADIO_LEADS: &[RadioLead] = &[
    lead("YE", "yellow", "constant battery supply, memory"),
    lead("RD", "red", "switched accessory supply"),
    lead("BK", "black", "ground"),
    lead("BU", "blue", "powered antenna"),
    lead("BUWH", "blue with white stripe", "amplifier remote turn-on"),
    lead("OG", "orange", "illumination supply"),
    lead("OGWH", "orange with white stripe", "illumination dimmer"),
    lead("WH", "white", "left front +"),
    lead("BKWH", "white with black stripe", "left front -"),
    lead("GY", "grey", "right front +"),
    lead("BKGY", "grey with black stripe", "right front -"),
    lead("GN", "green", "left rear +"),
    lead("BKGN", "green with black stripe", "left rear -"),
    lead("VT", "violet", "right rear +"),
    lead("BKVT", "violet with black stripe", "right rear -"),
    lead("BN", "brown", "mute, phone"),
    lead("PK", "pink", "speed pulse, some units"),
    lead("GN", "light green", "parking-brake lead, some units"),
];

/// Terminal numbers of vehicles and what they are.
///
/// Source: DIN 72552 (from memory).
pub const VEHICLE_TERMINALS: &[(&str, &str)] = &[
    ("30", "battery positive, permanent"),
    ("15", "ignition-switched positive"),
    ("31", "ground"),
    ("58", "side-marker and instrument illumination"),
];
