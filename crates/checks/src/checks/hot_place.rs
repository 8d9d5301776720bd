//! `hot-place`: insulation that does not bear the hottest place on the way.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::guarding::grade_of;
use crate::mends::set_run;
use crate::registry::{Check, CheckGroup};
use model::quantity::{Amps, Celsius};
use model::{Edit, Fact, RunId};
use reference::ampacity::RATINGS;
use words::{Unit, say, told};

pub(crate) static CHECK: Check = Check {
    name: "hot-place",
    grade: Grade::Stop,
    group: CheckGroup::Workmanship,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A
load L1 power=200W
run W1 B1.+ F1.in 10mm2 0.3m RD
run W2 F1.out L1.+ 10mm2 1.7m RD insulation=75C surroundings=engine-bay #~ hot-place
run W3 L1.- B1.- 10mm2 2m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A
load L1 power=200W
run W1 B1.+ F1.in 10mm2 0.3m RD
run W2 F1.out L1.+ 16mm2 1.7m RD insulation=125C surroundings=engine-bay
run W3 L1.- B1.- 10mm2 2m BK",
    limits: &["insulation-margin"],
    since: "0.1.0",
    run,
};

const DEGREES: Unit = Unit::Plain("°C");

/// Whether a run bears no current at all only because it lies too hot, which is told here.
pub(crate) fn tells_all(ctx: &Ctx<'_>, out: &Findings, id: RunId) -> bool {
    out.has_run(id, &[CHECK.name]) && ctx.flow(id).and_then(|flow| flow.allowable) == Some(Amps(0.0))
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let Some(margin) = ctx.limit("insulation-margin") else {
        return;
    };
    for (id, flow) in &ctx.study.runs {
        let Some(run) = ctx.run(*id) else { continue };
        let Some(Celsius(bears)) = run.wire.insulation.value() else {
            continue;
        };
        let asks = flow.ambient.0 + margin;
        if bears >= asks || !ctx.touched_run(*id) {
            continue;
        }
        let around = run.wire.surroundings.or(model::conductor::Surroundings::Cabin);
        // The least that is made and leaves something for the current.
        let rating = RATINGS.into_iter().find(|rating| *rating >= asks + 20.0);
        let mend = rating.map(|rating| {
            let mut laid = run.clone();
            laid.wire.insulation = Fact::Given(Celsius(rating));
            let name = say!(
                "mend-insulation",
                run = &run.tag,
                rating = told(rating, asks, DEGREES)
            );
            Edit::new(name, vec![set_run(*id, laid)])
        });
        let what = say!(
            "hot-place-what",
            run = &run.tag,
            around = around.said(),
            hot = told(flow.ambient.0, bears, DEGREES),
            bears = told(bears, flow.ambient.0, DEGREES)
        );
        out.add(
            CHECK
                .finding(what, say!("hot-place-remedy", run = &run.tag))
                .grade(grade_of(ctx, *id, run))
                .runs([*id])
                .measure(asks, bears, "°C", Some("insulation-margin"))
                .assumes_run(ctx, *id, &["insulation", "surroundings"])
                .mend(mend),
        );
    }
}
