//! The system as an outline: sources, what they feed, and what that drives. A line goes to its part.

use crate::state::{Act, Panel, Store};
use yew::prelude::*;

pub(crate) fn outline(store: &Store) -> Html {
    let lines = store.desk.see(editor::Editor::outline);
    let words = store.words();
    let close = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| {
            store.dispatch(Act::Toggle(Panel::Outline));
            crate::browser::focus_board();
        })
    };
    html! {
        <section class="drawer" data-testid="outline-list" aria-label={words.say(&editor::Action::Outline.said())}>
            <header class="drawer__head"><b>{ words.text("outline") }</b><button type="button" class="slip__close" onclick={close}>{ words.text("key-esc") }</button></header>
            <ul class="outline">
                { for lines.into_iter().enumerate().map(|(n, line)| {
                    let (store, thing) = (store.clone(), line.thing.clone());
                    let onclick = Callback::from(move |_: MouseEvent| { store.desk.change(|editor| editor.go_to(&thing)); });
                    html! {
                        <li key={n} class={format!("outline__line outline__line--{}", line.depth)} aria-level={(line.depth + 1).to_string()}>
                            <button type="button" {onclick}>{ line.text }</button>
                        </li>
                    }
                }) }
            </ul>
        </section>
    }
}
