//! A fuse or breaker as it suits the run that it is put into, so that what is assumed of it brings no finding of its own.

use crate::limits::limit;
use crate::mends::ratings::{BREAKERS, FORMS};
use circuit::RunFlow;
use model::kinds::supply::FuseForm;
use model::quantity::Amps;
use model::{Fact, PartKind, Settings};
use reference::fuses::{rating_not_above, rating_not_below};

/// A part that is put into a run, with the rating that is assumed of it changed where the run asks for another: to the least that
/// is not below the assumed one and what the run carries, or the largest that its wire bears, whichever is less; of the form that
/// it has where that is made in it, else of the first form that is. What is given stays, and what is no fuse and no breaker, and
/// all where it is not known what the wire bears.
#[must_use]
pub fn suited(mut kind: PartKind, settings: &Settings, flow: &RunFlow) -> PartKind {
    let (own, rating, others): (FuseForm, Fact<Amps>, &[FuseForm]) = match &kind {
        PartKind::Fuse(fuse) => (fuse.form, fuse.rating, &FORMS),
        PartKind::Breaker(breaker) => (BREAKERS, breaker.rating, &[]),
        _ => return kind,
    };
    let (Fact::Assumed(assumed), Some(allowable)) = (rating, flow.allowable) else {
        return kind;
    };
    let share = |key, usual| limit(settings, key).unwrap_or(usual);
    let bears = allowable * share("fuse-wire-factor", 1.0);
    let carries = flow.current.rms.abs().0 / share("continuous-load-share", 0.8).max(0.01);
    let least = Amps(assumed.0.max(carries));
    let forms = || [own].into_iter().chain(others.iter().copied());
    let enough = forms()
        .filter_map(|form| Some((form, rating_not_below(form.into(), least)?)))
        .find(|it| it.1 <= bears);
    let largest = || {
        let all = forms().filter_map(|form| Some((form, rating_not_above(form.into(), bears)?)));
        // The first of those that are alike.
        all.reduce(|best, next| if next.1 > best.1 { next } else { best })
    };
    let Some((suits, amps)) = enough.or_else(largest) else {
        return kind;
    };
    match &mut kind {
        PartKind::Fuse(fuse) => (fuse.form, fuse.rating) = (suits, Fact::Assumed(amps)),
        PartKind::Breaker(breaker) => breaker.rating = Fact::Assumed(amps),
        _ => {}
    }
    kind
}
