//! `self-resetting-main`: the main device closes again by itself.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::set_part;
use crate::registry::{Check, CheckGroup};
use model::kinds::supply::{BreakerReset, DeviceState};
use model::{Edit, PartKind};
use words::say;

pub(crate) static CHECK: Check = Check {
    name: "self-resetting-main",
    grade: Grade::Fix,
    group: CheckGroup::Protection,
    example: "\
battery B1 agm 70Ah cranking=640A
breaker Q1 40A automatic breaking=5000A #~ self-resetting-main
load L1 power=200W
run W1 B1.+ Q1.in 10mm2 0.3m RD
run W2 Q1.out L1.+ 10mm2 1.7m RD
run W3 L1.- B1.- 10mm2 2m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
breaker Q1 40A manual breaking=5000A
load L1 power=200W
run W1 B1.+ Q1.in 10mm2 0.3m RD
run W2 Q1.out L1.+ 10mm2 1.7m RD
run W3 L1.- B1.- 10mm2 2m BK",
    limits: &[],
    since: "0.1.0",
    run,
};

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    for (id, part) in &ctx.sheet.parts {
        let PartKind::Breaker(breaker) = &part.is else {
            continue;
        };
        if breaker.reset != BreakerReset::Automatic
            || breaker.state == DeviceState::Bridged
            || !ctx.touched_part(*id)
        {
            continue;
        }
        // It is a main device when a source reaches it without crossing another.
        let is_first = ctx.runs_of(*id).any(|(run, _)| {
            ctx.study.protection.get(&run).is_some_and(|protection| {
                protection
                    .from
                    .iter()
                    .any(|from| !from.protected && !from.self_limiting)
            })
        });
        if !is_first {
            continue;
        }
        let mut stays_open = part.clone();
        if let PartKind::Breaker(breaker) = &mut stays_open.is {
            breaker.reset = BreakerReset::Manual;
        }
        out.add(
            CHECK
                .finding(
                    say!("self-resetting-main-what", device = &part.tag),
                    say!("self-resetting-main-remedy", device = &part.tag),
                )
                .parts([*id])
                .mend(Some(Edit::new(
                    say!("mend-reset-by-hand", device = &part.tag),
                    vec![set_part(*id, stays_open)],
                ))),
        );
    }
}
