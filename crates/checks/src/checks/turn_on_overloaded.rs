//! `turn-on-overloaded`: more hangs on a turn-on output than it can carry.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::registry::{Check, CheckGroup};
use crate::wording::{A, assumed};
use words::{say, told};

pub(crate) static CHECK: Check = Check {
    name: "turn-on-overloaded",
    grade: Grade::Fix,
    group: CheckGroup::SignalAndControl,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A
head H1 speaker-outputs=0 turn-on-capacity=0.1A #~ turn-on-overloaded
relay K1 coil=85ohm
ground E1
ground E2
run W1 B1.+ F1.in 6mm2 0.3m RD
run W2 F1.out H1.30 6mm2 1m YE
run W3 F1.out H1.15 6mm2 1m RD
run W4 H1.31 E1.stud 6mm2 0.3m BK
run W5 H1.rem K1.86 0.75mm2 2m BU
run W6 K1.85 E1.stud 0.75mm2 0.3m BK
run W7 B1.- E2.stud 16mm2 0.3m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A
head H1 speaker-outputs=0 turn-on-capacity=0.3A
relay K1 coil=85ohm
ground E1
ground E2
run W1 B1.+ F1.in 6mm2 0.3m RD
run W2 F1.out H1.30 6mm2 1m YE
run W3 F1.out H1.15 6mm2 1m RD
run W4 H1.31 E1.stud 6mm2 0.3m BK
run W5 H1.rem K1.86 0.75mm2 2m BU
run W6 K1.85 E1.stud 0.75mm2 0.3m BK
run W7 B1.- E2.stud 16mm2 0.3m BK",
    limits: &["turn-on-current"],
    since: "0.1.0",
    run,
};

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    for output in &ctx.study.signal.turn_on_outputs {
        if !ctx.touched_part(output.part) {
            continue;
        }
        let (capacity, key) = match output.capacity {
            Some(capacity) => (capacity.0, None),
            None => match ctx.limit("turn-on-current") {
                Some(usual) => (usual, Some("turn-on-current")),
                None => continue,
            },
        };
        if output.asked.0 <= capacity {
            continue;
        }
        let place = ctx.terminal(output.part, &output.terminal);
        let mut finding = CHECK
            .finding(
                say!(
                    "turn-on-overloaded-what",
                    asked = told(output.asked.0, capacity, A),
                    terminal = place,
                    parts = ctx.part_tags(&output.serves),
                    can = told(capacity, output.asked.0, A),
                ),
                say!("turn-on-overloaded-remedy"),
            )
            .parts([output.part])
            .measure(output.asked.0, capacity, "A", key)
            .assumes_part(ctx, output.part, &["turn-on-capacity"]);
        if key.is_some() {
            finding
                .assumed
                .insert(assumed(&ctx.part_tag(output.part), "turn-on-capacity"));
        }
        out.add(finding);
    }
}
