//! What insulation bears for a short time: limit temperatures, and the adiabatic law that heats a wire up to them.
//!
//! Adiabatic means that no heat leaves; good to about 5 s. I²t ≤ k²S², k = √(Qc (β + 20)/ρ₂₀ · ln((β + Tf)/(β + Ti))).
//! Source: IEC 60364-5-54 Annex A, IEC 60364-4-43 434.5.2 (from memory); values of k were read in BS 7671
//! tables 43.1 and 54.2 to 54.5.

use crate::Source;
use crate::materials::data;
use model::conductor::Material;
use model::quantity::{Amps, Celsius, Seconds, SquareMm};

/// Final temperature that insulation bears for at most 5 s.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShortLimit {
    /// Highest continuous rating that the row covers.
    pub rating_up_to: Celsius,
    /// Final temperature.
    pub limit: Celsius,
    /// Where it comes from.
    pub source: Source,
}

/// Limits by continuous rating. Up to 105 °C the thermoplastic's limit is taken for all, as a rating alone does not
/// say that a jacket is cross-linked (250 °C).
pub const SHORT_LIMITS: &[ShortLimit] = &[
    ShortLimit {
        rating_up_to: Celsius(105.0),
        limit: Celsius(160.0),
        source: Source::read("BS 7671 Table 43.1, thermoplastic"),
    },
    ShortLimit {
        rating_up_to: Celsius(150.0),
        limit: Celsius(250.0),
        source: Source::read("BS 7671 Table 43.1, thermosetting"),
    },
    ShortLimit {
        rating_up_to: Celsius(f64::MAX),
        limit: Celsius(350.0),
        source: Source::memory("IEC 60724, silicone rubber"),
    },
];

/// Final temperature that insulation of a continuous rating bears for at most 5 s.
#[must_use]
pub fn short_limit(rating: Celsius) -> Celsius {
    SHORT_LIMITS
        .iter()
        .find(|row| rating.0 <= row.rating_up_to.0)
        .map_or(Celsius(160.0), |row| row.limit)
}

/// Inverse of the temperature coefficient at 0 °C, the β of the adiabatic law, in °C.
#[must_use]
pub fn beta(material: Material) -> f64 {
    match material {
        Material::Copper | Material::TinnedCopper => 234.5,
        Material::Aluminium => 228.0,
        Material::CladAluminium10 | Material::CladAluminium15 => 230.0,
    }
}

/// The k of I²t = k²S², in A·√s/mm², for heating from one temperature to another. 0 when it would not heat.
///
/// Range: −60 °C to the melting point; the nearer end is taken outside.
#[must_use]
pub fn adiabatic_k(material: Material, from: Celsius, to: Celsius) -> f64 {
    let figures = data(material);
    let beta = beta(material);
    let within = |t: Celsius| t.0.clamp(-60.0, figures.melting_point.0);
    // ρ in Ω·mm²/m is 1e-3 Ω·mm.
    let leading = figures.volumetric_heat * (beta + 20.0) / (figures.resistivity * 1e-3);
    let ratio = libm::log((beta + within(to)) / (beta + within(from)));
    libm::sqrt(leading * ratio.max(0.0))
}

/// Current that heats a copper wire to melting in a time: Onderdonk, I = A √(log₁₀(1 + (1083 − Ta)/(234 + Ta))/(33 t)),
/// A in circular mils. No latent heat, no loss; up to about 10 s.
///
/// `None` unless the time is above zero. Source: Stauffacher 1928 as discussed by Brooks and Adam (from memory).
#[must_use]
pub fn onderdonk_current(area: SquareMm, time: Seconds, ambient: Celsius) -> Option<Amps> {
    if time.0.is_nan() || time.0 <= 0.0 {
        return None;
    }
    let mils = area.0.clamp(0.0, 1e6) / crate::conductors::CIRCULAR_MIL.0;
    let ambient = ambient.0.clamp(-60.0, 1083.0);
    let heat = libm::log10(1.0 + (1083.0 - ambient) / (234.0 + ambient));
    Some(Amps(mils * libm::sqrt(heat / (33.0 * time.0))))
}

/// Steady current that melts a bare round wire of copper in free air: Preece, I = 80.02 A/mm^1.5 · d^1.5.
///
/// Source: W. H. Preece, 10 244 A/in^1.5 (read). A diameter below zero counts as zero, above 1 m as 1 m.
#[must_use]
pub fn preece_current(diameter: model::quantity::Metres) -> Amps {
    let inches = diameter.0.clamp(0.0, 1.0) / 0.0254;
    Amps(10_244.0 * libm::pow(inches, 1.5))
}
