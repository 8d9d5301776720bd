//! `wrong-level`: line level into a speaker-level input, or the other way round.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::adding::{Adding, beside, moved, wire};
use crate::mends::set_run;
use crate::registry::{Check, CheckGroup};
use model::conductor::{Colour, Size};
use model::kinds::sound::LineConverter;
use model::quantity::{Metres, SquareMm};
use model::{Edit, Fact, PartId, Role, RunId, TerminalRef};
use ordered::{OrderedMap, OrderedSet};
use words::say;

pub(crate) static CHECK: Check = Check {
    name: "wrong-level",
    grade: Grade::Fix,
    group: CheckGroup::SignalAndControl,
    example: "\
head H1 speaker-outputs=2 line-outputs=0
amplifier A1 sections=\"1x 60W@4ohm min 4ohm\" input-level=line inputs=1 turn-on=sensing #~ wrong-level
speaker LS1 4ohm power=80W front-left
run W1 H1.fl+ A1.in1 1mm2 4m WH #~ wrong-level
run W2 A1.out1+ LS1.+ 2.5mm2 3m WH
run W3 A1.out1- LS1.- 2.5mm2 3m WHBK",
    instead: "\
head H1 speaker-outputs=2 line-outputs=0
line-converter LC1 channels=1
amplifier A1 sections=\"1x 60W@4ohm min 4ohm\" input-level=line inputs=1 turn-on=sensing
speaker LS1 4ohm power=80W front-left
run W1 H1.fl+ LC1.hi1+ 1mm2 4m WH
run W2 H1.fl- LC1.hi1- 1mm2 4m WHBK
run W3 LC1.line1 A1.in1 0.35mm2 0.5m WH ends=plug/plug
run W4 A1.out1+ LS1.+ 2.5mm2 3m WH
run W5 A1.out1- LS1.- 2.5mm2 3m WHBK",
    limits: &[],
    since: "0.1.0",
    run,
};

/// A line converter before the inputs of a part that get speaker level: a channel of it for each, close to the part.
fn converter(ctx: &Ctx<'_>, part: PartId) -> Option<Edit> {
    let wrong: Vec<_> = ctx
        .study
        .signal
        .inputs
        .iter()
        .filter(|it| it.part == part && it.level_fits == Some(false))
        .collect();
    let channels = u8::try_from(wrong.len())
        .ok()
        .filter(|count| (1..=4).contains(count))?;
    let mut adding = Adding::new(ctx);
    let converter = LineConverter {
        channels,
        ..LineConverter::default()
    };
    let (id, tag) = adding.part(converter, part);
    for (number, input) in (1..).zip(&wrong) {
        let line_in = TerminalRef::new(part, format!("in{}", input.input));
        let [lead] = ctx.runs_on(part, line_in.terminal.as_str())[..] else {
            return None;
        };
        let run = ctx.run(lead)?;
        let end = run
            .ends()
            .into_iter()
            .position(|end| end.terminal() == Some(&line_in))?;
        let leg = run.ends().get(1 - end)?.terminal()?.clone();
        let Role::SpeakerOut { channel, positive } = ctx.role(&leg)? else {
            return None;
        };
        let other = Role::SpeakerOut {
            channel,
            positive: !positive,
        };
        let (missing, _) = ctx
            .wiring
            .terminals_of(leg.part)
            .find(|(it, _)| it.role == other)?;
        let missing = TerminalRef::new(leg.part, missing.name.as_str());
        let level =
            |positive: bool| TerminalRef::new(id, format!("hi{number}{}", if positive { "+" } else { "-" }));
        adding
            .changes
            .push(set_run(lead, moved(ctx, run, end, level(positive))));
        if !ctx
            .runs_on(missing.part, missing.terminal.as_str())
            .iter()
            .any(|it| runs_to(ctx, *it, part))
        {
            adding.run(beside(run, missing, level(!positive)));
        }
        let line_out = TerminalRef::new(id, format!("line{number}"));
        let length = Fact::Given(Metres(0.5));
        adding.run(wire(
            line_out,
            line_in,
            Size::Metric(SquareMm(0.35)),
            length,
            Colour::Grey,
        ));
    }
    let name = say!("mend-line-converter", converter = tag, part = ctx.part_tag(part));
    Some(Edit::new(name, adding.changes))
}

fn runs_to(ctx: &Ctx<'_>, run: RunId, part: PartId) -> bool {
    ctx.run(run).is_some_and(|run| run.touches(part))
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let mut wrong: OrderedMap<PartId, (Vec<String>, OrderedSet<RunId>)> = OrderedMap::new();
    for input in &ctx.study.signal.inputs {
        if input.level_fits == Some(false) && ctx.touched_part(input.part) {
            let entry = wrong.entry(input.part).or_default();
            entry.0.push(input.input.to_string());
            entry.1.extend(&input.runs);
        }
    }
    for (part, (inputs, runs)) in wrong {
        out.add(
            CHECK
                .finding(
                    say!("wrong-level-what", inputs = inputs, part = ctx.part_tag(part)),
                    say!("wrong-level-remedy"),
                )
                .parts([part])
                .runs(runs)
                .mend_by_choice(converter(ctx, part), say!("mend-choice-buy")),
        );
    }
}
