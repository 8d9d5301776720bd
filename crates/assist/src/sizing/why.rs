//! What keeps each thing from being one choice less: the limit that is told is one that the lesser choice breaks.

use super::Limit;
use super::measure::{Measured, Wrong};
use super::search::{Found, Search};
use super::things::Thing;

/// Most times that all is asked.
const MOST_PASSES: usize = 4;

impl Search<'_> {
    /// What keeps each thing from being less. What turns out to hold with less is laid so.
    pub(super) async fn reasons(&mut self, mut found: Found) -> (Found, Vec<Limit>) {
        let most = self.bench.judged + most_judged(self.bench.laid.parts.len());
        let mut limits = Vec::new();
        // What was laid with less lets others be so, or takes current off them in a mesh: then all is asked once more.
        for _ in 0..MOST_PASSES {
            let before = found.picks.clone();
            limits.clear();
            for var in 0..found.picks.len() {
                limits.push(self.reason(&mut found, var, most).await);
            }
            if found.picks == before {
                break;
            }
        }
        (found, limits)
    }

    /// What keeps a thing from being less, once it is laid with as little as holds.
    async fn reason(&mut self, found: &mut Found, var: usize, most: usize) -> Limit {
        loop {
            let Some(less) = found.picks[var].checked_sub(1) else {
                return Limit::Smallest;
            };
            let choices = &self.vars()[var].choices;
            if choices[less].cost >= choices[found.picks[var]].cost {
                return Limit::Price;
            }
            if let Some(limit) = self.by_itself(found, var, less) {
                return limit;
            }
            let mut picks = found.picks.clone();
            picks[var] = less;
            let (mut wrong, measured) = self.wrong_or_measured(&picks, &found.measured).await;
            if wrong.is_empty() && self.bench.judged < most {
                wrong = self.wrong_by_checks(&picks).await;
                if wrong.is_empty() {
                    *found = Found { picks, measured };
                    continue;
                }
            }
            return match wrong.first() {
                Some(wrong) => self.limit_of(var, wrong, &measured, less),
                None => Limit::Together,
            };
        }
    }

    /// What can be told without asking what flows.
    fn by_itself(&self, found: &Found, var: usize, less: usize) -> Option<Limit> {
        let measured = &found.measured;
        if !self.vars()[var].is_run() {
            return None;
        }
        // Thinner it would carry a little less, in a mesh much less: what is near to the edge is measured.
        let share = if self.shape.meshed[var] { 0.0 } else { 0.98 };
        let firsts = self.firsts(var, measured.rms[var] * share);
        if let Some((_, limit)) = firsts.into_iter().find(|(first, _)| *first > less) {
            return Some(limit);
        }
        let bears = self.amps(var, less);
        for device in &self.shape.bears[var] {
            if self.amps(*device, found.picks[*device]) > bears
                && let Thing::Device(place) = &self.vars()[*device].thing
                && let Some(device) = self.bench.devices.get(*place)
            {
                return Some(Limit::Fuse(device.clone()));
            }
        }
        let conducts = |other: usize| {
            let pick = if other == var { less } else { found.picks[other] };
            self.vars()[other].choices[pick].conducts()
        };
        let mut leads = self.shape.leads.iter();
        let lead = leads.find(|lead| lead.vars().any(|other| other == var) && !lead.holds(conducts));
        lead.map(|lead| Limit::Ground(lead.amplifier))
    }

    /// What is wrong with the lesser choice, as a limit of the thing itself where it is one.
    fn limit_of(&self, var: usize, wrong: &Wrong, measured: &Measured, less: usize) -> Limit {
        let is_own = match &self.vars()[var].thing {
            Thing::Run(run, _) => wrong.runs.contains(run),
            Thing::Device(place) => {
                let device = self.bench.devices.get(*place);
                device.is_some_and(|device| wrong.parts.contains(&device.part))
            }
        };
        match wrong.check {
            "voltage-drop" => match wrong.parts.first() {
                Some(load) => Limit::Drop(*load),
                None => Limit::Check(wrong.check),
            },
            "overloaded-run" if is_own => {
                let firsts = self.firsts(var, measured.rms[var]);
                let first = firsts.into_iter().find(|(first, _)| *first > less);
                first.map_or(Limit::Heat, |(_, limit)| limit)
            }
            "fuse-undersized" if is_own => {
                let amps = self.vars()[var].choices[less].amps();
                if measured.rms[var] > amps * self.limits.share {
                    Limit::Load
                } else {
                    Limit::Burst
                }
            }
            check => Limit::Check(check),
        }
    }
}

/// How often all checks may be asked whether something holds with less.
pub(super) fn most_judged(parts: usize) -> usize {
    (3_000 / parts.max(1)).clamp(20, 200)
}
