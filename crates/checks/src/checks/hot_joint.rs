//! `hot-joint`: an ending that turns too much power into heat.

use crate::checks::poor_ending::{ending_of, is_poor, remake};
use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::registry::{Check, CheckGroup};
use crate::wording::{A, MILLIOHM, W, and_then, assumed};
use ordered::Sort as _;
use words::{Value, figure, say, told};

pub(crate) static CHECK: Check = Check {
    name: "hot-joint",
    grade: Grade::Fix,
    group: CheckGroup::Conductors,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 80A
load L1 power=500W
run W1 B1.+ F1.in 25mm2 0.3m RD
run W2 F1.out L1.+ 25mm2 1m RD end-ohms=?/0.003ohm #~ hot-joint
run W3 L1.- B1.- 25mm2 1m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 80A
load L1 power=500W
run W1 B1.+ F1.in 25mm2 0.3m RD
run W2 F1.out L1.+ 25mm2 1m RD ends=ring/ring
run W3 L1.- B1.- 25mm2 1m BK",
    limits: &["joint-power", "joint-power-melt"],
    since: "0.1.0",
    run,
};

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let (Some(warm), Some(melts)) = (ctx.limit("joint-power"), ctx.limit("joint-power-melt")) else {
        return;
    };
    for (id, flow) in &ctx.study.runs {
        // Asked first: of nearly all runs no more has to be asked.
        let is_warm = flow.ending_loss.iter().any(|loss| loss.0 > warm);
        if !is_warm || !ctx.burdened_run(*id) || out.has_run(*id, &["damaged-run"]) {
            continue;
        }
        let Some(run) = ctx.run(*id) else { continue };
        let given = |side: usize| {
            [&run.from_ending, &run.to_ending]
                .get(side)
                .is_some_and(|ending| ending.resistance.is_given())
        };
        // A usual joint on a wire that is too thin is warm for that reason.
        let too_thin = out.has_run(*id, &["overloaded-run"]);
        let mut hot: Vec<(usize, f64)> = flow
            .ending_loss
            .iter()
            .enumerate()
            .map(|(side, loss)| (side, loss.0))
            .filter(|(side, loss)| {
                let told = is_poor(ending_of(run, *side)) && out.has_run(*id, &["poor-ending"]);
                *loss > warm && !told && (given(*side) || !too_thin)
            })
            .collect();
        hot.order_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
        let Some((side, loss)) = hot.first().copied() else {
            continue;
        };
        let stop = loss > melts;
        let (limit, key) = if stop {
            (melts, "joint-power-melt")
        } else {
            (warm, "joint-power")
        };
        let (lost, most) = (told(loss, limit, W), told(limit, loss, W));
        let place = |side: usize| -> Value {
            run.ends().get(side).and_then(|end| end.terminal()).map_or_else(
                || say!("hot-joint-end").into(),
                |at| ctx.terminal(at.part, at.terminal.as_str()).into(),
            )
        };
        let ohms = flow.ending_resistance.get(side).copied().unwrap_or_default();
        let (carries, ohms) = (
            figure(flow.current.rms.abs().0, A),
            figure(ohms.0 * 1e3, MILLIOHM),
        );
        let verdict = if stop {
            say!("hot-joint-melts", most = most)
        } else {
            say!("hot-joint-limit", most = most)
        };
        let what = say!(
            "hot-joint-what",
            run = &run.tag,
            lost = lost,
            place = place(side),
            carries = carries,
            ohms = ohms,
            verdict = verdict,
        );
        let other = hot
            .get(1)
            .map(|(other, _)| say!("hot-joint-other", place = place(*other)));
        let sides: Vec<usize> = hot.iter().map(|(side, _)| *side).collect();
        let mut finding = CHECK
            .finding(
                and_then(what, other),
                say!("hot-joint-remedy", place = place(side)),
            )
            .grade(if stop { Grade::Stop } else { Grade::Fix })
            .runs([*id])
            .measure(loss, limit, "W", Some(key))
            .mend(given(side).then(|| remake(ctx, *id, &sides)).flatten());
        if !given(side) {
            finding.assumed.insert(assumed(&run.tag, "ending-resistance"));
        }
        out.add(finding);
    }
}
