//! Sizes in a mesh, and of what fits into no forest: what is put in line there is chosen together, the rest by the walk for each such
//! choice. A better answer is looked for from several starts, one step and one exchange after the other, until none betters it.

use super::frontier::{Piece, best_pieces};
use super::measure::Measured;
use super::search::{ALIKE, Flow, Found, Search, Tightened, most_questions};
use super::things::{Is, Var};

/// Current over area that answers start from, in A/mm²: from what a wire just bears to what nobody lays.
const DENSITIES: &[f64] = &[2.0, 4.0, 1.0, 8.0, 0.5];
/// Steps that are tried of each, in places of its list.
const STEPS: &[isize] = &[-1, 1, -4, 4, -16, 16];
/// Steps of two that are tried together: one up, the other down.
const EXCHANGES: &[(isize, isize)] = &[(1, -1), (2, -1), (1, -2), (4, -4)];
/// Most lists of which two are exchanged.
const MOST_EXCHANGED: usize = 8;
/// Points that are kept of each place of the forest, where an answer is looked for and not the best.
pub(super) const POINTS: usize = 200;
/// Most rounds of the walk for one choice in the mesh.
const ROUNDS: usize = 3;

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
    pub(super) fn of(search: &mut Search<'_>, top: &Flow, thickest: &[usize]) -> Self {
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
        let mixed = search.bench.measure(&other);
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
            let points = search.in_line(&list, top, thickest);
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

    /// Of each group the first place that resists no more than this choice of it.
    fn places(&self, vars: &[Var], picks: &[usize]) -> Vec<usize> {
        let place = |group: &Group| {
            let own = group
                .points
                .first()
                .map(|piece| &*piece.picks)
                .unwrap_or_default();
            let ohms: f64 = own
                .iter()
                .map(|(var, _)| vars[*var].choices[picks[*var]].ohms(0.0))
                .sum();
            let first = group
                .points
                .iter()
                .position(|piece| piece.drop <= ohms * (1.0 + 1e-9));
            first.unwrap_or(group.points.len().saturating_sub(1))
        };
        self.groups.iter().map(place).collect()
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
    fn in_line(&mut self, list: &[usize], top: &Flow, thickest: &[usize]) -> Vec<Piece> {
        let range = self.range(&top.measured, self.shrink.min(1.0 - f64::EPSILON), &[]);
        // It carries least where it is thin and all else is thick.
        let mut picks = thickest.to_vec();
        for var in list {
            picks[*var] = range[*var].0;
        }
        let measured = self.bench.measure(&picks);
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

    /// A better answer, where a mesh leaves room for one.
    pub(super) fn weigh(&mut self, mesh: &Mesh, found: Found) -> Found {
        if mesh.groups.is_empty() || mesh.groups.iter().any(|group| group.points.is_empty()) {
            return found;
        }
        let most = self.bench.asked + most_questions(self.bench.laid.parts.len());
        let mut cost = self.cost(&found.picks);
        let mut places = mesh.places(self.vars(), &found.picks);
        let mut row = vec![found];
        let mut tried: ordered::OrderedSet<Vec<usize>> = ordered::OrderedSet::new();
        let mut starts = vec![places.clone()];
        for density in DENSITIES {
            let from = row
                .last()
                .map(|found| (found.picks.clone(), found.measured.clone()));
            let Some((mut picks, measured)) = from else { break };
            for (var, _) in mesh.holds.iter().enumerate().filter(|(_, holds)| **holds) {
                let area = measured.burst[var] / density;
                let wide = |choice: &super::things::Choice| match &choice.is {
                    Is::Wire { size, .. } => size.area().0 >= area,
                    Is::Rating { .. } => false,
                };
                picks[var] = self.first(var, wide);
            }
            starts.push(mesh.places(self.vars(), &picks));
        }
        for start in starts {
            self.step(mesh, start, &mut places, &mut cost, &mut row, &mut tried);
        }
        let count = mesh.groups.len();
        let moved = |places: &[usize], steps: &[(usize, isize)]| -> Option<Vec<usize>> {
            let mut next = places.to_vec();
            for (group, step) in steps {
                next[*group] = next[*group].checked_add_signed(*step)?;
                if next[*group] >= mesh.groups[*group].points.len() {
                    return None;
                }
            }
            Some(next)
        };
        let mut moves: Vec<Vec<(usize, isize)>> = Vec::new();
        for step in STEPS {
            moves.extend((0..count).map(|group| vec![(group, *step)]));
        }
        if count <= MOST_EXCHANGED {
            for (up, down) in EXCHANGES {
                for a in 0..count {
                    moves.extend((0..count).filter(|b| *b != a).map(|b| vec![(a, *up), (b, *down)]));
                }
            }
        }
        // Until a whole round betters nothing.
        let mut since = 0;
        let mut at = 0;
        while since < moves.len() && self.bench.asked < most {
            let next = moved(&places, &moves[at]);
            let better =
                next.is_some_and(|next| self.step(mesh, next, &mut places, &mut cost, &mut row, &mut tried));
            if better {
                since = 0;
            } else {
                (since, at) = (since + 1, (at + 1) % moves.len());
            }
        }
        self.last_that_holds(row)
    }

    /// Tries a choice in the mesh; keeps it where it is better than what there is.
    fn step(
        &mut self,
        mesh: &Mesh,
        next: Vec<usize>,
        places: &mut Vec<usize>,
        cost: &mut f64,
        row: &mut Vec<Found>,
        tried: &mut ordered::OrderedSet<Vec<usize>>,
    ) -> bool {
        if !tried.insert(next.clone()) || mesh.cost(&next) >= *cost {
            return false;
        }
        let Some(picks) = row.last().map(|found| found.picks.clone()) else {
            return false;
        };
        let Some(found) = self.rest(mesh, &next, picks, *cost) else {
            return false;
        };
        *cost = self.cost(&found.picks);
        *places = next;
        row.push(found);
        true
    }

    /// The rest by the walk, with this choice in the mesh: nothing where it costs no less than `most`, or none holds.
    fn rest(&mut self, mesh: &Mesh, places: &[usize], mut picks: Vec<usize>, most: f64) -> Option<Found> {
        mesh.put(places, &mut picks);
        let mut measured = self.bench.measure(&picks);
        let mut tight = Tightened::none(picks.len());
        for _ in 0..ROUNDS {
            self.rate(&measured);
            let flow = self.flow(measured, &picks);
            let mut range = self.range(&flow.measured, 1.0, &tight.floor);
            for var in (0..picks.len()).filter(|var| mesh.holds[*var]) {
                if picks[var] < range[var].0 {
                    return None;
                }
                range[var] = (picks[var], picks[var]);
            }
            let mut program = self.good_program(&flow, range, &tight);
            program.most = most;
            picks = program.solve()?.picks;
            if self.cost(&picks) >= most - ALIKE {
                return None;
            }
            measured = self.bench.measure(&picks);
            let wrong = self.wrong_at_once(&picks, &measured);
            if wrong.is_empty() {
                return Some(Found { picks, measured });
            }
            self.spare(&mut tight, &measured);
        }
        None
    }

    /// Takes what is lost too much to a load off what may be lost to it.
    fn spare(&self, tight: &mut Tightened, measured: &Measured) {
        for (load, limit) in &self.drops {
            let lost = measured
                .points
                .iter()
                .filter_map(|point| point.drops.get(load).copied());
            let over = lost.fold(0.0, f64::max) - limit;
            if over > 0.0 {
                *tight.spare.entry(*load).or_default() += over + 1e-6;
            }
        }
    }
}
