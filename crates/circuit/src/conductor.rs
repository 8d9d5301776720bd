//! A run of wire, or an overcurrent device, by itself: what it resists and bears before it is known what it carries. For whoever
//! weighs one size or rating against another without a whole network for each.

use crate::measured::true_wire;
use crate::network::{LEAST_RESISTANCE, values};
use model::job::Conditions;
use model::quantity::{Amps, Ohms};
use model::{PartKind, Run, Sheet};

/// A run of wire with its endings, as the network takes it: what was counted or measured of it wins over its jacket.
#[derive(Clone, Copy, Debug)]
pub struct Conductor {
    at_20: f64,
    endings: [f64; 2],
    warming: values::Warming,
    allowable: Option<Amps>,
}

impl Conductor {
    /// A run as it would be on this sheet, which decides how an end at a splice is finished.
    #[must_use]
    pub fn of(sheet: &Sheet, run: &Run, conditions: &Conditions) -> Self {
        let found = true_wire(run);
        let wire = found.as_ref().unwrap_or(&run.wire);
        Self {
            at_20: values::wire_at_20(wire),
            endings: [values::ending(sheet, run, 0), values::ending(sheet, run, 1)],
            warming: values::Warming::of(wire, conditions),
            allowable: values::allowable(wire, conditions),
        }
    }

    pub(crate) fn warming(&self) -> values::Warming {
        self.warming
    }
    /// The wire alone at 20 °C, in ohms.
    pub(crate) fn at_20(&self) -> f64 {
        self.at_20
    }
    /// The wire with both endings at 20 °C, in ohms.
    pub(crate) fn whole_at_20(&self) -> f64 {
        (self.at_20 + self.endings[0] + self.endings[1]).max(LEAST_RESISTANCE)
    }

    /// Steady current that it bears where it lies; `None` where its size or insulation is not known.
    #[must_use]
    pub fn allowable(&self) -> Option<Amps> {
        self.allowable
    }

    /// Resistance of the wire alone, as warm as this steady current (root mean square) makes it.
    #[must_use]
    pub fn wire(&self, steady: Amps) -> Ohms {
        Ohms(self.at_20 * self.warming.factor(self.warming.temperature(steady.0)))
    }

    /// Resistance of each ending.
    #[must_use]
    pub fn endings(&self) -> [Ohms; 2] {
        self.endings.map(Ohms)
    }

    /// Resistance of the wire with both endings, as warm as this steady current makes it; at least 10 µΩ.
    #[must_use]
    pub fn resistance(&self, steady: Amps) -> Ohms {
        let warmer = self.wire(steady).0 - self.at_20;
        Ohms(self.whole_at_20() + warmer)
    }
}

/// The resistance of one ending of a run, 0 the end `from`, with the range in which such endings are met; one that is given is met as it
/// is given.
#[must_use]
pub fn ending_range(sheet: &Sheet, run: &Run, which: usize) -> reference::Typical<Ohms> {
    values::ending_range(sheet, run, which)
}

/// Resistance of a fuse, a breaker or a fused output of a block with a device of this rating in it; `None` for other parts.
#[must_use]
pub fn device_resistance(kind: &PartKind, rating: Amps) -> Option<Ohms> {
    let ohms = match kind {
        PartKind::Fuse(fuse) => values::fuse(fuse.form, Some(rating)),
        PartKind::Block(block) => values::fuse(block.form, Some(rating)),
        PartKind::Breaker(_) => values::breaker(Some(rating)),
        _ => return None,
    };
    Some(Ohms(ohms.max(LEAST_RESISTANCE)))
}
