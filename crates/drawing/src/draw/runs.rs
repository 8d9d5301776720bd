//! Runs: casing, insulation, tracer, rounded corners, hops at crossings, labels, loose ends. What an overlay says of a
//! run comes from [`super::overlay`].

use super::Cut;
use super::overlay::{Overlays, Paint};
use super::pen::{Pen, Writing, solid};
use super::readings::Readings;
use crate::display::{Anchor, Detail, Ink, Owner, Stroke};
use crate::layout::Layout;
use crate::letters::text_width;
use crate::look::{Look, Overlay};
use crate::shapes::circle;
use crate::ways::{RUN_LABEL_SIZE, RunWay, Tracks, pieces};
use kurbo::{BezPath, CubicBez, ParamCurve, Point, Rect, Vec2};
use model::conductor::Colour;
use model::{End, Role, Run, RunId, Sheet};

/// Radius of a corner.
const CORNER: f64 = 6.0;
/// How far a hop rises over what it crosses.
const HOP: f64 = 6.0;

/// How a run is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Kind {
    /// Casing, insulation, tracer.
    Power,
    /// A signal lead: a thin double line, its shield.
    Signal,
    /// A turn-on lead: thin.
    TurnOn,
}

fn kind_of(layout: &Layout, run: &Run) -> Kind {
    let roles = run.ends().map(|end| {
        end.terminal()
            .and_then(|terminal| layout.stud_of(terminal))
            .map(|stud| stud.role)
    });
    if roles.iter().flatten().any(|role| role.is_line()) {
        Kind::Signal
    } else if roles
        .iter()
        .flatten()
        .any(|role| matches!(role, Role::TurnOnIn | Role::TurnOnOut))
    {
        Kind::TurnOn
    } else {
        Kind::Power
    }
}

pub(crate) fn draw_runs(
    pen: &mut Pen,
    sheet: &Sheet,
    layout: &Layout,
    overlays: &Overlays<'_>,
    look: &Look,
    cut: &Cut<'_>,
    taken: &mut Vec<Rect>,
) {
    let seen: Vec<(RunId, &Run, &RunWay)> = cut
        .runs(layout)
        .into_iter()
        .filter_map(|id| Some((id, sheet.runs.get(&id)?, layout.runs.get(&id)?)))
        .filter(|(_, _, way)| way.areas().any(|area| cut.shows(area.inflate(8.0, 8.0))))
        .collect();
    let strokes: Vec<Vec<Stroke>> = seen
        .iter()
        .map(|(id, run, way)| {
            let mut all = strokes(*id, run, way, kind_of(layout, run), overlays, look);
            // Seen from far off, one stroke says as much as three.
            if !pen.shows(Detail::Studs) && all.len() > 2 {
                all.truncate(2);
                all.swap_remove(0);
            }
            all
        })
        .collect();
    let hops = pen.shows(Detail::Studs);
    let mut over: Vec<(RunId, Drawn, usize)> = Vec::new();
    for (place, (id, run, way)) in seen.iter().enumerate() {
        let owner = Owner::Run(*id);
        pen.owner(owner);
        let drawn = if hops {
            with_hops(way, &layout.tracks, cut)
        } else {
            Drawn::plain(way)
        };
        let halo = if look.picked.contains(&owner) {
            Some((Ink::Picked, way.width + 7.0))
        } else if look.hovered == Some(owner) || look.lit.runs.contains(id) || spoken_of(look, *id) {
            Some((Ink::Lit, way.width + 6.0))
        } else {
            None
        };
        if let Some((ink, width)) = halo {
            pen.line(Detail::Shape, plain(way), ink, width);
        }
        for stroke in strokes.get(place).into_iter().flatten() {
            pen.path(Detail::Shape, drawn.along.clone(), None, Some(*stroke));
        }
        if !drawn.hops.elements().is_empty() {
            over.push((*id, drawn, place));
        }
        draw_loose_ends(pen, run, way);
    }
    // Hops lie over what they cross: a gap of paper, then the run once more.
    for (id, drawn, place) in over {
        pen.owner(Owner::Run(id));
        let widest = strokes
            .get(place)
            .into_iter()
            .flatten()
            .map(|stroke| stroke.width)
            .fold(0.0, f64::max);
        pen.line(Detail::Studs, drawn.gaps, Ink::Paper, widest + 3.0);
        for stroke in strokes.get(place).into_iter().flatten() {
            pen.path(Detail::Studs, drawn.hops.clone(), None, Some(*stroke));
        }
    }
    if look.overlay == Overlay::Current {
        for (id, _, way) in &seen {
            pen.owner(Owner::Run(*id));
            draw_arrows(pen, *id, way, overlays);
        }
    }
    // Volts stand at the studs as well and must keep clear of one another; they go where labels have their place.
    let readings = !matches!(look.overlay, Overlay::None | Overlay::Voltage);
    if readings {
        // Where runs are lit, the others step back with what is said of them.
        let steps_back = |id: &RunId| !look.lit.runs.is_empty() && !look.lit.runs.contains(id);
        let shown = seen.iter().filter(|(id, _, _)| !steps_back(id));
        let runs: Vec<(RunId, &RunWay)> = shown.map(|(id, _, way)| (*id, *way)).collect();
        let mut readings = Readings {
            layout,
            overlays,
            zoom: look.zoom,
            taken,
        };
        readings.draw(pen, &runs);
        return;
    }
    for (id, _, way) in &seen {
        pen.owner(Owner::Run(*id));
        draw_label(pen, *id, way, overlays, look);
    }
}

fn strokes(
    id: RunId,
    run: &Run,
    way: &RunWay,
    kind: Kind,
    overlays: &Overlays<'_>,
    look: &Look,
) -> Vec<Stroke> {
    let dimmed = !look.lit.is_empty() && !look.lit.runs.contains(&id);
    if dimmed {
        return vec![solid(Ink::Dimmed, way.width.min(3.0))];
    }
    match overlays.paint(id) {
        Paint::Insulation => {}
        Paint::Dimmed => return vec![solid(Ink::Dimmed, way.width.min(3.0))],
        Paint::Ink { ink, width, dash } => {
            let width = width.unwrap_or(way.width);
            return vec![solid(Ink::Paper, width + 1.6), Stroke { ink, width, dash }];
        }
    }
    let jacket = run.wire.jacket;
    // Of a colour that nobody knows: hollow, with dots along the middle.
    let base = jacket.base.map_or(Ink::Paper, Ink::Insulation);
    let tracer = |width: f64| {
        jacket.tracer.map(|colour| Stroke {
            ink: Ink::Insulation(colour),
            width,
            dash: Some((7.0, 7.0)),
        })
    };
    let unknown = |width: f64| {
        jacket.base.is_none().then_some(Stroke {
            ink: Ink::Faint,
            width,
            dash: Some((2.0, 5.0)),
        })
    };
    // Black on dark paper and white on light paper are seen by their casing alone: it keeps its width on screen.
    let casing = match jacket.base {
        None | Some(Colour::Black | Colour::White) => (1.8 / look.zoom.max(1e-3)).clamp(1.0, 6.0),
        _ => 1.0,
    };
    match kind {
        Kind::Signal => vec![
            solid(Ink::Casing, 4.4 + casing),
            solid(base, 4.2),
            solid(Ink::Paper, 1.6),
        ],
        Kind::TurnOn => {
            let mut all = vec![solid(Ink::Casing, 1.8 + casing), solid(base, 1.8)];
            all.extend(tracer(1.2).or(unknown(1.0)));
            all
        }
        Kind::Power => {
            let mut all = vec![solid(Ink::Casing, way.width + casing), solid(base, way.width)];
            let stripe = (way.width * 0.45).max(1.2);
            all.extend(tracer(stripe).or(unknown(stripe)));
            all
        }
    }
}

/// A run's path, and the hops apart.
struct Drawn {
    along: BezPath,
    hops: BezPath,
    /// The upper parts of the hops, where the paper shows between them and what they cross.
    gaps: BezPath,
}

impl Drawn {
    fn plain(way: &RunWay) -> Self {
        Self {
            along: plain(way),
            hops: BezPath::new(),
            gaps: BezPath::new(),
        }
    }
}

/// The whole way with rounded corners, without hops.
pub(super) fn plain(way: &RunWay) -> BezPath {
    rounded(&way.points, &[]).along
}

/// The way with hops where its level pieces cross the upright pieces of others.
fn with_hops(way: &RunWay, tracks: &Tracks, cut: &Cut<'_>) -> Drawn {
    let mut hops: Vec<Vec<(f64, f64)>> = Vec::new();
    for piece in pieces(&way.corners) {
        let mut spans: Vec<(f64, f64)> = Vec::new();
        if piece.axis == crate::ways::Axis::Level {
            let (low, high) = (f64::from(piece.low) + 2.0, f64::from(piece.high) - 2.0);
            let crossings = tracks.crossings(piece);
            for (at, _) in crossings.into_iter().filter(|(_, run)| cut.hops_over(*run)) {
                let (a, b) = ((f64::from(at) - HOP).max(low), (f64::from(at) + HOP).min(high));
                match spans.last_mut() {
                    // Crossings close together share one long hop.
                    Some(last) if a <= last.1 + 4.0 => last.1 = last.1.max(b),
                    _ => spans.push((a, b)),
                }
            }
            spans.retain(|(a, b)| b - a > 4.0);
        }
        hops.push(spans);
    }
    rounded(&way.points, &hops)
}

/// A way with rounded corners, broken where hops are, and the hops. `hops` has the spans along x of each piece.
fn rounded(points: &[Point], hops: &[Vec<(f64, f64)>]) -> Drawn {
    let mut path = BezPath::new();
    let mut over = BezPath::new();
    let mut gaps = BezPath::new();
    // The number of pieces so far: pieces of no length are left out, as `pieces` does.
    let mut piece = 0;
    for (place, at) in points.iter().enumerate() {
        let before = place.checked_sub(1).and_then(|n| points.get(n));
        let Some(before) = before else {
            path.move_to(*at);
            continue;
        };
        if before == at {
            continue;
        }
        let into = *at - *before;
        // Hops on the piece that ends here.
        if let Some(spans) = hops.get(piece) {
            let mut hop = |from: f64, to: f64| {
                let y = at.y;
                let rise = HOP;
                path.line_to((from, y));
                path.move_to((to, y));
                let reach = (to - from).abs() / 2.0;
                let bend = reach.min(HOP) * if to > from { 1.0 } else { -1.0 };
                let up = CubicBez::new(
                    (from, y),
                    (from, y - rise * 0.75),
                    (from + bend * 0.4, y - rise),
                    (from + bend, y - rise),
                );
                let down = CubicBez::new(
                    (to - bend, y - rise),
                    (to - bend * 0.4, y - rise),
                    (to, y - rise * 0.75),
                    (to, y),
                );
                for (path, up, down) in [
                    (&mut over, up, down),
                    (&mut gaps, up.subsegment(0.45..1.0), down.subsegment(0.0..0.55)),
                ] {
                    path.move_to(up.p0);
                    path.curve_to(up.p1, up.p2, up.p3);
                    if (to - from).abs() > 2.0 * HOP {
                        path.line_to(down.p0);
                    }
                    path.curve_to(down.p1, down.p2, down.p3);
                }
            };
            if into.x >= 0.0 {
                for (a, b) in spans {
                    hop(*a, *b);
                }
            } else {
                for (a, b) in spans.iter().rev() {
                    hop(*b, *a);
                }
            }
        }
        piece += 1;
        match points.get(place + 1) {
            Some(after) if after != at => {
                let out = *after - *at;
                let reach = CORNER.min(into.hypot() / 2.0).min(out.hypot() / 2.0);
                if into.cross(out).abs() < 1e-9 || reach < 0.1 {
                    path.line_to(*at);
                } else {
                    path.line_to(*at - into.normalize() * reach);
                    path.quad_to(*at, *at + out.normalize() * reach);
                }
            }
            _ => path.line_to(*at),
        }
    }
    Drawn {
        along: path,
        hops: over,
        gaps,
    }
}

/// A loose end: a small open ring with a stroke across, so that it cannot be taken for a joint.
fn draw_loose_ends(pen: &mut Pen, run: &Run, way: &RunWay) {
    for (end, at) in [(&run.from, way.points.first()), (&run.to, way.points.last())] {
        if let (End::Loose(_), Some(at)) = (end, at) {
            pen.path(
                Detail::Shape,
                circle(*at, 5.0),
                Some(Ink::Paper),
                Some(solid(Ink::Stop, 1.6)),
            );
            let mut path = BezPath::new();
            path.move_to(*at + Vec2::new(-7.0, 7.0));
            path.line_to(*at + Vec2::new(7.0, -7.0));
            pen.line(Detail::Shape, path, Ink::Stop, 1.6);
        }
    }
}

/// Arrowheads by the direction of the current, on pieces long enough to bear them beside the label.
fn draw_arrows(pen: &mut Pen, id: RunId, way: &RunWay, overlays: &Overlays<'_>) {
    let Some((forwards, ink, size)) = overlays.arrow(id) else {
        return;
    };
    for (a, b) in way.pieces() {
        let length = a.distance(b);
        if length < 44.0 {
            continue;
        }
        let along = (b - a) / length;
        let spots: &[f64] = if length > 260.0 { &[0.16, 0.84] } else { &[0.82] };
        for share in spots {
            let at = a + along * (length * share);
            let half = size * 1.1 + 2.0;
            let spot = Rect::from_center_size(at, (2.0 * half, 2.0 * half));
            if way.label.as_ref().is_some_and(|label| label.area.overlaps(spot)) {
                continue;
            }
            let ahead = if forwards { along } else { -along };
            let across = Vec2::new(-ahead.y, ahead.x);
            let mut path = BezPath::new();
            path.move_to(at + ahead * half);
            path.line_to(at - ahead * half * 0.7 + across * half * 0.75);
            path.line_to(at - ahead * half * 0.7 - across * half * 0.75);
            path.close_path();
            pen.path(Detail::Studs, path, Some(ink), Some(solid(Ink::Paper, 1.0)));
        }
    }
}

fn draw_label(pen: &mut Pen, id: RunId, way: &RunWay, overlays: &Overlays<'_>, look: &Look) {
    let Some(label) = &way.label else { return };
    let dimmed = !look.lit.is_empty() && !look.lit.runs.contains(&id);
    let said = overlays.label(id);
    let (text, ink, detail) = match &said {
        Some(text) => (text.as_str(), Ink::Text, Detail::Numbers),
        None => (
            label.text.as_str(),
            if dimmed { Ink::Dimmed } else { Ink::Text },
            Detail::Labels,
        ),
    };
    if !pen.shows(detail) || text.is_empty() {
        return;
    }
    let room = label.area.width().max(label.area.height());
    // At small zoom in larger letters, and if need be less of it; the lane beside must not be covered.
    let Some(size) = label_size(look.zoom) else {
        return;
    };
    let shorter = text
        .rmatch_indices("  ")
        .filter_map(|(place, _)| text.get(..place));
    let Some(text) = std::iter::once(text)
        .chain(shorter)
        .find(|text| text_width(text, size, false) <= room)
    else {
        return;
    };
    // The paper shows through where the label stands, as on a map's contour lines.
    let half = text_width(text, size, false) / 2.0 + 2.0;
    let depth = LABEL_DEPTH * size / RUN_LABEL_SIZE;
    let middle = label.area.center();
    let (gap, at) = if label.upright {
        (
            Rect::new(
                middle.x - depth,
                middle.y - half,
                middle.x + depth,
                middle.y + half,
            ),
            Point::new(middle.x + 0.35 * size, middle.y),
        )
    } else {
        (
            Rect::new(
                middle.x - half,
                middle.y - depth,
                middle.x + half,
                middle.y + depth,
            ),
            Point::new(middle.x, middle.y + 0.35 * size),
        )
    };
    pen.area(detail, gap, Some(Ink::Paper), None);
    pen.write(
        detail,
        Writing {
            anchor: Anchor::Middle,
            upright: label.upright,
            ..Writing::new(text, at, size, ink)
        },
    );
}

/// Height of a label's letters in board units; nothing at a zoom at which they are not written.
fn label_size(zoom: f64) -> Option<f64> {
    Some(RUN_LABEL_SIZE.max(LABEL_PX / zoom.max(1e-3))).filter(|size| *size <= MOST_LABEL_SIZE)
}

/// How far labels reach over the boxes that were kept for them when the runs were laid; nothing where none is written.
pub(super) fn label_reach(zoom: f64) -> Option<f64> {
    label_size(zoom).map(|size| LABEL_DEPTH * (size / RUN_LABEL_SIZE - 1.0))
}

/// Half the height of what a label of the usual size covers.
const LABEL_DEPTH: f64 = 4.6;
/// Least height of a label's letters on screen, in pixels.
const LABEL_PX: f64 = 7.5;
/// Largest letters of a label, in board units: larger ones reach into the lanes beside it.
const MOST_LABEL_SIZE: f64 = 12.5;

/// Whether the finding under the pointer speaks of this run.
fn spoken_of(look: &Look, run: RunId) -> bool {
    matches!(look.hovered, Some(Owner::Finding(_)))
        && look
            .marks
            .iter()
            .any(|mark| look.hovered == Some(Owner::Finding(mark.finding)) && mark.runs.contains(&run))
}
