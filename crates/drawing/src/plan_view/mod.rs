//! The body plan: the vehicle from above, its front to the left, with its places, the parts at them and the runs along
//! their ways. The same sheet as on the board, drawn where its things are in the car.
//!
//! Start at [`PlanView`] (where everything lies), then [`draw_plan`]. Positions follow from the plan's metres, at
//! [`UNITS_PER_METRE`]; what would lie on top of something else steps aside, and doors and pillars are folded outwards,
//! as the sides of a box are in its development.

mod key;
mod lettering;
mod marks;
mod names;
mod outline;
mod parts;
mod passages;
mod runs;
mod spots;
mod taken;

use crate::display::{DisplayList, Owner};
use crate::draw::overlay::Overlays;
use crate::draw::pen::Pen;
use crate::look::{Look, Overlay};
use body::{Plan, Walk};
use circuit::Study;
use kurbo::{Line, ParamCurveNearest, Point, Rect};
use lettering::Lettering;
use model::body::Body;
use model::{PartId, RunId, Sheet};
use names::Name;
use ordered::OrderedMap;
use taken::Taken;
use words::Words;

/// Board units for a metre of car.
pub const UNITS_PER_METRE: f64 = 250.0;
/// Room above and below the body for what is folded outwards, in board units.
const MARGIN: f64 = 130.0;

/// A part on the plan.
#[derive(Clone, Debug, PartialEq)]
pub struct PlanPart {
    /// The box with its tag.
    pub area: Rect,
    /// The place that it is at, by its index in the plan; nothing when it has none there.
    pub place: Option<usize>,
}

/// A run on the plan.
#[derive(Clone, Debug, PartialEq)]
pub struct PlanRun {
    /// Its way through the body; nothing when none is laid: then it is drawn straight from part to part, dashed.
    pub walk: Option<Walk>,
    /// Its corners, from its start to its end.
    pub points: Vec<Point>,
    /// What stands beside it; nothing where there is no room.
    pub label: Option<PlanLabel>,
}

/// What stands beside a run: its tag and length, or what the overlay in force says of it.
#[derive(Clone, Debug, PartialEq)]
pub struct PlanLabel {
    /// Tag and length.
    pub text: String,
    /// The middle of its baseline.
    pub at: Point,
    /// How wide what stands there may be, in board units.
    pub room: f64,
}

/// Where everything on the body plan lies.
#[derive(Clone, Debug, PartialEq)]
pub struct PlanView {
    /// The plan that is drawn.
    pub plan: Plan,
    /// By the index of a place: where it is drawn.
    pub spots: Vec<Point>,
    /// The parts.
    pub parts: OrderedMap<PartId, PlanPart>,
    /// The runs that can be drawn: those with a way, and those between two parts that have a place.
    pub runs: OrderedMap<RunId, PlanRun>,
    /// Names of places that have room.
    names: Vec<Name>,
    lettering: Lettering,
    /// What the labels of runs say is of this overlay.
    overlay: Overlay,
    /// What the dimension lines say: length, wheelbase and width.
    measures: [String; 3],
    bounds: Rect,
    /// What is covered by parts and by what is written: marks of findings keep clear of it.
    taken: Taken,
    words: Words,
}

/// From metres in the car to board units: the front to the left, so that the left side lies below.
fn to_board(plan: &Plan, x: f64, from_left: f64) -> Point {
    Point::new(
        x * UNITS_PER_METRE,
        (plan.size.width - from_left) * UNITS_PER_METRE,
    )
}

/// From board units to metres in the car: from the front, and from the left side; what lies beside the car is brought to
/// its edge.
fn to_car(plan: &Plan, at: Point) -> (f64, f64) {
    let within = |metres: f64, most: f64| {
        // To the centimetre: a hand does no better.
        libm::round(metres.clamp(0.0, most) * 100.0) / 100.0
    };
    (
        within(at.x / UNITS_PER_METRE, plan.size.length),
        within(plan.size.width - at.y / UNITS_PER_METRE, plan.size.width),
    )
}

/// The outline of the body as a box.
fn body_box(plan: &Plan) -> Rect {
    Rect::from_points(
        to_board(plan, 0.0, 0.0),
        to_board(plan, plan.size.length, plan.size.width),
    )
}

impl PlanView {
    /// Where everything lies, for a reader who looks at it so; nothing where the form of the body is not known. The sheet
    /// should be laid (see [`body::lay`]), so that the lengths which follow from routes stand beside them.
    ///
    /// Letters are as large as the zoom needs them, and labels of runs as wide as what the overlay says, so that for
    /// another look another view may have to be made: see [`PlanView::suits`].
    #[must_use]
    pub fn of(body: &Body, sheet: &Sheet, study: Option<&Study>, look: &Look, words: &Words) -> Option<Self> {
        let plan = Plan::of(body)?;
        let lettering = Lettering::at(look.zoom);
        let overlays = Overlays::new(sheet, study, look, words);
        let spots = spots::spread(&plan);
        let mut taken = Taken::default();
        for at in &spots {
            taken.take(spots::dot(*at));
        }
        taken.take(key::area(&plan, words, lettering));
        let measures = outline::measures(&plan, body, words);
        for area in outline::areas(&plan, &measures, words, lettering) {
            taken.take(lettering::roomy(area));
        }
        let parts = parts::place(&plan, &spots, words, sheet, lettering, &mut taken);
        let runs = runs::lay(
            &plan,
            &spots,
            &parts,
            (sheet, &overlays),
            words,
            lettering,
            &mut taken,
        );
        let names = names::place(&plan, &spots, &parts, &runs, words, lettering, &mut taken);
        let car = body_box(&plan);
        let bounds = taken
            .bounds()
            .map_or(car, |all| car.union(all))
            .inflate(14.0, 14.0);
        if let Some(caption) = parts::caption(&parts, words, lettering) {
            taken.take(lettering::roomy(caption.area()));
        }
        let words = words.clone();
        Some(Self {
            plan,
            spots,
            parts,
            runs,
            names,
            lettering,
            overlay: look.overlay,
            measures,
            bounds,
            taken,
            words,
        })
    }

    /// The plan for a page of this size in millimetres, with the look that suits it: its names come out as large as they have
    /// to be to be read.
    #[must_use]
    pub fn on_page(
        body: &Body,
        sheet: &Sheet,
        study: Option<&Study>,
        look: &Look,
        words: &Words,
        page: kurbo::Size,
    ) -> Option<(Self, Look)> {
        let mut look = look.clone();
        let mut view = Self::of(body, sheet, study, &look, words)?;
        // What stands beside the car grows as the letters do.
        for _ in 0..4 {
            let scale = crate::sheets::scale_on(view.bounds(), page);
            look.zoom = lettering::NAME_PX / crate::sheets::LEAST_PRINTED * scale;
            view = Self::of(body, sheet, study, &look, words)?;
        }
        Some((view, look))
    }

    /// Whether letters and labels are as this look needs them.
    #[must_use]
    pub fn suits(&self, look: &Look) -> bool {
        self.lettering.suits(look.zoom) && self.overlay == look.overlay
    }

    /// Everything that is drawn lies within.
    #[must_use]
    pub fn bounds(&self) -> Rect {
        self.bounds
    }

    /// The part or run at a point, parts before runs; `slop` is how far off it may be, in board units.
    #[must_use]
    pub fn hit(&self, at: Point, slop: f64) -> Option<Owner> {
        let part = self
            .parts
            .iter()
            .find(|(_, part)| part.area.inflate(slop, slop).contains(at));
        if let Some((id, _)) = part {
            return Some(Owner::Part(*id));
        }
        let mut best: Option<(f64, RunId)> = None;
        for (id, run) in &self.runs {
            for pair in run.points.windows(2) {
                let [a, b] = pair else { continue };
                let off = Line::new(*a, *b).nearest(at, 1e-3).distance_sq;
                if off <= slop * slop && best.is_none_or(|(least, _)| off < least) {
                    best = Some((off, *id));
                }
            }
        }
        best.map(|(_, id)| Owner::Run(id))
    }

    /// Where in the car a point of the drawing is, in metres from the front and from the left side, for a place of the job's
    /// own that is put there.
    #[must_use]
    pub fn metres_at(&self, at: Point) -> (f64, f64) {
        to_car(&self.plan, at)
    }

    /// The finding whose mark lies under a point, give or take the slop in board units.
    #[must_use]
    pub fn mark_at(&self, look: &Look, at: Point, slop: f64) -> Option<u32> {
        let reach = crate::draw::marks::radius(look.zoom) + slop;
        marks::spots(self, look)
            .iter()
            .filter(|spot| spot.shown && spot.at.distance(at) <= reach)
            .min_by(|a, b| a.at.distance(at).total_cmp(&b.at.distance(at)))
            .map(|spot| spot.mark.finding)
    }

    /// Where the mark of a finding stands, or the one that stands for it too; nothing when it speaks of nothing that is on
    /// the plan.
    #[must_use]
    pub fn mark_spot(&self, look: &Look, finding: u32) -> Option<Point> {
        let all = marks::spots(self, look);
        let mark = all.iter().find(|spot| spot.mark.finding == finding)?;
        Some(mark.at)
    }

    /// A place of the job's own at a point, by its index; `slop` is how far off it may be, in board units.
    #[must_use]
    pub fn own_place_at(&self, at: Point, slop: f64) -> Option<usize> {
        let near = self.place_near(at)?;
        let is_own = self.plan.places.get(near).is_some_and(|place| !place.of_the_form);
        let off = self.spots.get(near)?.distance(at);
        (is_own && off <= slop.max(spots::DOT)).then_some(near)
    }

    /// The place nearest to a point, by its index: where a part that is dropped there belongs.
    #[must_use]
    pub fn place_near(&self, at: Point) -> Option<usize> {
        let mut best: Option<(f64, usize)> = None;
        for (place, spot) in self.spots.iter().enumerate() {
            let off = spot.distance_squared(at);
            if best.is_none_or(|(least, _)| off < least) {
                best = Some((off, place));
            }
        }
        best.map(|(_, place)| place)
    }
}

/// The body plan, back to front: outline, passages, runs, places, parts, marks of findings. With a study, runs are painted as the overlay in force
/// says.
#[must_use]
pub fn draw_plan(view: &PlanView, sheet: &Sheet, study: Option<&Study>, look: &Look) -> DisplayList {
    let overlays = Overlays::new(sheet, study, look, &view.words);
    // Letters are made for the zoom: all that is written can be read.
    let mut pen = Pen::new(crate::display::Detail::Numbers, look.zoom);
    pen.owner(Owner::Sheet);
    outline::draw(&mut pen, view);
    key::draw(&mut pen, view);
    passages::draw(&mut pen, view);
    runs::draw(&mut pen, view, sheet, &overlays, look);
    // Their lines lie under what is written.
    let marks = marks::leaders(&mut pen, view, look);
    pen.owner(Owner::Sheet);
    spots::draw(&mut pen, view);
    names::draw(&mut pen, view);
    parts::draw(&mut pen, view, sheet, look);
    runs::label(&mut pen, view, sheet, &overlays);
    marks::draw(&mut pen, &marks, look);
    pen.finish()
}
