//! Marks of findings: octagon, triangle, dot, each with its number, at the part or run it speaks of. They keep their
//! size on the screen, so that they are seen in a whole system too.

use super::Cut;
use super::pen::{Pen, Writing, solid};
use crate::display::{Anchor, Detail, Ink, Owner};
use crate::layout::Layout;
use crate::look::{Look, Mark, MarkShape};
use crate::ways::RunWay;
use kurbo::{BezPath, Circle, Point, Rect, Vec2};
use std::collections::BTreeMap;

/// Radius of a mark on the screen, in pixels.
const RADIUS: f64 = 9.0;

/// Radius of a mark in board units: constant on the screen from zoom 0.25 up, growing with the drawing above 1.
pub(crate) fn radius(zoom: f64) -> f64 {
    RADIUS / zoom.clamp(0.25, 1.0)
}

/// Where the mark of each finding stands, and on what; findings of one part or run stand beside each other.
pub(crate) fn spots<'a>(layout: &Layout, look: &'a Look) -> Vec<(&'a Mark, Point, Owner)> {
    let radius = radius(look.zoom);
    let mut taken: BTreeMap<Owner, u32> = BTreeMap::new();
    let mut spots = Vec::new();
    for mark in &look.marks {
        let at_run = mark
            .runs
            .iter()
            .find_map(|id| Some((Owner::Run(*id), layout.runs.get(id)?)));
        let at_part = mark
            .parts
            .iter()
            .find_map(|id| Some((Owner::Part(*id), layout.parts.get(id)?)));
        // A finding that names parts stands at the first part; one about runs only, on the run.
        let (owner, at, next) = match (at_part, at_run) {
            (Some((owner, part)), _) => (
                owner,
                Point::new(part.outline.x1 - radius, part.outline.y0 - radius * 0.6),
                Vec2::new(-2.3 * radius, 0.0),
            ),
            (None, Some((owner, way))) => {
                let (at, upright) = spot_on_run(layout, way, radius);
                let step = if upright {
                    Vec2::new(0.0, -2.3)
                } else {
                    Vec2::new(2.3, 0.0)
                };
                (owner, at, step * radius)
            }
            (None, None) => continue,
        };
        let place = taken.entry(owner).or_insert(0);
        spots.push((mark, at + next * f64::from(*place), owner));
        *place += 1;
    }
    spots
}

/// A point of a run that is clear of parts and of its own label, on as long a piece as can be, and whether that piece is
/// upright.
fn spot_on_run(layout: &Layout, way: &RunWay, radius: f64) -> (Point, bool) {
    let mut straight: Vec<(Point, Point)> = way.pieces().collect();
    straight.sort_by(|a, b| b.0.distance(b.1).total_cmp(&a.0.distance(a.1)));
    // On the run; where there is no room, beside it.
    let aside = radius + 7.0;
    let tries = [0.0, aside, -aside]
        .into_iter()
        .flat_map(|aside| straight.iter().map(move |piece| (aside, piece)));
    for (aside, (a, b)) in tries {
        for share in [0.5, 0.75, 0.25, 0.9, 0.1] {
            let across = if a.x == b.x {
                Vec2::new(1.0, 0.0)
            } else {
                Vec2::new(0.0, 1.0)
            };
            let at = a.lerp(*b, share) + across * aside;
            let area = Rect::from_center_size(at, (2.0 * radius, 2.0 * radius));
            let on_label = way.label.as_ref().is_some_and(|label| label.area.overlaps(area));
            if !on_label && !layout.is_on_part(area) {
                return (at, a.x == b.x);
            }
        }
    }
    (way.label_at, straight.first().is_some_and(|(a, b)| a.x == b.x))
}

pub(crate) fn draw_marks(pen: &mut Pen, layout: &Layout, look: &Look, cut: &Cut<'_>) {
    let radius = radius(look.zoom);
    for (mark, at, host) in spots(layout, look) {
        let owner = Owner::Finding(mark.finding);
        pen.owner(owner);
        let here = match host {
            Owner::Part(id) => cut.has_part(id),
            Owner::Run(id) => cut.has_run(id),
            _ => true,
        };
        if !here || !cut.shows(Rect::from_center_size(at, (4.0 * radius, 4.0 * radius))) {
            continue;
        }
        if look.hovered == Some(owner) || look.picked.contains(&owner) {
            pen.shape(
                Detail::Shape,
                Circle::new(at, radius * 1.5),
                Some(Ink::Paper),
                Some(solid(Ink::Picked, radius * 0.22)),
            );
        }
        draw_mark(pen, mark, at, radius);
    }
}

fn draw_mark(pen: &mut Pen, mark: &Mark, at: Point, radius: f64) {
    let corner = |x: f64, y: f64| at + Vec2::new(x, y) * radius;
    let write = |pen: &mut Pen, at: Point, size: f64, ink: Ink, anchor: Anchor| {
        pen.write(
            Detail::Shape,
            Writing {
                bold: true,
                anchor,
                halo: anchor == Anchor::Start,
                ..Writing::new(mark.label.clone(), at, size, ink)
            },
        );
    };
    match mark.shape {
        MarkShape::Octagon => {
            // tan(22.5°): half a side over the radius of the inscribed circle.
            let side = 0.414_213_56;
            let points = [
                (side, -1.0),
                (1.0, -side),
                (1.0, side),
                (side, 1.0),
                (-side, 1.0),
                (-1.0, side),
                (-1.0, -side),
                (-side, -1.0),
            ];
            let path = closed(points.map(|(x, y)| corner(x, y)));
            pen.path(
                Detail::Shape,
                path,
                Some(Ink::Stop),
                Some(solid(Ink::Paper, radius * 0.16)),
            );
            write(pen, corner(0.0, 0.36), radius, Ink::Paper, Anchor::Middle);
        }
        MarkShape::Triangle => {
            let path = closed([(0.0, -1.15), (1.2, 0.9), (-1.2, 0.9)].map(|(x, y)| corner(x, y)));
            pen.path(
                Detail::Shape,
                path,
                Some(Ink::PartFill),
                Some(solid(Ink::Fix, radius * 0.24)),
            );
            write(pen, corner(0.0, 0.66), radius * 0.88, Ink::Fix, Anchor::Middle);
        }
        MarkShape::Dot => {
            pen.shape(
                Detail::Shape,
                Circle::new(at, radius * 0.42),
                Some(Ink::Tidy),
                Some(solid(Ink::Paper, radius * 0.14)),
            );
            write(pen, corner(0.55, 0.3), radius * 0.8, Ink::Tidy, Anchor::Start);
        }
    }
}

fn closed<const N: usize>(points: [Point; N]) -> BezPath {
    let mut path = BezPath::new();
    for (place, at) in points.into_iter().enumerate() {
        if place == 0 {
            path.move_to(at);
        } else {
            path.line_to(at);
        }
    }
    path.close_path();
    path
}
