//! `fuse-order`: a device further up that opens before the one nearest the fault.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::registry::{Check, CheckGroup};
use crate::wording::A;
use circuit::faults::operating_band;
use circuit::{Device, DeviceRef};
use model::PartId;
use model::quantity::Amps;
use ordered::{OrderedMap, OrderedSet};
use words::{figure, say};

pub(crate) static CHECK: Check = Check {
    name: "fuse-order",
    grade: Grade::Tidy,
    group: CheckGroup::Protection,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 regular 30A #~ fuse-order
fuse F2 maxi 30A #~ fuse-order
load L1 power=100W
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out F2.in 16mm2 2m RD
run W3 F2.out L1.+ 16mm2 2m RD
run W4 L1.- B1.- 16mm2 3m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 60A
fuse F2 regular 30A
load L1 power=100W
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out F2.in 16mm2 2m RD
run W3 F2.out L1.+ 16mm2 2m RD
run W4 L1.- B1.- 16mm2 3m BK",
    limits: &[],
    since: "0.1.0",
    run,
};

/// By how much a device has to be quicker at both edges of its times to be called quicker: those of forms are remembered to no better.
const QUICKER: f64 = 0.9;

/// Findings that tell of a device already: with another rating the order is another.
const TOLD: &[&str] = &["fuse-outsizes-wire", "fuse-undersized"];

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    // Outputs of one block behind the same device make one finding.
    let mut found: OrderedMap<(PartId, DeviceRef), (Vec<String>, Amps)> = OrderedMap::new();
    let working: OrderedSet<&DeviceRef> = ctx
        .study
        .devices
        .iter()
        .filter(|device| device.works)
        .map(|device| &device.device)
        .collect();
    for near in &ctx.study.devices {
        let works = near.works && !near.in_return && ctx.burdened_device(near);
        let Some(draws) = near.prospective.filter(|amps| works && amps.0 > 0.0) else {
            continue;
        };
        let Some(band) = operating_band(ctx.sheet, &near.device, draws) else {
            continue;
        };
        for far in before(ctx, near, &working) {
            let Some(first) = operating_band(ctx.sheet, &far, draws) else {
                continue;
            };
            let quicker =
                first.fastest.0 < QUICKER * band.fastest.0 && first.slowest.0 < QUICKER * band.slowest.0;
            if quicker
                && ![near.device.part, far.part]
                    .iter()
                    .any(|part| out.has_part(*part, TOLD))
            {
                let (tags, most) = found.entry((near.device.part, far)).or_default();
                tags.push(ctx.device_tag(&near.device));
                *most = most.max(draws);
            }
        }
    }
    for ((near, far), (tags, draws)) in found {
        let other = ctx.device_tag(&far);
        out.add(
            CHECK
                .finding(
                    say!(
                        "fuse-order-what",
                        near = &tags,
                        far = &other,
                        draws = figure(draws.0, A)
                    ),
                    say!("fuse-order-remedy", near = &tags, far = &other),
                )
                .parts([near, far.part]),
        );
    }
}

/// The devices that a fault behind this one is fed through as well: those that guard the runs on its other side.
fn before(ctx: &Ctx<'_>, near: &Device, working: &OrderedSet<&DeviceRef>) -> Vec<DeviceRef> {
    let mut all: Vec<DeviceRef> = Vec::new();
    for (id, _) in ctx.runs_of(near.device.part) {
        if near.guards.contains(&id) {
            continue;
        }
        let Some(protection) = ctx.study.protection.get(&id) else {
            continue;
        };
        for device in protection.from.iter().flat_map(|from| &from.guards) {
            if working.contains(&device) && device.part != near.device.part && !all.contains(device) {
                all.push(device.clone());
            }
        }
    }
    all
}
