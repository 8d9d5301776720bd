//! The search: an answer that holds, a bound below it, and what lies between looked at until both meet.

use super::measure::{Bench, Measured, Wrong, fixed_drops, governing, scenes};
use super::program::{Answer, Program};
use super::shape::{Judged, Lead, Shape, Side};
use super::things::{Is, Thing, Things, conducts};
use super::{Ask, Limit, Short, Sizing, report};
use checks::Asks;
use circuit::network::Network;
use model::kinds::sound::SupplyLaw;
use model::kinds::supply::LoadLaw;
use model::{PartId, PartKind, Settings, Sheet};
use ordered::{OrderedMap, OrderedSet, Sort as _};

/// Checks whose limits are reckoned with in the walk.
const RECKONED: &[&str] = &[
    "overloaded-run",
    "fuse-outsizes-wire",
    "fuse-undersized",
    "return-too-thin",
    "voltage-drop",
];
/// Most rounds until an answer holds.
const MOST_ROUNDS: usize = 24;
/// Steps between an answer that does not hold and one that does.
const HALVES: usize = 16;
/// So much may an answer lie above the bound and still be the same, in mm²·m or hundredths: what ratings weigh between equals.
const ALIKE: f64 = 4e-5;
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
    hopeless: OrderedSet<usize>,
    /// What the checks find whatever is chosen.
    excused: Vec<Wrong>,
    /// By variable: of the ground lead of an amplifier, the resistance of its contact.
    contacts: Vec<Option<f64>>,
    /// Parts that are on with the thickest wires, by operating point.
    on: Vec<OrderedSet<PartId>>,
    /// By how much currents may be less than with the thickest wires.
    shrink: f64,
    /// Loads whose drop the bound leaves out, since a mesh has a part in it.
    open: OrderedSet<PartId>,
    /// By variable: of a device the largest rating that is in question: the one that it has, or the least that its loads need. A rating
    /// is no means of saving metal: larger fuses resist less, but nobody fits one that the loads do not ask for.
    ratings: Vec<usize>,
}

/// The floor of each variable, with what raised it there.
#[derive(Clone)]
struct Tightened {
    floor: Vec<(usize, Option<&'static str>)>,
    spare: OrderedMap<PartId, f64>,
}

/// What the next answer is looked for with: what flows with an earlier one.
struct Flow {
    measured: Measured,
    /// By tree, the operating point that its drops are reckoned at.
    points: Vec<usize>,
    fixed: OrderedMap<PartId, f64>,
}

/// A part of all choices, and the best that could be in it.
struct Part {
    range: Vec<(usize, usize)>,
    answer: Answer,
    /// Whether the currents were found for this very part.
    own: bool,
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
    fn rate(&mut self, measured: &Measured) {
        for var in 0..self.ratings.len() {
            self.ratings[var] = self.ratings[var].max(self.least_rating(var, measured).0);
        }
    }

    fn flow(&self, measured: Measured, picks: &[usize]) -> Flow {
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

    fn tell(&mut self, wrong: &Wrong) {
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
    fn range(&self, measured: &Measured, share: f64, floor: &[(usize, Option<&str>)]) -> Vec<(usize, usize)> {
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

    fn program(&self, flow: &Flow, range: Vec<(usize, usize)>, tight: Option<&Tightened>) -> Program<'_> {
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
    fn wrong(&mut self, picks: &[usize]) -> (Vec<Wrong>, Measured) {
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

    /// An answer that holds: each from the currents of the one before it, with what is wrong with that ruled out.
    fn answer(
        &mut self,
        top: &Flow,
        generous: Vec<usize>,
    ) -> (Vec<usize>, Measured, Vec<Option<&'static str>>) {
        let count = self.bench.things.vars.len();
        let mut tight = Tightened {
            floor: vec![(0, None); count],
            spare: OrderedMap::new(),
        };
        let mut flow: Option<Flow> = None;
        let mut last = vec![0; count];
        let mut seen: OrderedSet<Vec<usize>> = OrderedSet::new();
        for round in 0..MOST_ROUNDS {
            let answer = {
                let flow = flow.as_ref().unwrap_or(top);
                let range = self.range(&flow.measured, 1.0, &tight.floor);
                self.program(flow, range, Some(&tight)).solve()
            };
            let Some(answer) = answer else { break };
            last.clone_from(&answer.picks);
            let (wrong, mut measured) = self.wrong(&answer.picks);
            if wrong.is_empty() {
                let raised = tight
                    .floor
                    .iter()
                    .zip(&answer.picks)
                    .map(|((floor, why), pick)| why.filter(|_| floor == pick))
                    .collect();
                return (answer.picks, measured, raised);
            }
            self.rate(&measured);
            // What is reckoned with mends by the next currents; not what comes again, nor what only a check knows.
            let again = !seen.insert(answer.picks.clone());
            let known = |wrong: &&Wrong| !again && RECKONED.contains(&wrong.check) && !self.is_loose(wrong);
            let others: Vec<Wrong> = wrong.iter().filter(|wrong| !known(wrong)).cloned().collect();
            self.tighten(&mut tight, &others, &answer.picks, &measured);
            // Where answers follow one another in a ring, the larger currents of both.
            if round >= 2
                && let Some(flow) = &flow
            {
                keep_larger(&mut measured, &flow.measured);
            }
            flow = Some(self.flow(measured, &answer.picks));
        }
        let (picks, measured) = self.between(&last, generous);
        (picks, measured, vec![None; count])
    }

    /// An answer that holds between one that does not and the most generous one: by halving, then thing by thing.
    fn between(&mut self, thin: &[usize], generous: Vec<usize>) -> (Vec<usize>, Measured) {
        let most = self.bench.asked + most_questions(self.bench.laid.parts.len());
        let (_, measured) = self.wrong(&generous);
        let mut best = (generous.clone(), measured);
        let (mut low, mut high) = (0_usize, HALVES);
        while high - low > 1 {
            let middle = (low + high) / 2;
            let part = |(thin, thick): (&usize, &usize)| {
                thin + (thick.saturating_sub(*thin) * middle).div_ceil(HALVES)
            };
            let picks: Vec<usize> = thin.iter().zip(&generous).map(part).collect();
            let (wrong, measured) = self.wrong(&picks);
            if wrong.is_empty() {
                best = (picks, measured);
                high = middle;
            } else {
                low = middle;
            }
        }
        self.thin_out(best, most)
    }

    /// Lays each run as thin as it still holds, the one that saves most first.
    fn thin_out(&mut self, mut best: (Vec<usize>, Measured), most: usize) -> (Vec<usize>, Measured) {
        let saves = |picks: &[usize], var: usize| {
            let choices = &self.bench.things.vars[var].choices;
            let pick = picks[var];
            let less = pick.checked_sub(1).and_then(|less| choices.get(less));
            less.map_or(0.0, |less| choices[pick].cost - less.cost)
        };
        let mut order: Vec<(f64, usize)> = (0..best.0.len())
            .filter(|var| self.bench.things.vars[*var].is_run())
            .map(|var| (saves(&best.0, var), var))
            .collect();
        order.order_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
        for (_, var) in order {
            while best.0[var] > 0 && self.bench.asked < most {
                let mut picks = best.0.clone();
                picks[var] -= 1;
                let (wrong, measured) = self.wrong(&picks);
                if !wrong.is_empty() {
                    break;
                }
                best = (picks, measured);
            }
        }
        best
    }

    /// Whether what is wrong is with something in a mesh, whose currents move.
    fn is_loose(&self, wrong: &Wrong) -> bool {
        let loose = |var: usize| self.shape.meshed[var] || !self.shape.fits[var];
        let marked = |(var, it): (usize, &super::things::Var)| {
            matches!(&it.thing, Thing::Run(run, _) if wrong.runs.contains(run)) && loose(var)
        };
        self.vars().iter().enumerate().any(marked) || wrong.parts.iter().any(|part| self.open.contains(part))
    }

    /// Rules out what is wrong with a choice.
    fn tighten(&mut self, tight: &mut Tightened, wrong: &[Wrong], picks: &[usize], measured: &Measured) {
        let wrong_before = |at: usize, it: &Wrong| wrong.iter().take(at).any(|other| other == it);
        for (at, wrong) in wrong.iter().enumerate() {
            // The same at several operating points is one.
            if wrong_before(at, wrong) {
                continue;
            }
            let mut done = false;
            for part in &wrong.parts {
                let Some(limit) = self.drops.get(part).copied() else {
                    continue;
                };
                let lost = measured
                    .points
                    .iter()
                    .filter_map(|point| point.drops.get(part).copied());
                let over = lost.fold(0.0, f64::max) - limit;
                let spare = match wrong.check {
                    "voltage-drop" if over > 0.0 => over + 1e-6,
                    "supply-collapse" => 0.1 * limit,
                    _ => continue,
                };
                if self.open.contains(part) {
                    done |= self.raise_on_way(tight, *part, picks, measured, wrong.check);
                } else {
                    *tight.spare.entry(*part).or_default() += spare;
                    done = true;
                }
            }
            if done {
                continue;
            }
            for var in self.to_raise(wrong, picks, measured) {
                let last = self.bench.things.vars[var].last();
                if picks[var] < last {
                    let floor = &mut tight.floor[var];
                    *floor = (floor.0.max(picks[var] + 1), Some(wrong.check));
                    done = true;
                }
            }
            if !done && !self.excused.iter().any(|other| other.like(wrong)) {
                self.tell(wrong);
                self.excused.push(wrong.clone());
            }
        }
    }

    /// On the way to a load, the next size for the run in which it gains most for its metal.
    fn raise_on_way(
        &self,
        tight: &mut Tightened,
        load: PartId,
        picks: &[usize],
        measured: &Measured,
        check: &'static str,
    ) -> bool {
        let lost = |point: &super::measure::AtPoint| point.drops.get(&load).copied().unwrap_or(0.0);
        let worst = measured.points.iter().max_by(|a, b| lost(a).total_cmp(&lost(b)));
        let Some(point) = worst else { return false };
        let Some(circuit) = point.study.circuits.get(&load) else {
            return false;
        };
        let on_way = |id: &model::RunId| {
            circuit.feeds.iter().any(|way| way.on_any_way.contains(id))
                || circuit.returns.iter().any(|way| way.on_any_way.contains(id))
        };
        let gain = |var: usize| {
            let it = &self.bench.things.vars[var];
            let (now, next) = (it.choices.get(picks[var])?, it.choices.get(picks[var] + 1)?);
            let (rms, burst) = (point.rms[var], point.burst[var]);
            let saved = burst * (now.ohms(rms) - next.ohms(rms));
            Some(saved / (next.cost - now.cost).max(1e-9))
        };
        let best = (0..self.bench.things.vars.len())
            .filter(|var| matches!(&self.bench.things.vars[*var].thing, Thing::Run(id, _) if on_way(id)))
            .filter_map(|var| Some((gain(var)?, var)))
            .max_by(|a, b| a.0.total_cmp(&b.0).then(b.1.cmp(&a.1)));
        let Some((_, var)) = best.filter(|(gain, _)| *gain > 0.0) else {
            return false;
        };
        let floor = &mut tight.floor[var];
        *floor = (floor.0.max(picks[var] + 1), Some(check));
        true
    }

    /// The variables that may clear what is wrong: runs and devices that it marks, else the ground leads of its parts.
    fn to_raise(&self, wrong: &Wrong, picks: &[usize], measured: &Measured) -> Vec<usize> {
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

    /// Raises the bound to the answer, or lowers the answer to the bound, as far as so many questions to the engine allow.
    fn prove(
        &mut self,
        top: Flow,
        picks: Vec<usize>,
        measured: Measured,
    ) -> (Vec<usize>, Measured, f64, bool) {
        let most = self.bench.asked + most_questions(self.bench.laid.parts.len());
        let mut best = (self.cost(&picks), picks, measured);
        let range = self.range(&top.measured, self.shrink.min(1.0 - f64::EPSILON), &[]);
        let Some(answer) = self.program(&top, range.clone(), None).solve() else {
            return (best.1, best.2, 0.0, false);
        };
        let mut open = vec![Part {
            range,
            answer,
            own: false,
        }];
        let mut flow = top;
        let bound = loop {
            // The cheapest last.
            open.order_by(|a, b| {
                b.answer
                    .cost
                    .total_cmp(&a.answer.cost)
                    .then_with(|| b.range.cmp(&a.range))
            });
            let Some(mut part) = open.pop() else { break best.0 };
            if part.answer.cost >= best.0 - ALIKE {
                break best.0;
            }
            if self.bench.asked >= most || !self.is_forest() {
                break part.answer.cost;
            }
            if !part.own {
                self.narrow(&flow, &mut part, best.0);
                let thickest: Vec<usize> = part.range.iter().map(|(_, last)| *last).collect();
                let sheet = self.bench.with(&thickest);
                let measured = self.bench.measure(&sheet);
                flow = self.flow(measured, &thickest);
                let own = self.range(&flow.measured, self.shrink.min(1.0 - f64::EPSILON), &[]);
                for (range, own) in part.range.iter_mut().zip(own) {
                    range.0 = range.0.max(own.0);
                }
                if let Some(answer) = self.program(&flow, part.range.clone(), None).solve() {
                    let cost = answer.cost.max(part.answer.cost);
                    part.answer = Answer { cost, ..answer };
                    part.own = true;
                    open.push(part);
                }
                continue;
            }
            let (wrong, measured) = self.wrong(&part.answer.picks);
            let cost = self.cost(&part.answer.picks);
            if wrong.is_empty() {
                if cost < best.0 - ALIKE {
                    best = (cost, part.answer.picks, measured);
                }
                continue;
            }
            for range in self.others(&part, &wrong) {
                if let Some(answer) = self.program(&flow, range.clone(), None).solve()
                    && answer.cost < best.0 - ALIKE
                {
                    let cost = answer.cost.max(part.answer.cost);
                    open.push(Part {
                        range,
                        answer: Answer { cost, ..answer },
                        own: false,
                    });
                }
            }
        };
        let proved = self.is_forest() && bound >= best.0 - ALIKE;
        (best.1, best.2, bound.min(best.0), proved)
    }

    /// What is left of a part once its best answer is known to be wrong, in parts that do not overlap.
    fn others(&self, part: &Part, wrong: &[Wrong]) -> Vec<Vec<(usize, usize)>> {
        let picks = &part.answer.picks;
        let mut all = Vec::new();
        let mut rest = part.range.clone();
        let mut add =
            |rest: &mut Vec<(usize, usize)>, var: usize, other: (usize, usize), stays: (usize, usize)| {
                if other.0 <= other.1 {
                    let mut range = rest.clone();
                    range[var] = other;
                    all.push(range);
                }
                rest[var] = stays;
            };
        // A run that does not bear the rating of a device: a thicker one, or a lesser rating.
        for (run, devices) in self.shape.bears.iter().enumerate() {
            for device in devices {
                let (device, (run_pick, device_pick)) = (*device, (picks[run], picks[*device]));
                if self.amps(device, device_pick) > self.amps(run, run_pick) {
                    let (of_run, of_device) = (rest[run], rest[device]);
                    add(&mut rest, run, (run_pick + 1, of_run.1), (of_run.0, run_pick));
                    if let Some(less) = device_pick.checked_sub(1) {
                        add(&mut rest, device, (of_device.0, less), (device_pick, of_device.1));
                    }
                    return all;
                }
            }
        }
        // All that is nowhere thicker is wrong as well: in what is left something is thicker. What carries the current of what
        // is wrong comes first: in the parts that are left for the others it is no thicker, and there they cannot mend it.
        let has_part = |var: &usize| {
            let parts = || wrong.iter().flat_map(|wrong| &wrong.parts);
            let mut loads = self.shape.loads[*var]
                .iter()
                .filter_map(|leaf| self.shape.leaves[*leaf].1);
            loads.any(|part| parts().any(|other| *other == part))
        };
        let marked = |var: &usize| match &self.vars()[*var].thing {
            Thing::Run(run, _) => wrong.iter().any(|wrong| wrong.runs.contains(run)),
            Thing::Device(_) => false,
        };
        let mut order: Vec<usize> = (0..picks.len()).collect();
        order.order_by_key(|var| !(marked(var) || has_part(var)));
        for var in order {
            let (pick, (first, last)) = (picks[var], rest[var]);
            add(&mut rest, var, (pick + 1, last), (first, pick));
        }
        all
    }

    /// Leaves out what costs more than the best answer even if all others cost their least.
    fn narrow(&self, flow: &Flow, part: &mut Part, best: f64) {
        let mut program = self.program(flow, part.range.clone(), None);
        for var in 0..program.range.len() {
            let (first, last) = program.range[var];
            if !self.vars()[var].is_run() || first >= last {
                continue;
            }
            program.free = Some(var);
            let Some(others) = program.solve() else { continue };
            let left = best - others.cost + ALIKE;
            let dear = self.vars()[var]
                .choices
                .iter()
                .rposition(|choice| choice.cost <= left);
            let last = dear.unwrap_or(first).clamp(first, last);
            program.range[var].1 = last;
            part.range[var].1 = last;
        }
    }
}

fn var_of(side: &Side) -> Option<usize> {
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

fn keep_larger(measured: &mut Measured, other: &Measured) {
    let larger = |a: &mut Vec<f64>, b: &[f64]| a.iter_mut().zip(b).for_each(|(a, b)| *a = a.max(*b));
    larger(&mut measured.rms, &other.rms);
    larger(&mut measured.burst, &other.burst);
    for (point, other) in measured.points.iter_mut().zip(&other.points) {
        larger(&mut point.rms, &other.rms);
        larger(&mut point.burst, &other.burst);
    }
}

/// How often the engine may be asked to prove an answer: less for a large sheet.
fn most_questions(parts: usize) -> usize {
    (4_000 / parts.max(1)).clamp(6, 400)
}
