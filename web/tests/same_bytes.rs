//! The engine in the browser and the engine outside of it give the same analysis, byte for byte. What the native engine
//! said is built into this test; `cargo xtask test --stage equality` writes it anew and then runs this.
#![cfg(target_arch = "wasm32")]

use serde_json::Value;
use wasm_bindgen_test::wasm_bindgen_test;

wasm_bindgen_test::wasm_bindgen_test_configure!(run_in_browser);

/// Made by `tests/examples/native_analyses.rs`.
const NATIVE: &str = include_str!(env!(
    "LOOMWRIGHT_NATIVE_ANALYSES",
    "run this test by `cargo xtask test --stage equality`"
));

#[wasm_bindgen_test]
fn worked_jobs_and_sound_systems_are_analysed_alike_in_the_browser_and_natively() {
    let mut count = 0;
    for line in NATIVE.lines() {
        let line: Value = serde_json::from_str(line).expect("a line of JSON");
        let name = &line["name"];
        let job = model::text::parse(line["text"].as_str().expect("a text")).expect("a job");
        let native = line["analyses"].as_array().expect("a list");
        assert_eq!(native.len(), job.sheets.len(), "{name}");
        for (sheet, native) in job.sheets.values().zip(native) {
            let native = native.as_str().expect("an analysis");
            let here = serde_json::to_string(&checks::analyse(sheet, &job.settings))
                .expect("an analysis is plain data");
            // The whole of both would fill the screen: the first difference is what helps.
            if let Some(at) = native.bytes().zip(here.bytes()).position(|(a, b)| a != b) {
                let around = |text: &str| {
                    let bytes = text.as_bytes();
                    String::from_utf8_lossy(&bytes[at.saturating_sub(80)..(at + 40).min(bytes.len())])
                        .into_owned()
                };
                panic!(
                    "{name} differs at byte {at}:\nnative     {}\nin browser {}",
                    around(native),
                    around(&here)
                );
            }
            assert_eq!(native.len(), here.len(), "{name}: one is longer");
            assert!(
                native.len() > 1000,
                "{name}: an analysis holds more than {native}"
            );
            count += 1;
        }
    }
    assert!(count > 30, "only {count} sheets");
}
