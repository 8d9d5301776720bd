//! What is picked, and what the keyboard stands on. Neither is part of the history; after an undo, what the step
//! touched is picked, so that one sees what came back.

use drawing::Owner;
use model::{PartId, RunId, Sheet, TerminalRef};
use ordered::OrderedSet;

/// What is picked.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Selection {
    /// Parts.
    pub parts: OrderedSet<PartId>,
    /// Runs.
    pub runs: OrderedSet<RunId>,
}

/// One thing of a sheet.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Thing {
    /// A part.
    Part(PartId),
    /// A terminal of a part.
    Terminal(TerminalRef),
    /// A run.
    Run(RunId),
}

impl Thing {
    /// Whether the sheet still has it.
    #[must_use]
    pub fn is_on(&self, sheet: &Sheet) -> bool {
        match self {
            Self::Part(id) => sheet.parts.contains_key(id),
            Self::Terminal(at) => sheet.role(at).is_some(),
            Self::Run(id) => sheet.runs.contains_key(id),
        }
    }
    /// How people write it: `F1`, `F1.in`, `W3`.
    #[must_use]
    pub fn written(&self, sheet: &Sheet) -> String {
        match self {
            Self::Part(id) => sheet
                .parts
                .get(id)
                .map_or_else(|| id.to_string(), |part| part.tag.clone()),
            Self::Terminal(at) => sheet.written(at),
            Self::Run(id) => sheet
                .runs
                .get(id)
                .map_or_else(|| id.to_string(), |run| run.tag.clone()),
        }
    }
    /// The owner under which the drawing knows it.
    #[must_use]
    pub fn owner(&self) -> Owner {
        match self {
            Self::Part(id) => Owner::Part(*id),
            Self::Terminal(at) => Owner::Part(at.part),
            Self::Run(id) => Owner::Run(*id),
        }
    }
}

impl Selection {
    /// Nothing.
    #[must_use]
    pub fn none() -> Self {
        Self::default()
    }
    /// One thing alone; for a terminal, its part.
    #[must_use]
    pub fn of(thing: &Thing) -> Self {
        let mut one = Self::default();
        one.add(thing);
        one
    }
    /// Adds a thing.
    pub fn add(&mut self, thing: &Thing) {
        match thing {
            Thing::Part(id) => {
                self.parts.insert(*id);
            }
            Thing::Terminal(at) => {
                self.parts.insert(at.part);
            }
            Thing::Run(id) => {
                self.runs.insert(*id);
            }
        }
    }
    /// Adds a thing, or takes it out when it is in.
    pub fn toggle(&mut self, thing: &Thing) {
        let was_in = match thing {
            Thing::Part(id) => self.parts.remove(id),
            Thing::Terminal(at) => self.parts.remove(&at.part),
            Thing::Run(id) => self.runs.remove(id),
        };
        if !was_in {
            self.add(thing);
        }
    }
    /// Whether it is in.
    #[must_use]
    pub fn has(&self, thing: &Thing) -> bool {
        match thing {
            Thing::Part(id) => self.parts.contains(id),
            Thing::Terminal(at) => self.parts.contains(&at.part),
            Thing::Run(id) => self.runs.contains(id),
        }
    }
    /// Whether nothing is picked.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.parts.is_empty() && self.runs.is_empty()
    }
    /// How many things are picked.
    #[must_use]
    pub fn len(&self) -> usize {
        self.parts.len() + self.runs.len()
    }
    /// The only thing picked; `None` for none or several.
    #[must_use]
    pub fn single(&self) -> Option<Thing> {
        match (self.parts.first(), self.runs.first(), self.len()) {
            (Some(part), None, 1) => Some(Thing::Part(*part)),
            (None, Some(run), 1) => Some(Thing::Run(*run)),
            _ => None,
        }
    }
    /// Drops what the sheet no longer has.
    pub fn keep_on(&mut self, sheet: &Sheet) {
        self.parts.retain(|id| sheet.parts.contains_key(id));
        self.runs.retain(|id| sheet.runs.contains_key(id));
    }
    /// As the drawing names them.
    #[must_use]
    pub fn owners(&self) -> OrderedSet<Owner> {
        let parts = self.parts.iter().map(|id| Owner::Part(*id));
        parts.chain(self.runs.iter().map(|id| Owner::Run(*id))).collect()
    }
}
