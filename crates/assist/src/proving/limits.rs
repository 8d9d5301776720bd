//! Between which numbers a reading of a sound system lies, and when a fault is seen by it for certain.
//!
//! A sound system need not be as its sheet has it ([`super::Spread`]). So every reading is worked out again with each group of
//! values at its least and at its most; what these move it by, added up, is how far it may lie beside its number, and what the
//! meter itself errs by comes on top:
//!
//! | measured | by so much of the reading | and by so much | why |
//! | --- | --- | --- | --- |
//! | volts up to 2 V | 1 % | 10 mV | a hand meter errs by 0.5 % and a digit; contacts of the tips (common practice) |
//! | volts above | 1 % | 50 mV | |
//! | amps by clamp | 4 % | 0.4 A | a clamp for direct current drifts by some 0.3 A (common practice) |
//! | ohms | 2 % | 0.3 Ω | leads of 0.1 to 0.5 Ω, which are touched together first (common practice) |
//!
//! **Ohms through equipment.** Electronics are not seen by the prediction and are seen by a meter. So what is foretold to be open, or of many
//! ohms, may read as little as with [`UNSEEN`] beside it.
//!
//! **What is seen for certain.** A system with a fault in it lies beside its sheet as well. A reading *exposes* a fault if all that it may read with
//! the fault lies outside of all that it may read without: what the fault itself moves it by counts by [`COUNTED`] of it, and both
//! ranges must not meet.

use circuit::{MOST_OHMS, Probe};

/// A number of a reading; an open circuit is the most that a meter shows.
pub(super) type Value = f64;

/// Ohms that electronics across two points may have: less is hardly met (from memory: inputs and voltage dividers of a kilohm and more;
/// this leaves room for several).
pub const UNSEEN: f64 = 100.0;
/// The share that counts of what a fault moves a reading by: its size, and the current through it, are no better known than the rest.
pub const COUNTED: f64 = 0.85;

/// Between which numbers a reading of a sound system lies; `None` where there is no end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    /// The least.
    pub least: f64,
    /// The most; `None` where an open circuit is in order too.
    pub most: Option<f64>,
}

impl Limits {
    /// Whether a reading lies within; `None` is an open circuit.
    #[must_use]
    pub fn hold(&self, read: Option<f64>) -> bool {
        match (read, self.most) {
            (Some(number), Some(most)) => (self.least..=most).contains(&number),
            (Some(number), None) => number >= self.least,
            (None, most) => most.is_none(),
        }
    }
}

/// How a reading may lie beside its number.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Beside {
    pub(super) down: f64,
    pub(super) up: f64,
}

/// What the meter itself errs by at a number.
fn meter(probe: &Probe, number: f64) -> f64 {
    let size = number.abs();
    match probe {
        Probe::Volts(..) | Probe::Tone(..) => 0.01 * size + if size <= 2.0 { 0.01 } else { 0.05 },
        Probe::Amps(_) => 0.04 * size + 0.4,
        Probe::Ohms(..) => 0.02 * size + 0.3,
    }
}

fn is_ohms(probe: &Probe) -> bool {
    matches!(probe, Probe::Ohms(..))
}

/// The least that may be read where so many ohms are foretold.
fn with_unseen(probe: &Probe, number: f64) -> f64 {
    if is_ohms(probe) {
        let ohms = number.max(0.0);
        ohms * UNSEEN / (ohms + UNSEEN)
    } else {
        number
    }
}

/// The limits of a reading that is foretold as `normal`.
pub(super) fn limits(probe: &Probe, normal: Value, beside: Beside) -> Limits {
    if is_ohms(probe) && normal >= MOST_OHMS {
        return Limits {
            least: UNSEEN,
            most: None,
        };
    }
    let own = meter(probe, normal);
    let least = normal - beside.down - own;
    let most = normal + beside.up + own;
    match probe {
        // A clamp shows a size, and ohms have no sign.
        Probe::Amps(_) => Limits {
            least: least.max(0.0),
            most: Some(most),
        },
        Probe::Ohms(..) => Limits {
            least: with_unseen(probe, least),
            most: Some(most),
        },
        _ => Limits {
            least,
            most: Some(most),
        },
    }
}

/// Whether a reading with these limits exposes a fault with which it is foretold as `faulty`.
pub(super) fn exposes(probe: &Probe, normal: Value, beside: Beside, limits: &Limits, faulty: Value) -> bool {
    if is_ohms(probe) && faulty >= MOST_OHMS {
        return limits.most.is_some_and(|most| UNSEEN > most);
    }
    let own = meter(probe, faulty);
    if faulty < normal {
        // From an open circuit there is no way to count by.
        let counted = if is_ohms(probe) && normal >= MOST_OHMS {
            faulty
        } else {
            normal - (normal - faulty) * COUNTED
        };
        return counted + beside.up + own < limits.least;
    }
    let counted = normal + (faulty - normal) * COUNTED;
    let least = with_unseen(probe, counted - beside.down - own);
    limits.most.is_some_and(|most| least > most)
}

#[cfg(test)]
mod tests {
    use super::*;
    use model::{PartId, RunId, TerminalRef};

    fn at(name: &str) -> TerminalRef {
        TerminalRef::new(PartId(1), name)
    }

    #[test]
    fn a_fault_is_exposed_where_both_ranges_do_not_meet() {
        let volts = Probe::Volts(at("+"), at("-"));
        let beside = Beside { down: 0.2, up: 0.1 };
        let its = limits(&volts, 12.5, beside);
        // 12.5 V less 0.2 V, less 1 % and 50 mV of the meter.
        assert!((its.least - 12.125).abs() < 1e-9 && its.hold(Some(12.2)) && !its.hold(Some(12.1)));
        // 11.9 V may read 12.15 V; 11.5 V reads 11.93 V at the most: 85 % of a volt less, 0.1 V, 1 % and 50 mV more.
        assert!(!exposes(&volts, 12.5, beside, &its, 11.9));
        assert!(exposes(&volts, 12.5, beside, &its, 11.5));
    }

    #[test]
    fn electronics_that_nobody_foretold_are_no_fault() {
        let ohms = Probe::Ohms(at("+"), at("-"));
        let open = limits(&ohms, MOST_OHMS, Beside::default());
        assert!(open.hold(None) && open.hold(Some(150.0)) && !open.hold(Some(1.0)));
        assert!(exposes(&ohms, MOST_OHMS, Beside::default(), &open, 0.5));
        assert!(!exposes(&ohms, MOST_OHMS, Beside::default(), &open, 120.0));
        let wire = limits(&ohms, 0.01, Beside::default());
        assert!(!wire.hold(None) && wire.hold(Some(0.2)));
        assert!(exposes(&ohms, 0.01, Beside::default(), &wire, MOST_OHMS));
        // 85 Ω of a coil may be seen beside as much again.
        let coil = limits(&ohms, 85.0, Beside::default());
        assert!(coil.hold(Some(50.0)) && !coil.hold(Some(20.0)));
        assert!(limits(&Probe::Amps(RunId(1)), 0.1, Beside::default()).least <= 0.0);
    }
}
