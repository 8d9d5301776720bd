//! `water-way`: an opening to the outside that a run goes through and nothing makes tight.

use crate::checks::bare_edge::is_through_metal;
use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::guarding::rests_on;
use crate::lie::{Lie, Spot, guard_at};
use crate::mends::set_run;
use crate::registry::{Check, CheckGroup};
use model::conductor::Surroundings;
use model::laying::Guard;
use model::{Edit, RunId};
use words::{Saying, say};

pub(crate) static CHECK: Check = Check {
    name: "water-way",
    grade: Grade::Fix,
    group: CheckGroup::Workmanship,
    example: "\
body estate
battery B1 agm 70Ah cranking=640A place=battery-tray
fuse F1 strip61 60A place=battery-tray
load L1 power=200W place=footwell-left
ground E1 bare place=footwell-left
ground E2 bare place=battery-tray
run W1 B1.+ F1.in 16mm2 RD
run W2 F1.out L1.+ 16mm2 RD route=battery-bulkhead/bulkhead-grommet-left guards=bulkhead-grommet-left:tube support-spacing=0.4m #~ water-way
run W3 L1.- E1.stud 16mm2 BK
run W4 B1.- E2.stud 16mm2 BK",
    instead: "\
body estate
battery B1 agm 70Ah cranking=640A place=battery-tray
fuse F1 strip61 60A place=battery-tray
load L1 power=200W place=footwell-left
ground E1 bare place=footwell-left
ground E2 bare place=battery-tray
run W1 B1.+ F1.in 16mm2 RD
run W2 F1.out L1.+ 16mm2 RD route=battery-bulkhead/bulkhead-grommet-left guards=bulkhead-grommet-left:grommet support-spacing=0.4m
run W3 L1.- E1.stud 16mm2 BK
run W4 B1.- E2.stud 16mm2 BK",
    limits: &[],
    since: "0.1.0",
    run,
};

/// Whether a passage through metal joins what is outside, where water gets or the engine stands, and what is within.
fn is_opening(lie: &Lie, spot: &Spot<'_>) -> bool {
    let outside = |end: usize| {
        let place = lie.plan.places.get(end);
        place.is_some_and(|it| {
            it.facts.wet.or(false) || it.facts.heat.value() == Some(Surroundings::EngineBay)
        })
    };
    is_through_metal(spot)
        && spot.passage.is_some_and(|passage| {
            let [a, b] = passage.ends.map(outside);
            a != b
        })
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let Some(lie) = &ctx.lie else { return };
    for (at, (id, run)) in ctx.sheet.runs.iter().enumerate() {
        let Some(walk) = lie.walk(at) else { continue };
        let spots = lie.spots(walk);
        // With nothing at all in it the edge is worse, and with what nobody knows the edge asks first.
        let open: Vec<Spot<'_>> = spots
            .iter()
            .enumerate()
            .filter(|(number, spot)| {
                let guard = guard_at(run, &spots, *number);
                matches!(guard, Some(Guard::Sleeve | Guard::Tube)) && is_opening(lie, spot)
            })
            .map(|(_, spot)| *spot)
            .collect();
        if !open.is_empty() {
            tell(ctx, out, lie, *id, &open);
        }
    }
}

fn tell(ctx: &Ctx<'_>, out: &mut Findings, lie: &Lie, id: RunId, open: &[Spot<'_>]) {
    let Some(run) = ctx.run(id) else { return };
    let said: Vec<Saying> = open.iter().map(|spot| lie.said(spot)).collect();
    let mut sealed = run.clone();
    for spot in open {
        let guards = &mut sealed.laying.guards.0;
        guards.insert(spot.name.to_owned(), Guard::Grommet);
    }
    let mend = say!("mend-guard", run = &run.tag, guards = vec![Guard::Grommet.said()]);
    let mut finding = CHECK
        .finding(
            say!("water-way-what", run = &run.tag, spots = said),
            say!("water-way-remedy", run = &run.tag),
        )
        .runs([id])
        .spots(open)
        .mend(Some(Edit::new(mend, vec![set_run(id, sealed)])));
    for spot in open {
        if spot.passage.is_some_and(|passage| passage.kind.is_assumed()) {
            rests_on(&mut finding, lie, spot, "kind");
        }
    }
    out.add(finding);
}
