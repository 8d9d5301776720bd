//! A moment after something broke, shown on the board instead of how the sheet works: currents and heat, and signs of what is broken,
//! open, off and damaged by then.

use super::Shown;
use crate::editor::Editor;
use crate::selection::Thing;
use circuit::faults::{Course, Faults, Frame, Happening};
use drawing::Overlay;
use kurbo::{Point, Rect};
use model::breaks::{Break, Contact};
use model::quantity::Share;
use model::{RunId, Sheet};
use words::{Unit, precise};

/// Where a sign stands.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum SignAt {
    /// On a part, terminal or run.
    Thing(Thing),
    /// Along a run: 0 at its `from` end, 1 at its `to` end.
    Along(RunId, Share),
}

/// A word beside a thing that was broken or harmed, or that follows.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct BrokenSign {
    /// Where.
    pub(super) at: SignAt,
    /// The word.
    pub(super) word: String,
    /// Whether it is harmed; else it only follows.
    pub(super) grave: bool,
    /// Whether it has a ring with a cross; the marks of what was thrown are drawn by themselves.
    pub(super) ringed: bool,
}

impl SignAt {
    /// Where the signs of a break stand.
    pub(crate) fn of(broken: &Break) -> Vec<Self> {
        match broken {
            Break::Cut { run, at } | Break::Grounded { run, at, .. } => vec![Self::Along(*run, *at)],
            Break::Resistive { run, .. } => vec![Self::Along(*run, Share(0.5))],
            Break::Off { run, far } => vec![Self::Along(*run, Share(f64::from(u8::from(*far))))],
            Break::Joined { points, .. } => points
                .iter()
                .filter_map(|point| match point {
                    Contact::Terminal(at) => Some(Self::Thing(Thing::Terminal(at.clone()))),
                    Contact::Along(run, at) => Some(Self::Along(*run, *at)),
                    Contact::Body => None,
                })
                .collect(),
            Break::Open { part, .. }
            | Break::Poor { part, .. }
            | Break::Reversed { part, .. }
            | Break::Dead { part } => vec![Self::Thing(Thing::Part(*part))],
        }
    }

    fn is_on(&self, sheet: &Sheet) -> bool {
        match self {
            Self::Thing(thing) => thing.is_on(sheet),
            Self::Along(run, _) => sheet.runs.contains_key(run),
        }
    }
}

impl Editor {
    /// Shows the moment that is looked at; how the sheet works where nothing is thrown, or nothing follows from it.
    pub(super) fn show_moment(&mut self) {
        let shown = match (self.frame(), &self.broken.course, &self.broken.faults) {
            (Some(frame), Some(Ok(course)), Some(faults)) => Some(self.shown(frame, course, faults)),
            _ => None,
        };
        match (&shown, self.broken.before) {
            (Some(_), None) => {
                self.broken.before = Some(std::mem::replace(&mut self.overlay, Overlay::Heat));
            }
            (None, Some(before)) => {
                // Another overlay was asked for meanwhile: it stays.
                if self.overlay == Overlay::Heat {
                    self.overlay = before;
                }
                self.broken.before = None;
            }
            _ => {}
        }
        self.broken.shown = shown;
        self.still_changed();
        self.out.noticed = true;
        self.out.repaint = true;
    }

    fn shown(&self, frame: &Frame, course: &Course, faults: &Faults) -> Shown {
        let mut study = Box::new(self.analysis.study.clone());
        let all = |amps| circuit::ThreeCurrents {
            mean: amps,
            rms: amps,
            burst: amps,
        };
        for (id, now) in faults.runs().zip(&frame.runs) {
            if let Some(flow) = study.runs.get_mut(&id) {
                // As a size: which way it flows is told by neither.
                flow.current = all(now.current);
                flow.temperature = now.temperature;
                // What follows is told by the moments themselves.
                flow.time_to_limit = None;
            }
        }
        for (device, now) in faults.devices().zip(&frame.devices) {
            if let Some(flow) = study.parts.get_mut(&device.part) {
                flow.current = all(now.current);
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
        Shown {
            study,
            signs: self.signs(frame, course, faults),
        }
    }

    /// Signs of what is broken, open, off and damaged by then.
    fn signs(&self, frame: &Frame, course: &Course, faults: &Faults) -> Vec<BrokenSign> {
        let mut signs: Vec<BrokenSign> = Vec::new();
        for broken in &self.broken.breaks {
            let drawn = super::marks::contacts(broken).is_some();
            for at in SignAt::of(broken) {
                let word = match &at {
                    SignAt::Along(_, share) if drawn => self.words.figure(precise(share.0, Unit::Percent, 0)),
                    _ if drawn => String::new(),
                    _ => self.words.text("breaking-sign-here"),
                };
                signs.push(BrokenSign {
                    at,
                    word,
                    grave: true,
                    ringed: !drawn,
                });
            }
        }
        let mut sign = |at: SignAt, key: &str, grave: bool| {
            if at.is_on(self.sheet()) && !signs.iter().any(|sign| sign.at == at) {
                signs.push(BrokenSign {
                    at,
                    word: self.words.text(key),
                    grave,
                    ringed: true,
                });
            }
        };
        let case = course.scenarios.get(self.broken.case);
        let moments = case.map_or(&[][..], |case| &case.moments);
        for it in moments.iter().filter(|it| it.time.0 <= frame.time.0) {
            if let Happening::Damaged(run) | Happening::Melts(run) = &it.happening {
                // Beside what was thrown on it.
                let near = |at: &Share| (at.0 - 0.5).abs() < 0.2;
                let is_marked = |broken: &Break| matches!(broken, Break::Cut { run: on, at } | Break::Grounded { run: on, at, .. } if on == run && near(at));
                let beside = if self.broken.breaks.iter().any(is_marked) {
                    0.2
                } else {
                    0.5
                };
                sign(SignAt::Along(*run, Share(beside)), "breaking-sign-damaged", true);
            }
        }
        for (device, now) in faults.devices().zip(&frame.devices) {
            if now.open {
                sign(
                    SignAt::Thing(Thing::Part(device.part)),
                    "breaking-sign-open",
                    false,
                );
            }
        }
        for part in &frame.off {
            sign(SignAt::Thing(Thing::Part(*part)), "breaking-sign-off", false);
        }
        signs
    }

    /// Brings what a sign stands on into view, clear of what lies open along the edges.
    pub(super) fn show_sign(&mut self, at: &SignAt) {
        if let Some(point) = self.sign_point(at) {
            self.show_beside(Rect::from_center_size(point, (160.0, 80.0)));
            self.out.noticed = true;
            self.out.repaint = true;
        }
    }

    /// Along the way of a run, by its length on the board.
    pub(crate) fn point_along(&self, run: RunId, share: Share) -> Option<Point> {
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

    pub(crate) fn sign_point(&self, at: &SignAt) -> Option<Point> {
        match at {
            SignAt::Along(run, share) => self.point_along(*run, *share),
            SignAt::Thing(Thing::Run(run)) => self.point_along(*run, Share(0.5)),
            SignAt::Thing(Thing::Part(part)) => self.layout.part(*part).map(|it| it.middle()),
            SignAt::Thing(Thing::Terminal(at)) => self.layout.stud(at),
        }
    }
}
