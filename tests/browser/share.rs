//! The shared diagram: one person makes a link, another opens it with a clean browser and can look, but neither change nor
//! store anything; a damaged link says so; a copy of one's own is made on purpose.

use crate::table::Table;
use loomwright_tests::browser::{Page, Site};
use serde_json::Value;
use std::time::Duration;

/// Has the van on the table and gives the link of its Share drawer, without the address.
fn link_of_the_van() -> String {
    let table = Table::open_worked("van");
    table.press("shift+L");
    assert!(
        table.count("share-link") == 0,
        "no link before there is an address"
    );
    // What is private is counted and stays out: a remark, the vehicle's name and who drew it.
    let seen = table.texts("share-seen").join("\n");
    assert!(
        seen.contains("26 parts, 47 runs") && !seen.contains("The bench"),
        "{seen}"
    );
    table.click("own-address");
    table.wait_for("the link", || (table.count("share-link") == 1).then_some(()));
    assert_eq!(table.count("share-code"), 1, "a code to scan");
    let link = table.eval("document.querySelector('[data-testid=share-link]').value");
    let link = link.as_str().unwrap_or_default().to_owned();
    table.screenshot("share");
    // The printed sheet brings the code along.
    table.eval("window.dispatchEvent(new Event('beforeprint'))");
    assert_eq!(
        table.eval("document.querySelectorAll('#print-sheet .print-code path').length"),
        1
    );
    table.assert_no_errors();
    let address = table.eval("location.origin + location.pathname");
    link.strip_prefix(address.as_str().unwrap_or_default())
        .unwrap_or_else(|| panic!("{link}"))
        .to_owned()
}

/// Opens a path that shows a drawing to look at.
fn look_at(site: Site, path: &str) -> Page {
    let page = Page::open_kept_on(site, path);
    page.wait_at_most(Duration::from_secs(90), "the drawing", || {
        (page.eval("typeof loomwright_state") == "function").then_some(())
    });
    page
}

fn job(page: &Page) -> Value {
    page.eval("loomwright_job()")
}

#[test]
fn a_link_is_looked_at_and_cannot_be_changed() {
    let link = link_of_the_van();
    let page = look_at(Site::built_page(), &link);
    let before = job(&page);
    let opened = sharing::open(&link).expect("the link opens natively too");
    assert_eq!(
        before.as_str().unwrap_or_default(),
        model::file::write(&opened),
        "the same job as natively"
    );
    assert_eq!(
        page.eval("JSON.parse(loomwright_state()).findings_count"),
        page.eval("JSON.parse(loomwright_state()).findings.length")
    );
    assert!(page.text("grades").contains("9 Stop"), "{}", page.text("grades"));

    // No tools to edit with are there.
    for gone in ["shelf", "pull-run", "jobs", "undo", "title-job", "own-address"] {
        assert_eq!(page.count(gone), 0, "{gone}");
    }
    // By pointer: a part, a stud and an end of a run are dragged.
    let at = |what: &str| {
        let at = page.eval(&format!("JSON.parse(loomwright_state()).{what}"));
        (
            at[0].as_f64().unwrap_or_default(),
            at[1].as_f64().unwrap_or_default(),
        )
    };
    let (x, y) = at("parts['A1']");
    page.drag(&[(x, y), (x + 30.0, y + 40.0), (x + 60.0, y + 90.0)]);
    let (moved_x, moved_y) = at("parts['A1']");
    assert!(
        (moved_x - x - 60.0).abs() < 2.0 && (moved_y - y - 90.0).abs() < 2.0,
        "the paper was shifted"
    );
    let (x, y) = at("terminals['D1.out4']");
    page.drag(&[(x, y), (x + 100.0, y + 100.0), (x + 150.0, y + 160.0)]);
    let (x, y) = at("runs['W12']");
    page.double_click_at(x, y);
    // By keyboard.
    page.press("Home");
    for chord in [
        "ctrl+a",
        "Delete",
        "r",
        "ctrl+x",
        "ctrl+v",
        "ctrl+d",
        "shift+Right",
        "j",
        "e",
        "k",
        "shift+T",
        "ctrl+z",
        "F2",
        "shift+Enter",
        "shift+E",
        "a",
        "b",
        "w",
    ] {
        page.press(chord);
    }
    assert_eq!(job(&page), before, "nothing changed");
    assert!(
        page.text("said").contains("for looking at"),
        "{}",
        page.text("said")
    );

    // A tap tells about a part in plain words.
    page.press("Escape");
    page.press("Home");
    let (x, y) = at("parts['LS4']");
    page.click_at(x, y);
    let told = page.wait_for("the slip", || {
        (page.count("plain-slip") == 1).then(|| page.text("plain-slip"))
    });
    assert!(told.contains("It is silent"), "{told}");
    page.screenshot("looked-at");

    // Nothing was written into this browser.
    assert_eq!(page.eval("localStorage.length"), 0);
    assert_eq!(page.eval("indexedDB.databases().then(all => all.length)"), 0);
    assert_eq!(
        page.eval("Promise.all([caches.keys(), navigator.serviceWorker.getRegistrations()]).then(all => all.map(list => list.length))"),
        serde_json::json!([0, 0])
    );
    page.assert_no_errors();

    // A copy of one's own is made on purpose, kept, and can be changed.
    page.click("own-copy");
    page.wait_at_most(Duration::from_secs(90), "the editor with the copy", || {
        (page.count("table") == 1
            && page.eval("JSON.parse(loomwright_job()).title") == "Trades van: what earlier hands left")
            .then_some(())
    });
    assert_eq!(page.eval("location.hash"), "");
    page.press("ctrl+a");
    page.press("Delete");
    page.wait_until(
        "an emptied sheet",
        "Object.keys(JSON.parse(loomwright_state()).parts).length === 0",
    );
}

#[test]
fn a_damaged_link_says_so() {
    let link = sharing::fragment(&lessons::WORKED_JOBS[0].job()).expect("fits");
    let cut = format!("#{}", &link[..link.len() - 9]);
    let page = Page::open_on(Site::built_page(), &cut);
    page.wait_at_most(Duration::from_secs(90), "the message", || {
        (page.count("no-drawing") == 1).then_some(())
    });
    assert!(
        page.text("no-drawing")
            .contains("cut short or changed on its way"),
        "{}",
        page.text("no-drawing")
    );
    page.screenshot("damaged-link");
    page.assert_no_errors();
}
