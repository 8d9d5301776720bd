//! `return-too-thin`: a ground lead that conducts less than the feed, or a strap that carries too much.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::adding::{Adding, beside};
use crate::registry::{Check, CheckGroup};
use crate::wires::{size_of, thicken};
use crate::wording::{A, size as wire_size, to_lay};
use model::conductor::{Material, Size};
use model::quantity::Celsius;
use model::{Edit, PartId, PartKind, RunId};
use reference::conductors::nominal_resistance_per_metre;
use words::{Unit, Value, figure, say, told};

pub(crate) static CHECK: Check = Check {
    name: "return-too-thin",
    grade: Grade::Fix,
    group: CheckGroup::Ground,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 60A
amplifier A1 sections=\"2x 60W@4ohm min 4ohm\" turn-on=sensing
ground E1
ground E2
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out A1.+ 16mm2 2m RD
run W3 A1.- E1.stud 6mm2 0.4m BK #~ return-too-thin
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
    limits: &["return-over-feed"],
    since: "0.1.0",
    run,
};

/// Siemens times metre at 20 °C of a run; `None` where nothing tells it. What was counted or measured wins.
fn conductance(ctx: &Ctx<'_>, id: RunId) -> Option<f64> {
    let per_metre = circuit::cold_per_metre(ctx.run(id)?)?.0;
    (per_metre > 0.0).then(|| 1.0 / per_metre)
}

/// The same of copper of a size.
fn copper_conductance(size: Size) -> f64 {
    1.0 / nominal_resistance_per_metre(Material::Copper, size, Celsius(20.0))
        .0
        .max(1e-9)
}

/// Whether the ground leads of an amplifier conduct less than its feeds, per metre, with copper of these sizes laid; `None`
/// where that is not known.
pub(crate) fn lags_behind(ctx: &Ctx<'_>, amplifier: PartId, laid: &[(RunId, Size)]) -> Option<bool> {
    let ratio = ctx.limit("return-over-feed")?;
    let sum = |terminal: &str| -> Option<f64> {
        let runs = ctx.runs_on(amplifier, terminal);
        let of = |id: &RunId| {
            let new = laid.iter().find(|(run, _)| run == id);
            new.map_or_else(
                || conductance(ctx, *id),
                |(_, size)| Some(copper_conductance(*size)),
            )
        };
        runs.iter().map(of).sum()
    };
    Some(falls_short(sum("-")?, sum("+")?, ratio))
}

/// A hundredth for sizes that are called differently and are the same.
fn falls_short(back: f64, feed: f64, ratio: f64) -> bool {
    back < feed * ratio * 0.99
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    leads(ctx, out);
    straps(ctx, out);
}

fn leads(ctx: &Ctx<'_>, out: &mut Findings) {
    let Some(ratio) = ctx.limit("return-over-feed") else {
        return;
    };
    for (id, part) in &ctx.sheet.parts {
        if !matches!(part.is, PartKind::Amplifier(_)) || !ctx.touched_part(*id) {
            continue;
        }
        // Wires that also go on from the terminal to a neighbour count on both sides alike.
        let (feeds, backs) = (ctx.runs_on(*id, "+"), ctx.runs_on(*id, "-"));
        let is_told = backs
            .iter()
            .any(|run| out.has_run(*run, &["overloaded-run", "damaged-run"]));
        if feeds.is_empty() || backs.is_empty() || is_told {
            continue;
        }
        let sum = |runs: &[RunId]| runs.iter().map(|run| conductance(ctx, *run)).sum::<Option<f64>>();
        let (Some(feed), Some(back)) = (sum(&feeds), sum(&backs)) else {
            continue;
        };
        if !falls_short(back, feed, ratio) {
            continue;
        }
        let words = |runs: &[RunId]| {
            let sizes = runs.iter().filter_map(|run| ctx.run(*run)?.wire.size.value());
            Value::List(sizes.map(wire_size).collect())
        };
        let share = back / feed;
        // Of the series that the lead is made in.
        let series = backs.first().map(|run| size_of(ctx, *run).series());
        let size = series
            .into_iter()
            .flatten()
            .find(|size| copper_conductance(*size) >= feed * ratio);
        let mend = match (backs.as_slice(), size) {
            ([one], Some(size)) => thicken(
                ctx,
                say!("mend-lay-size", size = to_lay(size), run = ctx.run_tag(*one)),
                &[(*one, size)],
            ),
            _ => None,
        };
        let finding = CHECK
            .finding(
                say!(
                    "return-too-thin-what",
                    amplifier = &part.tag,
                    back = words(&backs),
                    share = told(share, ratio, Unit::Percent),
                    feed = words(&feeds),
                    least = told(ratio, share, Unit::Percent),
                ),
                match size {
                    Some(size) => say!(
                        "return-too-thin-remedy",
                        size = to_lay(size),
                        runs = ctx.run_tags(&backs),
                    ),
                    None => say!("return-too-thin-copper"),
                },
            )
            .runs(backs.iter().copied())
            .measure(share, ratio, "", Some("return-over-feed"))
            .mend(mend);
        let finding = backs
            .iter()
            .chain(&feeds)
            .fold(finding, |f, run| f.assumes_run(ctx, *run, &["size", "material"]));
        out.add(finding);
    }
}

/// One more strap beside the one that carries most, like it.
fn another_strap(ctx: &Ctx<'_>, vehicle: PartId, carried: f64, bears: f64) -> Option<Edit> {
    let straps = ctx.runs_on(vehicle, "-");
    let count = straps.len() as f64;
    if carried * count / (count + 1.0) > bears {
        return None;
    }
    let carries = |run: &RunId| ctx.flow(*run).map_or(0.0, |flow| flow.current.rms.abs().0);
    let most = straps
        .iter()
        .copied()
        .max_by(|a, b| carries(a).total_cmp(&carries(b)))?;
    let run = ctx.run(most)?;
    let (from, to) = (run.from.terminal()?.clone(), run.to.terminal()?.clone());
    let mut adding = Adding::new(ctx);
    let (_, tag) = adding.run(beside(run, from, to));
    Some(Edit::new(
        say!("mend-strap", run = tag, other = &run.tag),
        adding.changes,
    ))
}

fn straps(ctx: &Ctx<'_>, out: &mut Findings) {
    for (id, part) in &ctx.sheet.parts {
        let PartKind::Vehicle(vehicle) = &part.is else {
            continue;
        };
        let added = ctx.study.circuits.iter().any(|(load, circuit)| {
            !ctx.is_makers(*load) && circuit.returns.iter().any(|back| back.through_body)
        });
        let carried: f64 = ctx
            .runs_on(*id, "-")
            .iter()
            .filter_map(|run| ctx.flow(*run))
            .map(|flow| flow.current.rms.abs().0)
            .fold(0.0, f64::max);
        let Some(bears) = vehicle.strap_current.value() else {
            continue;
        };
        if !added || carried <= bears.0 {
            continue;
        }
        out.add(
            CHECK
                .finding(
                    say!(
                        "return-too-thin-strap",
                        vehicle = &part.tag,
                        carries = told(carried, bears.0, A),
                        can = told(bears.0, carried, A),
                    ),
                    say!(
                        "return-too-thin-strap-remedy",
                        missing = figure(carried - bears.0, A)
                    ),
                )
                .parts([*id])
                .measure(carried, bears.0, "A", None)
                .assumes_part(ctx, *id, &["strap-current"])
                .mend(another_strap(ctx, *id, carried, bears.0)),
        );
    }
}
