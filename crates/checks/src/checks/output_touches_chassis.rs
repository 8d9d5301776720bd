//! `output-touches-chassis`: a floating output tied to the body, to the supply, or to another output.

use crate::checks::load_too_low::{channel_words, touched};
use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::adding::{moved, without_run};
use crate::mends::set_run;
use crate::registry::{Check, CheckGroup};
use crate::wiring::BODY;
use circuit::ChannelLoad;
use model::{Edit, TerminalRef};
use model::{PartId, PartKind, RunId};
use ordered::Sort as _;
use ordered::{OrderedMap, OrderedSet};
use words::{Saying, say};

pub(crate) static CHECK: Check = Check {
    name: "output-touches-chassis",
    grade: Grade::Fix,
    group: CheckGroup::Speakers,
    example: "\
head H1 speaker-outputs=2 line-outputs=0 #~ output-touches-chassis
speaker LS1 4ohm power=40W front-left
speaker LS2 4ohm power=40W front-right
ground E1
run W1 H1.fl+ LS1.+ 1.5mm2 2m WH
run W2 H1.fl- LS1.- 1.5mm2 2m WHBK
run W3 H1.fr+ LS2.+ 1.5mm2 2m GY
run W4 H1.fr- LS2.- 1.5mm2 2m GYBK
run W5 LS1.- E1.stud 1.5mm2 0.3m BK #~ output-touches-chassis",
    instead: "\
head H1 speaker-outputs=2 line-outputs=0
speaker LS1 4ohm power=40W front-left
speaker LS2 4ohm power=40W front-right
run W1 H1.fl+ LS1.+ 1.5mm2 2m WH
run W2 H1.fl- LS1.- 1.5mm2 2m WHBK
run W3 H1.fr+ LS2.+ 1.5mm2 2m GY
run W4 H1.fr- LS2.- 1.5mm2 2m GYBK",
    limits: &[],
    since: "0.1.0",
    run,
};

fn floats(ctx: &Ctx<'_>, part: PartId) -> bool {
    match ctx.kind(part) {
        Some(PartKind::Amplifier(amplifier)) => amplifier.floating,
        Some(PartKind::HeadUnit(_)) => true,
        _ => false,
    }
}

/// Points that are the body or a live pole, over wire and joints.
fn forbidden(ctx: &Ctx<'_>) -> OrderedSet<usize> {
    ctx.wiring
        .ties_at(BODY)
        .map(|tie| tie.other(BODY))
        .chain([BODY])
        .chain(ctx.live.iter().copied())
        .collect()
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let amiss: Vec<&ChannelLoad> = ctx
        .study
        .channels
        .iter()
        .filter(|channel| channel.touches_body || !channel.tied_to.is_empty())
        .filter(|channel| floats(ctx, channel.part) && touched(ctx, channel))
        .collect();
    if amiss.is_empty() {
        return;
    }
    // Channels tied to each other, directly or in turn, and those tied to the body through the same wire, share a cause.
    let forbidden = forbidden(ctx);
    let mut groups: Vec<Vec<&ChannelLoad>> = Vec::new();
    for channel in amiss {
        let is_tied = |other: &&ChannelLoad| {
            let names = |a: &ChannelLoad, b: &ChannelLoad| {
                a.tied_to.iter().any(|(part, number)| {
                    *part == b.part && (*number == b.channel || Some(*number) == b.bridged_with)
                })
            };
            names(channel, other) || names(other, channel)
        };
        let (mut joined, apart): (Vec<_>, Vec<_>) =
            groups.into_iter().partition(|group| group.iter().any(&is_tied));
        let mut group: Vec<&ChannelLoad> = joined.drain(..).flatten().collect();
        group.push(channel);
        groups = apart;
        groups.push(group);
    }
    groups.order_by_key(|group| group.iter().map(|c| (c.part, c.channel)).min());
    for mut group in groups {
        group.order_by_key(|channel| (channel.part, channel.channel));
        let who: Vec<Saying> = group.iter().map(|channel| channel_words(ctx, channel)).collect();
        let grounded = group.iter().any(|channel| channel.touches_body);
        let mut count: OrderedMap<RunId, usize> = OrderedMap::new();
        for run in group.iter().flat_map(|channel| &channel.runs) {
            *count.entry(*run).or_default() += 1;
        }
        // Runs that make it so: those to the body, and those that more than one channel uses. A run that only leads
        // from the output to the body carries no speaker and is found from the wiring.
        let legs: OrderedSet<usize> = group.iter().flat_map(|channel| legs(ctx, channel)).collect();
        let island = ctx.wiring.islands(|tie| {
            matches!(tie.kind, crate::wiring::TieKind::Run(_))
                && !tie.ends.iter().any(|end| forbidden.contains(end))
        });
        let at = |point: usize| island.get(point).copied().unwrap_or(point);
        let leg_islands: OrderedSet<usize> = legs.iter().map(|point| at(*point)).collect();
        let to_body = ctx.sheet.runs.keys().copied().filter(|run| {
            ctx.wiring.ends(*run).is_some_and(|[a, b]| {
                (forbidden.contains(&a) && leg_islands.contains(&at(b)))
                    || (forbidden.contains(&b) && leg_islands.contains(&at(a)))
            })
        });
        let mut runs: Vec<RunId> = if grounded { to_body.collect() } else { Vec::new() };
        let off = off_the_body(ctx, &group, &runs, &forbidden);
        runs.extend(count.iter().filter(|(_, n)| **n > 1).map(|(run, _)| *run));
        let parts: OrderedSet<PartId> = group.iter().map(|channel| channel.part).collect();
        let (what, remedy) = if grounded {
            (
                say!("output-touches-chassis-what", who = who),
                say!("output-touches-chassis-remedy"),
            )
        } else {
            (
                say!("output-touches-chassis-tied", who = who),
                say!("output-touches-chassis-tied-remedy"),
            )
        };
        out.add(CHECK.finding(what, remedy).parts(parts).runs(runs).mend(off));
    }
}

/// The wires to the body off it: what leads there from an output goes, and what leads there from a speaker is led to the leg of
/// its output that has no wire.
fn off_the_body(
    ctx: &Ctx<'_>,
    group: &[&ChannelLoad],
    runs: &[RunId],
    forbidden: &OrderedSet<usize>,
) -> Option<Edit> {
    let mut changes = Vec::new();
    let mut said = Vec::new();
    for id in runs {
        let run = ctx.run(*id)?;
        let on_body = run.ends().into_iter().position(|end| {
            end.terminal()
                .and_then(|at| ctx.wiring.point(at.part, at.terminal.as_str()))
                .is_some_and(|point| forbidden.contains(&point))
        })?;
        let other = run.ends().get(1 - on_body).and_then(|end| end.terminal())?;
        // A coil whose end another wire leads to an output needs this one no more.
        let wired = ctx.runs_on(other.part, other.terminal.as_str()).len() > 1;
        match ctx.role(other)? {
            model::Role::Coil { .. } | model::Role::SpeakerOut { .. } if wired => {
                changes.push(without_run(*id));
                said.push(say!("mend-take-out", run = &run.tag));
            }
            model::Role::SpeakerOut { .. } => {
                changes.push(without_run(*id));
                said.push(say!("mend-take-out", run = &run.tag));
            }
            model::Role::Coil { .. } => {
                let channel = group.iter().find(|channel| channel.drivers.contains(&other.part));
                // A speaker that plays by way of the body may not count as one of the channel's.
                let channel = channel.or_else(|| group.first().filter(|_| group.len() == 1))?;
                let mut free = ctx.wiring.terminals_of(channel.part).filter(|(terminal, _)| {
                    let own = matches!(terminal.role, model::Role::SpeakerOut { channel: number, .. }
                        if number == channel.channel);
                    own && ctx.runs_on(channel.part, terminal.name.as_str()).is_empty()
                });
                let (leg, _) = free.next()?;
                let to = TerminalRef::new(channel.part, leg.name.as_str());
                said.push(say!(
                    "mend-take-to",
                    run = &run.tag,
                    terminal = ctx.terminal(to.part, to.terminal.as_str())
                ));
                changes.push(set_run(*id, moved(ctx, run, on_body, to)));
            }
            _ => return None,
        }
    }
    (!changes.is_empty()).then(|| Edit::new(say!("mend-several", steps = said), changes))
}

/// Points of the legs of a channel, or of the pair.
fn legs(ctx: &Ctx<'_>, channel: &ChannelLoad) -> Vec<usize> {
    ctx.wiring
        .terminals_of(channel.part)
        .filter(|(terminal, _)| match terminal.role {
            model::Role::SpeakerOut { channel: number, .. } => {
                number == channel.channel || Some(number) == channel.bridged_with
            }
            _ => false,
        })
        .map(|(_, point)| point)
        .collect()
}
