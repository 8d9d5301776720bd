//! What a short would do if a run were of another wire, or other devices guarded it: by bounds, for whoever looks for one that serves.

use super::{Drive, FarShort};
use crate::faults::device::{Device, Edge};
use crate::heat::Heating;
use crate::network::values;
use model::PartKind;
use model::job::Conditions;
use model::quantity::{Amps, Celsius, Ohms};

impl FarShort {
    /// The most that a short where the run begins could draw, through whatever is put in there.
    #[must_use]
    pub fn at_beginning(&self, wire: &model::Wire) -> Amps {
        let Drive { share, behind, .. } = self.drives.first().copied().unwrap_or_default();
        let (voltage, resistance) = behind[0];
        Amps(voltage / (resistance - share * share * values::wire_at_20(wire)).max(1e-6))
    }

    /// The same short, were the run of the wire `to` in place of `was`, and all others of `less` ohms less.
    #[must_use]
    pub fn with(
        &self,
        (was, to): (&model::Wire, &model::Wire),
        less: Ohms,
        conditions: &Conditions,
    ) -> Prospect {
        let heat = Heating::of(to, conditions);
        let (cold, laid) = (values::wire_at_20(was), values::wire_at_20(to));
        let case = |drive: &Drive| {
            let Drive {
                share,
                begins,
                behind: [strongest, weakest],
            } = *drive;
            let saved = share * share * (cold - laid) + less.0;
            let draws = |(voltage, resistance): (f64, f64), at: f64| {
                let warmer = share * share * laid * (heat.factor(Celsius(at)) - 1.0);
                share * voltage / (resistance - saved + warmer).max(1e-6)
            };
            let (most, least) = (draws(strongest, begins), draws(weakest, heat.limit.0));
            (least, heat.until(begins, heat.limit.0, most * most))
        };
        Prospect {
            cases: self.drives.iter().map(case).collect(),
        }
    }
}

/// Bounds of a short, for whoever asks what other devices would do about it.
#[derive(Clone, Debug, PartialEq)]
pub struct Prospect {
    /// For the short at each end: the least current through the run in A, and the soonest that it is damaged in s.
    cases: Vec<(f64, f64)>,
}

impl Prospect {
    /// Whether the short is ended before the run is damaged, were these the devices that guard it, each with its rating.
    ///
    /// By bounds alone, so that yes is certain: the devices at their slowest, at the least current that the weakest battery drives
    /// through the wire at the limit of its insulation, against the wire at the most that the strongest drives, without losing heat.
    /// Several devices carry an equal part each at the least.
    #[must_use]
    pub fn is_cleared_by(&self, devices: &[(&PartKind, Amps)]) -> bool {
        let ends = |(least, lasts): &(f64, f64)| {
            #[expect(clippy::cast_precision_loss, reason = "a few devices")]
            let part = least / devices.len().max(1) as f64;
            let opens = devices.iter().map(|(kind, rating)| {
                let device = Device::of(kind, *rating);
                device.map_or(f64::INFINITY, |it| it.opens_after(part, Edge::Slowest))
            });
            opens.fold(0.0, f64::max) < *lasts
        };
        !devices.is_empty() && self.cases.iter().all(ends)
    }
}
