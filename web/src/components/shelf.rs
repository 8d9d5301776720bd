//! The shelf: a drawer along the left edge with the parts, grouped by what they do; typing filters it.

use super::shelf_item::ShelfItem;
use crate::browser;
use crate::state::{Act, Panel, Store};
use model::letters::in_lower;
use model::{Group, PartKind};
use web_sys::{HtmlElement, HtmlInputElement};
use words::{Saying, say};
use yew::prelude::*;

/// Words by which a kind is found besides its name.
fn also(word: &str) -> Saying {
    match word {
        "fuse" => say!("also-fuse"),
        "block" => say!("also-block"),
        "bus" => say!("also-bus"),
        "ground" => say!("also-ground"),
        "head" => say!("also-head"),
        "processor" => say!("also-processor"),
        "line-converter" => say!("also-line-converter"),
        "amplifier" => say!("also-amplifier"),
        "speaker" => say!("also-speaker"),
        "load" => say!("also-load"),
        "splice" => say!("also-splice"),
        "converter" => say!("also-converter"),
        _ => "".into(),
    }
}

#[function_component]
pub(crate) fn Shelf() -> Html {
    let typed = use_state(String::new);
    let field = use_node_ref();
    {
        let field = field.clone();
        use_effect_with((), move |()| {
            if let Some(field) = field.cast::<HtmlInputElement>() {
                let _ = field.focus();
            }
        });
    }
    let Some(store) = use_context::<Store>() else {
        return html! {};
    };
    let words = store.words();
    let wanted = in_lower(&typed);
    let kinds: Vec<(&'static str, PartKind)> = PartKind::WORDS
        .iter()
        .filter_map(|word| Some((*word, PartKind::from_word(word)?)))
        .filter(|(word, kind)| {
            let text = in_lower(&format!(
                "{} {} {word} {}",
                words.say(&kind.said()),
                words.say(&kind.group().said()),
                words.say(&also(word))
            ));
            wanted.split_whitespace().all(|wanted| text.contains(wanted))
        })
        .collect();
    let oninput = {
        let typed = typed.clone();
        Callback::from(move |event: InputEvent| {
            if let Some(field) = event.target_dyn_into::<HtmlInputElement>() {
                typed.set(field.value());
            }
        })
    };
    // Enter takes what is called so, before what only belongs to it.
    let named = kinds
        .iter()
        .find(|(_, kind)| in_lower(&words.say(&kind.said())).starts_with(&wanted));
    let first = named.or(kinds.first()).map(|(word, _)| *word);
    let onkeydown = {
        let store = store.clone();
        Callback::from(move |event: KeyboardEvent| match event.key().as_str() {
            "Enter" => {
                if let Some(word) = first {
                    event.prevent_default();
                    store.dispatch(Act::Toggle(Panel::Shelf));
                    store.desk.change(|editor| editor.take_from_shelf(word, true));
                    browser::focus_board();
                }
            }
            "ArrowDown" => {
                let item = browser::document().and_then(|d| d.query_selector(".shelf__item").ok().flatten());
                if let Some(item) =
                    item.and_then(|item| wasm_bindgen::JsCast::dyn_into::<HtmlElement>(item).ok())
                {
                    event.prevent_default();
                    let _ = item.focus();
                }
            }
            _ => {}
        })
    };
    let escape = {
        let store = store.clone();
        Callback::from(move |event: KeyboardEvent| {
            if event.key() == "Escape" {
                store.dispatch(Act::Toggle(Panel::Shelf));
                browser::focus_board();
            }
        })
    };
    let close = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| store.dispatch(Act::Toggle(Panel::Shelf)))
    };
    let groups = Group::ALL.iter().filter_map(|group| {
        let items: Vec<Html> =
            kinds.iter().filter(|(_, kind)| kind.group() == *group).map(|(word, _)| html! { <ShelfItem key={*word} word={*word} /> }).collect();
        (!items.is_empty()).then(|| html! { <section key={group.title()}><h3>{ words.say(&group.said()) }</h3><ul>{ for items }</ul></section> })
    });
    html! {
        <section class="drawer shelf" aria-label={words.text("shelf")} data-testid="shelf-drawer" onkeydown={escape}>
            <header class="drawer__head">
                <input ref={field} type="text" class="shelf__filter" placeholder={words.text("shelf-filter-how")} aria-label={words.text("shelf-filter")} value={(*typed).clone()} {oninput} {onkeydown} data-testid="shelf-filter" />
                <button type="button" class="slip__close" onclick={close} aria-label={words.text("shelf-close")}>{ words.text("key-esc") }</button>
            </header>
            // In an element of its own: what comes and goes here must not make the field above a new one.
            <div>{ for groups }</div>
            if kinds.is_empty() { <p class="drawer__none">{ words.text("shelf-none") }</p> }
        </section>
    }
}
