//! A choice made better by what each size does to each drop, to first order: what is lost too much is mended where it costs least, and
//! what is not needed is laid thinner. The engine tells how every drop moves with every wire, in a mesh as well and with what all
//! other loads then draw; so a few questions to it do for what a walk of one step each would take hundreds.

use super::measure::{Measured, Wrong};
use super::problem::Tightened;
use super::search::{ALIKE, Found, Search};
use model::PartId;
use ordered::Sort as _;

/// Most rounds in which what is wrong with a choice is mended.
const MOST_ROUNDS: usize = 48;
/// Most rounds in which a choice is laid thinner.
const MOST_LOWERED: usize = 24;
/// Most times that what is in no mesh is chosen anew.
const MOST_AGAIN: usize = 3;
/// Most exchanges that are tried in one round.
const MOST_TRIED: usize = 6;
/// Most sizes that may be had for one that is raised.
const MOST_FOR_ONE: usize = 6;

/// A load: how much more may be lost to it, and by how much what is lost grows with each variable's resistance.
pub(super) struct Row {
    spare: f64,
    slopes: Vec<f64>,
}

/// What holds while a choice is made thinner.
struct Lean<'m> {
    measured: &'m Measured,
    rows: Vec<Row>,
    /// By variable: the first choice that does by itself.
    least: Vec<usize>,
    /// By variable: what each choice resists.
    ohms: Vec<Vec<f64>>,
}

impl Search<'_> {
    /// What each choice resists at what flows.
    fn ohms(&self, measured: &Measured) -> Vec<Vec<f64>> {
        let of = |(var, it): (usize, &super::things::Var)| {
            let all = it.choices.iter();
            all.map(|choice| choice.ohms(measured.rms[var])).collect()
        };
        self.vars().iter().enumerate().map(of).collect()
    }

    /// For each load that a limit is told of: how much more may be lost at the operating point at which least may, and how that moves. Of those alone
    /// that lose too much, where asked so. What flows was measured last.
    fn rows(&mut self, measured: &Measured, only_over: bool) -> Vec<Row> {
        let mut worst: Vec<(PartId, usize, f64)> = Vec::new();
        for load in self.bench.asks.drops.keys() {
            let points = measured.points.iter().enumerate();
            let spare = points
                .filter_map(|(at, point)| Some((at, self.most_lost(at, *load)? - point.drops.get(load)?)));
            // Of two as bad the last.
            if let Some((at, spare)) = spare.min_by(|a, b| a.1.total_cmp(&b.1).then(b.0.cmp(&a.0))) {
                worst.push((*load, at, spare));
            }
        }
        worst.retain(|(_, _, spare)| !only_over || *spare < 0.0);
        let row = |(load, at, spare)| {
            let slopes = self.bench.slopes(at, load)?;
            Some(Row { spare, slopes })
        };
        worst.into_iter().filter_map(row).collect()
    }

    /// A choice that holds, from one that does not: what is wrong is given more where that gains most for its cost, and nothing
    /// else is touched; with what the checks want of each thing at the least. How far it came, where that leads to nothing.
    pub(super) async fn mended(
        &mut self,
        mut picks: Vec<usize>,
        floor: &mut [usize],
    ) -> Result<Found, Vec<usize>> {
        let mut times = vec![0_u32; picks.len()];
        for _ in 0..MOST_ROUNDS {
            let measured = self.bench.measure(&picks).await;
            self.rate(&measured);
            let mut wrong = self.wrong_at_once(&picks, &measured);
            let by_limits = !wrong.is_empty();
            if !by_limits {
                wrong = self.wrong_by_checks(&picks).await;
                if wrong.is_empty() {
                    return Ok(Found { picks, measured });
                }
            }
            let before = picks.clone();
            let excused = self.excused.len();
            if by_limits {
                self.lift_by_itself(&mut picks, &measured);
                self.lift_grounds(&mut picks);
                self.lift_drops(&mut picks, &measured);
                if wrong.iter().any(|wrong| wrong.check == "supply-collapse") && picks == before {
                    self.lift_dearest(&mut picks, &measured);
                }
            } else {
                self.lift_marked(&mut picks, floor, &wrong, &measured, &mut times);
            }
            if picks == before && self.excused.len() == excused {
                break;
            }
        }
        Err(picks)
    }

    /// To what each thing needs by itself: for its current, and for the ratings that it has to bear.
    fn lift_by_itself(&self, picks: &mut [usize], measured: &Measured) {
        let range = self.range(measured, 1.0, &[]);
        for (pick, (first, _)) in picks.iter_mut().zip(&range) {
            *pick = (*pick).max(*first);
        }
        for var in (0..picks.len()).filter(|var| self.vars()[*var].is_run()) {
            picks[var] = picks[var].max(self.bears_all(var, picks));
        }
    }

    /// Gives the backs of each ground rule that does not hold the next size where it costs least, until it does.
    fn lift_grounds(&self, picks: &mut [usize]) {
        for lead in &self.shape.leads {
            while !lead.holds(|var| self.vars()[var].choices[picks[var]].conducts()) {
                let cost = |var: usize| {
                    let choices = &self.vars()[var].choices;
                    Some(choices.get(picks[var] + 1)?.cost - choices[picks[var]].cost)
                };
                let backs = lead.backs.iter().filter_map(super::search::var_of);
                let cheapest = backs.filter_map(|var| Some((cost(var)?, var)));
                let Some((_, var)) = cheapest.min_by(|a, b| a.0.total_cmp(&b.0)) else {
                    break;
                };
                picks[var] += 1;
            }
        }
    }

    /// Lays what takes most off what is lost too much for its cost, until to first order nothing is: thicker wires, and larger ratings within
    /// those in question with the wires that bear them.
    fn lift_drops(&mut self, picks: &mut [usize], measured: &Measured) {
        let mut rows = self.rows(measured, true);
        let ohms = self.ohms(measured);
        let last: Vec<usize> = self
            .range(measured, 1.0, &[])
            .into_iter()
            .map(|(_, last)| last)
            .collect();
        // Of a load for which that is not enough less is known than it seems; the others come first.
        let can = |row: &Row, picks: &[usize]| {
            let all =
                (0..picks.len()).map(|var| row.slopes[var] * (ohms[var][picks[var]] - ohms[var][last[var]]));
            all.map(|gained| gained.max(0.0)).sum::<f64>() > -row.spare
        };
        if rows.iter().any(|row| can(row, picks)) {
            rows.retain(|row| can(row, picks));
        }
        while !rows.is_empty() {
            let gain = |var: usize| {
                if picks[var] >= last[var] {
                    return None;
                }
                let gained = ohms[var][picks[var]] - ohms[var][picks[var] + 1];
                let gained = rows.iter().map(|row| (row.slopes[var] * gained).min(-row.spare));
                let gained: f64 = gained.map(|gained| gained.max(0.0)).sum();
                Some(gained / self.cost_of_next(picks, var).max(1e-9)).filter(|gain| *gain > 0.0)
            };
            let all = (0..picks.len()).filter_map(|var| Some((gain(var)?, var)));
            let Some((_, var)) = all.max_by(|a, b| a.0.total_cmp(&b.0).then(b.1.cmp(&a.1))) else {
                return;
            };
            let before = picks.to_vec();
            picks[var] += 1;
            if !self.vars()[var].is_run() {
                for run in self.bearing(var) {
                    picks[run] = picks[run].max(self.bears_all(run, picks));
                }
            }
            for (var, before) in before
                .into_iter()
                .enumerate()
                .filter(|(var, before)| *before < picks[*var])
            {
                let gained = ohms[var][before] - ohms[var][picks[var]];
                for row in &mut rows {
                    row.spare += row.slopes[var] * gained;
                }
            }
            rows.retain(|row| row.spare < 1e-6);
        }
    }

    /// Runs that bear the rating of a device.
    fn bearing(&self, device: usize) -> impl Iterator<Item = usize> {
        let all = self.shape.bears.iter().enumerate();
        all.filter(move |(_, bears)| bears.contains(&device))
            .map(|(run, _)| run)
    }

    /// What the next size costs more, or the next rating with the wires that bear it.
    fn cost_of_next(&self, picks: &[usize], var: usize) -> f64 {
        let choices = &self.vars()[var].choices;
        let mut cost = choices[picks[var] + 1].cost - choices[picks[var]].cost;
        if !self.vars()[var].is_run() {
            let rating = self.amps(var, picks[var] + 1);
            for run in self.bearing(var) {
                let first = self.first(run, |choice| choice.amps() * self.limits.fuse >= rating);
                let choices = &self.vars()[run].choices;
                cost += (choices[first.max(picks[run])].cost - choices[picks[run]].cost).max(0.0);
            }
        }
        cost
    }

    /// Where the feed cannot deliver what is asked: a tenth of all runs, those in which the next size saves most power for its cost.
    fn lift_dearest(&self, picks: &mut [usize], measured: &Measured) {
        let saves = |var: usize| {
            let it = &self.vars()[var];
            let (now, next) = (it.choices.get(picks[var])?, it.choices.get(picks[var] + 1)?);
            let (rms, burst) = (measured.rms[var], measured.burst[var]);
            let saved = burst * burst * (now.ohms(rms) - next.ohms(rms));
            Some((saved / (next.cost - now.cost).max(1e-9), var)).filter(|(saved, _)| *saved > 0.0)
        };
        let runs = (0..picks.len()).filter(|var| self.vars()[*var].is_run());
        let mut all: Vec<(f64, usize)> = runs.filter_map(saves).collect();
        all.order_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
        let some = all.len().div_ceil(10);
        for (_, var) in all.into_iter().take(some) {
            picks[var] += 1;
        }
    }

    /// Gives what the checks mark the next size, and further ones the more often it was marked before.
    fn lift_marked(
        &mut self,
        picks: &mut [usize],
        floor: &mut [usize],
        wrong: &[Wrong],
        measured: &Measured,
        times: &mut [u32],
    ) {
        let before = picks.to_vec();
        for (at, it) in wrong.iter().enumerate() {
            let again = |other: &&Wrong| *other == it;
            if wrong[..at].iter().any(|other| again(&other)) {
                continue;
            }
            let mut moved = false;
            for var in self.to_raise(it, &before, measured) {
                let last = self.vars()[var].last();
                if picks[var] == before[var] && picks[var] < last {
                    picks[var] = (picks[var] + (1 << (times[var] / 2).min(3))).min(last);
                    times[var] += 1;
                    floor[var] = floor[var].max(picks[var]);
                }
                moved |= picks[var] > before[var];
            }
            if !moved {
                self.excuse_one(it);
            }
        }
    }

    /// What was raised for the checks, by more than one size at a time or for want of another in line with it, laid as thin as they still find
    /// nothing wrong: what costs most first, down to what it was at.
    pub(super) async fn trimmed(&mut self, found: Found, base: &[usize], floor: &mut [usize]) -> Found {
        let most = self.bench.judged + super::why::most_judged(self.bench.laid.parts.len());
        let over = |var: usize| {
            let choices = &self.vars()[var].choices;
            choices[found.picks[var]].cost - choices[base[var]].cost
        };
        let raised = (0..floor.len()).filter(|var| floor[*var] > base[*var]);
        let mut order: Vec<(f64, usize)> = raised.map(|var| (over(var), var)).collect();
        order.order_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
        // Asked at one operating point alone on the way, at the one where something was wrong last; at all of them once it is done.
        let mut row = vec![found];
        for (_, var) in order {
            let Some(Found { picks, measured }) = row.last() else {
                break;
            };
            let (mut picks, near) = (picks.clone(), measured.clone());
            let (mut low, mut high) = (base[var], picks[var]);
            // Half way first: as a rule only a little is too much.
            while low < high && self.bench.judged < most {
                let middle = (low + high) / 2;
                picks[var] = middle;
                let (wrong, measured) = self.wrong_or_measured(&picks, &near).await;
                if wrong.is_empty() && self.wrong_where_last(&picks).await.is_empty() {
                    let picks = picks.clone();
                    row.push(Found { picks, measured });
                    high = middle;
                } else {
                    low = middle + 1;
                }
            }
        }
        let found = self.last_that_holds(row).await;
        for (floor, (pick, base)) in floor.iter_mut().zip(found.picks.iter().zip(base)) {
            *floor = if *floor > *base { *pick } else { *floor };
        }
        found
    }

    /// The same laid as thin as it still holds, what saves most for what it takes first; then what one thicker run saves in
    /// others. Nothing below the floor.
    pub(super) async fn lean(&mut self, found: Found, floor: &[usize]) -> Found {
        let most = self.bench.asked + super::search::most_questions(self.bench.laid.parts.len());
        let first_cost = self.cost(&found.picks);
        let mut row = vec![found];
        // Far from the limits what is told to first order is too little.
        let mut share = 0.6;
        for _ in 0..MOST_LOWERED {
            let Some(Found { picks, .. }) = row.last() else {
                break;
            };
            let picks = picks.clone();
            // Slopes are of what was set last.
            let measured = self.bench.measure(&picks).await;
            let lean = self.lean_at(&measured, floor, share);
            let mut spare: Vec<f64> = lean.rows.iter().map(|row| row.spare).collect();
            let mut lower = picks.clone();
            let mut moves = self.lower(&lean, &mut lower, &mut spare, usize::MAX);
            let mut better = false;
            while !moves.is_empty() && self.bench.asked < most {
                let mut next = picks.clone();
                for var in &moves {
                    next[*var] -= 1;
                }
                if self.keep_if_right(&measured, &mut row, next).await {
                    better = true;
                    break;
                }
                moves.truncate(moves.len() / 2);
            }
            if share < 0.9 {
                share = 0.95;
                continue;
            }
            if self.bench.asked >= most || (!better && !self.exchange(&lean, &picks, &mut row).await) {
                break;
            }
        }
        if row
            .last()
            .is_some_and(|found| self.cost(&found.picks) > first_cost - ALIKE)
        {
            row.truncate(1);
        }
        self.last_that_holds(row).await
    }

    /// The same with all but the mesh chosen anew at what now flows, as long as that is better.
    pub(super) async fn again(&mut self, mut found: Found, floor: &mut [usize]) -> Found {
        for _ in 0..MOST_AGAIN {
            let flow = self.flow(found.measured.clone(), &found.picks);
            let mut range = self.range(&flow.measured, 1.0, floor);
            for (var, range) in range.iter_mut().enumerate() {
                if !self.shape.fits[var] && self.vars()[var].is_run() {
                    *range = (found.picks[var], found.picks[var]);
                }
            }
            let mut program = self.good_program(&flow, range, &Tightened::none(floor.len()));
            program.most = self.cost(&found.picks);
            let Some(answer) = program.solve() else { break };
            let Ok(other) = self.mended(answer.picks, floor).await else {
                break;
            };
            let other = self.lean(other, floor).await;
            if self.cost(&other.picks) > self.cost(&found.picks) - ALIKE {
                break;
            }
            found = other;
        }
        found
    }

    fn lean_at<'m>(&mut self, measured: &'m Measured, floor: &[usize], share: f64) -> Lean<'m> {
        let mut rows = self.rows(measured, false);
        for row in &mut rows {
            row.spare *= share;
        }
        let least = self
            .range(measured, 1.0, floor)
            .into_iter()
            .map(|(first, _)| first);
        Lean {
            measured,
            least: least.collect(),
            ohms: self.ohms(measured),
            rows,
        }
    }

    /// Takes a choice that the limits find nothing wrong with.
    async fn keep_if_right(&mut self, near: &Measured, row: &mut Vec<Found>, picks: Vec<usize>) -> bool {
        let (wrong, measured) = self.wrong_or_measured(&picks, near).await;
        let right = wrong.is_empty();
        if right {
            row.push(Found { picks, measured });
        }
        right
    }

    /// What may be laid thinner, one size after the other, as far as to first order all drops keep to what they may be: the
    /// runs in the order in which they were.
    fn lower(&self, lean: &Lean<'_>, picks: &mut [usize], spare: &mut [f64], most: usize) -> Vec<usize> {
        let mut moves = Vec::new();
        let mut out: Vec<bool> = self.vars().iter().map(|var| !var.is_run()).collect();
        while moves.len() < most {
            let mut best: Option<(f64, usize)> = None;
            for (var, out) in out.iter_mut().enumerate().filter(|(_, out)| !**out) {
                match self.worth(lean, picks, spare, var) {
                    Some(worth) if best.is_none_or(|(most, _)| worth > most) => best = Some((worth, var)),
                    Some(_) => {}
                    // What has no room now has none later.
                    None => *out = true,
                }
            }
            let Some((_, var)) = best else { break };
            let less = picks[var] - 1;
            let more = lean.ohms[var][less] - lean.ohms[var][picks[var]];
            for (spare, row) in spare.iter_mut().zip(&lean.rows) {
                *spare -= row.slopes[var] * more;
            }
            picks[var] = less;
            moves.push(var);
        }
        moves
    }

    /// What one size less of a run saves for what it takes of what may be lost; nothing where it may not be.
    fn worth(&self, lean: &Lean<'_>, picks: &[usize], spare: &[f64], var: usize) -> Option<f64> {
        let less = picks[var]
            .checked_sub(1)
            .filter(|less| *less >= lean.least[var])?;
        let choices = &self.vars()[var].choices;
        let saved = choices[picks[var]].cost - choices[less].cost;
        let bears = choices[less].amps() * self.limits.fuse;
        let mut devices = self.shape.bears[var].iter();
        if saved <= 0.0 || devices.any(|device| self.amps(*device, picks[*device]) > bears) {
            return None;
        }
        let conducts = |other: usize| {
            let pick = if other == var { less } else { picks[other] };
            self.vars()[other].choices[pick].conducts()
        };
        let mut leads = self
            .shape
            .leads
            .iter()
            .filter(|lead| lead.vars().any(|other| other == var));
        if leads.any(|lead| !lead.holds(conducts)) {
            return None;
        }
        let more = lean.ohms[var][less] - lean.ohms[var][picks[var]];
        let mut takes = 1e-9;
        for (row, spare) in lean.rows.iter().zip(spare) {
            let lost = row.slopes[var] * more;
            if lost > *spare && lost > 1e-9 {
                return None;
            }
            takes += (lost / spare.max(1e-9)).max(0.0);
        }
        Some(saved / takes)
    }

    /// One size more where that saves more in others, the best of them first.
    async fn exchange(&mut self, lean: &Lean<'_>, picks: &[usize], row: &mut Vec<Found>) -> bool {
        let mut all: Vec<(f64, usize, Vec<usize>)> = Vec::new();
        for var in (0..picks.len()).filter(|var| self.vars()[*var].is_run()) {
            let choices = &self.vars()[var].choices;
            let Some(next) = choices.get(picks[var] + 1) else {
                continue;
            };
            let more = next.cost - choices[picks[var]].cost;
            let gained = lean.ohms[var][picks[var]] - lean.ohms[var][picks[var] + 1];
            let mut spare: Vec<f64> = lean
                .rows
                .iter()
                .map(|row| row.spare + row.slopes[var] * gained)
                .collect();
            let mut other = picks.to_vec();
            other[var] += 1;
            self.lift_grounds(&mut other);
            let _ = self.lower(lean, &mut other, &mut spare, MOST_FOR_ONE);
            let saved = self.cost(picks) - self.cost(&other);
            if saved > more.abs() * 1e-9 + ALIKE {
                all.push((saved, var, other));
            }
        }
        all.order_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
        for (_, _, other) in all.into_iter().take(MOST_TRIED) {
            if self.keep_if_right(lean.measured, row, other).await {
                return true;
            }
        }
        false
    }
}
