//! Operating times of circuit breakers with a bimetal, and of any device whose own times are told.
//!
//! Remembered, not read, and wide: default data that a user replaces by the times of a data sheet
//! (`curve=1.35:600,2:20,6:1`), never a hard pass or fail.

use crate::Source;
use crate::fuses::{Gate, TimeBand, band, gate, latest};
use crate::interpolate::log_log;
use model::quantity::Seconds;

/// Operating times of thermal breakers for vehicles, by rising multiple of the rating.
pub const BREAKER_GATES: &[Gate] = &[
    gate(1.0, 14_400.0, None),
    gate(1.35, 60.0, Some(3600.0)),
    gate(2.0, 8.0, Some(60.0)),
    gate(3.0, 3.0, Some(20.0)),
    gate(4.0, 1.5, Some(10.0)),
    gate(6.0, 0.6, Some(4.0)),
];

/// Where [`BREAKER_GATES`] come from.
pub const BREAKER_SOURCE: Source =
    Source::memory("SAE J553 and usual trip curves of thermal breakers for 12 V; low confidence");

/// How long a breaker that closes by itself stays open: 15 s, of a range from 5 s to a minute (common practice, from memory).
pub const SELF_RESET: Seconds = Seconds(15.0);

/// Band of operating times of a thermal breaker at a multiple of its rating; as [`crate::fuses::operating_time`].
#[must_use]
pub fn breaker_time(multiple: f64) -> TimeBand {
    band(BREAKER_GATES, BREAKER_GATES, multiple)
}

/// A time by which a thermal breaker has opened for certain; as [`crate::fuses::opened_by`].
#[must_use]
pub fn breaker_opened_by(multiple: f64) -> Seconds {
    latest(BREAKER_GATES, multiple)
}

/// Operating time at a multiple of the rating by a device's own curve: straight on doubly logarithmic paper between its points,
/// never below the first of them, and with equal I²t beyond the last. A curve without points never opens.
#[must_use]
pub fn time_on_curve(curve: &[(f64, Seconds)], multiple: f64) -> Seconds {
    let never = Seconds(f64::INFINITY);
    let Some(first) = curve.first() else { return never };
    if multiple.is_nan() || multiple < first.0 {
        return never;
    }
    let mut before = *first;
    for &(at, time) in curve {
        if multiple <= at {
            let rows = [(before.0, before.1.0), (at, time.0)];
            return Seconds(log_log(&rows, multiple, 0.0, -2.0));
        }
        before = (at, time);
    }
    Seconds(log_log(&[(before.0, before.1.0)], multiple, 0.0, -2.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_curve_goes_through_its_points() {
        let curve = [(1.35, Seconds(600.0)), (2.0, Seconds(5.0)), (6.0, Seconds(0.1))];
        let at = |multiple: f64| time_on_curve(&curve, multiple).0;
        for (multiple, time) in curve {
            assert!((at(multiple) - time.0).abs() < 1e-9 * time.0, "{multiple}");
        }
        assert_eq!(at(1.34), f64::INFINITY);
        assert_eq!(at(f64::NAN), f64::INFINITY);
        // Half way on doubly logarithmic paper: geometric means.
        let middle = libm::sqrt(2.0 * 6.0);
        assert!((at(middle) - libm::sqrt(5.0 * 0.1)).abs() < 1e-9);
        // Twice the last current, a quarter of the time.
        assert!((at(12.0) - 0.025).abs() < 1e-12);
        assert_eq!(time_on_curve(&[], 5.0).0, f64::INFINITY);
    }

    #[test]
    fn a_band_has_its_fast_edge_first_and_falls() {
        let mut before = (f64::INFINITY, f64::INFINITY);
        for step in 0..200 {
            let it = breaker_time(1.0 + 0.1 * f64::from(step));
            let multiple = 1.0 + 0.1 * f64::from(step);
            assert!(
                breaker_opened_by(multiple).0 >= it.slowest.0 * (1.0 - 1e-12),
                "{multiple}"
            );
            for family in crate::fuses::FuseFamily::ALL {
                let slowest = crate::fuses::operating_time(*family, multiple).slowest.0;
                let latest = crate::fuses::opened_by(*family, multiple).0;
                assert!(latest >= slowest * (1.0 - 1e-12), "{family:?} {multiple}");
            }
            assert!(it.fastest <= it.slowest && it.fastest.0 <= before.0 && it.slowest.0 <= before.1);
            before = (it.fastest.0, it.slowest.0);
        }
        assert_eq!(breaker_time(0.99).fastest.0, f64::INFINITY);
    }
}
