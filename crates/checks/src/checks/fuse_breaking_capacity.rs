//! `fuse-breaking-capacity`: a short that the device cannot interrupt.

use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use crate::mends::set_part;
use crate::registry::{Check, CheckGroup};
use crate::wording::{A, assumed};
use circuit::DeviceRef;
use model::kinds::supply::FuseForm;
use model::quantity::Amps;
use model::{Edit, Fact, PartKind};
use reference::fuses::family;
use words::{figure, say, told};

pub(crate) static CHECK: Check = Check {
    name: "fuse-breaking-capacity",
    grade: Grade::Stop,
    group: CheckGroup::Protection,
    example: "\
battery B1 agm 110Ah cranking=1200A
fuse F1 maxi 60A #~ fuse-breaking-capacity
load L1 power=100W
run W1 B1.+ F1.in 16mm2 0.2m RD
run W2 F1.out L1.+ 16mm2 1m RD
run W3 L1.- B1.- 16mm2 1m BK",
    instead: "\
battery B1 agm 110Ah cranking=1200A
fuse F1 strip61 60A
load L1 power=100W
run W1 B1.+ F1.in 16mm2 0.2m RD
run W2 F1.out L1.+ 16mm2 1m RD
run W3 L1.- B1.- 16mm2 1m BK",
    limits: &["breaking-share"],
    since: "0.1.0",
    run,
};

/// What a device can break, and whether that is only what its form usually does.
fn capacity(ctx: &Ctx<'_>, device: &DeviceRef) -> Option<(Amps, bool)> {
    let (breaking, form) = match ctx.kind(device.part)? {
        PartKind::Fuse(fuse) => (fuse.breaking, Some(fuse.form)),
        PartKind::Block(block) => (Fact::Unknown, Some(block.form)),
        PartKind::Breaker(breaker) => (breaker.breaking, None),
        _ => return None,
    };
    match breaking {
        Fact::Given(amps) | Fact::Computed(amps) => Some((amps, false)),
        Fact::Assumed(amps) => Some((amps, true)),
        Fact::Unknown => family(form?.into()).breaking_capacity.map(|amps| (amps, true)),
    }
}

/// A fuse of a form that breaks so much, of the same rating.
fn other_form(ctx: &Ctx<'_>, device: &DeviceRef, needs: f64) -> Option<Edit> {
    let mut part = ctx.part(device.part)?.clone();
    let PartKind::Fuse(fuse) = &mut part.is else {
        return None;
    };
    let rating = fuse.rating.value()?;
    let form = [FuseForm::Strip30, FuseForm::Strip51, FuseForm::Strip61]
        .into_iter()
        .find(|form| {
            let family = family((*form).into());
            let breaks = family.breaking_capacity.is_some_and(|breaks| breaks.0 >= needs);
            breaks && family.ratings.iter().any(|it| (it - rating.0).abs() < 1e-9)
        })?;
    (fuse.form, fuse.breaking) = (form, Fact::Unknown);
    let name = say!(
        "mend-fuse-form",
        form = form.said(),
        rating = figure(rating.0, A),
        device = &part.tag
    );
    Some(Edit::new(name, vec![set_part(device.part, part)]))
}

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    let Some(share) = ctx.limit("breaking-share") else {
        return;
    };
    for device in &ctx.study.devices {
        let part = device.device.part;
        let is_device = matches!(
            ctx.kind(part),
            Some(PartKind::Fuse(_) | PartKind::Block(_) | PartKind::Breaker(_))
        );
        let Some(prospective) = device.prospective.filter(|amps| amps.0 > 0.0) else {
            continue;
        };
        if !is_device || device.in_return || !ctx.counts(device) || !ctx.touched_part(part) {
            continue;
        }
        let tag = ctx.device_tag(&device.device);
        match capacity(ctx, &device.device) {
            None => out.add(
                CHECK
                    .undecided(
                        say!(
                            "fuse-breaking-capacity-unknown",
                            device = &tag,
                            draws = figure(prospective.0, A),
                        ),
                        say!("fuse-breaking-capacity-find", device = &tag),
                    )
                    .parts([part]),
            ),
            Some((capacity, is_assumed)) if prospective.0 > capacity.0 * share => {
                let breaks = capacity.0 * share;
                let mut finding = CHECK
                    .finding(
                        say!(
                            "fuse-breaking-capacity-what",
                            device = &tag,
                            draws = told(prospective.0, breaks, A),
                            breaks = told(breaks, prospective.0, A),
                        ),
                        say!("fuse-breaking-capacity-remedy"),
                    )
                    .parts([part])
                    .measure(prospective.0, capacity.0 * share, "A", Some("breaking-share"))
                    .mend(other_form(ctx, &device.device, prospective.0 / share.max(0.01)));
                if is_assumed {
                    finding.assumed.insert(assumed(&tag, "breaking"));
                }
                out.add(finding);
            }
            Some(_) => {}
        }
    }
}
