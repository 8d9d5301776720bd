//! The metal of the vehicle: what lies between its ground points, and what is bolted to it.

use super::builder::Builder;
use crate::network::{BODY, Closes, Kind, LEAST_RESISTANCE};
use body::{Metal, MetalPoint};
use model::{PartKind, Sheet};

impl Builder {
    /// The points of the spots of the body at which ground points are. A spot that lies where the one before it does is
    /// the same point.
    pub(super) fn metal_points(&mut self, metal: &Metal) {
        for it in &metal.points {
            let point = if it.ohms.0 < LEAST_RESISTANCE {
                self.metal_toward(it)
            } else {
                self.point()
            };
            self.metal.push(point);
        }
    }

    /// The point towards the battery strap.
    pub(super) fn metal_toward(&self, it: &MetalPoint) -> usize {
        let toward = it.toward.and_then(|toward| self.metal.get(toward).copied());
        toward.unwrap_or(BODY)
    }

    /// The metal between those points. Each branch counts as one of the first ground point there.
    pub(super) fn body_metal(&mut self, sheet: &Sheet, metal: &Metal) {
        for (spot, it) in metal.points.iter().enumerate() {
            let ends = [
                self.metal.get(spot).copied().unwrap_or(BODY),
                self.metal_toward(it),
            ];
            let first = it.grounds.first();
            let part = first.and_then(|first| sheet.parts.keys().position(|id| id == first));
            if let Some(part) = part
                && ends[0] != ends[1]
            {
                self.link(part, Kind::Metal, ends.map(Some), it.ohms.0, Closes::Always);
            }
        }
    }

    /// An alternator is bolted to the engine: where nothing is on its case, the case is the engine block of the
    /// vehicle, or the body when the sheet has no vehicle.
    pub(super) fn alternator_cases(&mut self, sheet: &Sheet) {
        let engine = sheet
            .parts
            .values()
            .position(|part| matches!(part.is, PartKind::Vehicle(_)))
            .and_then(|vehicle| self.at(vehicle, "engine"))
            .unwrap_or(BODY);
        for (part, it) in sheet.parts.values().enumerate() {
            if matches!(it.is, PartKind::Alternator(_))
                && let Some(case) = self.at(part, "case")
                && self.wired.get(case - 1) == Some(&false)
            {
                self.join(case, engine);
            }
        }
    }
}
