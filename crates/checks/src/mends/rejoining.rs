//! Where a run that ends loose was meant to end.

use crate::checks::loose_end::has_loose_end;
use crate::context::Ctx;
use crate::finding::Finding;
use crate::mends::adding::moved;
use crate::mends::set_run;
use crate::wiring::takes_feed;
use model::{Edit, PartId, PartKind, Role, Run, RunId, TerminalRef};
use words::say;

/// Most terminals between which somebody is asked to choose.
pub(crate) const MOST: usize = 3;

/// An end of a run that lies loose.
pub(crate) struct Loose {
    /// The run.
    pub(crate) run: RunId,
    /// Which end: 0 or 1.
    end: usize,
    /// Terminals that it can have been meant to be on.
    to: Vec<TerminalRef>,
    /// Whether there is no doubt about it.
    clear: bool,
}

/// Terminals of the sheet of the wanted role of which this holds.
pub(crate) fn terminals(
    ctx: &Ctx<'_>,
    wanted: impl Fn(PartId, Role) -> bool,
    holds: impl Fn(&TerminalRef, Role) -> bool,
) -> Vec<TerminalRef> {
    let mut all = Vec::new();
    for id in ctx.sheet.parts.keys() {
        for (terminal, _) in ctx.wiring.terminals_of(*id) {
            if !wanted(*id, terminal.role) {
                continue;
            }
            let at = TerminalRef::new(*id, terminal.name.as_str());
            if holds(&at, terminal.role) {
                all.push(at);
            }
        }
    }
    all
}

pub(crate) fn is_free(ctx: &Ctx<'_>, at: &TerminalRef) -> bool {
    ctx.runs_on(at.part, at.terminal.as_str()).is_empty()
}

/// The other end of the voice coil that has an end on this terminal.
fn across(ctx: &Ctx<'_>, at: &TerminalRef) -> Option<TerminalRef> {
    let Role::Coil { coil, positive } = ctx.role(at)? else {
        return None;
    };
    let other = Role::Coil {
        coil,
        positive: !positive,
    };
    let mut all = ctx.wiring.terminals_of(at.part);
    let (terminal, _) = all.find(|(terminal, _)| terminal.role == other)?;
    Some(TerminalRef::new(at.part, terminal.name.as_str()))
}

/// The leg of an output that a run from this terminal leads to, and the run.
fn leg_on(ctx: &Ctx<'_>, at: &TerminalRef) -> Option<(RunId, TerminalRef)> {
    let runs = ctx.runs_on(at.part, at.terminal.as_str());
    let [run] = runs[..] else { return None };
    let ends = ctx.run(run)?.ends().into_iter().filter_map(|end| end.terminal());
    let leg = ends
        .into_iter()
        .find(|end| matches!(ctx.role(end), Some(Role::SpeakerOut { .. })))?;
    Some((run, leg.clone()))
}

/// The leg that is missing to a loop: the other end of the coil is led to the one of an output, this is the other one.
pub(crate) fn missing_leg(ctx: &Ctx<'_>, coil_end: &TerminalRef) -> Option<(RunId, TerminalRef)> {
    let (run, leg) = leg_on(ctx, &across(ctx, coil_end)?)?;
    let Some(Role::SpeakerOut { channel, positive }) = ctx.role(&leg) else {
        return None;
    };
    let wanted = Role::SpeakerOut {
        channel,
        positive: !positive,
    };
    let mut all = ctx.wiring.terminals_of(leg.part);
    let (terminal, _) = all.find(|(terminal, _)| terminal.role == wanted)?;
    let missing = TerminalRef::new(leg.part, terminal.name.as_str());
    is_free(ctx, &missing).then_some((run, missing))
}

/// The terminals on which the loose end of a run can have been meant to be, and whether there is no doubt about it.
fn meant(ctx: &Ctx<'_>, at: &TerminalRef, role: Role) -> (Vec<TerminalRef>, bool) {
    let unused = |wanted: fn(Role) -> bool| {
        let elsewhere = |part: PartId, role: Role| part != at.part && wanted(role);
        terminals(ctx, elsewhere, |other, _| is_free(ctx, other))
    };
    match role {
        Role::Coil { .. } => (
            missing_leg(ctx, at).into_iter().map(|(_, leg)| leg).collect(),
            true,
        ),
        Role::SpeakerOut { .. } => {
            let closes = |other: &TerminalRef, _| {
                let leg = across(ctx, other).and_then(|end| leg_on(ctx, &end));
                let pair = leg.is_some_and(|(_, leg)| leg.part == at.part && is_pair(ctx, &leg, role));
                is_free(ctx, other) && pair
            };
            (
                terminals(ctx, |_, role| matches!(role, Role::Coil { .. }), closes),
                true,
            )
        }
        Role::TurnOnIn => (
            terminals(
                ctx,
                |part, role| part != at.part && role == Role::TurnOnOut,
                |_, _| true,
            ),
            true,
        ),
        Role::TurnOnOut => (unused(|role| role == Role::TurnOnIn), true),
        Role::LineIn(_) => (unused(|role| matches!(role, Role::LineOut(_))), true),
        Role::LineOut(_) => (unused(|role| matches!(role, Role::LineIn(_))), true),
        Role::SupplyMinus => (
            terminals(
                ctx,
                |part, _| matches!(ctx.kind(part), Some(PartKind::Ground(_))),
                |_, _| true,
            ),
            false,
        ),
        Role::SupplyPlus => {
            let others = ctx.free_feeds().iter().filter(|other| other.part != at.part);
            (others.cloned().collect(), false)
        }
        Role::Through if is_live(ctx, at) => {
            let takes = |other: &TerminalRef, role| {
                let kind = ctx.kind(other.part);
                is_free(ctx, other) && kind.is_some_and(|kind| takes_feed(kind, &other.terminal, role))
            };
            (terminals(ctx, |_, _| true, takes), false)
        }
        _ => (Vec::new(), false),
    }
}

fn is_live(ctx: &Ctx<'_>, at: &TerminalRef) -> bool {
    let point = ctx.wiring.point(at.part, at.terminal.as_str());
    point.is_some_and(|point| ctx.live.contains(&point))
}

/// Outputs of blocks that a source can make live and that have no wire yet.
pub(crate) fn free_feeds(ctx: &Ctx<'_>) -> Vec<TerminalRef> {
    terminals(
        ctx,
        |part, _| matches!(ctx.kind(part), Some(PartKind::Block(_))),
        |at, _| at.terminal.as_str().starts_with("out") && is_free(ctx, at) && is_live(ctx, at),
    )
}

/// Whether a leg belongs to the output of this one, and is the other of the two.
fn is_pair(ctx: &Ctx<'_>, leg: &TerminalRef, one: Role) -> bool {
    match (ctx.role(leg), one) {
        (
            Some(Role::SpeakerOut { channel, positive }),
            Role::SpeakerOut {
                channel: other,
                positive: sign,
            },
        ) => channel == other && positive != sign,
        _ => false,
    }
}

/// Ends that lie loose, in the order of their runs; of a run that lies loose at both ends none.
pub(crate) fn loose_ends(ctx: &Ctx<'_>) -> Vec<Loose> {
    let of_run = |(id, run): (&RunId, &Run)| {
        if !has_loose_end(ctx, run) {
            return None;
        }
        let is_there = |end: usize| {
            let at = run.ends().get(end).and_then(|end| end.terminal())?;
            ctx.wiring
                .point(at.part, at.terminal.as_str())
                .map(|_| at.clone())
        };
        let (at, end) = match (is_there(0), is_there(1)) {
            (Some(at), None) => (at, 1),
            (None, Some(at)) => (at, 0),
            _ => return None,
        };
        let (to, clear) = meant(ctx, &at, ctx.role(&at)?);
        let clear = clear && to.len() == 1;
        Some(Loose {
            run: *id,
            end,
            to,
            clear,
        })
    };
    ctx.sheet.runs.iter().filter_map(of_run).collect()
}

/// Offers to lead the loose end of a run to where it can have been meant to be.
pub(crate) fn rejoin(ctx: &Ctx<'_>, id: RunId, finding: Finding) -> Finding {
    match ctx.loose().iter().find(|loose| loose.run == id) {
        Some(loose) => lead(ctx, loose, finding, |_| true),
        None => finding,
    }
}

/// Offers to lead a loose end to those of the first terminals of which this holds.
fn lead(ctx: &Ctx<'_>, loose: &Loose, finding: Finding, holds: impl Fn(&TerminalRef) -> bool) -> Finding {
    let Some(run) = ctx.run(loose.run) else {
        return finding;
    };
    let offered = loose.to.iter().take(MOST).filter(|to| holds(to));
    offered.fold(finding, |finding, to| {
        let moved = moved(ctx, run, loose.end, to.clone());
        let name = say!(
            "mend-take-to",
            run = &run.tag,
            terminal = ctx.terminal(to.part, to.terminal.as_str())
        );
        let edit = Some(Edit::new(name, vec![set_run(loose.run, moved)]));
        if loose.clear {
            finding.mend(edit)
        } else {
            finding.mend_by_choice(edit, say!("mend-choice-end", run = ctx.run_tag(loose.run)))
        }
    })
}

/// Offers the same for every loose run that leads to a terminal of this part of which this holds, or can be led to one.
pub(crate) fn rejoin_at(
    ctx: &Ctx<'_>,
    part: PartId,
    finding: Finding,
    holds: impl Fn(&TerminalRef) -> bool,
) -> Finding {
    let on = |at: &TerminalRef| at.part == part && holds(at);
    ctx.loose().iter().fold(finding, |finding, loose| {
        let ends = ctx.run(loose.run).map(Run::ends);
        let own = ends.is_some_and(|ends| ends.iter().filter_map(|end| end.terminal()).any(on));
        lead(ctx, loose, finding, |to| own || on(to))
    })
}
