//! Marks of findings: octagon, triangle, dot, each with its number, at the part or run it speaks of. They keep their
//! size on the screen, so that they are seen in a whole system too.

use super::Cut;
use super::pen::{Pen, Writing, solid};
use crate::cells::Cells;
use crate::display::{Anchor, Detail, Ink, Owner};
use crate::layout::Layout;
use crate::letters::text_width;
use crate::look::{Look, Mark, MarkShape};
use crate::shapes::circle;
use crate::ways::RunWay;
use kurbo::{BezPath, Point, Rect, Vec2};
use ordered::OrderedMap;
use ordered::Sort as _;

/// Radius of a mark on the screen, in pixels.
const RADIUS: f64 = 9.0;

/// Radius of a mark in board units: constant on the screen from zoom 0.25 up, growing with the drawing above 1.
pub(crate) fn radius(zoom: f64) -> f64 {
    RADIUS / zoom.clamp(0.25, 1.0)
}

/// Zoom below which the marks of one part or run are folded into one: side by side they would cover its neighbours.
const FOLDED_BELOW: f64 = 0.5;

/// Where the mark of a finding stands.
pub(crate) struct Spot<'a> {
    pub(crate) mark: &'a Mark,
    pub(crate) at: Point,
    /// Where a line from it ends on what it speaks of, when it had to move away from there.
    pub(crate) leader: Option<Point>,
    /// Whether it has a place of its own.
    has_room: bool,
    /// Whether it is drawn; where marks would cover one another, the gravest stands for all of them.
    pub(crate) shown: bool,
    /// How many others it stands for.
    folded: u32,
}

impl<'a> Spot<'a> {
    /// A mark where there is room for it; without room it lies on others, and [`fold`] makes one of them.
    pub(crate) fn new(mark: &'a Mark, at: Point, leader: Option<Point>, has_room: bool) -> Self {
        Self {
            mark,
            at,
            leader,
            has_room,
            shown: true,
            folded: 0,
        }
    }
}

/// The marks of one part or run.
#[derive(Clone, Copy)]
struct Host {
    first: Point,
    leader: Option<Point>,
    count: u32,
}

/// Where the mark of each finding stands whose part or run is asked for; findings of one part or run stand beside each
/// other.
pub(crate) fn spots<'a>(layout: &Layout, look: &'a Look, wanted: impl Fn(Owner) -> bool) -> Vec<Spot<'a>> {
    let radius = radius(look.zoom);
    let folds = look.zoom < FOLDED_BELOW;
    let mut hosts: OrderedMap<Owner, Host> = OrderedMap::new();
    let mut room = Room::new(layout, look);
    let mut spots = Vec::new();
    for mark in &look.marks {
        let at_part = mark
            .parts
            .iter()
            .find_map(|id| Some((Owner::Part(*id), layout.parts.get(id)?.outline)));
        let at_run = mark
            .runs
            .iter()
            .find_map(|id| Some((Owner::Run(*id), layout.runs.get(id)?)));
        let host = at_part.map(|(owner, _)| owner).or(at_run.map(|(owner, _)| owner));
        let Some(host) = host.filter(|host| wanted(*host)) else {
            continue;
        };
        let first = hosts.get(&host).copied();
        // A finding that names parts stands on the first part's upper edge, clear of its tag; one about runs only, on
        // the run. Where all of that is taken it moves away, and a line leads back; where there is no room at all, the
        // host's first mark stands for this one too.
        let mut has_room = true;
        let mut crammed = |at: Point, leader: Option<Point>| {
            has_room = false;
            (at, leader)
        };
        let (at, leader) = match (first, at_part, at_run) {
            (Some(first), ..) if folds => (first.first, first.leader),
            (_, Some((_, outline)), _) => {
                let corner = Point::new(outline.x1, outline.y0);
                room.take(mark, beside_part(outline, radius))
                    .map(|at| (at, None))
                    .or_else(|| {
                        let at = room.take(mark, around(corner, 1.2 * radius, 16))?;
                        Some((at, Some(nearest_of(outline, at))))
                    })
                    .or(first.map(|first| (first.first, first.leader)))
                    .unwrap_or_else(|| crammed(Point::new(outline.x1, outline.y0 - 1.15 * radius), None))
            }
            (_, None, Some((_, way))) => {
                let next = first.map(|first| {
                    let upright = way.pieces().any(|(a, b)| a.x == b.x && a.x == first.first.x);
                    let step = if upright {
                        Vec2::new(0.0, -2.3)
                    } else {
                        Vec2::new(2.3, 0.0)
                    };
                    first.first + step * radius * f64::from(first.count)
                });
                room.take(mark, next.into_iter().chain(on_run(way, radius)))
                    .map(|at| (at, None))
                    .or_else(|| {
                        let at = room.take(mark, around(way.label_at, 1.2 * radius, 16))?;
                        Some((at, nearest_on(way, at)))
                    })
                    .or(first.map(|first| (first.first, first.leader)))
                    .unwrap_or_else(|| crammed(way.label_at, None))
            }
            (_, None, None) => continue,
        };
        hosts
            .entry(host)
            .or_insert(Host {
                first: at,
                leader,
                count: 0,
            })
            .count += 1;
        spots.push(Spot::new(mark, at, leader, has_room));
    }
    fold(&mut spots, radius);
    spots
}

/// The box that a mark covers with its letters, around where it stands.
pub(crate) fn extent(mark: &Mark, radius: f64) -> Rect {
    match mark.shape {
        MarkShape::Octagon => {
            let half = radius * wide(mark);
            Rect::new(-half, -radius, half, radius)
        }
        MarkShape::Triangle => Rect::new(-1.2 * radius, -1.15 * radius, 1.2 * radius, 0.9 * radius),
        MarkShape::Dot => {
            let letters = text_width(&mark.label, 0.8 * radius, true);
            Rect::new(
                -0.5 * radius,
                -0.5 * radius,
                0.55 * radius + letters,
                0.5 * radius,
            )
        }
    }
}

/// How much wider than high an octagon is drawn, so that its letters find room.
fn wide(mark: &Mark) -> f64 {
    (text_width(&mark.label, 1.0, true) / 2.0 + 0.3).max(1.0)
}

/// Where marks may stand: clear of parts, whose tags and numbers lie within their outlines, of labels, and of one another.
struct Room<'a> {
    layout: &'a Layout,
    radius: f64,
    /// How far labels of runs reach over the boxes that were kept for them; nothing where none is shown.
    labels: Option<f64>,
    /// Marks that stand already, by cells as wide as two of them.
    taken: Cells<Rect>,
}

impl<'a> Room<'a> {
    fn new(layout: &'a Layout, look: &Look) -> Self {
        let shown = super::detail_at(look.zoom) >= Detail::Labels;
        Self {
            layout,
            radius: radius(look.zoom),
            labels: super::runs::label_reach(look.zoom).filter(|_| shown),
            taken: Cells::default(),
        }
    }
    fn cell(&self, length: f64) -> i32 {
        libm::floor(length / (2.2 * self.radius)) as i32
    }
    /// The cells that a box lies in, from and to.
    fn cells(&self, area: Rect) -> [(i32, i32); 2] {
        [
            (self.cell(area.x0), self.cell(area.x1)),
            (self.cell(area.y0), self.cell(area.y1)),
        ]
    }
    fn is_free(&self, area: Rect) -> bool {
        let gap = 0.1 * self.radius;
        let around = area.inflate(gap, gap);
        let [columns, rows] = self.cells(around);
        if self
            .taken
            .any(columns, rows, |_, _, other| other.overlaps(around))
        {
            return false;
        }
        if let Some(reach) = self.labels
            && self
                .layout
                .label_index
                .any_near(area.inflate(reach, reach), |_, label| {
                    label.inflate(reach, reach).overlaps(area)
                })
        {
            return false;
        }
        // Over the edge of a part it may reach: what is written there begins further in.
        !self.layout.is_on_part(area.inset(-EDGE))
    }
    /// Takes the first of these places that is free.
    fn take(&mut self, mark: &Mark, mut places: impl Iterator<Item = Point>) -> Option<Point> {
        let covers = extent(mark, self.radius);
        let at = places.find(|at| self.is_free(covers + at.to_vec2()))?;
        let area = covers + at.to_vec2();
        let [columns, rows] = self.cells(area);
        for column in columns.0..=columns.1 {
            for row in rows.0..=rows.1 {
                self.taken.push(column, row, area);
            }
        }
        Some(at)
    }
}

/// How far a mark may reach over the edge of a part, in board units.
const EDGE: f64 = 2.5;

/// Places for the marks of a part: on its upper edge from the right, then above those, below it, and beside it. Its tag
/// begins right below that edge.
pub(crate) fn beside_part(outline: Rect, radius: f64) -> impl Iterator<Item = Point> {
    let step = 2.3 * radius;
    let x = (outline.x1 - radius).max(outline.center().x);
    let (above, below) = (outline.y0 - 1.15 * radius, outline.y1 + radius - 2.0);
    let row = move |y: f64| (0..5).map(move |n| Point::new(x - step * f64::from(n), y));
    let column = move |x: f64| (0..3).map(move |n| Point::new(x, above + step * f64::from(n)));
    row(above)
        .chain(row(above - step))
        .chain(row(below))
        .chain(column(outline.x1 + radius - 2.0))
        .chain(column(outline.x0 - radius + 2.0))
        .chain(row(above - 2.0 * step))
        .chain(row(below + step))
}

/// Places around a spot, nearest first: squares of them, one around the other.
pub(crate) fn around(middle: Point, step: f64, rings: i32) -> impl Iterator<Item = Point> {
    (1..=rings).flat_map(move |ring| {
        (-ring..=ring).flat_map(move |along| {
            [(along, -ring), (ring, along), (along, ring), (-ring, along)]
                .map(|(x, y)| middle + Vec2::new(f64::from(x), f64::from(y)) * step)
        })
    })
}

/// The point of a box that is nearest.
pub(crate) fn nearest_of(area: Rect, at: Point) -> Point {
    Point::new(at.x.clamp(area.x0, area.x1), at.y.clamp(area.y0, area.y1))
}

/// The point of a run that is nearest.
fn nearest_on(way: &RunWay, at: Point) -> Option<Point> {
    way.pieces()
        .map(|(a, b)| nearest_of(Rect::from_points(a, b), at))
        .min_by(|a, b| a.distance(at).total_cmp(&b.distance(at)))
}

/// Folds marks that would cover one another. Findings come gravest first, so the first of them stays.
pub(crate) fn fold(spots: &mut [Spot<'_>], radius: f64) {
    // One that found a place of its own stands clear of all others.
    let (reach, same) = (1.9 * radius, 0.01 * radius);
    // Kept ones by cells as wide as marks reach: whatever covers a mark lies in its cell or one beside it.
    let mut kept: Cells<usize> = Cells::default();
    let cell = |length: f64| libm::floor(length / reach) as i32;
    for place in 0..spots.len() {
        let Some((at, within)) = spots
            .get(place)
            .map(|spot| (spot.at, if spot.has_room { same } else { reach }))
        else {
            break;
        };
        let (column, row) = (cell(at.x), cell(at.y));
        let mut host = None;
        let around = |middle: i32| (middle.saturating_sub(1), middle.saturating_add(1));
        kept.any(around(column), around(row), |_, _, other| {
            let covers = spots
                .get(*other)
                .is_some_and(|spot| spot.at.distance(at) < within);
            if covers {
                host = Some(*other);
            }
            covers
        });
        let Some(host) = host else {
            kept.push(column, row, place);
            continue;
        };
        let Some(there) = spots.get_mut(host) else {
            continue;
        };
        there.folded += 1;
        let at = there.at;
        if let Some(spot) = spots.get_mut(place) {
            (spot.shown, spot.at, spot.leader) = (false, at, None);
        }
    }
}

/// The box around the marks of findings that are shown; nothing without any.
#[must_use]
pub fn marks_bounds(layout: &Layout, look: &Look) -> Option<Rect> {
    let all = areas(&spots(layout, look, |_| true), look);
    all.into_iter().reduce(|all, one| all.union(one))
}

/// The boxes of the marks that are drawn.
pub(crate) fn areas(spots: &[Spot<'_>], look: &Look) -> Vec<Rect> {
    let radius = radius(look.zoom);
    let gap = 0.1 * radius;
    spots
        .iter()
        .filter(|spot| spot.shown)
        .map(|spot| (extent(spot.mark, radius) + spot.at.to_vec2()).inflate(gap, gap))
        .collect()
}

/// Places for the marks of a run, on as long a piece as can be; beside the run where there is no room on it.
fn on_run(way: &RunWay, radius: f64) -> impl Iterator<Item = Point> {
    let mut straight: Vec<(Point, Point)> = way.pieces().collect();
    straight.order_by(|a, b| b.0.distance(b.1).total_cmp(&a.0.distance(a.1)));
    let aside = radius + 7.0;
    [0.0, aside, -aside, 2.0 * aside, -2.0 * aside]
        .into_iter()
        .flat_map(move |aside| straight.clone().into_iter().map(move |piece| (aside, piece)))
        .flat_map(|(aside, (a, b))| {
            let across = if a.x == b.x {
                Vec2::new(1.0, 0.0)
            } else {
                Vec2::new(0.0, 1.0)
            };
            [0.5, 0.75, 0.25, 0.9, 0.1]
                .into_iter()
                .map(move |share| a.lerp(b, share) + across * aside)
        })
}

pub(crate) fn draw_marks(pen: &mut Pen, spots: &[Spot<'_>], look: &Look, cut: &Cut<'_>) {
    let radius = radius(look.zoom);
    for spot in spots.iter().filter(|spot| spot.shown) {
        pen.owner(Owner::Finding(spot.mark.finding));
        let mut covers = (extent(spot.mark, radius) + spot.at.to_vec2()).inflate(radius, radius);
        if let Some(end) = spot.leader {
            covers = covers.union(Rect::from_points(spot.at, end));
        }
        if !cut.shows(covers) {
            continue;
        }
        draw_leader(pen, spot, radius);
        draw_mark_of(pen, spot, look, radius);
    }
}

/// A mark, with its halo when it is picked or hovered, and the edge of one more behind it when it stands for others too.
pub(crate) fn draw_mark_of(pen: &mut Pen, spot: &Spot<'_>, look: &Look, radius: f64) {
    let owner = Owner::Finding(spot.mark.finding);
    pen.owner(owner);
    if look.hovered == Some(owner) || look.picked.contains(&owner) {
        pen.path(
            Detail::Shape,
            circle(spot.at, radius * 1.5),
            Some(Ink::Paper),
            Some(solid(Ink::Picked, radius * 0.22)),
        );
    }
    if spot.folded > 0 {
        outline_of(pen, spot.mark, spot.at + Vec2::new(0.34, -0.3) * radius, radius);
    }
    draw_mark(pen, spot.mark, spot.at, radius);
}

/// The line from a mark to what it speaks of.
pub(crate) fn draw_leader(pen: &mut Pen, spot: &Spot<'_>, radius: f64) {
    if let Some(end) = spot.leader {
        let mut line = BezPath::new();
        line.move_to(spot.at);
        line.line_to(end);
        pen.path(Detail::Shape, line, None, Some(solid(Ink::Faint, radius * 0.12)));
    }
}

/// The bare shape of a mark.
fn outline_of(pen: &mut Pen, mark: &Mark, at: Point, radius: f64) {
    let corner = |(x, y): (f64, f64)| at + Vec2::new(x, y) * radius;
    match mark.shape {
        MarkShape::Octagon => {
            let more = wide(mark) - 1.0;
            let path = closed(OCTAGON.map(|(x, y)| corner((x + more.copysign(x), y))));
            pen.path(
                Detail::Shape,
                path,
                Some(Ink::Stop),
                Some(solid(Ink::Paper, radius * 0.16)),
            );
        }
        MarkShape::Triangle => {
            let path = closed(TRIANGLE.map(corner));
            pen.path(
                Detail::Shape,
                path,
                Some(Ink::PartFill),
                Some(solid(Ink::Fix, radius * 0.24)),
            );
        }
        MarkShape::Dot => pen.path(
            Detail::Shape,
            circle(at, radius * 0.42),
            Some(Ink::Tidy),
            Some(solid(Ink::Paper, radius * 0.14)),
        ),
    }
}

/// Half a side of an octagon over the radius of the circle within it: tan(22.5°).
const SIDE: f64 = 0.414_213_56;
const OCTAGON: [(f64, f64); 8] = [
    (SIDE, -1.0),
    (1.0, -SIDE),
    (1.0, SIDE),
    (SIDE, 1.0),
    (-SIDE, 1.0),
    (-1.0, SIDE),
    (-1.0, -SIDE),
    (-SIDE, -1.0),
];
const TRIANGLE: [(f64, f64); 3] = [(0.0, -1.15), (1.2, 0.9), (-1.2, 0.9)];

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
    outline_of(pen, mark, at, radius);
    match mark.shape {
        MarkShape::Octagon => write(pen, corner(0.0, 0.36), radius, Ink::Paper, Anchor::Middle),
        MarkShape::Triangle => write(pen, corner(0.0, 0.66), radius * 0.88, Ink::Fix, Anchor::Middle),
        MarkShape::Dot => write(pen, corner(0.55, 0.3), radius * 0.8, Ink::Tidy, Anchor::Start),
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
