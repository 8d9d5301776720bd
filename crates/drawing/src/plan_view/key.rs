//! What the signs on the plan mean: a row below the car.

use super::{MARGIN, PlanView, body_box, passages, spots};
use crate::display::{Detail, Ink};
use crate::draw::pen::{Pen, Writing, solid};
use crate::letters::text_width;
use body::Plan;
use kurbo::{Point, Rect};
use model::body::PassageKind;
use words::{Saying, Words, say};

/// Letters of the key.
const SIZE: f64 = 8.0;
/// Height of its row.
const ROW: f64 = 16.0;
/// From a sign to its words, and from those to the next sign.
const GAP: (f64, f64) = (12.0, 22.0);

/// A sign of the key.
#[derive(Clone, Copy)]
enum Sign {
    Place(spots::Dot),
    Passage(PassageKind),
}

fn signs() -> [(Sign, Saying); 7] {
    let passage = |kind: PassageKind| (Sign::Passage(kind), kind.said());
    [
        (Sign::Place(spots::Dot::Grave), say!("drawn-key-grave")),
        (Sign::Place(spots::Dot::Hot), say!("drawn-key-hot")),
        passage(PassageKind::Grommet),
        passage(PassageKind::Hole),
        passage(PassageKind::Gaiter),
        passage(PassageKind::Hinge),
        passage(PassageKind::SeatRail),
    ]
}

/// Where each sign stands, in rows as long as the car.
fn places(plan: &Plan, words: &Words) -> Vec<(Sign, String, Point)> {
    let car = body_box(plan);
    let (mut x, mut y) = (car.x0 + 8.0, car.y1 + MARGIN + 20.0);
    signs()
        .into_iter()
        .map(|(sign, said)| {
            let text = words.say(&said);
            let width = GAP.0 + text_width(&text, SIZE, false);
            if x > car.x0 + 8.0 && x + width > car.x1 {
                (x, y) = (car.x0 + 8.0, y + ROW);
            }
            let at = Point::new(x, y);
            x += width + GAP.1;
            (sign, text, at)
        })
        .collect()
}

/// What the key covers.
pub(super) fn area(plan: &Plan, words: &Words) -> Rect {
    let mut all = Rect::ZERO;
    for (number, (_, text, at)) in places(plan, words).into_iter().enumerate() {
        let width = GAP.0 + text_width(&text, SIZE, false);
        let area = Rect::new(at.x - 10.0, at.y - ROW / 2.0, at.x + width, at.y + ROW / 2.0);
        all = if number == 0 { area } else { all.union(area) };
    }
    all
}

pub(super) fn draw(pen: &mut Pen, view: &PlanView) {
    // A sign without its words explains nothing.
    if !pen.shows(Detail::Labels) || !pen.can_be_read(SIZE) {
        return;
    }
    for (sign, text, at) in places(&view.plan, &view.words) {
        match sign {
            Sign::Place(dot) => spots::dot_at(pen, at, dot),
            Sign::Passage(kind) => {
                let reach = kurbo::Vec2::new(30.0, 0.0);
                if let Some(path) = passages::sign(kind, at - reach, at + reach) {
                    pen.path(
                        Detail::Studs,
                        path,
                        Some(Ink::Paper),
                        Some(solid(Ink::Faint, 1.0)),
                    );
                }
            }
        }
        let start = Point::new(at.x + GAP.0, at.y + 0.35 * SIZE);
        pen.write(Detail::Labels, Writing::new(text, start, SIZE, Ink::Faint));
    }
}
