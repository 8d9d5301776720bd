//! An instructor's own lesson: which of its faults are asked for, his words on them, and what it still lacks before it can be
//! given to a class.

use crate::exercise::{Fault, Thing, faults, tag};
use crate::lesson::{ByHand, Lesson, Unasked, Version};
use checks::Analysis;

/// Longest name of a fault, in bytes.
const LONGEST_NAME: usize = 60;

/// Something that a lesson lacks before it can be given.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Lack {
    /// A title.
    Title,
    /// A story.
    Story,
    /// Something drawn in the bad version.
    Drawing,
    /// A fault to be found in the bad version.
    Fault,
    /// A sentence on a fault that no check finds, of this name.
    FaultWords(String),
    /// A thing that is in the drawing, for the fault of this name.
    FaultThings(String),
    /// The words of a question, at this place from 1.
    Question(usize),
    /// A right answer and a wrong one to a question, at this place from 1.
    Answers(usize),
    /// Things and a sentence for what to look at, at this place from 1.
    Look(usize),
    /// Things that are in the drawing, for the break at this place from 1.
    Break(usize),
}

/// The name of a fault from an instructor's own words, in the manner of the checks': `Loose bolt!` is `loose-bolt`. Empty where
/// the words have no letter and no digit.
#[must_use]
pub fn fault_name(words: &str) -> String {
    let mut name = String::new();
    for c in words.chars().flat_map(char::to_lowercase) {
        if c.is_alphanumeric() {
            if name.len() + c.len_utf8() > LONGEST_NAME {
                break;
            }
            name.push(c);
        } else if !name.is_empty() && !name.ends_with('-') && name.len() < LONGEST_NAME {
            name.push('-');
        }
    }
    name.trim_end_matches('-').to_owned()
}

impl Lesson {
    /// Asks for a fault of the bad version, or no more. What the lesson tells by hand alone is taken out when it is no more
    /// asked for.
    pub fn ask_for(&mut self, fault: &Fault, asked: bool) {
        let (tags, at) = self.place(fault);
        if !fault.is_by_check() {
            if !asked && let Some(at) = at {
                self.faults.remove(at);
            }
            return;
        }
        let Some(first) = tags.first() else { return };
        self.unasked
            .retain(|it| it.check != fault.reason || !it.things.is_empty() && !it.things.contains(first));
        if asked {
            // Named by hand it is asked for, whatever its grade.
            if at.is_none() && !self.is_wanted(fault) {
                self.faults.push(ByHand {
                    name: fault.reason.clone(),
                    things: vec![first.clone()],
                    says: String::new(),
                });
            }
        } else {
            if let Some(at) = at
                && self.faults.get(at).is_some_and(|told| told.says.is_empty())
            {
                self.faults.remove(at);
            }
            if self.is_wanted(fault) {
                self.unasked.push(Unasked {
                    check: fault.reason.clone(),
                    things: vec![first.clone()],
                });
            }
        }
    }

    /// Puts the instructor's own words on a fault; empty words leave what the check says.
    pub fn explain(&mut self, fault: &Fault, says: &str) {
        let (tags, at) = self.place(fault);
        match at.and_then(|at| self.faults.get_mut(at)) {
            Some(told) => told.says = says.to_owned(),
            None if !says.is_empty() => self.faults.push(ByHand {
                name: fault.reason.clone(),
                things: tags.into_iter().take(1).collect(),
                says: says.to_owned(),
            }),
            None => {}
        }
    }

    /// Adds a fault of the bad version told by hand: `reason` is the name of a check or a name of its own
    /// ([`fault_name`]). Things that are not drawn are left out; without a thing or a name nothing is added.
    pub fn add_fault(&mut self, reason: &str, things: &[Thing], says: &str) -> bool {
        let sheet = self.sheet(Version::Bad);
        let things: Vec<String> = things
            .iter()
            .map(|thing| tag(&sheet, *thing).to_owned())
            .filter(|tag| !tag.is_empty())
            .collect();
        if reason.is_empty() || things.is_empty() {
            return false;
        }
        self.faults.push(ByHand {
            name: reason.to_owned(),
            things,
            says: says.to_owned(),
        });
        true
    }

    /// Adds a thing to a fault: whichever of its things is marked, the fault is found.
    pub fn add_to_fault(&mut self, fault: &Fault, thing: Thing) {
        let (mut tags, at) = self.place(fault);
        let new = tag(&self.sheet(Version::Bad), thing).to_owned();
        if new.is_empty() || tags.contains(&new) {
            return;
        }
        if let Some(told) = at.and_then(|at| self.faults.get_mut(at)) {
            told.things.push(new);
        } else {
            // What a check finds is tied to the finding by the first of its things.
            tags.truncate(1);
            tags.push(new);
            self.faults.push(ByHand {
                name: fault.reason.clone(),
                things: tags,
                says: String::new(),
            });
        }
    }

    /// The tags of what can be taken from a fault again: what was added to a finding; of a fault told by hand all but the last.
    #[must_use]
    pub fn added_to_fault(&self, fault: &Fault) -> &[String] {
        let told = self.place(fault).1.and_then(|at| self.faults.get(at));
        let things = told.map(|told| told.things.as_slice()).unwrap_or_default();
        match things {
            [_, more @ ..] if fault.is_by_check() => more,
            [_, _, ..] => things,
            _ => &[],
        }
    }

    /// Takes a thing from a fault again, by its tag: one of [`Lesson::added_to_fault`].
    pub fn take_from_fault(&mut self, fault: &Fault, tag: &str) {
        if self.added_to_fault(fault).iter().any(|it| it == tag)
            && let Some(told) = self.place(fault).1.and_then(|at| self.faults.get_mut(at))
        {
            told.things.retain(|it| it != tag);
        }
    }

    /// The tags of a fault's things, and where among the lesson's own words it is told.
    fn place(&self, fault: &Fault) -> (Vec<String>, Option<usize>) {
        let sheet = self.sheet(Version::Bad);
        let tags: Vec<String> = fault
            .things
            .iter()
            .map(|it| tag(&sheet, *it).to_owned())
            .collect();
        let at = self.faults.iter().position(|told| {
            told.name == fault.reason
                && if fault.is_by_check() {
                    told.things.iter().any(|it| tags.contains(it))
                } else {
                    // Told apart by their things: two of one name are two faults.
                    told.things.first() == tags.first() && told.says == fault.says
                }
        });
        (tags, at)
    }

    /// Whether a fault that a check finds is asked for as the lesson stands.
    fn is_wanted(&self, fault: &Fault) -> bool {
        faults(self, &self.analyse(Version::Bad)).iter().any(|it| {
            it.wanted
                && it.is_by_check()
                && it.reason == fault.reason
                && it.things.first() == fault.things.first()
        })
    }

    /// What the lesson lacks before it can be given, in the order in which its form asks for it. `bad` is the analysis of its
    /// bad version.
    #[must_use]
    pub fn lacks(&self, bad: &Analysis) -> Vec<Lack> {
        let sheets = Version::BOTH.map(|version| self.sheet(version));
        let is_drawn = |name: &String| {
            let tag = name.split_once('.').map_or(name.as_str(), |(tag, _)| tag);
            sheets
                .iter()
                .any(|sheet| sheet.part_by_tag(tag).is_some() || sheet.run_by_tag(tag).is_some())
        };
        let are_drawn = |names: &[String]| !names.is_empty() && names.iter().all(is_drawn);
        let is_blank = |text: &str| text.trim().is_empty();
        let mut lacks = Vec::new();
        if is_blank(&self.title) {
            lacks.push(Lack::Title);
        }
        if self.story.iter().all(|it| is_blank(it)) {
            lacks.push(Lack::Story);
        }
        if sheets.first().is_none_or(|bad| bad.parts.is_empty()) {
            lacks.push(Lack::Drawing);
        } else if !faults(self, bad).iter().any(|fault| fault.wanted) {
            lacks.push(Lack::Fault);
        }
        for told in &self.faults {
            if !are_drawn(&told.things) {
                lacks.push(Lack::FaultThings(told.name.clone()));
            }
            if is_blank(&told.says) && checks::check_named(&told.name).is_none() {
                lacks.push(Lack::FaultWords(told.name.clone()));
            }
        }
        for (look, at) in self.looks.iter().zip(1..) {
            if is_blank(&look.says) || !are_drawn(&look.things) {
                lacks.push(Lack::Look(at));
            }
        }
        for (question, at) in self.questions.iter().zip(1..) {
            if is_blank(&question.asks) {
                lacks.push(Lack::Question(at));
            }
            let any = |right| {
                let answers = question.answers.iter();
                answers
                    .filter(|it| it.right == right)
                    .any(|it| !is_blank(&it.says))
            };
            if !any(true) || !any(false) {
                lacks.push(Lack::Answers(at));
            }
        }
        for (broken, at) in self.breaks.iter().zip(1..) {
            if !are_drawn(&broken.things) {
                lacks.push(Lack::Break(at));
            }
        }
        lacks
    }
}
