//! `voltage-drop`: too much is lost on the way to a load and back.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::registry::{Check, CheckGroup};
use crate::wires::thicken;
use crate::wording::{V, and_then, to_lay};
use circuit::{Circuit, Outcome};
use model::conductor::{Material, Size};
use model::{PartId, PartKind, RunId};
use ordered::Sort as _;
use ordered::{OrderedMap, OrderedSet};
use reference::conductors::nominal_resistance_per_metre;
use words::{Saying, figure, say, told};

pub(crate) static CHECK: Check = Check {
    name: "voltage-drop",
    grade: Grade::Fix,
    group: CheckGroup::Conductors,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A
load L1 power=250W #~ voltage-drop
run W1 B1.+ F1.in 6mm2 0.3m RD
run W2 F1.out L1.+ 6mm2 7m RD #~ voltage-drop
run W3 L1.- B1.- 6mm2 6m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A
load L1 power=250W
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out L1.+ 16mm2 7m RD
run W3 L1.- B1.- 16mm2 6m BK",
    limits: &["drop-amplifier", "drop-critical", "drop-other", "nominal-voltage"],
    since: "0.1.0",
    run,
};

/// Checks that name the cause of a loss by themselves.
const CAUSES: &[&str] = &[
    "overloaded-run",
    "clad-feed",
    "false-size",
    "damaged-run",
    "poor-ending",
    "hot-joint",
    "ground-surface",
    "ground-forbidden",
    "return-too-long",
    "return-too-thin",
    "return-through-shield",
];

/// The limit for a part, in volts, with its name.
pub(crate) fn limit_for(ctx: &Ctx<'_>, load: PartId) -> Option<(f64, &'static str)> {
    let key = match ctx.kind(load)? {
        PartKind::Amplifier(_) => return ctx.limit("drop-amplifier").map(|volts| (volts, "drop-amplifier")),
        // What carries the signal is disturbed first; a head unit feeds speakers as well and counts as any load.
        PartKind::Processor(_) | PartKind::LineConverter(_) => "drop-critical",
        _ => "drop-other",
    };
    Some((ctx.limit(key)? * ctx.limit("nominal-voltage")?, key))
}

/// Runs on the ways of least resistance, there and back, from and to the first source.
pub(crate) fn way(circuit: &Circuit) -> Vec<RunId> {
    let mut all: Vec<RunId> = Vec::new();
    let feed = circuit
        .feeds
        .first()
        .map(|feed| feed.runs.as_slice())
        .unwrap_or_default();
    let back = circuit
        .returns
        .first()
        .map(|back| back.runs.as_slice())
        .unwrap_or_default();
    for run in feed.iter().chain(back) {
        if !all.contains(run) {
            all.push(*run);
        }
    }
    all
}

struct Over {
    load: PartId,
    drop: f64,
    limit: f64,
    key: &'static str,
}

/// Runs that serve a part whose load is too low.
fn serving_too_low(ctx: &Ctx<'_>, out: &Findings) -> OrderedSet<RunId> {
    let too_low = out.parts_of("load-too-low");
    if too_low.is_empty() {
        return OrderedSet::new();
    }
    ctx.study
        .runs
        .iter()
        .filter(|(_, flow)| flow.serves.iter().any(|part| too_low.contains(part)))
        .map(|(run, _)| *run)
        .collect()
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    if matches!(ctx.study.outcome, Outcome::Collapsed { .. }) {
        return;
    }
    let mut by_worst: OrderedMap<Option<RunId>, Vec<Over>> = OrderedMap::new();
    let too_small = out.parts_of("fuse-undersized");
    let with_neighbour = serving_too_low(ctx, out);
    for (load, circuit) in &ctx.study.circuits {
        let (Some(drop), Some((limit, key))) = (circuit.drop, limit_for(ctx, *load)) else {
            continue;
        };
        if drop.0 <= limit || !ctx.touched_part(*load) {
            continue;
        }
        // Behind an open switch the whole voltage stands across the switch: that is no loss on the way.
        if ctx
            .study
            .parts
            .get(load)
            .is_some_and(|flow| flow.on == Some(false))
        {
            continue;
        }
        let not_here = [
            "no-return",
            "no-feed",
            "supply-collapse",
            "return-through-shield",
            "load-too-low",
        ];
        let small_fuse = !too_small.is_empty()
            && circuit
                .feeds
                .iter()
                .flat_map(|feed| &feed.devices)
                .any(|device| too_small.contains(&device.part));
        if ctx.ungrounded.contains(load) || small_fuse || out.has_part(*load, &not_here) {
            continue;
        }
        let runs = way(circuit);
        // What a neighbour draws too much of, for a load too low, is not this one's matter.
        if runs.iter().any(|run| with_neighbour.contains(run)) {
            continue;
        }
        let lost_in = |run: &RunId| ctx.flow(*run).map_or(0.0, |flow| flow.drop.0);
        let told: f64 = runs
            .iter()
            .filter(|run| out.has_run(**run, CAUSES))
            .map(lost_in)
            .sum();
        let bad_ground = circuit
            .returns
            .iter()
            .flat_map(|back| &back.parts)
            .any(|part| out.has_part(*part, CAUSES));
        if drop.0 - told <= limit || (bad_ground && circuit.feed_drop.is_none_or(|feed| feed.0 <= limit)) {
            continue;
        }
        let worst = runs
            .iter()
            .copied()
            .filter(|run| !out.has_run(*run, CAUSES))
            .max_by(|a, b| lost_in(a).total_cmp(&lost_in(b)).then(b.cmp(a)));
        by_worst.entry(worst).or_default().push(Over {
            load: *load,
            drop: drop.0,
            limit,
            key,
        });
    }
    for (worst, mut loads) in by_worst {
        loads.order_by(|a, b| {
            (b.drop / b.limit)
                .total_cmp(&(a.drop / a.limit))
                .then(a.load.cmp(&b.load))
        });
        let Some(first) = loads.first() else { continue };
        let (lost, most) = (told(first.drop, first.limit, V), told(first.limit, first.drop, V));
        let others = match loads.get(1..).unwrap_or_default() {
            [] => None,
            more => {
                let tags = ctx.part_tags(more.iter().map(|over| &over.load));
                Some(say!("same-holds-for", things = tags))
            }
        };
        let load = ctx.part_tag(first.load);
        let what = match worst.and_then(|run| Some((run, ctx.flow(run)?))) {
            Some((run, flow)) => say!(
                "voltage-drop-in",
                load = load,
                lost = lost,
                part = figure(flow.drop.0, V),
                run = ctx.run_tag(run),
                most = most,
            ),
            None => say!("voltage-drop-what", load = load, lost = lost, most = most),
        };
        let sizes = ctx
            .study
            .circuits
            .get(&first.load)
            .map(|circuit| sizes_that_pass(ctx, circuit, first.drop, first.limit))
            .unwrap_or_default();
        let remedy = match sizes.as_slice() {
            [] => say!("voltage-drop-thicker"),
            sizes => {
                let all: Vec<Saying> = sizes
                    .iter()
                    .map(|(run, size)| say!("size-of-run", size = to_lay(*size), run = ctx.run_tag(*run)))
                    .collect();
                say!("voltage-drop-remedy", sizes = all)
            }
        };
        let mut finding = CHECK
            .finding(and_then(what, others), remedy)
            .parts(loads.iter().map(|over| over.load))
            .runs(worst)
            .measure(first.drop, first.limit, "V", Some(first.key))
            .mend(thicken(
                ctx,
                say!("mend-lay-thicker", load = ctx.part_tag(first.load)),
                &sizes,
            ));
        if let Some(run) = worst {
            finding = finding.assumes_run(ctx, run, &["size", "length", "material"]);
        }
        out.add(finding);
    }
}

/// The same for a load by itself; nothing when its drop passes as it is.
pub(crate) fn sizes_for(ctx: &Ctx<'_>, load: PartId) -> Vec<(RunId, Size)> {
    let found = || {
        let circuit = ctx.study.circuits.get(&load)?;
        let (limit, _) = limit_for(ctx, load)?;
        Some(sizes_that_pass(ctx, circuit, circuit.drop?.0, limit))
    };
    found().unwrap_or_default()
}

/// Sizes for the runs of a circuit with which the drop passes: the run that loses most grows first, step by step.
/// Constant-power loads draw less at a higher voltage, so the estimate errs towards thick.
pub(crate) fn sizes_that_pass(ctx: &Ctx<'_>, circuit: &Circuit, drop: f64, limit: f64) -> Vec<(RunId, Size)> {
    struct Choice {
        run: RunId,
        lost: f64,
        ohms: f64,
        temperature: model::quantity::Celsius,
        /// The next size of the series that the run is made in.
        next: Option<Size>,
        size: Option<Size>,
        now: f64,
    }
    // What is lost with another size.
    let with = |choice: &Choice, size: Size| {
        let ohms = nominal_resistance_per_metre(Material::Copper, size, choice.temperature).0;
        choice.lost * (ohms / choice.ohms).min(1.0)
    };
    let above = |size: Size| size.series().find(|next| next.area().0 > size.area().0 * 1.001);
    let mut all: Vec<Choice> = way(circuit)
        .into_iter()
        .filter(|run| ctx.touched_run(*run))
        .filter_map(|run| {
            let (wire, flow) = (&ctx.run(run)?.wire, ctx.flow(run)?);
            let size = wire.size.value()?;
            let length = wire.length.value()?.0;
            let lost = flow.wire_resistance.0 * flow.current.burst.0.abs();
            (length > 0.0 && lost > 0.0).then(|| Choice {
                run,
                lost,
                ohms: flow.wire_resistance.0 / length,
                temperature: flow.temperature,
                next: above(size),
                size: None,
                now: lost,
            })
        })
        .collect();
    // A little below the limit, so that rounding does not leave it standing.
    let target = limit * 0.99;
    let mut total = drop;
    // Where it does not pass with all of them as thick as they are sold, no step is worth going. A hair for rounding.
    let thickest = |choice: &Choice| {
        let size = choice.next?.series().last()?;
        Some(choice.lost - with(choice, size))
    };
    if drop - all.iter().filter_map(thickest).sum::<f64>() > target + 1e-9 {
        return Vec::new();
    }
    for _ in 0..400 {
        if total <= target {
            return all
                .into_iter()
                .filter_map(|choice| choice.size.map(|size| (choice.run, size)))
                .collect();
        }
        let Some(worst) = all
            .iter_mut()
            .filter(|choice| choice.next.is_some())
            .max_by(|a, b| a.now.total_cmp(&b.now).then(b.run.cmp(&a.run)))
        else {
            return Vec::new();
        };
        let Some(size) = worst.next else {
            return Vec::new();
        };
        let now = with(worst, size);
        total -= worst.now - now;
        (worst.next, worst.size, worst.now) = (above(size), Some(size), now);
    }
    Vec::new()
}
