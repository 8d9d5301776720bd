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
mod lessons;
mod offline;
mod papers_print;
mod pictures;
mod reader;
mod state;
#[allow(
    dead_code,
    unused_imports,
    reason = "tests/browser_side.rs takes this module by its path and exercises more of it than the page calls"
)]
mod storage;
mod tabs;
mod viewer;
mod worked;

use std::rc::Rc;
use words::{Words, say};
use yew::prelude::*;

fn main() {
    browser::report_panics();
    // Words that are not part of the program are waited for: a page that changes its language under one's eyes would be
    // read twice.
    match reader::at_once() {
        Some(words) => show(words, None),
        None => wasm_bindgen_futures::spawn_local(async {
            let (words, trouble) = reader::arrive().await;
            show(words, trouble);
        }),
    }
}

/// What the page shows.
#[derive(Clone, PartialEq)]
enum Shown {
    /// A job to work on, or a lesson.
    Table,
    /// A job to look at.
    Look(Rc<model::Job>),
    /// Why there is none: what does not open, and why.
    Nothing { trouble: AttrValue, why: AttrValue },
}

fn show(words: Words, trouble: Option<AttrValue>) {
    let shown = shown(&words);
    yew::Renderer::<Page>::with_props(PageProps {
        shown,
        words,
        trouble,
    })
    .render();
}

fn shown(words: &Words) -> Shown {
    if let Some(carried) = browser::carried() {
        // A page file: the drawing in it is all that it shows.
        let opened = sharing::open_carried(&carried).map_err(|error| words.say(&error.said()));
        return look_at(opened, words.say(&say!("viewer-no-page")));
    }
    browser::heed_links();
    let fragment = browser::fragment();
    if fragment.starts_with(sharing::KEY) {
        let opened = sharing::open(&fragment).map_err(|error| words.say(&error.said()));
        return look_at(opened, words.say(&say!("viewer-no-link")));
    }
    Shown::Table
}

/// Shows a job to be looked at, or why there is none.
fn look_at(opened: Result<model::Job, String>, trouble: String) -> Shown {
    match opened {
        Ok(job) => {
            browser::name_page(&job.title);
            Shown::Look(Rc::new(job))
        }
        Err(why) => Shown::Nothing {
            trouble: trouble.into(),
            why: why.into(),
        },
    }
}

#[derive(Properties, PartialEq)]
struct PageProps {
    shown: Shown,
    /// The words to begin with.
    words: Words,
    /// Why they are not those that were chosen.
    trouble: Option<AttrValue>,
}

/// The whole page, read by somebody.
#[function_component]
fn Page(props: &PageProps) -> Html {
    let inside = match &props.shown {
        Shown::Table => html! { <lessons::Root /> },
        Shown::Look(job) => html! { <viewer::Viewer job={job.clone()} /> },
        Shown::Nothing { trouble, why } => {
            html! { <viewer::NoDrawing trouble={trouble.clone()} why={why.clone()} /> }
        }
    };
    html! { <reader::ReaderHere words={props.words.clone()} trouble={props.trouble.clone()}>{ inside }</reader::ReaderHere> }
}
