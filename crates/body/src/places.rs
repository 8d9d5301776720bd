//! What a plan is made of: a point in the body, a place, a passage between two places, and what follows for a passage from
//! where its ends lie.

use crate::facts::Facts;
use model::Fact;
use model::body::PassageKind;
use model::conductor::Surroundings;
use model::quantity::Metres;
use words::Saying;

/// A point in the body, in metres: from the front bumper, from the left side, over the road.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Point {
    /// Backwards from the front bumper.
    pub x: f64,
    /// To the right from the left side, looking forwards.
    pub y: f64,
    /// Over the road.
    pub z: f64,
}

impl Point {
    /// Length of a wire from here to there: along the car, across it and upwards, one after the other, since wires follow
    /// sills, cross members and pillars and not the straight line.
    #[must_use]
    pub fn along_edges(self, to: Self) -> Metres {
        Metres((self.x - to.x).abs() + (self.y - to.y).abs() + (self.z - to.z).abs())
    }
    /// The straight line, as current finds it through the metal of the body.
    #[must_use]
    pub fn straight(self, to: Self) -> Metres {
        let (x, y, z) = (self.x - to.x, self.y - to.y, self.z - to.z);
        Metres((x * x + y * y + z * z).sqrt())
    }
}

/// A spot in the body.
#[derive(Clone, Debug, PartialEq)]
pub struct Place {
    /// Its name, as parts and routes write it.
    pub name: String,
    /// What the job calls it; empty for those that the form has.
    pub label: String,
    /// Whether the form has it, or the job alone.
    pub of_the_form: bool,
    /// Where it is.
    pub at: Point,
    /// What is known of it.
    pub facts: Facts,
}

impl Place {
    /// Its name in the reader's language.
    #[must_use]
    pub fn said(&self) -> Saying {
        if !self.label.is_empty() {
            self.label.as_str().into()
        } else if self.of_the_form {
            Saying::new(format!("place-{}", self.name))
        } else {
            self.name.as_str().into()
        }
    }
    /// Its name where it is seen from above: without its side, which shows itself.
    #[must_use]
    pub fn said_on_plan(&self) -> Saying {
        let sided = ["-left", "-right"]
            .into_iter()
            .find_map(|side| self.name.strip_suffix(side));
        match sided {
            Some(both) if self.of_the_form && self.label.is_empty() => Saying::new(format!("spot-{both}")),
            _ => self.said(),
        }
    }
}

/// A way from one place to the next.
#[derive(Clone, Debug, PartialEq)]
pub struct Passage {
    /// Its name, as routes write it.
    pub name: String,
    /// What the job calls it; empty for those that the form has.
    pub label: String,
    /// Whether the form has it, or the job alone.
    pub of_the_form: bool,
    /// The places at its ends, by their index in [`crate::Plan::places`].
    pub ends: [usize; 2],
    /// What kind of way it is.
    pub kind: Fact<PassageKind>,
    /// Length of the wire in it; given where the job tells it.
    pub length: Fact<Metres>,
    /// What is known of it.
    pub facts: Facts,
}

impl Passage {
    /// Length of the wire in it; nothing where it is not known.
    #[must_use]
    pub fn metres(&self) -> Metres {
        self.length.or(Metres::ZERO).max(Metres::ZERO)
    }
    /// The other end than this one.
    #[must_use]
    pub fn across(&self, from: usize) -> Option<usize> {
        match self.ends {
            [a, b] if a == from => Some(b),
            [a, b] if b == from => Some(a),
            _ => None,
        }
    }
}

/// Length of the wire in a passage, from where its ends lie, to the centimetre.
pub(crate) fn length_of(places: &[Place], ends: [usize; 2], kind: Fact<PassageKind>) -> Metres {
    let [a, b] = ends.map(|end| places.get(end).map_or_else(Point::default, |place| place.at));
    let length = a.along_edges(b).0 + loop_of(kind.or(PassageKind::Open));
    Metres((length * 100.0).round() / 100.0)
}

/// Wire that a passage needs beyond the way between its ends, in metres: a loop in a gaiter, so that it flexes and does
/// not pull; slack under a seat that slides (common practice; the figures are our own judgement).
fn loop_of(kind: PassageKind) -> f64 {
    match kind {
        PassageKind::Gaiter | PassageKind::Hinge => 0.15,
        PassageKind::SeatRail | PassageKind::Seat => 0.2,
        _ => 0.0,
    }
}

/// What is known of a passage from its kind and its ends: as hot as the hotter end, wet where both are.
pub(crate) fn between(places: &[Place], ends: [usize; 2], kind: PassageKind) -> Facts {
    let [a, b] = ends.map(|end| places.get(end).map(|place| place.facts));
    let heat = |facts: Option<Facts>| facts.and_then(|facts| facts.heat.value());
    let heat = heat(a).max(heat(b)).unwrap_or(Surroundings::Cabin);
    let reach = a.or(b).and_then(|facts| facts.reach.value());
    let facts = Facts::new(heat, reach.unwrap_or(model::body::Reach::Open));
    let wet = |facts: Option<Facts>| facts.is_some_and(|facts| facts.wet.or(false));
    let facts = if wet(a) && wet(b) { facts.wet() } else { facts };
    match kind {
        PassageKind::Hole => facts.sharp(),
        // A gaiter bends with what it leads to, and is made for it: whoever judges it looks at the kind.
        PassageKind::Gaiter | PassageKind::Hinge => facts.moving(),
        PassageKind::SeatRail => facts.crush().moving(),
        PassageKind::Seat => facts.moving(),
        PassageKind::Underbody => facts.wet(),
        _ => facts,
    }
}

/// The place that is nearest to a point along the edges of the body, by its index; of several as near the first. `None` where there is no
/// place.
pub(crate) fn nearest(places: &[Place], to: Point) -> Option<usize> {
    let mut best: Option<(Metres, usize)> = None;
    for (at, place) in places.iter().enumerate() {
        let far = place.at.along_edges(to);
        if best.is_none_or(|(least, _)| far < least) {
            best = Some((far, at));
        }
    }
    best.map(|(_, at)| at)
}
