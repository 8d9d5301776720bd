//! Wire laid for a run that has wire already: thicker, of copper, or of the same kind anew.

use crate::checks::return_too_thin::lags_behind;
use crate::checks::terminal_overfull::{fits, takes};
use crate::context::Ctx;
use crate::mends::set_run;
use model::conductor::{Condition, Material, Size};
use model::laying::Laying;
use model::quantity::{Amps, SquareMm};
use model::{Change, Edit, Fact, PartKind, Run, RunId};
use reference::ampacity::{AmpacityQuery, allowable_current};
use reference::conductors::nominal_resistance_per_metre;
use words::{Value, say};

/// Current that a wire of this size bears where this run lies; `None` where a fact is missing.
pub(crate) fn allowable_at(ctx: &Ctx<'_>, id: RunId, size: Size, material: Material) -> Option<Amps> {
    let (run, flow) = (ctx.run(id)?, ctx.flow(id)?);
    Some(allowable_current(AmpacityQuery {
        material,
        area: size.area(),
        insulation: run.wire.insulation.value()?,
        ambient: flow.ambient,
        bundled: u32::from(run.wire.bundle.value()?),
    }))
}

/// The size of a run; where it is not known, nothing of the metric series, in which it is then laid anew.
pub(crate) fn size_of(ctx: &Ctx<'_>, id: RunId) -> Size {
    let size = ctx.run(id).and_then(|run| run.wire.size.value());
    size.unwrap_or(Size::Metric(SquareMm(0.0)))
}

/// The least copper size that bears this current where the run lies: of the series that the run is made in, and no thinner
/// than it is.
pub(crate) fn size_for_current(ctx: &Ctx<'_>, id: RunId, current: Amps) -> Option<Size> {
    let own = size_of(ctx, id);
    // A thicker one never bears less.
    let sizes: Vec<Size> = own.series().filter(|size| size.area() >= own.area()).collect();
    let bears = |size: &Size| allowable_at(ctx, id, *size, Material::Copper);
    let at = sizes.partition_point(|size| bears(size).is_none_or(|bears| bears < current));
    sizes.get(at).copied()
}

/// Whether a wire of this size goes into the terminals at both ends of a run, as far as is stated what they take.
pub(crate) fn fits_terminals(ctx: &Ctx<'_>, id: RunId, size: Size) -> bool {
    ctx.landings(id).into_iter().all(|(_, kind, terminal)| {
        takes(kind, terminal.as_str())
            .and_then(|(_, largest)| largest)
            .is_none_or(|largest| fits(size.area(), largest))
    })
}

/// Makes runs of copper of these sizes; nothing where one would not go into a terminal that it lands on. A ground lead that
/// would then conduct less than the feed of its amplifier is laid as thick.
pub(crate) fn thicken(ctx: &Ctx<'_>, name: impl Into<model::Name>, sizes: &[(RunId, Size)]) -> Option<Edit> {
    let changed = |sizes: &[(RunId, Size)]| -> Option<Vec<Change>> {
        let all = sizes.iter().map(|(id, size)| {
            let mut run = ctx.run(*id).filter(|_| fits_terminals(ctx, *id, *size))?.clone();
            make_copper(&mut run, *size);
            Some(set_run(*id, run))
        });
        all.collect()
    };
    let mut changes = changed(sizes).filter(|changes| !changes.is_empty())?;
    let mut name: model::Name = name.into();
    let backs = backs_for(ctx, sizes);
    if let Some(more) = changed(&backs).filter(|more| !more.is_empty()) {
        changes.extend(more);
        let laid: Vec<Value> = backs
            .iter()
            .map(|(_, size)| crate::wording::to_lay(*size))
            .collect();
        let runs = ctx.run_tags(backs.iter().map(|(id, _)| id));
        name = say!(
            "mend-and-lay-back",
            first = name.said(),
            sizes = laid,
            runs = runs
        )
        .into();
    }
    Some(Edit::new(name, changes))
}

/// Ground leads of amplifiers that keep up with their feed now and no longer once these sizes are laid, with the size that does.
fn backs_for(ctx: &Ctx<'_>, sizes: &[(RunId, Size)]) -> Vec<(RunId, Size)> {
    let mut backs: Vec<(RunId, Size)> = Vec::new();
    for (id, _) in sizes {
        for (part, kind, terminal) in ctx.landings(*id) {
            let on_feed = matches!(kind, PartKind::Amplifier(_)) && terminal.as_str() == "+";
            let [back] = ctx.runs_on(part, "-")[..] else {
                continue;
            };
            let laid = sizes.iter().chain(&backs).any(|(run, _)| *run == back);
            if !on_feed || laid || lags_behind(ctx, part, &[]) != Some(false) {
                continue;
            }
            let series = size_of(ctx, back).series();
            let own = size_of(ctx, back).area();
            let thicker = series.filter(|size| size.area() > own);
            let keeps_up =
                |size: &Size| lags_behind(ctx, part, &[sizes, &[(back, *size)]].concat()) == Some(false);
            if lags_behind(ctx, part, sizes) == Some(true)
                && let Some(size) = thicker.into_iter().find(keeps_up)
            {
                backs.push((back, size));
            }
        }
    }
    backs
}

/// A run of the same wire laid anew: sound, with nothing counted or measured on it yet.
#[must_use]
pub fn renewed(run: &Run) -> Run {
    let mut run = run.clone();
    run.wire.condition = Fact::Given(Condition::Sound);
    run.laying = Laying {
        opens_when: Fact::Unknown,
        strands: Fact::Unknown,
        strand: Fact::Unknown,
        tested_drop: Fact::Unknown,
        tested_current: Fact::Unknown,
        ..run.laying
    };
    run
}

/// Lays other wire for a run, of copper.
pub(crate) fn make_copper(run: &mut Run, size: Size) {
    *run = renewed(run);
    run.wire.size = Fact::Given(size);
    run.wire.material = Fact::Given(Material::Copper);
    run.wire.stated_resistance = Fact::Unknown;
}

/// Copper for these runs with which each keeps at most this share of its resistance, of the series that it is made in; nothing
/// where one has no such size, or no room for it on its terminals.
pub(crate) fn sizes_at_share(ctx: &Ctx<'_>, runs: &[RunId], share: f64) -> Option<Vec<(RunId, Size)>> {
    let size_of_one = |id: &RunId| {
        let flow = ctx.flow(*id)?;
        let length = ctx.length(*id).filter(|length| length.0 > 0.0)?;
        let most = flow.wire_resistance.0 / length.0 * share;
        let own = size_of(ctx, *id);
        let mut thicker = own.series().filter(|size| size.area().0 > own.area().0 * 1.001);
        let size = thicker
            .find(|size| nominal_resistance_per_metre(Material::Copper, *size, flow.temperature).0 <= most)?;
        fits_terminals(ctx, *id, size).then_some((*id, size))
    };
    let sizes: Option<Vec<(RunId, Size)>> = runs.iter().map(size_of_one).collect();
    sizes.filter(|sizes| share > 0.0 && !sizes.is_empty())
}

/// The same as an edit.
pub(crate) fn thicken_to_share(ctx: &Ctx<'_>, runs: &[RunId], share: f64) -> Option<Edit> {
    let sizes = sizes_at_share(ctx, runs, share)?;
    let each: Vec<words::Saying> = sizes
        .iter()
        .map(|(run, size)| {
            say!(
                "size-of-run",
                size = crate::wording::to_lay(*size),
                run = ctx.run_tag(*run)
            )
        })
        .collect();
    thicken(ctx, say!("mend-lay-sizes", sizes = each), &sizes)
}
