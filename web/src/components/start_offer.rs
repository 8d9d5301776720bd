//! What an empty sheet offers.

use crate::state::{Panel, Store};
use yew::prelude::*;

/// What stands on an empty sheet: both ways to begin.
pub(crate) fn start_offer(store: &Store) -> Html {
    let offers = store
        .desk
        .see(|editor| editor.offers(editor::Action::StartSystem) && !editor.is_on_body());
    if !offers || !is_empty(store) || store.panel != Panel::None {
        return html! {};
    }
    let words = store.words();
    let offer = |action: editor::Action, title: String, what: &'static str, testid: &'static str| {
        let desk = store.desk.clone();
        let onclick = Callback::from(move |_: MouseEvent| desk.perform(action));
        html! {
            <button type="button" class="start-offer" {onclick} data-testid={testid}><b>{ title }<kbd>{ words.say(&super::keys::key(action)) }</kbd></b><span>{ words.text(what) }</span></button>
        }
    };
    let shelf = words.say(&editor::Action::OpenShelf.said());
    html! {
        <div class="start-offers">
            { offer(editor::Action::StartSystem, words.text("start-title"), "start-offer", "start-offer") }
            { offer(editor::Action::OpenShelf, shelf, "shelf-offer", "shelf-offer") }
        </div>
    }
}

/// Whether nothing is on the sheet yet.
pub(super) fn is_empty(store: &Store) -> bool {
    store.desk.see(|editor| editor.sheet().is_empty())
}
