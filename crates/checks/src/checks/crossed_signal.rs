//! `crossed-signal`: an input that gets the wrong side, or more than one output.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::adding::without_run;
use crate::mends::set_run;
use crate::registry::{Check, CheckGroup};
use circuit::{ChannelLoad, ChannelSide, InputFed};
use model::kinds::sound::Position;
use model::{Edit, End, PartId, PartKind, RunId, TerminalRef};
use ordered::{OrderedMap, OrderedSet};
use words::{Saying, say};

pub(crate) static CHECK: Check = Check {
    name: "crossed-signal",
    grade: Grade::Fix,
    group: CheckGroup::SignalAndControl,
    example: "\
head H1 speaker-outputs=0 line-outputs=1
amplifier A1 sections=\"2x 60W@4ohm min 4ohm\" input-level=line inputs=2 turn-on=sensing #~ crossed-signal
speaker LS1 4ohm power=80W front-left
speaker LS2 4ohm power=80W front-right
run W1 H1.front-l A1.in2 0.35mm2 5m WH ends=plug/plug #~ crossed-signal
run W2 H1.front-r A1.in1 0.35mm2 5m RD ends=plug/plug #~ crossed-signal
run W3 A1.out1+ LS1.+ 2.5mm2 3m WH
run W4 A1.out1- LS1.- 2.5mm2 3m WHBK
run W5 A1.out2+ LS2.+ 2.5mm2 3m GY
run W6 A1.out2- LS2.- 2.5mm2 3m GYBK",
    instead: "\
head H1 speaker-outputs=0 line-outputs=1
amplifier A1 sections=\"2x 60W@4ohm min 4ohm\" input-level=line inputs=2 turn-on=sensing
speaker LS1 4ohm power=80W front-left
speaker LS2 4ohm power=80W front-right
run W1 H1.front-l A1.in1 0.35mm2 5m WH ends=plug/plug
run W2 H1.front-r A1.in2 0.35mm2 5m RD ends=plug/plug
run W3 A1.out1+ LS1.+ 2.5mm2 3m WH
run W4 A1.out1- LS1.- 2.5mm2 3m WHBK
run W5 A1.out2+ LS2.+ 2.5mm2 3m GY
run W6 A1.out2- LS2.- 2.5mm2 3m GYBK",
    limits: &[],
    since: "0.1.0",
    run,
};

/// Sides of the speakers that an input's channels drive, as far as they are known. The channel that a driver names is
/// the strongest on it; channel n takes input n, starting again from the first.
fn sides(ctx: &Ctx<'_>, channels: &[&ChannelLoad], input: &InputFed) -> OrderedSet<ChannelSide> {
    let Some(PartKind::Amplifier(amplifier)) = ctx.kind(input.part) else {
        return OrderedSet::new();
    };
    let inputs = amplifier.inputs.max(1);
    channels
        .iter()
        .filter(|channel| (channel.channel.saturating_sub(1)) % inputs + 1 == input.input)
        .flat_map(|channel| &channel.drivers)
        .filter_map(|driver| match ctx.kind(*driver) {
            Some(PartKind::Speaker(speaker)) => speaker.position.value(),
            _ => None,
        })
        .filter_map(|position| match position {
            Position::FrontLeft | Position::RearLeft => Some(ChannelSide::Left),
            Position::FrontRight | Position::RearRight => Some(ChannelSide::Right),
            Position::Centre | Position::Bass => None,
        })
        .collect()
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let mut channels: OrderedMap<PartId, Vec<&ChannelLoad>> = OrderedMap::new();
    for channel in &ctx.study.channels {
        channels.entry(channel.part).or_default().push(channel);
    }
    let mut crossed: OrderedMap<PartId, Vec<&InputFed>> = OrderedMap::new();
    for input in &ctx.study.signal.inputs {
        if !ctx.touched_part(input.part) {
            continue;
        }
        if input.by.len() > 1 {
            let outputs: Vec<String> = input
                .by
                .iter()
                .map(|(part, terminal)| ctx.terminal(*part, terminal))
                .collect();
            let tied = CHECK
                .finding(
                    say!(
                        "crossed-signal-tied",
                        input = usize::from(input.input),
                        part = ctx.part_tag(input.part),
                        outputs = outputs,
                    ),
                    say!("crossed-signal-tied-remedy"),
                )
                .parts([input.part])
                .runs(input.runs.iter().copied());
            // Leads from the outputs straight to the input: one of them stays.
            let leads: Vec<RunId> = input
                .runs
                .iter()
                .copied()
                .filter(|run| {
                    let lands = ctx.landings(*run);
                    lands.iter().any(|(part, _, _)| *part == input.part)
                        && input
                            .by
                            .iter()
                            .any(|(from, _)| lands.iter().any(|(part, _, _)| part == from))
                })
                .collect();
            let both = leads.len() == input.by.len();
            out.add(leads.iter().filter(|_| both).fold(tied, |finding, run| {
                let name = say!("mend-take-out", run = ctx.run_tag(*run));
                let edit = (leads.len() == 2).then(|| Edit::new(name, vec![without_run(*run)]));
                finding.mend_by_choice(edit, say!("mend-choice-lead"))
            }));
            continue;
        }
        let own = channels.get(&input.part).map(Vec::as_slice).unwrap_or_default();
        let sides = sides(ctx, own, input);
        let wrong = match (input.side, sides.len()) {
            (Some(ChannelSide::Left), 1) => sides.contains(&ChannelSide::Right),
            (Some(ChannelSide::Right), 1) => sides.contains(&ChannelSide::Left),
            _ => false,
        };
        if wrong {
            crossed.entry(input.part).or_default().push(input);
        }
    }
    for (part, inputs) in crossed {
        let crossed: Vec<Saying> = inputs
            .iter()
            .map(|input| {
                let number = usize::from(input.input);
                match input.side {
                    Some(ChannelSide::Left) => say!("crossed-signal-left", input = number),
                    _ => say!("crossed-signal-right", input = number),
                }
            })
            .collect();
        let runs: OrderedSet<RunId> = inputs
            .iter()
            .flat_map(|input| input.runs.iter().copied())
            .collect();
        out.add(
            CHECK
                .finding(
                    say!("crossed-signal-what", part = ctx.part_tag(part), inputs = crossed),
                    say!("crossed-signal-remedy", part = ctx.part_tag(part)),
                )
                .parts([part])
                .runs(runs)
                .mend(swap(ctx, &inputs)),
        );
    }
}

/// Swaps the leads of two crossed inputs.
fn swap(ctx: &Ctx<'_>, inputs: &[&InputFed]) -> Option<Edit> {
    let [first, second] = inputs else { return None };
    if first.side == second.side || first.part != second.part {
        return None;
    }
    // Every terminal of the one input against the like of the other.
    let like = |at: &TerminalRef| {
        let name = at.terminal.as_str();
        for (this, other) in [(first, second), (second, first)] {
            for prefix in ["in", "hi"] {
                let Some(rest) = name.strip_prefix(&format!("{prefix}{}", this.input)) else {
                    continue;
                };
                if matches!(rest, "" | "+" | "-") {
                    return Some(TerminalRef::new(
                        at.part,
                        format!("{prefix}{}{rest}", other.input),
                    ));
                }
            }
        }
        None
    };
    let changes: Vec<_> = ctx
        .runs_of(first.part)
        .filter_map(|(id, run)| {
            let mut turned = run.clone();
            for end in [&mut turned.from, &mut turned.to] {
                if let End::On(at) = end
                    && at.part == first.part
                    && let Some(other) = like(at)
                {
                    *at = other;
                }
            }
            (turned != *run).then(|| set_run(id, turned))
        })
        .collect();
    let name = say!(
        "mend-swap-inputs",
        one = usize::from(first.input),
        other = usize::from(second.input),
        part = ctx.part_tag(first.part)
    );
    (!changes.is_empty()).then(|| Edit::new(name, changes))
}
