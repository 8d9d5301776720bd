//! What belongs to a job besides its wiring: readings of the meter that were kept, limits that were set otherwise, and a
//! damaged state that can be saved as it was found.

use crate::table::Table;

#[test]
fn a_reading_is_kept_listed_undone_and_there_after_reload() {
    let table = Table::open_worked("estate");
    table.press("m");
    let (x, y) = table.terminal("A1.+");
    table.click_at(x, y);
    let shown = table.text("reading");
    assert!(shown.ends_with(" V"), "{shown}");
    table.click("keep-reading");
    table.wait_until(
        "the step",
        "JSON.parse(loomwright_state()).undo === 'Keep the reading at A1.+'",
    );
    table.press("Escape");
    table.press("g");
    let line = table.text("reading-line");
    assert!(line.contains(&format!("{shown} at A1.+ against B1.-")), "{line}");
    table.screenshot("readings-kept");
    table.press("g");
    table.wait_kept();
    table.reload();
    table.wait_ready();
    assert_eq!(table.sheet().readings.len(), 1);
    table.press("g");
    table.click("remove-reading");
    table.wait_for("the reading to be gone", || {
        table.sheet().readings.is_empty().then_some(())
    });
    table.press("ctrl+z");
    table.wait_for("the reading to be back", || {
        (table.sheet().readings.len() == 1).then_some(())
    });
    table.assert_no_errors();
}

#[test]
fn a_limit_set_in_the_job_is_marked_and_judged_by() {
    let table = Table::open_worked("van");
    let too_far = |table: &Table| {
        table
            .findings_as_native()
            .iter()
            .filter(|finding| finding.starts_with("fuse-too-far"))
            .count()
    };
    assert_eq!(too_far(&table), 1);
    table.click("open-limits");
    table.fill("limit-fuse-reach", "3");
    table.wait_until(
        "the mark",
        "!!document.querySelector('[data-testid=limit-fuse-reach-own]')",
    );
    assert_eq!(too_far(&table), 0);
    assert!(table.text("open-limits").contains("1 limit set here"));
    table.click("limit-fuse-reach-back");
    assert_eq!(too_far(&table), 1);
    table.fill("field-engine-bay", "95");
    table.wait_until(
        "the ambient",
        "document.querySelector('[data-testid=open-limits]').textContent.includes('engine 95')",
    );
    table.findings_as_native();
    table.assert_no_errors();
}

#[test]
fn a_damaged_state_is_listed_and_saved_as_it_was_found() {
    let table = Table::open_worked("van");
    // As a disk or an extension might leave it: one value in the stored text is of another kind.
    let damaged = table.eval(
        "new Promise(done => { const open = indexedDB.open('loomwright'); open.onsuccess = () => { const db = open.result; \
         const tx = db.transaction(['texts'], 'readwrite'); const all = tx.objectStore('texts').openCursor(); let n = 0; \
         all.onsuccess = () => { const at = all.result; if (!at) return; const text = at.value.text.replace(/\"tag\": ?\"F2\"/, '\"tag\": 17'); \
         if (text !== at.value.text) { at.update({ ...at.value, text }); n += 1 } at.continue() }; \
         tx.oncomplete = () => { db.close(); done(n) } } })",
    );
    assert_eq!(damaged, 1);
    table.reload();
    table.wait_ready();
    assert!(
        table
            .said()
            .contains("What was stored is kept as it was, see Jobs"),
        "{}",
        table.said()
    );
    table.press("b");
    table.wait_until(
        "the list of damaged jobs",
        "!!document.querySelector('[data-testid=damaged-jobs]')",
    );
    table.eval(
        "(() => { window.saved = []; const make = URL.createObjectURL; \
         URL.createObjectURL = blob => { blob.text().then(text => saved.push(text)); return make.call(URL, blob) } })()",
    );
    table.click("save-damaged");
    table.wait_until("the file", "saved.length === 1");
    let saved = table.eval("saved[0]");
    assert!(saved.as_str().is_some_and(|text| text.contains("\"tag\": 17")));
    table.assert_no_errors();
}

#[test]
fn a_check_left_out_is_silent_counted_and_taken_in_again() {
    let table = Table::open_worked("van");
    let of = |table: &Table, check: &str| {
        table
            .findings_as_native()
            .iter()
            .filter(|finding| finding.starts_with(check))
            .count()
    };
    table.press("n");
    table.wait_until(
        "the explanation",
        "!!document.querySelector('[data-testid=leave-out]')",
    );
    let told = table.text("explanation");
    let titled = |check: &&checks::Check| words::Words::default().say(&check.title());
    let check = checks::CHECKS
        .iter()
        .copied()
        .find(|check| check.grade == checks::Grade::Stop && told.contains(&titled(check)))
        .expect("one of the gravest findings comes first");
    let (check, title) = (check.name, titled(&check));
    assert!(of(&table, check) > 0);
    table.click("leave-out");
    table.wait_for("the findings of the check to be gone", || {
        (of(&table, check) == 0).then_some(())
    });
    assert!(
        table.text("grades").contains("1 left out"),
        "{}",
        table.text("grades")
    );
    table.press("Escape");
    table.press("l");
    assert!(table.text("left-out").contains(&title));
    table.press("Escape");
    table.press("ctrl+z");
    table.wait_for("the findings to be back", || {
        (of(&table, check) > 0).then_some(())
    });
    table.assert_no_errors();
}
