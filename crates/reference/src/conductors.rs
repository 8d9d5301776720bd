//! Conductor sizes and their resistance: metric classes, AWG geometry, NEC chapter 9.
//!
//! Two figures are offered, because a nominal metric size is a resistance class and not an area:
//! [`resistance_per_metre`] is ρ/A of a *true* cross-section, for a conductor that was measured or counted;
//! [`nominal_resistance_per_metre`] is what a cable *sold* under a size may have at most, and it is what the engine
//! takes for a run that is known by its size only. It lies 10 to 16 % above ρ/A in metric sizes, 2 % in AWG sizes.

use crate::Source;
use crate::interpolate::linear;
use crate::materials::{COPPER_RESISTIVITY_20C, data, temperature_factor};
use model::conductor::{Material, Size};
use model::quantity::{Amps, Celsius, Metres, OhmsPerMetre, SquareMm, Volts};

/// Maximum resistance by nominal size: mm² and mΩ/m at 20 °C.
pub type ResistanceClass = &'static [(f64, f64)];

/// Where the IEC 60228 tables come from.
pub const IEC_60228: Source =
    Source::read("IEC 60228:2004 (DIN VDE 0295), maximum resistance of conductors at 20 degC");
/// Where the ISO 6722-1 table comes from. 0.35, 5 and 30 mm² sit off the trend of their neighbours.
pub const ISO_6722_1: Source = Source::memory("ISO 6722-1:2011, carried over in ISO 19642-3:2019");

/// IEC 60228 class 5 (fine-stranded), plain copper: mm², mΩ/m at 20 °C.
pub const CLASS_5_PLAIN: ResistanceClass = &[
    (0.5, 39.0),
    (0.75, 26.0),
    (1.0, 19.5),
    (1.5, 13.3),
    (2.5, 7.98),
    (4.0, 4.95),
    (6.0, 3.3),
    (10.0, 1.91),
    (16.0, 1.21),
    (25.0, 0.78),
    (35.0, 0.554),
    (50.0, 0.386),
    (70.0, 0.272),
    (95.0, 0.206),
    (120.0, 0.161),
];
/// IEC 60228 class 5, tinned copper.
pub const CLASS_5_TINNED: ResistanceClass = &[
    (0.5, 40.1),
    (0.75, 26.7),
    (1.0, 20.0),
    (1.5, 13.7),
    (2.5, 8.21),
    (4.0, 5.09),
    (6.0, 3.39),
    (10.0, 1.95),
    (16.0, 1.24),
    (25.0, 0.795),
    (35.0, 0.565),
    (50.0, 0.393),
    (70.0, 0.277),
    (95.0, 0.21),
    (120.0, 0.164),
];
/// IEC 60228 class 2 (stranded), plain copper. At 50 mm² class 5 lies below it; that is how the standard has it.
pub const CLASS_2_PLAIN: ResistanceClass = &[
    (0.5, 36.0),
    (0.75, 24.5),
    (1.0, 18.1),
    (1.5, 12.1),
    (2.5, 7.41),
    (4.0, 4.61),
    (6.0, 3.08),
    (10.0, 1.83),
    (16.0, 1.15),
    (25.0, 0.727),
    (35.0, 0.524),
    (50.0, 0.387),
    (70.0, 0.268),
    (95.0, 0.193),
    (120.0, 0.153),
];
/// IEC 60228 class 2, aluminium.
pub const CLASS_2_ALUMINIUM: ResistanceClass = &[
    (10.0, 3.08),
    (16.0, 1.91),
    (25.0, 1.2),
    (35.0, 0.868),
    (50.0, 0.641),
    (70.0, 0.443),
    (95.0, 0.32),
    (120.0, 0.253),
];
/// ISO 6722-1 road-vehicle cable, plain copper.
#[expect(clippy::approx_constant, reason = "a published 3.14, not pi")]
pub const ROAD_VEHICLE_PLAIN: ResistanceClass = &[
    (0.35, 54.4),
    (0.5, 37.1),
    (0.75, 24.7),
    (1.0, 18.5),
    (1.25, 14.9),
    (1.5, 12.7),
    (2.0, 9.42),
    (2.5, 7.6),
    (3.0, 6.15),
    (4.0, 4.71),
    (5.0, 3.94),
    (6.0, 3.14),
    (8.0, 2.38),
    (10.0, 1.82),
    (12.0, 1.52),
    (16.0, 1.16),
    (20.0, 0.955),
    (25.0, 0.743),
    (30.0, 0.647),
    (35.0, 0.527),
    (40.0, 0.473),
    (50.0, 0.368),
    (60.0, 0.315),
    (70.0, 0.259),
    (95.0, 0.196),
    (120.0, 0.153),
];

/// A row of NEC chapter 9 table 8: resistance at 75 °C in Ω per 1000 ft, as published.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NecRow {
    /// AWG number; 0 is 1/0, -3 is 4/0.
    pub awg: i8,
    /// Stranded, uncoated copper.
    pub stranded_uncoated: f64,
    /// Stranded, tinned copper.
    pub stranded_coated: f64,
    /// Solid, uncoated copper, where listed.
    pub solid_uncoated: Option<f64>,
}

/// Where [`NEC_TABLE_8`] comes from.
pub const NEC_CHAPTER_9: Source =
    Source::read("NFPA 70 Chapter 9 Table 8, direct-current resistance at 75 degC");

/// NEC chapter 9 table 8, 4/0 to 18 AWG.
#[expect(clippy::approx_constant, reason = "a published 3.14, not pi")]
pub const NEC_TABLE_8: &[NecRow] = &[
    NecRow {
        awg: -3,
        stranded_uncoated: 0.0608,
        stranded_coated: 0.0626,
        solid_uncoated: None,
    },
    NecRow {
        awg: -2,
        stranded_uncoated: 0.0766,
        stranded_coated: 0.0797,
        solid_uncoated: None,
    },
    NecRow {
        awg: -1,
        stranded_uncoated: 0.0967,
        stranded_coated: 0.101,
        solid_uncoated: None,
    },
    NecRow {
        awg: 0,
        stranded_uncoated: 0.122,
        stranded_coated: 0.127,
        solid_uncoated: None,
    },
    NecRow {
        awg: 1,
        stranded_uncoated: 0.154,
        stranded_coated: 0.16,
        solid_uncoated: None,
    },
    NecRow {
        awg: 2,
        stranded_uncoated: 0.194,
        stranded_coated: 0.201,
        solid_uncoated: None,
    },
    NecRow {
        awg: 3,
        stranded_uncoated: 0.245,
        stranded_coated: 0.254,
        solid_uncoated: None,
    },
    NecRow {
        awg: 4,
        stranded_uncoated: 0.308,
        stranded_coated: 0.321,
        solid_uncoated: None,
    },
    NecRow {
        awg: 6,
        stranded_uncoated: 0.491,
        stranded_coated: 0.51,
        solid_uncoated: None,
    },
    NecRow {
        awg: 8,
        stranded_uncoated: 0.778,
        stranded_coated: 0.809,
        solid_uncoated: Some(0.764),
    },
    NecRow {
        awg: 10,
        stranded_uncoated: 1.24,
        stranded_coated: 1.29,
        solid_uncoated: Some(1.21),
    },
    NecRow {
        awg: 12,
        stranded_uncoated: 1.98,
        stranded_coated: 2.05,
        solid_uncoated: Some(1.93),
    },
    NecRow {
        awg: 14,
        stranded_uncoated: 3.14,
        stranded_coated: 3.26,
        solid_uncoated: Some(3.07),
    },
    NecRow {
        awg: 16,
        stranded_uncoated: 4.99,
        stranded_coated: 5.29,
        solid_uncoated: Some(4.89),
    },
    NecRow {
        awg: 18,
        stranded_uncoated: 7.95,
        stranded_coated: 8.45,
        solid_uncoated: Some(7.77),
    },
];

/// Metres in 1000 ft.
pub const METRES_PER_KILOFOOT: f64 = 304.8;
/// Area of a circular mil (a circle of a thousandth of an inch across), in mm².
pub const CIRCULAR_MIL: SquareMm = SquareMm(core::f64::consts::FRAC_PI_4 * 0.0254 * 0.0254);

/// Stranding factor of AWG cable: its resistance over that of a solid wire of the same number. Strands lie at an angle
/// and so are longer than the cable.
///
/// Source: NEC chapter 9 table 8 (read), stranded over solid 1.02: 4/0 AWG stranded referred to 20 °C is
/// 0.1640 mΩ/m against 0.1608 mΩ/m by the formula.
pub const AWG_STRANDING: f64 = 1.02;

/// Diameter of a solid wire of an AWG number: 0.127 mm · 92^((36 − n)/39). 0 is 1/0, −3 is 4/0.
///
/// Source: ASTM B258.
#[must_use]
pub fn awg_diameter(number: i8) -> Metres {
    Metres(0.127e-3 * libm::pow(92.0, (36.0 - f64::from(number)) / 39.0))
}

/// Cross-section of an AWG number by the same definition.
#[must_use]
pub fn awg_area(number: i8) -> SquareMm {
    Size::Awg(number).area()
}

/// Resistance per metre of a conductor whose true metal cross-section is known: ρ₂₀/A · (1 + α₂₀ (T − 20 °C)).
///
/// Range: area 0.0001 to 10 000 mm² (the nearer end is taken outside), temperature as in [`temperature_factor`].
/// Source: definition, with the material's figures from [`crate::materials`].
#[must_use]
pub fn resistance_per_metre(material: Material, area: SquareMm, temperature: Celsius) -> OhmsPerMetre {
    let area = area.0.clamp(1e-4, 10_000.0);
    OhmsPerMetre(data(material).resistivity / area * temperature_factor(material, temperature))
}

/// How much more a cable sold under a nominal metric size may have than ρ/A of that size.
///
/// The factor of IEC 60228 class 5 plain copper, interpolated in the logarithm of size between its rows; the end
/// factors hold beyond 0.5 and 120 mm². Class 5 is taken rather than ISO 6722-1 because it was read where the other
/// is remembered, and because its limits are the higher ones, up to 8 %.
#[must_use]
pub fn metric_stranding(size: SquareMm) -> f64 {
    let size = size.0.clamp(1e-4, 10_000.0);
    // Only the rows on either side are worked out; beyond the ends both are the end row.
    let last = CLASS_5_PLAIN.len().saturating_sub(1);
    let above = CLASS_5_PLAIN.iter().position(|(row, _)| size <= *row);
    let [below, above] = above.map_or([last; 2], |above| [above.saturating_sub(1), above]);
    let point = |at: usize| {
        let (row, milliohms) = CLASS_5_PLAIN.get(at).copied().unwrap_or((1.0, 0.0));
        (
            libm::log(row),
            milliohms * row / (COPPER_RESISTIVITY_20C * 1000.0),
        )
    };
    linear(&[point(below), point(above)], libm::log(size))
}

/// Resistance per metre of a cable known by its nominal size only: an upper figure, and what the engine takes.
///
/// Metric: ρ/A times [`metric_stranding`], which gives the class 5 limit itself in the sizes of the series; another
/// material scales by its resistivity. AWG: ρ/A of the geometric area times [`AWG_STRANDING`].
/// Range as [`resistance_per_metre`].
#[must_use]
pub fn nominal_resistance_per_metre(material: Material, size: Size, temperature: Celsius) -> OhmsPerMetre {
    let factor = match size {
        Size::Metric(area) => metric_stranding(area),
        Size::Awg(_) => AWG_STRANDING,
    };
    resistance_per_metre(material, size.area(), temperature) * factor
}

/// Resistance at another temperature by the constant of inferred zero resistance: R₂ = R₁ (234.5 + T₂)/(234.5 + T₁).
/// Copper only; −60 °C to 1100 °C.
///
/// Source: NEC chapter 9 table 8 note; IEC 60364-5-54 Annex A (from memory).
#[must_use]
pub fn copper_resistance_at(resistance: OhmsPerMetre, from: Celsius, to: Celsius) -> OhmsPerMetre {
    let at = |t: Celsius| 234.5 + t.0.clamp(-60.0, 1100.0);
    resistance * (at(to) / at(from))
}

/// Cross-section that a measured drop points to: A = ρ (1 + α (T − 20 °C)) L I / U.
///
/// `None` unless drop, current and length are all above zero. This is the area of the stated metal that would give
/// the drop; a jacket that claims half as much again hides aluminium or air.
#[must_use]
pub fn area_from_drop(
    material: Material,
    length: Metres,
    current: Amps,
    drop: Volts,
    temperature: Celsius,
) -> Option<SquareMm> {
    if !(drop.0 > 0.0 && current.0 > 0.0 && length.0 > 0.0) {
        return None;
    }
    let area = data(material).resistivity * temperature_factor(material, temperature) * length.0 * current.0
        / drop.0;
    area.is_finite().then_some(SquareMm(area))
}

/// Cross-section from strands counted and measured: n π d²/4. A diameter outside 0 to 1 m is taken as the nearer end.
#[must_use]
pub fn area_from_strands(strands: u32, strand_diameter: Metres) -> SquareMm {
    let millimetres = strand_diameter.0.clamp(0.0, 1.0) * 1000.0;
    SquareMm(f64::from(strands) * core::f64::consts::FRAC_PI_4 * millimetres * millimetres)
}
