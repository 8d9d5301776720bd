//! What an overlay says of runs, in letters that can be read at any zoom. A reading keeps clear of parts, marks and other
//! readings, and of other runs, so that there is no doubt which run it speaks of.

use super::overlay::Overlays;
use super::pen::{Pen, Writing};
use crate::display::{Anchor, Detail, Ink, Owner};
use crate::layout::Layout;
use crate::ways::{RUN_LABEL_SIZE, RunWay};
use kurbo::{Point, Rect};
use model::RunId;
use ordered::{OrderedSet, Sort as _};

/// Least height of the letters on screen, in pixels.
const LEAST_PX: f64 = 10.5;
/// The same where there is little room.
const TIGHT_PX: f64 = 8.0;

/// Where a reading may stand: its middle, and whether it is turned along an upright piece.
type Place = (Point, bool);

pub(crate) struct Readings<'a> {
    pub(crate) layout: &'a Layout,
    pub(crate) overlays: &'a Overlays<'a>,
    pub(crate) zoom: f64,
    /// What they keep clear of; each that is written is added.
    pub(crate) taken: &'a mut Vec<Rect>,
}

impl Readings<'_> {
    /// Writes the readings of these runs. Where runs share one, as those of a channel do, it stands at one of them at
    /// least, if need be beside it, and at the others where there is room.
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
            // The shorter wording, without what stands behind a double space, before a place where it is hardly read.
            let short = name.split("  ").next().unwrap_or(name);
            let ways = [
                (name, LEAST_PX, false),
                (name, LEAST_PX, true),
                (short, LEAST_PX, true),
                (short, TIGHT_PX, true),
            ];
            let written = ways.into_iter().find_map(|(text, px, beside)| {
                let size = self.size(px);
                fellows
                    .iter()
                    .find_map(|(id, way)| self.write(pen, *id, text, size, &places(way, size, beside), true))
            });
            named.extend(written.map(|area| (name, area)));
        }
        for (id, way) in runs {
            let Some(text) = self.overlays.label(*id).filter(|text| !text.is_empty()) else {
                continue;
            };
            let size = self.size(LEAST_PX);
            let places = places(way, size, false);
            let Some(name) = self.overlays.group(*id) else {
                // A number of its own is worth more than the sight of the runs beside.
                let _ = self
                    .write(pen, *id, &text, size, &places, true)
                    .or_else(|| self.write(pen, *id, &text, size, &places, false));
                continue;
            };
            // Two leads side by side are named by one reading over both.
            let is_named = named
                .iter()
                .any(|(other, area)| *other == name && way.areas().any(|piece| piece.overlaps(*area)));
            if !is_named && let Some(area) = self.write(pen, *id, &text, size, &places, true) {
                named.push((name, area));
            }
        }
    }

    fn size(&self, least_px: f64) -> f64 {
        RUN_LABEL_SIZE.max(least_px / self.zoom.max(1e-3))
    }

    /// Writes a text at the first of these places that is clear, and says where it stands.
    fn write(
        &mut self,
        pen: &mut Pen,
        id: RunId,
        text: &str,
        size: f64,
        places: &[Place],
        strictly: bool,
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
                || (strictly && self.is_on_others(area, id))
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

    /// Whether an area lies on a run that it does not speak of.
    fn is_on_others(&self, area: Rect, id: RunId) -> bool {
        let group = self.overlays.group(id);
        self.layout.run_index.any_near(area, |other, held| {
            other != id
                && held.overlaps(area)
                && (group.is_none() || self.overlays.group(other) != group)
                && self
                    .layout
                    .runs
                    .get(&other)
                    .is_some_and(|way| way.areas().any(|piece| piece.overlaps(area)))
        })
    }
}

/// Places along a run, the best first: where its label stands, on its longest pieces, and, when asked for, beside them.
fn places(way: &RunWay, size: f64, beside: bool) -> Vec<Place> {
    let mut pieces: Vec<(Point, Point)> = way.pieces().collect();
    pieces.order_by(|(a, b), (c, d)| c.distance(*d).total_cmp(&a.distance(*b)));
    let mut all: Vec<Place> = Vec::new();
    if let Some(label) = &way.label {
        all.extend([(label.area.center(), false), (label.area.center(), label.upright)]);
    }
    for share in [0.5, 0.3, 0.7, 0.15, 0.85] {
        for (a, b) in pieces.iter().take(4) {
            let at = a.lerp(*b, share);
            all.push((at, false));
            if a.x == b.x {
                all.push((at, true));
            }
        }
    }
    if beside {
        let near = way.width / 2.0 + 0.5 * size + 2.0;
        for aside in [near, near + size, near + 2.0 * size] {
            for share in [0.5, 0.3, 0.7, 0.1, 0.9] {
                for (a, b) in pieces.iter().take(6) {
                    let at = a.lerp(*b, share);
                    for aside in [-aside, aside] {
                        all.push(if a.x == b.x {
                            (Point::new(at.x + aside, at.y), true)
                        } else {
                            (Point::new(at.x, at.y + aside), false)
                        });
                    }
                }
            }
        }
    }
    all
}
