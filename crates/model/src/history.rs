//! Undo and redo. A gesture folds all its edits into one step; cancelling it leaves no trace.
//!
//! What is in the history: every edit of the job. What is not: camera, panels, the tool at hand, and the selection,
//! which after an undo is what the step touched, as the editor reads from [`Touched`].

use crate::edit::{Change, Edit, Name};
use crate::id::{PartId, RunId};
use crate::job::{Job, SheetKind};
use ordered::OrderedSet;
use std::collections::VecDeque;
use words::Saying;

/// Most steps that can be undone; beyond it the oldest are forgotten.
pub const MOST_STEPS: usize = 500;

/// What happened, in a form that can be written down at once and played back after a crash. Playing all entries from
/// the job as it was opened gives the job as it stood: see [`replay`].
#[derive(Clone, Debug, PartialEq)]
pub enum Entry {
    /// An edit was made, or a gesture ended that did all this.
    Did(Edit),
    /// A step was undone; this is the edit that did so.
    Undid(Edit),
    /// A step was done again; this is the edit that did so.
    Redid(Edit),
}

/// What a step touched.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Touched {
    /// Parts that it put, changed or took away.
    pub parts: OrderedSet<(SheetKind, PartId)>,
    /// Runs that it put, changed or took away.
    pub runs: OrderedSet<(SheetKind, RunId)>,
}

impl Touched {
    /// What an edit touches.
    #[must_use]
    pub fn by(edit: &Edit) -> Self {
        let mut touched = Self::default();
        for change in &edit.changes {
            match change {
                Change::Part { sheet, id, .. } => {
                    touched.parts.insert((*sheet, *id));
                }
                Change::Run { sheet, id, .. } => {
                    touched.runs.insert((*sheet, *id));
                }
                Change::Readings { .. }
                | Change::Tunings { .. }
                | Change::Thread(_)
                | Change::Picture { .. }
                | Change::Sheet { .. }
                | Change::Title(_)
                | Change::Vehicle(_)
                | Change::Settings(_) => {}
            }
        }
        touched
    }
}

/// An edit, and the one that takes it back.
#[derive(Clone, Debug, PartialEq)]
struct Step {
    forth: Edit,
    back: Edit,
    /// Number of this step among all that were ever made, from 1: tells one state of the job from another.
    number: u64,
}

/// A gesture in hand: what it did so far.
#[derive(Clone, Debug, PartialEq)]
struct Gesture {
    name: Name,
    forth: Vec<Change>,
    /// Inverses, edit by edit, in the order in which the edits were made.
    back: Vec<Vec<Change>>,
}

/// Where a history stands; equal marks mean equal jobs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Mark(u64);

/// The steps that can be undone and done again.
#[derive(Clone, Debug, PartialEq)]
pub struct History {
    done: VecDeque<Step>,
    undone: Vec<Step>,
    gesture: Option<Gesture>,
    /// Number of the last step that was forgotten, 0 for none.
    forgotten: u64,
    /// Number that the next step gets.
    next: u64,
    saved: Option<Mark>,
}

impl Default for History {
    fn default() -> Self {
        Self {
            done: VecDeque::new(),
            undone: Vec::new(),
            gesture: None,
            forgotten: 0,
            next: 1,
            saved: Some(Mark(0)),
        }
    }
}

impl History {
    /// A history of a job as it was opened, which counts as saved.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Makes an edit. Outside a gesture it is a step of its own, clears what was undone, and gives the entry for the
    /// journal; an edit that changes nothing is no step. Inside a gesture it is the same as [`History::extend`].
    pub fn apply(&mut self, job: &mut Job, edit: Edit) -> Option<Entry> {
        if self.gesture.is_some() {
            self.extend(job, edit);
            return None;
        }
        let back = job.apply(edit.clone());
        self.step(edit, back)
    }

    /// Begins a gesture, under the name that its step will have. One that is in hand is committed first, and its
    /// entry returned.
    pub fn begin(&mut self, name: impl Into<Name>) -> Option<Entry> {
        let before = self.commit();
        self.gesture = Some(Gesture {
            name: name.into(),
            forth: Vec::new(),
            back: Vec::new(),
        });
        before
    }

    /// Makes an edit as a part of the gesture in hand. Without one it begins one under the edit's own name.
    pub fn extend(&mut self, job: &mut Job, edit: Edit) {
        let gesture = self.gesture.get_or_insert_with(|| Gesture {
            name: edit.name.clone(),
            forth: Vec::new(),
            back: Vec::new(),
        });
        gesture.forth.extend(edit.changes.iter().cloned());
        gesture.back.push(job.apply(edit).changes);
    }

    /// Takes back what the gesture in hand did so far and makes this edit instead, still within the gesture: for a
    /// drag, where each move starts again from where the pointer went down.
    pub fn replace(&mut self, job: &mut Job, edit: Edit) {
        if let Some(gesture) = &mut self.gesture {
            roll_back(job, std::mem::take(&mut gesture.back));
            gesture.forth.clear();
        }
        self.extend(job, edit);
    }

    /// Ends the gesture in hand: all that it did becomes one step.
    pub fn commit(&mut self) -> Option<Entry> {
        let gesture = self.gesture.take()?;
        let back = gesture.back.into_iter().rev().flatten().collect();
        let (forth, back) = squeeze(gesture.forth, back);
        self.step(
            Edit::new(gesture.name.clone(), forth),
            Edit::new(gesture.name, back),
        )
    }

    /// Drops the gesture in hand: the job is exactly as it was when it began, and what can be done again still can.
    pub fn cancel(&mut self, job: &mut Job) {
        if let Some(gesture) = self.gesture.take() {
            roll_back(job, gesture.back);
        }
    }

    /// Whether a gesture is in hand.
    #[must_use]
    pub fn in_gesture(&self) -> bool {
        self.gesture.is_some()
    }

    /// Takes back the last step. A gesture in hand is cancelled instead, which is what the user sees as the last thing
    /// done, and gives no entry.
    pub fn undo(&mut self, job: &mut Job) -> Option<Entry> {
        if self.in_gesture() {
            self.cancel(job);
            return None;
        }
        let step = self.done.pop_back()?;
        job.apply(step.back.clone());
        let entry = Entry::Undid(step.back.clone());
        self.undone.push(step);
        Some(entry)
    }

    /// Does again what was undone last. Nothing while a gesture is in hand.
    pub fn redo(&mut self, job: &mut Job) -> Option<Entry> {
        if self.in_gesture() {
            return None;
        }
        let step = self.undone.pop()?;
        job.apply(step.forth.clone());
        let entry = Entry::Redid(step.forth.clone());
        self.done.push_back(step);
        Some(entry)
    }

    /// Name of the step that undo takes back, for its menu line.
    #[must_use]
    pub fn undo_name(&self) -> Option<&str> {
        match &self.gesture {
            Some(gesture) => Some(gesture.name.as_str()),
            None => self.done.back().map(|step| step.forth.name.as_str()),
        }
    }

    /// Name of the step that redo does again.
    #[must_use]
    pub fn redo_name(&self) -> Option<&str> {
        self.undone
            .last()
            .filter(|_| !self.in_gesture())
            .map(|step| step.forth.name.as_str())
    }

    /// The step that undo takes back, in the reader's language.
    #[must_use]
    pub fn undo_said(&self) -> Option<Saying> {
        match &self.gesture {
            Some(gesture) => Some(gesture.name.said()),
            None => self.done.back().map(|step| step.forth.name.said()),
        }
    }

    /// The step that redo does again, in the reader's language.
    #[must_use]
    pub fn redo_said(&self) -> Option<Saying> {
        self.undone
            .last()
            .filter(|_| !self.in_gesture())
            .map(|step| step.forth.name.said())
    }

    /// Names of the steps that can be undone, the last one first.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.done.iter().rev().map(|step| step.forth.name.as_str())
    }

    /// Notes that the job as it stands is saved.
    pub fn mark_saved(&mut self) {
        self.saved = Some(self.mark());
    }

    /// Whether the job differs from what was saved last. A gesture that did something counts.
    #[must_use]
    pub fn is_changed(&self) -> bool {
        let at_work = self
            .gesture
            .as_ref()
            .is_some_and(|gesture| !gesture.forth.is_empty());
        at_work || self.saved != Some(self.mark())
    }

    fn mark(&self) -> Mark {
        Mark(self.done.back().map_or(self.forgotten, |step| step.number))
    }

    fn step(&mut self, forth: Edit, back: Edit) -> Option<Entry> {
        // Inverses stand in reverse: where each equals its change, every change put what was there already.
        if back.changes.iter().rev().eq(&forth.changes) || back.changes.is_empty() {
            return None;
        }
        self.undone.clear();
        let entry = Entry::Did(forth.clone());
        self.done.push_back(Step {
            forth,
            back,
            number: self.next,
        });
        self.next += 1;
        if self.done.len() > MOST_STEPS {
            self.forgotten = self.done.pop_front().map_or(self.forgotten, |step| step.number);
        }
        Some(entry)
    }
}

/// Plays a journal back on the job as it was opened.
pub fn replay(job: &mut Job, entries: impl IntoIterator<Item = Entry>) {
    for entry in entries {
        match entry {
            Entry::Did(edit) | Entry::Undid(edit) | Entry::Redid(edit) => {
                job.apply(edit);
            }
        }
    }
}

fn roll_back(job: &mut Job, back: Vec<Vec<Change>>) {
    for changes in back.into_iter().rev() {
        job.apply(Edit::new("", changes));
    }
}

/// What a change is about, where whatever it becomes last is all that counts.
#[derive(PartialEq, Eq, PartialOrd, Ord)]
enum About {
    Part(SheetKind, PartId),
    Run(SheetKind, RunId),
    Readings(SheetKind),
    Tunings(SheetKind),
    Thread,
    Picture(String),
    Title,
    Vehicle,
    Settings,
}

fn about(change: &Change) -> Option<About> {
    match change {
        Change::Part { sheet, id, .. } => Some(About::Part(*sheet, *id)),
        Change::Run { sheet, id, .. } => Some(About::Run(*sheet, *id)),
        Change::Readings { sheet, .. } => Some(About::Readings(*sheet)),
        Change::Tunings { sheet, .. } => Some(About::Tunings(*sheet)),
        Change::Thread(_) => Some(About::Thread),
        Change::Picture { key, .. } => Some(About::Picture(key.clone())),
        Change::Title(_) => Some(About::Title),
        Change::Vehicle(_) => Some(About::Vehicle),
        Change::Settings(_) => Some(About::Settings),
        Change::Sheet { .. } => None,
    }
}

/// Leaves of a gesture's changes only the last about each thing, and of their inverses likewise: a drag of a thousand
/// moves becomes one. Only where no sheet comes or goes, since there the order matters.
fn squeeze(forth: Vec<Change>, back: Vec<Change>) -> (Vec<Change>, Vec<Change>) {
    let by_sheet = |all: &[Change]| all.iter().any(|change| matches!(change, Change::Sheet { .. }));
    if by_sheet(&forth) || by_sheet(&back) {
        return (forth, back);
    }
    let last = |all: Vec<Change>| {
        let mut seen = OrderedSet::new();
        let mut kept: Vec<Change> = all
            .into_iter()
            .rev()
            .filter(|change| about(change).is_none_or(|what| seen.insert(what)))
            .collect();
        kept.reverse();
        kept
    };
    (last(forth), last(back))
}
