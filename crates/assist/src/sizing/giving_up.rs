//! What no size suffices for: told, and asked for no more, so that the rest can still be sized.

use super::Short;
use super::measure::{Measured, Wrong};
use super::search::{Search, var_of};
use super::things::{Choice, Thing};
use model::PartId;

/// What a load may lose that loses too much with the thickest wires, over that: so near to it that everything on its way is laid as thick as
/// can be serves nobody.
const HOPELESS: f64 = 1.1;

impl Search<'_> {
    /// What no choice suffices for is told, and asked for no more.
    pub(super) fn give_up(&mut self, top: &Measured) {
        for (var, it) in self.bench.things.vars.iter().enumerate() {
            let Some(last) = it.choices.last() else { continue };
            match &it.thing {
                Thing::Run(run, _) => {
                    if top.rms[var] > last.amps() * self.limits.heat {
                        self.hopeless.insert(var);
                        self.short.push(Short::Heat {
                            run: *run,
                            by_terminal: it.by_terminal,
                        });
                    }
                    if let Some((rating, device)) = self.shape.bears_fixed[var]
                        && rating > last.amps() * self.limits.fuse
                    {
                        self.shape.bears_fixed[var] = None;
                        let device = self.bench.devices[device].clone();
                        self.short.push(Short::Fuse { run: *run, device });
                    }
                }
                Thing::Device(place) => {
                    let device = self.bench.devices[*place].clone();
                    let (first, suffices) = self.least_rating(var, top);
                    if !suffices {
                        self.short.push(Short::Rating {
                            device: device.clone(),
                        });
                    }
                    let rating = it.choices.get(first).map_or(0.0, Choice::amps);
                    if let Some((bears, place)) = self.shape.guards_fixed[var]
                        && rating > bears * self.limits.fuse
                    {
                        self.shape.guards_fixed[var] = None;
                        if let Some((run, _)) = self.bench.laid.runs.at(place) {
                            self.short.push(Short::Fuse { run: *run, device });
                        }
                    }
                }
            }
        }
        self.give_up_pairs(top);
        self.give_up_drops(top);
    }

    /// Pairs of a run and a device of which the thickest does not bear the least, and ground rules that cannot be kept.
    fn give_up_pairs(&mut self, top: &Measured) {
        let range = self.range(top, 1.0, &[]);
        for var in 0..self.bench.things.vars.len() {
            let Thing::Run(run, _) = self.bench.things.vars[var].thing else {
                continue;
            };
            let most = self.amps(var, self.bench.things.vars[var].last());
            let fails: Vec<usize> = self.shape.bears[var]
                .iter()
                .copied()
                .filter(|device| self.amps(*device, range[*device].0) > most)
                .collect();
            for device in fails {
                self.shape.bears[var].retain(|other| *other != device);
                self.shape.held[var].retain(|other| *other != device);
                if let Thing::Device(place) = &self.bench.things.vars[device].thing {
                    let device = self.bench.devices[*place].clone();
                    self.short.push(Short::Fuse { run, device });
                }
            }
        }
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

    /// Loads whose drop passes its limit with the thickest: they are not to lose much more, or than they do now.
    fn give_up_drops(&mut self, top: &Measured) {
        let lost = |measured: &Measured, load: PartId| {
            let all = measured
                .points
                .iter()
                .filter_map(|point| point.drops.get(&load).copied());
            all.fold(0.0, f64::max)
        };
        let over: Vec<(PartId, f64, f64)> = self
            .drops
            .iter()
            .map(|(load, limit)| (*load, lost(top, *load), *limit))
            .filter(|(_, drop, limit)| drop > limit)
            .collect();
        if over.is_empty() {
            return;
        }
        for (load, drop, limit) in over {
            self.short.push(Short::Drop { load, drop, limit });
            let now = self.bench.lost_as_laid(load);
            self.drops.insert(load, now.max(drop * HOPELESS));
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
        for wrong in self.bench.findings(&generous).await {
            if self.excused.iter().any(|other| other.like(&wrong)) {
                continue;
            }
            if !told.contains(&wrong.check) {
                self.tell(&wrong);
            }
            self.excused.push(wrong);
        }
        self.bench.settle();
    }

    /// What nothing that can be chosen clears: told, and asked for no more.
    pub(super) fn excuse_one(&mut self, wrong: &Wrong) {
        if !self.excused.iter().any(|other| other.like(wrong)) {
            self.tell(wrong);
            self.excused.push(wrong.clone());
        }
    }

    pub(super) fn tell(&mut self, wrong: &Wrong) {
        self.short.push(Short::Check {
            name: wrong.check,
            runs: wrong.runs.clone(),
            parts: wrong.parts.clone(),
        });
    }
}
