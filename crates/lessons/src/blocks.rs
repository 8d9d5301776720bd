//! A text in blocks, the form of lessons and of their words in other languages: a line that begins without a blank opens a
//! block, what is indented belongs to it, `#` at the beginning of a line starts a comment.

use ::words::{Saying, say};
use model::text::TextError;

/// Most blocks of a text: beyond them it is no lesson.
const MOST_BLOCKS: usize = 200;
/// Beyond this many errors a text is no lesson at all, and more of them help nobody.
pub(crate) const MOST_ERRORS: usize = 100;

/// A line of the text and its number.
#[derive(Clone, Copy)]
pub(crate) struct Line<'t> {
    /// From 1.
    pub(crate) number: usize,
    /// Without blanks at its end.
    pub(crate) text: &'t str,
}

impl<'t> Line<'t> {
    /// The lines of a text without its comments.
    pub(crate) fn all(text: &'t str) -> Vec<Self> {
        text.lines()
            .enumerate()
            .map(|(at, text)| Self {
                number: at + 1,
                text: text.trim_end(),
            })
            .filter(|line| !line.text.starts_with('#'))
            .collect()
    }
    /// An error that is about this line.
    pub(crate) fn error(self, message: impl Into<Saying>, help: impl Into<Saying>) -> TextError {
        let start = self.text.len() - self.text.trim_start().len();
        TextError {
            line: self.number,
            column: start + 1,
            width: self.text.trim().chars().count().max(1),
            message: message.into(),
            help: Some(help.into()),
            source: self.text.to_owned(),
        }
    }
}

/// Hands over the blocks of a text one by one, each with its head by itself. A line that begins without a blank opens a block;
/// what is indented belongs to it. Gives an error where there are so many that it is no lesson.
pub(crate) fn each_block<'t>(
    lines: &[Line<'t>],
    mut take: impl FnMut(Line<'t>, &[Line<'t>]),
) -> Option<TextError> {
    let mut rest = lines;
    let mut blocks = 0;
    while let Some((head, tail)) = rest.split_first() {
        let length = tail
            .iter()
            .take_while(|line| line.text.is_empty() || line.text.starts_with(' '))
            .count();
        let (block, next) = tail.split_at_checked(length).unwrap_or((tail, &[]));
        if !head.text.is_empty() {
            blocks += 1;
            if blocks > MOST_BLOCKS {
                let message = say!("lesson-text-blocks", most = MOST_BLOCKS);
                return Some(head.error(message, say!("lesson-text-two")));
            }
            take(*head, block);
        }
        rest = next;
    }
    None
}

/// Prose: lines joined, empty lines between paragraphs.
pub(crate) fn paragraphs(block: &[Line<'_>]) -> Vec<String> {
    let mut all = Vec::new();
    for paragraph in block.split(|line| line.text.is_empty()) {
        let words: Vec<&str> = paragraph
            .iter()
            .flat_map(|line| line.text.split_whitespace())
            .collect();
        if !words.is_empty() {
            all.push(words.join(" "));
        }
    }
    all
}

/// Items: a word, and the text behind it with what is indented further.
pub(crate) fn items<'t>(block: &[Line<'t>]) -> Vec<(Line<'t>, &'t str, String)> {
    let indent = |text: &str| text.len() - text.trim_start().len();
    let mut all: Vec<(Line<'t>, &'t str, String)> = Vec::new();
    for line in block.iter().filter(|line| !line.text.is_empty()) {
        match all.last_mut() {
            Some((first, _, text)) if indent(line.text) > indent(first.text) => {
                text.push(' ');
                text.push_str(line.text.trim());
            }
            _ => {
                let (word, rest) = line.text.trim().split_once(' ').unwrap_or((line.text.trim(), ""));
                all.push((*line, word, rest.trim().to_owned()));
            }
        }
    }
    all
}
