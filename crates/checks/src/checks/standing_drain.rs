//! `standing-drain`: what is drawn while parked leaves too little to start.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::registry::{Check, CheckGroup};
use model::{PartId, PartKind};
use words::{Unit, figure, say, told};

pub(crate) static CHECK: Check = Check {
    name: "standing-drain",
    grade: Grade::Fix,
    group: CheckGroup::Energy,
    example: "\
battery B1 agm 70Ah cranking=640A charge=90% #~ standing-drain
fuse F1 strip61 40A
load L1 0.15A when=always
run W1 B1.+ F1.in 10mm2 0.3m RD
run W2 F1.out L1.+ 10mm2 1m RD
run W3 L1.- B1.- 10mm2 1m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A charge=90%
fuse F1 strip61 40A
load L1 0.02A when=always
run W1 B1.+ F1.in 10mm2 0.3m RD
run W2 F1.out L1.+ 10mm2 1m RD
run W3 L1.- B1.- 10mm2 1m BK",
    limits: &["start-reserve"],
    since: "0.1.0",
    run,
};

/// Batteries that start the engine: those on the vehicle's own lead, or all where there is no vehicle on the sheet.
fn starters(ctx: &Ctx<'_>) -> Vec<PartId> {
    let vehicle = ctx
        .sheet
        .parts
        .iter()
        .find(|(_, part)| matches!(part.is, PartKind::Vehicle(_)))
        .map(|(id, _)| *id);
    let batteries = ctx
        .sheet
        .parts
        .iter()
        .filter(|(_, part)| matches!(part.is, PartKind::Battery(_)))
        .map(|(id, _)| *id);
    match vehicle {
        Some(vehicle) => batteries
            .filter(|battery| {
                ctx.runs_on(vehicle, "+")
                    .into_iter()
                    .any(|run| ctx.landings(run).iter().any(|(part, _, _)| part == battery))
            })
            .collect(),
        None => batteries.collect(),
    }
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let Some(reserve) = ctx.limit("start-reserve") else {
        return;
    };
    let added = ctx.study.circuits.keys().any(|load| !ctx.is_makers(*load));
    let is_told = ctx
        .study
        .signal
        .turn_on
        .keys()
        .any(|part| out.has_part(*part, &["always-on"]));
    if !added || is_told {
        return;
    }
    let parking = ctx.settings.conditions.parking;
    let Some(hours) = parking.value() else {
        out.add(CHECK.undecided(say!("standing-drain-unknown"), say!("standing-drain-find")));
        return;
    };
    let energy = &ctx.study.energy;
    for battery in starters(ctx) {
        let Some(left) = energy.charge_after_parking.get(&battery) else {
            continue;
        };
        // A battery that was emptier before is not emptied by standing.
        let charge = match ctx.kind(battery) {
            Some(PartKind::Battery(it)) => it.charge.value().map_or(1.0, |charge| charge.0),
            _ => 1.0,
        };
        if left.0 >= reserve || left.0 >= charge - 1e-6 {
            continue;
        }
        let mut finding = CHECK
            .finding(
                say!(
                    "standing-drain-what",
                    days = figure(hours.0 / 24.0, Unit::Bare),
                    left = told(left.0, reserve, Unit::Percent),
                    battery = ctx.part_tag(battery),
                    least = told(reserve, left.0, Unit::Percent),
                    standing = figure(energy.standing.0 * 1e3, Unit::Plain("mA")),
                ),
                say!("standing-drain-remedy"),
            )
            .parts([battery])
            .measure(left.0, reserve, "", Some("start-reserve"))
            .assumes_part(ctx, battery, &["capacity", "charge"]);
        if parking.is_assumed() {
            finding.assumed.insert(say!("assumed-parking"));
        }
        out.add(finding);
    }
}
