//! What each thing needs by itself at what flows: the first choice that heat, endings and what guards it allow; and what is in question.

use super::Limit;
use super::measure::Measured;
use super::search::Search;
use super::things::{Is, Thing};
use model::{PartId, Settings};
use ordered::OrderedMap;

/// The limits that are asked for once.
#[derive(Clone, Copy, Debug)]
pub(super) struct Limits {
    /// Steady current over what a wire bears.
    pub(super) heat: f64,
    /// Rating over what a wire bears.
    pub(super) fuse: f64,
    /// Steady current over rating.
    pub(super) share: f64,
    /// Power in an ending, in W.
    pub(super) ending: f64,
    /// Resistance of the ground lead of an amplifier, with its contact, in Ω.
    pub(super) lead: f64,
}

impl Limits {
    /// Those of a profile.
    pub(super) fn of(settings: &Settings) -> Self {
        let limit = |key: &str, otherwise: f64| checks::limit(settings, key).unwrap_or(otherwise);
        Self {
            heat: limit("ampacity-factor", 1.0).max(0.01),
            fuse: limit("fuse-wire-factor", 1.0).max(0.01),
            share: limit("continuous-load-share", 0.8).max(0.01),
            ending: limit("joint-power", f64::INFINITY),
            lead: limit("ground-lead-resistance", f64::INFINITY),
        }
    }
}

impl Search<'_> {
    /// Raises the largest ratings in question to what the loads need when so much flows.
    pub(super) fn rate(&mut self, measured: &Measured) {
        for var in 0..self.ratings.len() {
            self.ratings[var] = self.ratings[var].max(self.least_rating(var, measured).0);
        }
    }

    /// What may be lost to each load.
    pub(super) fn asked_drops(&self) -> OrderedMap<PartId, f64> {
        let all = self.bench.asks.drops.iter();
        all.map(|(load, volts)| (*load, volts.0)).collect()
    }

    /// The most that may be lost to a load at an operating point.
    pub(super) fn most_lost(&self, point: usize, load: PartId) -> Option<f64> {
        self.drops.get(point)?.get(&load).copied()
    }

    /// The first rating that passes what a device carries, and whether there is one. Of one that cannot be what the worst asks for, what it
    /// carries as set.
    pub(super) fn least_rating(&self, var: usize, measured: &Measured) -> (usize, bool) {
        let worst = self.first_rating(var, measured.rms[var], measured.burst[var]);
        match (self.relaxed.get(&var), measured.points.first()) {
            (Some(least), Some(as_set)) => {
                let (first, suffices) = self.first_rating(var, as_set.rms[var], as_set.burst[var]);
                (first.max(*least).min(worst.0), suffices)
            }
            _ => worst,
        }
    }

    /// The first rating that passes these currents, steady and at bursts, and whether there is one.
    pub(super) fn first_rating(&self, var: usize, rms: f64, burst: f64) -> (usize, bool) {
        let it = &self.bench.things.vars[var];
        let Thing::Device(place) = &it.thing else {
            return (0, true);
        };
        let opens = self
            .bench
            .asks
            .devices
            .get(*place)
            .map_or(1.35, |asked| asked.opens_at);
        let first = it
            .choices
            .iter()
            .position(|choice| rms <= choice.amps() * self.limits.share && burst <= choice.amps() * opens);
        first.map_or((it.last(), false), |first| (first, true))
    }

    /// What a run bears, as ratings are held against it; the rating of a device.
    pub(super) fn amps(&self, var: usize, pick: usize) -> f64 {
        let it = &self.bench.things.vars[var];
        let amps = it.choices.get(pick).map_or(0.0, super::things::Choice::amps);
        if it.is_run() {
            amps * self.limits.fuse
        } else {
            amps
        }
    }

    /// The first choice of a run that this allows, and the last.
    pub(super) fn first(&self, var: usize, allows: impl Fn(&super::things::Choice) -> bool) -> usize {
        let it = &self.bench.things.vars[var];
        it.choices.iter().position(allows).unwrap_or(it.last())
    }

    /// The first choice of a run at this steady current, for heat, endings and fixed ratings.
    pub(super) fn firsts(&self, var: usize, rms: f64) -> [(usize, Limit); 4] {
        let heat = if self.hopeless.contains(&var) {
            self.bench.things.vars[var].last()
        } else {
            self.first(var, |choice| rms <= choice.amps() * self.limits.heat)
        };
        let cool = |choice: &super::things::Choice| match &choice.is {
            Is::Wire { conductor, .. } => {
                let worst = conductor.endings().iter().map(|ohms| ohms.0).fold(0.0, f64::max);
                rms * rms * worst <= self.limits.ending
            }
            Is::Rating { .. } => true,
        };
        // Where no size keeps its endings cool it is the endings that are wrong.
        let it = &self.bench.things.vars[var];
        let ending = it.choices.iter().position(cool).unwrap_or(0);
        let fixed = self.shape.bears_fixed[var];
        let fuse = fixed.map_or(0, |(rating, _)| {
            self.first(var, |choice| choice.amps() * self.limits.fuse >= rating)
        });
        let device = fixed.and_then(|(_, device)| self.bench.devices.get(device).cloned());
        let lead = self.contacts[var].and_then(|contact| {
            let short = |choice: &super::things::Choice| choice.ohms(rms) + contact <= self.limits.lead;
            it.choices.iter().position(short)
        });
        [
            (heat, Limit::Heat),
            (ending, Limit::Ending),
            (fuse, device.map_or(Limit::Heat, Limit::Fuse)),
            (lead.unwrap_or(0), Limit::Lead),
        ]
    }

    /// The choices that pass by themselves at these currents, taken at this share.
    pub(super) fn range(&self, measured: &Measured, share: f64, floor: &[usize]) -> Vec<(usize, usize)> {
        let mut out = Vec::with_capacity(self.bench.things.vars.len());
        for (var, it) in self.bench.things.vars.iter().enumerate() {
            let mut last = it.last();
            let mut first = if it.is_run() {
                // What a mesh carries may be anything, and so nothing is asked of it for the bound.
                let rms = match share < 1.0 {
                    true if self.shape.meshed[var] => 0.0,
                    true => measured.rms[var] * self.shares[var],
                    false => measured.rms[var],
                };
                self.firsts(var, rms)
                    .iter()
                    .map(|(first, _)| *first)
                    .fold(0, usize::max)
            } else {
                let least = self.least_rating(var, measured).0;
                last = self.ratings[var].max(least);
                if share < 1.0 && self.shape.meshed[var] {
                    0
                } else {
                    least
                }
            };
            if let Some((bears, _)) = self.shape.guards_fixed[var] {
                let fits = |choice: &super::things::Choice| choice.amps() <= bears * self.limits.fuse;
                last = it
                    .choices
                    .iter()
                    .rposition(fits)
                    .unwrap_or(first)
                    .clamp(first, last);
            }
            if let Some(floor) = floor.get(var) {
                first = first.max((*floor).min(last));
            }
            out.push((first, last));
        }
        out
    }
}
