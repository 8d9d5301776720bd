//! The page without a network: the browser is asked to keep the program, and a newer one is announced when it is ready. It is
//! used when the page is opened next; at once only when somebody presses the button for it.

use crate::browser;
use crate::state::{Act, State, Store};
use crate::storage::{Keeping, js};
use gloo_events::EventListener;
use js_sys::Promise;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::EventTarget;
use yew::functional::UseReducerDispatcher;
use yew::prelude::*;

/// What the service worker is told when its version is to be used at once.
const USE_IT: &str = "use the new version";

/// How long after the last asking a page that is looked at again asks for a newer program, in milliseconds: an hour.
const ASK_AGAIN_MS: f64 = 3_600_000.0;

/// The browser's service workers. Nothing where it has none, as on an address without https; nothing either in a page file
/// and in a page that the build did not finish.
fn workers() -> Option<JsValue> {
    browser::own_address()?;
    let finished = browser::document()?
        .query_selector("link[rel=manifest]")
        .ok()
        .flatten();
    finished?;
    let workers = js::get(&browser::window()?.navigator(), "serviceWorker");
    workers.is_object().then_some(workers)
}

/// Asks the browser to keep the program, and announces a newer one. That it does not keep it is no trouble for who has a
/// network, so nothing is said of it.
pub(crate) fn keep_program(tell: UseReducerDispatcher<State>) {
    let Some(workers) = workers() else { return };
    spawn_local(async move {
        let Ok(asked) = js::call(&workers, "register", &[&"sw.js".into()]) else {
            return;
        };
        let Ok(kept) = JsFuture::from(Promise::resolve(&asked)).await else {
            return;
        };
        // Without an older one in use, what is ready is what is in use.
        let controlled = move |workers: &JsValue| js::get(workers, "controller").is_object();
        if js::get(&kept, "waiting").is_object() && controlled(&workers) {
            tell.dispatch(Act::Newer);
        }
        let found = kept.clone();
        ask_again(&kept);
        listen(&kept, "updatefound", move || {
            let fresh = js::get(&found, "installing");
            let (state_of, workers, tell) = (fresh.clone(), workers.clone(), tell.clone());
            listen(&fresh, "statechange", move || {
                if js::get(&state_of, "state") == "installed" && controlled(&workers) {
                    tell.dispatch(Act::Newer);
                }
            });
        });
    });
}

/// Asks for a newer program also when a page that lay open for long is looked at again: browsers ask by themselves only when
/// one is opened.
fn ask_again(kept: &JsValue) {
    let Some(document) = browser::document() else {
        return;
    };
    let (kept, seen) = (kept.clone(), document.clone());
    let mut last = js_sys::Date::now();
    listen(&document, "visibilitychange", move || {
        let now = js_sys::Date::now();
        if !seen.hidden() && now - last > ASK_AGAIN_MS {
            last = now;
            // Without a network there is nothing newer to be had; the next look asks again.
            if let Ok(asked) = js::call(&kept, "update", &[]) {
                spawn_local(async move {
                    let _ = JsFuture::from(Promise::resolve(&asked)).await;
                });
            }
        }
    });
}

/// Uses the newer program at once: the page is loaded anew as soon as it has taken over.
fn use_newer() {
    let Some(workers) = workers() else { return };
    listen(&workers, "controllerchange", || {
        if let Some(window) = browser::window() {
            let _ = window.location().reload();
        }
    });
    spawn_local(async move {
        let Ok(asked) = js::call(&workers, "getRegistration", &[]) else {
            return;
        };
        let kept = JsFuture::from(Promise::resolve(&asked)).await.unwrap_or_default();
        // Should another tab have done it meanwhile, it has taken over already.
        if js::call(&js::get(&kept, "waiting"), "postMessage", &[&USE_IT.into()]).is_err()
            && let Some(window) = browser::window()
        {
            let _ = window.location().reload();
        }
    });
}

/// Listens for as long as the page lives.
fn listen(target: &JsValue, name: &'static str, mut heard: impl FnMut() + 'static) {
    if let Some(target) = target.dyn_ref::<EventTarget>() {
        EventListener::new(target, name, move |_| heard()).forget();
    }
}

/// That a newer version is ready, and the button that loads it: where every change is kept, so that none is lost.
pub(crate) fn newer(store: &Store) -> Html {
    if !store.newer {
        return html! {};
    }
    let words = store.words();
    let kept = store.keeping == Keeping::Kept;
    let load = Callback::from(|_: MouseEvent| use_newer());
    html! {
        <p class="newer" role="status" data-testid="newer">
            { words.text("newer") }
            if kept { <button type="button" class="mend" onclick={load} data-testid="load-newer">{ words.text("newer-load") }</button> }
        </p>
    }
}
