//! Where a run that ends loose was meant to end, and leads that are missing.

use crate::adding::{Adding, beside, moved, wire};
use crate::checks::loose_end::has_loose_end;
use crate::context::Ctx;
use crate::finding::Finding;
use crate::mends::set_run;
use model::conductor::{Colour, Jacket, Size};
use model::kinds::sound::Position;
use model::quantity::{Metres, SquareMm};
use model::terminals::HEAD_LINE_OUTPUTS;
use model::{Edit, Fact, PartId, PartKind, Role, Run, RunId, TerminalRef};
use words::say;

/// Most terminals between which somebody is asked to choose.
const MOST: usize = 3;

/// Terminals of the sheet of which this holds, with their roles.
fn terminals(ctx: &Ctx<'_>, holds: impl Fn(&TerminalRef, Role) -> bool) -> Vec<TerminalRef> {
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

fn is_free(ctx: &Ctx<'_>, at: &TerminalRef) -> bool {
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
fn missing_leg(ctx: &Ctx<'_>, coil_end: &TerminalRef) -> Option<(RunId, TerminalRef)> {
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
        _ => (Vec::new(), false),
    }
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

/// The second lead of a speaker of which only one leads to an output, beside the first.
pub(crate) fn second_lead(ctx: &Ctx<'_>, speaker: PartId) -> Option<Edit> {
    let coil_ends = ctx
        .wiring
        .terminals_of(speaker)
        .map(|(terminal, _)| TerminalRef::new(speaker, terminal.name.as_str()));
    let bare: Vec<TerminalRef> = coil_ends.into_iter().filter(|at| is_free(ctx, at)).collect();
    let [bare] = &bare[..] else { return None };
    let (first, leg) = missing_leg(ctx, bare)?;
    let first = ctx.run(first)?;
    let (from, to) = if first.from.terminal().map(|at| at.part) == Some(speaker) {
        (bare.clone(), leg)
    } else {
        (leg, bare.clone())
    };
    let mut lead = beside(first, from, to);
    lead.wire.jacket = Jacket {
        tracer: Some(Colour::Black),
        ..lead.wire.jacket
    };
    Some(added(ctx, lead))
}

/// One run that is added, named by its ends.
fn added(ctx: &Ctx<'_>, lead: Run) -> Edit {
    let mut adding = Adding::new(ctx);
    let ends: Vec<String> = lead
        .ends()
        .into_iter()
        .filter_map(|end| end.terminal())
        .map(|at| ctx.terminal(at.part, at.terminal.as_str()))
        .collect();
    let (_, tag) = adding.run(lead);
    let [from, to] = &ends[..] else {
        return Edit::new(tag, adding.changes);
    };
    Edit::new(
        say!("mend-add-run", run = tag, from = from, to = to),
        adding.changes,
    )
}

/// Length of a lead between two parts: that of a run between them where there is one.
fn length_between(ctx: &Ctx<'_>, a: PartId, b: PartId) -> Fact<Metres> {
    let mut between = ctx.runs_of(a).filter(|(_, run)| run.touches(b));
    between
        .next()
        .map_or(Fact::Assumed(Metres(3.0)), |(_, run)| run.wire.length)
}

/// Leads from the turn-on outputs of the sheet to this part, each as an edit.
pub(crate) fn turn_on_leads(ctx: &Ctx<'_>, part: PartId) -> Vec<Edit> {
    let outputs = terminals(ctx, |other, role| other.part != part && role == Role::TurnOnOut);
    let to = TerminalRef::new(part, "rem");
    outputs
        .into_iter()
        .take(MOST)
        .map(|from| {
            let length = length_between(ctx, from.part, part);
            let size = Size::Metric(SquareMm(0.75));
            added(ctx, wire(from, to.clone(), size, length, Colour::Blue))
        })
        .collect()
}

/// Signal leads to these inputs of a part from the line outputs of the one head unit, by what each is to drive; nothing where
/// one of them has no output of its own that is free.
pub(crate) fn signal_leads(ctx: &Ctx<'_>, part: PartId, inputs: &[u8]) -> Option<Edit> {
    let heads = ctx
        .sheet
        .parts
        .iter()
        .filter(|(_, it)| matches!(it.is, PartKind::HeadUnit(_)));
    let heads: Vec<PartId> = heads.map(|(id, _)| *id).collect();
    let [head] = heads[..] else { return None };
    let like = ctx.runs_of(part).find(|(_, run)| {
        let on_input =
            |at: &TerminalRef| at.part == part && matches!(ctx.sheet.role(at), Some(Role::LineIn(_)));
        run.ends()
            .into_iter()
            .filter_map(|end| end.terminal())
            .any(on_input)
    });
    let mut adding = Adding::new(ctx);
    let mut tags: Vec<String> = Vec::new();
    for input in inputs {
        let fed = ctx
            .study
            .signal
            .inputs
            .iter()
            .find(|it| it.part == part && it.input == *input)?;
        let mut plays: Vec<Position> = Vec::new();
        for driver in &fed.drives {
            let Some(PartKind::Speaker(speaker)) = ctx.kind(*driver) else {
                continue;
            };
            plays.extend(speaker.position.value());
        }
        plays.dedup();
        let [plays] = plays[..] else { return None };
        let channel = match plays {
            Position::FrontLeft => 1,
            Position::FrontRight => 2,
            Position::RearLeft => 3,
            Position::RearRight => 4,
            Position::Bass => 5,
            Position::Centre => return None,
        };
        let (name, _) = HEAD_LINE_OUTPUTS.iter().find(|(_, number)| *number == channel)?;
        let (from, to) = (
            TerminalRef::new(head, *name),
            TerminalRef::new(part, format!("in{input}")),
        );
        ctx.sheet.role(&from).filter(|_| is_free(ctx, &from))?;
        ctx.sheet.role(&to).filter(|_| is_free(ctx, &to))?;
        let lead = match like {
            Some((_, run)) if run.touches(head) => {
                // In the direction of the one beside it, so that it takes the same way.
                let turned = run.from.terminal().is_some_and(|at| at.part == part);
                if turned {
                    beside(run, to, from)
                } else {
                    beside(run, from, to)
                }
            }
            _ => wire(
                from,
                to,
                Size::Metric(SquareMm(0.35)),
                length_between(ctx, head, part),
                Colour::Grey,
            ),
        };
        tags.push(adding.run(lead).1);
    }
    let name = say!("mend-add-signal", runs = tags, part = ctx.part_tag(part));
    (!inputs.is_empty()).then(|| Edit::new(name, adding.changes))
}
