//! `clad-feed`: copper-clad aluminium that was sized as if it were copper.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::rating_needed;
use crate::registry::{Check, CheckGroup};
use crate::wires::{size_for_current, thicken};
use crate::wording::{A, V, size as wire_size, to_lay};
use model::conductor::{Material, Size};
use model::quantity::Amps;
use model::{PartId, RunId};
use ordered::OrderedMap;
use reference::conductors::nominal_resistance_per_metre;
use words::{Unit, figure, say, told};

pub(crate) static CHECK: Check = Check {
    name: "clad-feed",
    grade: Grade::Fix,
    group: CheckGroup::Conductors,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 60A #~ fuse-outsizes-wire
load L1 power=300W
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out L1.+ 8mm2 1m RD clad10 #~ clad-feed fuse-outsizes-wire
run W3 L1.- B1.- 16mm2 1m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 60A
load L1 power=300W
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out L1.+ 16mm2 1m RD copper
run W3 L1.- B1.- 16mm2 1m BK",
    limits: &[
        "ampacity-factor",
        "fuse-wire-factor",
        "drop-amplifier",
        "drop-critical",
        "drop-other",
    ],
    since: "0.1.0",
    run,
};

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    // Sizes with which a load's drop passes: of one load the same for every run on its way.
    let mut passing: OrderedMap<PartId, Vec<(RunId, Size)>> = OrderedMap::new();
    for (id, run) in &ctx.sheet.runs {
        let (Some(material), Some(size)) = (run.wire.material.value(), run.wire.size.value()) else {
            continue;
        };
        if !material.is_clad() || !ctx.is_supply(*id) || !ctx.touched_run(*id) {
            continue;
        }
        let Some(flow) = ctx.flow(*id) else { continue };
        let factor = ctx.limit("fuse-wire-factor").unwrap_or(1.0).max(0.01);
        let guard = ctx
            .guards_of(*id)
            .filter(|device| !device.in_return && ctx.counts(device))
            .filter_map(|device| device.rating)
            .reduce(Amps::max)
            .map_or(Amps(0.0), |rating| rating / factor);
        let steady = flow.current.rms.abs();
        let needs = guard.max(steady);
        let too_weak = flow.allowable.is_some_and(|bears| bears < needs);
        let lossy = flow
            .serves
            .iter()
            .filter_map(|load| Some((*load, ctx.study.circuits.get(load)?.drop?)))
            .find(|(load, drop)| {
                super::voltage_drop::limit_for(ctx, *load).is_some_and(|(limit, _)| drop.0 > limit)
            });
        let ohms = |material| nominal_resistance_per_metre(material, size, flow.temperature).0;
        let equal = size.area().0 * ohms(Material::Copper) / ohms(material).max(1e-12);
        let equal = figure(equal, Unit::SquareMillimetre);
        let (what, measured) = match (flow.allowable.filter(|_| too_weak), lossy) {
            (Some(bears), _) => (
                say!(
                    "clad-feed-weak",
                    run = &run.tag,
                    size = wire_size(size),
                    equal = equal,
                    asks = told(needs.0, bears.0, A),
                    can = told(bears.0, needs.0, A),
                ),
                Some((needs.0, bears.0)),
            ),
            (None, Some((load, drop))) => (
                say!(
                    "clad-feed-lossy",
                    run = &run.tag,
                    size = wire_size(size),
                    equal = equal,
                    load = ctx.part_tag(load),
                    drop = figure(drop.0, V),
                ),
                None,
            ),
            (None, None) => continue,
        };
        let copper = replacement(
            ctx,
            *id,
            needs.max(rating_needed(ctx, steady)),
            lossy.map(|(load, _)| {
                let sizes = || super::voltage_drop::sizes_for(ctx, load);
                passing.entry(load).or_insert_with(sizes).as_slice()
            }),
        );
        let remedy = match copper.iter().find(|(run, _)| run == id) {
            Some((_, size)) => say!("clad-feed-remedy", size = to_lay(*size)),
            None => say!("clad-feed-copper"),
        };
        let mut finding = CHECK.finding(what, remedy);
        if let Some((asks, can)) = measured {
            finding = finding.measure(asks, can, "A", Some("fuse-wire-factor"));
        }
        out.add(
            finding
                .runs([*id])
                .assumes_run(ctx, *id, &["size", "material"])
                .mend(thicken(ctx, say!("mend-lay-copper", run = &run.tag), &copper)),
        );
    }
}

/// Copper in its place: it bears what is asked, and the drop of the load passes with those sizes.
fn replacement(
    ctx: &Ctx<'_>,
    id: RunId,
    needs: Amps,
    passing: Option<&[(RunId, Size)]>,
) -> Vec<(RunId, Size)> {
    let Some(size) = size_for_current(ctx, id, needs) else {
        return Vec::new();
    };
    let mut all = passing.unwrap_or_default().to_vec();
    match all.iter_mut().find(|(run, _)| *run == id) {
        Some((_, other)) if other.area() < size.area() => *other = size,
        Some(_) => {}
        None => all.push((id, size)),
    }
    all
}
