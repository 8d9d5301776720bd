//! All mends that need nobody's choice, made one after the other until none is left that helps.
//!
//! A step is taken when it brings no finding of grade Stop or Fix that was not there, and makes the counts of findings by
//! grade less: fewer of Stop, or as many and fewer of Fix, or as many of both and fewer of Tidy. So it ends, and what comes of it
//! is never worse than what was there. Mends of one grade that touch nothing of one another are made together and asked about
//! once; where that is refused the half of them is tried, down to each alone.

use super::matching::{Matched, Thing, matched};
use checks::{Finding, Grade, Mend, Summary, analyse, mend_for, summary_of};
use model::{Change, Edit, Job, Sheet, SheetKind};
use ordered::{OrderedMap, OrderedSet};
use words::{Saying, say};

/// How many times over what a step brings is mended too before it is given up.
const FOLLOWED: usize = 3;
/// Of how many steps at most it is asked whether it is done without them.
const ASIDE: usize = 4;

/// One mend that was made.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// What was done.
    pub said: Saying,
    /// The finding for which it was done, as it stood then.
    pub finding: Finding,
    /// What it changed.
    touches: Vec<Thing>,
}

/// Why a finding is left.
#[derive(Clone, Debug, PartialEq)]
pub enum Why {
    /// Somebody has to choose: what of, the rest of a sentence.
    Choice(Saying),
    /// Every mend that needs no choice would bring these, or leave as much as it clears.
    Brings(Vec<Finding>),
    /// A fact is missing.
    Unknown,
    /// No edit of the sheet clears it.
    NoEdit,
}

impl Left {
    /// Why, in a sentence.
    #[must_use]
    pub fn said(&self) -> Saying {
        match &self.why {
            Why::Choice(choice) => say!("mending-choice", choice = choice),
            Why::Brings(none) if none.is_empty() => say!("left-same"),
            Why::Brings(brings) => say!("left-brings", findings = super::named(brings)),
            Why::Unknown => say!("left-unknown", find = &self.finding.remedy),
            Why::NoEdit => say!("left-no-edit"),
        }
    }
}

/// A finding that is left.
#[derive(Clone, Debug, PartialEq)]
pub struct Left {
    /// The finding.
    pub finding: Finding,
    /// Why.
    pub why: Why,
}

/// What came of mending everything.
#[derive(Clone, Debug, PartialEq)]
pub struct Mended {
    /// All of it as one edit; without changes when there was nothing to do.
    pub edit: Edit,
    /// The mends that it is made of, in the order in which they were made.
    pub steps: Vec<Step>,
    /// Counts of before.
    pub before: Summary,
    /// Counts of after.
    pub after: Summary,
    /// What is left, gravest first.
    pub left: Vec<Left>,
}

/// A sheet on the way.
#[derive(Clone)]
struct State {
    job: Job,
    findings: Vec<Finding>,
    steps: Vec<Step>,
}

/// A mend that was refused, by its check and name, and what it and its finding have to do with.
type Passed = (&'static str, Saying, OrderedSet<Thing>);

/// A mend by the places of its finding and of itself.
type Place = (usize, usize);

/// A way on which mends are made from a sheet until none is left that helps.
struct Walk {
    kind: SheetKind,
    state: State,
    /// A mend that is left aside, by its check and name.
    aside: Option<(&'static str, Saying)>,
    /// Mends of this state that were tried alone and refused, with what they would bring.
    refused: OrderedMap<Place, Vec<Finding>>,
    /// Mends that were refused and have had nothing of theirs changed since: they wait until nothing else helps, as trying each of
    /// them anew after every step would take a large sheet minutes.
    passed: Vec<Passed>,
    /// Whether a step was made since one of those was refused.
    moved_on: bool,
    /// How many more steps it may make at most. Each makes the counts less, so that this is never reached; it is here for
    /// whoever changes that.
    most: usize,
}

/// Mending everything, step by step: on a large sheet each takes its time, and whoever waits wants to be told.
pub struct Mending {
    start: State,
    best: Walk,
    best_is_done: bool,
    other: Option<Walk>,
    /// Steps of which it was asked whether it is done without them.
    tried: Vec<Saying>,
}

/// Makes every mend of a sheet that needs no choice and helps, until none is left. The job is not changed: what comes of it is
/// an edit.
#[must_use]
pub fn mend_all(job: &Job, kind: SheetKind) -> Mended {
    let mut it = Mending::new(job, kind);
    while it.step() {}
    it.done()
}

impl Mending {
    /// Begins to mend a sheet of a job.
    #[must_use]
    pub fn new(job: &Job, kind: SheetKind) -> Self {
        let start = State {
            job: job.clone(),
            findings: analyse(&sheet_of(job, kind), &job.settings).findings,
            steps: Vec::new(),
        };
        Self {
            best: Walk::from(&start, kind, None),
            start,
            best_is_done: false,
            other: None,
            tried: Vec::new(),
        }
    }

    /// Goes one step further; false when there is none.
    pub fn step(&mut self) -> bool {
        if let Some(other) = &mut self.other {
            if other.step() {
                return true;
            }
            // Whatever is left once it is done without the one mend may need it after all.
            if other.aside.take().is_some() {
                other.refused = OrderedMap::new();
                other.passed.clear();
                return true;
            }
            let better = |of: &Walk| (weight(&of.state.findings), of.state.steps.len());
            if better(other) < better(&self.best) {
                std::mem::swap(other, &mut self.best);
            }
            self.other = None;
            return true;
        }
        if !self.best_is_done {
            self.best_is_done = !self.best.step();
            return true;
        }
        // What a later step changed once more may have been for nothing: without it there are fewer steps then.
        let steps = &self.best.state.steps;
        let idle = steps.iter().enumerate().find(|(at, step)| {
            let later = steps.get(at + 1..).unwrap_or_default();
            let again = |other: &Step| other.touches.iter().any(|it| step.touches.contains(it));
            later.iter().any(again) && !self.tried.contains(&step.said)
        });
        let Some((_, step)) = idle.filter(|_| self.tried.len() < ASIDE) else {
            return false;
        };
        self.tried.push(step.said.clone());
        let aside = Some((step.finding.check, step.said.clone()));
        self.other = Some(Walk::from(&self.start, self.best.kind, aside));
        true
    }

    /// How many mends are made so far.
    #[must_use]
    pub fn made(&self) -> usize {
        self.best.state.steps.len()
    }

    /// What came of it.
    #[must_use]
    pub fn done(self) -> Mended {
        let before = summary_of(&self.start.findings);
        self.best.done(&self.start.job, before)
    }
}

fn sheet_of(job: &Job, kind: SheetKind) -> Sheet {
    job.sheet(kind).cloned().unwrap_or_default()
}

/// What a mend and its finding have to do with.
fn things_of(finding: &Finding, mend: &Mend) -> OrderedSet<Thing> {
    let mut things: OrderedSet<Thing> = OrderedSet::new();
    things.extend(mend.edit.changes.iter().filter_map(Thing::of));
    things.extend(finding.parts.iter().map(|id| Thing::Part(*id)));
    things.extend(finding.runs.iter().map(|id| Thing::Run(*id)));
    things
}

/// What decides: fewer of the graver first.
fn weight(findings: &[Finding]) -> (usize, usize, usize) {
    let counts = summary_of(findings);
    (counts.stop, counts.fix, counts.tidy)
}

impl Walk {
    fn from(start: &State, kind: SheetKind, aside: Option<(&'static str, Saying)>) -> Self {
        Self {
            kind,
            state: start.clone(),
            aside,
            refused: OrderedMap::new(),
            passed: Vec::new(),
            moved_on: false,
            most: 4 * start.findings.len() + 16,
        }
    }

    /// Makes the next mends; false when none is left that helps.
    fn step(&mut self) -> bool {
        let Some(next) = self.round().filter(|_| self.most > 0) else {
            let again = std::mem::take(&mut self.moved_on) && self.most > 0;
            if again {
                self.passed.clear();
                self.refused = OrderedMap::new();
            }
            return again;
        };
        let steps = next.steps.get(self.state.steps.len()..).unwrap_or_default();
        let touched = |it: &Thing| steps.iter().any(|step| step.touches.contains(it));
        self.passed.retain(|(_, _, things)| !things.iter().any(touched));
        self.moved_on = !self.passed.is_empty();
        self.state = next;
        self.most -= 1;
        self.refused = OrderedMap::new();
        true
    }

    fn mend(&self, (finding, mend): Place) -> Option<(&Finding, &Mend)> {
        let finding = self.state.findings.get(finding)?;
        Some((finding, finding.mends.get(mend)?))
    }

    /// The next state, with the gravest first; nothing when nothing helps any more.
    fn round(&mut self) -> Option<State> {
        for grade in [Grade::Stop, Grade::Fix, Grade::Tidy] {
            let batch = self.batch(grade);
            if let Some(next) = self.together(&batch) {
                return Some(next);
            }
            for place in self.candidates(grade) {
                if let Some(next) = self.alone(place) {
                    return Some(next);
                }
            }
        }
        None
    }

    /// Mends of this grade that need no choice.
    fn candidates(&self, grade: Grade) -> Vec<Place> {
        let mut all = Vec::new();
        for (at, finding) in self.state.findings.iter().enumerate() {
            let mends = finding.mends.iter().enumerate();
            let is_aside = |mend: &Mend| {
                let aside = self.aside.as_ref();
                aside.is_some_and(|(check, said)| *check == finding.check && *said == mend.edit.name.said())
            };
            let waits = |mend: &Mend| {
                let mut passed = self.passed.iter();
                passed.any(|(check, said, _)| *check == finding.check && *said == mend.edit.name.said())
            };
            let free = mends.filter(|(_, mend)| {
                finding.grade == grade && mend.choice.is_none() && !is_aside(mend) && !waits(mend)
            });
            all.extend(free.map(|(number, _)| (at, number)));
        }
        all
    }

    /// The first mend of each finding of this grade, as far as they touch nothing of one another.
    fn batch(&self, grade: Grade) -> Vec<Place> {
        let (mut batch, mut told) = (Vec::<Place>::new(), Vec::<usize>::new());
        let mut touched: OrderedSet<Thing> = OrderedSet::new();
        let sheet = sheet_of(&self.state.job, self.kind);
        for place in self.candidates(grade) {
            let Some((finding, mend)) = self.mend(place).filter(|_| !told.contains(&place.0)) else {
                continue;
            };
            // What is added has ids and tags that are free on the sheet as it is: one at a time.
            let mut apart = true;
            let own = things_of(finding, mend);
            for change in &mend.edit.changes {
                apart &= match change {
                    Change::Part { id, .. } => sheet.parts.contains_key(id),
                    Change::Run { id, .. } => sheet.runs.contains_key(id),
                    _ => false,
                };
            }
            if !(apart || batch.is_empty()) || own.iter().any(|thing| touched.contains(thing)) {
                continue;
            }
            touched.extend(own);
            told.push(place.0);
            batch.push(place);
        }
        batch
    }

    /// These mends at once, or as many of them as help.
    fn together(&mut self, batch: &[Place]) -> Option<State> {
        let (first, rest) = match batch {
            [] => return None,
            [one] => return self.alone(*one),
            batch => batch.split_at(batch.len() / 2),
        };
        let next = self.made(&self.state, batch.iter().filter_map(|place| self.mend(*place)));
        let found = self.against(&next);
        if self.helps(&next, &found) {
            // Each for its own finding: what did nothing for it is left out.
            let own: Vec<Place> = batch
                .iter()
                .copied()
                .filter(|place| found.cleared.contains(&place.0))
                .collect();
            return if own.len() == batch.len() {
                Some(next)
            } else {
                self.together(&own)
            };
        }
        self.together(first).or_else(|| self.together(rest))
    }

    /// One mend, with the mends of what it brings where that is what it takes.
    fn alone(&mut self, place: Place) -> Option<State> {
        if self.refused.contains_key(&place) {
            return None;
        }
        let mut next = self.made(&self.state, self.mend(place));
        let mut brings = Vec::new();
        for turn in 0..=FOLLOWED {
            let found = self.against(&next);
            if self.helps(&next, &found) {
                return Some(next);
            }
            let grave: Vec<&Finding> = found
                .brought
                .iter()
                .filter_map(|at| next.findings.get(*at))
                .filter(|it| it.grade != Grade::Tidy)
                .collect();
            if turn == 0 {
                brings = grave.iter().map(|it| (*it).clone()).collect();
            }
            let by_itself = |finding: &&Finding| finding.mends.iter().any(|mend| mend.choice.is_none());
            if grave.is_empty() || !grave.iter().all(by_itself) {
                break;
            }
            // The first of them; the next turn sees what that did to the others.
            let follow = grave.first().and_then(|finding| {
                let mend = finding.mends.iter().find(|mend| mend.choice.is_none())?;
                Some((*finding, mend))
            });
            next = self.made(&next, follow);
        }
        self.refused.insert(place, brings);
        let passed = self
            .mend(place)
            .map(|(finding, mend)| (finding.check, mend.edit.name.said(), things_of(finding, mend)));
        self.passed.extend(passed);
        None
    }

    /// A state with these mends made.
    fn made<'a>(&self, from: &State, mends: impl IntoIterator<Item = (&'a Finding, &'a Mend)>) -> State {
        let mut next = State {
            job: from.job.clone(),
            findings: Vec::new(),
            steps: from.steps.clone(),
        };
        for (finding, mend) in mends {
            next.job.apply(mend_for(&from.job, self.kind, &mend.edit));
            next.steps.push(Step {
                said: mend.edit.name.said(),
                finding: finding.clone(),
                touches: mend.edit.changes.iter().filter_map(Thing::of).collect(),
            });
        }
        next.findings = analyse(&sheet_of(&next.job, self.kind), &next.job.settings).findings;
        next
    }

    fn against(&self, next: &State) -> Matched {
        let (was, is) = (
            sheet_of(&self.state.job, self.kind),
            sheet_of(&next.job, self.kind),
        );
        matched((&self.state.findings, &was), (&next.findings, &is))
    }

    /// Whether a state is better than the one at hand, and brings nothing grave.
    fn helps(&self, next: &State, found: &Matched) -> bool {
        let brought = found.brought.iter().filter_map(|at| next.findings.get(*at));
        weight(&next.findings) < weight(&self.state.findings)
            && brought.into_iter().all(|finding| finding.grade == Grade::Tidy)
    }

    fn done(self, job: &Job, before: Summary) -> Mended {
        let State {
            job: mended,
            findings,
            steps,
        } = self.state;
        let after = summary_of(&findings);
        let refused = self.refused;
        let left = findings.into_iter().enumerate().map(|(at, finding)| {
            let mut tried = refused.iter().filter(|((of, _), _)| *of == at);
            let why = if let Some((_, brings)) = tried.next() {
                Why::Brings(brings.clone())
            } else if let Some(choice) = finding.mends.iter().find_map(|mend| mend.choice.clone()) {
                Why::Choice(choice)
            } else if finding.undecided {
                Why::Unknown
            } else {
                Why::NoEdit
            };
            Left { finding, why }
        });
        Mended {
            edit: Edit::new(
                say!("mend-all-edit", count = steps.len()),
                difference(job, &mended, self.kind),
            ),
            before,
            after,
            left: left.collect(),
            steps,
        }
    }
}

/// What makes of the sheet of one job that of another.
fn difference(was: &Job, is: &Job, kind: SheetKind) -> Vec<Change> {
    let (was, is) = (sheet_of(was, kind), sheet_of(is, kind));
    let mut changes = Vec::new();
    let parts: OrderedSet<_> = was.parts.keys().chain(is.parts.keys()).copied().collect();
    for id in parts {
        let to = is.parts.get(&id);
        if was.parts.get(&id) != to {
            changes.push(Change::Part {
                sheet: kind,
                id,
                to: to.cloned().map(Box::new),
            });
        }
    }
    let runs: OrderedSet<_> = was.runs.keys().chain(is.runs.keys()).copied().collect();
    for id in runs {
        let to = is.runs.get(&id);
        if was.runs.get(&id) != to {
            changes.push(Change::Run {
                sheet: kind,
                id,
                to: to.cloned().map(Box::new),
            });
        }
    }
    if was.tunings != is.tunings {
        changes.push(Change::Tunings {
            sheet: kind,
            to: is.tunings,
        });
    }
    changes
}
