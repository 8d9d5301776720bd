//! The exercise: what a learner is to mark on the bad version, and how well it was marked.

use crate::lesson::{ByHand, Lesson, Unasked, Version};
use checks::{Analysis, Grade};
use model::{PartId, RunId, Sheet};
use words::{Saying, Words, say};

/// A part or run.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Thing {
    /// A part.
    Part(PartId),
    /// A run.
    Run(RunId),
}

/// A reason that a learner can choose for a mark.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reason {
    /// Its name: that of a check, or of a fault that the lesson tells by hand.
    pub name: String,
    /// The heading under which to offer it: the group of the check.
    pub group: Saying,
}

impl Reason {
    /// The name in the reader's words: `Fuse too far`.
    #[must_use]
    pub fn title(&self, words: &Words) -> String {
        title_in(&self.name, words)
    }
}

/// The name of a check, or of a fault that a lesson tells by hand, in the reader's words.
#[must_use]
pub fn title_in(name: &str, words: &Words) -> String {
    match checks::check_named(name) {
        Some(check) => words.say(&check.title()),
        None => title(name),
    }
}

/// The name of a check as words: `fuse-too-far` is `Fuse too far`.
#[must_use]
pub fn title(name: &str) -> String {
    let spaced = name.replace('-', " ");
    let mut letters = spaced.chars();
    let first = letters.next().into_iter().flat_map(char::to_uppercase);
    first.chain(letters).collect()
}

/// A fault that is to be found.
#[derive(Clone, Debug, PartialEq)]
pub struct Fault {
    /// The reason that is right: name of a check or of a fault told by hand.
    pub reason: String,
    /// Where: any of these may be marked; the foremost first.
    pub things: Vec<Thing>,
    /// What the check says and what to do about it; nothing where the lesson tells the fault by hand.
    pub finding: Option<(Saying, Saying)>,
    /// What the lesson says of it in its own words; may be empty where a check finds it.
    pub says: String,
    /// False for what may be marked but need not: it counts neither for nor against.
    pub wanted: bool,
}

impl Fault {
    /// Whether a check finds it; else the lesson tells it by hand.
    #[must_use]
    pub fn is_by_check(&self) -> bool {
        self.finding.is_some()
    }
    /// What is wrong, in a sentence: the check's, else the lesson's own.
    #[must_use]
    pub fn what(&self, words: &Words) -> String {
        match &self.finding {
            Some((what, _)) => words.say(what),
            None => self.says.clone(),
        }
    }
    /// What to do about it; empty where the lesson tells the fault by hand.
    #[must_use]
    pub fn remedy(&self, words: &Words) -> String {
        self.finding
            .as_ref()
            .map_or_else(String::new, |(_, remedy)| words.say(remedy))
    }
    /// What the lesson adds to a fault that a check finds; empty where it adds nothing.
    #[must_use]
    pub fn added(&self) -> &str {
        if self.is_by_check() { &self.says } else { "" }
    }
}

/// What a learner marks: a thing, and why.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Mark {
    /// The thing.
    pub thing: Thing,
    /// The reason: one of [`reasons`].
    pub reason: String,
}

/// How an exercise came out.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Outcome {
    /// Faults that were marked for the right reason.
    pub found: Vec<Fault>,
    /// Faults that were not.
    pub missed: Vec<Fault>,
    /// Marks that meet no fault.
    pub accused: Vec<Accused>,
}

/// What became of a mark.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// It meets a fault that was to be found.
    Right,
    /// It meets something that is so but was not asked for: it counts neither for nor against.
    Unasked,
    /// The thing does have a fault, but another one.
    OtherReason,
    /// The thing has none.
    Wrong,
}

/// A mark that meets no fault.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Accused {
    /// The mark.
    pub mark: Mark,
    /// The thing does have a fault, but another one.
    pub right_place: bool,
}

impl Outcome {
    /// What became of one of the marks that the outcome is of.
    #[must_use]
    pub fn verdict(&self, mark: &Mark) -> Verdict {
        let accused = self.accused.iter().find(|it| it.mark == *mark);
        let found = |fault: &Fault| fault.reason == mark.reason && fault.things.contains(&mark.thing);
        match accused {
            Some(it) if it.right_place => Verdict::OtherReason,
            Some(_) => Verdict::Wrong,
            None if self.found.iter().any(found) => Verdict::Right,
            None => Verdict::Unasked,
        }
    }
    /// Points: one for each fault found, less one for each mark on a thing that has none, never below nought; and how
    /// many there are to be had.
    #[must_use]
    pub fn points(&self) -> (usize, usize) {
        let wrong = self.accused.iter().filter(|it| !it.right_place).count();
        (
            self.found.len().saturating_sub(wrong),
            self.found.len() + self.missed.len(),
        )
    }
}

/// The reasons to choose from: every check, group by group, then what the lesson tells by hand.
#[must_use]
pub fn reasons(lesson: &Lesson) -> Vec<Reason> {
    let mut all = Vec::new();
    for group in checks::CheckGroup::ALL {
        let of_group = checks::CHECKS.iter().filter(|check| check.group == *group);
        all.extend(of_group.map(|check| Reason {
            name: check.name.to_owned(),
            group: group.said(),
        }));
    }
    for fault in &lesson.faults {
        if !all.iter().any(|known| known.name == fault.name) {
            all.push(Reason {
                name: fault.name.clone(),
                group: say!("exercise-in-this-lesson"),
            });
        }
    }
    all
}

/// The part or run of a tag.
#[must_use]
pub fn thing(sheet: &Sheet, tag: &str) -> Option<Thing> {
    let run = sheet.run_by_tag(tag).map(|(id, _)| Thing::Run(id));
    run.or_else(|| sheet.part_by_tag(tag).map(|(id, _)| Thing::Part(id)))
}

/// The tag of a part or run; empty where the sheet has no such thing.
#[must_use]
pub fn tag(sheet: &Sheet, thing: Thing) -> &str {
    let found = match thing {
        Thing::Part(id) => sheet.parts.get(&id).map(|part| &part.tag),
        Thing::Run(id) => sheet.runs.get(&id).map(|run| &run.tag),
    };
    found.map_or("", |tag| tag.as_str())
}

/// The faults of the bad version, from its analysis: what is of grade Stop or Fix, what the lesson is about, and what it
/// tells by hand, without what it does not ask for. Where the lesson tells by hand, under the name of a check, of one of the
/// things of that check's finding, its words and things belong to the finding. Other findings, and undecided ones, come last
/// and are not wanted: marking them does no harm.
#[must_use]
pub fn faults(lesson: &Lesson, bad: &Analysis) -> Vec<Fault> {
    let sheet = lesson.sheet(Version::Bad);
    let things_of =
        |tags: &[String]| -> Vec<Thing> { tags.iter().filter_map(|tag| thing(&sheet, tag)).collect() };
    let by_hand: Vec<(&ByHand, Vec<Thing>)> = lesson
        .faults
        .iter()
        .map(|fault| (fault, things_of(&fault.things)))
        .collect();
    let unasked: Vec<(&Unasked, Vec<Thing>)> = lesson
        .unasked
        .iter()
        .map(|unasked| (unasked, things_of(&unasked.things)))
        .collect();
    let mut placed = vec![false; by_hand.len()];
    let mut wanted = Vec::new();
    let mut others = Vec::new();
    for finding in &bad.findings {
        let runs = finding.runs.iter().copied().map(Thing::Run);
        let own: Vec<Thing> = finding
            .parts
            .iter()
            .copied()
            .map(Thing::Part)
            .chain(runs)
            .collect();
        let mut fault = Fault {
            reason: finding.check.to_owned(),
            things: own.clone(),
            finding: Some((finding.what.clone(), finding.remedy.clone())),
            says: String::new(),
            wanted: false,
        };
        let mut asked = false;
        for ((told, things), placed) in by_hand.iter().zip(&mut placed) {
            if told.name != finding.check || !things.iter().any(|it| own.contains(it)) {
                continue;
            }
            (*placed, asked) = (true, true);
            for more in things {
                if !fault.things.contains(more) {
                    fault.things.push(*more);
                }
            }
            if !fault.says.is_empty() && !told.says.is_empty() {
                fault.says.push(' ');
            }
            fault.says.push_str(&told.says);
        }
        let left_out = unasked.iter().any(|(unasked, things)| {
            unasked.check == finding.check
                && (unasked.things.is_empty() || things.iter().any(|it| own.contains(it)))
        });
        let about = lesson.about.iter().any(|name| name == finding.check);
        fault.wanted = !left_out && (asked || !finding.undecided && (about || finding.grade != Grade::Tidy));
        if fault.wanted { &mut wanted } else { &mut others }.push(fault);
    }
    for ((told, things), placed) in by_hand.into_iter().zip(placed) {
        if !placed && !things.is_empty() {
            wanted.push(Fault {
                reason: told.name.clone(),
                things,
                finding: None,
                says: told.says.clone(),
                wanted: true,
            });
        }
    }
    wanted.extend(others);
    wanted
}

/// Holds a learner's marks against the faults of the bad version.
#[must_use]
pub fn score(lesson: &Lesson, marks: &[Mark]) -> Outcome {
    let faults = faults(lesson, &lesson.analyse(Version::Bad));
    let meets =
        |mark: &Mark, fault: &Fault| mark.reason == fault.reason && fault.things.contains(&mark.thing);
    let mut outcome = Outcome::default();
    for fault in faults.iter().filter(|fault| fault.wanted) {
        let found = marks.iter().any(|mark| meets(mark, fault));
        if found {
            &mut outcome.found
        } else {
            &mut outcome.missed
        }
        .push(fault.clone());
    }
    for mark in marks
        .iter()
        .filter(|mark| !faults.iter().any(|fault| meets(mark, fault)))
    {
        let right_place = faults
            .iter()
            .any(|fault| fault.wanted && fault.things.contains(&mark.thing));
        outcome.accused.push(Accused {
            mark: mark.clone(),
            right_place,
        });
    }
    outcome
}
