//! What a search knows: limits, budgets, ranges, and the problem at given currents. [`super::giving_up`] tells what no size suffices
//! for, [`super::answer`] finds an answer that holds, [`super::mesh`] betters it where the network is meshed, [`super::bound`] finds a
//! bound below it and looks at what lies between until both meet, [`super::why`] tells what keeps each thing from being less.

use super::frontier::Made;
use super::judging::Excused;
use super::measure::{AtPoint, Bench, Measured, fixed_drops, governing, scenes};
use super::mesh::{Mesh, POINTS};
use super::no_worse::no_worse;
use super::program::Program;
use super::shape::{Judged, Lead, Shape, Side};
use super::speakers::Leads;
use super::steps::pause;
use super::things::{Is, Thing, Things, conducts};
use super::{Ask, Limit, Short, Sizing, report};
use checks::Asks;
use circuit::{Study, Trial, TrialNet};
use model::{PartId, Settings, Sheet};
use ordered::{OrderedMap, OrderedSet};
use std::cell::Cell;

/// Checks whose limits are reckoned with in the walk.
pub(super) const RECKONED: &[&str] = &[
    "overloaded-run",
    "fuse-outsizes-wire",
    "fuse-undersized",
    "return-too-thin",
    "voltage-drop",
];
/// So much may an answer lie above the bound and still be the same, in mm²·m or hundredths: what ratings weigh between equals.
pub(super) const ALIKE: f64 = 4e-5;
/// By so much budgets of the bound are widened, as a share: the engine settles heat and currents in a few rounds.
const ROUNDING: f64 = 2e-4;

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

/// Everything that a search knows.
pub(super) struct Search<'a> {
    /// What the engine knows of the sheet as it is.
    pub(super) study: &'a Study,
    /// The thickest wires with the least ratings, until they were asked about.
    pub(super) generous: Option<Vec<usize>>,
    pub(super) bench: Bench<'a>,
    pub(super) shape: Shape,
    pub(super) limits: Limits,
    /// By operating point, the most that may be lost to each load: wider where the thickest wires do not suffice there.
    pub(super) drops: Vec<OrderedMap<PartId, f64>>,
    pub(super) short: Vec<Short>,
    /// Runs that bear their current with no size.
    pub(super) hopeless: OrderedSet<usize>,
    /// What the checks find whatever is chosen.
    pub(super) excused: Vec<Excused>,
    /// Devices whose ratings cannot be what the loads need at the worst, with the one that they get at the least: what the loads need as
    /// set, they carry.
    pub(super) relaxed: OrderedMap<usize, usize>,
    /// By variable: of the ground lead of an amplifier, the resistance of its contact.
    pub(super) contacts: Vec<Option<f64>>,
    /// Parts that are on with the thickest wires, by operating point.
    pub(super) on: Vec<OrderedSet<PartId>>,
    /// By how much currents may be less than with the thickest wires.
    pub(super) shrink: f64,
    /// By variable: the same with what of its current such loads draw at the most.
    pub(super) shares: Vec<f64>,
    /// Variables that the checks want larger than all else does.
    pub(super) raised: Vec<usize>,
    /// By variable: of a device the largest rating that is in question: the one that it has, or the least that its loads need. A rating
    /// is no means of saving metal: larger fuses resist less, but nobody fits one that the loads do not ask for.
    pub(super) ratings: Vec<usize>,
    /// Room that the walks over the forest work in.
    pub(super) room: Cell<Made>,
}

/// What was ruled out on the way to an answer: choices of each variable below its floor, and a part of the drop to loads.
#[derive(Clone)]
pub(super) struct Tightened {
    pub(super) floor: Vec<usize>,
    pub(super) spare: OrderedMap<PartId, f64>,
}

impl Tightened {
    pub(super) fn none(count: usize) -> Self {
        Self {
            floor: vec![0; count],
            spare: OrderedMap::new(),
        }
    }
}

/// What the next answer is looked for with: what flows with an earlier one.
pub(super) struct Flow {
    pub(super) measured: Measured,
    /// By tree, the operating point that its drops are reckoned at.
    pub(super) points: Vec<usize>,
    pub(super) fixed: OrderedMap<PartId, f64>,
}

pub(super) async fn search(sheet: &Sheet, settings: &Settings, ask: &Ask<'_>) -> Sizing {
    let mut laid = body::lay(sheet, settings);
    let mut study = circuit::study_laid(&laid, settings);
    pause().await;
    let mut asks = checks::asks(&laid, settings, &study);
    // What a speaker gets decides what its amplifier draws: its leads come first.
    let leads_of_speakers = Leads::of(&laid, settings, &study, &asks, ask).await;
    let before = laid.clone();
    for (id, lead) in &leads_of_speakers.sized {
        if laid.runs.get(id).is_some_and(|run| *run != lead.to) {
            laid.to_mut().runs.insert(*id, lead.to.clone());
        }
    }
    if laid != before {
        study = circuit::study_laid(&laid, settings);
        asks = checks::asks(&laid, settings, &study);
    }
    pause().await;
    let things = Things::new(&laid, settings, &study, &asks, ask);
    let net = TrialNet::of(&laid, settings);
    let leads = leads(&laid, settings, &asks, &things);
    let judged = Judged {
        sheet: &laid,
        ratings: study
            .devices
            .iter()
            .map(|device| device.rating.map(|amps| amps.0))
            .collect(),
        bears: laid
            .runs
            .keys()
            .map(|id| study.runs.get(id)?.allowable.map(|amps| amps.0))
            .collect(),
        leads,
    };
    let shape = Shape::new(net.net(), &things, &asks, &judged);
    let limit = |key: &str, otherwise: f64| checks::limit(settings, key).unwrap_or(otherwise);
    let limits = Limits {
        heat: limit("ampacity-factor", 1.0).max(0.01),
        fuse: limit("fuse-wire-factor", 1.0).max(0.01),
        share: limit("continuous-load-share", 0.8).max(0.01),
        ending: limit("joint-power", f64::INFINITY),
        lead: limit("ground-lead-resistance", f64::INFINITY),
    };
    let mut contacts = vec![None; things.vars.len()];
    for (run, ohms) in asks.leads.iter().filter_map(|lead| lead.to_body) {
        let place = laid.runs.keys().position(|other| *other == run);
        if let Some(var) = place.and_then(|place| things.of_run.get(place).copied().flatten()) {
            contacts[var] = Some(ohms.0);
        }
    }
    let scenes = scenes(settings, ask.as_set);
    let mut it = Search {
        study: &study,
        generous: None,
        bench: Bench {
            laid: &laid,
            trials: Trial::all(&net, &scenes),
            set: Vec::new(),
            judged: 0,
            last_wrong: 0,
            scenes,
            things: &things,
            asks: &asks,
            devices: study.devices.iter().map(|device| device.device.clone()).collect(),
            asked: 0,
        },
        shape,
        limits,
        drops: Vec::new(),
        short: leads_of_speakers.short.clone(),
        hopeless: OrderedSet::new(),
        excused: Vec::new(),
        relaxed: OrderedMap::new(),
        contacts,
        on: Vec::new(),
        shrink: 1.0,
        shares: Vec::new(),
        raised: Vec::new(),
        room: Cell::default(),
        ratings: things
            .vars
            .iter()
            .map(|var| {
                let Thing::Device(place) = var.thing else { return 0 };
                let has = study.devices.get(place).and_then(|device| device.rating);
                let fits = |choice: &super::things::Choice| has.is_some_and(|has| choice.amps() <= has.0);
                var.choices.iter().rposition(fits).unwrap_or(0)
            })
            .collect(),
    };
    let found = it.run().await;
    let mut sizing = report::report(&before, &it, ask, found, &leads_of_speakers);
    no_worse(sheet, settings, &mut sizing).await;
    sizing
}

/// The ground rules, with what stays as it is in them.
fn leads(laid: &Sheet, settings: &Settings, asks: &Asks, things: &Things) -> Vec<Lead> {
    let Some(ratio) = checks::limit(settings, "return-over-feed") else {
        return Vec::new();
    };
    let side = |id: &model::RunId| {
        let place = laid.runs.keys().position(|other| other == id)?;
        let run = laid.runs.get(id)?;
        Some(match things.of_run.get(place).copied().flatten() {
            Some(var) => Side::Var(var),
            None => Side::Stays(Some(conducts(run)).filter(|conducts| *conducts > 0.0)?),
        })
    };
    let all = asks.leads.iter().filter_map(|lead| {
        Some(Lead {
            amplifier: lead.amplifier,
            feeds: lead.feeds.iter().map(side).collect::<Option<_>>()?,
            backs: lead.backs.iter().map(side).collect::<Option<_>>()?,
            ratio,
        })
    });
    all.filter(|lead| lead.vars().next().is_some()).collect()
}

/// An answer.
#[derive(Clone)]
pub(super) struct Found {
    pub(super) picks: Vec<usize>,
    /// What flows with it.
    pub(super) measured: Measured,
}

/// What a search found.
pub(super) struct FoundSizes {
    pub(super) picks: Vec<usize>,
    /// By variable, what keeps it from being one choice less.
    pub(super) limits: Vec<Limit>,
    pub(super) bound: f64,
    pub(super) proved: bool,
}

impl Search<'_> {
    pub(super) fn vars(&self) -> &[super::things::Var] {
        &self.bench.things.vars
    }

    /// What a choice costs.
    pub(super) fn cost(&self, picks: &[usize]) -> f64 {
        let all = self.vars().iter().zip(picks);
        all.filter_map(|(var, pick)| var.choices.get(*pick))
            .map(|choice| choice.cost)
            .sum()
    }

    /// Whether every variable's current follows from the loads alone.
    pub(super) fn is_forest(&self) -> bool {
        let apart = |var: usize| !self.shape.fits[var] && !self.shape.loads[var].is_empty();
        !self.shape.meshed.iter().any(|meshed| *meshed) && !(0..self.vars().len()).any(apart)
    }

    async fn run(&mut self) -> Option<FoundSizes> {
        let mut top: Vec<usize> = self.vars().iter().map(super::things::Var::last).collect();
        let now = self.bench.measure(&[]).await;
        let mut at_top = self.bench.measure(&top).await;
        let answered: Vec<bool> = at_top.points.iter().map(|point| point.answered).collect();
        if answered.contains(&false) {
            let as_set = answered.first() == Some(&true);
            self.short.push(Short::NoAnswer { as_set });
            if !as_set {
                return None;
            }
            // What can be held as set is.
            self.bench.leave_out(&answered);
            at_top = self.bench.measure(&top).await;
        }
        self.drops = vec![self.asked_drops(); at_top.points.len()];
        self.rate(&at_top);
        // The thickest that is in question: no rating is larger than it has to be.
        for (top, most) in top.iter_mut().zip(self.vars().iter().zip(&self.ratings)) {
            if !most.0.is_run() {
                *top = *most.1;
            }
        }
        let at_top = self.bench.measure(&top).await;
        self.on = at_top.points.iter().map(|point| point.on.clone()).collect();
        self.rate(&at_top);
        let now = now
            .points
            .iter()
            .zip(&answered)
            .filter(|(_, answered)| **answered);
        let now: Vec<&AtPoint> = now.map(|(point, _)| point).collect();
        self.give_up(&at_top, &now);
        self.shrink = self.least_share(&at_top);
        self.shares = self.least_shares(&at_top);
        let mut generous = top.clone();
        for (var, (first, _)) in self.range(&at_top, 1.0, &[]).into_iter().enumerate() {
            if !self.vars()[var].is_run() {
                generous[var] = first;
            }
        }
        self.generous = Some(generous.clone());
        let flow = self.flow(at_top, &top);
        let found = self.answer(&flow, generous.clone()).await;
        let mesh = Mesh::of(self, &flow, &top).await;
        let (found, bound, proved) = self.prove(&mesh, flow, found, &generous).await;
        let (found, limits) = self.reasons(found).await;
        let bound = bound.min(self.cost(&found.picks));
        self.tell_excused();
        Some(FoundSizes {
            picks: found.picks,
            limits,
            bound,
            proved,
        })
    }

    /// Raises the largest ratings in question to what the loads need when so much flows.
    pub(super) fn rate(&mut self, measured: &Measured) {
        for var in 0..self.ratings.len() {
            self.ratings[var] = self.ratings[var].max(self.least_rating(var, measured).0);
        }
    }

    pub(super) fn flow(&self, measured: Measured, picks: &[usize]) -> Flow {
        let points = governing(&measured, &self.shape, &self.drops);
        let fixed = fixed_drops(&self.shape, self.bench.things, &measured, &points, picks);
        Flow {
            measured,
            points,
            fixed,
        }
    }

    /// What may be lost to each load.
    fn asked_drops(&self) -> OrderedMap<PartId, f64> {
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

    /// The problem of an answer: in a mesh one that is near to the best will do, since it is no proof.
    pub(super) fn good_program(
        &self,
        flow: &Flow,
        range: Vec<(usize, usize)>,
        tight: &Tightened,
    ) -> Program<'_> {
        let mut program = self.program(flow, range, Some(tight));
        if !self.is_forest() {
            program.points = Some(POINTS);
        }
        program
    }

    pub(super) fn program(
        &self,
        flow: &Flow,
        range: Vec<(usize, usize)>,
        tight: Option<&Tightened>,
    ) -> Program<'_> {
        let share = if tight.is_some() { 1.0 } else { self.shrink };
        let drops = self.bench.things.vars.iter().enumerate().map(|(var, it)| {
            let point = flow.points.get(self.shape.tree[var]).copied().unwrap_or(0);
            let at = &flow.measured.points[point];
            let carries = self.shape.fits[var];
            let share = if tight.is_some() { 1.0 } else { self.shares[var] };
            let (rms, burst) = (at.rms[var] * share, at.burst[var] * share);
            let lost = |choice: &super::things::Choice| if carries { burst * choice.ohms(rms) } else { 0.0 };
            it.choices.iter().map(lost).collect()
        });
        let drops: Vec<Vec<f64>> = drops.collect();
        // What is lost in the thickest.
        let mut least = vec![0.0; self.shape.leaves.len()];
        for (var, drops) in drops.iter().enumerate() {
            let lost = drops.get(range[var].1).copied().unwrap_or(0.0);
            for leaf in &self.shape.loads[var] {
                least[*leaf] += lost;
            }
        }
        let leaves = self.shape.leaves.iter().zip(&least).enumerate();
        let budget = leaves.map(|(leaf, ((_, part), least))| {
            let found = part.and_then(|part| {
                let point = flow.points.get(self.shape.tree_of_leaf[leaf]?)?;
                Some((part, *flow.fixed.get(&part)?, self.most_lost(*point, part)?))
            });
            let Some((part, fixed, limit)) = found else {
                return f64::INFINITY;
            };
            match tight {
                // What passes with no choice here is looked for elsewhere.
                Some(tight) => {
                    (limit - fixed - tight.spare.get(&part).copied().unwrap_or(0.0)).max(1.02 * least)
                }
                None => limit * (1.0 + ROUNDING) - fixed * share,
            }
        });
        Program {
            shape: &self.shape,
            vars: &self.bench.things.vars,
            drops,
            range,
            budget: budget.collect(),
            factor: self.limits.fuse,
            free: vec![false; self.vars().len()],
            points: None,
            hopeful: false,
            most: f64::INFINITY,
            traced: true,
            room: &self.room,
        }
    }
}

pub(super) fn var_of(side: &Side) -> Option<usize> {
    match side {
        Side::Var(var) => Some(*var),
        Side::Stays(_) => None,
    }
}

/// How often it may be asked what flows with a whole choice to prove an answer: less for a large sheet.
pub(super) fn most_questions(parts: usize) -> usize {
    (6_000 / parts.max(1)).clamp(90, 300)
}
