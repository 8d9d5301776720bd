//! `poor-ending`: an end finished by a method that does not hold.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::{set_part, set_run};
use crate::registry::{Check, CheckGroup};
use crate::wording::{W, and_then};
use model::conductor::EndingMethod;
use model::kinds::supply::SpliceMethod;
use model::{Edit, Fact, PartId, PartKind, Run, RunId};
use words::{Saying, figure, say};

pub(crate) static CHECK: Check = Check {
    name: "poor-ending",
    grade: Grade::Stop,
    group: CheckGroup::Workmanship,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A
load L1 power=50W
run W1 B1.+ F1.in 10mm2 0.3m RD
run W2 F1.out L1.+ 10mm2 1m RD ends=ring/twisted #~ poor-ending
run W3 L1.- B1.- 10mm2 1m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A
load L1 power=50W
run W1 B1.+ F1.in 10mm2 0.3m RD
run W2 F1.out L1.+ 10mm2 1m RD ends=ring/butt
run W3 L1.- B1.- 10mm2 1m BK",
    limits: &["joint-power-melt"],
    since: "0.1.0",
    run,
};

/// How an end is finished; side 0 is `from`.
pub(crate) fn ending_of(run: &Run, side: usize) -> Option<EndingMethod> {
    if side == 0 {
        run.from_ending.method.value()
    } else {
        run.to_ending.method.value()
    }
}

/// Whether a method does not hold.
pub(crate) fn is_poor(method: Option<EndingMethod>) -> bool {
    matches!(
        method,
        Some(EndingMethod::Twisted | EndingMethod::Tap | EndingMethod::Loose)
    )
}

fn is_poor_splice(ctx: &Ctx<'_>, part: PartId) -> bool {
    matches!(
        ctx.kind(part),
        Some(PartKind::Splice(splice)) if matches!(splice.method, SpliceMethod::Twisted | SpliceMethod::Tap)
    )
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    for (id, part) in &ctx.sheet.parts {
        if !is_poor_splice(ctx, *id) || !ctx.touched_part(*id) {
            continue;
        }
        let PartKind::Splice(splice) = &part.is else {
            continue;
        };
        let runs: Vec<RunId> = ctx.runs_of(*id).map(|(run, _)| run).collect();
        if runs.is_empty() {
            continue;
        }
        let is_feed = runs.iter().any(|run| ctx.is_feed(*run));
        let mut crimped = part.clone();
        if let PartKind::Splice(splice) = &mut crimped.is {
            splice.method = SpliceMethod::Crimped;
        }
        let mut changes = vec![set_part(*id, crimped)];
        for run in &runs {
            let sides = poor_sides(ctx, *run, Some(*id));
            changes.extend(
                remake(ctx, *run, &sides)
                    .into_iter()
                    .flat_map(|edit| edit.changes),
            );
        }
        out.add(
            CHECK
                .finding(
                    say!(
                        "poor-ending-splice",
                        splice = &part.tag,
                        method = splice.method.word(),
                    ),
                    say!("poor-ending-splice-remedy", splice = &part.tag),
                )
                .grade(if is_feed { Grade::Stop } else { Grade::Fix })
                .parts([*id])
                .mend(Some(Edit::new(say!("mend-crimp", splice = &part.tag), changes))),
        );
    }
    for (id, run) in &ctx.sheet.runs {
        if !ctx.touched_run(*id) {
            continue;
        }
        let sides = poor_sides(ctx, *id, None);
        if sides.is_empty() {
            continue;
        }
        let ends: Vec<Saying> = sides
            .iter()
            .filter_map(|side| {
                let at = run.ends().get(*side)?.terminal()?;
                let method = ending_of(run, *side)?;
                Some(say!(
                    "poor-ending-at",
                    method = method.word(),
                    terminal = ctx.terminal(at.part, at.terminal.as_str()),
                ))
            })
            .collect();
        let loss = ctx.flow(*id).map_or(0.0, |flow| {
            sides
                .iter()
                .filter_map(|side| flow.ending_loss.get(*side))
                .map(|watts| watts.0)
                .fold(0.0, f64::max)
        });
        let melts = ctx.limit("joint-power-melt").is_some_and(|limit| loss > limit);
        let heat = (loss >= 0.5).then(|| say!("poor-ending-heat", heat = figure(loss, W)));
        out.add(
            CHECK
                .finding(
                    and_then(say!("poor-ending-what", run = &run.tag, ends = ends), heat),
                    say!("poor-ending-remedy", run = &run.tag),
                )
                .grade(if ctx.is_feed(*id) || melts {
                    Grade::Stop
                } else {
                    Grade::Fix
                })
                .runs([*id])
                .mend(remake(ctx, *id, &sides)),
        );
    }
}

/// Ends of a run that do not hold: those on this part, or, with `None`, those that are not on a poor splice, which has
/// a finding of its own.
fn poor_sides(ctx: &Ctx<'_>, id: RunId, on: Option<PartId>) -> Vec<usize> {
    let Some(run) = ctx.run(id) else {
        return Vec::new();
    };
    run.ends()
        .iter()
        .enumerate()
        .filter(|(side, end)| {
            let Some(at) = end.terminal() else { return false };
            let here = || match on {
                Some(part) => at.part == part,
                None => !is_poor_splice(ctx, at.part),
            };
            is_poor(ending_of(run, *side)) && here()
        })
        .map(|(side, _)| side)
        .collect()
}

/// Finishes these ends of a run by a method that suits what they are on.
pub(crate) fn remake(ctx: &Ctx<'_>, id: RunId, sides: &[usize]) -> Option<Edit> {
    let mut run = ctx.run(id)?.clone();
    for side in sides {
        let kind = run
            .ends()
            .get(*side)
            .and_then(|end| end.terminal())
            .and_then(|at| ctx.kind(at.part));
        let method = match kind {
            Some(
                PartKind::Battery(_)
                | PartKind::Alternator(_)
                | PartKind::Vehicle(_)
                | PartKind::Fuse(_)
                | PartKind::Breaker(_)
                | PartKind::Bus(_)
                | PartKind::Ground(_)
                | PartKind::Isolator(_),
            ) => EndingMethod::CrimpedRing,
            Some(PartKind::Block(_) | PartKind::Amplifier(_) | PartKind::Crossover(_)) => {
                EndingMethod::Ferrule
            }
            Some(PartKind::Speaker(_) | PartKind::Relay(_) | PartKind::Switch(_)) => {
                EndingMethod::CrimpedSpade
            }
            _ => EndingMethod::CrimpedSplice,
        };
        let ending = if *side == 0 {
            &mut run.from_ending
        } else {
            &mut run.to_ending
        };
        ending.method = Fact::Given(method);
        ending.resistance = Fact::Unknown;
    }
    (!sides.is_empty()).then(|| {
        Edit::new(
            say!("mend-remake-ends", run = &run.tag),
            vec![set_run(id, run.clone())],
        )
    })
}
