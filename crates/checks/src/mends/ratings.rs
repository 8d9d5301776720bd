//! Other fuses in the place of those that are there: of another rating, or of another form.

use crate::context::Ctx;
use crate::mends::set_part;
use crate::wording::A;
use circuit::DeviceRef;
use model::kinds::supply::{Curve, Fuse, FuseForm};
use model::quantity::Amps;
use model::{Edit, Fact, Part, PartId, PartKind};
use ordered::OrderedMap;
use reference::fuses::family;
use words::{Saying, figure, say};

/// Puts a rating into a device of a part; nothing where the part has no such device, or none that can be changed.
fn put(part: &mut Part, device: &DeviceRef, rating: Amps) -> Option<()> {
    match (&mut part.is, &device.output) {
        (PartKind::Fuse(fuse), None) => fuse.rating = Fact::Given(rating),
        (PartKind::Breaker(breaker), None) => breaker.rating = Fact::Given(rating),
        (PartKind::Block(block), Some(output)) => {
            let number: usize = output.as_str().strip_prefix("out")?.parse().ok()?;
            *block.fuses.0.get_mut(number.checked_sub(1)?)? = Some(rating);
        }
        _ => return None,
    }
    Some(())
}

/// Gives a device this rating.
pub(crate) fn set_rating(ctx: &Ctx<'_>, device: &DeviceRef, rating: Amps) -> Option<Edit> {
    set_ratings(ctx, &[(device.clone(), rating)])
}

/// Gives devices these ratings, several of one part at once.
pub(crate) fn set_ratings(ctx: &Ctx<'_>, devices: &[(DeviceRef, Amps)]) -> Option<Edit> {
    let mut parts: OrderedMap<PartId, Part> = OrderedMap::new();
    for (device, rating) in devices {
        let mut part = match parts.remove(&device.part) {
            Some(part) => part,
            None => ctx.part(device.part)?.clone(),
        };
        put(&mut part, device, *rating)?;
        parts.insert(device.part, part);
    }
    let name = match devices {
        [] => return None,
        [(device, rating)] => say!(
            "mend-fit",
            rating = figure(rating.0, A),
            device = ctx.device_tag(device)
        ),
        all => {
            let each = |(device, rating): &(DeviceRef, Amps)| {
                say!(
                    "mend-rating-in",
                    rating = figure(rating.0, A),
                    device = ctx.device_tag(device)
                )
            };
            say!(
                "mend-fit-several",
                ratings = all.iter().map(each).collect::<Vec<Saying>>()
            )
        }
    };
    let changes = parts.into_iter().map(|(id, part)| set_part(id, part));
    Some(Edit::new(name, changes.collect()))
}

/// Ratings of the family of a device, rising.
pub(crate) fn ratings_of(ctx: &Ctx<'_>, device: &DeviceRef) -> &'static [f64] {
    match ctx.kind(device.part) {
        Some(PartKind::Fuse(fuse)) => family(fuse.form.into()).ratings,
        Some(PartKind::Block(block)) => family(block.form.into()).ratings,
        Some(PartKind::Breaker(_)) => family(BREAKERS.into()).ratings,
        _ => &[],
    }
}

/// A fuse as it is bought: of this form and rating, with the times of its form.
pub(crate) fn of_form(form: FuseForm, rating: Amps) -> Fuse {
    Fuse {
        form,
        rating: Fact::Given(rating),
        ..Fuse::default()
    }
}

/// Another fuse in the place of a fuse.
pub(crate) fn fit_form(ctx: &Ctx<'_>, id: PartId, form: FuseForm, rating: Amps) -> Option<Edit> {
    let mut part = ctx.part(id)?.clone();
    let PartKind::Fuse(fuse) = &mut part.is else {
        return None;
    };
    (fuse.form, fuse.rating) = (form, Fact::Given(rating));
    (fuse.breaking, fuse.curve) = (Fact::Unknown, Curve::default());
    let name = say!(
        "mend-fuse-form",
        form = form.said(),
        rating = figure(rating.0, A),
        device = &part.tag
    );
    Some(Edit::new(name, vec![set_part(id, part)]))
}

/// Least current that a fuse which is put in has to break, of what comes there.
pub(crate) fn has_to_break(ctx: &Ctx<'_>, prospective: Amps) -> f64 {
    prospective.0 / ctx.limit("breaking-share").unwrap_or(1.0).max(0.01)
}

/// Whether fuses of this form break so much, in amperes.
pub(crate) fn breaks(form: FuseForm, needs: f64) -> bool {
    let capacity = family(form.into()).breaking_capacity;
    capacity.is_some_and(|capacity| capacity.0 >= needs)
}

/// The form of fuse in whose ratings breakers come.
pub(crate) const BREAKERS: FuseForm = FuseForm::Maxi;

/// Forms in which fuses are bought for a job like this, those of small currents first.
pub(crate) const FORMS: [FuseForm; 5] = [
    FuseForm::Regular,
    FuseForm::Maxi,
    FuseForm::Strip30,
    FuseForm::Strip51,
    FuseForm::Strip61,
];
