//! The problem at given currents: what the walk over the forest is asked.

use super::measure::{Measured, fixed_drops, governing};
use super::mesh::POINTS;
use super::program::Program;
use super::search::Search;
use model::PartId;
use ordered::OrderedMap;

/// By so much budgets of the bound are widened, as a share: the engine settles heat and currents in a few rounds.
const ROUNDING: f64 = 2e-4;

/// What was ruled out on the way to an answer: choices of each variable below its floor, and a part of the drop to loads.
#[derive(Clone)]
pub(super) struct Tightened {
    pub(super) floor: Vec<usize>,
    pub(super) spare: OrderedMap<PartId, f64>,
}

impl Tightened {
    pub(super) fn none(count: usize) -> Self {
        Self {
            floor: vec![0; count],
            spare: OrderedMap::new(),
        }
    }
}

/// What the next answer is looked for with: what flows with an earlier one.
pub(super) struct Flow {
    pub(super) measured: Measured,
    /// By tree, the operating point that its drops are reckoned at.
    pub(super) points: Vec<usize>,
    pub(super) fixed: OrderedMap<PartId, f64>,
}

impl Search<'_> {
    pub(super) fn flow(&self, measured: Measured, picks: &[usize]) -> Flow {
        let points = governing(&measured, &self.shape, &self.drops);
        let fixed = fixed_drops(&self.shape, self.bench.things, &measured, &points, picks);
        Flow {
            measured,
            points,
            fixed,
        }
    }

    /// The problem of an answer: in a mesh one that is near to the best will do, since it is no proof.
    pub(super) fn good_program(
        &self,
        flow: &Flow,
        range: Vec<(usize, usize)>,
        tight: &Tightened,
    ) -> Program<'_> {
        let mut program = self.program(flow, range, Some(tight));
        if !self.is_forest() {
            program.points = Some(POINTS);
        }
        program
    }

    pub(super) fn program(
        &self,
        flow: &Flow,
        range: Vec<(usize, usize)>,
        tight: Option<&Tightened>,
    ) -> Program<'_> {
        let share = if tight.is_some() { 1.0 } else { self.shrink };
        let drops = self.bench.things.vars.iter().enumerate().map(|(var, it)| {
            let point = flow.points.get(self.shape.tree[var]).copied().unwrap_or(0);
            let at = &flow.measured.points[point];
            let carries = self.shape.fits[var];
            let share = if tight.is_some() { 1.0 } else { self.shares[var] };
            let (rms, burst) = (at.rms[var] * share, at.burst[var] * share);
            let lost = |choice: &super::things::Choice| if carries { burst * choice.ohms(rms) } else { 0.0 };
            it.choices.iter().map(lost).collect()
        });
        let drops: Vec<Vec<f64>> = drops.collect();
        // What is lost in the thickest.
        let mut least = vec![0.0; self.shape.leaves.len()];
        for (var, drops) in drops.iter().enumerate() {
            let lost = drops.get(range[var].1).copied().unwrap_or(0.0);
            for leaf in &self.shape.loads[var] {
                least[*leaf] += lost;
            }
        }
        let leaves = self.shape.leaves.iter().zip(&least).enumerate();
        let budget = leaves.map(|(leaf, ((_, part), least))| {
            let found = part.and_then(|part| {
                let point = flow.points.get(self.shape.tree_of_leaf[leaf]?)?;
                Some((part, *flow.fixed.get(&part)?, self.most_lost(*point, part)?))
            });
            let Some((part, fixed, limit)) = found else {
                return f64::INFINITY;
            };
            match tight {
                // What passes with no choice here is looked for elsewhere.
                Some(tight) => {
                    (limit - fixed - tight.spare.get(&part).copied().unwrap_or(0.0)).max(1.02 * least)
                }
                None => limit * (1.0 + ROUNDING) - fixed * share,
            }
        });
        Program {
            shape: &self.shape,
            vars: &self.bench.things.vars,
            drops,
            range,
            budget: budget.collect(),
            factor: self.limits.fuse,
            free: vec![false; self.vars().len()],
            points: None,
            hopeful: false,
            most: f64::INFINITY,
            traced: true,
            room: &self.room,
        }
    }
}
