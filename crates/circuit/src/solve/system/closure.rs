//! How well an answer balances: Kirchhoff's current law and the conservation of power.

use super::System;
use crate::solve::law::{Element, Law};

/// How well an answer balances.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Closure {
    /// Largest sum of currents at a node, in amperes.
    pub residual: f64,
    /// Largest current in any element, in amperes.
    pub largest: f64,
    /// Power given by sources, in watts.
    pub given: f64,
    /// Power taken by everything else, in watts.
    pub taken: f64,
}

/// Currents below this do not count as the measure of a balance: 1 mA is below what any part on a sheet draws that matters.
const LEAST_CURRENT: f64 = 1e-3;

impl System {
    /// Holds the answer against Kirchhoff's current law and the conservation of power.
    #[must_use]
    pub fn closure(&self, elements: &[Element]) -> Closure {
        let mut closure = Closure::default();
        let mut sums = vec![0.0; self.nodes];
        for (at, element) in elements.iter().enumerate() {
            let i = self.current[at];
            sums[element.nodes[0]] += i;
            sums[element.nodes[1]] -= i;
            closure.largest = closure.largest.max(i.abs());
            let mut book = |power: f64| {
                if power >= 0.0 {
                    closure.taken += power;
                } else {
                    closure.given -= power;
                }
            };
            let v = self.across(element);
            let inner = match element.law {
                Law::Source { emf, .. } | Law::Battery { emf, .. } | Law::Limited { emf, .. } => Some(emf),
                _ => None,
            };
            match inner {
                // What a source turns to heat inside is booked apart from what it gives.
                Some(emf) => {
                    book((v - emf) * i);
                    book(emf * i);
                }
                None => book(v * i),
            }
        }
        closure.residual = sums.iter().fold(0.0_f64, |most, r| {
            if r.is_finite() {
                most.max(r.abs())
            } else {
                f64::INFINITY
            }
        });
        closure
    }
}

impl Closure {
    /// The residual over the largest current, or over 1 mA where everything is smaller.
    #[must_use]
    pub fn relative_residual(&self) -> f64 {
        self.residual / self.largest.max(LEAST_CURRENT)
    }
    /// Power given less power taken, over the power given, or over 1 mW where less is given.
    #[must_use]
    pub fn relative_power(&self) -> f64 {
        (self.given - self.taken) / self.given.max(LEAST_CURRENT)
    }
}
