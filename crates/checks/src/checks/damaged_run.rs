//! `damaged-run`: a wire that is not in a sound state.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::set_run;
use crate::registry::{Check, CheckGroup};
use crate::wires::renewed;
use model::conductor::Condition;
use model::{Edit, Fact, Run, RunId};
use words::say;

pub(crate) static CHECK: Check = Check {
    name: "damaged-run",
    grade: Grade::Stop,
    group: CheckGroup::Workmanship,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A
load L1 power=200W
run W1 B1.+ F1.in 10mm2 0.3m RD
run W2 F1.out L1.+ 10mm2 1.7m RD chafed #~ damaged-run
run W3 L1.- B1.- 10mm2 2m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A
load L1 power=200W
run W1 B1.+ F1.in 10mm2 0.3m RD
run W2 F1.out L1.+ 10mm2 1.7m RD sound
run W3 L1.- B1.- 10mm2 2m BK",
    limits: &[],
    since: "0.1.0",
    run,
};

/// Whether a source can make the run live, cut through or not.
pub(crate) fn is_live(ctx: &Ctx<'_>, id: RunId, run: &Run) -> bool {
    ctx.is_feed(id)
        || run
            .ends()
            .iter()
            .filter_map(|end| end.terminal())
            .filter_map(|at| ctx.wiring.point(at.part, at.terminal.as_str()))
            .any(|point| ctx.live.contains(&point))
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    for (id, run) in &ctx.sheet.runs {
        // Damage is something that was done to a run, whoever fitted it.
        let what = match run.wire.condition {
            Fact::Unknown => {
                out.add(
                    CHECK
                        .undecided(
                            say!("damaged-run-unknown", run = &run.tag),
                            say!("damaged-run-find", run = &run.tag),
                        )
                        .grade(if is_live(ctx, *id, run) {
                            Grade::Stop
                        } else {
                            Grade::Fix
                        })
                        .runs([*id]),
                );
                continue;
            }
            Fact::Given(Condition::Sound)
            | Fact::Assumed(Condition::Sound)
            | Fact::Computed(Condition::Sound) => continue,
            Fact::Given(condition) | Fact::Assumed(condition) | Fact::Computed(condition) => condition,
        };
        let live = is_live(ctx, *id, run);
        let grave = live || what == Condition::Melted;
        let danger = match (what, live) {
            (Condition::Melted, _) => "heated",
            (Condition::Cut, true) => "live-end",
            (Condition::Corroded | Condition::Wet, true) => "live",
            (_, true) => "bare",
            _ => "none",
        };
        out.add(
            CHECK
                .finding(
                    say!(
                        "damaged-run-what",
                        run = &run.tag,
                        state = what.word(),
                        danger = danger
                    ),
                    say!("damaged-run-remedy", run = &run.tag, state = what.word()),
                )
                .grade(if grave { Grade::Stop } else { Grade::Fix })
                .runs([*id])
                .mend(Some(Edit::new(
                    say!("mend-lay-anew", run = &run.tag),
                    vec![set_run(*id, renewed(run))],
                ))),
        );
    }
}
