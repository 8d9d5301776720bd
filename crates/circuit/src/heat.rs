//! How a conductor warms in time: C dT/dt = I² R(T) − (T − T_ambient)/R_th, adiabatic at first and steady at last.
//!
//! R_th is the one that makes rated current give rated temperature ([`reference::ampacity`]), C that of the conductor alone by the
//! heat per volume of [`reference::materials`]: what the insulation takes up comes on top and is left out, which errs to the careful
//! side. Copper is counted by its nominal size both in R and in C, as the published k of I²t = k²S² does; where a resistance is
//! stated, that one heats. R(T) is straight in T, so that the law is a linear equation at constant current and is solved exactly.

use crate::network::values::{self, Warming};
use model::Wire;
use model::job::Conditions;
use model::quantity::{Amps, Celsius, OhmsPerMetre, Seconds};
use reference::{insulation, materials};

/// How one conductor warms.
#[derive(Clone, Copy, Debug)]
pub struct Heating {
    warming: Warming,
    /// Pace at 1 A and 20 °C, in K/s, without any loss of heat.
    pace: f64,
    /// What its insulation bears for long.
    pub rating: Celsius,
    /// What its insulation bears for a short time; above it is damaged.
    pub limit: Celsius,
    /// Where the conductor begins to melt.
    pub melts: Celsius,
}

/// A linear law dT/dt = a + b T.
#[derive(Clone, Copy)]
struct Slope {
    a: f64,
    b: f64,
}

impl Heating {
    /// Of a wire in its surroundings.
    #[must_use]
    pub fn of(wire: &Wire, conditions: &Conditions) -> Self {
        let metal = materials::data(values::material(wire));
        let area = values::size(wire).area().0.max(0.01);
        let per_metre = match wire.stated_resistance.value() {
            Some(OhmsPerMetre(stated)) => stated,
            None => metal.resistivity / area,
        };
        let rating = wire.insulation.or(Celsius(105.0));
        Self {
            warming: Warming::of(wire, conditions),
            // A metre of 1 mm² is 1000 mm³.
            pace: per_metre / (metal.volumetric_heat * area * 1000.0),
            rating,
            limit: insulation::short_limit(rating),
            melts: metal.melting_point,
        }
    }

    /// Temperature around it.
    #[must_use]
    pub fn ambient(&self) -> Celsius {
        Celsius(self.warming.ambient)
    }

    /// Resistance at a temperature over that at 20 °C.
    #[must_use]
    pub fn factor(&self, at: Celsius) -> f64 {
        self.warming.factor(at.0)
    }

    /// Temperature that a steady current ends at.
    #[must_use]
    pub fn steady(&self, current: Amps) -> Celsius {
        Celsius(self.warming.temperature(current.0))
    }

    fn slope(&self, squared: f64) -> Slope {
        let heat = self.pace * squared;
        // Heat that leaves, per kelvin above the ambient; none where the wire may carry nothing at all.
        let leaves = if self.warming.slope > 0.0 {
            self.pace / self.warming.slope
        } else {
            0.0
        };
        let coefficient = self.warming.coefficient;
        Slope {
            a: heat * (1.0 - 20.0 * coefficient) + leaves * self.warming.ambient,
            b: heat * coefficient - leaves,
        }
    }

    /// Pace of warming at a temperature and a current, given squared: in K/s.
    pub(crate) fn pace(&self, at: f64, squared: f64) -> f64 {
        let it = self.slope(squared);
        it.a + it.b * at
    }

    /// How far a temperature is from where it would come to rest in a circuit that this current flows in, in kelvin. Where a steady
    /// current would make it run away, a circuit lets the current fall, and it is taken to come to rest as heat leaves.
    pub(crate) fn unrest(&self, at: f64, squared: f64) -> f64 {
        let it = self.slope(squared);
        let time = if it.b < 0.0 {
            -1.0 / it.b
        } else {
            self.settles_in()
        };
        ((it.a + it.b * at) * time).abs()
    }

    /// The time in which its heat leaves it, in seconds: how long it takes to come to rest.
    pub(crate) fn settles_in(&self) -> f64 {
        1.0 / self.slope(0.0).b.abs().max(1e-9)
    }

    /// Temperature after a step in a circuit: exact as long as the step is not so long that the current cannot be taken as steady. Then it
    /// goes as heat leaves.
    pub(crate) fn after_step(&self, from: f64, squared: f64, seconds: f64) -> f64 {
        let it = self.slope(squared);
        if it.b * seconds <= 1.0 {
            return self.after(from, squared, seconds);
        }
        let time = self.settles_in();
        let pace = it.a + it.b * from;
        (from - pace * time * libm::expm1(-seconds / time)).clamp(-60.0, 1e4)
    }

    /// Temperature after a time at a current, given squared.
    pub(crate) fn after(&self, from: f64, squared: f64, seconds: f64) -> f64 {
        let it = self.slope(squared);
        let x = it.b * seconds;
        let pace = it.a + it.b * from;
        // (eˣ − 1)/x, which is 1 at nothing.
        let grown = if x.abs() < 1e-9 {
            1.0
        } else {
            libm::expm1(x.min(60.0)) / x
        };
        (from + pace * seconds * grown).clamp(-60.0, 1e4)
    }

    /// Time from one temperature to a higher one at a current, given squared; infinite where it does not get there.
    pub(crate) fn until(&self, from: f64, to: f64, squared: f64) -> f64 {
        if from >= to {
            return 0.0;
        }
        let it = self.slope(squared);
        let (begins, ends) = (it.a + it.b * from, it.a + it.b * to);
        // Written so that a number that is not one does not get there.
        if !(begins > 0.0 && ends > 0.0) {
            return f64::INFINITY;
        }
        if (ends - begins).abs() < 1e-9 * begins {
            (to - from) / begins
        } else {
            libm::log(ends / begins) / it.b
        }
    }

    /// Time in which a steady current brings the conductor from its surroundings' temperature to what its insulation bears for long;
    /// `None` where it never does.
    #[must_use]
    pub fn time_to_rating(&self, current: Amps) -> Option<Seconds> {
        let time = self.until(self.warming.ambient, self.rating.0, current.0 * current.0);
        time.is_finite().then_some(Seconds(time))
    }

    /// Time in which a steady current brings the conductor from a temperature to what its insulation bears for a short time; `None`
    /// where it never does.
    #[must_use]
    pub fn time_to_damage(&self, from: Celsius, current: Amps) -> Option<Seconds> {
        let time = self.until(from.0, self.limit.0, current.0 * current.0);
        time.is_finite().then_some(Seconds(time))
    }

    /// Temperature after a time at a steady current.
    #[must_use]
    pub fn temperature_after(&self, from: Celsius, current: Amps, time: Seconds) -> Celsius {
        Celsius(self.after(from.0, current.0 * current.0, time.0))
    }
}
