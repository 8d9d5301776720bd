//! `wrong-level`: line level into a speaker-level input, or the other way round.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::registry::{Check, CheckGroup};
use model::{PartId, RunId};
use ordered::{OrderedMap, OrderedSet};
use words::say;

pub(crate) static CHECK: Check = Check {
    name: "wrong-level",
    grade: Grade::Fix,
    group: CheckGroup::SignalAndControl,
    example: "\
head H1 speaker-outputs=2 line-outputs=0
amplifier A1 sections=\"1x 60W@4ohm min 4ohm\" input-level=line inputs=1 turn-on=sensing #~ wrong-level
speaker LS1 4ohm power=80W front-left
run W1 H1.fl+ A1.in1 1mm2 4m WH #~ wrong-level
run W2 A1.out1+ LS1.+ 2.5mm2 3m WH
run W3 A1.out1- LS1.- 2.5mm2 3m WHBK",
    instead: "\
head H1 speaker-outputs=2 line-outputs=0
line-converter LC1 channels=1
amplifier A1 sections=\"1x 60W@4ohm min 4ohm\" input-level=line inputs=1 turn-on=sensing
speaker LS1 4ohm power=80W front-left
run W1 H1.fl+ LC1.hi1+ 1mm2 4m WH
run W2 H1.fl- LC1.hi1- 1mm2 4m WHBK
run W3 LC1.line1 A1.in1 0.35mm2 0.5m WH ends=plug/plug
run W4 A1.out1+ LS1.+ 2.5mm2 3m WH
run W5 A1.out1- LS1.- 2.5mm2 3m WHBK",
    limits: &[],
    since: "0.1.0",
    run,
};

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let mut wrong: OrderedMap<PartId, (Vec<String>, OrderedSet<RunId>)> = OrderedMap::new();
    for input in &ctx.study.signal.inputs {
        if input.level_fits == Some(false) && ctx.touched_part(input.part) {
            let entry = wrong.entry(input.part).or_default();
            entry.0.push(input.input.to_string());
            entry.1.extend(&input.runs);
        }
    }
    for (part, (inputs, runs)) in wrong {
        out.add(
            CHECK
                .finding(
                    say!("wrong-level-what", inputs = inputs, part = ctx.part_tag(part)),
                    say!("wrong-level-remedy"),
                )
                .parts([part])
                .runs(runs),
        );
    }
}
