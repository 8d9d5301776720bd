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
mod offline;
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
    if let Some(carried) = browser::carried() {
        // A page file: the drawing in it is all that it shows.
        look_at(
            sharing::open_carried(&carried).map_err(|error| error.to_string()),
            "This page does not open",
        );
        return;
    }
    browser::heed_links();
    let fragment = browser::fragment();
    if fragment.starts_with(sharing::KEY) {
        look_at(
            sharing::open(&fragment).map_err(|error| error.to_string()),
            "This link does not open",
        );
        return;
    }
    yew::Renderer::<app::App>::new().render();
}

/// Shows a job to be looked at, or why there is none.
fn look_at(opened: Result<model::Job, String>, trouble: &'static str) {
    match opened {
        Ok(job) => {
            browser::name_page(&job.title);
            let job = Rc::new(job);
            yew::Renderer::<viewer::Viewer>::with_props(viewer::ViewerProps { job }).render();
        }
        Err(why) => {
            let props = viewer::NoDrawingProps {
                trouble,
                why: why.into(),
            };
            yew::Renderer::<viewer::NoDrawing>::with_props(props).render();
        }
    }
}
