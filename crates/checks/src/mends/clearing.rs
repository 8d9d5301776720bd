//! What makes a short at the far end of a run end before its wire is damaged: a smaller device, one of its own for the run, one that is
//! quicker, a thicker wire there or back.

use crate::context::Ctx;
use crate::mends::adding::Adding;
use crate::mends::ratings::{FORMS, breaks, fit_form, has_to_break, of_form, ratings_of, set_ratings};
use crate::mends::{add_fuse, rating_needed};
use crate::wires::{allowable_at, fits_terminals, make_copper, size_of, thicken};
use crate::wiring::live_pole;
use crate::wording::to_lay;
use circuit::faults::{FarShort, Prospect};
use circuit::{Device, DeviceRef};
use model::conductor::{Material, Size};
use model::kinds::supply::FuseForm;
use model::quantity::{Amps, Metres, Ohms};
use model::{Edit, End, Fact, PartKind, Run, RunId};
use reference::conductors::nominal_resistance_per_metre;
use reference::fuses::family;
use words::say;

/// How far along its wire a fuse is put at the beginning of a run.
const AT_BEGINNING: Metres = Metres(0.1);

/// A short with what is known of the devices that end it.
struct Case<'c, 'a> {
    ctx: &'c Ctx<'a>,
    short: &'c FarShort,
    run: &'a Run,
    as_wired: Prospect,
    /// The devices, each with what it is, its rating and the least that its loads need.
    devices: Vec<Guard<'a>>,
}

struct Guard<'a> {
    device: &'a Device,
    kind: &'a PartKind,
    rating: Amps,
    needs: Amps,
}

/// Edits after which the short is cleared for certain, as far as bounds tell: what is least work first.
pub(crate) fn cleared(ctx: &Ctx<'_>, short: &FarShort) -> Vec<Edit> {
    let case = || {
        let run = ctx.run(short.run)?;
        let devices = short.devices.iter().map(|at| guard(ctx, short.run, at));
        Some(Case {
            ctx,
            short,
            run,
            as_wired: short.with((&run.wire, &run.wire), Ohms(0.0), &ctx.settings.conditions),
            devices: devices.collect::<Option<_>>()?,
        })
    };
    let Some(case) = case() else { return Vec::new() };
    let all = [
        case.smaller(),
        case.own_fuse(),
        case.quicker(),
        case.thicker(),
        case.thicker_strap(),
    ];
    all.into_iter().flatten().collect()
}

fn guard<'a>(ctx: &Ctx<'a>, run: RunId, at: &DeviceRef) -> Option<Guard<'a>> {
    let is_it = |it: &&Device| it.device == *at;
    let device = ctx.guards_of(run).find(is_it);
    let device = device.or_else(|| ctx.study.devices.iter().find(is_it))?;
    Some(Guard {
        device,
        kind: ctx.kind(at.part)?,
        rating: device.rating?,
        needs: rating_needed(ctx, device.current.rms.abs()),
    })
}

impl Case<'_, '_> {
    /// The short with another wire for the run, and so much less resistance elsewhere.
    fn with(&self, to: &model::Wire, less: f64) -> Prospect {
        let conditions = &self.ctx.settings.conditions;
        self.short.with((&self.run.wire, to), Ohms(less), conditions)
    }
    fn as_they_are(&self) -> Vec<(&PartKind, Amps)> {
        self.devices.iter().map(|it| (it.kind, it.rating)).collect()
    }

    /// The next smaller ratings with which it clears, no smaller than the loads need. Of several devices the largest goes first.
    fn smaller(&self) -> Option<Edit> {
        let mut devices = self.as_they_are();
        let lower = |at: usize, rating: Amps| {
            let guard = self.devices.get(at)?;
            let ratings = ratings_of(self.ctx, &guard.device.device).iter().rev();
            let next = ratings.map(|it| Amps(*it)).find(|it| *it < rating)?;
            (next >= guard.needs).then_some(next)
        };
        while !self.as_wired.is_cleared_by(&devices) {
            let lowered = devices.iter().enumerate();
            let lowered = lowered.filter_map(|(at, (_, rating))| Some((at, *rating, lower(at, *rating)?)));
            let (at, _, rating) = lowered.max_by(|a, b| a.1.0.total_cmp(&b.1.0).then(b.0.cmp(&a.0)))?;
            devices.get_mut(at)?.1 = rating;
        }
        let changed = self.devices.iter().zip(&devices);
        let changed: Vec<(DeviceRef, Amps)> = changed
            .filter(|(was, (_, rating))| *rating < was.rating)
            .map(|(was, (_, rating))| (was.device.device.clone(), *rating))
            .collect();
        set_ratings(self.ctx, &changed)
    }

    /// A fuse of its own where the run branches off: the largest that clears. Where the run begins at its device, that one is it.
    fn own_fuse(&self) -> Option<Edit> {
        let (ctx, id) = (self.ctx, self.short.run);
        let begins = 1 - self.short.at_end.min(1);
        let at = self.run.ends().into_iter().nth(begins).and_then(End::terminal)?;
        if self.devices.iter().any(|it| it.device.device.part == at.part)
            || live_pole(ctx.kind(at.part)?).is_some()
        {
            return None;
        }
        let wire = &self.run.wire;
        // What is left before it, behind the devices that are there.
        let mut piece = wire.clone();
        piece.length = Fact::Given(AT_BEGINNING.min(Metres(wire.length.value()?.0 / 2.0)));
        if !self.with(&piece, 0.0).is_cleared_by(&self.as_they_are()) {
            return None;
        }
        let factor = ctx.limit("fuse-wire-factor").unwrap_or(1.0);
        let bears = allowable_at(ctx, id, wire.size.value()?, wire.material.value()?)? * factor;
        let needs = rating_needed(ctx, ctx.flow(id)?.current.rms.abs());
        let comes = has_to_break(ctx, self.short.at_beginning(wire));
        let fits = FORMS
            .into_iter()
            .filter(|form| breaks(*form, comes))
            .find_map(|form| {
                let ratings = family(form.into()).ratings.iter().rev().map(|it| Amps(*it));
                let mut ratings = ratings.filter(|it| *it >= needs && *it <= bears);
                let rating =
                    ratings.find(|it| self.as_wired.is_cleared_by(&[(&of_form(form, *it).into(), *it)]))?;
                Some((form, rating))
            })?;
        let mut adding = Adding::new(ctx);
        let name = add_fuse(&mut adding, ctx, id, begins, AT_BEGINNING, fits)?;
        Some(Edit::new(name, adding.changes))
    }

    /// A fuse of another form in the place of the one device: of its rating where there is such, else of the largest below.
    fn quicker(&self) -> Option<Edit> {
        let [
            Guard {
                device,
                kind,
                rating,
                needs,
            },
        ] = &self.devices[..]
        else {
            return None;
        };
        let PartKind::Fuse(own) = kind else { return None };
        let comes = has_to_break(self.ctx, device.prospective?);
        let mut best: Option<(FuseForm, Amps)> = None;
        for form in FORMS {
            if (form == own.form && own.curve.0.is_empty()) || !breaks(form, comes) {
                continue;
            }
            let kind = of_form(form, *rating).into();
            let above = best.map_or(0.0, |(_, rating)| rating.0);
            let ratings = family(form.into()).ratings.iter().rev().map(|it| Amps(*it));
            let mut ratings = ratings.filter(|it| *it >= *needs && *it <= *rating && it.0 > above);
            let clears = ratings.find(|it| self.as_wired.is_cleared_by(&[(&kind, *it)]));
            best = clears.map(|rating| (form, rating)).or(best);
        }
        let (form, rating) = best?;
        fit_form(self.ctx, device.device.part, form, rating)
    }

    /// The least copper with which it clears behind the devices as they are.
    fn thicker(&self) -> Option<Edit> {
        let (ctx, id) = (self.ctx, self.short.run);
        let own = size_of(ctx, id);
        let devices = self.as_they_are();
        let mut thicker = own.series().filter(|size| size.area().0 > own.area().0 * 1.001);
        let size = thicker.find(|size| {
            let mut laid = self.run.clone();
            make_copper(&mut laid, *size);
            self.with(&laid.wire, 0.0).is_cleared_by(&devices)
        })?;
        if !fits_terminals(ctx, id, size) {
            return None;
        }
        let name = say!("mend-lay-size", size = to_lay(size), run = ctx.run_tag(id));
        thicken(ctx, name, &[(id, size)])
    }

    /// A thicker wire between a source's negative pole and the body, where that is what holds the current back.
    fn thicker_strap(&self) -> Option<Edit> {
        let ctx = self.ctx;
        let devices = self.as_they_are();
        ctx.straps().iter().copied().find_map(|id| {
            let (own, length) = (size_of(ctx, id), ctx.length(id)?);
            let flow = ctx.flow(id)?;
            let ohms = |size: Size| {
                nominal_resistance_per_metre(Material::Copper, size, flow.temperature).0 * length.0
            };
            let mut thicker = own.series().filter(|size| size.area().0 > own.area().0 * 1.001);
            let size = thicker.find(|size| {
                let less = flow.wire_resistance.0 - ohms(*size);
                self.with(&self.run.wire, less).is_cleared_by(&devices)
            })?;
            let size = Some(size).filter(|size| fits_terminals(ctx, id, *size))?;
            let name = say!("mend-lay-size", size = to_lay(size), run = ctx.run_tag(id));
            thicken(ctx, name, &[(id, size)])
        })
    }
}
