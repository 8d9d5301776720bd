//! The list of keys: every action with its name.

use crate::state::{Act, Panel, Store};
use editor::Action;
use yew::prelude::*;

pub(crate) fn keys(store: &Store) -> Html {
    let close = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| {
            store.dispatch(Act::Toggle(Panel::Keys));
            crate::browser::focus_board();
        })
    };
    let others = [
        ("Arrows", "Walk: part, terminal, along the run, next terminal"),
        (
            "Shift+Arrows",
            "Move what is picked; of a run, a piece aside or the bend in hand",
        ),
        ("Double click", "Details; on a bend, take it out"),
        ("Space and drag", "Shift the paper"),
        ("Wheel", "Enlarge about the pointer"),
        ("Alt while moving", "Off the grid"),
        ("Shift while placing", "Place another"),
        ("Esc", "Back out"),
    ];
    html! {
        <section class="drawer" data-testid="keys-list" aria-label="Keys">
            <header class="drawer__head"><b>{ "Keys" }</b><button type="button" class="slip__close" onclick={close}>{ "Esc" }</button></header>
            <dl class="keys">
                { for others.map(|(key, name)| html! { <><dt><kbd>{ key }</kbd></dt><dd>{ name }</dd></> }) }
                { for Action::ALL.iter().filter(|action| !action.chords().is_empty() && store.desk.see(|editor| editor.offers(**action))).map(|action| html! {
                    <><dt>{ for action.chords().iter().map(|chord| html! { <kbd>{ chord.written() }</kbd> }) }</dt><dd>{ action.name() }</dd></>
                }) }
            </dl>
        </section>
    }
}
