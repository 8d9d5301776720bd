//! What is stored, as values of the database and as ours. Read with suspicion: a browser's storage can be edited by
//! hand, and a record may come from another version of the page.

use super::js;
use wasm_bindgen::{JsCast, JsValue};

/// Name of a stored job; says nothing to people.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(crate) struct JobKey(String);

impl JobKey {
    /// A key as it was stored or stands in an address; whether a job has it, loading tells.
    pub(crate) fn from_text(text: impl Into<String>) -> Self {
        Self(text.into())
    }

    /// A key that no job has: time and chance.
    pub(super) fn fresh() -> Self {
        let chance = js_sys::Math::random().to_bits();
        Self(format!("job-{:x}-{chance:x}", whole(js_sys::Date::now())))
    }

    /// The key as text.
    pub(crate) fn as_str(&self) -> &str {
        &self.0
    }
}

/// A line of the list of jobs.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct JobInfo {
    /// Which job.
    pub(crate) key: JobKey,
    /// Its title, perhaps empty.
    pub(crate) title: String,
    /// When it was changed last, in milliseconds since 1970 as the browser's clock has it.
    pub(crate) changed_at: f64,
    /// Counts everything that was ever written of this job.
    pub(crate) revision: u64,
}

impl JobInfo {
    pub(super) fn to_js(&self) -> JsValue {
        js::object(&[
            ("key", &self.key.as_str().into()),
            ("title", &self.title.as_str().into()),
            ("changedAt", &self.changed_at.into()),
            ("revision", &number(self.revision)),
        ])
    }

    /// `None` when it does not even say which job it is about.
    pub(super) fn from_js(value: &JsValue) -> Option<Self> {
        Some(Self {
            key: JobKey(js::get(value, "key").as_string()?),
            title: js::get(value, "title").as_string().unwrap_or_default(),
            changed_at: js::get(value, "changedAt")
                .as_f64()
                .filter(|at| at.is_finite())
                .unwrap_or(0.0),
            revision: revision(value),
        })
    }
}

/// A full text, and which edits it holds.
pub(super) struct Snapshot {
    pub(super) text: String,
    /// It holds all edits up to this revision.
    pub(super) revision: u64,
}

impl Snapshot {
    pub(super) fn to_js(&self) -> JsValue {
        js::object(&[
            ("text", &self.text.as_str().into()),
            ("revision", &number(self.revision)),
        ])
    }

    pub(super) fn from_js(value: &JsValue) -> Option<Self> {
        Some(Self {
            text: js::get(value, "text").as_string()?,
            revision: revision(value),
        })
    }
}

/// One line of the journal.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Line {
    pub(super) revision: u64,
    /// The entry as JSON; empty where a snapshot has taken its place.
    pub(super) entry: String,
}

impl Line {
    /// A line whose place is taken, and whose entry a text holds.
    pub(super) fn mark(revision: u64) -> Self {
        Self {
            revision,
            entry: String::new(),
        }
    }

    pub(super) fn to_js(&self) -> JsValue {
        js::object(&[
            ("revision", &number(self.revision)),
            ("entry", &self.entry.as_str().into()),
        ])
    }

    pub(super) fn from_js(value: &JsValue) -> Self {
        Self {
            revision: revision(value),
            entry: js::get(value, "entry").as_string().unwrap_or_default(),
        }
    }
}

/// A damaged state as it was found.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Original {
    /// The text as it was stored.
    pub(crate) text: String,
    /// Entries of the journal that could not be played back, as they were stored.
    pub(crate) journal: Vec<String>,
    /// When it was found, in milliseconds since 1970.
    pub(crate) found_at: f64,
}

impl Original {
    /// All of it as one text: what was stored, then a line for each step that could not be done again.
    pub(crate) fn whole(&self) -> String {
        let mut whole = self.text.clone();
        if !self.journal.is_empty() {
            whole.push_str("\n\n--- steps after it, as they were stored ---\n");
            whole.push_str(&self.journal.join("\n"));
            whole.push('\n');
        }
        whole
    }

    pub(super) fn to_js(&self) -> JsValue {
        let journal: js_sys::Array = self.journal.iter().map(JsValue::from).collect();
        js::object(&[
            ("text", &self.text.as_str().into()),
            ("journal", &journal),
            ("foundAt", &self.found_at.into()),
        ])
    }

    pub(super) fn from_js(value: &JsValue) -> Self {
        let journal = js::get(value, "journal")
            .dyn_into::<js_sys::Array>()
            .unwrap_or_default();
        Self {
            text: js::get(value, "text").as_string().unwrap_or_default(),
            journal: journal.iter().filter_map(|line| line.as_string()).collect(),
            found_at: js::get(value, "foundAt").as_f64().unwrap_or(0.0),
        }
    }
}

fn revision(value: &JsValue) -> u64 {
    js::get(value, "revision").as_f64().map_or(0, whole)
}

fn number(revision: u64) -> JsValue {
    (revision as f64).into()
}

/// The whole part; 0 for what is negative or no number, as `as` rounds.
fn whole(value: f64) -> u64 {
    value.clamp(0.0, 9.0e15) as u64
}
