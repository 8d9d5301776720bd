//! `always-on`: a turn-on input that hangs on a permanent feed.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::set_run;
use crate::registry::{Check, CheckGroup};
use model::{Edit, End, PartId, Role, RunId, TerminalRef};
use words::say;

pub(crate) static CHECK: Check = Check {
    name: "always-on",
    grade: Grade::Fix,
    group: CheckGroup::SignalAndControl,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 60A
amplifier A1 sections=\"2x 60W@4ohm min 4ohm\" turn-on=lead #~ always-on
block D1 outputs=2 fuses=60A,2A form=strip30
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out D1.in 16mm2 1m RD
run W3 D1.out1 A1.+ 16mm2 1m RD
run W4 A1.- B1.- 16mm2 2m BK
run W5 D1.out2 A1.rem 0.75mm2 1m BU #~ always-on",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 60A
amplifier A1 sections=\"2x 60W@4ohm min 4ohm\" turn-on=lead
block D1 outputs=2 fuses=60A,2A form=strip30
switch S1 closed=yes
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out D1.in 16mm2 1m RD
run W3 D1.out1 A1.+ 16mm2 1m RD
run W4 A1.- B1.- 16mm2 2m BK
run W5 D1.out2 S1.in 0.75mm2 0.5m BU
run W6 S1.out A1.rem 0.75mm2 0.5m BU",
    limits: &[],
    since: "0.1.0",
    run,
};

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    for (id, turn_on) in &ctx.study.signal.turn_on {
        if !turn_on.always_live || !ctx.touched_part(*id) {
            continue;
        }
        let place = ctx.terminal(*id, "rem");
        // The whole way back to the source belongs to the lead; what is amiss is the piece at the input.
        let on_input = ctx.runs_on(*id, "rem");
        out.add(
            CHECK
                .finding(
                    say!("always-on-what", terminal = &place, part = ctx.part_tag(*id)),
                    say!("always-on-remedy", terminal = &place),
                )
                .parts([*id])
                .runs(on_input.iter().copied())
                .mend(move_lead(ctx, *id, &on_input)),
        );
    }
}

/// Takes a lead of one run to the turn-on output of the sheet, where there is just one.
fn move_lead(ctx: &Ctx<'_>, id: PartId, runs: &[RunId]) -> Option<Edit> {
    let outputs: Vec<TerminalRef> = ctx
        .sheet
        .parts
        .iter()
        .filter(|(other, _)| **other != id)
        .flat_map(|(other, _)| {
            ctx.wiring
                .terminals_of(*other)
                .filter(|(terminal, _)| terminal.role == Role::TurnOnOut)
                .map(|(terminal, _)| TerminalRef::new(*other, terminal.name.as_str()))
        })
        .collect();
    let ([output], [run_id]) = (outputs.as_slice(), runs) else {
        return None;
    };
    let mut run = ctx.run(*run_id)?.clone();
    let own = TerminalRef::new(id, "rem");
    if run.from == End::On(own.clone()) {
        run.to = End::On(output.clone());
    } else if run.to == End::On(own) {
        run.from = End::On(output.clone());
    } else {
        return None;
    }
    run.bends.clear();
    Some(Edit::new(
        say!(
            "mend-take-to",
            run = &run.tag,
            terminal = ctx.terminal(output.part, output.terminal.as_str())
        ),
        vec![set_run(*run_id, run)],
    ))
}
