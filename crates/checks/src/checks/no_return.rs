//! `no-return`: a load that is fed but has no way back to its source.

use crate::checks::no_feed::free_coil_end;
use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::grounding::{back_by, way_back};
use crate::mends::rejoining::rejoin;
use crate::registry::{Check, CheckGroup};
use crate::wiring::{BODY, Point, gives_return, live_pole, takes_feed};
use circuit::Purpose;
use model::{Edit, PartId, PartKind, RunId, TerminalName};
use ordered::{OrderedMap, OrderedSet};
use words::say;

pub(crate) static CHECK: Check = Check {
    name: "no-return",
    grade: Grade::Fix,
    group: CheckGroup::Ground,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A
load L1 power=200W #~ no-return
run W1 B1.+ F1.in 10mm2 0.3m RD
run W2 F1.out L1.+ 10mm2 1.7m RD",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A
load L1 power=200W
run W1 B1.+ F1.in 10mm2 0.3m RD
run W2 F1.out L1.+ 10mm2 1.7m RD
run W3 L1.- B1.- 10mm2 2m BK",
    limits: &[],
    since: "0.1.0",
    run,
};

/// Negative terminals of a part that uses current, with their points.
fn negatives(ctx: &Ctx<'_>, id: PartId) -> Vec<(TerminalName, Point)> {
    let Some(part) = ctx.part(id) else {
        return Vec::new();
    };
    ctx.wiring
        .terminals_of(id)
        .filter(|(terminal, _)| gives_return(&part.is, terminal.role))
        .map(|(terminal, point)| (terminal.name.clone(), point))
        .collect()
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    // Everything that could conduct counts: what is switched off or blown is no missing wire.
    let island = ctx.whole();
    let at = |point: Point| island.get(point).copied().unwrap_or(point);
    let sources: OrderedSet<PartId> = ctx
        .study
        .circuits
        .values()
        .flat_map(|circuit| circuit.feeds.iter().map(|feed| feed.source))
        .collect();
    let source_islands: OrderedMap<PartId, Point> = sources
        .iter()
        .filter_map(|source| Some((*source, at(ctx.negative_pole(*source)?))))
        .collect();
    let mut loads: OrderedMap<Point, OrderedSet<PartId>> = OrderedMap::new();
    let mut lone_sources: OrderedMap<PartId, OrderedSet<PartId>> = OrderedMap::new();
    for (load, circuit) in &ctx.study.circuits {
        if !ctx.touched_part(*load) || out.has_part(*load, &["return-through-shield"]) {
            continue;
        }
        let own: Vec<Point> = negatives(ctx, *load)
            .into_iter()
            .map(|(_, point)| at(point))
            .collect();
        for feed in &circuit.feeds {
            let Some(source) = source_islands.get(&feed.source) else {
                continue;
            };
            if own.is_empty() || own.contains(source) {
                continue;
            }
            let reaches_any =
                own.contains(&at(BODY)) || source_islands.values().any(|other| own.contains(other));
            if reaches_any {
                lone_sources.entry(feed.source).or_default().insert(*load);
            } else if let Some(own) = own.first() {
                loads.entry(*own).or_default().insert(*load);
            }
        }
    }
    let cut: OrderedSet<Point> = if ctx.settings.allowed.contains("damaged-run") {
        OrderedSet::new()
    } else {
        ctx.cut.iter().map(|point| at(*point)).collect()
    };
    for (island, loads) in loads {
        if cut.contains(&island) {
            continue;
        }
        let first = loads.first().copied().unwrap_or_default();
        let on: Vec<RunId> = negatives(ctx, first)
            .iter()
            .flat_map(|(name, _)| ctx.runs_on(first, name.as_str()))
            .collect();
        // What is joined to the return, ends that lie loose included.
        let in_island = |run: &model::Run| {
            run.ends()
                .iter()
                .filter_map(|end| end.terminal())
                .filter_map(|t| ctx.wiring.point(t.part, t.terminal.as_str()))
                .any(|point| at(point) == island)
        };
        let joined = ctx
            .sheet
            .runs
            .iter()
            .filter(|(id, run)| {
                in_island(run) && !matches!(ctx.purpose(**id), Purpose::Signal | Purpose::TurnOn)
            })
            .map(|(id, _)| *id);
        let tags = ctx.part_tags(&loads);
        let plug = super::no_feed::apart(ctx, &|point| at(point) == island);
        let what = if let Some(plug) = plug {
            say!("no-return-apart", plug = ctx.part_tag(plug), loads = &tags)
        } else if on.is_empty() && loads.len() == 1 {
            let name = negatives(ctx, first)
                .first()
                .map(|(name, _)| name.to_string())
                .unwrap_or_default();
            say!(
                "no-return-nothing",
                terminal = ctx.terminal(first, &name),
                loads = &tags
            )
        } else {
            say!("no-return-what", loads = &tags)
        };
        let mut finding = CHECK
            .finding(what, say!("no-return-remedy", loads = tags))
            .parts(loads)
            .parts(plug)
            .runs(joined)
            .mend(plug.and_then(|plug| super::silent_speaker::mate(ctx, plug)));
        if plug.is_none() {
            for run in finding.runs.clone() {
                finding = rejoin(ctx, run, finding);
            }
            let own = negatives(ctx, first);
            let ground = own
                .first()
                .and_then(|(name, _)| way_back(ctx, first, name.as_str(), feed_of(ctx, first)?));
            finding = finding.mend_by_choice(ground, back_by());
        }
        out.add(finding);
    }
    coils(ctx, out, &at, &cut);
    for (source, loads) in lone_sources {
        let cut_off = source_islands
            .get(&source)
            .is_some_and(|island| cut.contains(island));
        if cut_off {
            continue;
        }
        let tag = ctx.part_tag(source);
        out.add(
            CHECK
                .finding(
                    say!("no-return-source", source = &tag, loads = ctx.part_tags(&loads)),
                    say!("no-return-source-remedy", source = &tag),
                )
                .parts([source])
                .mend_by_choice(source_ground(ctx, source), back_by()),
        );
    }
}

/// The terminal that takes the feed of a part and has wire on it.
fn feed_of<'a>(ctx: &'a Ctx<'_>, id: PartId) -> Option<&'a str> {
    let part = ctx.part(id)?;
    let mut all = ctx.wiring.terminals_of(id);
    all.find(|(terminal, _)| {
        takes_feed(&part.is, &terminal.name, terminal.role)
            && !ctx.runs_on(id, terminal.name.as_str()).is_empty()
    })
    .map(|(terminal, _)| terminal.name.as_str())
}

/// A ground for the negative pole of a source.
fn source_ground(ctx: &Ctx<'_>, source: PartId) -> Option<Edit> {
    let kind = ctx.kind(source)?;
    let minus = if matches!(kind, PartKind::Alternator(_)) {
        "case"
    } else {
        "-"
    };
    way_back(ctx, source, minus, live_pole(kind)?)
}

/// Relay coils that are fed and have no way back.
fn coils(ctx: &Ctx<'_>, out: &mut Findings, at: &impl Fn(Point) -> Point, cut: &OrderedSet<Point>) {
    for (id, coil) in super::no_feed::coils(ctx, at) {
        if coil.fed && !coil.returned && !coil.points.iter().any(|point| cut.contains(&at(*point))) {
            let tag = ctx.part_tag(id);
            out.add(
                CHECK
                    .finding(
                        say!("no-return-coil", relay = &tag),
                        say!("no-return-coil-remedy", relay = &tag),
                    )
                    .parts([id])
                    .mend_by_choice(
                        free_coil_end(ctx, id).and_then(|(end, other)| way_back(ctx, id, end, other)),
                        back_by(),
                    ),
            );
        }
    }
}
