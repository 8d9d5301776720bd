//! The edits that a user makes on a sheet, each as a function from a job to an [`Edit`](crate::Edit): nothing changes until the
//! edit is applied, and everything is undone like any other.

mod body;
mod clip;
mod connect;
mod insert;
mod properties;
mod readings;
mod settings;
mod sheet;
mod tags;
mod thread;

pub use body::{
    Told, add_passage, add_place, move_place, remove_told, set_body_property, set_route, set_told_property,
};
pub use clip::{Clip, Pasted, copy, duplicate, paste};
pub use connect::{Connected, connect, usual_ending, usual_wire};
pub use insert::{Inserted, insert_into_run, ways_through};
pub use properties::{
    Words, change_part, change_run, reverse_run, set_end, set_ending_property, set_part_words, set_property,
    set_run_words, set_wire_property,
};
pub use readings::{keep_reading, remove_reading, set_reading};
pub use settings::{leave_out, set_condition, set_limit, set_title, set_vehicle_property};
pub use sheet::{add_part, copy_sheet, move_parts, remove, remove_parts, remove_runs};
pub use tags::{rename_part, rename_run};
pub use thread::{
    ThreadList, add_line, add_picture, add_picture_of_intake, remove_line, remove_picture, set_line,
    set_picture, set_rate, set_tuning, tick,
};

use crate::edit::Change;
use crate::id::{PartId, RunId};
use crate::job::{Job, Part, Run, Sheet, SheetKind};
use crate::limits::check_length;
use crate::property::PropertyError;
use ordered::OrderedSet;
use std::fmt;
use words::{Saying, say};

/// Why an edit cannot be made, in words for the user.
#[derive(Clone, Debug, PartialEq)]
pub struct EditError(pub Saying);

impl fmt::Display for EditError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(out)
    }
}

impl std::error::Error for EditError {}

impl From<PropertyError> for EditError {
    fn from(error: PropertyError) -> Self {
        Self(error.said)
    }
}

/// One of the two ends of a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum RunSide {
    /// Its end `from`.
    From,
    /// Its end `to`.
    To,
}

fn sheet_of(job: &Job, on: SheetKind) -> Result<&Sheet, EditError> {
    job.sheet(on)
        .ok_or_else(|| EditError(say!("error-no-sheet", sheet = on.said())))
}

fn part_of(job: &Job, on: SheetKind, id: PartId) -> Result<&Part, EditError> {
    sheet_of(job, on)?
        .parts
        .get(&id)
        .ok_or_else(|| EditError(say!("error-no-part", id = id.to_string())))
}

fn run_of(job: &Job, on: SheetKind, id: RunId) -> Result<&Run, EditError> {
    sheet_of(job, on)?
        .runs
        .get(&id)
        .ok_or_else(|| EditError(say!("error-no-run", id = id.to_string())))
}

/// The name of a property, or of one of the words that everything has, within the name of an edit.
fn set_name(name: &str) -> Saying {
    match name {
        "label" | "note" | "place" => Saying::new(format!("edit-word-{name}")),
        _ => crate::said::name_of(name),
    }
}

/// Holds the length of a text against a limit in bytes. `what` it is, as the message `error-too-long` knows it.
fn hold_length(text: &str, most: usize, what: &str) -> Result<(), EditError> {
    check_length(text, most).map_err(|why| EditError(say!("error-too-long", what = what, why = why)))
}

fn put_part(on: SheetKind, id: PartId, part: Part) -> Change {
    Change::Part {
        sheet: on,
        id,
        to: Some(Box::new(part)),
    }
}

fn put_run(on: SheetKind, id: RunId, run: Run) -> Change {
    Change::Run {
        sheet: on,
        id,
        to: Some(Box::new(run)),
    }
}

/// What an edit is about, for its name: the tag of one thing, else how many there are: `3 parts`, `2 parts and 5 runs`.
#[must_use]
pub fn things(sheet: &Sheet, parts: &OrderedSet<PartId>, runs: &OrderedSet<RunId>) -> Saying {
    let part = parts.first().and_then(|id| sheet.parts.get(id));
    let run = runs.first().and_then(|id| sheet.runs.get(id));
    match (parts.len(), runs.len(), part, run) {
        (1, 0, Some(part), _) => part.tag.clone().into(),
        (0, 1, _, Some(run)) => run.tag.clone().into(),
        (_, 0, ..) => say!("things-parts", count = parts.len()),
        (0, ..) => say!("things-runs", count = runs.len()),
        _ => say!(
            "things-both",
            parts = say!("things-parts", count = parts.len()),
            runs = say!("things-runs", count = runs.len())
        ),
    }
}
