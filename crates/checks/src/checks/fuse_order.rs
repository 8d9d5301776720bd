//! `fuse-order`: a device further up that opens before the one nearest the fault.

use crate::context::Ctx;
use crate::finding::{Finding, Grade};
use crate::findings::Findings;
use crate::mends::rating_needed;
use crate::mends::ratings::{
    FORMS, breaks, fit_form, has_to_break, of_form, ratings_of, set_rating, set_ratings,
};
use crate::registry::{Check, CheckGroup};
use crate::wording::A;
use circuit::faults::{operating_band, operating_band_of};
use circuit::{Device, DeviceRef};
use model::quantity::Amps;
use model::{Edit, PartId, PartKind, RunId};
use ordered::{OrderedMap, OrderedSet};
use reference::fuses::{TimeBand, family};
use words::{figure, say};

pub(crate) static CHECK: Check = Check {
    name: "fuse-order",
    grade: Grade::Tidy,
    group: CheckGroup::Protection,
    example: "\
battery B1 agm 70Ah cranking=640A
fuse F1 regular 30A #~ fuse-order
fuse F2 maxi 30A #~ fuse-order
load L1 power=100W
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out F2.in 16mm2 2m RD
run W3 F2.out L1.+ 16mm2 2m RD
run W4 L1.- B1.- 16mm2 3m BK",
    instead: "\
battery B1 agm 70Ah cranking=640A
fuse F1 strip61 60A
fuse F2 regular 30A
load L1 power=100W
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out F2.in 16mm2 2m RD
run W3 F2.out L1.+ 16mm2 2m RD
run W4 L1.- B1.- 16mm2 3m BK",
    limits: &[],
    since: "0.1.0",
    run,
};

/// By how much a device has to be quicker at both edges of its times to be called quicker: those of forms are remembered to no better.
const QUICKER: f64 = 0.9;

/// Findings that tell of a device already: with another rating the order is another.
const TOLD: &[&str] = &["fuse-outsizes-wire", "fuse-undersized"];

fn run(ctx: &Ctx<'_>, out: &mut Findings) {
    // Outputs of one block behind the same device make one finding.
    let mut found: OrderedMap<(PartId, DeviceRef), (Vec<&Device>, Amps)> = OrderedMap::new();
    let working: OrderedSet<&DeviceRef> = ctx
        .study
        .devices
        .iter()
        .filter(|device| device.works)
        .map(|device| &device.device)
        .collect();
    for near in &ctx.study.devices {
        let works = near.works && !near.in_return && ctx.burdened_device(near);
        let Some(draws) = near.prospective.filter(|amps| works && amps.0 > 0.0) else {
            continue;
        };
        let Some(band) = operating_band(ctx.sheet, &near.device, draws) else {
            continue;
        };
        for far in before(ctx, near, &working) {
            let Some(first) = operating_band(ctx.sheet, &far, draws) else {
                continue;
            };
            if is_quicker(first, band)
                && ![near.device.part, far.part]
                    .iter()
                    .any(|part| out.has_part(*part, TOLD))
            {
                let (devices, most) = found.entry((near.device.part, far)).or_default();
                devices.push(near);
                *most = most.max(draws);
            }
        }
    }
    let all = ctx.study.devices.iter().map(|device| (&device.device, device));
    let by_name: OrderedMap<&DeviceRef, &Device> = if found.is_empty() {
        OrderedMap::new()
    } else {
        all.collect()
    };
    for ((near, far), (devices, draws)) in found {
        let other = ctx.device_tag(&far);
        let tags = ctx.device_tags(devices.iter().map(|device| &device.device));
        let order = Order {
            ctx,
            devices: &devices,
            far: by_name.get(&far).copied(),
        };
        let mends = [
            order.smaller(),
            order.larger(),
            order.quicker_form(),
            order.slower_form(),
        ];
        let finding = CHECK
            .finding(
                say!(
                    "fuse-order-what",
                    near = &tags,
                    far = &other,
                    draws = figure(draws.0, A)
                ),
                say!("fuse-order-remedy", near = &tags, far = &other),
            )
            .parts([near, far.part]);
        out.add(mends.into_iter().fold(finding, Finding::mend));
    }
}

fn is_quicker(first: TimeBand, other: TimeBand) -> bool {
    first.fastest.0 < QUICKER * other.fastest.0 && first.slowest.0 < QUICKER * other.slowest.0
}

/// Devices of one part and the one further up that is quicker than they.
struct Order<'c, 'a> {
    ctx: &'c Ctx<'a>,
    devices: &'c [&'a Device],
    far: Option<&'a Device>,
}

impl Order<'_, '_> {
    /// Whether the one further up is the quicker no more, with these as what the two are.
    fn holds(&self, near: (&PartKind, Amps), far: (&PartKind, Amps), draws: Amps) -> bool {
        let band = |(kind, rating): (&PartKind, Amps)| operating_band_of(kind, rating, draws);
        match (band(far), band(near)) {
            (Some(first), Some(other)) => !is_quicker(first, other),
            _ => false,
        }
    }
    fn far(&self) -> Option<(&Device, &PartKind, Amps)> {
        let device = self.far?;
        Some((device, self.ctx.kind(device.device.part)?, device.rating?))
    }

    /// Each of those near the fault smaller, as large as is enough and no smaller than its loads need.
    fn smaller(&self) -> Option<Edit> {
        let (_, kind, rating) = self.far()?;
        let one = |near: &&Device| {
            let (own, draws) = (self.ctx.kind(near.device.part)?, near.prospective?);
            let needs = rating_needed(self.ctx, near.current.rms.abs());
            let ratings = ratings_of(self.ctx, &near.device)
                .iter()
                .rev()
                .map(|it| Amps(*it));
            let mut ratings = ratings.filter(|it| *it >= needs && Some(*it) < near.rating);
            let fits = ratings.find(|it| self.holds((own, *it), (kind, rating), draws))?;
            Some((near.device.clone(), fits))
        };
        set_ratings(
            self.ctx,
            &self.devices.iter().map(one).collect::<Option<Vec<_>>>()?,
        )
    }

    /// Whether the wires behind the one further up bear this rating there.
    fn is_borne(&self, device: &Device, rating: Amps) -> bool {
        let factor = self.ctx.limit("fuse-wire-factor").unwrap_or(1.0);
        let bears = |run: &RunId| {
            let allowable = self.ctx.flow(*run).and_then(|flow| flow.allowable);
            allowable.is_some_and(|allowable| allowable.0 * factor >= rating.0)
        };
        device.guards.iter().all(bears)
    }
    fn holds_with_far(&self, kind: &PartKind, rating: Amps) -> bool {
        self.devices.iter().all(|near| {
            let own = self.ctx.kind(near.device.part).zip(near.rating);
            let own = own.zip(near.prospective);
            own.is_some_and(|(own, draws)| self.holds(own, (kind, rating), draws))
        })
    }

    /// The one further up as much larger as it takes, where its wires bear that.
    fn larger(&self) -> Option<Edit> {
        let (device, kind, rating) = self.far()?;
        let above = ratings_of(self.ctx, &device.device).iter().map(|it| Amps(*it));
        let mut above = above.filter(|it| *it > rating && self.is_borne(device, *it));
        let fits = above.find(|it| self.holds_with_far(kind, *it))?;
        set_rating(self.ctx, &device.device, fits)
    }

    /// The one near the fault of a form that is quicker, of the same rating.
    fn quicker_form(&self) -> Option<Edit> {
        let ([near], (_, kind, far)) = (self.devices, self.far()?) else {
            return None;
        };
        let (rating, draws) = (near.rating?, near.prospective?);
        let holds = |fuse: &PartKind| self.holds((fuse, rating), (kind, far), draws);
        self.other_form(near, holds)
    }

    /// The one further up of a form that is slower, of the same rating.
    fn slower_form(&self) -> Option<Edit> {
        let (device, _, rating) = self.far()?;
        self.other_form(device, |fuse| self.holds_with_far(fuse, rating))
    }

    fn other_form(&self, device: &Device, holds: impl Fn(&PartKind) -> bool) -> Option<Edit> {
        let PartKind::Fuse(own) = self.ctx.kind(device.device.part)? else {
            return None;
        };
        let (rating, comes) = (device.rating?, has_to_break(self.ctx, device.prospective?));
        let form = FORMS.into_iter().find(|form| {
            let made = family((*form).into()).ratings;
            let made = made.iter().any(|it| (it - rating.0).abs() < 1e-9);
            *form != own.form && made && breaks(*form, comes) && holds(&of_form(*form, rating).into())
        })?;
        fit_form(self.ctx, device.device.part, form, rating)
    }
}

/// The devices that a fault behind this one is fed through as well: those that guard the runs on its other side.
fn before(ctx: &Ctx<'_>, near: &Device, working: &OrderedSet<&DeviceRef>) -> Vec<DeviceRef> {
    let mut all: Vec<DeviceRef> = Vec::new();
    for (id, _) in ctx.runs_of(near.device.part) {
        if near.guards.contains(&id) {
            continue;
        }
        let Some(protection) = ctx.study.protection.get(&id) else {
            continue;
        };
        for device in protection.from.iter().flat_map(|from| &from.guards) {
            if working.contains(&device) && device.part != near.device.part && !all.contains(device) {
                all.push(device.clone());
            }
        }
    }
    all
}
