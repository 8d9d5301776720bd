//! Worked examples from outside: each names its source and how it is known.

use approx::assert_relative_eq;
use model::conductor::{Material, Size};
use model::kinds::sound::AmplifierClass;
use model::kinds::supply::CrankingStandard;
use model::quantity::*;
use reference::ampacity::*;
use reference::conductors::*;
use reference::fuses::{FuseFamily, operating_time};
use reference::insulation::*;
use reference::{audio, battery};

const ROOM: Celsius = Celsius(20.0);

#[test]
fn twelve_gauge_solid_copper() {
    // ref: worked_examples.csv WE13; ASTM B258 with IACS; handbook 1.588 ohm/kft; derived
    let r = resistance_per_metre(Material::Copper, awg_area(12), ROOM);
    assert_relative_eq!(r.0, 0.005_210_693_1, max_relative = 1e-4);
    assert_relative_eq!(r.0 * METRES_PER_KILOFOOT, 1.588, max_relative = 1e-3);
}

#[test]
fn temperature_correction() {
    // ref: WE14; NFPA 70 Chapter 9 Table 8, 4 AWG, and its note; read
    let at_20 = copper_resistance_at(OhmsPerMetre(0.308), Celsius(75.0), ROOM);
    assert_relative_eq!(at_20.0, 0.253_266_56, max_relative = 1e-4);
    // ref: WE15; IACS constants; derived
    let rise = copper_resistance_at(OhmsPerMetre(1.0), ROOM, Celsius(60.0));
    assert_relative_eq!(rise.0, 1.157_170_9, max_relative = 1e-6);
    let factor = reference::materials::temperature_factor(Material::Copper, Celsius(60.0));
    assert_relative_eq!(factor, 1.1572, max_relative = 1e-6);
    // ref: WE16; IEC 60228 temperature correction table; read. It rounds the coefficient to 0.004, so the exact law
    // differs from it by up to 0.4 % at 100 degC.
    for (t, published) in [(25.0, 0.980), (50.0, 0.893), (100.0, 0.758)] {
        let ours = 1.0 / reference::materials::temperature_factor(Material::Copper, Celsius(t));
        assert_relative_eq!(ours, published, max_relative = 0.0055);
    }
}

#[test]
fn voltage_drop() {
    // ref: WE17; IEC 60228 class 5, 16 mm2 = 1.21 mohm/m; read
    let r = nominal_resistance_per_metre(Material::Copper, Size::Metric(SquareMm(16.0)), ROOM);
    assert_relative_eq!((Amps(60.0) * (r * Metres(6.0))).0, 0.4356, max_relative = 1e-6);
    // ref: WE18; ABYC E-11 11.14.2.6, CM = K I L / E with K 10.75; read. 2 AWG is the next size up.
    let least = 10.75 * 100.0 * 20.0 / 0.36;
    let mils = |awg| awg_area(awg).0 / CIRCULAR_MIL.0;
    assert!(mils(2) >= least && mils(3) < least, "{} {}", mils(2), mils(3));
    assert_relative_eq!(mils(2), 66_371.0, max_relative = 1e-4);
    // ref: WE19; NFPA 70 Chapter 9 Table 8, 2 AWG = 0.194 ohm/kft at 75 degC; read
    let r = nominal_resistance_per_metre(Material::Copper, Size::Awg(2), Celsius(75.0));
    assert_relative_eq!(
        (Amps(100.0) * (r * Metres(20.0 * 0.3048))).0,
        0.388,
        max_relative = 0.01
    );
    // ref: WE60; ABYC K 10.75 is copper at about 29.3 degC, 10.371 at 20 degC; read
    let k = |t| resistance_per_metre(Material::Copper, CIRCULAR_MIL, Celsius(t)).0 * 0.3048;
    assert_relative_eq!(k(20.0), 10.370_987, max_relative = 1e-4);
    assert_relative_eq!(k(29.3), 10.75, max_relative = 1e-3);
}

#[test]
fn speaker_lead() {
    // ref: WE36; ASTM B258 with IACS; derived
    let r = resistance_per_metre(Material::Copper, awg_area(16), ROOM) * Metres(6.0);
    assert_relative_eq!(r.0, 0.079_045_112, max_relative = 1e-4);
    let loss = audio::lead_loss(Ohms(4.0), r).expect("both are above zero");
    assert_relative_eq!(loss.0, 0.169_970_34, max_relative = 1e-4);
}

#[test]
fn fuse_against_wire() {
    // ref: WE41, WE43, WE45; IEC 60364-4-43 434.5.2, k 115 read in BS 7671 table 43.1; fuse times from memory
    let rows = [
        (FuseFamily::Regular, 30.0, 60.0, 2.5, 5.0, 18_000.0),
        (FuseFamily::Regular, 30.0, 180.0, 1.0, 0.1, 3240.0),
        (FuseFamily::Strip51, 100.0, 600.0, 25.0, 1.0, 360_000.0),
    ];
    for (family, rating, current, area, time, let_through) in rows {
        let slowest = operating_time(family, current / rating).slowest;
        assert_relative_eq!(slowest.0, time, max_relative = 1e-9);
        assert_relative_eq!(current * current * slowest.0, let_through, max_relative = 1e-6);
        let k = adiabatic_k(Material::Copper, Celsius(70.0), short_limit(Celsius(70.0)));
        assert!(let_through * 1.7 < (k * area) * (k * area));
    }
}

#[test]
fn melting() {
    // ref: WE48, WE49; Onderdonk; 168.9 A (a forum's 178 A has a sign slip); 31 kA printed in Wikibooks, read
    let current = |mils: f64, t| {
        onderdonk_current(CIRCULAR_MIL * mils, Seconds(t), Celsius(25.0))
            .expect("the time is above zero")
            .0
    };
    assert_relative_eq!(current(2581.0, 5.0), 168.863_71, max_relative = 1e-6);
    assert_relative_eq!(current(211_600.0, 1.0), 30_956.296, max_relative = 1e-6);
    // Two laws of different origin agree: k from 25 to 1083 degC against Onderdonk per mm2, short_circuit.csv, 0.5 %.
    let per_mm2 = onderdonk_current(SquareMm(1.0), Seconds(1.0), Celsius(25.0))
        .expect("above zero")
        .0;
    let k = adiabatic_k(Material::Copper, Celsius(25.0), Celsius(1083.0));
    assert_relative_eq!(per_mm2, k, max_relative = 0.006);
    // ref: short_circuit.csv Preece, copper 0.0098 in at 10 A and 0.0457 in at 100 A; nessengr.com table, read
    for (inches, amps) in [(0.0098, 10.0), (0.0457, 100.0)] {
        assert_relative_eq!(
            preece_current(Metres(inches * 0.0254)).0,
            amps,
            max_relative = 0.01
        );
    }
}

#[test]
fn batteries() {
    // ref: WE51; Peukert, rated-hour form; derived
    let time = battery::time_to_flat(AmpHours(100.0), Hours(20.0), Amps(10.0), 1.2).expect("all above zero");
    assert_relative_eq!(time.0, 8.705_505_6, max_relative = 1e-6);
    // ref: WE53; SAE J537 definition, 600 A; read. EN 50342-1: 8.5 mohm, battery.csv
    let sae = battery::internal_resistance(CrankingStandard::Sae, Amps(600.0));
    assert_relative_eq!(sae.most.0, 0.009, max_relative = 1e-6);
    assert!(sae.least.0 >= 0.0045 - 1e-12 && sae.usual.0 <= 0.00585);
    let en = battery::internal_resistance(CrankingStandard::En, Amps(600.0));
    assert_relative_eq!(en.most.0, 0.0085, max_relative = 1e-6);
}

#[test]
fn allowable_current_of_four_gauge() {
    // ref: WE55; 33 CFR 183.425 Table 5 (160 A, 136 A in an engine space) and 183.455(c)(1) (240 A); read
    let query = AmpacityQuery {
        material: Material::Copper,
        area: awg_area(4),
        insulation: Celsius(105.0),
        ambient: Celsius(30.0),
        bundled: 1,
    };
    assert_relative_eq!(allowable_current(query).0, 160.0, max_relative = 1e-9);
    let inside = allowable_current(AmpacityQuery {
        ambient: Celsius(50.0),
        ..query
    });
    assert_relative_eq!(inside.0, 136.0, max_relative = 0.01);
    let craft = reference::protection::limit(model::job::Profile::SmallCraft, "fuse-wire-factor")
        .expect("in the profile");
    assert_relative_eq!(
        allowable_current(query).0 * craft.value,
        240.0,
        max_relative = 1e-9
    );
    // ref: WE56; formula 0.85635 against the table's 0.85; read
    let factor = ambient_factor(Celsius(105.0), Celsius(50.0));
    assert_relative_eq!(factor, 0.856_348_84, max_relative = 1e-6);
    assert!((factor - 0.85).abs() < 0.01);
    // The current that is allowed at an ambient heats the wire to its rating, no more: definition.
    for ambient in [30.0, 50.0, 80.0] {
        let there = AmpacityQuery {
            ambient: Celsius(ambient),
            ..query
        };
        assert_relative_eq!(
            ambient + rise_at(there, allowable_current(there)).0,
            105.0,
            max_relative = 1e-9
        );
    }
}

#[test]
fn continuous_load_and_amplifier_current() {
    // ref: WE57; NFPA 70 210.19 and 215.2, 125 %; memory
    let share = reference::protection::limit(model::job::Profile::CommonPractice, "continuous-load-share")
        .expect("in the profile");
    assert_relative_eq!(100.0 / share.value, 125.0, max_relative = 1e-9);
    // ref: WE58; I = P/(eta V); derived. The efficiencies are the middle of what is practice for class D.
    let full = audio::efficiency(AmplifierClass::D, Share(1.0)).usual;
    let eighth = audio::efficiency(AmplifierClass::D, Share(0.125)).usual;
    let amps = |watts, eta| {
        audio::supply_current(Watts(watts), eta, audio::RATING_VOLTAGE)
            .expect("above zero")
            .0
    };
    assert_relative_eq!(amps(1000.0, full), 86.805_556, max_relative = 1e-6);
    assert_relative_eq!(amps(125.0, eighth), 14.467_593, max_relative = 1e-6);
}
