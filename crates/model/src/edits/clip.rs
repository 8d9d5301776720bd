//! Copying and pasting: parts and the runs among them, carried as text that anything can hold.

use super::sheet::{among, shifted};
use super::tags::Tags;
use super::{EditError, put_part, put_run};
use crate::edit::Edit;
use crate::id::{PartId, RunId};
use crate::job::{Job, Part, Sheet, SheetKind};
use crate::text::{self, TextErrors};
use ordered::{OrderedMap, OrderedSet};
use words::say;

/// Parts, and the runs among them, on their way from one place to another.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Clip {
    /// What is carried. Each run ends on parts that are carried too.
    pub sheet: Sheet,
}

impl Clip {
    /// The clip in the text form, for the system's clipboard.
    #[must_use]
    pub fn to_text(&self) -> String {
        let mut job = Job::default();
        job.sheets.insert(SheetKind::Plan, self.sheet.clone());
        text::print(&job)
    }

    /// A clip from the text form: all that its first sheet holds.
    ///
    /// # Errors
    /// What is wrong with the text.
    pub fn from_text(text: &str) -> Result<Self, TextErrors> {
        let mut job = text::parse(text)?;
        let sheet = job.sheets.pop_first().map(|(_, sheet)| sheet).unwrap_or_default();
        let all = sheet.parts.keys().copied().collect();
        Ok(copy(&sheet, &all))
    }

    /// The parts that it carries, where they stood.
    pub fn parts(&self) -> impl Iterator<Item = &Part> {
        self.sheet.parts.values()
    }
    /// True when it carries nothing.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.sheet.parts.is_empty()
    }
}

/// Copies parts of a sheet and the runs among them.
#[must_use]
pub fn copy(sheet: &Sheet, parts: &OrderedSet<PartId>) -> Clip {
    let mut clip = Sheet::default();
    clip.parts.extend(
        sheet
            .parts
            .iter()
            .filter(|(id, _)| parts.contains(id))
            .map(|(id, part)| (*id, part.clone())),
    );
    clip.runs.extend(
        sheet
            .runs
            .iter()
            .filter(|(_, run)| among(run, parts))
            .map(|(id, run)| (*id, run.clone())),
    );
    Clip { sheet: clip }
}

/// What was pasted.
#[derive(Clone, Debug, PartialEq)]
pub struct Pasted {
    /// The edit that does it.
    pub edit: Edit,
    /// The new parts.
    pub parts: OrderedSet<PartId>,
    /// The new runs.
    pub runs: OrderedSet<RunId>,
}

/// Puts what a clip carries on a sheet, moved by so many board units, under ids of their own and tags that are free
/// there.
///
/// # Errors
/// When the sheet would hold more than it may.
pub fn paste(job: &Job, on: SheetKind, clip: &Clip, dx: i32, dy: i32) -> Result<Pasted, EditError> {
    let empty = Sheet::default();
    let sheet = job.sheet(on).unwrap_or(&empty);
    if sheet.parts.len() + clip.sheet.parts.len() > crate::limits::MOST_PARTS
        || sheet.runs.len() + clip.sheet.runs.len() > crate::limits::MOST_RUNS
    {
        return Err(EditError(say!("error-too-much")));
    }
    let mut tags = Tags::of(sheet);
    let mut changes = Vec::new();
    let mut became = OrderedMap::new();
    for ((old, part), id) in clip.sheet.parts.iter().zip(job.free_part_ids()) {
        let mut part = part.clone();
        part.tag = tags.like(&part.tag);
        part.at = part.at.map(|at| shifted(at, dx, dy));
        became.insert(*old, id);
        changes.push(put_part(on, id, part));
    }
    let mut runs = OrderedSet::new();
    for (run, id) in clip.sheet.runs.values().zip(job.free_run_ids()) {
        let mut run = run.clone();
        run.tag = tags.like(&run.tag);
        for bend in &mut run.bends {
            *bend = shifted(*bend, dx, dy);
        }
        let mut lost = false;
        for end in [&mut run.from, &mut run.to] {
            match end {
                crate::job::End::On(at) => match became.get(&at.part) {
                    Some(id) => at.part = *id,
                    None => lost = true,
                },
                crate::job::End::Loose(point) => *point = shifted(*point, dx, dy),
            }
        }
        if !lost {
            runs.insert(id);
            changes.push(put_run(on, id, run));
        }
    }
    let count = became.len();
    let name = say!("edit-paste", what = say!("things-parts", count = count));
    Ok(Pasted {
        edit: Edit::new(name, changes),
        parts: became.into_values().collect(),
        runs,
    })
}

/// Copies parts, and the runs among them, to a place beside them.
///
/// # Errors
/// When the sheet would hold more than it may.
pub fn duplicate(
    job: &Job,
    on: SheetKind,
    parts: &OrderedSet<PartId>,
    dx: i32,
    dy: i32,
) -> Result<Pasted, EditError> {
    let clip = job.sheet(on).map(|sheet| copy(sheet, parts)).unwrap_or_default();
    let mut pasted = paste(job, on, &clip, dx, dy)?;
    let what = say!("things-parts", count = pasted.parts.len());
    pasted.edit = pasted.edit.rename(say!("edit-duplicate", what = what));
    Ok(pasted)
}
