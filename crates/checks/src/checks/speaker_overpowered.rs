//! `speaker-overpowered`: more power than the speaker bears.

use crate::checks::load_too_low::channel_words;
use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::{WRITTEN_FOR, set_part};
use crate::registry::{Check, CheckGroup};
use crate::wording::{V, W, and_then};
use circuit::ChannelLoad;
use model::quantity::{Volts, Watts};
use model::tuning::Tuning;
use model::{Change, Edit, Fact, PartId, PartKind};
use ordered::OrderedMap;
use ordered::Sort as _;
use words::{figure, say, told};

pub(crate) static CHECK: Check = Check {
    name: "speaker-overpowered",
    grade: Grade::Fix,
    group: CheckGroup::Speakers,
    example: "\
amplifier A1 sections=\"1x 300W@4ohm min 4ohm\"
speaker LS1 4ohm power=150W sub bass #~ speaker-overpowered
run W1 A1.out1+ LS1.+ 4mm2 1.5m WH
run W2 A1.out1- LS1.- 4mm2 1.5m WHBK",
    instead: "\
amplifier A1 sections=\"1x 300W@4ohm min 4ohm\"
speaker LS1 4ohm power=350W sub bass
run W1 A1.out1+ LS1.+ 4mm2 1.5m WH
run W2 A1.out1- LS1.- 4mm2 1.5m WHBK",
    limits: &["speaker-power-factor"],
    since: "0.1.0",
    run,
};

/// The volts of test tone to which the gain of a channel is set, where somebody set it.
fn set_to(ctx: &Ctx<'_>, channel: &ChannelLoad) -> Option<f64> {
    let tag = &ctx.part(channel.part)?.tag;
    let mut tunings = ctx.sheet.tunings.iter();
    let tuning = tunings.find(|it| it.of == *tag && it.channel == channel.marking())?;
    Some(tuning.target.value()?.0)
}

/// The share of a channel's power that its gain lets through; all of it where nobody set it, or where the unit has none to set.
fn let_through(ctx: &Ctx<'_>, channel: &ChannelLoad) -> f64 {
    let has_gain = matches!(ctx.kind(channel.part), Some(PartKind::Amplifier(_)));
    let power = || Some((channel.power?.0, channel.nominal?.0, set_to(ctx, channel)?));
    match power().filter(|_| has_gain) {
        Some((power, ohms, volts)) if power > 0.0 && ohms > 0.0 => (volts * volts / ohms / power).min(1.0),
        _ => 1.0,
    }
}

/// The gain of a channel set so that this share of its power passes.
fn lower_gain(ctx: &Ctx<'_>, channel: &ChannelLoad, share: f64) -> Option<Edit> {
    let amplifier = ctx.part(channel.part)?;
    let PartKind::Amplifier(_) = amplifier.is else {
        return None;
    };
    let volts = (channel.power?.0 * share * channel.nominal?.0).sqrt();
    // To a tenth, downwards: what a meter shows.
    let volts = (volts * 10.0 - 1e-6).floor() / 10.0;
    let mut tunings = ctx.sheet.tunings.clone();
    let (of, marking) = (amplifier.tag.clone(), channel.marking());
    let target = Fact::Given(Volts(volts));
    match tunings.iter_mut().find(|it| it.of == of && it.channel == marking) {
        Some(tuning) => tuning.target = target,
        None => tunings.push(Tuning {
            of: of.clone(),
            channel: marking.clone(),
            target,
            ..Tuning::default()
        }),
    }
    let name = say!(
        "mend-gain",
        part = of,
        channel = marking,
        volts = figure(volts, V)
    );
    let set = Change::Tunings {
        sheet: WRITTEN_FOR,
        to: tunings,
    };
    (volts > 0.0).then(|| Edit::new(name, vec![set]))
}

/// Speakers that bear what reaches each, in steps of ten watts.
fn stronger(ctx: &Ctx<'_>, drivers: &[(PartId, f64, f64)], factor: f64) -> Option<Edit> {
    let mut said = Vec::new();
    let changes = drivers.iter().map(|(id, power, _)| {
        let mut part = ctx.part(*id)?.clone();
        let PartKind::Speaker(speaker) = &mut part.is else {
            return None;
        };
        let bears = (power / factor.max(0.01) / 10.0).ceil() * 10.0;
        speaker.power = Fact::Given(Watts(bears));
        said.push(say!(
            "mend-speaker-power",
            speaker = &part.tag,
            power = figure(bears, W)
        ));
        Some(set_part(*id, part))
    });
    let changes = changes.collect::<Option<Vec<_>>>()?;
    Some(Edit::new(say!("mend-other-speakers", speakers = said), changes))
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let Some(factor) = ctx.limit("speaker-power-factor") else {
        return;
    };
    // By channel: the speakers, what reaches each and what it bears, in watts.
    type Over = Vec<(PartId, f64, f64)>;
    let mut over: OrderedMap<Option<(PartId, u8)>, Over> = OrderedMap::new();
    // What the gains let through, by channel; of a driver on several the most.
    let mut passes: OrderedMap<PartId, f64> = OrderedMap::new();
    for channel in &ctx.study.channels {
        let share = let_through(ctx, channel);
        for driver in &channel.drivers {
            let most = passes.entry(*driver).or_default();
            *most = most.max(share);
        }
    }
    for (id, driver) in &ctx.study.drivers {
        let reaches = driver.power.0 * passes.get(id).copied().unwrap_or(1.0);
        let (Some(PartKind::Speaker(speaker)), true) = (ctx.kind(*id), driver.plays) else {
            continue;
        };
        let told = driver
            .channel
            .is_some_and(|(part, _)| out.has_part(part, &["output-touches-chassis"]));
        let makers = ctx.is_makers(*id) && driver.channel.is_none_or(|(part, _)| ctx.is_makers(part));
        if told || makers || speaker.impedance.is_unknown() {
            continue;
        }
        match speaker.power.value() {
            None => out.add(
                CHECK
                    .undecided(
                        say!(
                            "speaker-overpowered-unknown",
                            power = figure(reaches, W),
                            speaker = ctx.part_tag(*id),
                        ),
                        say!("speaker-overpowered-find", speaker = ctx.part_tag(*id)),
                    )
                    .parts([*id]),
            ),
            Some(bears) if reaches > bears.0 * factor * (1.0 + 1e-9) => {
                over.entry(driver.channel)
                    .or_default()
                    .push((*id, reaches, bears.0 * factor));
            }
            Some(_) => {}
        }
    }
    for (channel, mut drivers) in over {
        drivers.order_by(|a, b| (b.1 / b.2).total_cmp(&(a.1 / a.2)).then(a.0.cmp(&b.0)));
        let Some((first, power, bears)) = drivers.first().copied() else {
            continue;
        };
        let channel = channel.and_then(|(part, number)| {
            let mut all = ctx.study.channels.iter();
            all.find(|c| c.part == part && (c.channel == number || c.bridged_with == Some(number)))
        });
        let who = channel.map_or_else(
            || say!("speaker-overpowered-channel"),
            |channel| channel_words(ctx, channel),
        );
        let rest: Vec<PartId> = drivers.iter().skip(1).map(|d| d.0).collect();
        let others =
            (!rest.is_empty()).then(|| say!("speaker-overpowered-others", speakers = ctx.part_tags(&rest)));
        let finding = CHECK
            .finding(
                and_then(
                    say!(
                        "speaker-overpowered-what",
                        who = who,
                        speaker = ctx.part_tag(first),
                        gives = told(power, bears, W),
                        takes = told(bears, power, W),
                    ),
                    others,
                ),
                say!("speaker-overpowered-remedy"),
            )
            .parts(drivers.iter().map(|d| d.0))
            .measure(power, bears, "W", Some("speaker-power-factor"))
            .mend(
                channel
                    .and_then(|channel| lower_gain(ctx, channel, let_through(ctx, channel) * bears / power)),
            )
            .mend_by_choice(stronger(ctx, &drivers, factor), say!("mend-choice-other"));
        out.add(
            drivers
                .iter()
                .fold(finding, |f, d| f.assumes_part(ctx, d.0, &["power", "impedance"])),
        );
    }
}
