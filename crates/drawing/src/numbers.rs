//! Numbers as they are written on the drawing: three figures at most, with the unit.

use model::quantity::Quantity;

/// The sign of a number below zero: as wide as a plus sign, unlike the hyphen.
const MINUS: &str = "\u{2212}";

/// A number to three figures, without needless zeros: `0.035`, `3.7`, `41`, `1200`, `−12`.
#[must_use]
pub fn figures(number: f64) -> String {
    if !number.is_finite() {
        return "?".to_owned();
    }
    let size = number.abs();
    let places = match size {
        _ if size >= 99.95 => 0,
        _ if size >= 9.995 => 1,
        _ if size >= 0.0995 => 2,
        _ if size >= 0.0005 => 3,
        _ => 0,
    };
    let mut text = format!("{number:.places$}");
    if text.contains('.') {
        text.truncate(text.trim_end_matches('0').trim_end_matches('.').len());
    }
    if text == "-0" {
        text = "0".to_owned();
    }
    text.replace('-', MINUS)
}

/// A number with its unit: `3.7 Ω`.
#[must_use]
pub fn with_unit(number: f64, unit: &str) -> String {
    let size = number.abs();
    if unit != "°C" && unit != "m" && size > 0.0 && size < 0.0995 {
        return format!("{} m{unit}", figures(number * 1000.0));
    }
    if size >= 9999.5 {
        return format!("{} k{unit}", figures(number / 1000.0));
    }
    format!("{} {unit}", figures(number))
}

/// A quantity with its unit.
#[must_use]
pub fn quantity<Q: Quantity>(value: Q) -> String {
    with_unit(value.number(), Q::SYMBOL)
}

/// Amps with their unit.
#[must_use]
pub fn amps(number: f64) -> String {
    with_unit(number, "A")
}

/// Volts to a hundredth, as a meter shows them.
#[must_use]
pub fn volts(number: f64) -> String {
    // Adding zero turns a negative zero into a plain one.
    format!("{:.2} V", libm::round(number * 100.0) / 100.0 + 0.0).replace('-', MINUS)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn three_figures() {
        let written: Vec<String> = [0.0, 0.0354, 0.2, 3.75, 13.78, 41.04, 99.96, 640.0, 12_345.0]
            .iter()
            .map(|number| with_unit(*number, "A"))
            .collect();
        assert_eq!(
            written,
            [
                "0 A", "35.4 mA", "0.2 A", "3.75 A", "13.8 A", "41 A", "100 A", "640 A", "12.3 kA"
            ]
        );
        assert_eq!(volts(-0.001), "0.00 V");
        assert_eq!(
            (volts(-1.5), with_unit(-40.0, "°C")),
            ("−1.50 V".to_owned(), "−40 °C".to_owned())
        );
        assert_eq!(figures(f64::NAN), "?");
    }
}
