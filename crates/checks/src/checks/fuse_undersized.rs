//! `fuse-undersized`: a device that the load itself opens.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::{rating_needed, ratings_of, set_rating};
use crate::registry::{Check, CheckGroup};
use crate::wording::{against, number};
use circuit::Device;
use model::PartKind;
use model::quantity::Amps;
use reference::fuses::must_open_at;

pub(crate) static CHECK: Check = Check {
    name: "fuse-undersized",
    grade: Grade::Fix,
    group: CheckGroup::Protection,
    holds_when: "the lasting current is at most 80 % of the rating, and bursts stay below the current at which the device has to open",
    looks_for: "The heating current (RMS) through a fuse or breaker at the chosen duty, against the share of its rating \
that it carries for good, and the burst current against the least current at which its family has to open. Factory \
fuses are judged where something that was added hangs on them.",
    why: "A fuse that runs near its rating ages and opens one day for no reason that anybody can find. The next hand \
then fits a larger one.",
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A #~ fuse-undersized
load L1 power=500W
run W1 B1.+ F1.in 25mm2 0.3m RD
run W2 F1.out L1.+ 25mm2 2m RD
run W3 L1.- B1.- 25mm2 2m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 60A
load L1 power=500W
run W1 B1.+ F1.in 25mm2 0.3m RD
run W2 F1.out L1.+ 25mm2 2m RD
run W3 L1.- B1.- 25mm2 2m BK",
    source: "NFPA 70 210.20 and component practice for the 80 % (from memory); ISO 8820-3 and -5 for the current at \
which a family has to open (from memory).",
    limits: &["continuous-load-share"],
    since: "0.1.0",
    run,
};

/// Multiple of the rating at which the device has to open at all.
fn opens_at(ctx: &Ctx<'_>, device: &Device) -> f64 {
    match ctx.kind(device.device.part) {
        Some(PartKind::Fuse(fuse)) => must_open_at(fuse.form.into()),
        Some(PartKind::Block(block)) => must_open_at(block.form.into()),
        // Breakers and factory fuses: the gate of the blades.
        _ => 1.35,
    }
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let Some(share) = ctx.limit("continuous-load-share") else {
        return;
    };
    for device in &ctx.study.devices {
        if device.in_return || !ctx.counts(device) || !ctx.burdened_device(device) {
            continue;
        }
        let tag = ctx.device_tag(&device.device);
        let Some(rating) = device.rating else {
            if !out.has_part(device.device.part, &["fuse-outsizes-wire"]) {
                out.add(
                    CHECK
                        .undecided(
                            format!("Whether {tag} bears its load cannot be told: its rating is not known."),
                            format!("Read the rating off {tag}."),
                        )
                        .parts([device.device.part]),
                );
            }
            continue;
        };
        let (rms, burst) = (device.current.rms.abs(), device.current.burst.abs());
        let multiple = opens_at(ctx, device);
        let finding = if rms.0 > rating.0 * share {
            let (carries, lasting) = against(rms.0, rating.0 * share);
            CHECK
                .finding(
                    format!(
                        "{tag} carries {carries} A for long; with its {} A it can carry {lasting} A.",
                        number(rating.0)
                    ),
                    String::new(),
                )
                .measure(rms.0, rating.0 * share, "A", Some("continuous-load-share"))
        } else if burst.0 > rating.0 * multiple {
            let (peaks, opens) = against(burst.0, rating.0 * multiple);
            CHECK
                .finding(
                    format!(
                        "Bursts of {peaks} A pass {tag}; with its {} A it has to open from {opens} A.",
                        number(rating.0)
                    ),
                    String::new(),
                )
                .measure(burst.0, rating.0 * multiple, "A", None)
        } else {
            continue;
        };
        // The larger rating must not outgrow the wire.
        let factor = ctx.limit("fuse-wire-factor").unwrap_or(1.0);
        let bears = device
            .guards
            .iter()
            .filter_map(|run| ctx.flow(*run))
            .try_fold(f64::INFINITY, |least, flow| {
                Some(least.min(flow.allowable?.0 * factor))
            });
        let needs = rating_needed(ctx, rms).max(Amps(burst.0 / multiple));
        let fits = ratings_of(ctx, &device.device)
            .iter()
            .copied()
            .find(|rating| *rating >= needs.0)
            .filter(|rating| bears.is_some_and(|bears| *rating <= bears));
        let mut finding = finding
            .parts([device.device.part])
            .mend(fits.and_then(|rating| set_rating(ctx, &device.device, Amps(rating))));
        finding.remedy = match fits {
            Some(rating) => format!(
                "Fit {} A in {tag}; the wire behind it bears that.",
                number(rating)
            ),
            None => format!(
                "It takes {} A or more: lay wire that bears such a fuse first, or take load off.",
                number(needs.0)
            ),
        };
        finding.assumed.extend(ctx.assumed_rating(&device.device));
        out.add(finding);
    }
}
