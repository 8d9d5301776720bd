//! A moment after something broke, shown on the board instead of how the sheet works. Nothing of the job changes.

use crate::editor::Editor;
use crate::effects::Effects;
use crate::selection::Thing;
use circuit::Study;
use circuit::faults::{Faults, Frame};
use drawing::{Anchor, Detail, DisplayList, Ink, Item, Overlay, Owner, Shape, Stroke, circle, text_area};
use kurbo::{BezPath, Point, Rect, Shape as _};
use model::quantity::Share;
use model::{RunId, breaks::Break};

/// Radius of the ring of a sign on screen, in pixels.
const RING_PX: f64 = 10.0;
/// Height of its letters on screen, in pixels.
const LETTERS_PX: f64 = 14.0;

/// Where a sign stands.
#[derive(Clone, Debug, PartialEq)]
pub enum SignAt {
    /// On a part, terminal or run.
    Thing(Thing),
    /// Along a run: 0 at its `from` end, 1 at its `to` end.
    Along(RunId, Share),
}

/// A sign on the board: a ring with a cross, and a word beside it.
#[derive(Clone, Debug, PartialEq)]
pub struct BrokenSign {
    /// Where.
    pub at: SignAt,
    /// The word.
    pub word: String,
    /// Whether it is what was broken, or is harmed; else it only follows.
    pub grave: bool,
}

/// What is shown instead of how the sheet works.
#[derive(Clone, Debug)]
pub(crate) struct Broken {
    study: Box<Study>,
    signs: Vec<BrokenSign>,
    /// The overlay that was in force.
    before: Overlay,
}

impl Broken {
    /// The overlay that was in force.
    pub(crate) fn before(&self) -> Overlay {
        self.before
    }
}

impl SignAt {
    /// Where the signs of a break stand.
    #[must_use]
    pub fn of(broken: &Break) -> Vec<Self> {
        match broken {
            Break::Grounded { run, at, .. } => vec![Self::Along(*run, *at)],
            Break::Cut { run } | Break::Resistive { run, .. } => vec![Self::Along(*run, Share(0.5))],
            Break::Off { run, far } => vec![Self::Along(*run, Share(f64::from(u8::from(*far))))],
            Break::Joined { terminals, .. } => terminals
                .iter()
                .map(|at| Self::Thing(Thing::Terminal(at.clone())))
                .collect(),
            Break::Open { part, .. }
            | Break::Poor { part, .. }
            | Break::Reversed { part, .. }
            | Break::Dead { part } => vec![Self::Thing(Thing::Part(*part))],
        }
    }
}

impl Editor {
    /// Shows how everything is at a moment after a break: currents and temperatures of the runs, what is open, what is off.
    pub fn show_broken(&mut self, faults: &Faults, frame: &Frame, signs: Vec<BrokenSign>) -> Effects {
        let mut study = Box::new(self.analysis.study.clone());
        for (id, now) in faults.runs().zip(&frame.runs) {
            if let Some(flow) = study.runs.get_mut(&id) {
                // As a size: which way it flows is told by neither.
                flow.current = circuit::ThreeCurrents {
                    mean: now.current,
                    rms: now.current,
                    burst: now.current,
                };
                flow.temperature = now.temperature;
                // What follows is told by the moments themselves.
                flow.time_to_limit = None;
            }
        }
        for (device, now) in faults.devices().zip(&frame.devices) {
            if let Some(flow) = study.parts.get_mut(&device.part) {
                flow.current = circuit::ThreeCurrents {
                    mean: now.current,
                    rms: now.current,
                    burst: now.current,
                };
            }
        }
        for part in &frame.off {
            if let Some(flow) = study.parts.get_mut(part) {
                flow.on = Some(false);
                flow.current = circuit::ThreeCurrents::default();
            }
        }
        // How the voltages are then is not told.
        study.voltages = Default::default();
        let before = match &self.broken {
            Some(broken) => broken.before,
            None => std::mem::replace(&mut self.overlay, Overlay::Heat),
        };
        self.broken = Some(Broken { study, signs, before });
        self.still_changed();
        self.out.noticed = true;
        self.out.repaint = true;
        self.take_effects()
    }

    /// Shows again how the sheet works.
    pub fn heal(&mut self) -> Effects {
        if let Some(broken) = self.broken.take() {
            // Another overlay was asked for meanwhile: it stays.
            if self.overlay == Overlay::Heat {
                self.overlay = broken.before;
            }
            self.still_changed();
            self.out.noticed = true;
            self.out.repaint = true;
        }
        self.take_effects()
    }

    /// Brings what a sign stands on into view, clear of what lies open along the edges.
    pub fn show_sign(&mut self, at: &SignAt) -> Effects {
        if let Some(point) = self.sign_point(at) {
            self.show_beside(Rect::from_center_size(point, (160.0, 80.0)));
            self.out.noticed = true;
            self.out.repaint = true;
        }
        self.take_effects()
    }

    /// Whether a moment after a break is shown.
    #[must_use]
    pub fn is_broken(&self) -> bool {
        self.broken.is_some()
    }

    /// What the board shows: how the sheet works, or a moment after a break.
    #[must_use]
    pub fn shown_study(&self) -> &Study {
        match &self.broken {
            Some(broken) => &broken.study,
            None => &self.analysis.study,
        }
    }

    /// Along the way of a run, by its length on the board.
    fn point_along(&self, run: RunId, share: Share) -> Option<Point> {
        let way = self.layout.run(run)?;
        let whole: f64 = way.pieces().map(|(a, b)| a.distance(b)).sum();
        let mut left = whole * share.0.clamp(0.0, 1.0);
        let mut last = None;
        for (a, b) in way.pieces() {
            let length = a.distance(b);
            if left <= length {
                return Some(a.lerp(b, if length > 0.0 { left / length } else { 0.0 }));
            }
            left -= length;
            last = Some(b);
        }
        last
    }

    fn sign_point(&self, at: &SignAt) -> Option<Point> {
        match at {
            SignAt::Along(run, share) => self.point_along(*run, *share),
            SignAt::Thing(Thing::Run(run)) => self.point_along(*run, Share(0.5)),
            SignAt::Thing(Thing::Part(part)) => self.layout.part(*part).map(|it| it.middle()),
            SignAt::Thing(Thing::Terminal(at)) => self.layout.stud(at),
        }
    }

    /// The signs of what is broken and of what follows.
    pub(crate) fn sketch_broken(&self, list: &mut DisplayList) {
        let Some(broken) = &self.broken else { return };
        let pixel = 1.0 / self.camera.zoom.max(1e-3);
        let mut add = |shape: Shape, bounds| {
            list.items.push(Item {
                owner: Owner::Tool,
                detail: Detail::Shape,
                bounds,
                shape,
            });
        };
        for sign in &broken.signs {
            let Some(at) = self.sign_point(&sign.at) else {
                continue;
            };
            let ink = if sign.grave { Ink::Stop } else { Ink::Line };
            let ring = circle(at, RING_PX * pixel);
            let bounds = ring.bounding_box().inflate(4.0 * pixel, 4.0 * pixel);
            let stroke = |ink, px: f64| {
                Some(Stroke {
                    ink,
                    width: px * pixel,
                    dash: None,
                })
            };
            let arm = 0.5 * RING_PX * pixel;
            let mut cross = BezPath::new();
            for side in [-1.0, 1.0] {
                cross.move_to((at.x - arm, at.y - side * arm));
                cross.line_to((at.x + arm, at.y + side * arm));
            }
            for (path, fill, stroke) in [
                (ring.clone(), Some(Ink::Paper), stroke(Ink::Paper, 6.0)),
                (ring, None, stroke(ink, 2.5)),
                (cross, None, stroke(ink, 2.5)),
            ] {
                add(Shape::Path { path, fill, stroke }, bounds);
            }
            let size = LETTERS_PX * pixel;
            let place = Point::new(at.x + (RING_PX + 5.0) * pixel, at.y - RING_PX * pixel);
            let area = text_area(&sign.word, place, size, Anchor::Start, true, false);
            let text = Shape::Text {
                text: sign.word.clone(),
                at: place,
                size,
                anchor: Anchor::Start,
                ink,
                bold: true,
                halo: true,
                upright: false,
            };
            add(text, area.inflate(0.3 * size, 0.3 * size));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use model::SheetKind;

    const JOB: &str = "battery B1 agm 70Ah cranking=640A @0,0
fuse F1 strip61 60A @200,0
load L1 power=300W @400,0
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out L1.+ 16mm2 2m RD copper
run W3 L1.- B1.- 16mm2 2m BK
ground E1 bare @0,200
run W4 B1.- E1.stud 16mm2 0.3m BK";

    #[test]
    fn a_moment_after_a_break_is_shown_and_healed_and_the_job_stays() {
        let mut editor = Editor::new(testkit::job(JOB));
        let before = editor.job().clone();
        let sheet = editor.sheet().clone();
        let faults = Faults::new(&sheet, &editor.job().settings);
        let broken = Break::read("W2 grounded at 50 %", &sheet).expect("a break");
        let course = faults.course(std::slice::from_ref(&broken)).expect("a course");
        let frame = course.scenarios[0].frames.first().expect("a frame");
        let signs = SignAt::of(&broken)
            .into_iter()
            .map(|at| BrokenSign {
                at,
                word: "here".to_owned(),
                grave: true,
            })
            .collect();
        let run = sheet.run_by_tag("W1").expect("W1").0;
        let usual = editor.shown_study().runs[&run].current.rms.abs();
        let mut empty = DisplayList::default();
        editor.sketch_broken(&mut empty);
        assert!(empty.items.is_empty());
        let effects = editor.show_broken(&faults, frame, signs);
        assert!(effects.repaint && editor.is_broken());
        assert_eq!(editor.look().overlay, Overlay::Heat);
        // A short of a fed wire draws far more than the load does.
        assert!(editor.shown_study().runs[&run].current.rms.0 > 5.0 * usual.0);
        let mut list = DisplayList::default();
        editor.sketch_broken(&mut list);
        assert_eq!(list.items.len(), 4, "a ring twice, a cross, a word");
        let way = editor
            .layout
            .run(sheet.run_by_tag("W2").expect("W2").0)
            .expect("drawn");
        let centre = list.items[0].bounds.center();
        assert!(way.pieces().any(|(a, b)| {
            let along = (b - a).hypot().max(1e-9);
            (a.distance(centre) + centre.distance(b) - along).abs() < 1.0
        }));
        let _ = editor.heal();
        assert!(!editor.is_broken());
        assert_eq!(editor.look().overlay, Overlay::None);
        assert_eq!(*editor.job(), before);
        assert_eq!(editor.on(), SheetKind::Plan);
    }

    #[test]
    fn an_edit_heals() {
        let mut editor = Editor::new(testkit::job(JOB));
        let sheet = editor.sheet().clone();
        let faults = Faults::new(&sheet, &editor.job().settings);
        let broken = Break::read("W1 cut", &sheet).expect("a break");
        let course = faults.course(&[broken]).expect("a course");
        let _ = editor.show_broken(&faults, &course.scenarios[0].frames[0], Vec::new());
        editor.stale = true;
        editor.analyse();
        assert!(!editor.is_broken());
    }
}
