//! Sizes in a mesh, and of what fits into no forest: what is put in line there is chosen together, the rest by the walk for each such
//! choice. A better answer is looked for from several starts, one step and one exchange after the other, until none betters it.

use super::frontier::{Piece, best_pieces};
use super::problem::Flow;
use super::search::Search;

/// Points that are kept of each place of the forest, where an answer is looked for and not the best.
pub(super) const POINTS: usize = 200;
/// Runs that carry the same current whatever their sizes: what is worth choosing of them together, by rising cost and falling
/// resistance.
pub(super) struct Group {
    pub(super) points: Vec<Piece>,
}

/// What the walk over the forest does not choose.
#[derive(Default)]
pub(super) struct Mesh {
    pub(super) groups: Vec<Group>,
    /// By variable: whether it is in one of them.
    pub(super) holds: Vec<bool>,
}

impl Mesh {
    pub(super) async fn of(search: &mut Search<'_>, top: &Flow, thickest: &[usize]) -> Self {
        let vars = search.vars();
        let mut loose: Vec<usize> = (0..vars.len())
            .filter(|var| vars[*var].is_run() && !search.shape.fits[*var])
            .filter(|var| search.shape.meshed[*var] || !search.shape.loads[*var].is_empty())
            .collect();
        let mut it = Self {
            groups: Vec::new(),
            holds: vec![false; vars.len()],
        };
        if loose.is_empty() {
            return it;
        }
        // What carries the same with two sets of sizes that have nothing in common is in line.
        let mut other = thickest.to_vec();
        for (at, var) in loose.iter().enumerate() {
            other[*var] = (at * 7 + 5) % (thickest[*var] + 1);
        }
        let mixed = search.bench.measure(&other).await;
        let amps = |var: usize| {
            let points = top.measured.points.iter().chain(&mixed.points);
            points.flat_map(move |point| [point.rms[var], point.burst[var]])
        };
        loose.retain(|var| amps(*var).any(|amps| amps > 1e-9));
        let alike = |a: usize, b: usize| {
            amps(a)
                .zip(amps(b))
                .all(|(a, b)| (a - b).abs() <= 1e-6 * (a + b) + 1e-9)
        };
        let mut lists: Vec<Vec<usize>> = Vec::new();
        for var in loose {
            it.holds[var] = true;
            match lists
                .iter_mut()
                .find(|list| list.first().is_some_and(|first| alike(*first, var)))
            {
                Some(list) => list.push(var),
                None => lists.push(vec![var]),
            }
        }
        for list in lists {
            let points = search.in_line(&list, top, thickest).await;
            it.groups.push(Group { points });
        }
        it
    }

    /// Puts what is chosen of each group into a choice.
    pub(super) fn put(&self, places: &[usize], picks: &mut [usize]) {
        for (group, place) in self.groups.iter().zip(places) {
            for (var, pick) in group
                .points
                .get(*place)
                .map(|piece| &*piece.picks)
                .unwrap_or_default()
            {
                picks[*var] = *pick;
            }
        }
    }

    /// What a choice of it costs.
    pub(super) fn cost(&self, places: &[usize]) -> f64 {
        let own = self.groups.iter().zip(places);
        own.filter_map(|(group, place)| group.points.get(*place))
            .map(|piece| piece.cost)
            .sum()
    }
}

impl Search<'_> {
    /// What is worth choosing of runs in line, none thinner than the least that any of them can carry allows.
    async fn in_line(&mut self, list: &[usize], top: &Flow, thickest: &[usize]) -> Vec<Piece> {
        let range = self.range(&top.measured, self.shrink.min(1.0 - f64::EPSILON), &[]);
        // It carries least where it is thin and all else is thick.
        let mut picks = thickest.to_vec();
        for var in list {
            picks[*var] = range[*var].0;
        }
        let measured = self.bench.measure(&picks).await;
        let mut all = vec![Piece {
            cost: 0.0,
            drop: 0.0,
            picks: Vec::new(),
        }];
        for var in list {
            let firsts = self.firsts(*var, measured.rms[*var] * self.shrink);
            let first = firsts
                .iter()
                .map(|(first, _)| *first)
                .fold(range[*var].0, usize::max);
            let choices = &self.vars()[*var].choices;
            let longer = |so_far: &Piece| -> Vec<Piece> {
                let with = |choice: usize| Piece {
                    cost: so_far.cost + choices[choice].cost,
                    drop: so_far.drop + choices[choice].ohms(0.0),
                    picks: so_far.picks.iter().copied().chain([(*var, choice)]).collect(),
                };
                (first..choices.len()).map(with).collect()
            };
            all = best_pieces(all.iter().flat_map(longer).collect());
        }
        all
    }
}
