//! Laws that hold for every input, and the few that hold of the tables as a whole.

use model::conductor::{EndingMethod, Material, Size};
use model::job::Profile;
use model::kinds::supply::Chemistry;
use model::quantity::*;
use proptest::prelude::*;
use reference::ampacity::*;
use reference::fuses::*;
use reference::{battery, conductors, insulation, protection};

fn any_finite() -> impl Strategy<Value = f64> {
    prop_oneof![
        proptest::num::f64::NORMAL
            | proptest::num::f64::ZERO
            | proptest::num::f64::SUBNORMAL
            | proptest::num::f64::NEGATIVE,
        -300.0..2000.0f64,
        0.01..200.0f64,
        Just(f64::MAX),
        Just(f64::MIN),
    ]
}

proptest! {
    #[test]
    fn never_nan(a in any_finite(), b in any_finite(), c in any_finite(), n in any::<u32>(), which in 0usize..5) {
        let material = Material::ALL[which];
        let query = AmpacityQuery { material, area: SquareMm(a), insulation: Celsius(b), ambient: Celsius(c), bundled: n };
        let amps = allowable_current(query).0;
        prop_assert!(amps.is_finite() && amps >= 0.0);
        prop_assert!(rise_at(query, Amps(c)).0.is_finite());
        let r = conductors::nominal_resistance_per_metre(material, Size::Metric(SquareMm(a)), Celsius(b)).0;
        prop_assert!(r.is_finite() && r > 0.0);
        prop_assert!(insulation::adiabatic_k(material, Celsius(a), Celsius(b)).is_finite());
        for family in FuseFamily::ALL {
            let time = operating_time(*family, a);
            prop_assert!(time.fastest.0 >= 0.0 && time.fastest.0 <= time.slowest.0);
            prop_assert!(fuse_resistance(*family, Amps(a)).usual.0 > 0.0);
        }
        for chemistry in Chemistry::ALL {
            prop_assert!(battery::open_circuit_voltage(*chemistry, Share(a)).0 > 9.0);
        }
    }

    #[test]
    fn current_grows_with_size_and_insulation_and_falls_with_heat(
        area in 0.1..150.0f64, more in 1.0..1.5f64, rating in 40.0..200.0f64, hotter in 0.0..60.0f64, ambient in -20.0..120.0f64,
    ) {
        let query = AmpacityQuery { material: Material::Copper, area: SquareMm(area), insulation: Celsius(rating), ambient: Celsius(ambient), bundled: 1 };
        let amps = allowable_current(query).0;
        let slack = amps * (1.0 + 1e-12);
        let with = |query| allowable_current(query).0 * (1.0 + 1e-12);
        let larger = AmpacityQuery { area: SquareMm(area * more), ..query };
prop_assert!(with(larger) >= amps);
        let better = AmpacityQuery { insulation: Celsius(rating + hotter), ..query };
prop_assert!(with(better) >= amps);
        let hot = AmpacityQuery { ambient: Celsius(ambient + hotter), ..query };
        prop_assert!(allowable_current(hot).0 <= slack);
        let clad = AmpacityQuery { material: Material::CladAluminium15, ..query };
        prop_assert!(allowable_current(clad).0 <= slack);
        let bundle = AmpacityQuery { bundled: 4, ..query };
        prop_assert!(allowable_current(bundle).0 <= slack);
    }

    #[test]
    fn resistance_falls_with_size_and_grows_with_heat(area in 0.05..200.0f64, more in 1.01..2.0f64, t in -40.0..150.0f64) {
        let r = |area: f64, t: f64| conductors::nominal_resistance_per_metre(Material::Copper, Size::Metric(SquareMm(area)), Celsius(t)).0;
        prop_assert!(r(area * more, t) < r(area, t));
        prop_assert!(r(area, t + 10.0) > r(area, t));
    }

    #[test]
    fn a_fuse_opens_sooner_at_more_current(which in 0usize..9, multiple in 0.5..20.0f64, more in 1.0..2.0f64) {
        let family = FuseFamily::ALL[which];
        let (slow, fast) = (operating_time(family, multiple), operating_time(family, multiple * more));
        prop_assert!(fast.fastest.0 <= slow.fastest.0 * (1.0 + 1e-9));
        prop_assert!(fast.slowest.0 <= slow.slowest.0 * (1.0 + 1e-9));
    }
}

#[test]
fn fuses_hold_and_open_as_published() {
    // ref: fuses.csv; ISO 8820-3: 110 % carried 100 h, 135 % need not open before 1800 s; memory
    assert!(operating_time(FuseFamily::Regular, 1.0).fastest.0.is_infinite());
    assert!(operating_time(FuseFamily::Regular, 1.1).fastest.0 >= 360_000.0);
    assert!(operating_time(FuseFamily::Regular, 1.2).slowest.0.is_infinite());
    // ref: SAE J1284: 350 % within 0.08 to 0.5 s, which lies inside the ISO band; memory
    let at_350 = operating_time(FuseFamily::Regular, 3.5);
    assert!(at_350.fastest.0 <= 0.08 && at_350.slowest.0 >= 0.5);
    // ref: fuses.csv; rule of thumb 0.06 to 0.09 V over the rating: every typical row lies near it
    for family in FuseFamily::ALL {
        let data = reference::fuses::family(*family);
        assert!(data.ratings.windows(2).all(|pair| pair[0] < pair[1]));
        for (rating, milliohms) in data.resistance {
            let drop = rating * milliohms * 1e-3;
            assert!((0.047..=0.0905).contains(&drop), "{family:?} {rating}: {drop}");
        }
    }
    // ref: ISO 8820-3:2015 scope, 1000 A; read
    assert_eq!(
        reference::fuses::family(FuseFamily::Maxi).breaking_capacity,
        Some(Amps(1000.0))
    );
    // ref: Denton table 3.2; read
    assert_eq!(body_colour(FuseFamily::Mini, Amps(10.0)), Some("red"));
    assert_eq!(body_colour(FuseFamily::Maxi, Amps(60.0)), Some("blue"));
    assert_eq!(
        rating_not_above(FuseFamily::Strip61, Amps(120.0)),
        Some(Amps(100.0))
    );
    assert_eq!(rating_not_below(FuseFamily::Mini, Amps(31.0)), None);
    // ref: ABYC E-11 interrupt capacity, 651 to 1100 A: 3000 main, 1500 branch; memory
    assert_eq!(required_interrupt(Amps(651.0), true), Amps(3000.0));
    assert_eq!(required_interrupt(Amps(650.0), false), Amps(750.0));
}

#[test]
fn resting_voltages_against_a_second_source() {
    // ref: battery.csv; a second flooded table reads 12.6 12.4 12.2 12.0 11.6 V; read. The spread is up to 0.3 V.
    for (charge, volts) in [(1.0, 12.6), (0.75, 12.4), (0.5, 12.2), (0.25, 12.0), (0.0, 11.6)] {
        let ours = battery::open_circuit_voltage(Chemistry::Flooded, Share(charge)).0;
        assert!((ours - volts).abs() <= 0.3, "{charge}: {ours}");
    }
}

#[test]
fn limits_are_whole() {
    let keys = |profile| {
        protection::limits(profile)
            .iter()
            .map(|limit| limit.key)
            .collect::<Vec<_>>()
    };
    let common = keys(Profile::CommonPractice);
    assert_eq!(common, keys(Profile::SmallCraft));
    let unique: std::collections::BTreeSet<_> = common.iter().collect();
    assert_eq!(unique.len(), common.len());
    assert!(
        common
            .iter()
            .all(|key| key.chars().all(|c| c.is_ascii_lowercase() || c == '-'))
    );
    let value = |profile, key: &str| protection::limit(profile, key).map(|limit| limit.value);
    // ref: 33 CFR 183.455, 7 in and 40 in; read. 72 in: ABYC E-11, read in a summary
    for (key, inches) in [
        ("fuse-reach", 7.0),
        ("fuse-reach-sheathed", 40.0),
        ("fuse-reach-sheathed-battery", 72.0),
    ] {
        let metres = value(Profile::SmallCraft, key).expect("in the profile");
        assert!((metres - inches * 0.0254).abs() < 0.0006, "{key}");
    }
    // ref: ISO 10133:2012 clause 7.3 and 7.4; read
    assert_eq!(value(Profile::SmallCraft, "support-spacing"), Some(0.45));
    assert_eq!(value(Profile::SmallCraft, "support-spacing-battery"), Some(0.3));
    assert_eq!(value(Profile::CommonPractice, "no-such-limit"), None);
}

#[test]
fn joints_get_worse_with_the_work() {
    // common practice: soldered and crimped joints are better than bare screws, those better than twisted strands
    let usual = |method| {
        reference::contacts::ending_resistance(method, SquareMm(16.0)).map_or(f64::INFINITY, |r| r.usual.0)
    };
    let order = [
        EndingMethod::Soldered,
        EndingMethod::CrimpedRing,
        EndingMethod::ScrewedBare,
        EndingMethod::Twisted,
        EndingMethod::Loose,
    ];
    assert!(order.windows(2).all(|pair| usual(pair[0]) < usual(pair[1])));
}

#[test]
fn two_colours_join_in_table_order() {
    // ref: IEC 60757:2021 clause 5.1, red and blue is RDBU; read
    assert_eq!(reference::colours::joined("BU", "RD").as_deref(), Some("RDBU"));
    assert_eq!(reference::colours::joined("WH", "BK").as_deref(), Some("BKWH"));
    assert_eq!(reference::colours::joined("RD", "RD"), None);
    // The letters of the model are those of the standard's table.
    for colour in model::conductor::Colour::ALL {
        assert!(
            reference::colours::place(colour.word()).is_some(),
            "{}",
            colour.word()
        );
    }
}
