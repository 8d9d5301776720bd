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
