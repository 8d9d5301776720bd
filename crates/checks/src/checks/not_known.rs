//! `not-known`: values that decide something and that nobody knows.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::registry::{Check, CheckGroup};
use crate::wording::fact;
use circuit::Purpose;
use model::PartKind;
use model::job::Wire;
use model::property::PropertySet;
use ordered::OrderedMap;
use words::{Saying, say};

pub(crate) static CHECK: Check = Check {
    name: "not-known",
    grade: Grade::Tidy,
    group: CheckGroup::Data,
    example: "\
amplifier A1 sections=\"1x 60W@4ohm min 4ohm\" cut-off=? #~ not-known
speaker LS1 4ohm power=80W front-left
run W1 A1.out1+ LS1.+ 2.5mm2 3m WH
run W2 A1.out1- LS1.- 2.5mm2 WHBK length=? #~ not-known",
    instead: "\
amplifier A1 sections=\"1x 60W@4ohm min 4ohm\" cut-off=10V
speaker LS1 4ohm power=80W front-left
run W1 A1.out1+ LS1.+ 2.5mm2 3m WH
run W2 A1.out1- LS1.- 2.5mm2 3m WHBK",
    limits: &[],
    since: "0.1.0",
    run,
};

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    // What is not known of a part of each kind as it comes.
    let mut of_kinds: OrderedMap<&str, Vec<&str>> = OrderedMap::new();
    for (id, part) in &ctx.sheet.parts {
        if !ctx.touched_part(*id) || ctx.runs_of(*id).next().is_none() || out.is_undecided_part(*id) {
            continue;
        }
        let word = part.is.word();
        let usual = of_kinds.entry(word).or_insert_with(|| {
            let usual = PartKind::from_word(word);
            usual.map(|usual| usual.not_known()).unwrap_or_default()
        });
        let unknown: Vec<Saying> = part
            .is
            .not_known()
            .iter()
            .filter(|name| !usual.contains(name))
            .map(|name| fact(name))
            .collect();
        if !unknown.is_empty() {
            out.add(
                CHECK
                    .finding(
                        say!("not-known-what", of = &part.tag, properties = &unknown),
                        say!("find-out", what = unknown, of = &part.tag),
                    )
                    .parts([*id]),
            );
        }
    }
    let usual = Wire::default().not_known();
    for (id, run) in &ctx.sheet.runs {
        if !ctx.touched_run(*id) || ctx.purpose(*id) == Purpose::Nothing || out.is_undecided_run(*id) {
            continue;
        }
        let unknown: Vec<Saying> = run
            .wire
            .not_known()
            .iter()
            .filter(|name| !usual.contains(name))
            .map(|name| fact(name))
            .collect();
        if !unknown.is_empty() {
            out.add(
                CHECK
                    .finding(
                        say!("not-known-what", of = &run.tag, properties = &unknown),
                        say!("find-out", what = unknown, of = &run.tag),
                    )
                    .runs([*id]),
            );
        }
    }
    names_of_no_place(ctx, out);
}

/// Names of places and ways that the told body does not have: what hinges on them stays as if nobody had told them.
fn names_of_no_place(ctx: &Ctx<'_>, out: &mut Findings) {
    let Some(lie) = &ctx.lie else { return };
    let find = || say!("not-known-place-find");
    for (id, part) in &ctx.sheet.parts {
        let place = part
            .place
            .as_deref()
            .filter(|name| lie.plan.place(name).is_none());
        if let Some(place) = place {
            let what = say!("not-known-place", part = &part.tag, place = place);
            out.add(CHECK.finding(what, find()).parts([*id]));
        }
    }
    for (at, (id, run)) in ctx.sheet.runs.iter().enumerate() {
        if run.route.is_empty() || lie.walk(at).is_some() {
            continue;
        }
        let known = |name: &String| lie.plan.place(name).is_some() || lie.plan.passage(name).is_some();
        let names: Vec<&str> = run
            .route
            .iter()
            .filter(|name| !known(name))
            .map(String::as_str)
            .collect();
        if !names.is_empty() {
            let what = say!("not-known-route", run = &run.tag, names = names);
            out.add(CHECK.finding(what, find()).runs([*id]));
        }
    }
}
