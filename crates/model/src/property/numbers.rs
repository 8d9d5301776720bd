//! Numbers as they are written: with prefixes and units, in feet and inches, with a comma; and their ranges.

use super::PropertyError;
use words::{Unit, say, told};

/// Holds one number against a range, ends included.
pub fn check_number(number: f64, range: Option<(f64, f64)>, unit: &'static str) -> Result<(), PropertyError> {
    if !number.is_finite() {
        return Err(PropertyError::new(say!("error-not-finite")));
    }
    match range {
        Some((least, most)) if number < least || number > most => {
            let unit = Unit::of(unit);
            // A number just beyond its bound must not read like the bound.
            let bound = if number < least { least } else { most };
            Err(PropertyError::new(say!(
                "error-out-of-range",
                number = told(number, bound, unit),
                least = told(least, number, unit),
                most = told(most, number, unit)
            )))
        }
        _ => Ok(()),
    }
}

/// Reads `12.5mohm` as 0.0125 for the unit `ohm`. A bare number counts as in the unit itself; `k`, `m`, `u`, `µ` and
/// `n` may stand before the unit, `%` reads as hundredths where the unit is empty. Metres also read as `cm`, `mm`, feet and
/// inches: `6 ft`, `6'`, `18 in`, `5' 6"`. The sign before the tenths may be a comma.
pub fn parse_number(text: &str, ascii: &str, symbol: &str) -> Result<f64, PropertyError> {
    let text = text.trim();
    let (number, unit) = leading_number(text).ok_or_else(|| {
        PropertyError::new(say!(
            "error-no-number",
            text = text,
            like = format!("12.5{ascii}")
        ))
    })?;
    // Thousandths and the like are made by dividing: 450 / 1000 is 0.45 exactly as written, 450 × 0.001 is not.
    let scaled = |prefix: &str| match prefix {
        "" => Some(number),
        "k" => Some(number * 1000.0),
        "m" => Some(number / 1000.0),
        "u" | "µ" => Some(number / 1e6),
        "n" => Some(number / 1e9),
        _ => None,
    };
    let read = if unit.is_empty() {
        Some(number)
    } else if ascii.is_empty() {
        (unit == "%").then_some(number / 100.0)
    } else if ascii == "m" && unit == "cm" {
        Some(number / 100.0)
    } else {
        let feet = if ascii == "m" {
            feet_and_inches(number, unit)
        } else {
            None
        };
        feet.or_else(|| {
            unit.strip_suffix(ascii)
                .or_else(|| unit.strip_suffix(symbol))
                .and_then(|prefix| scaled(prefix.trim_end()))
        })
    };
    read.filter(|value| value.is_finite()).ok_or_else(|| {
        let wanted = if ascii.is_empty() { "%" } else { ascii };
        PropertyError::new(say!(
            "error-other-unit",
            text = text,
            like = format!("12.5{wanted}")
        ))
    })
}

/// The number that a text begins with, and the rest without the space between.
fn leading_number(text: &str) -> Option<(f64, &str)> {
    let mut split = text.len();
    let mut comma = false;
    for (at, c) in text.char_indices() {
        let rest = text.get(at + c.len_utf8()..).unwrap_or_default();
        let digit_follows = rest.starts_with(|d: char| d.is_ascii_digit());
        let belongs = c.is_ascii_digit()
            || c == '.'
            // One comma, between digits, where no point stands.
            || (c == ',' && at > 0 && !comma && digit_follows && !text.contains('.'))
            || ((c == '-' || c == '+') && (at == 0 || text.get(..at).is_some_and(|before| before.ends_with('e'))))
            // An exponent only when digits follow it, so that no unit is eaten.
            || (c == 'e' && rest.trim_start_matches(['-', '+']).starts_with(|d: char| d.is_ascii_digit()));
        if !belongs {
            split = at;
            break;
        }
        comma |= c == ',';
    }
    let (digits, unit) = text.split_at_checked(split)?;
    Some((digits.replace(',', ".").parse().ok()?, unit.trim()))
}

/// Metres of a number of feet or inches; `5' 6"` has both.
fn feet_and_inches(number: f64, unit: &str) -> Option<f64> {
    // International yard and pound agreement, 1959: one inch is 25.4 mm exactly.
    const FEET: &[&str] = &["feet", "foot", "ft", "Fuß", "'", "′", "’"];
    const INCHES: &[&str] = &["inches", "inch", "in", "Zoll", "\"", "″", "”"];
    let is_inch = |unit: &str| INCHES.contains(&unit.trim());
    if is_inch(unit) {
        return Some(number * 254.0 / 10_000.0);
    }
    let rest = FEET.iter().find_map(|feet| unit.strip_prefix(feet))?.trim();
    if rest.is_empty() {
        return Some(number * 3048.0 / 10_000.0);
    }
    let (inches, unit) = leading_number(rest)?;
    (is_inch(unit) && inches >= 0.0).then_some((number * 3048.0 + inches * 254.0) / 10_000.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Fact;
    use crate::property::PropertyType as _;
    use crate::quantity::{Metres, Ohms, Share};

    #[test]
    fn numbers_read_with_prefixes_and_print_back() {
        assert_eq!(parse_number("12.5mohm", "ohm", "Ω"), Ok(0.0125));
        assert_eq!(parse_number("450mm", "m", "m"), Ok(0.45));
        assert_eq!(parse_number("4Ω", "ohm", "Ω"), Ok(4.0));
        assert_eq!(parse_number("80%", "", ""), Ok(0.8));
        assert_eq!(
            Fact::<Metres>::parse("~4.5m", None),
            Ok(Fact::Assumed(Metres(4.5)))
        );
        assert_eq!(Fact::Assumed(Ohms(0.002)).print(), "~0.002ohm");
        assert_eq!(Share::parse("0.5", Some((0.0, 1.0))), Ok(Share(0.5)));
    }

    #[test]
    fn lengths_read_in_feet_and_inches_and_with_a_decimal_comma() {
        // One inch is 25.4 mm, one foot 304.8 mm, exactly (international yard and pound agreement, 1959).
        for (text, metres) in [
            ("6 ft", 1.8288),
            ("6'", 1.8288),
            ("6ft", 1.8288),
            ("18 in", 0.4572),
            ("18\"", 0.4572),
            ("5' 6\"", 1.6764),
            ("5 ft 6 in", 1.6764),
            ("2,5 ft", 0.762),
            ("1,7 m", 1.7),
            ("1,7", 1.7),
            ("170 cm", 1.7),
            ("4 Fuß", 1.2192),
        ] {
            assert_eq!(parse_number(text, "m", "m"), Ok(metres), "{text}");
        }
        assert_eq!(parse_number("12,5 mΩ", "ohm", "Ω"), Ok(0.0125));
        // Feet are a length and nothing else; a second comma or a point beside one is a slip.
        for (text, ascii) in [
            ("6 ft", "A"),
            ("1,000.5", "m"),
            ("1,2,3", "m"),
            ("6 ft 2 m", "m"),
            (",5", "m"),
        ] {
            assert!(parse_number(text, ascii, ascii).is_err(), "{text}");
        }
    }

    #[test]
    fn bad_numbers_say_what_would_do() {
        for text in ["", "x", "1e", "nan", "inf", "4kg", "1e999m", "--3", "µ"] {
            assert!(parse_number(text, "m", "m").is_err(), "{text}");
        }
        assert!(
            Metres::parse("70m", Some((0.0, 50.0))).is_err_and(|e| e.to_string().contains("0 m to 50 m"))
        );
        // The reader's own unit, and never like the bound itself: 50 m are 164.04 ft.
        let feet = ::words::Words::of(::words::Reader {
            lengths: ::words::Lengths::Feet,
            ..::words::Reader::default()
        });
        let error = Metres::parse("50.02m", Some((0.0, 50.0))).expect_err("it is beyond");
        assert_eq!(
            feet.say(&error.said),
            "164.1 ft is out of range: it takes 0 in to 164 ft"
        );
    }
}
