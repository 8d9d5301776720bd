//! Round shapes as paths. Built from the four quarters that they always have here, without the sines and cosines of an
//! arc of any angle: those would be the page's only ones.

use kurbo::{BezPath, Point, Rect, Vec2};

/// How far the control points of a quarter of a circle stand from its ends, over the radius: 4/3·(√2 − 1), with which the
/// curve is never off by more than 0.03 % of the radius.
const ARM: f64 = 0.552_284_749_830_793_4;

/// A circle.
#[must_use]
pub fn circle(middle: Point, radius: f64) -> BezPath {
    rounded(
        Rect::from_center_size(middle, (2.0 * radius, 2.0 * radius)),
        radius,
    )
}

/// An area with rounded corners; the radius is at most half of its shorter side.
#[must_use]
pub fn rounded(area: Rect, radius: f64) -> BezPath {
    let area = area.abs();
    let radius = radius.min(area.width() / 2.0).min(area.height() / 2.0).max(0.0);
    let corners = [
        (
            Point::new(area.x0, area.y0),
            Vec2::new(0.0, 1.0),
            Vec2::new(1.0, 0.0),
        ),
        (
            Point::new(area.x1, area.y0),
            Vec2::new(-1.0, 0.0),
            Vec2::new(0.0, 1.0),
        ),
        (
            Point::new(area.x1, area.y1),
            Vec2::new(0.0, -1.0),
            Vec2::new(-1.0, 0.0),
        ),
        (
            Point::new(area.x0, area.y1),
            Vec2::new(1.0, 0.0),
            Vec2::new(0.0, -1.0),
        ),
    ];
    let mut path = BezPath::new();
    let mut last = None;
    for (corner, back, on) in corners {
        let (from, to) = (corner + back * radius, corner + on * radius);
        match last {
            None => path.move_to(from),
            Some(last) if from.distance_squared(last) > 1e-12 => path.line_to(from),
            // Round all along: no straight piece between the quarters.
            Some(_) => {}
        }
        let arm = radius * (1.0 - ARM);
        path.curve_to(corner + back * arm, corner + on * arm, to);
        last = Some(to);
    }
    path.close_path();
    path
}

#[cfg(test)]
mod tests {
    use super::*;
    use kurbo::{ParamCurveArclen, PathSeg, Shape};

    #[test]
    fn round_is_round() {
        let (middle, radius) = (Point::new(7.0, -3.0), 5.0);
        let path = circle(middle, radius);
        for at in path.segments().filter_map(|seg| match seg {
            PathSeg::Cubic(curve) => Some(curve),
            _ => None,
        }) {
            for n in 0..=20 {
                let off = kurbo::ParamCurve::eval(&at, f64::from(n) / 20.0).distance(middle) - radius;
                assert!(off.abs() < 3e-4 * radius, "{off}");
            }
        }
        // Length and area of a circle, by geometry.
        let length: f64 = path.segments().map(|seg| seg.arclen(1e-6)).sum();
        assert!((length / (std::f64::consts::TAU * radius) - 1.0).abs() < 3e-4);
        assert!((path.area().abs() / (std::f64::consts::PI * radius * radius) - 1.0).abs() < 1e-3);
        let area = Rect::new(0.0, 0.0, 40.0, 20.0);
        assert_eq!(rounded(area, 4.0).bounding_box(), area);
        // The library's own, which goes by arcs.
        let other = area.to_rounded_rect(4.0).to_path(0.1);
        assert!((rounded(area, 4.0).area() - other.area()).abs() < 1e-2);
        assert_eq!(rounded(area, 99.0).bounding_box(), area);
    }
}
