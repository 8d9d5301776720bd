//! What a run carries at the least, as a share of what it carries with the thickest wires: the bound rests on it.

use super::measure::{AtPoint, Measured};
use super::search::Search;
use model::kinds::sound::SupplyLaw;
use model::kinds::supply::LoadLaw;
use model::{PartId, PartKind};

/// What loads that do not draw by resistance may draw less when others do, over what those do.
const LEFT: f64 = 0.1;

impl Search<'_> {
    /// Whether a part draws less at a lower voltage.
    fn is_resistive(&self, part: PartId) -> bool {
        match self.bench.laid.parts.get(&part).map(|part| &part.is) {
            Some(PartKind::Load(load)) => load.law == LoadLaw::Resistance,
            Some(PartKind::Amplifier(amplifier)) => amplifier.supply == SupplyLaw::Unregulated,
            _ => false,
        }
    }

    /// The least share of its current with the thickest wires that a load can draw: loads that draw by resistance draw less at
    /// a lower voltage, by as much as may be lost. What they then leave the others is a part of that part.
    pub(super) fn least_share(&self, top: &Measured) -> f64 {
        let mut lost: f64 = 0.0;
        for (at, point) in top.points.iter().enumerate() {
            for (load, drop) in &point.drops {
                let (true, Some(volts)) = (self.is_resistive(*load), point.volts.get(load)) else {
                    continue;
                };
                let limit = self.most_lost(at, *load).unwrap_or(0.0);
                lost = lost.max((limit - drop).max(0.0) / volts.max(1.0));
            }
        }
        (1.0 - 1.1 * lost).max(0.5)
    }

    /// By variable, the least share of its current with the thickest wires that it can carry: of what loads draw by resistance as much
    /// less as they can; of what others draw [`LEFT`] of that, since the less those draw, the higher is the voltage of all.
    pub(super) fn least_shares(&self, top: &Measured) -> Vec<f64> {
        let less = 1.0 - self.shrink;
        let share_at = |var: usize, point: &AtPoint| {
            // No load draws more than any run carries that leads to it.
            let draws = |leaf: &usize| {
                let on_way = self
                    .shape
                    .loads
                    .iter()
                    .zip(&point.burst)
                    .filter(|(loads, _)| loads.contains(leaf));
                on_way.map(|(_, amps)| *amps).fold(f64::INFINITY, f64::min)
            };
            let by_resistance = |leaf: &&usize| {
                // Of what is known by its branch alone nothing is known.
                let part = self.shape.leaves.get(**leaf).and_then(|(_, part)| *part);
                part.is_none_or(|part| self.is_resistive(part))
            };
            let drawn: f64 = self.shape.loads[var]
                .iter()
                .filter(by_resistance)
                .map(draws)
                .sum();
            let of_all = (drawn / point.burst[var].max(1e-9)).clamp(0.0, 1.0);
            1.0 - less * (of_all + LEFT * (1.0 - of_all))
        };
        let least = |var: usize| {
            if !self.shape.fits[var] {
                return self.shrink;
            }
            top.points
                .iter()
                .map(|point| share_at(var, point))
                .fold(1.0, f64::min)
        };
        (0..self.vars().len()).map(least).collect()
    }
}
