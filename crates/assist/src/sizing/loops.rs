//! Leads that several voice coils share, side by side or one through the other: the sizes of least cost with which no speaker loses more level
//! than the profile allows and each lead bears what it carries at full power. All that could cost less is looked at, as far as
//! [`MOST_LOOKS`] allow: a part of the choices is left out where it fails even with the thickest in all that is open yet.

use super::speakers::{Lead, Leads};
use super::steps::pause;
use super::things::{Choice, Is, held_run, wires};
use super::{Ask, By, Held, Limit, Short};
use checks::Asks;
use circuit::speakers::LeadNet;
use model::{PartId, RunId, Settings, Sheet};
use ordered::{OrderedMap, Sort as _};

/// Most times that it is asked what the leads of one piece do.
const MOST_LOOKS: usize = 4_000;
/// Looks between two pauses.
const LOOKS_AT_ONCE: usize = 32;
/// Thicker leads to one coil take a little from the others beside it, by no more than the share of its voltage that is lost: by so much
/// more may be lost where a part of the choices is to be left out.
const BESIDE: f64 = 1.1;
/// What a speaker may lose that loses too much with the thickest leads, over that.
const HOPELESS: f64 = 1.1;

/// A piece whose leads are chosen.
struct Loops<'n, 's> {
    net: &'n mut LeadNet<'s>,
    piece: usize,
    /// Leads, those first whose choices differ most in cost, with their choices and what each of them resists.
    runs: Vec<(RunId, Vec<Choice>, Vec<f64>)>,
    /// By lead: the first choice that bears what it carries.
    first: Vec<usize>,
    /// By speaker, in dB.
    limits: OrderedMap<PartId, f64>,
    looks: usize,
    /// The best so far.
    best: (f64, Vec<usize>),
}

impl Loops<'_, '_> {
    fn look(&mut self, picks: &[usize]) -> circuit::speakers::Leads {
        self.looks += 1;
        let ohms = self
            .runs
            .iter()
            .zip(picks)
            .map(|((id, _, ohms), pick)| (*id, ohms[*pick]));
        self.net.lay(self.piece, &ohms.collect());
        self.net.look(self.piece)
    }

    /// How much more is lost to the speaker that loses most over its limit, over that limit times this.
    fn over(&mut self, picks: &[usize], times: f64) -> f64 {
        let lost = self.look(picks).lost;
        let over = |(id, lost): (&PartId, &model::quantity::Decibels)| {
            self.limits
                .get(id)
                .map_or(f64::NEG_INFINITY, |limit| lost.0 - limit * times)
        };
        lost.iter().map(over).fold(f64::NEG_INFINITY, f64::max)
    }

    fn cost(&self, picks: &[usize]) -> f64 {
        self.runs
            .iter()
            .zip(picks)
            .map(|((_, choices, _), pick)| choices[*pick].cost)
            .sum()
    }

    fn last(&self) -> Vec<usize> {
        self.runs
            .iter()
            .map(|(_, choices, _)| choices.len() - 1)
            .collect()
    }

    /// A good choice: from the thinnest on, the next size where it takes most off what is lost too much for its cost.
    async fn good(&mut self) -> Option<Vec<usize>> {
        let (mut picks, last) = (self.first.clone(), self.last());
        loop {
            let now = self.over(&picks, 1.0);
            if now <= 0.0 {
                return Some(picks);
            }
            pause().await;
            let mut best: Option<(f64, usize)> = None;
            for at in (0..picks.len()).filter(|at| picks[*at] < last[*at]) {
                let mut next = picks.clone();
                next[at] += 1;
                let gained = now - self.over(&next, 1.0);
                let cost = (self.cost(&next) - self.cost(&picks)).max(1e-9);
                if best.is_none_or(|(most, _)| gained / cost > most) {
                    best = Some((gained / cost, at));
                }
            }
            picks[best?.1] += 1;
        }
    }

    /// Looks at all that could cost less than the best so far, with the leads before this one chosen.
    async fn better(&mut self, at: usize, picks: &mut Vec<usize>) {
        let rest = |it: &Self| -> f64 {
            let least = |(choices, first): (&[Choice], &usize)| {
                let own = choices.get(*first..).unwrap_or_default().iter();
                own.map(|choice| choice.cost).fold(f64::INFINITY, f64::min)
            };
            let after = it.runs.iter().map(|(_, choices, _)| &**choices).zip(&it.first);
            after.skip(at + 1).map(least).sum()
        };
        let last = self.last();
        let before: f64 = self.cost(&picks[..at]);
        for pick in self.first[at]..=last[at] {
            let cost = before + self.runs[at].1[pick].cost + rest(self);
            if cost >= self.best.0 - 1e-9 {
                continue;
            }
            if self.looks >= MOST_LOOKS {
                return;
            }
            picks.truncate(at);
            picks.push(pick);
            if self.looks.is_multiple_of(LOOKS_AT_ONCE) {
                pause().await;
            }
            let is_whole = picks.len() == self.runs.len();
            let times = if is_whole { 1.0 } else { BESIDE };
            let mut thickest = last.clone();
            thickest[..=at].copy_from_slice(picks);
            if self.over(&thickest, times) > 0.0 {
                continue;
            }
            if is_whole {
                self.best = (cost, picks.clone());
            } else {
                // In a box, as it calls itself.
                Box::pin(self.better(at + 1, picks)).await;
            }
        }
        picks.truncate(at);
    }

    /// What keeps a lead from being one size less.
    fn limit(&mut self, at: usize) -> Limit {
        let pick = self.best.1[at];
        let choices = &self.runs[at].1;
        match pick.checked_sub(1) {
            None => Limit::Smallest,
            Some(less) if choices[less].cost >= choices[pick].cost => Limit::Price,
            Some(less) if less < self.first[at] => Limit::Heat,
            Some(less) => {
                let mut picks = self.best.1.clone();
                picks[at] = less;
                if self.over(&picks, 1.0) > 0.0 {
                    Limit::Check("lead-loss")
                } else {
                    Limit::Together
                }
            }
        }
    }
}

impl Leads {
    /// Sizes leads of a piece of the speaker side.
    pub(super) async fn size_piece(
        &mut self,
        (laid, settings): (&Sheet, &Settings),
        (asks, ask): (&Asks, &Ask<'_>),
        net: &mut LeadNet<'_>,
        piece: usize,
        leads: &[RunId],
    ) {
        let factor = checks::limit(settings, "ampacity-factor")
            .unwrap_or(1.0)
            .max(0.01);
        let as_laid = net.look(piece).lost;
        let mut runs: Vec<(RunId, Vec<Choice>, Vec<f64>)> = Vec::new();
        for id in leads {
            let Some(run) = laid.runs.get(id) else { continue };
            let largest = asks.runs.get(id).and_then(|asked| asked.largest);
            let choices = if held_run(run).is_some() {
                Vec::new()
            } else {
                wires(laid, settings, run, largest, ask).0
            };
            if choices.is_empty() {
                let by_price = matches!(ask.by, By::Cost(_));
                let none = if by_price { Held::NoPrice } else { Held::NoneFits };
                self.held.push((*id, held_run(run).unwrap_or(none)));
                continue;
            }
            let ohms = choices.iter().map(|choice| match &choice.is {
                Is::Wire { run, .. } => LeadNet::resists(run),
                Is::Rating { .. } => 0.0,
            });
            let ohms = ohms.collect();
            runs.push((*id, choices, ohms));
        }
        let spread = |choices: &[Choice]| Some(choices.last()?.cost - choices.first()?.cost);
        runs.order_by(|a, b| {
            let by_cost = spread(&b.1)
                .unwrap_or(0.0)
                .total_cmp(&spread(&a.1).unwrap_or(0.0));
            by_cost.then(a.0.cmp(&b.0))
        });
        if runs.is_empty() {
            return;
        }
        let mut it = Loops {
            net,
            piece,
            first: vec![0; runs.len()],
            runs,
            limits: OrderedMap::new(),
            looks: 0,
            best: (f64::INFINITY, Vec::new()),
        };
        // No lead carries more than with the thickest.
        let thickest = it.look(&it.last());
        for (at, (id, choices, _)) in it.runs.iter().enumerate() {
            let amps = thickest.amps.get(id).map_or(0.0, |amps| amps.0);
            let bears = choices.iter().position(|choice| choice.amps() * factor >= amps);
            it.first[at] = bears.unwrap_or(choices.len() - 1);
        }
        if let Some(limit) = checks::limit(settings, "lead-loss") {
            for (speaker, lost) in &thickest.lost {
                let now = as_laid.get(speaker).map_or(0.0, |lost| lost.0);
                let most = if lost.0 <= limit {
                    limit * (1.0 - 1e-9)
                } else {
                    self.short.push(Short::Check {
                        name: "lead-loss",
                        runs: it.runs.iter().map(|(id, ..)| *id).collect(),
                        parts: vec![*speaker],
                        as_set: false,
                    });
                    now.max(lost.0 * HOPELESS)
                };
                it.limits.insert(*speaker, most);
            }
        }
        it.best.1 = it.good().await.unwrap_or_else(|| it.last());
        it.best.0 = it.cost(&it.best.1);
        it.better(0, &mut Vec::new()).await;
        self.proved &= it.looks < MOST_LOOKS;
        for at in 0..it.runs.len() {
            let limit = it.limit(at);
            let (id, choices, _) = &it.runs[at];
            let choice = &choices[it.best.1[at]];
            if it.looks >= MOST_LOOKS {
                self.unsure += choice.cost - choices[it.first[at]].cost;
            }
            if let Some(lead) = Lead::of(choice, limit) {
                self.sized.insert(*id, lead);
            }
        }
    }
}
