//! `intermittent`: a run that loses contact when something is moved.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::guarding::grade_of;
use crate::mends::set_run;
use crate::registry::{Check, CheckGroup};
use crate::wires::renewed;
use crate::wording::and_then;
use model::Edit;
use words::{Saying, say};

pub(crate) static CHECK: Check = Check {
    name: "intermittent",
    grade: Grade::Stop,
    group: CheckGroup::Workmanship,
    example: "\
amplifier A1 sections=\"1x 60W@4ohm min 4ohm\"
speaker LS1 4ohm power=80W front-left
run W1 A1.out1+ LS1.+ 2.5mm2 3m WH opens-when=doors-open #~ intermittent
run W2 A1.out1- LS1.- 2.5mm2 3m WHBK",
    instead: "\
amplifier A1 sections=\"1x 60W@4ohm min 4ohm\"
speaker LS1 4ohm power=80W front-left
run W1 A1.out1+ LS1.+ 2.5mm2 3m WH
run W2 A1.out1- LS1.- 2.5mm2 3m WHBK",
    limits: &[],
    since: "0.1.0",
    run,
};

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    for (at, (id, run)) in ctx.sheet.runs.iter().enumerate() {
        // Of a run that is known to be broken this is no more than how it shows.
        let Some(moved) = run.laying.opens_when.value() else {
            continue;
        };
        if out.has_run(*id, &["damaged-run"]) {
            continue;
        }
        let joints: Vec<Saying> = ctx
            .lie
            .as_ref()
            .and_then(|lie| {
                let spots = lie.spots(lie.walk(at)?).into_iter();
                Some(
                    spots
                        .filter(|spot| lie.is_joint(spot))
                        .map(|spot| lie.said(&spot))
                        .collect(),
                )
            })
            .unwrap_or_default();
        let look = (!joints.is_empty()).then(|| say!("intermittent-look", spots = joints));
        let name = say!("mend-lay-anew", run = &run.tag);
        out.add(
            CHECK
                .finding(
                    say!("intermittent-what", run = &run.tag, state = moved.word()),
                    and_then(
                        say!("intermittent-remedy", run = &run.tag, state = moved.word()),
                        look,
                    ),
                )
                .grade(grade_of(ctx, *id, run))
                .runs([*id])
                .mend(Some(Edit::new(name, vec![set_run(*id, renewed(run))]))),
        );
    }
}
