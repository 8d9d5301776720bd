//! Conductor materials: resistivity, temperature coefficient, density, heat and melting point.
//!
//! All figures at 20 °C. A temperature coefficient belongs to the temperature it was stated for: 0.00393 /K goes with
//! the 20 °C resistivity, never 0.00426 /K, which is the 0 °C figure.

use crate::Source;
use model::conductor::Material;
use model::quantity::{Celsius, Kelvin};

/// What a conductor material is like.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MaterialData {
    /// Resistivity at 20 °C, in Ω·mm²/m.
    pub resistivity: f64,
    /// Temperature coefficient of resistance referred to 20 °C, per kelvin.
    pub coefficient: f64,
    /// Density, in kg/m³.
    pub density: f64,
    /// Specific heat near 20 °C, in J/(kg·K).
    pub specific_heat: f64,
    /// Heat capacity by volume as the adiabatic formula takes it, in J/(K·mm³).
    pub volumetric_heat: f64,
    /// Where it begins to melt.
    pub melting_point: Celsius,
    /// Where the resistivity comes from.
    pub resistivity_source: Source,
    /// Where the heat figures come from.
    pub heat_source: Source,
}

/// Resistivity of annealed copper at 20 °C, in Ω·mm²/m: 1/58, the definition of 100 % IACS.
///
/// Source: IEC 60028, read.
pub const COPPER_RESISTIVITY_20C: f64 = 1.0 / 58.0;

/// Annealed copper.
pub const COPPER: MaterialData = MaterialData {
    resistivity: COPPER_RESISTIVITY_20C,
    coefficient: 0.003_93,
    density: 8890.0,
    specific_heat: 385.0,
    volumetric_heat: 3.45e-3,
    melting_point: Celsius(1084.6),
    resistivity_source: Source::read("IEC 60028 / NBS Handbook 100, International Annealed Copper Standard"),
    heat_source: Source::memory("IEC 60364-5-54 Annex A (heat by volume); general handbook values"),
};

/// Tinned copper wire: 1.03 times plain copper, 97.1 % IACS.
pub const TINNED_COPPER: MaterialData = MaterialData {
    // Class 5 limits of tinned over plain wire are 1.019 to 1.030; the upper end also lies within the 93.15 to
    // 97.66 % IACS that ASTM B33 allows (from memory).
    resistivity: COPPER_RESISTIVITY_20C * 1.03,
    resistivity_source: Source::derived("IEC 60228:2004 class 5 limits, tinned over plain"),
    ..COPPER
};

/// Aluminium for conductors (1350).
pub const ALUMINIUM: MaterialData = MaterialData {
    resistivity: 0.028_264,
    coefficient: 0.004_03,
    density: 2703.0,
    specific_heat: 897.0,
    volumetric_heat: 2.5e-3,
    melting_point: Celsius(646.0),
    resistivity_source: Source::read("IEC 60889 / IEC 60287: 61 % IACS"),
    heat_source: Source::memory("IEC 60364-5-54 Annex A (heat by volume); general handbook values"),
};

/// Copper-clad aluminium, 10 % copper by volume (class 10A). The standard's limit, not the ideal mixture of 64.9 % IACS.
pub const CLAD_ALUMINIUM_10: MaterialData = MaterialData {
    resistivity: 0.027_43,
    coefficient: 0.004_0,
    density: 3320.0,
    specific_heat: 760.0,
    volumetric_heat: 0.1 * 3.45e-3 + 0.9 * 2.5e-3,
    melting_point: Celsius(660.0),
    resistivity_source: Source::memory("ASTM B566 resistivity table, class 10A"),
    heat_source: Source::derived("mixture of copper and aluminium by volume; the core melts first"),
};

/// Copper-clad aluminium, 15 % copper by volume (class 15A).
pub const CLAD_ALUMINIUM_15: MaterialData = MaterialData {
    resistivity: 0.026_76,
    coefficient: 0.004_0,
    density: 3630.0,
    specific_heat: 709.0,
    volumetric_heat: 0.15 * 3.45e-3 + 0.85 * 2.5e-3,
    melting_point: Celsius(660.0),
    resistivity_source: Source::memory("ASTM B566 resistivity table, class 15A"),
    heat_source: Source::derived("mixture of copper and aluminium by volume; the core melts first"),
};

/// Low-carbon steel, of which bodies are made. Published resistivities spread from 0.138 to 0.15 Ω·mm²/m.
pub const STEEL: MaterialData = MaterialData {
    resistivity: 0.143,
    coefficient: 0.005,
    density: 7850.0,
    specific_heat: 470.0,
    volumetric_heat: 3.8e-3,
    melting_point: Celsius(1450.0),
    resistivity_source: Source::read("AISI 1010 resistivity table; the coefficient is that of iron"),
    heat_source: Source::memory("IEC 60364-5-54 Annex A (heat by volume); general handbook values"),
};

/// Resistivity of 70/30 brass at 20 °C, in Ω·mm²/m, for terminals and bars.
///
/// Source: CRC Handbook, Wire Tables, read.
pub const BRASS_RESISTIVITY_20C: f64 = 0.060_8;

/// The figures of a material.
#[must_use]
pub const fn data(material: Material) -> &'static MaterialData {
    match material {
        Material::Copper => &COPPER,
        Material::TinnedCopper => &TINNED_COPPER,
        Material::CladAluminium10 => &CLAD_ALUMINIUM_10,
        Material::CladAluminium15 => &CLAD_ALUMINIUM_15,
        Material::Aluminium => &ALUMINIUM,
    }
}

/// Share of the cross-section that is copper: the rest is aluminium. The classes of clad wire are named by it (ASTM B566,
/// from memory).
#[must_use]
pub const fn copper_share(material: Material) -> f64 {
    match material {
        Material::Copper | Material::TinnedCopper => 1.0,
        Material::CladAluminium10 => 0.10,
        Material::CladAluminium15 => 0.15,
        Material::Aluminium => 0.0,
    }
}

/// Copper and aluminium in a metre of a conductor of one square millimetre, in kilograms: share of the cross-section times
/// density.
#[must_use]
pub fn metal_per_volume(material: Material) -> [f64; 2] {
    let copper = copper_share(material);
    // kg/m³ times mm²·m is a millionth of a kilogram.
    [
        copper * COPPER.density * 1e-6,
        (1.0 - copper) * ALUMINIUM.density * 1e-6,
    ]
}

/// Factor from the resistance at 20 °C to that at a temperature: 1 + α₂₀ (T − 20 °C).
///
/// Range: −60 °C to 1100 °C; a temperature outside is taken as the nearer end, so the factor stays above 0.6.
/// Source: IACS law, equal to (234.5 + T)/254.5 for copper within 1e-5 up to 100 °C.
#[must_use]
pub fn temperature_factor(material: Material, temperature: Celsius) -> f64 {
    let rise = Kelvin(temperature.0.clamp(-60.0, 1100.0) - 20.0);
    1.0 + data(material).coefficient * rise.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn copper_and_aluminium_of_a_clad_wire_weigh_what_it_weighs() {
        // ref: densities of clad wire, 3.32 and 3.63 g/cm³ (ASTM B566, from memory); of copper, 8.89 g/cm³ (IEC 60028).
        for material in Material::ALL {
            let [copper, aluminium] = metal_per_volume(*material);
            let density = data(*material).density * 1e-6;
            assert!(
                (copper + aluminium - density).abs() / density < 0.002,
                "{material:?}: {copper} + {aluminium}, {density}"
            );
        }
        // A kilometre of 1 mm² of copper: 8.89 kg.
        assert!((metal_per_volume(Material::Copper)[0] * 1000.0 - 8.89).abs() < 1e-12);
    }
}
