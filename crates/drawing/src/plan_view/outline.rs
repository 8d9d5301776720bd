//! The body from above: outline, glass, doors, wheels, seats, and its dimensions. Everything follows from the size and the
//! places of the plan.

use super::lettering::Lettering;
use super::{PlanView, UNITS_PER_METRE, body_box, to_board};
use crate::display::{Anchor, Detail, Ink, Stroke};
use crate::draw::pen::{Pen, Writing, solid};
use crate::shapes::{circle, rounded};
use body::Plan;
use kurbo::{BezPath, Point, Rect, Vec2};
use model::body::{Body, BodyForm};
use model::quantity::Metres;
use words::{Words, say};

/// What the dimension lines say: length, wheelbase, width. What is usual for the form and not told is marked as assumed.
pub(super) fn measures(plan: &Plan, body: &Body, words: &Words) -> [String; 3] {
    let size = plan.size;
    [
        (body.shape.length, size.length),
        (body.shape.wheelbase, size.wheelbase),
        (body.shape.width, size.width),
    ]
    .map(|(told, is)| {
        let told = if told.is_unknown() {
            model::Fact::Assumed(Metres(is))
        } else {
            told
        };
        told.marked("?", |metres| crate::numbers::quantity(words, *metres))
    })
}

/// A smooth curve through points (Catmull and Rom's, as Béziers); a point given twice is a corner.
fn smooth(points: &[Point]) -> BezPath {
    let mut path = BezPath::new();
    let at = |place: usize| points.get(place.min(points.len().saturating_sub(1))).copied();
    let Some(first) = at(0) else { return path };
    path.move_to(first);
    for place in 0..points.len().saturating_sub(1) {
        let (Some(before), Some(from), Some(to), Some(after)) = (
            at(place.saturating_sub(1)),
            at(place),
            at(place + 1),
            at(place + 2),
        ) else {
            continue;
        };
        // No arm longer than a third of its piece, so that a short piece beside a long one does not bulge.
        let arm = |along: Vec2| {
            let far = along.hypot();
            let most = from.distance(to) / 3.0;
            if far > 1e-9 {
                along / far * (far / 6.0).min(most)
            } else {
                Vec2::ZERO
            }
        };
        path.curve_to(from + arm(to - before), to - arm(after - from), to);
    }
    path
}

/// Half of the outline: how far back, as a share of the length, and how far out, as a share of the width.
fn half_outline(plan: &Plan) -> Vec<(f64, f64)> {
    let size = plan.size;
    let front = front_axle(plan) / size.length;
    let rear = front + size.wheelbase / size.length;
    match plan.form {
        BodyForm::Van | BodyForm::Camper => vec![
            (0.0, 0.0),
            (0.002, 0.2),
            (0.014, 0.36),
            (0.045, 0.45),
            (front, 0.495),
            (0.5, 0.5),
            (rear, 0.5),
            (0.985, 0.495),
            (0.985, 0.495),
            (1.0, 0.465),
            (1.0, 0.465),
            (1.0, 0.0),
        ],
        BodyForm::PickUp => vec![
            (0.0, 0.0),
            (0.003, 0.24),
            (0.018, 0.39),
            (0.055, 0.46),
            (front, 0.495),
            (0.5, 0.495),
            (rear, 0.5),
            (0.98, 0.49),
            (0.98, 0.49),
            (1.0, 0.45),
            (1.0, 0.45),
            (1.0, 0.0),
        ],
        _ => vec![
            (0.0, 0.0),
            (0.004, 0.2),
            (0.022, 0.34),
            (0.07, 0.44),
            (front, 0.49),
            (0.42, 0.492),
            (0.6, 0.5),
            (rear, 0.492),
            (0.93, 0.455),
            (0.978, 0.38),
            (0.996, 0.24),
            (1.0, 0.0),
        ],
    }
}

/// Where the front axle lies: in the middle of the engine bay, as the plan has it.
fn front_axle(plan: &Plan) -> f64 {
    plan.place("engine-bay-left")
        .map_or(0.2 * plan.size.length, |place| place.at.x)
}

fn x_of(plan: &Plan, place: &str, otherwise: f64) -> f64 {
    plan.place(place)
        .filter(|place| place.of_the_form)
        .map_or(otherwise, |place| place.at.x)
}

pub(super) fn draw(pen: &mut Pen, view: &PlanView) {
    let plan = &view.plan;
    let size = plan.size;
    let middle = size.width / 2.0;
    let right: Vec<Point> = half_outline(plan)
        .into_iter()
        .map(|(along, out)| to_board(plan, along * size.length, middle + out * size.width))
        .collect();
    let mut all = right.clone();
    // Down the right side and back up the left, which is its mirror image.
    let axis = to_board(plan, 0.0, middle).y;
    all.extend(
        right
            .iter()
            .rev()
            .skip(1)
            .map(|at| Point::new(at.x, 2.0 * axis - at.y)),
    );
    let mut outline = smooth(&all);
    outline.close_path();
    wheels(pen, plan);
    pen.path(
        Detail::Shape,
        outline,
        Some(Ink::PartFill),
        Some(solid(Ink::Frame, 1.8)),
    );
    lines(pen, plan);
    seats(pen, plan);
    dimensions(pen, view);
}

/// Four wheels, half hidden by the body.
fn wheels(pen: &mut Pen, plan: &Plan) {
    let front = front_axle(plan);
    for axle in [front, front + plan.size.wheelbase] {
        for side in [0.1, plan.size.width - 0.1] {
            let area = Rect::from_center_size(
                to_board(plan, axle, side),
                (0.64 * UNITS_PER_METRE, 0.26 * UNITS_PER_METRE),
            );
            pen.path(
                Detail::Shape,
                rounded(area, 8.0),
                Some(Ink::Dimmed),
                Some(solid(Ink::Frame, 1.2)),
            );
        }
    }
}

/// Lines across the body: bonnet, glass, partition, edge of the load area, shut lines of doors and lids.
fn lines(pen: &mut Pen, plan: &Plan) {
    let size = plan.size;
    let faint = |width: f64| Stroke {
        ink: Ink::Dimmed,
        width,
        dash: None,
    };
    // Across the car at x, bowed forwards by `bow`, from `inset` (a share of the width) on both sides.
    let across = |x: f64, bow: f64, inset: f64| {
        let [left, right] = [inset, 1.0 - inset].map(|share| to_board(plan, x, share * size.width));
        let peak = to_board(plan, x - 2.0 * bow, size.width / 2.0);
        (left, peak, right)
    };
    let line = |pen: &mut Pen, x: f64, bow: f64, inset: f64| {
        let (left, peak, right) = across(x, bow, inset);
        let mut path = BezPath::new();
        path.move_to(left);
        path.quad_to(peak, right);
        pen.path(Detail::Shape, path, None, Some(faint(1.4)));
    };
    let glass = |pen: &mut Pen, from: (f64, f64, f64), to: (f64, f64, f64)| {
        let (a, a_peak, b) = across(from.0, from.1, from.2);
        let (c, c_peak, d) = across(to.0, to.1, to.2);
        let mut path = BezPath::new();
        path.move_to(a);
        path.quad_to(a_peak, b);
        path.line_to(d);
        path.quad_to(c_peak, c);
        path.close_path();
        pen.path(Detail::Shape, path, Some(Ink::Ruling), Some(faint(1.2)));
    };
    let bulkhead = x_of(plan, "bulkhead-left", 0.28 * size.length);
    let dash = x_of(plan, "dash-left", bulkhead + 0.35);
    let pillar = x_of(plan, "b-pillar-left", 0.58 * size.length);
    line(pen, bulkhead, 0.1, 0.1);
    glass(pen, (bulkhead + 0.1, 0.08, 0.1), (dash + 0.3, 0.05, 0.17));
    let tail = size.length;
    match plan.form {
        BodyForm::Hatchback | BodyForm::Estate => {
            glass(pen, (tail - 0.42, -0.04, 0.19), (tail - 0.14, -0.06, 0.14));
        }
        BodyForm::Saloon => {
            glass(pen, (tail - 1.25, -0.04, 0.2), (tail - 0.82, -0.06, 0.13));
            line(pen, tail - 0.78, -0.05, 0.1);
        }
        BodyForm::Van => {
            let wall = x_of(plan, "partition-left", pillar + 0.1);
            line(pen, wall, 0.0, 0.03);
            line(pen, wall + 0.04, 0.0, 0.03);
        }
        BodyForm::Camper => {}
        BodyForm::PickUp => {
            let wall = x_of(plan, "cab-back-left", 0.66 * size.length) + 0.1;
            line(pen, wall, 0.0, 0.06);
            let bed = Rect::from_points(
                to_board(plan, wall + 0.08, 0.07 * size.width),
                to_board(plan, tail - 0.1, 0.93 * size.width),
            );
            pen.path(Detail::Shape, rounded(bed, 6.0), None, Some(faint(1.4)));
        }
    }
    // Doors: a short line into each side where they close.
    let mut doors = BezPath::new();
    let rear = x_of(plan, "rear-door-left", pillar);
    let rear_end = if rear > pillar && plan.form != BodyForm::Van && plan.form != BodyForm::Camper {
        Some(2.0 * rear - pillar)
    } else {
        None
    };
    for x in [Some(dash - 0.1), Some(pillar), rear_end].into_iter().flatten() {
        for (from, to) in [(0.005, 0.075), (0.995, 0.925)] {
            doors.move_to(to_board(plan, x, from * size.width));
            doors.line_to(to_board(plan, x + 0.02, to * size.width));
        }
    }
    pen.path(Detail::Shape, doors, None, Some(faint(1.4)));
}

/// Seats, and what else stands in the car, as far as the form has places for it.
fn seats(pen: &mut Pen, plan: &Plan) {
    let thin = solid(Ink::Dimmed, 1.2);
    let seat = |pen: &mut Pen, place: &str, (long, wide): (f64, f64)| {
        let Some(place) = plan.place(place).filter(|place| place.of_the_form) else {
            return;
        };
        let area = Rect::from_center_size(
            to_board(plan, place.at.x + 0.05, place.at.y),
            (long * UNITS_PER_METRE, wide * UNITS_PER_METRE),
        );
        pen.path(Detail::Shape, rounded(area, 14.0), None, Some(thin));
        // The back, at its rear.
        let back = Rect::new(area.x1 - 0.12 * UNITS_PER_METRE, area.y0, area.x1, area.y1);
        pen.path(Detail::Shape, rounded(back, 10.0), None, Some(thin));
    };
    let wide = 0.28 * plan.size.width;
    for side in ["left", "right"] {
        seat(pen, &format!("under-seat-{side}"), (0.56, wide));
        seat(
            pen,
            &format!("under-rear-seat-{side}"),
            (0.54, 0.4 * plan.size.width),
        );
        if let Some(cupboard) = plan.place(&format!("cupboard-{side}")) {
            let area = Rect::from_center_size(
                to_board(plan, cupboard.at.x, cupboard.at.y),
                (1.3 * UNITS_PER_METRE, 0.45 * UNITS_PER_METRE),
            );
            pen.path(Detail::Shape, rounded(area, 3.0), None, Some(thin));
        }
    }
    if let Some(bed) = plan.place("under-bed") {
        let area = Rect::from_center_size(
            to_board(plan, bed.at.x, bed.at.y),
            (1.1 * UNITS_PER_METRE, 0.85 * plan.size.width * UNITS_PER_METRE),
        );
        pen.path(Detail::Shape, rounded(area, 10.0), None, Some(thin));
    }
    if let Some(column) = plan.place("steering-column").filter(|place| place.of_the_form) {
        let at = to_board(plan, column.at.x, column.at.y);
        let radius = 0.18 * UNITS_PER_METRE;
        // Seen from above, leaning: a flat ellipse.
        let squeeze = kurbo::Affine::translate(at.to_vec2()) * kurbo::Affine::scale_non_uniform(0.45, 1.0);
        pen.path(
            Detail::Shape,
            squeeze * circle(Point::ORIGIN, radius),
            None,
            Some(thin),
        );
    }
}

/// The dimension lines: from, to, and what stands at each: wheelbase and length below the car, width behind it.
fn dimension_lines(
    plan: &Plan,
    measures: &[String; 3],
    lettering: Lettering,
) -> [(Point, Point, Writing); 3] {
    let car = body_box(plan);
    let [length, wheelbase, width] = measures;
    let front = front_axle(plan) * UNITS_PER_METRE;
    let rear = front + plan.size.wheelbase * UNITS_PER_METRE;
    let letters = lettering.names();
    let below = car.y1 + 96.0;
    let lying = |from: f64, to: f64, y: f64, text: &str| {
        let at = Point::new((from + to) / 2.0, y - 3.0);
        let writing = Writing {
            anchor: Anchor::Middle,
            halo: true,
            ..Writing::new(text, at, letters, Ink::Faint)
        };
        (Point::new(from, y), Point::new(to, y), writing)
    };
    let x = car.x1 + 70.0;
    let at = Point::new(x - 3.0, car.center().y);
    let upright = Writing {
        anchor: Anchor::Middle,
        upright: true,
        ..Writing::new(width.as_str(), at, letters, Ink::Faint)
    };
    [
        lying(front, rear, below, wheelbase),
        lying(car.x0, car.x1, below + 15.0 + letters, length),
        (Point::new(x, car.y0), Point::new(x, car.y1), upright),
    ]
}

/// The word that says which end is the front.
fn front_word(plan: &Plan, words: &Words, lettering: Lettering) -> Writing {
    let car = body_box(plan);
    let at = Point::new(car.x0 - 60.0, car.center().y - 9.0);
    Writing::new(words.say(&say!("drawn-front")), at, lettering.names(), Ink::Faint)
}

/// What dimensions and the word for the front cover.
pub(super) fn areas(plan: &Plan, measures: &[String; 3], words: &Words, lettering: Lettering) -> Vec<Rect> {
    dimension_lines(plan, measures, lettering)
        .into_iter()
        .map(|(.., writing)| writing)
        .chain([front_word(plan, words, lettering)])
        .map(|writing| writing.area())
        .collect()
}

fn dimensions(pen: &mut Pen, view: &PlanView) {
    for (from, to, writing) in dimension_lines(&view.plan, &view.measures, view.lettering) {
        let along = (to - from) / from.distance(to).max(1.0);
        let across = Vec2::new(-along.y, along.x);
        let mut path = BezPath::new();
        path.move_to(from);
        path.line_to(to);
        for (end, inwards) in [(from, along), (to, -along)] {
            path.move_to(end - across * 6.0);
            path.line_to(end + across * 6.0);
            path.move_to(end + inwards * 7.0 - across * 3.0);
            path.line_to(end);
            path.line_to(end + inwards * 7.0 + across * 3.0);
        }
        pen.line(Detail::Studs, path, Ink::Faint, 0.9);
        pen.write(Detail::Labels, writing);
    }
    // An arrow towards the front.
    let word = front_word(&view.plan, &view.words, view.lettering);
    let tip = word.at + Vec2::new(0.0, 9.0);
    let mut arrow = BezPath::new();
    arrow.move_to(tip + Vec2::new(34.0, 0.0));
    arrow.line_to(tip);
    arrow.move_to(tip + Vec2::new(9.0, -5.0));
    arrow.line_to(tip);
    arrow.line_to(tip + Vec2::new(9.0, 5.0));
    pen.line(Detail::Shape, arrow, Ink::Faint, 1.4);
    pen.write(Detail::Labels, word);
}
