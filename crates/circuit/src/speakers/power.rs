//! What an output can deliver into a load, from the powers its maker states.

use model::kinds::sound::HeadUnit;
use model::quantity::{Ohms, Watts};
use model::written::StatedPower;
use ordered::Sort as _;

use super::element::sane;

/// Powers stated at loads, sorted by load, with the least load allowed.
#[derive(Clone, Debug, Default)]
pub(crate) struct Stated {
    /// (load in Ω, power in W), loads rising, each once.
    rows: Vec<(f64, f64)>,
    /// Least load allowed.
    pub(crate) minimum: Option<f64>,
}

impl Stated {
    pub(crate) fn new(all: &[StatedPower], minimum: Option<Ohms>) -> Self {
        let mut rows: Vec<(f64, f64)> = all
            .iter()
            .map(|stated| (stated.load.0, stated.power.0))
            .filter(|(load, power)| load.is_finite() && power.is_finite() && *load > 0.0 && *power > 0.0)
            .collect();
        rows.order_by(|a, b| a.0.total_cmp(&b.0).then(b.1.total_cmp(&a.1)));
        rows.dedup_by(|a, b| a.0 == b.0);
        Self {
            rows,
            minimum: minimum.map(|it| it.0).filter(|it| it.is_finite() && *it > 0.0),
        }
    }

    pub(crate) fn head(head: &HeadUnit) -> Self {
        let load = Ohms(sane(head.rated_load.or(Ohms(4.0)).0, 4.0, 0.1, 64.0));
        let power = Watts(sane(head.power.or(Watts(20.0)).0, 20.0, 0.1, 1000.0));
        Self::new(&[StatedPower { power, load }], head.minimum_load.value())
    }

    /// Power into a load, in watts.
    ///
    /// Between stated loads straight on doubly logarithmic paper: an output is limited by voltage towards high loads
    /// and by current towards low ones, and this goes smoothly from one to the other. Above the largest stated load the
    /// voltage is the limit: power ∝ 1/R. Below the least stated load nothing is promised: the power stated there is
    /// taken as it is. `None` when nothing is stated or the load is not a number above zero.
    pub(crate) fn watts(&self, load: f64) -> Option<f64> {
        let (first, last) = (self.rows.first()?, self.rows.last()?);
        if !load.is_finite() || load <= 0.0 {
            return None;
        }
        if load <= first.0 {
            return Some(first.1);
        }
        if load >= last.0 {
            return Some(last.1 * last.0 / load);
        }
        self.rows.windows(2).find_map(|pair| match *pair {
            [(r0, p0), (r1, p1)] if load <= r1 => {
                Some(p0 * libm::pow(p1 / p0, libm::log(load / r0) / libm::log(r1 / r0)))
            }
            _ => None,
        })
    }

    /// Whether a load lies below every stated one, by more than rounding.
    pub(crate) fn is_below(&self, load: f64) -> bool {
        self.rows
            .first()
            .is_some_and(|(least, _)| load < least * (1.0 - 1e-9))
    }

    /// RMS voltage at full power into a load.
    pub(crate) fn volts(&self, load: f64) -> f64 {
        self.watts(load).map_or(0.0, |power| libm::sqrt(power * load))
    }

    /// RMS voltage of the output with next to no load: the highest it gives.
    pub(crate) fn open_volts(&self) -> f64 {
        self.rows
            .iter()
            .map(|(load, power)| libm::sqrt(load * power))
            .fold(0.0, f64::max)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn stated(all: &[(f64, f64)]) -> Stated {
        let all: Vec<_> = all
            .iter()
            .map(|(load, power)| StatedPower {
                power: Watts(*power),
                load: Ohms(*load),
            })
            .collect();
        Stated::new(&all, None)
    }

    #[test]
    fn power_follows_what_is_stated_and_the_voltage_limit_above_it() {
        let it = stated(&[(4.0, 75.0), (2.0, 110.0)]);
        assert_eq!(it.watts(4.0), Some(75.0));
        assert_eq!(it.watts(2.0), Some(110.0));
        // Voltage limit (P = U²/R): twice the load, half the power.
        assert_eq!(it.watts(8.0), Some(37.5));
        // Halfway on logarithmic paper: geometric mean of both powers at the geometric mean of both loads.
        let middle = it.watts(libm::sqrt(8.0)).unwrap_or_default();
        assert!((middle - libm::sqrt(75.0 * 110.0)).abs() < 1e-9);
        assert_eq!(it.watts(1.0), Some(110.0));
        assert!(it.is_below(1.0) && !it.is_below(2.0));
        assert_eq!(it.watts(0.0), None);
        assert_eq!(it.watts(f64::NAN), None);
    }
}
