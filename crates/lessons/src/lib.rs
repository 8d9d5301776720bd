//! Built-in jobs and lessons: worked examples that open in the app and on the command line (`@estate`), and lessons,
//! each a small system in a bad and a good version (`@KEY/bad`, `@KEY/good`). All of them are invented.
//!
//! They are kept as text, one file each under `jobs/` and `lessons/`, so that a change to one reads as a change to a
//! drawing. A lesson is data: [`read`] and [`write()`] turn its text into a [`Lesson`] and back, [`Told`] fills in its
//! numbers from the analysis, [`apply`] throws its breaks, [`score`] judges the exercise, [`Sitting`] is one learner at it
//! and [`Record`] what is kept of that. An instructor's own lesson begins with [`Lesson::of_job`] and is read by the same
//! door. *Invariant:* no number is written into a lesson's words that the engine can tell.

mod aftermath;
mod blocks;
mod breaks;
mod effects;
mod exercise;
mod first;
mod lesson;
mod link;
pub mod measures;
mod own;
mod presenting;
mod problems;
mod read;
mod record;
mod sign;
mod sitting;
mod texts;
mod told;
mod translate;
mod worked;
mod write;

pub use aftermath::{Happening, Turn, aftermath};
pub use breaks::{Break, BreakKind, Follows, apply};
pub use effects::Effect;
pub use exercise::{
    Accused, Fault, Mark, Outcome, Reason, Thing, Verdict, faults, reasons, score, tag, thing, title,
    title_in,
};
pub use first::{first_job, first_job_called};
pub use lesson::{Answer, ByHand, Lesson, Look, Question, Unasked, Version};
pub use link::{lesson_fragment, open_lesson};
pub use own::{Lack, fault_name};
pub use presenting::{Presenting, Step, break_of, lit, parts_and_runs};
pub use read::{read, read_draft};
pub use record::{MarkRecord, Record, RecordError, Records};
pub use sign::{places, sign};
pub use sitting::{LONGEST_NOTE, MOST_MARKS, Marked, Refusal, Sitting};
pub use told::{Shown, Told};
pub use translate::translate;
pub use write::write;

use ::words::Language;
use model::Job;

/// A job that comes with the program. What it shows is told by the message `worked-KEY`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WorkedJob {
    /// Short name, as in `@estate`.
    pub key: &'static str,
    /// The job in the text form, in English: see [`WorkedJob::text`].
    text: &'static str,
    /// Its names in German, where they are part of this program.
    german: Option<&'static str>,
}

/// A lesson that comes with the program.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BuiltIn {
    /// Its key, as in `@fuse-too-far/bad`.
    pub key: &'static str,
    /// Its text, in English: see [`BuiltIn::text`].
    text: &'static str,
    /// Its words in German, where they are part of this program.
    german: Option<&'static str>,
}

#[cfg(feature = "german")]
macro_rules! german {
    ($folder:literal, $key:literal) => {
        Some(include_str!(concat!("../", $folder, "/de/", $key, ".words")))
    };
}
#[cfg(not(feature = "german"))]
macro_rules! german {
    ($folder:literal, $key:literal) => {
        None
    };
}

macro_rules! worked {
    (first: $first:literal; later: $($later:literal)+) => {
        /// The worked jobs, the one that a newcomer sees first at the front.
        pub const WORKED_JOBS: &[WorkedJob] = &[
            WorkedJob {
                key: $first,
                text: include_str!(concat!("../jobs/", $first, ".job")),
                german: german!("jobs", $first),
            },
            $(WorkedJob {
                key: $later,
                text: ::words::later!(concat!("../jobs/", $later, ".job")),
                german: german!("jobs", $later),
            }),+
        ];
    };
}

worked! {
    first:
    "estate";
    later:
    "van"
    "camper"
    "hatchback"
}

macro_rules! built_in {
    ($($key:literal)+) => {
        /// The built-in lessons, in the order in which a course takes them.
        pub const LESSONS: &[BuiltIn] =
            &[$(BuiltIn {
                key: $key,
                text: ::words::later!(concat!("../lessons/", $key, ".lesson")),
                german: german!("lessons", $key),
            }),+];
    };
}

built_in! {
    "fuse-far-from-battery"
    "fuse-at-amplifier-only"
    "fuse-bigger-than-wire"
    "second-battery"
    "ring-feed"
    "parallel-small-wires"
    "daisy-chained-grounds"
    "painted-seat-rail"
    "copper-clad"
    "alternator-too-small"
    "coils-on-bridged-amplifier"
    "series-against-parallel"
    "mixed-impedances"
    "tied-outputs"
    "loop-through-plug"
    "permanent-turn-on"
    "signal-beside-feed"
}

impl BuiltIn {
    /// The built-in lesson of a key.
    #[must_use]
    pub fn of(key: &str) -> Option<&'static Self> {
        LESSONS.iter().find(|lesson| lesson.key == key)
    }
    /// Its text, in English.
    #[must_use]
    pub fn text(&self) -> &'static str {
        ::words::later::arrived(self.text)
    }
    /// Its title, without reading the rest.
    #[must_use]
    pub fn title(&self) -> &'static str {
        self.text()
            .lines()
            .find_map(|line| line.strip_prefix("title "))
            .unwrap_or_default()
    }
    /// The lesson. The texts are part of the program and a test reads each of them; a damaged one comes back empty.
    #[must_use]
    pub fn lesson(&self) -> Lesson {
        read(self.text()).unwrap_or_default()
    }
    /// The lesson in a language. One whose words are not part of this program stays English; see [`translate()`] for words
    /// that were fetched.
    #[must_use]
    pub fn lesson_in(&self, language: Language) -> Lesson {
        let lesson = self.lesson();
        match (language, self.german) {
            (Language::German, Some(words)) => translate(lesson.clone(), words).unwrap_or(lesson),
            _ => lesson,
        }
    }
}

impl WorkedJob {
    /// The worked job of a short name.
    #[must_use]
    pub fn of(key: &str) -> Option<&'static Self> {
        WORKED_JOBS.iter().find(|job| job.key == key)
    }
    /// The job in the text form, in English.
    #[must_use]
    pub fn text(&self) -> &'static str {
        // The one that a newcomer sees first is there with the first picture.
        if WORKED_JOBS.first().is_some_and(|first| first.key == self.key) {
            self.text
        } else {
            ::words::later::arrived(self.text)
        }
    }
    /// The job. The texts are part of the program and a test reads each of them; should one be damaged all the same,
    /// what could be read of it comes back.
    #[must_use]
    pub fn job(&self) -> Job {
        model::text::parse_lenient(self.text()).0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_worked_job_reads_without_an_error() {
        for worked in WORKED_JOBS {
            if let Err(errors) = model::text::parse(worked.text()) {
                panic!("{}:\n{errors}", worked.key);
            }
        }
    }
}
