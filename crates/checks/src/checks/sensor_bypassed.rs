//! `sensor-bypassed`: a return that goes around the battery's current sensor.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::set_run;
use crate::registry::{Check, CheckGroup};
use model::{Change, Edit, End, PartId, PartKind, RunId, TerminalRef};
use words::say;

pub(crate) static CHECK: Check = Check {
    name: "sensor-bypassed",
    grade: Grade::Fix,
    group: CheckGroup::Ground,
    example: "\
vehicle V1 current-sensor=yes by=maker
battery B1 agm 70Ah cranking=640A by=maker
run W1 B1.+ V1.+ 35mm2 0.5m RD by=maker
run W2 V1.- B1.- 35mm2 0.4m BK by=maker
fuse F1 strip61 40A
load L1 power=200W
run W3 B1.+ F1.in 10mm2 0.3m RD
run W4 F1.out L1.+ 10mm2 1.7m RD
run W5 L1.- B1.- 10mm2 2m BK #~ sensor-bypassed",
    instead: "\
vehicle V1 current-sensor=yes by=maker
battery B1 agm 70Ah cranking=640A by=maker
run W1 B1.+ V1.+ 35mm2 0.5m RD by=maker
run W2 V1.- B1.- 35mm2 0.4m BK by=maker
fuse F1 strip61 40A
load L1 power=200W
run W3 B1.+ F1.in 10mm2 0.3m RD
run W4 F1.out L1.+ 10mm2 1.7m RD
run W5 L1.- V1.31 10mm2 1m BK",
    limits: &[],
    since: "0.1.0",
    run,
};

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    for (vehicle_id, part) in &ctx.sheet.parts {
        let PartKind::Vehicle(vehicle) = &part.is else {
            continue;
        };
        if !vehicle.current_sensor {
            continue;
        }
        // Batteries whose negative pole is on the vehicle's own lead.
        let batteries: Vec<PartId> = ctx
            .runs_on(*vehicle_id, "-")
            .into_iter()
            .flat_map(|run| ctx.landings(run))
            .filter(|(_, kind, terminal)| matches!(kind, PartKind::Battery(_)) && terminal.as_str() == "-")
            .map(|(battery, _, _)| battery)
            .collect();
        for battery in batteries {
            let around: Vec<RunId> = ctx
                .runs_on(battery, "-")
                .into_iter()
                .filter(|run| {
                    ctx.touched_run(*run) && !ctx.landings(*run).iter().any(|(part, _, _)| part == vehicle_id)
                })
                .collect();
            if around.is_empty() {
                continue;
            }
            let pole = TerminalRef::new(battery, "-");
            let changes: Vec<Change> = around
                .iter()
                .filter_map(|id| {
                    let mut run = ctx.run(*id)?.clone();
                    for end in [&mut run.from, &mut run.to] {
                        if *end == End::On(pole.clone()) {
                            *end = End::On(TerminalRef::new(*vehicle_id, "31"));
                        }
                    }
                    Some(set_run(*id, run))
                })
                .collect();
            out.add(
                CHECK
                    .finding(
                        say!(
                            "sensor-bypassed-what",
                            runs = ctx.run_tags(&around),
                            terminal = ctx.terminal(battery, "-"),
                        ),
                        say!("sensor-bypassed-remedy"),
                    )
                    .runs(around.iter().copied())
                    .mend(Some(Edit::new(
                        say!("mend-land-on-body", runs = ctx.run_tags(&around)),
                        changes,
                    ))),
            );
        }
    }
}
