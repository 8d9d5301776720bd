//! What a search knows: limits, budgets, what no size suffices for, and what is wrong with a choice. [`super::answer`] finds an
//! answer that holds, [`super::bound`] a bound below it, and what lies between is looked at until both meet.

use super::measure::{Bench, Measured, Wrong, fixed_drops, governing, scenes};
use super::program::Program;
use super::shape::{Judged, Lead, Shape, Side};
use super::things::{Is, Thing, Things, conducts};
use super::{Ask, Limit, Short, Sizing, report};
use checks::Asks;
use circuit::network::Network;
use model::kinds::sound::SupplyLaw;
use model::kinds::supply::LoadLaw;
use model::{PartId, PartKind, Settings, Sheet};
use ordered::{OrderedMap, OrderedSet};

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
    pub(super) bench: Bench<'a>,
    pub(super) shape: Shape,
    pub(super) limits: Limits,
    /// Most that may be lost to each load, wider where the thickest wires do not suffice.
    pub(super) drops: OrderedMap<PartId, f64>,
    pub(super) short: Vec<Short>,
    /// Runs that bear their current with no size.
    pub(super) hopeless: OrderedSet<usize>,
    /// What the checks find whatever is chosen.
    pub(super) excused: Vec<Wrong>,
    /// By variable: of the ground lead of an amplifier, the resistance of its contact.
    pub(super) contacts: Vec<Option<f64>>,
    /// Parts that are on with the thickest wires, by operating point.
    pub(super) on: Vec<OrderedSet<PartId>>,
    /// By how much currents may be less than with the thickest wires.
    pub(super) shrink: f64,
    /// Loads whose drop the bound leaves out, since a mesh has a part in it.
    pub(super) open: OrderedSet<PartId>,
    /// By variable: of a device the largest rating that is in question: the one that it has, or the least that its loads need. A rating
    /// is no means of saving metal: larger fuses resist less, but nobody fits one that the loads do not ask for.
    pub(super) ratings: Vec<usize>,
}

/// The floor of each variable, with what raised it there.
#[derive(Clone)]
pub(super) struct Tightened {
    pub(super) floor: Vec<(usize, Option<&'static str>)>,
    pub(super) spare: OrderedMap<PartId, f64>,
}

/// What the next answer is looked for with: what flows with an earlier one.
pub(super) struct Flow {
    pub(super) measured: Measured,
    /// By tree, the operating point that its drops are reckoned at.
    pub(super) points: Vec<usize>,
    pub(super) fixed: OrderedMap<PartId, f64>,
}

pub(super) fn search(sheet: &Sheet, settings: &Settings, ask: &Ask<'_>) -> Sizing {
    let laid = body::lay(sheet, settings);
    let study = circuit::study_laid(&laid, settings);
    let asks = checks::asks(&laid, settings, &study);
    let things = Things::new(&laid, settings, &study, &asks, ask);
    let net = Network::build_on(&laid, &body::Metal::of(&laid, settings));
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
    let shape = Shape::new(&net, &things, &asks, &judged);
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
    let mut it = Search {
        bench: Bench {
            laid: &laid,
            scenes: scenes(settings, ask.as_set),
            things: &things,
            asks: &asks,
            devices: study.devices.iter().map(|device| device.device.clone()).collect(),
            asked: 0,
        },
        shape,
        limits,
        drops: asks.drops.iter().map(|(load, volts)| (*load, volts.0)).collect(),
        short: Vec::new(),
        hopeless: OrderedSet::new(),
        excused: Vec::new(),
        contacts,
        on: Vec::new(),
        shrink: 1.0,
        open: OrderedSet::new(),
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
    let found = it.run();
    report::report(sheet, &it, &study, ask, found)
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

/// What a search found.
pub(super) struct FoundSizes {
    pub(super) picks: Vec<usize>,
    pub(super) measured: Measured,
    /// What raised the floor of each variable, where a check did.
    pub(super) raised: Vec<Option<&'static str>>,
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

    fn run(&mut self) -> Option<FoundSizes> {
        let top: Vec<usize> = self.vars().iter().map(super::things::Var::last).collect();
        let sheet = self.bench.with(&top);
        let at_top = self.bench.measure(&sheet);
        if !at_top.answered {
            self.short.push(Short::NoAnswer);
            return None;
        }
        self.on = at_top.points.iter().map(on).collect();
        self.shrink = self.least_share(&at_top);
        self.find_open(&at_top);
        self.rate(&at_top);
        self.give_up(&at_top);
        let mut generous = top.clone();
        for (var, (first, _)) in self.range(&at_top, 1.0, &[]).into_iter().enumerate() {
            if !self.vars()[var].is_run() {
                generous[var] = first;
            }
        }
        self.excuse(&generous);
        let flow = self.flow(at_top, &top);
        let (picks, measured, raised) = self.answer(&flow, generous);
        let (picks, measured, bound, proved) = self.prove(flow, picks, measured);
        Some(FoundSizes {
            picks,
            measured,
            raised,
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

    /// The least share of their currents with the thickest wires that runs can carry: loads that draw by resistance draw less at
    /// a lower voltage, by as much as may be lost. What they then leave the others is a part of that part.
    fn least_share(&self, top: &Measured) -> f64 {
        let by_resistance = |kind: &PartKind| match kind {
            PartKind::Load(load) => load.law == LoadLaw::Resistance,
            PartKind::Amplifier(amplifier) => amplifier.supply == SupplyLaw::Unregulated,
            _ => false,
        };
        let mut lost: f64 = 0.0;
        for point in &top.points {
            for (load, drop) in &point.drops {
                let kind = self.bench.laid.parts.get(load).map(|part| &part.is);
                let volts = point.study.parts.get(load).and_then(|flow| flow.burst_voltage);
                let (true, Some(volts)) = (kind.is_some_and(by_resistance), volts) else {
                    continue;
                };
                let limit = self.drops.get(load).copied().unwrap_or(0.0);
                lost = lost.max((limit - drop).max(0.0) / volts.0.max(1.0));
            }
        }
        (1.0 - 1.1 * lost).max(0.5)
    }

    /// Loads to which the way leads through something that is meshed.
    fn find_open(&mut self, top: &Measured) {
        let mut loose: OrderedSet<model::RunId> = OrderedSet::new();
        for (var, it) in self.bench.things.vars.iter().enumerate() {
            if let Thing::Run(id, _) = &it.thing
                && (self.shape.meshed[var] || !self.shape.fits[var])
            {
                loose.insert(*id);
            }
        }
        let Some(point) = top.points.first().filter(|_| !loose.is_empty()) else {
            return;
        };
        for (load, circuit) in &point.study.circuits {
            let there = circuit.feeds.iter().map(|way| &way.on_any_way);
            let back = circuit.returns.iter().map(|way| &way.on_any_way);
            if there
                .chain(back)
                .any(|runs| runs.iter().any(|run| loose.contains(run)))
            {
                self.open.insert(*load);
            }
        }
    }

    /// What no choice suffices for is told, and asked for no more.
    fn give_up(&mut self, top: &Measured) {
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
                    let rating = it.choices.get(first).map_or(0.0, super::things::Choice::amps);
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

    /// Loads whose drop passes its limit with the thickest: they are not to lose more than they do now.
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
        let now = self.bench.measure(self.bench.laid);
        for (load, drop, limit) in over {
            self.short.push(Short::Drop { load, drop, limit });
            self.drops.insert(load, lost(&now, load).max(drop * 1.02));
        }
    }

    /// What the checks find with the thickest wires and the least ratings is no matter of sizes.
    fn excuse(&mut self, generous: &[usize]) {
        let sheet = self.bench.with(generous);
        let measured = self.bench.measure(&sheet);
        let found = self.bench.findings(&sheet, &measured);
        let told = [
            "voltage-drop",
            "overloaded-run",
            "fuse-outsizes-wire",
            "fuse-undersized",
        ];
        for wrong in found.into_iter().map(Wrong::of) {
            if self.excused.iter().any(|other| other.like(&wrong)) {
                continue;
            }
            if !told.contains(&wrong.check) {
                self.tell(&wrong);
            }
            self.excused.push(wrong);
        }
    }

    pub(super) fn tell(&mut self, wrong: &Wrong) {
        self.short.push(Short::Check {
            name: wrong.check,
            runs: wrong.runs.clone(),
            parts: wrong.parts.clone(),
        });
    }

    /// The first rating that passes what a device carries, and whether there is one.
    fn least_rating(&self, var: usize, measured: &Measured) -> (usize, bool) {
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
        let first = it.choices.iter().position(|choice| {
            measured.rms[var] <= choice.amps() * self.limits.share
                && measured.burst[var] <= choice.amps() * opens
        });
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
    pub(super) fn range(
        &self,
        measured: &Measured,
        share: f64,
        floor: &[(usize, Option<&str>)],
    ) -> Vec<(usize, usize)> {
        let mut out = Vec::with_capacity(self.bench.things.vars.len());
        for (var, it) in self.bench.things.vars.iter().enumerate() {
            let mut last = it.last();
            let mut first = if it.is_run() {
                // What a mesh carries may be anything, and so nothing is asked of it for the bound.
                let rms = if share < 1.0 && self.shape.meshed[var] {
                    0.0
                } else {
                    measured.rms[var] * share
                };
                self.firsts(var, rms)
                    .iter()
                    .map(|(first, _)| *first)
                    .fold(0, usize::max)
            } else {
                let least = self.least_rating(var, measured).0;
                last = self.ratings[var].max(least);
                least
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
            if let Some((floor, _)) = floor.get(var) {
                first = first.max((*floor).min(last));
            }
            out.push((first, last));
        }
        out
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
        let budget = self.shape.leaves.iter().zip(&least).map(|((_, part), least)| {
            let found = part.and_then(|part| Some((part, *flow.fixed.get(&part)?, *self.drops.get(&part)?)));
            let Some((part, fixed, limit)) = found else {
                return f64::INFINITY;
            };
            match tight {
                // What passes with no choice here is looked for elsewhere.
                Some(tight) => {
                    (limit - fixed - tight.spare.get(&part).copied().unwrap_or(0.0)).max(1.02 * least)
                }
                None if self.open.contains(&part) => f64::INFINITY,
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
            free: None,
        }
    }

    /// What is wrong with a choice, and what flows with it.
    pub(super) fn wrong(&mut self, picks: &[usize]) -> (Vec<Wrong>, Measured) {
        let sheet = self.bench.with(picks);
        let measured = self.bench.measure(&sheet);
        let mut all = self.wrong_at_once(picks, &measured);
        if all.is_empty() {
            let found = self.bench.findings(&sheet, &measured);
            all.extend(found.into_iter().map(Wrong::of));
            all.retain(|wrong| {
                !self.excused.iter().any(|excused| excused.like(wrong)) && !self.is_widened(wrong)
            });
        }
        (all, measured)
    }

    /// A drop that was widened, which was looked at by itself.
    fn is_widened(&self, wrong: &Wrong) -> bool {
        let widened = |load: &PartId| {
            let asked = self.bench.asks.drops.get(load).map(|volts| volts.0);
            asked.is_some() && asked != self.drops.get(load).copied()
        };
        wrong.check == "voltage-drop" && wrong.parts.iter().all(widened)
    }

    /// What is told by limits alone, without the checks.
    fn wrong_at_once(&self, picks: &[usize], measured: &Measured) -> Vec<Wrong> {
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
        if !measured.answered {
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
        for (point, on_before) in measured.points.iter().zip(&self.on) {
            for (load, drop) in &point.drops {
                if self.drops.get(load).is_some_and(|limit| drop > limit) {
                    add("voltage-drop", None, Some(*load));
                }
            }
            let now = on(point);
            for part in on_before.iter().filter(|part| !now.contains(*part)) {
                add("supply-collapse", None, Some(*part));
            }
        }
        all
    }
}

pub(super) fn var_of(side: &Side) -> Option<usize> {
    match side {
        Side::Var(var) => Some(*var),
        Side::Stays(_) => None,
    }
}

/// The parts that are on.
fn on(point: &super::measure::AtPoint) -> OrderedSet<PartId> {
    let all = point.study.parts.iter().filter(|(_, flow)| flow.on == Some(true));
    all.map(|(id, _)| *id).collect()
}

/// How often the engine may be asked to prove an answer: less for a large sheet.
pub(super) fn most_questions(parts: usize) -> usize {
    (4_000 / parts.max(1)).clamp(6, 400)
}
