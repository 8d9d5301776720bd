//! Routes that a run can take, the two best of them with what speaks for and against each; and the routes of all runs
//! together.
//!
//! A way costs its metres. A metre in the heat of the engine bay counts twice; what endangers a wire counts as the detour
//! that is worth taking to keep clear of it ([`Hazard`]); a feed beside signal leads, and a signal lead beside feeds, pays
//! for each metre of it, while signal leads to the same equipment draw each other. The weights are our own judgement of
//! common practice: feeds apart from signal leads, signal leads of one amplifier together, nothing under a seat or over a
//! hinge if there is a way round.

use crate::company::{Class, Company, Neighbour};
use crate::facts::{Facts, Hazard};
use crate::plan::Plan;
use crate::walk::{Step, Walk};
use crate::ways::Way;
use model::body::PassageKind;
use model::quantity::Metres;
use model::{Change, Edit, Run, RunId, Sheet, SheetKind};
use ordered::{OrderedMap, OrderedSet, Sort as _};
use words::{Saying, Unit, figure, say};

/// What a metre in the heat of the engine bay costs beyond its length.
const HEAT: f64 = 1.0;
/// What a metre of feed beside signal leads costs beyond its length, and the other way round.
const APART: f64 = 3.0;
/// What a metre beside other signal leads to the same equipment costs, of its length.
const TOGETHER: f64 = 0.6;
/// What bends within a gaiter made for it costs, in metres: it is the one right way over a hinge, and still wears.
const GAITER: f64 = 3.0;
/// What a hole costs that has its grommet, in metres: it has to be opened, fed through and made tight.
const GROMMET: f64 = 0.5;
/// How many ways are looked at for a second one that is worth showing.
const LOOKED_AT: usize = 12;
/// Two ways are different enough when they share less than this part of the length of either.
const ALIKE: f64 = 0.6;

/// A route that a run can take.
#[derive(Clone, Debug, PartialEq)]
pub struct Proposal {
    /// The route, as a run writes it.
    pub route: Vec<String>,
    /// The way it takes.
    pub walk: Walk,
    /// Length of the wire, ends and all.
    pub length: Metres,
    /// What it costs, in metres of harmless way.
    pub cost: f64,
    /// What endangers a wire on it: each passage that does, by its index, and how.
    pub hazards: Vec<(usize, Vec<Hazard>)>,
    /// How far it lies beside runs that it should keep away from: feeds and signal leads.
    pub beside: OrderedMap<RunId, Metres>,
    /// How far it lies beside signal leads to the same equipment.
    pub together: OrderedMap<RunId, Metres>,
    /// What speaks for and against it, in sentences.
    pub reasons: Vec<Saying>,
}

/// What a run is, for the choice of its way.
struct Wanted<'r> {
    run: &'r Run,
    is: Neighbour,
}

impl<'r> Wanted<'r> {
    fn of(sheet: &Sheet, id: RunId, run: &'r Run) -> Self {
        let is = Neighbour::of(sheet, id, run);
        Self { run, is }
    }
    /// Runs in a passage that this one should keep away from.
    fn unwelcome<'c>(&'c self, company: &'c Company, passage: usize) -> impl Iterator<Item = RunId> + 'c {
        let all = company.in_passage(passage);
        all.filter(|it| it.run != self.is.run && self.is.class.keeps_from(it.class))
            .map(|it| it.run)
    }
    /// Signal leads in a passage that belong to the same equipment.
    fn siblings<'c>(&'c self, company: &'c Company, passage: usize) -> impl Iterator<Item = RunId> + 'c {
        let all = company.in_passage(passage);
        all.filter(|it| it.run != self.is.run && !it.serves.is_disjoint(&self.is.serves))
            .map(|it| it.run)
    }
}

fn detours(facts: &Facts) -> f64 {
    facts.hazards().into_iter().map(Hazard::detour).sum()
}

/// What endangers a wire in a passage that leads neither from nor to where the run has to go.
fn hazards_of(plan: &Plan, passage: usize) -> Vec<Hazard> {
    plan.passages
        .get(passage)
        .map(|it| it.facts.hazards())
        .unwrap_or_default()
}

/// What each passage costs a run that goes between these two places.
fn costs(plan: &Plan, company: &Company, wanted: &Wanted<'_>, ends: [usize; 2]) -> Vec<f64> {
    let place = |at: usize| plan.places.get(at).map_or(0.0, |place| detours(&place.facts));
    plan.passages
        .iter()
        .enumerate()
        .map(|(at, passage)| {
            let metres = passage.metres().0;
            let hazards = passage.facts.hazards();
            let mut cost = metres;
            if wanted.siblings(company, at).next().is_some() {
                cost = metres * TOGETHER;
            }
            if hazards.contains(&Hazard::Heat) {
                cost += metres * HEAT;
            }
            // Where it begins or ends it meets what goes there too, whichever way it comes.
            let own_end = passage.ends.iter().any(|end| ends.contains(end));
            if !own_end && wanted.unwelcome(company, at).next().is_some() {
                cost += metres * APART;
            }
            cost += hazards.into_iter().map(Hazard::detour).sum::<f64>();
            match passage.kind.value() {
                // Bending is what a gaiter is for.
                Some(PassageKind::Gaiter) if passage.facts.moving.or(false) => {
                    cost += GAITER - Hazard::Moving.detour();
                }
                Some(PassageKind::Grommet) => cost += GROMMET,
                _ => {}
            }
            // Half of what each end costs, so that a place that is passed costs once. Where a run begins and ends costs
            // the same on all its ways.
            let [a, b] = passage.ends;
            cost.max(0.0) + (place(a) + place(b)) / 2.0
        })
        .collect()
}

fn walk_of(plan: &Plan, start: usize, way: &Way) -> Walk {
    let mut here = start;
    let mut steps = Vec::new();
    for passage in &way.passages {
        let across = plan.passages.get(*passage).and_then(|it| it.across(here));
        let to = across.unwrap_or(here);
        steps.push(Step {
            passage: *passage,
            from: here,
            to,
            put_in: false,
        });
        here = to;
    }
    Walk { start, steps }
}

/// Where a run has to go from and to, as places of the plan: its parts', else the ends of the route it has.
fn ends_of(plan: &Plan, sheet: &Sheet, run: &Run) -> Option<(usize, usize)> {
    let [from, to] = run.ends().map(|end| plan.place_of(sheet, end.terminal()?.part));
    let walk = || plan.walk(sheet, run).ok();
    Some(match (from, to) {
        (Some(from), Some(to)) => (from, to),
        (Some(from), None) => (from, walk()?.end()),
        (None, Some(to)) => (walk()?.start, to),
        (None, None) => {
            let walk = walk()?;
            (walk.start, walk.end())
        }
    })
}

/// The two best routes of a run, best first: the second is the best that differs in more than a corner. One where there is
/// only one, none where the run's ends have no places, or the same one.
#[must_use]
pub fn propose(plan: &Plan, sheet: &Sheet, id: RunId) -> Vec<Proposal> {
    proposed(plan, sheet, id, &|ways| {
        let Some((best, others)) = ways.split_first() else {
            return Vec::new();
        };
        let differs = |way: &&Way| shared(plan, best, way) < ALIKE;
        let other = others.iter().find(differs).or(others.first());
        std::iter::once(best).chain(other).collect()
    })
}

/// All routes of a run that are looked at, best first: for whoever wants more of a route than [`propose`] does.
#[must_use]
pub fn alternatives(plan: &Plan, sheet: &Sheet, id: RunId) -> Vec<Proposal> {
    proposed(plan, sheet, id, &|ways| ways.iter().collect())
}

fn proposed(plan: &Plan, sheet: &Sheet, id: RunId, picked: &dyn Fn(&[Way]) -> Vec<&Way>) -> Vec<Proposal> {
    let Some(run) = sheet.runs.get(&id) else {
        return Vec::new();
    };
    let Some((from, to)) = ends_of(plan, sheet, run).filter(|(from, to)| from != to) else {
        return Vec::new();
    };
    let company = Company::of(plan, sheet, &|other, _| other == id);
    let wanted = Wanted::of(sheet, id, run);
    let costs = costs(plan, &company, &wanted, [from, to]);
    let ends = plan.ends();
    let net = plan.net(&ends);
    let ways = net.ways(from, to, &costs, LOOKED_AT);
    if ways.is_empty() {
        return Vec::new();
    }
    let shortest = net.best(from, to, &plan.lengths());
    let shortest = shortest.map(|way| walk_of(plan, from, &way));
    let told = picked(&ways).into_iter().map(|way| {
        let walk = walk_of(plan, from, way);
        proposal(plan, sheet, &company, &wanted, walk, way.cost, shortest.as_ref())
    });
    told.collect()
}

/// The way that a run takes now, judged like a proposal: what it meets, what it lies beside, what speaks for and against it.
/// Nothing when it has no way, or stays at one place.
#[must_use]
pub fn assess(plan: &Plan, sheet: &Sheet, id: RunId) -> Option<Proposal> {
    let run = sheet.runs.get(&id)?;
    let walk = plan.walk(sheet, run).ok()?;
    if walk.steps.is_empty() {
        return None;
    }
    let company = Company::of(plan, sheet, &|other, _| other == id);
    let wanted = Wanted::of(sheet, id, run);
    let (from, to) = (walk.start, walk.end());
    let costs = costs(plan, &company, &wanted, [from, to]);
    let cost = walk.passages().filter_map(|passage| costs.get(passage)).sum();
    let ends = plan.ends();
    let shortest = plan.net(&ends).best(from, to, &plan.lengths());
    let shortest = shortest.map(|way| walk_of(plan, from, &way));
    Some(proposal(
        plan,
        sheet,
        &company,
        &wanted,
        walk,
        cost,
        shortest.as_ref(),
    ))
}

/// Which part of the longer of two ways is the other's too.
fn shared(plan: &Plan, a: &Way, b: &Way) -> f64 {
    let metres = |passages: &mut dyn Iterator<Item = &usize>| -> f64 {
        passages
            .filter_map(|at| plan.passages.get(*at))
            .map(|it| it.metres().0)
            .sum()
    };
    let both = metres(&mut a.passages.iter().filter(|at| b.passages.contains(at)));
    let longer = metres(&mut a.passages.iter()).max(metres(&mut b.passages.iter()));
    if longer > 0.0 { both / longer } else { 1.0 }
}

fn proposal(
    plan: &Plan,
    sheet: &Sheet,
    company: &Company,
    wanted: &Wanted<'_>,
    walk: Walk,
    cost: f64,
    shortest: Option<&Walk>,
) -> Proposal {
    let mut beside: OrderedMap<RunId, Metres> = OrderedMap::new();
    let mut together: OrderedMap<RunId, Metres> = OrderedMap::new();
    for passage in walk.passages() {
        let metres = plan.passages.get(passage).map_or(Metres::ZERO, |it| it.metres());
        for run in wanted.unwelcome(company, passage) {
            let so_far = beside.entry(run).or_default();
            *so_far = *so_far + metres;
        }
        for run in wanted.siblings(company, passage) {
            let so_far = together.entry(run).or_default();
            *so_far = *so_far + metres;
        }
    }
    let hazards = hazards_on(plan, &walk);
    let mut proposal = Proposal {
        route: walk.route(plan),
        length: walk.length(plan, wanted.run),
        walk,
        cost,
        hazards,
        beside,
        together,
        reasons: Vec::new(),
    };
    proposal.reasons = reasons(plan, sheet, company, wanted, &proposal, shortest);
    proposal
}

/// What endangers a wire on a way: each passage that does, by its index, and how. A place that is passed counts with the
/// passage that leads to it; where the way begins and ends it has to be.
#[must_use]
pub fn hazards_on(plan: &Plan, walk: &Walk) -> Vec<(usize, Vec<Hazard>)> {
    walk.passages()
        .map(|passage| (passage, hazards_at(plan, walk, passage)))
        .filter(|(_, hazards)| !hazards.is_empty())
        .collect()
}

fn hazards_at(plan: &Plan, walk: &Walk, passage: usize) -> Vec<Hazard> {
    let mut hazards: OrderedSet<Hazard> = hazards_of(plan, passage).into_iter().collect();
    if let Some(step) = walk.steps.iter().find(|step| step.passage == passage)
        && step.to != walk.end()
        && let Some(place) = plan.places.get(step.to)
    {
        hazards.extend(place.facts.hazards());
    }
    hazards.into_iter().collect()
}

fn metres(length: Metres) -> words::Figure {
    figure(length.0, Unit::Metre)
}

fn tags<'i>(sheet: &Sheet, runs: impl Iterator<Item = &'i RunId>) -> Vec<String> {
    runs.map(|id| {
        let run = sheet.runs.get(id);
        run.map_or_else(|| id.to_string(), |run| run.tag.clone())
    })
    .collect()
}

fn reasons(
    plan: &Plan,
    sheet: &Sheet,
    company: &Company,
    wanted: &Wanted<'_>,
    it: &Proposal,
    shortest: Option<&Walk>,
) -> Vec<Saying> {
    let mut reasons = Vec::new();
    let grave = |hazard: &Hazard| {
        matches!(
            hazard,
            Hazard::Airbag | Hazard::Moving | Hazard::Crush | Hazard::Sharp
        )
    };
    let least = shortest.map_or(it.length, |walk| walk.length(plan, wanted.run));
    let more = it.length - least;
    if more.0 < 0.005 {
        reasons.push(say!("route-shortest", length = metres(it.length)));
    } else {
        let longer = say!("route-longer", length = metres(it.length), more = metres(more));
        reasons.push(longer);
        // What the shortest way meets and this one does not, by the first passage that has it.
        let own: Vec<usize> = it.walk.passages().collect();
        let met = shortest.into_iter().flat_map(|shortest| {
            let other = shortest.passages().filter(|passage| !own.contains(passage));
            other.map(|passage| (passage, hazards_at(plan, shortest, passage)))
        });
        for (passage, hazards) in met.filter(|(_, hazards)| hazards.iter().any(grave)).take(1) {
            if let Some(passage) = plan.passages.get(passage) {
                let told: Vec<Saying> = hazards
                    .iter()
                    .filter(|it| grave(it))
                    .map(|it| it.said())
                    .collect();
                let passage = plan.said_passage(passage);
                reasons.push(say!("route-avoids", passage = passage, hazards = told));
            }
        }
    }
    for (passage, hazards) in &it.hazards {
        // Heat is told once, below: the whole engine bay has it.
        let told: Vec<Saying> = hazards
            .iter()
            .filter(|hazard| **hazard != Hazard::Heat)
            .map(|hazard| hazard.said())
            .collect();
        let Some(passage) = plan.passages.get(*passage).filter(|_| !told.is_empty()) else {
            continue;
        };
        let passage = plan.said_passage(passage);
        reasons.push(say!("route-meets", passage = passage, hazards = told));
    }
    if !it.hazards.iter().any(|(_, all)| all.iter().any(grave)) {
        reasons.push(say!("route-clear"));
    }
    let hot: f64 = it
        .hazards
        .iter()
        .filter(|(passage, _)| hazards_of(plan, *passage).contains(&Hazard::Heat))
        .filter_map(|(passage, _)| plan.passages.get(*passage))
        .map(|passage| passage.metres().0)
        .sum();
    if hot > 0.0 {
        reasons.push(say!("route-hot", length = metres(Metres(hot))));
    }
    if let Some(far) = it.beside.values().copied().reduce(Metres::max) {
        let runs = tags(sheet, it.beside.keys());
        reasons.push(match wanted.is.class {
            Class::Signal => say!("route-beside-feeds", length = metres(far), runs = runs),
            _ => say!("route-beside-signal", length = metres(far), runs = runs),
        });
    }
    if it.beside.is_empty() && company.has_unwelcome(wanted.is.class) {
        reasons.push(match wanted.is.class {
            Class::Signal => say!("route-apart-feeds"),
            _ => say!("route-apart-signal"),
        });
    }
    if let Some(far) = it.together.values().copied().reduce(Metres::max) {
        let runs = tags(sheet, it.together.keys());
        reasons.push(say!("route-together", length = metres(far), runs = runs));
    }
    reasons
}

/// What became of laying all ways anew.
#[derive(Clone, Debug, PartialEq)]
pub struct Routed {
    /// The edit that gives the runs their routes.
    pub edit: Edit,
    /// Runs that get another route by it.
    pub changed: Vec<RunId>,
    /// Runs that have no way, since an end has no place on the plan or nothing leads there.
    pub without: Vec<RunId>,
}

/// Routes of all runs of a sheet: supply first, the thickest before the others, then leads of loads and speakers, signal
/// leads last, each with what is laid already in mind. Runs whose way is locked keep it, and the others make room for them.
#[must_use]
pub fn route_all(plan: &Plan, sheet: &Sheet, on: SheetKind) -> Routed {
    route_those(plan, sheet, on, &|_, _| true)
}

/// Routes of the runs that `those` names, as [`route_all`] finds them, around all others as they lie.
#[must_use]
pub fn route_those(plan: &Plan, sheet: &Sheet, on: SheetKind, those: &dyn Fn(RunId, &Run) -> bool) -> Routed {
    let anew = |id: RunId, run: &Run| !run.laying.way_locked && those(id, run);
    let mut company = Company::of(plan, sheet, &anew);
    let mut order: Vec<(Class, f64, RunId, &Run)> = sheet
        .runs
        .iter()
        .filter(|(id, run)| anew(**id, run))
        .map(|(id, run)| {
            let area = run.wire.size.value().map_or(0.0, |size| size.area().0);
            (Class::of(sheet, run), area, *id, run)
        })
        .collect();
    let turn = |class: Class| match class {
        Class::Supply => 0,
        Class::Control => 1,
        Class::Other => 2,
        Class::Speaker => 3,
        Class::Signal => 4,
    };
    order.order_by(|(a_class, a_area, a, _), (b_class, b_area, b, _)| {
        turn(*a_class)
            .cmp(&turn(*b_class))
            .then(b_area.total_cmp(a_area))
            .then(a.cmp(b))
    });
    let ends = plan.ends();
    let net = plan.net(&ends);
    let (mut changes, mut changed, mut without) = (Vec::new(), Vec::new(), Vec::new());
    for (_, _, id, run) in order {
        let Some((from, to)) = ends_of(plan, sheet, run) else {
            without.push(id);
            continue;
        };
        let wanted = Wanted::of(sheet, id, run);
        let Some(best) = net.best(from, to, &costs(plan, &company, &wanted, [from, to])) else {
            without.push(id);
            continue;
        };
        let walk = walk_of(plan, from, &best);
        company.put(wanted.is, &walk);
        let route = whole_route(plan, sheet, run, &walk);
        if route != run.route {
            changed.push(id);
            let routed = Run { route, ..run.clone() };
            changes.push(Change::Run {
                sheet: on,
                id,
                to: Some(Box::new(routed)),
            });
        }
    }
    let name = say!("edit-route-all", count = changed.len());
    Routed {
        edit: Edit::new(name, changes),
        changed,
        without,
    }
}

/// The route of a way, with the places at ends that no part holds.
fn whole_route(plan: &Plan, sheet: &Sheet, run: &Run, walk: &Walk) -> Vec<String> {
    let mut route = walk.route(plan);
    let name = |at: usize| plan.places.get(at).map(|place| place.name.clone());
    let held = |end: &model::End| {
        end.terminal()
            .and_then(|at| plan.place_of(sheet, at.part))
            .is_some()
    };
    if !held(&run.from) {
        route.splice(..0, name(walk.start));
    }
    if !held(&run.to) {
        route.extend(name(walk.end()));
    }
    route
}
