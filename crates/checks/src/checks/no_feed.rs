//! `no-feed`: something that uses current and that no source reaches.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::registry::{Check, CheckGroup};
use crate::wiring::{BODY, Point, TieKind, live_pole, takes_feed};
use circuit::DeviceRef;
use model::conductor::Condition;
use model::kinds::supply::DeviceState;
use model::{PartId, RunId, TerminalName};
use std::collections::{BTreeMap, BTreeSet};

pub(crate) static CHECK: Check = Check {
    name: "no-feed",
    grade: Grade::Fix,
    group: CheckGroup::Conductors,
    holds_when: "a source reaches everything that uses current",
    looks_for: "On a sheet with a source: a supply terminal that no live pole reaches even with every switch, relay and \
isolator closed, and where the way ends: nothing on the terminal, a wire that leads nowhere, a fuse that is blown or \
taken out. Parts on one dead feed share a finding. A feed that is cut through is told by damaged-run.",
    why: "It does not work.",
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A open #~ no-feed
load L1 power=200W #~ no-feed
run W1 B1.+ F1.in 10mm2 0.3m RD
run W2 F1.out L1.+ 10mm2 1.7m RD
run W3 L1.- B1.- 10mm2 2m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A intact
load L1 power=200W
run W1 B1.+ F1.in 10mm2 0.3m RD
run W2 F1.out L1.+ 10mm2 1.7m RD
run W3 L1.- B1.- 10mm2 2m BK",
    source: "Common practice; it follows from Kirchhoff's current law.",
    limits: &[],
    since: "0.1.0",
    run,
};

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    if !ctx.sheet.parts.values().any(|part| live_pole(&part.is).is_some()) {
        return;
    }
    let is_open =
        |kind: &TieKind| matches!(kind, TieKind::Device(_, DeviceState::Open | DeviceState::Missing));
    let island = ctx
        .wiring
        .islands(|tie| !is_open(&tie.kind) && !tie.ends.contains(&BODY));
    let at = |point: Point| island.get(point).copied().unwrap_or(point);
    let mut dead: BTreeMap<Point, BTreeSet<(PartId, TerminalName)>> = BTreeMap::new();
    for (id, part) in ctx.sheet.parts.iter().filter(|(id, _)| ctx.touched_part(**id)) {
        for terminal in part.terminals() {
            if !takes_feed(&part.is, &terminal.name, terminal.role) {
                continue;
            }
            if let Some(point) = ctx.wiring.point(*id, &terminal.name)
                && !ctx.live.contains(&point)
            {
                dead.entry(at(point)).or_default().insert((*id, terminal.name));
            }
        }
    }
    if dead.is_empty() {
        return;
    }
    let cut: BTreeSet<Point> = ctx
        .sheet
        .runs
        .values()
        .filter(|run| run.wire.condition.value() == Some(Condition::Cut))
        .filter(|_| !ctx.settings.allowed.contains("damaged-run"))
        .flat_map(|run| run.ends())
        .filter_map(|end| end.terminal())
        .filter_map(|t| ctx.wiring.point(t.part, &t.terminal))
        .map(at)
        .collect();
    // Several dead islands behind one blown fuse are one cause.
    let mut by_device: BTreeMap<DeviceRef, BTreeSet<PartId>> = BTreeMap::new();
    for (point, terminals) in &dead {
        if cut.contains(point) {
            continue;
        }
        let parts: BTreeSet<PartId> = terminals.iter().map(|(part, _)| *part).collect();
        let blown = ctx.wiring.ties().iter().find_map(|tie| match &tie.kind {
            TieKind::Device(device, _)
                if is_open(&tie.kind) && tie.ends.iter().any(|end| at(*end) == *point) =>
            {
                Some(device.clone())
            }
            _ => None,
        });
        if let Some(device) = blown {
            by_device.entry(device).or_default().extend(parts);
            continue;
        }
        let runs: Vec<RunId> = terminals
            .iter()
            .flat_map(|(part, name)| ctx.runs_on(*part, name.as_str()))
            .collect();
        let names: Vec<String> = terminals
            .iter()
            .map(|(part, name)| ctx.terminal(*part, name.as_str()))
            .collect();
        let names = crate::wording::listed(&names);
        let what = if runs.is_empty() {
            format!("Nothing is on {names}: no source reaches it.")
        } else {
            format!("What is on {names} leads to no source.")
        };
        out.add(
            CHECK
                .finding(what, "Join it to a fused feed.".to_owned())
                .parts(parts)
                .runs(runs),
        );
    }
    for (device, parts) in by_device {
        let tag = ctx.device_tag(&device);
        out.add(
            CHECK
                .finding(
                    format!(
                        "{tag} is blown or taken out: nothing reaches {}.",
                        ctx.part_tags(&parts)
                    ),
                    format!("Find out why it opened before a new fuse of the same rating goes into {tag}."),
                )
                .parts([device.part])
                .parts(parts),
        );
    }
}
