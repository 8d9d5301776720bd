//! `short-never-clears`: a short that draws too little to open the device.

use super::wire_before_fuse::shorts;
use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::clearing::cleared;
use crate::registry::{Check, CheckGroup};
use crate::wording::A;
use circuit::faults::Certainty;
use words::{figure, say};

pub(crate) static CHECK: Check = Check {
    name: "short-never-clears",
    grade: Grade::Stop,
    group: CheckGroup::Protection,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 regular 30A #~ short-never-clears
load L1 power=10W
run W1 B1.+ F1.in 6mm2 0.3m RD
run W2 F1.out L1.+ 2.5mm2 70m RD #~ short-never-clears
run W3 L1.- B1.- 6mm2 4m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 regular 5A
load L1 power=10W
run W1 B1.+ F1.in 6mm2 0.3m RD
run W2 F1.out L1.+ 2.5mm2 70m RD
run W3 L1.- B1.- 6mm2 4m BK",
    limits: &[],
    since: "0.1.0",
    run,
};

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    // Where a ground point is no ground, a short to the body draws little for that reason.
    if !out.parts_of("ground-surface").is_empty() {
        return;
    }
    for (short, devices) in shorts(ctx, out) {
        if short.stays == Certainty::No || short.damaged != Certainty::No {
            continue;
        }
        let certain = short.stays == Certainty::Certain;
        let tag = ctx.run_tag(short.run);
        let draws = figure(
            if certain {
                short.current.most.0
            } else {
                short.current.least.0
            },
            A,
        );
        let what = if certain {
            say!(
                "short-never-clears-what",
                run = &tag,
                draws = draws,
                devices = &devices
            )
        } else {
            say!(
                "short-never-clears-perhaps",
                run = &tag,
                draws = draws,
                devices = &devices
            )
        };
        let mut finding = CHECK
            .finding(
                what,
                say!("short-never-clears-remedy", run = &tag, devices = &devices),
            )
            .grade(if certain { Grade::Stop } else { Grade::Fix })
            .runs([short.run])
            .parts(short.devices.iter().map(|device| device.part))
            .assumes_run(ctx, short.run, &["size", "length"]);
        for device in &short.devices {
            finding.assumed.extend(ctx.assumed_rating(device));
        }
        for edit in cleared(ctx, short) {
            finding = finding.mend(Some(edit));
        }
        out.add(finding);
    }
}
