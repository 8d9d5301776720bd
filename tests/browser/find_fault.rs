//! Finding a fault: a fuse of a worked job is open; what is said and read leads to it, each reading where the page proposes it.

use crate::table::Table;
use assist::finding::said_probe;
use circuit::{Bench, Probe};
use model::breaks::Break;
use model::job::{Duty, VehicleState};
use words::Words;

#[test]
fn the_proposals_lead_to_an_open_fuse() {
    let mut table = Table::open_worked("hatchback");
    let (sheet, settings) = (table.sheet(), table.job().settings);
    let mut bench = Bench::new(&sheet, &settings).expect("a bench");
    let state = bench
        .ready(VehicleState::EngineOff, Duty::Music)
        .expect("a state");
    let broken = Break::read("F1 open", &sheet).expect("a break");
    let fault = bench.fault(&[broken]).expect("a fault");
    // The vehicle with the fault in it, solved by the engine.
    let foreseen = bench.solve(&fault, state).expect("solved");
    let isolated = bench.isolate(&fault);
    let finder = assist::finding::Finder::new(&sheet, &settings).expect("a finder");
    let probes: Vec<Probe> = finder.probes().cloned().collect();
    let words = Words::default();

    table.press("d");
    let amplifier = sheet.part_by_tag("A1").expect("the amplifier").0;
    table.eval(&format!(
        "(() => {{ const it = document.querySelector('[data-testid=fault-thing]'); it.value = '{}'; \
         it.dispatchEvent(new Event('change', {{ bubbles: true }})); }})()",
        amplifier.0
    ));
    table.click("fault-off");
    assert!(table.text("fault-symptom").contains("A1"));
    // What is suspected is drawn: a ring for each thing in the list, with its place and how likely it is.
    let rings = |table: &Table| -> Vec<(f64, f64, String)> {
        let state = table.state();
        let all = state["suspects"].as_array().into_iter().flatten();
        all.map(|it| {
            let number = |at: usize| it[at].as_f64().expect("a number");
            (
                number(0),
                number(1),
                it[2].as_str().unwrap_or_default().to_owned(),
            )
        })
        .collect()
    };
    let first = table.wait_for("rings", || Some(rings(&table)).filter(|all| all.len() > 1));
    assert!(first[0].2.starts_with("1"), "{first:?}");
    let listed = table.texts("fault-suspect");
    let told: usize = first.iter().map(|ring| ring.2.split(',').count()).sum();
    assert!(
        told <= listed.len() && !listed.is_empty(),
        "{first:?} of {listed:?}"
    );
    // The ring of the fuse is round the fuse.
    if let Some(place) = listed.iter().position(|line| line.contains("F1 open")) {
        let (x, y) = table.part("F1");
        let ring = first
            .iter()
            .find(|ring| ring.2.contains(&(place + 1).to_string()));
        let ring = ring.expect("a ring of the fuse");
        assert!((ring.0 - x).abs() < 2.0 && (ring.1 - y).abs() < 2.0, "{ring:?}");
    }
    // Two leads, or a clamp, where the measurement is proposed.
    let leads = table.state()["next_leads"].as_array().map_or(0, Vec::len);
    assert_eq!(
        leads,
        if table.text("fault-next").starts_with("Amps") {
            1
        } else {
            2
        }
    );
    table.screenshot("find-fault-asked");
    for _ in 0..40 {
        if table.text("fault-outcome") != "Suspected" {
            break;
        }
        let at = table.text("fault-next");
        let probe = probes
            .iter()
            .find(|probe| words.say(&said_probe(&sheet, probe)) == at)
            .unwrap_or_else(|| panic!("no such place: {at}"));
        table.click("fault-show");
        let placed = bench.place(probe).expect("a place");
        let shown = match probe {
            Probe::Ohms(..) => bench.ohms(&isolated, &placed),
            _ => bench.read(state, &foreseen, &placed),
        };
        match shown.expect("a reading").number(probe) {
            Some(number) => {
                table.click("fault-number");
                table.type_text(&format!("{number:.3}"));
                table.click("fault-enter");
            }
            None => table.click("fault-open"),
        }
    }
    assert_eq!(table.text("fault-outcome"), "Found");
    let last = table.wait_for("one ring", || Some(rings(&table)).filter(|all| all.len() == 1));
    assert!(
        last[0].2.starts_with("1 · 9") || last[0].2.starts_with("1 · 100"),
        "{last:?}"
    );
    assert_eq!(table.state()["next_leads"].as_array().map(Vec::len), Some(0));
    // What was measured is kept with the sheet, in one step.
    let count = table.count("fault-reading");
    table.click("fault-keep");
    table.wait_for("the readings to be kept", || {
        (table.sheet().readings.len() == sheet.readings.len() + count).then_some(())
    });
    assert!(
        table.text("fault-suspect").contains("F1 open"),
        "{}",
        table.text("fault-suspect")
    );
    table.click("fault-suspect");
    table.screenshot("find-fault-found");
    table.page_mut().set_size(1024, 768);
    table
        .page_mut()
        .set_scheme(loomwright_tests::browser::Scheme::Dark);
    table.screenshot("find-fault-tablet-dark");
    table.assert_no_errors();
}

/// What fails only while something is moved is another fault than what fails at rest: readings of the one are not taken for the other.
#[test]
fn readings_are_taken_of_one_state_of_what_moves() {
    let mut table = Table::open_worked("estate");
    let measured_with = |table: &mut Table, word: &str| {
        table.eval(&format!(
            "(() => {{ const it = document.querySelector('[data-testid=fault-while]'); it.value = '{word}'; \
             it.dispatchEvent(new Event('change', {{ bubbles: true }})); }})()"
        ));
    };
    table.press("d");
    measured_with(&mut table, "doors-open");
    table.click("fault-own");
    table.type_text("LS5.+ LS5.- 0 V~ on");
    table.click("fault-own-enter");
    table.wait_for("the reading", || {
        (table.count("fault-reading") == 1).then_some(())
    });
    table.click("fault-keep");
    let kept = table.wait_for("the reading to be kept", || {
        table.sheet().readings.first().cloned()
    });
    assert_eq!(kept.moved.value(), Some(model::laying::Moved::Doors));
    // Opened anew, with nothing moved: that reading is not offered, and it is where doors stand open.
    table.press("Escape");
    table.press("d");
    table.wait_for("an empty list", || {
        (table.count("fault-reading") == 0).then_some(())
    });
    assert_eq!(table.count("fault-kept"), 0);
    measured_with(&mut table, "doors-open");
    table.wait_for("the offer", || (table.count("fault-kept") == 1).then_some(()));
    table.click("fault-kept");
    table.wait_for("the reading again", || {
        (table.count("fault-reading") == 1).then_some(())
    });
    table.assert_no_errors();
}
