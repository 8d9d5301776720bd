//! What is wrong with a lesson itself, for whoever writes one: numbers that are not there, a bad version that does not show
//! what the lesson is about, a good one that is not, breaks after which something else follows.

use crate::breaks::Break;
use crate::lesson::Version;
use crate::told::Told;
use checks::Grade;
use words::{Saying, Words, say};

impl Told<'_> {
    /// What is wrong with the lesson, in sentences.
    #[must_use]
    pub fn problems(&self) -> Vec<Saying> {
        let lesson = self.lesson;
        let mut problems = Vec::new();
        let finds = |name: &String| {
            let mut findings = self.shown(Version::Bad).analysis.findings.iter();
            findings.any(|it| it.check == name && !it.undecided)
        };
        for name in lesson.about.iter().filter(|name| !finds(name)) {
            problems.push(say!("lesson-bad-without-finding", check = name));
        }
        if lesson.about.is_empty() && lesson.faults.is_empty() {
            problems.push(say!("lesson-about-nothing"));
        }
        let good = self.shown(Version::Good).analysis.findings.iter();
        problems.extend(good.filter(|it| it.grade != Grade::Tidy).map(|finding| {
            say!(
                "lesson-good-with-finding",
                check = finding.check,
                what = &finding.what
            )
        }));
        if lesson.sources.is_empty() && lesson.checks().next().is_none() {
            problems.push(say!("lesson-no-source"));
        }
        problems.extend(self.unfilled());
        for broken in &lesson.breaks {
            for version in Version::BOTH {
                self.unfulfilled(broken, version, &mut problems);
            }
        }
        problems
    }

    /// Places for numbers that cannot be filled in, and why.
    #[must_use]
    pub fn unfilled(&self) -> Vec<Saying> {
        let lesson = self.lesson;
        let mut problems = Vec::new();
        let texts = lesson.story.iter().chain(&lesson.explanation);
        let texts = texts.chain(lesson.looks.iter().map(|it| &it.says));
        let texts = texts.chain(lesson.faults.iter().map(|it| &it.says));
        let questions = lesson.questions.iter().flat_map(|it| {
            [&it.asks, &it.why]
                .into_iter()
                .chain(it.answers.iter().map(|answer| &answer.says))
        });
        // Whose words the numbers are in makes no difference to whether they are there.
        let words = Words::english();
        for text in texts.chain(questions) {
            self.fill(text, None, &words, &mut problems);
        }
        for broken in &lesson.breaks {
            self.fill(&broken.says, Some(broken), &words, &mut problems);
        }
        problems
    }

    /// What the lesson says of a break and what does not follow from it.
    fn unfulfilled(&self, broken: &Break, version: Version, problems: &mut Vec<Saying>) {
        let told: Vec<_> = broken.effects.iter().filter(|it| it.version == version).collect();
        if told.is_empty() {
            return;
        }
        let mut add = |why: Saying| {
            problems.push(say!(
                "lesson-break-problem",
                break = broken.said(),
                version = version.said(),
                why = why
            ));
        };
        let after = match self.broken(broken, version) {
            Ok(after) => after,
            Err(why) => return add(why),
        };
        for follows in told {
            let before = follows.effect.holds(self.shown(version).judged());
            let why = match (before, follows.effect.holds(after.judged())) {
                (_, Err(why)) => why,
                (_, Ok(false)) => say!("lesson-does-not-follow"),
                (Ok(true), Ok(true)) if !follows.still => say!("lesson-write-still"),
                (Ok(false), Ok(true)) if follows.still => say!("lesson-write-then"),
                _ => continue,
            };
            let effect = follows.effect.to_string();
            add(say!("lesson-effect-problem", effect = effect, why = why));
        }
    }
}
