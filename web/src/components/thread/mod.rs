//! The thread of the job: what the customer complained of, the condition at intake, what is still to be found out, what
//! becomes of things, and the quote. Each is a list of its own that unfolds.

mod becomes;
mod complaints;
mod find_out;
mod intake;
mod lines;
mod quote;

use crate::state::{Act, Panel, Store, escape_closes};
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(crate) struct ThreadProps {
    /// Counts the edits: everything here reads the editor.
    pub(crate) revision: u32,
}

/// A list of the drawer: the key of its title, and what it shows.
type Section = (&'static str, fn(&Store) -> (usize, Html));

const SECTIONS: &[Section] = &[
    ("thread-complaints", complaints::complaints),
    ("thread-condition", intake::intake),
    ("thread-find-out", find_out::find_out),
    ("thread-becomes", becomes::becomes),
    ("thread-quote", quote::quote),
];

#[function_component]
pub(crate) fn Thread(_: &ThreadProps) -> Html {
    let open = use_state(|| Some(0_usize));
    let Some(store) = use_context::<Store>() else {
        return html! {};
    };
    let words = store.words();
    let close = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| {
            store.dispatch(Act::Toggle(Panel::Thread));
            crate::browser::focus_board();
        })
    };
    let sections = SECTIONS.iter().enumerate().map(|(number, (title, list))| {
        let is_open = *open == Some(number);
        let (count, shown) = list(&store);
        let open = open.clone();
        let onclick = Callback::from(move |_: MouseEvent| open.set((!is_open).then_some(number)));
        html! {
            <section class="thread__section">
                <h3><button type="button" class="thread__title" aria-expanded={is_open.to_string()} {onclick} data-testid={*title}>
                    <b>{ words.text(title) }</b><span>{ count }</span>
                </button></h3>
                if is_open { <div class="thread__body" data-testid={format!("{title}-list")}>{ shown }</div> }
            </section>
        }
    });
    html! {
        <section onkeydown={escape_closes(&store)} class="drawer drawer--wide thread" data-testid="thread-drawer" aria-label={words.text("thread")}>
            <header class="drawer__head"><b>{ words.text("thread") }</b><button type="button" class="slip__close" onclick={close}>{ words.text("key-esc") }</button></header>
            { for sections }
        </section>
    }
}
