//! `fuse-breaking-capacity`: a short that the device cannot interrupt.

use crate::context::Ctx;
use crate::finding::{Finding, Grade};
use crate::findings::Findings;
use crate::mends::ratings::{breaks, fit_form, has_to_break, of_form};
use crate::mends::{rating_needed, set_part};
use crate::registry::{Check, CheckGroup};
use crate::wording::{A, assumed};
use circuit::{Device, DeviceRef};
use model::kinds::supply::FuseForm;
use model::quantity::Amps;
use model::{Edit, Fact, PartId, PartKind};
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

/// Forms that break most, the smallest first.
const STRONG: [FuseForm; 3] = [FuseForm::Strip30, FuseForm::Strip51, FuseForm::Strip61];

/// A form that breaks so much, with a rating of it: the same where there is such, else the next that its loads need and the wire
/// behind it bears.
fn strong(ctx: &Ctx<'_>, device: &Device, needs: f64) -> Option<(FuseForm, Amps)> {
    let rating = device.rating?;
    let least = rating_needed(ctx, device.current.rms.abs());
    let factor = ctx.limit("fuse-wire-factor").unwrap_or(1.0);
    let mut all = device.guards.iter().map(|run| ctx.flow(*run)?.allowable);
    let bears = all.try_fold(f64::INFINITY, |bears, next| Some(bears.min(next?.0 * factor)));
    let all = STRONG.into_iter().filter(|form| breaks(*form, needs));
    let all = all.flat_map(|form| {
        family(form.into())
            .ratings
            .iter()
            .map(move |it| (form, Amps(*it)))
    });
    let all = all.filter(|(_, it)| {
        let same = (it.0 - rating.0).abs() < 1e-9;
        same || (*it >= least && bears.is_some_and(|bears| it.0 <= bears))
    });
    // The nearest, and of two the larger.
    let far = |it: Amps| (it.0 - rating.0).abs() - f64::from(u8::from(it >= rating)) * 1e-6;
    all.reduce(|a, b| if far(b.1) < far(a.1) { b } else { a })
}

/// A block for fuses of a form that breaks so much, of the same ratings.
fn other_block(ctx: &Ctx<'_>, id: PartId, needs: f64) -> Option<Edit> {
    let mut part = ctx.part(id)?.clone();
    let PartKind::Block(block) = &mut part.is else {
        return None;
    };
    let has_all = |form: &FuseForm| {
        let ratings = family((*form).into()).ratings;
        let mut fitted = block.fuses.0.iter().flatten();
        fitted.all(|rating| ratings.iter().any(|it| (it - rating.0).abs() < 1e-9))
    };
    let form = STRONG
        .into_iter()
        .find(|form| breaks(*form, needs) && has_all(form))?;
    block.form = form;
    let name = say!("mend-block-form", form = form.said(), block = &part.tag);
    Some(Edit::new(name, vec![set_part(id, part)]))
}

/// A fuse in the place of a breaker.
fn in_place_of_breaker(ctx: &Ctx<'_>, id: PartId, (form, rating): (FuseForm, Amps)) -> Option<Edit> {
    let mut part = ctx.part(id)?.clone();
    let PartKind::Breaker(_) = part.is else {
        return None;
    };
    part.is = of_form(form, rating).into();
    let name = say!(
        "mend-fuse-for-breaker",
        form = form.said(),
        rating = figure(rating.0, A),
        breaker = &part.tag
    );
    Some(Edit::new(name, vec![set_part(id, part)]))
}

/// Offers what breaks the current that comes there.
fn stronger(ctx: &Ctx<'_>, device: &Device, prospective: Amps, finding: Finding) -> Finding {
    let (part, needs) = (device.device.part, has_to_break(ctx, prospective));
    let other = say!("mend-choice-other");
    match ctx.kind(part) {
        Some(PartKind::Block(_)) => finding.mend_by_choice(other_block(ctx, part, needs), other),
        Some(PartKind::Breaker(_)) => {
            let fuse = strong(ctx, device, needs).and_then(|fits| in_place_of_breaker(ctx, part, fits));
            finding.mend_by_choice(fuse, other)
        }
        _ => {
            let fuse = strong(ctx, device, needs);
            finding.mend(fuse.and_then(|(form, rating)| fit_form(ctx, part, form, rating)))
        }
    }
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
                    .measure(prospective.0, capacity.0 * share, "A", Some("breaking-share"));
                finding = stronger(ctx, device, prospective, finding);
                if is_assumed {
                    finding.assumed.insert(assumed(&tag, "breaking"));
                }
                out.add(finding);
            }
            Some(_) => {}
        }
    }
}
