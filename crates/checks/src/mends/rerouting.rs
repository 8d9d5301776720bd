//! Another way for runs: the best through the body that keeps clear of seats, hinges without a gaiter and airbags, with the
//! guards that it needs.

use crate::context::Ctx;
use crate::lie::{Lie, Spot};
use crate::mends::set_run;
use body::{Plan, Proposal, Walk, alternatives, propose};
use model::body::PassageKind;
use model::laying::Guard;
use model::{Edit, Run, RunId, Sheet};
use ordered::OrderedMap;
use words::{Saying, say};

/// The guard that a run needs here when it is laid as it should be.
pub(crate) fn guard_for(spot: &Spot<'_>) -> Option<Guard> {
    match spot.kind() {
        Some(PassageKind::Grommet | PassageKind::Hole) => Some(Guard::Grommet),
        Some(PassageKind::Gaiter) => Some(Guard::Gaiter),
        _ if spot.facts.sharp.or(false) => Some(Guard::Sleeve),
        _ => None,
    }
}

/// Whether nothing on a way endangers a run that is guarded as it should be.
fn is_harmless(lie: &Lie, walk: &Walk) -> bool {
    lie.spots(walk).iter().all(|spot| {
        let gaiter = spot.kind() == Some(PassageKind::Gaiter);
        !spot.facts.airbag.or(false) && !spot.facts.crush.or(false) && (gaiter || !lie.is_joint(spot))
    })
}

/// The run on this way: guarded where it has to be, and as it was where it stays.
pub(crate) fn on_way(lie: &Lie, run: &Run, route: Vec<String>, walk: &Walk) -> Run {
    let mut run = Run { route, ..run.clone() };
    let mut guards = OrderedMap::new();
    for spot in lie.spots(walk) {
        let was = run.laying.guards.0.get(spot.name).copied();
        let guard = match (was, guard_for(&spot)) {
            (Some(Guard::Nothing) | None, needed) => needed,
            (was, _) => was,
        };
        if let Some(guard) = guard {
            guards.insert(spot.name.to_owned(), guard);
        }
    }
    run.laying.guards.0 = guards;
    run
}

/// These runs, one after the other, on the best way that is harmless and that `suits`; nothing where one of them has none,
/// or where its way is locked.
pub(crate) fn reroute(ctx: &Ctx<'_>, ids: &[RunId], suits: &dyn Fn(&Proposal) -> bool) -> Option<Edit> {
    let lie = ctx.lie.as_ref()?;
    let anew = laid_anew(lie, ctx.sheet.clone(), ids, suits)?;
    let changes = anew.runs.into_iter().map(|(id, run)| set_run(id, run)).collect();
    let name = say!("mend-route", runs = ctx.run_tags(ids), way = anew.way);
    Some(Edit::new(name, changes))
}

/// Runs on their new ways.
#[derive(Default)]
pub(crate) struct Anew {
    pub(crate) runs: Vec<(RunId, Run)>,
    /// The way of the first of them, in words.
    way: Vec<Saying>,
}

/// These runs on the best ways that are harmless and that `suits`. `sheet` is where they lie by then: each is laid with those
/// before it in mind.
pub(crate) fn laid_anew(
    lie: &Lie,
    mut sheet: Sheet,
    ids: &[RunId],
    suits: &dyn Fn(&Proposal) -> bool,
) -> Option<Anew> {
    let mut anew = Anew::default();
    for id in ids {
        let run = sheet.runs.get(id).filter(|run| !run.laying.way_locked)?;
        let does = |it: &Proposal| it.route != run.route && is_harmless(lie, &it.walk) && suits(it);
        let mut best = propose(&lie.plan, &sheet, *id).into_iter().find(does);
        if best.is_none() {
            best = alternatives(&lie.plan, &sheet, *id).into_iter().find(does);
        }
        let best = best?;
        if anew.way.is_empty() {
            anew.way = places_on(&lie.plan, &best.walk);
        }
        let run = on_way(lie, run, best.route, &best.walk);
        sheet.runs.insert(*id, run.clone());
        anew.runs.push((*id, run));
    }
    Some(anew)
}

/// The places that a way passes between its ends, in words; where it passes none, what it goes through.
fn places_on(plan: &Plan, walk: &Walk) -> Vec<Saying> {
    let between = walk.steps.iter().skip(1).map(|step| step.from);
    let places = between
        .filter_map(|at| plan.places.get(at))
        .map(body::Place::said);
    let through = walk.passages().filter_map(|at| plan.passages.get(at));
    if walk.steps.len() > 1 {
        places.collect()
    } else {
        through.map(|passage| plan.said_passage(passage)).collect()
    }
}
