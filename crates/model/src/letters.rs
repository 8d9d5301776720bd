//! Small letters for looking things up, whatever the case they were typed in. For the alphabets that people here write in,
//! and no more: the standard library's tables of all scripts weigh more on the page than all symbols of the drawing.

/// The small letter of a Latin, Greek or Cyrillic one (U+0000 to U+017F, U+0386 to U+03CE, U+0400 to U+045F); any other
/// letter as it is. One letter for one letter: İ stays as it is.
#[must_use]
pub fn lower(letter: char) -> char {
    let code = u32::from(letter);
    let small = match code {
        // A to Z, À to Þ but the sign ×, Α to Ϋ (U+03A2 is none), А to Я.
        0x41..=0x5A | 0xC0..=0xD6 | 0xD8..=0xDE | 0x391..=0x3A1 | 0x3A3..=0x3AB | 0x410..=0x42F => code + 32,
        0x400..=0x40F => code + 80,
        // Capital and small in turn.
        0x100..=0x12F | 0x132..=0x137 | 0x14A..=0x177 => code | 1,
        0x139..=0x148 | 0x179..=0x17E => code + code % 2,
        0x178 => 0xFF,
        0x386 => 0x3AC,
        0x388..=0x38A => code + 37,
        0x38C => 0x3CC,
        0x38E | 0x38F => code + 63,
        _ => code,
    };
    char::from_u32(small).unwrap_or(letter)
}

/// A text in small letters.
#[must_use]
pub fn in_lower(text: &str) -> String {
    text.chars().map(lower).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Against the standard library, which goes by the tables of Unicode.
    #[test]
    fn small_letters_are_those_of_unicode() {
        for code in (0..=0x17F).chain(0x386..=0x3CE).chain(0x400..=0x45F) {
            if let Some(letter) = char::from_u32(code).filter(|letter| *letter != 'İ') {
                assert!(letter.to_lowercase().eq([lower(letter)]), "{letter} U+{code:04X}");
            }
        }
        assert_eq!(in_lower("Sub ÄÖÜ ΩΜ Ж 漢"), "sub äöü ωμ ж 漢");
    }
}
