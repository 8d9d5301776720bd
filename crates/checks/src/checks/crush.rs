//! `crush`: a run where a seat, its rail or a clamp of trim can crush it.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::guarding::{Rule, judge};
use crate::registry::{Check, CheckGroup};
use model::laying::Guard;
use words::say;

pub(crate) static CHECK: Check = Check {
    name: "crush",
    grade: Grade::Stop,
    group: CheckGroup::Workmanship,
    example: "\
body estate
battery B1 agm 70Ah cranking=640A place=footwell-left
fuse F1 strip61 60A place=footwell-left
load L1 power=200W place=dash-middle
ground E1 bare place=dash-middle
ground E2 bare place=footwell-left
run W1 B1.+ F1.in 16mm2 RD
run W2 F1.out L1.+ 16mm2 RD route=sill-front-left/seat-rail-left/seat-tunnel-left/tunnel-front guards=seat-rail-left:nothing/seat-tunnel-left:nothing support-spacing=0.4m #~ crush
run W3 L1.- E1.stud 16mm2 BK
run W4 B1.- E2.stud 16mm2 BK",
    instead: "\
body estate
battery B1 agm 70Ah cranking=640A place=footwell-left
fuse F1 strip61 60A place=footwell-left
load L1 power=200W place=dash-middle
ground E1 bare place=dash-middle
ground E2 bare place=footwell-left
run W1 B1.+ F1.in 16mm2 RD
run W2 F1.out L1.+ 16mm2 RD route=carpet-front-left/tunnel-front support-spacing=0.4m
run W3 L1.- E1.stud 16mm2 BK
run W4 B1.- E2.stud 16mm2 BK",
    limits: &[],
    since: "0.1.0",
    run,
};

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let rule = Rule {
        check: &CHECK,
        asks: |_, spot| spot.facts.crush.or(false),
        guess: |spot| spot.facts.crush.is_assumed().then_some("crush"),
        // A braid keeps off edges, not weight.
        helps: |_, guard| matches!(guard, Guard::Tube | Guard::Loom),
        fits: |_| Some(Guard::Tube),
        what: |run, spots, live| {
            let live = if live { "yes" } else { "no" };
            say!("crush-what", run = run, spots = spots, live = live)
        },
        remedy: |run, _, _| say!("crush-remedy", run = run),
        other_way: true,
    };
    judge(ctx, out, &rule);
}
