//! One learner at an exercise: what he has marked so far, and what came of it once he handed it in.

use crate::exercise::{Mark, Outcome, Thing, reasons, score};
use crate::lesson::{Lesson, Version};

/// Most marks of one sitting: more than any lesson has faults, and a list that can still be read.
pub const MOST_MARKS: usize = 100;
/// Longest note on a mark and longest name of a learner, in bytes.
pub const LONGEST_NOTE: usize = 500;

/// A mark, and what the learner notes of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Marked {
    /// The mark.
    pub mark: Mark,
    /// The learner's own words; may be empty. They are shown to the teacher and do not count.
    pub note: String,
}

/// Why something cannot be done in a sitting.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Refusal {
    /// It is handed in; a new try begins with [`Sitting::again`].
    HandedIn,
    /// The bad version has no such part or run.
    NoSuchThing,
    /// This is none of the [`reasons`] to choose from.
    NoSuchReason,
    /// There is no mark at this place.
    NoSuchMark,
    /// The same thing is marked for the same reason already.
    Twice,
    /// There are [`MOST_MARKS`] already.
    TooMany,
}

/// A learner at the exercise of one lesson. It begins without marks; marks are put, changed and taken back until it is handed
/// in; after that nothing changes but by trying again.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Sitting {
    learner: String,
    marks: Vec<Marked>,
    outcome: Option<Outcome>,
    tries: u32,
}

/// A text cut to so many bytes, at a character.
fn cut(text: &str) -> String {
    let text = text.trim();
    let (text, _) = text.split_at(text.floor_char_boundary(LONGEST_NOTE));
    text.to_owned()
}

impl Sitting {
    /// A sitting of a learner, whose name may be empty.
    #[must_use]
    pub fn new(learner: &str) -> Self {
        Self {
            learner: cut(learner),
            ..Self::default()
        }
    }
    /// The learner's name; empty where he gave none.
    #[must_use]
    pub fn learner(&self) -> &str {
        &self.learner
    }
    /// Gives the learner another name, at any time: it has no part in the outcome.
    pub fn call_learner(&mut self, name: &str) {
        self.learner = cut(name);
    }
    /// The marks, in the order in which they were put.
    #[must_use]
    pub fn marks(&self) -> &[Marked] {
        &self.marks
    }
    /// Which try this is, from 1.
    #[must_use]
    pub fn try_number(&self) -> u32 {
        self.tries.saturating_add(1)
    }
    /// What came of it; nothing before it is handed in.
    #[must_use]
    pub fn outcome(&self) -> Option<&Outcome> {
        self.outcome.as_ref()
    }

    /// Whether a mark can stand in place of the one at `at`, or beside all.
    fn admits(&self, lesson: &Lesson, mark: &Mark, at: Option<usize>) -> Result<(), Refusal> {
        if self.outcome.is_some() {
            return Err(Refusal::HandedIn);
        }
        let sheet = lesson.job.sheet(Version::Bad.sheet());
        let is_there = sheet.is_some_and(|sheet| match mark.thing {
            Thing::Part(id) => sheet.parts.contains_key(&id),
            Thing::Run(id) => sheet.runs.contains_key(&id),
        });
        if !is_there {
            return Err(Refusal::NoSuchThing);
        }
        if !reasons(lesson).iter().any(|reason| reason.name == mark.reason) {
            return Err(Refusal::NoSuchReason);
        }
        let mut others = self.marks.iter().enumerate();
        if others.any(|(place, it)| Some(place) != at && it.mark == *mark) {
            return Err(Refusal::Twice);
        }
        Ok(())
    }

    /// Marks a thing as wrong, for a reason. A thing may be marked for several reasons. Gives the mark's place.
    ///
    /// # Errors
    /// [`Refusal`]; then nothing is marked.
    pub fn mark(
        &mut self,
        lesson: &Lesson,
        thing: Thing,
        reason: &str,
        note: &str,
    ) -> Result<usize, Refusal> {
        let mark = Mark {
            thing,
            reason: reason.to_owned(),
        };
        self.admits(lesson, &mark, None)?;
        if self.marks.len() >= MOST_MARKS {
            return Err(Refusal::TooMany);
        }
        self.marks.push(Marked {
            mark,
            note: cut(note),
        });
        Ok(self.marks.len() - 1)
    }
    /// Gives the mark at a place, from 0, another reason and note.
    ///
    /// # Errors
    /// [`Refusal`]; then the mark stays as it is.
    pub fn change(&mut self, lesson: &Lesson, at: usize, reason: &str, note: &str) -> Result<(), Refusal> {
        let thing = self.marks.get(at).ok_or(Refusal::NoSuchMark)?.mark.thing;
        let mark = Mark {
            thing,
            reason: reason.to_owned(),
        };
        self.admits(lesson, &mark, Some(at))?;
        if let Some(place) = self.marks.get_mut(at) {
            *place = Marked {
                mark,
                note: cut(note),
            };
        }
        Ok(())
    }
    /// Puts another note on the mark at a place, from 0.
    ///
    /// # Errors
    /// [`Refusal`]: it is handed in, or there is no such mark.
    pub fn note(&mut self, at: usize, note: &str) -> Result<(), Refusal> {
        if self.outcome.is_some() {
            return Err(Refusal::HandedIn);
        }
        self.marks.get_mut(at).ok_or(Refusal::NoSuchMark)?.note = cut(note);
        Ok(())
    }
    /// Takes back the mark at a place, from 0.
    ///
    /// # Errors
    /// [`Refusal`]: it is handed in, or there is no such mark.
    pub fn take_back(&mut self, at: usize) -> Result<Marked, Refusal> {
        if self.outcome.is_some() {
            return Err(Refusal::HandedIn);
        }
        if at >= self.marks.len() {
            return Err(Refusal::NoSuchMark);
        }
        Ok(self.marks.remove(at))
    }
    /// Hands in: the marks are held against the faults of the bad version. Handing in without a mark is an answer too.
    ///
    /// # Errors
    /// [`Refusal::HandedIn`] where it was done before.
    pub fn hand_in(&mut self, lesson: &Lesson) -> Result<&Outcome, Refusal> {
        if self.outcome.is_some() {
            return Err(Refusal::HandedIn);
        }
        let marks: Vec<Mark> = self.marks.iter().map(|it| it.mark.clone()).collect();
        Ok(self.outcome.insert(score(lesson, &marks)))
    }
    /// Tries again: the same learner, no marks.
    pub fn again(&mut self) {
        if self.outcome.take().is_some() {
            self.tries = self.tries.saturating_add(1);
        }
        self.marks.clear();
    }
}
