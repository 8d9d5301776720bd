//! A lesson in another language: its words alone, in the order of the lesson; what it is made of stands once, in the lesson
//! itself.
//!
//! ```text
//! title Sie flog, da nahm er eine größere
//! story
//!   Ein Absatz. Durch W2 fließen {current W2}.
//! look
//!   Was dort zu sehen ist.
//! break
//!   Was nach dem Bruch zu sehen ist.
//! question Was schützt die Sicherung?
//!   answer Die Leitung.
//!   answer Den Verbraucher.
//!   why Darum.
//! explain
//!   In Worten.
//! source common practice in other words
//! fault
//!   Was kein Befund sagt.
//! names
//!   F1 Hauptsicherung
//!   E1 bad Sitzschraube
//!   E1 good Bodenblech
//! ```
//!
//! Looks, breaks, questions with their answers, and faults come in the order of the lesson and are as many. Sources that
//! are given replace all of the lesson's own. A part is called the same in both versions, unless `bad` or `good` says in
//! which one.

use crate::blocks::{Line, MOST_ERRORS, each_block, items, paragraphs};
use crate::lesson::{Lesson, Version};
use ::words::{Saying, say};
use model::text::TextErrors;

/// Words that open a block.
const BLOCKS: [&str; 9] = [
    "title", "story", "look", "break", "question", "explain", "source", "fault", "names",
];

struct Translator {
    lesson: Lesson,
    /// How many looks, breaks, questions and faults have their words already.
    done: [usize; 4],
    own_sources: bool,
    errors: TextErrors,
}

/// Puts the words of another language into a lesson.
///
/// # Errors
/// What does not fit the lesson, each with its line: a block too many or too few, an answer too many or too few, a part
/// that is not there. A lesson is translated whole or not at all.
pub fn translate(lesson: Lesson, words: &str) -> Result<Lesson, TextErrors> {
    let mut translator = Translator {
        lesson,
        done: [0; 4],
        own_sources: true,
        errors: TextErrors(Vec::new()),
    };
    let lines = Line::all(words);
    let too_many = each_block(&lines, |head, block| translator.block(head, block));
    translator.errors.0.extend(too_many);
    translator.errors.0.truncate(MOST_ERRORS);
    translator.all_there(lines.last().copied().unwrap_or(Line { number: 1, text: "" }));
    if translator.errors.0.is_empty() {
        Ok(translator.lesson)
    } else {
        Err(translator.errors)
    }
}

impl Translator {
    fn wrong(&mut self, line: Line<'_>, message: Saying, help: Saying) {
        if self.errors.0.len() < MOST_ERRORS {
            self.errors.0.push(line.error(message, help));
        }
    }

    /// The next of several blocks of a kind.
    fn next(&mut self, kind: usize) -> usize {
        let at = self.done.get(kind).copied().unwrap_or_default();
        if let Some(done) = self.done.get_mut(kind) {
            *done += 1;
        }
        at
    }

    fn block(&mut self, head: Line<'_>, block: &[Line<'_>]) {
        let (word, rest) = head.text.split_once(' ').unwrap_or((head.text, ""));
        let rest = rest.trim();
        let says = || paragraphs(block).join(" ");
        let surplus = match word {
            "title" => {
                self.lesson.title = rest.to_owned();
                false
            }
            "story" => {
                self.lesson.story = paragraphs(block);
                false
            }
            "explain" => {
                self.lesson.explanation = paragraphs(block);
                false
            }
            "source" => {
                if std::mem::take(&mut self.own_sources) {
                    self.lesson.sources.clear();
                }
                self.lesson.sources.push(rest.to_owned());
                false
            }
            "look" => {
                let at = self.next(0);
                self.lesson.looks.get_mut(at).map(|it| it.says = says()).is_none()
            }
            "break" => {
                let at = self.next(1);
                self.lesson
                    .breaks
                    .get_mut(at)
                    .map(|it| it.says = says())
                    .is_none()
            }
            "question" => {
                let at = self.next(2);
                self.question(at, head, rest, block);
                at >= self.lesson.questions.len()
            }
            "fault" => {
                let at = self.next(3);
                self.lesson
                    .faults
                    .get_mut(at)
                    .map(|it| it.says = says())
                    .is_none()
            }
            "names" => {
                self.names(block);
                false
            }
            _ => {
                let help = say!("lesson-text-begins", words = BLOCKS.join(", "));
                return self.wrong(head, say!("lesson-text-no-block", word = word), help);
            }
        };
        if surplus {
            self.wrong(
                head,
                say!("lesson-words-surplus", word = word),
                say!("lesson-words-surplus-help"),
            );
        }
    }

    fn question(&mut self, at: usize, head: Line<'_>, asks: &str, block: &[Line<'_>]) {
        let Some(mut question) = self.lesson.questions.get(at).cloned() else {
            return;
        };
        asks.clone_into(&mut question.asks);
        let mut answers = 0;
        for (line, word, says) in items(block) {
            match word {
                "why" => question.why = says,
                "answer" => {
                    if let Some(answer) = question.answers.get_mut(answers) {
                        answer.says = says;
                    }
                    answers += 1;
                }
                _ => self.wrong(
                    line,
                    say!("lesson-text-in-question", word = word),
                    say!("lesson-words-in-question-help"),
                ),
            }
        }
        if answers != question.answers.len() {
            let message = say!(
                "lesson-words-answers",
                count = answers,
                wanted = question.answers.len()
            );
            self.wrong(head, message, say!("lesson-words-answers-help"));
        }
        if let Some(place) = self.lesson.questions.get_mut(at) {
            *place = question;
        }
    }

    fn names(&mut self, block: &[Line<'_>]) {
        for (line, tag, name) in items(block) {
            let (only, name) = match name.split_once(' ') {
                Some((word, rest)) if Version::from_word(word).is_some() => {
                    (Version::from_word(word), rest.to_owned())
                }
                _ => (None, name),
            };
            let mut found = false;
            for version in Version::BOTH {
                if only.is_some_and(|only| only != version) {
                    continue;
                }
                let part = self
                    .lesson
                    .job
                    .sheets
                    .get_mut(&version.sheet())
                    .and_then(|sheet| sheet.parts.values_mut().find(|part| part.tag == tag));
                if let Some(part) = part {
                    part.label.clone_from(&name);
                    found = true;
                }
            }
            if !found {
                self.wrong(
                    line,
                    say!("lesson-text-no-thing", tag = tag),
                    say!("lesson-words-part-help"),
                );
            }
        }
    }

    /// Whether nothing was left in the language of the lesson.
    fn all_there(&mut self, end: Line<'_>) {
        let wanted = [
            ("look", self.lesson.looks.len()),
            ("break", self.lesson.breaks.len()),
            ("question", self.lesson.questions.len()),
            ("fault", self.lesson.faults.len()),
        ];
        for ((word, wanted), done) in wanted.into_iter().zip(self.done) {
            if done < wanted {
                let message = say!("lesson-words-missing", count = done, wanted = wanted, word = word);
                self.wrong(end, message, say!("lesson-words-missing-help"));
            }
        }
    }
}
