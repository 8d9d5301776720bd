//! A bound below the answer, and what lies between looked at, the cheapest first, until both meet.

use super::judging::is_excused;
use super::measure::Wrong;
use super::mesh::{Mesh, POINTS};
use super::problem::Flow;
use super::program::Answer;
use super::search::{ALIKE, Found, RECKONED, Search, most_questions};
use super::steps::pause;
use super::things::Thing;
use ordered::Sort as _;

/// Questions to the engine after which a bound of a mesh is looked at, and the least share of what is left to the answer by which it
/// has to have come nearer.
const WHILE: usize = 16;
const NEARER: f64 = 0.04;
/// Most runs of which the checks are asked what they want at the least, and the share of all cost above which that is asked.
const MOST_CHECKED: usize = 4;
const DEAR: f64 = 0.01;
/// Most groups of a mesh of which the least of each is looked for by itself.
const MOST_SHAVED: usize = 8;

/// A part of all choices, and the best that could be in it.
struct Part {
    range: Vec<(usize, usize)>,
    /// By group of the mesh: its first and last place.
    places: Vec<(usize, usize)>,
    answer: Answer,
    /// Whether the currents were found for this very part.
    own: bool,
}

impl Search<'_> {
    /// Raises the bound to the answer, or lowers the answer to the bound, as far as so many questions to the engine allow.
    pub(super) async fn prove(
        &mut self,
        mesh: &Mesh,
        top: Flow,
        found: Found,
        generous: &[usize],
    ) -> (Found, f64, bool) {
        let most = self.bench.asked + most_questions(self.bench.laid.parts.len());
        let mut best = (self.cost(&found.picks), found);
        let share = self.shrink.min(1.0 - f64::EPSILON);
        let mut part = Part {
            range: self.range(&top.measured, share, &[]),
            places: mesh
                .groups
                .iter()
                .map(|group| (0, group.points.len().saturating_sub(1)))
                .collect(),
            answer: Answer {
                cost: 0.0,
                picks: Vec::new(),
            },
            own: false,
        };
        let mut flow = top;
        let Some(answer) = self.least(mesh, &flow, &part, best.0) else {
            // Nothing costs less.
            return (best.1, best.0, true);
        };
        part.answer = answer;
        if mesh.groups.len() <= MOST_SHAVED {
            self.shave(mesh, &mut part).await;
        }
        if self
            .shave_by_checks(mesh, &mut part, &best.1.picks, generous)
            .await
        {
            let Some(answer) = self.least(mesh, &flow, &part, best.0) else {
                return (best.1, best.0, true);
            };
            part.answer = Answer {
                cost: answer.cost.max(part.answer.cost),
                ..answer
            };
        }
        let first = part.answer.cost;
        let mut open = vec![part];
        let (mut before, mut look) = (first, self.bench.asked + WHILE);
        // Whether something was left out that nothing tells to be wrong.
        let mut unsure = false;
        let bound = loop {
            // The cheapest last.
            open.order_by(|a, b| {
                b.answer
                    .cost
                    .total_cmp(&a.answer.cost)
                    .then_with(|| b.places.cmp(&a.places))
                    .then_with(|| b.range.cmp(&a.range))
            });
            let Some(mut part) = open.pop() else { break best.0 };
            if part.answer.cost >= best.0 - ALIKE {
                break best.0;
            }
            if self.bench.asked >= most {
                break part.answer.cost;
            }
            if !mesh.groups.is_empty() && self.bench.asked >= look {
                // What has come no nearer for a while comes no nearer soon.
                if (part.answer.cost - before) < NEARER * (best.0 - before) {
                    break part.answer.cost;
                }
                (before, look) = (part.answer.cost, self.bench.asked + WHILE);
            }
            if !part.own {
                if mesh.groups.is_empty() {
                    self.narrow(&flow, &mut part, best.0).await;
                }
                let mut thickest: Vec<usize> = part.range.iter().map(|(_, last)| *last).collect();
                let last: Vec<usize> = part.places.iter().map(|(_, last)| *last).collect();
                mesh.put(&last, &mut thickest);
                let measured = self.bench.measure(&thickest).await;
                flow = self.flow(measured, &thickest);
                let own = self.range(&flow.measured, share, &[]);
                for (range, own) in part.range.iter_mut().zip(own) {
                    range.0 = range.0.max(own.0);
                }
                if let Some(answer) = self.least(mesh, &flow, &part, best.0) {
                    let cost = answer.cost.max(part.answer.cost);
                    part.answer = Answer { cost, ..answer };
                    part.own = true;
                    open.push(part);
                }
                continue;
            }
            if let Some(halves) = halves(mesh, &part) {
                open.extend(halves);
                continue;
            }
            let (wrong, measured) = self.wrong(&part.answer.picks).await;
            let cost = self.cost(&part.answer.picks);
            if wrong.is_empty() {
                if cost < best.0 - ALIKE {
                    let picks = part.answer.picks;
                    best = (cost, Found { picks, measured });
                }
                continue;
            }
            // What a wire of the mesh does not bear, one of the same resistance in all may, thicker here and thinner there.
            unsure |= self.is_of_mesh(mesh, &wrong);
            for range in self.others(&part, &wrong) {
                pause().await;
                let mut other = Part {
                    range,
                    places: part.places.clone(),
                    answer: part.answer.clone(),
                    own: false,
                };
                if let Some(answer) = self.least(mesh, &flow, &other, best.0)
                    && answer.cost < best.0 - ALIKE
                {
                    let cost = answer.cost.max(part.answer.cost);
                    other.answer = Answer { cost, ..answer };
                    open.push(other);
                }
            }
        };
        let proved = !unsure && bound >= best.0 - ALIKE;
        (best.1, bound.min(best.0), proved)
    }

    /// The best that could be in a part: what it costs at the least, and the choice that would be it where the mesh leaves none.
    fn least(&self, mesh: &Mesh, flow: &Flow, part: &Part, best: f64) -> Option<Answer> {
        let mut program = self.program(flow, part.range.clone(), None);
        program.free.clone_from(&mesh.holds);
        let first: Vec<usize> = part.places.iter().map(|(first, _)| *first).collect();
        program.most = best + ALIKE - mesh.cost(&first);
        if part.places.iter().any(|(first, last)| first < last) {
            // As long as the mesh is open it is a bound that is asked for, and no choice but the first.
            (program.points, program.hopeful) = (Some(POINTS), true);
            program.traced = part.answer.picks.is_empty();
        }
        let mut answer = program.solve()?;
        mesh.put(&first, &mut answer.picks);
        answer.cost += mesh.cost(&first);
        Some(answer)
    }

    /// Leaves out of each group what is wrong even with the thickest everywhere else.
    async fn shave(&mut self, mesh: &Mesh, part: &mut Part) {
        let mut thickest: Vec<usize> = self.vars().iter().map(super::things::Var::last).collect();
        let last: Vec<usize> = part.places.iter().map(|(_, last)| *last).collect();
        mesh.put(&last, &mut thickest);
        let mut raised = 0.0;
        for (at, group) in mesh.groups.iter().enumerate() {
            let (mut low, mut high) = part.places[at];
            while low < high {
                let middle = (low + high) / 2;
                let mut picks = thickest.clone();
                for (var, pick) in &group.points[middle].picks {
                    picks[*var] = *pick;
                }
                let measured = self.bench.measure(&picks).await;
                let wrong = self.wrong_at_once(&picks, &measured);
                // Ratings are the largest here; what bears them is not asked.
                let told = ["voltage-drop", "supply-collapse"];
                if wrong.iter().any(|wrong| told.contains(&wrong.check)) {
                    low = middle + 1;
                } else {
                    high = middle;
                }
            }
            raised += group.points[low].cost - group.points[part.places[at].0].cost;
            part.places[at].0 = low;
        }
        part.answer.cost += raised;
    }

    /// Leaves out what the checks find wrong with a run even with the thickest everywhere else and the least ratings: of what they want larger than
    /// all else does, where that is dear. Whether anything was left out.
    async fn shave_by_checks(
        &mut self,
        mesh: &Mesh,
        part: &mut Part,
        found: &[usize],
        generous: &[usize],
    ) -> bool {
        let dear = DEAR * self.cost(found);
        let over = |var: usize| {
            let choices = &self.vars()[var].choices;
            choices[found[var]].cost - choices[part.answer.picks[var]].cost
        };
        let mut order: Vec<(f64, usize)> = self.raised.iter().map(|var| (over(*var), *var)).collect();
        order.retain(|(over, _)| *over > dear);
        order.order_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
        order.truncate(MOST_CHECKED);
        let mut shaved = false;
        for (_, var) in order {
            let Thing::Run(run, _) = self.vars()[var].thing else {
                continue;
            };
            let (mut low, mut high) = (part.answer.picks[var], found[var]);
            while low < high {
                let middle = (low + high) / 2;
                let mut picks = generous.to_vec();
                picks[var] = middle;
                let excused = &self.excused;
                let counts = |at: usize, wrong: &Wrong| {
                    let own = wrong.runs.contains(&run) && !RECKONED.contains(&wrong.check);
                    own && !is_excused(excused, at, wrong)
                };
                // At the operating point alone where something was wrong last: what is wrong at one is left out.
                if self.bench.first_findings(&picks, 1, counts).await.is_empty() {
                    high = middle;
                } else {
                    low = middle + 1;
                }
            }
            shaved |= low > part.answer.picks[var];
            let range = &mut part.range[var];
            range.0 = range.0.max(low.min(range.1));
            for (group, places) in mesh.groups.iter().zip(&mut part.places) {
                let is_less = |place: usize| {
                    let own = group.points[place].picks.iter();
                    own.into_iter().any(|(other, pick)| *other == var && *pick < low)
                };
                while places.0 < places.1 && is_less(places.0) {
                    places.0 += 1;
                }
            }
        }
        shaved
    }

    fn is_of_mesh(&self, mesh: &Mesh, wrong: &[Wrong]) -> bool {
        let heated = |var: usize, it: &Wrong| matches!(&self.vars()[var].thing, Thing::Run(run, _) if it.check == "overloaded-run" && it.runs.contains(run));
        let held = || (0..self.vars().len()).filter(|var| mesh.holds[*var]);
        wrong.iter().any(|it| held().any(|var| heated(var, it)))
    }

    /// What is left of a part once its best answer is known to be wrong, in parts that do not overlap.
    fn others(&self, part: &Part, wrong: &[Wrong]) -> Vec<Vec<(usize, usize)>> {
        let picks = &part.answer.picks;
        let mut all = Vec::new();
        let mut rest = part.range.clone();
        let mut add =
            |rest: &mut Vec<(usize, usize)>, var: usize, other: (usize, usize), stays: (usize, usize)| {
                if other.0 <= other.1 {
                    let mut range = rest.clone();
                    range[var] = other;
                    all.push(range);
                }
                rest[var] = stays;
            };
        // A run that does not bear the rating of a device: a thicker one, or a lesser rating.
        for (run, devices) in self.shape.bears.iter().enumerate() {
            for device in devices {
                let (device, (run_pick, device_pick)) = (*device, (picks[run], picks[*device]));
                if self.amps(device, device_pick) > self.amps(run, run_pick) {
                    let (of_run, of_device) = (rest[run], rest[device]);
                    add(&mut rest, run, (run_pick + 1, of_run.1), (of_run.0, run_pick));
                    if let Some(less) = device_pick.checked_sub(1) {
                        add(&mut rest, device, (of_device.0, less), (device_pick, of_device.1));
                    }
                    return all;
                }
            }
        }
        // All that is nowhere thicker is wrong as well: in what is left something is thicker. What carries the current of what
        // is wrong comes first: in the parts that are left for the others it is no thicker, and there they cannot mend it.
        let has_part = |var: &usize| {
            let parts = || wrong.iter().flat_map(|wrong| &wrong.parts);
            let mut loads = self.shape.loads[*var]
                .iter()
                .filter_map(|leaf| self.shape.leaves[*leaf].1);
            loads.any(|part| parts().any(|other| *other == part))
        };
        let marked = |var: &usize| match &self.vars()[*var].thing {
            Thing::Run(run, _) => wrong.iter().any(|wrong| wrong.runs.contains(run)),
            Thing::Device(_) => false,
        };
        let mut order: Vec<usize> = (0..picks.len()).collect();
        order.order_by_key(|var| !(marked(var) || has_part(var)));
        for var in order {
            let (pick, (first, last)) = (picks[var], rest[var]);
            add(&mut rest, var, (pick + 1, last), (first, pick));
        }
        all
    }

    /// Leaves out what costs more than the best answer even if all others cost their least.
    async fn narrow(&self, flow: &Flow, part: &mut Part, best: f64) {
        let mut program = self.program(flow, part.range.clone(), None);
        program.most = best + ALIKE;
        for var in 0..program.range.len() {
            let (first, last) = program.range[var];
            if !self.vars()[var].is_run() || first >= last {
                continue;
            }
            pause().await;
            program.free[var] = true;
            program.traced = false;
            let others = program.solve();
            program.free[var] = false;
            let Some(others) = others else { continue };
            let left = best - others.cost + ALIKE;
            let dear = self.vars()[var]
                .choices
                .iter()
                .rposition(|choice| choice.cost <= left);
            let last = dear.unwrap_or(first).clamp(first, last);
            program.range[var].1 = last;
            part.range[var].1 = last;
        }
    }
}

/// A part in two, by the group of the mesh in which most is in question; nothing where each is told.
fn halves(mesh: &Mesh, part: &Part) -> Option<[Part; 2]> {
    let spread = |at: usize| {
        let (first, last) = part.places[at];
        let points = &mesh.groups[at].points;
        Some(points.get(last)?.cost - points.get(first)?.cost).filter(|_| first < last)
    };
    let widest = (0..part.places.len())
        .filter_map(|at| Some((spread(at)?, at)))
        .max_by(|a, b| a.0.total_cmp(&b.0).then(b.1.cmp(&a.1)));
    let (_, at) = widest?;
    let (first, last) = part.places[at];
    let points = &mesh.groups[at].points;
    let middle = (first + last) / 2;
    let half = |places: (usize, usize)| {
        let mut part = Part {
            range: part.range.clone(),
            places: part.places.clone(),
            answer: part.answer.clone(),
            own: false,
        };
        part.answer.cost += points[places.0].cost - points[first].cost;
        part.places[at] = places;
        part
    };
    Some([half((first, middle)), half((middle + 1, last))])
}
