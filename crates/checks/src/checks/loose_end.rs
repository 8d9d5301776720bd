//! `loose-end`: a run that ends nowhere.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::adding::without_run;
use crate::mends::rejoining::rejoin;
use crate::registry::{Check, CheckGroup};
use model::{Edit, End, Run};
use words::say;

pub(crate) static CHECK: Check = Check {
    name: "loose-end",
    grade: Grade::Tidy,
    group: CheckGroup::Conductors,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A
load L1 power=200W
run W1 B1.+ F1.in 10mm2 0.3m RD
run W2 F1.out L1.+ 10mm2 1.7m RD
run W3 L1.- B1.- 10mm2 2m BK
run W4 F1.out loose@400,200 10mm2 1m RD #~ loose-end",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A
load L1 power=200W
run W1 B1.+ F1.in 10mm2 0.3m RD
run W2 F1.out L1.+ 10mm2 1.7m RD
run W3 L1.- B1.- 10mm2 2m BK",
    limits: &[],
    since: "0.1.0",
    run,
};

/// Whether an end of the run lies loose or is on nothing that exists.
pub(crate) fn has_loose_end(ctx: &Ctx<'_>, run: &Run) -> bool {
    run.ends().iter().any(|end| match end {
        End::Loose(_) => true,
        End::On(at) => ctx.wiring.point(at.part, at.terminal.as_str()).is_none(),
    })
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    for (id, run) in &ctx.sheet.runs {
        if !has_loose_end(ctx, run) {
            continue;
        }
        let live = super::damaged_run::is_live(ctx, *id, run);
        let told = [
            "no-return",
            "no-feed",
            "silent-speaker",
            "no-signal",
            "no-turn-on",
            "damaged-run",
        ];
        if !live && out.has_run(*id, &told) {
            continue;
        }
        let unguarded = live
            && ctx
                .study
                .protection
                .get(id)
                .is_some_and(|protection| protection.from.iter().any(|from| !from.protected));
        let what = match (live, unguarded) {
            (true, true) => say!("loose-end-unguarded", run = &run.tag),
            (true, false) => say!("loose-end-live", run = &run.tag),
            _ => say!("loose-end-what", run = &run.tag),
        };
        let finding = CHECK
            .finding(what, say!("loose-end-remedy", run = &run.tag))
            .grade(if live { Grade::Stop } else { Grade::Tidy })
            .runs([*id]);
        let finding = rejoin(ctx, *id, finding);
        let out_of_it = Some(Edit::new(
            say!("mend-take-out", run = &run.tag),
            vec![without_run(*id)],
        ));
        // Where it may have been meant to end somewhere, that it is to go is no matter of course.
        out.add(if finding.mends.is_empty() {
            finding.mend(out_of_it)
        } else {
            finding.mend_by_choice(out_of_it, say!("mend-choice-end", run = &run.tag))
        });
    }
}
