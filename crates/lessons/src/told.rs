//! A lesson with its numbers: both versions analysed, texts filled in, what is wrong with the lesson itself.

use crate::breaks::{Break, apply};
use crate::lesson::{Lesson, Version};
use crate::measures::{Judged, Number, measure};
use checks::{Analysis, Grade};
use drawing::numbers::with_unit;
use model::{Job, Sheet};

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
    fn of(job: Job, version: Version) -> Self {
        let sheet = job.sheet(version.sheet()).cloned().unwrap_or_default();
        let analysis = checks::analyse(&sheet, &job.settings);
        Self { job, sheet, analysis }
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
    /// Its bad version.
    pub bad: Shown,
    /// Its good version.
    pub good: Shown,
}

impl<'l> Told<'l> {
    /// Analyses both versions.
    #[must_use]
    pub fn of(lesson: &'l Lesson) -> Self {
        let [bad, good] = Version::BOTH.map(|version| Shown::of(lesson.version(version), version));
        Self { lesson, bad, good }
    }
    /// A version as it stands.
    #[must_use]
    pub fn shown(&self, version: Version) -> &Shown {
        match version {
            Version::Bad => &self.bad,
            Version::Good => &self.good,
        }
    }
    /// A version with a break thrown.
    ///
    /// # Errors
    /// Where the version has no such thing to break.
    pub fn broken(&self, broken: &Break, version: Version) -> Result<Shown, String> {
        let mut job = self.shown(version).job.clone();
        let edit = apply(broken, &job)?;
        job.apply(edit);
        Ok(Shown::of(job, version))
    }

    /// A text with its numbers filled in. A place names a number of the engine ([`crate::measures`]); before it may
    /// stand `good` for the good version, and before that `broken` for the break that the text belongs to, or the
    /// lesson's first: `{current W3}`, `{good drop A1}`, `{broken bad current W3}`. What cannot be filled in stays.
    #[must_use]
    pub fn tell(&self, text: &str, broken: Option<&Break>) -> String {
        self.fill(text, broken, &mut Vec::new())
    }

    fn fill(&self, text: &str, broken: Option<&Break>, problems: &mut Vec<String>) -> String {
        let mut out = String::new();
        let mut rest = text;
        // One text asks for a broken version again and again; it is analysed once.
        let mut after: [Option<Result<Shown, String>>; 2] = [None, None];
        while let Some((front, tail)) = rest.split_once('{') {
            out.push_str(front);
            let Some((place, behind)) = tail.split_once('}') else {
                problems.push(format!("a brace is not closed in: {text}"));
                out.push('{');
                rest = tail;
                break;
            };
            match self.number(place, broken, &mut after) {
                Ok((number, unit)) => out.push_str(&with_unit(number, unit)),
                Err(why) => {
                    problems.push(format!("{{{place}}}: {why}"));
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
        after: &mut [Option<Result<Shown, String>>; 2],
    ) -> Result<Number, String> {
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
            _ => return Err("write it as {current W3} or {good drop A1}".to_owned()),
        };
        if !is_broken {
            return measure(self.shown(version).judged(), name, at);
        }
        let thrown = broken
            .or(self.lesson.breaks.first())
            .ok_or("the lesson has no break")?;
        let [bad, good] = after;
        let slot = if version == Version::Bad { bad } else { good };
        match slot.get_or_insert_with(|| self.broken(thrown, version)) {
            Ok(shown) => measure(shown.judged(), name, at),
            Err(why) => Err(why.clone()),
        }
    }

    /// What is wrong with the lesson itself, for whoever writes one: numbers that are not there, a bad version that does
    /// not show what the lesson is about, a good one that is not, breaks after which something else follows.
    #[must_use]
    pub fn problems(&self) -> Vec<String> {
        let lesson = self.lesson;
        let mut problems = Vec::new();
        for name in &lesson.about {
            if !self
                .bad
                .analysis
                .findings
                .iter()
                .any(|it| it.check == name && !it.undecided)
            {
                problems.push(format!("the bad version has no finding of `{name}`"));
            }
        }
        if lesson.about.is_empty() && lesson.faults.is_empty() {
            problems.push("it is about nothing: name a check under `about`, or write a `fault`".to_owned());
        }
        for finding in self
            .good
            .analysis
            .findings
            .iter()
            .filter(|it| it.grade != Grade::Tidy)
        {
            problems.push(format!(
                "the good version has a finding of `{}`: {}",
                finding.check,
                words::Words::english().say(&finding.what)
            ));
        }
        if lesson.all_sources(&words::Words::english()).is_empty() {
            problems.push("its explanation names no source".to_owned());
        }
        let texts = lesson.story.iter().chain(&lesson.explanation);
        let texts = texts.chain(lesson.looks.iter().map(|it| &it.says));
        let texts = texts.chain(lesson.faults.iter().map(|it| &it.says));
        let questions = lesson.questions.iter().flat_map(|it| {
            [&it.asks, &it.why]
                .into_iter()
                .chain(it.answers.iter().map(|answer| &answer.says))
        });
        for text in texts.chain(questions) {
            self.fill(text, None, &mut problems);
        }
        for broken in &lesson.breaks {
            self.fill(&broken.says, Some(broken), &mut problems);
            self.effects(broken, &mut problems);
        }
        problems
    }

    fn effects(&self, broken: &Break, problems: &mut Vec<String>) {
        for version in Version::BOTH {
            let effects: Vec<_> = broken.effects.iter().filter(|it| it.version == version).collect();
            if effects.is_empty() {
                continue;
            }
            let after = match self.broken(broken, version) {
                Ok(after) => after,
                Err(why) => {
                    problems.push(format!("{}, {}: {why}", broken.title(), version.word()));
                    continue;
                }
            };
            for follows in effects {
                let before = follows.effect.holds(self.shown(version).judged());
                let told = match (before, follows.effect.holds(after.judged())) {
                    (_, Err(why)) => why,
                    (_, Ok(false)) => "does not follow".to_owned(),
                    (Ok(true), Ok(true)) if !follows.still => {
                        "is so before as well: write `still`".to_owned()
                    }
                    (Ok(false), Ok(true)) if follows.still => "is not so before: write `then`".to_owned(),
                    _ => continue,
                };
                problems.push(format!(
                    "{}, {}: `{}`: {told}",
                    broken.title(),
                    version.word(),
                    follows.effect
                ));
            }
        }
    }
}
