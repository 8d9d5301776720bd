//! `airbag-way`: a run or a part where an airbag unfolds.

use crate::checks::mounted_on_moving::{is_ours, move_out};
use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::guarding::rests_on;
use crate::lie::{Spot, quoted, which};
use crate::mends::rerouting::reroute;
use crate::registry::{Check, CheckGroup};
use crate::wording::fact;
use model::conductor::FittedBy;
use words::{Saying, say};

pub(crate) static CHECK: Check = Check {
    name: "airbag-way",
    grade: Grade::Stop,
    group: CheckGroup::Workmanship,
    example: "\
body estate
amplifier A1 sections=\"1x 60W@4ohm min 4ohm\" place=footwell-right
speaker LS1 4ohm power=80W front-right place=dash-middle
run W1 A1.out1+ LS1.+ 2.5mm2 WH route=footwell-up-right/dash-way-right support-spacing=0.4m #~ airbag-way
run W2 A1.out1- LS1.- 2.5mm2 WHBK route=glovebox-down/glovebox-middle support-spacing=0.4m",
    instead: "\
body estate
amplifier A1 sections=\"1x 60W@4ohm min 4ohm\" place=footwell-right
speaker LS1 4ohm power=80W front-right place=dash-middle
run W1 A1.out1+ LS1.+ 2.5mm2 WH route=glovebox-down/glovebox-middle support-spacing=0.4m
run W2 A1.out1- LS1.- 2.5mm2 WHBK route=glovebox-down/glovebox-middle support-spacing=0.4m",
    limits: &[],
    since: "0.1.0",
    run,
};

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let Some(lie) = &ctx.lie else { return };
    for (id, part) in &ctx.sheet.parts {
        let place = part.place.as_deref().and_then(|name| lie.plan.place(name));
        let Some(place) = place.filter(|place| place.facts.airbag.or(false) && is_ours(part)) else {
            continue;
        };
        let mut finding = CHECK
            .finding(
                say!("airbag-way-part", part = &part.tag, place = quoted(place.said())),
                say!("airbag-way-part-remedy", part = &part.tag),
            )
            .parts([*id]);
        if place.facts.airbag.is_assumed() {
            let said = say!("assumed-of", of = quoted(place.said()), property = fact("airbag"));
            finding.assumed.insert(said);
        }
        out.add(move_out(ctx, *id, part, finding));
    }
    for (at, (id, run)) in ctx.sheet.runs.iter().enumerate() {
        let Some(walk) = lie.walk(at).filter(|_| run.fitted_by != FittedBy::Maker) else {
            continue;
        };
        let spots = lie.spots(walk);
        let met = which(&spots, |spot| spot.facts.airbag.or(false));
        let mut met: Vec<Spot<'_>> = met.into_iter().filter_map(|at| spots.get(at).copied()).collect();
        if met.is_empty() {
            continue;
        }
        let is_told = met.iter().any(|spot| spot.told);
        met.retain(|spot| spot.told || !is_told);
        let said: Vec<Saying> = met.iter().map(|spot| lie.said(spot)).collect();
        let finding = if is_told {
            CHECK
                .finding(
                    say!("airbag-way-what", run = &run.tag, spots = said),
                    say!("airbag-way-remedy", run = &run.tag),
                )
                .mend(reroute(ctx, &[*id], &|_| true))
        } else {
            let what = say!("way-untold", run = &run.tag, spots = said);
            CHECK.undecided(what, say!("way-untold-find", run = &run.tag))
        };
        let mut finding = finding.runs([*id]).spots(&met);
        for spot in met.iter().filter(|spot| spot.facts.airbag.is_assumed()) {
            rests_on(&mut finding, lie, spot, "airbag");
        }
        out.add(finding);
    }
}
