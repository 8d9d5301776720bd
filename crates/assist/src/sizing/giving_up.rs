//! What no size suffices for: told, and asked for no more, so that the rest can still be sized.

use super::Short;
use super::judging::Excused;
use super::measure::{AtPoint, Measured, Wrong};
use super::search::{Search, var_of};
use super::things::{Choice, Thing};

/// What a load may lose that loses too much with the thickest wires, over that: so near to it that everything on its way is laid as thick as
/// can be serves nobody.
const HOPELESS: f64 = 1.1;

impl Search<'_> {
    /// What no choice suffices for is told, and asked for no more. What it suffices for as set, and not at the worst, is held as set.
    /// `now` is what flows as things are laid.
    pub(super) fn give_up(&mut self, top: &Measured, now: &[&AtPoint]) {
        let as_set = |var: usize| {
            top.points
                .first()
                .map_or([0.0; 2], |at| [at.rms[var], at.burst[var]])
        };
        for (var, it) in self.bench.things.vars.iter().enumerate() {
            let Some(last) = it.choices.last() else { continue };
            match &it.thing {
                Thing::Run(run, _) => {
                    let most = last.amps() * self.limits.heat;
                    if top.rms[var] > most {
                        self.hopeless.insert(var);
                        self.short.push(Short::Heat {
                            run: *run,
                            by_terminal: it.by_terminal,
                            as_set: as_set(var)[0] <= most,
                        });
                    }
                    if let Some((rating, device)) = self.shape.bears_fixed[var]
                        && rating > last.amps() * self.limits.fuse
                    {
                        self.shape.bears_fixed[var] = None;
                        let device = self.bench.devices[device].clone();
                        let (run, as_set) = (*run, false);
                        self.short.push(Short::Fuse { run, device, as_set });
                    }
                }
                Thing::Device(place) => {
                    let device = self.bench.devices[*place].clone();
                    let (first, suffices) = self.least_rating(var, top);
                    if !suffices {
                        let [rms, burst] = as_set(var);
                        let device = device.clone();
                        let (_, as_set) = self.first_rating(var, rms, burst);
                        self.short.push(Short::Rating { device, as_set });
                    }
                    let rating = it.choices.get(first).map_or(0.0, Choice::amps);
                    if let Some((bears, place)) = self.shape.guards_fixed[var]
                        && rating > bears * self.limits.fuse
                        && let Some((run, _)) = self.bench.laid.runs.at(place)
                    {
                        let relaxed = self.relax(var, as_set(var), bears * self.limits.fuse);
                        if let Some(least) = relaxed {
                            self.relaxed.insert(var, least);
                        } else {
                            self.shape.guards_fixed[var] = None;
                        }
                        let (run, as_set) = (*run, relaxed.is_some());
                        self.short.push(Short::Fuse { run, device, as_set });
                    }
                }
            }
        }
        self.give_up_pairs(top, as_set);
        self.give_up_drops(top, now);
    }

    /// The largest rating of a device up to so many amperes, where it passes what it carries as set.
    fn relax(&self, device: usize, [rms, burst]: [f64; 2], most: f64) -> Option<usize> {
        let choices = &self.bench.things.vars[device].choices;
        let largest = choices.iter().rposition(|choice| choice.amps() <= most)?;
        let (first, suffices) = self.first_rating(device, rms, burst);
        (suffices && first <= largest).then_some(largest)
    }

    /// Pairs of a run and a device of which the thickest does not bear the least, and ground rules that cannot be kept.
    fn give_up_pairs(&mut self, top: &Measured, as_set: impl Fn(usize) -> [f64; 2]) {
        for var in 0..self.bench.things.vars.len() {
            let Thing::Run(run, _) = self.bench.things.vars[var].thing else {
                continue;
            };
            let most = self.amps(var, self.bench.things.vars[var].last());
            for device in self.shape.bears[var].clone() {
                let Thing::Device(place) = self.bench.things.vars[device].thing else {
                    continue;
                };
                if self.amps(device, self.least_rating(device, top).0) <= most {
                    continue;
                }
                let relaxed = self.relax(device, as_set(device), most);
                if let Some(least) = relaxed {
                    self.relaxed.insert(device, least);
                } else {
                    self.shape.bears[var].retain(|other| *other != device);
                    self.shape.held[var].retain(|other| *other != device);
                }
                self.short.push(Short::Fuse {
                    run,
                    device: self.bench.devices[place].clone(),
                    as_set: relaxed.is_some(),
                });
            }
        }
        let range = self.range(top, 1.0, &[]);
        for at in 0..self.shape.leads.len() {
            let lead = &self.shape.leads[at];
            let backs: Vec<usize> = lead.backs.iter().filter_map(var_of).collect();
            let best = |var: usize| {
                let (first, last) = range[var];
                let pick = if backs.contains(&var) { last } else { first };
                self.bench.things.vars[var].choices[pick].conducts()
            };
            if !lead.holds(best) {
                let amplifier = lead.amplifier;
                self.short.push(Short::Ground { amplifier });
                self.shape.leads[at].ratio = 0.0;
            }
        }
    }

    /// Loads whose drop passes its limit with the thickest at some operating points: there they are not to lose much more than with those, or than
    /// they do now. At all others the limit holds.
    fn give_up_drops(&mut self, top: &Measured, now: &[&AtPoint]) {
        let conditions = |at: usize| {
            let settings = self.bench.scenes.get(at)?;
            Some((settings.conditions.state, settings.conditions.duty))
        };
        for (load, limit) in &self.bench.asks.drops {
            let limit = limit.0;
            let mut worst: Option<(f64, usize)> = None;
            for (at, point) in top.points.iter().enumerate() {
                let Some(drop) = point.drops.get(load).copied().filter(|drop| *drop > limit) else {
                    continue;
                };
                let as_laid = now.get(at).and_then(|now| now.drops.get(load));
                let most = as_laid.map_or(0.0, |now| *now).max(drop * HOPELESS);
                if let Some(drops) = self.drops.get_mut(at) {
                    drops.insert(*load, most);
                }
                if worst.is_none_or(|(most, _)| drop > most) {
                    worst = Some((drop, at));
                }
            }
            let Some((drop, at)) = worst else { continue };
            let as_set = self.most_lost(0, *load) == Some(limit);
            self.short.push(Short::Drop {
                load: *load,
                drop,
                limit,
                at_worst: conditions(at).filter(|_| as_set),
            });
        }
    }

    /// What the checks find with the thickest wires and the least ratings is no matter of sizes. Asked once, and only where the
    /// checks have a word to say at all.
    pub(super) async fn excuse(&mut self) {
        let Some(generous) = self.generous.take() else {
            return;
        };
        let told = [
            "voltage-drop",
            "overloaded-run",
            "fuse-outsizes-wire",
            "fuse-undersized",
        ];
        for (at, wrong) in self.bench.findings(&generous).await {
            let is_told = told.contains(&wrong.check);
            self.excuse_at(wrong, &[at], is_told);
        }
        self.bench.settle();
    }

    /// What nothing that can be chosen clears: told, and asked for no more. Where it was found at the worst it may yet be clear as set.
    pub(super) fn excuse_one(&mut self, wrong: &Wrong) {
        let first = self.bench.last_wrong.min(1);
        let at: Vec<usize> = (first..self.bench.scenes.len()).collect();
        self.excuse_at(wrong.clone(), &at, false);
    }

    fn excuse_at(&mut self, wrong: Wrong, at: &[usize], is_told: bool) {
        let at = at.to_vec();
        self.excused.push(Excused { wrong, at, is_told });
    }

    /// Tells what the checks find whatever is chosen.
    pub(super) fn tell_excused(&mut self) {
        let mut all: Vec<(Wrong, bool)> = Vec::new();
        for it in self.excused.iter().filter(|it| !it.is_told) {
            let as_set = !it.at.contains(&0);
            match all.iter_mut().find(|(wrong, _)| wrong.like(&it.wrong)) {
                Some(known) => known.1 &= as_set,
                None => all.push((it.wrong.clone(), as_set)),
            }
        }
        let told = all.into_iter().map(|(wrong, as_set)| Short::Check {
            name: wrong.check,
            runs: wrong.runs,
            parts: wrong.parts,
            as_set,
        });
        self.short.extend(told);
    }
}
