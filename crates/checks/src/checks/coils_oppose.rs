//! `coils-oppose`: the coils of one driver push against each other.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::set_run;
use crate::registry::{Check, CheckGroup};
use model::{Change, Edit, End, PartId, RunId, TerminalName};
use ordered::OrderedSet;
use words::say;

pub(crate) static CHECK: Check = Check {
    name: "coils-oppose",
    grade: Grade::Fix,
    group: CheckGroup::Speakers,
    example: "\
amplifier A1 sections=\"1x 150W@4ohm min 4ohm\"
speaker LS1 2ohm coils=2 power=400W sub bass #~ coils-oppose
run W1 A1.out1+ LS1.a+ 4mm2 1.5m WH
run W2 LS1.a- LS1.b- 4mm2 0.2m GY #~ coils-oppose
run W3 A1.out1- LS1.b+ 4mm2 1.5m WHBK #~ coils-oppose",
    instead: "\
amplifier A1 sections=\"1x 150W@4ohm min 4ohm\"
speaker LS1 2ohm coils=2 power=400W sub bass
run W1 A1.out1+ LS1.a+ 4mm2 1.5m WH
run W2 LS1.a- LS1.b+ 4mm2 0.2m GY
run W3 A1.out1- LS1.b- 4mm2 1.5m WHBK",
    limits: &[],
    since: "0.1.0",
    run,
};

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    for (id, driver) in &ctx.study.drivers {
        if !driver.coils_oppose || !ctx.touched_part(*id) {
            continue;
        }
        // The coil that goes against the signal is the one to turn.
        let coil = driver
            .coils
            .iter()
            .position(|coil| coil.polarity < 0)
            .map_or("b", |coil| if coil == 0 { "a" } else { "b" });
        let runs: OrderedSet<RunId> = ["+", "-"]
            .iter()
            .flat_map(|sign| ctx.runs_on(*id, &format!("{coil}{sign}")))
            .collect();
        let tag = ctx.part_tag(*id);
        out.add(
            CHECK
                .finding(
                    say!("coils-oppose-what", coil = coil, speaker = &tag),
                    say!("coils-oppose-remedy", coil = coil, speaker = &tag),
                )
                .parts([*id])
                .runs(runs)
                .mend(swap(ctx, *id, coil)),
        );
    }
}

/// Swaps plus and minus of one coil.
fn swap(ctx: &Ctx<'_>, id: PartId, coil: &str) -> Option<Edit> {
    let (plus, minus) = (
        TerminalName::new(format!("{coil}+")),
        TerminalName::new(format!("{coil}-")),
    );
    let changes: Vec<Change> = ctx
        .runs_of(id)
        .filter_map(|(run_id, run)| {
            let mut turned = run.clone();
            for end in [&mut turned.from, &mut turned.to] {
                if let End::On(at) = end
                    && at.part == id
                {
                    if at.terminal == plus {
                        at.terminal = minus.clone();
                    } else if at.terminal == minus {
                        at.terminal = plus.clone();
                    }
                }
            }
            (turned != *run).then(|| set_run(run_id, turned))
        })
        .collect();
    let name = say!("mend-swap-coil", coil = coil, speaker = ctx.part_tag(id));
    (!changes.is_empty()).then(|| Edit::new(name, changes))
}
