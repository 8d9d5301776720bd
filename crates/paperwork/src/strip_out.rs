//! The order of stripping out: isolate first, record what is there, take off the trim that is in the way, then runs, from the
//! battery outwards, then parts, and leave nothing lying about.

use crate::articles::joined;
use crate::steps::{Checklist, Phase, Steps, at_battery, comes_out};
use crate::work::Work;
use circuit::Purpose;
use model::body::Reach;
use model::property::PropertyType;
use model::{PartId, PartKind, RunId};
use ordered::{OrderedMap, OrderedSet, Sort as _};
use words::{Saying, say};

/// The checklist. Without a sheet to start from there is nothing to strip out, and it is empty.
#[must_use]
pub fn strip_out(work: &Work<'_>) -> Checklist {
    let mut steps = Steps::of("strip-out", work);
    let Some((_, before)) = &work.before else {
        return steps.finish();
    };
    let parts: Vec<PartId> = before
        .parts
        .keys()
        .copied()
        .filter(|id| comes_out(work.part(*id)))
        .collect();
    let mut runs: Vec<RunId> = before
        .runs
        .keys()
        .copied()
        .filter(|id| comes_out(work.run(*id)))
        .collect();
    isolate(&mut steps, before);
    steps.add(Phase::Record, "record", say!("step-record"), &[]);
    trim(&mut steps, &parts, &runs);
    let study = circuit::study(before, &work.job.settings);
    let rank = |id: &RunId| {
        let purpose = study.runs.get(id).map_or(Purpose::Nothing, |flow| flow.purpose);
        let far = before
            .runs
            .get(id)
            .is_none_or(|run| !at_battery(&before.parts, run));
        let group = match purpose {
            Purpose::Feed | Purpose::BetweenSources => 0_u8,
            Purpose::TurnOn => 1,
            Purpose::Signal => 2,
            Purpose::Speaker => 3,
            Purpose::Nothing => 4,
            Purpose::Return => 5,
        };
        (group, far, *id)
    };
    runs.order_by_key(rank);
    for id in runs {
        if let Some(run) = before.runs.get(&id) {
            steps.run_out(id, run);
        }
    }
    for id in &parts {
        if let Some(part) = before
            .parts
            .get(id)
            .filter(|part| !matches!(part.is, PartKind::Vehicle(_)))
        {
            steps.part_out(*id, part);
        }
    }
    steps.add(Phase::Sweep, "sweep", say!("step-sweep"), &[]);
    steps.add(Phase::Sweep, "stays", say!("step-stays"), &[]);
    steps.finish()
}

/// Off, asleep, isolated, discharged, measured.
fn isolate(steps: &mut Steps<'_, '_>, before: &model::Sheet) {
    steps.add(Phase::Isolate, "off", say!("step-off"), &[]);
    for (id, part) in &before.parts {
        if matches!(part.is, PartKind::Battery(_)) {
            let what = say!("step-isolate", tag = &part.tag, name = part.said());
            steps.add(Phase::Isolate, &format!("isolate/{id}"), what, &[&part.tag]);
        }
    }
    for (id, part) in &before.parts {
        if matches!(part.is, PartKind::Capacitor(_)) {
            let what = say!("step-discharge", tag = &part.tag, name = part.said());
            steps.add(Phase::Isolate, &format!("discharge/{id}"), what, &[&part.tag]);
        }
    }
    steps.add(Phase::Isolate, "dead", say!("step-dead"), &[]);
}

/// Trim that is in the way of what comes out, by what comes off, with the places behind it.
fn trim(steps: &mut Steps<'_, '_>, parts: &[PartId], runs: &[RunId]) {
    let work = steps.work;
    let places = places_of(work, parts, runs);
    let at = |name: &str| tags_at(work, name, parts, runs);
    let Some(plan) = &work.plan else {
        let all: Vec<Saying> = places.iter().map(|name| work.place_said(name)).collect();
        if !all.is_empty() {
            let what = say!("step-open", places = joined(all, "paper-semicolon"));
            steps.add(Phase::Trim, "open", what, &[]);
        }
        return;
    };
    let mut by_reach: OrderedMap<Reach, (OrderedSet<String>, bool)> = OrderedMap::new();
    for name in &places {
        let facts = match (plan.place(name), plan.passage(name)) {
            (Some(place), _) => place.facts,
            (None, Some(passage)) => passage.facts,
            (None, None) => continue,
        };
        if let Some(reach) = facts.reach.value().filter(|reach| *reach != Reach::Open) {
            let entry = by_reach.entry(reach).or_default();
            entry.0.extend(at(name));
            entry.1 |= facts.airbag.or(false);
        }
    }
    for (reach, (behind, airbag)) in by_reach {
        let comes_off = model::said::choice(reach.title());
        let what = if airbag {
            say!("step-trim-airbag", trim = comes_off)
        } else {
            say!("step-trim", trim = comes_off)
        };
        let tags: Vec<&str> = behind.iter().map(String::as_str).collect();
        steps.add(Phase::Trim, &format!("trim/{}", reach.print()), what, &tags);
    }
}

/// Names of the places and passages where something of these is or goes.
fn places_of(work: &Work<'_>, parts: &[PartId], runs: &[RunId]) -> OrderedSet<String> {
    let sheets = [work.before.as_ref().map(|(_, sheet)| sheet), Some(&work.sheet)];
    let mut names = OrderedSet::new();
    for sheet in sheets.into_iter().flatten() {
        let places = parts.iter().filter_map(|id| sheet.parts.get(id)?.place.clone());
        names.extend(places);
        let routes = runs.iter().filter_map(|id| sheet.runs.get(id));
        names.extend(routes.flat_map(|run| run.route.iter().cloned()));
    }
    names
}

/// Tags of those of these that are at a place, or go through it.
fn tags_at(work: &Work<'_>, name: &str, parts: &[PartId], runs: &[RunId]) -> Vec<String> {
    let sheets = [work.before.as_ref().map(|(_, sheet)| sheet), Some(&work.sheet)];
    let mut tags = Vec::new();
    for sheet in sheets.into_iter().flatten() {
        let here = parts.iter().filter_map(|id| sheet.parts.get(id));
        let here = here.filter(|part| part.place.as_deref() == Some(name));
        tags.extend(here.map(|part| part.tag.clone()));
        let through = runs.iter().filter_map(|id| sheet.runs.get(id));
        let through = through.filter(|run| run.route.iter().any(|step| step == name));
        tags.extend(through.map(|run| run.tag.clone()));
    }
    tags
}
