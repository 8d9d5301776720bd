//! `silent-speaker`: a driver without a complete loop to a channel.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::leads::second_lead;
use crate::mends::rejoining::rejoin_at;
use crate::mends::set_part;
use crate::registry::{Check, CheckGroup};
use circuit::Gap;
use model::conductor::Condition;
use model::{Edit, PartId, PartKind, RunId};
use ordered::OrderedMap;
use words::say;

pub(crate) static CHECK: Check = Check {
    name: "silent-speaker",
    grade: Grade::Fix,
    group: CheckGroup::Speakers,
    example: "\
amplifier A1 sections=\"1x 60W@4ohm min 4ohm\"
speaker LS1 4ohm power=80W #~ silent-speaker
plug P1 cavities=\"1 WH plus; 2 WHBK minus\" mated=no #~ silent-speaker
run W1 A1.out1+ P1.1a 2.5mm2 3m WH
run W2 A1.out1- P1.2a 2.5mm2 3m WHBK
run W3 P1.1b LS1.+ 2.5mm2 1m WH
run W4 P1.2b LS1.- 2.5mm2 1m WHBK",
    instead: "\
amplifier A1 sections=\"1x 60W@4ohm min 4ohm\"
speaker LS1 4ohm power=80W
plug P1 cavities=\"1 WH plus; 2 WHBK minus\" mated=yes
run W1 A1.out1+ P1.1a 2.5mm2 3m WH
run W2 A1.out1- P1.2a 2.5mm2 3m WHBK
run W3 P1.1b LS1.+ 2.5mm2 1m WH
run W4 P1.2b LS1.- 2.5mm2 1m WHBK",
    limits: &[],
    since: "0.1.0",
    run,
};

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let anyone_added = ctx.sheet.parts.iter().any(|(id, part)| {
        matches!(part.is, PartKind::Amplifier(_) | PartKind::HeadUnit(_)) && !ctx.is_makers(*id)
    });
    // Speakers with the same gap share a cause; a gap on the speaker itself is its own.
    type Place = (Option<PartId>, Option<RunId>);
    let mut by_gap: OrderedMap<Place, (Vec<PartId>, Option<Gap>)> = OrderedMap::new();
    for (id, driver) in &ctx.study.drivers {
        if driver.plays || !(ctx.touched_part(*id) || anyone_added) {
            continue;
        }
        // Where one of its leads is cut, that is the cause.
        let cut = |run: &model::Run| run.wire.condition.value() == Some(Condition::Cut);
        if ctx
            .runs_of(*id)
            .any(|(run_id, run)| cut(run) && out.has_run(run_id, &["damaged-run"]))
        {
            continue;
        }
        let gap = driver.gap.clone();
        let run = gap.as_ref().and_then(|gap| gap.run);
        let part = gap.as_ref().and_then(|gap| gap.part);
        let part = part.or(if run.is_none() { Some(*id) } else { None });
        by_gap
            .entry((part, run))
            .or_insert_with(|| (Vec::new(), gap))
            .0
            .push(*id);
    }
    for ((part, run), (speakers, gap)) in by_gap {
        // A cut run, and a plug that cuts off a feed or return as well, are told as that.
        if run.is_some_and(|run| out.has_run(run, &["damaged-run"]))
            || part.is_some_and(|part| is_apart(ctx, part) && out.has_part(part, &["no-feed", "no-return"]))
        {
            continue;
        }
        let why = gap.map_or_else(|| say!("silent-speaker-loop"), |gap| gap.what);
        let mut finding = CHECK
            .finding(
                say!(
                    "silent-speaker-what",
                    speakers = ctx.part_tags(&speakers),
                    why = why
                ),
                say!("silent-speaker-remedy"),
            )
            .parts(speakers.iter().copied())
            .parts(part)
            .runs(run)
            .mend(part.and_then(|part| mate(ctx, part)));
        if let [speaker] = speakers[..] {
            finding = rejoin_at(ctx, speaker, finding.mend(second_lead(ctx, speaker)), |_| true);
        }
        out.add(finding);
    }
}

fn is_apart(ctx: &Ctx<'_>, part: PartId) -> bool {
    matches!(ctx.kind(part), Some(PartKind::Plug(plug)) if !plug.mated)
}

/// Puts the halves of a plug together.
pub(crate) fn mate(ctx: &Ctx<'_>, id: PartId) -> Option<Edit> {
    let mut part = ctx.part(id)?.clone();
    match &mut part.is {
        PartKind::Plug(plug) if !plug.mated => plug.mated = true,
        _ => return None,
    }
    Some(Edit::new(
        say!("mend-mate", plug = &part.tag),
        vec![set_part(id, part)],
    ))
}
