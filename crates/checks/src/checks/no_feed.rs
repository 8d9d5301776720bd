//! `no-feed`: something that uses current and that no source reaches.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::leads::{battery_feeds, new_feeds, turn_on_leads};
use crate::mends::rejoining::rejoin;
use crate::mends::set_part;
use crate::registry::{Check, CheckGroup};
use crate::wiring::{BODY, Point, TieKind, live_pole, takes_feed};
use circuit::DeviceRef;
use model::kinds::supply::DeviceState;
use model::{Edit, PartId, PartKind, Role, RunId, TerminalName, TerminalRef};
use ordered::{OrderedMap, OrderedSet};
use words::say;

pub(crate) static CHECK: Check = Check {
    name: "no-feed",
    grade: Grade::Fix,
    group: CheckGroup::Conductors,
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
    let mut dead: OrderedMap<Point, OrderedSet<(PartId, TerminalName)>> = OrderedMap::new();
    for (id, part) in ctx.sheet.parts.iter().filter(|(id, _)| ctx.touched_part(**id)) {
        for (terminal, point) in ctx.wiring.terminals_of(*id) {
            if takes_feed(&part.is, &terminal.name, terminal.role) && !ctx.live.contains(&point) {
                dead.entry(at(point))
                    .or_default()
                    .insert((*id, terminal.name.clone()));
            }
        }
    }
    let cut: OrderedSet<Point> = if ctx.settings.allowed.contains("damaged-run") {
        OrderedSet::new()
    } else {
        ctx.cut.iter().map(|point| at(*point)).collect()
    };
    // A coil behind a blown fuse is told with the fuse.
    let whole = ctx.wiring.islands(|tie| !tie.ends.contains(&BODY));
    let anywhere = |point: Point| whole.get(point).copied().unwrap_or(point);
    for (id, coil) in coils(ctx, &anywhere) {
        if coil.returned && !coil.fed && !coil.points.iter().any(|point| cut.contains(&at(*point))) {
            let tag = ctx.part_tag(id);
            let finding = CHECK
                .finding(
                    say!("no-feed-coil", relay = &tag),
                    say!("no-feed-coil-remedy", relay = &tag),
                )
                .parts([id]);
            let leads = free_coil_end(ctx, id).map(|(end, _)| turn_on_leads(ctx, &TerminalRef::new(id, end)));
            let offered = leads.unwrap_or_default().into_iter();
            out.add(offered.fold(finding, |finding, lead| {
                finding.mend_by_choice(Some(lead), say!("mend-choice-output"))
            }));
        }
    }
    // Several dead islands behind one blown fuse, or one plug that is apart, are one cause.
    let mut by_device: OrderedMap<DeviceRef, OrderedSet<PartId>> = OrderedMap::new();
    let mut by_plug: OrderedMap<PartId, OrderedSet<PartId>> = OrderedMap::new();
    let mut by_parts: OrderedMap<OrderedSet<PartId>, OrderedSet<(PartId, TerminalName)>> = OrderedMap::new();
    let mut blown_at: OrderedMap<Point, &DeviceRef> = OrderedMap::new();
    for tie in ctx.wiring.ties() {
        if let TieKind::Device(device, _) = &tie.kind
            && is_open(&tie.kind)
        {
            for end in tie.ends {
                blown_at.entry(at(end)).or_insert(device);
            }
        }
    }
    let mut apart_at: OrderedMap<Point, PartId> = OrderedMap::new();
    for (id, part) in &ctx.sheet.parts {
        if matches!(&part.is, PartKind::Plug(plug) if !plug.mated) {
            for (_, point) in ctx.wiring.terminals_of(*id) {
                apart_at.entry(at(point)).or_insert(*id);
            }
        }
    }
    for (point, terminals) in dead {
        if cut.contains(&point) {
            continue;
        }
        let parts: OrderedSet<PartId> = terminals.iter().map(|(part, _)| *part).collect();
        if let Some(device) = blown_at.get(&point) {
            by_device.entry((*device).clone()).or_default().extend(parts);
        } else if let Some(plug) = apart_at.get(&point) {
            by_plug.entry(*plug).or_default().extend(parts);
        } else {
            by_parts.entry(parts).or_default().extend(terminals);
        }
    }
    for (plug, parts) in by_plug {
        let tag = ctx.part_tag(plug);
        out.add(
            CHECK
                .finding(
                    say!("no-feed-apart", plug = &tag, parts = ctx.part_tags(&parts)),
                    say!("no-feed-apart-remedy", plug = &tag),
                )
                .parts([plug])
                .parts(parts)
                .mend(super::silent_speaker::mate(ctx, plug)),
        );
    }
    for (parts, terminals) in by_parts {
        let runs: Vec<RunId> = terminals
            .iter()
            .flat_map(|(part, name)| ctx.runs_on(*part, name.as_str()))
            .collect();
        let names: Vec<String> = terminals
            .iter()
            .map(|(part, name)| ctx.terminal(*part, name.as_str()))
            .collect();
        let what = if runs.is_empty() {
            say!(
                "no-feed-nothing",
                terminals = names,
                parts = ctx.part_tags(&parts)
            )
        } else {
            say!("no-feed-nowhere", terminals = names)
        };
        let mut finding = CHECK
            .finding(what, say!("no-feed-remedy"))
            .parts(parts)
            .runs(runs.iter().copied());
        if let ([(part, name)], []) = (&terminals.iter().collect::<Vec<_>>()[..], &runs[..]) {
            let to = TerminalRef::new(*part, name.as_str());
            let mut feeds = new_feeds(ctx, &to);
            if feeds.is_empty() {
                feeds = battery_feeds(ctx, &to);
            }
            for feed in feeds {
                finding = finding.mend_by_choice(Some(feed), say!("mend-choice-feed"));
            }
        }
        if let [run] = runs[..] {
            finding = rejoin(ctx, run, finding);
        }
        out.add(finding);
    }
    blown(ctx, out, by_device);
}

/// Devices that are blown or taken out, with what is dead behind them. One that hides nothing, since another way feeds
/// the same, is out all the same.
fn blown(ctx: &Ctx<'_>, out: &mut Findings, mut dead: OrderedMap<DeviceRef, OrderedSet<PartId>>) {
    for (id, part) in &ctx.sheet.parts {
        let state = match &part.is {
            PartKind::Fuse(fuse) => fuse.state,
            PartKind::Breaker(breaker) => breaker.state,
            _ => continue,
        };
        let is_out = matches!(state, DeviceState::Open | DeviceState::Missing);
        let wired = !ctx.runs_on(*id, "in").is_empty() && !ctx.runs_on(*id, "out").is_empty();
        let device = DeviceRef {
            part: *id,
            output: None,
        };
        if is_out && wired && ctx.touched_part(*id) {
            dead.entry(device).or_default();
        }
    }
    for (device, parts) in dead {
        let tag = ctx.device_tag(&device);
        let mut intact = ctx.part(device.part).cloned();
        match intact.as_mut().map(|part| &mut part.is) {
            Some(PartKind::Fuse(fuse)) => fuse.state = DeviceState::Intact,
            Some(PartKind::Breaker(breaker)) => breaker.state = DeviceState::Intact,
            _ => intact = None,
        }
        out.add(
            CHECK
                .finding(
                    say!("no-feed-blown", device = &tag, parts = ctx.part_tags(&parts)),
                    say!("no-feed-blown-remedy", device = &tag),
                )
                .parts([device.part])
                .parts(parts)
                .mend(intact.map(|part| {
                    Edit::new(
                        say!("mend-fit-anew", devices = vec![tag]),
                        vec![set_part(device.part, part)],
                    )
                })),
        );
    }
}

/// A plug whose halves are apart with a terminal on one of these points.
pub(crate) fn apart(ctx: &Ctx<'_>, on: &dyn Fn(Point) -> bool) -> Option<PartId> {
    ctx.sheet.parts.iter().find_map(|(id, part)| {
        let PartKind::Plug(plug) = &part.is else {
            return None;
        };
        if plug.mated {
            return None;
        }
        ctx.wiring
            .terminals_of(*id)
            .any(|(_, point)| on(point))
            .then_some(*id)
    })
}

/// How the coil of a relay is joined.
pub(crate) struct Coil {
    pub(crate) points: [Point; 2],
    /// One end can be made live, by a feed or a turn-on output.
    pub(crate) fed: bool,
    /// One end reaches the body or a negative pole.
    pub(crate) returned: bool,
}

/// The end of a relay's coil that has no wire, with the one that has.
pub(crate) fn free_coil_end(ctx: &Ctx<'_>, relay: PartId) -> Option<(&'static str, &'static str)> {
    let bare = |end: &str| ctx.runs_on(relay, end).is_empty();
    match [bare("85"), bare("86")] {
        [true, false] => Some(("85", "86")),
        [false, true] => Some(("86", "85")),
        _ => None,
    }
}

/// Coils of the relays that switch something, by islands in which everything that can close is closed.
pub(crate) fn coils(ctx: &Ctx<'_>, at: &impl Fn(Point) -> Point) -> Vec<(PartId, Coil)> {
    let relays: Vec<PartId> = ctx
        .sheet
        .parts
        .iter()
        .filter(|(id, part)| {
            matches!(part.is, PartKind::Relay(_))
                && ctx.touched_part(**id)
                && !ctx.runs_on(**id, "30").is_empty()
                && !(ctx.runs_on(**id, "87").is_empty() && ctx.runs_on(**id, "87a").is_empty())
        })
        .map(|(id, _)| *id)
        .collect();
    if relays.is_empty() {
        return Vec::new();
    }
    let mut back: OrderedSet<Point> = OrderedSet::from([at(BODY)]);
    let mut forth: OrderedSet<Point> = ctx.live.iter().map(|point| at(*point)).collect();
    for (id, part) in &ctx.sheet.parts {
        if live_pole(&part.is).is_some() {
            back.extend(ctx.negative_pole(*id).map(at));
        }
        for (terminal, point) in ctx.wiring.terminals_of(*id) {
            match terminal.role {
                Role::TurnOnOut => forth.insert(at(point)),
                // Without a ground point's own hold on the body in the islands, its stud counts as well.
                Role::Body => back.insert(at(point)),
                _ => continue,
            };
        }
    }
    relays
        .into_iter()
        .filter_map(|id| {
            let points = [ctx.wiring.point(id, "85")?, ctx.wiring.point(id, "86")?];
            let any = |set: &OrderedSet<Point>| points.iter().any(|point| set.contains(&at(*point)));
            Some((
                id,
                Coil {
                    points,
                    fed: any(&forth),
                    returned: any(&back),
                },
            ))
        })
        .collect()
}
