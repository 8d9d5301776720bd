//! Sharing: what others would see, the link, its code to scan, the page file.

use crate::browser::{self, ADDRESS};
use crate::clipboard;
use crate::files;
use crate::state::{Act, Panel, Store};
use sharing::{Address, Code, Showing, fragment, shown};
use wasm_bindgen_futures::spawn_local;
use web_sys::HtmlInputElement;
use yew::prelude::*;

#[function_component]
pub(crate) fn Share() -> Html {
    let showing = use_state(Showing::default);
    let address = use_state(|| browser::remembered(ADDRESS).unwrap_or_default());
    let Some(store) = use_context::<Store>() else {
        return html! {};
    };
    let close = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| {
            store.dispatch(Act::Toggle(Panel::Share));
            browser::focus_board();
        })
    };
    let (job, left) = store.desk.see(|editor| shown(editor.job(), *showing));
    let tick = |label: String, on: bool, testid: &'static str, with: fn(Showing, bool) -> Showing| {
        let showing = showing.clone();
        let onchange = Callback::from(move |event: Event| {
            if let Some(input) = event.target_dyn_into::<HtmlInputElement>() {
                showing.set(with(*showing, input.checked()));
            }
        });
        html! { <label class="share__tick"><input type="checkbox" checked={on} {onchange} data-testid={testid} /><span>{ label }</span></label> }
    };
    let set_address = {
        let address = address.clone();
        Callback::from(move |text: String| {
            browser::remember(ADDRESS, text.trim());
            address.set(text);
        })
    };
    let typed = {
        let set = set_address.clone();
        Callback::from(move |event: Event| {
            if let Some(input) = event.target_dyn_into::<HtmlInputElement>() {
                set.emit(input.value());
            }
        })
    };
    let own = browser::own_address().filter(|_| address.trim().is_empty()).map(|own| {
        let (set, text) = (set_address.clone(), own.clone());
        let onclick = Callback::from(move |_: MouseEvent| set.emit(text.clone()));
        html! { <button type="button" class="mend" {onclick} data-testid="own-address">{ format!("Use {own}") }</button> }
    });
    let page = {
        let (store, showing) = (store.clone(), *showing);
        Callback::from(move |_: MouseEvent| {
            let store = store.clone();
            spawn_local(async move {
                let said = page_file(&store, showing).await;
                store.dispatch(Act::Say(said));
            });
        })
    };
    let lesson = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| {
            store.dispatch(Act::ShutPanel);
            store.desk.perform(editor::Action::MakeLesson);
        })
    };
    let made = match (address.trim(), fragment(&job)) {
        (_, Err(too_long)) => {
            html! { <p class="field__trouble" data-testid="too-long">{ too_long.to_string() }</p> }
        }
        ("", Ok(_)) => html! {
            <p class="drawer__none">{ "Set the address that your links start with: where this program is served from for your customers. Until then there is the page file, below." }</p>
        },
        (text, Ok(packed)) => match Address::new(text) {
            Err(error) => html! { <p class="field__trouble" role="alert">{ error.to_string() }</p> },
            Ok(address) => link(&store, &address.link(&packed)),
        },
    };
    html! {
        <section class="drawer share" data-testid="share-drawer" aria-label="Share">
            <header class="drawer__head"><b>{ "Share" }</b><button type="button" class="slip__close" onclick={close}>{ "Esc" }</button></header>
            <h3>{ "What others see" }</h3>
            <ul class="share__seen" data-testid="share-seen">{ for seen(&job).into_iter().map(|line| html! { <li>{ line }</li> }) }</ul>
            <h3>{ "What stays out" }</h3>
            { tick(counted(left.notes, showing.notes, "notes and remarks"), showing.notes, "show-notes", |showing, notes| Showing { notes, ..showing }) }
            { tick(counted(left.names, showing.names, "names in the title block"), showing.names, "show-names", |showing, names| Showing { names, ..showing }) }
            if left.unknown > 0 { <p class="drawer__none">{ format!("{} fields of a newer version's file", left.unknown) }</p> }
            <p class="drawer__none">{ "Title and labels are always shown: look whether they name anybody." }</p>
            <h3>{ "Link" }</h3>
            <label class="field"><span class="field__name">{ "starts with" }</span>
                <input class="field__input" value={(*address).clone()} onchange={typed} placeholder="https://" maxlength="200" data-testid="share-address" inputmode="url" />
            </label>
            { own }
            { made }
            <h3>{ "Page file" }</h3>
            <p class="drawer__none">{ "One file with this drawing and the program in it. It opens with a double click, without a network, and can be of any size." }</p>
            <button type="button" class="mend" onclick={page} data-testid="page-file">{ "Download the page file" }</button>
            <h3>{ store.words().text("share-lesson") }</h3>
            <p class="drawer__none">{ store.words().text("share-lesson-how") }</p>
            <button type="button" class="mend" onclick={lesson} data-testid="make-lesson">{ editor::Action::MakeLesson.name() }</button>
        </section>
    }
}

/// Hands the job out as a page file; gives back words for the user.
async fn page_file(store: &Store, showing: Showing) -> String {
    let Some(template) = browser::file_beside("page.html").await else {
        return "The page file was not made: page.html, which belongs beside this page, could not be fetched.".to_owned();
    };
    let job = store.desk.see(|editor| shown(editor.job(), showing)).0;
    let name = files::file_name(&job.title, ".html");
    match sharing::page(&template, &job) {
        Ok(page) => match files::export_text(&name, &page, "text/html") {
            Ok(()) => format!("Downloaded as {name}"),
            Err(trouble) => trouble.to_string(),
        },
        Err(error) => format!("The page file was not made. {error}"),
    }
}

/// What a tick is about: `shows 3 notes and remarks`.
fn counted(left_out: usize, shows: bool, what: &str) -> String {
    match (shows, left_out) {
        (true, _) => format!("show {what}"),
        (false, 0) => format!("show {what} (there are none)"),
        (false, count) => format!("show {what} ({count} left out)"),
    }
}

/// What the shared job holds, line by line.
fn seen(job: &model::Job) -> Vec<String> {
    let mut lines = Vec::new();
    if !job.title.is_empty() {
        lines.push(format!("Title: {}", job.title));
    }
    let vehicle = &job.vehicle;
    for (name, text) in [
        ("Vehicle", &vehicle.name),
        ("Drawn by", &vehicle.drawn_by),
        ("Date", &vehicle.date),
        ("Revision", &vehicle.revision),
        ("Remark", &vehicle.remark),
    ] {
        if !text.is_empty() {
            lines.push(format!("{name}: {text}"));
        }
    }
    for (kind, sheet) in &job.sheets {
        if sheet.parts.is_empty() && sheet.runs.is_empty() {
            continue;
        }
        let labels = sheet.parts.values().filter(|part| !part.label.is_empty()).count()
            + sheet.runs.values().filter(|run| !run.label.is_empty()).count();
        let notes = sheet.parts.values().filter(|part| !part.note.is_empty()).count()
            + sheet.runs.values().filter(|run| !run.note.is_empty()).count();
        let mut line = format!(
            "Sheet {}: {} parts, {} runs, {labels} labels",
            kind.title(),
            sheet.parts.len(),
            sheet.runs.len()
        );
        if notes > 0 {
            line.push_str(&format!(", {notes} notes"));
        }
        if !sheet.readings.is_empty() {
            line.push_str(&format!(", {} readings", sheet.readings.len()));
        }
        lines.push(line);
    }
    lines.push("The findings, as the checks make them from it".to_owned());
    lines
}

/// The link, to be copied, and its code.
pub(crate) fn link(store: &Store, link: &str) -> Html {
    let copy = {
        let (store, link) = (store.clone(), link.to_owned());
        Callback::from(move |_: MouseEvent| {
            let (tell, link) = (store.dispatcher(), link.clone());
            spawn_local(async move {
                let said = if clipboard::put(link).await {
                    "The link is on the clipboard."
                } else {
                    "This browser does not let the page write to the clipboard: mark the link and copy it."
                };
                tell.dispatch(Act::Say(said.to_owned()));
            });
        })
    };
    let code = Code::of(link);
    html! {
        <>
            <textarea class="share__link" readonly=true rows="4" value={link.to_owned()} data-testid="share-link" aria-label="Link" />
            <p class="share__size">{ format!("{} characters", link.len()) }</p>
            <button type="button" class="mend" onclick={copy} data-testid="copy-link">{ "Copy the link" }</button>
            if let Some(code) = code {
                <svg class="share__code" data-testid="share-code" role="img" aria-label="Code of the link, to scan" viewBox={format!("0 0 {0} {0}", code.box_side())} shape-rendering="crispEdges">
                    <rect width="100%" height="100%" fill="#fff" /><path d={code.path()} fill="#000" />
                </svg>
            } else {
                <p class="drawer__none" data-testid="no-code">{ "Too long for a code that a telephone reads from paper." }</p>
            }
        </>
    }
}
