//! When overcurrent devices open, and when those that close by themselves close again.

use crate::network::{Closes, Network};
use crate::study::DeviceRef;
use model::kinds::supply::BreakerReset;
use model::quantity::{Amps, Seconds};
use model::{PartKind, Sheet};
use reference::breakers::{SELF_RESET, breaker_opened_by, breaker_time, time_on_curve};
use reference::fuses::{FuseFamily, TimeBand, opened_by, operating_time};
use serde::Serialize;

/// Which edge of the published band devices open at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Edge {
    /// As soon as they may.
    Fastest,
    /// As late as they may.
    Slowest,
}

/// Where the times of a device come from.
#[derive(Clone, Debug)]
enum Times {
    Family(FuseFamily),
    Breaker,
    /// Its own, told by the user.
    Own(Vec<(f64, Seconds)>),
}

/// How one device opens.
#[derive(Clone, Debug)]
pub(crate) struct Device {
    pub(crate) rating: f64,
    times: Times,
    /// It opens at all: it is in place and not bridged.
    pub(crate) works: bool,
    /// It closes again after this time, in seconds.
    pub(crate) resets: Option<f64>,
}

impl Device {
    /// The devices of a network, in its order.
    pub(crate) fn all(net: &Network, sheet: &Sheet) -> Vec<Self> {
        net.devices
            .iter()
            .map(|it| {
                let kind = sheet.parts.get(&it.name.part).map(|part| &part.is);
                let stand_in = it.rating.unwrap_or(Amps(30.0));
                let device = kind.and_then(|kind| Self::of(kind, stand_in));
                Self {
                    // One that is blown or taken out does its work again as soon as it is put back.
                    works: it.works
                        || net
                            .branches
                            .get(it.branch)
                            .is_some_and(|b| b.closes == Closes::Never),
                    ..device.unwrap_or(Self {
                        rating: stand_in.0,
                        times: Times::Family(FuseFamily::Regular),
                        works: false,
                        resets: None,
                    })
                }
            })
            .collect()
    }

    /// A device of a part, with its rating. `None` of parts that hold none.
    pub(crate) fn of(kind: &PartKind, rating: Amps) -> Option<Self> {
        let (times, resets) = match kind {
            PartKind::Fuse(fuse) if !fuse.curve.0.is_empty() => (Times::Own(fuse.curve.0.clone()), None),
            PartKind::Fuse(fuse) => (Times::Family(fuse.form.into()), None),
            PartKind::Block(block) => (Times::Family(block.form.into()), None),
            PartKind::Breaker(breaker) => {
                let resets = (breaker.reset == BreakerReset::Automatic).then_some(SELF_RESET.0);
                let times = if breaker.curve.0.is_empty() {
                    Times::Breaker
                } else {
                    Times::Own(breaker.curve.0.clone())
                };
                (times, resets)
            }
            // The panel of the vehicle: regular blades up to 40 A, strips above.
            PartKind::Vehicle(_) if rating.0 > 40.0 => (Times::Family(FuseFamily::Strip30), None),
            PartKind::Vehicle(_) => (Times::Family(FuseFamily::Regular), None),
            _ => return None,
        };
        Some(Self {
            rating: rating.0.max(0.01),
            times,
            works: true,
            resets,
        })
    }

    /// Whether its times are its own and not those of its form.
    pub(crate) fn is_told(&self) -> bool {
        matches!(self.times, Times::Own(_))
    }

    /// The band of its times at a current, in seconds.
    pub(crate) fn band(&self, amps: f64) -> TimeBand {
        let multiple = amps.abs() / self.rating;
        match &self.times {
            _ if !self.works => TimeBand {
                fastest: Seconds(f64::INFINITY),
                slowest: Seconds(f64::INFINITY),
            },
            Times::Family(family) => operating_time(*family, multiple),
            Times::Breaker => breaker_time(multiple),
            Times::Own(curve) => {
                let time = time_on_curve(curve, multiple);
                TimeBand {
                    fastest: time,
                    slowest: time,
                }
            }
        }
    }

    /// A time by which it has opened for certain, in seconds: not below its slowest, and found at once.
    pub(crate) fn opened_by(&self, amps: f64) -> f64 {
        let multiple = amps / self.rating;
        match &self.times {
            _ if !self.works => f64::INFINITY,
            Times::Family(family) => opened_by(*family, multiple).0,
            Times::Breaker => breaker_opened_by(multiple).0,
            Times::Own(curve) => time_on_curve(curve, multiple).0,
        }
    }

    /// The time after which it opens at a current, in seconds; infinite where it holds.
    pub(crate) fn opens_after(&self, amps: f64, edge: Edge) -> f64 {
        let band = self.band(amps);
        match edge {
            Edge::Fastest => band.fastest.0,
            Edge::Slowest => band.slowest.0,
        }
    }
}

/// The band of operating times of a device at a current, from the fastest to the slowest; infinite where it holds. `None` where the
/// sheet has no such device.
#[must_use]
pub fn operating_band(sheet: &Sheet, device: &DeviceRef, current: Amps) -> Option<TimeBand> {
    let part = sheet.parts.get(&device.part)?;
    operating_band_of(&part.is, rating(&part.is, device)?, current)
}

/// The same of a device of this part that had another rating.
#[must_use]
pub fn operating_band_of(kind: &PartKind, rating: Amps, current: Amps) -> Option<TimeBand> {
    Device::of(kind, rating).map(|it| it.band(current.0))
}

/// The rating of a device.
fn rating(kind: &PartKind, device: &DeviceRef) -> Option<Amps> {
    match kind {
        PartKind::Fuse(fuse) => fuse.rating.value(),
        PartKind::Breaker(breaker) => breaker.rating.value(),
        PartKind::Block(block) => {
            let output = device.output.as_ref()?.as_str().strip_prefix("out")?;
            let at = output.parse::<usize>().ok()?.checked_sub(1)?;
            block.fuses.0.get(at).copied().flatten()
        }
        PartKind::Vehicle(vehicle) => match device.output.as_ref()?.as_str() {
            "+" => vehicle.main_fuse.value(),
            "30" => vehicle.permanent_fuse.value(),
            "15" => vehicle.switched_fuse.value(),
            _ => None,
        },
        _ => None,
    }
}
