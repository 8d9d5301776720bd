//! `reversed-speaker`: a driver that pushes while its partners pull.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::adding::moved;
use crate::mends::set_run;
use crate::registry::{Check, CheckGroup};
use model::kinds::sound::{Band, Position};
use model::{Change, Edit, End, PartId, PartKind, Run, RunId, TerminalName, TerminalRef};
use ordered::{OrderedMap, OrderedSet};
use words::say;

pub(crate) static CHECK: Check = Check {
    name: "reversed-speaker",
    grade: Grade::Fix,
    group: CheckGroup::Speakers,
    example: "\
amplifier A1 sections=\"2x 60W@4ohm min 4ohm\"
speaker LS1 4ohm power=80W front-left
speaker LS2 4ohm power=80W front-right #~ reversed-speaker
run W1 A1.out1+ LS1.+ 2.5mm2 3m WH
run W2 A1.out1- LS1.- 2.5mm2 3m WHBK
run W3 A1.out2+ LS2.- 2.5mm2 3m GY #~ reversed-speaker
run W4 A1.out2- LS2.+ 2.5mm2 3m GYBK #~ reversed-speaker",
    instead: "\
amplifier A1 sections=\"2x 60W@4ohm min 4ohm\"
speaker LS1 4ohm power=80W front-left
speaker LS2 4ohm power=80W front-right
run W1 A1.out1+ LS1.+ 2.5mm2 3m WH
run W2 A1.out1- LS1.- 2.5mm2 3m WHBK
run W3 A1.out2+ LS2.+ 2.5mm2 3m GY
run W4 A1.out2- LS2.- 2.5mm2 3m GYBK",
    limits: &[],
    since: "0.1.0",
    run,
};

/// What plays together.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Together {
    Front,
    Rear,
    Bass,
    /// Position not known: the pair of channels of a part.
    Channels(PartId, u8),
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let mut groups: OrderedMap<(Band, Together), Vec<(PartId, bool)>> = OrderedMap::new();
    for (id, driver) in &ctx.study.drivers {
        let Some(PartKind::Speaker(speaker)) = ctx.kind(*id) else {
            continue;
        };
        let (Some(in_phase), true, false) = (driver.in_phase, driver.plays, driver.coils_oppose) else {
            continue;
        };
        let together = match (speaker.band, speaker.position.value()) {
            (Band::Sub, _) | (_, Some(Position::Bass)) => Together::Bass,
            (_, Some(Position::FrontLeft | Position::FrontRight)) => Together::Front,
            (_, Some(Position::RearLeft | Position::RearRight)) => Together::Rear,
            (_, Some(Position::Centre)) => continue,
            (_, None) => match driver.channel {
                Some((part, channel)) => Together::Channels(part, channel.saturating_sub(1) / 2),
                None => continue,
            },
        };
        groups
            .entry((speaker.band, together))
            .or_default()
            .push((*id, in_phase));
    }
    for drivers in groups.values() {
        let against = drivers.iter().filter(|(_, in_phase)| !in_phase).count();
        let with = drivers.len() - against;
        if against == 0 || with == 0 {
            continue;
        }
        let odd = against > with;
        let partners: Vec<PartId> = drivers.iter().filter(|d| d.1 != odd).map(|d| d.0).collect();
        for (id, _) in drivers.iter().filter(|(_, in_phase)| *in_phase == odd) {
            if !ctx.touched_part(*id) {
                continue;
            }
            let tag = ctx.part_tag(*id);
            let runs: OrderedSet<_> = ctx.runs_of(*id).map(|(run, _)| run).collect();
            out.add(
                CHECK
                    .finding(
                        say!(
                            "reversed-speaker-what",
                            speaker = &tag,
                            partners = ctx.part_tags(&partners)
                        ),
                        say!("reversed-speaker-remedy", speaker = &tag),
                    )
                    .parts([*id])
                    .runs(runs)
                    .mend(swap(ctx, *id))
                    .mend(turn_plug(ctx, *id)),
            );
        }
    }
}

/// Swaps plus and minus of every coil.
fn swap(ctx: &Ctx<'_>, id: PartId) -> Option<Edit> {
    let turned = |name: &TerminalName| {
        let text = name.as_str();
        let (coil, sign) = text.split_at_checked(text.len().checked_sub(1)?)?;
        let other = match sign {
            "+" => "-",
            "-" => "+",
            _ => return None,
        };
        Some(TerminalName::new(format!("{coil}{other}")))
    };
    let mut changes: Vec<Change> = Vec::new();
    for (run_id, run) in ctx.runs_of(id) {
        let mut run = run.clone();
        for end in [&mut run.from, &mut run.to] {
            if let End::On(at) = end
                && at.part == id
            {
                at.terminal = turned(&at.terminal)?;
            }
        }
        changes.push(set_run(run_id, run));
    }
    (!changes.is_empty()).then(|| Edit::new(say!("mend-swap-wires", speaker = ctx.part_tag(id)), changes))
}

/// Turns the plug by which both leads of a speaker come: its two wires on that side change places.
fn turn_plug(ctx: &Ctx<'_>, id: PartId) -> Option<Edit> {
    let at_plug = |run: &Run| {
        let ends = run.ends();
        let end = ends.iter().position(|end| {
            let at = end.terminal();
            at.is_some_and(|at| matches!(ctx.kind(at.part), Some(PartKind::Plug(_))))
        })?;
        Some((end, ends.get(end)?.terminal()?.clone()))
    };
    let leads: Vec<(RunId, &Run)> = ctx.runs_of(id).collect();
    let [(one, first), (other, second)] = leads[..] else {
        return None;
    };
    let ((end, at), (other_end, other_at)) = (at_plug(first)?, at_plug(second)?);
    let side = |at: &TerminalRef| at.terminal.as_str().chars().next_back();
    if at.part != other_at.part || at == other_at || side(&at) != side(&other_at) {
        return None;
    }
    let name = say!(
        "mend-turn-plug",
        plug = ctx.part_tag(at.part),
        one = ctx.terminal(at.part, at.terminal.as_str()),
        other = ctx.terminal(other_at.part, other_at.terminal.as_str())
    );
    let changes = vec![
        set_run(one, moved(ctx, first, end, other_at)),
        set_run(other, moved(ctx, second, other_end, at)),
    ];
    Some(Edit::new(name, changes))
}
