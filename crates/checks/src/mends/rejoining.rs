//! Where a run that ends loose was meant to end.

use crate::checks::loose_end::has_loose_end;
use crate::context::Ctx;
use crate::finding::Finding;
use crate::mends::adding::moved;
use crate::mends::set_run;
use crate::wiring::takes_feed;
use model::{Edit, PartId, PartKind, Role, RunId, TerminalRef};
use words::say;

/// Most terminals between which somebody is asked to choose.
pub(crate) const MOST: usize = 3;

/// Terminals of the sheet of which this holds, with their roles.
pub(crate) fn terminals(ctx: &Ctx<'_>, holds: impl Fn(&TerminalRef, Role) -> bool) -> Vec<TerminalRef> {
    let mut all = Vec::new();
    for id in ctx.sheet.parts.keys() {
        for (terminal, _) in ctx.wiring.terminals_of(*id) {
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
    let Role::Coil { coil, positive } = ctx.sheet.role(at)? else {
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
        .find(|end| matches!(ctx.sheet.role(end), Some(Role::SpeakerOut { .. })))?;
    Some((run, leg.clone()))
}

/// The leg that is missing to a loop: the other end of the coil is led to the one of an output, this is the other one.
pub(crate) fn missing_leg(ctx: &Ctx<'_>, coil_end: &TerminalRef) -> Option<(RunId, TerminalRef)> {
    let (run, leg) = leg_on(ctx, &across(ctx, coil_end)?)?;
    let Some(Role::SpeakerOut { channel, positive }) = ctx.sheet.role(&leg) else {
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
        terminals(ctx, |other, role| {
            other.part != at.part && wanted(role) && is_free(ctx, other)
        })
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
            (terminals(ctx, closes), true)
        }
        Role::TurnOnIn => (
            terminals(ctx, |other, role| {
                other.part != at.part && role == Role::TurnOnOut
            }),
            true,
        ),
        Role::TurnOnOut => (unused(|role| role == Role::TurnOnIn), true),
        Role::LineIn(_) => (unused(|role| matches!(role, Role::LineOut(_))), true),
        Role::LineOut(_) => (unused(|role| matches!(role, Role::LineIn(_))), true),
        Role::SupplyMinus => (
            terminals(ctx, |other, _| {
                matches!(ctx.kind(other.part), Some(PartKind::Ground(_)))
            }),
            false,
        ),
        Role::SupplyPlus => (free_feeds(ctx, at.part), false),
        Role::Through if is_live(ctx, at) => {
            let takes = |other: &TerminalRef, role| {
                let kind = ctx.kind(other.part);
                is_free(ctx, other) && kind.is_some_and(|kind| takes_feed(kind, &other.terminal, role))
            };
            (terminals(ctx, takes), false)
        }
        _ => (Vec::new(), false),
    }
}

fn is_live(ctx: &Ctx<'_>, at: &TerminalRef) -> bool {
    let point = ctx.wiring.point(at.part, at.terminal.as_str());
    point.is_some_and(|point| ctx.live.contains(&point))
}

/// Outputs of blocks that a source can make live and that have no wire yet.
pub(crate) fn free_feeds(ctx: &Ctx<'_>, other_than: PartId) -> Vec<TerminalRef> {
    terminals(ctx, |at, _| {
        let is_output = matches!(ctx.kind(at.part), Some(PartKind::Block(_)));
        is_output
            && at.part != other_than
            && at.terminal.as_str().starts_with("out")
            && is_free(ctx, at)
            && is_live(ctx, at)
    })
}

/// Whether a leg belongs to the output of this one, and is the other of the two.
fn is_pair(ctx: &Ctx<'_>, leg: &TerminalRef, one: Role) -> bool {
    match (ctx.sheet.role(leg), one) {
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

/// Offers to lead the loose end of a run to where it can have been meant to be.
pub(crate) fn rejoin(ctx: &Ctx<'_>, id: RunId, finding: Finding) -> Finding {
    let Some(run) = ctx.run(id).filter(|run| has_loose_end(ctx, run)) else {
        return finding;
    };
    let is_there = |end: usize| {
        let at = run.ends().get(end).and_then(|end| end.terminal())?;
        ctx.wiring
            .point(at.part, at.terminal.as_str())
            .map(|_| at.clone())
    };
    let (at, loose) = match (is_there(0), is_there(1)) {
        (Some(at), None) => (at, 1),
        (None, Some(at)) => (at, 0),
        _ => return finding,
    };
    let Some(role) = ctx.sheet.role(&at) else {
        return finding;
    };
    let (to, clear) = meant(ctx, &at, role);
    let clear = clear && to.len() == 1;
    to.iter().take(MOST).fold(finding, |finding, to| {
        let run = moved(ctx, run, loose, to.clone());
        let name = say!(
            "mend-take-to",
            run = &run.tag,
            terminal = ctx.terminal(to.part, to.terminal.as_str())
        );
        let edit = Some(Edit::new(name, vec![set_run(id, run)]));
        if clear {
            finding.mend(edit)
        } else {
            finding.mend_by_choice(edit, say!("mend-choice-end", run = ctx.run_tag(id)))
        }
    })
}

/// Offers the same for every loose run that leads to this part, or can be led to it.
pub(crate) fn rejoin_at(ctx: &Ctx<'_>, part: PartId, mut finding: Finding) -> Finding {
    for (id, run) in &ctx.sheet.runs {
        if !has_loose_end(ctx, run) {
            continue;
        }
        let own = run.touches(part);
        let before = finding.mends.len();
        finding = rejoin(ctx, *id, finding);
        let lands = |mend: &crate::finding::Mend| {
            mend.edit.changes.iter().any(|change| match change {
                model::Change::Run { to: Some(run), .. } => run.touches(part),
                _ => false,
            })
        };
        let mut place = 0;
        finding.mends.retain(|mend| {
            place += 1;
            place <= before || own || lands(mend)
        });
    }
    finding
}
