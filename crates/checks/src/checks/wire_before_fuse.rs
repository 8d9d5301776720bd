//! `wire-before-fuse`: a short that damages the wire before the device opens.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::clearing::cleared;
use crate::registry::{Check, CheckGroup};
use crate::wording::{A, SECOND};
use circuit::DeviceRef;
use circuit::faults::{Certainty, FarShort};
use model::PartKind;
use words::{figure, say};

pub(crate) static CHECK: Check = Check {
    name: "wire-before-fuse",
    grade: Grade::Stop,
    group: CheckGroup::Protection,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 60A curve=1.35:900,2:200,6:40 #~ wire-before-fuse
load L1 power=100W
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out L1.+ 10mm2 3m RD #~ wire-before-fuse
run W3 L1.- B1.- 16mm2 3m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 60A
load L1 power=100W
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out L1.+ 10mm2 3m RD
run W3 L1.- B1.- 16mm2 3m BK",
    limits: &[],
    since: "0.1.0",
    run,
};

/// Findings that tell of the same wire behind the same device already, or for which no time of it means anything.
pub(super) const TOLD: &[&str] = &[
    "overloaded-run",
    "fuse-outsizes-wire",
    "damaged-run",
    "feed-unprotected",
];

/// Whether a device opens by times that the user entered.
fn is_told(ctx: &Ctx<'_>, device: &DeviceRef) -> bool {
    match ctx.kind(device.part) {
        Some(PartKind::Fuse(fuse)) => !fuse.curve.0.is_empty(),
        Some(PartKind::Breaker(breaker)) => !breaker.curve.0.is_empty(),
        _ => false,
    }
}

/// Shorts of runs that are judged, each with what its devices are called.
pub(super) fn shorts<'a>(ctx: &'a Ctx<'_>, out: &Findings) -> Vec<(&'a FarShort, Vec<String>)> {
    ctx.study
        .shorts
        .iter()
        .filter(|short| ctx.burdened_run(short.run) && !out.has_run(short.run, TOLD))
        .map(|short| (short, ctx.device_tags(&short.devices)))
        .collect()
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    for (short, devices) in shorts(ctx, out) {
        if short.damaged == Certainty::No {
            continue;
        }
        let told = short.devices.iter().any(|device| is_told(ctx, device));
        let certain = short.damaged == Certainty::Certain || told;
        let tag = ctx.run_tag(short.run);
        let lasts = figure(short.lasts.map_or(0.0, |time| time.least.0), SECOND);
        let draws = figure(short.current.most.0, A);
        let what = match short.opens {
            Some(time) => say!(
                "wire-before-fuse-what",
                run = &tag,
                draws = draws,
                lasts = lasts,
                devices = &devices,
                soonest = figure(time.least.0, SECOND),
                latest = figure(time.most.0, SECOND),
            ),
            None => say!(
                "wire-before-fuse-holds-on",
                run = &tag,
                draws = draws,
                lasts = lasts,
                devices = &devices,
            ),
        };
        let remedy = if certain {
            say!("wire-before-fuse-remedy", run = &tag)
        } else {
            say!("wire-before-fuse-data-sheet", run = &tag, devices = &devices)
        };
        let mut finding = CHECK
            .finding(what, remedy)
            .grade(if certain { Grade::Stop } else { Grade::Fix })
            .runs([short.run])
            .parts(short.devices.iter().map(|device| device.part))
            .assumes_run(ctx, short.run, &["size", "length", "insulation"]);
        for device in &short.devices {
            finding.assumed.extend(ctx.assumed_rating(device));
        }
        for edit in cleared(ctx, short) {
            finding = finding.mend(Some(edit));
        }
        out.add(finding);
    }
}
