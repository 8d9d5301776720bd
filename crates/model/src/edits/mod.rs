//! The edits that a user makes on a sheet, each as a function from a job to an [`Edit`]: nothing changes until the
//! edit is applied, and everything is undone like any other.

mod body;
mod clip;
mod connect;
mod insert;
mod readings;
mod thread;

pub use body::{
    Told, add_passage, add_place, move_place, remove_told, set_body_property, set_route, set_told_property,
};
pub use clip::{Clip, Pasted, copy, duplicate, paste};
pub use connect::{Connected, connect, usual_ending, usual_wire};
pub use insert::{Inserted, insert_into_run, ways_through};
pub use readings::{keep_reading, remove_reading, set_reading};
pub use thread::{
    ThreadList, add_line, add_picture, add_picture_of_intake, remove_line, remove_picture, set_line,
    set_picture, set_rate, set_tuning, tick,
};

use crate::edit::{Change, Edit, Name};
use crate::id::{PartId, RunId};
use crate::job::{BoardPoint, End, Job, Part, Run, Sheet, SheetKind};
use crate::kinds::PartKind;
use crate::limits::{FURTHEST, LONGEST_LABEL, LONGEST_NOTE, check_tag};
use crate::property::{PropertyError, PropertySet};
use ordered::{OrderedMap, OrderedSet};
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
    if text.len() > most {
        return Err(EditError(say!(
            "error-too-long",
            what = what,
            bytes = text.len(),
            most = most
        )));
    }
    Ok(())
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

/// Takes parts and runs away, and with the parts all runs that land on them. What is not there is passed over.
#[must_use]
pub fn remove(job: &Job, on: SheetKind, parts: &OrderedSet<PartId>, runs: &OrderedSet<RunId>) -> Edit {
    let Some(sheet) = job.sheet(on) else {
        return Edit::new(say!("edit-delete-nothing"), Vec::new());
    };
    let goes = |id: &RunId, run: &Run| {
        runs.contains(id)
            || run
                .ends()
                .iter()
                .any(|end| end.terminal().is_some_and(|t| parts.contains(&t.part)))
    };
    let gone = sheet.runs.iter().filter(|(id, run)| goes(id, run));
    let mut changes: Vec<Change> = gone
        .map(|(id, _)| Change::Run {
            sheet: on,
            id: *id,
            to: None,
        })
        .collect();
    let there = parts.iter().filter(|id| sheet.parts.contains_key(id));
    changes.extend(there.map(|id| Change::Part {
        sheet: on,
        id: *id,
        to: None,
    }));
    Edit::new(say!("edit-delete", what = things(sheet, parts, runs)), changes)
}

/// Takes parts away, and all runs that land on them.
#[must_use]
pub fn remove_parts(job: &Job, on: SheetKind, parts: &OrderedSet<PartId>) -> Edit {
    remove(job, on, parts, &OrderedSet::new())
}

/// Takes runs away.
#[must_use]
pub fn remove_runs(job: &Job, on: SheetKind, runs: &OrderedSet<RunId>) -> Edit {
    remove(job, on, &OrderedSet::new(), runs)
}

fn shifted(at: BoardPoint, dx: i32, dy: i32) -> BoardPoint {
    let move_by = |from: i32, by: i32| from.saturating_add(by).clamp(-FURTHEST, FURTHEST);
    BoardPoint {
        x: move_by(at.x, dx),
        y: move_by(at.y, dy),
    }
}

/// Moves parts by so many board units, and with them the bends of the runs that lie among them. Nothing leaves the
/// board. A part that has no place yet stays without one.
#[must_use]
pub fn move_parts(job: &Job, on: SheetKind, parts: &OrderedSet<PartId>, dx: i32, dy: i32) -> Edit {
    let Some(sheet) = job.sheet(on) else {
        return Edit::new(say!("edit-move-nothing"), Vec::new());
    };
    let mut changes = Vec::new();
    for (id, part) in parts
        .iter()
        .filter_map(|id| sheet.parts.get(id).map(|part| (id, part)))
    {
        if let Some(at) = part.at {
            changes.push(put_part(
                on,
                *id,
                Part {
                    at: Some(shifted(at, dx, dy)),
                    ..part.clone()
                },
            ));
        }
    }
    for (id, run) in sheet
        .runs
        .iter()
        .filter(|(_, run)| !run.bends.is_empty() && among(run, parts))
    {
        let bends = run.bends.iter().map(|bend| shifted(*bend, dx, dy)).collect();
        changes.push(put_run(on, *id, Run { bends, ..run.clone() }));
    }
    Edit::new(
        say!("edit-move", what = things(sheet, parts, &OrderedSet::new())),
        changes,
    )
}

/// Whether both ends of a run are on these parts.
fn among(run: &Run, parts: &OrderedSet<PartId>) -> bool {
    run.ends()
        .iter()
        .all(|end| end.terminal().is_some_and(|t| parts.contains(&t.part)))
}

/// Puts a part of a kind on the sheet, as it comes from the shelf.
#[must_use]
pub fn add_part(job: &Job, on: SheetKind, kind: PartKind, at: Option<BoardPoint>) -> (Edit, PartId) {
    let id = job.free_part_id();
    let tag = job.sheet(on).map_or_else(
        || format!("{}1", kind.letter()),
        |sheet| sheet.free_tag(kind.letter()),
    );
    let name = say!("edit-add", tag = &tag);
    let part = Part {
        at: at.map(|at| shifted(at, 0, 0)),
        ..Part::new(tag, kind)
    };
    (Edit::new(name, vec![put_part(on, id, part)]), id)
}

/// Changes one part by a function, under a name.
///
/// # Errors
/// When the part is not there.
pub fn change_part(
    job: &Job,
    on: SheetKind,
    id: PartId,
    name: impl Into<Name>,
    how: impl FnOnce(&mut Part),
) -> Result<Edit, EditError> {
    let mut part = part_of(job, on, id)?.clone();
    how(&mut part);
    Ok(Edit::new(name, vec![put_part(on, id, part)]))
}

/// Changes one run by a function, under a name.
///
/// # Errors
/// When the run is not there.
pub fn change_run(
    job: &Job,
    on: SheetKind,
    id: RunId,
    name: impl Into<Name>,
    how: impl FnOnce(&mut Run),
) -> Result<Edit, EditError> {
    let mut run = run_of(job, on, id)?.clone();
    how(&mut run);
    Ok(Edit::new(name, vec![put_run(on, id, run)]))
}

/// Sets a property of a part, or of how it is fixed, from its written form. Runs on a terminal that the part then no longer has stay on its
/// name, so that setting it back brings them back.
///
/// # Errors
/// When the part or the property is not there, or the text does not fit.
pub fn set_property(job: &Job, on: SheetKind, id: PartId, name: &str, text: &str) -> Result<Edit, EditError> {
    let mut part = part_of(job, on, id)?.clone();
    part.set_with(name).set(name, text)?;
    Ok(Edit::new(
        say!("edit-set", name = set_name(name), of = &part.tag),
        vec![put_part(on, id, part)],
    ))
}

/// Sets a property of a run's wire, or of how it is laid, from its written form.
///
/// # Errors
/// When the run or the property is not there, or the text does not fit.
pub fn set_wire_property(
    job: &Job,
    on: SheetKind,
    id: RunId,
    name: &str,
    text: &str,
) -> Result<Edit, EditError> {
    let mut run = run_of(job, on, id)?.clone();
    run.set_with(name).set(name, text)?;
    Ok(Edit::new(
        say!("edit-set", name = set_name(name), of = &run.tag),
        vec![put_run(on, id, run)],
    ))
}

/// Sets a property of how one end of a run is finished, from its written form.
///
/// # Errors
/// When the run or the property is not there, or the text does not fit.
pub fn set_ending_property(
    job: &Job,
    on: SheetKind,
    id: RunId,
    side: RunSide,
    name: &str,
    text: &str,
) -> Result<Edit, EditError> {
    let mut run = run_of(job, on, id)?.clone();
    match side {
        RunSide::From => run.from_ending.set(name, text)?,
        RunSide::To => run.to_ending.set(name, text)?,
    }
    Ok(Edit::new(
        say!("edit-set-end", name = set_name(name), of = &run.tag),
        vec![put_run(on, id, run)],
    ))
}

/// Puts one end of a run somewhere else; how it is finished there becomes what is usual, unless it was given. Bends put by
/// hand stay where the end stays at its part; on the way to another part they mean nothing.
///
/// # Errors
/// When the run or the terminal is not there.
pub fn set_end(job: &Job, on: SheetKind, id: RunId, side: RunSide, to: End) -> Result<Edit, EditError> {
    let sheet = sheet_of(job, on)?;
    let mut run = run_of(job, on, id)?.clone();
    connect::check_end(sheet, &to)?;
    let name = say!("edit-move-end", run = &run.tag);
    let (end, ending) = match side {
        RunSide::From => (&mut run.from, &mut run.from_ending),
        RunSide::To => (&mut run.to, &mut run.to_ending),
    };
    if !ending.method.is_given() {
        ending.method = connect::ending_at(sheet, &to);
    }
    if !matches!((&*end, &to), (End::On(was), End::On(now)) if was.part == now.part) {
        run.bends.clear();
    }
    *end = to;
    Ok(Edit::new(name, vec![put_run(on, id, run)]))
}

/// Whether a tag is good and free on a sheet, for something that has `own` now.
fn check_new_tag(sheet: &Sheet, own: &str, tag: &str) -> Result<(), EditError> {
    check_tag(tag).map_err(EditError)?;
    let taken = tag != own && (sheet.part_by_tag(tag).is_some() || sheet.run_by_tag(tag).is_some());
    if taken {
        return Err(EditError(say!(
            "error-tag-taken",
            tag = tag,
            free = sheet.free_tag(tag.trim_end_matches(|c: char| c.is_ascii_digit()))
        )));
    }
    Ok(())
}

/// Gives a part another tag.
///
/// # Errors
/// When the part is not there, or the tag is none or taken.
pub fn rename_part(job: &Job, on: SheetKind, id: PartId, tag: &str) -> Result<Edit, EditError> {
    let part = part_of(job, on, id)?;
    check_new_tag(sheet_of(job, on)?, &part.tag, tag)?;
    let name = say!("edit-rename", from = &part.tag, to = tag);
    let renamed = Part {
        tag: tag.to_owned(),
        ..part.clone()
    };
    let mut changes = vec![put_part(on, id, renamed)];
    changes.extend(readings::renamed(job, on, &part.tag, tag));
    changes.extend(thread::renamed(job, on, &part.tag, tag));
    Ok(Edit::new(name, changes))
}

/// Gives a run another tag.
///
/// # Errors
/// When the run is not there, or the tag is none or taken.
pub fn rename_run(job: &Job, on: SheetKind, id: RunId, tag: &str) -> Result<Edit, EditError> {
    let run = run_of(job, on, id)?;
    check_new_tag(sheet_of(job, on)?, &run.tag, tag)?;
    let name = say!("edit-rename", from = &run.tag, to = tag);
    let renamed = Run {
        tag: tag.to_owned(),
        ..run.clone()
    };
    let mut changes = vec![put_run(on, id, renamed)];
    changes.extend(readings::renamed(job, on, &run.tag, tag));
    changes.extend(thread::renamed(job, on, &run.tag, tag));
    Ok(Edit::new(name, changes))
}

/// A text that the user gives to a part or run.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Words {
    /// Its name in words.
    Label,
    /// A remark.
    Note,
    /// The spot in the body where it is mounted; of parts only.
    Place,
}

impl Words {
    fn word(self) -> &'static str {
        match self {
            Self::Label => "label",
            Self::Note => "note",
            Self::Place => "place",
        }
    }
    fn check(self, text: &str) -> Result<(), EditError> {
        let most = if self == Self::Note {
            LONGEST_NOTE
        } else {
            LONGEST_LABEL
        };
        hold_length(text, most, self.word())
    }
}

/// Gives a part a label, a note or a place; an empty text takes it away.
///
/// # Errors
/// When the part is not there, or the text is too long for a file.
pub fn set_part_words(
    job: &Job,
    on: SheetKind,
    id: PartId,
    which: Words,
    text: &str,
) -> Result<Edit, EditError> {
    which.check(text)?;
    let name = say!(
        "edit-set",
        name = set_name(which.word()),
        of = &part_of(job, on, id)?.tag
    );
    change_part(job, on, id, name, |part| match which {
        Words::Label => text.clone_into(&mut part.label),
        Words::Note => text.clone_into(&mut part.note),
        Words::Place => part.place = (!text.is_empty()).then(|| text.to_owned()),
    })
}

/// Gives a run a label or a note; an empty text takes it away.
///
/// # Errors
/// When the run is not there, the text is too long for a file, or a place is meant, which a run has none of.
pub fn set_run_words(
    job: &Job,
    on: SheetKind,
    id: RunId,
    which: Words,
    text: &str,
) -> Result<Edit, EditError> {
    which.check(text)?;
    let name = say!(
        "edit-set",
        name = set_name(which.word()),
        of = &run_of(job, on, id)?.tag
    );
    if which == Words::Place {
        return Err(EditError(say!("error-run-place")));
    }
    change_run(job, on, id, name, |run| match which {
        Words::Label => text.clone_into(&mut run.label),
        Words::Note | Words::Place => text.clone_into(&mut run.note),
    })
}

/// Gives the job a title.
///
/// # Errors
/// When it is too long for a file.
pub fn set_title(title: &str) -> Result<Edit, EditError> {
    hold_length(title, LONGEST_LABEL, "title")?;
    Ok(Edit::new(
        say!("edit-title"),
        vec![Change::Title(title.to_owned())],
    ))
}

/// Sets a property of what the title block says, from its written form.
///
/// # Errors
/// When there is no such property, or the text does not fit.
pub fn set_vehicle_property(job: &Job, name: &str, text: &str) -> Result<Edit, EditError> {
    let mut vehicle = job.vehicle.clone();
    vehicle.set(name, text)?;
    Ok(Edit::new(
        say!("edit-set-alone", name = set_name(name)),
        vec![Change::Vehicle(Box::new(vehicle))],
    ))
}

/// Sets one of the conditions, from its written form.
///
/// # Errors
/// When there is no such condition, or the text does not fit.
pub fn set_condition(job: &Job, name: &str, text: &str) -> Result<Edit, EditError> {
    let mut settings = job.settings.clone();
    settings.conditions.set(name, text)?;
    Ok(Edit::new(
        say!("edit-set-alone", name = set_name(name)),
        vec![Change::Settings(Box::new(settings))],
    ))
}

/// Sets a limit that the checks hold things against, for this job; without a number the profile's holds again.
///
/// # Errors
/// When the number is none that a limit can be.
pub fn set_limit(job: &Job, key: &str, number: Option<f64>) -> Result<Edit, EditError> {
    let mut settings = job.settings.clone();
    match number {
        Some(number) if !number.is_finite() || !(0.0..=1e6).contains(&number) => {
            return Err(EditError(say!("error-limit")));
        }
        Some(_) if settings.limits.len() >= crate::limits::MOST_SETTINGS => {
            return Err(EditError(say!("error-limits")));
        }
        Some(number) => settings.limits.insert(key.to_owned(), number),
        None => settings.limits.remove(key),
    };
    hold_length(key, LONGEST_LABEL, "limit")?;
    let name = if number.is_some() {
        say!("edit-limit", limit = key)
    } else {
        say!("edit-limit-back", limit = key)
    };
    Ok(Edit::new(name, vec![Change::Settings(Box::new(settings))]))
}

/// Leaves a check out of this job, or takes it in again.
///
/// # Errors
/// When its name is too long, or too many are left out already.
pub fn leave_out(job: &Job, check: &str, out: bool) -> Result<Edit, EditError> {
    hold_length(check, LONGEST_LABEL, "check")?;
    let mut settings = job.settings.clone();
    if out && settings.allowed.len() >= crate::limits::MOST_SETTINGS {
        return Err(EditError(say!("error-left-out")));
    }
    let name = if out {
        settings.allowed.insert(check.to_owned());
        say!("edit-leave-out", check = check)
    } else {
        settings.allowed.remove(check);
        say!("edit-take-in", check = check)
    };
    Ok(Edit::new(name, vec![Change::Settings(Box::new(settings))]))
}

/// Turns a run round: what was its start becomes its end.
///
/// # Errors
/// When the run is not there.
pub fn reverse_run(job: &Job, on: SheetKind, id: RunId) -> Result<Edit, EditError> {
    let tag = run_of(job, on, id)?.tag.clone();
    change_run(job, on, id, say!("edit-reverse", run = tag), |run| {
        std::mem::swap(&mut run.from, &mut run.to);
        std::mem::swap(&mut run.from_ending, &mut run.to_ending);
        run.route.reverse();
        run.bends.reverse();
    })
}

/// Fills a sheet with what another shows, ids kept, so that the job knows what became of each thing. What the sheet
/// held goes.
#[must_use]
pub fn copy_sheet(job: &Job, from: SheetKind, to: SheetKind) -> Edit {
    let name = say!("edit-copy-sheet", from = from.said(), to = to.said());
    let empty = Sheet::default();
    let (source, target) = (job.sheet(from).unwrap_or(&empty), job.sheet(to).unwrap_or(&empty));
    if from == to {
        return Edit::new(name, Vec::new());
    }
    let mut changes = Vec::new();
    let gone = target.runs.keys().filter(|id| !source.runs.contains_key(id));
    changes.extend(gone.map(|id| Change::Run {
        sheet: to,
        id: *id,
        to: None,
    }));
    let gone = target.parts.keys().filter(|id| !source.parts.contains_key(id));
    changes.extend(gone.map(|id| Change::Part {
        sheet: to,
        id: *id,
        to: None,
    }));
    changes.extend(
        source
            .parts
            .iter()
            .map(|(id, part)| put_part(to, *id, part.clone())),
    );
    changes.extend(source.runs.iter().map(|(id, run)| put_run(to, *id, run.clone())));
    Edit::new(name, changes)
}

/// Free tags of a sheet, handed out one after the other.
struct Tags {
    taken: OrderedSet<String>,
    next: OrderedMap<String, u32>,
}

impl Tags {
    fn of(sheet: &Sheet) -> Self {
        let taken = sheet
            .parts
            .values()
            .map(|p| &p.tag)
            .chain(sheet.runs.values().map(|r| &r.tag));
        Self {
            taken: taken.cloned().collect(),
            next: OrderedMap::new(),
        }
    }
    /// The tag itself when it is free, else the next free one of its letters.
    fn like(&mut self, tag: &str) -> String {
        if self.taken.insert(tag.to_owned()) {
            return tag.to_owned();
        }
        // Room is left for the number.
        let mut letters = tag.trim_end_matches(|c: char| c.is_ascii_digit()).to_owned();
        while letters.len() > crate::limits::LONGEST_TAG - 10 {
            letters.pop();
        }
        let number = self.next.entry(letters.clone()).or_insert(1);
        loop {
            let fresh = format!("{letters}{number}");
            *number = number.saturating_add(1);
            if self.taken.insert(fresh.clone()) {
                return fresh;
            }
        }
    }
}
