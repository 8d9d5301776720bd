//! Opens a page that remembers which of its functions ran (`cargo xtask record` makes it) as a newcomer does, and writes which ran
//! until the first picture: the lines of `functions.txt` in its folder with 1 or 0 before them, as `ran.txt` beside it.

#![allow(clippy::disallowed_methods, clippy::print_stdout)]

use loomwright_tests::browser::{Page, Scheme, Site};
use std::path::Path;

/// The page must not take itself for whole: it waits with what the other parts are for.
const PREPARE: &str = "globalThis.loomwright_rest = false; \
    addEventListener('TrunkApplicationStarted', event => { globalThis.loomwright_module = event.detail.wasm })";
/// The numbers in which the module remembers, in order.
const RAN: &str = "(() => { const all = []; for (let n = 0; loomwright_module['~ran' + n]; n++) \
    all.push(loomwright_module['~ran' + n].value >>> 0); return all })()";
/// How many functions one number is for: see crates/xtask/src/split/watched.rs.
const EACH: usize = 32;
const GERMAN: &str = r#"localStorage.setItem('loomwright-reader', '{"language":"de","lengths":"metres","sizes":"square-millimetres"}')"#;
const FEET: &str =
    r#"localStorage.setItem('loomwright-reader', '{"language":"en","lengths":"feet","sizes":"awg"}')"#;

/// Waits until the job on the table is drawn and kept, and a little.
fn settle(page: &Page) {
    page.wait_until(
        "the job to be this tab's",
        "navigator.locks.query().then(q => q.held.some(lock => lock.name.startsWith('loomwright:')))",
    );
    page.eval("new Promise(done => setTimeout(done, 600))");
}

fn main() {
    let folder = std::env::args().nth(1).expect("a folder");
    let folder = Path::new(&folder);
    let functions = std::fs::read_to_string(folder.join("functions.txt")).expect("a list of functions");
    let names: Vec<&str> = functions.lines().collect();
    let mut ran = vec![false; names.len()];

    for (what, chosen, scheme, touch) in [
        ("a first visit", None, Scheme::Light, false),
        ("dark, in German", Some(GERMAN), Scheme::Dark, false),
        ("by touch, in feet", Some(FEET), Scheme::Light, true),
    ] {
        let mut page = Page::open_on(Site::of_folder(folder, "record"), "nothing.txt");
        page.run_first(PREPARE);
        if let Some(chosen) = chosen {
            page.eval(chosen);
        }
        page.set_scheme(scheme);
        if touch {
            page.set_size(1024, 768);
            page.set_touch();
        }
        page.go("");
        settle(&page);
        // The pointer passes over the sheet.
        page.hover(500.0, 400.0);
        page.hover(600.0, 400.0);
        // A key is let go, and another window gone to.
        page.eval("document.getElementById('board').dispatchEvent(new KeyboardEvent('keyup', { key: 'r', bubbles: true }))");
        page.eval("dispatchEvent(new Event('blur'))");
        let numbers = page.eval(RAN);
        let mut more = 0;
        for (at, number) in numbers.as_array().into_iter().flatten().enumerate() {
            let number = number.as_u64().unwrap_or_default();
            for (bit, did) in ran.iter_mut().skip(at * EACH).take(EACH).enumerate() {
                if number >> bit & 1 == 1 && !std::mem::replace(did, true) {
                    more += 1;
                }
            }
        }
        println!("{what}: {more} functions more");
    }

    let lines: String = names
        .iter()
        .zip(&ran)
        .map(|(name, did)| format!("{} {name}\n", u8::from(*did)))
        .collect();
    std::fs::write(folder.join("ran.txt"), lines).expect("a file");
}
