//! Storage, tabs and files in a real browser, without the components around them.
//!
//! ```text
//! export CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUNNER=wasm-bindgen-test-runner CHROMEDRIVER=/usr/bin/chromedriver
//! cargo test --package loomwright-web --target wasm32-unknown-unknown --test browser_side
//! ```
//!
//! The runner comes with wasm-bindgen-cli and must be of the version in Cargo.lock. How the browser is started stands
//! in web/webdriver.json. Natively there is nothing here to test.
#![cfg(target_arch = "wasm32")]

// The page's own modules, taken by their path: the page is a program, which no test can link to.
#[path = "../src/files/mod.rs"]
#[allow(
    dead_code,
    unused_imports,
    reason = "pickers wait for a person; the page calls them"
)]
mod files;
#[path = "../src/storage/mod.rs"]
#[allow(dead_code, unused_imports, reason = "the page uses what is not used here")]
mod storage;
#[path = "../src/tabs.rs"]
mod tabs;

mod browser_side {
    mod files;
    mod help;
    mod storage;
    mod tabs;
}

wasm_bindgen_test::wasm_bindgen_test_configure!(run_in_browser);
