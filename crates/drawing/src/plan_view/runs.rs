//! Runs on the plan: along the passages of their ways, side by side where several lie in one.

use super::lettering::{Lettering, roomy};
use super::taken::Taken;
use super::{PlanLabel, PlanPart, PlanRun, PlanView};
use crate::display::{Anchor, Detail, Ink, Owner, Stroke};
use crate::draw::overlay::{Overlays, Paint};
use crate::draw::pen::{Pen, Writing, text_area};
use crate::look::Look;
use crate::ways::width_of;
use body::{Plan, Walk};
use kurbo::{BezPath, Point, Vec2};
use model::conductor::Colour;
use model::{End, PartId, Run, RunId, Sheet};
use ordered::{OrderedMap, Sort as _};
use words::Words;

/// Distance between the middles of two runs in one passage, at most; where many lie in one they move closer.
const LANE: f64 = 6.0;
/// How wide all runs of a passage may lie together.
const WIDEST: f64 = 44.0;
/// On how many of its longest pieces a run's label is tried.
const PIECES: usize = 6;

/// Where all runs lie.
pub(super) fn lay(
    plan: &Plan,
    spots: &[Point],
    parts: &OrderedMap<PartId, PlanPart>,
    (sheet, overlays): (&Sheet, &Overlays<'_>),
    words: &Words,
    lettering: Lettering,
    taken: &mut Taken,
) -> OrderedMap<RunId, PlanRun> {
    let walks: Vec<(RunId, &Run, Option<Walk>)> = sheet
        .runs
        .iter()
        .map(|(id, run)| (*id, run, plan.walk(sheet, run).ok()))
        .collect();
    // By passage: the runs in it, in the order of their ids, which gives each its lane.
    let mut lanes: Vec<Vec<RunId>> = vec![Vec::new(); plan.passages.len()];
    for (id, _, walk) in &walks {
        for passage in walk.iter().flat_map(Walk::passages) {
            if let Some(list) = lanes.get_mut(passage)
                && !list.contains(id)
            {
                list.push(*id);
            }
        }
    }
    let part = |end: &End| parts.get(&end.terminal()?.part);
    // What has no place is not in the car.
    let middle = |end: &End| {
        let it = part(end)?;
        it.place.map(|_| it.area.center())
    };
    let mut runs = OrderedMap::new();
    for (id, run, walk) in walks {
        let mut points: Vec<Point> = middle(&run.from).into_iter().collect();
        for step in walk.iter().flat_map(|walk| &walk.steps) {
            let Some(passage) = plan.passages.get(step.passage) else {
                continue;
            };
            let [Some(a), Some(b)] = passage.ends.map(|end| spots.get(end).copied()) else {
                continue;
            };
            let list = lanes.get(step.passage).map(Vec::as_slice).unwrap_or_default();
            let off = lane(list, id, a, b);
            let (from, to) = if passage.ends.first() == Some(&step.from) {
                (a, b)
            } else {
                (b, a)
            };
            // A little short of both places, so that runs turn between them and not on them.
            let short = ((to - from) * 0.25).hypot().min(12.0) / from.distance(to).max(1.0);
            points.push(from.lerp(to, short) + off);
            points.push(to.lerp(from, short) + off);
        }
        points.extend(middle(&run.to));
        if points.len() < 2 {
            continue;
        }
        let label = label_of(run, &points, overlays.label(id), words, lettering.names(), taken);
        runs.insert(id, PlanRun { walk, points, label });
    }
    runs
}

/// How far a run lies beside the middle of a passage, as all runs in it lie side by side.
fn lane(list: &[RunId], id: RunId, a: Point, b: Point) -> Vec2 {
    let count = list.len().max(1) as f64;
    let place = list.iter().position(|other| *other == id).unwrap_or(0) as f64;
    let pitch = LANE.min(WIDEST / count);
    let along = (b - a) / a.distance(b).max(1.0);
    Vec2::new(-along.y, along.x) * ((place - (count - 1.0) / 2.0) * pitch)
}

/// Tag and length, or what the overlay says, on the longest straight piece that has room; nothing where it says nothing.
fn label_of(
    run: &Run,
    points: &[Point],
    said: Option<String>,
    words: &Words,
    letters: f64,
    taken: &mut Taken,
) -> Option<PlanLabel> {
    let length = run
        .wire
        .length
        .marked("?", |length| crate::numbers::quantity(words, *length));
    let text = beside(run, &length);
    let shown = match said {
        None => text.clone(),
        Some(said) if said.is_empty() => return None,
        Some(said) => beside(run, &said),
    };
    let mut pieces: Vec<(f64, Point, Point)> = points
        .windows(2)
        .filter_map(|pair| match pair {
            [a, b] => Some((a.distance(*b), *a, *b)),
            _ => None,
        })
        .collect();
    pieces.order_by(|a, b| b.0.total_cmp(&a.0));
    for (_, a, b) in pieces.into_iter().take(PIECES) {
        for share in [0.5, 0.3, 0.7] {
            let at = a.lerp(b, share);
            for rise in [-4.0, letters + 3.0] {
                let at = Point::new(at.x, at.y + rise);
                let area = text_area(&shown, at, letters, Anchor::Middle, false, false);
                if taken.take_if_free(roomy(area)) {
                    let room = area.width() + 0.5;
                    return Some(PlanLabel { text, at, room });
                }
            }
        }
    }
    None
}

/// The tag of a run, and something of it.
fn beside(run: &Run, said: &str) -> String {
    format!("{}  {said}", run.tag)
}

pub(super) fn draw(pen: &mut Pen, view: &PlanView, sheet: &Sheet, overlays: &Overlays<'_>, look: &Look) {
    for (id, it) in &view.runs {
        let Some(run) = sheet.runs.get(id) else { continue };
        let owner = Owner::Run(*id);
        pen.owner(owner);
        let path = rounded_way(&it.points);
        let width = width_of(run);
        let halo = if look.picked.contains(&owner) {
            Some(Ink::Picked)
        } else if look.hovered == Some(owner) || look.lit.runs.contains(id) {
            Some(Ink::Lit)
        } else {
            None
        };
        if let Some(ink) = halo {
            pen.line(Detail::Shape, path.clone(), ink, width + 6.0);
        }
        let jacket = run.wire.jacket;
        let base = jacket.base.map_or(Ink::Paper, Ink::Insulation);
        if it.walk.is_none() {
            // Nobody has said where it lies: from part to part, thin and broken.
            let ink = match overlays.paint(*id) {
                Paint::Insulation => Ink::Faint,
                Paint::Dimmed => Ink::Dimmed,
                Paint::Ink { ink, .. } => ink,
            };
            let stroke = Stroke {
                ink,
                width: 1.4,
                dash: Some((6.0, 4.0)),
            };
            pen.path(Detail::Shape, path, None, Some(stroke));
            continue;
        }
        match overlays.paint(*id) {
            Paint::Insulation => {}
            Paint::Dimmed => {
                pen.line(Detail::Shape, path, Ink::Dimmed, width.min(3.0));
                continue;
            }
            Paint::Ink {
                ink,
                width: own,
                dash,
            } => {
                let width = own.unwrap_or(width);
                pen.line(Detail::Shape, path.clone(), Ink::Paper, width + 1.6);
                pen.path(Detail::Shape, path, None, Some(Stroke { ink, width, dash }));
                continue;
            }
        }
        let casing = match jacket.base {
            None | Some(Colour::Black | Colour::White) => 1.8,
            _ => 1.0,
        };
        pen.line(Detail::Shape, path.clone(), Ink::Casing, width + casing);
        pen.line(Detail::Shape, path.clone(), base, width);
        // The stripe; along a run whose colour nobody knows, dots.
        let stripe = match (jacket.base, jacket.tracer) {
            (None, _) => Some((Ink::Faint, (2.0, 5.0))),
            (_, tracer) => tracer.map(|colour| (Ink::Insulation(colour), (7.0, 7.0))),
        };
        if let Some((ink, dash)) = stripe {
            let stroke = Stroke {
                ink,
                width: (width * 0.45).max(1.2),
                dash: Some(dash),
            };
            pen.path(Detail::Studs, path, None, Some(stroke));
        }
    }
}

/// A way through these points, its corners rounded by the half of the shorter piece at each, 9 units at most.
fn rounded_way(points: &[Point]) -> BezPath {
    let mut path = BezPath::new();
    let [first, middle @ .., last] = points else {
        return path;
    };
    path.move_to(*first);
    for (number, corner) in middle.iter().enumerate() {
        let (Some(before), Some(after)) = (points.get(number), points.get(number + 2)) else {
            continue;
        };
        let back = corner.distance(*before);
        let on = corner.distance(*after);
        let round = (back.min(on) / 2.0).min(9.0);
        if round < 0.5 {
            path.line_to(*corner);
            continue;
        }
        path.line_to(corner.lerp(*before, round / back));
        path.quad_to(*corner, corner.lerp(*after, round / on));
    }
    path.line_to(*last);
    path
}

/// Labels of the runs, above everything else: tag and length, or what the overlay in force says instead of the length.
pub(super) fn label(pen: &mut Pen, view: &PlanView, sheet: &Sheet, overlays: &Overlays<'_>) {
    let letters = view.lettering.names();
    for (id, it) in &view.runs {
        let (Some(label), Some(run)) = (&it.label, sheet.runs.get(id)) else {
            continue;
        };
        let text = match overlays.label(*id) {
            None => label.text.clone(),
            Some(said) if said.is_empty() => continue,
            // While a new study is on its way, what the last one said had the room.
            Some(said) => crate::letters::fit(&beside(run, &said), label.room, letters, false),
        };
        pen.owner(Owner::Run(*id));
        pen.write(
            Detail::Numbers,
            Writing {
                anchor: Anchor::Middle,
                halo: true,
                ..Writing::new(text, label.at, letters, Ink::Text)
            },
        );
    }
}
