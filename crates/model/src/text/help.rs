//! What an error of the text form says would do.

use super::error::closest;
use super::{fits, is_bare_number};
use crate::conductor::Jacket;
use crate::property::{Property, PropertyType, Shape};
use ordered::OrderedSet;

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
pub(super) fn help_for(property: &Property, written: &str) -> String {
    let written = written.strip_prefix('~').unwrap_or(written);
    match property.shape {
        Shape::Choice(words) => match closest(written, words.iter().map(|(word, _)| *word)) {
            Some(meant) => format!("did you mean `{meant}`?"),
            None => {
                let all: Vec<String> = words
                    .iter()
                    .map(|(word, title)| format!("{word} ({title})"))
                    .collect();
                all.join(", ")
            }
        },
        Shape::Number { ascii, .. } => match property.range {
            Some((least, most)) => format!("it takes {least}{ascii} to {most}{ascii}"),
            None => String::new(),
        },
        Shape::Count => match property.range {
            Some((least, most)) => format!("it takes a whole number from {least} to {most}"),
            None => String::new(),
        },
        Shape::YesNo => "write yes or no".to_owned(),
        Shape::Text { example: "" } => String::new(),
        Shape::Text { example } => format!("write it as {example}"),
    }
}

/// Why a value without a name was not taken, and what would do.
pub(super) fn why_not_bare(
    list: &'static [Property],
    whose: &str,
    text: &str,
    done: &OrderedSet<&'static str>,
) -> (String, String) {
    let plain = text.strip_prefix('~').unwrap_or(text);
    if text == "?" || is_bare_number(text) {
        let numbers: Vec<String> = list
            .iter()
            .filter(|p| matches!(p.shape, Shape::Number { .. } | Shape::Count) && !done.contains(p.name))
            .take(6)
            .map(|p| format!("{}={text}", p.name))
            .collect();
        let message = format!("`{text}` does not say what it is a value of");
        return (
            message,
            if numbers.is_empty() {
                String::new()
            } else {
                format!("write {}", numbers.join(", or "))
            },
        );
    }
    if let Some(property) = list
        .iter()
        .find(|property| done.contains(property.name) && fits(property, text))
    {
        let message = format!("{} is set already in this line", property.name);
        return (message, format!("`{text}` would be a second value for it"));
    }
    if let Some(property) = list.iter().find(|property| fits(property, plain)) {
        // Only the mark stands in the way.
        let message = format!("{} cannot be assumed", property.name);
        return (message, format!("write {plain} without the ~"));
    }
    let words = list.iter().flat_map(|property| match property.shape {
        Shape::Choice(words) => words.iter().map(|(word, _)| *word).collect(),
        Shape::YesNo => vec![property.name],
        _ => Vec::new(),
    });
    let message = format!("{whose} takes no value `{text}`");
    if let Some(meant) = closest(plain, words) {
        return (message, format!("did you mean `{meant}`?"));
    }
    if let Some(property) = list.iter().find(|property| property.name == plain) {
        return (message, format!("write {}=…", property.name));
    }
    if Jacket::parse(&plain.to_ascii_uppercase(), None).is_ok() && list.iter().any(|p| p.name == "colour") {
        return (
            message,
            format!("colours are written {}", plain.to_ascii_uppercase()),
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
        "it has no properties".to_owned()
    } else {
        format!("it has {}", takes.join(", "))
    };
    (message, help)
}
