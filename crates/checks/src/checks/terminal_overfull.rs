//! `terminal-overfull`: a terminal that takes neither the size nor the number of wires on it.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::adding::{Adding, moved, wire};
use crate::mends::grounding::{bare_metal, where_to};
use crate::mends::{set_part, set_run};
use crate::registry::{Check, CheckGroup};
use crate::wires::{allowable_at, size_of, thicken};
use crate::wording::to_lay;
use model::conductor::{Colour, Material, Size};
use model::kinds::supply::Bus;
use model::quantity::{Metres, SquareMm};
use model::{Edit, Fact, PartId, PartKind, RunId, TerminalRef};
use ordered::Sort as _;
use words::{Unit, figure, say, told};

pub(crate) static CHECK: Check = Check {
    name: "terminal-overfull",
    grade: Grade::Fix,
    group: CheckGroup::Conductors,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 60A
block D1 outputs=2 fuses=40A,40A output-takes=10mm2 #~ terminal-overfull
load L1 power=200W
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out D1.in 16mm2 1m RD
run W3 D1.out1 L1.+ 16mm2 1m RD #~ terminal-overfull
run W4 L1.- B1.- 16mm2 2m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 60A
block D1 outputs=2 fuses=40A,40A output-takes=10mm2
load L1 power=200W
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out D1.in 16mm2 1m RD
run W3 D1.out1 L1.+ 10mm2 1m RD
run W4 L1.- B1.- 16mm2 2m BK",
    limits: &["terminal-conductors", "stud-conductors"],
    since: "0.1.0",
    run,
};

/// What a terminal takes: the most wires with the name of that limit, and the largest size where it is stated.
pub(crate) fn takes(kind: &PartKind, terminal: &str) -> Option<(&'static str, Option<SquareMm>)> {
    let stated = |fact: &Fact<SquareMm>| fact.value();
    match kind {
        PartKind::Amplifier(it) if terminal == "+" || terminal == "-" => {
            Some(("terminal-conductors", stated(&it.takes)))
        }
        PartKind::Block(it) => Some((
            "terminal-conductors",
            stated(if terminal.starts_with("out") {
                &it.output_takes
            } else {
                &it.input_takes
            }),
        )),
        PartKind::Battery(_) | PartKind::Ground(_) | PartKind::Bus(_) => Some(("stud-conductors", None)),
        _ => None,
    }
}

/// Whether terminals of this kind take no more than is stated or usual.
fn may_limit(kind: &PartKind) -> bool {
    matches!(
        kind,
        PartKind::Amplifier(_)
            | PartKind::Block(_)
            | PartKind::Battery(_)
            | PartKind::Ground(_)
            | PartKind::Bus(_)
    )
}

/// Whether wire of this size goes into a terminal made for that one; gauges and metric sizes are never quite alike.
#[must_use]
pub fn fits(area: SquareMm, largest: SquareMm) -> bool {
    area.0 <= largest.0 * 1.02
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    // Only of terminals that are asked about, part by part.
    for (id, part) in &ctx.sheet.parts {
        if may_limit(&part.is) {
            judge(ctx, out, *id, &part.is);
        }
    }
}

/// The thickest wire that goes in, where it bears what it carries and what guards it.
fn thinner(ctx: &Ctx<'_>, id: RunId, largest: SquareMm) -> Option<(Size, Edit)> {
    let sizes: Vec<Size> = size_of(ctx, id).series().collect();
    let size = sizes.into_iter().rev().find(|size| fits(size.area(), largest))?;
    let factor = ctx.limit("fuse-wire-factor").unwrap_or(1.0).max(0.01);
    let guards = ctx.guards_of(id).filter(|device| ctx.counts(device));
    let guard = guards
        .filter_map(|device| device.rating)
        .map(|rating| rating.0 / factor);
    let carries = ctx.flow(id)?.current.rms.abs().0;
    let bears = allowable_at(ctx, id, size, Material::Copper)?.0;
    let name = say!("mend-lay-size", size = to_lay(size), run = ctx.run_tag(id));
    let is_enough = guard.chain([carries]).all(|amps| amps <= bears);
    let edit = thicken(ctx, name, &[(id, size)]).filter(|_| is_enough)?;
    Some((size, edit))
}

/// The wires that are too many on an output of a block, on outputs of it that are free, each with the fuse of the one.
fn to_free_output(ctx: &Ctx<'_>, at: &TerminalRef, runs: &[RunId], most: f64) -> Option<Edit> {
    let (mut part, from) = (ctx.part(at.part)?.clone(), at.terminal.as_str());
    let number = |name: &str| name.strip_prefix("out")?.parse::<usize>().ok()?.checked_sub(1);
    let own = number(from)?;
    let free: Vec<TerminalRef> = ctx
        .wiring
        .terminals_of(at.part)
        .filter(|(terminal, _)| number(terminal.name.as_str()).is_some())
        .filter(|(terminal, _)| ctx.runs_on(at.part, terminal.name.as_str()).is_empty())
        .map(|(terminal, _)| TerminalRef::new(at.part, terminal.name.as_str()))
        .collect();
    let stay = runs.len().min(most.max(0.0) as usize);
    let go = runs.get(stay..)?;
    if go.len() > free.len() {
        return None;
    }
    let mut changes = Vec::new();
    for (id, to) in go.iter().zip(&free) {
        let run = ctx.run(*id)?;
        let end = run
            .ends()
            .into_iter()
            .position(|end| end.terminal() == Some(at))?;
        changes.push(set_run(*id, moved(ctx, run, end, to.clone())));
        if let PartKind::Block(block) = &mut part.is {
            let fuses = &mut block.fuses.0;
            let (rating, slot) = (fuses.get(own).copied().flatten(), number(to.terminal.as_str())?);
            if let Some(slot) = fuses.get_mut(slot)
                && slot.is_none()
            {
                *slot = rating;
            }
        }
    }
    changes.push(set_part(at.part, part));
    let outputs: Vec<String> = free
        .iter()
        .take(go.len())
        .map(|to| ctx.terminal(to.part, to.terminal.as_str()))
        .collect();
    Some(Edit::new(
        say!("mend-split-feed", runs = ctx.run_tags(go), outputs = outputs),
        changes,
    ))
}

/// How long the lead to a bus bar beside a terminal is.
const BESIDE: Metres = Metres(0.15);

/// A bus bar beside a terminal on one lead, with the wires on it that are too many; that lead is as thick as they are together, or
/// as goes in where that bears what they carry and what guards them.
fn by_bus(
    ctx: &Ctx<'_>,
    at: &TerminalRef,
    runs: &[RunId],
    most: f64,
    largest: Option<SquareMm>,
) -> Option<Edit> {
    let stay = runs.len().min((most.max(1.0) - 1.0) as usize);
    let go = runs.get(stay..)?;
    let sum: f64 = go.iter().map(|id| size_of(ctx, *id).area().0).sum();
    let takes = |size: &Size| largest.is_none_or(|largest| fits(size.area(), largest));
    let sizes: Vec<Size> = size_of(ctx, *go.first()?).series().filter(takes).collect();
    let all = sizes.iter().find(|size| size.area().0 >= sum * 0.999);
    let size = *all.or(sizes.last())?;
    let first = *go.first()?;
    let guards = go
        .iter()
        .flat_map(|id| ctx.guards_of(*id))
        .filter(|device| ctx.counts(device));
    let factor = ctx.limit("fuse-wire-factor").unwrap_or(1.0).max(0.01);
    let guard = guards
        .filter_map(|device| device.rating)
        .map(|rating| rating.0 / factor);
    let carries = go
        .iter()
        .filter_map(|id| ctx.flow(*id))
        .map(|flow| flow.current.rms.abs().0);
    let bears = allowable_at(ctx, first, size, Material::Copper)?.0;
    if all.is_none() && !guard.chain([carries.sum()]).all(|amps| amps <= bears) {
        return None;
    }
    let places = u8::try_from(go.len() + 1).ok()?.max(4);
    let bus = Bus {
        places,
        ..Bus::default()
    };
    let mut adding = Adding::new(ctx);
    let (bus, tag) = adding.part(bus, at.part);
    let on = |place: usize| TerminalRef::new(bus, place.to_string());
    let colour = ctx.run(first)?.wire.jacket.base.unwrap_or(Colour::Black);
    adding.run(wire(at.clone(), on(1), size, Fact::Given(BESIDE), colour));
    for (place, id) in (2..).zip(go) {
        let run = ctx.run(*id)?;
        let mut ends = run.ends().into_iter();
        let end = ends.position(|end| end.terminal() == Some(at))?;
        adding
            .changes
            .push(set_run(*id, adding.moved(run, end, on(place))));
    }
    let place = ctx.terminal(at.part, at.terminal.as_str());
    let name = say!("mend-bus", bus = tag, terminal = place, runs = ctx.run_tags(go));
    (go.len() <= 23).then(|| Edit::new(name, adding.changes))
}

/// A ground point close by for the wires that are too many on a stud.
fn by_ground(ctx: &Ctx<'_>, at: &TerminalRef, runs: &[RunId], most: f64) -> Option<Edit> {
    let PartKind::Ground(_) = ctx.kind(at.part)? else {
        return None;
    };
    let stay = runs.len().min(most.max(1.0) as usize);
    let go = runs.get(stay..)?;
    let mut adding = Adding::new(ctx);
    let (ground, tag) = adding.part(bare_metal(), at.part);
    for id in go {
        let run = ctx.run(*id)?;
        let end = run
            .ends()
            .into_iter()
            .position(|end| end.terminal() == Some(at))?;
        let moved = adding.moved(run, end, TerminalRef::new(ground, "stud"));
        adding.changes.push(set_run(*id, moved));
    }
    let name = say!("mend-ground-for", ground = tag, runs = ctx.run_tags(go));
    (go.len() as f64 <= most).then(|| Edit::new(name, adding.changes))
}

fn judge(ctx: &Ctx<'_>, out: &mut Findings, part: PartId, kind: &PartKind) {
    let mut landed: Vec<(&TerminalRef, RunId)> = Vec::new();
    for (run, it) in ctx.runs_of(part) {
        let ends = it.ends().into_iter().filter_map(|end| end.terminal());
        landed.extend(ends.filter(|at| at.part == part).map(|at| (at, run)));
    }
    landed.order_by(|a, b| a.0.terminal.cmp(&b.0.terminal));
    for group in landed.chunk_by(|a, b| a.0 == b.0) {
        let Some(at) = group.first().map(|(at, _)| *at) else {
            continue;
        };
        let Some((key, largest)) = takes(kind, at.terminal.as_str()) else {
            continue;
        };
        let runs: Vec<RunId> = group.iter().map(|(_, run)| *run).collect();
        if !ctx.touched_part(at.part) && !runs.iter().any(|run| ctx.touched_run(*run)) {
            continue;
        }
        let place = || ctx.terminal(at.part, at.terminal.as_str());
        if let Some(most) = ctx.limit(key).filter(|most| runs.len() as f64 > *most) {
            out.add(
                CHECK
                    .finding(
                        say!(
                            "terminal-overfull-many",
                            count = runs.len(),
                            terminal = place(),
                            runs = ctx.run_tags(&runs),
                            most = figure(most, Unit::Bare),
                        ),
                        say!("terminal-overfull-many-remedy"),
                    )
                    .parts([at.part])
                    .runs(runs.iter().copied())
                    .measure(runs.len() as f64, most, "", Some(key))
                    .mend(to_free_output(ctx, at, &runs, most))
                    .mend_by_choice(by_ground(ctx, at, &runs, most), where_to())
                    .mend_by_choice(by_bus(ctx, at, &runs, most, largest), say!("mend-choice-buy")),
            );
            continue;
        }
        let Some(largest) = largest else { continue };
        for id in runs {
            match ctx.run(id).map(|run| run.wire.size) {
                Some(Fact::Unknown) => out.add(
                    CHECK
                        .undecided(
                            say!(
                                "terminal-overfull-unknown",
                                run = ctx.run_tag(id),
                                terminal = place(),
                            ),
                            super::fuse_outsizes_wire::find_out(ctx, id),
                        )
                        .parts([at.part])
                        .runs([id]),
                ),
                Some(Fact::Given(size) | Fact::Assumed(size) | Fact::Computed(size))
                    if !fits(size.area(), largest) =>
                {
                    let is = told(size.area().0, largest.0, Unit::SquareMillimetre);
                    let enough = thinner(ctx, id, largest);
                    let remedy = match &enough {
                        Some((size, _)) => say!(
                            "terminal-overfull-thinner-remedy",
                            size = to_lay(*size),
                            takes = is
                        ),
                        None => say!("terminal-overfull-thick-remedy", size = is),
                    };
                    out.add(
                        CHECK
                            .finding(
                                say!(
                                    "terminal-overfull-thick",
                                    run = ctx.run_tag(id),
                                    size = is,
                                    terminal = place(),
                                    takes = told(largest.0, size.area().0, Unit::SquareMillimetre),
                                ),
                                remedy,
                            )
                            .parts([at.part])
                            .runs([id])
                            .measure(size.area().0, largest.0, "mm²", None)
                            .assumes_run(ctx, id, &["size"])
                            .mend(enough.map(|(_, edit)| edit)),
                    );
                }
                _ => {}
            }
        }
    }
}
