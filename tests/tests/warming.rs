//! Transient heating, ageing of fuses and their order against scipy's `solve_ivp`: a small program that knows the physics and the
//! published figures, and nothing of this one (`tests/python/warm_up.py`).

use circuit::faults::{Course, Edge, Faults, Happening, Scenario};
use model::breaks::Break;
use model::quantity::Celsius;
use model::{PartKind, Settings, Sheet};
use serde_json::{Value, json};
use std::process::Command;

/// One loop: battery, wire, fuse, wire, and the short.
fn system(area: f64, length: f64, fuse: &str, battery: &str) -> Sheet {
    testkit::sheet(&format!(
        "\
battery B1 agm 70Ah resistance={battery}
fuse F1 {fuse}
load L1 power=1W
ground E1
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out L1.+ {area}mm2 {length}m RD
run W3 L1.- E1.stud 2.5mm2 0.5m BK
run W4 B1.- E1.stud 25mm2 0.5m BK"
    ))
}

fn asked(told: &Value) -> Value {
    let path = std::env::temp_dir().join(format!(
        "loomwright-warming-{}-{:?}.json",
        std::process::id(),
        std::thread::current().id()
    ));
    std::fs::write(&path, told.to_string()).expect("the question is written");
    let program = concat!(env!("CARGO_MANIFEST_DIR"), "/python/warm_up.py");
    // Debian's own Python, which finds Debian's packages.
    let run = Command::new("/usr/bin/python3").arg(program).arg(&path).output().expect(
        "python3 is installed: Debian packages `python3` and `python3-scipy`; this must not be skipped in silence",
    );
    let _ = std::fs::remove_file(&path);
    let said = String::from_utf8_lossy(&run.stdout).into_owned();
    serde_json::from_str(&said).unwrap_or_else(|_| panic!("{said}{}", String::from_utf8_lossy(&run.stderr)))
}

/// Metals and insulation by the published figures.
fn wire(sheet: &Sheet, tag: &str, begins: f64, share: f64) -> Value {
    let (_, run) = sheet.run_by_tag(tag).expect("a run");
    let area = run.wire.size.value().map_or(0.0, |size| size.area().0);
    let length = run.wire.length.value().map_or(0.0, |it| it.0) * share;
    let rated = reference::ampacity::allowable_current(reference::ampacity::AmpacityQuery {
        material: model::conductor::Material::Copper,
        area: model::quantity::SquareMm(area),
        insulation: Celsius(105.0),
        ambient: Celsius(30.0),
        bundled: 1,
    });
    let per_metre = reference::conductors::nominal_resistance_per_metre(
        model::conductor::Material::Copper,
        run.wire.size.value().expect("a size"),
        Celsius(20.0),
    );
    // ref: IEC 60028 (1/58 Ω·mm²/m, 0.00393 /K), IEC 60364-5-54 Annex A (3.45e-3 J/(K·mm³)), BS 7671 table 43.1 (160 °C).
    json!({
        "rho": 1.0 / 58.0, "alpha": 0.003_93, "heat": 3.45e-3, "area": area, "rated": rated.0, "rating": 105.0,
        "ambient": 40.0, "limit": 160.0, "begins": begins, "ohms": per_metre.0 * length,
    })
}

fn scenario(course: &Course, edge: Edge) -> &Scenario {
    course
        .scenarios
        .iter()
        .find(|it| it.edge == edge && it.strong)
        .expect("all four cases")
}

/// Holds one case at one edge; how many temperatures were compared.
fn hold(sheet: &Sheet, edge: Edge) -> usize {
    let faults = Faults::new(sheet, &Settings::default());
    let broken = Break::read("W2 grounded at 100 %", sheet).expect("a break");
    let course = faults.course(&[broken]).expect("it breaks");
    let scenario = scenario(&course, edge);
    let runs: Vec<model::RunId> = faults.runs().collect();
    let at = |tag: &str| {
        let id = sheet.run_by_tag(tag).expect("a run").0;
        runs.iter().position(|it| *it == id).expect("a place")
    };
    let first = &scenario.frames[0];
    let tags = ["W1", "W2", "W4"];
    let wires: Vec<Value> = tags
        .iter()
        .map(|tag| wire(sheet, tag, first.runs[at(tag)].temperature.0, 1.0))
        .collect();
    let amps = first.fault.expect("a short").0;
    let hot: f64 = wires
        .iter()
        .map(|it| {
            let number = |key: &str| it[key].as_f64().expect("a number");
            number("ohms") * (1.0 + number("alpha") * (number("begins") - 20.0))
        })
        .sum();
    // What stays follows from the current at the first moment, which another simulator has checked.
    let full = reference::battery::open_circuit_voltage(
        model::kinds::supply::Chemistry::Agm,
        model::quantity::Share(1.0),
    );
    let emf = full.0;
    let PartKind::Fuse(fuse) = &sheet.part_by_tag("F1").expect("a fuse").1.is else {
        panic!("F1 is a fuse");
    };
    let gates = reference::fuses::family(fuse.form.into()).gates;
    let points: Vec<[f64; 2]> = if fuse.curve.0.is_empty() {
        gates
            .iter()
            .filter_map(|gate| {
                let time = match edge {
                    Edge::Fastest => gate.least,
                    Edge::Slowest => gate.most,
                };
                Some([gate.multiple, time?.0])
            })
            .collect()
    } else {
        fuse.curve
            .0
            .iter()
            .map(|(multiple, time)| [*multiple, time.0])
            .collect()
    };
    let rating = fuse.rating.value().map_or(0.0, |it| it.0);
    let events: Vec<(f64, &Happening)> = scenario
        .moments
        .iter()
        .map(|it| (it.time.0, &it.happening))
        .collect();
    let ends = events
        .iter()
        .find(|(_, it)| matches!(it, Happening::Opens(_) | Happening::Melts(_)))
        .map(|it| it.0)
        // A wire that the fuse takes for a load ends where it is steady.
        .or_else(|| scenario.frames.last().map(|it| it.time.0))
        .unwrap_or(0.0);
    let frames: Vec<_> = scenario
        .frames
        .iter()
        .filter(|it| it.time.0 > 0.0 && it.time.0 <= ends)
        .collect();
    let mut times: Vec<f64> = frames.iter().map(|it| it.time.0).collect();
    times.dedup();
    let answer = asked(&json!({
        "emf": emf, "stays": emf / amps - hot, "wires": wires, "points": points, "fuse": rating,
        "until": ends * 1.2, "times": times,
    }));
    let mut compared = 0;
    for (time, temperatures) in times
        .iter()
        .zip(answer["temperatures"].as_array().expect("a list"))
    {
        let frame = frames.iter().find(|it| it.time.0 == *time).expect("a frame");
        for (tag, theirs) in tags.iter().zip(temperatures.as_array().expect("a list")) {
            let (ours, theirs) = (
                frame.runs[at(tag)].temperature.0,
                theirs.as_f64().expect("a number"),
            );
            // Up to its limit it is held closely; what becomes of a wire that is lost already matters less.
            let share = if theirs < 165.0 { 0.004 } else { 0.01 };
            assert!(
                (ours - theirs).abs() < share * (theirs - 40.0).abs().max(50.0),
                "{tag} after {time} s: {ours} °C here, {theirs} °C by scipy"
            );
            compared += 1;
        }
    }
    let near = |ours: f64, theirs: &Value, what: &str| {
        let theirs = theirs
            .as_f64()
            .unwrap_or_else(|| panic!("{what}: scipy sees none before {} s", ends * 1.2));
        assert!(
            (ours / theirs - 1.0).abs() < 0.01,
            "{what}: {ours} s here, {theirs} s by scipy"
        );
    };
    for (time, happening) in events.iter().filter(|(time, _)| *time <= ends) {
        match happening {
            Happening::Opens(_) => near(*time, &answer["opens"], "the fuse opens"),
            Happening::Damaged(id) => {
                let place = tags
                    .iter()
                    .position(|tag| sheet.run_by_tag(tag).is_some_and(|it| it.0 == *id));
                near(
                    *time,
                    &answer["limits"][place.expect("one of the loop")],
                    "a wire is damaged",
                );
            }
            _ => {}
        }
    }
    compared
}

#[test]
fn warming_and_ageing_agree_with_a_general_solver() {
    let mut compared = 0;
    for (area, length, fuse, battery) in [
        (16.0, 5.0, "strip61 80A", "0.006ohm"),
        (4.0, 5.0, "regular 30A", "0.006ohm"),
        (2.5, 8.0, "maxi 60A", "0.008ohm"),
        (1.0, 4.0, "maxi 40A", "0.006ohm"),
        (0.75, 6.0, "maxi 20A", "0.01ohm"),
        (6.0, 10.0, "strip51 100A", "0.02ohm"),
        (6.0, 10.0, "strip51 150A curve=1.35:900,2:40,4:3,6:0.6", "0.02ohm"),
        (0.5, 3.0, "strip61 80A", "0.006ohm"),
    ] {
        let sheet = system(area, length, fuse, battery);
        for edge in [Edge::Fastest, Edge::Slowest] {
            compared += hold(&sheet, edge);
        }
    }
    assert!(compared > 150, "only {compared} temperatures were compared");
}
