//! Reads a lesson from its text.
//!
//! ```text
//! lesson fuse-too-big
//! title The fuse that never opens
//! about fuse-outsizes-wire
//! story
//!   It blew, so he put in a bigger one. {current W2} flow in W2.
//!
//!   A second paragraph.
//! look protection F1 W2
//!   What to see there.
//! break joined L1.+ L1.-
//!   then bad current W2 > 100 A
//!   still good on L2
//!   says What is to be seen.
//! question What does the fuse guard?
//!   right The wire.
//!   wrong The load.
//!   why Because.
//! explain
//!   In words.
//! source ISO 13297 clause 13.1.5; common practice
//! fault signal-beside-feed W4 W2
//!   What no check finds; or, by the name of a check and with a thing of its finding, words on that finding and what else
//!   may be marked for it. The sentence may be left out where a check finds it.
//! unasked lead-loss W5
//! system
//!     battery B1 agm 70Ah
//!   - fuse F1 strip61 100A
//!   + fuse F1 strip61 40A
//! ```
//!
//! A line that begins without a blank opens a block; what is indented belongs to it. In prose an empty line divides
//! paragraphs. Among `then`, `still`, `says`, `right`, `wrong` and `why` a line that is indented further goes on with the
//! line before. `unasked` names a check, and things whose findings of it the exercise does not ask for (none: all of them).
//! `system` holds lines of the text form of a job ([`model::text`]): a line with a minus stands in the bad
//! version only, one with a plus in the good version only, all others in both. `#` at the beginning of a line starts a
//! comment.

use crate::blocks::{Line, MOST_ERRORS, each_block, items, paragraphs};
use crate::breaks::{Break, BreakKind, Follows};
use crate::effects::Effect;
use crate::lesson::{Answer, ByHand, Lesson, Look, Question, Unasked, Version};
use ::words::{Saying, say};
use drawing::Overlay;
use model::PartKind;
use model::text::{TextError, TextErrors, closest};

/// Words that open a block.
const BLOCKS: [&str; 12] = [
    "lesson", "title", "about", "story", "look", "break", "question", "explain", "source", "fault",
    "unasked", "system",
];

/// Words that begin a line of a sheet, besides those of the kinds of parts; all others are of the whole job.
const OF_A_SHEET: [&str; 3] = ["run", "reading", "tuning"];
/// Most things named in a block: to look each of them up would take long.
const MOST_THINGS: usize = 50;

struct Reader {
    lesson: Lesson,
    /// What is half-written is read too.
    draft: bool,
    errors: Vec<TextError>,
}

/// Reads a lesson from its text.
///
/// # Errors
/// Everything that is wrong with it, each with its line and what would do.
pub fn read(text: &str) -> Result<Lesson, TextErrors> {
    read_as(text, false)
}

/// Reads a lesson that is being written: sentences, things and answers may still be missing ([`Lesson::lacks`] tells them).
///
/// # Errors
/// As [`read`].
pub fn read_draft(text: &str) -> Result<Lesson, TextErrors> {
    read_as(text, true)
}

fn read_as(text: &str, draft: bool) -> Result<Lesson, TextErrors> {
    let mut reader = Reader {
        lesson: Lesson::default(),
        draft,
        errors: Vec::new(),
    };
    if text.len() > model::limits::LARGEST_FILE {
        let line = Line { number: 1, text: "" };
        reader.wrong(line, say!("lesson-text-long"), say!("lesson-text-two"));
        return Err(TextErrors(reader.errors));
    }
    let lines = Line::all(text);
    let too_many = each_block(&lines, |head, block| reader.block(head, block));
    reader.errors.extend(too_many);
    reader.errors.truncate(MOST_ERRORS);
    if reader.lesson.key.is_empty() && reader.errors.is_empty() {
        let line = Line {
            number: 1,
            text: text.lines().next().unwrap_or_default(),
        };
        reader.wrong(line, say!("lesson-text-key-first"), say!("lesson-text-key-help"));
    }
    if reader.errors.is_empty() {
        reader.names(&lines);
    }
    if reader.errors.is_empty() {
        Ok(reader.lesson)
    } else {
        Err(TextErrors(reader.errors))
    }
}

fn words(text: &str) -> Vec<String> {
    text.split_whitespace().map(str::to_owned).collect()
}

impl Reader {
    fn wrong(&mut self, line: Line<'_>, message: Saying, help: Saying) {
        if self.errors.len() >= MOST_ERRORS {
            return;
        }
        self.errors.push(line.error(message, help));
    }

    fn block(&mut self, head: Line<'_>, block: &[Line<'_>]) {
        let (word, rest) = head.text.split_once(' ').unwrap_or((head.text, ""));
        let rest = rest.trim();
        if ["look", "break", "fault", "about", "unasked"].contains(&word) && words(rest).len() > MOST_THINGS {
            return self.wrong(
                head,
                say!("lesson-text-things", most = MOST_THINGS),
                say!("lesson-text-things-help"),
            );
        }
        match word {
            "lesson" => {
                let fits = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
                if rest.is_empty() || rest.len() > 60 || !rest.chars().all(fits) {
                    self.wrong(head, say!("lesson-text-key"), say!("lesson-text-key-help"));
                }
                self.lesson.key = rest.to_owned();
            }
            "title" => self.lesson.title = rest.to_owned(),
            "about" => self.lesson.about = words(rest),
            "story" => self.lesson.story = paragraphs(block),
            "explain" => self.lesson.explanation = paragraphs(block),
            "source" => self.lesson.sources.push(rest.to_owned()),
            "look" => self.look(head, rest, block),
            "break" => self.breaks(head, rest, block),
            "question" => self.question(head, rest, block),
            "fault" => {
                let mut things = words(rest);
                let found = things
                    .first()
                    .is_some_and(|name| checks::check_named(name).is_some());
                let says = paragraphs(block).join(" ");
                let whole = things.len() >= 2 && (found || !says.is_empty());
                if things.is_empty() || !whole && !self.draft {
                    return self.wrong(head, say!("lesson-text-fault"), say!("lesson-text-fault-help"));
                }
                let name = things.remove(0);
                self.lesson.faults.push(ByHand { name, things, says });
            }
            "unasked" => {
                let mut things = words(rest);
                if things.is_empty() {
                    return self.wrong(
                        head,
                        say!("lesson-text-unasked"),
                        say!("lesson-text-unasked-help"),
                    );
                }
                let check = things.remove(0);
                self.lesson.unasked.push(Unasked { check, things });
            }
            "system" => self.system(block),
            _ => {
                let help = match closest(word, BLOCKS) {
                    Some(meant) => say!("text-meant", meant = meant),
                    None => say!("lesson-text-begins", words = BLOCKS.join(", ")),
                };
                self.wrong(head, say!("lesson-text-no-block", word = word), help);
            }
        }
    }

    fn look(&mut self, head: Line<'_>, rest: &str, block: &[Line<'_>]) {
        let mut things = words(rest);
        let word = if things.is_empty() {
            String::new()
        } else {
            things.remove(0)
        };
        let Some(overlay) = Overlay::ALL
            .iter()
            .copied()
            .find(|overlay| overlay_word(*overlay) == word)
        else {
            let all: Vec<String> = Overlay::ALL
                .iter()
                .map(|overlay| overlay_word(*overlay))
                .collect();
            return self.wrong(
                head,
                say!("lesson-text-overlay", word = word),
                say!("text-there-are", words = all.join(", ")),
            );
        };
        let says = paragraphs(block).join(" ");
        if !self.draft && (things.is_empty() || says.is_empty()) {
            return self.wrong(head, say!("lesson-text-look"), say!("lesson-text-look-help"));
        }
        self.lesson.looks.push(Look {
            overlay,
            things,
            says,
        });
    }

    fn breaks(&mut self, head: Line<'_>, rest: &str, block: &[Line<'_>]) {
        let mut things = words(rest);
        let word = if things.is_empty() {
            String::new()
        } else {
            things.remove(0)
        };
        let Some(kind) = BreakKind::ALL.into_iter().find(|kind| kind.word() == word) else {
            return self.wrong(
                head,
                say!("lesson-text-break", word = word),
                say!("lesson-text-break-help"),
            );
        };
        let wanted = kind.wants();
        // Of a draft some may be missing yet, never too many.
        if things.len() > wanted || things.len() < wanted && !self.draft {
            let what = say!("lesson-text-break-things", word = word, count = things.len());
            return self.wrong(head, what, say!("lesson-text-break-things-help", count = wanted));
        }
        let mut made = Break {
            kind,
            things,
            ..Break::default()
        };
        for (line, word, text) in items(block) {
            match word {
                "says" => made.says = text,
                "then" | "still" => {
                    let (version, effect) = text.split_once(' ').unwrap_or((&text, ""));
                    let Some(version) = Version::from_word(version) else {
                        self.wrong(
                            line,
                            say!("lesson-text-version"),
                            say!("lesson-text-version-help"),
                        );
                        continue;
                    };
                    match Effect::parse(effect) {
                        Ok(effect) => made.effects.push(Follows {
                            still: word == "still",
                            version,
                            effect,
                        }),
                        Err(why) => self.wrong(line, say!("lesson-text-effect"), why),
                    }
                }
                _ => self.wrong(
                    line,
                    say!("lesson-text-in-break", word = word),
                    say!("lesson-text-in-break-help"),
                ),
            }
        }
        self.lesson.breaks.push(made);
    }

    fn question(&mut self, head: Line<'_>, rest: &str, block: &[Line<'_>]) {
        let mut made = Question {
            asks: rest.to_owned(),
            ..Question::default()
        };
        for (line, word, says) in items(block) {
            match word {
                "right" | "wrong" => made.answers.push(Answer {
                    right: word == "right",
                    says,
                }),
                "why" => made.why = says,
                _ => self.wrong(
                    line,
                    say!("lesson-text-in-question", word = word),
                    say!("lesson-text-in-question-help"),
                ),
            }
        }
        let any = |right: bool| made.answers.iter().any(|answer| answer.right == right);
        if !self.draft && (made.asks.is_empty() || !any(true) || !any(false)) {
            self.wrong(
                head,
                say!("lesson-text-question"),
                say!("lesson-text-question-help"),
            );
        }
        self.lesson.questions.push(made);
    }

    /// Both sheets are read by the parser of jobs, and its errors are brought home to the lines they come from.
    fn system<'t>(&mut self, block: &[Line<'t>]) {
        let mut text = String::new();
        let mut from: Vec<Line<'t>> = Vec::new();
        let mut put = |text: &mut String, line: Line<'t>, words: &str| {
            text.push_str(words);
            text.push('\n');
            from.push(line);
        };
        let cut = |line: Line<'_>| {
            let text = line.text.trim_start();
            let only = match text.get(..2) {
                Some("- ") => Some(Version::Bad),
                Some("+ ") => Some(Version::Good),
                _ => None,
            };
            (
                only,
                if only.is_some() {
                    text.get(2..).unwrap_or_default()
                } else {
                    text
                }
                .trim_start()
                .to_owned(),
            )
        };
        let is_setting = |words: &str| {
            let first = words.split_whitespace().next().unwrap_or_default();
            !OF_A_SHEET.contains(&first) && !PartKind::WORDS.contains(&first)
        };
        for line in block {
            let (_, words) = cut(*line);
            if is_setting(&words) {
                put(&mut text, *line, &words);
            }
            if ["sheet", "job"]
                .iter()
                .any(|word| words.split_whitespace().next() == Some(word))
            {
                self.wrong(
                    *line,
                    say!("lesson-text-own-line"),
                    say!("lesson-text-own-line-help"),
                );
            }
        }
        for version in Version::BOTH {
            let none = Line { number: 0, text: "" };
            put(&mut text, none, &format!("sheet {}", version.sheet().word()));
            for line in block {
                let (only, words) = cut(*line);
                if only.is_none_or(|only| only == version) && !is_setting(&words) {
                    put(&mut text, *line, &words);
                }
            }
        }
        match model::text::parse(&text) {
            Ok(job) => self.lesson.job = job,
            Err(errors) => {
                for mut error in errors.0 {
                    let Some(line) = error.line.checked_sub(1).and_then(|at| from.get(at)) else {
                        continue;
                    };
                    let shift = line
                        .text
                        .chars()
                        .count()
                        .saturating_sub(error.source.chars().count());
                    error.line = line.number;
                    error.column += shift;
                    error.source = line.text.to_owned();
                    if !self.errors.contains(&error) {
                        self.errors.push(error);
                    }
                }
            }
        }
    }

    /// Whether every thing named is there, once everything is read.
    fn names(&mut self, lines: &[Line<'_>]) {
        let lesson = std::mem::take(&mut self.lesson);
        let sheets = Version::BOTH.map(|version| lesson.sheet(version));
        let known = |tag: &str| {
            let tag = tag.split_once('.').map_or(tag, |(tag, _)| tag);
            sheets
                .iter()
                .any(|sheet| sheet.part_by_tag(tag).is_some() || sheet.run_by_tag(tag).is_some())
        };
        // The line of a block by what stands behind its first word.
        let line_of = |word: &str, thing: &str| {
            let names = |line: &&Line<'_>| {
                line.text.starts_with(word) && words(line.text).iter().any(|it| it == thing)
            };
            lines
                .iter()
                .find(names)
                .copied()
                .unwrap_or(Line { number: 1, text: "" })
        };
        let named = lesson
            .looks
            .iter()
            .flat_map(|it| it.things.iter().map(|tag| ("look", tag)));
        let named = named.chain(
            lesson
                .breaks
                .iter()
                .flat_map(|it| it.things.iter().map(|tag| ("break", tag))),
        );
        let named = named.chain(
            lesson
                .faults
                .iter()
                .flat_map(|it| it.things.iter().map(|tag| ("fault", tag))),
        );
        let named = named.chain(
            lesson
                .unasked
                .iter()
                .flat_map(|it| it.things.iter().map(|tag| ("unasked", tag))),
        );
        for (word, tag) in named {
            if !self.draft && !known(tag) {
                self.wrong(
                    line_of(word, tag),
                    say!("lesson-text-no-thing", tag = tag),
                    say!("lesson-text-no-thing-help"),
                );
            }
        }
        let about = lesson.about.iter().map(|name| ("about", name));
        let unasked = lesson.unasked.iter().map(|it| ("unasked", &it.check));
        for (word, name) in about
            .chain(unasked)
            .filter(|(_, name)| checks::check_named(name).is_none())
        {
            let help = match closest(name, checks::CHECKS.iter().map(|check| check.name)) {
                Some(meant) => say!("text-meant", meant = meant),
                None if word == "about" => say!("lesson-text-about-help"),
                None => say!("lesson-text-checks-help"),
            };
            self.wrong(
                line_of(word, name),
                say!("lesson-text-no-check", name = name),
                help,
            );
        }
        self.lesson = lesson;
    }
}

/// The word of an overlay in a lesson's text.
pub(crate) fn overlay_word(overlay: Overlay) -> String {
    match overlay {
        Overlay::None => "none".to_owned(),
        other => other.title().to_ascii_lowercase(),
    }
}
