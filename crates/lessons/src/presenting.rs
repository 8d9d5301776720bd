//! Presenting a lesson: the steps in their order, which of them is on, what of the drawings it lights, which overlay
//! lies on them and which break is thrown. What is shown follows from these few values and the lesson alone.

use crate::breaks::Break;
use crate::lesson::Lesson;
use drawing::{Lit, Overlay};
use model::{PartId, RunId, Sheet};

/// One thing at a time.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Step {
    /// A paragraph of the story.
    Story(usize),
    /// Something to look at.
    Look(usize),
    /// A break to try.
    Break(usize),
    /// A question.
    Question(usize),
    /// A paragraph of the explanation.
    Why(usize),
    /// Where it comes from, and the cautions.
    Sources,
}

impl Lesson {
    /// The steps in which it is presented. What is only begun is left out, so that a lesson can be tried while it is written.
    #[must_use]
    pub fn steps(&self) -> Vec<Step> {
        let mut steps: Vec<Step> = (0..self.story.len()).map(Step::Story).collect();
        let looks = self.looks.iter().zip(0..).filter(|(it, _)| !it.says.is_empty());
        steps.extend(looks.map(|(_, at)| Step::Look(at)));
        let breaks = self.breaks.iter().zip(0..);
        steps.extend(
            breaks
                .filter(|(it, _)| it.things.len() == it.kind.wants())
                .map(|(_, at)| Step::Break(at)),
        );
        let questions = self
            .questions
            .iter()
            .zip(0..)
            .filter(|(it, _)| !it.asks.is_empty());
        steps.extend(questions.map(|(_, at)| Step::Question(at)));
        let explained = self.explanation.len() + self.checks().count();
        steps.extend((0..explained).map(Step::Why));
        steps.push(Step::Sources);
        steps
    }
}

/// Where a presenter stands in a lesson.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Presenting {
    place: usize,
    /// Whether the second half of the step was shown: a question's answer, a break thrown.
    shown: bool,
    thrown: Option<usize>,
    /// The overlay laid on by hand, which holds until the next step.
    laid: Option<Overlay>,
}

impl Presenting {
    /// The step that is on.
    #[must_use]
    pub fn step(&self, lesson: &Lesson) -> Step {
        lesson.steps().get(self.place).copied().unwrap_or(Step::Sources)
    }
    /// Its place in the row, counted from 1, and how many there are.
    #[must_use]
    pub fn place(&self, lesson: &Lesson) -> (usize, usize) {
        let count = lesson.steps().len();
        ((self.place + 1).min(count), count)
    }
    /// Whether the answer of the question is shown.
    #[must_use]
    pub fn answer_is_shown(&self) -> bool {
        self.shown
    }
    /// On: first the second half of a question or break, then the next step. False at the end.
    pub fn next(&mut self, lesson: &Lesson) -> bool {
        if !self.shown {
            match self.step(lesson) {
                Step::Question(_) => {
                    self.shown = true;
                    return true;
                }
                Step::Break(number) => {
                    self.shown = true;
                    self.thrown = Some(number);
                    return true;
                }
                _ => {}
            }
        }
        let last = lesson.steps().len().saturating_sub(1);
        let on = self.place < last;
        if on {
            self.go(self.place + 1);
        }
        on
    }
    /// Back to the step before. False at the beginning.
    pub fn back(&mut self) -> bool {
        let on = self.place > 0;
        if on {
            self.go(self.place - 1);
        }
        on
    }
    /// To a step by its place, counted from 0. Each begins with nothing broken and with the overlay of its own.
    pub fn go(&mut self, place: usize) {
        *self = Self {
            place,
            ..Self::default()
        };
    }
    /// Shows the answer of a question, or hides it again.
    pub fn turn_answer(&mut self, lesson: &Lesson) {
        if matches!(self.step(lesson), Step::Question(_)) {
            self.shown = !self.shown;
        }
    }
    /// The break that is thrown, by its place in the lesson.
    #[must_use]
    pub fn thrown(&self) -> Option<usize> {
        self.thrown
    }
    /// The break at hand: the one thrown, that of the step, or the first.
    #[must_use]
    pub fn at_hand(&self, lesson: &Lesson) -> Option<usize> {
        let own = match self.step(lesson) {
            Step::Break(number) => Some(number),
            _ => None,
        };
        self.thrown.or(own).or((!lesson.breaks.is_empty()).then_some(0))
    }
    /// Throws the break at hand; thrown again it heals.
    pub fn throw(&mut self, lesson: &Lesson) {
        self.thrown = match self.thrown {
            Some(_) => None,
            None => self.at_hand(lesson),
        };
        if matches!(self.step(lesson), Step::Break(_)) {
            self.shown = true;
        }
    }
    /// Throws the break after the one at hand, which heals.
    pub fn throw_other(&mut self, lesson: &Lesson) {
        let count = lesson.breaks.len();
        if let Some(number) = self.at_hand(lesson) {
            self.thrown = Some((number + 1) % count.max(1));
        }
    }
    /// Lays an overlay on until the next step; the one that lies there already is taken off.
    pub fn lay(&mut self, overlay: Overlay, lesson: &Lesson) {
        let lies = self.overlay(lesson) == overlay;
        self.laid = Some(if lies { Overlay::None } else { overlay });
    }
    /// The overlay in force.
    #[must_use]
    pub fn overlay(&self, lesson: &Lesson) -> Overlay {
        self.laid.unwrap_or(match self.step(lesson) {
            Step::Look(number) => lesson
                .looks
                .get(number)
                .map_or(Overlay::None, |look| look.overlay),
            _ => Overlay::None,
        })
    }
    /// Tags of what the step speaks of.
    #[must_use]
    pub fn things<'l>(&self, lesson: &'l Lesson) -> &'l [String] {
        let things = match self.step(lesson) {
            Step::Look(number) => lesson.looks.get(number).map(|look| &look.things),
            _ => None,
        };
        things.map(Vec::as_slice).unwrap_or_default()
    }
}

/// The part or run that a name in a lesson means on a sheet: `W3`, `A1`, or with a terminal, channel or coil `LS1.a`.
#[must_use]
pub fn parts_and_runs(sheet: &Sheet, name: &str) -> (Option<PartId>, Option<RunId>) {
    let tag = name.split_once('.').map_or(name, |(tag, _)| tag);
    match sheet.run_by_tag(name) {
        Some((run, _)) => (None, Some(run)),
        None => (sheet.part_by_tag(tag).map(|(part, _)| part), None),
    }
}

/// Lights what these names mean on a sheet, so that everything else steps back; where the sheet has none of them,
/// everything does. No names, no light.
#[must_use]
pub fn lit(sheet: &Sheet, names: &[String]) -> Lit {
    let mut lit = Lit::default();
    for name in names {
        let (part, run) = parts_and_runs(sheet, name);
        lit.parts.extend(part);
        lit.runs.extend(run);
    }
    if lit.is_empty() && !names.is_empty() {
        // No part of a job has this number, which is past the last that a file can hold.
        lit.parts.insert(PartId(u32::MAX));
    }
    lit
}

/// The break of this number.
#[must_use]
pub fn break_of(lesson: &Lesson, number: Option<usize>) -> Option<&Break> {
    lesson.breaks.get(number?)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::LESSONS;

    #[test]
    fn a_lesson_is_walked_through_to_its_end_and_back() {
        for built_in in LESSONS {
            let lesson = built_in.lesson();
            let mut at = Presenting::default();
            let mut seen = vec![at.step(&lesson)];
            let mut answers = 0;
            let mut breaks = 0;
            for _ in 0..1000 {
                let before = at.step(&lesson);
                if !at.next(&lesson) {
                    break;
                }
                if at.step(&lesson) == before {
                    // The second half of a question or break.
                    match before {
                        Step::Question(_) => {
                            assert!(at.answer_is_shown());
                            answers += 1;
                        }
                        Step::Break(number) => {
                            assert_eq!(at.thrown(), Some(number));
                            breaks += 1;
                        }
                        other => panic!("{}: {other:?} twice", built_in.key),
                    }
                } else {
                    assert!(!at.answer_is_shown() && at.thrown().is_none());
                    seen.push(at.step(&lesson));
                }
            }
            assert_eq!(seen, lesson.steps(), "{}", built_in.key);
            assert_eq!(seen.last(), Some(&Step::Sources));
            assert_eq!((answers, breaks), (lesson.questions.len(), lesson.breaks.len()));
            let (place, count) = at.place(&lesson);
            assert_eq!(place, count);
            for _ in 1..count {
                assert!(at.back());
            }
            assert!(!at.back());
            assert_eq!(at.step(&lesson), Step::Story(0));
        }
    }

    #[test]
    fn a_break_is_thrown_and_heals_and_an_overlay_holds_until_the_next_step() {
        let mut lesson = LESSONS[0].lesson();
        lesson.breaks.push(Break {
            things: vec!["W1".to_owned()],
            ..Break::default()
        });
        // Not begun: nobody sees it.
        lesson.questions.insert(0, crate::Question::default());
        let mut at = Presenting::default();
        at.throw(&lesson);
        assert_eq!(at.thrown(), Some(0));
        at.throw(&lesson);
        assert_eq!(at.thrown(), None);
        at.throw_other(&lesson);
        assert_eq!(at.thrown(), Some(1));
        at.throw_other(&lesson);
        assert_eq!(at.thrown(), Some(0));
        at.lay(Overlay::Heat, &lesson);
        assert_eq!(at.overlay(&lesson), Overlay::Heat);
        at.lay(Overlay::Heat, &lesson);
        assert_eq!(at.overlay(&lesson), Overlay::None);
        while at.step(&lesson) != Step::Look(0) {
            assert!(at.next(&lesson));
        }
        assert_eq!(at.thrown(), None);
        assert_eq!(at.overlay(&lesson), lesson.looks[0].overlay);
        // A break healed by hand on its own step is not thrown by going on.
        while at.step(&lesson) != Step::Break(1) {
            assert!(at.next(&lesson));
        }
        at.throw(&lesson);
        at.throw(&lesson);
        assert_eq!(at.thrown(), None);
        assert!(at.next(&lesson));
        assert_eq!(at.step(&lesson), Step::Question(1));
        // A lesson without anything is over at once.
        let empty = Lesson::default();
        let mut at = Presenting::default();
        at.throw(&empty);
        at.throw_other(&empty);
        assert_eq!((at.thrown(), at.next(&empty), at.back()), (None, false, false));
    }

    #[test]
    fn what_a_step_speaks_of_is_lit_and_the_rest_steps_back_on_both_versions() {
        use crate::lesson::Version;
        for built_in in LESSONS {
            let lesson = built_in.lesson();
            for look in &lesson.looks {
                for version in Version::BOTH {
                    let lit = lit(&lesson.sheet(version), &look.things);
                    assert!(!lit.is_empty(), "{}: {:?}", built_in.key, look.things);
                }
                let bad = lit(&lesson.sheet(Version::Bad), &look.things);
                let good = lit(&lesson.sheet(Version::Good), &look.things);
                let there =
                    |lit: &Lit| lit.parts.iter().filter(|id| id.0 < u32::MAX).count() + lit.runs.len();
                assert!(
                    there(&bad) + there(&good) > 0,
                    "{}: {:?}",
                    built_in.key,
                    look.things
                );
            }
        }
        assert!(lit(&Sheet::default(), &[]).is_empty());
    }
}
