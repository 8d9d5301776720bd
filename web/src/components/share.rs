//! Sharing: what others would see, the link, its code to scan, the page file.

use crate::browser::{self, ADDRESS};
use crate::clipboard;
use crate::files;
use crate::state::{Act, Panel, Store};
use sharing::{Address, Code, Showing, fragment, shown};
use wasm_bindgen_futures::spawn_local;
use web_sys::HtmlInputElement;
use words::{Saying, Words, say};
use yew::prelude::*;

#[function_component]
pub(crate) fn Share() -> Html {
    let showing = use_state(Showing::default);
    let address = use_state(|| {
        // A page that others reach is where its links lead; nobody has to be asked.
        browser::remembered(ADDRESS)
            .or_else(|| browser::own_address().filter(|own| !is_only_here(own)))
            .unwrap_or_default()
    });
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
    let words = store.words();
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
        let said = if is_only_here(&own) {
            say!("share-use-here", address = &own)
        } else {
            say!("share-use", address = &own)
        };
        html! { <button type="button" class="mend" {onclick} data-testid="own-address">{ words.say(&said) }</button> }
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
            html! { <p class="field__trouble" data-testid="too-long">{ words.say(&too_long.said()) }</p> }
        }
        ("", Ok(_)) => html! {
            <p class="drawer__none">{ words.text("share-no-address") }</p>
        },
        (text, Ok(packed)) => match Address::new(text) {
            Err(error) => html! { <p class="field__trouble" role="alert">{ words.say(&error.said()) }</p> },
            Ok(address) => link(&store, &address.link(&packed)),
        },
    };
    html! {
        <section class="drawer share" data-testid="share-drawer" aria-label={words.text("share")}>
            <header class="drawer__head"><b>{ words.text("share") }</b><button type="button" class="slip__close" onclick={close}>{ words.text("key-esc") }</button></header>
            <h3>{ words.text("share-seen") }</h3>
            <ul class="share__seen" data-testid="share-seen">{ for seen(&job, &words).into_iter().map(|line| html! { <li>{ line }</li> }) }</ul>
            <h3>{ words.text("share-out") }</h3>
            { tick(counted(left.notes, showing.notes, "share-notes", &words), showing.notes, "show-notes", |showing, notes| Showing { notes, ..showing }) }
            { tick(counted(left.names, showing.names, "share-names", &words), showing.names, "show-names", |showing, names| Showing { names, ..showing }) }
            { tick(counted(left.prices, showing.prices, "share-prices", &words), showing.prices, "show-prices", |showing, prices| Showing { prices, ..showing }) }
            { tick(counted(left.pictures, showing.pictures, "share-pictures", &words), showing.pictures, "show-pictures", |showing, pictures| Showing { pictures, ..showing }) }
            if left.unknown > 0 { <p class="drawer__none">{ words.say(&say!("share-unknown", count = left.unknown)) }</p> }
            <p class="drawer__none">{ words.text("share-always") }</p>
            <h3>{ words.text("share-link") }</h3>
            <p class="drawer__none">{ words.text("share-link-what") }</p>
            <label class="field"><span class="field__name">{ words.text("share-starts") }</span>
                <input class="field__input" value={(*address).clone()} onchange={typed} placeholder="https://" maxlength="200" data-testid="share-address" inputmode="url" />
            </label>
            { own }
            { made }
            <h3>{ words.text("share-page") }</h3>
            <p class="drawer__none">{ words.text("share-page-what") }</p>
            <button type="button" class="mend" onclick={page} data-testid="page-file">{ words.text("share-page-download") }</button>
            <h3>{ words.text("share-lesson") }</h3>
            <p class="drawer__none">{ words.text("share-lesson-how") }</p>
            <button type="button" class="mend" onclick={lesson} data-testid="make-lesson">{ words.text("share-lesson-make") }</button>
        </section>
    }
}

/// Whether an address is one that only this machine knows.
fn is_only_here(address: &str) -> bool {
    let host = address.split_once("://").map_or(address, |(_, rest)| rest);
    ["localhost", "127.", "[::1]"]
        .iter()
        .any(|own| host.starts_with(own))
}

/// Hands the job out as a page file; gives back words for the user.
async fn page_file(store: &Store, showing: Showing) -> String {
    let words = store.words();
    let Some(template) = browser::file_beside("page.html").await else {
        return words.text("share-page-missing");
    };
    let job = store.desk.see(|editor| shown(editor.job(), showing)).0;
    let name = files::file_name(&job.title, ".html");
    match sharing::page(&template, &job) {
        Ok(page) => match files::export_text(&name, &page, "text/html") {
            Ok(()) => words.say(&say!("downloaded", name = name)),
            Err(trouble) => words.say(&trouble.said()),
        },
        Err(error) => words.say(&say!("share-page-failed", why = error.said())),
    }
}

/// What a tick is about: `shows 3 notes and remarks`.
fn counted(left_out: usize, shows: bool, what: &'static str, words: &Words) -> String {
    let what = Saying::new(what);
    words.say(&match (shows, left_out) {
        (true, _) => say!("share-show", what = what),
        (false, 0) => say!("share-show-none", what = what),
        (false, count) => say!("share-show-left", what = what, count = count),
    })
}

/// What the shared job holds, line by line.
fn seen(job: &model::Job, words: &Words) -> Vec<String> {
    let mut lines = Vec::new();
    if !job.title.is_empty() {
        lines.push(format!("{}: {}", words.text("share-title"), job.title));
    }
    let vehicle = &job.vehicle;
    for (name, text) in [
        ("title-vehicle", &vehicle.name),
        ("title-drawn-by", &vehicle.drawn_by),
        ("title-date", &vehicle.date),
        ("share-revision", &vehicle.revision),
        ("title-remark", &vehicle.remark),
    ] {
        if !text.is_empty() {
            lines.push(format!("{}: {text}", words.text(name)));
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
        let mut line = words.say(&say!(
            "share-sheet",
            sheet = kind.said(),
            parts = say!("things-parts", count = sheet.parts.len()),
            runs = say!("things-runs", count = sheet.runs.len()),
            labels = labels
        ));
        if notes > 0 {
            line.push_str(", ");
            line.push_str(&words.say(&say!("share-sheet-notes", count = notes)));
        }
        if !sheet.readings.is_empty() {
            line.push_str(", ");
            line.push_str(&words.say(&say!("share-sheet-readings", count = sheet.readings.len())));
        }
        lines.push(line);
    }
    for (count, saying) in [
        (
            job.thread.complaints.len(),
            say!("share-complaints", count = job.thread.complaints.len()),
        ),
        (
            job.thread.intake.len(),
            say!("share-intake", count = job.thread.intake.len()),
        ),
        (
            job.thread.offers.len(),
            say!("share-offers", count = job.thread.offers.len()),
        ),
        (
            job.pictures.len(),
            say!("share-holds-pictures", count = job.pictures.len()),
        ),
    ] {
        if count > 0 {
            lines.push(words.say(&saying));
        }
    }
    lines.push(words.text("share-findings"));
    lines
}

/// The link, to be copied, and its code.
pub(crate) fn link(store: &Store, link: &str) -> Html {
    let copy = {
        let (store, link) = (store.clone(), link.to_owned());
        Callback::from(move |_: MouseEvent| {
            let (tell, link, words) = (store.dispatcher(), link.clone(), store.words());
            spawn_local(async move {
                let said = if clipboard::put(link).await {
                    "share-copied"
                } else {
                    "share-not-copied"
                };
                tell.dispatch(Act::Say(words.text(said)));
            });
        })
    };
    let words = store.words();
    let code = Code::of(link);
    html! {
        <>
            <textarea class="share__link" readonly=true rows="4" value={link.to_owned()} data-testid="share-link" aria-label={words.text("share-link")} />
            <p class="share__size">{ words.say(&say!("share-characters", count = link.len())) }</p>
            <button type="button" class="mend" onclick={copy} data-testid="copy-link">{ words.text("share-copy") }</button>
            if let Some(code) = code {
                <svg class="share__code" data-testid="share-code" role="img" aria-label={words.text("share-code")} viewBox={format!("0 0 {0} {0}", code.box_side())} shape-rendering="crispEdges">
                    <rect width="100%" height="100%" fill="#fff" /><path d={code.path()} fill="#000" />
                </svg>
            } else {
                <p class="drawer__none" data-testid="no-code">{ words.text("share-no-code") }</p>
            }
        </>
    }
}
