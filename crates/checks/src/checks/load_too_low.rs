//! `load-too-low`: a channel drives less impedance than its maker allows.

use crate::context::Ctx;
use crate::finding::{Finding, Grade};
use crate::findings::Findings;
use crate::mends::hooking_up::hook_ups;
use crate::mends::set_part;
use crate::registry::{Check, CheckGroup};
use crate::wording::{HZ, OHM};
use circuit::ChannelLoad;
use model::quantity::Ohms;
use model::{Change, Edit, Fact, PartId, PartKind};
use words::{Saying, figure, say, told};

pub(crate) static CHECK: Check = Check {
    name: "load-too-low",
    grade: Grade::Fix,
    group: CheckGroup::Speakers,
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
    limits: &["load-over-minimum", "impedance-floor"],
    since: "0.1.0",
    run,
};

/// A channel in words: `A1 channel 1`, `A1 channels 1 and 2, bridged,`.
pub(crate) fn channel_words(ctx: &Ctx<'_>, channel: &ChannelLoad) -> Saying {
    let (part, number) = (ctx.part_tag(channel.part), usize::from(channel.channel));
    match channel.bridged_with {
        Some(second) => say!(
            "channel-bridged",
            part = part,
            channel = number,
            second = usize::from(second),
        ),
        None => say!("channel-one", part = part, channel = number),
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
        let bridged = if channel.bridged_with.is_some() {
            "yes"
        } else {
            "no"
        };
        if let (None, Some(second)) = (channel.minimum, channel.bridged_with)
            && !out.has_part(channel.part, &[CHECK.name])
        {
            out.add(
                CHECK
                    .finding(
                        say!(
                            "load-too-low-not-stated",
                            amplifier = ctx.part_tag(channel.part),
                            channel = usize::from(channel.channel),
                            second = usize::from(second),
                        ),
                        say!("load-too-low-not-stated-remedy"),
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
                        say!("load-too-low-impedance", who = who, speakers = &tags),
                        say!("load-too-low-impedance-find", speakers = tags),
                    )
                    .parts(unknown),
            );
            continue;
        }
        let Some(minimum) = channel.minimum else {
            out.add(
                CHECK
                    .undecided(
                        say!("load-too-low-minimum", who = who),
                        say!(
                            "load-too-low-minimum-find",
                            amplifier = ctx.part_tag(channel.part)
                        ),
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
                let allows = minimum.0 * share;
                let what = say!(
                    "load-too-low-what",
                    who = who,
                    bridged = bridged,
                    drives = told(nominal.0, allows, OHM),
                    allows = told(allows, nominal.0, OHM),
                );
                CHECK.finding(what, remedy(ctx, channel)).measure(
                    nominal.0,
                    allows,
                    "Ω",
                    Some("load-over-minimum"),
                )
            }
            (None, Some(least)) => {
                let floor = minimum.0 * floor;
                let (dips, allows) = (told(least.0, floor, OHM), told(floor, least.0, OHM));
                let what = match channel.least_at {
                    Some(at) => say!(
                        "load-too-low-dips-at",
                        who = who,
                        dips = dips,
                        at = figure(at.0, HZ),
                        allows = allows,
                    ),
                    None => say!("load-too-low-dips", who = who, dips = dips, allows = allows),
                };
                CHECK.finding(what, remedy(ctx, channel)).measure(
                    least.0,
                    floor,
                    "Ω",
                    Some("impedance-floor"),
                )
            }
            (None, None) => continue,
        };
        let finding = channel.drivers.iter().fold(finding, |finding, driver| {
            finding.assumes_part(ctx, *driver, &["impedance"])
        });
        let finding = finding
            .assumes_part(ctx, channel.part, &["minimum-load"])
            .parts([channel.part])
            .parts(channel.drivers.iter().copied());
        let finding = offer(finding, hook_ups(ctx, channel, minimum.0 * share));
        let other = channel
            .nominal
            .and_then(|nominal| higher(ctx, channel, minimum.0 * share / nominal.0));
        out.add(finding.mend_by_choice(other, say!("mend-choice-other")));
    }
}

/// Impedances that speakers are sold with, in ohms.
const SOLD: [f64; 6] = [1.0, 2.0, 3.0, 4.0, 6.0, 8.0];

/// Speakers of at least so many times the impedance in the place of those on a channel; nothing where none is sold.
fn higher(ctx: &Ctx<'_>, channel: &ChannelLoad, times: f64) -> Option<Edit> {
    let mut said = Vec::new();
    let other = |id: &PartId| {
        let mut part = ctx.part(*id)?.clone();
        let PartKind::Speaker(speaker) = &mut part.is else {
            return None;
        };
        let least = speaker.impedance.value()?.0 * times;
        let ohms = SOLD.into_iter().find(|it| *it >= least * (1.0 - 1e-9))?;
        speaker.impedance = Fact::Given(Ohms(ohms));
        said.push(say!(
            "mend-speaker-ohms",
            speaker = &part.tag,
            ohms = figure(ohms, OHM)
        ));
        Some(set_part(*id, part))
    };
    let changes: Vec<Change> = channel.drivers.iter().map(other).collect::<Option<_>>()?;
    let is_other = times > 1.0 + 1e-9 && !changes.is_empty();
    is_other.then(|| Edit::new(say!("mend-other-speakers", speakers = said), changes))
}

/// Offers ways to hook up the coils; which of several is somebody's choice.
pub(crate) fn offer(finding: Finding, ways: Vec<Edit>) -> Finding {
    let is_clear = ways.len() == 1;
    ways.into_iter().fold(finding, |finding, way| {
        if is_clear {
            finding.mend(Some(way))
        } else {
            finding.mend_by_choice(Some(way), say!("mend-choice-hook-up"))
        }
    })
}

/// Whether a channel is judged: something on it, or it itself, was added.
pub(crate) fn touched(ctx: &Ctx<'_>, channel: &ChannelLoad) -> bool {
    !ctx.is_makers(channel.part)
        || channel.drivers.iter().any(|driver| !ctx.is_makers(*driver))
        || channel.runs.iter().any(|run| ctx.touched_run(*run))
}

fn remedy(ctx: &Ctx<'_>, channel: &ChannelLoad) -> Saying {
    match channel.drivers.as_slice() {
        [one] => say!("load-too-low-higher", speaker = ctx.part_tag(*one)),
        _ => say!("load-too-low-series"),
    }
}
