//! Names of places: each beside its dot, or a little further off and tied to it, so that none lies on anything else.
//!
//! Places where parts stand or runs pass come first, then those with the least choice; each takes the best of its free
//! spots, counting what that would take from the others. What finds no room is left out until the reader comes nearer: its
//! dot stays, and the list of places says the rest.

use super::lettering::{Lettering, roomy};
use super::spots::DOT;
use super::taken::Taken;
use super::{PlanPart, PlanRun, PlanView};
use crate::display::{Anchor, Detail, Ink};
use crate::draw::pen::{Pen, Writing, text_area};
use body::{Plan, Walk};
use kurbo::{BezPath, Line, Point, Rect, Vec2};
use model::{PartId, RunId};
use ordered::OrderedMap;
use words::Words;

/// A name on the plan.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Name {
    text: String,
    at: Point,
    anchor: Anchor,
    /// From the dot to the name, where it stands further off.
    tie: Option<Line>,
}

/// A spot that a name may have.
struct Spot {
    name: Name,
    area: Rect,
    cost: f64,
}

/// How far off names may be, in letters beyond the dot: nothing is close by, and has no tie.
const RINGS: [f64; 4] = [0.0, 1.3, 2.6, 4.2];
/// What it costs to stand in the next ring.
const RING: f64 = 6.0;
/// What it costs to lie on a run.
const ON_RUN: f64 = 5.0;
/// What it costs to take the spot close by from another place.
const IN_THE_WAY: f64 = 1.5;

/// The names that find room.
pub(super) fn place(
    plan: &Plan,
    spots: &[Point],
    parts: &OrderedMap<PartId, PlanPart>,
    runs: &OrderedMap<RunId, PlanRun>,
    words: &Words,
    lettering: Lettering,
    taken: &mut Taken,
) -> Vec<Name> {
    let letters = lettering.names();
    let mut used = vec![false; plan.places.len()];
    let passed = runs
        .values()
        .filter_map(|run| run.walk.as_ref())
        .flat_map(Walk::places);
    for place in parts.values().filter_map(|part| part.place).chain(passed) {
        if let Some(used) = used.get_mut(place) {
            *used = true;
        }
    }
    let pieces: Vec<Line> = runs
        .values()
        .flat_map(|run| run.points.windows(2))
        .filter_map(|pair| Some(Line::new(*pair.first()?, *pair.last()?)))
        .collect();
    let mut open: Vec<(bool, Vec<Spot>)> = plan
        .places
        .iter()
        .zip(spots)
        .zip(used)
        .map(|((place, at), used)| {
            let text = words.say(&place.said_on_plan());
            (used, around(&text, *at, letters, &pieces, taken))
        })
        .collect();
    let mut names = Vec::new();
    while let Some(next) = open
        .iter()
        .enumerate()
        .filter(|(_, (_, spots))| !spots.is_empty())
        .min_by_key(|(_, (used, spots))| (!used, spots.len()))
        .map(|(next, _)| next)
    {
        let Some((_, mine)) = open.get_mut(next).map(std::mem::take) else {
            break;
        };
        let blocks = |area: Rect| {
            let near = |(_, spots): &&(bool, Vec<Spot>)| {
                spots
                    .iter()
                    .any(|it| it.name.tie.is_none() && it.area.overlaps(area))
            };
            open.iter().filter(near).count() as f64
        };
        let best = mine
            .into_iter()
            .map(|spot| (spot.cost + IN_THE_WAY * blocks(spot.area), spot))
            .min_by(|(a, _), (b, _)| a.total_cmp(b));
        let Some((_, spot)) = best else { continue };
        taken.take(spot.area);
        let tied = spot
            .name
            .tie
            .iter()
            .flat_map(|tie| along(*tie))
            .collect::<Vec<_>>();
        for bit in &tied {
            taken.take(*bit);
        }
        let hits = |area: Rect| area.overlaps(spot.area) || tied.iter().any(|bit| bit.overlaps(area));
        for (_, others) in &mut open {
            others.retain(|it| {
                !hits(it.area)
                    && !it
                        .name
                        .tie
                        .is_some_and(|tie| along(tie).any(|bit| bit.overlaps(spot.area)))
            });
        }
        names.push(spot.name);
    }
    names
}

/// Bits of a tie: what is written keeps clear of them.
fn along(tie: Line) -> impl Iterator<Item = Rect> {
    (1..5).map(move |bit| {
        let share = f64::from(bit) / 5.0;
        Rect::from_center_size(tie.p0.lerp(tie.p1, share), (2.0, 2.0))
    })
}

/// The free spots around a dot, each with what it costs.
fn around(text: &str, dot: Point, letters: f64, pieces: &[Line], taken: &Taken) -> Vec<Spot> {
    let mut spots = Vec::new();
    for (ring, far) in RINGS.into_iter().enumerate() {
        let beside = DOT + 3.0 + far * letters;
        let low = 0.35 * letters;
        let (over, under) = (-beside - 0.22 * letters, beside + 0.78 * letters);
        let aside = 0.7 * beside;
        let sides = [
            (Anchor::Start, beside, low),
            (Anchor::End, -beside, low),
            (Anchor::Middle, 0.0, over),
            (Anchor::Middle, 0.0, under),
            (Anchor::Start, aside, over + 0.3 * beside),
            (Anchor::Start, aside, under - 0.3 * beside),
            (Anchor::End, -aside, over + 0.3 * beside),
            (Anchor::End, -aside, under - 0.3 * beside),
            (Anchor::Start, -DOT, over),
            (Anchor::Start, -DOT, under),
            (Anchor::End, DOT, over),
            (Anchor::End, DOT, under),
        ];
        for (turn, (anchor, x, y)) in sides.into_iter().enumerate() {
            let at = dot + Vec2::new(x, y);
            let written = text_area(text, at, letters, anchor, false, false);
            let area = roomy(written);
            if !taken.is_free(area) {
                continue;
            }
            // To the nearest point of the name's box.
            let end = Point::new(
                dot.x.clamp(written.x0, written.x1),
                dot.y.clamp(written.y0, written.y1),
            );
            let tie =
                (ring > 0).then(|| Line::new(dot.lerp(end, (DOT + 1.0) / dot.distance(end).max(1.0)), end));
            // The last bit ends at the name itself.
            if tie.is_some_and(|tie| along(tie).any(|bit| !taken.is_free(bit))) {
                continue;
            }
            let on_runs = pieces.iter().filter(|piece| crosses(**piece, written)).count();
            spots.push(Spot {
                name: Name {
                    text: text.to_owned(),
                    at,
                    anchor,
                    tie,
                },
                area,
                cost: RING * ring as f64 + 0.3 * turn as f64 + ON_RUN * (on_runs as f64).min(3.0),
            });
        }
    }
    spots
}

/// Whether a piece of a run comes through an area.
fn crosses(piece: Line, area: Rect) -> bool {
    let (mut from, mut to) = (0.0_f64, 1.0_f64);
    let along = piece.p1 - piece.p0;
    for (start, step, low, high) in [
        (piece.p0.x, along.x, area.x0, area.x1),
        (piece.p0.y, along.y, area.y0, area.y1),
    ] {
        if step.abs() < 1e-9 {
            if start < low || start > high {
                return false;
            }
            continue;
        }
        let (a, b) = ((low - start) / step, (high - start) / step);
        from = from.max(a.min(b));
        to = to.min(a.max(b));
    }
    from <= to
}

pub(super) fn draw(pen: &mut Pen, view: &PlanView) {
    let letters = view.lettering.names();
    if !pen.can_be_read(letters) {
        return;
    }
    for name in &view.names {
        if let Some(tie) = name.tie {
            let mut path = BezPath::new();
            path.move_to(tie.p0);
            path.line_to(tie.p1);
            pen.line(Detail::Shape, path, Ink::Faint, 0.8);
        }
        let writing = Writing::new(name.text.as_str(), name.at, letters, Ink::Faint);
        pen.write(
            Detail::Labels,
            Writing {
                anchor: name.anchor,
                halo: true,
                ..writing
            },
        );
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_piece_crosses_what_it_comes_through() {
        let area = Rect::new(0.0, 0.0, 10.0, 4.0);
        let piece = |a: (f64, f64), b: (f64, f64)| crosses(Line::new(a, b), area);
        assert!(
            piece((-5.0, 2.0), (15.0, 2.0))
                && piece((5.0, -3.0), (6.0, 9.0))
                && piece((2.0, 1.0), (3.0, 2.0))
        );
        assert!(
            !piece((-5.0, 5.0), (15.0, 5.0))
                && !piece((11.0, -3.0), (11.0, 9.0))
                && !piece((-4.0, 2.0), (-1.0, 2.0))
        );
        assert!(!piece((-3.0, 3.0), (3.0, 9.0)), "past the corner");
    }
}
