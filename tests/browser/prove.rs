//! Working through the shortest proof: readings as expected, one that is outside, the page opened anew, an undo.

use crate::table::Table;
use assist::proving::prove;
use loomwright_tests::browser::Scheme;

/// Which reading is in hand.
fn reading(table: &Table) -> String {
    let progress = table.text("proof-progress");
    progress.split(" · ").next().unwrap_or_default().to_owned()
}

#[test]
fn a_list_of_readings_is_worked_through_and_kept_with_the_job() {
    let mut table = Table::open_worked("hatchback");
    let (sheet, settings) = (table.sheet(), table.job().settings);
    let before = sheet.readings.len();
    let proof = prove(&sheet, &settings).expect("something is fed");
    let count = proof.steps.len();
    assert!(count >= 4, "{count} readings");

    table.press("u");
    table.wait_until(
        "the list",
        "document.querySelector('[data-testid=proof-leads]') !== null",
    );
    assert_eq!(reading(&table), format!("Reading 1 of {count}"));
    table.screenshot("proof-first");
    // Ohms with the supply isolated come first; the meter shows what was expected.
    table.click("proof-as-expected");
    assert_eq!(reading(&table), format!("Reading 2 of {count}"));
    // A short is read, digit by digit: it points to faults that this reading exposes.
    for key in ["0", ".", "4"] {
        table.click(&format!("proof-key-{key}"));
    }
    table.click("proof-enter");
    assert!(
        table.text("proof-kept").contains("outside"),
        "{}",
        table.text("proof-kept")
    );
    assert!(!table.text("proof-points").is_empty());
    table.screenshot("proof-outside");
    let kept = table.sheet().readings;
    assert_eq!(kept.len(), before + 2);
    assert_eq!(kept.last().and_then(model::readings::Reading::number), Some(0.4));
    assert_eq!(proof.steps[0].verdict(&table.sheet()), Some(true));
    assert_eq!(proof.steps[1].verdict(&table.sheet()), Some(false));

    // The finder begins with what was read.
    table.click("proof-find");
    table.wait_until(
        "the readings in the finder",
        "document.querySelectorAll('[data-testid=fault-reading]').length > 0",
    );
    table.press("Escape");

    // What was read is in the job after the page is opened anew, and the list goes on behind it.
    table.wait_kept();
    table.reload();
    table.wait_ready();
    table.press("u");
    table.wait_until(
        "the list again",
        "document.querySelector('[data-testid=proof-leads]') !== null",
    );
    assert_eq!(reading(&table), format!("Reading 3 of {count}"));
    assert!(table.text("proof-progress").contains("1 outside"));
    table.click("proof-skip");
    assert_eq!(reading(&table), format!("Reading 4 of {count}"));
    table.click("proof-back");
    table.click("proof-as-expected");
    assert_eq!(table.sheet().readings.len(), before + 3);
    table.press("Escape");
    table.press("ctrl+z");
    assert_eq!(table.sheet().readings.len(), before + 2);
    table.page_mut().set_size(1024, 768);
    table.page_mut().set_scheme(Scheme::Dark);
    table.press("u");
    table.wait_until(
        "the list on a tablet",
        "document.querySelector('[data-testid=proof-leads]') !== null",
    );
    // The leads and what is said stand beside the drawer, not under it.
    let drawer = table.place("proof-drawer");
    let ends = table.eval("[...document.querySelectorAll('.proof__lead b')].map(it => it.innerText)");
    for end in ends.as_array().into_iter().flatten().filter_map(|it| it.as_str()) {
        if end.contains('.') {
            table.wait_for(&format!("{end} beside the drawer"), || {
                (table.terminal(end).0 > drawer.x + drawer.width).then_some(())
            });
        }
    }
    assert!(table.place("said").x >= drawer.x + drawer.width);
    table.screenshot("proof-tablet-dark");
    table.assert_no_errors();
}
