//! Without a network: after the first visit the program opens from the browser, a link too; a newer version is announced, and
//! used when the page is opened next or when it is asked for.

use crate::table::Table;
use loomwright_tests::browser::{Page, Site};
use std::ops::Deref;
use std::path::Path;
use std::time::Duration;

/// Waits until the browser keeps the program: all of it or none, so one look at the worker in charge is enough.
fn wait_program_kept(page: &Page) {
    page.wait_at_most(Duration::from_secs(90), "the program to be kept", || {
        (page.eval("navigator.serviceWorker.controller?.state") == "activated").then_some(())
    });
}

#[test]
fn after_the_first_visit_the_program_opens_without_a_server() {
    let mut table = Table::open_kept();
    table.take_worked("van");
    wait_program_kept(&table);
    assert_eq!(table.count("newer"), 0, "the first version is no newer one");
    table.open_part("P2");
    table.fill("slip-label", "Before the cellar");
    table.wait_kept();
    let _ = table.console();

    table.page_mut().lose_site();
    // Nobody is there any more: what the browser does not keep is refused or not answered.
    assert_eq!(
        table.eval(
            "fetch('not-kept.txt', { signal: AbortSignal.timeout(2000) }).then(() => 'came', () => 'gone')"
        ),
        "gone"
    );
    table.reload();
    table.wait_ready();
    assert!(table.job_text().contains("Before the cellar"));
    table.findings_as_native();
    // Work goes on, with the page file that is made of what is kept.
    let folder = tempfile::tempdir().expect("a folder");
    table.download_into(folder.path());
    table.press("shift+L");
    table.click("page-file");
    table.downloaded(folder.path(), ".html");

    let job = lessons::WorkedJob::of("camper").expect("a worked job").job();
    table.open_tab(&format!("#{}", sharing::fragment(&job).expect("it fits")));
    table.wait_at_most(Duration::from_secs(90), "the drawing of the link", || {
        (table.count("viewer") == 1 && table.eval("typeof loomwright_state") == "function").then_some(())
    });
    assert_eq!(table.eval("document.title"), job.title.as_str());
}

/// Puts a newer version into the folder, as a build of changed sources would: another index, named by its checksum in another
/// service worker.
fn publish(page: &Page, folder: &Path, version: &str) {
    let read = |name: &str| std::fs::read_to_string(folder.join(name)).expect("a file of the built page");
    let index = read("index.html");
    let body = index.find("<body").expect("a body") + "<body".len();
    let newer = format!("{} data-version=\"{version}\"{}", &index[..body], &index[body..]);
    // By the browser's own means (Web Cryptography API), not by those that the build uses.
    let hash = |text: &str| {
        let bytes = page.eval(&format!(
            "crypto.subtle.digest('SHA-256', new TextEncoder().encode({})).then(sum => btoa(String.fromCharCode(...new Uint8Array(sum))))",
            serde_json::Value::from(text)
        ));
        format!("sha256-{}", bytes.as_str().unwrap_or_default())
    };
    let worker = read("sw.js");
    let named = format!("\"./\": \"{}\"", hash(&index));
    assert!(
        worker.contains(&named),
        "the worker names the index by its checksum {named}: {worker}"
    );
    let begin = worker.find("const VERSION").expect("a version");
    let end = begin + worker[begin..].find(';').expect("its end");
    let worker = format!(
        "{}const VERSION = {version:?}{}",
        &worker[..begin],
        &worker[end..]
    );
    std::fs::write(
        folder.join("sw.js"),
        worker.replace(&named, &format!("\"./\": \"{}\"", hash(&newer))),
    )
    .expect("written");
    std::fs::write(folder.join("index.html"), newer).expect("written");
}

/// Copies a folder with what is below it: the texts of other languages lie in folders of their own.
fn copy(from: &Path, to: &Path) {
    for file in std::fs::read_dir(from).expect("the built page") {
        let file = file.expect("an entry").path();
        let at = to.join(file.file_name().expect("a name"));
        if file.is_dir() {
            std::fs::create_dir_all(&at).expect("a folder");
            copy(&file, &at);
        } else {
            std::fs::copy(&file, at).expect("a copy");
        }
    }
}

#[test]
fn a_newer_version_is_announced_and_not_forced() {
    let folder = tempfile::tempdir().expect("a folder");
    copy(&xtask::page_folder(), folder.path());
    let mut page = Page::open_kept_on(Site::of_folder(folder.path(), "boards/one"), "");
    let version = |page: &Page| page.eval("document.body.dataset.version ?? 'first'");
    let ready = |page: &Page| {
        page.wait_at_most(Duration::from_secs(90), "the table", || {
            (page.eval("typeof loomwright_state") == "function").then_some(())
        });
    };
    let announced = |page: &Page| {
        page.wait_at_most(Duration::from_secs(90), "the announcement", || {
            (page.count("newer") == 1).then_some(())
        });
    };
    ready(&page);
    wait_program_kept(&page);

    publish(&page, folder.path(), "second");
    page.reload();
    ready(&page);
    announced(&page);
    assert!(
        page.text("newer")
            .contains("used the next time the page is opened")
    );
    assert_eq!(version(&page), "first", "nothing was forced");
    page.screenshot("newer-version");
    // Work goes on, and even loading the page again does not bring it: it is the same opening.
    page.press("shift+E");
    page.wait_until(
        "an empty sheet",
        "Object.keys(JSON.parse(loomwright_state()).parts).length === 0",
    );
    page.reload();
    ready(&page);
    assert_eq!(version(&page), "first");
    // Asked for, it comes, and the job is still there.
    announced(&page);
    page.click("load-newer");
    page.wait_at_most(Duration::from_secs(90), "the newer version", || {
        (version(&page) == "second").then_some(())
    });
    ready(&page);
    page.wait_until(
        "the emptied sheet",
        "Object.keys(JSON.parse(loomwright_state()).parts).length === 0",
    );
    assert_eq!(page.count("newer"), 0);
    assert_eq!(
        page.eval("caches.keys().then(all => all.length)"),
        1,
        "the old version is given up"
    );

    // A third comes by opening the page anew, once no other tab has it open.
    publish(&page, folder.path(), "third");
    page.reload();
    ready(&page);
    announced(&page);
    page.open_tab("../none");
    page.go_to_tab(0);
    page.close_tab();
    page.go_to_tab(0);
    // It takes over when the browser has noticed that the last page is gone, a moment later.
    for _ in 0..10 {
        page.go("");
        ready(&page);
        if version(&page) == "third" {
            break;
        }
        page.go("../none");
    }
    assert_eq!(version(&page), "third");
}

#[test]
fn the_page_can_be_installed() {
    let table = Table::open_kept();
    wait_program_kept(&table);
    // W3C Web Application Manifest: what browsers ask for before they offer to install.
    let manifest =
        table.eval("fetch(document.querySelector('link[rel=manifest]').href).then(answer => answer.json())");
    for (name, value) in [
        ("name", "Loomwright"),
        ("start_url", "./"),
        ("scope", "./"),
        ("display", "standalone"),
    ] {
        assert_eq!(manifest[name], value, "{name}");
    }
    for icon in manifest["icons"].as_array().expect("icons") {
        let size = table.eval(&format!(
            "new Promise((resolve, reject) => {{ const image = new Image(); image.onload = () => resolve([image.naturalWidth, image.naturalHeight]); \
             image.onerror = reject; image.src = {} }})",
            icon["src"]
        ));
        let sizes = icon["sizes"].as_str().unwrap_or_default();
        assert!(
            sizes == "any" || sizes == format!("{}x{}", size[0], size[1]),
            "{icon}: {size}"
        );
    }
    let errors = table.deref().install_errors();
    assert_eq!(errors, serde_json::json!([]), "the browser would install it");
    table.assert_no_errors();
}
