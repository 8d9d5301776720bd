//! Starting a system: a line typed on an empty sheet becomes a whole plan in one step, which one undo takes back to the byte;
//! what is not understood is shown as it is typed; the same by fingers, in German, and as a new job beside one that is drawn.

use crate::accessible::{Found, look};
use crate::reader::german;
use crate::table::Table;
use checks::Grade;
use loomwright_tests::browser::Scheme;
use serde_json::Value;

const LINE: &str =
    "hatchback, 4 × 75 W amp, mono 500 W at 2 ohm, front components, rear pair, 2 × 4 ohm dual coil sub";

/// Puts a text into the line, as pasting does.
fn put(table: &Table, line: &str) {
    table.eval(&format!(
        "(() => {{ const line = document.querySelector('[data-testid=start-line]'); line.value = {}; \
         line.dispatchEvent(new Event('input', {{ bubbles: true }})); return true }})()",
        Value::from(line)
    ));
}

fn wait_planned(table: &Table) {
    table.wait_until(
        "the plan",
        "!!document.querySelector('[data-testid=start-sums]') && !document.querySelector('[data-testid=start-draw]').disabled",
    );
}

#[test]
fn a_line_on_an_empty_sheet_becomes_a_plan_and_undo_takes_it_back() {
    let mut table = Table::empty();
    let before = table.job_text();
    // The empty sheet offers it, and so does a key.
    table.click("start-offer");
    table.wait_until("the line", "document.activeElement?.id === 'start-line'");
    table.type_text("hatchbak, 4 x 75 W amp");
    table.wait_until(
        "what was not understood",
        "document.querySelector('[data-testid=start-nots]')?.innerText.includes('hatchback')",
    );
    assert!(
        table.text("start-chips").contains("amplifier 4 × 75"),
        "{}",
        table.text("start-chips")
    );
    put(&table, LINE);
    table.wait_until(
        "all understood",
        "!document.querySelector('[data-testid=start-nots]')",
    );
    wait_planned(&table);
    assert!(
        table.text("start-chosen").contains("2 coils in parallel"),
        "{}",
        table.text("start-chosen")
    );
    table.screenshot("start-line");
    table.press("Enter");
    table.wait_until(
        "the parts",
        "Object.keys(JSON.parse(loomwright_state()).parts).length > 15",
    );
    // What was drawn is what the command line draws, arranged, and in order.
    let wish = assist::starting::read(LINE).wish;
    let empty = model::file::read(before.as_bytes()).expect("the empty job");
    let words = words::Words::english();
    let native = assist::starting::start(&wish, &empty, model::SheetKind::Plan, &words).expect("a plan");
    let mut drawn = table.sheet();
    for part in drawn.parts.values_mut() {
        assert!(part.at.take().is_some(), "{} has its place", part.tag);
    }
    assert_eq!(drawn, native.sheet);
    assert!(table.native().findings.iter().all(|it| it.grade == Grade::Tidy));
    table.findings_as_native();
    table.screenshot("start-drawn");
    table.page_mut().set_scheme(Scheme::Dark);
    table.screenshot("start-drawn-dark");
    // One step.
    table.press("ctrl+z");
    table.wait_until(
        "an empty sheet",
        "Object.keys(JSON.parse(loomwright_state()).parts).length === 0",
    );
    assert_eq!(table.job_text(), before);
    table.assert_no_errors();
}

#[test]
fn a_plan_is_put_together_by_fingers_on_the_tablet() {
    let mut table = Table::empty();
    table.page_mut().set_size(1024, 768);
    table.set_touch();
    let tap = |table: &Table, name: &str| {
        table.eval(&format!(
            "document.querySelector('[data-testid=\"{name}\"]').scrollIntoView({{ block: 'center' }})"
        ));
        let place = table.place(name);
        assert!(place.height >= 43.0 && place.width >= 43.0, "{name}: {place:?}");
        let (x, y) = place.middle();
        table.tap_at(x, y);
    };
    tap(&table, "start-offer");
    table.wait_until(
        "the form",
        "!!document.querySelector('[data-testid=start-estate]')",
    );
    for name in [
        "start-estate",
        "start-amp-4",
        "start-amp-1",
        "start-front-1",
        "start-bass-1",
        "start-bass-4-ohm",
        "start-second-agm",
    ] {
        tap(&table, name);
    }
    table.wait_until(
        "the line written",
        "document.querySelector('[data-testid=start-line]').value.includes('extra battery AGM')",
    );
    assert_eq!(
        table.attribute("start-estate", "aria-pressed").as_deref(),
        Some("true")
    );
    wait_planned(&table);
    table.screenshot("start-form-tablet");
    tap(&table, "start-draw");
    table.wait_until(
        "the parts",
        "Object.keys(JSON.parse(loomwright_state()).parts).length > 15",
    );
    assert!(table.native().findings.iter().all(|it| it.grade == Grade::Tidy));
    table.assert_no_errors();
}

#[test]
fn beside_a_drawn_job_it_becomes_a_new_one_and_reads_german() {
    let mut table = Table::open_worked("estate");
    german(&table);
    table.press("shift+A");
    table.wait_until("the line", "document.activeElement?.id === 'start-line'");
    put(
        &table,
        "Kombi, Lichtmaschine 55 A, Endstufe 4 × 100 W, Monoblock 500 W an 2 Ohm, Frontkomponenten, Subwoofer 2 Ohm",
    );
    wait_planned(&table);
    assert!(
        table.text("start-draw").contains("neuen Auftrag"),
        "{}",
        table.text("start-draw")
    );
    // Too small an alternator is told, and what would do is tried out.
    assert!(!table.text("start-troubles").is_empty());
    table.click("start-what-does");
    table.wait_until(
        "an offer",
        "!!document.querySelector('[data-testid=start-offer-0]')",
    );
    table.screenshot("start-german");
    table.click("start-offer-0");
    table.wait_until(
        "no trouble",
        "!document.querySelector('[data-testid=start-troubles]')",
    );
    wait_planned(&table);
    table.page_mut().set_scheme(Scheme::Dark);
    let mut all = Found::default();
    look(&table, "the start of a system, German and dark", &mut all);
    table.screenshot("start-german-dark");
    table.click("start-draw");
    table.wait_until(
        "the new job",
        "JSON.parse(loomwright_job()).title.startsWith('Klanganlage') && Object.keys(JSON.parse(loomwright_state()).parts).length > 15",
    );
    let labels: Vec<String> = table
        .sheet()
        .parts
        .values()
        .map(|part| part.label.clone())
        .collect();
    assert!(labels.iter().any(|label| label == "Hauptsicherung"), "{labels:?}");
    // Escape backs out, and nothing is left of it.
    table.press("shift+A");
    table.wait_until("the line", "!!document.querySelector('[data-testid=start-line]')");
    table.press("Escape");
    table.wait_until(
        "the drawing alone",
        "!document.querySelector('[data-testid=start-drawer]')",
    );
    table.assert_no_errors();
}
