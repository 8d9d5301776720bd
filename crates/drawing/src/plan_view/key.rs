//! What the signs on the plan mean: a row below the car.

use super::lettering::Lettering;
use super::{MARGIN, PlanView, body_box, passages, spots};
use crate::display::{Detail, Ink};
use crate::draw::pen::{Pen, Writing, solid};
use crate::letters::text_width;
use body::Plan;
use kurbo::{Point, Rect};
use model::body::PassageKind;
use words::{Saying, Words, say};

/// Height of a row, in letters.
const ROW: f64 = 2.0;
/// From a sign to its words, and from those to the next sign.
const GAP: (f64, f64) = (14.0, 26.0);

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
fn places(plan: &Plan, words: &Words, letters: f64) -> Vec<(Sign, String, Point)> {
    let car = body_box(plan);
    let (mut x, mut y) = (car.x0 + 8.0, car.y1 + MARGIN + 10.0 + letters);
    signs()
        .into_iter()
        .map(|(sign, said)| {
            let text = words.say(&said);
            let width = GAP.0 + text_width(&text, letters, false);
            if x > car.x0 + 8.0 && x + 1.1 * width > car.x1 {
                (x, y) = (car.x0 + 8.0, y + ROW * letters);
            }
            let at = Point::new(x, y);
            // A wider face, where the usual ones are not there, does not reach the next sign.
            x += 1.1 * width + GAP.1;
            (sign, text, at)
        })
        .collect()
}

/// What the key covers.
pub(super) fn area(plan: &Plan, words: &Words, lettering: Lettering) -> Rect {
    let letters = lettering.names();
    let half = ROW * letters / 2.0;
    let mut all = Rect::ZERO;
    for (number, (_, text, at)) in places(plan, words, letters).into_iter().enumerate() {
        let width = GAP.0 + text_width(&text, letters, false);
        let area = Rect::new(at.x - 10.0, at.y - half, at.x + 1.1 * width, at.y + half);
        all = if number == 0 { area } else { all.union(area) };
    }
    all
}

pub(super) fn draw(pen: &mut Pen, view: &PlanView) {
    // A sign without its words explains nothing.
    let letters = view.lettering.names();
    if !pen.can_be_read(letters) {
        return;
    }
    for (sign, text, at) in places(&view.plan, &view.words, letters) {
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
        let start = Point::new(at.x + GAP.0, at.y + 0.35 * letters);
        pen.write(Detail::Labels, Writing::new(text, start, letters, Ink::Faint));
    }
}
