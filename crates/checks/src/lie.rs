//! How runs lie in the vehicle's body: its plan, the way of each run, and what a run comes through on that way.

use body::{Facts, Plan, Walk};
use model::body::PassageKind;
use model::laying::Guard;
use model::{Run, Settings, Sheet};
use words::{Saying, say};

/// A sheet in its body.
pub(crate) struct Lie {
    pub(crate) plan: Plan,
    /// By the place of a run on the sheet; nothing for a run whose way nobody told.
    walks: Vec<Option<Walk>>,
}

/// A passage or place that a run comes through. Where a run begins and ends is none: what stands there has to be there.
#[derive(Clone, Copy)]
pub(crate) struct Spot<'p> {
    /// Its name, as routes and guards write it.
    pub(crate) name: &'p str,
    pub(crate) facts: &'p Facts,
    /// What kind of way it is; nothing for a place.
    pub(crate) passage: Option<&'p body::Passage>,
    /// Whether the route tells that the run comes here, or the shortest way was put in for what it leaves out.
    pub(crate) told: bool,
}

impl Spot<'_> {
    /// Its kind of way; nothing for a place, and where it is not known.
    pub(crate) fn kind(&self) -> Option<PassageKind> {
        self.passage.and_then(|passage| passage.kind.value())
    }
}

impl Lie {
    /// The sheet in its body; nothing where no body is told or nothing has a place or a route.
    pub(crate) fn of(sheet: &Sheet, settings: &Settings) -> Option<Self> {
        if settings.body.shape.form.is_unknown() {
            return None;
        }
        let placed = sheet.parts.values().any(|part| part.place.is_some())
            || sheet.runs.values().any(|run| !run.route.is_empty());
        let plan = placed.then(|| Plan::of(&settings.body)).flatten()?;
        let walks = sheet.runs.values().map(|run| plan.walk(sheet, run).ok());
        let walks = walks.collect();
        Some(Self { plan, walks })
    }
    /// The way of the run at this place of the sheet.
    pub(crate) fn walk(&self, at: usize) -> Option<&Walk> {
        self.walks.get(at)?.as_ref()
    }
    /// What a way comes through, in order.
    pub(crate) fn spots(&self, walk: &Walk) -> Vec<Spot<'_>> {
        let mut spots = Vec::new();
        for (number, step) in walk.steps.iter().enumerate() {
            if let Some(passage) = self.plan.passages.get(step.passage) {
                spots.push(Spot {
                    name: &passage.name,
                    facts: &passage.facts,
                    passage: Some(passage),
                    told: !step.put_in,
                });
            }
            if let Some(next) = walk.steps.get(number + 1)
                && let Some(place) = self.plan.places.get(step.to)
            {
                spots.push(Spot {
                    name: &place.name,
                    facts: &place.facts,
                    passage: None,
                    told: !(step.put_in && next.put_in),
                });
            }
        }
        spots
    }
    /// A spot in the reader's language, in quotation marks: its words are many.
    pub(crate) fn said(&self, spot: &Spot<'_>) -> Saying {
        let said = match spot.passage {
            Some(passage) => self.plan.said_passage(passage),
            None => {
                let place = self.plan.place(spot.name);
                place.map_or_else(|| spot.name.into(), body::Place::said)
            }
        };
        quoted(said)
    }
    /// Whether a run bends or is dragged here when something of the vehicle is moved: a passage that moves, or a way from
    /// what moves to what does not. A seat on its rails slides over a run and does not bend it.
    pub(crate) fn is_joint(&self, spot: &Spot<'_>) -> bool {
        let Some(passage) = spot.passage else { return false };
        if passage.kind.value() == Some(PassageKind::SeatRail) {
            return false;
        }
        let moves = |end: usize| {
            let place = self.plan.places.get(end);
            place.is_some_and(|place| place.facts.moving.or(false))
        };
        let [a, b] = passage.ends.map(moves);
        passage.facts.moving.or(false) || a != b
    }
}

/// What a passage or place is called, in quotation marks.
pub(crate) fn quoted(said: Saying) -> Saying {
    say!("way-spot", spot = said)
}

/// The numbers of the spots for which something holds. What a place has in common with a passage at it is one thing, and the
/// passage's.
pub(crate) fn which(spots: &[Spot<'_>], holds: impl Fn(&Spot<'_>) -> bool) -> Vec<usize> {
    let at = |number: usize| spots.get(number).is_some_and(&holds);
    let stands = |number: &usize| {
        let is_place = spots.get(*number).is_some_and(|spot| spot.passage.is_none());
        at(*number) && !(is_place && (at(number.saturating_sub(1)) || at(number + 1)))
    };
    (0..spots.len()).filter(stands).collect()
}

/// What guards a run at the spot of this number: told under its own name, or, of a place, alike on both sides of it.
pub(crate) fn guard_at(run: &Run, spots: &[Spot<'_>], number: usize) -> Option<Guard> {
    let of = |number: usize| run.laying.guards.0.get(spots.get(number)?.name).copied();
    let is_place = spots.get(number).is_some_and(|spot| spot.passage.is_none());
    of(number).or_else(|| {
        let before = of(number.checked_sub(1)?)?;
        (is_place && of(number + 1) == Some(before)).then_some(before)
    })
}
