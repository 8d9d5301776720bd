//! Lines that are no set of properties: the title, limits, checks left out, the sheet that begins, steps that are done.

use super::super::error::closest;
use super::super::lex::{Token, Word};
use super::whose::full;
use super::{Line, Parser};
use crate::job::SheetKind;
use crate::limits;
use std::ops::Range;
use words::say;

impl<'t> Parser<'t> {
    pub(super) fn title(&mut self, line: Line<'t>, at: Range<usize>, rest: &[Token]) {
        self.once(line, at.clone(), "job");
        match rest {
            [
                Token {
                    word: Word::Bare(title) | Word::Quoted(title),
                    start,
                    end,
                },
            ] => match limits::check_length(title, limits::LONGEST_LABEL) {
                Ok(()) => self.job.title.clone_from(title),
                Err(why) => self.error(line, *start..*end, say!("text-title-long", why = why), None),
            },
            _ => self.error(line, at, say!("text-title"), say!("text-title-help")),
        }
    }

    pub(super) fn limit(&mut self, line: Line<'t>, at: Range<usize>, rest: &[Token]) {
        let [
            Token {
                word: Word::Bare(key) | Word::Quoted(key),
                start: from,
                end: to,
            },
            Token {
                word: Word::Bare(number),
                start,
                end,
            },
        ] = rest
        else {
            return self.error(line, at, say!("text-limit"), say!("text-limit-help"));
        };
        let value = match number.parse::<f64>() {
            Ok(value) => limits::check_limit(value).map(|()| value),
            Err(_) => Err(say!("text-limit-number", text = number)),
        };
        let value = match value {
            Ok(value) => value,
            Err(why) => return self.error(line, *start..*end, why, say!("text-limit-number-help")),
        };
        let set = &mut self.job.settings.limits;
        if let Err(why) = limits::check_length(key, limits::LONGEST_LABEL) {
            self.error(line, *from..*to, say!("text-text-long", why = why), None);
        } else if set.contains_key(key) {
            self.error(line, at, say!("text-limit-twice", key = key), None);
        } else if set.len() >= limits::MOST_SETTINGS {
            self.error(line, at, full("limits", limits::MOST_SETTINGS), None);
        } else {
            set.insert(key.clone(), value);
        }
    }

    pub(super) fn allow(&mut self, line: Line<'t>, at: Range<usize>, rest: &[Token]) {
        if rest.is_empty() {
            self.error(line, at, say!("text-allow"), None);
        }
        for token in rest {
            let here = token.start..token.end;
            match &token.word {
                Word::Bare(name) | Word::Quoted(name) => {
                    let out = &mut self.job.settings.allowed;
                    if let Err(why) = limits::check_length(name, limits::LONGEST_LABEL) {
                        self.error(line, here, say!("text-text-long", why = why), None);
                    } else if !out.contains(name) && out.len() >= limits::MOST_SETTINGS {
                        return self.error(line, here, full("checks", limits::MOST_SETTINGS), None);
                    } else {
                        out.insert(name.clone());
                    }
                }
                Word::Pair { .. } => self.error(line, here, say!("text-allow-name"), None),
            }
        }
    }

    pub(super) fn begin_sheet(&mut self, line: Line<'t>, at: Range<usize>, rest: &[Token]) {
        let words = || SheetKind::ALL.iter().map(|kind| kind.word());
        let [
            Token {
                word: Word::Bare(word),
                start,
                end,
            },
        ] = rest
        else {
            let all: Vec<&str> = words().collect();
            return self.error(line, at, say!("text-sheet", words = all.join(", ")), None);
        };
        match SheetKind::from_word(word) {
            Some(kind) => {
                self.sheet = kind;
                self.job.sheets.entry(kind).or_default();
            }
            None => {
                let all: Vec<&str> = words().collect();
                let help = closest(word, words()).map_or_else(
                    || say!("text-sheets", words = all.join(", ")),
                    |meant| say!("text-meant", meant = meant),
                );
                self.error(line, *start..*end, say!("text-no-sheet", word = word), help);
            }
        }
    }

    /// Steps of checklists that are done.
    pub(super) fn done(&mut self, line: Line<'t>, rest: &[Token]) {
        for token in rest {
            let here = token.start..token.end;
            let (Word::Bare(step) | Word::Quoted(step)) = &token.word else {
                self.error(line, here, say!("text-step-word"), say!("text-step-word-help"));
                continue;
            };
            if let Err(why) = limits::check_length(step, limits::LONGEST_LABEL) {
                self.error(line, here, say!("text-step-long", why = why), None);
                continue;
            }
            let done = &mut self.job.thread.done;
            if !done.contains(step) && done.len() >= limits::MOST_DONE {
                return self.error(line, here, full("steps", limits::MOST_DONE), None);
            }
            done.insert(step.clone());
        }
    }
}
