//! `mounting-loose`: a part that lies loose, or whose fixing holes have no screws.

use crate::checks::mounted_on_moving::{fixed_to_body, may_screw};
use crate::context::Ctx;
use crate::finding::{Finding, Grade};
use crate::findings::Findings;
use crate::mends::set_part;
use crate::registry::{Check, CheckGroup};
use crate::wording::and_then;
use model::mounting::MountedOn;
use model::{Edit, Fact, Part, PartId};
use words::say;

pub(crate) static CHECK: Check = Check {
    name: "mounting-loose",
    grade: Grade::Fix,
    group: CheckGroup::Workmanship,
    example: "\
amplifier A1 sections=\"1x 60W@4ohm min 4ohm\"
speaker LS1 4ohm power=80W fixing-holes=4 screws=2 #~ mounting-loose
run W1 A1.out1+ LS1.+ 2.5mm2 1m WH
run W2 A1.out1- LS1.- 2.5mm2 1m WHBK",
    instead: "\
amplifier A1 sections=\"1x 60W@4ohm min 4ohm\"
speaker LS1 4ohm power=80W fixing-holes=4 screws=4 square=yes
run W1 A1.out1+ LS1.+ 2.5mm2 1m WH
run W2 A1.out1- LS1.- 2.5mm2 1m WHBK",
    limits: &[],
    since: "0.1.0",
    run,
};

/// What somebody told of a mounting was looked at: it is judged whoever fitted the part.
fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    for (id, part) in &ctx.sheet.parts {
        let mounting = &part.mounting;
        let (holes, screws) = (mounting.holes.value(), mounting.screws.value());
        let tag = part.tag.as_str();
        let crooked = mounting.square.value() == Some(false);
        if mounting.mounted.value() == Some(MountedOn::Loose) {
            let finding = CHECK.finding(
                say!("mounting-loose-lies", part = tag),
                say!("mounting-loose-fix", part = tag),
            );
            // Where to is told by its place; without one there is everything to choose.
            let stays = part.place.is_some() && may_screw(ctx, part);
            let fixed = stays.then(|| fixed_to_body(*id, part));
            out.add(finding.parts([*id]).mend(fixed));
            continue;
        }
        let skew = || say!("mounting-loose-crooked", part = tag);
        match (holes, screws) {
            (Some(holes), Some(screws)) if screws < holes => {
                let what = say!(
                    "mounting-loose-what",
                    part = tag,
                    missing = usize::from(holes - screws),
                    holes = usize::from(holes)
                );
                let what = and_then(what, crooked.then(skew));
                // With half of them it can come off; with more it holds, and rattles.
                let grave = u16::from(screws) * 2 <= u16::from(holes);
                let finding = CHECK.finding(what, say!("mounting-loose-remedy", part = tag));
                let finding = finding.grade(if grave { Grade::Fix } else { Grade::Tidy });
                out.add(screwed(finding, *id, part, holes));
            }
            (Some(holes), None) if holes > 0 => out.add(ask(*id, part, "screws")),
            (None, Some(_)) => out.add(ask(*id, part, "holes")),
            (holes, _) if crooked => {
                let finding = CHECK.finding(skew(), say!("mounting-loose-square", part = tag));
                let holes = holes.or(screws).unwrap_or(0);
                out.add(screwed(finding.grade(Grade::Tidy), *id, part, holes));
            }
            _ => {}
        }
    }
}

/// A finding on a part, with the mend that gives each hole its screw and sets it square.
fn screwed(finding: Finding, id: PartId, part: &Part, holes: u8) -> Finding {
    let mut sound = part.clone();
    if holes > 0 {
        sound.mounting.screws = Fact::Given(holes);
    }
    sound.mounting.square = Fact::Given(true);
    let mend = Edit::new(say!("mend-screw", part = &part.tag), vec![set_part(id, sound)]);
    finding.parts([id]).mend(Some(mend))
}

/// Asks for what was left out when the rest was looked at.
fn ask(id: PartId, part: &Part, missing: &'static str) -> Finding {
    let tag = part.tag.as_str();
    CHECK
        .undecided(
            say!("mounting-loose-unknown", part = tag, missing = missing),
            say!("mounting-loose-count", part = tag, missing = missing),
        )
        .grade(Grade::Tidy)
        .parts([id])
}
