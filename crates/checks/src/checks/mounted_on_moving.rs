//! `mounted-on-moving`: equipment on a seat, a seat back, a door or trim.

use crate::checks::blind_fixing::is_risky;
use crate::context::Ctx;
use crate::finding::{Finding, Grade};
use crate::findings::Findings;
use crate::lie::{Lie, quoted};
use crate::mends::rerouting::laid_anew;
use crate::mends::{set_part, set_run};
use crate::registry::{Check, CheckGroup};
use crate::wording::fact;
use model::body::Reach;
use model::conductor::FittedBy;
use model::handling::Fate;
use model::kinds::supply::GroundSurface;
use model::mounting::MountedOn;
use model::{Edit, Fact, Part, PartId, PartKind, RunId};
use words::say;

pub(crate) static CHECK: Check = Check {
    name: "mounted-on-moving",
    grade: Grade::Fix,
    group: CheckGroup::Workmanship,
    example: "\
body estate
amplifier A1 sections=\"1x 60W@4ohm min 4ohm\" mounted=seat-back place=load-floor #~ mounted-on-moving
speaker LS1 4ohm power=80W place=side-left
run W1 A1.out1+ LS1.+ 2.5mm2 WH route=floor-way-left support-spacing=0.4m
run W2 A1.out1- LS1.- 2.5mm2 WHBK route=floor-way-left support-spacing=0.4m",
    instead: "\
body estate
amplifier A1 sections=\"1x 60W@4ohm min 4ohm\" mounted=board place=load-floor
speaker LS1 4ohm power=80W place=side-left
run W1 A1.out1+ LS1.+ 2.5mm2 WH route=floor-way-left support-spacing=0.4m
run W2 A1.out1- LS1.- 2.5mm2 WHBK route=floor-way-left support-spacing=0.4m",
    limits: &[],
    since: "0.1.0",
    run,
};

/// Whether a part is judged for where it stands: not what stands where the vehicle's maker put it, nor a stud of his.
pub(crate) fn is_ours(part: &Part) -> bool {
    let makers_stud = matches!(
        &part.is,
        PartKind::Ground(ground) if ground.surface.value() == Some(GroundSurface::MakersPoint)
    );
    !makers_stud && (part.fitted_by != FittedBy::Maker || part.handling.fate.value() == Some(Fate::Move))
}

/// What has to stand on fixed structure, and of that what trim does not bear either.
fn wants_structure(part: &Part) -> Option<bool> {
    match part.is {
        PartKind::Amplifier(_) | PartKind::Battery(_) | PartKind::Converter(_) | PartKind::Capacitor(_) => {
            Some(true)
        }
        PartKind::Fuse(_)
        | PartKind::Breaker(_)
        | PartKind::Block(_)
        | PartKind::Bus(_)
        | PartKind::Relay(_)
        | PartKind::Isolator(_)
        | PartKind::Processor(_) => Some(false),
        _ => None,
    }
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    for (id, part) in &ctx.sheet.parts {
        let Some(heavy) = wants_structure(part).filter(|_| is_ours(part)) else {
            continue;
        };
        let on = part.mounting.mounted.value();
        let moves = match on {
            Some(MountedOn::Seat | MountedOn::SeatBack | MountedOn::Door) => true,
            Some(MountedOn::Trim) => heavy,
            // What lies loose is told by `mounting-loose`.
            Some(_) => continue,
            None => false,
        };
        let place = ctx.lie.as_ref().and_then(|lie| {
            let place = lie.plan.place(part.place.as_deref()?)?;
            place.facts.moving.or(false).then_some((lie, place))
        });
        let (what, remedy) = match (on.filter(|_| moves), place) {
            (Some(on), _) => (
                say!("mounted-on-moving-what", part = &part.tag, on = on.said()),
                say!("mounted-on-moving-remedy", part = &part.tag),
            ),
            (None, Some((_, place))) => (
                say!(
                    "mounted-on-moving-place",
                    part = &part.tag,
                    place = quoted(place.said())
                ),
                say!("mounted-on-moving-place-remedy", part = &part.tag),
            ),
            (None, None) => continue,
        };
        let mut finding = CHECK.finding(what, remedy).parts([*id]);
        if let (false, Some((_, place))) = (moves, place)
            && place.facts.moving.is_assumed()
        {
            let said = say!("assumed-of", of = quoted(place.said()), property = fact("moving"));
            finding.assumed.insert(said);
        }
        out.add(match place {
            Some(_) => move_out(ctx, *id, part, finding),
            None => finding.mend(may_screw(ctx, part).then(|| fixed_to_body(*id, part))),
        });
    }
}

/// Whether nothing speaks against a screw where a part is, as far as its place tells.
pub(crate) fn may_screw(ctx: &Ctx<'_>, part: &Part) -> bool {
    let lie = ctx.lie.as_ref();
    let place = lie.and_then(|lie| lie.plan.place(part.place.as_deref()?));
    place.is_none_or(|place| !place.facts.moving.or(false) && !is_risky(place))
}

/// The part fixed to body metal where it is.
pub(crate) fn fixed_to_body(id: PartId, part: &Part) -> Edit {
    let mut fixed = part.clone();
    fixed.mounting.mounted = Fact::Given(MountedOn::Body);
    let name = say!("mend-mount", part = &part.tag, on = MountedOn::Body.said());
    Edit::new(name, vec![set_part(id, fixed)])
}

/// Most places between which somebody is asked to choose.
const MOST: usize = 3;

/// Offers the places next to a part that do not move and where nothing speaks against it; which of several is somebody's
/// choice.
pub(crate) fn move_out(ctx: &Ctx<'_>, id: PartId, part: &Part, finding: Finding) -> Finding {
    let Some(lie) = &ctx.lie else { return finding };
    let places = places_beside(lie, part).unwrap_or_default();
    let moved: Vec<Edit> = places
        .into_iter()
        .filter_map(|place| move_to(ctx, lie, id, part, place))
        .take(MOST)
        .collect();
    let is_clear = moved.len() == 1;
    moved.into_iter().fold(finding, |finding, edit| {
        if is_clear {
            finding.mend(Some(edit))
        } else {
            finding.mend_by_choice(Some(edit), say!("mend-choice-place"))
        }
    })
}

/// Places next to the one of a part that do not move and where nothing speaks against it.
fn places_beside<'l>(lie: &'l Lie, part: &Part) -> Option<Vec<&'l body::Place>> {
    let plan = &lie.plan;
    let here = plan.place_index(part.place.as_deref()?)?;
    let mut fit: Vec<&body::Place> = Vec::new();
    for passage in plan.passages_at(here) {
        let next = plan.passages.get(*passage).and_then(|it| it.across(here));
        let Some(place) = next.and_then(|at| plan.places.get(at)) else {
            continue;
        };
        let facts = &place.facts;
        let holds = [facts.moving, facts.crush, facts.wet, facts.airbag]
            .iter()
            .all(|it| !it.or(false))
            && !is_risky(place)
            && facts.heat.value() != Some(model::conductor::Surroundings::EngineBay)
            && facts.reach.value() != Some(Reach::Headlining);
        if holds && !fit.iter().any(|other| other.name == place.name) {
            fit.push(place);
        }
    }
    Some(fit)
}

/// The part at a place, its runs laid there.
fn move_to(ctx: &Ctx<'_>, lie: &Lie, id: PartId, part: &Part, place: &body::Place) -> Option<Edit> {
    let mut moved = part.clone();
    moved.place = Some(place.name.clone());
    moved.mounting.mounted = Fact::Given(MountedOn::Body);
    // Its runs end elsewhere now: each that had a way gets the best one there.
    let mut sheet = ctx.sheet.clone();
    sheet.parts.insert(id, moved.clone());
    let routed: Vec<RunId> = ctx
        .runs_of(id)
        .filter(|(_, run)| !run.route.is_empty())
        .map(|(run, _)| run)
        .collect();
    let mut changes = vec![set_part(id, moved)];
    for run in routed {
        let ends_here = |run: &model::Run| {
            run.ends().into_iter().all(|end| {
                let at = end
                    .terminal()
                    .and_then(|at| sheet.parts.get(&at.part)?.place.clone());
                at.as_ref() == Some(&place.name)
            })
        };
        let it = sheet.runs.get(&run)?;
        if ends_here(it) {
            let mut short = it.clone();
            short.route.clear();
            short.laying.guards = model::laying::Guards::default();
            changes.push(set_run(run, short));
            continue;
        }
        let anew = laid_anew(lie, sheet.clone(), &[run], &|_| true)?;
        for (run, it) in anew.runs {
            sheet.runs.insert(run, it.clone());
            changes.push(set_run(run, it));
        }
    }
    let name = say!("mend-move-part", part = &part.tag, place = place.said());
    Some(Edit::new(name, changes))
}
