//! `fuse-outsizes-wire`: a device that lets more through than a wire behind it bears.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::ratings::{ratings_of, set_rating};
use crate::mends::{fuse_at_block, rating_needed};
use crate::registry::{Check, CheckGroup};
use crate::wires::{fits_terminals, size_for_current, thicken};
use crate::wording::{A, and_then, fact, to_lay};
use circuit::Device;
use model::conductor::Size;
use model::property::PropertySet;
use model::quantity::Amps;
use model::{Edit, RunId};
use ordered::OrderedMap;
use ordered::Sort as _;
use words::{Saying, figure, say, told};

pub(crate) static CHECK: Check = Check {
    name: "fuse-outsizes-wire",
    grade: Grade::Stop,
    group: CheckGroup::Protection,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 60A #~ fuse-outsizes-wire
load L1 power=100W
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out L1.+ 2.5mm2 2m RD #~ fuse-outsizes-wire
run W3 L1.- B1.- 2.5mm2 2m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 60A
load L1 power=100W
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out L1.+ 16mm2 2m RD
run W3 L1.- B1.- 16mm2 2m BK",
    limits: &["fuse-wire-factor"],
    since: "0.1.0",
    run,
};

/// Properties of a wire that decide what it can carry.
pub(crate) const DECIDES: &[&str] = &["size", "material", "insulation", "surroundings", "bundle"];

/// Which of them are not known.
fn unknown(ctx: &Ctx<'_>, id: RunId) -> Vec<&'static str> {
    let unknown: Vec<&'static str> = DECIDES
        .iter()
        .copied()
        .filter(|name| {
            ctx.run(id)
                .and_then(|run| run.wire.get(name))
                .is_some_and(|text| text == "?")
        })
        .collect();
    if unknown.is_empty() { vec!["size"] } else { unknown }
}

/// The same, in words.
pub(crate) fn missing(ctx: &Ctx<'_>, id: RunId) -> Vec<Saying> {
    unknown(ctx, id).into_iter().map(fact).collect()
}

/// How to find them out.
pub(crate) fn find_out(ctx: &Ctx<'_>, id: RunId) -> Saying {
    let tag = ctx.run_tag(id);
    match unknown(ctx, id)[..] {
        ["size"] => say!("find-size", run = tag),
        ["insulation"] => say!("find-insulation", run = tag),
        _ => say!("find-out", what = missing(ctx, id), of = tag),
    }
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let Some(factor) = ctx.limit("fuse-wire-factor") else {
        return;
    };
    for device in &ctx.study.devices {
        if device.in_return || !ctx.counts(device) {
            continue;
        }
        judge(ctx, out, device, factor);
    }
}

/// The rating that the loads need and the feed bears, and a fuse of its own for each branch behind the device that does
/// not bear that: what a fitter does where some branch is far thinner than its feed.
fn lower_and_fuse_branches(
    ctx: &Ctx<'_>,
    device: &Device,
    thin: &[(RunId, Amps)],
    factor: f64,
) -> Option<Edit> {
    let needs = rating_needed(ctx, device.current.rms.abs());
    let rating = ratings_of(ctx, &device.device)
        .iter()
        .map(|rating| Amps(*rating))
        .find(|rating| *rating >= needs && Some(*rating) <= device.rating)?;
    let branches: Vec<RunId> = thin
        .iter()
        .filter(|(_, bears)| *bears < rating)
        .map(|(run, _)| *run)
        .collect();
    // Without branches the plain mends say it better.
    let (own, fused) = fuse_at_block(ctx, &branches, factor)?;
    let (mut said, mut changes) = (Vec::new(), Vec::new());
    if Some(rating) != device.rating {
        said.push(say!(
            "mend-rating-in",
            rating = figure(rating.0, A),
            device = ctx.device_tag(&device.device),
        ));
        changes.extend(set_rating(ctx, &device.device, rating)?.changes);
    }
    said.extend(own);
    changes.extend(fused);
    Some(Edit::new(say!("mend-fit-several", ratings = said), changes))
}

fn judge(ctx: &Ctx<'_>, out: &mut Findings, device: &Device, factor: f64) {
    let tag = ctx.device_tag(&device.device);
    let makers = ctx.is_makers(device.device.part);
    let judged: Vec<RunId> = device
        .guards
        .iter()
        .copied()
        .filter(|run| ctx.touched_run(*run) || (!makers && ctx.burdened_run(*run)))
        .filter(|run| !out.has_run(*run, &["overloaded-run"]) && !super::hot_place::tells_all(ctx, out, *run))
        // A stub within reach of another source is that source's: no rating here makes it any better.
        .filter(|run| {
            ctx.study.protection.get(run).is_none_or(|protection| {
                protection
                    .from
                    .iter()
                    .all(|from| from.protected || from.self_limiting)
            })
        })
        .collect();
    if judged.is_empty() {
        return;
    }
    let unknown: Vec<RunId> = judged
        .iter()
        .copied()
        .filter(|run| ctx.flow(*run).is_some_and(|flow| flow.allowable.is_none()))
        .collect();
    let Some(rating) = device.rating else {
        out.add(
            CHECK
                .undecided(
                    say!(
                        "fuse-outsizes-wire-no-rating",
                        device = &tag,
                        runs = ctx.run_tags(&judged),
                    ),
                    say!("read-rating", device = &tag),
                )
                .parts([device.device.part]),
        );
        return;
    };
    // Wires between the same two points carry the current together.
    let mut together: OrderedMap<[usize; 2], Amps> = OrderedMap::new();
    let between = |run: RunId| {
        ctx.wiring
            .ends(run)
            .map(|[a, b]| if a <= b { [a, b] } else { [b, a] })
    };
    for run in &device.guards {
        if let (Some(points), Some(allowable)) =
            (between(*run), ctx.flow(*run).and_then(|flow| flow.allowable))
        {
            let sum = together.entry(points).or_default();
            *sum = *sum + allowable;
        }
    }
    let bears = |run: RunId| {
        let alone = ctx.flow(run)?.allowable?;
        let all = between(run).and_then(|points| together.get(&points).copied());
        Some(all.unwrap_or(alone) * factor)
    };
    let mut thin: Vec<(RunId, Amps)> = judged
        .iter()
        .filter_map(|run| Some((*run, bears(*run)?)))
        .filter(|(_, bears)| *bears < rating)
        .collect();
    thin.order_by(|a, b| a.1.0.total_cmp(&b.1.0).then(a.0.cmp(&b.0)));
    if let Some((weakest, weakest_bears)) = thin.first().copied() {
        let runs: Vec<RunId> = thin.iter().map(|(run, _)| *run).collect();
        let others = runs
            .get(1..)
            .filter(|others| !others.is_empty())
            .map(|others| say!("same-holds-for", things = ctx.run_tags(others)));
        let needs = rating_needed(ctx, device.current.rms.abs());
        let lower = ratings_of(ctx, &device.device)
            .iter()
            .rev()
            .map(|rating| Amps(*rating))
            .find(|fits| *fits <= weakest_bears && *fits >= needs);
        let sizes: Option<Vec<(RunId, Size)>> = runs
            .iter()
            .map(|run| size_for_current(ctx, *run, rating / factor.max(0.01)).map(|size| (*run, size)))
            .collect();
        let thicker = sizes
            .as_ref()
            .and_then(|sizes| sizes.first())
            .filter(|(run, size)| fits_terminals(ctx, *run, *size))
            .map(|(_, size)| *size);
        let remedy = match (lower, thicker) {
            (Some(lower), Some(size)) => say!(
                "fuse-outsizes-wire-either",
                rating = figure(lower.0, A),
                device = &tag,
                size = to_lay(size),
                run = ctx.run_tag(weakest),
            ),
            (Some(lower), None) => {
                say!(
                    "fuse-outsizes-wire-fit",
                    rating = figure(lower.0, A),
                    device = &tag
                )
            }
            (None, Some(size)) => say!(
                "fuse-outsizes-wire-lay",
                size = to_lay(size),
                run = ctx.run_tag(weakest),
            ),
            (None, None) => say!("fuse-outsizes-wire-own", run = ctx.run_tag(weakest)),
        };
        let finding = CHECK
            .finding(
                and_then(
                    say!(
                        "fuse-outsizes-wire-what",
                        run = ctx.run_tag(weakest),
                        can = told(weakest_bears.0, rating.0, A),
                        device = &tag,
                        lets = told(rating.0, weakest_bears.0, A),
                    ),
                    others,
                ),
                remedy,
            )
            .parts([device.device.part])
            .runs(runs.iter().copied())
            .measure(rating.0, weakest_bears.0, "A", Some("fuse-wire-factor"))
            .assumes_run(ctx, weakest, DECIDES)
            .mend(lower.and_then(|lower| set_rating(ctx, &device.device, lower)))
            .mend(sizes.and_then(|sizes| {
                let name = match thicker {
                    Some(size) if sizes.len() == 1 => {
                        say!("mend-lay-size", size = to_lay(size), run = ctx.run_tag(weakest))
                    }
                    _ => say!("mend-lay-thicker-behind", device = &tag),
                };
                thicken(ctx, name, &sizes)
            }))
            .mend(lower_and_fuse_branches(ctx, device, &thin, factor));
        let mut finding = finding;
        finding.assumed.extend(ctx.assumed_rating(&device.device));
        out.add(finding);
    }
    for run in unknown {
        out.add(
            CHECK
                .undecided(
                    say!(
                        "fuse-outsizes-wire-unknown",
                        device = &tag,
                        rating = figure(rating.0, A),
                        run = ctx.run_tag(run),
                        missing = missing(ctx, run),
                    ),
                    find_out(ctx, run),
                )
                .runs([run])
                .parts([device.device.part]),
        );
    }
}
