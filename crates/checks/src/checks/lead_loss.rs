//! `lead-loss`: too much level lost in a speaker lead.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::registry::{Check, CheckGroup};
use crate::wires::thicken_to_share;
use circuit::Purpose;
use model::{Edit, PartId, RunId};
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
            .measure(loss, limit, "dB", Some("lead-loss"))
            .mend(thicker(ctx, *id, loss, limit));
        out.add(runs.iter().fold(finding, |f, run| {
            f.assumes_run(ctx, *run, &["size", "length", "material"])
        }));
    }
}

/// Thicker wire for all of the output that the speaker hangs on. Of a loss of L dB the leads have 10^(L/20) - 1 times the
/// resistance of the load; their endings stay what they are.
fn thicker(ctx: &Ctx<'_>, id: PartId, loss: f64, limit: f64) -> Option<Edit> {
    let channel = ctx
        .study
        .channels
        .iter()
        .find(|channel| channel.drivers.contains(&id))?;
    let of_load = |decibels: f64| libm::pow(10.0, decibels / 20.0) - 1.0;
    let runs: Vec<RunId> = channel.runs.iter().copied().collect();
    let flows = || runs.iter().filter_map(|run| ctx.flow(*run));
    let copper: f64 = flows().map(|flow| flow.wire_resistance.0).sum();
    let endings: f64 = flows()
        .flat_map(|flow| flow.ending_resistance)
        .map(|ohms| ohms.0)
        .sum();
    let share = of_load(limit * 0.98) / of_load(loss);
    thicken_to_share(
        ctx,
        &runs,
        (share * (copper + endings) - endings) / copper.max(1e-9),
    )
}

/// Speaker runs that land on the speaker.
fn leads(ctx: &Ctx<'_>, id: PartId) -> Vec<RunId> {
    ctx.runs_of(id)
        .map(|(run, _)| run)
        .filter(|run| ctx.purpose(*run) == Purpose::Speaker)
        .collect()
}
