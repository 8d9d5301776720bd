//! Leads that are missing: the second one of a speaker, signal, turn-on and feed.

use crate::context::Ctx;
use crate::mends::adding::{Adding, beside, wire};
use crate::mends::rejoining::{MOST, is_free, missing_leg, terminals};
use crate::mends::set_part;
use model::conductor::{Colour, Jacket, Material, Size};
use model::kinds::sound::Position;
use model::kinds::supply::LoadLaw;
use model::quantity::{Amps, Celsius, Metres, SquareMm};
use model::terminals::HEAD_LINE_OUTPUTS;
use model::{Edit, Fact, PartId, PartKind, Role, Run, TerminalRef, Wire};
use reference::ampacity::{AmpacityQuery, allowable_current};
use reference::fuses::rating_not_below;
use words::say;

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
        tracer: lead.wire.jacket.base.map(|_| Colour::Black),
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
    let outputs = terminals(
        ctx,
        |other, role| other != part && role == Role::TurnOnOut,
        |_, _| true,
    );
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

/// What a part asks of its feed, about, in amperes: what its own fuse is, else its power at 12 V.
fn asked(kind: &PartKind) -> Option<f64> {
    match kind {
        PartKind::Amplifier(it) => {
            let power = it.sections.0.iter().map(|section| {
                let most = section
                    .power
                    .iter()
                    .map(|stated| stated.power.0)
                    .fold(0.0, f64::max);
                most * f64::from(section.channels)
            });
            // Efficiency of an amplifier in class D at full power, about (from memory).
            let drawn = power.sum::<f64>() / (0.8 * 12.0);
            Some(it.own_fuse.value().map_or(drawn, |fuse| fuse.0))
        }
        PartKind::HeadUnit(it) => it.own_fuse.value().map(|fuse| fuse.0),
        PartKind::Load(it) => match it.law {
            LoadLaw::Current => it.current.value().map(|amps| amps.0 / 0.8),
            LoadLaw::Power => it.power.value().map(|watts| watts.0 / 12.0 / 0.8),
            LoadLaw::Resistance => it.resistance.value().map(|ohms| 12.0 / ohms.0.max(0.01) / 0.8),
        },
        PartKind::Processor(_) | PartKind::LineConverter(_) => Some(2.0),
        _ => None,
    }
}

/// A feed for a terminal that has none, from each output of a block that is free, with a fuse for it and wire that bears that.
pub(crate) fn new_feeds(ctx: &Ctx<'_>, to: &TerminalRef) -> Vec<Edit> {
    let feed = |from: &TerminalRef| {
        let mut block = ctx.part(from.part)?.clone();
        let PartKind::Block(it) = &mut block.is else {
            return None;
        };
        let number: usize = from.terminal.as_str().strip_prefix("out")?.parse().ok()?;
        let form = it.form.into();
        let needs = rating_not_below(form, Amps(asked(ctx.kind(to.part)?)?))?;
        let slot = it.fuses.0.get_mut(number.checked_sub(1)?)?;
        let fitted = *slot.get_or_insert(needs);
        let bears = fitted.0.max(needs.0) / ctx.limit("fuse-wire-factor").unwrap_or(1.0).max(0.01);
        let usual = Wire::default();
        let size = Size::Metric(SquareMm(0.0)).series().find(|size| {
            let query = AmpacityQuery {
                material: Material::Copper,
                area: size.area(),
                insulation: usual.insulation.or(Celsius(105.0)),
                ambient: ctx.settings.conditions.cabin.or(Celsius(40.0)),
                bundled: 1,
            };
            allowable_current(query).0 >= bears
        })?;
        let length = length_between(ctx, from.part, to.part);
        let mut edit = added(ctx, wire(from.clone(), to.clone(), size, length, Colour::Red));
        edit.changes.push(set_part(from.part, block));
        Some(edit).filter(|_| fitted.0 >= needs.0)
    };
    ctx.free_feeds()
        .iter()
        .filter(|from| from.part != to.part)
        .filter_map(feed)
        .take(MOST)
        .collect()
}
