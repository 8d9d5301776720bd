//! A sheet laid in the body: lengths, surroundings and bundles that follow from routes, and body metal from the places of
//! ground points. What was measured wins.

use crate::company::Class;
use crate::facts::Facts;
use crate::metal::Metal;
use crate::plan::Plan;
use crate::walk::Walk;
use model::conductor::Surroundings;
use model::job::Conditions;
use model::quantity::Metres;
use model::{Change, Edit, Fact, PartKind, Run, RunId, Settings, Sheet};
use std::borrow::Cow;

/// What follows for one run.
struct Laid {
    run: RunId,
    length: Metres,
    surroundings: Option<Surroundings>,
    bundle: Option<u8>,
}

/// The sheet with everything in it that follows from the body: what was given stays, what was assumed or not known becomes
/// [`Fact::Computed`]. Where nothing follows, since the body has no form or nothing has a place, it is the sheet itself.
///
/// - Length: of its passages, and what its ends need.
/// - Surroundings: the warmest place or passage on its way, under the settings' temperatures.
/// - Bundle: how many supply runs lie in its fullest passage, itself counted. Leads for signals, turn-on and speakers do
///   not count: what carries less than some 30 % of what it could is left out of a group (IEC 60364-5-52, group
///   reduction; from memory).
/// - Body metal of a ground point: to where the battery strap joins the body, see [`Metal`].
#[must_use]
pub fn lay<'s>(sheet: &'s Sheet, settings: &Settings) -> Cow<'s, Sheet> {
    let placed = || {
        sheet.parts.values().any(|part| part.place.is_some())
            || sheet.runs.values().any(|run| !run.route.is_empty())
    };
    // Nearly every analysis ends here: the form is asked for before anything is looked at.
    if settings.body.shape.form.is_unknown() || !placed() {
        return Cow::Borrowed(sheet);
    }
    let Some(plan) = Plan::of(&settings.body) else {
        return Cow::Borrowed(sheet);
    };
    let runs = runs(&plan, sheet, &settings.conditions);
    let grounds = Metal::on(&plan, sheet).to_strap();
    if runs.is_empty() && grounds.is_empty() {
        return Cow::Borrowed(sheet);
    }
    let mut laid = sheet.clone();
    for it in runs {
        let Some(run) = laid.runs.get_mut(&it.run) else {
            continue;
        };
        compute(&mut run.wire.length, Some(it.length));
        compute(&mut run.wire.surroundings, it.surroundings);
        compute(&mut run.wire.bundle, it.bundle);
    }
    for (id, metal) in grounds {
        if let Some(PartKind::Ground(ground)) = laid.parts.get_mut(&id).map(|part| &mut part.is) {
            compute(&mut ground.body, Some(metal));
        }
    }
    Cow::Owned(laid)
}

/// Puts what follows in the place of what was not given.
fn compute<T: Copy>(fact: &mut Fact<T>, follows: Option<T>) {
    if let Some(value) = follows
        && !fact.is_given()
    {
        *fact = Fact::Computed(value);
    }
}

fn runs(plan: &Plan, sheet: &Sheet, conditions: &Conditions) -> Vec<Laid> {
    let mut walks: Vec<(RunId, &Run, Walk, bool)> = Vec::new();
    // By passage: how many supply runs lie in it.
    let mut supply = vec![0_usize; plan.passages.len()];
    for (id, run) in &sheet.runs {
        let Ok(walk) = plan.walk(sheet, run) else { continue };
        let is_supply = Class::of(sheet, run) == Class::Supply;
        if is_supply {
            for passage in walk.passages() {
                if let Some(count) = supply.get_mut(passage) {
                    *count += 1;
                }
            }
        }
        walks.push((*id, run, walk, is_supply));
    }
    walks
        .into_iter()
        .map(|(id, run, walk, is_supply)| Laid {
            run: id,
            length: walk.length(plan, run),
            surroundings: warmest(plan, &walk, conditions),
            bundle: is_supply.then(|| {
                let loaded = walk.passages().filter_map(|passage| supply.get(passage));
                let fullest = loaded.copied().max().unwrap_or(1).clamp(1, 60);
                u8::try_from(fullest).unwrap_or(60)
            }),
        })
        .collect()
}

/// The warmest surroundings on a way.
fn warmest(plan: &Plan, walk: &Walk, conditions: &Conditions) -> Option<Surroundings> {
    let heat = |facts: &Facts| facts.heat.value();
    let places = walk.places().filter_map(|at| heat(&plan.places.get(at)?.facts));
    let passages = walk
        .passages()
        .filter_map(|at| heat(&plan.passages.get(at)?.facts));
    let mut warmest: Option<Surroundings> = None;
    for next in places.chain(passages) {
        let hotter = |known: Surroundings| next.temperature(conditions) > known.temperature(conditions);
        if warmest.is_none_or(hotter) {
            warmest = Some(next);
        }
    }
    warmest
}

/// Takes what was computed out of an edit that was made from a laid sheet, such as a mend: a value that follows from the
/// body goes back to what the sheet says of it, or becomes a guess on something new.
pub fn settle(edit: &mut Edit, sheet: &Sheet) {
    for change in &mut edit.changes {
        match change {
            Change::Run {
                id, to: Some(run), ..
            } => {
                let was = sheet.runs.get(id).map(|run| &run.wire);
                take_back(&mut run.wire.length, was.map(|wire| wire.length));
                take_back(&mut run.wire.surroundings, was.map(|wire| wire.surroundings));
                take_back(&mut run.wire.bundle, was.map(|wire| wire.bundle));
            }
            Change::Part {
                id, to: Some(part), ..
            } => {
                if let PartKind::Ground(ground) = &mut part.is {
                    let was = sheet.parts.get(id).and_then(|part| match &part.is {
                        PartKind::Ground(ground) => Some(ground.body),
                        _ => None,
                    });
                    take_back(&mut ground.body, was);
                }
            }
            _ => {}
        }
    }
}

fn take_back<T: Copy>(fact: &mut Fact<T>, was: Option<Fact<T>>) {
    if let Fact::Computed(value) = *fact {
        *fact = was.unwrap_or(Fact::Assumed(value));
    }
}
