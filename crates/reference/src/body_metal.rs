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

/// Where these come from.
pub const SOURCE: Source = Source::derived(
    "spreading into sheet, ρ ln(b/a) / (2πt), and along the body, ρL/A; sections from memory",
);

/// Resistance of the sheet around a ground point, into which its current spreads: R = ρ ln(b/a) / (2πt). Two points side by
/// side still share none of it.
#[must_use]
pub fn spreading() -> Ohms {
    // ρ in Ω·mm²/m over mm gives mm/m: thousandths.
    let ohms = SHEET_STEEL_RESISTIVITY / 1_000.0 * libm::log(SPREAD_RADIUS_MM / CONTACT_RADIUS_MM)
        / (2.0 * std::f64::consts::PI * SHEET_MM);
    Ohms(ohms)
}

/// Resistance of the body along this distance: R = ρL/A.
#[must_use]
pub fn along(distance: Metres) -> Ohms {
    Ohms(SHEET_STEEL_RESISTIVITY / SECTION_MM2 * distance.0.max(0.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn four_metres_of_body_by_hand() {
        // Spreading: 0.15 Ω·mm²/m = 1.5e-7 Ω·m; ln(800/8) = 4.605; 2π · 0.8 mm = 5.027e-3 m; so 1.374e-4 Ω.
        assert!((spreading().0 - 0.1374e-3).abs() < 1e-7);
        // Along: 1.5e-7 Ω·m · 4 m / 1.2e-3 m² = 5.0e-4 Ω.
        assert!((along(Metres(4.0)).0 - 0.5e-3).abs() < 1e-9);
        // What is taken where no place is known, 1 mΩ, is on the careful side of every car.
        assert!(spreading().0 + along(Metres(6.0)).0 < 1e-3);
    }
}
