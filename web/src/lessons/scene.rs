//! What is on the stage: where the presenter stands in the lesson, both versions as they are shown, and what was asked to
//! be seen of them. One reducer; its actions are the presenter's keys and buttons.

use drawing::Overlay;
use editor::side_by_side::{spot_towards, spots};
use editor::{Editor, Key, Thing};
use kurbo::Point;
use lessons::{Happening, Lesson, Presenting, Shown, Told, Version, aftermath, break_of};
use std::rc::Rc;
use words::Words;
use yew::prelude::*;

/// A version as it is shown: whole, or with the break that is thrown.
pub(super) struct Side {
    pub(super) version: Version,
    /// For the picture, the outline and the names of things.
    pub(super) editor: Editor,
    /// What the break did; `None` where it cannot break in this way.
    pub(super) happened: Option<Vec<Happening>>,
}

/// The stage.
#[derive(Clone)]
pub(super) struct Scene {
    pub(super) lesson: Rc<Lesson>,
    words: Words,
    /// Both versions whole, with their analysis.
    shown: Rc<[Shown; 2]>,
    /// The same to be drawn.
    pub(super) whole: Rc<[Side; 2]>,
    /// Both as they are shown, the bad one first.
    pub(super) sides: Rc<[Side; 2]>,
    pub(super) at: Presenting,
    /// Whether the findings are marked and listed.
    pub(super) marks: bool,
    /// Whether what is lit fills the pictures.
    pub(super) close: bool,
    /// Whether the keys are shown.
    pub(super) keys: bool,
    /// Whether the pointer is out.
    pub(super) pointing: bool,
    /// What the pointer was led to by keys, and where that lies.
    pub(super) spot: Option<(Thing, Point)>,
}

/// What a presenter can do.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Do {
    Next,
    Back,
    First,
    Last,
    Answer,
    Throw,
    ThrowOther,
    Lay(Overlay),
    Marks,
    Close,
    Keys,
    Point,
    Walk(Key),
}

impl PartialEq for Scene {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.sides, &other.sides)
            && self.at == other.at
            && self.marks == other.marks
            && self.close == other.close
            && self.keys == other.keys
            && self.pointing == other.pointing
            && self.spot == other.spot
    }
}

impl Scene {
    pub(super) fn new(lesson: Rc<Lesson>, words: Words) -> Self {
        let told = Told::of(&lesson);
        let shown = told.both();
        let [bad, good] = &*shown;
        let whole = [(Version::Bad, bad), (Version::Good, good)];
        let whole = Rc::new(whole.map(|(version, shown)| Side {
            version,
            editor: looking(shown.job.clone(), &words),
            happened: Some(Vec::new()),
        }));
        Self {
            lesson,
            words,
            shown: shown.clone(),
            sides: whole.clone(),
            whole,
            at: Presenting::default(),
            marks: true,
            close: false,
            keys: false,
            pointing: false,
            spot: None,
        }
    }
    /// The lesson with its numbers.
    pub(super) fn told(&self) -> Told<'_> {
        Told::with(&self.lesson, self.shown.clone())
    }
    /// Both versions, with the break that is thrown.
    fn show(&self) -> Rc<[Side; 2]> {
        let Some(broken) = break_of(&self.lesson, self.at.thrown()) else {
            return self.whole.clone();
        };
        let told = self.told();
        Rc::new(Version::BOTH.map(|version| {
            let whole = told.shown(version);
            let (job, happened) = match told.broken(broken, version) {
                Ok(after) => {
                    let happened = aftermath(broken, version, whole, &after);
                    (after.job, Some(happened))
                }
                Err(_) => (whole.job.clone(), None),
            };
            Side {
                version,
                editor: looking(job, &self.words),
                happened,
            }
        }))
    }
}

fn looking(job: model::Job, words: &Words) -> Editor {
    let mut editor = Editor::looking(job);
    editor.read_by(words.clone());
    editor
}

/// The editors of both sides.
pub(super) fn editors(sides: &[Side; 2]) -> [&Editor; 2] {
    let [bad, good] = sides;
    [&bad.editor, &good.editor]
}

impl Reducible for Scene {
    type Action = Do;
    fn reduce(self: Rc<Self>, what: Do) -> Rc<Self> {
        let mut next = (*self).clone();
        let lesson = &self.lesson;
        match what {
            Do::Next => {
                next.at.next(lesson);
            }
            Do::Back => {
                next.at.back();
            }
            Do::First => next.at.go(0),
            Do::Last => next.at.go(lesson.steps().len().saturating_sub(1)),
            Do::Answer => next.at.turn_answer(lesson),
            Do::Throw => next.at.throw(lesson),
            Do::ThrowOther => next.at.throw_other(lesson),
            Do::Lay(overlay) => next.at.lay(overlay, lesson),
            Do::Marks => next.marks = !next.marks,
            Do::Close => next.close = !next.close,
            Do::Keys => next.keys = !next.keys,
            Do::Point => {
                next.pointing = !next.pointing;
                next.spot = None;
            }
            Do::Walk(key) => {
                let spots = spots(&editors(&self.whole));
                let from = self.spot.as_ref().map(|spot| spot.1);
                if let Some(spot) = spot_towards(&spots, from, key) {
                    next.spot = Some(spot.clone());
                }
            }
        }
        if next.at.thrown() != self.at.thrown() {
            next.sides = next.show();
        }
        next.into()
    }
}
