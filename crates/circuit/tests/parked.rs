//! The parked state: what stands on a battery for days, and what is told of it. Expected values are derived beside each test.

use approx::assert_relative_eq;
use circuit::Study;
use model::job::VehicleState;
use model::quantity::Hours;
use model::{Fact, PartId, Settings, Sheet};

/// Parked for 100 hours.
fn parked(text: &str) -> (Sheet, Study) {
    let sheet = testkit::sheet(text);
    let mut settings = Settings::default();
    settings.conditions.state = VehicleState::Parked;
    settings.conditions.parking = Fact::Given(Hours(100.0));
    let study = circuit::study(&sheet, &settings);
    assert_eq!(study.outcome, circuit::Outcome::Solved, "{text}");
    (sheet, study)
}

fn id(sheet: &Sheet, tag: &str) -> PartId {
    sheet.part_by_tag(tag).expect("a part of this tag").0
}

const LOAD: &str = "run W1 B1.+ L1.+ 16mm2 1m\nrun W2 L1.- B1.- 16mm2 1m\n";

/// 100 Ah at the rate of 20 hours and next to nothing drawn: below 1 mA nothing is told, and a lithium battery, whose exponent is
/// near 1, lasts more than the 87 600 hours of ten years at 1.1 mA.
#[test]
fn when_a_battery_is_flat_is_told_where_something_is_drawn() {
    for (battery, amps, told) in [
        ("lithium", "0A", false),
        ("lithium", "0.0009A", false),
        ("lithium", "0.0011A", false),
        ("lithium", "0.1A", true),
        ("agm", "10A", true),
    ] {
        let (sheet, study) = parked(&format!(
            "battery B1 {battery} 100Ah charge=100%\nload L1 law=current current={amps} when=always\n{LOAD}"
        ));
        let hours = study.energy.hours_to_flat.get(&id(&sheet, "B1"));
        assert_eq!(hours.is_some(), told, "{battery} {amps}: {hours:?}");
        assert!(hours.is_none_or(|h| h.0 > 1.0 && h.0 <= 87_600.0));
    }
}

/// Two batteries in parallel, 60 Ah at 90 % and 40 Ah at 60 %, and 0.1 A: amperes flow from one to the other, yet 0.1 A stand, and
/// in 100 hours 10 Ah are gone, borne by capacity: a tenth of each.
#[test]
fn what_batteries_pass_to_each_other_is_no_drain() {
    let (sheet, study) = parked(&format!(
        "battery B1 agm 60Ah charge=90%\nbattery B2 agm 40Ah charge=60%\nload L1 law=current current=0.1A when=always\n{LOAD}\
         run W3 B1.+ B2.+ 35mm2 1m\nrun W4 B2.- B1.- 35mm2 1m\n"
    ));
    let of = |tag| id(&sheet, tag);
    assert!(
        study.parts[&of("B1")].current.mean.0 > 1.0,
        "the fuller battery charges the other"
    );
    assert_relative_eq!(study.energy.standing.0, 0.1, max_relative = 1e-6);
    let left = |tag| study.energy.charge_after_parking[&of(tag)].0;
    assert_relative_eq!(left("B1"), 0.8, max_relative = 1e-6);
    assert_relative_eq!(left("B2"), 0.5, max_relative = 1e-6);
}

/// A switch in the only live or return way to several parts stays on while parked (common practice), one before a part alone, one
/// beside other ways and one that is off do not.
#[test]
fn a_battery_master_switch_stays_on_while_parked() {
    let parts = "battery B1 agm 70Ah\nload L1 law=current current=0.1A when=always\nload L2 law=current current=0.2A when=always\n";
    let live = "run W1 B1.+ S1.in 16mm2 1m\nrun W2 S1.out L1.+ 16mm2 1m\nrun W3 L1.- B1.- 16mm2 1m\nrun W4 L2.- B1.- 16mm2 1m\n";
    let back = "run W1 B1.- S1.in 16mm2 1m\nrun W2 S1.out L1.- 16mm2 1m\nrun W3 B1.+ L1.+ 16mm2 1m\nrun W4 B1.+ L2.+ 16mm2 1m\n";
    for (name, runs, switch, standing) in [
        ("live", format!("{live}run W5 L1.+ L2.+ 16mm2 1m"), "", 0.3),
        ("return", format!("{back}run W5 L1.- L2.- 16mm2 1m"), "", 0.3),
        (
            "off",
            format!("{live}run W5 L1.+ L2.+ 16mm2 1m"),
            "closed=no",
            0.0,
        ),
        ("beside", format!("{live}run W5 B1.+ L2.+ 16mm2 1m"), "", 0.2),
        ("alone", live.to_owned(), "", 0.0),
    ] {
        let (_, study) = parked(&format!("{parts}switch S1 {switch}\n{runs}\n"));
        assert!(
            (study.energy.standing.0 - standing).abs() < 1e-6,
            "{name}: {} A instead of {standing} A",
            study.energy.standing.0
        );
    }
}

/// The vehicle alone behind a switch in the return of its battery; and a second battery, charged through an isolator, whose
/// switch is its master all the same.
#[test]
fn a_vehicle_or_a_second_battery_has_its_master_switch() {
    let (_, study) = parked(
        "battery B1 agm 70Ah\nvehicle V1 standing-load=0.03A\nswitch S1\nrun W1 B1.+ V1.+ 35mm2 1m\n\
         run W2 V1.- S1.in 35mm2 1m\nrun W3 S1.out B1.- 35mm2 1m\n",
    );
    assert_relative_eq!(study.energy.standing.0, 0.03, max_relative = 1e-6);
    let (_, study) = parked(
        "battery B1 agm 70Ah\nbattery B2 agm 70Ah\nisolator T1 sensing\nload L1 law=current current=0.1A when=always\n\
         load L2 law=current current=0.2A when=always\nload L3 law=current current=0.05A when=always\nswitch S1\n\
         run W1 B1.+ T1.main 16mm2 1m\nrun W2 T1.aux B2.+ 16mm2 1m\nrun W3 B1.- B2.- 16mm2 1m\nrun W4 B2.+ S1.in 16mm2 1m\n\
         run W5 S1.out L1.+ 16mm2 1m\nrun W6 S1.out L2.+ 16mm2 1m\nrun W7 L1.- B2.- 16mm2 1m\nrun W8 L2.- B2.- 16mm2 1m\n\
         run W9 B1.+ L3.+ 16mm2 1m\nrun W10 L3.- B1.- 16mm2 1m\n",
    );
    assert_relative_eq!(study.energy.standing.0, 0.35, max_relative = 1e-6);
}

/// An amplifier draws its idle current of 1.2 A and 0.01 A at its turn-on input for as long as the lead is live, parked too, and
/// 0.002 A where the ignition ends it. Common practice.
#[test]
fn what_is_never_told_to_turn_off_stays_on_while_parked() {
    let rest = "battery B1 agm 70Ah\nfuse F1 strip61 60A\nrun W1 B1.+ F1.in 16mm2 0.3m\nrun W2 F1.out A1.+ 16mm2 1m\n\
                run W3 A1.- B1.- 16mm2 1m\n";
    let amplifier = |turn_on: &str| {
        format!(
            "amplifier A1 idle-current=1.2A turn-on-current=0.01A standby-current=0.002A turn-on={turn_on}\n"
        )
    };
    let live = "run W4 F1.out A1.rem 0.75mm2 1m\n";
    let switched = "switch S1\nrun W4 F1.out S1.in 0.75mm2 1m\nrun W5 S1.out A1.rem 0.75mm2 1m\n";
    for (turn_on, lead, standing) in [
        ("lead", live, 1.21),
        ("either", live, 1.21),
        ("lead", switched, 0.002),
        ("lead", "", 0.002),
    ] {
        let (_, study) = parked(&format!("{rest}{}{lead}", amplifier(turn_on)));
        assert_relative_eq!(study.energy.standing.0, standing, max_relative = 1e-4);
    }
}
