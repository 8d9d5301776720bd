//! What a crimped ending must bear when it is pulled: the trial by which a crimp is proven.
//!
//! Both tables are remembered, not read. They agree within a quarter wherever they overlap, which a test holds.

use crate::Source;
use model::quantity::SquareMm;

/// Where the forces up to 10 mm² come from.
pub const IEC_60352_2: Source = Source::memory("IEC 60352-2:2006, pull-out force of crimped connections");
/// Where the forces of thicker conductors come from.
pub const UL_486: Source = Source::memory("UL 486A-486B, pull-out force of crimped connectors");

/// Least pull-out force by cross-section: mm² and newtons. IEC 60352-2.
pub const PULL_OUT: &[(f64, f64)] = &[
    (0.22, 28.0),
    (0.25, 32.0),
    (0.32, 40.0),
    (0.5, 60.0),
    (0.75, 85.0),
    (0.82, 90.0),
    (1.0, 108.0),
    (1.3, 135.0),
    (1.5, 150.0),
    (2.1, 200.0),
    (2.5, 230.0),
    (3.3, 275.0),
    (4.0, 310.0),
    (5.3, 355.0),
    (6.0, 360.0),
    (8.4, 370.0),
    (10.0, 380.0),
];

/// Least pull-out force by gauge number: number (0 is 1/0) and pounds-force. UL 486A-486B.
pub const PULL_OUT_AWG: &[(i8, f64)] = &[
    (22, 8.0),
    (20, 13.0),
    (18, 20.0),
    (16, 30.0),
    (14, 50.0),
    (12, 70.0),
    (10, 80.0),
    (8, 90.0),
    (6, 100.0),
    (4, 140.0),
    (3, 160.0),
    (2, 180.0),
    (1, 200.0),
    (0, 250.0),
    (-1, 300.0),
    (-2, 350.0),
    (-3, 450.0),
];

/// A pound-force in newtons, exactly.
const POUND_FORCE: f64 = 4.448_221_615_260_5;

/// The force that a crimp on a conductor of this cross-section must bear, in newtons, and which table says so. That of the
/// next thinner conductor of the table, so that no more is asked than is published. `None` for one thinner than all.
#[must_use]
pub fn pull_out_force(area: SquareMm) -> Option<(f64, Source)> {
    // A gauge number's area lies a hair beside the metric size that it stands for in the table.
    let reaches = |row: f64| area.0 >= row * 0.98;
    let thick = PULL_OUT_AWG
        .iter()
        .map(|(number, pounds)| (crate::conductors::awg_area(*number).0, pounds * POUND_FORCE))
        .filter(|(row, _)| *row > 10.0 && reaches(*row))
        .map(|(_, newtons)| (newtons, UL_486));
    let thin = PULL_OUT
        .iter()
        .filter(|(row, _)| reaches(*row))
        .map(|(_, newtons)| (*newtons, IEC_60352_2));
    thin.chain(thick).last()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_tables_agree_where_they_overlap() {
        for (number, pounds) in PULL_OUT_AWG.iter().filter(|(number, _)| *number >= 8) {
            let area = crate::conductors::awg_area(*number);
            let (newtons, source) = pull_out_force(area).expect("within the table");
            assert_eq!(source, IEC_60352_2);
            let ratio = newtons / (pounds * POUND_FORCE);
            assert!((0.75..=1.25).contains(&ratio), "{number} AWG: {ratio}");
        }
    }

    #[test]
    fn a_thicker_conductor_bears_no_less_and_a_hair_is_not_tried() {
        let forces: Vec<f64> = model::conductor::METRIC_SERIES
            .iter()
            .filter_map(|area| pull_out_force(SquareMm(*area)).map(|(force, _)| force))
            .collect();
        assert_eq!(forces.len(), model::conductor::METRIC_SERIES.len());
        assert!(forces.is_sorted(), "{forces:?}");
        assert_eq!(pull_out_force(SquareMm(0.1)), None);
        assert_eq!(pull_out_force(SquareMm(2.5)), Some((230.0, IEC_60352_2)));
        // 4 AWG, 21.15 mm²: 140 lbf.
        let (force, source) = pull_out_force(SquareMm(25.0)).expect("within the table");
        assert!((force - 140.0 * POUND_FORCE).abs() < 1e-9 && source == UL_486);
    }
}
