//! Resistance of the body's sheet metal between a ground point and where the battery strap joins it.
//!
//! No standard gives it. It is taken apart here into what can be computed: the current spreads from the ring of the
//! terminal into the sheet around it, and from there flows along the body.

use crate::Source;
use model::quantity::{Metres, Ohms};

/// Resistivity of the deep-drawing steel of bodies, in Ω·mm²/m, at 20 °C: of a range from 0.12 to 0.2 (from memory, as
/// handbooks give it for low-carbon steel).
pub const SHEET_STEEL_RESISTIVITY: f64 = 0.15;
/// Thickness of the sheet around a ground point, in mm: 0.6 to 1 mm are usual (from memory).
const SHEET_MM: f64 = 0.8;
/// Radius of the contact, in mm: a ring terminal for an 8 mm screw, paint removed as far (common practice).
const CONTACT_RADIUS_MM: f64 = 8.0;
/// Radius at which the spreading is done and the current flows along the body, in mm: half of its width (our own judgement).
const SPREAD_RADIUS_MM: f64 = 800.0;
/// Section of steel that a body offers along it, in mm²: floor, sills, tunnel and roof of 0.8 mm sheet are 2,000 to 3,000,
/// of which seams and spot welds leave the half (our own judgement).
const SECTION_MM2: f64 = 1_200.0;

/// Where [`metal`] comes from.
pub const SOURCE: Source = Source::derived(
    "spreading into sheet, ρ ln(b/a) / (2πt), and along the body, ρL/A; sections from memory",
);

/// Resistance from a ground point to another spot of the body this far away along a straight line.
///
/// Spreading R = ρ ln(b/a) / (2πt), plus ρ·L/A along the body. Within the radius of spreading it is never less than the
/// spreading alone: two points side by side still share no metal at their own rings.
#[must_use]
pub fn metal(distance: Metres) -> Ohms {
    // ρ in Ω·mm²/m over mm gives mm/m: thousandths.
    let spreading = SHEET_STEEL_RESISTIVITY / 1_000.0 * libm::log(SPREAD_RADIUS_MM / CONTACT_RADIUS_MM)
        / (2.0 * std::f64::consts::PI * SHEET_MM);
    let along = SHEET_STEEL_RESISTIVITY / SECTION_MM2 * distance.0.max(0.0);
    Ohms(spreading + along)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn four_metres_of_body_by_hand() {
        // Spreading: 0.15 Ω·mm²/m = 1.5e-7 Ω·m; ln(800/8) = 4.605; 2π · 0.8 mm = 5.027e-3 m; so 1.374e-4 Ω.
        // Along: 1.5e-7 Ω·m · 4 m / 1.2e-3 m² = 5.0e-4 Ω. Together 0.637 mΩ.
        assert!((metal(Metres(4.0)).0 - 0.637e-3).abs() < 1e-6);
        assert!((metal(Metres(0.0)).0 - 0.1374e-3).abs() < 1e-7);
        // The share that is taken where no place is known, 1 mΩ, is on the careful side of every car.
        assert!(metal(Metres(6.0)).0 < 1e-3);
    }
}
