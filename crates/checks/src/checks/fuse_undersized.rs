//! `fuse-undersized`: a device that the load itself opens.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::rating_needed;
use crate::mends::ratings::{ratings_of, set_rating};
use crate::registry::{Check, CheckGroup};
use crate::wires::{size_for_current, thicken};
use crate::wording::{A, to_lay};
use circuit::Device;
use model::conductor::Size;
use model::quantity::Amps;
use model::{Edit, PartKind, RunId};
use reference::fuses::must_open_at;
use words::{Value, figure, say, told};

pub(crate) static CHECK: Check = Check {
    name: "fuse-undersized",
    grade: Grade::Fix,
    group: CheckGroup::Protection,
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
    limits: &["continuous-load-share"],
    since: "0.1.0",
    run,
};

/// Multiple of the rating at which the device has to open at all.
pub(crate) fn opens_at(ctx: &Ctx<'_>, device: &Device) -> f64 {
    match ctx.kind(device.device.part) {
        Some(PartKind::Fuse(fuse)) => must_open_at(fuse.form.into()),
        Some(PartKind::Block(block)) => must_open_at(block.form.into()),
        // Breakers and factory fuses: the gate of the blades.
        _ => 1.35,
    }
}

/// The least rating that passes what is drawn, with copper behind it that bears that.
fn with_wire(ctx: &Ctx<'_>, device: &Device, needs: f64, factor: f64) -> Option<Edit> {
    let mut ratings = ratings_of(ctx, &device.device).iter().copied();
    let rating = ratings.find(|rating| *rating >= needs)?;
    let bears = Amps(rating / factor.max(0.01));
    let mut sizes: Vec<(RunId, Size)> = Vec::new();
    for id in &device.guards {
        if ctx.flow(*id)?.allowable? < bears {
            sizes.push((*id, size_for_current(ctx, *id, bears)?));
        }
    }
    let rated = set_rating(ctx, &device.device, Amps(rating))?;
    let laid: Vec<Value> = sizes.iter().map(|(_, size)| to_lay(*size)).collect();
    let name = say!("mend-and-lay-behind", first = rated.name.said(), sizes = laid);
    let mut mend = thicken(ctx, name, &sizes)?;
    mend.changes.extend(rated.changes);
    Some(mend)
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
                            say!("fuse-undersized-unknown", device = &tag),
                            say!("read-rating", device = &tag),
                        )
                        .parts([device.device.part]),
                );
            }
            continue;
        };
        let (rms, burst) = (device.current.rms.abs(), device.current.burst.abs());
        let multiple = opens_at(ctx, device);
        let (lasting, opens) = (rating.0 * share, rating.0 * multiple);
        let (what, current, most, key) = if rms.0 > lasting {
            let what = say!(
                "fuse-undersized-what",
                device = &tag,
                carries = told(rms.0, lasting, A),
                rating = figure(rating.0, A),
                lasting = told(lasting, rms.0, A),
            );
            (what, rms.0, lasting, Some("continuous-load-share"))
        } else if burst.0 > opens {
            let what = say!(
                "fuse-undersized-bursts",
                peaks = told(burst.0, opens, A),
                device = &tag,
                rating = figure(rating.0, A),
                opens = told(opens, burst.0, A),
            );
            (what, burst.0, opens, None)
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
        let remedy = match fits {
            Some(rating) => say!(
                "fuse-undersized-remedy",
                rating = figure(rating, A),
                device = &tag
            ),
            None => say!("fuse-undersized-wire", needs = figure(needs.0, A)),
        };
        let mut finding = CHECK
            .finding(what, remedy)
            .measure(current, most, "A", key)
            .parts([device.device.part])
            .mend(match fits {
                Some(rating) => set_rating(ctx, &device.device, Amps(rating)),
                None => with_wire(ctx, device, needs.0, factor),
            });
        finding.assumed.extend(ctx.assumed_rating(&device.device));
        out.add(finding);
    }
}
