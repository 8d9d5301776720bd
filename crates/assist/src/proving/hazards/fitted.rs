//! What can have been fitted otherwise than drawn.

use super::{Fault, Harm, Hazard, Universe};
use circuit::Conductor;
use model::RunId;
use model::conductor::Size;
use model::quantity::{Amps, Ohms};
use ordered::OrderedMap;

impl Universe<'_> {
    /// Wires too thin for their fuses, and fuses too large for their wires.
    pub(super) fn fitted_otherwise(&mut self) {
        let Some(factor) = checks::limit(self.settings, "fuse-wire-factor") else {
            return;
        };
        let conditions = &self.settings.conditions;
        let mut ratings: OrderedMap<RunId, f64> = OrderedMap::new();
        for (device, asked) in self.study.devices.iter().zip(&self.asks.devices) {
            let Some(rating) = device.rating.filter(|_| asked.judged) else {
                continue;
            };
            let bears = |run: &RunId| Some(self.study.runs.get(run)?.allowable?.0 * factor);
            let least = asked.guards.iter().filter_map(bears).reduce(f64::min);
            for run in &asked.guards {
                let most = ratings.entry(*run).or_insert(0.0);
                *most = most.max(rating.0);
            }
            let Some(least) = least.filter(|least| *least >= rating.0) else {
                continue;
            };
            let larger = asked.ratings.iter().copied().find(|rating| *rating > least);
            let fault = Fault::Larger {
                device: device.device.clone(),
                rating: larger.map(Amps),
            };
            self.out.push(Hazard {
                fault,
                harm: Harm::Fuse,
            });
        }
        for (run, rating) in ratings {
            let Some(it) = self.sheet.runs.get(&run) else {
                continue;
            };
            // Of wires side by side one alone may be thin.
            let beside = self.sheet.runs.iter().any(|(other, its)| {
                let ends = |run: &model::Run| {
                    let mut ends = [run.from.terminal().cloned(), run.to.terminal().cloned()];
                    ends.sort();
                    ends
                };
                *other != run && ends(its) == ends(it)
            });
            let Some(size) = it.wire.size.value().filter(|_| !beside) else {
                continue;
            };
            let with = |size: Size| {
                let mut thinner = it.clone();
                thinner.wire.size = model::Fact::Given(size);
                thinner.wire.stated_resistance = model::Fact::Unknown;
                Conductor::of(self.sheet, &thinner, conditions)
            };
            let now = Conductor::of(self.sheet, it, conditions);
            if now
                .allowable()
                .is_none_or(|allowable| allowable.0 * factor < rating)
            {
                continue;
            }
            let too_thin = |size: &Size| {
                let bears = with(*size).allowable();
                bears.is_some_and(|bears| bears.0 * factor < rating)
            };
            let thinner = size.series().filter(|other| other.area().0 < size.area().0);
            let Some(size) = thinner.filter(too_thin).last() else {
                continue;
            };
            let more = with(size).resistance(Amps(0.0)).0 - now.resistance(Amps(0.0)).0;
            if more > 0.0 {
                let more = Ohms(more);
                self.out.push(Hazard {
                    fault: Fault::Thinner { run, size, more },
                    harm: Harm::Fuse,
                });
            }
        }
    }
}
