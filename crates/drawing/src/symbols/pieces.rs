//! Strokes that symbols are put together from.

use super::Symbol;
use crate::shapes::circle;
use kurbo::{BezPath, Point, Rect, Shape, Vec2};

/// Width of a symbol's lines in board units.
pub(crate) const FINE: f64 = 1.4;
/// Width of bars and thick plates.
pub(crate) const HEAVY: f64 = 3.2;

impl Symbol {
    pub(crate) fn sized(half_width: f64, half_height: f64) -> Self {
        Self {
            half: Vec2::new(half_width, half_height),
            ..Self::default()
        }
    }
    pub(crate) fn line(mut self, points: &[(f64, f64)]) -> Self {
        self.lines.push((way(points), FINE));
        self
    }
    pub(crate) fn thick(mut self, points: &[(f64, f64)]) -> Self {
        self.lines.push((way(points), HEAVY));
        self
    }
    pub(crate) fn dashed(mut self, points: &[(f64, f64)]) -> Self {
        self.dashed.push(way(points));
        self
    }
    pub(crate) fn shape(mut self, points: &[(f64, f64)]) -> Self {
        let mut path = way(points);
        path.close_path();
        self.lines.push((path, FINE));
        self
    }
    pub(crate) fn filled(mut self, points: &[(f64, f64)]) -> Self {
        let mut path = way(points);
        path.close_path();
        self.filled.push(path);
        self
    }
    pub(crate) fn rect(mut self, x0: f64, y0: f64, x1: f64, y1: f64) -> Self {
        self.lines.push((Rect::new(x0, y0, x1, y1).to_path(0.1), FINE));
        self
    }
    pub(crate) fn circle(mut self, x: f64, y: f64, radius: f64) -> Self {
        self.lines.push((circle(Point::new(x, y), radius), FINE));
        self
    }
    pub(crate) fn dot(mut self, x: f64, y: f64, radius: f64) -> Self {
        self.filled.push(circle(Point::new(x, y), radius));
        self
    }
    pub(crate) fn curve(mut self, from: (f64, f64), by: [(f64, f64); 2], to: (f64, f64)) -> Self {
        let mut path = BezPath::new();
        path.move_to(from);
        path.curve_to(by[0], by[1], to);
        self.lines.push((path, FINE));
        self
    }
    pub(crate) fn word(mut self, text: impl Into<String>, x: f64, y: f64, size: f64) -> Self {
        self.words.push((text.into(), Point::new(x, y), size));
        self
    }
    pub(crate) fn with_pin(mut self, name: impl Into<String>, x: f64, y: f64) -> Self {
        self.pins.push((name.into(), Point::new(x, y)));
        self
    }
}

fn way(points: &[(f64, f64)]) -> BezPath {
    let mut path = BezPath::new();
    for (place, point) in points.iter().enumerate() {
        if place == 0 {
            path.move_to(*point);
        } else {
            path.line_to(*point);
        }
    }
    path
}
