//! The exercise: what a learner is to mark on the bad version, and how well it was marked.

use crate::lesson::{ByHand, Lesson, Version};
use checks::{Analysis, Grade};
use model::{PartId, RunId, Sheet};

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
    pub group: &'static str,
}

impl Reason {
    /// The name as words: `Fuse too far`.
    #[must_use]
    pub fn title(&self) -> String {
        title(&self.name)
    }
}

/// The name of a check as words: `fuse-too-far` is `Fuse too far`.
#[must_use]
pub fn title(name: &str) -> String {
    let mut out = name.replace('-', " ");
    if let Some(first) = out.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    out
}

/// A fault that is to be found.
#[derive(Clone, Debug, PartialEq)]
pub struct Fault {
    /// The reason that is right: name of a check or of a fault told by hand.
    pub reason: String,
    /// Where: any of these may be marked; the foremost first.
    pub things: Vec<Thing>,
    /// What is wrong, in a sentence.
    pub what: String,
    /// What to do about it; empty where a fault is told by hand.
    pub remedy: String,
    /// False for what may be marked but need not: it counts neither for nor against.
    pub wanted: bool,
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

/// A mark that meets no fault.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Accused {
    /// The mark.
    pub mark: Mark,
    /// The thing does have a fault, but another one.
    pub right_place: bool,
}

impl Outcome {
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
            group: group.title(),
        }));
    }
    for fault in &lesson.faults {
        if !all.iter().any(|known| known.name == fault.name) {
            all.push(Reason {
                name: fault.name.clone(),
                group: "In this lesson",
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

/// The faults of the bad version, from its analysis: what is of grade Stop or Fix, what the lesson is about, and what it
/// tells by hand. Where the lesson tells a check's own fault by hand, its things may be marked for it too. Other findings, and undecided ones, come last and are not wanted: marking them does no harm.
#[must_use]
pub fn faults(lesson: &Lesson, bad: &Analysis) -> Vec<Fault> {
    let sheet = lesson.sheet(Version::Bad);
    let things = |fault: &ByHand| fault.things.iter().filter_map(|tag| thing(&sheet, tag)).collect();
    let is_found = |name: &str| bad.findings.iter().any(|finding| finding.check == name);
    let by_hand = lesson.faults.iter().filter(|fault| !is_found(&fault.name));
    let by_hand = by_hand.map(|fault| Fault {
        reason: fault.name.clone(),
        things: things(fault),
        what: fault.says.clone(),
        remedy: String::new(),
        wanted: true,
    });
    let found = bad.findings.iter().map(|finding| {
        let runs = finding.runs.iter().copied().map(Thing::Run);
        let about = lesson.about.iter().any(|name| name == finding.check);
        let mut marked: Vec<Thing> = finding
            .parts
            .iter()
            .copied()
            .map(Thing::Part)
            .chain(runs)
            .collect();
        for fault in lesson.faults.iter().filter(|fault| fault.name == finding.check) {
            let more: Vec<Thing> = things(fault);
            marked.extend(more);
        }
        Fault {
            reason: finding.check.to_owned(),
            things: marked,
            what: words::Words::english().say(&finding.what),
            remedy: words::Words::english().say(&finding.remedy),
            wanted: !finding.undecided && (about || finding.grade != Grade::Tidy),
        }
    });
    let (mut wanted, others): (Vec<Fault>, Vec<Fault>) = found.partition(|fault| fault.wanted);
    wanted.extend(by_hand);
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
