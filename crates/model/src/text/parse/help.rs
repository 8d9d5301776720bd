//! What an error of the text form says would do.

use super::super::error::closest;
use super::super::{fits, is_bare_number};
use super::whose::Whose;
use crate::conductor::Jacket;
use crate::property::{Property, PropertyType, Shape};
use crate::said::choice;
use ordered::OrderedSet;
use words::{Saying, Value, say};

/// A name with each row of digits as one `#`: names of the same row are alike.
pub(super) fn row_of(name: &str) -> String {
    let mut out = String::new();
    for c in name.chars() {
        match c {
            c if !c.is_ascii_digit() => out.push(c),
            _ if out.ends_with('#') => {}
            _ => out.push('#'),
        }
    }
    out
}

/// A list of terminals, long rows of numbered ones drawn together: `+, in1 … in4, -`.
pub(super) fn abbreviate(names: &[String]) -> String {
    let mut rows: Vec<(String, Vec<&str>)> = Vec::new();
    for name in names {
        let shape = row_of(name);
        match rows.iter_mut().find(|(known, _)| *known == shape) {
            Some((_, row)) => row.push(name),
            None => rows.push((shape, vec![name])),
        }
    }
    let written: Vec<String> = rows
        .iter()
        .map(|(shape, row)| match row.as_slice() {
            [first, .., last] if shape.contains('#') && row.len() > 3 => format!("{first} … {last}"),
            row => row.join(", "),
        })
        .collect();
    written.join(", ")
}

/// What would do for a value of this property.
pub(super) fn help_for(property: &Property, written: &str) -> Option<Saying> {
    let written = written.strip_prefix('~').unwrap_or(written);
    Some(match property.shape {
        Shape::Choice(words) => match closest(written, words.iter().map(|(word, _)| *word)) {
            Some(meant) => say!("text-meant", meant = meant),
            None => {
                let all: Vec<Saying> = words
                    .iter()
                    .map(|(word, title)| say!("text-choice", word = *word, title = choice(title)))
                    .collect();
                say!("text-choices", words = Value::Joined(all, ", "))
            }
        },
        Shape::Number { ascii, .. } => match property.range {
            Some((least, most)) => say!(
                "text-range",
                least = format!("{least}{ascii}"),
                most = format!("{most}{ascii}")
            ),
            None => return None,
        },
        Shape::Count => match property.range {
            Some((least, most)) => say!("text-count", least = least.to_string(), most = most.to_string()),
            None => return None,
        },
        Shape::YesNo => say!("text-yes-no"),
        Shape::Text { example: "" } => return None,
        Shape::Text { example } => say!("text-like", example = example),
    })
}

/// Why a value without a name was not taken, and what would do.
pub(super) fn why_not_bare(
    list: &'static [Property],
    whose: Whose,
    text: &str,
    done: &OrderedSet<&'static str>,
) -> (Saying, Option<Saying>) {
    let plain = text.strip_prefix('~').unwrap_or(text);
    if text == "?" || is_bare_number(text) {
        let numbers: Vec<String> = list
            .iter()
            .filter(|p| matches!(p.shape, Shape::Number { .. } | Shape::Count) && !done.contains(p.name))
            .take(6)
            .map(|p| format!("{}={text}", p.name))
            .collect();
        let help = (!numbers.is_empty()).then(|| say!("text-with-name", words = numbers.join(", ")));
        return (say!("text-of-what", text = text), help);
    }
    if let Some(property) = list
        .iter()
        .find(|property| done.contains(property.name) && fits(property, text))
    {
        let message = say!("text-set-already", key = property.name);
        return (message, Some(say!("text-set-already-help", text = text)));
    }
    if let Some(property) = list.iter().find(|property| fits(property, plain)) {
        // Only the mark stands in the way.
        let message = say!("text-not-assumed", key = property.name);
        return (message, Some(say!("text-not-assumed-help", text = plain)));
    }
    let words = list.iter().flat_map(|property| match property.shape {
        Shape::Choice(words) => words.iter().map(|(word, _)| *word).collect(),
        Shape::YesNo => vec![property.name],
        _ => Vec::new(),
    });
    let message = say!("text-no-value", whose = whose.said(), text = text);
    if let Some(meant) = closest(plain, words) {
        return (message, Some(say!("text-meant", meant = meant)));
    }
    if let Some(property) = list.iter().find(|property| property.name == plain) {
        return (message, Some(say!("text-write-key", key = property.name)));
    }
    if Jacket::parse(&plain.to_ascii_uppercase(), None).is_ok() && list.iter().any(|p| p.name == "colour") {
        return (
            message,
            Some(say!("text-colours", colour = plain.to_ascii_uppercase())),
        );
    }
    let takes: Vec<String> = list
        .iter()
        .map(|property| match property.shape {
            Shape::Number { ascii, .. } if !ascii.is_empty() => format!("{} ({ascii})", property.name),
            _ => property.name.to_owned(),
        })
        .collect();
    let help = if takes.is_empty() {
        say!("text-no-properties")
    } else {
        say!("text-has", words = takes.join(", "))
    };
    (message, Some(help))
}
