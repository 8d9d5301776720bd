//! Every screen against the rules of WCAG 2.2 A and AA that a program can check (axe-core), in both lights.

use crate::table::Table;
use loomwright_tests::browser::{Page, Scheme, Site};
use serde_json::Value;
use std::time::Duration;

/// What was found on all screens that were looked at: all of it is told at once.
#[derive(Default)]
pub(crate) struct Found(Vec<String>);

impl Drop for Found {
    fn drop(&mut self) {
        assert!(
            self.0.is_empty() || std::thread::panicking(),
            "{}",
            self.0.join("\n")
        );
    }
}

/// Runs the rules over the page as it stands.
pub(crate) fn look(page: &Page, screen: &str, all: &mut Found) {
    let rules = std::fs::read_to_string(xtask::accessibility_script())
        .expect("the rules of accessibility: `cargo xtask test --stage browser` fetches them");
    page.eval(&format!(
        "(() => {{ if (!window.axe) {{ {rules} }} window.axed = null; return 0; }})()"
    ));
    page.eval(
        "axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] }).then(found => {
            window.axed = found.violations.map(rule => rule.id + ': ' + rule.help + '\\n' + rule.nodes.map(node => '    ' + node.html.slice(0, 160)).join('\\n'));
            window.axed_passes = found.passes.length;
        }) && 0",
    );
    let found = page.wait_for(&format!("the rules on {screen}"), || {
        let found = page.eval("window.axed");
        (found != Value::Null).then_some(found)
    });
    let found: Vec<&str> = found
        .as_array()
        .into_iter()
        .flatten()
        .filter_map(Value::as_str)
        .collect();
    if !found.is_empty() {
        all.0.push(format!("{screen}:\n{}", found.join("\n")));
    }
    let passes = page.eval("window.axed_passes").as_u64().unwrap_or_default();
    assert!(passes > 5, "{screen}: hardly a rule was tried ({passes})");
}

#[test]
fn every_screen_of_the_editor_is_accessible() {
    let mut found = Found::default();
    let mut table = Table::open_worked("van");
    for scheme in [Scheme::Light, Scheme::Dark] {
        table.page_mut().set_scheme(scheme);
        look(&table, &format!("the sheet, {scheme:?}"), &mut found);
        for (key, what, there) in [
            ("a", "the shelf", "shelf-drawer"),
            ("/", "Ask", "ask-box"),
            ("b", "the list of jobs", "jobs-drawer"),
            ("l", "conditions and limits", "limits-drawer"),
            ("o", "the outline", "outline-list"),
            ("shift+?", "the list of keys", "keys-list"),
            ("g", "the readings", "readings-drawer"),
            ("shift+L", "Share", "share-drawer"),
            ("i", "recording", "record-drawer"),
            ("c", "the thread of the job", "thread-drawer"),
            ("y", "the papers", "papers-page"),
            ("m", "the meter", "meter-face"),
            ("n", "a finding explained", "explanation"),
        ] {
            table.press(key);
            table.wait_for(what, || (table.count(there) == 1).then_some(()));
            look(&table, &format!("{what}, {scheme:?}"), &mut found);
            table.press("Escape");
            table.press("Escape");
        }
        table.press("Home");
        for tag in ["A1", "P2"] {
            table.open_part(tag);
            look(&table, &format!("the slip of {tag}, {scheme:?}"), &mut found);
            table.press("Escape");
        }
        let (x, y) = table.run("W13");
        table.click_at(x, y);
        look(&table, &format!("the slip of a run, {scheme:?}"), &mut found);
        table.press("Escape");
    }
    // Lists of the thread unfolded, papers of each sort, the body plan and what stands beside it.
    table.press("c");
    table.click("thread-add-complaint");
    look(&table, "a complaint", &mut found);
    for section in [
        "thread-condition",
        "thread-find-out",
        "thread-becomes",
        "thread-quote",
    ] {
        table.click(section);
        if section == "thread-quote" {
            table.click("quote-findings");
        }
        look(&table, section, &mut found);
    }
    table.press("Escape");
    table.press("y");
    for paper in ["paper-build", "paper-meter", "paper-handover"] {
        table.click(paper);
        look(&table, paper, &mut found);
    }
    table.press("Escape");
    table.press("p");
    table.click("open-body-drawer");
    table.wait_until(
        "its places",
        "document.querySelectorAll('[data-testid=body-part]').length > 10",
    );
    look(&table, "the body plan", &mut found);
    table.press("Escape");
    table.press("p");
    table.page_mut().set_size(800, 1000);
    table.page_mut().set_touch();
    look(&table, "a tablet held upright", &mut found);
}

#[test]
fn what_a_link_shows_is_accessible() {
    let mut found = Found::default();
    let fragment = sharing::fragment(&lessons::WORKED_JOBS[1].job()).expect("fits");
    let page = Page::open_on(Site::built_page(), &format!("#{fragment}"));
    page.wait_at_most(Duration::from_secs(90), "the drawing", || {
        (page.count("viewer") == 1).then_some(())
    });
    look(&page, "a drawing to look at", &mut found);
    page.press("n");
    look(&page, "a finding of it", &mut found);
    page.press("Escape");
    page.press("Home");
    let place = page.eval("JSON.parse(loomwright_state()).parts.A1");
    page.click_at(
        place[0].as_f64().unwrap_or_default(),
        place[1].as_f64().unwrap_or_default(),
    );
    page.wait_for("the slip", || (page.count("plain-slip") == 1).then_some(()));
    look(&page, "a part of it", &mut found);
    let page = Page::open_on(
        Site::built_page(),
        &format!("#{}", &fragment[..fragment.len() - 9]),
    );
    page.wait_at_most(Duration::from_secs(90), "the message", || {
        (page.count("no-drawing") == 1).then_some(())
    });
    look(&page, "a link that does not open", &mut found);
}

#[test]
fn the_lessons_are_accessible() {
    let mut found = Found::default();
    let mut page = Page::open("#lessons");
    page.wait_at_most(Duration::from_secs(90), "the list of lessons", || {
        (page.count("lessons") == 1).then_some(())
    });
    for scheme in [Scheme::Light, Scheme::Dark] {
        page.set_scheme(scheme);
        page.set_size(1280, 720);
        page.go("#lessons");
        page.wait_for("the list of lessons", || {
            (page.count("lessons") == 1).then_some(())
        });
        look(&page, &format!("the list of lessons, {scheme:?}"), &mut found);
        page.press("Enter");
        page.wait_for("the lesson", || (page.count("lesson") == 1).then_some(()));
        let mut seen = String::new();
        // Every kind of step, with what each shows besides.
        for step in 0..30 {
            let kind = page.text("kind");
            if kind != seen {
                look(&page, &format!("{kind}, {scheme:?}"), &mut found);
                seen = kind;
            }
            if step == 1 {
                page.press("p");
                page.press("right");
                page.press("?");
                page.wait_for("the keys", || (page.count("lesson-keys") == 1).then_some(()));
                look(&page, &format!("pointer and keys, {scheme:?}"), &mut found);
                page.press("Escape");
                page.press("Escape");
            }
            page.press("pagedown");
            if page.count("because") == 1 || page.text("foot-bad").contains(": from ") {
                look(&page, &format!("{seen}, its second half, {scheme:?}"), &mut found);
            }
        }
        page.set_size(820, 1180);
        look(
            &page,
            &format!("the end, one above the other, {scheme:?}"),
            &mut found,
        );
    }
}
