//! `false-size`: a wire that conducts less than its jacket says.

use crate::context::Ctx;
use crate::finding::{Finding, Grade};
use crate::findings::Findings;
use crate::registry::{Check, CheckGroup};
use crate::wires::thicken;
use crate::wording::{and_then, fact, size as wire_size, to_lay};
use circuit::{Measured, measured};
use model::conductor::Material;
use model::quantity::SquareMm;
use model::{Run, RunId};
use reference::materials::data;
use words::{Saying, Unit, say, told};

pub(crate) static CHECK: Check = Check {
    name: "false-size",
    grade: Grade::Fix,
    group: CheckGroup::Conductors,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A
load L1 power=200W
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out L1.+ 16mm2 1.7m RD strands=80 strand-diameter=0.4mm #~ false-size
run W3 L1.- B1.- 16mm2 2m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A
load L1 power=200W
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out L1.+ 16mm2 1.7m RD strands=126 strand-diameter=0.4mm
run W3 L1.- B1.- 16mm2 2m BK",
    limits: &["size-share"],
    since: "0.1.0",
    run,
};

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let Some(share) = ctx.limit("size-share") else {
        return;
    };
    for (id, run) in &ctx.sheet.runs {
        if let Some(found) = measured(run) {
            judge(ctx, out, *id, run, &found, share);
        }
        let missing = missing(run);
        if !missing.is_empty() {
            let what = say!("false-size-unknown", run = &run.tag, missing = &missing);
            let find = say!("find-out", what = missing, of = &run.tag);
            out.add(CHECK.undecided(what, find).runs([*id]));
        }
    }
}

/// What lacks for a measurement that was begun to tell something.
fn missing(run: &Run) -> Vec<Saying> {
    let it = &run.laying;
    let (counted, measured) = (it.strand.is_unknown(), it.strands.is_unknown());
    let mut missing = Vec::new();
    match (measured, counted) {
        (true, false) => missing.push(fact("strands")),
        (false, true) => missing.push(fact("strand-diameter")),
        _ => {}
    }
    match (it.tested_drop.is_unknown(), it.tested_current.is_unknown()) {
        (true, false) => missing.push(fact("tested-drop")),
        (false, true) => missing.push(fact("tested-current")),
        (false, false) if run.wire.length.is_unknown() => missing.push(fact("length")),
        _ => {}
    }
    missing
}

fn judge(ctx: &Ctx<'_>, out: &mut Findings, id: RunId, run: &Run, found: &Measured, share: f64) {
    let Some(size) = run.wire.size.value() else { return };
    let (tag, claimed) = (run.tag.as_str(), size.area().0);
    // A length that nobody knows makes nothing of a drop.
    let like = found.conducts_like.filter(|_| !run.wire.length.is_unknown());
    // What is called clad aluminium is held against that; `clad-feed` says whether it is enough.
    let resists = |material| data(material).resistivity;
    let stated = resists(Material::Copper) / resists(run.wire.material.or(Material::Copper));
    let short = |area: SquareMm, of: f64| (area.0 < of * share).then_some((area.0, of));
    let thin = found.counted.and_then(|area| short(area, claimed));
    let weak = like.and_then(|area| short(area, claimed * stated));
    let area = |value: f64, beside: f64| told(value, beside, Unit::SquareMillimetre);
    let (what, value, of) = match (thin, weak) {
        (Some((counted, of)), _) => {
            let what = say!(
                "false-size-counted",
                run = tag,
                size = wire_size(size),
                counted = area(counted, of)
            );
            let also = weak.map(|(like, of)| say!("false-size-also", like = area(like, of)));
            (and_then(what, also), counted, of)
        }
        (None, Some((like, of))) => {
            let what = say!(
                "false-size-like",
                run = tag,
                size = wire_size(size),
                like = area(like, of)
            );
            (what, like, of)
        }
        (None, None) => return,
    };
    let material = found
        .material
        .filter(|material| Some(*material) != run.wire.material.value());
    let what = and_then(
        what,
        material.map(|it| say!("false-size-material", material = it.said())),
    );
    let finding: Finding = CHECK
        .finding(what, say!("false-size-remedy", size = to_lay(size)))
        .runs([id])
        .measure(value, of * share, "mm²", Some("size-share"))
        .assumes_run(ctx, id, &["size", "length"]);
    let name = say!("mend-lay-size", size = to_lay(size), run = tag);
    out.add(finding.mend(thicken(ctx, name, &[(id, size)])));
}
