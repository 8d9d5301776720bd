//! `bare-edge`: a run through sheet metal with nothing that keeps the edge off it.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::guarding::{Rule, grade_of, judge};
use crate::lie::{Lie, Spot};
use crate::registry::{Check, CheckGroup};
use model::body::PassageKind;
use model::conductor::FittedBy;
use model::laying::Guard;
use words::{Saying, say};

pub(crate) static CHECK: Check = Check {
    name: "bare-edge",
    grade: Grade::Stop,
    group: CheckGroup::Workmanship,
    example: "\
body estate
battery B1 agm 70Ah cranking=640A place=battery-tray
fuse F1 strip61 60A place=battery-tray
load L1 power=200W place=footwell-left
ground E1 bare place=footwell-left
ground E2 bare place=battery-tray
run W1 B1.+ F1.in 16mm2 RD
run W2 F1.out L1.+ 16mm2 RD route=battery-bulkhead/bulkhead-grommet-left guards=bulkhead-grommet-left:nothing support-spacing=0.4m #~ bare-edge
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

/// Whether a way leads through sheet metal.
pub(crate) fn is_through_metal(spot: &Spot<'_>) -> bool {
    matches!(spot.kind(), Some(PassageKind::Hole | PassageKind::Grommet))
}

/// What bends is told by `moving-joint`, which asks for more.
fn asks(lie: &Lie, spot: &Spot<'_>) -> bool {
    (is_through_metal(spot) || spot.facts.sharp.or(false)) && !lie.is_joint(spot)
}

fn guess(spot: &Spot<'_>) -> Option<&'static str> {
    match spot.passage {
        Some(passage) if is_through_metal(spot) => passage.kind.is_assumed().then_some("kind"),
        _ => spot.facts.sharp.is_assumed().then_some("sharp"),
    }
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let rule = Rule {
        check: &CHECK,
        asks,
        guess,
        helps: |_, guard| guard != Guard::Nothing,
        fits: |spot| {
            Some(if is_through_metal(spot) {
                Guard::Grommet
            } else {
                Guard::Sleeve
            })
        },
        what: |run, spots, live| {
            let live = if live { "yes" } else { "no" };
            say!("bare-edge-what", run = run, spots = spots, live = live)
        },
        remedy: |run, _, _| say!("bare-edge-remedy", run = run),
        other_way: false,
    };
    judge(ctx, out, &rule);
    ways_of_no_kind(ctx, out);
}

/// Runs in passages of the job's own of which nobody said what kind of way they are: whether they lead through metal decides.
fn ways_of_no_kind(ctx: &Ctx<'_>, out: &mut Findings) {
    let Some(lie) = &ctx.lie else { return };
    for (at, (id, run)) in ctx.sheet.runs.iter().enumerate() {
        let Some(walk) = lie.walk(at).filter(|_| run.fitted_by != FittedBy::Maker) else {
            continue;
        };
        let asked = |spot: &Spot<'_>| {
            let of_no_kind = spot.passage.is_some_and(|passage| passage.kind.is_unknown());
            let told = run.laying.guards.0.contains_key(spot.name) || !spot.facts.sharp.is_assumed();
            of_no_kind && !told && !lie.is_joint(spot)
        };
        let mut met = lie.spots(walk);
        met.retain(asked);
        let spots: Vec<Saying> = met.iter().map(|spot| lie.said(spot)).collect();
        if !spots.is_empty() {
            let what = say!("bare-edge-kind", run = &run.tag, spots = &spots);
            let find = say!("bare-edge-kind-find", spots = spots);
            out.add(
                CHECK
                    .undecided(what, find)
                    .grade(grade_of(ctx, *id, run))
                    .runs([*id])
                    .spots(&met),
            );
        }
    }
}
