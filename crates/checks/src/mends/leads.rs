//! Leads that are missing: the second one of a speaker, signal, turn-on and feed.

use crate::context::Ctx;
use crate::mends::adding::{Adding, beside, wire};
use crate::mends::ratings::{FORMS, of_form};
use crate::mends::rejoining::{MOST, is_free, missing_leg, terminals};
use crate::mends::set_part;
use crate::wording::A;
use model::conductor::{Colour, Jacket, Material, Size};
use model::kinds::sound::Position;
use model::kinds::supply::LoadLaw;
use model::quantity::{Amps, Celsius, Metres, SquareMm};
use model::terminals::HEAD_LINE_OUTPUTS;
use model::{Edit, Fact, PartId, PartKind, Role, Run, TerminalRef, Wire};
use reference::ampacity::{AmpacityQuery, allowable_current};
use reference::fuses::rating_not_below;
use words::{figure, say};

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

/// Leads from the turn-on outputs of the sheet to this terminal, each as an edit.
pub(crate) fn turn_on_leads(ctx: &Ctx<'_>, to: &TerminalRef) -> Vec<Edit> {
    let part = to.part;
    let outputs = terminals(
        ctx,
        |other, role| other != part && role == Role::TurnOnOut,
        |_, _| true,
    );
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

/// The least copper from this size on that bears a current on a lead that is laid anew.
fn size_to_bear(ctx: &Ctx<'_>, least: f64, amps: f64) -> Option<Size> {
    let bears = amps / ctx.limit("fuse-wire-factor").unwrap_or(1.0).max(0.01);
    let usual = Wire::default();
    Size::Metric(SquareMm(least)).series().find(|size| {
        let query = AmpacityQuery {
            material: Material::Copper,
            area: size.area(),
            insulation: usual.insulation.or(Celsius(105.0)),
            ambient: ctx.settings.conditions.cabin.or(Celsius(40.0)),
            bundled: 1,
        };
        size.area().0 >= least && allowable_current(query).0 >= bears
    })
}

/// A lead from the vehicle's feed that the ignition switches, of wire that bears its fuse.
pub(crate) fn switched_lead(ctx: &Ctx<'_>, to: &TerminalRef) -> Option<Edit> {
    let mut parts = ctx.sheet.parts.iter();
    let (vehicle, fuse) = parts.find_map(|(id, part)| match &part.is {
        PartKind::Vehicle(it) => Some((*id, it.switched_fuse.value()?)),
        _ => None,
    })?;
    let size = size_to_bear(ctx, 0.75, fuse.0)?;
    let length = length_between(ctx, vehicle, to.part);
    let from = TerminalRef::new(vehicle, "15");
    Some(added(ctx, wire(from, to.clone(), size, length, Colour::Blue)))
}

/// A feed for a terminal that has none, from the positive pole of each battery, by a fuse near it.
pub(crate) fn battery_feeds(ctx: &Ctx<'_>, to: &TerminalRef) -> Vec<Edit> {
    let feed = |battery: &PartId| {
        let needs = Amps(asked(ctx.kind(to.part)?)?);
        let (form, rating) = FORMS
            .into_iter()
            .find_map(|form| Some((form, rating_not_below(form.into(), needs)?)))?;
        let size = size_to_bear(ctx, 0.0, rating.0)?;
        let near = Metres(ctx.limit("fuse-reach").unwrap_or(0.45) * 0.6);
        let mut adding = Adding::new(ctx);
        let (fuse, tag) = adding.part(of_form(form, rating), *battery);
        let pole = TerminalRef::new(*battery, "+");
        let length = length_between(ctx, *battery, to.part);
        let on = |name: &str| TerminalRef::new(fuse, name);
        adding.run(wire(pole, on("in"), size, Fact::Given(near), Colour::Red));
        adding.run(wire(on("out"), to.clone(), size, length, Colour::Red));
        let name = say!(
            "mend-feed-by-fuse",
            terminal = ctx.terminal(to.part, to.terminal.as_str()),
            battery = ctx.part_tag(*battery),
            fuse = tag,
            rating = figure(rating.0, A)
        );
        Some(Edit::new(name, adding.changes))
    };
    ctx.batteries().iter().filter_map(feed).take(MOST).collect()
}

/// Signal leads to inputs of a part, and whether there is no doubt that they are the right ones.
pub(crate) struct Signals {
    pub(crate) edit: Edit,
    pub(crate) is_clear: bool,
}

/// Signal leads to these inputs of a part from the line outputs of each head unit. What each input is to drive tells which output it
/// is; where that is not known, odd ones are taken for left. There is no doubt where there is one head unit, with outputs that are free.
pub(crate) fn signal_leads(ctx: &Ctx<'_>, part: PartId, inputs: &[u8]) -> Vec<Signals> {
    let heads = ctx.heads();
    let leads = heads.iter().filter_map(|head| {
        let (edit, is_clear) = leads_from(ctx, *head, part, inputs)?;
        Some(Signals {
            edit,
            is_clear: is_clear && heads.len() == 1,
        })
    });
    leads.take(MOST).collect()
}

/// The line output of a head unit for this input, and whether it is known to be that.
fn output_for(ctx: &Ctx<'_>, part: PartId, input: u8) -> Option<(u8, bool)> {
    // Inputs stand in the order of their parts.
    let all = &ctx.study.signal.inputs;
    let own = all.get(all.partition_point(|it| it.part < part)..)?;
    let mut own = own.iter().take_while(|it| it.part == part);
    let fed = own.find(|it| it.input == input)?;
    let mut plays: Vec<Position> = Vec::new();
    for driver in &fed.drives {
        let Some(PartKind::Speaker(speaker)) = ctx.kind(*driver) else {
            continue;
        };
        plays.extend(speaker.position.value());
    }
    plays.dedup();
    match plays[..] {
        [Position::FrontLeft] => Some((1, true)),
        [Position::FrontRight] => Some((2, true)),
        [Position::RearLeft] => Some((3, true)),
        [Position::RearRight] => Some((4, true)),
        [Position::Bass] => Some((5, true)),
        [Position::Centre] => None,
        _ => Some((if input % 2 == 1 { 1 } else { 2 }, false)),
    }
}

fn leads_from(ctx: &Ctx<'_>, head: PartId, part: PartId, inputs: &[u8]) -> Option<(Edit, bool)> {
    let mut is_clear = true;
    let like = ctx.runs_of(part).find(|(_, run)| {
        let on_input = |at: &TerminalRef| at.part == part && matches!(ctx.role(at), Some(Role::LineIn(_)));
        run.ends()
            .into_iter()
            .filter_map(|end| end.terminal())
            .any(on_input)
    });
    let mut adding = Adding::new(ctx);
    let mut tags: Vec<String> = Vec::new();
    for input in inputs {
        let (channel, is_known) = output_for(ctx, part, *input)?;
        let (name, _) = HEAD_LINE_OUTPUTS.iter().find(|(_, number)| *number == channel)?;
        let (from, to) = (
            TerminalRef::new(head, *name),
            TerminalRef::new(part, format!("in{input}")),
        );
        ctx.role(&from)?;
        is_clear &= is_known && is_free(ctx, &from);
        ctx.role(&to).filter(|_| is_free(ctx, &to))?;
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
    (!inputs.is_empty()).then(|| (Edit::new(name, adding.changes), is_clear))
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
        let size = size_to_bear(ctx, 0.0, fitted.0.max(needs.0))?;
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
