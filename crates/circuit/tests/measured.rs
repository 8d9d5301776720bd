//! What was counted or measured of a wire wins over its jacket: against values worked by hand.

use model::quantity::{Celsius, Ohms};
use model::{RunId, SheetKind};

fn study(line: &str) -> circuit::Study {
    let job = testkit::job(&format!(
        "battery B1 agm 70Ah cranking=640A\nload L1 1A\n{line}\nrun W2 L1.- B1.- 16mm2 1m BK"
    ));
    circuit::study(job.sheet(SheetKind::Plan).expect("it is there"), &job.settings)
}

/// Resistance of the first run's wire referred to 20 °C, in milliohms: one ampere warms it by next to nothing, the cabin is at 40 °C.
fn milliohms_at_20(study: &circuit::Study) -> f64 {
    let flow = &study.runs[&RunId(1)];
    let Ohms(ohms) = flow.wire_resistance;
    let Celsius(t) = flow.temperature;
    // Coefficients of copper and of aluminium at 20 °C differ by 2.5 %, over 20 K by 0.2 % of the resistance.
    ohms * 1e3 / (1.0 + 0.003_93 * (t - 20.0))
}

fn close(found: f64, expected: f64, within: f64) {
    assert!(
        (found / expected - 1.0).abs() < within,
        "{found} instead of {expected}"
    );
}

#[test]
fn a_jacket_alone_is_taken_at_its_word() {
    // IEC 60228 class 5: 16 mm² have at most 1.21 mΩ/m (read).
    let study = study("run W1 B1.+ L1.+ 16mm2 2m");
    close(milliohms_at_20(&study), 2.42, 1e-3);
}

#[test]
fn counted_strands_are_the_cross_section() {
    // 80 × 0.40 mm: 80 · π/4 · 0.16 = 10.053 mm². ρ = 1/58 Ω·mm²/m (IEC 60028), strands 2 % longer than the cable (NEC
    // chapter 9 table 8, stranded over solid): 17.241 / 10.053 · 1.02 · 2 m = 3.4986 mΩ.
    let counted = study("run W1 B1.+ L1.+ 16mm2 2m strands=80 strand-diameter=0.4mm");
    close(milliohms_at_20(&counted), 3.4986, 1e-3);
    // It bears what 10.053 mm² bear, whatever its jacket says.
    let honest = study("run W1 B1.+ L1.+ 10.053mm2 2m");
    let bears = |study: &circuit::Study| study.runs[&RunId(1)].allowable.expect("all is known").0;
    close(bears(&counted), bears(&honest), 1e-4);
    assert!(bears(&counted) < 0.8 * bears(&study("run W1 B1.+ L1.+ 16mm2 2m")));
}

#[test]
fn a_measured_drop_is_the_resistance() {
    // 20 mV at 5 A: 4 mΩ, over whatever length, size and maker's figure.
    for claims in [
        "16mm2 2m",
        "4AWG 2m",
        "2.5mm2 2m stated-resistance=0.0001ohm/m",
        "? 2m",
    ] {
        let study = study(&format!(
            "run W1 B1.+ L1.+ {} tested-drop=20mV tested-current=5A",
            claims.replace("? ", "size=? ")
        ));
        close(milliohms_at_20(&study), 4.0, 2e-3);
    }
    // Half the current makes the same drop twice the resistance; without a current it tells nothing.
    close(
        milliohms_at_20(&study(
            "run W1 B1.+ L1.+ 16mm2 2m tested-drop=20mV tested-current=2.5A",
        )),
        8.0,
        2e-3,
    );
    close(
        milliohms_at_20(&study("run W1 B1.+ L1.+ 16mm2 2m tested-drop=20mV")),
        2.42,
        1e-3,
    );
}

#[test]
fn a_wire_that_resists_more_than_its_size_may_bears_less() {
    // 16 mm² may have 1.21 mΩ/m; at 2.42 mΩ/m it is worth half: 8 mm².
    let half = study("run W1 B1.+ L1.+ 16mm2 1m tested-drop=24.2mV tested-current=10A");
    let honest = study("run W1 B1.+ L1.+ 8mm2 1m");
    let bears = |study: &circuit::Study| study.runs[&RunId(1)].allowable.expect("all is known").0;
    close(bears(&half), bears(&honest), 1e-4);
    // One that resists less does not count as thicker.
    let better = study("run W1 B1.+ L1.+ 16mm2 1m tested-drop=11mV tested-current=10A");
    close(bears(&better), bears(&study("run W1 B1.+ L1.+ 16mm2 1m")), 1e-9);
}

#[test]
fn strands_and_drop_together_tell_the_material() {
    // 126 × 0.40 mm = 15.834 mm². Copper-clad aluminium, 10 %, has 62.9 % of the conductance of copper (ASTM B566, from
    // memory): 17.241 / 0.629 / 15.834 · 1.02 = 1.766 mΩ/m, 17.66 mV at 10 A over a metre.
    let text = "battery B1 agm 70Ah\nload L1 1A\nrun W1 B1.+ L1.+ 16mm2 1m strands=126 strand-diameter=0.4mm \
                tested-drop=17.66mV tested-current=10A";
    let job = testkit::job(text);
    let run = &job.sheet(SheetKind::Plan).expect("it is there").runs[&RunId(1)];
    let found = circuit::measured(run).expect("it was measured");
    assert!(
        found.material.is_some_and(model::conductor::Material::is_clad),
        "{found:?}"
    );
    close(found.counted.expect("counted").0, 15.834, 1e-4);
    // It conducts like 1.21 / 1.766 of 16 mm² of copper.
    close(found.conducts_like.expect("measured").0, 10.963, 1e-3);
    // An honest one: 17.241 / 15.834 · 1.02 = 1.1107 mΩ/m.
    let honest = testkit::job(&text.replace("17.66mV", "11.107mV"));
    let run = &honest.sheet(SheetKind::Plan).expect("it is there").runs[&RunId(1)];
    let material = circuit::measured(run).and_then(|found| found.material);
    assert_eq!(material, Some(model::conductor::Material::Copper));
    assert_eq!(
        circuit::measured(&model::Run::new("W1", run.from.clone(), run.to.clone())),
        None
    );
}
