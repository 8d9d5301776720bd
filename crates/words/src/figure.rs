//! Numbers with units as a reader writes them: digits that matter, the reader's decimal sign, metres or feet, square
//! millimetres or gauge numbers.

use crate::reader::{Lengths, Reader, Sizes};
use serde::{Serialize, Serializer};
use std::cmp::Ordering;

/// The sign of a number below zero: as wide as a plus sign, unlike the hyphen.
const MINUS: char = '\u{2212}';
/// One foot in metres, exactly.
const FOOT: f64 = 0.3048;
/// One inch in metres, exactly.
const INCH: f64 = 0.0254;

/// The unit of a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Unit {
    /// None.
    Bare,
    /// Hundredths: 0.12 reads `12 %`.
    Percent,
    /// A length in m; feet and inches for those who read them.
    Metre,
    /// A cross-section in mm²; a gauge number for those who read them.
    SquareMillimetre,
    /// A unit that reads the same everywhere: `A`, `V`, `Ω`, `°C`, `W`.
    Plain(&'static str),
}

impl Unit {
    /// The unit of a symbol as quantities carry it.
    #[must_use]
    pub fn of(symbol: &'static str) -> Self {
        match symbol {
            "" => Self::Bare,
            "%" => Self::Percent,
            "m" => Self::Metre,
            "mm²" => Self::SquareMillimetre,
            other => Self::Plain(other),
        }
    }
    fn symbol(self) -> &'static str {
        match self {
            Self::Bare => "",
            Self::Percent => "%",
            Self::Metre => "m",
            Self::SquareMillimetre => "mm²",
            Self::Plain(symbol) => symbol,
        }
    }
}

/// How many digits.
#[derive(Clone, Copy, Debug)]
enum Digits {
    /// In a sentence: never more than matter, and enough to tell it from `beside`.
    Told { beside: Option<f64> },
    /// On the drawing: three figures, with `m` and `k` before the unit.
    Drawn,
    /// A fixed number of decimals.
    Places(u8),
    /// As in a sentence; a size in square millimetres also for those who read gauge numbers.
    Sold,
}

/// A number with its unit.
#[derive(Clone, Copy, Debug)]
pub struct Figure {
    number: f64,
    unit: Unit,
    digits: Digits,
}

impl Digits {
    /// Which way of writing, and its numbers, as something that has an order.
    fn rank(self) -> (u8, u8, f64) {
        match self {
            Self::Told { beside } => (0, u8::from(beside.is_some()), beside.unwrap_or_default()),
            Self::Drawn => (1, 0, 0.0),
            Self::Places(places) => (2, places, 0.0),
            Self::Sold => (3, 0, 0.0),
        }
    }
}

impl Ord for Figure {
    /// By number, then unit, then way of writing: a total order, also of what is no number.
    fn cmp(&self, other: &Self) -> Ordering {
        let (own, its) = (self.digits.rank(), other.digits.rank());
        self.number
            .total_cmp(&other.number)
            .then(self.unit.cmp(&other.unit))
            .then((own.0, own.1).cmp(&(its.0, its.1)))
            .then(own.2.total_cmp(&its.2))
    }
}
impl PartialOrd for Figure {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}
impl PartialEq for Figure {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}
impl Eq for Figure {}

impl Serialize for Figure {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        (self.number, self.unit.symbol()).serialize(to)
    }
}

/// A number in a sentence: `0.45 m`, `3.2 A`, `21 A`, `1400 W`. Never more digits than matter.
#[must_use]
pub fn figure(number: f64, unit: Unit) -> Figure {
    Figure {
        number,
        unit,
        digits: Digits::Told { beside: None },
    }
}

/// A number in a sentence that also says `beside`, in the same unit: with as many decimals as it takes to tell them apart.
#[must_use]
pub fn told(number: f64, beside: f64, unit: Unit) -> Figure {
    Figure {
        number,
        unit,
        digits: Digits::Told { beside: Some(beside) },
    }
}

/// A number on the drawing, to three figures: `0.035 V` as `35 mV`, `12 345 W` as `12.3 kW`.
#[must_use]
pub fn drawn(number: f64, unit: Unit) -> Figure {
    Figure {
        number,
        unit,
        digits: Digits::Drawn,
    }
}

/// A number with a fixed count of decimals, as a meter shows it.
#[must_use]
pub fn precise(number: f64, unit: Unit, places: u8) -> Figure {
    Figure {
        number,
        unit,
        digits: Digits::Places(places.min(9)),
    }
}

/// A number as [`figure`] writes it; but a size in mm² is one for every reader, as it is sold, with the nearest gauge number
/// beside it for those who read gauge numbers: `16 mm² (≈ 5 AWG)`.
#[must_use]
pub fn as_sold(number: f64, unit: Unit) -> Figure {
    Figure {
        number,
        unit,
        digits: Digits::Sold,
    }
}

/// The gauge number of a cross-section in mm², not rounded: 0 is 1/0, −3 is 4/0. By the geometric definition of ASTM
/// B258, diameter 0.127 mm · 92^((36−n)/39).
#[must_use]
pub fn gauge(area: f64) -> f64 {
    let diameter = 2.0 * libm::sqrt(area / std::f64::consts::PI);
    36.0 - 39.0 * libm::log(diameter / 0.127) / libm::log(92.0)
}

impl Figure {
    /// As the reader writes it.
    pub(crate) fn written(self, reader: Reader) -> String {
        let plain = self.plain(reader);
        if reader.language.decimal() == '.' {
            return plain;
        }
        plain
            .chars()
            .map(|c| if c == '.' { reader.language.decimal() } else { c })
            .collect()
    }
    /// The number in the reader's unit, with a point.
    fn plain(self, reader: Reader) -> String {
        if !self.number.is_finite() {
            return "?".to_owned();
        }
        match self.unit {
            Unit::Metre if reader.lengths == Lengths::Feet => {
                // Below two feet inches are what a tape is read in.
                let (size, symbol) = if self.number.abs() < 2.0 * FOOT - 1e-9 {
                    (INCH, "in")
                } else {
                    (FOOT, "ft")
                };
                self.put(self.number / size, symbol, |beside| beside / size)
            }
            Unit::SquareMillimetre if reader.sizes == Sizes::Awg && self.number > 0.0 => match self.digits {
                Digits::Sold => format!("{} mm² ({})", matter(self.number), named_gauge(self.number)),
                _ => named_gauge(self.number),
            },
            Unit::Percent => self.put(self.number * 100.0, "%", |beside| beside * 100.0),
            unit => self.put(self.number, unit.symbol(), |beside| beside),
        }
    }
    fn put(self, number: f64, symbol: &str, same: impl Fn(f64) -> f64) -> String {
        let (text, prefix) = match self.digits {
            Digits::Told { beside } if is_length(symbol) => {
                let short = |number| length(number, symbol);
                (beside_told(number, beside.map(same), short), "")
            }
            Digits::Told { beside } => (beside_told(number, beside.map(same), matter), ""),
            Digits::Drawn if is_length(symbol) => (length(number, symbol), ""),
            Digits::Sold => (matter(number), ""),
            Digits::Places(places) => (fixed(number, usize::from(places)), ""),
            Digits::Drawn => {
                let size = number.abs();
                let takes_prefix = !matches!(symbol, "" | "%" | "°C" | "mm²" | "mΩ" | "dB" | "h");
                if takes_prefix && size > 0.0 && size < 0.0995 {
                    (three(number * 1000.0), "m")
                } else if takes_prefix && size >= 9999.5 {
                    (three(number / 1000.0), "k")
                } else {
                    (three(number), "")
                }
            }
        };
        if symbol.is_empty() {
            return text;
        }
        format!("{text} {prefix}{symbol}")
    }
}

/// `4 AWG`; a size that is no gauge number says which it lies nearest: `≈ 7 AWG`.
fn named_gauge(area: f64) -> String {
    let number = gauge(area);
    let nearest = libm::round(number);
    let name = gauge_name(nearest);
    // Published areas of gauge numbers differ by some 0.2 % from the definition.
    if (number - nearest).abs() < 0.05 {
        format!("{name} AWG")
    } else {
        format!("≈ {name} AWG")
    }
}

/// `4`, `1/0`.
fn gauge_name(number: f64) -> String {
    if number <= 0.0 {
        format!("{}/0", 1.0 - number)
    } else {
        format!("{number}")
    }
}

fn fixed(number: f64, places: usize) -> String {
    // Adding zero turns a negative zero into a plain one.
    let scale = libm::pow(10.0, places as f64);
    let number = if number.abs() < 1e12 {
        libm::round(number * scale) / scale + 0.0
    } else {
        number
    };
    format!("{number:.places$}").replace('-', &MINUS.to_string())
}

fn trimmed(number: f64, places: usize) -> String {
    let mut text = format!("{number:.places$}");
    if text.contains('.') {
        text.truncate(text.trim_end_matches('0').trim_end_matches('.').len());
    }
    if text == "-0" {
        text = "0".to_owned();
    }
    text.replace('-', &MINUS.to_string())
}

fn matter(number: f64) -> String {
    let places = match number.abs() {
        v if v >= 10.0 => 0,
        v if v >= 1.0 => 1,
        v if v >= 0.1 => 2,
        v if v >= 0.01 => 3,
        _ => 4,
    };
    trimmed(number, places)
}

fn is_length(symbol: &str) -> bool {
    matches!(symbol, "m" | "ft" | "in")
}

/// A length, in a sentence as on the drawing: who reads both must not wonder which is right. Three figures, and of inches no
/// more than a tape shows.
fn length(number: f64, symbol: &str) -> String {
    if symbol == "in" && number.abs() >= 1.0 {
        trimmed(number, 1)
    } else {
        three(number)
    }
}

fn beside_told(number: f64, beside: Option<f64>, matter: impl Fn(f64) -> String) -> String {
    let short = matter(number);
    let Some(beside) = beside.filter(|beside| *beside != number && beside.is_finite()) else {
        return short;
    };
    if short != matter(beside) {
        return short;
    }
    (1..=6)
        .map(|places| (trimmed(number, places), trimmed(beside, places)))
        .find(|(one, other)| one != other)
        .map_or(short, |(one, _)| one)
}

fn three(number: f64) -> String {
    let places = match number.abs() {
        size if size >= 99.95 => 0,
        size if size >= 9.995 => 1,
        size if size >= 0.0995 => 2,
        size if size >= 0.0005 => 3,
        _ => 0,
    };
    trimmed(number, places)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::reader::Language;

    const METRIC: Reader = Reader {
        language: Language::English,
        lengths: Lengths::Metres,
        sizes: Sizes::SquareMillimetres,
    };
    const AMERICAN: Reader = Reader {
        language: Language::English,
        lengths: Lengths::Feet,
        sizes: Sizes::Awg,
    };

    #[test]
    fn in_a_sentence_never_more_digits_than_matter() {
        assert_eq!(
            [0.45, 3.21, 21.4, 1400.2, 0.5, 3.0, 0.0023, -0.0].map(|n| figure(n, Unit::Bare).written(METRIC)),
            ["0.45", "3.2", "21", "1400", "0.5", "3", "0.0023", "0"]
        );
    }

    #[test]
    fn a_number_just_beyond_its_limit_does_not_read_like_the_limit() {
        let pair = |a, b| [told(a, b, Unit::Bare), told(b, a, Unit::Bare)].map(|f| f.written(METRIC));
        assert_eq!(pair(60.2, 60.0), ["60.2", "60"]);
        assert_eq!(pair(0.4501, 0.45), ["0.4501", "0.45"]);
        assert_eq!(pair(80.0, 60.0), ["80", "60"]);
        // Also in feet: 0.4501 m and 0.45 m are 17.720 in and 17.717 in.
        let far = [told(0.4501, 0.45, Unit::Metre), told(0.45, 0.4501, Unit::Metre)];
        assert_eq!(far.map(|f| f.written(AMERICAN)), ["17.72 in", "17.717 in"]);
    }

    #[test]
    fn on_the_drawing_three_figures() {
        let amps: Vec<String> = [0.0, 0.0354, 0.2, 3.75, 13.78, 41.04, 99.96, 640.0, 12_345.0]
            .iter()
            .map(|number| drawn(*number, Unit::Plain("A")).written(METRIC))
            .collect();
        assert_eq!(
            amps,
            [
                "0 A", "35.4 mA", "0.2 A", "3.75 A", "13.8 A", "41 A", "100 A", "640 A", "12.3 kA"
            ]
        );
        assert_eq!(precise(-0.001, Unit::Plain("V"), 2).written(METRIC), "0.00 V");
        assert_eq!(precise(-1.5, Unit::Plain("V"), 2).written(METRIC), "−1.50 V");
        assert_eq!(drawn(f64::NAN, Unit::Bare).written(METRIC), "?");
    }

    #[test]
    fn lengths_in_feet_and_inches() {
        // 1 ft = 0.3048 m and 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
        assert_eq!(figure(0.4572, Unit::Metre).written(AMERICAN), "18 in");
        assert_eq!(figure(3.048, Unit::Metre).written(AMERICAN), "10 ft");
        assert_eq!(figure(1.7, Unit::Metre).written(AMERICAN), "5.58 ft");
        // 7 in, as 33 CFR 183.455 has it, is also said so where it stands as 0.178 m.
        assert_eq!(figure(0.178, Unit::Metre).written(AMERICAN), "7 in");
    }

    #[test]
    fn a_length_reads_alike_in_a_sentence_and_on_the_drawing() {
        for reader in [METRIC, AMERICAN] {
            for metres in [
                0.003, 0.02, 0.0254, 0.1, 0.178, 0.45, 0.6096, 1.25, 4.6, 12.34, 130.0,
            ] {
                let drawn = drawn(metres, Unit::Metre).written(reader);
                assert_eq!(figure(metres, Unit::Metre).written(reader), drawn);
                assert_eq!(told(metres, 2.0 * metres, Unit::Metre).written(reader), drawn);
            }
        }
        assert_eq!(figure(0.45, Unit::Metre).written(AMERICAN), "17.7 in");
        assert_eq!(figure(4.6, Unit::Metre).written(AMERICAN), "15.1 ft");
        assert_eq!(figure(1.25, Unit::Metre).written(METRIC), "1.25 m");
    }

    #[test]
    fn sizes_in_gauge_numbers() {
        // Areas of ASTM B258: 4 AWG 21.15 mm², 8 AWG 8.366 mm², 4/0 AWG 107.2 mm²; 10 mm² of IEC 60228 is none of them.
        for (area, written) in [
            (21.15, "4 AWG"),
            (8.366, "8 AWG"),
            (107.2, "4/0 AWG"),
            (53.49, "1/0 AWG"),
            (10.0, "≈ 7 AWG"),
        ] {
            assert_eq!(figure(area, Unit::SquareMillimetre).written(AMERICAN), written);
        }
    }

    #[test]
    fn a_size_to_be_laid_is_told_as_it_is_sold() {
        // By ASTM B258: 2 AWG 33.62 mm², 1 AWG 42.41 mm², 18 AWG 0.8230 mm², 19 AWG 0.6527 mm², 4 AWG 21.15 mm².
        for (area, written) in [
            (35.0, "35 mm² (≈ 2 AWG)"),
            (0.75, "0.75 mm² (≈ 18 AWG)"),
            (21.15, "21 mm² (4 AWG)"),
        ] {
            assert_eq!(as_sold(area, Unit::SquareMillimetre).written(AMERICAN), written);
        }
        assert_eq!(as_sold(35.0, Unit::SquareMillimetre).written(METRIC), "35 mm²");
    }

    #[test]
    fn a_german_reader_reads_a_comma() {
        let german = Reader {
            language: Language::German,
            ..METRIC
        };
        assert_eq!(figure(0.45, Unit::Metre).written(german), "0,45 m");
        assert_eq!(figure(0.125, Unit::Percent).written(german), "12 %");
    }
}
