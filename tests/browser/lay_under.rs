//! One sheet of a job over another: the plan is made from what was found, altered, and what was found is laid under it; then
//! the same through a link, where one only looks.

use crate::accessible::{Found, look};
use crate::paint::{assert_same, work_and_compare};
use crate::table::Table;
use loomwright_tests::browser::{Page, Scheme, Site};
use model::SheetKind;
use model::compare::compare;
use std::time::Duration;

/// Copies Found to Plan by the set index, takes a part out of the plan and alters a fuse.
fn altered_plan() -> Table {
    let table = Table::open_worked("van");
    assert_eq!(
        table.count("under-found"),
        0,
        "nothing to lay under while there is one sheet"
    );
    table.click("fill-plan");
    table.wait_for("the plan to be filled", || {
        (table.count("under-plan") == 1).then_some(())
    });
    table.click("sheet-plan");
    table.wait_until(
        "the plan on the table",
        "JSON.parse(loomwright_state()).sheet === 'plan'",
    );
    table.open_part("LS6");
    table.click("slip-delete");
    table.wait_until(
        "LS6 to be gone",
        "!('LS6' in JSON.parse(loomwright_state()).parts)",
    );
    table.open_part("F1");
    table.fill("field-rating", "60A");
    table.wait_until(
        "the fuse to be another",
        "loomwright_job().includes('60A') && JSON.parse(loomwright_state()).undo.includes('F1')",
    );
    table.press("Escape");
    table.press("Escape");
    table
}

/// The counts as the native comparison has them.
fn counts(job: &model::Job) -> String {
    let sheet = |kind| job.sheet(kind).cloned().unwrap_or_default();
    let tally = compare(&sheet(SheetKind::Found), &sheet(SheetKind::Plan)).tally();
    assert_eq!(
        (tally.changed, tally.new, tally.removed),
        (1, 0, 3),
        "the fuse; LS6 with both its runs"
    );
    format!(
        "Found under Plan: {} kept, 1 changed, 0 new, 3 removed",
        tally.kept
    )
}

fn frames(page: &Page) {
    page.eval("new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() => done(true))))");
}

#[test]
fn what_was_found_is_laid_under_the_plan() {
    let mut found = Found::default();
    let mut table = altered_plan();
    let wanted = counts(&table.job());
    let before = table.eval("document.getElementById('board').toDataURL()");
    table.click("under-found");
    table.wait_for("the legend", || (table.count("under-legend") == 1).then_some(()));
    assert_eq!(table.text("under-words"), wanted);
    assert_eq!(
        table.attribute("under-found", "aria-pressed").as_deref(),
        Some("true")
    );
    frames(&table);
    assert!(
        table.eval("document.getElementById('board').toDataURL()") != before,
        "the drawing shows it"
    );
    assert_eq!(table.state()["under"], "found");

    // The list leads to each thing; the slip of a changed one says what changed.
    table.click("under-list");
    let lines = table.texts("under-fate");
    assert_eq!(lines.len(), 4, "{lines:?}");
    assert!(
        lines[0].contains("F1") && lines[0].contains("rating: 200A, now 60A"),
        "{lines:?}"
    );
    assert!(
        lines[1].contains("LS6") && lines[1].contains("removed"),
        "{lines:?}"
    );
    table.screenshot("laid-under");
    for scheme in [Scheme::Dark, Scheme::Light] {
        table.page_mut().set_scheme(scheme);
        look(&table, &format!("a sheet laid under, {scheme:?}"), &mut found);
    }
    table.eval("(document.querySelectorAll('[data-testid=under-fate]')[1].click(), true)");
    table.wait_until(
        "the words about LS6",
        "document.querySelector('[data-testid=said]').innerText.includes('is on Found alone')",
    );
    table.eval("(document.querySelectorAll('[data-testid=under-fate]')[0].click(), true)");
    table.wait_for("the slip", || (table.count("slip-fate") == 1).then_some(()));
    assert!(
        table.text("slip-fate").contains("rating: 200A, now 60A"),
        "{}",
        table.text("slip-fate")
    );
    table.press("Escape");
    table.press("Escape");

    // Undone, the counts follow.
    table.press("ctrl+z");
    table.wait_until(
        "no change any more",
        "document.querySelector('[data-testid=under-words]').innerText.includes('0 changed')",
    );
    table.press("ctrl+y");
    table.wait_until(
        "the change again",
        "document.querySelector('[data-testid=under-words]').innerText.includes('1 changed')",
    );
    // By key: none, and again.
    table.press("shift+U");
    table.wait_for("no legend", || (table.count("under-legend") == 0).then_some(()));
    table.press("shift+U");
    table.wait_for("the legend again", || {
        (table.count("under-legend") == 1).then_some(())
    });
    // The sheet that lies beneath is turned to: nothing lies under it.
    table.click("sheet-found");
    table.wait_for("no legend", || (table.count("under-legend") == 0).then_some(()));
    table.assert_no_errors();

    // The same through a link, with other eyes: nothing to edit with, but this is there.
    let job = table.job();
    let link = sharing::fragment(&job).expect("fits");
    let page = Page::open_on(Site::built_page(), &format!("#{link}"));
    page.wait_at_most(Duration::from_secs(90), "the drawing", || {
        (page.eval("typeof loomwright_state") == "function").then_some(())
    });
    assert_eq!(page.eval("JSON.parse(loomwright_state()).sheet"), "plan");
    page.click("under-found");
    page.wait_for("the legend", || (page.count("under-legend") == 1).then_some(()));
    assert_eq!(page.text("under-words"), wanted);
    page.click("under-list");
    page.eval("(document.querySelectorAll('[data-testid=under-fate]')[0].click(), true)");
    page.wait_for("the slip", || (page.count("plain-slip") == 1).then_some(()));
    assert!(
        page.text("slip-fate").contains("rating: 200A, now 60A"),
        "{}",
        page.text("slip-fate")
    );
    look(&page, "a sheet laid under where one only looks", &mut found);
    page.screenshot("laid-under-looking");
    assert_eq!(page.eval("localStorage.length"), 0, "nothing is written");
    page.assert_no_errors();
}

/// Where LS6 stands on the sheet beneath, on the screen: as far from LS5 as it was found.
fn place_of_the_gone(table: &Table) -> (f64, f64) {
    let job = table.job();
    let at = |tag: &str| {
        let found = job
            .sheet(SheetKind::Found)
            .and_then(|sheet| sheet.part_by_tag(tag));
        found
            .and_then(|(_, part)| part.at)
            .unwrap_or_else(|| panic!("{tag} has no place"))
    };
    let (here, gone) = (at("LS5"), at("LS6"));
    let zoom = table.state()["zoom"].as_f64().unwrap_or(1.0);
    let (x, y) = table.part("LS5");
    (
        x + f64::from(gone.x - here.x) * zoom,
        y + f64::from(gone.y - here.y) * zoom,
    )
}

#[test]
fn with_a_sheet_under_it_what_is_painted_in_steps_is_what_is_painted_at_once() {
    let table = altered_plan();
    table.press("shift+U");
    table.wait_for("the legend", || (table.count("under-legend") == 1).then_some(()));
    assert_same(&table, "after it was laid under");
    work_and_compare(&table);
    // A part is carried onto the place of the one that was taken out, which hides it, and away again.
    table.press("Escape");
    table.press("Home");
    let from = table.part("L1");
    let target = place_of_the_gone(&table);
    let half = ((from.0 + target.0) / 2.0, (from.1 + target.1) / 2.0);
    table.drag_and_hold(&[from, half, (target.0 - 9.0, target.1), target]);
    assert_same(&table, "while a part is carried over a ghost");
    table.release();
    assert_same(&table, "when it lies there");
    table.screenshot("laid-under-hidden");
    table.press("ctrl+z");
    assert_same(&table, "when it is back");
    // What lies beneath is lit, and no longer.
    table.click("under-list");
    table.eval("(document.querySelectorAll('[data-testid=under-fate]')[1].click(), true)");
    assert_same(&table, "when a ghost is lit");
    table.press("Escape");
    assert_same(&table, "when it is lit no longer");
    table.press("shift+U");
    assert_same(&table, "when it was taken away");
    table.assert_no_errors();
}
