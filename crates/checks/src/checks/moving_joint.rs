//! `moving-joint`: a run over a hinge or into a seat without a gaiter or loom made for it.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::guarding::{Rule, judge};
use crate::lie::Spot;
use crate::registry::{Check, CheckGroup};
use model::body::PassageKind;
use model::laying::Guard;
use words::say;

pub(crate) static CHECK: Check = Check {
    name: "moving-joint",
    grade: Grade::Stop,
    group: CheckGroup::Workmanship,
    example: "\
body estate
amplifier A1 sections=\"1x 60W@4ohm min 4ohm\" place=footwell-left
speaker LS1 4ohm power=80W front-left place=door-left
run W1 A1.out1+ LS1.+ 2.5mm2 WH route=door-gaiter-left guards=door-gaiter-left:tube support-spacing=0.4m #~ moving-joint
run W2 A1.out1- LS1.- 2.5mm2 WHBK route=door-gaiter-left guards=door-gaiter-left:gaiter support-spacing=0.4m",
    instead: "\
body estate
amplifier A1 sections=\"1x 60W@4ohm min 4ohm\" place=footwell-left
speaker LS1 4ohm power=80W front-left place=door-left
run W1 A1.out1+ LS1.+ 2.5mm2 WH route=door-gaiter-left guards=door-gaiter-left:gaiter support-spacing=0.4m
run W2 A1.out1- LS1.- 2.5mm2 WHBK route=door-gaiter-left guards=door-gaiter-left:gaiter support-spacing=0.4m",
    limits: &[],
    since: "0.1.0",
    run,
};

fn guess(spot: &Spot<'_>) -> Option<&'static str> {
    spot.facts.moving.is_assumed().then_some("moving")
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let rule = Rule {
        check: &CHECK,
        asks: |lie, spot| lie.is_joint(spot),
        guess,
        helps: |_, guard| matches!(guard, Guard::Gaiter | Guard::Loom),
        fits: |spot| {
            let gaiter = spot.kind() == Some(PassageKind::Gaiter);
            Some(if gaiter { Guard::Gaiter } else { Guard::Loom })
        },
        what: |run, spots, live| {
            let live = if live { "yes" } else { "no" };
            say!("moving-joint-what", run = run, spots = spots, live = live)
        },
        remedy: |run, _, _| say!("moving-joint-remedy", run = run),
        other_way: true,
    };
    judge(ctx, out, &rule);
}
