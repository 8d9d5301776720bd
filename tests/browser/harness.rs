//! The harness itself, on a page made for it: if these fail, no other test of this target means anything.

use loomwright_tests::browser::{Page, Scheme, Site};
use std::time::Duration;

const PAGE: &str = r#"<!doctype html><html lang="en"><meta charset="utf-8"><title>Harness</title><link rel="icon" href="data:,">
<style>body { margin: 0; background: #fff } @media (prefers-color-scheme: dark) { body { background: #112233 } }
#pad { position: absolute; left: 100px; top: 200px; width: 400px; height: 300px; background: #ddd; touch-action: none }</style>
<button data-testid="more" onclick="count.textContent = ++n">more</button> <output id="count" data-testid="count">0</output>
<input data-testid="name" oninput="localStorage.name = this.value"> <div id="pad" data-testid="pad"></div>
<script>
let n = 0; window.seen = [];
for (const kind of ['pointerdown', 'pointermove', 'pointerup', 'contextmenu', 'dblclick'])
  pad.addEventListener(kind, e => seen.push([kind, e.clientX, e.clientY, e.pointerType, e.buttons, e.isTrusted]));
addEventListener('keydown', e => seen.push(['key', (e.ctrlKey ? 'ctrl+' : '') + (e.shiftKey ? 'shift+' : '') + e.key, e.isTrusted]));
pad.addEventListener('wheel', e => seen.push(['wheel', e.deltaY]));
</script></html>"#;

fn page() -> (tempfile::TempDir, Page) {
    let folder = tempfile::tempdir().expect("a folder");
    std::fs::write(folder.path().join("index.html"), PAGE).expect("a page");
    let site = Site::of_folder(folder.path(), "some/where");
    let page = Page::open_on(site, "");
    (folder, page)
}

#[test]
fn pointer_and_keys_are_real_and_arrive_where_they_were_aimed() {
    let (_folder, page) = page();
    page.click("more");
    page.click("more");
    assert_eq!(page.text("count"), "2");
    assert_eq!(page.count("more"), 1);
    assert_eq!(page.count("nothing"), 0);

    page.eval("seen.length = 0");
    page.drag(&[(150.0, 250.0), (300.0, 400.0), (450.0, 250.0)]);
    let seen = page.eval("seen.filter(e => e[0] !== 'key')");
    let events = seen.as_array().expect("a list");
    assert_eq!(
        events.iter().filter(|event| event[0] == "pointerdown").count(),
        1,
        "{seen}"
    );
    let pressed_moves = events
        .iter()
        .filter(|event| event[0] == "pointermove" && event[4] == 1)
        .count();
    assert!(pressed_moves >= 10, "{seen}");
    let last = events.last().expect("an event");
    assert_eq!(
        (&last[0], last[1].as_f64(), last[2].as_f64()),
        (&"pointerup".into(), Some(450.0), Some(250.0))
    );
    assert!(
        events.iter().all(|event| event[5] == true && event[3] == "mouse"),
        "{seen}"
    );

    page.eval("seen.length = 0");
    page.drag_and_hold(&[(150.0, 250.0), (300.0, 400.0)]);
    assert_eq!(page.eval("seen.some(e => e[0] === 'pointerup')"), false);
    page.release();
    page.wait_until(
        "the button to be released",
        "seen.some(e => e[0] === 'pointerup')",
    );

    page.eval("seen.length = 0");
    page.right_click_at(300.0, 300.0);
    page.double_click_at(300.0, 300.0);
    page.tap_at(200.0, 300.0);
    page.wheel(300.0, 300.0, 0, 120);
    page.wait_until("the wheel", "seen.some(e => e[0] === 'wheel' && e[1] === 120)");
    let kinds = page.eval("[...new Set(seen.map(e => e[0]))]");
    for kind in ["contextmenu", "dblclick"] {
        assert!(
            kinds
                .as_array()
                .is_some_and(|kinds| kinds.iter().any(|k| k == kind)),
            "{kind} in {kinds}"
        );
    }
    assert_eq!(page.eval("seen.some(e => e[3] === 'touch' && e[5])"), true);

    page.eval("seen.length = 0");
    page.press("ctrl+shift+Z");
    page.press("Escape");
    page.press("left");
    assert_eq!(
        page.eval("seen.filter(e => e[0] === 'key' && e[2]).map(e => e[1])")
            .to_string(),
        r#"["ctrl+Control","ctrl+shift+Shift","ctrl+shift+Z","Escape","ArrowLeft"]"#
    );
    page.assert_no_errors();
}

#[test]
fn what_was_stored_is_there_after_reload_close_and_crash_and_a_new_page_is_clean() {
    let (_folder, mut page) = page();
    page.click("name");
    page.type_text("Übung 1");
    page.wait_until("the text to be stored", "localStorage.name === 'Übung 1'");
    page.reload();
    assert_eq!(page.eval("localStorage.name"), "Übung 1");
    page.close_and_reopen();
    assert_eq!(page.eval("localStorage.name"), "Übung 1");
    page.crash_and_reopen();
    assert_eq!(page.eval("document.title"), "Harness");
    let (_other_folder, other) = self::page();
    assert_eq!(other.eval("localStorage.name ?? null"), serde_json::Value::Null);
}

#[test]
fn window_and_colour_scheme_are_as_set_and_pictures_have_that_size() {
    let (_folder, mut page) = page();
    for (width, height, scheme, ground) in [
        (1440, 900, Scheme::Light, "rgb(255, 255, 255)"),
        (820, 1180, Scheme::Dark, "rgb(17, 34, 51)"),
    ] {
        page.set_size(width, height);
        page.set_scheme(scheme);
        assert_eq!(
            page.eval("[innerWidth, innerHeight]"),
            serde_json::json!([width, height])
        );
        assert_eq!(
            page.eval("getComputedStyle(document.body).backgroundColor"),
            ground
        );
        assert_eq!(
            page.eval("matchMedia('(prefers-reduced-motion: reduce)').matches"),
            true
        );
        let file = page.screenshot(&format!("harness-{width}"));
        let bytes = std::fs::read(file).expect("a picture");
        // PNG specification (ISO/IEC 15948), IHDR: width and height as big-endian words at bytes 16 and 20.
        let word = |at: usize| u32::from_be_bytes([bytes[at], bytes[at + 1], bytes[at + 2], bytes[at + 3]]);
        assert_eq!((word(16), word(20)), (width, height));
    }
}

#[test]
fn errors_of_the_page_and_hosts_outside_are_noticed() {
    let (_folder, page) = page();
    page.assert_no_errors();
    page.eval("void setTimeout(() => { throw new Error('planted') })");
    page.wait_for("the planted error", || {
        page.console()
            .iter()
            .any(|line| line.contains("planted"))
            .then_some(())
    });
    assert_eq!(
        page.eval("fetch('http://example.com/').then(() => 'reached', () => 'refused')"),
        "refused"
    );
    let failing = std::panic::catch_unwind(std::panic::AssertUnwindSafe(|| page.assert_no_errors()));
    assert!(failing.is_err(), "a refused host is an error of the page");
    let late = std::panic::catch_unwind(std::panic::AssertUnwindSafe(|| {
        page.wait_at_most(Duration::from_millis(200), "harness self test", || None::<()>);
    }));
    let message = late.expect_err("a deadline that passes fails");
    let message = message.downcast_ref::<String>().expect("a message");
    assert!(
        message.contains("harness self test") && message.contains("picture:"),
        "{message}"
    );
}
