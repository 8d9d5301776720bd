//! What stands on a sheet: parts put there, moved and taken away, and a sheet filled with what another shows.

use super::{put_part, put_run, things};
use crate::edit::{Change, Edit};
use crate::id::{PartId, RunId};
use crate::job::{BoardPoint, Job, Part, Run, Sheet, SheetKind};
use crate::kinds::PartKind;
use crate::limits::FURTHEST;
use ordered::OrderedSet;
use words::say;

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
pub(super) fn among(run: &Run, parts: &OrderedSet<PartId>) -> bool {
    run.ends()
        .iter()
        .all(|end| end.terminal().is_some_and(|t| parts.contains(&t.part)))
}

pub(super) fn shifted(at: BoardPoint, dx: i32, dy: i32) -> BoardPoint {
    let move_by = |from: i32, by: i32| from.saturating_add(by).clamp(-FURTHEST, FURTHEST);
    BoardPoint {
        x: move_by(at.x, dx),
        y: move_by(at.y, dy),
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
