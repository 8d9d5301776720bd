//! The parts that make sense where a run was dropped on empty paper.

use crate::state::{Act, Store};
use drawing::to_point;
use editor::roles;
use model::{BoardPoint, PartKind, TerminalRef};
use web_sys::HtmlElement;
use words::say;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(crate) struct OfferProps {
    pub(crate) from: TerminalRef,
    pub(crate) at: BoardPoint,
}

#[function_component]
pub(crate) fn Offer(props: &OfferProps) -> Html {
    let list = use_node_ref();
    {
        let list = list.clone();
        use_effect_with(props.at, move |_| {
            let first = list
                .cast::<HtmlElement>()
                .and_then(|list| list.query_selector("button").ok().flatten());
            if let Some(first) =
                first.and_then(|first| wasm_bindgen::JsCast::dyn_into::<HtmlElement>(first).ok())
            {
                let _ = first.focus();
            }
        });
    }
    let Some(store) = use_context::<Store>() else {
        return html! {};
    };
    let role = store.desk.see(|editor| editor.sheet().role(&props.from));
    let Some(role) = role else { return html! {} };
    let at = store.desk.on_screen(to_point(props.at));
    let words = store.words();
    let items = roles::offers(role).iter().map(|word| {
        let (store, from, at, word) = (store.clone(), props.from.clone(), props.at, *word);
        let title = PartKind::from_word(word).map_or_else(String::new, |kind| words.say(&kind.said()));
        let onclick = Callback::from(move |_: MouseEvent| {
            store.desk.change(|editor| editor.accept_offer(&from, at, word));
            store.dispatch(Act::Close);
            crate::browser::focus_board();
        });
        html! { <li><button type="button" {onclick} data-testid={format!("offer-{word}")}>{ title }</button></li> }
    });
    let onkeydown = {
        let store = store.clone();
        Callback::from(move |event: KeyboardEvent| {
            if event.key() == "Escape" {
                store.dispatch(Act::Close);
                crate::browser::focus_board();
            }
        })
    };
    html! {
        <div class="offer" style={format!("left:{:.0}px;top:{:.0}px", at.x + 8.0, at.y)} data-testid="offer" {onkeydown}>
            <p>{ words.say(&say!("offer", from = store.desk.see(|editor| editor.sheet().written(&props.from)))) }</p>
            <ul ref={list}>{ for items }</ul>
        </div>
    }
}
