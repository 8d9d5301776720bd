//! `ground-forbidden`: a ground on something that lives depend on.

use crate::checks::ground_surface::{bare, used};
use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::grounding::where_to;
use crate::registry::{Check, CheckGroup};
use model::kinds::supply::GroundSurface;
use words::say;

pub(crate) static CHECK: Check = Check {
    name: "ground-forbidden",
    grade: Grade::Stop,
    group: CheckGroup::Ground,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A
load L1 power=50W
ground E1 belt-anchor #~ ground-forbidden
ground E2
run W1 B1.+ F1.in 10mm2 0.3m RD
run W2 F1.out L1.+ 10mm2 1.7m RD
run W3 L1.- E1.stud 10mm2 0.3m BK
run W4 B1.- E2.stud 10mm2 0.3m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A
load L1 power=50W
ground E1 bare
ground E2
run W1 B1.+ F1.in 10mm2 0.3m RD
run W2 F1.out L1.+ 10mm2 1.7m RD
run W3 L1.- E1.stud 10mm2 0.3m BK
run W4 B1.- E2.stud 10mm2 0.3m BK",
    limits: &[],
    since: "0.1.0",
    run,
};

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    for (id, tag, surface) in used(ctx) {
        match surface.value() {
            None => out.add(
                CHECK
                    .undecided(
                        say!("ground-forbidden-unknown", ground = tag),
                        say!("ground-forbidden-find", ground = tag),
                    )
                    .parts([id]),
            ),
            Some(
                surface @ (GroundSurface::SeatRail
                | GroundSurface::BeltAnchor
                | GroundSurface::Steering
                | GroundSurface::BrakeOrFuel),
            ) => out.add(
                CHECK
                    .finding(
                        say!("ground-forbidden-what", ground = tag, surface = surface.word()),
                        say!("ground-forbidden-remedy", ground = tag),
                    )
                    .parts([id])
                    .mend_by_choice(bare(ctx, id), where_to()),
            ),
            Some(_) => {}
        }
    }
}
