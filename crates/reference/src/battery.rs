//! Batteries: resting voltage, internal resistance, discharge, charging voltages.

use crate::interpolate::linear;
use crate::{Source, Typical};
use model::kinds::supply::{Chemistry, CrankingStandard};
use model::quantity::{AmpHours, Amps, Hours, Ohms, Share, Volts};

const FLOODED: &[(f64, f64)] = &[
    (0.0, 11.89),
    (0.25, 12.06),
    (0.5, 12.24),
    (0.75, 12.45),
    (1.0, 12.65),
];
const AGM: &[(f64, f64)] = &[
    (0.0, 11.8),
    (0.25, 12.0),
    (0.5, 12.35),
    (0.75, 12.65),
    (1.0, 12.85),
];
const LITHIUM: &[(f64, f64)] = &[
    (0.0, 10.0),
    (0.1, 12.8),
    (0.2, 12.9),
    (0.4, 13.1),
    (0.7, 13.2),
    (0.9, 13.3),
    (1.0, 13.4),
];

/// Resting voltage by state of charge (0 to 1) and where it comes from: 12 V battery, rested for hours, about 25 °C.
#[must_use]
pub const fn resting_table(chemistry: Chemistry) -> (&'static [(f64, f64)], Source) {
    match chemistry {
        Chemistry::Flooded => (FLOODED, Source::memory("BCI-style battery table")),
        Chemistry::Agm => (
            AGM,
            Source::memory("general practice; differs by make, low confidence"),
        ),
        Chemistry::Lithium => (
            LITHIUM,
            Source::memory("four cells of lithium iron phosphate, general practice; low confidence"),
        ),
    }
}

/// Resting voltage of a 12 V battery. A share outside 0 to 1 is taken as the nearer end.
#[must_use]
pub fn open_circuit_voltage(chemistry: Chemistry, charge: Share) -> Volts {
    Volts(linear(resting_table(chemistry).0, charge.0.clamp(0.0, 1.0)))
}

/// Voltage at the end of the cranking test.
///
/// Source: SAE J537 7.2 V after 30 s, EN 50342-1 7.5 V after 10 s, both at −18 °C (read).
#[must_use]
pub const fn cranking_end_voltage(standard: CrankingStandard) -> Volts {
    match standard {
        CrankingStandard::Sae => Volts(7.2),
        CrankingStandard::En => Volts(7.5),
    }
}

/// Open-circuit voltage that the estimate of internal resistance starts from: six cells of 2.1 V.
pub const FULL_VOLTAGE: Volts = Volts(12.6);

/// Internal resistance from the cold-cranking current, as a range.
///
/// `most` = (12.6 V − end voltage)/current, the battery at −18 °C; `least` is half of it and `usual` 0.575 of it (warm and
/// charged, range 0.5 to 0.65). Faults and breaking capacity take the least, drops and cut-offs the most. A current is
/// taken within 1 and 100 000 A. Source: definition of the test; the warm factor is general practice, from memory.
#[must_use]
pub fn internal_resistance(standard: CrankingStandard, cranking: Amps) -> Typical<Ohms> {
    let cold = (FULL_VOLTAGE.0 - cranking_end_voltage(standard).0) / cranking.0.clamp(1.0, 100_000.0);
    Typical {
        least: Ohms(cold * 0.5),
        usual: Ohms(cold * 0.575),
        most: Ohms(cold),
        source: Source::memory("warm over cold 0.5 to 0.65, general practice; low confidence"),
    }
}

/// Peukert exponent: AGM 1.05 to 1.15, flooded 1.2 to 1.3, lithium iron phosphate about 1.03.
#[must_use]
pub const fn peukert_exponent(chemistry: Chemistry) -> Typical<f64> {
    let source = Source::memory("general practice");
    match chemistry {
        Chemistry::Flooded => Typical {
            least: 1.2,
            usual: 1.25,
            most: 1.3,
            source,
        },
        Chemistry::Agm => Typical {
            least: 1.05,
            usual: 1.1,
            most: 1.15,
            source,
        },
        Chemistry::Lithium => Typical {
            least: 1.0,
            usual: 1.03,
            most: 1.05,
            source,
        },
    }
}

/// Time until a battery is flat at a steady current, by Peukert in the rated-hour form: t = H (C/(I H))^k.
///
/// `None` unless capacity, rated hours and current are above zero. Good for currents from about a third of the rated
/// one upwards; at smaller ones it promises too much, and self-discharge is not in it.
#[must_use]
pub fn time_to_flat(capacity: AmpHours, rated: Hours, current: Amps, exponent: f64) -> Option<Hours> {
    if !(capacity.0 > 0.0 && rated.0 > 0.0 && current.0 > 0.0) {
        return None;
    }
    let time = rated.0 * libm::pow(capacity.0 / (current.0 * rated.0), exponent.clamp(1.0, 2.0));
    time.is_finite().then_some(Hours(time))
}

/// Voltage at which a battery counts as discharged.
///
/// Source: lead-acid 1.75 V per cell, SAE J537 reserve capacity (from memory); lithium 2.5 V per cell (from memory).
#[must_use]
pub const fn end_of_discharge(chemistry: Chemistry) -> Volts {
    match chemistry {
        Chemistry::Flooded | Chemistry::Agm => Volts(10.5),
        Chemistry::Lithium => Volts(10.0),
    }
}

/// Regulated voltage of alternators: 13.8 to 14.7 V.
pub const ALTERNATOR_VOLTAGE: Typical<Volts> = Typical {
    least: Volts(13.8),
    usual: Volts(14.2),
    most: Volts(14.7),
    source: Source::memory("automotive textbooks; ISO 16750-2 tests at 14.0 V"),
};
