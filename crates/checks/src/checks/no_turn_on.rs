//! `no-turn-on`: nothing tells a part to turn on.

use crate::context::Ctx;
use crate::finding::{Finding, Grade};
use crate::findings::Findings;
use crate::mends::leads::{switched_lead, turn_on_leads};
use crate::mends::rejoining::rejoin_at;
use crate::registry::{Check, CheckGroup};
use crate::wiring::{BODY, live_pole};
use model::{PartId, TerminalRef};
use ordered::OrderedSet;
use words::say;

pub(crate) static CHECK: Check = Check {
    name: "no-turn-on",
    grade: Grade::Fix,
    group: CheckGroup::SignalAndControl,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 60A
amplifier A1 sections=\"2x 60W@4ohm min 4ohm\" turn-on=lead #~ no-turn-on
head H1 speaker-outputs=0
block D1 outputs=2 fuses=60A,10A form=strip30
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out D1.in 16mm2 1m RD
run W3 D1.out1 A1.+ 16mm2 1m RD
run W4 A1.- B1.- 16mm2 2m BK
splice J1 places=3
run W5 D1.out2 J1.1 2.5mm2 1m YE
run W6 J1.2 H1.30 2.5mm2 0.2m YE
run W7 J1.3 H1.15 2.5mm2 0.2m RD
run W8 H1.31 B1.- 2.5mm2 1m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 60A
amplifier A1 sections=\"2x 60W@4ohm min 4ohm\" turn-on=lead
head H1 speaker-outputs=0
block D1 outputs=2 fuses=60A,10A form=strip30
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out D1.in 16mm2 1m RD
run W3 D1.out1 A1.+ 16mm2 1m RD
run W4 A1.- B1.- 16mm2 2m BK
splice J1 places=3
run W5 D1.out2 J1.1 2.5mm2 1m YE
run W6 J1.2 H1.30 2.5mm2 0.2m YE
run W7 J1.3 H1.15 2.5mm2 0.2m RD
run W8 H1.31 B1.- 2.5mm2 1m BK
run W9 H1.rem A1.rem 0.75mm2 2m BU",
    limits: &[],
    since: "0.1.0",
    run,
};

/// Offers to end a lead that lies loose, or a new one.
fn lead(ctx: &Ctx<'_>, id: PartId, finding: Finding) -> Finding {
    let finding = rejoin_at(ctx, id, finding, |at| at.terminal.as_str() == "rem");
    if !finding.mends.is_empty() || !ctx.runs_on(id, "rem").is_empty() {
        return finding;
    }
    let leads = turn_on_leads(ctx, &TerminalRef::new(id, "rem"));
    let is_clear = leads.len() == 1;
    let finding = leads.into_iter().fold(finding, |finding, lead| {
        if is_clear {
            finding.mend(Some(lead))
        } else {
            finding.mend_by_choice(Some(lead), say!("mend-choice-output"))
        }
    });
    if finding.mends.is_empty() {
        let switched = switched_lead(ctx, &TerminalRef::new(id, "rem"));
        return finding.mend_by_choice(switched, say!("mend-choice-output"));
    }
    finding
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    if !ctx.sheet.parts.values().any(|part| live_pole(&part.is).is_some()) {
        return;
    }
    let island = ctx.wiring.islands(|tie| !tie.ends.contains(&BODY));
    let at = |point: usize| island.get(point).copied().unwrap_or(point);
    let cut: OrderedSet<usize> = ctx.cut.iter().map(|point| at(*point)).collect();
    for (id, turn_on) in &ctx.study.signal.turn_on {
        // A lead that is cut through is told as such.
        let told = !ctx.settings.allowed.contains("damaged-run")
            && ctx
                .wiring
                .point(*id, "rem")
                .is_some_and(|point| cut.contains(&at(point)));
        let turned_on =
            !turn_on.by.is_empty() || turn_on.always_live || turn_on.switched_feed || turn_on.sensed;
        if turned_on || !turn_on.needs_lead || told || !ctx.touched_part(*id) {
            continue;
        }
        // A part that is not fed has that to mend first.
        if out.has_part(*id, &["no-feed"]) {
            continue;
        }
        let place = ctx.terminal(*id, "rem");
        let what = if turn_on.runs.is_empty() {
            say!("no-turn-on-nothing", terminal = &place, part = ctx.part_tag(*id))
        } else {
            say!("no-turn-on-what", terminal = &place, part = ctx.part_tag(*id))
        };
        let finding = CHECK
            .finding(what, say!("no-turn-on-remedy", terminal = place))
            .parts([*id])
            .runs(turn_on.runs.iter().copied());
        out.add(lead(ctx, *id, finding));
    }
}
