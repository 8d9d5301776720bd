//! Errors of the text form: where, what is wrong, what would do, shown under the line itself.

use crate::letters::lower;
use std::fmt;

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
    pub message: String,
    /// What would do, perhaps empty.
    pub help: String,
    /// The line it is in.
    pub source: String,
}

impl fmt::Display for TextError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self {
            line,
            column,
            message,
            ..
        } = self;
        writeln!(out, "line {line}, column {column}: {message}")?;
        // A hostile line may be megabytes long: show the piece around the place.
        let first = column.saturating_sub(60);
        let shown: String = self
            .source
            .chars()
            .skip(first)
            .take(160)
            .map(|c| if c.is_control() { ' ' } else { c })
            .collect();
        let number = line.to_string();
        writeln!(out, " {number} | {shown}")?;
        let room = shown
            .chars()
            .count()
            .saturating_sub(column.saturating_sub(1).saturating_sub(first));
        write!(
            out,
            " {} | {}{}",
            " ".repeat(number.len()),
            " ".repeat(column.saturating_sub(1).saturating_sub(first)),
            "^".repeat(self.width.min(room.max(1)).max(1)),
        )?;
        if !self.help.is_empty() {
            write!(out, "\n   {}", self.help)?;
        }
        Ok(())
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
}

impl fmt::Display for TextErrors {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (at, error) in self.0.iter().enumerate() {
            if at > 0 {
                out.write_str("\n\n")?;
            }
            write!(out, "{error}")?;
        }
        Ok(())
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
            message: "no".to_owned(),
            help: "write yes".to_owned(),
            source: "fuse F1 nope".to_owned(),
        };
        assert_eq!(
            error.to_string(),
            "line 12, column 9: no\n 12 | fuse F1 nope\n    |         ^^^^\n   write yes"
        );
    }
}
