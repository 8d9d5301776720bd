//! What follows of the program follows the first picture: nothing that stands at the beginning asks for it, the findings come
//! with it, and what asks for some of it before it is there gets it.

use crate::table::Table;
use loomwright_tests::browser::{Page, Site};

/// How often the program stood still because the rest was asked for before it was there.
const WAITED: &str = "performance.getEntriesByName('loomwright waits for the rest').length";
/// How often the second part and the third were fetched.
const FETCHED: &str = "['_more.wasm', '_rest.wasm'].map(end => \
    performance.getEntriesByType('resource').filter(it => it.name.endsWith(end)).length)";
/// A first visit without a worker, on which a part is on its way for ever: only who asks for it at once gets it.
const NEVER_COMES: &str = "Object.defineProperty(navigator, 'serviceWorker', { get: () => undefined }); \
    const before = window.fetch; window.fetch = (what, ...more) => \
    String(what).endsWith('_PART.wasm') ? new Promise(() => {}) : before(what, ...more);";
/// A first visit without a worker on which a part comes otherwise than it should, as told by `ANSWER`; what waits for a second or
/// longer waits a twentieth of it.
const COMES_OTHERWISE: &str = "Object.defineProperty(navigator, 'serviceWorker', { get: () => undefined }); \
    const waits = window.setTimeout; \
    window.setTimeout = (then, ms, ...more) => waits(then, ms >= 1000 ? ms / 20 : ms, ...more); \
    const before = window.fetch; let asked = 0; window.fetch = (what, ...more) => \
    String(what).endsWith('_more.wasm') && ++asked ? ANSWER : before(what, ...more);";
/// What a line over the drawing says of what is lacking.
const LACKING: &str = "(document.querySelector('.lacking')?.textContent ?? null)";
/// What stands where the findings will.
const NOTES: &str = "(document.querySelector('[data-testid=notes-words]')?.textContent ?? null)";
/// Whether something is drawn: the paper is not of one colour any more.
const DRAWN: &str = "(() => { const board = document.getElementById('board'); if (!board?.width) return false; \
    const seen = board.getContext('2d').getImageData(0, 0, board.width, board.height).data; \
    const colours = new Set(); for (let at = 0; at < seen.length; at += 4) colours.add(seen[at] << 16 | seen[at + 1] << 8 | seen[at + 2]); \
    return colours.size > 20 })()";

#[test]
fn what_follows_comes_by_itself_after_the_first_picture_and_the_findings_with_it() {
    let page = Page::open("");
    page.wait_until(
        "the rest to be fetched",
        &format!("{FETCHED}.every(it => it > 0)"),
    );
    page.wait_until("the findings", &format!("{NOTES}?.startsWith('No findings')"));
    assert_eq!(
        page.eval(WAITED),
        0,
        "the first picture needs something of what follows"
    );
    assert_eq!(page.eval(FETCHED), serde_json::json!([1, 1]));
    page.assert_no_errors();
}

#[test]
fn the_first_picture_stands_before_anything_is_checked_and_a_key_fetches_what_it_needs() {
    for (german, said) in [(false, "Not checked yet"), (true, "Noch nicht geprüft")] {
        let mut page = Page::open_on(Site::built_page(), "nothing.txt");
        if german {
            page.eval("localStorage.setItem('loomwright-reader', '{\"language\":\"de\"}')");
        }
        page.run_first(&NEVER_COMES.replace("PART", "more"));
        page.go("");
        page.wait_until("a picture", DRAWN);
        page.wait_until(
            "the word",
            &format!("document.getElementById('board').getAttribute('aria-label').includes('{said}')"),
        );
        // What lies around the sheet comes with what it tells of, and a pointer that passes asks for nothing.
        page.hover(500.0, 400.0);
        page.hover(600.0, 420.0);
        // Nor does a key that is let go, or another window that is gone to.
        page.eval("dispatchEvent(new Event('blur'))");
        page.eval(
            "document.getElementById('board').dispatchEvent(new KeyboardEvent('keyup', { key: 'r', bubbles: true }))",
        );
        assert_eq!(page.eval(NOTES), serde_json::Value::Null);
        assert_eq!(page.eval(WAITED), 0, "in German: {german}");
        assert_eq!(page.eval(FETCHED), serde_json::json!([0, 0]));
        page.eval("document.getElementById('board').focus()");
        page.press("n");
        let found = if german { "Keine Befunde" } else { "No findings" };
        page.wait_until("the findings", &format!("{NOTES}?.startsWith('{found}')"));
    }
}

#[test]
fn in_german_the_first_picture_waits_only_for_the_texts_that_it_says() {
    let mut page = Page::open_on(Site::built_page(), "nothing.txt");
    page.eval("localStorage.setItem('loomwright-reader', '{\"language\":\"de\"}')");
    page.run_first(
        "Object.defineProperty(navigator, 'serviceWorker', { get: () => undefined }); \
         const before = window.fetch; let go; const held = new Promise(done => go = done); \
         window.letGo = () => go(); window.fetch = (what, ...more) => \
         String(what).endsWith('web-panels.ftl') ? held.then(() => before(what, ...more)) : before(what, ...more);",
    );
    page.go("");
    page.wait_until("a picture", DRAWN);
    page.wait_until(
        "the parts that follow",
        &format!("{FETCHED}.every(it => it > 0) && globalThis.loomwright_rest"),
    );
    // What lies around the sheet is not said half in German and half in English.
    assert_eq!(page.eval(NOTES), serde_json::Value::Null);
    page.eval("letGo()");
    page.wait_until("the findings", &format!("{NOTES}?.startsWith('Keine Befunde')"));
}

#[test]
fn an_edit_before_what_follows_is_there_is_made_and_kept() {
    // Asked of a page that has all: to ask for it brings what follows.
    let (before, (x, y)) = {
        let whole = Table::open();
        (whole.sheet(), whole.part("A1"))
    };
    let table = Table::open_prepared(&NEVER_COMES.replace("PART", "more"));
    table.wait_until("a picture", DRAWN);
    assert_eq!(table.eval(FETCHED), serde_json::json!([0, 0]));
    table.drag(&[(x, y), (x + 20.0, y + 10.0), (x + 60.0, y + 40.0)]);
    let after = table.wait_for("the part to be moved", || {
        Some(table.sheet()).filter(|sheet| *sheet != before)
    });
    table.wait_kept();
    table.reload();
    table.wait_ready();
    table.wait_for("the part where it was left", || {
        (table.sheet() == after).then_some(())
    });
}

#[test]
fn a_part_of_another_build_is_told_and_the_page_is_offered_anew() {
    for (answer, german, said, button) in [
        (
            "Promise.resolve(new Response('', { status: 404 }))",
            false,
            "There is a newer version",
            "Load it anew",
        ),
        (
            "Promise.resolve(new Response('<p>Not here</p>'))",
            true,
            "Es gibt eine neuere Fassung",
            "Neu laden",
        ),
    ] {
        let mut page = Page::open_on(Site::built_page(), "nothing.txt");
        if german {
            page.eval("localStorage.setItem('loomwright-reader', '{\"language\":\"de\"}')");
        }
        page.run_first(&COMES_OTHERWISE.replace("ANSWER", answer));
        page.go("");
        page.wait_until("a picture", DRAWN);
        page.wait_until("the line", &format!("{LACKING}?.startsWith('{said}')"));
        page.wait_until(
            "the button",
            &format!("document.querySelector('.lacking button').textContent === '{button}'"),
        );
        page.eval("globalThis.isThisPage = true");
        page.eval("document.querySelector('.lacking button').click()");
        page.wait_until("the page anew", "globalThis.isThisPage === undefined");
        page.wait_until("a picture", DRAWN);
    }
}

#[test]
fn a_part_that_cannot_be_reached_is_told_and_comes_when_it_can() {
    let mut page = Page::open_on(Site::built_page(), "nothing.txt");
    page.run_first("window.isAway = true;");
    page.run_first(&COMES_OTHERWISE.replace(
        "ANSWER",
        "(window.isAway ? Promise.reject(new TypeError('away')) : before(what, ...more))",
    ));
    page.go("");
    page.wait_until(
        "the line",
        &format!("{LACKING}?.startsWith('A part of the program is not here yet')"),
    );
    page.eval("window.isAway = false");
    page.wait_until("the findings", &format!("{NOTES}?.startsWith('No findings')"));
    assert_eq!(page.eval(LACKING), serde_json::Value::Null);
}

#[test]
fn the_board_is_worked_on_without_the_rest_and_a_panel_fetches_it() {
    let table = Table::open_prepared(&NEVER_COMES.replace("PART", "rest"));
    table.wait_until("the findings", &format!("{NOTES}?.startsWith('No findings')"));
    let before = table.sheet();
    let (x, y) = table.part("A1");
    table.drag(&[(x, y), (x + 20.0, y + 10.0), (x + 60.0, y + 40.0)]);
    table.wait_for("the part to be moved", || (table.sheet() != before).then_some(()));
    table.press("ctrl+z");
    table.wait_for("the part to be back", || (table.sheet() == before).then_some(()));
    table.wheel(x, y, 0, 120);
    table.open_part("F1");
    assert_eq!(
        table.eval(WAITED),
        0,
        "work on the board needs something of the rest"
    );
    assert_eq!(table.eval(FETCHED), serde_json::json!([1, 0]));

    table.press("Escape");
    table.click("papers");
    table.wait_until(
        "the papers",
        "document.querySelectorAll('[data-testid^=paper-]').length > 0",
    );
    assert_eq!(table.eval(FETCHED), serde_json::json!([1, 1]));
}
