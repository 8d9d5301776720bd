//! `fuse-too-far`: the first device stands too far from the source.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::nearer::{device_to_source, fuse_near_source};
use crate::registry::{Check, CheckGroup};
use crate::unprotected::Lack;
use words::{Unit, say, told};

pub(crate) static CHECK: Check = Check {
    name: "fuse-too-far",
    grade: Grade::Stop,
    group: CheckGroup::Protection,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A #~ fuse-too-far
load L1 power=200W
run W1 B1.+ F1.in 10mm2 1.7m RD #~ fuse-too-far
run W2 F1.out L1.+ 10mm2 0.3m RD
run W3 L1.- B1.- 10mm2 2m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A
load L1 power=200W
run W1 B1.+ F1.in 10mm2 0.3m RD
run W2 F1.out L1.+ 10mm2 1.7m RD
run W3 L1.- B1.- 10mm2 2m BK",
    limits: crate::unprotected::REACH,
    since: "0.1.0",
    run,
};

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    for stretch in &ctx.stretches {
        let sources = ctx.part_tags(&stretch.sources);
        let runs = ctx.run_tags(&stretch.runs);
        let first = ctx.device_tags(&stretch.devices);
        let finding = match (stretch.lack, stretch.reach, stretch.limit) {
            (Lack::TooFar, Some(reach), Some((limit, key))) => {
                let allowed = told(limit, reach.0, Unit::Metre);
                CHECK
                    .finding(
                        say!(
                            "fuse-too-far-what",
                            first = first,
                            far = told(reach.0, limit, Unit::Metre),
                            sources = &sources,
                            allowed = allowed,
                            runs = runs,
                        ),
                        say!("fuse-too-far-remedy", allowed = allowed, sources = sources),
                    )
                    .measure(reach.0, limit, "m", Some(key))
                    .mend(device_to_source(ctx, stretch))
                    .mend(fuse_near_source(ctx, stretch))
            }
            (Lack::UnknownReach, _, _) => CHECK.undecided(
                say!(
                    "fuse-too-far-unknown",
                    first = &first,
                    sources = &sources,
                    runs = &runs
                ),
                say!("fuse-too-far-find", runs = runs, sources = sources, first = first),
            ),
            _ => continue,
        };
        let finding = stretch.runs.iter().fold(finding, |finding, run| {
            finding.assumes_run(ctx, *run, &["length"])
        });
        out.add(
            finding
                .parts(stretch.devices.iter().map(|device| device.part))
                .runs(stretch.runs.iter().copied()),
        );
    }
}
