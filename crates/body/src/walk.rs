//! The way of one run through the plan: its route made whole.
//!
//! A route names places and passages in order. It need not name all: where two names do not meet, the shortest way between
//! them is put in, and so from the place of the part at each end. So a route may be told as `sill-left` alone, and it still
//! holds when a part is moved.

use crate::places::Point;
use crate::plan::{Named, Plan};
use crate::ways::Net;
use model::quantity::Metres;
use model::{PartId, Run, Sheet};

/// Wire beyond the way of a run where its slack is not known, in metres, both ends together: from the place to the terminal,
/// and enough to make the end again (common practice; the figure is our own, of a range from 0.2 to 0.6 m). It is also the
/// wire between two parts at one place.
const USUAL_SLACK: f64 = 0.3;

/// One passage on a way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Step {
    /// The passage, by its index in [`Plan::passages`].
    pub passage: usize,
    /// The place it comes from, by its index.
    pub from: usize,
    /// The place it leads to.
    pub to: usize,
    /// Whether the route does not name it nor the places at both its ends: it was put in.
    pub put_in: bool,
}

/// The way of a run, whole.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Walk {
    /// The place at which it begins, by its index.
    pub start: usize,
    /// The passages it goes through, in order; empty when it stays at one place.
    pub steps: Vec<Step>,
}

/// Why a run has no way.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NoWalk {
    /// It has no route, and its ends are not at one place.
    NotRouted,
    /// Its route names what the body does not have.
    Unknown(Vec<String>),
    /// There is no way between these two places, by their indices.
    Apart(usize, usize),
}

impl Walk {
    /// The places it comes to, from its start to its end.
    pub fn places(&self) -> impl Iterator<Item = usize> {
        std::iter::once(self.start).chain(self.steps.iter().map(|step| step.to))
    }
    /// The place at which it ends.
    #[must_use]
    pub fn end(&self) -> usize {
        self.steps.last().map_or(self.start, |step| step.to)
    }
    /// The passages it goes through.
    pub fn passages(&self) -> impl Iterator<Item = usize> {
        self.steps.iter().map(|step| step.passage)
    }
    /// Length of the wire of a run on this way: through its passages, and its slack; to the centimetre.
    #[must_use]
    pub fn length(&self, plan: &Plan, run: &Run) -> Metres {
        let passages = self.passages().filter_map(|at| plan.passages.get(at));
        let way: f64 = passages.map(|passage| passage.metres().0).sum();
        let length = way + run.laying.slack.or(Metres(USUAL_SLACK)).0;
        Metres((length * 100.0).round() / 100.0)
    }
    /// The route that says all of it: its passages, and the places between them.
    #[must_use]
    pub fn route(&self, plan: &Plan) -> Vec<String> {
        let mut route = Vec::new();
        for (number, step) in self.steps.iter().enumerate() {
            if number > 0
                && let Some(place) = plan.places.get(step.from)
            {
                route.push(place.name.clone());
            }
            if let Some(passage) = plan.passages.get(step.passage) {
                route.push(passage.name.clone());
            }
        }
        route
    }
}

impl Plan {
    pub(crate) fn net<'a>(&'a self, ends: &'a [[usize; 2]]) -> Net<'a> {
        Net {
            ends,
            at_place: self.passages_by_place(),
        }
    }
    pub(crate) fn ends(&self) -> Vec<[usize; 2]> {
        self.passages.iter().map(|passage| passage.ends).collect()
    }
    pub(crate) fn lengths(&self) -> Vec<f64> {
        self.passages.iter().map(|passage| passage.metres().0).collect()
    }

    /// Where a part is, by the index of its place; nothing where it has none on this plan.
    #[must_use]
    pub fn place_of(&self, sheet: &Sheet, part: PartId) -> Option<usize> {
        self.place_index(sheet.parts.get(&part)?.place.as_deref()?)
    }
    /// Where in the body a part is.
    #[must_use]
    pub fn point_of(&self, sheet: &Sheet, part: PartId) -> Option<Point> {
        Some(self.places.get(self.place_of(sheet, part)?)?.at)
    }

    /// The way of a run.
    ///
    /// # Errors
    /// Why it has none.
    pub fn walk(&self, sheet: &Sheet, run: &Run) -> Result<Walk, NoWalk> {
        let [start, end] = run.ends().map(|end| self.place_of(sheet, end.terminal()?.part));
        if run.route.is_empty() {
            return match (start, end) {
                (Some(start), Some(end)) if start == end => Ok(Walk {
                    start,
                    steps: Vec::new(),
                }),
                _ => Err(NoWalk::NotRouted),
            };
        }
        let unknown: Vec<String> = run
            .route
            .iter()
            .filter(|name| self.named(name).is_none())
            .cloned()
            .collect();
        if !unknown.is_empty() {
            return Err(NoWalk::Unknown(unknown));
        }
        let route: Vec<Named> = run.route.iter().filter_map(|name| self.named(name)).collect();
        let ends = self.ends();
        let mut walker = Walker {
            plan: self,
            net: self.net(&ends),
            lengths: None,
            start,
            here: start,
            steps: Vec::new(),
        };
        for (number, named) in route.iter().enumerate() {
            match *named {
                Named::Place(place) => walker.to(place)?,
                Named::Passage(passage) => {
                    let next = route.get(number + 1).copied().or(end.map(Named::Place));
                    walker.through(passage, next)?;
                }
            }
        }
        if let Some(end) = end {
            walker.to(end)?;
        }
        match walker.start {
            Some(start) => Ok(Walk {
                start,
                steps: walker.steps,
            }),
            None => Err(NoWalk::NotRouted),
        }
    }
}

/// Goes along a route.
struct Walker<'a> {
    plan: &'a Plan,
    net: Net<'a>,
    /// Lengths of all passages, once a way has to be found.
    lengths: Option<Vec<f64>>,
    start: Option<usize>,
    here: Option<usize>,
    steps: Vec<Step>,
}

impl Walker<'_> {
    /// The shortest way from one place to another.
    fn shortest(&mut self, from: usize, to: usize) -> Result<crate::ways::Way, NoWalk> {
        let plan = self.plan;
        let lengths = self.lengths.get_or_insert_with(|| plan.lengths());
        self.net.best(from, to, lengths).ok_or(NoWalk::Apart(from, to))
    }

    fn step(&mut self, passage: usize, from: usize, put_in: bool) -> usize {
        let to = self
            .plan
            .passages
            .get(passage)
            .and_then(|passage| passage.across(from))
            .unwrap_or(from);
        self.steps.push(Step {
            passage,
            from,
            to,
            put_in,
        });
        self.here = Some(to);
        to
    }

    /// On to a place: by the shortest passage that leads there, else by the shortest way.
    fn to(&mut self, place: usize) -> Result<(), NoWalk> {
        let Some(here) = self.here else {
            self.start = Some(place);
            self.here = Some(place);
            return Ok(());
        };
        if here == place {
            return Ok(());
        }
        let direct = self
            .plan
            .passages_at(here)
            .iter()
            .filter_map(|at| Some((*at, self.plan.passages.get(*at)?)))
            .filter(|(_, passage)| passage.across(here) == Some(place))
            .min_by(|(_, a), (_, b)| a.metres().0.total_cmp(&b.metres().0));
        if let Some((passage, _)) = direct {
            self.step(passage, here, false);
            return Ok(());
        }
        let way = self.shortest(here, place)?;
        let mut at = here;
        for passage in way.passages {
            at = self.step(passage, at, true);
        }
        Ok(())
    }

    /// On to the nearer end of a passage, and through it. At the start of a route it is entered at the end away from what
    /// comes next.
    fn through(&mut self, passage: usize, next: Option<Named>) -> Result<(), NoWalk> {
        let Some([a, b]) = self.plan.passages.get(passage).map(|it| it.ends) else {
            return Ok(());
        };
        let enter = match self.here {
            Some(here) if here == a || here == b => here,
            Some(here) => {
                let [to_a, to_b] = [a, b].map(|end| self.shortest(here, end));
                match (to_a, to_b) {
                    (Ok(to_a), Ok(to_b)) if to_b.cost < to_a.cost => b,
                    (Err(_), Ok(_)) => b,
                    (Err(apart), Err(_)) => return Err(apart),
                    _ => a,
                }
            }
            None => {
                let toward = |end: usize| match next {
                    Some(Named::Place(place)) => place == end,
                    Some(Named::Passage(next)) => self
                        .plan
                        .passages
                        .get(next)
                        .is_some_and(|next| next.ends.contains(&end)),
                    None => false,
                };
                if toward(a) && !toward(b) { b } else { a }
            }
        };
        self.to(enter)?;
        self.step(passage, enter, false);
        Ok(())
    }
}
