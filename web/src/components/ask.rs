//! Ask: one box that finds any part, run, finding or action by typing.

use crate::state::{Act, Panel, Store};
use crate::{browser, clipboard};
use editor::Action;
use editor::ask::{Answer, Leads};
use web_sys::HtmlInputElement;
use yew::prelude::*;

/// How many answers are shown.
const MOST: usize = 12;

fn follow(store: &Store, answer: &Answer) {
    store.dispatch(Act::Toggle(Panel::Ask));
    browser::focus_board();
    match &answer.leads {
        Leads::To(thing) => {
            let thing = thing.clone();
            store.desk.change(|editor| editor.go_to(&thing));
        }
        Leads::Finding(place) => {
            store.desk.change(|editor| editor.go_to_finding(*place));
        }
        Leads::Does(action @ (Action::Copy | Action::Cut | Action::Paste)) => {
            clipboard::by_word(*action, &store.desk);
        }
        Leads::Does(action) => store.desk.perform(*action),
        Leads::Takes(word) => {
            store.desk.change(|editor| editor.take_from_shelf(word, true));
        }
    }
}

#[function_component]
pub(crate) fn Ask() -> Html {
    let typed = use_state(String::new);
    let chosen = use_state(|| 0_usize);
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
    let answers = store.desk.see(|editor| editor.ask(&typed, MOST));
    let at = (*chosen).min(answers.len().saturating_sub(1));
    let oninput = {
        let (typed, chosen) = (typed.clone(), chosen.clone());
        Callback::from(move |event: InputEvent| {
            if let Some(field) = event.target_dyn_into::<HtmlInputElement>() {
                typed.set(field.value());
                chosen.set(0);
            }
        })
    };
    let onkeydown = {
        let (store, chosen, answers) = (store.clone(), chosen.clone(), answers.clone());
        Callback::from(move |event: KeyboardEvent| {
            let last = answers.len().saturating_sub(1);
            match event.key().as_str() {
                "ArrowDown" => chosen.set(if at >= last { 0 } else { at + 1 }),
                "ArrowUp" => chosen.set(if at == 0 { last } else { at - 1 }),
                "Enter" => {
                    if let Some(answer) = answers.get(at) {
                        follow(&store, answer);
                    }
                }
                "Escape" => {
                    store.dispatch(Act::Toggle(Panel::Ask));
                    browser::focus_board();
                }
                _ => return,
            }
            event.prevent_default();
        })
    };
    html! {
        <section class="ask" role="search" data-testid="ask-box">
            <input ref={field} class="ask__field" type="text" placeholder={words.text("ask-for")} aria-label={words.text("tool-ask")} role="combobox"
                aria-expanded="true" aria-controls="ask-answers" aria-activedescendant={format!("answer-{at}")} autocomplete="off" spellcheck="false"
                value={(*typed).clone()} {oninput} {onkeydown} data-testid="ask-field" />
            <ul id="ask-answers" class="ask__answers" role="listbox">
                { for answers.iter().enumerate().map(|(n, answer)| {
                    let (store, follows) = (store.clone(), answer.clone());
                    let onclick = Callback::from(move |_: MouseEvent| follow(&store, &follows));
                    html! {
                        <li id={format!("answer-{n}")} role="option" aria-selected={(n == at).to_string()} class={classes!((n == at).then_some("ask__answer--on"))}
                            data-testid="answer" {onclick}>
                            <span>{ &answer.text }</span><span class="ask__aside">{ &answer.aside }</span>
                        </li>
                    }
                }) }
                if answers.is_empty() { <li class="ask__none">{ words.text("ask-none") }</li> }
            </ul>
        </section>
    }
}
