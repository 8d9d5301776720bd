//! The page: puts the app into the document. Everything the browser knows lives in this crate and nowhere else.

mod app;
mod browser;
mod canvas;
mod clipboard;
mod components;
mod copies;
mod desk;
#[allow(
    dead_code,
    unused_imports,
    reason = "tests/browser_side.rs takes this module by its path and exercises more of it than the page calls"
)]
mod files;
mod hooks;
mod keeper;
mod state;
#[allow(
    dead_code,
    unused_imports,
    reason = "tests/browser_side.rs takes this module by its path and exercises more of it than the page calls"
)]
mod storage;
mod tabs;

fn main() {
    browser::report_panics();
    yew::Renderer::<app::App>::new().render();
}
