//! A bound below the answer, and what lies between looked at, the cheapest first, until both meet.

use super::measure::{Measured, Wrong};
use super::program::Answer;
use super::search::{ALIKE, Flow, Search, most_questions};
use super::things::Thing;
use ordered::Sort as _;

/// A part of all choices, and the best that could be in it.
struct Part {
    range: Vec<(usize, usize)>,
    answer: Answer,
    /// Whether the currents were found for this very part.
    own: bool,
}

impl Search<'_> {
    /// Raises the bound to the answer, or lowers the answer to the bound, as far as so many questions to the engine allow.
    pub(super) fn prove(
        &mut self,
        top: Flow,
        picks: Vec<usize>,
        measured: Measured,
    ) -> (Vec<usize>, Measured, f64, bool) {
        let most = self.bench.asked + most_questions(self.bench.laid.parts.len());
        let mut best = (self.cost(&picks), picks, measured);
        let range = self.range(&top.measured, self.shrink.min(1.0 - f64::EPSILON), &[]);
        let Some(answer) = self.program(&top, range.clone(), None).solve() else {
            return (best.1, best.2, 0.0, false);
        };
        let mut open = vec![Part {
            range,
            answer,
            own: false,
        }];
        let mut flow = top;
        let bound = loop {
            // The cheapest last.
            open.order_by(|a, b| {
                b.answer
                    .cost
                    .total_cmp(&a.answer.cost)
                    .then_with(|| b.range.cmp(&a.range))
            });
            let Some(mut part) = open.pop() else { break best.0 };
            if part.answer.cost >= best.0 - ALIKE {
                break best.0;
            }
            if self.bench.asked >= most || !self.is_forest() {
                break part.answer.cost;
            }
            if !part.own {
                self.narrow(&flow, &mut part, best.0);
                let thickest: Vec<usize> = part.range.iter().map(|(_, last)| *last).collect();
                let sheet = self.bench.with(&thickest);
                let measured = self.bench.measure(&sheet);
                flow = self.flow(measured, &thickest);
                let own = self.range(&flow.measured, self.shrink.min(1.0 - f64::EPSILON), &[]);
                for (range, own) in part.range.iter_mut().zip(own) {
                    range.0 = range.0.max(own.0);
                }
                if let Some(answer) = self.program(&flow, part.range.clone(), None).solve() {
                    let cost = answer.cost.max(part.answer.cost);
                    part.answer = Answer { cost, ..answer };
                    part.own = true;
                    open.push(part);
                }
                continue;
            }
            let (wrong, measured) = self.wrong(&part.answer.picks);
            let cost = self.cost(&part.answer.picks);
            if wrong.is_empty() {
                if cost < best.0 - ALIKE {
                    best = (cost, part.answer.picks, measured);
                }
                continue;
            }
            for range in self.others(&part, &wrong) {
                if let Some(answer) = self.program(&flow, range.clone(), None).solve()
                    && answer.cost < best.0 - ALIKE
                {
                    let cost = answer.cost.max(part.answer.cost);
                    open.push(Part {
                        range,
                        answer: Answer { cost, ..answer },
                        own: false,
                    });
                }
            }
        };
        let proved = self.is_forest() && bound >= best.0 - ALIKE;
        (best.1, best.2, bound.min(best.0), proved)
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
    fn narrow(&self, flow: &Flow, part: &mut Part, best: f64) {
        let mut program = self.program(flow, part.range.clone(), None);
        for var in 0..program.range.len() {
            let (first, last) = program.range[var];
            if !self.vars()[var].is_run() || first >= last {
                continue;
            }
            program.free = Some(var);
            let Some(others) = program.solve() else { continue };
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
