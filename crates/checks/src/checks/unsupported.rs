//! `unsupported`: a run that hangs too far between two of its supports.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::set_run;
use crate::registry::{Check, CheckGroup};
use model::conductor::FittedBy;
use model::quantity::Metres;
use model::{Edit, Fact, PartKind, RunId};
use words::{Unit, figure, say, told};

pub(crate) static CHECK: Check = Check {
    name: "unsupported",
    grade: Grade::Tidy,
    group: CheckGroup::Workmanship,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A
load L1 power=200W
run W1 B1.+ F1.in 10mm2 0.3m RD
run W2 F1.out L1.+ 10mm2 1.7m RD support-spacing=0.9m #~ unsupported
run W3 L1.- B1.- 10mm2 2m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A
load L1 power=200W
run W1 B1.+ F1.in 10mm2 0.3m RD
run W2 F1.out L1.+ 10mm2 1.7m RD support-spacing=0.4m
run W3 L1.- B1.- 10mm2 2m BK",
    limits: &["support-spacing", "support-spacing-battery"],
    since: "0.1.0",
    run,
};

/// The limit for a run: that of a battery's own leads where it lands on one.
fn limit_for(ctx: &Ctx<'_>, id: RunId) -> Option<(f64, &'static str)> {
    let on_battery = ctx
        .landings(id)
        .iter()
        .any(|(_, kind, _)| matches!(kind, PartKind::Battery(_)));
    let key = if on_battery {
        "support-spacing-battery"
    } else {
        "support-spacing"
    };
    Some((ctx.limit(key)?, key))
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let mut asked: Vec<RunId> = Vec::new();
    for (at, (id, run)) in ctx.sheet.runs.iter().enumerate() {
        let walk = ctx.lie.as_ref().and_then(|lie| lie.walk(at));
        let routed = walk.is_some_and(|walk| !walk.steps.is_empty());
        let spacing = run.laying.support_spacing.value();
        // Of nearly all runs nobody told anything.
        if spacing.is_none() && !routed || run.fitted_by == FittedBy::Maker {
            continue;
        }
        let Some((limit, key)) = limit_for(ctx, *id) else {
            continue;
        };
        let Some(spacing) = spacing else {
            // A run that is shorter than the limit is held by its ends.
            if run.wire.length.value().is_some_and(|length| length.0 > limit) {
                asked.push(*id);
            }
            continue;
        };
        let hangs = run
            .wire
            .length
            .value()
            .map_or(spacing, |length| length.min(spacing));
        if hangs.0 <= limit {
            continue;
        }
        let mut held = run.clone();
        held.laying.support_spacing = Fact::Given(Metres(limit));
        let most = figure(limit, Unit::Metre);
        let name = say!("mend-support", run = &run.tag, most = most);
        out.add(
            CHECK
                .finding(
                    say!(
                        "unsupported-what",
                        run = &run.tag,
                        hangs = told(hangs.0, limit, Unit::Metre),
                        most = told(limit, hangs.0, Unit::Metre)
                    ),
                    say!("unsupported-remedy", run = &run.tag, most = most),
                )
                .runs([*id])
                .measure(hangs.0, limit, "m", Some(key))
                .mend(Some(Edit::new(name, vec![set_run(*id, held)]))),
        );
    }
    // One question for all of them: it is answered on one walk around the car.
    if !asked.is_empty() {
        let runs = ctx.run_tags(&asked);
        let what = say!("unsupported-unknown", runs = &runs);
        out.add(
            CHECK
                .undecided(what, say!("unsupported-find", runs = runs))
                .runs(asked),
        );
    }
}
