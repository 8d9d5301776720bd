//! How thick a wire is over its insulation, which decides what goes around it.

use crate::Source;
use model::quantity::{Metres, SquareMm};

/// One row: a cross-section, and the greatest outer diameter in millimetres that a wire of it may have.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outer {
    /// Cross-section of the conductor.
    pub area: SquareMm,
    /// Greatest diameter over the insulation, in millimetres.
    pub millimetres: f64,
}

/// Where [`OUTER`] comes from.
pub const OUTER_SOURCE: Source = Source::memory("ISO 6722-1, greatest outer diameters, thick wall");

const fn row(area: f64, millimetres: f64) -> Outer {
    Outer {
        area: SquareMm(area),
        millimetres,
    }
}

/// Greatest outer diameters of road vehicle wires with thick walls. Supply cable for sound equipment is softer and has more
/// jacket; what has to fit around it leaves room.
pub const OUTER: &[Outer] = &[
    row(0.5, 2.3),
    row(0.75, 2.5),
    row(1.0, 2.7),
    row(1.5, 3.0),
    row(2.5, 3.6),
    row(4.0, 4.4),
    row(6.0, 5.0),
    row(10.0, 6.5),
    row(16.0, 8.3),
    row(25.0, 10.4),
    row(35.0, 11.6),
    row(50.0, 13.5),
    row(70.0, 15.5),
    row(95.0, 18.0),
    row(120.0, 19.7),
];

/// Greatest outer diameter of a wire: that of the next row of [`OUTER`]; the last one's beyond the table, and where the
/// cross-section is not known.
#[must_use]
pub fn outer_diameter(area: Option<SquareMm>) -> Metres {
    let last = OUTER.last().map_or(20.0, |row| row.millimetres);
    let millimetres = area.map_or(last, |area| {
        let fits = OUTER.iter().find(|row| area.0 <= row.area.0 + 1e-9);
        fits.map_or(last, |row| row.millimetres)
    });
    Metres(millimetres / 1000.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A wire is thicker than its bare conductor, whose strands fill at most π/(2√3) = 90.7 % of it (hexagonal packing of
    /// circles, Lagrange) and at least 60 % (loose bunches: from memory), by a wall of 0.2 to 2.2 mm (walls of ISO 6722-1: from memory).
    #[test]
    fn outer_diameters_leave_a_wall_around_the_conductor() {
        for row in OUTER {
            let bare = |filled: f64| 2.0 * libm::sqrt(row.area.0 / filled / core::f64::consts::PI);
            let may_be = bare(0.907) + 0.4..bare(0.6) + 4.4;
            assert!(may_be.contains(&row.millimetres), "{row:?}: {may_be:?}");
        }
        assert!(
            OUTER
                .windows(2)
                .all(|two| two[0].millimetres < two[1].millimetres)
        );
    }

    #[test]
    fn a_size_between_two_rows_takes_the_thicker_one() {
        assert_eq!(outer_diameter(Some(SquareMm(3.3))), Metres(0.0044));
        assert_eq!(outer_diameter(Some(SquareMm(500.0))), outer_diameter(None));
    }
}
