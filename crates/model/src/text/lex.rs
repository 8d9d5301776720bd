//! One line of the text form, cut into words.

use words::{Saying, say};

/// What one word is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Word {
    /// Written without quotes and without `=`.
    Bare(String),
    /// Written in quotes.
    Quoted(String),
    /// `key=value`, the value with or without quotes.
    Pair {
        /// Before the `=`.
        key: String,
        /// After it, quotes taken off.
        value: String,
        /// Where the value begins, in bytes of the line.
        value_at: usize,
    },
}

/// A word and where it stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Token {
    pub(crate) word: Word,
    /// First byte in the line.
    pub(crate) start: usize,
    /// First byte after it.
    pub(crate) end: usize,
}

/// Something that is no word.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct LexError {
    pub(crate) start: usize,
    pub(crate) end: usize,
    pub(crate) message: Saying,
    pub(crate) help: Saying,
}

/// Cuts a line into words; what is wrong goes to `errors`, and reading goes on behind it.
pub(crate) fn lex(line: &str, errors: &mut Vec<LexError>) -> Vec<Token> {
    let mut tokens = Vec::new();
    let mut chars = line.char_indices().peekable();
    loop {
        while chars.next_if(|(_, c)| c.is_whitespace()).is_some() {}
        let Some(&(start, first)) = chars.peek() else {
            break;
        };
        if first == '#' {
            break;
        }
        let mut text = String::new();
        let mut equals = None;
        let mut quoted = None;
        while let Some(&(at, c)) = chars.peek() {
            if c.is_whitespace() || c == '#' {
                break;
            }
            if quoted.is_some() {
                // Whatever follows a closing quote without a space: taken up to the next space.
                let from = at;
                let mut end = at;
                while let Some((at, c)) = chars.next_if(|(_, c)| !c.is_whitespace()) {
                    end = at + c.len_utf8();
                }
                errors.push(LexError {
                    start: from,
                    end,
                    message: say!("text-quote-joined"),
                    help: say!("text-quote-joined-help"),
                });
                break;
            }
            chars.next();
            match c {
                '"' if at == start || equals == Some(at.wrapping_sub(1)) => {
                    text.clear();
                    quoted = Some(at);
                    if !read_quoted(line, &mut chars, &mut text, at, errors) {
                        break;
                    }
                }
                '"' => errors.push(LexError {
                    start: at,
                    end: at + 1,
                    message: say!("text-quote-inside"),
                    help: say!("text-quote-inside-help"),
                }),
                '=' if equals.is_none() && at > start => {
                    equals = Some(at);
                    text.clear();
                }
                c => text.push(c),
            }
        }
        let end = chars.peek().map_or(line.len(), |(at, _)| *at);
        let word = match (equals, quoted) {
            (Some(at), _) => Word::Pair {
                key: line.get(start..at).unwrap_or_default().to_owned(),
                value: text,
                value_at: at + 1,
            },
            (None, Some(_)) => Word::Quoted(text),
            (None, None) => Word::Bare(text),
        };
        tokens.push(Token { word, start, end });
    }
    tokens
}

/// Reads up to the closing quote. False when the line ends before it.
fn read_quoted(
    line: &str,
    chars: &mut std::iter::Peekable<std::str::CharIndices<'_>>,
    text: &mut String,
    start: usize,
    errors: &mut Vec<LexError>,
) -> bool {
    while let Some((at, c)) = chars.next() {
        match c {
            '"' => return true,
            '\\' => match chars.next() {
                Some((_, escaped @ ('"' | '\\'))) => text.push(escaped),
                Some((_, 'n')) => text.push('\n'),
                Some((_, 'r')) => text.push('\r'),
                Some((_, 't')) => text.push('\t'),
                Some((_, other)) => {
                    text.push(other);
                    errors.push(LexError {
                        start: at,
                        end: at + 1 + other.len_utf8(),
                        message: say!("text-escape-unknown"),
                        help: say!("text-escape-unknown-help"),
                    });
                }
                None => break,
            },
            c => text.push(c),
        }
    }
    errors.push(LexError {
        start,
        end: line.len(),
        message: say!("text-quote-open"),
        help: say!("text-quote-open-help"),
    });
    false
}

/// A text as it must stand in a line: bare when it can, else in quotes.
pub(crate) fn quote_if_needed(text: &str) -> String {
    let plain = !text.is_empty()
        && !text
            .chars()
            .any(|c| c.is_whitespace() || c.is_control() || matches!(c, '"' | '#' | '\\' | '='));
    if plain { text.to_owned() } else { quote(text) }
}

/// A text in quotes.
pub(crate) fn quote(text: &str) -> String {
    let mut out = String::with_capacity(text.len() + 2);
    out.push('"');
    for c in text.chars() {
        match c {
            '"' => out.push_str("\\\""),
            '\\' => out.push_str("\\\\"),
            '\n' => out.push_str("\\n"),
            '\r' => out.push_str("\\r"),
            '\t' => out.push_str("\\t"),
            c => out.push(c),
        }
    }
    out.push('"');
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    fn words(line: &str) -> (Vec<Word>, usize) {
        let mut errors = Vec::new();
        let tokens = lex(line, &mut errors);
        (tokens.into_iter().map(|t| t.word).collect(), errors.len())
    }

    #[test]
    fn cuts_words_pairs_and_quotes() {
        let pair = |key: &str, value: &str, value_at| Word::Pair {
            key: key.to_owned(),
            value: value.to_owned(),
            value_at,
        };
        assert_eq!(
            words(r#"fuse F1 "Main \"fuse\"" a=1 b="x y" # note"#),
            (
                vec![
                    Word::Bare("fuse".to_owned()),
                    Word::Bare("F1".to_owned()),
                    Word::Quoted("Main \"fuse\"".to_owned()),
                    pair("a", "1", 26),
                    pair("b", "x y", 30),
                ],
                0
            )
        );
        assert_eq!(words(r#"a="unclosed"#).1, 1);
        assert_eq!(words(r#""a"b c"#).1, 1);
        assert_eq!(words(r#"a"b"#).1, 1);
        assert_eq!(words(r#""\q""#).1, 1);
        assert_eq!(words(r#""\"#).1, 1);
        assert_eq!(words("=x"), (vec![Word::Bare("=x".to_owned())], 0));
    }

    #[test]
    fn quoting_reads_back() {
        for text in ["", "a", "a b", "#", "\\\"", "\n\r\t", "a=b", "ü\u{2028}"] {
            assert_eq!(
                words(&quote(text)),
                (vec![Word::Quoted(text.to_owned())], 0),
                "{text:?}"
            );
        }
    }
}
