//! How wide a text is, without a font at hand: a table of advance widths, conservative for the common sans-serif
//! faces that the painters ask for ([`FONT_FAMILY`]).

/// The faces the painters ask for, best first. [`text_width`] holds for those that are named, but for a few letters of the
/// fourth, which a machine has that has none of the first three: the painter on screen condenses what is wider still.
pub const FONT_FAMILY: &str = "Arial, 'Liberation Sans', Helvetica, 'DejaVu Sans Condensed', sans-serif";

/// Widths of U+0020 to U+007E in thousandths of the letter size: the advance widths of Helvetica as published in
/// Adobe's font metrics for the 14 base faces of PDF (from memory); Arial and Liberation Sans share them.
const ADVANCE: [u16; 95] = [
    278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, // space to /
    556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556, // 0 to ?
    1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778, // @ to O
    667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556, // P to _
    333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, // ` to o
    556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584, // p to ~
];

/// Width of a text in board units when its letters have this size. Rather too wide than too narrow: 4 % is added,
/// bold letters get another 8 %, and a letter outside the table counts as wide as an `M` (wide scripts: a full square).
#[must_use]
pub fn text_width(text: &str, size: f64, bold: bool) -> f64 {
    let thousandths: u32 = text
        .chars()
        .map(|letter| {
            let code = u32::from(letter);
            match code.checked_sub(32).and_then(|place| ADVANCE.get(place as usize)) {
                Some(width) => u32::from(*width),
                None => match letter {
                    '·' | '’' | '‘' | '|' => 300,
                    '°' => 400,
                    '²' | '³' => 350,
                    'µ' | '–' | '−' | '→' | 'é' | 'è' | 'ö' | 'ü' | 'ä' | 'ß' => 600,
                    'Ω' => 770,
                    '…' | '×' => 1000,
                    _ if code < 0x0500 => 833,
                    _ if code < 0x1100 => 900,
                    _ => 1050,
                },
            }
        })
        .fold(0, u32::saturating_add);
    f64::from(thousandths) / 1000.0 * size * if bold { 1.12 } else { 1.04 }
}

/// The text cut to a width, with an ellipsis where something was left out.
#[must_use]
pub fn fit(text: &str, width: f64, size: f64, bold: bool) -> String {
    if text_width(text, size, bold) <= width {
        return text.to_owned();
    }
    let mut kept = String::new();
    for letter in text.chars() {
        kept.push(letter);
        kept.push('…');
        let fits = text_width(&kept, size, bold) <= width;
        kept.pop();
        if !fits {
            kept.pop();
            break;
        }
    }
    let mut kept = kept.trim_end().to_owned();
    kept.push('…');
    kept
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn known_widths() {
        // Helvetica: A 667, i 222, 0 556 thousandths (Adobe font metrics, from memory).
        assert!((text_width("Ai0", 1000.0, false) - 1445.0 * 1.04).abs() < 1e-6);
        assert!(text_width("M", 10.0, true) > text_width("M", 10.0, false));
    }

    #[test]
    fn what_is_fitted_fits() {
        for text in [
            "",
            "F1",
            "A very long name of a part that nobody can read",
            "🦉🦉🦉🦉🦉🦉🦉🦉🦉",
        ] {
            assert!(
                text_width(&fit(text, 60.0, 10.0, false), 10.0, false) <= 60.0,
                "{text}"
            );
        }
    }
}
