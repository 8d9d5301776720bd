//! The page needs nobody: no request leaves for any host but the one it came from, whatever one does with it.
//! A page file asks not even that one: see `page_file.rs`.

use crate::table::Table;
use loomwright_tests::browser::{Page, Site};
use serde_json::Value;
use std::time::Duration;

#[test]
fn a_day_of_work_asks_no_other_host_for_anything() {
    let table = Table::open_kept();
    table.take_worked("van");
    table.answer_pickers("work.json");
    table.open_part("A1");
    for key in [
        "Escape", "1", "2", "3", "4", "5", "6", "0", "n", "Escape", "f", "o", "o", "m", "Escape",
    ] {
        table.press(key);
    }
    table.press("ctrl+s");
    table.wait_for("the job to be saved", || {
        (!table.picked_file().is_empty()).then_some(())
    });
    table.take_worked("camper");
    table.reload();
    table.wait_ready();

    asks_nobody_else(&table);
}

#[test]
fn who_looks_at_a_link_asks_no_other_host_for_anything() {
    let job = lessons::WorkedJob::of("van").expect("a worked job").job();
    let link = format!("#{}", sharing::fragment(&job).expect("it fits"));
    let page = Page::open_kept_on(Site::built_page(), &link);
    page.wait_at_most(Duration::from_secs(90), "the drawing", || {
        (page.eval("typeof loomwright_state") == "function").then_some(())
    });
    for key in ["1", "2", "6", "0", "n", "Escape", "o", "Escape", "Home"] {
        page.press(key);
    }
    page.eval("dispatchEvent(new Event('beforeprint'))");
    asks_nobody_else(&page);
}

fn asks_nobody_else(page: &Page) {
    // Resource Timing (W3C): every request of the page is an entry, refused ones too.
    let asked = page.eval(
        "[location.origin, performance.getEntriesByType('navigation').concat(performance.getEntriesByType('resource'))\
         .map(entry => entry.name)]",
    );
    let origin = asked[0].as_str().unwrap_or_default();
    let names: Vec<&str> = asked[1]
        .as_array()
        .into_iter()
        .flatten()
        .filter_map(Value::as_str)
        .collect();
    assert!(
        names.iter().any(|name| name.contains(".wasm")),
        "the page's own module is among them: {names:?}"
    );
    for name in names {
        assert!(
            name.starts_with(origin) || name.starts_with("data:") || name.starts_with("blob:"),
            "asked another host: {name}"
        );
    }
    // Nor does the document name one that it would ask later, by a link, a font or a script.
    let named = page.eval(
        "[...document.querySelectorAll('[src], link[href], form[action]')]\
         .map(e => e.src || e.href || e.action).filter(address => address && new URL(address, location).protocol.startsWith('http') \
         && new URL(address, location).origin !== location.origin)",
    );
    assert_eq!(named, serde_json::json!([]));
    // A name that is looked up in vain is an error on the console: see the harness.
    page.assert_no_errors();
}
