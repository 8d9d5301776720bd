//! `no-signal`: an input that drives speakers and that nothing feeds.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::leads::signal_leads;
use crate::mends::rejoining::rejoin_at;
use crate::registry::{Check, CheckGroup};
use crate::wiring::BODY;
use model::{PartId, PartKind, Role, RunId};
use ordered::{OrderedMap, OrderedSet};
use words::say;

pub(crate) static CHECK: Check = Check {
    name: "no-signal",
    grade: Grade::Fix,
    group: CheckGroup::SignalAndControl,
    example: "\
head H1 speaker-outputs=0 line-outputs=1
amplifier A1 sections=\"2x 60W@4ohm min 4ohm\" input-level=line inputs=2 turn-on=sensing #~ no-signal
speaker LS1 4ohm power=80W front-left
speaker LS2 4ohm power=80W front-right
run W1 H1.front-l A1.in1 0.35mm2 5m WH ends=plug/plug
run W2 A1.out1+ LS1.+ 2.5mm2 3m WH
run W3 A1.out1- LS1.- 2.5mm2 3m WHBK
run W4 A1.out2+ LS2.+ 2.5mm2 3m GY
run W5 A1.out2- LS2.- 2.5mm2 3m GYBK",
    instead: "\
head H1 speaker-outputs=0 line-outputs=1
amplifier A1 sections=\"2x 60W@4ohm min 4ohm\" input-level=line inputs=2 turn-on=sensing
speaker LS1 4ohm power=80W front-left
speaker LS2 4ohm power=80W front-right
run W1 H1.front-l A1.in1 0.35mm2 5m WH ends=plug/plug
run W2 H1.front-r A1.in2 0.35mm2 5m RD ends=plug/plug
run W3 A1.out1+ LS1.+ 2.5mm2 3m WH
run W4 A1.out1- LS1.- 2.5mm2 3m WHBK
run W5 A1.out2+ LS2.+ 2.5mm2 3m GY
run W6 A1.out2- LS2.- 2.5mm2 3m GYBK",
    limits: &[],
    since: "0.1.0",
    run,
};

/// Whether anything on the sheet gives a signal at all.
pub(crate) fn has_signal(ctx: &Ctx<'_>) -> bool {
    ctx.sheet
        .parts
        .values()
        .any(|part| matches!(part.is, PartKind::HeadUnit(_)))
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    if !has_signal(ctx) {
        return;
    }
    let cut = cut_inputs(ctx);
    let mut silent: OrderedMap<PartId, (Vec<u8>, OrderedSet<RunId>)> = OrderedMap::new();
    for input in &ctx.study.signal.inputs {
        if input.needed
            && input.by.is_empty()
            && ctx.touched_part(input.part)
            && !cut.contains(&(input.part, input.input))
        {
            let entry = silent.entry(input.part).or_default();
            entry.0.push(input.input);
            entry.1.extend(&input.runs);
        }
    }
    for (part, (inputs, runs)) in silent {
        let told: Vec<String> = inputs.iter().map(u8::to_string).collect();
        let mut finding = CHECK
            .finding(
                say!("no-signal-what", inputs = told, part = ctx.part_tag(part)),
                say!("no-signal-remedy"),
            )
            .parts([part])
            .runs(runs);
        for leads in signal_leads(ctx, part, &inputs) {
            finding = if leads.is_clear {
                finding.mend(Some(leads.edit))
            } else {
                finding.mend_by_choice(Some(leads.edit), say!("mend-choice-signal"))
            };
        }
        // One loose lead is the whole of it where one input is silent.
        out.add(if inputs.len() == 1 {
            rejoin_at(ctx, part, finding, |at| {
                matches!(ctx.role(at), Some(Role::LineIn(_) | Role::LevelIn { .. }))
            })
        } else {
            finding
        });
    }
}

/// Inputs that a lead leads to which is cut through: it is told as that.
fn cut_inputs(ctx: &Ctx<'_>) -> OrderedSet<(PartId, u8)> {
    let mut all = OrderedSet::new();
    if ctx.cut.is_empty() || ctx.settings.allowed.contains("damaged-run") {
        return all;
    }
    let island = ctx.wiring.islands(|tie| !tie.ends.contains(&BODY));
    let at = |point: usize| island.get(point).copied().unwrap_or(point);
    let cut: OrderedSet<usize> = ctx.cut.iter().map(|point| at(*point)).collect();
    for id in ctx.sheet.parts.keys() {
        for (terminal, point) in ctx.wiring.terminals_of(*id) {
            let (Role::LineIn(number) | Role::LevelIn { channel: number, .. }) = terminal.role else {
                continue;
            };
            if cut.contains(&at(point)) {
                all.insert((*id, number));
            }
        }
    }
    all
}
