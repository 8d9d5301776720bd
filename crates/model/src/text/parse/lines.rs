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
                ..
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
        match number.parse::<f64>().ok().filter(|n| n.is_finite()) {
            Some(value) if self.job.settings.limits.len() < limits::MOST_SETTINGS => {
                if self.job.settings.limits.insert(key.clone(), value).is_some() {
                    self.error(line, at, say!("text-limit-twice", key = key), None);
                }
            }
            Some(_) => self.error(line, at, full("limits", limits::MOST_SETTINGS), None),
            None => {
                let what = say!("text-limit-number", text = number);
                self.error(line, *start..*end, what, say!("text-limit-number-help"));
            }
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
                    if self.job.settings.allowed.len() >= limits::MOST_SETTINGS {
                        return self.error(line, here, full("checks", limits::MOST_SETTINGS), None);
                    }
                    self.job.settings.allowed.insert(name.clone());
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
            } else if self.job.thread.done.len() >= limits::MOST_DONE {
                return self.error(line, here, full("steps", limits::MOST_DONE), None);
            } else {
                self.job.thread.done.insert(step.clone());
            }
        }
    }
}
