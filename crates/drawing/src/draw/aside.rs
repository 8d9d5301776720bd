//! Room for a text that finds none where it belongs: a little off, with a thin line that leads back.

use super::marks::{around, nearest_of};
use super::pen::Pen;
use crate::display::{Detail, Ink};
use crate::layout::Layout;
use kurbo::{BezPath, Point, Rect, Size};

/// How many squares of places are tried around the middle.
pub(super) const FAR: i32 = 20;
/// The same where the line back is to be short enough to be followed at a glance.
pub(super) const NEAR: i32 = 5;

/// Looks around a point for room for a level text of this size.
pub(super) struct Aside<'a> {
    pub(super) layout: &'a Layout,
    /// What it keeps clear of, and its line as well.
    pub(super) taken: &'a [Rect],
    /// Size of the letters' box.
    pub(super) size: Size,
}

impl Aside<'_> {
    /// The nearest place that is clear, and where the line from there ends: `end` tells it for each place. The very end of the
    /// line may lie under a mark, which as a rule speaks of the same thing; where there is no other way, more of it.
    pub(super) fn find(
        &self,
        middle: Point,
        rings: i32,
        is_clear: impl Fn(Rect) -> bool,
        end: impl Fn(Point) -> Option<Point>,
    ) -> Option<(Point, Point)> {
        [1.6, 4.0, 10.0].into_iter().find_map(|hidden| {
            around(middle, 1.2 * self.size.height, rings).find_map(|spot| {
                let end = end(spot)?;
                let letters = Rect::from_center_size(spot, self.size);
                let is_free = !self.taken.iter().any(|other| other.overlaps(letters))
                    && !self.layout.is_on_part(letters)
                    && is_clear(letters)
                    && self.can_lead(nearest_of(letters, end), end, hidden * self.size.height);
                is_free.then_some((spot, end))
            })
        })
    }
    /// Whether a line can be drawn here without a part, a mark or a text beneath, but for the last of it.
    fn can_lead(&self, start: Point, end: Point, hidden: f64) -> bool {
        along(start, end).all(|spot| {
            let is_at_end = spot.center().distance(end) < hidden;
            !self.layout.is_on_part(spot)
                && (is_at_end || !self.taken.iter().any(|other| other.overlaps(spot)))
        })
    }
}

/// Draws the line from a text that stands off, and takes its room.
pub(super) fn lead(pen: &mut Pen, letters: Rect, end: Point, zoom: f64, taken: &mut Vec<Rect>) {
    let start = nearest_of(letters, end);
    let mut line = BezPath::new();
    line.move_to(start);
    line.line_to(end);
    pen.line(Detail::Studs, line, Ink::Faint, 0.8 / zoom.max(1e-3));
    taken.extend(along(start, end));
}

/// Small boxes along a line, so close together that nothing lies between them.
fn along(start: Point, end: Point) -> impl Iterator<Item = Rect> {
    let steps = libm::ceil(start.distance(end) / 5.0).clamp(1.0, 200.0);
    (0..=steps as u32).map(move |n| {
        let at = start.lerp(end, f64::from(n) / steps);
        Rect::from_center_size(at, (4.0, 4.0))
    })
}
