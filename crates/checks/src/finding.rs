//! What a check reports.

use model::{Edit, PartId, RunId};
use ordered::OrderedSet;
use serde::Serialize;
use words::{Saying, say};

/// How grave a finding is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Grade {
    /// Can burn, injure or strand.
    Stop,
    /// Will not work as meant, or harms equipment.
    Fix,
    /// Good practice.
    Tidy,
}

impl Grade {
    /// The word on screen, in the reader's language.
    #[must_use]
    pub fn said(self) -> Saying {
        match self {
            Self::Stop => say!("grade-stop"),
            Self::Fix => say!("grade-fix"),
            Self::Tidy => say!("grade-tidy"),
        }
    }
    /// The same in English, for programs and developers.
    #[must_use]
    pub fn title(self) -> &'static str {
        match self {
            Self::Stop => "Stop",
            Self::Fix => "Fix",
            Self::Tidy => "Tidy",
        }
    }
}

/// A number held against a limit.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Measure {
    /// What was found.
    pub value: f64,
    /// The limit it was held against.
    pub limit: f64,
    /// Unit of both, as shown.
    pub unit: &'static str,
    /// The limit's key in the profile, where it has one.
    pub limit_key: Option<&'static str>,
}

/// What a check reports: data, in no language; [`words::Words`] makes sentences of it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Finding {
    /// Name of the check.
    pub check: &'static str,
    /// How grave.
    pub grade: Grade,
    /// True when a fact is missing: then `what` says what to find out.
    pub undecided: bool,
    /// What is wrong, one sentence with tags and numbers.
    pub what: Saying,
    /// What to do about it, one sentence.
    pub remedy: Saying,
    /// Parts to mark, the foremost first.
    pub parts: Vec<PartId>,
    /// Runs to mark, the foremost first.
    pub runs: Vec<RunId>,
    /// Places and passages of the body to mark, by their written names, where it is about how a run lies there.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub spots: Vec<String>,
    /// The number against its limit.
    pub measure: Option<Measure>,
    /// Properties it rests on that are assumed, each as `F1 rating`.
    pub assumed: OrderedSet<Saying>,
    /// What would clear it, the best first.
    #[serde(skip)]
    pub mends: Vec<Mend>,
}

/// An edit that clears a finding.
#[derive(Clone, Debug, PartialEq)]
pub struct Mend {
    /// The edit, as [`crate::mend_for`] makes it in a job.
    pub edit: Edit,
    /// What somebody has to decide before it is made, where the tool cannot: the rest of a sentence. What has none may be
    /// made by program.
    pub choice: Option<Saying>,
}
