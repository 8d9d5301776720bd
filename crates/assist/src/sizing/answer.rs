//! An answer that holds: from the currents of one answer to the next, with what the engine and the checks find wrong ruled out.

use super::measure::{AtPoint, Measured, Wrong};
use super::search::{Flow, Found, RECKONED, Search, Tightened, most_questions};
use super::things::Thing;
use model::PartId;
use ordered::{OrderedSet, Sort as _};

/// Most rounds until an answer holds.
const MOST_ROUNDS: usize = 24;
/// Steps between an answer that does not hold and one that does.
const HALVES: usize = 16;
/// Most rounds in which what is wrong with an answer is raised, each by one size.
const MOST_RAISES: usize = 64;

impl Search<'_> {
    /// An answer that holds: each from the currents of the one before it, with what is wrong with that ruled out.
    pub(super) fn answer(&mut self, top: &Flow, generous: Vec<usize>) -> Found {
        let count = self.bench.things.vars.len();
        let mut tight = Tightened::none(count);
        let mut flow: Option<Flow> = None;
        let mut last = vec![0; count];
        let mut seen: OrderedSet<Vec<usize>> = OrderedSet::new();
        let mut before: Vec<Wrong> = Vec::new();
        for round in 0..MOST_ROUNDS {
            let answer = {
                let flow = flow.as_ref().unwrap_or(top);
                let range = self.range(&flow.measured, 1.0, &tight.floor);
                self.good_program(flow, range, &tight).solve()
            };
            let Some(answer) = answer else { break };
            last.clone_from(&answer.picks);
            let (wrong, mut measured) = self.wrong(&answer.picks);
            if wrong.is_empty() {
                let picks = answer.picks;
                return Found { picks, measured };
            }
            self.rate(&measured);
            // What is reckoned with mends by the next currents; not what comes again, nor what only a check knows.
            let again = !seen.insert(answer.picks.clone());
            let known = |wrong: &&Wrong| {
                let stands = again || before.contains(wrong);
                !stands && RECKONED.contains(&wrong.check) && !self.is_loose(wrong)
            };
            let others: Vec<Wrong> = wrong.iter().filter(|wrong| !known(wrong)).cloned().collect();
            self.tighten(&mut tight, &others, &answer.picks, &measured);
            before = wrong;
            // Where answers follow one another in a ring, the larger currents of both.
            if round >= 2
                && let Some(flow) = &flow
            {
                keep_larger(&mut measured, &flow.measured);
            }
            flow = Some(self.flow(measured, &answer.picks));
        }
        match self.raised(last) {
            Ok(found) => self.thin_out(found),
            Err(last) => self.between(&last, generous),
        }
    }

    /// From an answer that does not hold: what is wrong is given the next size where that gains most, and nothing else is touched, until
    /// it holds. How far it came, where that leads to nothing.
    fn raised(&mut self, mut picks: Vec<usize>) -> Result<Found, Vec<usize>> {
        for _ in 0..MOST_RAISES {
            let (wrong, measured) = self.wrong(&picks);
            if wrong.is_empty() {
                return Ok(Found { picks, measured });
            }
            let mut tight = Tightened::none(picks.len());
            for wrong in &wrong {
                let drops = ["voltage-drop", "supply-collapse"].contains(&wrong.check);
                let mut raised = false;
                for part in wrong.parts.iter().filter(|_| drops) {
                    raised |= self.raise_on_way(&mut tight, *part, &picks, &measured);
                }
                if raised {
                    continue;
                }
                for var in self.to_raise(wrong, &picks, &measured) {
                    let floor = &mut tight.floor[var];
                    *floor = (*floor).max(picks[var] + 1);
                }
            }
            let mut moved = self.lift(&mut picks, &tight.floor);
            if !moved {
                // What a load loses hangs on what others draw as well: where the most is lost for its metal.
                if let Some(var) = self.dearest(&picks, &measured) {
                    tight.floor[var] = picks[var] + 1;
                    moved = self.lift(&mut picks, &tight.floor);
                }
            }
            if !moved {
                break;
            }
        }
        Err(picks)
    }

    /// Lifts choices to their floors; whether any has moved.
    fn lift(&self, picks: &mut [usize], floor: &[usize]) -> bool {
        let mut moved = false;
        for ((pick, floor), var) in picks.iter_mut().zip(floor).zip(&self.bench.things.vars) {
            let next = (*floor).min(var.last());
            moved |= next > *pick;
            *pick = next.max(*pick);
        }
        moved
    }

    /// The run in which the next size saves most power at burst level for its cost.
    fn dearest(&self, picks: &[usize], measured: &Measured) -> Option<usize> {
        let saves = |var: usize| {
            let it = &self.bench.things.vars[var];
            let (now, next) = (it.choices.get(picks[var])?, it.choices.get(picks[var] + 1)?);
            let (rms, burst) = (measured.rms[var], measured.burst[var]);
            let saved = burst * burst * (now.ohms(rms) - next.ohms(rms));
            Some(saved / (next.cost - now.cost).max(1e-9))
        };
        (0..picks.len())
            .filter(|var| self.bench.things.vars[*var].is_run())
            .filter_map(|var| Some((saves(var)?, var)))
            .filter(|(saved, _)| *saved > 0.0)
            .max_by(|a, b| a.0.total_cmp(&b.0).then(b.1.cmp(&a.1)))
            .map(|(_, var)| var)
    }

    /// An answer that holds between one that does not and the most generous one: by halving, then thing by thing.
    fn between(&mut self, thin: &[usize], generous: Vec<usize>) -> Found {
        let measured = self.bench.measure(&generous);
        let picks = generous.clone();
        let mut best = Found { picks, measured };
        let (mut low, mut high) = (0_usize, HALVES);
        while high - low > 1 {
            let middle = (low + high) / 2;
            let part = |(thin, thick): (&usize, &usize)| {
                thin + (thick.saturating_sub(*thin) * middle).div_ceil(HALVES)
            };
            let picks: Vec<usize> = thin.iter().zip(&generous).map(part).collect();
            let (wrong, measured) = self.wrong(&picks);
            if wrong.is_empty() {
                best = Found { picks, measured };
                high = middle;
            } else {
                low = middle;
            }
        }
        self.thin_out(best)
    }

    /// Lays each run as thin as it still holds, the one that saves most first.
    fn thin_out(&mut self, best: Found) -> Found {
        let most = self.bench.asked + most_questions(self.bench.laid.parts.len());
        let saves = |picks: &[usize], var: usize| {
            let choices = &self.bench.things.vars[var].choices;
            let pick = picks[var];
            let less = pick.checked_sub(1).and_then(|less| choices.get(less));
            less.map_or(0.0, |less| choices[pick].cost - less.cost)
        };
        let mut order: Vec<(f64, usize)> = (0..best.picks.len())
            .filter(|var| self.bench.things.vars[*var].is_run())
            .map(|var| (saves(&best.picks, var), var))
            .collect();
        order.order_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
        let mut row = vec![best];
        for (_, var) in order {
            let mut picks = row.last().map_or_else(Vec::new, |found| found.picks.clone());
            // Down to the thinnest by halving what is left: few of them are far from it.
            let (mut fails, mut holds) = (None::<usize>, picks[var]);
            while holds > fails.map_or(0, |fails| fails + 1) && self.bench.asked < most {
                let next = fails.map_or(0, |fails| (fails + holds) / 2);
                picks[var] = next;
                let measured = self.bench.measure(&picks);
                if self.wrong_at_once(&picks, &measured).is_empty() {
                    holds = next;
                    row.push(Found {
                        picks: picks.clone(),
                        measured,
                    });
                } else {
                    fails = Some(next);
                }
            }
        }
        self.last_that_holds(row)
    }

    /// The last of a row of answers, each with less than the one before, with which the checks find nothing wrong. The first is
    /// known to hold.
    pub(super) fn last_that_holds(&mut self, mut row: Vec<Found>) -> Found {
        let (mut low, mut high) = (0, row.len());
        // The last one first: as a rule it holds.
        let mut middle = row.len().saturating_sub(1);
        while high - low > 1 {
            if self.wrong_by_checks(&row[middle].picks).is_empty() {
                low = middle;
            } else {
                high = middle;
            }
            middle = (low + high) / 2;
        }
        row.swap_remove(low)
    }

    /// Whether what is wrong is with something in a mesh, whose currents move.
    fn is_loose(&self, wrong: &Wrong) -> bool {
        let loose = |var: usize| self.shape.meshed[var] || !self.shape.fits[var];
        let marked = |(var, it): (usize, &super::things::Var)| {
            matches!(&it.thing, Thing::Run(run, _) if wrong.runs.contains(run)) && loose(var)
        };
        self.vars().iter().enumerate().any(marked) || wrong.parts.iter().any(|part| self.open.contains(part))
    }

    /// Rules out what is wrong with a choice.
    pub(super) fn tighten(
        &mut self,
        tight: &mut Tightened,
        wrong: &[Wrong],
        picks: &[usize],
        measured: &Measured,
    ) {
        let wrong_before = |at: usize, it: &Wrong| wrong.iter().take(at).any(|other| other == it);
        for (at, wrong) in wrong.iter().enumerate() {
            // The same at several operating points is one.
            if wrong_before(at, wrong) {
                continue;
            }
            let mut done = false;
            for part in &wrong.parts {
                let Some(limit) = self.drops.get(part).copied() else {
                    continue;
                };
                let lost = measured
                    .points
                    .iter()
                    .filter_map(|point| point.drops.get(part).copied());
                let over = lost.fold(0.0, f64::max) - limit;
                let spare = match wrong.check {
                    "voltage-drop" if over > 0.0 => over + 1e-6,
                    "supply-collapse" => 0.1 * limit,
                    _ => continue,
                };
                if self.open.contains(part) {
                    done |= self.raise_on_way(tight, *part, picks, measured);
                } else {
                    *tight.spare.entry(*part).or_default() += spare;
                    done = true;
                }
            }
            if done {
                continue;
            }
            for var in self.to_raise(wrong, picks, measured) {
                let last = self.bench.things.vars[var].last();
                let next = match wrong.check {
                    "fuse-outsizes-wire" => self.bears_all(var, picks),
                    _ => 0,
                };
                if picks[var] < last {
                    let floor = &mut tight.floor[var];
                    *floor = (*floor).max(next.clamp(picks[var] + 1, last));
                    done = true;
                }
            }
            if !done && !self.excused.iter().any(|other| other.like(wrong)) {
                self.tell(wrong);
                self.excused.push(wrong.clone());
            }
        }
    }

    /// The first choice of a run that bears the ratings that are chosen.
    fn bears_all(&self, var: usize, picks: &[usize]) -> usize {
        let ratings = self.shape.bears[var]
            .iter()
            .map(|device| self.amps(*device, picks[*device]));
        let most = ratings.fold(0.0, f64::max);
        self.first(var, |choice| choice.amps() * self.limits.fuse >= most)
    }

    /// On the way to a load, the next size for the run in which it gains most for its metal.
    fn raise_on_way(
        &self,
        tight: &mut Tightened,
        load: PartId,
        picks: &[usize],
        measured: &Measured,
    ) -> bool {
        let lost = |point: &AtPoint| point.drops.get(&load).copied().unwrap_or(0.0);
        let worst = measured.points.iter().max_by(|a, b| lost(a).total_cmp(&lost(b)));
        let Some(point) = worst else { return false };
        let Some(circuit) = self.study.circuits.get(&load) else {
            return false;
        };
        let on_way = |id: &model::RunId| {
            circuit.feeds.iter().any(|way| way.on_any_way.contains(id))
                || circuit.returns.iter().any(|way| way.on_any_way.contains(id))
        };
        let gain = |var: usize| {
            let it = &self.bench.things.vars[var];
            let (now, next) = (it.choices.get(picks[var])?, it.choices.get(picks[var] + 1)?);
            let (rms, burst) = (point.rms[var], point.burst[var]);
            let saved = burst * (now.ohms(rms) - next.ohms(rms));
            Some(saved / (next.cost - now.cost).max(1e-9))
        };
        let best = (0..self.bench.things.vars.len())
            .filter(|var| matches!(&self.bench.things.vars[*var].thing, Thing::Run(id, _) if on_way(id)))
            .filter_map(|var| Some((gain(var)?, var)))
            .max_by(|a, b| a.0.total_cmp(&b.0).then(b.1.cmp(&a.1)));
        let Some((_, var)) = best.filter(|(gain, _)| *gain > 0.0) else {
            return false;
        };
        let floor = &mut tight.floor[var];
        *floor = (*floor).max(picks[var] + 1);
        true
    }

    /// The variables that may clear what is wrong: runs and devices that it marks, else the ground leads of its parts.
    fn to_raise(&self, wrong: &Wrong, picks: &[usize], measured: &Measured) -> Vec<usize> {
        let things = self.bench.things;
        let marked = |var: &usize| match &things.vars[*var].thing {
            Thing::Run(run, _) => wrong.runs.contains(run),
            Thing::Device(place) => {
                wrong.check == "fuse-undersized"
                    && self
                        .bench
                        .devices
                        .get(*place)
                        .is_some_and(|device| wrong.parts.contains(&device.part))
            }
        };
        let all: Vec<usize> = (0..things.vars.len()).filter(marked).collect();
        if !all.is_empty() {
            return all;
        }
        let lands = |var: &usize| match &things.vars[*var].thing {
            Thing::Run(run, _) => self.bench.laid.runs.get(run).is_some_and(|run| {
                let mut ends = run.ends().into_iter().filter_map(|end| end.terminal());
                ends.any(|at| wrong.parts.contains(&at.part) && ["-", "31"].contains(&at.terminal.as_str()))
            }),
            Thing::Device(_) => false,
        };
        let lost =
            |var: usize| measured.burst[var] * things.vars[var].choices[picks[var]].ohms(measured.rms[var]);
        (0..things.vars.len())
            .filter(lands)
            .max_by(|a, b| lost(*a).total_cmp(&lost(*b)).then(b.cmp(a)))
            .into_iter()
            .collect()
    }
}

fn keep_larger(measured: &mut Measured, other: &Measured) {
    let larger = |a: &mut Vec<f64>, b: &[f64]| a.iter_mut().zip(b).for_each(|(a, b)| *a = a.max(*b));
    larger(&mut measured.rms, &other.rms);
    larger(&mut measured.burst, &other.burst);
    for (point, other) in measured.points.iter_mut().zip(&other.points) {
        larger(&mut point.rms, &other.rms);
        larger(&mut point.burst, &other.burst);
    }
}
