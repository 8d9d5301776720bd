//! The page: puts the app into the document. Everything the browser knows lives in this crate and nowhere else.

mod app;
mod browser;
mod canvas;
mod components;
mod desk;
mod state;
mod storage;

fn main() {
    browser::report_panics();
    yew::Renderer::<app::App>::new().render();
}
