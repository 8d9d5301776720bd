//! The page file: what the app and the command line hand out opens by a double click in a clean browser, offline; it shows the
//! drawing to be looked at, whatever the drawing says.

use crate::table::Table;
use loomwright_tests::browser::{Page, Site};
use std::path::Path;
use std::time::Duration;

/// A browser that never saw the program, with the file open in it. It is served nothing.
fn open_file(file: &Path) -> Page {
    let empty = tempfile::tempdir().expect("a folder");
    std::fs::write(
        empty.path().join("index.html"),
        "<!doctype html><title>nothing</title><link rel=icon href='data:,'>",
    )
    .expect("a page");
    let page = Page::open_on(Site::of_folder(empty.path(), "nowhere"), "");
    page.go_to_file(file);
    page
}

fn wait_for_drawing(page: &Page) {
    page.wait_at_most(Duration::from_secs(90), "the drawing", || {
        (page.eval("typeof loomwright_state") == "function").then_some(())
    });
}

/// The page file's template as it was built.
fn template() -> String {
    std::fs::read_to_string(xtask::page_folder().join("page.html")).expect("page.html beside the built page")
}

#[test]
fn a_page_file_is_downloaded_and_opens_without_a_server() {
    let folder = tempfile::tempdir().expect("a folder");
    let table = Table::open_worked("van");
    table.download_into(folder.path());
    table.press("shift+L");
    table.click("page-file");
    let file = table.downloaded(folder.path(), ".html");
    assert!(
        table.said().contains("Downloaded as Trades-van"),
        "{}",
        table.said()
    );
    table.assert_no_errors();
    let made = std::fs::read_to_string(&file).expect("a text");
    let (expected, _) = sharing::shown(&table.job(), sharing::Showing::default());
    assert_eq!(
        sharing::carried(&made).map(sharing::open_carried),
        Some(Ok(expected.clone())),
        "what is private stays out"
    );
    drop(table);

    let page = open_file(&file);
    wait_for_drawing(&page);
    let before = page.eval("loomwright_job()");
    assert_eq!(before.as_str().unwrap_or_default(), model::file::write(&expected));
    assert_eq!(
        page.eval("[location.protocol, document.title]"),
        serde_json::json!(["file:", expected.title])
    );
    assert_eq!(page.count("viewer"), 1);
    for gone in [
        "shelf",
        "pull-run",
        "jobs",
        "undo",
        "title-job",
        "own-address",
        "page-file",
    ] {
        assert_eq!(page.count(gone), 0, "{gone}");
    }
    page.press("Home");
    for chord in [
        "ctrl+a", "Delete", "r", "ctrl+x", "ctrl+v", "shift+L", "shift+E", "Escape",
    ] {
        page.press(chord);
    }
    assert_eq!(page.eval("loomwright_job()"), before, "nothing changed");
    // Storage of a file's page is the browser's for all files; nothing of ours is in it.
    assert_eq!(page.eval("localStorage.length"), 0);
    // It carries its texts, as it has nothing beside it.
    page.eval(
        "(() => { const cell = document.querySelector('[data-testid=reader-language]'); cell.selectedIndex = 1; \
         cell.dispatchEvent(new Event('change', { bubbles: true })); return true })()",
    );
    page.wait_until("German", "document.documentElement.lang === 'de'");
    assert!(
        page.text("title-plate").contains("Befunde"),
        "{}",
        page.text("title-plate")
    );
    page.screenshot("page-file");

    // A copy of one's own is a job file, since the page cannot keep one.
    page.download_into(folder.path());
    page.click("own-copy");
    let copy = page.downloaded(folder.path(), ".loom.json");
    let copy = std::fs::read(copy).expect("a file");
    assert_eq!(model::file::read(&copy), Ok(expected));
    // Nothing was asked for: not on this machine and not elsewhere.
    assert_eq!(
        page.eval("performance.getEntriesByType('resource').map(entry => entry.name)"),
        serde_json::json!([])
    );
    page.assert_no_errors();
}

#[test]
fn what_a_drawing_says_is_only_ever_text() {
    const HOSTILE: [&str; 4] = [
        "</script><img src=x onerror=hacked=1>",
        "<!--<script>hacked=1</script>",
        "\u{2028}hacked=1//</text></svg><svg onload=hacked=1>",
        "<iframe srcdoc='<script>parent.hacked=1</script>'>",
    ];
    let mut job = lessons::WorkedJob::of("van").expect("a worked job").job();
    let mut words = HOSTILE.iter().cycle().map(|word| (*word).to_owned());
    let mut next = || words.next().unwrap_or_default();
    job.title = next();
    job.vehicle.name = next();
    job.vehicle.drawn_by = next();
    job.vehicle.date = next();
    job.vehicle.revision = next();
    job.vehicle.remark = next();
    for (sheet, at) in job.sheets.values_mut().zip(0usize..) {
        for (part, of) in sheet.parts.values_mut().zip(0usize..) {
            part.label = next();
            // Digits of a running number do not pack: the job is too large for a link and goes in as a job file.
            part.note = (0..100).fold(next(), |note, n| {
                format!("{note}{}", (at * 7919 + of * 104_729 + n * 1_299_709) % 999_983)
            });
        }
        for run in sheet.runs.values_mut() {
            run.label = next();
            run.note = next();
        }
    }
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("hostile.html");
    let made = sharing::page(&template(), &job).expect("the built page takes a job");
    assert!(
        sharing::carried(&made).is_some_and(|text| text.starts_with('{')),
        "the form that is not packed"
    );
    std::fs::write(&file, made).expect("a file");

    let page = open_file(&file);
    wait_for_drawing(&page);
    let shown = page.eval("loomwright_job()");
    let mut shown = model::file::read(shown.as_str().unwrap_or_default().as_bytes()).expect("a job");
    // The page has put the parts where there is room for them.
    for part in shown
        .sheets
        .values_mut()
        .flat_map(|sheet| sheet.parts.values_mut())
    {
        part.at = None;
    }
    assert!(shown == job, "word for word");
    // Every panel that shows words, and the sheet for the printer.
    for chord in ["o", "Escape", "n", "Escape", "2", "0"] {
        page.press(chord);
    }
    page.press("Home");
    let (x, y) = {
        let at = page.eval("JSON.parse(loomwright_state()).parts['LS4']");
        (
            at[0].as_f64().unwrap_or_default(),
            at[1].as_f64().unwrap_or_default(),
        )
    };
    page.click_at(x, y);
    page.wait_until(
        "the slip",
        "document.querySelector('[data-testid=plain-slip]') !== null",
    );
    page.eval("dispatchEvent(new Event('beforeprint'))");
    page.wait_until(
        "the sheet for the printer",
        "document.querySelector('#print-sheet svg') !== null",
    );
    assert_eq!(
        page.eval("document.querySelectorAll('img, iframe, svg [onload], #print-sheet script').length"),
        0
    );
    assert_eq!(page.eval("typeof hacked"), "undefined");
    let printed = page.eval("document.getElementById('print-sheet').textContent");
    assert!(
        printed.as_str().unwrap_or_default().contains(HOSTILE[0]),
        "it is printed as it was written: {printed}"
    );
    page.assert_no_errors();
}

#[test]
fn a_page_file_without_its_drawing_or_its_means_says_so() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("empty.html");
    std::fs::write(&file, template()).expect("a file");
    let page = open_file(&file);
    let say = |page: &Page| {
        page.wait_at_most(Duration::from_secs(90), "the message", || {
            page.texts("no-drawing").into_iter().next()
        })
    };
    assert!(say(&page).contains("no drawing in this page"));
    page.assert_no_errors();

    let job = lessons::WORKED_JOBS[0].job();
    let whole = sharing::page(&template(), &job).expect("a page");
    let packed = sharing::carried(&whole).expect("a job");
    std::fs::write(&file, whole.replace(packed, &packed[..packed.len() - 9])).expect("a file");
    page.go_to_file(&file);
    assert!(say(&page).contains("cut short or changed"));
    assert!(
        !say(&page).contains("Open the program without it"),
        "there is none beside a file"
    );

    // A browser that cannot unpack says that in plain words: here its means are taken away before the page's script runs.
    std::fs::write(&file, whole).expect("a file");
    page.run_first("delete window.DecompressionStream");
    page.go_to_file(&file);
    page.wait_until(
        "the message",
        "document.body.innerText.includes('this browser is too old for it')",
    );
}
