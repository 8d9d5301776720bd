//! When overcurrent devices open, and when those that close by themselves close again.

use crate::network::Network;
use model::kinds::supply::BreakerReset;
use model::quantity::Seconds;
use model::{PartKind, Sheet};
use reference::breakers::{SELF_RESET, breaker_time, time_on_curve};
use reference::fuses::{FuseFamily, TimeBand, operating_time};

/// Which edge of the published band devices open at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
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
                let rating = it.rating.map(|amps| amps.0);
                let kind = sheet.parts.get(&it.name.part).map(|part| &part.is);
                let (times, resets) = match kind {
                    Some(PartKind::Fuse(fuse)) if !fuse.curve.0.is_empty() => {
                        (Times::Own(fuse.curve.0.clone()), None)
                    }
                    Some(PartKind::Fuse(fuse)) => (Times::Family(fuse.form.into()), None),
                    Some(PartKind::Block(block)) => (Times::Family(block.form.into()), None),
                    Some(PartKind::Breaker(breaker)) => {
                        let resets = (breaker.reset == BreakerReset::Automatic).then_some(SELF_RESET.0);
                        let times = if breaker.curve.0.is_empty() {
                            Times::Breaker
                        } else {
                            Times::Own(breaker.curve.0.clone())
                        };
                        (times, resets)
                    }
                    // The panel of the vehicle: regular blades up to 40 A, strips above.
                    _ if rating.is_some_and(|amps| amps > 40.0) => (Times::Family(FuseFamily::Strip30), None),
                    _ => (Times::Family(FuseFamily::Regular), None),
                };
                Self {
                    rating: rating.unwrap_or(30.0).max(0.01),
                    times,
                    works: it.works,
                    resets,
                }
            })
            .collect()
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

    /// The time after which it opens at a current, in seconds; infinite where it holds.
    pub(crate) fn opens_after(&self, amps: f64, edge: Edge) -> f64 {
        let band = self.band(amps);
        match edge {
            Edge::Fastest => band.fastest.0,
            Edge::Slowest => band.slowest.0,
        }
    }
}
