//! The content security policy: it is in force, and nothing that one does with the page goes against it.

use crate::table::Table;
use loomwright_tests::browser::{Page, Site};
use serde_json::json;
use std::path::Path;
use std::time::Duration;

/// From here on, violations are noted before anything of a page runs.
fn note_violations(page: &Page) {
    page.run_first(
        "window.violations = []; document.addEventListener('securitypolicyviolation', \
         event => violations.push(`${event.effectiveDirective}: ${event.blockedURI} ${event.sample}`))",
    );
}

/// Does what hands copies out: as SVG, as PNG, to the printer, to the clipboard.
fn hand_out(page: &Page, folder: &Path) {
    page.download_into(folder);
    for (words, ending) in [
        ("Export the sheet as SVG", ".svg"),
        ("Export the sheet as PNG", ".png"),
    ] {
        page.press("/");
        page.type_text(words);
        page.press("Enter");
        page.downloaded(folder, ending);
    }
    page.eval("dispatchEvent(new Event('beforeprint'))");
    page.wait_until(
        "the sheet for the printer",
        "document.querySelector('#print-sheet svg') !== null",
    );
    page.press("ctrl+a");
    page.press("ctrl+c");
}

/// What a hostile word would do if it ever became markup is refused, and is the only thing that was.
fn holds(page: &Page) {
    assert_eq!(page.eval("violations"), json!([]));
    page.assert_no_errors();
    page.eval(
        "(() => { const div = document.createElement('div'); div.innerHTML = '<img src=\"http://127.0.0.1:1/x.png\" onerror=\"hacked=1\">\
         <iframe src=\"data:text/html,x\"></iframe><object data=\"x\"></object>'; document.body.append(div); \
         const script = document.createElement('script'); script.textContent = 'hacked=1'; document.body.append(script); \
         fetch('http://127.0.0.1:1/').catch(() => 0); const form = document.createElement('form'); form.action = 'http://127.0.0.1:1/'; \
         document.body.append(form); form.submit(); return true })()",
    );
    for refused in [
        "img-src",
        "script-src-attr",
        "frame-src",
        "script-src-elem",
        "connect-src",
        "form-action",
    ] {
        page.wait_until(
            &format!("{refused} to be refused"),
            &format!("violations.some(words => words.startsWith('{refused}:'))"),
        );
    }
    assert_eq!(page.eval("typeof hacked"), "undefined");
}

#[test]
fn a_day_of_work_goes_by_without_a_violation() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut table = Table::open_kept();
    note_violations(&table);
    table.page_mut().go("");
    table.wait_ready();
    table.take_worked("van");
    hand_out(&table, folder.path());
    // Open and save by the pickers, share, change the paper, look at everything that opens.
    table.answer_pickers("policy.json");
    table.press("ctrl+s");
    table.wait_for("the job to be saved", || {
        (!table.picked_file().is_empty()).then_some(())
    });
    table.press("ctrl+o");
    table.wait_until(
        "the job to be opened",
        "document.querySelector('[data-testid=said]').innerText.includes('is on the table')",
    );
    table.press("shift+L");
    table.click("own-address");
    table.click("copy-link");
    table.click("page-file");
    table.downloaded(folder.path(), ".html");
    table.press("Escape");
    for chord in [
        "a",
        "Escape",
        "b",
        "Escape",
        "o",
        "Escape",
        "l",
        "Escape",
        "m",
        "Escape",
        "n",
        "shift+Enter",
        "ctrl+z",
        "1",
        "2",
        "3",
        "4",
        "5",
        "6",
        "0",
        "Escape",
    ] {
        table.press(chord);
    }
    table.set_print(true);
    table.set_print(false);
    holds(&table);
}

#[test]
fn a_page_file_does_without_any_host() {
    let folder = tempfile::tempdir().expect("a folder");
    let template = std::fs::read_to_string(xtask::page_folder().join("page.html"))
        .expect("page.html beside the built page");
    let job = lessons::WorkedJob::of("camper").expect("a worked job").job();
    let file = folder.path().join("camper.html");
    std::fs::write(&file, sharing::page(&template, &job).expect("a page")).expect("a file");
    let page = Page::open_on(Site::built_page(), "none");
    note_violations(&page);
    page.go_to_file(&file);
    page.wait_at_most(Duration::from_secs(90), "the drawing", || {
        (page.eval("typeof loomwright_state") == "function").then_some(())
    });
    let _ = page.console();
    hand_out(&page, folder.path());
    page.click("own-copy");
    page.downloaded(folder.path(), ".loom.json");
    holds(&page);
}
