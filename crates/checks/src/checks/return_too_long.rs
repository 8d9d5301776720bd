//! `return-too-long`: an amplifier's ground lead is longer, or has more resistance, than it should.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::grounding::{ground_closer, where_to};
use crate::registry::{Check, CheckGroup};
use crate::wires::thicken_to_share;
use crate::wiring::{BODY, TieKind};
use crate::wording::MILLIOHM;
use circuit::ReturnWay;
use model::quantity::Ohms;
use model::{PartId, PartKind, RunId};
use words::{Unit, figure, say, told};

pub(crate) static CHECK: Check = Check {
    name: "return-too-long",
    grade: Grade::Fix,
    group: CheckGroup::Ground,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 60A
amplifier A1 sections=\"2x 60W@4ohm min 4ohm\" turn-on=sensing #~ return-too-long
ground E1
ground E2
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out A1.+ 16mm2 2m RD
run W3 A1.- E1.stud 16mm2 1.6m BK #~ return-too-long
run W4 B1.- E2.stud 16mm2 0.3m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 60A
amplifier A1 sections=\"2x 60W@4ohm min 4ohm\" turn-on=sensing
ground E1
ground E2
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out A1.+ 16mm2 2m RD
run W3 A1.- E1.stud 16mm2 0.4m BK
run W4 B1.- E2.stud 16mm2 0.3m BK",
    limits: &[
        "ground-lead-length",
        "ground-lead-resistance",
        "return-resistance",
    ],
    since: "0.1.0",
    run,
};

/// Checks that name a cause on the return by itself.
const CAUSES: &[&str] = &[
    "ground-surface",
    "ground-forbidden",
    "poor-ending",
    "hot-joint",
    "damaged-run",
    "return-through-shield",
    "return-too-thin",
    "overloaded-run",
];

/// Runs of a return from the load to the first point on the body, and the ground point there.
pub(crate) fn lead(ctx: &Ctx<'_>, way: &ReturnWay) -> (Vec<RunId>, Option<PartId>) {
    let mut runs = Vec::new();
    for run in &way.runs {
        runs.push(*run);
        let Some(ends) = ctx.wiring.ends(*run) else {
            continue;
        };
        let ground = ends
            .iter()
            .flat_map(|point| ctx.wiring.ties_at(*point))
            .find_map(|tie| match tie.kind {
                TieKind::Own(part) if tie.ends.contains(&BODY) => Some(part),
                _ => None,
            });
        if ground.is_some() || ends.contains(&BODY) {
            return (runs, ground);
        }
    }
    (runs, None)
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    for (load, circuit) in &ctx.study.circuits {
        if !matches!(ctx.kind(*load), Some(PartKind::Amplifier(_))) || !ctx.touched_part(*load) {
            continue;
        }
        if ctx.ungrounded.contains(load) {
            continue;
        }
        // With several sources the lead is the same; the way back is judged by the worst of them.
        let complete: Vec<&ReturnWay> = circuit.returns.iter().filter(|way| way.complete).collect();
        let Some(way) = complete.first() else { continue };
        let (runs, ground) = lead(ctx, way);
        let has_cause = runs.iter().any(|run| out.has_run(*run, CAUSES))
            || ground.is_some_and(|ground| out.has_part(ground, CAUSES))
            || out.has_part(*load, &["return-through-shield", "no-return"]);
        if way.through_body {
            if let Some(run) = runs.iter().find(|run| ctx.length(**run).is_none()) {
                out.add(
                    CHECK
                        .undecided(
                            say!(
                                "return-too-long-unknown",
                                load = ctx.part_tag(*load),
                                run = ctx.run_tag(*run),
                            ),
                            say!("return-too-long-find", run = ctx.run_tag(*run)),
                        )
                        .parts([*load])
                        .runs([*run]),
                );
                continue;
            }
            if length(ctx, out, *load, way, &runs) || has_cause {
                continue;
            }
            if lead_resistance(ctx, out, *load, &runs, ground) {
                continue;
            }
        }
        if !has_cause {
            whole(ctx, out, *load, &complete);
        }
    }
}

fn length(ctx: &Ctx<'_>, out: &mut Findings, load: PartId, way: &ReturnWay, runs: &[RunId]) -> bool {
    let Some(limit) = ctx.limit("ground-lead-length") else {
        return false;
    };
    if way.lead_length.0 <= limit + 1e-9 {
        return false;
    }
    let is = way.lead_length.0;
    let most = told(limit, is, Unit::Metre);
    let closer = match runs {
        [lead] => ground_closer(ctx, load, *lead),
        _ => None,
    };
    let finding = CHECK
        .finding(
            say!(
                "return-too-long-what",
                load = ctx.part_tag(load),
                length = told(is, limit, Unit::Metre),
                most = most,
            ),
            say!("return-too-long-remedy", load = ctx.part_tag(load), most = most),
        )
        .parts([load])
        .runs(runs.iter().copied())
        .measure(is, limit, "m", Some("ground-lead-length"))
        .mend_by_choice(closer, where_to());
    out.add(
        runs.iter()
            .fold(finding, |f, run| f.assumes_run(ctx, *run, &["length"])),
    );
    true
}

/// Resistance of the contact of a ground point, as it is known or usual.
pub(crate) fn contact(ctx: &Ctx<'_>, ground: Option<PartId>) -> Ohms {
    match ground.and_then(|ground| ctx.kind(ground)) {
        Some(PartKind::Ground(it)) => it.contact.value().unwrap_or_else(|| {
            let usual = |surface| reference::contacts::ground_contact(surface).usual;
            it.surface.value().map_or(Ohms(0.0), usual)
        }),
        _ => Ohms(0.0),
    }
}

fn lead_resistance(
    ctx: &Ctx<'_>,
    out: &mut Findings,
    load: PartId,
    runs: &[RunId],
    ground: Option<PartId>,
) -> bool {
    let Some(limit) = ctx.limit("ground-lead-resistance") else {
        return false;
    };
    let wires: f64 = runs
        .iter()
        .filter_map(|run| ctx.flow(*run))
        .map(|flow| flow.wire_resistance.0 + flow.ending_resistance.iter().map(|r| r.0).sum::<f64>())
        .sum();
    let contact = contact(ctx, ground).0;
    let resistance = wires + contact;
    if resistance <= limit {
        return false;
    }
    let (is, most) = (resistance * 1e3, limit * 1e3);
    let copper: f64 = runs
        .iter()
        .filter_map(|run| ctx.flow(*run))
        .map(|flow| flow.wire_resistance.0)
        .sum();
    let thicker = thicken_to_share(ctx, runs, 1.0 - (resistance - limit * 0.98) / copper.max(1e-9));
    let finding = CHECK
        .finding(
            say!(
                "return-too-long-lead",
                load = ctx.part_tag(load),
                ohms = told(is, most, MILLIOHM),
                contact = figure(contact * 1e3, MILLIOHM),
                most = told(most, is, MILLIOHM),
            ),
            say!("return-too-long-lead-remedy"),
        )
        .parts([load].into_iter().chain(ground))
        .runs(runs.iter().copied())
        .measure(is, most, "mΩ", Some("ground-lead-resistance"))
        .mend(thicker);
    let finding = runs.iter().fold(finding, |f, run| {
        f.assumes_run(ctx, *run, &["length", "size", "material"])
    });
    out.add(finding);
    true
}

fn whole(ctx: &Ctx<'_>, out: &mut Findings, load: PartId, ways: &[&ReturnWay]) {
    let Some(limit) = ctx.limit("return-resistance") else {
        return;
    };
    let worst = ways
        .iter()
        .filter_map(|way| way.resistance.map(|resistance| (resistance, *way)))
        .max_by(|a, b| a.0.0.total_cmp(&b.0.0).then(b.1.source.cmp(&a.1.source)));
    let Some((resistance, way)) = worst.filter(|(resistance, _)| resistance.0 > limit) else {
        return;
    };
    // A weak spot that has a finding of its own is that finding's matter.
    let is_told = way.weakest_run.is_some_and(|run| out.has_run(run, CAUSES))
        || way.weakest_part.is_some_and(|part| out.has_part(part, CAUSES))
        || way.runs.iter().any(|run| out.has_run(*run, CAUSES))
        || way.parts.iter().any(|part| out.has_part(*part, CAUSES));
    if is_told {
        return;
    }
    let thicker = way.weakest_run.and_then(|run| {
        let own = ctx.flow(run)?.wire_resistance.0;
        thicken_to_share(ctx, &[run], 1.0 - (resistance.0 - limit * 0.98) / own.max(1e-9))
    });
    let (is, limit) = (resistance.0 * 1e3, limit * 1e3);
    let (ohms, most) = (told(is, limit, MILLIOHM), told(limit, is, MILLIOHM));
    let (load_tag, source) = (ctx.part_tag(load), ctx.part_tag(way.source));
    let weakest = way.weakest_run.map(|run| ctx.run_tag(run));
    let what = match weakest.or_else(|| way.weakest_part.map(|part| ctx.part_tag(part))) {
        Some(weakest) => say!(
            "return-too-long-weakest",
            load = load_tag,
            source = source,
            ohms = ohms,
            weakest = weakest,
            most = most,
        ),
        None => say!(
            "return-too-long-whole",
            load = load_tag,
            source = source,
            ohms = ohms,
            most = most,
        ),
    };
    out.add(
        CHECK
            .finding(what, say!("return-too-long-whole-remedy"))
            .parts([load].into_iter().chain(way.weakest_part))
            .runs(way.weakest_run)
            .measure(is, limit, "mΩ", Some("return-resistance"))
            .mend(thicker),
    );
}
