//! Ask: one box that finds any part, run, finding, check or action by typing.

use crate::actions::Action;
use crate::editor::Editor;
use crate::selection::Thing;
use model::letters::in_lower;
use model::{PartKind, TerminalRef};
use ordered::Sort as _;
use words::say;

/// What an answer leads to.
#[derive(Clone, Debug, PartialEq)]
pub enum Leads {
    /// Goes to a part or run.
    To(Thing),
    /// Opens a finding, by its place in the list.
    Finding(usize),
    /// Does an action.
    Does(Action),
    /// Takes a part of this kind from the shelf.
    Takes(&'static str),
}

/// One answer.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// The words.
    pub text: String,
    /// What stands behind them, in faint letters: a key, or where it is.
    pub aside: String,
    /// What it leads to.
    pub leads: Leads,
}

/// How well a text answers: every typed word must be in it; beginnings count more. Larger is better, `None` is no.
pub(crate) fn score(text: &str, asked: &[String]) -> Option<u32> {
    let text = in_lower(text);
    let mut total = 0;
    for word in asked {
        let at = text.find(word.as_str())?;
        let begins = at == 0
            || text
                .get(..at)
                .is_some_and(|before| before.ends_with(|c: char| !c.is_alphanumeric()));
        total += if text == *word {
            9
        } else if at == 0 {
            5
        } else if begins {
            3
        } else {
            1
        };
    }
    Some(total)
}

impl Editor {
    /// Answers to what was typed, best first, at most `most`.
    #[must_use]
    pub fn ask(&self, typed: &str, most: usize) -> Vec<Answer> {
        let asked: Vec<String> = typed.split_whitespace().map(in_lower).collect();
        let mut found: Vec<(u32, Answer)> = Vec::new();
        let mut offer = |weight: u32, haystack: &str, answer: Answer| {
            if let Some(score) = score(haystack, &asked) {
                found.push((score * 10 + weight, answer));
            }
        };
        let sheet = self.sheet();
        let words = &self.words;
        if !asked.is_empty() {
            for (id, part) in &sheet.parts {
                let thing = Thing::Part(*id);
                let text = format!("{} {}", part.tag, words.say(&part.said()));
                let kind = words.say(&part.is.said());
                let haystack = format!("{text} {kind} {}", part.note);
                offer(
                    6,
                    &haystack,
                    Answer {
                        text,
                        aside: kind,
                        leads: Leads::To(thing),
                    },
                );
            }
            for (id, run) in &sheet.runs {
                let between = words.say(&self.between(run));
                let haystack = format!("{} {} {between}", run.tag, run.label);
                let text = format!("{} {}", run.tag, run.label).trim_end().to_owned();
                offer(
                    4,
                    &haystack,
                    Answer {
                        text,
                        aside: between,
                        leads: Leads::To(Thing::Run(*id)),
                    },
                );
            }
            // Who writes a point means a terminal.
            if asked.iter().any(|word| word.contains('.')) {
                for (part, made) in self.layout.parts() {
                    let name = sheet.parts.get(&part).map(|part| words.say(&part.said()));
                    for stud in &made.studs {
                        let thing = Thing::Terminal(TerminalRef {
                            part,
                            terminal: stud.name.clone(),
                        });
                        let text = thing.written(sheet);
                        offer(
                            5,
                            &text.clone(),
                            Answer {
                                text,
                                aside: name.clone().unwrap_or_default(),
                                leads: Leads::To(thing),
                            },
                        );
                    }
                }
            }
            for (place, finding) in self.analysis().findings.iter().enumerate() {
                let text = words.say(&say!(
                    "finding-shown",
                    grade = finding.grade.said(),
                    what = &finding.what
                ));
                let haystack = format!("{text} {}", finding.check);
                offer(
                    3,
                    &haystack,
                    Answer {
                        text,
                        aside: finding.check.to_owned(),
                        leads: Leads::Finding(place),
                    },
                );
            }
        }
        for action in Action::ALL
            .iter()
            .copied()
            .filter(|action| *action != Action::Ask && self.offers(*action))
        {
            let name = words.say(&action.said());
            offer(
                5,
                &name.clone(),
                Answer {
                    text: name,
                    aside: action.key(),
                    leads: Leads::Does(action),
                },
            );
        }
        if !asked.is_empty() && !self.looks_only {
            for word in PartKind::WORDS {
                let Some(kind) = PartKind::from_word(word) else {
                    continue;
                };
                let text = words.say(&say!("ask-put-new", kind = kind.said_within()));
                offer(
                    0,
                    &text.clone(),
                    Answer {
                        text,
                        aside: words.text("ask-from-shelf"),
                        leads: Leads::Takes(word),
                    },
                );
            }
        }
        // Stable: of equal answers the earlier stays first.
        found.order_by_key(|(score, _)| std::cmp::Reverse(*score));
        found.into_iter().take(most).map(|(_, answer)| answer).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn whole_words_and_beginnings_come_first() {
        let asked = |text: &str| text.split_whitespace().map(str::to_owned).collect::<Vec<_>>();
        assert!(score("F1 Main fuse", &asked("f1")) > score("LF12 thing", &asked("f1")));
        assert!(score("F1 Main fuse", &asked("fuse main")).is_some());
        assert_eq!(score("F1 Main fuse", &asked("fuse battery")), None);
        assert_eq!(score("anything", &[]), Some(0));
    }
}
