//! A lesson with its numbers: both versions analysed, texts filled in.

use crate::breaks::{Break, apply};
use crate::lesson::{Lesson, Version};
use crate::measures::{Judged, Number, as_drawn, measure};
use checks::Analysis;
use model::{Job, Sheet};
use std::rc::Rc;
use words::{Saying, Words, say};

/// A version of a system, whole or broken, and its analysis.
#[derive(Clone, Debug, Default)]
pub struct Shown {
    /// The job: one sheet.
    pub job: Job,
    /// That sheet.
    pub sheet: Sheet,
    /// Its analysis.
    pub analysis: Analysis,
}

impl Shown {
    /// Analyses a job of one sheet.
    #[must_use]
    pub fn of(job: Job) -> Self {
        let sheet = job.sheets.values().next_back().cloned().unwrap_or_default();
        let analysis = checks::analyse(&sheet, &job.settings);
        Self { job, sheet, analysis }
    }
    /// The same with a break thrown.
    ///
    /// # Errors
    /// Where it has no such thing to break.
    pub fn broken(&self, broken: &Break) -> Result<Self, Saying> {
        let mut job = self.job.clone();
        let edit = apply(broken, &job)?;
        job.apply(edit);
        Ok(Self::of(job))
    }
    /// For asking numbers of it.
    #[must_use]
    pub fn judged(&self) -> Judged<'_> {
        Judged {
            sheet: &self.sheet,
            settings: &self.job.settings,
            analysis: &self.analysis,
        }
    }
}

/// A lesson ready to be told.
#[derive(Clone, Debug)]
pub struct Told<'l> {
    /// The lesson.
    pub lesson: &'l Lesson,
    /// Its bad and its good version.
    shown: Rc<[Shown; 2]>,
}

impl<'l> Told<'l> {
    /// Analyses both versions.
    #[must_use]
    pub fn of(lesson: &'l Lesson) -> Self {
        let shown = Version::BOTH.map(|version| Shown::of(lesson.version(version)));
        Self::with(lesson, Rc::new(shown))
    }
    /// With both versions as they were analysed before, the bad one first.
    #[must_use]
    pub fn with(lesson: &'l Lesson, shown: Rc<[Shown; 2]>) -> Self {
        Self { lesson, shown }
    }
    /// Both versions, the bad one first.
    #[must_use]
    pub fn both(&self) -> Rc<[Shown; 2]> {
        self.shown.clone()
    }
    /// A version as it stands.
    #[must_use]
    pub fn shown(&self, version: Version) -> &Shown {
        let [bad, good] = &*self.shown;
        match version {
            Version::Bad => bad,
            Version::Good => good,
        }
    }
    /// A version with a break thrown.
    ///
    /// # Errors
    /// Where the version has no such thing to break.
    pub fn broken(&self, broken: &Break, version: Version) -> Result<Shown, Saying> {
        self.shown(version).broken(broken)
    }

    /// The lesson as a learner reads it: story, explanation and faults with their numbers.
    #[must_use]
    pub fn filled(&self, words: &Words) -> Lesson {
        let mut lesson = self.lesson.clone();
        let texts = lesson.story.iter_mut().chain(&mut lesson.explanation);
        for text in texts.chain(lesson.faults.iter_mut().map(|it| &mut it.says)) {
            *text = self.tell(text, None, words);
        }
        lesson
    }

    /// A text with its numbers filled in. A place names a number of the engine ([`crate::measures`]); before it may
    /// stand `good` for the good version, and before that `broken` for the break that the text belongs to, or the
    /// lesson's first: `{current W3}`, `{good drop A1}`, `{broken bad current W3}`. Numbers are written as the drawing
    /// writes them, for the reader of `words`. What cannot be filled in stays.
    #[must_use]
    pub fn tell(&self, text: &str, broken: Option<&Break>, words: &Words) -> String {
        self.fill(text, broken, words, &mut Vec::new())
    }

    /// The same; what could not be filled in is told as well.
    pub(crate) fn fill(
        &self,
        text: &str,
        broken: Option<&Break>,
        words: &Words,
        problems: &mut Vec<Saying>,
    ) -> String {
        let mut out = String::new();
        let mut rest = text;
        // One text asks for a broken version again and again; it is analysed once.
        let mut after: [Option<Result<Shown, Saying>>; 2] = [None, None];
        while let Some((front, tail)) = rest.split_once('{') {
            out.push_str(front);
            let Some((place, behind)) = tail.split_once('}') else {
                problems.push(say!("lesson-brace-open", text = text));
                out.push('{');
                rest = tail;
                break;
            };
            match self.number(place, broken, &mut after) {
                Ok(number) => out.push_str(&words.figure(as_drawn(number))),
                Err(why) => {
                    problems.push(say!("lesson-place-empty", place = place, why = why));
                    out.push('{');
                    out.push_str(place);
                    out.push('}');
                }
            }
            rest = behind;
        }
        out.push_str(rest);
        out
    }

    /// The number that a place in a text names.
    fn number(
        &self,
        place: &str,
        broken: Option<&Break>,
        after: &mut [Option<Result<Shown, Saying>>; 2],
    ) -> Result<Number, Saying> {
        let mut words: &[&str] = &place.split_whitespace().collect::<Vec<_>>();
        let mut is_broken = false;
        if let ["broken", rest @ ..] = words {
            (is_broken, words) = (true, rest);
        }
        let mut version = Version::Bad;
        if let [word, rest @ ..] = words
            && let Some(named) = Version::from_word(word)
        {
            (version, words) = (named, rest);
        }
        let (name, at) = match words {
            [name] => (*name, ""),
            [name, at] => (*name, *at),
            _ => return Err(say!("lesson-place-form")),
        };
        if !is_broken {
            return measure(self.shown(version).judged(), name, at);
        }
        let thrown = broken
            .or(self.lesson.breaks.first())
            .ok_or_else(|| say!("lesson-no-break"))?;
        let [bad, good] = after;
        let slot = if version == Version::Bad { bad } else { good };
        match slot.get_or_insert_with(|| self.broken(thrown, version)) {
            Ok(shown) => measure(shown.judged(), name, at),
            Err(why) => Err(why.clone()),
        }
    }
}
