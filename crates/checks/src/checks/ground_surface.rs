//! `ground-surface`: a ground point that is not on bare, fixed body metal.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::grounding::where_to;
use crate::mends::set_part;
use crate::registry::{Check, CheckGroup};
use model::kinds::supply::GroundSurface;
use model::{Edit, Fact, PartId, PartKind};
use words::say;

pub(crate) static CHECK: Check = Check {
    name: "ground-surface",
    grade: Grade::Fix,
    group: CheckGroup::Ground,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A
load L1 power=200W
ground E1 painted #~ ground-surface
ground E2
run W1 B1.+ F1.in 10mm2 0.3m RD
run W2 F1.out L1.+ 10mm2 1.7m RD
run W3 L1.- E1.stud 10mm2 0.3m BK
run W4 B1.- E2.stud 10mm2 0.3m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A
load L1 power=200W
ground E1 bare
ground E2
run W1 B1.+ F1.in 10mm2 0.3m RD
run W2 F1.out L1.+ 10mm2 1.7m RD
run W3 L1.- E1.stud 10mm2 0.3m BK
run W4 B1.- E2.stud 10mm2 0.3m BK",
    limits: &[],
    since: "0.1.0",
    run,
};

/// A ground point that is used and judged, with what it is made on.
pub(crate) fn used<'a>(
    ctx: &'a Ctx<'_>,
) -> impl Iterator<Item = (PartId, &'a str, Fact<GroundSurface>)> + 'a {
    ctx.sheet.parts.iter().filter_map(|(id, part)| match &part.is {
        PartKind::Ground(ground) if ctx.touched_part(*id) && ctx.runs_of(*id).next().is_some() => {
            Some((*id, part.tag.as_str(), ground.surface))
        }
        _ => None,
    })
}

/// The ground point on bare metal in a better place.
pub(crate) fn bare(ctx: &Ctx<'_>, id: PartId) -> Option<Edit> {
    let mut part = ctx.part(id)?.clone();
    let PartKind::Ground(ground) = &mut part.is else {
        return None;
    };
    let name = match ground.surface.value() {
        Some(GroundSurface::Painted) => say!("mend-clean-ground", ground = &part.tag),
        _ => say!("mend-move-ground", ground = &part.tag),
    };
    ground.surface = Fact::Given(GroundSurface::BareMetal);
    ground.contact = Fact::Unknown;
    Some(Edit::new(name, vec![set_part(id, part)]))
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    for (id, tag, surface) in used(ctx) {
        let Some(surface) = surface.value() else { continue };
        let remedy = match surface {
            GroundSurface::Painted => say!("ground-surface-clean", ground = tag),
            GroundSurface::Hinge | GroundSurface::Trim => say!("ground-surface-move", ground = tag),
            _ => continue,
        };
        let finding = CHECK
            .finding(
                say!("ground-surface-what", ground = tag, surface = surface.word()),
                remedy,
            )
            .parts([id]);
        out.add(if surface == GroundSurface::Painted {
            finding.mend(bare(ctx, id))
        } else {
            finding.mend_by_choice(bare(ctx, id), where_to())
        });
    }
}
