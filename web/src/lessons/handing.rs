//! How an own lesson is given away: by a link that carries all of it, with a code to scan where it fits, or as a file.

use crate::browser::{self, ADDRESS};
use crate::components::link;
use crate::files;
use crate::reader::use_words;
use crate::state::Store;
use lessons::{Lesson, lesson_fragment};
use sharing::Address;
use std::rc::Rc;
use web_sys::HtmlInputElement;
use words::say;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct HandingProps {
    pub(super) lesson: Rc<Lesson>,
    /// Whether it lacks nothing.
    pub(super) whole: bool,
    pub(super) store: Store,
    /// Says something.
    pub(super) say: Callback<String>,
}

#[function_component]
pub(super) fn Handing(props: &HandingProps) -> Html {
    let words = use_words();
    let made = use_state(|| None::<Rc<Lesson>>);
    let address = use_state(|| {
        browser::remembered(ADDRESS)
            .or_else(browser::own_address)
            .unwrap_or_default()
    });
    let file = {
        let (lesson, say_it, words) = (props.lesson.clone(), props.say.clone(), words.clone());
        Callback::from(move |_: MouseEvent| {
            let name = files::file_name(&lesson.title, ".lesson");
            say_it.emit(
                match files::export_text(&name, &lessons::write(&lesson), "text/plain") {
                    Ok(()) => words.say(&say!("lesson-downloaded", name = name)),
                    Err(trouble) => words.say(&trouble.said()),
                },
            );
        })
    };
    let make = {
        let (made, lesson) = (made.clone(), props.lesson.clone());
        Callback::from(move |_: MouseEvent| made.set(Some(lesson.clone())))
    };
    let typed = {
        let address = address.clone();
        Callback::from(move |event: Event| {
            if let Some(field) = event.target_dyn_into::<HtmlInputElement>() {
                browser::remember(ADDRESS, field.value().trim());
                address.set(field.value());
            }
        })
    };
    // Packing takes a moment: it is done when asked for, not at every letter.
    let packed = use_memo((*made).clone(), |made| {
        made.as_ref().map(|lesson| lesson_fragment(lesson))
    });
    let is_old = made.as_ref().is_some_and(|made| *made != props.lesson);
    let shown = match &*packed {
        None => html! {},
        Some(_) if is_old => html! { <p class="paper__faint">{ words.text("own-link-old") }</p> },
        Some(Err(error)) => {
            html! { <p class="paper__trouble" data-testid="too-long">{ words.say(&error.said()) }</p> }
        }
        Some(Ok(packed)) => match Address::new(&address) {
            Ok(address) => link(&props.store, &address.link(packed)),
            Err(error) => html! { <p class="paper__trouble" role="alert">{ words.say(&error.said()) }</p> },
        },
    };
    html! {
        <>
            <div class="paper__row">
                <button type="button" class="paper__main" onclick={file} data-testid="own-file">{ words.text("own-file") }</button>
                <button type="button" class="paper__main" onclick={make} disabled={!props.whole} data-testid="own-link">{ words.text("own-link") }</button>
            </div>
            if made.is_some() {
                <label class="paper__field"><span>{ words.text("own-address") }</span>
                    <input type="text" class="paper__input" inputmode="url" maxlength="200" value={(*address).clone()} onchange={typed} data-testid="own-address" /></label>
            }
            <div class="share">{ shown }</div>
            <p class="paper__faint">{ words.text("own-private") }</p>
        </>
    }
}
