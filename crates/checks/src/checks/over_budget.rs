//! `over-budget`: more is drawn than the alternator gives.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::set_part;
use crate::registry::{Check, CheckGroup};
use crate::wording::A;
use model::job::VehicleState;
use model::quantity::{Amps, Share};
use model::{Edit, Fact, PartId, PartKind};
use words::{figure, say, told};

pub(crate) static CHECK: Check = Check {
    name: "over-budget",
    grade: Grade::Fix,
    group: CheckGroup::Energy,
    example: "\
conditions state=idle
vehicle V1 by=maker
battery B1 agm 70Ah cranking=640A by=maker
alternator G1 14.2V current=90A idle-current=40A by=maker #~ over-budget
run W1 B1.+ V1.+ 35mm2 0.5m RD by=maker
run W2 V1.- B1.- 35mm2 0.4m BK by=maker
run W3 G1.B+ V1.B+ 35mm2 1.2m RD by=maker
run W4 V1.engine G1.case 35mm2 0.3m BK by=maker
fuse F1 strip61 60A
load L1 power=300W
run W5 B1.+ F1.in 16mm2 0.3m RD
run W6 F1.out L1.+ 16mm2 2m RD
run W7 L1.- V1.31 16mm2 0.4m BK",
    instead: "\
conditions state=idle
vehicle V1 by=maker
battery B1 agm 70Ah cranking=640A by=maker
alternator G1 14.2V current=150A idle-current=90A by=maker
run W1 B1.+ V1.+ 35mm2 0.5m RD by=maker
run W2 V1.- B1.- 35mm2 0.4m BK by=maker
run W3 G1.B+ V1.B+ 35mm2 1.2m RD by=maker
run W4 V1.engine G1.case 35mm2 0.3m BK by=maker
fuse F1 strip61 60A
load L1 power=300W
run W5 B1.+ F1.in 16mm2 0.3m RD
run W6 F1.out L1.+ 16mm2 2m RD
run W7 L1.- V1.31 16mm2 0.4m BK",
    limits: &["alternator-share"],
    since: "0.1.0",
    run,
};

/// Alternators are sold in steps of about so much, in amperes.
const STEP: f64 = 10.0;

/// A larger alternator that gives what is missing, of the one that gives most.
fn larger(ctx: &Ctx<'_>, alternators: &[PartId], missing: f64) -> Option<Edit> {
    let idling = ctx.settings.conditions.state == VehicleState::Idle;
    let given = |id: PartId| match ctx.kind(id)? {
        PartKind::Alternator(it) => {
            let amps = if idling { it.idle_current } else { it.current };
            Some((amps.value()?.0, it.hot_share.or(Share(0.8)).0))
        }
        _ => None,
    };
    let all = alternators.iter().filter_map(|id| Some((*id, given(*id)?)));
    let (id, (gives, hot)) = all.max_by(|a, b| (a.1.0).total_cmp(&b.1.0).then(b.0.cmp(&a.0)))?;
    let wanted = ((gives + missing / hot.max(0.1)) / STEP).ceil() * STEP;
    let mut part = ctx.part(id)?.clone();
    let PartKind::Alternator(it) = &mut part.is else {
        return None;
    };
    let scaled = |amps: Fact<Amps>| {
        let amps = amps.value()?.0 * wanted / gives.max(1.0);
        Some(Fact::Given(Amps((amps / STEP).ceil() * STEP)))
    };
    let (current, idle) = (scaled(it.current)?, scaled(it.idle_current)?);
    (it.current, it.idle_current) = (current, idle);
    let name = say!(
        "mend-alternator",
        alternator = &part.tag,
        current = figure(current.value()?.0, A),
        idle = figure(idle.value()?.0, A)
    );
    Some(Edit::new(name, vec![set_part(id, part)]))
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let Some(share) = ctx.limit("alternator-share") else {
        return;
    };
    let state = ctx.settings.conditions.state;
    let running = matches!(state, VehicleState::Idle | VehicleState::Cruise);
    let energy = &ctx.study.energy;
    let added = ctx.study.circuits.keys().any(|load| !ctx.is_makers(*load));
    if !running || !added || energy.available.0 <= 0.0 || energy.draw.0 <= energy.available.0 * share {
        return;
    }
    let alternators: Vec<_> = ctx
        .sheet
        .parts
        .iter()
        .filter(|(_, part)| matches!(part.is, PartKind::Alternator(_)))
        .map(|(id, _)| *id)
        .collect();
    let (draws, gives) = (energy.draw.0, energy.available.0 * share);
    let finding = CHECK
        .finding(
            say!(
                "over-budget-what",
                draws = told(draws, gives, A),
                state = state.word(),
                alternators = ctx.part_tags(&alternators),
                gives = told(gives, draws, A),
            ),
            say!("over-budget-remedy", over = figure(draws - gives, A)),
        )
        .parts(alternators.iter().copied())
        .measure(draws, gives, "A", Some("alternator-share"))
        .mend_by_choice(
            larger(ctx, &alternators, (draws - gives) / share.max(0.01)),
            say!("mend-choice-other"),
        );
    let of_alternators = ["current", "idle-current", "hot-share"];
    let finding = alternators
        .iter()
        .fold(finding, |f, id| f.assumes_part(ctx, *id, &of_alternators));
    let finding = ctx
        .sheet
        .parts
        .iter()
        .filter(|(_, part)| matches!(part.is, PartKind::Vehicle(_)))
        .fold(finding, |f, (id, _)| f.assumes_part(ctx, *id, &["running-load"]));
    out.add(finding);
}
