//! Tags: giving a part or run another one, so that what names it follows, and finding free ones.

use super::{EditError, part_of, put_part, put_run, readings, run_of, sheet_of, thread};
use crate::edit::Edit;
use crate::id::{PartId, RunId};
use crate::job::{Job, Part, Run, Sheet, SheetKind};
use crate::limits::check_tag;
use ordered::{OrderedMap, OrderedSet};
use words::say;

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

/// Free tags of a sheet, handed out one after the other.
pub(super) struct Tags {
    taken: OrderedSet<String>,
    next: OrderedMap<String, u32>,
}

impl Tags {
    pub(super) fn of(sheet: &Sheet) -> Self {
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
    pub(super) fn like(&mut self, tag: &str) -> String {
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
