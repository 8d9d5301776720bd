//! Voice coils hooked up to an output another way: in series, in parallel, or in strings side by side.
//!
//! ```text
//!  strings = 1 (series)            strings = 2 of 2 coils           strings = n (parallel)
//!  out+ --a--b--c--d-- out-        out+ --a--b-- out-               out+ --a-- out-
//!                                  out+ --c--d-- out-               out+ --b-- out-
//! ```

use crate::context::Ctx;
use crate::mends::adding::{Adding, beside, moved, without_run};
use crate::mends::set_run;
use circuit::ChannelLoad;
use model::{Edit, PartId, PartKind, Role, RunId, TerminalRef};
use ordered::OrderedSet;
use words::say;

/// One voice coil.
struct Coil {
    plus: TerminalRef,
    minus: TerminalRef,
    ohms: f64,
}

/// The coils of an output and its two legs, where nothing but wire lies between them and all coils are alike.
struct Hooked {
    legs: [TerminalRef; 2],
    coils: Vec<Coil>,
    runs: Vec<RunId>,
}

fn coils_of(ctx: &Ctx<'_>, speaker: PartId) -> Option<Vec<Coil>> {
    let Some(PartKind::Speaker(it)) = ctx.kind(speaker) else {
        return None;
    };
    let ohms = it.impedance.value()?.0;
    let find = |coil: u8, positive: bool| {
        let role = Role::Coil { coil, positive };
        let mut all = ctx.wiring.terminals_of(speaker);
        let (terminal, _) = all.find(|(terminal, _)| terminal.role == role)?;
        Some(TerminalRef::new(speaker, terminal.name.as_str()))
    };
    (1..=it.coils.clamp(1, 2))
        .map(|coil| {
            Some(Coil {
                plus: find(coil, true)?,
                minus: find(coil, false)?,
                ohms,
            })
        })
        .collect()
}

fn hooked(ctx: &Ctx<'_>, channel: &ChannelLoad) -> Option<Hooked> {
    let mut coils = Vec::new();
    for driver in &channel.drivers {
        coils.extend(coils_of(ctx, *driver)?);
    }
    let bands: OrderedSet<_> = channel
        .drivers
        .iter()
        .filter_map(|driver| match ctx.kind(*driver) {
            Some(PartKind::Speaker(speaker)) => Some(speaker.band),
            _ => None,
        })
        .collect();
    let first = coils.first()?.ohms;
    let alike = coils.iter().all(|coil| (coil.ohms - first).abs() < 1e-6);
    if coils.len() < 2 || bands.len() > 1 || !alike {
        return None;
    }
    // Every run on one of the coils, and nothing else on the way.
    let mut runs: OrderedSet<RunId> = channel.runs.clone();
    for driver in &channel.drivers {
        runs.extend(ctx.runs_of(*driver).map(|(run, _)| run));
    }
    let mut legs: [Option<TerminalRef>; 2] = [None, None];
    for run in &runs {
        for end in ctx.run(*run)?.ends() {
            let at = end.terminal()?;
            match ctx.role(at)? {
                Role::Coil { .. } if channel.drivers.contains(&at.part) => {}
                Role::SpeakerOut {
                    channel: number,
                    positive,
                } if at.part == channel.part
                    && (number == channel.channel || Some(number) == channel.bridged_with) =>
                {
                    let leg = legs.get_mut(usize::from(!positive))?;
                    if leg.as_ref().is_some_and(|leg| leg != at) {
                        return None;
                    }
                    *leg = Some(at.clone());
                }
                _ => return None,
            }
        }
    }
    let [Some(plus), Some(minus)] = legs else {
        return None;
    };
    Some(Hooked {
        legs: [plus, minus],
        coils,
        runs: runs.iter().copied().collect(),
    })
}

/// Ways to hook up the coils of an output so that it drives at least this, in ohms: the least load first. That it is hooked up
/// so already is no way.
pub(crate) fn hook_ups(ctx: &Ctx<'_>, channel: &ChannelLoad, least: f64) -> Vec<Edit> {
    let Some(hooked) = hooked(ctx, channel) else {
        return Vec::new();
    };
    let count = hooked.coils.len();
    let strings = (1..=count).rev().filter(|strings| count % strings == 0);
    strings
        .filter(|strings| {
            let ohms = hooked.coils.first().map_or(0.0, |coil| coil.ohms);
            let load = ohms * (count / strings) as f64 / *strings as f64;
            load >= least * (1.0 - 1e-9)
        })
        .filter_map(|strings| rewire(ctx, &hooked, strings))
        .collect()
}

fn rewire(ctx: &Ctx<'_>, hooked: &Hooked, strings: usize) -> Option<Edit> {
    let [plus, minus] = &hooked.legs;
    let mut wanted: Vec<[TerminalRef; 2]> = Vec::new();
    for string in hooked.coils.chunks(hooked.coils.len() / strings.max(1)) {
        let mut at = plus.clone();
        for coil in string {
            wanted.push([at, coil.plus.clone()]);
            at = coil.minus.clone();
        }
        wanted.push([at, minus.clone()]);
    }
    // Each run where it lies already, else where one end of it stays, else anywhere.
    let mut left: Vec<RunId> = hooked.runs.clone();
    let mut adding = Adding::new(ctx);
    let ends = |run: &RunId| -> Vec<TerminalRef> {
        let run = ctx.run(*run);
        let ends = run.into_iter().flat_map(|run| run.ends());
        ends.filter_map(|end| end.terminal().cloned()).collect()
    };
    let mut changed = false;
    for staying in [2, 1, 0] {
        let mut rest = Vec::new();
        for [a, b] in std::mem::take(&mut wanted) {
            let stays = |run: &RunId| {
                let ends = ends(run);
                [&a, &b].iter().filter(|at| ends.contains(at)).count() >= staying
            };
            let Some(place) = left.iter().position(stays) else {
                rest.push([a, b]);
                continue;
            };
            let id = left.remove(place);
            if staying == 2 {
                continue;
            }
            changed = true;
            let mut run = ctx.run(id)?.clone();
            let own = ends(&id);
            let (from, to) = match own.first() {
                Some(from) if *from == a => (a, b),
                Some(from) if *from == b => (b, a),
                _ if own.get(1) == Some(&a) => (b, a),
                _ => (a, b),
            };
            for (end, at) in [from, to].into_iter().enumerate() {
                if own.get(end) != Some(&at) {
                    run = moved(ctx, &run, end, at);
                }
            }
            adding.changes.push(set_run(id, run));
        }
        wanted = rest;
    }
    for [a, b] in wanted {
        let like = ctx.run(*hooked.runs.first()?)?;
        adding.run(beside(like, a, b));
        changed = true;
    }
    changed |= !left.is_empty();
    adding.changes.extend(left.into_iter().map(without_run));
    let mut parts: Vec<String> = hooked
        .coils
        .iter()
        .map(|coil| ctx.part_tag(coil.plus.part))
        .collect();
    parts.dedup();
    let name = if strings == 1 {
        say!("mend-in-series", speakers = parts)
    } else if strings == hooked.coils.len() {
        say!("mend-in-parallel", speakers = parts)
    } else {
        say!("mend-in-strings", speakers = parts, strings = strings)
    };
    changed.then(|| Edit::new(name, adding.changes))
}
