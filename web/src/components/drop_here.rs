//! A job file dropped anywhere on the page is opened.

use crate::browser;
use crate::files;
use crate::keeper::Keeper;
use crate::state::{Act, Store};
use gloo_events::{EventListener, EventListenerOptions};
use model::limits::LARGEST_FILE;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;
use web_sys::DragEvent;
use yew::prelude::*;

#[function_component]
pub(crate) fn DropHere() -> Html {
    let store = use_context::<Store>();
    let keeper = use_context::<Rc<Keeper>>();
    use_effect_with((), move |()| {
        let mut listeners = Vec::new();
        if let (Some(window), Some(keeper), Some(store)) = (browser::window(), keeper, store) {
            let options = EventListenerOptions::enable_prevent_default();
            listeners.push(EventListener::new_with_options(
                &window,
                "dragover",
                options,
                |event| event.prevent_default(),
            ));
            listeners.push(EventListener::new_with_options(
                &window,
                "drop",
                options,
                move |event| {
                    event.prevent_default();
                    if browser::table_is_covered() {
                        return;
                    }
                    let Some(event) = event.dyn_ref::<DragEvent>() else {
                        return;
                    };
                    let dropped = files::dropped(event.data_transfer(), LARGEST_FILE);
                    let (keeper, tell, desk) = (keeper.clone(), store.dispatcher(), store.desk.clone());
                    spawn_local(async move {
                        match dropped.await {
                            Ok(opened) => keeper.opened(opened),
                            Err(trouble) => tell.dispatch(Act::Say(desk.words().say(&trouble.said()))),
                        }
                    });
                },
            ));
        }
        move || drop(listeners)
    });
    html! {}
}
