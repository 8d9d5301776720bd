//! `load-too-low`: a channel drives less impedance than its maker allows.

use crate::context::Ctx;
use crate::finding::{Finding, Grade};
use crate::findings::Findings;
use crate::registry::{Check, CheckGroup};
use crate::wording::against;
use circuit::ChannelLoad;
use model::PartKind;

pub(crate) static CHECK: Check = Check {
    name: "load-too-low",
    grade: Grade::Fix,
    group: CheckGroup::Speakers,
    holds_when: "the nominal load of every channel is at least the stated minimum of its mode, and the impedance over the band at least 80 % of it",
    looks_for: "What a channel, or a bridged pair, really drives: all speakers, coils, crossovers and capacitors on it. \
The nominal load is that of the rated impedances. A speaker may dip to 80 % of its rated impedance, so the least \
impedance between 20 Hz and 20 kHz is held against 80 % of the minimum. The resistance that a meter reads decides \
nothing here.",
    why: "Half the load draws twice the current. The output stage overheats, shuts down again and again, and at last \
fails.",
    example: "\
amplifier A1 sections=\"1x 300W@4ohm min 4ohm\" #~ load-too-low
speaker LS1 4ohm power=400W sub bass #~ load-too-low
speaker LS2 4ohm power=400W sub bass #~ load-too-low
run W1 A1.out1+ LS1.+ 4mm2 1.5m WH
run W2 A1.out1- LS1.- 4mm2 1.5m WHBK
run W3 LS1.+ LS2.+ 4mm2 0.5m WH
run W4 LS1.- LS2.- 4mm2 0.5m WHBK",
    instead: "\
amplifier A1 sections=\"1x 300W@4ohm min 4ohm\"
speaker LS1 4ohm power=400W sub bass
speaker LS2 4ohm power=400W sub bass
run W1 A1.out1+ LS1.+ 4mm2 1.5m WH
run W2 LS1.- LS2.+ 4mm2 0.5m WH
run W3 A1.out1- LS2.- 4mm2 1.5m WHBK",
    source: "The amplifier maker's stated minimum; IEC 60268-5 clause 16.1 for the 80 % (from memory).",
    limits: &["load-over-minimum", "impedance-floor"],
    since: "0.1.0",
    run,
};

/// A channel in words: `A1 channel 1`, `A1 channels 1 and 2 bridged`.
pub(crate) fn channel_words(ctx: &Ctx<'_>, channel: &ChannelLoad) -> String {
    let tag = ctx.part_tag(channel.part);
    match channel.bridged_with {
        Some(second) => format!("{tag} channels {} and {second}, bridged,", channel.channel),
        None => format!("{tag} channel {}", channel.channel),
    }
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let floor = ctx.limit("impedance-floor").unwrap_or(0.8);
    let share = ctx.limit("load-over-minimum").unwrap_or(1.0);
    for channel in &ctx.study.channels {
        if channel.drivers.is_empty() || !touched(ctx, channel) || channel.touches_body {
            continue;
        }
        if !channel.tied_to.is_empty() || out.has_part(channel.part, &["output-touches-chassis"]) {
            continue;
        }
        let who = channel_words(ctx, channel);
        let verb = if channel.bridged_with.is_some() {
            "drive"
        } else {
            "drives"
        };
        if let (None, Some(second)) = (channel.minimum, channel.bridged_with)
            && !out.has_part(channel.part, &[CHECK.name])
        {
            out.add(
                CHECK
                    .finding(
                        format!(
                            "{} is bridged across channels {} and {second}, which its maker does not state.",
                            ctx.part_tag(channel.part),
                            channel.channel
                        ),
                        "Give each channel its own speaker.".to_owned(),
                    )
                    .parts([channel.part])
                    .parts(channel.drivers.iter().copied()),
            );
            continue;
        }
        let unknown: Vec<_> = channel
            .drivers
            .iter()
            .copied()
            .filter(|driver| {
                matches!(ctx.kind(*driver), Some(PartKind::Speaker(speaker)) if speaker.impedance.is_unknown())
            })
            .collect();
        if !unknown.is_empty() {
            let tags = ctx.part_tags(&unknown);
            out.add(
                CHECK
                    .undecided(
                        format!("Whether {who} may drive its load cannot be told: the impedance of {tags} is not known."),
                        format!("Read the impedance off {tags}, or measure the resistance of each coil."),
                    )
                    .parts(unknown),
            );
            continue;
        }
        let Some(minimum) = channel.minimum else {
            out.add(
                CHECK
                    .undecided(
                        format!("Whether {who} may drive its load cannot be told: the least load it allows is not known."),
                        format!("Read the least load off the data of {}.", ctx.part_tag(channel.part)),
                    )
                    .parts([channel.part]),
            );
            continue;
        };
        let nominal = channel
            .nominal
            .filter(|nominal| nominal.0 < minimum.0 * share * (1.0 - 1e-9));
        let least = channel
            .least
            .filter(|least| least.0 < minimum.0 * floor * (1.0 - 1e-9));
        let finding: Finding = match (nominal, least) {
            (Some(nominal), _) => {
                let (drives, allows) = against(nominal.0, minimum.0 * share);
                CHECK
                    .finding(
                        format!("{who} {verb} {drives} Ω; {allows} Ω is the least allowed."),
                        remedy(ctx, channel),
                    )
                    .measure(nominal.0, minimum.0 * share, "Ω", Some("load-over-minimum"))
            }
            (None, Some(least)) => {
                let (dips, allows) = against(least.0, minimum.0 * floor);
                let at = channel
                    .least_at
                    .map(|at| format!(" at {} Hz", crate::wording::number(at.0)))
                    .unwrap_or_default();
                CHECK
                    .finding(
                        format!(
                            "The load of {who} dips to {dips} Ω{at}; {allows} Ω is the least it should see."
                        ),
                        remedy(ctx, channel),
                    )
                    .measure(least.0, minimum.0 * floor, "Ω", Some("impedance-floor"))
            }
            (None, None) => continue,
        };
        let finding = channel.drivers.iter().fold(finding, |finding, driver| {
            finding.assumes_part(ctx, *driver, &["impedance"])
        });
        out.add(
            finding
                .assumes_part(ctx, channel.part, &["minimum-load"])
                .parts([channel.part])
                .parts(channel.drivers.iter().copied()),
        );
    }
}

/// Whether a channel is judged: something on it, or it itself, was added.
pub(crate) fn touched(ctx: &Ctx<'_>, channel: &ChannelLoad) -> bool {
    !ctx.is_makers(channel.part)
        || channel.drivers.iter().any(|driver| !ctx.is_makers(*driver))
        || channel.runs.iter().any(|run| ctx.touched_run(*run))
}

fn remedy(ctx: &Ctx<'_>, channel: &ChannelLoad) -> String {
    match channel.drivers.as_slice() {
        [one] => format!(
            "Use a speaker of higher impedance in place of {}, or join its coils in series.",
            ctx.part_tag(*one)
        ),
        _ => "Join the speakers in series, or spread them over more channels.".to_owned(),
    }
}
