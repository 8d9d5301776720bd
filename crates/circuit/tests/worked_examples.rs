//! Worked examples of textbooks and closed forms, by elements and, where a sheet can state them, through whole sheets.
//! References: rows WE.. of the table of worked examples, each with its source beside the test.

use approx::assert_relative_eq;
use circuit::solve::{Element, Law, NoAnswer, System};
use circuit::{Outcome, Study, study};
use model::job::VehicleState;
use model::quantity::{Metres, Ohms};
use model::{Fact, Settings, Sheet};

fn element(a: usize, b: usize, law: Law) -> Element {
    Element { nodes: [a, b], law }
}

fn source(a: usize, b: usize, emf: f64, resistance: f64) -> Element {
    element(a, b, Law::Source { emf, resistance })
}

fn ohms(a: usize, b: usize, ohms: f64) -> Element {
    element(a, b, Law::Resistance(ohms))
}

/// Solves with node 0 as reference: node voltages and element currents.
fn solve(nodes: usize, elements: &[Element]) -> Result<(Vec<f64>, Vec<f64>), NoAnswer> {
    let mut system = System::new(nodes, elements);
    system.solve(elements, &[0], 1.0)?;
    let closure = system.closure(elements);
    assert!(
        closure.relative_residual() < 1e-6 && closure.relative_power().abs() < 1e-6,
        "{closure:?}"
    );
    Ok((system.voltages().to_vec(), system.currents().to_vec()))
}

fn solved(nodes: usize, elements: &[Element]) -> (Vec<f64>, Vec<f64>) {
    solve(nodes, elements).expect("this network has a solution")
}

/// A sheet whose runs have neither length nor contact resistance, engine off.
fn study_bare(text: &str) -> (Sheet, Study) {
    let mut sheet = testkit::sheet(text);
    for run in sheet.runs.values_mut() {
        run.wire.length = Fact::Given(Metres(0.0));
        run.from_ending.resistance = Fact::Given(Ohms(0.0));
        run.to_ending.resistance = Fact::Given(Ohms(0.0));
    }
    let mut settings = Settings::default();
    settings.conditions.state = VehicleState::EngineOff;
    let study = study(&sheet, &settings);
    (sheet, study)
}

fn part<'a>(sheet: &Sheet, study: &'a Study, tag: &str) -> &'a circuit::PartFlow {
    let (id, _) = sheet.part_by_tag(tag).expect("a part of this tag");
    &study.parts[&id]
}

// ref: worked_examples WE01, WE02, WE03; OpenStax College Physics 21.2; read
#[test]
fn source_with_internal_resistance_feeds_a_load() {
    for (r, load, amps, volts, watts) in [
        (0.1, 10.0, 1.188_118_8, 11.881_188, 14.116_263),
        (0.1, 0.5, 20.0, 10.0, 200.0),
        (0.5, 0.5, 12.0, 6.0, 72.0),
    ] {
        let (v, i) = solved(2, &[source(1, 0, 12.0, r), ohms(1, 0, load)]);
        assert_relative_eq!(i[1], amps, max_relative = 1e-6);
        assert_relative_eq!(v[1], volts, max_relative = 1e-6);
        assert_relative_eq!(v[1] * i[1], watts, max_relative = 1e-6);
        // The same through a sheet: AGM at a quarter of its charge rests at 12.0 V. Runs are 10 µΩ each.
        let (sheet, study) = study_bare(&format!(
            "battery B1 agm charge=25% resistance={r}ohm\nload L1 law=resistance resistance={load}ohm\n\
             run W1 B1.+ L1.+ 16mm2\nrun W2 L1.- B1.- 16mm2\n"
        ));
        let flow = part(&sheet, &study, "L1");
        assert_eq!(study.outcome, Outcome::Solved);
        assert_relative_eq!(flow.current.mean.0, amps, max_relative = 1e-4);
        assert_relative_eq!(flow.voltage.expect("a voltage").0, volts, max_relative = 1e-4);
        assert_relative_eq!(flow.power.0, watts, max_relative = 2e-4);
    }
}

// ref: worked_examples WE05; Kuphaldt, Lessons in Electric Circuits DC ch. 10; memory, recomputed
#[test]
fn two_sources_meet_at_a_node_and_one_is_charged() {
    let (v, i) = solved(
        2,
        &[source(1, 0, 28.0, 4.0), source(1, 0, 7.0, 1.0), ohms(1, 0, 2.0)],
    );
    assert_relative_eq!(v[1], 8.0, max_relative = 1e-9);
    assert_relative_eq!(-i[0], 5.0, max_relative = 1e-9);
    assert_relative_eq!(-i[1], -1.0, max_relative = 1e-9);
    assert_relative_eq!(i[2], 4.0, max_relative = 1e-9);
}

// ref: worked_examples WE06; Kuphaldt DC ch. 10; memory, recomputed
#[test]
fn the_same_network_seen_from_its_load() {
    let elements = [source(1, 0, 28.0, 4.0), source(1, 0, 7.0, 1.0)];
    let mut system = System::new(2, &elements);
    system.solve(&elements, &[0], 1.0).expect("a solution");
    assert_relative_eq!(system.voltages()[1], 11.2, max_relative = 1e-9);
    let across = [(1, 1.0), (0, -1.0)];
    assert_relative_eq!(system.form(&across, &across), 0.8, max_relative = 1e-9);
    // Maximum power into a matched load: 39.2 W. A load that asks more cannot be supplied.
    for (power, feasible) in [(39.199, true), (39.201, false)] {
        let with_load = [elements[0], elements[1], element(1, 0, Law::Power(power))];
        assert_eq!(solve(2, &with_load).is_ok(), feasible, "{power} W");
    }
}

// ref: worked_examples WE08; textbook identity; derived
#[test]
fn a_balanced_bridge_carries_no_current() {
    let (v, i) = solved(
        4,
        &[
            source(1, 0, 12.0, 1e-5),
            ohms(1, 2, 100.0),
            ohms(2, 0, 200.0),
            ohms(1, 3, 150.0),
            ohms(3, 0, 300.0),
            ohms(2, 3, 47.0),
        ],
    );
    assert!(i[5].abs() < 1e-9);
    assert_relative_eq!(v[2], 8.0, max_relative = 1e-6);
    assert_relative_eq!(v[3], 8.0, max_relative = 1e-6);
}

// ref: worked_examples WE09; Kuphaldt DC ch. 5 to 6; memory, recomputed
#[test]
fn current_divides_over_three_resistors() {
    let (_, i) = solved(
        2,
        &[
            source(1, 0, 6.0, 1e-5),
            ohms(1, 0, 1000.0),
            ohms(1, 0, 3000.0),
            ohms(1, 0, 2000.0),
        ],
    );
    for (got, wanted) in i[1..].iter().zip([0.006, 0.002, 0.003]) {
        assert_relative_eq!(*got, wanted, max_relative = 1e-6);
    }
    assert_relative_eq!(-i[0], 0.011, max_relative = 1e-6);
}

// ref: worked_examples WE10, WE11, WE12; OpenStax College Physics 21.1; memory, recomputed
#[test]
fn series_parallel_and_mixed() {
    let (v, i) = solved(
        4,
        &[
            source(3, 0, 12.0, 1e-7),
            ohms(3, 2, 1.0),
            ohms(2, 1, 6.0),
            ohms(1, 0, 13.0),
        ],
    );
    assert_relative_eq!(i[1], 0.6, max_relative = 1e-6);
    for (drop, wanted) in [v[3] - v[2], v[2] - v[1], v[1]].into_iter().zip([0.6, 3.6, 7.8]) {
        assert_relative_eq!(drop, wanted, max_relative = 1e-6);
    }
    let (_, i) = solved(
        2,
        &[
            source(1, 0, 12.0, 1e-9),
            ohms(1, 0, 1.0),
            ohms(1, 0, 6.0),
            ohms(1, 0, 13.0),
        ],
    );
    for (got, wanted) in i[1..].iter().zip([12.0, 2.0, 0.923_076_923]) {
        assert_relative_eq!(*got, wanted, max_relative = 1e-6);
    }
    let (v, i) = solved(
        3,
        &[
            source(2, 0, 12.0, 1e-7),
            ohms(2, 1, 1.0),
            ohms(1, 0, 6.0),
            ohms(1, 0, 13.0),
        ],
    );
    assert_relative_eq!(i[1], 2.350_515_5, max_relative = 1e-6);
    assert_relative_eq!(i[2], 1.608_247_4, max_relative = 1e-6);
    assert_relative_eq!(v[1] * i[2], 15.518_759, max_relative = 1e-6);
}

// ref: worked_examples WE21; closed form V = (Vs + sqrt(Vs² - 4PR))/2; derived
#[test]
fn a_load_of_constant_power_sits_at_the_upper_root() {
    let (v, i) = solved(2, &[source(1, 0, 12.6, 0.02), element(1, 0, Law::Power(500.0))]);
    assert_relative_eq!(v[1], 11.748_853, max_relative = 1e-7);
    assert_relative_eq!(i[1], 42.557_345, max_relative = 1e-7);
    assert_relative_eq!(i[1] * i[1] * 0.02, 36.222_553, max_relative = 1e-7);
    // Through a sheet: a flooded battery at 93.75 % rests at 12.60 V.
    let (sheet, study) = study_bare(
        "battery B1 flooded charge=93.75% resistance=0.02ohm\nload L1 law=power power=500W\n\
         run W1 B1.+ L1.+ 16mm2\nrun W2 L1.- B1.- 16mm2\n",
    );
    assert_relative_eq!(
        part(&sheet, &study, "L1").voltage.expect("a voltage").0,
        11.748_853,
        max_relative = 2e-4
    );
}

// ref: worked_examples WE23, WE24; closed form Pmax = Vs²/(4R); derived
#[test]
fn more_than_the_feed_can_deliver_is_told_with_the_largest_share() {
    assert!(solve(2, &[source(1, 0, 12.6, 0.02), element(1, 0, Law::Power(1984.4))]).is_ok());
    assert_eq!(
        solve(2, &[source(1, 0, 12.6, 0.02), element(1, 0, Law::Power(2000.0))]),
        Err(NoAnswer::Infeasible)
    );
    let (_, study) = study_bare(
        "battery B1 flooded charge=93.75% resistance=0.02ohm\nload L1 law=power power=2000W\n\
         run W1 B1.+ L1.+ 16mm2\nrun W2 L1.- B1.- 16mm2\n",
    );
    // Two runs of 10 µΩ take their part: Pmax = 12.6²/(4 · 0.02002).
    let largest = 12.6 * 12.6 / (4.0 * 0.020_02) / 2000.0;
    match study.outcome {
        Outcome::Collapsed {
            deliverable,
            blamed_parts,
            ..
        } => {
            assert_relative_eq!(deliverable.0, largest, max_relative = 1e-6);
            assert_eq!(blamed_parts.len(), 1, "the battery stands in the way");
        }
        other => panic!("{other:?}"),
    }
}

// ref: worked_examples WE27; Millman, own computation; derived
#[test]
fn alternator_and_battery_in_parallel() {
    let (v, i) = solved(
        2,
        &[
            source(1, 0, 14.2, 0.01),
            source(1, 0, 12.7, 0.006),
            element(1, 0, Law::Current(100.0)),
        ],
    );
    assert_relative_eq!(v[1], 12.8875, max_relative = 1e-9);
    assert_relative_eq!(-i[0], 131.25, max_relative = 1e-9);
    assert_relative_eq!(-i[1], -31.25, max_relative = 1e-9);
    // With a limit of 80 A the alternator gives 80 A and the battery the rest: 12.7 - 20 A · 6 mΩ.
    let (v, i) = solved(
        2,
        &[
            element(
                1,
                0,
                Law::Limited {
                    emf: 14.2,
                    resistance: 0.01,
                    limit: 80.0,
                },
            ),
            element(
                1,
                0,
                Law::Battery {
                    emf: 12.7,
                    gives: 0.006,
                    takes: 0.2,
                },
            ),
            element(1, 0, Law::Current(100.0)),
        ],
    );
    assert_relative_eq!(v[1], 12.58, max_relative = 1e-9);
    assert_relative_eq!(-i[0], 80.0, max_relative = 1e-9);
    assert_relative_eq!(-i[1], 20.0, max_relative = 1e-9);
}

// ref: worked_examples WE30; nodal analysis, own computation; derived
#[test]
fn ladder_of_two_nodes() {
    let (v, i) = solved(
        3,
        &[
            source(1, 0, 12.6, 0.015),
            ohms(1, 0, 1.2),
            ohms(1, 2, 0.01),
            ohms(2, 0, 0.8),
        ],
    );
    assert_relative_eq!(v[1], 12.220_925, max_relative = 1e-6);
    assert_relative_eq!(v[2], 12.070_049, max_relative = 1e-6);
    assert_relative_eq!(-i[0], 25.271_666, max_relative = 1e-6);
    assert_relative_eq!(i[2], 15.087_562, max_relative = 1e-6);
}

// ref: worked_examples WE31; V = I·R, own computation; derived
#[test]
fn a_shared_ground_lifts_one_of_two_joined_parts() {
    // 80 A come back to the battery over 3 mΩ of body metal; the head unit returns straight to the battery.
    let (sheet, study) = study_bare(
        "battery B1 agm charge=90% resistance=0.004ohm\nload L1 law=current current=80A\nground E1 contact=0ohm body=0.003ohm\n\
         ground E2 contact=0ohm body=0ohm\nhead H1\namplifier A1 input-ground=isolated\nground E3 contact=0ohm body=0ohm\nbus X1 places=4\n\
         run W1 B1.+ L1.+ 50mm2\nrun W2 L1.- X1.1 50mm2\nrun W3 X1.2 E1.stud 50mm2\nrun W4 E2.stud B1.- 50mm2\n\
         run W5 B1.+ H1.30 2.5mm2\nrun W6 H1.31 B1.- 2.5mm2\nrun W7 X1.3 A1.- 50mm2\nrun W8 H1.front-l A1.in1 0.35mm2\n",
    );
    let (w8, _) = sheet.run_by_tag("W8").expect("the signal lead");
    let offset = study.signal.offsets[&w8];
    assert_relative_eq!(offset.offset.0, 0.24, max_relative = 2e-2);
    assert!(
        !offset.joined,
        "the input is isolated, so the offset drives next to no current"
    );
    assert!(offset.shield_current.0 < 1e-3);
}

// ref: worked_examples WE51; Peukert in the rated-hour form; derived. A flooded battery is taken with k = 1.25.
#[test]
fn hours_to_flat_follow_peukert() {
    let (sheet, study) = study_bare(
        "battery B1 flooded 100Ah charge=100%\nload L1 law=current current=10A\nrun W1 B1.+ L1.+ 16mm2\nrun W2 L1.- B1.- 16mm2\n",
    );
    let (id, _) = sheet.part_by_tag("B1").expect("the battery");
    let hours = study.energy.hours_to_flat[&id].0;
    assert_relative_eq!(
        hours,
        20.0 * libm::pow(100.0 / (10.0 * 20.0), 1.25),
        max_relative = 1e-6
    );
}

// ref: worked_examples WE58; I = P/(η V); common practice for the efficiency of class D (0.8 at full power)
#[test]
fn an_amplifier_draws_its_output_over_efficiency() {
    let (sheet, study) = study_bare(
        "battery B1 agm charge=90% resistance=0.0001ohm\n\
         amplifier A1 sections=\"1x 500W@2ohm\" class=d idle-current=0A\nspeaker LS1 2ohm\n\
         run W1 B1.+ A1.+ 50mm2\nrun W2 A1.- B1.- 50mm2\nrun W3 A1.out1+ LS1.+ 4mm2\nrun W4 A1.out1- LS1.- 4mm2\n",
    );
    let flow = part(&sheet, &study, "A1");
    let volts = flow.burst_voltage.expect("a voltage").0;
    assert_relative_eq!(flow.current.burst.0 * volts, 500.0 / 0.8, max_relative = 1e-3);
}
