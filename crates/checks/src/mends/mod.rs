//! Edits that clear a finding: a fuse put into a run, a thicker wire, swapped ends. Each is proved by a test that makes
//! the edit and analyses again.

pub(crate) mod adding;
pub(crate) mod batteries;
pub(crate) mod clearing;
pub(crate) mod grounding;
pub(crate) mod hooking_up;
pub(crate) mod leads;
pub(crate) mod nearer;
pub(crate) mod ratings;
pub(crate) mod rejoining;
pub(crate) mod rerouting;

use crate::context::Ctx;
use crate::mends::adding::Adding;
use crate::wires::{allowable_at, fits_terminals, make_copper, size_for_current};
use crate::wording::{A, to_lay};
use model::conductor::Size;
use model::kinds::supply::{Fuse, FuseForm};
use model::quantity::{Amps, Metres};
use model::{Change, Edit, End, Fact, Job, Part, PartId, PartKind, Run, RunId, SheetKind, TerminalRef};
use ordered::OrderedMap;
use reference::fuses::{rating_not_above, rating_not_below};
use words::{Saying, Value, figure, say};

/// The sheet that mends are written for, since a check does not know which sheet of a job it looks at.
pub(crate) const WRITTEN_FOR: SheetKind = SheetKind::Plan;

/// A mend as it is to be made in this job, on this sheet: checks see one sheet alone, so what a mend adds has ids that
/// are free on that sheet but perhaps not in the job.
#[must_use]
pub fn mend_for(job: &Job, kind: SheetKind, mend: &Edit) -> Edit {
    let sheet = job.sheet(kind).cloned().unwrap_or_default();
    let (mut next_part, mut next_run) = (job.free_part_id().0, job.free_run_id().0);
    let (mut parts, mut runs) = (OrderedMap::new(), OrderedMap::new());
    for change in &mend.changes {
        match change {
            Change::Part { id, .. } if !sheet.parts.contains_key(id) && !parts.contains_key(id) => {
                parts.insert(*id, PartId(next_part));
                next_part = next_part.saturating_add(1);
            }
            Change::Run { id, .. } if !sheet.runs.contains_key(id) && !runs.contains_key(id) => {
                runs.insert(*id, RunId(next_run));
                next_run = next_run.saturating_add(1);
            }
            _ => {}
        }
    }
    let part_id = |id: PartId| parts.get(&id).copied().unwrap_or(id);
    let end = |end: &End| match end {
        End::On(at) => End::On(TerminalRef {
            part: part_id(at.part),
            terminal: at.terminal.clone(),
        }),
        End::Loose(at) => End::Loose(*at),
    };
    let changes = mend
        .changes
        .iter()
        .map(|change| match change {
            Change::Part { id, to, .. } => Change::Part {
                sheet: kind,
                id: part_id(*id),
                to: to.clone(),
            },
            Change::Run { id, to, .. } => Change::Run {
                sheet: kind,
                id: runs.get(id).copied().unwrap_or(*id),
                to: to.as_ref().map(|run| {
                    Box::new(Run {
                        from: end(&run.from),
                        to: end(&run.to),
                        ..(**run).clone()
                    })
                }),
            },
            Change::Tunings { to, .. } => Change::Tunings {
                sheet: kind,
                to: to.clone(),
            },
            other => other.clone(),
        })
        .collect();
    Edit::new(mend.name.clone(), changes)
}

/// A run that becomes this.
pub(crate) fn set_run(id: RunId, run: Run) -> Change {
    Change::Run {
        sheet: WRITTEN_FOR,
        id,
        to: Some(Box::new(run)),
    }
}

/// A part that becomes this.
pub(crate) fn set_part(id: PartId, part: Part) -> Change {
    Change::Part {
        sheet: WRITTEN_FOR,
        id,
        to: Some(Box::new(part)),
    }
}

/// The form of fuse for a current, and a rating between what the load needs and what the wire bears.
pub(crate) fn fuse_between(needs: Amps, bears: Amps) -> Option<(FuseForm, Amps)> {
    [FuseForm::Strip61, FuseForm::Maxi, FuseForm::Regular]
        .into_iter()
        .find_map(|form| {
            rating_not_above(form.into(), bears)
                .filter(|rating| *rating >= needs)
                .map(|rating| (form, rating))
        })
}

/// Puts a fuse into a run, `near` metres of wire from the end on this terminal: the run is split, its first piece
/// keeps its id. `needs` is what must pass, `bears` what the weakest wire behind it bears.
pub(crate) fn insert_fuse(
    ctx: &Ctx<'_>,
    id: RunId,
    source_end: usize,
    near: Metres,
    needs: Amps,
    bears: Amps,
) -> Option<Edit> {
    let mut adding = Adding::new(ctx);
    let name = add_fuse(
        &mut adding,
        ctx,
        id,
        source_end,
        near,
        fuse_between(needs, bears)?,
    )?;
    Some(Edit::new(name, adding.changes))
}

/// The same among other changes; what it is called.
pub(crate) fn add_fuse(
    adding: &mut Adding<'_, '_>,
    ctx: &Ctx<'_>,
    id: RunId,
    source_end: usize,
    near: Metres,
    (form, rating): (FuseForm, Amps),
) -> Option<Saying> {
    let fuse = Fuse {
        form,
        rating: Fact::Given(rating),
        ..Fuse::default()
    };
    let tag = adding.put_into(id, source_end, near, fuse, ["in", "out"])?;
    Some(say!(
        "mend-put-fuse",
        fuse = tag,
        rating = figure(rating.0, A),
        run = ctx.run_tag(id)
    ))
}

/// A fuse put into the first of these runs as by [`insert_fuse`], where none of them bears what must pass: the least that
/// passes it, and copper behind it that bears the fuse.
pub(crate) fn insert_fuse_and_lay(
    ctx: &Ctx<'_>,
    runs: &[RunId],
    source_end: usize,
    near: Metres,
    needs: Amps,
    factor: f64,
) -> Option<Edit> {
    let first = *runs.first()?;
    let (_, rating) = [FuseForm::Regular, FuseForm::Maxi, FuseForm::Strip61]
        .into_iter()
        .find_map(|form| rating_not_below(form.into(), needs).map(|rating| (form, rating)))?;
    let mut sizes: OrderedMap<RunId, Size> = OrderedMap::new();
    for id in runs {
        let wire = &ctx.run(*id)?.wire;
        let (own, material) = (wire.size.value()?, wire.material.value()?);
        let bears = rating / factor.max(0.01);
        if allowable_at(ctx, *id, own, material)? >= bears {
            continue;
        }
        let size = size_for_current(ctx, *id, bears).filter(|size| fits_terminals(ctx, *id, *size))?;
        sizes.insert(*id, size);
    }
    let mut edit = insert_fuse(ctx, first, source_end, near, needs, rating)?;
    for change in &mut edit.changes {
        // Both pieces of the run that the fuse parts.
        if let Change::Run { to: Some(run), .. } = change
            && let Some(size) = sizes.get(&first)
        {
            make_copper(run, *size);
        }
    }
    let others = sizes.iter().filter(|(id, _)| **id != first);
    for (id, size) in others {
        let mut run = ctx.run(*id)?.clone();
        make_copper(&mut run, *size);
        edit.changes.push(set_run(*id, run));
    }
    let mut all: Vec<Size> = sizes.values().copied().collect();
    all.dedup();
    if all.is_empty() {
        return Some(edit);
    }
    let laid: Vec<Value> = all.into_iter().map(to_lay).collect();
    let name = say!("mend-and-lay-behind", first = edit.name.said(), sizes = laid);
    Some(edit.rename(name))
}

/// Each of these runs given a fuse of its own in the block that it begins on, on an output that has none yet.
pub(crate) fn fuse_at_block(
    ctx: &Ctx<'_>,
    runs: &[RunId],
    factor: f64,
) -> Option<(Vec<Saying>, Vec<Change>)> {
    let mut parts: OrderedMap<PartId, Part> = OrderedMap::new();
    let mut said = Vec::new();
    for id in runs {
        let bears = allowable_at(
            ctx,
            *id,
            ctx.run(*id)?.wire.size.value()?,
            ctx.run(*id)?.wire.material.value()?,
        )? * factor;
        let needs = rating_needed(ctx, ctx.flow(*id)?.current.rms.abs());
        let (block, output) = ctx.run(*id)?.ends().into_iter().find_map(|end| {
            let at = end.terminal()?;
            let is_block = matches!(ctx.kind(at.part), Some(PartKind::Block(_)));
            (is_block && at.terminal.as_str().starts_with("out")).then(|| (at.part, at.terminal.clone()))
        })?;
        let mut part = match parts.remove(&block) {
            Some(part) => part,
            None => ctx.part(block)?.clone(),
        };
        let tag = ctx.terminal(block, output.as_str());
        let PartKind::Block(it) = &mut part.is else {
            return None;
        };
        let number: usize = output.as_str().strip_prefix("out")?.parse().ok()?;
        let rating = rating_not_above(it.form.into(), bears).filter(|rating| *rating >= needs)?;
        let slot = it.fuses.0.get_mut(number.checked_sub(1)?)?;
        if slot.is_some() {
            return None;
        }
        *slot = Some(rating);
        said.push(say!("mend-rating-in", rating = figure(rating.0, A), device = tag));
        parts.insert(block, part);
    }
    let changes = parts.into_iter().map(|(id, part)| set_part(id, part)).collect();
    (!said.is_empty()).then_some((said, changes))
}

/// A device with one run at each side taken out, and its runs joined to one: the thicker of the two, as long as both.
/// `after` is what is done before, for its name.
pub(crate) fn join_through(ctx: &Ctx<'_>, device: PartId, after: Option<Saying>) -> Option<Edit> {
    let on: Vec<(RunId, &Run)> = ctx.sheet.runs_of(device).collect();
    let [a, b] = on[..] else { return None };
    let area = |run: &Run| run.wire.size.value().map_or(0.0, |size| size.area().0);
    let (kept, gone) = if area(a.1) >= area(b.1) { (a, b) } else { (b, a) };
    let lands = |end: &End| end.terminal().is_some_and(|at| at.part == device);
    // Both runs on one terminal pass the device by; both ends of one run are no way through.
    let terminal = |run: &Run| {
        let mut ends = run.ends().into_iter().filter_map(End::terminal);
        ends.find(|at| at.part == device).map(|at| at.terminal.clone())
    };
    if terminal(kept.1) == terminal(gone.1) {
        return None;
    }
    let (far, ending) = match (lands(&gone.1.from), lands(&gone.1.to)) {
        (true, false) => (gone.1.to.clone(), gone.1.to_ending.clone()),
        (false, true) => (gone.1.from.clone(), gone.1.from_ending.clone()),
        _ => return None,
    };
    let mut run = kept.1.clone();
    // The way of the one, then that of the other, in the direction of the one that stays.
    let mut way = gone.1.route.clone();
    if lands(&run.from) == lands(&gone.1.from) {
        way.reverse();
    }
    match (lands(&run.from), lands(&run.to)) {
        (true, false) => {
            (run.from, run.from_ending) = (far, ending);
            run.route.splice(..0, way);
        }
        (false, true) => {
            (run.to, run.to_ending) = (far, ending);
            run.route.append(&mut way);
        }
        _ => return None,
    }
    run.route.dedup();
    run.route.truncate(model::limits::MOST_PLACES);
    let guards = &mut run.laying.guards.0;
    for (passage, guard) in &gone.1.laying.guards.0 {
        guards.entry(passage.clone()).or_insert(*guard);
    }
    let (own, other) = (kept.1.wire.length, gone.1.wire.length);
    run.wire.length = match (own.value(), other.value()) {
        (Some(own_length), Some(other_length)) => {
            let sum = Metres(own_length.0 + other_length.0);
            if own.is_given() && other.is_given() {
                Fact::Given(sum)
            } else {
                Fact::Assumed(sum)
            }
        }
        _ => Fact::Unknown,
    };
    run.bends.clear();
    let (tag, joined) = (&ctx.part(device)?.tag, &run.tag);
    let name = match after {
        Some(first) => say!(
            "mend-then-join-through",
            first = first,
            device = tag,
            run = joined
        ),
        None => say!("mend-join-through", device = tag, run = joined),
    };
    let without = |id: RunId| Change::Run {
        sheet: WRITTEN_FOR,
        id,
        to: None,
    };
    Some(Edit::new(
        name,
        vec![
            set_run(kept.0, run),
            without(gone.0),
            Change::Part {
                sheet: WRITTEN_FOR,
                id: device,
                to: None,
            },
        ],
    ))
}

/// Least rating of a device for the current that loads take, with the share that lasting current may be of it.
pub(crate) fn rating_needed(ctx: &Ctx<'_>, rms: Amps) -> Amps {
    Amps(rms.0 / ctx.limit("continuous-load-share").unwrap_or(0.8).max(0.01))
}
