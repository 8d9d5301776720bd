//! The words of exercise and own lessons: what a lesson lacks, why a mark is refused, what came of one, and the report that a
//! teacher reads.

use crate::exercise::{Verdict, title, title_in};
use crate::own::Lack;
use crate::record::{Record, RecordError, Records};
use crate::sitting::{MOST_MARKS, Refusal};
use words::{Saying, Words, say};

impl Lack {
    /// What is lacking, in a sentence.
    #[must_use]
    pub fn saying(&self) -> Saying {
        match self {
            Self::Title => say!("lesson-lacks-title"),
            Self::Story => say!("lesson-lacks-story"),
            Self::Drawing => say!("lesson-lacks-drawing"),
            Self::Fault => say!("lesson-lacks-fault"),
            Self::FaultWords(name) => say!("lesson-lacks-fault-words", fault = title(name)),
            Self::FaultThings(name) => say!("lesson-lacks-fault-things", fault = title(name)),
            Self::Question(at) => say!("lesson-lacks-question", at = *at),
            Self::Answers(at) => say!("lesson-lacks-answers", at = *at),
            Self::Look(at) => say!("lesson-lacks-look", at = *at),
            Self::Break(at) => say!("lesson-lacks-break", at = *at),
        }
    }
}

impl Refusal {
    /// Why it cannot be done, and what can.
    #[must_use]
    pub fn saying(&self) -> Saying {
        match self {
            Self::HandedIn => say!("exercise-refused-handed-in"),
            Self::NoSuchThing => say!("exercise-refused-thing"),
            Self::NoSuchReason => say!("exercise-refused-reason"),
            Self::NoSuchMark => say!("exercise-refused-mark"),
            Self::Twice => say!("exercise-refused-twice"),
            Self::TooMany => say!("exercise-refused-many", most = MOST_MARKS),
        }
    }
}

impl RecordError {
    /// That kept results cannot be read, and why.
    #[must_use]
    pub fn saying(&self) -> Saying {
        say!("exercise-results-unreadable", why = &self.0)
    }
}

impl Verdict {
    /// What became of a mark, in a few words.
    #[must_use]
    pub fn saying(self) -> Saying {
        match self {
            Self::Right => say!("exercise-right"),
            Self::Unasked => say!("exercise-unasked"),
            Self::OtherReason => say!("exercise-other-reason"),
            Self::Wrong => say!("exercise-wrong"),
        }
    }
}

impl Records {
    /// The records in words, for a teacher to read; `score` shows the points too.
    #[must_use]
    pub fn report(&self, words: &Words, score: bool) -> String {
        let mut out = words.text("exercise-report");
        out.push('\n');
        for record in &self.0 {
            record.tell(words, &mut out, score);
        }
        out
    }
}

impl Record {
    fn tell(&self, words: &Words, out: &mut String, score: bool) {
        let mut line = |indent: &str, said: &str| {
            out.push_str(indent);
            // A note may have line breaks; a report has one line for each thing that it tells.
            out.push_str(&said.split_whitespace().collect::<Vec<_>>().join(" "));
            out.push('\n');
        };
        let learner = match self.learner.as_str() {
            "" => words.text("exercise-no-name"),
            name => name.to_owned(),
        };
        let (lesson, number, when) = (&self.title, self.try_number.to_string(), &self.when);
        let head = if when.is_empty() {
            say!("exercise-report-head", learner = learner, lesson = lesson, try = number)
        } else {
            say!("exercise-report-when", learner = learner, lesson = lesson, try = number, when = when)
        };
        line("", "");
        line("", &words.say(&head));
        if score {
            let (points, of) = (self.points.0.to_string(), self.points.1.to_string());
            line(
                "  ",
                &words.say(&say!("exercise-report-points", points = points, of = of)),
            );
        }
        for (came, faults) in [("exercise-right", &self.found), ("exercise-missed", &self.missed)] {
            for (reason, thing) in faults {
                line(
                    "  ",
                    &format!("{}: {} ({thing})", words.text(came), title_in(reason, words)),
                );
            }
        }
        for mark in self.marks.iter().filter(|mark| mark.came != Verdict::Right) {
            let came = words.say(&mark.came.saying());
            line(
                "  ",
                &format!("{came}: {}, {}", mark.thing, title_in(&mark.reason, words)),
            );
        }
        for mark in self.marks.iter().filter(|mark| !mark.note.is_empty()) {
            let note = say!("exercise-report-note", thing = &mark.thing, note = &mark.note);
            line("  ", &words.say(&note));
        }
    }
}
