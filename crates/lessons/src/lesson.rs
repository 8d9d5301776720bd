//! A lesson as data: a small system in a bad and a good version, and what a teacher says of it.

use crate::breaks::Break;
use checks::Analysis;
use model::{Job, Sheet, SheetKind};
use sharing::Showing;
use words::{Saying, Words, say};

/// One of the two versions of a lesson's system.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Version {
    /// With the fault. It stands on the sheet Found.
    #[default]
    Bad,
    /// Put right. It stands on the sheet Plan.
    Good,
}

impl Version {
    /// Both, the bad one first.
    pub const BOTH: [Self; 2] = [Self::Bad, Self::Good];
    /// The word in a lesson's text and behind `@KEY/`.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Bad => "bad",
            Self::Good => "good",
        }
    }
    /// What the reader calls it.
    #[must_use]
    pub fn said(self) -> Saying {
        match self {
            Self::Bad => say!("lesson-bad"),
            Self::Good => say!("lesson-good"),
        }
    }
    /// The version of a word.
    #[must_use]
    pub fn from_word(word: &str) -> Option<Self> {
        Self::BOTH.into_iter().find(|version| version.word() == word)
    }
    /// The sheet of the lesson's job that it stands on.
    #[must_use]
    pub fn sheet(self) -> SheetKind {
        match self {
            Self::Bad => SheetKind::Found,
            Self::Good => SheetKind::Plan,
        }
    }
}

/// A lesson. Texts may hold places for numbers, as `{current W3}`, which [`crate::Told`] fills in from the analysis.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Lesson {
    /// Short name: letters a to z, digits and dashes.
    pub key: String,
    /// Title.
    pub title: String,
    /// Names of the checks whose findings the bad version is about; none where no check speaks of it.
    pub about: Vec<String>,
    /// The story, paragraph by paragraph.
    pub story: Vec<String>,
    /// What to look at, in order.
    pub looks: Vec<Look>,
    /// Breaks to try.
    pub breaks: Vec<Break>,
    /// Questions.
    pub questions: Vec<Question>,
    /// The explanation in the lesson's own words; that of the checks it is about comes on top, see [`Lesson::why`].
    pub explanation: Vec<String>,
    /// Where it comes from: a published rule with its number, `common practice`, or `from memory`.
    pub sources: Vec<String>,
    /// Faults of the bad version that no check finds, and words of the lesson's own on those that one does.
    pub faults: Vec<ByHand>,
    /// Findings of the bad version that the exercise does not ask for.
    pub unasked: Vec<Unasked>,
    /// Both versions, on the sheets [`Version::sheet`]; a thing has the same id on both.
    pub job: Job,
}

/// Something to look at.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Look {
    /// The overlay to lay on.
    pub overlay: drawing::Overlay,
    /// Tags of parts and runs, the foremost first.
    pub things: Vec<String>,
    /// What to see there.
    pub says: String,
}

/// A question with answers to choose from.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Question {
    /// The question.
    pub asks: String,
    /// The answers, in the order in which they are shown.
    pub answers: Vec<Answer>,
    /// Why the right ones are right.
    pub why: String,
}

/// An answer to choose.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Answer {
    /// Whether it is right.
    pub right: bool,
    /// The answer.
    pub says: String,
}

/// A fault told by the one who made the lesson: one that no check finds; or, under the name of a check and with one of the
/// things of its finding, words of the lesson's own on that finding, and more things that may be marked for it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ByHand {
    /// Its name, in the manner of the checks': `signal-beside-feed`.
    pub name: String,
    /// Tags of the things that are wrong, the foremost first.
    pub things: Vec<String>,
    /// What is wrong. May be empty where a check finds it.
    pub says: String,
}

/// A finding of the bad version that the exercise does not ask for: marking it counts neither for nor against.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Unasked {
    /// Name of the check.
    pub check: String,
    /// Tags of things: only its findings on one of them. None: all of its findings.
    pub things: Vec<String>,
}

impl Lesson {
    /// The beginning of a lesson from any job, with the versions of [`Lesson::sheets_of`]; a job with a XX
    #[must_use]
    pub fn of_job(job: &Job) -> Self {
        let mut lesson = Self {
            title: job.title.clone(),
            ..Self::default()
        };
        let mut key = String::new();
        for c in job.title.chars().map(|c| c.to_ascii_lowercase()) {
            let dash = !c.is_ascii_alphanumeric();
            if !dash {
                key.push(c);
            } else if !key.is_empty() && !key.ends_with('-') && key.len() < 60 {
                key.push('-');
            }
        }
        key.truncate(60);
        lesson.key = match key.trim_end_matches('-') {
            "" => "lesson".to_owned(),
            key => key.to_owned(),
        };
        let (bad, good) = Self::sheets_of(job);
        lesson.take_sheets(job, bad, good);
        lesson
    }
    /// The sheets of a job that a lesson takes unless told otherwise, in the order in which a job goes: the first is the bad
    /// version, the second, if there is one, the good one.
    #[must_use]
    pub fn sheets_of(job: &Job) -> (SheetKind, Option<SheetKind>) {
        let mut kinds = job.sheets.keys().copied();
        (kinds.next().unwrap_or_else(|| Version::Bad.sheet()), kinds.next())
    }
    /// Takes both versions from sheets of a job, without what is private ([`sharing::Showing`]), in place of those that the
    /// lesson has.
    pub fn take_sheets(&mut self, job: &Job, bad: SheetKind, good: Option<SheetKind>) {
        let (mut taken, _) = sharing::shown(job, Showing::default());
        taken.title.clear();
        let mut sheet = |kind: SheetKind| taken.sheets.get(&kind).cloned().unwrap_or_default();
        let versions = [Some(bad), good].map(|kind| kind.map(&mut sheet).unwrap_or_default());
        taken.sheets = Version::BOTH
            .map(Version::sheet)
            .into_iter()
            .zip(versions)
            .collect();
        self.job = taken;
    }
    /// Whether there is a good version to show beside the bad one.
    #[must_use]
    pub fn has_good(&self) -> bool {
        self.job
            .sheet(Version::Good.sheet())
            .is_some_and(|sheet| !sheet.parts.is_empty())
    }
    /// One version as a job with a single sheet; its ids are those of the lesson's job.
    #[must_use]
    pub fn version(&self, version: Version) -> Job {
        let mut job = self.job.clone();
        job.sheets.retain(|kind, _| *kind == version.sheet());
        job.sheets.entry(version.sheet()).or_default();
        job.title.clone_from(&self.title);
        job
    }
    /// One version as a job that somebody takes for his own; its title says which version it is.
    #[must_use]
    pub fn taken(&self, version: Version, words: &Words) -> Job {
        let mut job = self.version(version);
        job.title = words.say(&say!(
            "lesson-version-title",
            title = self.title.as_str(),
            version = version.word()
        ));
        job
    }
    /// The sheet of a version; empty where the lesson has none.
    #[must_use]
    pub fn sheet(&self, version: Version) -> Sheet {
        self.job.sheet(version.sheet()).cloned().unwrap_or_default()
    }
    /// The analysis of a version as it stands, nothing broken.
    #[must_use]
    pub fn analyse(&self, version: Version) -> Analysis {
        checks::analyse(&self.sheet(version), &self.job.settings)
    }
    /// The whole explanation: the lesson's own words, then what the checks it is about say of why it matters.
    #[must_use]
    pub fn why(&self, words: &Words) -> Vec<String> {
        let mut all = self.explanation.clone();
        all.extend(self.checks().map(|check| words.say(&check.why())));
        all
    }
    /// All sources: the lesson's own, then those of the checks it is about. Each once.
    #[must_use]
    pub fn all_sources(&self, words: &Words) -> Vec<String> {
        let mut all = self.sources.clone();
        for check in self.checks() {
            let source = words.say(&check.source());
            let source = source.trim_end_matches('.');
            if !all.iter().any(|known| known == source) {
                all.push(source.to_owned());
            }
        }
        all
    }
    pub(crate) fn checks(&self) -> impl Iterator<Item = &'static checks::Check> {
        self.about.iter().filter_map(|name| checks::check_named(name))
    }
}
