//! `always-on`: a turn-on input that hangs on a permanent feed.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::adding::{Adding, moved};
use crate::mends::set_run;
use crate::registry::{Check, CheckGroup};
use model::kinds::supply::Switch;
use model::quantity::Metres;
use model::{Edit, PartId, Role, RunId, TerminalRef};
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
        let finding = CHECK
            .finding(
                say!("always-on-what", terminal = &place, part = ctx.part_tag(*id)),
                say!("always-on-remedy", terminal = &place),
            )
            .parts([*id])
            .runs(on_input.iter().copied());
        let ways = move_lead(ctx, *id, &on_input);
        let finding = if ways.is_empty() {
            finding.mend_by_choice(switched(ctx, *id, &on_input), say!("mend-choice-buy"))
        } else {
            finding
        };
        let is_clear = ways.len() == 1;
        out.add(ways.into_iter().fold(finding, |finding, way| {
            if is_clear {
                finding.mend(Some(way))
            } else {
                finding.mend_by_choice(Some(way), say!("mend-choice-output"))
            }
        }));
    }
}

/// A switch in a lead of one run.
fn switched(ctx: &Ctx<'_>, id: PartId, runs: &[RunId]) -> Option<Edit> {
    let [run] = runs else { return None };
    let own = TerminalRef::new(id, "rem");
    let ends = ctx.run(*run)?.ends();
    let end = ends.iter().position(|end| end.terminal() == Some(&own))?;
    let mut adding = Adding::new(ctx);
    let half = Metres(ctx.length(*run)?.0 / 2.0);
    let tag = adding.put_into(*run, end, half, Switch::default(), ["out", "in"])?;
    let name = say!("mend-switch", switch = tag, run = ctx.run_tag(*run));
    Some(Edit::new(name, adding.changes))
}

/// Takes a lead of one run to each of the turn-on outputs of the sheet.
fn move_lead(ctx: &Ctx<'_>, id: PartId, runs: &[RunId]) -> Vec<Edit> {
    let [run_id] = runs else { return Vec::new() };
    let Some(run) = ctx.run(*run_id) else {
        return Vec::new();
    };
    let own = TerminalRef::new(id, "rem");
    let ends = run.ends();
    let Some(end) = ends.iter().position(|end| end.terminal() == Some(&own)) else {
        return Vec::new();
    };
    let others = ctx.sheet.parts.keys().filter(|other| **other != id);
    let outputs = others.flat_map(|other| {
        let all = ctx.wiring.terminals_of(*other);
        let outputs = all.filter(|(terminal, _)| terminal.role == Role::TurnOnOut);
        outputs.map(|(terminal, _)| TerminalRef::new(*other, terminal.name.as_str()))
    });
    outputs
        .map(|output| {
            let name = say!(
                "mend-take-to",
                run = &run.tag,
                terminal = ctx.terminal(output.part, output.terminal.as_str())
            );
            Edit::new(name, vec![set_run(*run_id, moved(ctx, run, 1 - end, output))])
        })
        .collect()
}
