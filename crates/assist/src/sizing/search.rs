//! What a search knows, and the order in which it looks. [`super::needs`] tells what each thing needs by itself, [`super::problem`] what the
//! walk over the forest is asked. [`super::giving_up`] tells what no size suffices for, [`super::answer`] finds an answer that holds, [`super::mesh`] betters it where the network is meshed, [`super::bound`] finds a
//! bound below it and looks at what lies between until both meet, [`super::why`] tells what keeps each thing from being less.

use super::frontier::Made;
use super::judging::Excused;
use super::measure::{AtPoint, Bench, Measured, scenes};
use super::mesh::Mesh;
use super::needs::Limits;
use super::no_worse::no_worse;
use super::shape::{Judged, Lead, Shape, Side};
use super::speakers::Leads;
use super::steps::pause;
use super::things::{Thing, Things, conducts};
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
        limits: Limits::of(settings),
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
