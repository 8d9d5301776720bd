//! The second half of the program follows the first picture: nothing that stands at the beginning asks for it, nor does work
//! on the board; and what does ask for it before it is there gets it.

use crate::table::Table;
use loomwright_tests::browser::Page;

/// How often the program stood still because the rest was asked for before it was there.
const WAITED: &str = "performance.getEntriesByName('loomwright waits for the rest').length";
/// How often the rest was fetched.
const FETCHED: &str =
    "performance.getEntriesByType('resource').filter(it => it.name.endsWith('_rest.wasm')).length";
/// A first visit, on which the rest is on its way for ever: only who asks for it at once gets it.
const NEVER_COMES: &str = "Object.defineProperty(navigator, 'serviceWorker', { get: () => undefined }); \
    const before = window.fetch; window.fetch = (what, ...more) => \
    String(what).endsWith('_rest.wasm') ? new Promise(() => {}) : before(what, ...more);";

#[test]
fn the_rest_comes_by_itself_after_the_first_picture() {
    let page = Page::open("");
    page.wait_until("the rest to be fetched", &format!("{FETCHED} > 0"));
    page.wait_until("the program", "typeof loomwright_state === 'function'");
    assert_eq!(
        page.eval(WAITED),
        0,
        "the first picture needs something of the rest"
    );
    assert_eq!(page.eval(FETCHED), 1);
}

#[test]
fn the_board_is_worked_on_without_the_rest_and_a_panel_fetches_it() {
    let table = Table::open();
    table.run_first(NEVER_COMES);
    table.reload();
    table.wait_until("the program", "typeof loomwright_state === 'function'");
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
    assert_eq!(table.eval(FETCHED), 0);

    table.press("Escape");
    table.click("papers");
    table.wait_until(
        "the papers",
        "document.querySelectorAll('[data-testid^=paper-]').length > 0",
    );
    assert_eq!(table.eval(FETCHED), 1);
    table.assert_no_errors();
}
