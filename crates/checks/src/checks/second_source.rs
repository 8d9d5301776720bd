//! `second-source`: a conductor between two sources that is open to one of them.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::nearer::fuse_near_source;
use crate::registry::{Check, CheckGroup};
use crate::unprotected::Lack;
use words::say;

pub(crate) static CHECK: Check = Check {
    name: "second-source",
    grade: Grade::Stop,
    group: CheckGroup::Protection,
    example: "\
battery B1 agm 70Ah cranking=640A
battery B2 agm 95Ah cranking=700A
fuse F1 strip61 100A
run W1 B1.+ F1.in 25mm2 0.3m RD
run W2 F1.out B2.+ 25mm2 4m RD #~ second-source
run W3 B1.- B2.- 25mm2 4m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
battery B2 agm 95Ah cranking=700A
fuse F1 strip61 100A
fuse F2 strip61 100A
run W1 B1.+ F1.in 25mm2 0.3m RD
run W2 F1.out F2.in 25mm2 3.7m RD
run W3 F2.out B2.+ 25mm2 0.3m RD
run W4 B1.- B2.- 25mm2 4m BK",
    limits: crate::unprotected::REACH,
    since: "0.1.0",
    run,
};

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    for stretch in ctx
        .stretches
        .iter()
        .filter(|stretch| stretch.lack == Lack::SecondSource)
    {
        let open = ctx.part_tags(&stretch.sources);
        let runs = ctx.run_tags(&stretch.runs);
        out.add(
            CHECK
                .finding(
                    say!("second-source-what", runs = runs, sources = &open),
                    say!("second-source-remedy", sources = open),
                )
                .runs(stretch.runs.iter().copied())
                .parts(stretch.bridged.iter().map(|device| device.part))
                .mend(fuse_near_source(ctx, stretch)),
        );
    }
}
