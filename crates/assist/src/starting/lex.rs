//! Words, numbers and signs of a wish, each with where it stands in the text.

use std::ops::Range;

/// What a piece of text is.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Piece {
    /// A number.
    Number(f64),
    /// A word, in small letters.
    Word(String),
    /// `×`, or an x between numbers.
    Times,
    /// Ends a phrase: comma, semicolon, new line, full stop.
    End,
    /// `+` or `&`.
    Plus,
    /// A sign that means nothing here.
    Sign(char),
}

/// A piece and its bytes in the text.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Token {
    pub(super) is: Piece,
    pub(super) at: Range<usize>,
}

/// Whether a letter belongs into a word.
fn is_letter(c: char) -> bool {
    c.is_alphabetic()
}

/// Cuts a text. Letters and digits that touch are two pieces: `75W` is a number and a word; a hyphen parts words, as it joins
/// them in `4-Kanal-Endstufe`. Between two digits a comma or a point is a decimal sign. `#` begins a remark to the end of
/// its line.
pub(super) fn cut(text: &str) -> Vec<Token> {
    let letters: Vec<(usize, char)> = text.char_indices().collect();
    let mut tokens = Vec::new();
    let at = |n: usize| letters.get(n).map(|(_, c)| *c);
    let place = |n: usize| letters.get(n).map_or(text.len(), |(byte, _)| *byte);
    let mut n = 0;
    while let Some(c) = at(n) {
        let start = n;
        let piece = match c {
            '#' => {
                while at(n).is_some_and(|c| c != '\n') {
                    n += 1;
                }
                continue;
            }
            '\n' | ',' | ';' | '.' | ':' => {
                n += 1;
                Piece::End
            }
            '×' | '*' => {
                n += 1;
                Piece::Times
            }
            '+' | '&' => {
                n += 1;
                Piece::Plus
            }
            // `10"` is a size in inches.
            '"' | '″' | '”' if matches!(tokens.last(), Some(Token { is: Piece::Number(_), at }) if at.end == place(start)) =>
            {
                n += 1;
                Piece::Word("inch".to_owned())
            }
            '@' => {
                n += 1;
                Piece::Word("@".to_owned())
            }
            c if c.is_whitespace() || matches!(c, '-' | '–' | '‐' | '/' | '(' | ')' | '\u{ad}') => {
                n += 1;
                continue;
            }
            c if c.is_ascii_digit() => {
                let mut digits = String::new();
                while let Some(c) = at(n) {
                    let is_sign = matches!(c, '.' | ',')
                        && at(n + 1).is_some_and(|next| next.is_ascii_digit())
                        && !digits.contains('.');
                    match c {
                        c if c.is_ascii_digit() => digits.push(c),
                        _ if is_sign => digits.push('.'),
                        _ => break,
                    }
                    n += 1;
                }
                digits.parse().map_or(Piece::Sign(c), Piece::Number)
            }
            c if is_letter(c) => {
                let mut word = String::new();
                while let Some(c) = at(n).filter(|c| is_letter(*c) || *c == '\u{ad}') {
                    if c != '\u{ad}' {
                        word.extend(c.to_lowercase());
                    }
                    n += 1;
                    // `4x75W`: the x is a sign of its own.
                    if word == "x" && at(n).is_some_and(|c| c.is_ascii_digit()) {
                        break;
                    }
                }
                // `b2b`, battery to battery: the only word of the trade with a digit within.
                if word == "b" && at(n) == Some('2') && at(n + 1).is_some_and(|c| matches!(c, 'b' | 'B')) {
                    word.push_str("2b");
                    n += 2;
                }
                if word == "x" {
                    Piece::Times
                } else {
                    Piece::Word(word)
                }
            }
            other => {
                n += 1;
                Piece::Sign(other)
            }
        };
        tokens.push(Token {
            is: piece,
            at: place(start)..place(n),
        });
    }
    tokens
}
