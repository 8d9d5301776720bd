//! What happens in what order, on systems that can be followed by hand.

use super::{course, course_in};
use circuit::faults::{Certainty, Course, Happening, Outcome};
use model::job::VehicleState;
use model::quantity::Celsius;
use model::{Settings, Sheet};

const AMPLIFIER: &str = "\
battery B1 agm 70Ah resistance=0.005ohm charge=100%
fuse F1 strip61 80A
amplifier A1
ground E1 contact=0ohm body=0ohm
ground E2 contact=0ohm body=0ohm
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out A1.+ 16mm2 5m RD
run W3 A1.- E1.stud 16mm2 0.5m BK
run W4 B1.- E2.stud 35mm2 0.4m BK
";

/// Written as `F1 opens`, in order.
fn told(sheet: &Sheet, course: &Course) -> Vec<(String, Certainty)> {
    let run = |id: &model::RunId| sheet.runs[id].tag.clone();
    let part = |id: &model::PartId| sheet.parts[id].tag.clone();
    let device = |it: &circuit::DeviceRef| match &it.output {
        Some(output) => format!("{}.{output}", part(&it.part)),
        None => part(&it.part),
    };
    course
        .events
        .iter()
        .map(|event| {
            let it = match &event.happening {
                Happening::Opens(it) => format!("{} opens", device(it)),
                Happening::Closes(it) => format!("{} closes", device(it)),
                Happening::Damaged(it) => format!("{} damaged", run(it)),
                Happening::Melts(it) => format!("{} melts", run(it)),
                Happening::Off(it) => format!("{} off", part(it)),
                Happening::On(it) => format!("{} on", part(it)),
                Happening::Lets(it) => format!("{} lets", part(it)),
                Happening::Pulls(it) => format!("{} pulls", part(it)),
                Happening::Unloaded(it) => format!("{} unloaded", part(it)),
            };
            (it, event.certainty)
        })
        .collect()
}

fn names(sheet: &Sheet, course: &Course) -> Vec<String> {
    told(sheet, course).into_iter().map(|it| it.0).collect()
}

#[test]
fn a_fuse_clears_a_short_behind_it_in_time() {
    let (sheet, it) = course(AMPLIFIER, &["W2 grounded at 100 %"]);
    assert_eq!(
        told(&sheet, &it),
        [
            ("A1 off".to_owned(), Certainty::Certain),
            ("F1 opens".to_owned(), Certainty::Certain)
        ]
    );
    // By hand: AGM, full, 12.9 V (battery.csv). 5 mΩ in the battery; 16 mm² at 1.21 mΩ/m (IEC 60228 class 5) times 5.3 m at 40 °C
    // (1 + 0.00393 · 20); 35 mm² at 0.554 mΩ/m times 0.4 m; the fuse 0.75 mΩ and its holder 0.4 mΩ; endings a tenth of a
    // milliohm each, of which the short leaves out about two.
    let wires = (1.21e-3 * 5.3 + 0.554e-3 * 0.4) * (1.0 + 0.003_93 * 20.0);
    let by_hand = 12.9 / (0.005 + wires + 0.75e-3 + 0.4e-3 + 5.0 * 0.1e-3);
    let fault = it.fault.expect("a short").most.0;
    assert!(
        (fault / by_hand - 1.0).abs() < 0.08,
        "{fault} A, {by_hand} A by hand"
    );
    // Beyond six times the rating times go with the square: 0.1 s and 1 s at 480 A (ISO 8820-5, from memory).
    let Outcome::Clears { time, margin } = &it.outcome else {
        panic!("{:?}", it.outcome);
    };
    let scaled = (480.0 / fault) * (480.0 / fault);
    assert!((time.least.0 / (0.1 * scaled) - 1.0).abs() < 0.02, "{time:?}");
    assert!((time.most.0 / scaled - 1.0).abs() < 0.05, "{time:?}");
    // The wire would bear k²S²: 136² · 16² from 40 °C (short_circuit.csv, derived).
    let bears = 135.9 * 135.9 * 256.0 / (fault * fault);
    assert!((margin / (bears / time.most.0) - 1.0).abs() < 0.06, "{margin}");
    let through = &it.let_through[0].squared;
    assert!((through.most / (480.0 * 480.0) - 1.0).abs() < 0.02, "{through:?}");
}

#[test]
fn what_nothing_guards_burns() {
    let (sheet, it) = course(AMPLIFIER, &["W1 grounded at 50 %"]);
    assert_eq!(names(&sheet, &it), ["A1 off", "W1 damaged", "W1 melts"]);
    let (id, _) = sheet.run_by_tag("W1").expect("a run");
    let Outcome::WireFirst { certainty, run, time } = &it.outcome else {
        panic!("{:?}", it.outcome);
    };
    assert_eq!((*certainty, *run), (Certainty::Certain, id));
    assert!(time.least.0 > 0.5 && time.most.0 < 5.0, "{time:?}");
    assert_eq!(it.runs[&id].damaged, Certainty::Certain);
    assert!(it.runs[&id].hottest > Celsius(1000.0));
}

#[test]
fn a_fuse_takes_a_thin_wire_for_a_load() {
    // 0.5 mm² behind 80 A: it never draws enough to open the fuse, and glows.
    let text = AMPLIFIER.replace("16mm2 5m", "0.5mm2 3m");
    let (sheet, it) = course(&text, &["W2 grounded at 100 %"]);
    assert_eq!(names(&sheet, &it), ["A1 off", "W2 damaged"]);
    assert!(matches!(
        it.outcome,
        Outcome::WireFirst {
            certainty: Certainty::Certain,
            ..
        }
    ));
    // A poor contact to the body: too little for the fuse, and the wire bears it.
    let (sheet, it) = course(AMPLIFIER, &["W2 grounded at 100 % through 0.2 Ω"]);
    assert_eq!(names(&sheet, &it), [""; 0]);
    let Outcome::NeverClears { certainty, current } = it.outcome else {
        panic!("{:?}", it.outcome);
    };
    assert_eq!(certainty, Certainty::Certain);
    assert!(current.0 > 55.0 && current.0 < 65.0, "{current:?}");
}

#[test]
fn the_band_of_a_fuse_makes_damage_possible_and_its_own_curve_makes_it_certain() {
    // 1 mm² behind 60 A of a large blade: at about three times its rating it opens in 0.3 to 12 s.
    let text = AMPLIFIER
        .replace("strip61 80A", "maxi 60A")
        .replace("16mm2 5m", "1mm2 3m");
    let (sheet, it) = course(&text, &["W2 grounded at 100 %"]);
    let Outcome::WireFirst { certainty, .. } = it.outcome else {
        panic!("{:?}", it.outcome);
    };
    assert_eq!(certainty, Certainty::Possible);
    assert!(names(&sheet, &it).contains(&"F1 opens".to_owned()));
    // A data sheet that says 60 s there.
    let slow = text.replace("maxi 60A", "maxi 60A curve=1.35:900,2:120,4:60");
    let (_, it) = course(&slow, &["W2 grounded at 100 %"]);
    assert!(matches!(
        it.outcome,
        Outcome::WireFirst {
            certainty: Certainty::Certain,
            ..
        }
    ));
    // One that says 50 ms.
    let quick = text.replace("maxi 60A", "maxi 60A curve=1.35:60,2:0.05");
    let (_, it) = course(&quick, &["W2 grounded at 100 %"]);
    assert!(matches!(it.outcome, Outcome::Clears { .. }), "{:?}", it.outcome);
}

#[test]
fn a_breaker_that_closes_by_itself_does_so_again_and_again() {
    let text = AMPLIFIER.replace("fuse F1 strip61 80A", "breaker F1 80A automatic");
    let (sheet, it) = course(&text, &["W2 grounded at 100 %"]);
    let closes = it
        .events
        .iter()
        .find(|it| matches!(it.happening, Happening::Closes(_)));
    let closes = closes.unwrap_or_else(|| panic!("{:?}", names(&sheet, &it)));
    assert!(closes.times > 3, "{closes:?}");
    // It opens 15 s before.
    let scenario = &it.scenarios[0];
    let times: Vec<f64> = scenario
        .moments
        .iter()
        .filter(|it| matches!(it.happening, Happening::Opens(_) | Happening::Closes(_)))
        .map(|it| it.time.0)
        .collect();
    assert!((times[1] - times[0] - 15.0).abs() < 0.01, "{times:?}");
    let by_hand = text.replace("automatic", "manual");
    let (_, it) = course(&by_hand, &["W2 grounded at 100 %"]);
    assert!(
        !it.events
            .iter()
            .any(|it| matches!(it.happening, Happening::Closes(_)))
    );
}

#[test]
fn a_capacitor_discharges_into_the_fault() {
    // Behind the fuse: what is in it never passes the fuse, but it passes the wire between.
    let text = format!(
        "{AMPLIFIER}capacitor C1 capacitance=1F resistance=0.002ohm
run W5 C1.+ A1.+ 16mm2 0.3m RD
run W6 C1.- E1.stud 16mm2 0.3m BK
"
    );
    let (sheet, it) = course(&text, &["W2 grounded at 100 %"]);
    let at = sheet
        .runs
        .keys()
        .position(|id| sheet.runs[id].tag == "W5")
        .expect("a run");
    let currents: Vec<(f64, f64)> = it.scenarios[0]
        .frames
        .iter()
        .map(|frame| (frame.time.0, frame.runs[at].current.0))
        .collect();
    // 12.9 V over a few milliohms, gone after a few time constants of a few milliseconds each.
    assert!(currents[0].1 > 1000.0, "{currents:?}");
    let late = currents
        .iter()
        .find(|(time, _)| *time > 0.05)
        .expect("it goes on");
    assert!(late.1 < 0.05 * currents[0].1, "{currents:?}");
    // Its charge: about 12.5 As, all of it through W5.
    let charge: f64 = currents
        .windows(2)
        .map(|pair| (pair[1].0 - pair[0].0) * pair[1].1)
        .sum();
    assert!((charge - 12.5).abs() < 1.5, "{charge} As");
}

#[test]
fn equipment_drops_out_with_its_lead_and_comes_back_with_its_supply() {
    let text = "\
battery B1 agm 70Ah resistance=0.005ohm
fuse F1 strip61 60A
fuse F2 regular 15A
amplifier A1
head H1
ground E1
run W1 B1.+ F1.in 16mm2 0.3m
run W2 F1.out A1.+ 16mm2 4m
run W3 A1.- E1.stud 16mm2 0.5m
run W4 B1.- E1.stud 25mm2 0.4m
run W5 B1.+ F2.in 2.5mm2 0.3m
run W6 F2.out H1.30 2.5mm2 3m
run W7 H1.31 E1.stud 2.5mm2 1m
run W8 H1.rem A1.rem 0.75mm2 5m
run W9 B1.+ H1.15 1mm2 3m
";
    // The head unit's fuse opens; the amplifier's own feed recovers, but nobody tells it to be on any more.
    let (sheet, it) = course(text, &["W6 grounded at 50 %"]);
    let last = it.scenarios[0].frames.last().expect("frames");
    let off: Vec<&str> = last.off.iter().map(|id| sheet.parts[id].tag.as_str()).collect();
    assert_eq!(off, ["A1", "H1"], "{:?}", names(&sheet, &it));
    // A short in the amplifier's feed pulls all of it down for a moment; the head unit is back when the fuse has opened.
    let (sheet, it) = course(text, &["W2 grounded at 100 %"]);
    let last = it.scenarios[0].frames.last().expect("frames");
    let off: Vec<&str> = last.off.iter().map(|id| sheet.parts[id].tag.as_str()).collect();
    assert_eq!(off, ["A1"], "{:?}", names(&sheet, &it));
    // A plug or a wire alone: nothing burns, and what is dead is told.
    let (sheet, it) = course(text, &["W8 cut"]);
    assert_eq!(names(&sheet, &it), ["A1 off"]);
    assert_eq!(it.outcome, Outcome::NothingToClear);
    let (sheet, it) = course(text, &["H1 dead"]);
    assert_eq!(
        names(&sheet, &it),
        ["A1 off"],
        "its part is not on the sheet any more"
    );
}

#[test]
fn a_fuse_that_leaves_an_alternator_alone_is_told_of() {
    let text = "\
vehicle V1
battery B1 agm 70Ah
alternator G1
fuse F1 maxi 60A
load L1 power=300W
ground E1
run W1 B1.+ F1.in 16mm2 0.3m
run W2 F1.out L1.+ 16mm2 1m
run W3 L1.- E1.stud 16mm2 0.5m
run W4 B1.- E1.stud 25mm2 0.4m
run W5 G1.B+ F1.out 16mm2 1m
";
    let mut settings = Settings::default();
    settings.conditions.state = VehicleState::Cruise;
    let (sheet, it) = course_in(text, &["F1 open"], &settings);
    assert!(
        names(&sheet, &it).contains(&"G1 unloaded".to_owned()),
        "{:?}",
        names(&sheet, &it)
    );
    settings.conditions.state = VehicleState::EngineOff;
    let (sheet, it) = course_in(text, &["F1 open"], &settings);
    assert!(!names(&sheet, &it).contains(&"G1 unloaded".to_owned()));
}

/// Ohm's law by hand: a wire that is cut is fed from the source's side alone, so a touch there shorts the source, and one beyond
/// the cut finds nothing to short.
#[test]
fn what_touches_a_cut_wire_is_fed_on_one_side_of_the_cut() {
    let fault = |text: &str| {
        let (_, it) = course(AMPLIFIER, &["W2 cut at 40 %", text]);
        it.fault.map_or(0.0, |fault| fault.most.0)
    };
    let before = fault("W2 grounded at 30 %");
    // 12.8 V and somewhat more over 5 mΩ of the battery and a few mΩ of wire: some hundred to two thousand amps.
    assert!((500.0..2500.0).contains(&before), "{before}");
    assert!(fault("W2 grounded at 50 %") < 1e-3);
    // The whole wire, touched at the same place, draws the same: what lies beyond carries nothing of the short.
    let (_, whole) = course(AMPLIFIER, &["W2 grounded at 30 %"]);
    let whole = whole.fault.expect("a short").most.0;
    assert!((before - whole).abs() < 0.02 * whole, "{before} against {whole}");
}

/// Two points of one network: the lead lies across the load, so the current is the source's voltage over the resistances in its way.
#[test]
fn a_lead_between_two_wires_shorts_what_lies_behind() {
    let (sheet, it) = course(AMPLIFIER, &["W2 at 50 % joined W3 at 0 %"]);
    assert_eq!(
        names(&sheet, &it)[..2]
            .iter()
            .filter(|name| *name == "F1 opens")
            .count(),
        1,
        "{:?}",
        names(&sheet, &it)
    );
    // Nearer to the source it draws more, as the wire in its way is shorter.
    let most = |text: &str| course(AMPLIFIER, &[text]).1.fault.expect("a short").most.0;
    assert!(most("W2 at 10 % joined W3 at 0 %") > 1.1 * most("W2 at 90 % joined W3 at 0 %"));
    // Between two points of the same pole nothing has to clear.
    let (_, same) = course(AMPLIFIER, &["W2 at 10 % joined W1 at 50 %"]);
    assert_eq!(same.outcome, Outcome::NothingToClear);
}

#[test]
fn what_cannot_break_is_refused_with_what_would_do() {
    let sheet = testkit::sheet(AMPLIFIER);
    let faults = circuit::faults::Faults::new(&sheet, &Settings::default());
    let battery = sheet.part_by_tag("B1").expect("a part").0;
    let refused = faults.course(&[model::breaks::Break::Open {
        part: battery,
        output: None,
    }]);
    let why = refused.err().map(|why| why.to_string()).unwrap_or_default();
    assert!(why.contains("cannot be opened"), "{why}");
    let gone = faults.course(&[model::breaks::Break::Cut {
        run: model::RunId(99),
        at: model::breaks::HALF_WAY,
    }]);
    assert!(gone.is_err());
}
