//! What is broken on the board: the breaks that were thrown, what follows from them, and the moment of it that is looked at. Nothing
//! of the job changes; what was thrown has a history of its own, which the tool in hand walks by undo and redo.

mod answer;
mod marks;
mod showing;

pub use answer::draws;
pub(crate) use marks::{Clip, Reach, remade};
use showing::BrokenSign;
pub(crate) use showing::SignAt;

use crate::editor::Editor;
use crate::effects::Effects;
use crate::tools::Tool;
use circuit::Study;
use circuit::faults::{Course, Faults, Frame};
use drawing::Overlay;
use model::breaks::Break;
use model::quantity::Share;
use std::sync::Arc;
use words::{Saying, say};

/// What is broken, and what is looked at of it.
#[derive(Clone, Debug, Default)]
pub(crate) struct Broken {
    pub(crate) breaks: Vec<Break>,
    past: Vec<Vec<Break>>,
    ahead: Vec<Vec<Break>>,
    /// The break whose place is being slid: its steps are one.
    sliding: Option<usize>,
    /// The sheet made ready, until it is edited.
    faults: Option<Arc<Faults>>,
    course: Option<Result<Arc<Course>, Saying>>,
    case: usize,
    moment: usize,
    /// The break whose mark is picked.
    pub(crate) picked: Option<usize>,
    /// What the board shows instead of how the sheet works.
    shown: Option<Shown>,
    /// The overlay that was in force before anything broke.
    before: Option<Overlay>,
}

#[derive(Clone, Debug)]
struct Shown {
    study: Box<Study>,
    signs: Vec<BrokenSign>,
}

impl Editor {
    // What others may look at.

    /// What is thrown.
    #[must_use]
    pub fn breaks(&self) -> &[Break] {
        &self.broken.breaks
    }
    /// What follows from it; `None` while nothing is thrown.
    #[must_use]
    pub fn course(&self) -> Option<&Result<Arc<Course>, Saying>> {
        self.broken.course.as_ref()
    }
    /// The sheet made ready to be broken: it tells in which order frames name runs and devices.
    #[must_use]
    pub fn faults(&self) -> Option<&Faults> {
        self.broken.faults.as_deref()
    }
    /// The case and the moment that are looked at.
    #[must_use]
    pub fn moment(&self) -> (usize, usize) {
        (self.broken.case, self.broken.moment)
    }
    /// How everything is at that moment.
    #[must_use]
    pub fn frame(&self) -> Option<&Frame> {
        let course = self.broken.course.as_ref()?.as_ref().ok()?;
        let frames = &course.scenarios.get(self.broken.case)?.frames;
        frames.get(self.broken.moment).or_else(|| frames.last())
    }
    /// Whether a moment after a break is shown.
    #[must_use]
    pub fn is_broken(&self) -> bool {
        self.broken.shown.is_some()
    }
    /// What the board shows: how the sheet works, or a moment after a break.
    #[must_use]
    pub fn shown_study(&self) -> &Study {
        match &self.broken.shown {
            Some(shown) => &shown.study,
            None => &self.analysis.study,
        }
    }

    // What is done.

    /// Throws a break besides what is thrown already, and brings it into view.
    pub fn throw(&mut self, broken: Break) -> Effects {
        if !self.broken.breaks.contains(&broken) {
            let at = SignAt::of(&broken).into_iter().next();
            let mut all = self.broken.breaks.clone();
            all.push(broken);
            self.set_breaks(all);
            self.broken.moment = 0;
            self.show_moment();
            if let Some(at) = at {
                self.show_sign(&at);
            }
            self.tell_outcome();
        }
        self.take_effects()
    }

    /// Takes one of the breaks back.
    pub fn take_back(&mut self, place: usize) -> Effects {
        self.remove_break(place);
        self.take_effects()
    }

    /// Takes all of them back.
    pub fn take_all_back(&mut self) -> Effects {
        self.set_breaks(Vec::new());
        self.take_effects()
    }

    /// Puts what was thrown elsewhere along its run. Steps one after another are one step of the history.
    pub fn slide_break(&mut self, place: usize, to: Share) -> Effects {
        let mut all = self.broken.breaks.clone();
        if let Some(Break::Grounded { at, .. } | Break::Cut { at, .. }) = all.get_mut(place) {
            *at = to;
            if self.broken.sliding == Some(place) {
                self.put_breaks(all);
                // What was said of the place before would be wrong here.
                self.tell_outcome();
            } else {
                self.set_breaks(all);
                self.broken.sliding = Some(place);
            }
        }
        self.take_effects()
    }

    /// Looks at a moment of one of the cases of [`Course::scenarios`].
    pub fn look_at_moment(&mut self, case: usize, moment: usize) -> Effects {
        (self.broken.case, self.broken.moment) = (case, moment);
        self.show_moment();
        self.take_effects()
    }

    /// Takes all back, with what was done and undone of it, and shows again how the sheet works. The tool is put away.
    pub fn heal(&mut self) -> Effects {
        if matches!(self.tool, Tool::Break(_)) {
            self.take(Tool::default());
            self.out.say = None;
        }
        self.put_breaks(Vec::new());
        self.broken = Broken::default();
        self.take_effects()
    }

    // Within the crate.

    pub(crate) fn remove_break(&mut self, place: usize) {
        let mut all = self.broken.breaks.clone();
        if place < all.len() {
            let gone = all.remove(place);
            self.set_breaks(all);
            let what = gone.said(self.sheet());
            self.tell(say!("breaking-taken-back", what = what));
        }
    }

    /// Other breaks: one step of their history.
    pub(crate) fn set_breaks(&mut self, breaks: Vec<Break>) {
        let before = self.broken.breaks.clone();
        self.put_breaks(breaks);
        self.note_breaks(before);
    }

    /// Notes what was thrown before the step just done.
    pub(crate) fn note_breaks(&mut self, before: Vec<Break>) {
        self.broken.sliding = None;
        if before != self.broken.breaks {
            self.broken.past.push(before);
            self.broken.ahead.clear();
        }
    }

    /// Steps back to what was thrown before, or forth again.
    pub(crate) fn step_breaks(&mut self, back: bool) {
        let broken = &mut self.broken;
        broken.sliding = None;
        let (from, to) = if back {
            (&mut broken.past, &mut broken.ahead)
        } else {
            (&mut broken.ahead, &mut broken.past)
        };
        match from.pop() {
            Some(breaks) => {
                to.push(broken.breaks.clone());
                self.put_breaks(breaks);
            }
            None => self.tell(say!("breaking-no-step")),
        }
    }

    /// Other breaks, as no step: within a gesture, or as the history has it. The moment stays the same time after they were thrown.
    pub(crate) fn put_breaks(&mut self, breaks: Vec<Break>) {
        if self.broken.breaks == breaks {
            return;
        }
        if self.broken.breaks.len() != breaks.len() {
            self.broken.picked = None;
        }
        self.broken.breaks = breaks;
        self.work_out();
    }

    /// The sheet was edited: what is thrown is worked out anew on it.
    pub(crate) fn break_again(&mut self) {
        self.broken.faults = None;
        if !self.broken.breaks.is_empty() {
            self.work_out();
        }
    }

    fn work_out(&mut self) {
        let time = self.frame().map_or(0.0, |frame| frame.time.0);
        self.broken.course = None;
        if !self.broken.breaks.is_empty() {
            let faults = match self.broken.faults.take() {
                Some(faults) => faults,
                None => Arc::new(Faults::new(self.sheet(), &self.job.settings)),
            };
            self.broken.course = Some(faults.course(&self.broken.breaks).map(Arc::new));
            self.broken.faults = Some(faults);
        }
        let case = self.broken.case;
        let frames = match &self.broken.course {
            Some(Ok(course)) => course.scenarios.get(case).map_or(&[][..], |it| &it.frames),
            _ => &[],
        };
        self.broken.moment = frames
            .iter()
            .position(|frame| frame.time.0 >= time)
            .unwrap_or(frames.len().saturating_sub(1));
        self.show_moment();
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use model::SheetKind;

    pub(super) const JOB: &str = "battery B1 agm 70Ah cranking=640A @0,0
fuse F1 strip61 60A @200,0
load L1 power=300W @400,0
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out L1.+ 16mm2 2m RD copper
run W3 L1.- B1.- 16mm2 2m BK
ground E1 bare @0,200
run W4 B1.- E1.stud 16mm2 0.3m BK";

    fn read(editor: &Editor, text: &str) -> Break {
        Break::read(text, editor.sheet()).expect("a break")
    }

    #[test]
    fn a_moment_after_a_break_is_shown_and_healed_and_the_job_stays() {
        let mut editor = Editor::new(testkit::job(JOB));
        let before = editor.job().clone();
        let run = editor.sheet().run_by_tag("W1").expect("W1").0;
        let usual = editor.shown_study().runs[&run].current.rms.abs();
        let mut empty = drawing::DisplayList::default();
        editor.sketch_broken(&mut empty);
        assert!(empty.items.is_empty());
        let broken = read(&editor, "W2 grounded at 50 %");
        let effects = editor.throw(broken);
        assert!(effects.repaint && editor.is_broken());
        assert_eq!(editor.look().overlay, Overlay::Heat);
        // A short of a fed wire draws far more than the load does.
        assert!(editor.shown_study().runs[&run].current.rms.0 > 5.0 * usual.0);
        let mut list = drawing::DisplayList::default();
        editor.sketch_broken(&mut list);
        assert!(list.items.len() > 4, "the mark, its lead, and words");
        let _ = editor.heal();
        assert!(!editor.is_broken() && editor.breaks().is_empty());
        assert_eq!(editor.look().overlay, Overlay::None);
        assert_eq!(*editor.job(), before);
        assert_eq!(editor.on(), SheetKind::Plan);
    }

    #[test]
    fn numbers_of_the_overlay_keep_clear_of_what_is_thrown() {
        let mut editor = Editor::new(testkit::job(JOB));
        assert!(editor.look().covered.is_empty());
        let mut beneath = 0;
        for text in ["W2 grounded at 50 %", "W2 cut at 30 %", "W3 grounded at 50 %"] {
            let broken = read(&editor, text);
            let _ = editor.throw(broken);
            let covered = editor.look().covered;
            assert!(!covered.is_empty());
            let numbers = |look: &drawing::Look| -> Vec<kurbo::Rect> {
                let cut = drawing::Cut {
                    visible: editor.camera().visible(),
                    areas: &[],
                    moving: &drawing::Moving::default(),
                    which: drawing::Which::All,
                };
                let list = editor.picture_cut(look, &cut);
                let degrees = |item: &drawing::Item| matches!(&item.shape, drawing::Shape::Text { text, .. } if text.contains("°C"));
                list.items
                    .iter()
                    .filter(|item| degrees(item))
                    .map(|item| item.bounds)
                    .collect()
            };
            let under = |numbers: Vec<kurbo::Rect>| {
                assert!(!numbers.is_empty());
                numbers
                    .iter()
                    .filter(|number| covered.iter().any(|it| it.overlaps(number.inset(-1.0))))
                    .count()
            };
            assert_eq!(under(numbers(&editor.look())), 0, "{text}");
            beneath += under(numbers(&drawing::Look {
                covered: Vec::new(),
                ..editor.look()
            }));
            let _ = editor.heal();
        }
        assert!(beneath > 0, "without being told, some would lie beneath");
    }

    #[test]
    fn what_is_written_at_signs_lies_on_no_other_word_of_a_sign() {
        // Loads in a row, seen from afar: their signs stand closer than their words are wide.
        let row = "battery B1 agm 70Ah cranking=640A @0,0
fuse F1 strip61 60A @200,0
block D1 @400,0
load L1 power=60W @600,200
load L2 power=60W @760,200
load L3 power=60W @920,200
load L4 power=60W @1080,200
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out D1.in 16mm2 2m RD
run W3 D1.out1 L1.+ 2.5mm2 2m RD
run W4 D1.out2 L2.+ 2.5mm2 2m RD
run W5 D1.out3 L3.+ 2.5mm2 2m RD
run W6 D1.out4 L4.+ 2.5mm2 2m RD
run W7 L1.- B1.- 2.5mm2 2m BK
run W8 L2.- B1.- 2.5mm2 2m BK
run W9 L3.- B1.- 2.5mm2 2m BK
run W10 L4.- B1.- 2.5mm2 2m BK";
        let mut editor = Editor::new(testkit::job(row));
        editor.resize(1600.0, 900.0, crate::Margins::default());
        for text in ["F1 open", "W3 cut at 90 %", "W5 cut at 90 %"] {
            let broken = read(&editor, text);
            let _ = editor.throw(broken);
        }
        let mut ringed = 0;
        for zoom in [1.0, 0.4, 0.2, 0.12] {
            editor.fit();
            let now = editor.camera.zoom;
            editor
                .camera
                .zoom_about(crate::ScreenPoint::new(800.0, 450.0), zoom / now);
            let mut list = drawing::DisplayList::default();
            editor.sketch_broken(&mut list);
            let words: Vec<(&String, kurbo::Rect)> = list
                .items
                .iter()
                .filter_map(|item| match &item.shape {
                    drawing::Shape::Text {
                        text,
                        at,
                        size,
                        anchor,
                        ..
                    } => Some((text, drawing::text_area(text, *at, *size, *anchor, true, false))),
                    drawing::Shape::Path { .. } => None,
                })
                .collect();
            assert!(words.len() >= 5, "{words:?}");
            ringed += words.iter().filter(|(word, _)| *word == "off").count();
            for (place, (word, area)) in words.iter().enumerate() {
                let on = words
                    .iter()
                    .skip(place + 1)
                    .find(|(_, other)| other.overlaps(*area));
                assert!(on.is_none(), "at {zoom}: {word} at {area:?} and {on:?}");
            }
        }
        assert!(ringed >= 8, "what is off has its rings: {ringed}");
    }

    #[test]
    fn what_is_thrown_is_worked_out_anew_after_an_edit() {
        let mut editor = Editor::new(testkit::job(JOB));
        let broken = read(&editor, "W2 grounded at 90 %");
        let _ = editor.throw(broken);
        let fault = |editor: &Editor| {
            let course = editor.course().expect("a course").as_ref().expect("worked out");
            course.fault.expect("a short").most.0
        };
        let before = fault(&editor);
        let run = editor.sheet().run_by_tag("W2").expect("W2").0;
        let edit = model::edits::change_run(editor.job(), SheetKind::Plan, run, "", |run| {
            run.wire.length = model::Fact::Given(model::quantity::Metres(12.0));
        });
        let _ = editor.make(edit).expect("an edit");
        editor.analyse();
        // Six times the wire in the way of the short.
        assert!(editor.is_broken() && fault(&editor) < 0.7 * before);
        // The run goes: the break says so instead of showing anything.
        editor.selection = crate::Selection::of(&crate::Thing::Run(run));
        let _ = editor.perform(crate::Action::Delete);
        editor.analyse();
        assert!(!editor.is_broken() && matches!(editor.course(), Some(Err(_))));
    }

    #[test]
    fn sliding_is_one_step_and_the_moment_keeps_its_time() {
        let mut editor = Editor::new(testkit::job(JOB));
        let broken = read(&editor, "W2 grounded at 50 %");
        let _ = editor.throw(broken.clone());
        let _ = editor.look_at_moment(0, 3);
        let time = editor.frame().expect("a frame").time.0;
        for percent in [60.0, 70.0, 80.0] {
            let _ = editor.slide_break(0, Share(percent / 100.0));
        }
        assert!(editor.frame().expect("a frame").time.0 >= 0.3 * time);
        editor.step_breaks(true);
        assert_eq!(editor.breaks(), [broken]);
        editor.step_breaks(true);
        assert!(editor.breaks().is_empty() && !editor.is_broken());
        editor.step_breaks(false);
        editor.step_breaks(false);
        assert!(matches!(editor.breaks(), [Break::Grounded { at, .. }] if at.0 == 0.8));
    }
}
