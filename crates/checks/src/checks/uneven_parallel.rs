//! `uneven-parallel`: wires side by side that do not share, or that no longer are protected when one of them is left.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::adding::without_run;
use crate::mends::rating_needed;
use crate::mends::ratings::{ratings_of, set_rating};
use crate::registry::{Check, CheckGroup};
use crate::wires::{allowable_at, size_of, thicken};
use crate::wording::{A, to_lay};
use circuit::Device;
use model::conductor::Material;
use model::quantity::Amps;
use model::{Edit, RunId};
use ordered::OrderedMap;
use words::{Unit, figure, say, told};

pub(crate) static CHECK: Check = Check {
    name: "uneven-parallel",
    grade: Grade::Fix,
    group: CheckGroup::Protection,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 100A
load L1 power=400W
run W1 B1.+ F1.in 35mm2 0.3m RD
run W2 F1.out L1.+ 10mm2 2m RD #~ uneven-parallel
run W3 F1.out L1.+ 10mm2 2m RD #~ uneven-parallel
run W4 L1.- B1.- 35mm2 2m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 100A
load L1 power=400W
run W1 B1.+ F1.in 35mm2 0.3m RD
run W2 F1.out L1.+ 35mm2 2m RD
run W3 L1.- B1.- 35mm2 2m BK",
    limits: &["parallel-imbalance", "fuse-wire-factor"],
    since: "0.1.0",
    run,
};

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let mut groups: OrderedMap<[usize; 2], Vec<RunId>> = OrderedMap::new();
    for id in ctx.sheet.runs.keys().filter(|id| ctx.is_supply(**id)) {
        if let Some([a, b]) = ctx.wiring.ends(*id)
            && a != b
        {
            groups.entry([a.min(b), a.max(b)]).or_default().push(*id);
        }
    }
    for runs in groups.values().filter(|runs| runs.len() > 1) {
        let told = runs
            .iter()
            .any(|run| out.has_run(*run, &["overloaded-run", "damaged-run", "poor-ending"]));
        if told || !runs.iter().any(|run| ctx.touched_run(*run)) {
            continue;
        }
        if !alone(ctx, out, runs) {
            shares(ctx, out, runs);
        }
    }
}

/// Whether the device in front is too large for each alone; true when told.
fn alone(ctx: &Ctx<'_>, out: &mut Findings, runs: &[RunId]) -> bool {
    let factor = ctx.limit("fuse-wire-factor").unwrap_or(1.0);
    let guard = ctx
        .study
        .devices
        .iter()
        .filter(|device| {
            !device.in_return && ctx.counts(device) && runs.iter().any(|run| device.guards.contains(run))
        })
        .filter_map(|device| device.rating.map(|rating| (rating, device)))
        .max_by(|a, b| a.0.0.total_cmp(&b.0.0).then(b.1.device.cmp(&a.1.device)));
    let weakest = runs
        .iter()
        .filter_map(|run| Some((ctx.flow(*run)?.allowable? * factor, *run)))
        .min_by(|a, b| a.0.0.total_cmp(&b.0.0).then(a.1.cmp(&b.1)));
    let (Some((rating, device)), Some((bears, run))) = (guard, weakest) else {
        return false;
    };
    // Together too thin as well: that is fuse-outsizes-wire.
    if rating <= bears || out.has_run(run, &["fuse-outsizes-wire"]) {
        return false;
    }
    let guards = ctx.study.devices.iter();
    let guards = guards.filter(|device| {
        let guards = runs.iter().any(|run| device.guards.contains(run));
        !device.in_return && ctx.counts(device) && guards && device.rating.is_some_and(|it| it > bears)
    });
    let larger = guards.count();
    let tag = ctx.device_tag(&device.device);
    out.add(
        CHECK
            .finding(
                say!(
                    "uneven-parallel-alone",
                    runs = ctx.run_tags(runs),
                    device = tag,
                    lets = told(rating.0, bears.0, A),
                    run = ctx.run_tag(run),
                    can = told(bears.0, rating.0, A),
                ),
                say!("uneven-parallel-alone-remedy", rating = figure(rating.0, A)),
            )
            .runs(runs.iter().copied())
            .measure(rating.0, bears.0, "A", Some("fuse-wire-factor"))
            .mend(smaller(ctx, device, bears).filter(|_| larger == 1))
            .mend(one_wire(ctx, runs, Some(rating)))
            .assumes_run(ctx, run, super::fuse_outsizes_wire::DECIDES),
    );
    true
}

/// The largest rating of what guards these.
fn rating_of(ctx: &Ctx<'_>, runs: &[RunId]) -> Option<Amps> {
    let guards = runs.iter().flat_map(|run| ctx.guards_of(*run));
    let ratings = guards
        .filter(|device| ctx.counts(device))
        .filter_map(|device| device.rating);
    ratings.reduce(|a, b| if a.0 >= b.0 { a } else { b })
}

/// The largest rating that one wire alone bears, where it passes what is drawn.
fn smaller(ctx: &Ctx<'_>, device: &Device, bears: Amps) -> Option<Edit> {
    let needs = rating_needed(ctx, device.current.rms.abs());
    let mut ratings = ratings_of(ctx, &device.device).iter().rev();
    let rating = ratings
        .find(|rating| **rating <= bears.0)
        .filter(|rating| **rating >= needs.0)?;
    set_rating(ctx, &device.device, Amps(*rating))
}

/// All of them as thick as the one that takes most, where they are about as long.
fn alike(ctx: &Ctx<'_>, runs: &[RunId], most: RunId) -> Option<Edit> {
    let (size, length) = (size_of(ctx, most), ctx.length(most)?.0);
    let mut sizes = Vec::new();
    for run in runs.iter().filter(|run| **run != most) {
        if (ctx.length(*run)?.0 / length - 1.0).abs() > 0.1 {
            return None;
        }
        if size_of(ctx, *run).area() < size.area() {
            sizes.push((*run, size));
        }
    }
    let tags = sizes
        .iter()
        .map(|(run, _)| say!("size-of-run", size = to_lay(size), run = ctx.run_tag(*run)));
    thicken(
        ctx,
        say!("mend-lay-sizes", sizes = tags.collect::<Vec<_>>()),
        &sizes,
    )
}

/// One wire in the place of all: as thick as they are together, and no thinner than what guards them takes.
fn one_wire(ctx: &Ctx<'_>, runs: &[RunId], rating: Option<Amps>) -> Option<Edit> {
    let (first, rest) = runs.split_first()?;
    let own = size_of(ctx, *first);
    let sum: f64 = runs.iter().map(|run| size_of(ctx, *run).area().0).sum();
    let factor = ctx.limit("fuse-wire-factor").unwrap_or(1.0).max(0.01);
    let size = own.series().find(|size| {
        let bears = allowable_at(ctx, *first, *size, Material::Copper);
        let enough = |rating: Amps| bears.is_some_and(|bears| bears.0 * factor >= rating.0);
        size.area().0 >= sum * 0.999 && rating.is_none_or(enough)
    })?;
    let name = say!(
        "mend-one-wire",
        size = to_lay(size),
        run = ctx.run_tag(*first),
        others = ctx.run_tags(rest)
    );
    let mut edit = thicken(ctx, name, &[(*first, size)])?;
    edit.changes.extend(rest.iter().map(|run| without_run(*run)));
    Some(edit)
}

/// Whether one takes more than its share.
fn shares(ctx: &Ctx<'_>, out: &mut Findings, runs: &[RunId]) {
    let Some(limit) = ctx.limit("parallel-imbalance") else {
        return;
    };
    let conductance = |run: &RunId| {
        let flow = ctx.flow(*run)?;
        let ohms = flow.wire_resistance.0 + flow.ending_resistance.iter().map(|r| r.0).sum::<f64>();
        (ohms > 0.0).then(|| 1.0 / ohms)
    };
    let all: Option<Vec<f64>> = runs.iter().map(conductance).collect();
    let Some(all) = all else { return };
    let equal = all.iter().sum::<f64>() / all.len() as f64;
    let greatest = all
        .iter()
        .zip(runs)
        .max_by(|a, b| a.0.total_cmp(b.0).then(b.1.cmp(a.1)));
    let Some((most, run)) = greatest else { return };
    let excess = most / equal - 1.0;
    if excess <= limit {
        return;
    }
    let carried: Amps = runs
        .iter()
        .filter_map(|run| ctx.flow(*run))
        .map(|flow| flow.current.rms.abs())
        .sum();
    let (takes, share) = (
        (1.0 + excess) / all.len() as f64,
        (1.0 + limit) / all.len() as f64,
    );
    out.add(
        CHECK
            .finding(
                say!(
                    "uneven-parallel-shares",
                    carried = figure(carried.0, A),
                    runs = ctx.run_tags(runs),
                    run = ctx.run_tag(*run),
                    takes = told(takes, share, Unit::Percent),
                    share = told(share, takes, Unit::Percent),
                ),
                say!("uneven-parallel-shares-remedy"),
            )
            .runs(runs.iter().copied())
            .measure(excess, limit, "", Some("parallel-imbalance"))
            .mend(alike(ctx, runs, *run))
            .mend(one_wire(ctx, runs, rating_of(ctx, runs))),
    );
}
