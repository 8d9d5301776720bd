//! `overloaded-run`: more steady current than the wire bears where it lies.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::rating_needed;
use crate::registry::{Check, CheckGroup};
use crate::wires::{size_for_current, thicken};
use crate::wording::{A, to_lay};
use model::quantity::Amps;
use words::{figure, say, told};

pub(crate) static CHECK: Check = Check {
    name: "overloaded-run",
    grade: Grade::Stop,
    group: CheckGroup::Conductors,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 80A
load L1 power=700W
run W1 B1.+ F1.in 25mm2 0.3m RD
run W2 F1.out L1.+ 4mm2 1m RD #~ overloaded-run
run W3 L1.- B1.- 25mm2 1m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 80A
load L1 power=700W
run W1 B1.+ F1.in 25mm2 0.3m RD
run W2 F1.out L1.+ 25mm2 1m RD
run W3 L1.- B1.- 25mm2 1m BK",
    limits: &["ampacity-factor"],
    since: "0.1.0",
    run,
};

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let Some(factor) = ctx.limit("ampacity-factor") else {
        return;
    };
    for (id, flow) in &ctx.study.runs {
        let carried = flow.current.rms.abs();
        if carried.0 <= 0.0 || !ctx.is_supply(*id) || !ctx.burdened_run(*id) {
            continue;
        }
        if super::hot_place::tells_all(ctx, out, *id) {
            continue;
        }
        let tag = ctx.run_tag(*id);
        match flow.allowable {
            Some(allowable) => {
                let bears = allowable * factor;
                if carried <= bears {
                    continue;
                }
                // The new wire must bear the fuse in front of it too, or the next finding stands at once.
                let guard = guarding(ctx, *id).unwrap_or(Amps(0.0));
                let needs = carried.max(guard).max(rating_needed(ctx, carried));
                let size = size_for_current(ctx, *id, needs / factor.max(0.01));
                let remedy = match size {
                    Some(size) => say!("overloaded-run-remedy", size = to_lay(size)),
                    None => say!("overloaded-run-thicker"),
                };
                out.add(
                    CHECK
                        .finding(
                            say!(
                                "overloaded-run-what",
                                run = &tag,
                                carries = told(carried.0, bears.0, A),
                                can = told(bears.0, carried.0, A),
                            ),
                            remedy,
                        )
                        .runs([*id])
                        .measure(carried.0, bears.0, "A", Some("ampacity-factor"))
                        .assumes_run(ctx, *id, super::fuse_outsizes_wire::DECIDES)
                        .mend(size.and_then(|size| {
                            thicken(
                                ctx,
                                say!("mend-lay-size", size = to_lay(size), run = &tag),
                                &[(*id, size)],
                            )
                        })),
                );
            }
            None => {
                let missing = super::fuse_outsizes_wire::missing(ctx, *id);
                out.add(
                    CHECK
                        .undecided(
                            say!(
                                "overloaded-run-unknown",
                                run = tag,
                                carries = figure(carried.0, A),
                                missing = missing,
                            ),
                            super::fuse_outsizes_wire::find_out(ctx, *id),
                        )
                        .runs([*id]),
                );
            }
        }
    }
}

/// The largest rating among the working devices that guard the run.
fn guarding(ctx: &Ctx<'_>, id: model::RunId) -> Option<Amps> {
    ctx.guards_of(id)
        .filter(|device| ctx.counts(device))
        .filter_map(|device| device.rating)
        .reduce(Amps::max)
}
