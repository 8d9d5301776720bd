//! `blind-fixing`: something screwed where a tank, a line, a cable or an airbag may lie behind.

use crate::checks::mounted_on_moving::{is_ours, move_out};
use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::lie::quoted;
use crate::registry::{Check, CheckGroup};
use crate::wording::fact;
use model::body::Behind;
use model::mounting::MountedOn;
use model::{Fact, Part, PartKind};
use words::say;

pub(crate) static CHECK: Check = Check {
    name: "blind-fixing",
    grade: Grade::Stop,
    group: CheckGroup::Workmanship,
    example: "\
body estate
amplifier A1 sections=\"1x 60W@4ohm min 4ohm\" place=under-rear-seat-left looked-behind=no #~ blind-fixing
speaker LS1 4ohm power=80W
run W1 A1.out1+ LS1.+ 2.5mm2 1m WH
run W2 A1.out1- LS1.- 2.5mm2 1m WHBK",
    instead: "\
body estate
amplifier A1 sections=\"1x 60W@4ohm min 4ohm\" place=under-rear-seat-left looked-behind=yes
speaker LS1 4ohm power=80W
run W1 A1.out1+ LS1.+ 2.5mm2 1m WH
run W2 A1.out1- LS1.- 2.5mm2 1m WHBK",
    limits: &[],
    since: "0.1.0",
    run,
};

/// Whether a place is one where a screw must not go blindly.
pub(crate) fn is_risky(place: &body::Place) -> bool {
    !matches!(
        place.facts.behind.or(Behind::Nothing),
        Behind::Nothing | Behind::Outside
    )
}

/// Whether a part goes to the body by screws of its own, as far as is told: nothing that hangs in the wiring, sits in a
/// frame of the maker's, or is fixed to something else first.
fn is_screwed(part: &Part) -> bool {
    let hangs = matches!(
        part.is,
        PartKind::Splice(_)
            | PartKind::Plug(_)
            | PartKind::Adapter(_)
            | PartKind::InlineCapacitor(_)
            | PartKind::Vehicle(_)
            | PartKind::Alternator(_)
            | PartKind::HeadUnit(_)
    );
    let elsewhere = matches!(
        part.mounting.mounted.value(),
        Some(MountedOn::Board | MountedOn::Trim | MountedOn::Seat | MountedOn::SeatBack | MountedOn::Loose)
    );
    !(hangs || elsewhere) && part.mounting.screws.value() != Some(0)
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let Some(lie) = &ctx.lie else { return };
    for (id, part) in &ctx.sheet.parts {
        if !is_ours(part) || !is_screwed(part) {
            continue;
        }
        let Some(place) = part.place.as_deref().and_then(|name| lie.plan.place(name)) else {
            continue;
        };
        let Some(behind) = place.facts.behind.value().filter(|_| is_risky(place)) else {
            continue;
        };
        let (tag, said) = (part.tag.as_str(), quoted(place.said()));
        let mut finding = match part.mounting.looked_behind {
            Fact::Given(true) | Fact::Assumed(true) | Fact::Computed(true) => continue,
            Fact::Unknown => CHECK.undecided(
                say!(
                    "blind-fixing-unknown",
                    part = tag,
                    place = said,
                    behind = behind.said()
                ),
                say!("blind-fixing-find", part = tag),
            ),
            _ => CHECK.finding(
                say!(
                    "blind-fixing-what",
                    part = tag,
                    place = said,
                    behind = behind.said()
                ),
                say!("blind-fixing-remedy", part = tag),
            ),
        };
        if place.facts.behind.is_assumed() {
            let said = say!("assumed-of", of = quoted(place.said()), property = fact("behind"));
            finding.assumed.insert(said);
        }
        let finding = finding.parts([*id]);
        // What nobody looked for is looked for first.
        out.add(if finding.undecided {
            finding
        } else {
            move_out(ctx, *id, part, finding)
        });
    }
}
