//! Edits: everything that changes a job, as data. Each edit replaces whole items, so its inverse is the same edit
//! with what stood there before.

use crate::id::{PartId, RunId};
use crate::job::{Job, Part, Run, Settings, SheetKind, VehicleInfo};
use crate::picture::Picture;
use crate::readings::Reading;
use crate::thread::Thread;
use crate::tuning::Tuning;
use std::fmt;
use std::sync::OnceLock;
use words::Saying;

/// One change to a job. Applying it gives its inverse.
#[derive(Clone, Debug, PartialEq)]
pub enum Change {
    /// Puts a part in its place, or takes it away.
    Part {
        /// On this sheet, which is made when it is not there.
        sheet: SheetKind,
        /// The part.
        id: PartId,
        /// What it becomes; `None` removes it.
        to: Option<Box<Part>>,
    },
    /// Puts a run in its place, or takes it away.
    Run {
        /// On this sheet, which is made when it is not there.
        sheet: SheetKind,
        /// The run.
        id: RunId,
        /// What it becomes; `None` removes it.
        to: Option<Box<Run>>,
    },
    /// Sets the kept readings of the meter.
    Readings {
        /// Of this sheet, which is made when it is not there.
        sheet: SheetKind,
        /// What they become.
        to: Vec<Reading>,
    },
    /// Sets how the equipment is set.
    Tunings {
        /// On this sheet, which is made when it is not there.
        sheet: SheetKind,
        /// What the lines become.
        to: Vec<Tuning>,
    },
    /// Adds an empty sheet, or takes a sheet away that is empty.
    Sheet {
        /// Which one.
        sheet: SheetKind,
        /// Whether it is to be there.
        there: bool,
    },
    /// Sets the title of the job.
    Title(String),
    /// Sets what the title block says.
    Vehicle(Box<VehicleInfo>),
    /// Sets the settings.
    Settings(Box<Settings>),
    /// Sets complaints, condition record, quote, and what is done.
    Thread(Box<Thread>),
    /// Puts a picture in its place, or takes it away.
    Picture {
        /// Its name in the job.
        key: String,
        /// What it becomes; `None` removes it.
        to: Option<Picture>,
    },
}

/// A named group of changes: one gesture, one undo step.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Edit {
    /// What the undo list calls it: `Move amplifier`.
    pub name: Name,
    /// The changes, in order.
    pub changes: Vec<Change>,
}

/// What an edit is called. Two names are the same when they are so in English; only that is written down.
#[derive(Clone, Debug)]
pub struct Name {
    said: Saying,
    /// Written when it is first asked for: of the many mends that are offered, few names are read.
    english: OnceLock<String>,
}

impl Name {
    /// In English.
    #[must_use]
    pub fn as_str(&self) -> &str {
        self.english.get_or_init(|| self.said.to_string())
    }
    /// In the reader's language.
    #[must_use]
    pub fn said(&self) -> Saying {
        self.said.clone()
    }
}

impl Default for Name {
    fn default() -> Self {
        "".into()
    }
}
impl PartialEq for Name {
    fn eq(&self, other: &Self) -> bool {
        self.said == other.said || self.as_str() == other.as_str()
    }
}
impl PartialEq<&str> for Name {
    fn eq(&self, other: &&str) -> bool {
        self.as_str() == *other
    }
}
impl fmt::Display for Name {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(self.as_str())
    }
}

impl From<&str> for Name {
    fn from(english: &str) -> Self {
        Saying::from(english).into()
    }
}
impl From<String> for Name {
    fn from(english: String) -> Self {
        Saying::from(english).into()
    }
}
impl From<Saying> for Name {
    fn from(said: Saying) -> Self {
        Self {
            said,
            english: OnceLock::new(),
        }
    }
}

impl Edit {
    /// An edit with this name and these changes.
    pub fn new(name: impl Into<Name>, changes: Vec<Change>) -> Self {
        Self {
            name: name.into(),
            changes,
        }
    }
    /// The same changes under another name.
    #[must_use]
    pub fn rename(self, name: impl Into<Name>) -> Self {
        Self::new(name, self.changes)
    }
}

impl Job {
    /// Makes one change and returns the change that takes it back. Removing what is not there changes nothing. A
    /// sheet that is not empty is not taken away: the change is then without effect, and so is its inverse.
    pub fn change(&mut self, change: Change) -> Vec<Change> {
        let mut inverse = Vec::new();
        match change {
            Change::Part { sheet, id, to } => {
                if to.is_none() && !self.sheets.contains_key(&sheet) {
                    return inverse;
                }
                if !self.sheets.contains_key(&sheet) {
                    inverse.push(Change::Sheet { sheet, there: false });
                }
                let parts = &mut self.sheets.entry(sheet).or_default().parts;
                let before = match to {
                    Some(part) => parts.insert(id, *part),
                    None => parts.remove(&id),
                };
                inverse.push(Change::Part {
                    sheet,
                    id,
                    to: before.map(Box::new),
                });
            }
            Change::Run { sheet, id, to } => {
                if to.is_none() && !self.sheets.contains_key(&sheet) {
                    return inverse;
                }
                if !self.sheets.contains_key(&sheet) {
                    inverse.push(Change::Sheet { sheet, there: false });
                }
                let runs = &mut self.sheets.entry(sheet).or_default().runs;
                let before = match to {
                    Some(run) => runs.insert(id, *run),
                    None => runs.remove(&id),
                };
                inverse.push(Change::Run {
                    sheet,
                    id,
                    to: before.map(Box::new),
                });
            }
            Change::Readings { sheet, to } => {
                if to.is_empty() && !self.sheets.contains_key(&sheet) {
                    return inverse;
                }
                if !self.sheets.contains_key(&sheet) {
                    inverse.push(Change::Sheet { sheet, there: false });
                }
                let readings = &mut self.sheets.entry(sheet).or_default().readings;
                let to = std::mem::replace(readings, to);
                inverse.push(Change::Readings { sheet, to });
            }
            Change::Tunings { sheet, to } => {
                if to.is_empty() && !self.sheets.contains_key(&sheet) {
                    return inverse;
                }
                if !self.sheets.contains_key(&sheet) {
                    inverse.push(Change::Sheet { sheet, there: false });
                }
                let tunings = &mut self.sheets.entry(sheet).or_default().tunings;
                let to = std::mem::replace(tunings, to);
                inverse.push(Change::Tunings { sheet, to });
            }
            Change::Sheet { sheet, there: true } => {
                if let ordered::Entry::Vacant(place) = self.sheets.entry(sheet) {
                    place.insert(crate::job::Sheet::default());
                    inverse.push(Change::Sheet { sheet, there: false });
                }
            }
            Change::Sheet { sheet, there: false } => {
                if self.sheets.get(&sheet).is_some_and(crate::job::Sheet::is_empty) {
                    self.sheets.remove(&sheet);
                    inverse.push(Change::Sheet { sheet, there: true });
                }
            }
            Change::Title(title) => inverse.push(Change::Title(std::mem::replace(&mut self.title, title))),
            Change::Vehicle(vehicle) => {
                inverse.push(Change::Vehicle(Box::new(std::mem::replace(
                    &mut self.vehicle,
                    *vehicle,
                ))));
            }
            Change::Settings(settings) => {
                inverse.push(Change::Settings(Box::new(std::mem::replace(
                    &mut self.settings,
                    *settings,
                ))));
            }
            Change::Thread(thread) => {
                inverse.push(Change::Thread(Box::new(std::mem::replace(
                    &mut self.thread,
                    *thread,
                ))));
            }
            Change::Picture { key, to } => {
                let before = match to {
                    Some(picture) => self.pictures.insert(key.clone(), picture),
                    None => self.pictures.remove(&key),
                };
                inverse.push(Change::Picture { key, to: before });
            }
        }
        // Undone last first: a sheet made for a part goes after the part has gone.
        inverse.reverse();
        inverse
    }

    /// Makes an edit and returns the one that takes it back, under the same name.
    pub fn apply(&mut self, edit: Edit) -> Edit {
        let mut inverses: Vec<Vec<Change>> = edit
            .changes
            .into_iter()
            .map(|change| self.change(change))
            .collect();
        inverses.reverse();
        Edit {
            name: edit.name,
            changes: inverses.into_iter().flatten().collect(),
        }
    }
}
