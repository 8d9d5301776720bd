//! The engine in the page and the engine outside of it give the same analysis, byte for byte.
//!
//! The page's hook `loomwright.analyse(text)` reads a job in the text form and gives one line of JSON for each of its sheets.

use loomwright_tests::browser::Page;

/// What the hook must give, by the native engine.
fn native(text: &str) -> String {
    let job = testkit::job(text);
    let lines: Vec<String> = job
        .sheets
        .values()
        .map(|sheet| {
            serde_json::to_string(&checks::analyse(sheet, &job.settings)).expect("an analysis is plain data")
        })
        .collect();
    lines.join("\n")
}

#[test]
fn worked_jobs_and_sound_systems_are_analysed_alike_in_the_page_and_natively() {
    let mut jobs: Vec<(String, String)> = lessons::WORKED_JOBS
        .iter()
        .map(|job| (job.key.to_owned(), job.text.to_owned()))
        .collect();
    jobs.extend(
        testkit::sound_systems::sound_systems()
            .into_iter()
            .map(|(title, text)| (title.to_string(), text.to_string())),
    );
    assert!(jobs.len() > 30, "only {} jobs", jobs.len());

    let page = Page::open("");
    page.wait_until(
        "the page's hook",
        "typeof window.loomwright?.analyse === 'function'",
    );
    for (name, text) in jobs {
        let expected = native(&text);
        let found = page.eval(&format!("loomwright.analyse({})", serde_json::Value::from(text)));
        let found = found.as_str().unwrap_or_default();
        // The whole of both would fill the screen: the first difference is what helps.
        if let Some(at) = expected.bytes().zip(found.bytes()).position(|(a, b)| a != b) {
            let around = |text: &str| {
                let bytes = text.as_bytes();
                String::from_utf8_lossy(&bytes[at.saturating_sub(80)..(at + 40).min(bytes.len())])
                    .into_owned()
            };
            panic!(
                "{name} differs at byte {at}:\nnative  {}\nin page {}",
                around(&expected),
                around(found)
            );
        }
        assert_eq!(expected.len(), found.len(), "{name}: one is longer");
        assert!(
            expected.len() > 1000,
            "{name}: an analysis holds more than {expected}"
        );
    }
}
