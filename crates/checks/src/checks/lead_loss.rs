//! `lead-loss`: too much level lost in a speaker lead.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::registry::{Check, CheckGroup};
use circuit::Purpose;
use model::{PartId, RunId};
use words::{Unit, say, told};

pub(crate) static CHECK: Check = Check {
    name: "lead-loss",
    grade: Grade::Tidy,
    group: CheckGroup::Speakers,
    example: "\
amplifier A1 sections=\"1x 300W@2ohm min 2ohm\"
speaker LS1 2ohm power=400W sub bass #~ lead-loss
run W1 A1.out1+ LS1.+ 1mm2 5m WH #~ lead-loss
run W2 A1.out1- LS1.- 1mm2 5m WHBK #~ lead-loss",
    instead: "\
amplifier A1 sections=\"1x 300W@2ohm min 2ohm\"
speaker LS1 2ohm power=400W sub bass
run W1 A1.out1+ LS1.+ 4mm2 5m WH
run W2 A1.out1- LS1.- 4mm2 5m WHBK",
    limits: &["lead-loss"],
    since: "0.1.0",
    run,
};

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let Some(limit) = ctx.limit("lead-loss") else {
        return;
    };
    for (id, driver) in &ctx.study.drivers {
        if !driver.plays || driver.lead_loss.0 <= limit {
            continue;
        }
        let runs = leads(ctx, *id);
        if !runs.iter().any(|run| ctx.touched_run(*run))
            || runs
                .iter()
                .any(|run| out.has_run(*run, &["damaged-run", "poor-ending"]))
        {
            continue;
        }
        let (loss, decibels) = (driver.lead_loss.0, Unit::Plain("dB"));
        let finding = CHECK
            .finding(
                say!(
                    "lead-loss-what",
                    speaker = ctx.part_tag(*id),
                    lost = told(loss, limit, decibels),
                    most = told(limit, loss, decibels),
                ),
                say!("lead-loss-remedy"),
            )
            .parts([*id])
            .runs(runs.iter().copied())
            .measure(loss, limit, "dB", Some("lead-loss"));
        out.add(runs.iter().fold(finding, |f, run| {
            f.assumes_run(ctx, *run, &["size", "length", "material"])
        }));
    }
}

/// Speaker runs that land on the speaker.
fn leads(ctx: &Ctx<'_>, id: PartId) -> Vec<RunId> {
    ctx.runs_of(id)
        .map(|(run, _)| run)
        .filter(|run| ctx.purpose(*run) == Purpose::Speaker)
        .collect()
}
