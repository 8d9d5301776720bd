//! `standing-drain`: what is drawn while parked leaves too little to start.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::adding::Adding;
use crate::mends::batteries::larger;
use crate::registry::{Check, CheckGroup};
use model::kinds::supply::{LoadLaw, LoadTime, Switch};
use model::quantity::Metres;
use model::{Edit, PartId, PartKind};
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

/// A switch before the load that was added and draws always, the one that draws most: where without it enough is left. `spare` is the
/// current that may be drawn all the time.
fn switched(ctx: &Ctx<'_>, spare: f64) -> Option<Edit> {
    let draws = |id: &PartId| {
        let flow = ctx.study.parts.get(id);
        flow.map_or(0.0, |flow| flow.power.0)
    };
    let loads = ctx.sheet.parts.iter().filter(|(id, part)| {
        let always = matches!(&part.is, PartKind::Load(load) if load.when == LoadTime::Always);
        always && !ctx.is_makers(**id)
    });
    let (id, _) = loads.max_by(|a, b| draws(a.0).total_cmp(&draws(b.0)))?;
    let PartKind::Load(load) = ctx.kind(*id)? else {
        return None;
    };
    // At the voltage of a battery that rests; nothing where no current reaches it.
    let told = match load.law {
        LoadLaw::Current => load.current.value()?.0,
        LoadLaw::Power => load.power.value()?.0 / 12.5,
        LoadLaw::Resistance => 12.5 / load.resistance.value()?.0.max(0.01),
    };
    let reaches = ctx.study.parts.get(id)?.current.mean.abs().0;
    let taken = told.min(reaches);
    let [run] = ctx.runs_on(*id, "+")[..] else {
        return None;
    };
    if ctx.study.energy.standing.0 - taken > spare {
        return None;
    }
    let ends = ctx.run(run)?.ends();
    let end = ends
        .iter()
        .position(|end| end.terminal().is_some_and(|at| at.part == *id))?;
    let mut adding = Adding::new(ctx);
    let off = Switch {
        closed: false,
        ..Switch::default()
    };
    let tag = adding.put_into(run, end, Metres(0.3), off, ["out", "in"])?;
    let name = say!("mend-switch", switch = tag, run = ctx.run_tag(run));
    Some(Edit::new(name, adding.changes))
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
        // What an empty one would still have given is not known.
        let times = (charge - left.0) / (charge - reserve).max(1e-9) * 1.02;
        let enough = (left.0 > 0.0).then(|| larger(ctx, battery, times, 1.0)).flatten();
        let capacity = match ctx.kind(battery) {
            Some(PartKind::Battery(it)) => it.capacity.value().map_or(0.0, |it| it.0),
            _ => 0.0,
        };
        let spare = capacity * (charge - reserve) / hours.0.max(1e-9);
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
            .assumes_part(ctx, battery, &["capacity", "charge"])
            .mend_by_choice(switched(ctx, spare), say!("mend-choice-buy"))
            .mend_by_choice(enough, say!("mend-choice-other"));
        if parking.is_assumed() {
            finding.assumed.insert(say!("assumed-parking"));
        }
        out.add(finding);
    }
}
