//! `feed-unprotected`: a live conductor without any overcurrent device between it and a source.

use crate::checks::fuse_in_return;
use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::adding::without_run;
use crate::mends::nearer::fuse_near_source;
use crate::mends::set_part;
use crate::registry::{Check, CheckGroup};
use crate::unprotected::{Lack, Stretch};
use crate::wiring::TieKind;
use model::kinds::supply::DeviceState;
use model::{Edit, PartKind, RunId};
use words::say;

pub(crate) static CHECK: Check = Check {
    name: "feed-unprotected",
    grade: Grade::Stop,
    group: CheckGroup::Protection,
    example: "\
battery B1 agm 70Ah cranking=640A
load L1 power=200W
run W1 B1.+ L1.+ 10mm2 2m RD #~ feed-unprotected
run W2 L1.- B1.- 10mm2 2m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 40A
load L1 power=200W
run W1 B1.+ F1.in 10mm2 0.3m RD
run W2 F1.out L1.+ 10mm2 1.7m RD
run W3 L1.- B1.- 10mm2 2m BK",
    limits: crate::unprotected::REACH,
    since: "0.1.0",
    run,
};

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    for stretch in &ctx.stretches {
        if stretch.lack != Lack::NoDevice || fuse_in_return::explained(ctx, stretch) {
            continue;
        }
        // A live wire that only lies loose is told as that, with what guards it.
        let lies_loose = stretch.serves.is_empty()
            && !ctx.settings.allowed.contains("loose-end")
            && stretch
                .runs
                .iter()
                .filter_map(|run| ctx.run(*run))
                .any(|run| super::loose_end::has_loose_end(ctx, run));
        if lies_loose {
            continue;
        }
        let sources = ctx.part_tags(&stretch.sources);
        let runs = ctx.run_tags(&stretch.runs);
        let (what, remedy) = if !stretch.bridged.is_empty() {
            (
                say!(
                    "feed-unprotected-bridged",
                    runs = runs,
                    sources = sources,
                    devices = ctx.device_tags(&stretch.bridged),
                ),
                say!("feed-unprotected-bridged-remedy"),
            )
        } else if !stretch.bypassed.is_empty() {
            (
                say!(
                    "feed-unprotected-bypassed",
                    runs = runs,
                    sources = &sources,
                    devices = ctx.device_tags(&stretch.bypassed),
                ),
                say!("feed-unprotected-bypassed-remedy", sources = sources),
            )
        } else {
            (
                say!("feed-unprotected-what", runs = runs, sources = &sources),
                say!("feed-unprotected-remedy", sources = sources),
            )
        };
        out.add(
            CHECK
                .finding(what, remedy)
                .parts(
                    stretch
                        .bridged
                        .iter()
                        .chain(&stretch.bypassed)
                        .map(|device| device.part),
                )
                .runs(stretch.runs.iter().copied())
                .mend(
                    unbridge(ctx, stretch)
                        .or_else(|| no_way_around(ctx, stretch))
                        .or_else(|| fuse_near_source(ctx, stretch)),
                ),
        );
    }
}

/// The bridged devices put in order.
fn unbridge(ctx: &Ctx<'_>, stretch: &Stretch) -> Option<Edit> {
    let changes: Vec<_> = stretch
        .bridged
        .iter()
        .filter_map(|device| {
            let mut part = ctx.part(device.part)?.clone();
            match &mut part.is {
                PartKind::Fuse(fuse) => fuse.state = DeviceState::Intact,
                PartKind::Breaker(breaker) => breaker.state = DeviceState::Intact,
                _ => return None,
            }
            Some(set_part(device.part, part))
        })
        .collect();
    let tags: Vec<String> = stretch
        .bridged
        .iter()
        .map(|device| ctx.device_tag(device))
        .collect();
    (!changes.is_empty()).then(|| Edit::new(say!("mend-fit-anew", devices = tags), changes))
}

/// The one wire of a stretch that leads from one side of a device to the other, taken out.
fn no_way_around(ctx: &Ctx<'_>, stretch: &Stretch) -> Option<Edit> {
    let device = stretch.bypassed.first()?;
    let sides: Vec<usize> = ctx
        .wiring
        .ties()
        .iter()
        .filter(|tie| matches!(&tie.kind, TieKind::Device(it, _) if it == device))
        .flat_map(|tie| tie.ends)
        .collect();
    let around = |run: &RunId| {
        ctx.wiring
            .ends(*run)
            .is_some_and(|ends| ends.iter().all(|end| sides.contains(end)) && ends.first() != ends.last())
    };
    let mut all = stretch.runs.iter().filter(|run| around(run));
    let run = all.next().filter(|_| stretch.bypassed.len() == 1)?;
    let name = say!("mend-take-out", run = ctx.run_tag(*run));
    all.next()
        .is_none()
        .then(|| Edit::new(name, vec![without_run(*run)]))
}
