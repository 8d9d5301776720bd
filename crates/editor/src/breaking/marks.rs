//! The marks of what was thrown, drawn as with a pencil over the sheet, and where they can be taken hold of: a cut is a gap with two
//! strokes, what touches is a lead with a clip at each end, the body is the sign that the trade draws for it (IEC 60617: frame,
//! chassis). Sizes are in screen pixels.

use super::{BrokenSign, SignAt};
use crate::camera::ScreenPoint;
use crate::editor::Editor;
use crate::input::PointerKind;
use crate::sketch::Sketch;
use crate::tools::Tool;
use drawing::{Anchor, DisplayList, Hit, Ink, Overlay, Shape, circle, text_area};
use kurbo::{Affine, BezPath, ParamCurve as _, Point, Rect, Vec2};
use model::breaks::{Break, Contact};
use model::quantity::{Ohms, Share};
use model::{PartKind, RunId};

/// Radius of the ring of a sign.
const RING_PX: f64 = 10.0;
/// Height of its letters.
const LETTERS_PX: f64 = 14.0;
/// From a clip to the sign of the body that hangs on its lead.
const TO_BODY_PX: Vec2 = Vec2::new(40.0, 46.0);
/// From a mark to the ring that takes it away.
const TO_CROSS_PX: Vec2 = Vec2::new(-32.0, -32.0);
/// Width of the drawer beside which the clip of the body lies.
const DRAWER_PX: f64 = 292.0;
/// Radius of that ring, and of the clip of the body: a finger needs 44 pixels across.
const TARGET_PX: f64 = 22.0;
/// How far off its run a mark may be drawn before it comes off.
const STICKS_PX: f64 = 34.0;
/// How near a stud has to be to take over what is drawn along a run.
const ON_STUD_PX: f64 = 9.0;
/// Places along a run go by hundredths, so that they can be told.
const HUNDREDTHS: f64 = 100.0;

/// One end of a mark: the break by its place, and which of its ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Clip {
    /// The break, by its place among those that are thrown.
    pub(crate) place: usize,
    /// Its first end, or its second.
    pub(crate) end: usize,
}

/// What a pointer may land on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Reach {
    /// A run alone: scissors cut nothing else.
    Runs,
    /// Whatever a clip bites on.
    Metal,
}

/// The points that a break ties, where its mark is one of those that can be drawn along: of a cut there is one.
pub(super) fn contacts(broken: &Break) -> Option<(Contact, Option<Contact>)> {
    match broken {
        Break::Cut { run, at } => Some((Contact::Along(*run, *at), None)),
        Break::Grounded { run, at, .. } => Some((Contact::Along(*run, *at), Some(Contact::Body))),
        Break::Joined {
            points: [one, other], ..
        } => Some((one.clone(), Some(other.clone()))),
        _ => None,
    }
}

/// The same break with one of its ends elsewhere; nothing where that is none.
pub(crate) fn remade(broken: &Break, end: usize, to: Contact) -> Option<Break> {
    let through = match broken {
        Break::Grounded { through, .. } | Break::Joined { through, .. } => *through,
        _ => Ohms(0.0),
    };
    match (contacts(broken)?, to) {
        ((_, None), Contact::Along(run, at)) => Some(Break::Cut { run, at }),
        ((_, None), _) => None,
        ((one, Some(other)), to) => {
            let points = if end == 0 { [to, other] } else { [one, to] };
            Break::touching(points, through)
        }
    }
}

/// The point of a way that is nearest to another, how far along the way it is, and how far off.
fn along(pieces: impl Iterator<Item = (Point, Point)>, at: Point) -> Option<(f64, f64)> {
    let (mut whole, mut best) = (0.0, None::<(f64, f64)>);
    for (a, b) in pieces {
        let line = b - a;
        let share = ((at - a).dot(line) / line.hypot2().max(1e-9)).clamp(0.0, 1.0);
        let off = (a + line * share).distance(at);
        if best.is_none_or(|(least, _)| off < least) {
            best = Some((off, whole + share * line.hypot()));
        }
        whole += line.hypot();
    }
    best.map(|(off, way)| (off, way / whole.max(1e-9)))
}

/// Small boxes along a path.
fn pieces_of(path: &BezPath) -> impl Iterator<Item = Rect> + '_ {
    const STEPS: u32 = 12;
    path.segments().flat_map(|piece| {
        let at = move |step: u32| piece.eval(f64::from(step) / f64::from(STEPS));
        (0..STEPS).map(move |step| Rect::from_points(at(step), at(step + 1)).inflate(1.0, 1.0))
    })
}

impl Editor {
    /// A place along a run near a board point, and how far off the run that lies.
    fn share_near(&self, run: RunId, at: Point) -> Option<(f64, Share)> {
        let (off, share) = along(self.layout.run(run)?.pieces(), at)?;
        let hundredths = libm::round(share * HUNDREDTHS);
        Some((off, Share(hundredths / HUNDREDTHS)))
    }

    /// What a clip or the scissors would bite on here. `stays` is where the end in hand is now: along its own run it stays before it
    /// goes to another.
    pub(crate) fn contact_at(
        &self,
        at: ScreenPoint,
        kind: PointerKind,
        reach: Reach,
        stays: Option<&Contact>,
    ) -> Option<Contact> {
        if reach == Reach::Metal && self.body_clip().distance(at) <= TARGET_PX {
            return Some(Contact::Body);
        }
        let board = self.camera.to_board(at);
        let hit = match reach {
            Reach::Metal => self.hit_at(board, kind),
            Reach::Runs => None,
        };
        if let Some(Hit::Stud(stud)) = &hit {
            let is_along = matches!(stays, Some(Contact::Along(..)));
            let near = |at: Point| at.distance(board) * self.camera.zoom <= ON_STUD_PX;
            if !is_along || self.layout.stud(stud).is_some_and(near) {
                return Some(Contact::Terminal(stud.clone()));
            }
        }
        if let Some(Contact::Along(run, _)) = stays
            && let Some((off, share)) = self.share_near(*run, board)
            && off * self.camera.zoom <= STICKS_PX
        {
            return Some(Contact::Along(*run, share));
        }
        let run = match (reach, hit) {
            (Reach::Runs, _) => self
                .layout
                .run_near(board, self.options.reach_px(kind) / self.camera.zoom)?,
            (_, Some(Hit::Run(run, ..) | Hit::LooseEnd(run, _) | Hit::Bend(run, _))) => run,
            (_, Some(Hit::Part(id))) => {
                let kind = self.sheet().parts.get(&id).map(|part| &part.is);
                return matches!(kind, Some(PartKind::Ground(_))).then_some(Contact::Body);
            }
            (_, Some(Hit::Stud(stud))) => return Some(Contact::Terminal(stud)),
            _ => return None,
        };
        let (_, share) = self.share_near(run, board)?;
        Some(Contact::Along(run, share))
    }

    /// Where a point is on the board; the body is everywhere.
    pub(crate) fn contact_point(&self, contact: &Contact) -> Option<Point> {
        match contact {
            Contact::Terminal(at) => self.layout.stud(at),
            Contact::Along(run, at) => self.point_along(*run, *at),
            Contact::Body => None,
        }
    }

    /// The clip of the body beside the drawer, from which and to which a lead can be laid.
    #[must_use]
    pub fn body_clip(&self) -> ScreenPoint {
        let free = self.camera.free_area();
        // The free area may already begin beside the drawer.
        let x = (free.x0.max(DRAWER_PX + 40.0) + 40.0).min(free.x1 - 36.0);
        ScreenPoint::new(x, free.y0 + 36.0)
    }

    /// The ends of a mark on the board; of one that is not drawn along, where its sign stands.
    fn ends_of(&self, broken: &Break) -> Vec<Point> {
        let pixel = 1.0 / self.camera.zoom.max(1e-3);
        let hung = |at: Point| at + TO_BODY_PX * pixel;
        match contacts(broken) {
            Some((one, other)) => {
                let first = self.contact_point(&one);
                let second = other.as_ref().and_then(|other| self.contact_point(other));
                match (first, second) {
                    (Some(a), Some(b)) => vec![a, b],
                    (Some(a), None) if other == Some(Contact::Body) => vec![a, hung(a)],
                    (None, Some(b)) if one == Contact::Body => vec![hung(b), b],
                    (first, _) => first.into_iter().collect(),
                }
            }
            None => SignAt::of(broken)
                .iter()
                .filter_map(|at| self.sign_point(at))
                .collect(),
        }
    }

    /// Where on the screen the ends of the marks of what is thrown can be taken.
    #[must_use]
    pub fn marks_of_breaks(&self) -> Vec<ScreenPoint> {
        let all = self.broken.breaks.iter().flat_map(|broken| self.ends_of(broken));
        all.map(|at| self.camera.to_screen(at)).collect()
    }

    /// The mark that a pointer would take hold of here.
    pub(crate) fn clip_at(&self, at: ScreenPoint, kind: PointerKind) -> Option<Clip> {
        // A mark is small: it is taken from somewhat farther than a line.
        let reach = self.options.reach_px(kind).max(12.0);
        let mut best: Option<(f64, Clip)> = None;
        for (place, broken) in self.broken.breaks.iter().enumerate() {
            for (end, point) in self.ends_of(broken).into_iter().enumerate() {
                let off = self.camera.to_screen(point).distance(at);
                if off <= reach && best.is_none_or(|(least, _)| off < least) {
                    best = Some((off, Clip { place, end }));
                }
            }
        }
        best.map(|(_, clip)| clip)
    }

    /// Whether the ring that takes the picked mark away is here.
    pub(crate) fn takes_away_at(&self, at: ScreenPoint) -> Option<usize> {
        let (place, ring) = self.cross()?;
        (self.camera.to_screen(ring).distance(at) <= TARGET_PX).then_some(place)
    }

    /// That ring.
    fn cross(&self) -> Option<(usize, Point)> {
        let place = self.broken.picked?;
        let first = self.ends_of(self.broken.breaks.get(place)?).into_iter().next()?;
        Some((place, first + TO_CROSS_PX / self.camera.zoom.max(1e-3)))
    }

    /// What the marks and signs cover, in small boxes; nothing where no overlay has numbers that would lie beneath. It follows from
    /// what was thrown alone and not from the pointer, so that a number does not step aside for a hand.
    pub(crate) fn covered_by_breaks(&self) -> Vec<Rect> {
        let mut list = DisplayList::default();
        if self.overlay != Overlay::None {
            self.sketch_thrown(&mut Sketch::new(&mut list, self.camera.zoom));
        }
        let boxes = list.items.iter().flat_map(|item| match &item.shape {
            Shape::Path { path, .. } => pieces_of(path).collect(),
            Shape::Text { .. } => vec![item.bounds],
        });
        boxes.collect()
    }

    /// The marks of what was thrown and the signs of what follows, with what the hand does to them.
    pub(crate) fn sketch_broken(&self, list: &mut DisplayList) {
        let mut sketch = Sketch::new(list, self.camera.zoom);
        self.sketch_thrown(&mut sketch);
        if let Some((_, ring)) = self.cross() {
            sketch.ring(ring, 13.0, Ink::Picked, 2.0, Some(Ink::PartFill));
            sketch.cross(ring, 5.0, Ink::Picked, 2.0);
        }
        if let Tool::Break(tool) = &self.tool {
            self.sketch_breaking(&mut sketch, tool);
        }
    }

    fn sketch_thrown(&self, sketch: &mut Sketch<'_>) {
        for broken in &self.broken.breaks {
            self.sketch_mark(sketch, broken);
        }
        let signs = self.broken.shown.iter().flat_map(|shown| &shown.signs);
        let signs: Vec<(&BrokenSign, Point)> = signs
            .filter_map(|sign| Some((sign, self.sign_point(&sign.at)?)))
            .collect();
        let ink = |sign: &BrokenSign| if sign.grave { Ink::Stop } else { Ink::Line };
        let half = Vec2::new(RING_PX, RING_PX) * sketch.pixel;
        let mut rings: Vec<Rect> = Vec::new();
        for (sign, at) in signs.iter().filter(|(sign, _)| sign.ringed) {
            sketch.ring(*at, RING_PX, Ink::Paper, 6.0, Some(Ink::Paper));
            sketch.ring(*at, RING_PX, ink(sign), 2.5, None);
            sketch.cross(*at, 0.5 * RING_PX, ink(sign), 2.5);
            rings.push(Rect::from_center_size(*at, (2.0 * half.x, 2.0 * half.y)));
        }
        let labels = self.label_areas();
        let size = LETTERS_PX * sketch.pixel;
        let mut written: Vec<Rect> = Vec::new();
        // What belongs to a ring has its place; the others find theirs beside it.
        let (ringed, others): (Vec<_>, Vec<_>) = signs.into_iter().partition(|(sign, _)| sign.ringed);
        for (sign, at) in ringed.into_iter().chain(others) {
            let covers = |place: Point, anchor| text_area(&sign.word, place, size, anchor, true, false);
            // Below a ring in the middle of a part: its numbers stand at the sides.
            let below = at + Vec2::new(0.0, RING_PX + LETTERS_PX) * sketch.pixel;
            let lies_on = |others: &[Rect]| {
                let area = covers(below, Anchor::Middle);
                others.iter().any(|other| other.overlaps(area))
            };
            let (place, anchor) = if sign.ringed && !lies_on(&written) && !lies_on(&rings) {
                (below, Anchor::Middle)
            } else {
                let place = self.place_of_word(&sign.word, size, (at, half), [&rings, &labels, &written]);
                (place, Anchor::Start)
            };
            written.push(covers(place, anchor));
            sketch.word(&sign.word, place, LETTERS_PX, anchor, ink(sign));
        }
    }

    fn sketch_mark(&self, sketch: &mut Sketch<'_>, broken: &Break) {
        let Some((one, other)) = contacts(broken) else {
            return;
        };
        match (self.ends_of(broken).as_slice(), &one) {
            ([at], Contact::Along(run, _)) => self.sketch_cut(sketch, *run, *at, Ink::Stop),
            ([a, b], _) => {
                let hangs = |contact: &Contact| *contact == Contact::Body;
                sketch.lead(*a, *b);
                for (at, towards, is_body) in
                    [(*a, *b, hangs(&one)), (*b, *a, other.as_ref().is_some_and(hangs))]
                {
                    if is_body {
                        sketch.body(at);
                    } else {
                        sketch.clip(at, towards);
                    }
                }
            }
            _ => {}
        }
    }

    /// A gap in a wire with a stroke at either side.
    pub(crate) fn sketch_cut(&self, sketch: &mut Sketch<'_>, run: RunId, at: Point, ink: Ink) {
        let along = self.along_at(run, at);
        let across = Vec2::new(-along.y, along.x);
        let pixel = sketch.pixel;
        let wide = self.layout.run(run).map_or(4.0, |way| way.width) / pixel + 5.0;
        sketch.line(
            &[at - along * 6.0 * pixel, at + along * 6.0 * pixel],
            Ink::Paper,
            wide,
            None,
        );
        for side in [-1.0, 1.0] {
            let middle = at + along * side * 6.0 * pixel;
            let slant = (across * (0.5 * wide + 4.0) + along * 4.0) * pixel;
            sketch.line(&[middle - slant, middle + slant], Ink::Paper, 6.0, None);
            sketch.line(&[middle - slant, middle + slant], ink, 2.5, None);
        }
    }

    /// The scissors, as they would cut a run here.
    pub(crate) fn sketch_scissors(&self, sketch: &mut Sketch<'_>, run: RunId, at: Point) {
        let along = self.along_at(run, at);
        // Held from below a level wire and from the right of an upright one, where a hand would be.
        let from = if along.x.abs() >= along.y.abs() {
            Vec2::new(0.0, 1.0)
        } else {
            Vec2::new(1.0, 0.0)
        };
        sketch.scissors(at, from);
    }

    /// Which way a run lies at a point of it.
    fn along_at(&self, run: RunId, at: Point) -> Vec2 {
        let pieces = self.layout.run(run).into_iter().flat_map(|way| way.pieces());
        let nearest = pieces
            .filter_map(|(a, b)| Some((along(std::iter::once((a, b)), at)?.0, b - a)))
            .min_by(|a, b| a.0.total_cmp(&b.0));
        match nearest {
            Some((_, line)) if line.hypot() > 1e-9 => line.normalize(),
            _ => Vec2::new(1.0, 0.0),
        }
    }

    /// The clip of the body that lies ready beside the drawer.
    pub(crate) fn sketch_body_clip(&self, sketch: &mut Sketch<'_>, caught: bool) {
        let at = self.camera.to_board(self.body_clip());
        let ink = if caught { Ink::Picked } else { Ink::Frame };
        sketch.ring(
            at,
            TARGET_PX,
            ink,
            if caught { 2.5 } else { 1.5 },
            Some(Ink::Paper),
        );
        let sign = at + Vec2::new(0.0, -3.0) * sketch.pixel;
        sketch.body(sign);
        let place = at + Vec2::new(0.0, TARGET_PX + 13.0) * sketch.pixel;
        let word = self.words.text("breaking-clip-body");
        sketch.word(&word, place, 12.0, Anchor::Middle, Ink::Text);
    }
}

impl Sketch<'_> {
    /// A cross of two strokes.
    fn cross(&mut self, at: Point, arm_px: f64, ink: Ink, width_px: f64) {
        let arm = arm_px * self.pixel;
        for side in [-1.0, 1.0] {
            let slant = Vec2::new(arm, side * arm);
            self.line(&[at - slant, at + slant], ink, width_px, None);
        }
    }

    /// A lead that hangs between two points.
    pub(crate) fn lead(&mut self, a: Point, b: Point) {
        let sag = Vec2::new(0.0, 0.25 * a.distance(b) + 14.0 * self.pixel);
        let mut path = BezPath::new();
        path.move_to(a);
        path.curve_to(a.lerp(b, 0.25) + sag, a.lerp(b, 0.75) + sag, b);
        self.path(path.clone(), None, Ink::Paper, 6.5, None);
        self.path(path, None, Ink::Stop, 2.5, None);
    }

    /// A clip that bites on a point, its lead leaving towards another.
    pub(crate) fn clip(&mut self, at: Point, towards: Point) {
        let away = towards - at;
        let away = if away.hypot() > 1e-9 {
            Vec2::new(away.x, away.y.max(0.35 * away.hypot())).normalize()
        } else {
            Vec2::new(0.0, 1.0)
        };
        let across = Vec2::new(-away.y, away.x);
        let point = |along: f64, aside: f64| at + (away * along + across * aside) * self.pixel;
        // Two jaws that open towards the wire, and the sleeve behind them.
        let mut jaws = BezPath::new();
        jaws.move_to(point(-5.0, -4.5));
        jaws.line_to(point(9.0, -5.5));
        jaws.line_to(point(20.0, -3.0));
        jaws.line_to(point(20.0, 3.0));
        jaws.line_to(point(9.0, 5.5));
        jaws.line_to(point(-5.0, 4.5));
        jaws.line_to(point(-2.0, 1.5));
        jaws.line_to(point(6.0, 0.0));
        jaws.line_to(point(-2.0, -1.5));
        jaws.close_path();
        self.path(jaws.clone(), None, Ink::Paper, 5.0, None);
        self.path(jaws, Some(Ink::Paper), Ink::Stop, 2.0, None);
    }

    /// The sign of the body: a level stroke with three slanted ones below.
    pub(crate) fn body(&mut self, at: Point) {
        let point = |x: f64, y: f64| at + Vec2::new(x, y) * self.pixel;
        let mut path = BezPath::new();
        path.move_to(point(-11.0, 0.0));
        path.line_to(point(11.0, 0.0));
        for foot in [-8.0, 0.0, 8.0] {
            path.move_to(point(foot, 0.0));
            path.line_to(point(foot - 6.0, 9.0));
        }
        self.path(path.clone(), None, Ink::Paper, 6.0, None);
        self.path(path, None, Ink::Line, 2.2, None);
    }

    /// Scissors whose blades are about to close on a point, held from a side.
    fn scissors(&mut self, at: Point, from: Vec2) {
        // Drawn for a hand on the right, then turned.
        let turn = Affine::translate(at.to_vec2()) * Affine::rotate(from.atan2()) * Affine::scale(self.pixel);
        let mut blades = BezPath::new();
        for side in [-1.0, 1.0] {
            blades.move_to((-9.0, 7.0 * side));
            blades.line_to((15.0, -1.5 * side));
            blades.line_to((29.0, -6.5 * side));
        }
        let blades = turn * blades;
        self.path(blades.clone(), None, Ink::Paper, 6.5, None);
        self.path(blades, None, Ink::Line, 2.4, None);
        for side in [-1.0, 1.0] {
            let eye = turn * circle(Point::new(35.0, -9.0 * side), 6.5);
            self.path(eye.clone(), None, Ink::Paper, 6.0, None);
            self.path(eye, None, Ink::Line, 2.4, None);
        }
        let pivot = turn * circle(Point::new(13.0, 0.0), 1.6);
        self.path(pivot, Some(Ink::Line), Ink::Line, 1.0, None);
    }

    /// A slip of paper with lines of words, each with its ink and whether it is bold; beside a point, within an area.
    pub(crate) fn slip(&mut self, lines: &[(String, Ink, bool)], at: Point, within: Rect) {
        const SIZE_PX: f64 = 13.0;
        const LINE_PX: f64 = 18.0;
        let pixel = self.pixel;
        let width = lines
            .iter()
            .map(|(line, _, bold)| drawing::text_width(line, SIZE_PX, *bold))
            .fold(0.0, f64::max);
        // Fonts that stand in for ours are wider.
        let width = 1.12 * width + 20.0;
        let height = LINE_PX * lines.len() as f64 + 12.0;
        let (width, height) = (width * pixel, height * pixel);
        let mut x = at.x + 26.0 * pixel;
        if x + width > within.x1 {
            x = (at.x - 26.0 * pixel - width).max(within.x0);
        }
        // Above the point: below it hangs the lead, and a finger hides what is there.
        let mut y = at.y - 30.0 * pixel - height;
        if y < within.y0 {
            y = at.y + 76.0 * pixel;
        }
        let area = Rect::new(x, y, x + width, y + height);
        self.path(
            drawing::rounded(area, 2.0 * pixel),
            Some(Ink::PartFill),
            Ink::Frame,
            1.2,
            None,
        );
        for (row, (line, ink, bold)) in lines.iter().enumerate() {
            let place = Point::new(
                x + 10.0 * pixel,
                y + (6.0 + LINE_PX * (row as f64 + 0.74)) * pixel,
            );
            self.text(line, place, SIZE_PX, Anchor::Start, *ink, *bold);
        }
    }
}
