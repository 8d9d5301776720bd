//! Who reads: the page in German and in feet and gauge numbers, switched at once, kept, without a network, and with no English
//! left on the main screens.

use crate::accessible::{Found, look};
use crate::table::Table;
use loomwright_tests::browser::{Page, Scheme};
use model::Fact;
use std::collections::BTreeMap;
use std::time::Duration;
use words::{Language, Reader, Words};

fn choose(page: &Page, cell: &str, place: usize) {
    page.eval(&format!(
        "(() => {{ const cell = document.querySelector('[data-testid=reader-{cell}]'); cell.selectedIndex = {place}; \
         cell.dispatchEvent(new Event('change', {{ bubbles: true }})); return true }})()"
    ));
}

/// Chooses German in the title block.
pub(crate) fn german(page: &Page) {
    choose(page, "language", 1);
    page.wait_until("German", "document.documentElement.lang === 'de'");
    page.wait_until(
        "a German tray",
        "document.querySelector('[data-testid=shelf]').textContent.startsWith('Regal')",
    );
}

#[test]
fn german_is_there_at_once_stays_after_reload_and_is_there_without_a_network() {
    let mut table = Table::open_kept();
    table.take_worked("van");
    assert_eq!(table.eval("document.documentElement.lang"), "en");
    let english = table.texts("note");
    german(&table);
    // Title block, findings, and the drawing's own description.
    let block = table.eval("document.querySelector('.title-block').innerText");
    let block = block.as_str().unwrap_or_default();
    for word in ["Auftrag", "Fahrzeug", "Befunde", "Rückgängig", "Bestand"] {
        assert!(block.contains(word), "{word} in {block}");
    }
    assert_ne!(table.texts("note"), english);
    table.press("a");
    assert!(table.text("shelf-drawer").contains("Sicherung"));
    table.press("Escape");
    table.open_part("F1");
    assert!(table.text("slip").contains("Nennstrom"), "{}", table.text("slip"));
    table.fill("slip-label", "Hauptsicherung");
    table.wait_kept();
    assert!(
        table.text("undo").contains("Bezeichnung von F1 setzen"),
        "{}",
        table.text("undo")
    );

    // The program is kept before the page is left: what is cut off in keeping it is no matter of languages.
    table.wait_at_most(Duration::from_secs(90), "the program to be kept", || {
        (table.eval("navigator.serviceWorker.controller?.state") == "activated").then_some(())
    });
    table.reload();
    table.wait_ready();
    assert_eq!(table.eval("document.documentElement.lang"), "de");
    let _ = table.console();
    table.page_mut().lose_site();
    table.reload();
    table.wait_ready();
    assert!(table.text("shelf").starts_with("Regal"));
}

#[test]
fn where_the_texts_cannot_be_fetched_the_page_says_so_and_stays_english() {
    let table = Table::open();
    table.eval("(() => { window.fetch = () => Promise.reject(new TypeError('no network')); return true })()");
    choose(&table, "language", 1);
    table.wait_for("words about it", || {
        table
            .said()
            .contains("The texts in Deutsch could not be fetched")
            .then_some(())
    });
    assert_eq!(table.eval("document.documentElement.lang"), "en");
    assert_eq!(
        table.eval("localStorage['loomwright-reader'] ?? null"),
        serde_json::Value::Null
    );
}

#[test]
fn feet_and_gauge_numbers_are_shown_and_typed_and_nothing_changes_by_looking() {
    let table = Table::open_worked("van");
    let before = table.job();
    choose(&table, "lengths", 1);
    choose(&table, "sizes", 1);
    let at = |table: &Table, x: &str| {
        let field = format!("document.querySelector('[data-testid={x}]').value");
        table.eval(&field).as_str().unwrap_or_default().to_owned()
    };
    let run = |table: &Table| {
        let sheet = table.sheet();
        sheet
            .runs
            .values()
            .find(|run| run.tag == "W12")
            .cloned()
            .expect("W12")
    };
    let open = |table: &Table| {
        let (x, y) = table.run("W12");
        table.double_click_at(x + 12.0, y);
        table.wait_until(
            "the slip of W12",
            "document.querySelector('[data-testid=slip-tag]')?.value === 'W12'",
        );
    };
    // 3.5 m are 11.48 ft (one foot is 0.3048 m exactly); 20 mm² lie between 4 AWG (21.15) and 5 AWG (16.77).
    open(&table);
    assert_eq!(at(&table, "field-length"), "11.5");
    assert_eq!(at(&table, "field-size"), "20 mm²");
    assert_eq!(table.text("field-size-beside"), "≈ 4 AWG");
    // Typed anew as it stands nothing changes, to the last digit: 11.5 ft would be 3.5052 m.
    table.fill("field-length", "11.5");
    table.fill("field-size", "20 mm²");
    assert!(
        table.job() == before,
        "looking and typing the same changed something"
    );
    table.fill("field-length", "12");
    table.wait_for("12 ft", || {
        (run(&table).wire.length == Fact::Given(model::quantity::Metres(3.6576))).then_some(())
    });
    for (typed, metres) in [
        ("6 ft", 1.8288),
        ("18 in", 0.4572),
        ("6'", 1.8288),
        ("1,7 m", 1.7),
        ("2.5 m", 2.5),
    ] {
        table.fill("field-length", typed);
        table.wait_for(typed, || {
            (run(&table).wire.length == Fact::Given(model::quantity::Metres(metres))).then_some(())
        });
    }
    for (typed, written) in [("8 AWG", "8AWG"), ("10 mm²", "10mm2"), ("4", "4AWG")] {
        table.fill("field-size", typed);
        table.wait_for(typed, || {
            let size = run(&table).wire.size;
            (model::PropertyType::print(&size) == written).then_some(())
        });
    }
    // Limits are lengths too: 0.45 m are 17.7 in; 20 in are 0.508 m, 2 ft 0.6096 m.
    table.press("Escape");
    table.click("open-limits");
    assert_eq!(at(&table, "limit-fuse-reach"), "17.7");
    table.fill("limit-fuse-reach", "17.7");
    assert_eq!(table.job().settings.limits.get("fuse-reach"), None);
    for (typed, metres) in [("20", 0.508), ("2 ft", 0.6096)] {
        table.fill("limit-fuse-reach", typed);
        table.wait_for(typed, || {
            (table.job().settings.limits.get("fuse-reach").copied() == Some(metres)).then_some(())
        });
    }
    table.assert_no_errors();
}

/// English messages that are plain text and read otherwise in German.
fn english() -> BTreeMap<String, String> {
    let german = Words::of(Reader {
        language: Language::German,
        ..Reader::default()
    });
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../crates/words/texts/en");
    let mut all = BTreeMap::new();
    for theme in words::THEMES {
        let text = std::fs::read_to_string(folder.join(format!("{theme}.ftl"))).expect("a file of messages");
        for line in text.lines() {
            if let Some((key, said)) = line.split_once(" = ")
                && !said.contains('{')
                && said.chars().filter(|c| c.is_alphabetic()).count() > 2
                && german.text(key) != said
            {
                all.insert(said.to_owned(), key.to_owned());
            }
        }
    }
    // Words that German has too, with another meaning elsewhere.
    let both: Vec<String> = all
        .keys()
        .filter(|said| all_german(&german).contains(*said))
        .cloned()
        .collect();
    for said in both {
        all.remove(&said);
    }
    all
}

fn all_german(german: &Words) -> std::collections::BTreeSet<String> {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../crates/words/texts/en");
    words::THEMES
        .iter()
        .flat_map(|theme| {
            let text =
                std::fs::read_to_string(folder.join(format!("{theme}.ftl"))).expect("a file of messages");
            text.lines()
                .filter_map(|line| line.split_once(" = ").map(|(key, _)| german.text(key)))
                .collect::<Vec<_>>()
        })
        .collect()
}

#[test]
fn no_english_word_is_left_on_the_main_screens() {
    let english = english();
    assert!(english.len() > 500, "the catalogue was read: {}", english.len());
    let mut table = Table::open_worked("van");
    german(&table);
    let mut left = Vec::new();
    let mut found = Found::default();
    let mut seen = |table: &Table, screen: &str| {
        let texts = table.eval(
            "(() => { const all = []; const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT); \
             while (walk.nextNode()) { const at = walk.currentNode.parentElement; \
               if (at && at.tagName !== 'SCRIPT' && at.checkVisibility()) all.push(walk.currentNode.textContent.trim()) } \
             for (const at of document.querySelectorAll('[aria-label],[placeholder],[title]')) \
               for (const name of ['aria-label', 'placeholder', 'title']) if (at.getAttribute(name)) all.push(at.getAttribute(name).trim()); \
             return all })()",
        );
        for text in texts
            .as_array()
            .into_iter()
            .flatten()
            .filter_map(serde_json::Value::as_str)
        {
            if let Some(key) = english
                .get(text.trim_end_matches([':', '.']))
                .or_else(|| english.get(text))
            {
                left.push(format!("{screen}: {text} ({key})"));
            }
        }
    };
    seen(&table, "the sheet");
    look(&table, "the sheet in German", &mut found);
    for (key, there) in [
        ("a", "shelf-drawer"),
        ("b", "jobs-drawer"),
        ("l", "limits-drawer"),
        ("g", "readings-drawer"),
        ("i", "record-drawer"),
        ("c", "thread-drawer"),
        ("y", "papers-page"),
        ("o", "outline-list"),
        ("?", "keys-list"),
        ("shift+L", "share-drawer"),
    ] {
        table.press(key);
        table.wait_until(
            there,
            &format!("document.querySelector('[data-testid={there}]') !== null"),
        );
        seen(&table, there);
        table.press("Escape");
        if table.count(there) > 0 {
            table.eval(&format!(
                "document.querySelector('[data-testid={there}] .slip__close').click()"
            ));
        }
    }
    table.open_part("A1");
    seen(&table, "a part's slip");
    table.press("Escape");
    table.press("n");
    table.wait_until(
        "a finding",
        "document.querySelector('[data-testid=explanation]') !== null",
    );
    seen(&table, "a finding");
    table.page_mut().set_scheme(Scheme::Dark);
    look(&table, "a finding in German, dark", &mut found);
    left.sort();
    left.dedup();
    assert!(left.is_empty(), "{}", left.join("\n"));
}
