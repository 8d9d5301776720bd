//! Devices nearer to the source: the one that is there moved, or new ones put in.

use crate::context::Ctx;
use crate::mends::adding::Adding;
use crate::mends::{
    add_fuse, fuse_between, insert_fuse, insert_fuse_and_lay, rating_needed, set_part, set_run,
};
use crate::unprotected::Stretch;
use crate::wires::{allowable_at, size_of};
use model::laying::Guards;
use model::quantity::{Amps, Metres};
use model::{Edit, Fact, PartKind, RunId, TerminalRef};
use words::{Saying, say};

/// How much wire is left before a device that is put near the source: well within the limit.
fn near(stretch: &Stretch) -> Metres {
    Metres(stretch.limit.map_or(0.45, |(limit, _)| limit) * 0.6)
}

/// The pole of the one source of a stretch, and the runs of it that leave from there, each with the end that does.
fn leaving(ctx: &Ctx<'_>, stretch: &Stretch) -> Option<Vec<(RunId, usize)>> {
    let source = *stretch.sources.first().filter(|_| stretch.sources.len() == 1)?;
    let pole = TerminalRef::new(source, crate::wiring::live_pole(ctx.kind(source)?)?);
    let all = stretch.runs.iter().filter_map(|id| {
        let ends = ctx.run(*id)?.ends();
        let end = ends.iter().position(|end| end.terminal() == Some(&pole))?;
        Some((*id, end))
    });
    Some(all.collect())
}

/// What all of these runs bear, with the profile's factor.
fn borne(ctx: &Ctx<'_>, runs: &[RunId], factor: f64) -> Option<Amps> {
    runs.iter().try_fold(Amps(f64::INFINITY), |least, id| {
        let wire = &ctx.run(*id)?.wire;
        let bears = allowable_at(ctx, *id, wire.size.value()?, wire.material.value()?)?;
        Some(least.min(Amps(bears.0 * factor)))
    })
}

/// A fuse put into each run by which a stretch leaves its source, near the source, that everything behind it bears.
pub(crate) fn fuse_near_source(ctx: &Ctx<'_>, stretch: &Stretch) -> Option<Edit> {
    let all = leaving(ctx, stretch)?;
    let factor = ctx.limit("fuse-wire-factor").unwrap_or(1.0);
    let needs = |id: RunId| {
        ctx.flow(id)
            .map_or(Amps(0.0), |flow| rating_needed(ctx, flow.current.rms.abs()))
    };
    let near = near(stretch);
    if let [(first, end)] = all[..] {
        let (needs, bears) = (needs(first), borne(ctx, &stretch.runs, factor)?);
        return insert_fuse(ctx, first, end, near, needs, bears).or_else(|| {
            // The wire does not bear even what the loads take: a fuse alone would open, or guard nothing.
            let others = stretch.runs.iter().copied().filter(|id| *id != first);
            let runs: Vec<RunId> = std::iter::once(first).chain(others).collect();
            insert_fuse_and_lay(ctx, &runs, end, near, needs, factor)
        });
    }
    // Several: each by itself, where what hangs on one hangs on no other.
    let mut adding = Adding::new(ctx);
    let mut said: Vec<Saying> = Vec::new();
    for (first, end) in &all {
        let serves = &ctx.flow(*first)?.serves;
        let behind = stretch.runs.iter().copied().filter(|id| {
            ctx.flow(*id)
                .is_some_and(|flow| !flow.serves.is_empty() && flow.serves.is_subset(serves))
        });
        let runs: Vec<RunId> = std::iter::once(*first).chain(behind).collect();
        let fuse = fuse_between(needs(*first), borne(ctx, &runs, factor)?)?;
        said.push(add_fuse(&mut adding, ctx, *first, *end, near, fuse)?);
    }
    (!said.is_empty()).then(|| Edit::new(say!("mend-several", steps = said), adding.changes))
}

/// The one device at the far end of a stretch of one run, moved close to the source: its run gets short, and the wire behind
/// it takes over the way, as thick as the thicker of the two.
pub(crate) fn device_to_source(ctx: &Ctx<'_>, stretch: &Stretch) -> Option<Edit> {
    let ([device], [(first, end)]) = (&stretch.devices[..], &leaving(ctx, stretch)?[..]) else {
        return None;
    };
    let source = *stretch.sources.first()?;
    let mut part = ctx.part(device.part)?.clone();
    let moves = matches!(part.is, PartKind::Fuse(_) | PartKind::Breaker(_));
    let (mut short, (long_id, long)) = match ctx.runs_of(device.part).collect::<Vec<_>>()[..] {
        [a, b] if a.0 == *first => (a.1.clone(), b),
        [b, a] if a.0 == *first => (a.1.clone(), b),
        _ => return None,
    };
    let on_device = |run: &model::Run| {
        let ends = run.ends();
        ends.iter()
            .position(|end| end.terminal().is_some_and(|at| at.part == device.part))
    };
    let near = near(stretch);
    let mut far = long.clone();
    let (was, own) = (short.wire.length, far.wire.length);
    let (Some(was_metres), Some(own_metres), true) =
        (was.value(), own.value(), moves && stretch.runs == [*first])
    else {
        return None;
    };
    let known = was.is_given() && own.is_given();
    let told = |metres: Metres| {
        if known {
            Fact::Given(metres)
        } else {
            Fact::Assumed(metres)
        }
    };
    // The way of the first run, from the source, then that of the second, in the direction of the second.
    let mut way = short.route.clone();
    if *end == 1 {
        way.reverse();
    }
    match on_device(&far)? {
        0 => {
            way.append(&mut far.route);
            far.route = way;
        }
        _ => {
            way.reverse();
            far.route.append(&mut way);
        }
    }
    far.route.dedup();
    far.route.truncate(model::limits::MOST_PLACES);
    for (passage, guard) in std::mem::take(&mut short.laying.guards.0) {
        far.laying.guards.0.entry(passage).or_insert(guard);
    }
    short.laying.guards = Guards::default();
    short.route = Vec::new();
    short.wire.length = told(near);
    far.wire.length = told(Metres((was_metres.0 + own_metres.0 - near.0).max(0.0)));
    if size_of(ctx, *first).area() > size_of(ctx, long_id).area() {
        far.wire.size = short.wire.size;
        far.wire.material = short.wire.material;
    }
    short.bends = Vec::new();
    far.bends = Vec::new();
    part.place = ctx.part(source)?.place.clone();
    let name = say!(
        "mend-device-closer",
        device = &part.tag,
        source = ctx.part_tag(source)
    );
    Some(Edit::new(
        name,
        vec![
            set_part(device.part, part),
            set_run(*first, short),
            set_run(long_id, far),
        ],
    ))
}
