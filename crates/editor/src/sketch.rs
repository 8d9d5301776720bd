//! What the tool in hand shows on top of the drawing: the fence, the run being pulled, the part from the shelf, lines of
//! alignment, the meter's leads, and the ring of the keyboard's focus. Widths are in screen pixels.

use crate::editor::Editor;
use crate::roles;
use crate::selection::Thing;
use crate::tools::meter::Mode;
use crate::tools::{Pick, Pull, Tool};
use drawing::{Anchor, Detail, DisplayList, Ink, Item, Owner, Shape, Stroke, circle, text_area, to_point};
use kurbo::{BezPath, Point, Rect, Shape as _};
use model::conductor::Colour;
use model::edits::RunSide;

/// Adds items in the tool's name.
pub(crate) struct Sketch<'a> {
    list: &'a mut DisplayList,
    /// A pixel of the screen, in board units.
    pub(crate) pixel: f64,
}

impl<'a> Sketch<'a> {
    pub(crate) fn new(list: &'a mut DisplayList, zoom: f64) -> Self {
        Self {
            list,
            pixel: 1.0 / zoom.max(1e-3),
        }
    }
    pub(crate) fn path(
        &mut self,
        path: BezPath,
        fill: Option<Ink>,
        ink: Ink,
        width_px: f64,
        dash_px: Option<(f64, f64)>,
    ) {
        let width = width_px * self.pixel;
        let bounds = path.control_box().inflate(width, width);
        let dash = dash_px.map(|(dash, gap)| (dash * self.pixel, gap * self.pixel));
        self.list.items.push(Item {
            owner: Owner::Tool,
            detail: Detail::Shape,
            bounds,
            shape: Shape::Path {
                path,
                fill,
                stroke: Some(Stroke { ink, width, dash }),
            },
        });
    }
    pub(crate) fn line(&mut self, points: &[Point], ink: Ink, width_px: f64, dash_px: Option<(f64, f64)>) {
        let mut path = BezPath::new();
        for (n, point) in points.iter().enumerate() {
            if n == 0 {
                path.move_to(*point)
            } else {
                path.line_to(*point)
            }
        }
        self.path(path, None, ink, width_px, dash_px);
    }
    pub(crate) fn ring(&mut self, at: Point, radius_px: f64, ink: Ink, width_px: f64, fill: Option<Ink>) {
        let path = circle(at, radius_px * self.pixel);
        self.path(path, fill, ink, width_px, None);
    }
    /// A word in bold letters that stands out from what is behind it.
    pub(crate) fn word(&mut self, word: &str, at: Point, size_px: f64, anchor: Anchor, ink: Ink) {
        self.text(word, at, size_px, anchor, ink, true);
    }
    pub(crate) fn text(&mut self, text: &str, at: Point, size_px: f64, anchor: Anchor, ink: Ink, bold: bool) {
        if text.is_empty() {
            return;
        }
        let size = size_px * self.pixel;
        let area = text_area(text, at, size, anchor, bold, false);
        self.list.items.push(Item {
            owner: Owner::Tool,
            detail: Detail::Shape,
            bounds: area.inflate(0.3 * size, 0.3 * size),
            shape: Shape::Text {
                text: text.to_owned(),
                at,
                size,
                anchor,
                ink,
                bold,
                halo: bold,
                upright: false,
            },
        });
    }
    fn frame(&mut self, area: Rect, ink: Ink, width_px: f64, dash_px: Option<(f64, f64)>) {
        self.path(area.to_path(0.1), None, ink, width_px, dash_px);
    }
}

/// The point of a way that is nearest to another point.
fn nearest_on(way: &[Point], at: Point) -> Option<Point> {
    let pieces = way.iter().zip(way.iter().skip(1));
    let nearest = pieces.map(|(a, b)| {
        let along = *b - *a;
        let share = (at - *a).dot(along) / along.hypot2().max(1e-9);
        *a + along * share.clamp(0.0, 1.0)
    });
    nearest.min_by(|a, b| a.distance(at).total_cmp(&b.distance(at)))
}

/// A way with right angles from a stud to a point.
fn elbow(from: Point, to: Point) -> Vec<Point> {
    let middle = (from.x + to.x) / 2.0;
    vec![from, Point::new(middle, from.y), Point::new(middle, to.y), to]
}

impl Editor {
    pub(crate) fn sketch(&self, list: &mut DisplayList) {
        let mut sketch = Sketch::new(list, self.camera.zoom);
        if self.is_on_body() {
            if let Some((was, now)) = self.held_spot() {
                let at = now.unwrap_or(was);
                if now.is_some() {
                    sketch.line(&[was, at], Ink::Picked, 1.5, Some((5.0, 4.0)));
                }
                sketch.ring(at, 10.0, Ink::Picked, 2.5, None);
            }
            if let Some((carried, place)) = self.carried() {
                if let Some(place) = place {
                    sketch.line(&[carried.center(), place], Ink::Picked, 1.5, Some((5.0, 4.0)));
                    sketch.ring(place, 12.0, Ink::Picked, 2.5, None);
                }
                sketch.path(carried.to_path(0.1), Some(Ink::Paper), Ink::Picked, 2.0, None);
            }
            return;
        }
        if let Some(focus) = self.shown_focus() {
            self.sketch_focus(&mut sketch, focus);
        }
        match &self.tool {
            Tool::Pick(Pick::Fencing { start, now, .. }) => {
                sketch.frame(
                    Rect::from_points(*start, *now),
                    Ink::Picked,
                    1.0,
                    Some((5.0, 4.0)),
                );
            }
            Tool::Pick(Pick::Carrying { guides, .. }) => {
                for (a, b) in guides {
                    sketch.line(&[*a, *b], Ink::Lit, 1.0, Some((2.0, 3.0)));
                }
            }
            Tool::Pick(_) | Tool::Hand => self.sketch_handles(&mut sketch),
            Tool::MoveEnd(end) => {
                self.sketch_studs(&mut sketch, self.end_role(end));
                if let Some((from, to)) = self.end_line(end) {
                    sketch.line(&elbow(from, to), Ink::Paper, 6.0, None);
                    sketch.line(&elbow(from, to), Ink::Picked, 2.5, None);
                    let (radius, fill) = match &end.over {
                        Some(_) => (9.0, Some(Ink::Paper)),
                        None => (4.0, None),
                    };
                    sketch.ring(to, radius, Ink::Picked, 2.0, fill);
                }
            }
            Tool::Pull(Pull::Waiting) => self.sketch_studs(&mut sketch, None),
            Tool::Pull(Pull::Drawing { from, now, over, .. }) => {
                self.sketch_studs(&mut sketch, self.sheet().role(from));
                let end = over.as_ref().and_then(|over| self.stud(over)).unwrap_or(*now);
                if let Some(start) = self.stud(from) {
                    sketch.line(&elbow(start, end), Ink::Paper, 6.0, None);
                    sketch.line(&elbow(start, end), Ink::Picked, 2.5, None);
                    sketch.ring(start, 5.0, Ink::Picked, 2.0, Some(Ink::Paper));
                }
                let caught = over.is_some();
                sketch.ring(
                    end,
                    if caught { 9.0 } else { 4.0 },
                    Ink::Picked,
                    2.0,
                    caught.then_some(Ink::Paper),
                );
            }
            Tool::Place(place) => {
                if let Some((_, part)) = place.ghost() {
                    sketch.path(
                        part.outline.to_path(0.1),
                        Some(Ink::PartFill),
                        Ink::Picked,
                        1.5,
                        Some((6.0, 3.0)),
                    );
                    for stud in &part.studs {
                        sketch.ring(stud.at, 3.0, Ink::Picked, 1.5, Some(Ink::Paper));
                    }
                    if let Some(way) = place.into.and_then(|run| self.layout.run(run)) {
                        sketch.line(&way.points, Ink::Lit, 3.0, None);
                    }
                }
            }
            // Over the marks of what is thrown.
            Tool::Break(_) => {}
            Tool::Meter(meter) => {
                let red = meter.red.as_ref().and_then(|at| self.stud(at));
                let black = meter
                    .black
                    .clone()
                    .or_else(|| self.usual_black())
                    .and_then(|at| self.stud(&at));
                if meter.mode == Mode::Amps {
                    if let Some(way) = meter.clamp.and_then(|run| self.layout.run(run)) {
                        sketch.ring(way.label_at, 13.0, Ink::Line, 4.0, None);
                        sketch.ring(way.label_at, 13.0, Ink::Insulation(Colour::Red), 1.5, None);
                    }
                } else {
                    for (at, colour) in [(black, Colour::Black), (red, Colour::Red)] {
                        if let Some(at) = at {
                            self.sketch_probe(&mut sketch, at, colour);
                        }
                    }
                }
            }
        }
    }

    /// Handles of the run that alone is picked: rings by which its ends are taken, squares on the bends put by hand, the
    /// one in hand filled.
    fn sketch_handles(&self, sketch: &mut Sketch<'_>) {
        if self.looks_only {
            return;
        }
        let Some(Thing::Run(id)) = self.selection.single() else {
            return;
        };
        let Some(run) = self.sheet().runs.get(&id) else {
            return;
        };
        for side in [RunSide::From, RunSide::To] {
            if let Some(at) = self.end_handle(id, side) {
                sketch.ring(at, 5.0, Ink::Picked, 2.0, Some(Ink::Paper));
            }
        }
        let half = 4.5 * sketch.pixel;
        for (place, bend) in run.bends.iter().enumerate() {
            let at = to_point(*bend);
            // The run is cut short where a bend would lead it back on itself: the bend then stands beside it.
            let beside = self.layout.run(id).and_then(|way| nearest_on(&way.points, at));
            if let Some(near) = beside.filter(|near| near.distance(at) > half) {
                sketch.line(&[near, at], Ink::Picked, 1.0, Some((2.0, 3.0)));
            }
            let square = Rect::from_center_size(at, (2.0 * half, 2.0 * half));
            let in_hand = self.bend_in_hand() == Some((id, place));
            let fill = if in_hand { Ink::Picked } else { Ink::Paper };
            sketch.path(square.to_path(0.1), Some(fill), Ink::Picked, 2.0, None);
        }
    }

    /// A test prod: a lead that comes from the lower edge of the window and ends in a tip on the stud.
    pub(crate) fn sketch_probe(&self, sketch: &mut Sketch<'_>, at: Point, colour: Colour) {
        let pixel = sketch.pixel;
        let tip = Point::new(at.x + 26.0 * pixel, at.y + 34.0 * pixel);
        // The lead curls away and ends: drawn to the meter's face it would cross the whole sheet.
        let along = |x: f64, y: f64| Point::new(tip.x + x * pixel, tip.y + y * pixel);
        let mut path = BezPath::new();
        path.move_to(tip);
        path.curve_to(along(14.0, 20.0), along(40.0, 24.0), along(44.0, 4.0));
        sketch.path(path.clone(), None, Ink::Casing, 4.5, None);
        sketch.path(path, None, Ink::Insulation(colour), 3.0, None);
        sketch.line(&[at, tip], Ink::Casing, 9.0, None);
        sketch.line(
            &[Point::new(at.x + 8.0 * pixel, at.y + 10.0 * pixel), tip],
            Ink::Insulation(colour),
            7.0,
            None,
        );
        sketch.line(&[at, tip], Ink::Line, 2.0, None);
        sketch.ring(at, 5.0, Ink::Insulation(colour), 2.5, None);
    }

    fn sketch_focus(&self, sketch: &mut Sketch<'_>, focus: &Thing) {
        match focus {
            Thing::Terminal(at) => {
                if let Some(stud) = self.stud(at) {
                    sketch.ring(stud, 9.0, Ink::Paper, 5.0, None);
                    sketch.ring(stud, 9.0, Ink::Picked, 2.5, None);
                }
            }
            Thing::Part(id) => {
                if let Some(part) = self.layout.part(*id) {
                    let gap = 5.0 * sketch.pixel;
                    sketch.frame(part.outline.inflate(gap, gap), Ink::Picked, 1.5, Some((3.0, 3.0)));
                }
            }
            Thing::Run(_) => {}
        }
    }

    /// Rings around the studs in view that a run could start from or land on.
    fn sketch_studs(&self, sketch: &mut Sketch<'_>, from: Option<model::Role>) {
        let visible = self.camera.visible();
        for (_, part) in self.layout.parts() {
            if part.outline.x1 < visible.x0
                || part.outline.x0 > visible.x1
                || part.outline.y1 < visible.y0
                || part.outline.y0 > visible.y1
            {
                continue;
            }
            for stud in &part.studs {
                if from.is_none_or(|from| roles::fits(from, stud.role)) {
                    sketch.ring(stud.at, 7.0, Ink::Lit, 2.0, None);
                }
            }
        }
    }
}
