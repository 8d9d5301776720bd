//! `fuse-in-return`: an overcurrent device on the wrong side of its load.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::join_through;
use crate::mends::nearer::fuse_near_source;
use crate::registry::{Check, CheckGroup};
use crate::unprotected::{Lack, Stretch};
use circuit::Device;
use model::PartId;
use ordered::OrderedSet;
use words::say;

pub(crate) static CHECK: Check = Check {
    name: "fuse-in-return",
    grade: Grade::Stop,
    group: CheckGroup::Protection,
    example: "\
battery B1 agm 70Ah cranking=640A
load L1 power=200W
run W1 B1.+ L1.+ 10mm2 2m RD #~ fuse-in-return
fuse F1 strip61 40A #~ fuse-in-return
run W2 L1.- F1.in 10mm2 0.3m BK
run W3 F1.out B1.- 10mm2 1.7m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A
load L1 power=200W
run W1 B1.+ F1.in 10mm2 0.3m RD
run W2 F1.out L1.+ 10mm2 1.7m RD
run W3 L1.- B1.- 10mm2 2m BK",
    limits: &[],
    since: "0.1.0",
    run,
};

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    for device in &ctx.study.devices {
        if !device.in_return || !ctx.touched_part(device.device.part) {
            continue;
        }
        let tag = ctx.device_tag(&device.device);
        let serves = loads_of(ctx, device);
        let open: Vec<_> = ctx
            .stretches
            .iter()
            .filter(|stretch| explains(&serves, stretch))
            .collect();
        let runs: OrderedSet<_> = open
            .iter()
            .flat_map(|stretch| stretch.runs.iter().copied())
            .collect();
        let loads = ctx.part_tags(&serves);
        let (what, remedy) = if runs.is_empty() {
            (
                say!("fuse-in-return-what", device = &tag, loads = loads),
                say!("fuse-in-return-remedy", device = &tag),
            )
        } else {
            (
                say!(
                    "fuse-in-return-open",
                    device = &tag,
                    loads = loads,
                    runs = ctx.run_tags(&runs),
                ),
                say!("fuse-in-return-open-remedy", device = &tag),
            )
        };
        // A fuse in the feed, where that has none, and only then the one in the return out of the way.
        let guard = match open[..] {
            [] => Some(None),
            [stretch] => fuse_near_source(ctx, stretch).map(Some),
            _ => None,
        };
        let mend = guard.and_then(|guard| {
            let first = guard.as_ref().map(|guard| guard.name.said());
            let mut mend = join_through(ctx, device.device.part, first)?;
            if let Some(guard) = guard {
                mend.changes.extend(guard.changes);
            }
            Some(mend)
        });
        out.add(
            CHECK
                .finding(what, remedy)
                .parts([device.device.part])
                .runs(runs)
                .mend(mend),
        );
    }
}

/// Loads whose return the device stands in.
fn loads_of(ctx: &Ctx<'_>, device: &Device) -> OrderedSet<PartId> {
    ctx.study
        .circuits
        .iter()
        .filter(|(_, circuit)| {
            circuit
                .returns
                .iter()
                .any(|back| back.devices.contains(&device.device))
        })
        .map(|(load, _)| *load)
        .chain(device.serves.iter().copied())
        .collect()
}

/// Whether a stretch without any device is explained by a device that stands in the return of these loads instead.
fn explains(serves: &OrderedSet<PartId>, stretch: &Stretch) -> bool {
    stretch.lack == Lack::NoDevice && !stretch.serves.is_empty() && stretch.serves.is_subset(serves)
}

/// The same for any device that was found in a return: then the stretch is not told again.
pub(crate) fn explained(ctx: &Ctx<'_>, stretch: &Stretch) -> bool {
    !ctx.settings.allowed.contains(CHECK.name)
        && ctx.study.devices.iter().any(|device| {
            device.in_return
                && ctx.touched_part(device.device.part)
                && explains(&loads_of(ctx, device), stretch)
        })
}
