//! Allowable current of a conductor: one documented model for every size, insulation, place and bundle.
//!
//! **Model.** Base: 33 CFR 183.425 table 5 (single stranded copper conductor, 30 °C), straight on doubly logarithmic
//! paper between its sizes and linear between its insulation ratings. Below 18 AWG the current falls with
//! area^0.79 (the slope of NEC 310.17 from 18 to 20 AWG); above 4/0 AWG it grows with area^0.625 (the slope of the
//! table's own last two rows at 105 °C). Then three factors:
//! - ambient above 30 °C: √((Tc − Ta)/(Tc − 30)); the table is never exceeded below 30 °C;
//! - bundling: 0.70 for 3 conductors, 0.60 for 4 to 6, 0.50 for 7 to 24, 0.40 for more;
//! - material: aluminium *and* copper-clad aluminium carry √(ρ copper/ρ aluminium) = 0.781 times as much (equal heat
//!   at equal area). NEC 310.16 puts both in one column, at 0.73 to 0.88 of copper.
//!
//! Rated current brings the conductor to its insulation's rating. That is a limit of the insulation, not of what it
//! touches: the vehicle maker's and cable maker's own figures come first.

use crate::Source;
use crate::conductors::awg_area;
use crate::interpolate::{linear, log_log};
use crate::materials::{ALUMINIUM, COPPER};
use model::conductor::Material;
use model::quantity::{Amps, Celsius, Kelvin, SquareMm};

/// Insulation ratings of the columns of [`TABLE_5`], in °C.
pub const RATINGS: [f64; 7] = [60.0, 75.0, 80.0, 90.0, 105.0, 125.0, 200.0];

/// A row of [`TABLE_5`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AmpacityRow {
    /// AWG number; 0 is 1/0, -3 is 4/0.
    pub awg: i8,
    /// Allowable current in A, by the columns of [`RATINGS`].
    pub amps: [f64; 7],
}

/// Where [`TABLE_5`] comes from.
pub const TABLE_5_SOURCE: Source = Source::read("33 CFR 183.425 Table 5, Allowable Amperage of Conductors");

/// Allowable current of single stranded copper conductors at 30 °C, outside engine spaces.
pub const TABLE_5: &[AmpacityRow] = &[
    AmpacityRow {
        awg: 18,
        amps: [10.0, 10.0, 15.0, 20.0, 20.0, 25.0, 25.0],
    },
    AmpacityRow {
        awg: 16,
        amps: [15.0, 15.0, 20.0, 25.0, 25.0, 30.0, 35.0],
    },
    AmpacityRow {
        awg: 14,
        amps: [20.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0],
    },
    AmpacityRow {
        awg: 12,
        amps: [25.0, 25.0, 35.0, 40.0, 45.0, 50.0, 55.0],
    },
    AmpacityRow {
        awg: 10,
        amps: [40.0, 40.0, 50.0, 55.0, 60.0, 70.0, 70.0],
    },
    AmpacityRow {
        awg: 8,
        amps: [55.0, 65.0, 70.0, 70.0, 80.0, 90.0, 100.0],
    },
    AmpacityRow {
        awg: 6,
        amps: [80.0, 95.0, 100.0, 100.0, 120.0, 125.0, 135.0],
    },
    AmpacityRow {
        awg: 4,
        amps: [105.0, 125.0, 130.0, 135.0, 160.0, 170.0, 180.0],
    },
    AmpacityRow {
        awg: 3,
        amps: [120.0, 145.0, 150.0, 155.0, 180.0, 195.0, 210.0],
    },
    AmpacityRow {
        awg: 2,
        amps: [140.0, 170.0, 175.0, 180.0, 210.0, 225.0, 240.0],
    },
    AmpacityRow {
        awg: 1,
        amps: [165.0, 195.0, 210.0, 210.0, 245.0, 265.0, 280.0],
    },
    AmpacityRow {
        awg: 0,
        amps: [195.0, 230.0, 245.0, 245.0, 285.0, 305.0, 325.0],
    },
    AmpacityRow {
        awg: -1,
        amps: [225.0, 265.0, 285.0, 285.0, 330.0, 355.0, 370.0],
    },
    AmpacityRow {
        awg: -2,
        amps: [260.0, 310.0, 330.0, 330.0, 385.0, 410.0, 430.0],
    },
    AmpacityRow {
        awg: -3,
        amps: [300.0, 360.0, 385.0, 385.0, 445.0, 475.0, 510.0],
    },
];

/// Temperature that the table's base currents hold for.
pub const BASE_AMBIENT: Celsius = Celsius(30.0);

/// Bundling: most conductors that carry current in one bundle, and the factor up to that number.
pub const BUNDLING: &[(u32, f64)] = &[(2, 1.0), (3, 0.7), (6, 0.6), (24, 0.5), (u32::MAX, 0.4)];
/// Where [`BUNDLING`] comes from.
pub const BUNDLING_SOURCE: Source =
    Source::memory("33 CFR 183.425 Table 5 notes; ABYC E-11 for direct current");

/// What the allowable current depends on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AmpacityQuery {
    /// Metal of the conductor.
    pub material: Material,
    /// Nominal cross-section; 0.05 to 400 mm², else the nearer end.
    pub area: SquareMm,
    /// Rating of the insulation; above 200 °C taken as 200 °C.
    pub insulation: Celsius,
    /// Ambient of the hottest place on the way.
    pub ambient: Celsius,
    /// Conductors in the same bundle that carry current, this one included.
    pub bundled: u32,
}

/// Current of the table for copper at 30 °C, not bundled.
#[must_use]
pub fn base_current(area: SquareMm, insulation: Celsius) -> Amps {
    let area = area.0.clamp(0.05, 400.0);
    // Only the rows about the area: the one that is not below it, and its neighbours.
    let row = TABLE_5.iter().position(|row| area <= awg_area(row.awg).0);
    let first = row
        .unwrap_or(TABLE_5.len())
        .saturating_sub(1)
        .min(TABLE_5.len() - 2);
    let in_column = |column: usize| {
        let mut rows = [(0.0, 0.0); 3];
        let mut count = 0;
        for (row, from) in rows.iter_mut().zip(TABLE_5.iter().skip(first)) {
            *row = (
                awg_area(from.awg).0,
                from.amps.get(column).copied().unwrap_or(0.0),
            );
            count += 1;
        }
        log_log(rows.get(..count).unwrap_or_default(), area, 0.79, 0.625)
    };
    // Only the columns on either side of the rating are worked out.
    let upper = RATINGS
        .iter()
        .position(|rating| insulation.0 <= *rating)
        .unwrap_or(RATINGS.len() - 1);
    let from = upper.saturating_sub(1);
    let mut by_rating = [(0.0, 0.0); 2];
    for (slot, (column, rating)) in by_rating
        .iter_mut()
        .zip(RATINGS.iter().copied().enumerate().skip(from))
    {
        *slot = (rating, in_column(column));
    }
    let tabled = linear(&by_rating, insulation.0);
    // Below the first column the rise that is left shrinks, and the current with its root.
    let shrink = ((insulation.0 - BASE_AMBIENT.0) / 30.0).clamp(0.0, 1.0);
    Amps(tabled * libm::sqrt(shrink))
}

/// Factor for the ambient: √((Tc − Ta)/(Tc − 30)), 1 at and below 30 °C, 0 when it is as hot as the insulation may be.
///
/// Source: 33 CFR 183.425 note 1 gives 0.85 for 105 °C insulation at 50 °C (read), the formula 0.856.
#[must_use]
pub fn ambient_factor(insulation: Celsius, ambient: Celsius) -> f64 {
    let insulation = insulation.0.min(200.0);
    let base = insulation - BASE_AMBIENT.0;
    if base <= 0.0 {
        return 0.0;
    }
    libm::sqrt(((insulation - ambient.0.max(BASE_AMBIENT.0)) / base).clamp(0.0, 1.0))
}

/// Factor for a bundle of so many conductors that carry current.
#[must_use]
pub fn bundling_factor(conductors: u32) -> f64 {
    BUNDLING
        .iter()
        .find(|(most, _)| conductors <= *most)
        .map_or(0.4, |(_, factor)| *factor)
}

/// Factor for the material at equal cross-section.
#[must_use]
pub fn material_factor(material: Material) -> f64 {
    match material {
        Material::Copper | Material::TinnedCopper => 1.0,
        Material::Aluminium | Material::CladAluminium10 | Material::CladAluminium15 => {
            libm::sqrt(COPPER.resistivity / ALUMINIUM.resistivity)
        }
    }
}

/// Steady current that brings the conductor to the rating of its insulation, by the model of this file.
///
/// Never NaN for finite input; does not fall with area or insulation, nor rise with ambient or bundling. How far it
/// lies from other published tables is asserted in this package's tests.
#[must_use]
pub fn allowable_current(query: AmpacityQuery) -> Amps {
    base_current(query.area, query.insulation)
        * ambient_factor(query.insulation, query.ambient)
        * bundling_factor(query.bundled)
        * material_factor(query.material)
}

/// Rise over the ambient that the table's own current causes: rating − 30 °C. Not below zero.
#[must_use]
pub fn rated_rise(insulation: Celsius) -> Kelvin {
    Kelvin((insulation.0.min(200.0) - BASE_AMBIENT.0).max(0.0))
}

/// Rise at a current: the rated rise times (I / current allowed at 30 °C)², for this material and bundle.
///
/// The table's current is for a conductor at its rating; a cooler one has less resistance, so this errs upwards below
/// full current. The result is bounded at 2000 K, which is also the answer for current in a conductor that may carry none.
#[must_use]
pub fn rise_at(query: AmpacityQuery, current: Amps) -> Kelvin {
    if current.0 == 0.0 {
        return Kelvin(0.0);
    }
    let rated = allowable_current(AmpacityQuery {
        ambient: BASE_AMBIENT,
        ..query
    });
    if rated.0 <= 0.0 {
        return Kelvin(2000.0);
    }
    let load = (current.0 / rated.0).abs().min(1e3);
    Kelvin((rated_rise(query.insulation).0 * load * load).min(2000.0))
}
