//! Where places are drawn: at their metres, pushed apart where they would lie on one another.

use super::{PlanView, to_board};
use crate::display::{Detail, Ink};
use crate::draw::pen::{Pen, solid};
use crate::shapes::circle;
use body::{Hazard, Place, Plan};
use kurbo::{BezPath, Point, Rect, Vec2};

/// Least distance between two places on the drawing.
const APART: f64 = 34.0;
/// Rounds of pushing apart; after some fifty nothing moves any more.
const ROUNDS: usize = 80;
/// How far pillars and doors are folded outwards of the body's side.
const FOLDED: f64 = 46.0;
/// Radius of a place.
pub(super) const DOT: f64 = 4.5;

/// Which side of the car a place is folded out of: pillars and doors stand upright at the edge, and from above they would
/// lie on the sills. -1 is the left side, which is drawn below.
fn folds(plan: &Plan, place: &Place) -> Option<f64> {
    let edge = 0.13 * plan.size.width;
    let upright = place.facts.moving.or(false) || place.facts.airbag.or(false);
    if !place.of_the_form || !upright {
        None
    } else if place.at.y < edge {
        Some(1.0)
    } else if place.at.y > plan.size.width - edge {
        Some(-1.0)
    } else {
        None
    }
}

/// Where each place of the plan is drawn.
pub(super) fn spread(plan: &Plan) -> Vec<Point> {
    let mut fixed = Vec::new();
    let mut spots: Vec<Point> = plan
        .places
        .iter()
        .map(|place| {
            let fold = folds(plan, place);
            fixed.push(fold.is_some());
            match fold {
                Some(down) => {
                    let edge = if down > 0.0 { 0.0 } else { plan.size.width };
                    let door = if place.facts.moving.or(false) { 1.4 } else { 1.0 };
                    to_board(plan, place.at.x, edge) + Vec2::new(0.0, down * FOLDED * door)
                }
                None => to_board(plan, place.at.x, place.at.y),
            }
        })
        .collect();
    for _ in 0..ROUNDS {
        let mut moved = false;
        for a in 0..spots.len() {
            for b in a + 1..spots.len() {
                let (Some(at_a), Some(at_b)) = (spots.get(a).copied(), spots.get(b).copied()) else {
                    continue;
                };
                let between = at_b - at_a;
                let far = between.hypot();
                if far >= APART - 0.01 {
                    continue;
                }
                // Of two at the same spot the later one goes backwards.
                let along = if far > 0.5 {
                    between / far
                } else {
                    Vec2::new(1.0, 0.0)
                };
                let push = along * ((APART - far) / 2.0 + 0.01);
                let stays = |at: usize| fixed.get(at) == Some(&true);
                let (share_a, share_b) = match (stays(a), stays(b)) {
                    (true, false) => (0.0, 2.0),
                    (false, true) => (2.0, 0.0),
                    _ => (1.0, 1.0),
                };
                if let Some(spot) = spots.get_mut(a) {
                    *spot -= push * share_a;
                }
                if let Some(spot) = spots.get_mut(b) {
                    *spot += push * share_b;
                }
                moved = true;
            }
        }
        if !moved {
            break;
        }
    }
    spots
}

/// What the dot of a place covers.
pub(super) fn dot(at: Point) -> Rect {
    Rect::from_center_size(at, (2.0 * DOT + 3.0, 2.0 * DOT + 3.0))
}

/// How a place is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Dot {
    /// Nothing there harms a wire.
    Plain,
    /// It is as hot as the engine bay.
    Hot,
    /// Something moves or crushes there, or an airbag unfolds.
    Grave,
}

impl Dot {
    fn of(place: &Place) -> Self {
        let hazards = place.facts.hazards();
        let grave = |hazard: &Hazard| matches!(hazard, Hazard::Airbag | Hazard::Moving | Hazard::Crush);
        if hazards.iter().any(grave) {
            Self::Grave
        } else if hazards.contains(&Hazard::Heat) {
            Self::Hot
        } else {
            Self::Plain
        }
    }
}

/// One place.
pub(super) fn dot_at(pen: &mut Pen, at: Point, dot: Dot) {
    let outline = solid(Ink::Line, 1.2);
    if dot == Dot::Grave {
        // A triangle, point upwards, as signs that warn have.
        let mut path = BezPath::new();
        path.move_to(at + Vec2::new(0.0, -DOT - 1.0));
        path.line_to(at + Vec2::new(DOT + 1.0, DOT));
        path.line_to(at + Vec2::new(-DOT - 1.0, DOT));
        path.close_path();
        pen.path(Detail::Shape, path, Some(Ink::Paper), Some(outline));
        return;
    }
    pen.path(Detail::Shape, circle(at, DOT), Some(Ink::Paper), Some(outline));
    if dot == Dot::Hot {
        pen.path(Detail::Studs, circle(at, DOT / 2.5), Some(Ink::Line), None);
    }
}

/// The places, by what endangers a wire there.
pub(super) fn draw(pen: &mut Pen, view: &PlanView) {
    for (place, at) in view.plan.places.iter().zip(&view.spots) {
        dot_at(pen, *at, Dot::of(place));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan_view::UNITS_PER_METRE;
    use model::body::{Body, BodyForm};

    #[test]
    fn places_keep_their_distance_and_stay_near_where_they_are() {
        for form in BodyForm::ALL {
            let mut body = Body::default();
            body.shape.form = model::Fact::Given(*form);
            let plan = Plan::of(&body).expect("it has a form");
            let spots = spread(&plan);
            for (a, at) in spots.iter().enumerate() {
                for (b, other) in spots.iter().enumerate().skip(a + 1) {
                    assert!(
                        at.distance(*other) > 0.8 * APART,
                        "{form:?}: {} and {}",
                        plan.places[a].name,
                        plan.places[b].name
                    );
                }
                let place = &plan.places[a];
                if folds(&plan, place).is_none() {
                    let true_spot = to_board(&plan, place.at.x, place.at.y);
                    assert!(
                        at.distance(true_spot) < 0.3 * UNITS_PER_METRE,
                        "{form:?}: {} is drawn {} off",
                        place.name,
                        at.distance(true_spot)
                    );
                }
            }
        }
    }
}
