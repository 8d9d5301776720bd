//! What a crimped ending must bear when it is pulled: the trial by which a crimp is proven.
//!
//! UL 486A itself could not be seen. Its values were read where makers of terminals print them as what their crimps are held
//! to: in an application specification for ring terminals and splices (114-2161, revision F, figure 4: 26 AWG to 2/0) and in
//! another maker's list of pull-out values (28 to 4 AWG), which agree in pounds row by row. Each prints one figure in newtons
//! that is not its pounds (2/0: 1235 N beside 300 lbf; 6 AWG: 455 N beside 100 lbf), so pounds are what is kept.
//! How it is tried was read in a third maker's manual, which quotes section 12 of the standard: a direct pull for one minute, put
//! on without a jerk, with nothing but the conductor held.

use crate::Source;
use model::quantity::SquareMm;

/// Where the forces come from that were read.
pub const PRINTED: Source = Source::read(
    "UL 486A, pull-out values as two makers of terminals print them (114-2161 rev. F, figure 4)",
);
/// Where those come from that neither maker prints.
pub const REMEMBERED: Source = Source::memory("UL 486A, pull-out values");

/// One conductor of the table.
struct Row {
    /// Gauge number; 0 is 1/0, -1 is 2/0.
    awg: i8,
    /// Least pull-out force, in pounds-force, as it is published.
    pounds: f64,
    source: Source,
}

const fn row(awg: i8, pounds: f64) -> Row {
    Row {
        awg,
        pounds,
        source: PRINTED,
    }
}

const fn remembered(awg: i8, pounds: f64) -> Row {
    Row {
        awg,
        pounds,
        source: REMEMBERED,
    }
}

/// Least pull-out force by gauge number, thinnest first.
const PULL_OUT: &[Row] = &[
    row(26, 3.0),
    row(24, 5.0),
    row(22, 8.0),
    row(20, 13.0),
    row(18, 20.0),
    row(16, 30.0),
    row(14, 50.0),
    row(12, 70.0),
    row(10, 80.0),
    row(8, 90.0),
    row(6, 100.0),
    row(4, 140.0),
    remembered(3, 160.0),
    row(2, 180.0),
    remembered(1, 200.0),
    row(0, 250.0),
    row(-1, 300.0),
    remembered(-2, 350.0),
    remembered(-3, 450.0),
];

/// A pound-force in newtons, exactly.
const POUND_FORCE: f64 = 4.448_221_615_260_5;

/// A metric size counts as the gauge number that it lies this close below: 0.5 mm² is what is sold as 20 AWG (0.518 mm²), and
/// one of the makers prints 0.507 mm² for it.
const AS_GOOD_AS: f64 = 0.96;

/// The force that a crimp on a conductor of this cross-section must bear, in newtons, and where that is from. That of the
/// next thinner conductor of the table, so that no more is asked than is published. `None` for one thinner than all.
#[must_use]
pub fn pull_out_force(area: SquareMm) -> Option<(f64, Source)> {
    PULL_OUT
        .iter()
        .rfind(|row| area.0 >= crate::conductors::awg_area(row.awg).0 * AS_GOOD_AS)
        .map(|row| (row.pounds * POUND_FORCE, row.source))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn newtons(area: f64) -> f64 {
        pull_out_force(SquareMm(area)).expect("within the table").0
    }

    /// What the ring terminals' maker prints in newtons: 114-2161, revision F, figure 4, read. At 2/0 it says 1235 N beside 300 lbf,
    /// which are 1334.5 N: left out.
    const IN_NEWTONS: &[(i8, f64)] = &[
        (26, 13.4),
        (24, 22.3),
        (22, 35.6),
        (20, 57.9),
        (18, 89.0),
        (16, 133.5),
        (14, 222.5),
        (12, 311.5),
        (10, 356.0),
        (8, 400.5),
        (6, 445.0),
        (4, 623.0),
        (2, 801.0),
        (0, 1112.5),
    ];

    #[test]
    fn pounds_are_the_newtons_that_are_printed_beside_them() {
        for (awg, printed) in IN_NEWTONS {
            let (force, source) =
                pull_out_force(crate::conductors::awg_area(*awg)).expect("within the table");
            assert_eq!(source, PRINTED);
            // Printed to three figures, most converted with 4.45.
            assert!((force / printed - 1.0).abs() < 0.005, "{awg} AWG: {force} N");
        }
    }

    /// Another standard, for crimps up to 10 mm²: least forces by cross-section. IEC 60352-2:2006, from memory.
    const IEC_60352_2: &[(f64, f64)] = &[
        (0.5, 60.0),
        (0.82, 90.0),
        (1.3, 135.0),
        (2.1, 200.0),
        (3.3, 275.0),
        (5.3, 355.0),
        (8.4, 370.0),
    ];

    #[test]
    fn another_standard_asks_for_about_as_much() {
        for (area, other) in IEC_60352_2 {
            let ratio = newtons(*area) / other;
            assert!((0.85..=1.15).contains(&ratio), "{area} mm²: {ratio}");
        }
    }

    #[test]
    fn no_crimp_has_to_bear_what_would_break_its_wire() {
        // ref: soft copper wire breaks at 37 000 psi (255 MPa), 14 AWG at 119 lbf; a wire maker's table, read.
        assert!((37_000.0 * 0.0641 * 0.0641 * std::f64::consts::FRAC_PI_4 - 119.0_f64).abs() < 0.5);
        for row in PULL_OUT {
            let breaks = 255.0 * crate::conductors::awg_area(row.awg).0;
            assert!(row.pounds * POUND_FORCE < 0.6 * breaks, "{} AWG", row.awg);
        }
    }

    #[test]
    fn a_thicker_conductor_bears_no_less_and_a_hair_is_not_tried() {
        let forces: Vec<f64> = model::conductor::METRIC_SERIES
            .iter()
            .map(|area| newtons(*area))
            .collect();
        assert!(forces.is_sorted(), "{forces:?}");
        assert_eq!(pull_out_force(SquareMm(0.1)), None);
        // 4 AWG is 21.15 mm²: 140 lbf. 3 AWG is 26.7 mm², and only remembered.
        let (force, source) = pull_out_force(SquareMm(25.0)).expect("within the table");
        assert!((force - 140.0 * POUND_FORCE).abs() < 1e-9 && source == PRINTED);
        assert_eq!(
            pull_out_force(SquareMm(30.0)).map(|(_, source)| source),
            Some(REMEMBERED)
        );
    }
}
