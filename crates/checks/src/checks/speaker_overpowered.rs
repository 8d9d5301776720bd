//! `speaker-overpowered`: more power than the speaker bears.

use crate::checks::load_too_low::channel_words;
use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::registry::{Check, CheckGroup};
use crate::wording::{W, and_then};
use model::{PartId, PartKind};
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

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let Some(factor) = ctx.limit("speaker-power-factor") else {
        return;
    };
    // By channel: the speakers, what reaches each and what it bears, in watts.
    type Over = Vec<(PartId, f64, f64)>;
    let mut over: OrderedMap<Option<(PartId, u8)>, Over> = OrderedMap::new();
    for (id, driver) in &ctx.study.drivers {
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
                            power = figure(driver.power.0, W),
                            speaker = ctx.part_tag(*id),
                        ),
                        say!("speaker-overpowered-find", speaker = ctx.part_tag(*id)),
                    )
                    .parts([*id]),
            ),
            Some(bears) if driver.power.0 > bears.0 * factor * (1.0 + 1e-9) => {
                over.entry(driver.channel)
                    .or_default()
                    .push((*id, driver.power.0, bears.0 * factor));
            }
            Some(_) => {}
        }
    }
    for (channel, mut drivers) in over {
        drivers.order_by(|a, b| (b.1 / b.2).total_cmp(&(a.1 / a.2)).then(a.0.cmp(&b.0)));
        let Some((first, power, bears)) = drivers.first().copied() else {
            continue;
        };
        let who = channel
            .and_then(|(part, number)| {
                ctx.study
                    .channels
                    .iter()
                    .find(|c| c.part == part && (c.channel == number || c.bridged_with == Some(number)))
            })
            .map_or_else(
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
            .measure(power, bears, "W", Some("speaker-power-factor"));
        out.add(
            drivers
                .iter()
                .fold(finding, |f, d| f.assumes_part(ctx, d.0, &["power", "impedance"])),
        );
    }
}
