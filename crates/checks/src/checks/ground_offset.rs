//! `ground-offset`: equipment that is joined by signal leads and whose grounds differ under load.

use crate::checks::return_through_shield::has_cause;
use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::set_part;
use crate::registry::{Check, CheckGroup};
use crate::wires::thicken_to_share;
use crate::wording::V;
use model::kinds::sound::InputGround;
use model::{Edit, End, PartId, PartKind, Role, RunId, TerminalRef};
use ordered::OrderedMap;
use words::{say, told};

pub(crate) static CHECK: Check = Check {
    name: "ground-offset",
    grade: Grade::Fix,
    group: CheckGroup::Ground,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 100A
fuse F2 strip61 35A
limit ground-offset 0.02
limit shield-current 10
head H1 speaker-outputs=0 line-outputs=1 #~ ground-offset
amplifier A1 sections=\"2x 150W@4ohm min 4ohm\" input-level=line inputs=2 input-ground=joined #~ ground-offset
speaker LS1 4ohm power=200W front-left
speaker LS2 4ohm power=200W front-right
run W1 B1.+ F1.in 25mm2 0.3m RD
run W2 F1.out A1.+ 25mm2 2m RD
run W3 B1.+ F2.in 6mm2 0.3m RD
run W4 F2.out H1.30 6mm2 1m YE
run W5 F2.out H1.15 6mm2 1m RD
run W6 H1.31 B1.- 6mm2 1m BK
run W7 H1.rem A1.rem 0.75mm2 2m BU
run W8 H1.front-l A1.in1 0.35mm2 2m WH ends=plug/plug #~ ground-offset
run W9 H1.front-r A1.in2 0.35mm2 2m RD ends=plug/plug #~ ground-offset
run W10 A1.out1+ LS1.+ 2.5mm2 2m WH
run W11 A1.out1- LS1.- 2.5mm2 2m WHBK
run W12 A1.out2+ LS2.+ 2.5mm2 2m GY
run W13 A1.out2- LS2.- 2.5mm2 2m GYBK
run W14 A1.- B1.- 25mm2 4m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 100A
fuse F2 strip61 35A
limit ground-offset 0.02
limit shield-current 10
head H1 speaker-outputs=0 line-outputs=1
amplifier A1 sections=\"2x 150W@4ohm min 4ohm\" input-level=line inputs=2 input-ground=isolated
speaker LS1 4ohm power=200W front-left
speaker LS2 4ohm power=200W front-right
run W1 B1.+ F1.in 25mm2 0.3m RD
run W2 F1.out A1.+ 25mm2 2m RD
run W3 B1.+ F2.in 6mm2 0.3m RD
run W4 F2.out H1.30 6mm2 1m YE
run W5 F2.out H1.15 6mm2 1m RD
run W6 H1.31 B1.- 6mm2 1m BK
run W7 H1.rem A1.rem 0.75mm2 2m BU
run W8 H1.front-l A1.in1 0.35mm2 2m WH ends=plug/plug
run W9 H1.front-r A1.in2 0.35mm2 2m RD ends=plug/plug
run W10 A1.out1+ LS1.+ 2.5mm2 2m WH
run W11 A1.out1- LS1.- 2.5mm2 2m WHBK
run W12 A1.out2+ LS2.+ 2.5mm2 2m GY
run W13 A1.out2- LS2.- 2.5mm2 2m GYBK
run W14 A1.- B1.- 25mm2 4m BK",
    limits: &["ground-offset"],
    since: "0.1.0",
    run,
};

/// Checks after which an offset is no news.
const CAUSES: &[&str] = &[
    "return-through-shield",
    "return-too-long",
    "return-too-thin",
    "no-return",
    "voltage-drop",
    "overloaded-run",
];

/// Thicker ground leads for the one of two whose return loses more, so that it loses so much less, in volts.
fn thicker(ctx: &Ctx<'_>, parts: [PartId; 2], less: f64) -> Option<Edit> {
    let lost = |part: &PartId| {
        let circuit = ctx.study.circuits.get(part);
        circuit.and_then(|it| it.return_drop).map_or(0.0, |drop| drop.0)
    };
    let worse = parts.iter().copied().max_by(|a, b| lost(a).total_cmp(&lost(b)))?;
    let runs = ctx.runs_on(worse, "-");
    let copper: f64 = runs
        .iter()
        .filter_map(|run| ctx.flow(*run))
        .map(|flow| flow.wire_resistance.0 * flow.current.burst.0.abs())
        .sum();
    thicken_to_share(ctx, &runs, 1.0 - less / copper.max(1e-9))
}

/// The inputs of the one that the signal goes to isolated from its supply ground.
fn isolated(ctx: &Ctx<'_>, runs: &[(RunId, f64)]) -> Option<Edit> {
    let (run, _) = runs.first()?;
    let takes = |at: &TerminalRef| matches!(ctx.role(at), Some(Role::LineIn(_)));
    let ends = ctx.run(*run)?.ends();
    let at = ends
        .into_iter()
        .filter_map(End::terminal)
        .find(|at| takes(at))?
        .part;
    let mut part = ctx.part(at)?.clone();
    match &mut part.is {
        PartKind::Amplifier(it) if it.input_ground == InputGround::Joined => {
            it.input_ground = InputGround::Isolated;
        }
        PartKind::Processor(it) if it.input_ground == InputGround::Joined => {
            it.input_ground = InputGround::Isolated;
        }
        _ => return None,
    }
    let name = say!("mend-isolate-inputs", part = &part.tag);
    Some(Edit::new(name, vec![set_part(at, part)]))
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let Some(limit) = ctx.limit("ground-offset") else {
        return;
    };
    let mut pairs: OrderedMap<[PartId; 2], Vec<(RunId, f64)>> = OrderedMap::new();
    for (run, offset) in &ctx.study.signal.offsets {
        if !offset.joined || offset.offset.0.abs() <= limit || !ctx.touched_run(*run) {
            continue;
        }
        let ends: Vec<PartId> = ctx.landings(*run).iter().map(|(part, _, _)| *part).collect();
        if let [a, b] = ends[..] {
            pairs
                .entry([a.min(b), a.max(b)])
                .or_default()
                .push((*run, offset.offset.0.abs()));
        }
    }
    for (parts, runs) in pairs {
        let is_told = runs.iter().any(|(run, _)| out.has_run(*run, CAUSES))
            || parts.iter().any(|part| {
                out.has_part(*part, CAUSES)
                    || has_cause(ctx, out, *part)
                    || ctx
                        .runs_on(*part, "-")
                        .iter()
                        .any(|run| out.has_run(*run, CAUSES))
            });
        if is_told {
            continue;
        }
        let greatest = runs.iter().map(|(_, volts)| *volts).fold(0.0, f64::max);
        out.add(
            CHECK
                .finding(
                    say!(
                        "ground-offset-what",
                        parts = ctx.part_tags(&parts),
                        differ = told(greatest, limit, V),
                        most = told(limit, greatest, V),
                    ),
                    say!("ground-offset-remedy"),
                )
                .parts(parts)
                .runs(runs.iter().map(|(run, _)| *run))
                .measure(greatest, limit, "V", Some("ground-offset"))
                .mend(thicker(ctx, parts, greatest - limit * 0.95))
                .mend_by_choice(isolated(ctx, &runs), say!("mend-choice-isolate")),
        );
    }
}
