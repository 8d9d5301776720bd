//! `uneven-coils`: the coils of one driver do not get equal power.

use crate::checks::load_too_low::offer;
use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::hooking_up::hook_ups;
use crate::registry::{Check, CheckGroup};
use crate::wording::W;
use words::{Figure, figure, say};

pub(crate) static CHECK: Check = Check {
    name: "uneven-coils",
    grade: Grade::Fix,
    group: CheckGroup::Speakers,
    example: "\
amplifier A1 sections=\"1x 150W@4ohm min 4ohm\"
speaker LS1 4ohm coils=2 power=400W sub bass #~ uneven-coils
run W1 A1.out1+ LS1.a+ 4mm2 1.5m WH
run W2 A1.out1- LS1.a- 4mm2 1.5m WHBK",
    instead: "\
amplifier A1 sections=\"1x 150W@4ohm min 4ohm\"
speaker LS1 4ohm coils=2 power=400W sub bass
run W1 A1.out1+ LS1.a+ 4mm2 1.5m WH
run W2 LS1.a- LS1.b+ 4mm2 0.2m GY
run W3 A1.out1- LS1.b- 4mm2 1.5m WHBK",
    limits: &["coil-imbalance"],
    since: "0.1.0",
    run,
};

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let Some(limit) = ctx.limit("coil-imbalance") else {
        return;
    };
    for (id, driver) in &ctx.study.drivers {
        if !driver.plays || driver.coils.len() < 2 || !ctx.touched_part(*id) {
            continue;
        }
        // A lead that is damaged is told as such.
        if ctx
            .runs_of(*id)
            .any(|(run, _)| out.has_run(run, &["damaged-run"]))
        {
            continue;
        }
        let powers: Vec<f64> = driver.coils.iter().map(|coil| coil.power.0).collect();
        let equal = powers.iter().sum::<f64>() / powers.len() as f64;
        let most = powers.iter().copied().fold(0.0, f64::max);
        let excess = most / equal - 1.0;
        if equal <= 0.0 || excess <= limit {
            continue;
        }
        let tag = ctx.part_tag(*id);
        let each: Vec<Figure> = powers.iter().map(|power| figure(*power, W)).collect();
        let finding = CHECK
            .finding(
                say!("uneven-coils-what", speaker = tag, powers = each),
                say!("uneven-coils-remedy"),
            )
            .parts([*id])
            .measure(excess, limit, "", Some("coil-imbalance"));
        let mut channels = ctx.study.channels.iter();
        let ways = channels
            .find(|channel| channel.drivers.contains(id))
            .and_then(|channel| Some(hook_ups(ctx, channel, channel.minimum?.0)));
        out.add(offer(finding, ways.unwrap_or_default()));
    }
}
