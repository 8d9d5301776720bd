//! What an overlay says of runs, in letters that can be read at any zoom. A reading keeps clear of parts, marks and other
//! readings, and of runs, so that there is no doubt which run it speaks of: it stands in a gap of its own run, else close
//! beside it, else a little off with a line that leads back.

use super::aside::{Aside, FAR, NEAR, lead};
use super::marks::nearest_of;
use super::overlay::Overlays;
use super::pen::{Pen, Writing};
use crate::display::{Anchor, Detail, Ink, Owner};
use crate::layout::Layout;
use crate::letters::text_width;
use crate::ways::{RUN_LABEL_SIZE, RunWay};
use kurbo::{Point, Rect, Size};
use model::RunId;
use ordered::{OrderedSet, Sort as _};

/// Least height of the letters on screen, in pixels.
const LEAST_PX: f64 = 10.5;
/// The same where there is little room.
const TIGHT_PX: f64 = 8.0;

/// Where a reading may stand: its middle, and whether it is turned along an upright piece.
type Place = (Point, bool);

/// Which runs a reading may lie on.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Over {
    /// None.
    Nothing,
    /// One straight piece of the run it speaks of.
    Itself,
    /// One, whichever.
    One,
    /// The runs that share it.
    Fellows,
    /// Any.
    Anything,
}

pub(crate) struct Readings<'a> {
    pub(crate) layout: &'a Layout,
    pub(crate) overlays: &'a Overlays<'a>,
    pub(crate) zoom: f64,
    /// What they keep clear of; each that is written is added.
    pub(crate) taken: &'a mut Vec<Rect>,
}

impl Readings<'_> {
    /// Writes the readings of these runs. Where runs share one, as those of a channel do, it stands at one of them at
    /// least, and at the others where there is room.
    pub(crate) fn draw(&mut self, pen: &mut Pen, runs: &[(RunId, &RunWay)]) {
        if !pen.shows(Detail::Studs) {
            return;
        }
        let mut said: OrderedSet<&str> = OrderedSet::new();
        // Where shared readings stand.
        let mut named: Vec<(&str, Rect)> = Vec::new();
        for (id, _) in runs {
            let Some(name) = self.overlays.group(*id).filter(|name| said.insert(name)) else {
                continue;
            };
            let mut fellows: Vec<(RunId, &RunWay)> = runs
                .iter()
                .filter(|(other, _)| self.overlays.group(*other) == Some(name))
                .copied()
                .collect();
            let length = |way: &RunWay| way.pieces().map(|(a, b)| a.distance(b)).fold(0.0, f64::max);
            fellows.order_by(|(_, a), (_, b)| length(b).total_cmp(&length(a)));
            let written = self.write_anywhere(pen, &fellows, name);
            named.extend(written.map(|area| (name, area)));
        }
        for (id, way) in runs {
            let Some(text) = self.overlays.label(*id).filter(|text| !text.is_empty()) else {
                continue;
            };
            let Some(name) = self.overlays.group(*id) else {
                let own = [(*id, *way)];
                let _ = if self.overlays.matters(*id) {
                    self.write_anywhere(pen, &own, &text)
                } else {
                    self.write_close(pen, &own, &text, self.size(LEAST_PX))
                };
                continue;
            };
            // Runs side by side are named by one reading beside them.
            let size = self.size(LEAST_PX);
            let is_named = named.iter().any(|(other, area)| {
                let near = area.inflate(2.5 * size, 2.5 * size);
                *other == name && way.areas().any(|piece| piece.overlaps(near))
            });
            if !is_named {
                let area = self.write_close(pen, &[(*id, *way)], &text, size);
                named.extend(area.map(|area| (name, area)));
            }
        }
    }

    fn size(&self, least_px: f64) -> f64 {
        RUN_LABEL_SIZE.max(least_px / self.zoom.max(1e-3))
    }

    /// Writes a text at one of these runs, wherever there is room: a number is worth more than the sight of a run.
    fn write_anywhere(&mut self, pen: &mut Pen, runs: &[(RunId, &RunWay)], text: &str) -> Option<Rect> {
        let (size, tight) = (self.size(LEAST_PX), self.size(TIGHT_PX));
        self.write_close(pen, runs, text, size)
            .or_else(|| self.write_off(pen, runs, text, size, NEAR, Over::Nothing))
            .or_else(|| self.write_close(pen, runs, text, tight))
            .or_else(|| self.write_off(pen, runs, text, tight, NEAR, Over::Nothing))
            .or_else(|| self.write_off(pen, runs, text, tight, NEAR, Over::One))
            .or_else(|| self.write_off(pen, runs, text, tight, FAR, Over::Nothing))
            .or_else(|| self.write_off(pen, runs, text, tight, FAR, Over::One))
            .or_else(|| {
                [Over::Fellows, Over::Anything].into_iter().find_map(|over| {
                    runs.iter()
                        .find_map(|(id, way)| self.write(pen, *id, text, tight, &on_way(way), over))
                })
            })
    }

    /// Writes a text in a gap of one of these runs, else close beside one.
    fn write_close(
        &mut self,
        pen: &mut Pen,
        runs: &[(RunId, &RunWay)],
        text: &str,
        size: f64,
    ) -> Option<Rect> {
        let half = text_width(text, size, false) / 2.0;
        runs.iter()
            .find_map(|(id, way)| self.write(pen, *id, text, size, &on_way(way), Over::Itself))
            .or_else(|| {
                runs.iter().find_map(|(id, way)| {
                    self.write(pen, *id, text, size, &beside_way(way, size, half), Over::Nothing)
                })
            })
    }

    /// Writes a text a little off one of these runs, with a line that leads to it.
    fn write_off(
        &mut self,
        pen: &mut Pen,
        runs: &[(RunId, &RunWay)],
        text: &str,
        size: f64,
        rings: i32,
        over: Over,
    ) -> Option<Rect> {
        let letters = Size::new(text_width(text, size, false) + 3.0, size + 2.0);
        runs.iter().find_map(|(id, way)| {
            let aside = Aside {
                layout: self.layout,
                taken: self.taken,
                size: letters,
            };
            let is_clear = |area| !self.is_on_runs(area, *id, over);
            let middles = longest(way).into_iter().map(|(a, b)| a.midpoint(b));
            let (spot, end) = std::iter::once(way.label_at)
                .chain(middles)
                .find_map(|middle| aside.find(middle, rings, is_clear, |spot| nearest_within(way, spot)))?;
            let area = self.write(pen, *id, text, size, &[(spot, false)], over)?;
            lead(pen, area, end, self.zoom, self.taken);
            Some(area)
        })
    }

    /// Writes a text at the first of these places that is clear, and says where it stands.
    fn write(
        &mut self,
        pen: &mut Pen,
        id: RunId,
        text: &str,
        size: f64,
        places: &[Place],
        over: Over,
    ) -> Option<Rect> {
        for (middle, upright) in places {
            let at = if *upright {
                Point::new(middle.x + 0.28 * size, middle.y)
            } else {
                Point::new(middle.x, middle.y + 0.28 * size)
            };
            let area = super::text_area(text, at, size, Anchor::Middle, false, *upright).inflate(1.5, 1.0);
            if self.taken.iter().any(|other| other.overlaps(area))
                || self.layout.is_on_part(area)
                || self.is_on_runs(area, id, over)
            {
                continue;
            }
            self.taken.push(area);
            pen.owner(Owner::Run(id));
            pen.area(Detail::Studs, area, Some(Ink::Paper), None);
            let writing = Writing {
                anchor: Anchor::Middle,
                upright: *upright,
                ..Writing::new(text.to_owned(), at, size, Ink::Text)
            };
            pen.write(Detail::Studs, writing);
            return Some(area);
        }
        None
    }

    /// Whether an area lies on a run that it must not lie on.
    fn is_on_runs(&self, area: Rect, id: RunId, over: Over) -> bool {
        if over == Over::Anything {
            return false;
        }
        if over == Over::One {
            let mut first = None;
            return self.layout.run_index.any_near(area, |other, held| {
                held.overlaps(area) && *first.get_or_insert(other) != other
            });
        }
        let group = self.overlays.group(id);
        self.layout.run_index.any_near(area, |other, held| {
            if !held.overlaps(area) {
                return false;
            }
            let Some(way) = self.layout.runs.get(&other) else {
                return false;
            };
            let is_fellow = other == id || (group.is_some() && self.overlays.group(other) == group);
            match over {
                // It hides no bend, so that the run is seen to go on.
                Over::Itself if other == id => {
                    way.points.iter().any(|at| area.inflate(3.0, 3.0).contains(*at))
                }
                Over::Fellows if is_fellow => false,
                _ => way.areas().any(|piece| piece.overlaps(area)),
            }
        })
    }
}

/// The nearest point of a run, clear of its ends, where it lies on parts and beside other runs.
fn nearest_within(way: &RunWay, at: Point) -> Option<Point> {
    way.pieces()
        .map(|(a, b)| {
            let off = (b - a) * (8.0 / a.distance(b).max(1.0)).min(0.45);
            nearest_of(Rect::from_points(a + off, b - off), at)
        })
        .min_by(|a, b| a.distance(at).total_cmp(&b.distance(at)))
}

/// The straight pieces of a run, the longest first.
fn longest(way: &RunWay) -> Vec<(Point, Point)> {
    let mut pieces: Vec<(Point, Point)> = way.pieces().collect();
    pieces.order_by(|(a, b), (c, d)| c.distance(*d).total_cmp(&a.distance(*b)));
    pieces
}

/// Places on a run, the best first: where its label stands, then on its longest pieces.
fn on_way(way: &RunWay) -> Vec<Place> {
    let mut all: Vec<Place> = Vec::new();
    if let Some(label) = &way.label {
        all.extend([(label.area.center(), false), (label.area.center(), label.upright)]);
    }
    let pieces = longest(way);
    for share in [0.5, 0.3, 0.7, 0.15, 0.85] {
        for (a, b) in pieces.iter().take(4) {
            let at = a.lerp(*b, share);
            all.push((at, false));
            if a.x == b.x {
                all.push((at, true));
            }
        }
    }
    all
}

/// Places close beside a run for letters of this size in a text of this half-width: level ones first, which are easier to
/// read.
fn beside_way(way: &RunWay, size: f64, half: f64) -> Vec<Place> {
    let pieces = longest(way);
    let mut all = Vec::new();
    let near = way.width / 2.0 + 0.5 * size + 2.5;
    for upright in [false, true] {
        for further in [0.0, 0.6 * size, 1.2 * size] {
            for share in [0.5, 0.3, 0.7, 0.1, 0.9] {
                for (a, b) in pieces.iter().take(6) {
                    let at = a.lerp(*b, share);
                    let is_upright = a.x == b.x;
                    for sign in [-1.0, 1.0] {
                        if !is_upright && !upright {
                            all.push((Point::new(at.x, at.y + sign * (near + further)), false));
                        } else if is_upright {
                            let across = if upright {
                                near
                            } else {
                                way.width / 2.0 + half + 4.0
                            };
                            all.push((Point::new(at.x + sign * (across + further), at.y), upright));
                        }
                    }
                }
            }
        }
    }
    all
}
