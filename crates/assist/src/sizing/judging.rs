//! What is wrong with a choice: by the limits alone, which costs little, and by all checks.

use super::measure::{Measured, Wrong};
use super::search::{Search, var_of};
use super::things::Thing;
use model::{PartId, RunId};
use ordered::{OrderedMap, Sort as _};

impl Search<'_> {
    /// What is wrong with a choice, and what flows with it.
    pub(super) async fn wrong(&mut self, picks: &[usize]) -> (Vec<Wrong>, Measured) {
        let measured = self.bench.measure(picks).await;
        let mut all = self.wrong_at_once(picks, &measured);
        if all.is_empty() {
            all = self.wrong_by_checks(picks).await;
        }
        (all, measured)
    }

    /// What is told by limits alone of a choice that is near to another, and what flows with it. Operating points are looked at from the
    /// one on at which the other comes nearest to a limit, and no more once something is wrong; what flows is then told of those alone.
    pub(super) async fn wrong_or_measured(
        &mut self,
        picks: &[usize],
        near: &Measured,
    ) -> (Vec<Wrong>, Measured) {
        self.bench.lay(picks);
        let share = |at: usize| {
            let lost = near.points[at].drops.iter();
            let shares = lost.filter_map(|(load, drop)| Some(drop / self.most_lost(at, *load)?.max(1e-9)));
            shares.fold(0.0, f64::max)
        };
        let mut order: Vec<(f64, usize)> = (0..near.points.len()).map(|at| (share(at), at)).collect();
        order.order_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
        let count = near.rms.len();
        let mut measured = Measured {
            rms: vec![0.0; count],
            burst: vec![0.0; count],
            points: near.points.clone(),
        };
        for (_, at) in order {
            let Some(point) = self.bench.look(at).await else {
                continue;
            };
            measured.hold(&point);
            measured.points[at] = point;
            let wrong = self.wrong_at_once(picks, &measured);
            if !wrong.is_empty() {
                return (wrong, measured);
            }
        }
        (Vec::new(), measured)
    }

    /// What the checks find wrong with a choice, and not with the thickest as well.
    pub(super) async fn wrong_by_checks(&mut self, picks: &[usize]) -> Vec<Wrong> {
        self.wrong_by(picks, usize::MAX).await
    }

    /// The same at the operating point alone where something was wrong last.
    pub(super) async fn wrong_where_last(&mut self, picks: &[usize]) -> Vec<Wrong> {
        self.wrong_by(picks, 1).await
    }

    async fn wrong_by(&mut self, picks: &[usize], scenes: usize) -> Vec<Wrong> {
        loop {
            let (excused, drops, asked) = (&self.excused, &self.drops, &self.bench.asks.drops);
            let counts = |at: usize, wrong: &Wrong| {
                !is_excused(excused, at, wrong)
                    && !drops.get(at).is_some_and(|drops| is_widened(wrong, drops, asked))
            };
            let all = self.bench.first_findings(picks, scenes, counts).await;
            if all.is_empty() || self.generous.is_none() {
                return all;
            }
            // What they find with the thickest as well is told from now on, and asked for no more.
            self.excuse().await;
        }
    }
}

/// Something that the checks find whatever is chosen, and the operating points at which they do.
pub(super) struct Excused {
    pub(super) wrong: Wrong,
    pub(super) at: Vec<usize>,
    /// Whether it is told already, as a limit that cannot be met.
    pub(super) is_told: bool,
}

/// Whether all that it says is found there whatever is chosen.
pub(super) fn is_excused(excused: &[Excused], at: usize, wrong: &Wrong) -> bool {
    let mut same = excused
        .iter()
        .filter(|it| it.at.contains(&at) && it.wrong.check == wrong.check);
    // With other sizes most is lost in another run: a drop is that of its loads.
    if wrong.runs.is_empty() || wrong.check == "voltage-drop" {
        let knows = |part: &PartId| same.clone().any(|it| it.wrong.parts.contains(part));
        wrong.parts.iter().all(knows) && same.next().is_some()
    } else {
        let knows = |run: &RunId| same.clone().any(|it| it.wrong.runs.contains(run));
        wrong.runs.iter().all(knows)
    }
}

/// A drop that was widened, which was looked at by itself.
fn is_widened(
    wrong: &Wrong,
    drops: &OrderedMap<PartId, f64>,
    asked: &OrderedMap<PartId, model::quantity::Volts>,
) -> bool {
    let widened = |load: &PartId| {
        let asked = asked.get(load).map(|volts| volts.0);
        asked.is_some() && asked != drops.get(load).copied()
    };
    wrong.check == "voltage-drop" && wrong.parts.iter().all(widened)
}

impl Search<'_> {
    /// What is told by limits alone, without the checks.
    pub(super) fn wrong_at_once(&self, picks: &[usize], measured: &Measured) -> Vec<Wrong> {
        let mut all = Vec::new();
        let mut add = |check: &'static str, var: Option<usize>, part: Option<PartId>| {
            let run = var.and_then(|var| match &self.bench.things.vars[var].thing {
                Thing::Run(run, _) => Some(*run),
                Thing::Device(_) => None,
            });
            let device = var.and_then(|var| match &self.bench.things.vars[var].thing {
                Thing::Device(place) => self.bench.devices.get(*place).map(|device| device.part),
                Thing::Run(..) => None,
            });
            all.push(Wrong {
                check,
                runs: run.into_iter().collect(),
                parts: device.or(part).into_iter().collect(),
            });
        };
        if measured.points.iter().any(|point| !point.answered) {
            add("supply-collapse", None, None);
        }
        for (var, it) in self.bench.things.vars.iter().enumerate() {
            if it.is_run() {
                let first = self.firsts(var, measured.rms[var]);
                if !self.hopeless.contains(&var)
                    && measured.rms[var] > it.choices[picks[var]].amps() * self.limits.heat
                {
                    add("overloaded-run", Some(var), None);
                }
                if picks[var] < first[2].0 {
                    add("fuse-outsizes-wire", Some(var), None);
                }
                let bears = self.amps(var, picks[var]);
                if self.shape.bears[var]
                    .iter()
                    .any(|device| self.amps(*device, picks[*device]) > bears)
                {
                    add("fuse-outsizes-wire", Some(var), None);
                }
            } else if picks[var] < self.least_rating(var, measured).0 {
                add("fuse-undersized", Some(var), None);
            }
        }
        for lead in &self.shape.leads {
            if !lead.holds(|var| self.bench.things.vars[var].choices[picks[var]].conducts()) {
                let var = lead.backs.iter().find_map(var_of);
                add("return-too-thin", var, Some(lead.amplifier));
            }
        }
        for ((at, point), on_before) in measured.points.iter().enumerate().zip(&self.on) {
            for (load, drop) in &point.drops {
                if self.most_lost(at, *load).is_some_and(|limit| *drop > limit) {
                    add("voltage-drop", None, Some(*load));
                }
            }
            for part in on_before.iter().filter(|part| !point.on.contains(*part)) {
                add("supply-collapse", None, Some(*part));
            }
        }
        all
    }
}
