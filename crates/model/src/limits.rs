//! How large a job may be. The file's door and the text form hold everything against these, so that no file, however
//! it came about, can exhaust memory or freeze the page.

use std::ops::RangeInclusive;
use words::{Saying, say};

/// Largest file or text that is read, in bytes: 128 MB, so that three full sheets, once written, are read again.
pub const LARGEST_FILE: usize = 128 * 1024 * 1024;
/// Deepest nesting of objects and lists in a file.
pub const DEEPEST: usize = 32;
/// Most parts on one sheet.
pub const MOST_PARTS: usize = 10_000;
/// Most runs on one sheet.
pub const MOST_RUNS: usize = 20_000;
/// Most kept readings of the meter on one sheet.
pub const MOST_READINGS: usize = 2_000;
/// Most lines about how equipment is set, on one sheet.
pub const MOST_TUNINGS: usize = 1_000;
/// Most complaints, most lines of the condition record, and most lines of the quote in one job.
pub const MOST_LINES: usize = 1_000;
/// Most steps of checklists that a job remembers as done.
pub const MOST_DONE: usize = 60_000;
/// Most pictures in one job.
pub const MOST_PICTURES: usize = 500;
/// Largest picture, in bytes; the page scales down what it takes in.
pub const LARGEST_PICTURE: usize = 2 * 1024 * 1024;
/// Most hand-placed bends in one run.
pub const MOST_BENDS: usize = 200;
/// Most places in the route of one run.
pub const MOST_PLACES: usize = 100;
/// Most limits, and most checks that are not to be run, in the settings of one job.
pub const MOST_SETTINGS: usize = 1_000;
/// What a limit in the settings of a job may be.
pub const LIMIT: RangeInclusive<f64> = 0.0..=1e6;
/// Most places, and most passages, of which a job tells something of its own.
pub const MOST_OWN_PLACES: usize = 200;
/// Longest name of a place or passage that a job tells of, in bytes.
pub const LONGEST_PLACE: usize = 48;
/// Longest tag, in bytes.
pub const LONGEST_TAG: usize = 24;
/// Longest name of a terminal, in bytes.
pub const LONGEST_TERMINAL: usize = 24;
/// Longest label, title or name of a place, in bytes.
pub const LONGEST_LABEL: usize = crate::property::LONGEST_TEXT;
/// Longest note, in bytes.
pub const LONGEST_NOTE: usize = 4_000;
/// Furthest point of the board from its origin, in board units, on either axis.
pub const FURTHEST: i32 = 1_000_000;

/// Holds a tag against the rule: one or more letters, digits or `_`, up to [`LONGEST_TAG`] bytes.
///
/// # Errors
/// What is wrong with it.
pub fn check_tag(tag: &str) -> Result<(), Saying> {
    if tag.is_empty() {
        return Err(say!("error-tag-empty"));
    }
    if tag.len() > LONGEST_TAG {
        return Err(say!("error-tag-long", most = LONGEST_TAG, bytes = tag.len()));
    }
    match tag.chars().find(|c| !(c.is_alphanumeric() || *c == '_')) {
        Some(bad) => Err(say!("error-tag-sign", tag = tag, bad = bad.to_string())),
        None => Ok(()),
    }
}

/// Holds the tag of a line of the thread against the rule: that of tags, but a line may be without one.
///
/// # Errors
/// What is wrong with it.
pub fn check_line_tag(tag: &str) -> Result<(), Saying> {
    if tag.is_empty() { Ok(()) } else { check_tag(tag) }
}

/// Holds the length of a text against a limit in bytes.
///
/// # Errors
/// When it is longer.
pub fn check_length(text: &str, most: usize) -> Result<(), Saying> {
    if text.len() > most {
        return Err(say!("error-length", bytes = text.len(), most = most));
    }
    Ok(())
}

/// Holds the names of the places on a route against how many there may be, and how long.
///
/// # Errors
/// When there are more, or one is longer.
pub fn check_route(route: &[String]) -> Result<(), Saying> {
    if route.len() > MOST_PLACES {
        return Err(say!("error-route-long", most = MOST_PLACES));
    }
    let mut places = route.iter();
    places
        .try_for_each(|place| check_length(place, LONGEST_LABEL))
        .map_err(|why| say!("error-route-place", why = why))
}

/// Holds a limit that a job sets against what it may be.
///
/// # Errors
/// When it is outside [`LIMIT`], or no number at all.
pub fn check_limit(number: f64) -> Result<(), Saying> {
    if LIMIT.contains(&number) {
        Ok(())
    } else {
        Err(say!("error-limit"))
    }
}

/// Holds a point against the bounds of the board.
///
/// # Errors
/// When it is further out than [`FURTHEST`].
pub fn check_point(point: crate::job::BoardPoint) -> Result<(), Saying> {
    let inside = -FURTHEST..=FURTHEST;
    if inside.contains(&point.x) && inside.contains(&point.y) {
        return Ok(());
    }
    Err(say!(
        "error-off-board",
        x = point.x.to_string(),
        y = point.y.to_string(),
        most = FURTHEST.to_string()
    ))
}
