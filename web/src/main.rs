//! The page: puts the app into the document. Everything the browser knows lives in this crate and nowhere else.

mod app;
mod browser;
mod canvas;
mod components;
mod copies;
mod desk;
mod files;
mod hooks;
mod keeper;
mod state;
mod storage;
mod tabs;

fn main() {
    browser::report_panics();
    yew::Renderer::<app::App>::new().render();
}
