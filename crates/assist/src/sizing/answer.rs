//! An answer that holds: from the currents of one answer to the next, with what the engine and the checks find wrong ruled out.

use super::measure::{Measured, Wrong};
use super::problem::{Flow, Tightened};
use super::search::{Found, RECKONED, Search};
use super::things::Thing;
use ordered::OrderedSet;

/// Most rounds until an answer holds.
const MOST_ROUNDS: usize = 24;

impl Search<'_> {
    /// An answer that holds.
    pub(super) async fn answer(&mut self, top: &Flow, generous: Vec<usize>) -> Found {
        let none = Tightened::none(generous.len());
        let walked = if self.is_forest() {
            self.walked(top).await
        } else {
            // The mesh is as thin as it may be by itself; what it then loses too much is mended with the rest.
            let range = self.range(&top.measured, 1.0, &none.floor);
            let answer = self.good_program(top, range, &none).solve();
            Err(answer.map_or_else(|| generous.clone(), |answer| answer.picks))
        };
        let last = match walked {
            Ok(found) => return found,
            Err(last) => last,
        };
        let (base, mut floor) = (last.clone(), none.floor);
        let found = match self.mended(last, &mut floor).await {
            Ok(found) => found,
            Err(_) => Found {
                measured: self.bench.measure(&generous).await,
                picks: generous,
            },
        };
        let found = self.trimmed(found, &base, &mut floor).await;
        self.raised = (0..floor.len()).filter(|var| floor[*var] > base[*var]).collect();
        let found = self.lean(found, &floor).await;
        self.again(found, &mut floor).await
    }

    /// On a forest: each answer from the currents of the one before it, with what is wrong with that ruled out, until one holds. The
    /// last of them, where none does.
    async fn walked(&mut self, top: &Flow) -> Result<Found, Vec<usize>> {
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
            let (wrong, mut measured) = self.wrong(&answer.picks).await;
            if wrong.is_empty() {
                let picks = answer.picks;
                return Ok(Found { picks, measured });
            }
            self.rate(&measured);
            // What is reckoned with mends by the next currents; not what comes again, nor what only a check knows.
            let again = !seen.insert(answer.picks.clone());
            let known = |wrong: &&Wrong| {
                let stands = again || before.contains(wrong);
                !stands && RECKONED.contains(&wrong.check)
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
        Err(last)
    }

    /// The last of a row of answers, each with less than the one before, with which the checks find nothing wrong. The first is
    /// known to hold.
    pub(super) async fn last_that_holds(&mut self, mut row: Vec<Found>) -> Found {
        let (mut low, mut high) = (0, row.len());
        // The last one first: as a rule it holds.
        let mut middle = row.len().saturating_sub(1);
        while high - low > 1 {
            if self.wrong_by_checks(&row[middle].picks).await.is_empty() {
                low = middle;
            } else {
                high = middle;
            }
            middle = (low + high) / 2;
        }
        row.swap_remove(low)
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
                let Some(limit) = self.bench.asks.drops.get(part).map(|volts| volts.0) else {
                    continue;
                };
                let points = measured.points.iter().enumerate();
                let over = points
                    .filter_map(|(at, point)| Some(point.drops.get(part)? - self.most_lost(at, *part)?));
                let over = over.fold(f64::NEG_INFINITY, f64::max);
                let spare = match wrong.check {
                    "voltage-drop" if over > 0.0 => over + 1e-6,
                    "supply-collapse" => 0.1 * limit,
                    _ => continue,
                };
                *tight.spare.entry(*part).or_default() += spare;
                done = true;
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
            if !done {
                self.excuse_one(wrong);
            }
        }
    }

    /// The first choice of a run that bears the ratings that are chosen.
    pub(super) fn bears_all(&self, var: usize, picks: &[usize]) -> usize {
        let ratings = self.shape.bears[var]
            .iter()
            .map(|device| self.amps(*device, picks[*device]));
        let most = ratings.fold(0.0, f64::max);
        self.first(var, |choice| choice.amps() * self.limits.fuse >= most)
    }

    /// The variables that may clear what is wrong: runs and devices that it marks, else the ground leads of its parts.
    pub(super) fn to_raise(&self, wrong: &Wrong, picks: &[usize], measured: &Measured) -> Vec<usize> {
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
