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
mod viewer;

use std::rc::Rc;

fn main() {
    browser::report_panics();
    browser::heed_links();
    let fragment = browser::fragment();
    if !fragment.starts_with(sharing::KEY) {
        yew::Renderer::<app::App>::new().render();
        return;
    }
    match sharing::open(&fragment) {
        Ok(job) => {
            let job = Rc::new(job);
            yew::Renderer::<viewer::Viewer>::with_props(viewer::ViewerProps { job }).render();
        }
        Err(error) => {
            let why = error.to_string().into();
            yew::Renderer::<viewer::NoDrawing>::with_props(viewer::NoDrawingProps { why }).render();
        }
    }
}
