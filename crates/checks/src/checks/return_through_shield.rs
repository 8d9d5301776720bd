//! `return-through-shield`: supply current in the shield of a signal lead.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::grounding::{back_by, way_back};
use crate::registry::{Check, CheckGroup};
use crate::wording::A;
use circuit::Circuit;
use model::quantity::Amps;
use model::{PartId, RunId};
use ordered::Sort as _;
use ordered::{OrderedMap, OrderedSet};
use words::{say, told};

pub(crate) static CHECK: Check = Check {
    name: "return-through-shield",
    grade: Grade::Stop,
    group: CheckGroup::Ground,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 60A
fuse F2 strip61 35A
head H1 speaker-outputs=0 line-outputs=1
amplifier A1 sections=\"2x 60W@4ohm min 4ohm\" input-level=line inputs=2 input-ground=joined #~ return-through-shield
speaker LS1 4ohm power=80W front-left
speaker LS2 4ohm power=80W front-right
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out A1.+ 16mm2 2m RD
run W3 B1.+ F2.in 6mm2 0.3m RD
run W4 F2.out H1.30 6mm2 1m YE
run W5 F2.out H1.15 6mm2 1m RD
run W6 H1.31 B1.- 6mm2 1m BK
run W7 H1.rem A1.rem 0.75mm2 2m BU
run W8 H1.front-l A1.in1 0.35mm2 2m WH ends=plug/plug #~ return-through-shield
run W9 H1.front-r A1.in2 0.35mm2 2m RD ends=plug/plug #~ return-through-shield
run W10 A1.out1+ LS1.+ 2.5mm2 2m WH
run W11 A1.out1- LS1.- 2.5mm2 2m WHBK
run W12 A1.out2+ LS2.+ 2.5mm2 2m GY
run W13 A1.out2- LS2.- 2.5mm2 2m GYBK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 60A
fuse F2 strip61 35A
head H1 speaker-outputs=0 line-outputs=1
amplifier A1 sections=\"2x 60W@4ohm min 4ohm\" input-level=line inputs=2 input-ground=isolated
speaker LS1 4ohm power=80W front-left
speaker LS2 4ohm power=80W front-right
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out A1.+ 16mm2 2m RD
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
run W14 A1.- B1.- 16mm2 2m BK",
    limits: &["shield-current"],
    since: "0.1.0",
    run,
};

/// Checks that name the cause of a bad ground by themselves.
const CAUSES: &[&str] = &[
    "ground-surface",
    "ground-forbidden",
    "poor-ending",
    "hot-joint",
    "damaged-run",
];

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let Some(limit) = ctx.limit("shield-current") else {
        return;
    };
    let mut seen: OrderedSet<RunId> = OrderedSet::new();
    // Loads without a ground of their own come first: their current is what the others' shields carry too.
    let mut loads: Vec<(bool, PartId, &Circuit)> = ctx
        .study
        .circuits
        .iter()
        .filter(|(load, circuit)| {
            ctx.touched_part(**load) && circuit.returns.iter().any(|back| !back.shields.is_empty())
        })
        .map(|(load, circuit)| (!ctx.ungrounded.contains(load), *load, circuit))
        .collect();
    loads.order_by_key(|(grounded, load, _)| (*grounded, *load));
    for (own_ground, load, circuit) in loads {
        let mut shields: OrderedMap<RunId, Amps> = OrderedMap::new();
        for (run, amps) in circuit.returns.iter().flat_map(|back| &back.shields) {
            let most = shields.entry(*run).or_default();
            *most = most.max(amps.abs());
        }
        let sum: f64 = shields.values().map(|amps| amps.0).sum();
        let greatest = shields.values().map(|amps| amps.0).fold(0.0, f64::max);
        if greatest <= limit {
            continue;
        }
        let runs: Vec<RunId> = shields.keys().copied().collect();
        // Where both ends have a ground the current is the worse ground's matter: the other end may be the cause.
        if own_ground && (runs.iter().any(|run| seen.contains(run)) || has_cause(ctx, out, load)) {
            continue;
        }
        seen.extend(&runs);
        let all = sum.max(greatest);
        let (carried, bears) = (told(all, limit, A), told(limit, all, A));
        let tag = ctx.part_tag(load);
        let (what, remedy) = if own_ground {
            (
                say!(
                    "return-through-shield-what",
                    carried = carried,
                    load = &tag,
                    runs = ctx.run_tags(&runs),
                    bears = bears,
                ),
                say!("return-through-shield-remedy", load = &tag),
            )
        } else {
            (
                say!(
                    "return-through-shield-only",
                    load = &tag,
                    carried = carried,
                    runs = ctx.run_tags(&runs),
                    bears = bears,
                ),
                say!("return-through-shield-only-remedy", load = &tag),
            )
        };
        let ground = (!own_ground && ctx.runs_on(load, "-").is_empty())
            .then(|| way_back(ctx, load, "-", "+"))
            .flatten();
        out.add(
            CHECK
                .finding(what, remedy)
                .parts([load])
                .runs(runs)
                .measure(greatest, limit, "A", Some("shield-current"))
                .mend_by_choice(ground, back_by()),
        );
    }
}

/// Whether the way back of a load has a finding that explains a bad ground.
pub(crate) fn has_cause(ctx: &Ctx<'_>, out: &Findings, load: PartId) -> bool {
    ctx.study.circuits.get(&load).is_some_and(|circuit| {
        circuit.returns.iter().any(|back| {
            back.runs.iter().any(|run| out.has_run(*run, CAUSES))
                || back.parts.iter().any(|part| out.has_part(*part, CAUSES))
        })
    })
}
