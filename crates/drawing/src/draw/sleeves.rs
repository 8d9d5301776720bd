//! What is new, changed or goes on a sheet under which another one is laid. New: a sleeve of wash all along it. Changed: the
//! same sleeve in pieces. Goes: struck through, as one crosses out what comes down. Sleeves lie beneath all runs and parts, those
//! of neighbours flow into one; nothing reaches further than the boxes of its part or run (see [`super::areas_of`]).

use super::Cut;
use super::pen::{Pen, solid};
use super::runs::plain;
use crate::display::{Detail, Ink, Owner, Stroke};
use crate::layout::Layout;
use crate::look::Look;
use crate::shapes::rounded;
use crate::under::{Sign, Under};
use crate::ways::RunWay;
use kurbo::{BezPath, Point, Rect, Vec2};

/// How wide wash and its edges are at a zoom, in board units: seen from far off both are wider, as far as there is room.
struct Widths {
    wash: f64,
    edge: f64,
    /// By how much pieces and gaps are longer.
    longer: f64,
}

impl Widths {
    fn at(zoom: f64) -> Self {
        let farther = (1.0 / zoom.max(1e-3)).clamp(1.0, 3.0);
        Self {
            wash: (3.6 * farther).min(5.0),
            edge: (0.9 * farther).min(1.6),
            longer: farther,
        }
    }
}

/// A line under a thing, as wide as the thing and its sleeve.
struct Sleeve {
    owner: Owner,
    path: BezPath,
    /// Width of the wash; the edge is that much wider at each side.
    wash: f64,
    dash: Option<(f64, f64)>,
}

pub(crate) fn draw_sleeves(pen: &mut Pen, under: &Under, layout: &Layout, look: &Look, cut: &Cut<'_>) {
    let widths = Widths::at(look.zoom);
    let mut sleeves = Vec::new();
    for id in cut.runs(layout) {
        let sign = under
            .run(id)
            .filter(|sign| matches!(sign, Sign::New | Sign::Changed));
        let (Some(sign), Some(way)) = (sign, layout.runs.get(&id)) else {
            continue;
        };
        if way.areas().any(|area| cut.shows(area.inflate(8.0, 8.0))) {
            let piece = 9.0 * widths.longer;
            sleeves.push(Sleeve {
                owner: Owner::Run(id),
                path: plain(way),
                wash: way.width + 2.0 * widths.wash,
                dash: (sign == Sign::Changed).then_some((piece, piece)),
            });
        }
    }
    for id in cut.parts(layout, 8.0) {
        let sign = under
            .part(id)
            .filter(|sign| matches!(sign, Sign::New | Sign::Changed));
        let (Some(sign), Some(part)) = (sign, layout.parts.get(&id)) else {
            continue;
        };
        if cut.shows(part.outline.inflate(8.0, 8.0)) {
            sleeves.push(of_box(Owner::Part(id), part.outline, sign, &widths));
        }
    }
    lay(pen, sleeves, &widths);
}

/// The sleeve around a box: all around it, or at its corners.
fn of_box(owner: Owner, outline: Rect, sign: Sign, widths: &Widths) -> Sleeve {
    let around = outline.inflate(widths.wash / 2.0 + 0.6, widths.wash / 2.0 + 0.6);
    let path = if sign == Sign::New {
        rounded(around, 3.0)
    } else {
        corners(around, 11.0 * widths.longer)
    };
    Sleeve {
        owner,
        path,
        wash: widths.wash,
        dash: None,
    }
}

/// The four corners of a box, each an angle with legs of this length, or a third of the side where that is shorter.
fn corners(around: Rect, leg: f64) -> BezPath {
    let (dx, dy) = (leg.min(around.width() / 3.0), leg.min(around.height() / 3.0));
    let mut path = BezPath::new();
    for (x, y, right, down) in [
        (around.x0, around.y0, 1.0, 1.0),
        (around.x1, around.y0, -1.0, 1.0),
        (around.x1, around.y1, -1.0, -1.0),
        (around.x0, around.y1, 1.0, -1.0),
    ] {
        path.move_to((x + right * dx, y));
        path.line_to((x, y));
        path.line_to((x, y + down * dy));
    }
    path
}

/// Edges first, then wash: where sleeves meet there is no edge between them.
fn lay(pen: &mut Pen, sleeves: Vec<Sleeve>, widths: &Widths) {
    let stroke = |ink, width, dash| Stroke { ink, width, dash };
    for sleeve in &sleeves {
        pen.owner(sleeve.owner);
        let width = sleeve.wash + 2.0 * widths.edge;
        pen.path(
            Detail::Shape,
            sleeve.path.clone(),
            None,
            Some(stroke(Ink::WashEdge, width, sleeve.dash)),
        );
    }
    for sleeve in sleeves {
        pen.owner(sleeve.owner);
        pen.path(
            Detail::Shape,
            sleeve.path,
            None,
            Some(stroke(Ink::Wash, sleeve.wash, sleeve.dash)),
        );
    }
}

/// Strikes out what goes: over everything, as with a pencil.
pub(crate) fn draw_strikes(pen: &mut Pen, under: &Under, layout: &Layout, look: &Look, cut: &Cut<'_>) {
    for id in cut.runs(layout) {
        if let Some(way) = layout.runs.get(&id).filter(|_| under.run(id) == Some(Sign::Goes))
            && way.areas().any(|area| cut.shows(area.inflate(8.0, 8.0)))
        {
            pen.owner(Owner::Run(id));
            let label = way.label.as_ref().map(|label| label.area);
            let on_label = |area: Rect| label.is_some_and(|label| label.overlaps(area));
            strike_run(pen, way, look.zoom, Ink::WashEdge, on_label);
        }
    }
    for id in cut.parts(layout, 8.0) {
        if let Some(part) = layout
            .parts
            .get(&id)
            .filter(|_| under.part(id) == Some(Sign::Goes))
            && cut.shows(part.outline.inflate(8.0, 8.0))
        {
            pen.owner(Owner::Part(id));
            strike_box(pen, part.outline, look.zoom, Ink::WashEdge);
        }
    }
}

/// Width of a strike in board units: 1.5 pixels from afar.
fn strike_width(zoom: f64) -> f64 {
    (1.5 / zoom.max(1e-3)).clamp(1.5, 4.0)
}

/// One stroke from the lower left to the upper right.
pub(crate) fn strike_box(pen: &mut Pen, outline: Rect, zoom: f64, ink: Ink) {
    let mut path = BezPath::new();
    path.move_to((outline.x0, outline.y1));
    path.line_to((outline.x1, outline.y0));
    pen.line(Detail::Shape, path, ink, strike_width(zoom));
}

/// How far apart crosses stand on a run, in board units.
const CROSSES_APART: f64 = 150.0;
/// Pieces shorter than this bear none, where there are longer ones.
const SHORT: f64 = 30.0;

/// Crosses along a run, at least one. None stands where a box around it is taken, unless all of the run is: there it would
/// be read as a cross on what lies above.
pub(crate) fn strike_run(pen: &mut Pen, way: &RunWay, zoom: f64, ink: Ink, taken: impl Fn(Rect) -> bool) {
    // Wider than the run, which may be as dark as the crosses: it is parted from them by a little paper.
    let half = (4.2 / zoom.max(1e-3)).clamp(4.2, 7.0).max(way.width / 2.0 + 2.6);
    let longest = way
        .pieces()
        .max_by(|a, b| a.0.distance(a.1).total_cmp(&b.0.distance(b.1)));
    let Some((first, last)) = longest else { return };
    let mut path = BezPath::new();
    let mut cross = |at: Point| {
        for (x, y) in [(half, half), (half, -half)] {
            path.move_to(at - Vec2::new(x, y));
            path.line_to(at + Vec2::new(x, y));
        }
    };
    let mut any = false;
    for (a, b) in way.pieces() {
        let length = a.distance(b);
        if length < first.distance(last).min(SHORT) {
            continue;
        }
        let count = libm::floor(length / CROSSES_APART).clamp(1.0, 200.0);
        for n in 0..count as u32 {
            let mut spots = [0.5, 0.25, 0.75, 0.12, 0.88]
                .into_iter()
                .map(|share| a.lerp(b, (f64::from(n) + share) / count));
            if let Some(at) = spots.find(|at| !taken(Rect::from_center_size(*at, (2.2 * half, 2.2 * half)))) {
                cross(at);
                any = true;
            }
        }
    }
    if !any {
        cross(first.lerp(last, 0.3));
    }
    let width = strike_width(zoom);
    pen.line(Detail::Shape, path.clone(), Ink::Paper, width + 1.8);
    pen.line(Detail::Shape, path, ink, width);
}

/// What each sign looks like on a small box, for a key.
pub(crate) fn sample(pen: &mut Pen, sign: Sign, area: Rect) {
    let widths = Widths::at(1.0);
    if matches!(sign, Sign::New | Sign::Changed) {
        lay(pen, vec![of_box(Owner::Sheet, area, sign, &widths)], &widths);
    }
    pen.owner(Owner::Sheet);
    if sign.is_beneath() {
        pen.path(
            Detail::Shape,
            rounded(area, 2.0),
            None,
            Some(super::ghosts::dashes(1.0)),
        );
    } else {
        pen.path(
            Detail::Shape,
            rounded(area, 2.0),
            Some(Ink::PartFill),
            Some(solid(Ink::Line, 1.3)),
        );
    }
    if matches!(sign, Sign::Goes | Sign::Gone) {
        strike_box(pen, area, 1.0, Ink::WashEdge);
    }
}
