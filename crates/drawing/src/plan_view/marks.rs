//! Marks of findings on the plan: the same as on the board, at the place, passage, part or run that each speaks of, where
//! nothing is written and nothing else stands; a line leads to what it is about.

use super::taken::Taken;
use super::{PlanView, UNITS_PER_METRE};
use crate::draw::marks::{
    Spot, around, beside_part, draw_leader, draw_mark_of, extent, fold, nearest_of, radius,
};
use crate::draw::pen::Pen;
use crate::look::{Look, Mark};
use kurbo::{Line, ParamCurveNearest, Point, Rect};
use model::RunId;

/// How many squares of spots around a thing are tried: out to some ten times as far as a mark is wide.
const NEAR: i32 = 8;

/// What a mark stands at.
#[derive(Clone, Copy)]
enum Host {
    /// A part, by its box.
    Part(Rect),
    /// A spot of the body, or of a run.
    Spot(Point),
}

/// Where the mark of each finding stands that speaks of something on the plan. Where a thing has no room left,
/// the nearest mark stands for its too.
pub(super) fn spots<'a>(view: &PlanView, look: &'a Look) -> Vec<Spot<'a>> {
    let radius = radius(look.zoom);
    let mut marks = Taken::default();
    let mut spots: Vec<Spot<'a>> = Vec::new();
    for mark in &look.marks {
        let Some(host) = host(view, mark) else { continue };
        let (aim, leads) = match host {
            Host::Part(area) => (Point::new(area.x1, area.y0), area),
            Host::Spot(at) => (at, Rect::from_points(at, at)),
        };
        let covers = extent(mark, radius);
        let gap = 0.15 * radius;
        let is_free = |at: &Point| {
            let area = covers + at.to_vec2();
            view.taken.is_free(area) && marks.is_free(area.inflate(gap, gap))
        };
        let found = match host {
            // Clear of its edge, since its tag fills it.
            Host::Part(area) => {
                beside_part(area.inflate(3.0 + 0.3 * radius, 3.0 + 0.2 * radius), radius).find(is_free)
            }
            Host::Spot(_) => None,
        };
        let found = found.or_else(|| around(aim, 1.2 * radius, NEAR).find(is_free));
        let nearest = || {
            spots
                .iter()
                .map(|spot| spot.at)
                .min_by(|a, b| a.distance(aim).total_cmp(&b.distance(aim)))
        };
        let at = found.or_else(nearest).unwrap_or(aim);
        if found.is_some() {
            marks.take(covers + at.to_vec2());
        }
        let end = nearest_of(leads, at);
        // Beside its part a mark needs no line.
        let needs = matches!(host, Host::Spot(_)) || at.distance(end) > 2.2 * radius;
        spots.push(Spot::new(
            mark,
            at,
            (found.is_some() && needs).then_some(end),
            true,
        ));
    }
    fold(&mut spots, radius);
    spots
}

/// What a mark stands at: the first spot of the body that it names, where its run comes by; else its first part; else its
/// first run.
fn host(view: &PlanView, mark: &Mark) -> Option<Host> {
    let run = mark.runs.iter().find(|run| view.runs.contains_key(run));
    let spot = mark.spots.iter().find_map(|name| spot_of(view, name));
    if let Some(spot) = spot {
        let on_run = run.and_then(|run| nearest_on(view, *run, spot));
        // A run that is drawn elsewhere says nothing of the spot.
        let near = on_run.filter(|at| at.distance(spot) < 0.2 * UNITS_PER_METRE);
        return Some(Host::Spot(near.unwrap_or(spot)));
    }
    let part = mark.parts.iter().find_map(|part| view.parts.get(part));
    if let Some(part) = part {
        return Some(Host::Part(part.area));
    }
    middle_of(view, *run?).map(Host::Spot)
}

/// Where a place or passage is drawn.
fn spot_of(view: &PlanView, name: &str) -> Option<Point> {
    if let Some(place) = view.plan.place_index(name) {
        return view.spots.get(place).copied();
    }
    let passage = view.plan.passages.iter().find(|passage| passage.name == name)?;
    let [a, b] = passage.ends.map(|end| view.spots.get(end).copied());
    Some(a?.midpoint(b?))
}

/// The pieces of a run.
fn pieces(view: &PlanView, run: RunId) -> impl Iterator<Item = Line> {
    let points = view.runs.get(&run).map(|run| run.points.as_slice());
    let pairs = points.unwrap_or_default().windows(2);
    pairs.filter_map(|pair| Some(Line::new(*pair.first()?, *pair.last()?)))
}

fn nearest_on(view: &PlanView, run: RunId, to: Point) -> Option<Point> {
    pieces(view, run)
        .map(|piece| piece.p0.lerp(piece.p1, piece.nearest(to, 1e-3).t))
        .min_by(|a, b| a.distance(to).total_cmp(&b.distance(to)))
}

/// The middle of a run's longest piece.
fn middle_of(view: &PlanView, run: RunId) -> Option<Point> {
    pieces(view, run)
        .max_by(|a, b| a.p0.distance(a.p1).total_cmp(&b.p0.distance(b.p1)))
        .map(|piece| piece.p0.midpoint(piece.p1))
}

/// Draws the lines from the marks, and gives the marks.
pub(super) fn leaders<'a>(pen: &mut Pen, view: &PlanView, look: &'a Look) -> Vec<Spot<'a>> {
    let spots = spots(view, look);
    for spot in spots.iter().filter(|spot| spot.shown) {
        pen.owner(crate::display::Owner::Finding(spot.mark.finding));
        draw_leader(pen, spot, radius(look.zoom));
    }
    spots
}

/// Draws the marks themselves.
pub(super) fn draw(pen: &mut Pen, marks: &[Spot<'_>], look: &Look) {
    for spot in marks.iter().filter(|spot| spot.shown) {
        draw_mark_of(pen, spot, look, radius(look.zoom));
    }
}
