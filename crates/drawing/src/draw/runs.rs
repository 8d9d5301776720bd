//! Runs: casing, insulation, tracer, rounded corners.

use super::pen::{Pen, solid};
use crate::display::{Detail, Ink, Owner, Stroke};
use crate::layout::Layout;
use crate::look::Look;
use crate::ways::RunWay;
use circuit::Study;
use kurbo::{BezPath, Point, Rect};
use model::{Run, RunId, Sheet};

/// Radius of a corner.
const CORNER: f64 = 6.0;

pub(crate) fn draw_runs(
    pen: &mut Pen,
    sheet: &Sheet,
    layout: &Layout,
    study: Option<&Study>,
    look: &Look,
    visible: Rect,
) {
    let _ = study;
    for id in layout.run_index.near(visible) {
        let (Some(run), Some(way)) = (sheet.runs.get(&id), layout.runs.get(&id)) else {
            continue;
        };
        if way.areas().any(|area| area.inflate(6.0, 6.0).overlaps(visible)) {
            draw_run(pen, id, run, way, look);
        }
    }
}

fn draw_run(pen: &mut Pen, id: RunId, run: &Run, way: &RunWay, look: &Look) {
    let owner = Owner::Run(id);
    pen.owner(owner);
    let path = rounded(&way.points);
    let dimmed = !look.lit.is_empty() && !look.lit.runs.contains(&id);
    if look.picked.contains(&owner) {
        pen.line(Detail::Shape, path.clone(), Ink::Picked, way.width + 6.0);
    } else if look.hovered == Some(owner) || look.lit.runs.contains(&id) {
        pen.line(Detail::Shape, path.clone(), Ink::Lit, way.width + 5.0);
    }
    let jacket = run.wire.jacket;
    if dimmed {
        pen.line(Detail::Shape, path, Ink::Dimmed, way.width);
        return;
    }
    pen.path(
        Detail::Shape,
        path.clone(),
        None,
        Some(solid(Ink::Casing, way.width + 1.2)),
    );
    pen.line(
        Detail::Shape,
        path.clone(),
        Ink::Insulation(jacket.base),
        way.width,
    );
    if let Some(tracer) = jacket.tracer {
        pen.path(
            Detail::Studs,
            path,
            None,
            Some(Stroke {
                ink: Ink::Insulation(tracer),
                width: (way.width * 0.5).max(1.0),
                dash: Some((7.0, 7.0)),
            }),
        );
    }
}

/// A way with rounded corners.
pub(crate) fn rounded(points: &[Point]) -> BezPath {
    let mut path = BezPath::new();
    for (place, at) in points.iter().enumerate() {
        let before = place.checked_sub(1).and_then(|n| points.get(n));
        let after = points.get(place + 1);
        match (before, after) {
            (None, _) => path.move_to(*at),
            (Some(_), None) => path.line_to(*at),
            (Some(before), Some(after)) => {
                let (into, out) = (*at - *before, *after - *at);
                let reach = CORNER.min(into.hypot() / 2.0).min(out.hypot() / 2.0);
                if into.cross(out).abs() < 1e-9 || reach < 0.1 {
                    path.line_to(*at);
                } else {
                    path.line_to(*at - into.normalize() * reach);
                    path.quad_to(*at, *at + out.normalize() * reach);
                }
            }
        }
    }
    path
}
