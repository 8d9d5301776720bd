//! `loose-metal`: a screw, an offcut or other metal that was left lying by a part.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::set_part;
use crate::registry::{Check, CheckGroup};
use model::{Edit, Fact, PartKind};
use words::say;

pub(crate) static CHECK: Check = Check {
    name: "loose-metal",
    grade: Grade::Fix,
    group: CheckGroup::Workmanship,
    example: "\
amplifier A1 sections=\"1x 60W@4ohm min 4ohm\" loose-metal=yes #~ loose-metal
speaker LS1 4ohm power=80W
run W1 A1.out1+ LS1.+ 2.5mm2 1m WH
run W2 A1.out1- LS1.- 2.5mm2 1m WHBK",
    instead: "\
amplifier A1 sections=\"1x 60W@4ohm min 4ohm\" loose-metal=no
speaker LS1 4ohm power=80W
run W1 A1.out1+ LS1.+ 2.5mm2 1m WH
run W2 A1.out1- LS1.- 2.5mm2 1m WHBK",
    limits: &[],
    since: "0.1.0",
    run,
};

/// Whether a part is a source: what falls across its studs shorts it with nothing to clear it.
fn is_bare_source(kind: &PartKind) -> bool {
    matches!(kind, PartKind::Battery(_) | PartKind::Alternator(_))
}

/// What somebody saw lying there is told whoever left it.
fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    for (id, part) in &ctx.sheet.parts {
        if part.mounting.loose_metal.value() != Some(true) {
            continue;
        }
        let tag = part.tag.as_str();
        let source = is_bare_source(&part.is);
        let mut clean = part.clone();
        clean.mounting.loose_metal = Fact::Given(false);
        let mend = Edit::new(say!("mend-pick-up", part = tag), vec![set_part(*id, clean)]);
        let finding = CHECK.finding(
            say!(
                "loose-metal-what",
                part = tag,
                source = if source { "yes" } else { "no" }
            ),
            say!("loose-metal-remedy", part = tag),
        );
        let grade = if source { Grade::Stop } else { Grade::Fix };
        out.add(finding.grade(grade).parts([*id]).mend(Some(mend)));
    }
}
