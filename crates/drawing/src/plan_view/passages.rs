//! Passages on the plan: thin lines from place to place, each kind with its sign in the middle.

use super::PlanView;
use crate::display::{Detail, Ink, Stroke};
use crate::draw::pen::{Pen, solid};
use crate::shapes::circle;
use kurbo::{BezPath, Point};
use model::body::PassageKind;

/// Half the size of a sign.
const SIGN: f64 = 4.0;

pub(super) fn draw(pen: &mut Pen, view: &PlanView) {
    for passage in &view.plan.passages {
        let [Some(a), Some(b)] = passage.ends.map(|end| view.spots.get(end).copied()) else {
            continue;
        };
        let kind = passage.kind.or(PassageKind::Open);
        let mut line = BezPath::new();
        line.move_to(a);
        line.line_to(b);
        let dash = match kind {
            PassageKind::Open => None,
            PassageKind::Underbody => Some((2.0, 5.0)),
            _ => Some((5.0, 3.0)),
        };
        let stroke = Stroke {
            ink: Ink::Dimmed,
            width: 1.0,
            dash,
        };
        pen.path(Detail::Shape, line, None, Some(stroke));
        if let Some(sign) = sign(kind, a, b) {
            pen.path(
                Detail::Studs,
                sign,
                Some(Ink::Paper),
                Some(solid(Ink::Faint, 1.0)),
            );
        }
    }
}

/// The sign of a kind in the middle of its passage: a ring for a grommet, a cross for a bare hole, folds for a gaiter, a
/// pivot for a hinge, bars for a seat that presses on it. The others have none.
pub(super) fn sign(kind: PassageKind, a: Point, b: Point) -> Option<BezPath> {
    let middle = a.midpoint(b);
    let far = a.distance(b);
    if far < 4.0 * SIGN {
        return None;
    }
    let along = (b - a) / far;
    let across = kurbo::Vec2::new(-along.y, along.x);
    let mut path = BezPath::new();
    match kind {
        PassageKind::Grommet => return Some(circle(middle, SIGN)),
        PassageKind::Hinge => {
            path = circle(middle, SIGN / 2.0);
            path.move_to(middle - across * SIGN * 1.5);
            path.line_to(middle + across * SIGN * 1.5);
        }
        PassageKind::Hole => {
            for turn in [along + across, along - across] {
                path.move_to(middle - turn * SIGN * 0.8);
                path.line_to(middle + turn * SIGN * 0.8);
            }
        }
        PassageKind::Gaiter => {
            let step = |n: f64, up: f64| middle + along * n * SIGN * 0.7 + across * up * SIGN;
            path.move_to(step(-3.0, -1.0));
            for (n, up) in [
                (-2.0, 1.0),
                (-1.0, -1.0),
                (0.0, 1.0),
                (1.0, -1.0),
                (2.0, 1.0),
                (3.0, -1.0),
            ] {
                path.line_to(step(n, up));
            }
        }
        PassageKind::SeatRail | PassageKind::Seat => {
            for n in [-0.6, 0.6] {
                path.move_to(middle + along * SIGN * n - across * SIGN);
                path.line_to(middle + along * SIGN * n + across * SIGN);
            }
        }
        _ => return None,
    }
    Some(path)
}
