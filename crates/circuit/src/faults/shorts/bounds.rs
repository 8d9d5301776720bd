//! Whether a short is cleared for certain, by three bounds at once: what most runs are done with.

use super::behind::Found;
use crate::faults::device::{Device, Edge};
use crate::network::values;
use model::quantity::Celsius;

/// By bounds alone: whether the current ends, devices at their slowest, at the least current, before the wire could be damaged at the
/// largest. Of several guards one carries its part of what the run carries at the least; which is not asked.
pub(super) fn is_cleared(
    found: &Found,
    devices: &[Device],
    guards: &[usize],
    wire: &model::Wire,
    ohms: f64,
) -> bool {
    let metal = reference::materials::data(values::material(wire));
    let rating = wire.insulation.or(Celsius(105.0));
    let limit = reference::insulation::short_limit(rating).0;
    let warmer = 1.0 + metal.coefficient * (limit - 20.0);
    let share = found.share;
    let [(strong, inner), (weak, outer)] = found.behind;
    // With its endings, which do not warm as it does: a little more than it can hold back.
    let least = weak / (outer + share * share * ohms * (warmer - 1.0));
    #[expect(clippy::cast_precision_loss, reason = "a few devices")]
    let part = least * share / guards.len() as f64;
    // From the rating, as the adiabatic law has it: I²t = k²S².
    let per_metre = match wire.stated_resistance.value() {
        Some(stated) => stated.0,
        None => metal.resistivity / values::size(wire).area().0.max(0.01),
    };
    let heat = metal.volumetric_heat * values::size(wire).area().0.max(0.01) * 1000.0;
    let begins = 1.0 + metal.coefficient * (rating.0.min(limit) - 20.0);
    // The logarithm of a quotient, from below.
    let log = 2.0 * (warmer - begins) / (warmer + begins);
    let bears = heat / per_metre * log / metal.coefficient;
    let most = share * strong / inner;
    // By the gate below at once, as a rule; else by the curve.
    let guards = || guards.iter().filter_map(|device| devices.get(*device));
    let opened_by = guards().map(|device| device.opened_by(part)).fold(0.0, f64::max);
    if opened_by * most * most < bears {
        return true;
    }
    let opens = guards().map(|device| device.opens_after(part, Edge::Slowest));
    opens.fold(0.0, f64::max) * most * most < bears
}
