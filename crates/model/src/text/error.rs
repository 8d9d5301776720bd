//! Errors of the text form: where, what is wrong, what would do, shown under the line itself.

use crate::letters::lower;
use std::fmt;
use words::{Saying, Words, say};

/// One error in a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TextError {
    /// Line, from 1.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
    /// How many characters it concerns, at least 1.
    pub width: usize,
    /// What is wrong.
    pub message: Saying,
    /// What would do, where something can be said.
    pub help: Option<Saying>,
    /// The line it is in.
    pub source: String,
}

impl TextError {
    /// Where it is and what is wrong, in the reader's language, without the line itself.
    #[must_use]
    pub fn said(&self) -> Saying {
        let (line, column) = (self.line.to_string(), self.column.to_string());
        say!("text-error", line = line, column = column, what = &self.message)
    }

    /// The whole of it in the reader's language: place and error, the line with the place marked, what would do.
    #[must_use]
    pub fn told(&self, words: &Words) -> String {
        self.told_with(self.help.as_ref(), words)
    }

    fn told_with(&self, help: Option<&Saying>, words: &Words) -> String {
        // A hostile line may be megabytes long: show the piece around the place.
        let before = self.column.saturating_sub(1);
        let first = self.column.saturating_sub(60);
        let shown: String = self
            .source
            .chars()
            .skip(first)
            .take(160)
            .map(|c| if c.is_control() { ' ' } else { c })
            .collect();
        let number = self.line.to_string();
        let room = shown.chars().count().saturating_sub(before.saturating_sub(first));
        let mut told = format!(
            "{}\n {number} | {shown}\n {} | {}{}",
            words.say(&self.said()),
            " ".repeat(number.len()),
            " ".repeat(before.saturating_sub(first)),
            "^".repeat(self.width.min(room.max(1)).max(1)),
        );
        if let Some(help) = help {
            told.push_str("\n   ");
            told.push_str(&words.say(help));
        }
        told
    }
}

impl fmt::Display for TextError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.told(&Words::english()))
    }
}

/// All errors found in a text, in order of their places.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct TextErrors(pub Vec<TextError>);

/// Beyond this many errors a text is not the text form at all, and more of them help nobody.
pub(crate) const MOST_ERRORS: usize = 100;

impl TextErrors {
    /// True when nothing is wrong.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Where the first one is, and what is wrong there.
    #[must_use]
    pub fn first(&self) -> Saying {
        self.0.first().map_or_else(|| "".into(), TextError::said)
    }

    /// All of them in the reader's language, an empty line between. What would do is said where it is first asked for: of many
    /// lines that are none, each would list all kinds of lines anew.
    #[must_use]
    pub fn told(&self, words: &Words) -> String {
        let earlier = |place: usize| self.0.iter().take(place).map(|error| error.help.as_ref());
        let all = self.0.iter().enumerate().map(|(place, error)| {
            let help = error.help.as_ref();
            let help = help.filter(|help| !earlier(place).any(|it| it == Some(*help)));
            error.told_with(help, words)
        });
        all.collect::<Vec<String>>().join("\n\n")
    }
}

impl fmt::Display for TextErrors {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.told(&Words::english()))
    }
}
impl std::error::Error for TextErrors {}

/// Distance between two words: letters put in, left out, changed, or two neighbours swapped.
fn distance(a: &[char], b: &[char]) -> usize {
    let mut before: Vec<usize> = Vec::new();
    let mut last: Vec<usize> = (0..=b.len()).collect();
    for (row, from) in a.iter().enumerate() {
        let mut now = Vec::with_capacity(b.len() + 1);
        now.push(row + 1);
        for (column, to) in b.iter().enumerate() {
            let at = |line: &[usize], place: usize| line.get(place).copied().unwrap_or(usize::MAX / 2);
            let mut least = (at(&last, column) + usize::from(from != to))
                .min(at(&last, column + 1) + 1)
                .min(at(&now, column) + 1);
            let swapped =
                row > 0 && column > 0 && a.get(row - 1) == Some(to) && b.get(column - 1) == Some(from);
            if swapped {
                least = least.min(at(&before, column - 1) + 1);
            }
            now.push(least);
        }
        before = std::mem::replace(&mut last, now);
    }
    last.last().copied().unwrap_or_default()
}

/// The known word that is most like what was written, if any is like enough.
#[must_use]
pub fn closest<'w>(written: &str, known: impl IntoIterator<Item = &'w str>) -> Option<&'w str> {
    let asked: Vec<char> = written.chars().take(40).map(lower).collect();
    let allowed = (asked.len() / 3).max(1);
    known
        .into_iter()
        .map(|word| {
            let chars: Vec<char> = word.chars().map(lower).collect();
            (distance(&asked, &chars), word)
        })
        .filter(|(steps, word)| *steps <= allowed && *steps < word.chars().count())
        .min()
        .map(|(_, word)| word)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_would_do_is_said_once() {
        let errors = crate::text::parse("abcdefgh B1\nijklmnop B2\n").expect_err("these are no kinds");
        let told = errors.to_string();
        assert_eq!(errors.0.len(), 2, "{told}");
        assert_eq!(told.matches("the kinds are").count(), 1, "{told}");
        assert!(told.contains("line 2, column 1"), "{told}");
    }

    #[test]
    fn finds_the_word_that_was_meant() {
        assert_eq!(closest("fues", ["fuse", "bus", "load"]), Some("fuse"));
        assert_eq!(closest("strip16", ["strip61", "strip51"]), Some("strip61"));
        assert_eq!(closest("RELAY", ["relay"]), Some("relay"));
        assert_eq!(closest("zzz", ["fuse", "bus"]), None);
        assert_eq!(closest("", ["fuse"]), None);
    }

    #[test]
    fn the_caret_stands_under_the_place() {
        let error = TextError {
            line: 12,
            column: 9,
            width: 4,
            message: "no".into(),
            help: Some("write yes".into()),
            source: "fuse F1 nope".to_owned(),
        };
        assert_eq!(
            error.to_string(),
            "line 12, column 9: no\n 12 | fuse F1 nope\n    |         ^^^^\n   write yes"
        );
    }
}
