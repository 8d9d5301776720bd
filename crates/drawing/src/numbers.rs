//! Numbers as they are written on the drawing: three figures at most, with the unit, as the reader writes them.

use model::quantity::Quantity;
use words::{Unit, Words, drawn, precise};

/// A number to three figures, without needless zeros: `0.035`, `3.7`, `41`, `1200`, `−12`.
#[must_use]
pub fn figures(words: &Words, number: f64) -> String {
    words.figure(drawn(number, Unit::Bare))
}

/// A quantity with its unit.
#[must_use]
pub fn quantity<Q: Quantity>(words: &Words, value: Q) -> String {
    words.figure(drawn(value.number(), Unit::of(Q::SYMBOL)))
}

/// Amps with their unit.
#[must_use]
pub fn amps(words: &Words, number: f64) -> String {
    words.figure(drawn(number, Unit::Plain("A")))
}

/// Volts to a hundredth, as a meter shows them.
#[must_use]
pub fn volts(words: &Words, number: f64) -> String {
    words.figure(precise(number, Unit::Plain("V"), 2))
}

#[cfg(test)]
mod tests {
    use super::*;
    use words::{Language, Reader};

    #[test]
    fn three_figures() {
        let english = Words::english();
        let written: Vec<String> = [0.0, 0.0354, 0.2, 3.75, 13.78, 41.04, 99.96, 640.0, 12_345.0]
            .iter()
            .map(|number| amps(&english, *number))
            .collect();
        assert_eq!(
            written,
            [
                "0 A", "35.4 mA", "0.2 A", "3.75 A", "13.8 A", "41 A", "100 A", "640 A", "12.3 kA"
            ]
        );
        assert_eq!(volts(&english, -0.001), "0.00 V");
        assert_eq!(
            (
                volts(&english, -1.5),
                english.figure(drawn(-40.0, Unit::Plain("°C")))
            ),
            ("−1.50 V".to_owned(), "−40 °C".to_owned())
        );
        assert_eq!(figures(&english, f64::NAN), "?");
    }

    #[test]
    fn a_german_reader_reads_a_comma_on_the_drawing() {
        let german = Words::of(Reader {
            language: Language::German,
            ..Reader::default()
        });
        assert_eq!(amps(&german, 0.0354), "35,4 mA");
        assert_eq!(volts(&german, 12.6), "12,60 V");
    }
}
