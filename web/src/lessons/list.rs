//! The list of lessons: what each is about and what is found in its bad version. Arrows walk, Enter opens.

use super::Route;
use super::View;
use super::own_list::OwnList;
use super::translated::Translations;
use crate::browser;
use crate::components::mark;
use crate::reader::use_words;
use lessons::{LESSONS, title};
use std::rc::Rc;
use wasm_bindgen::JsCast;
use web_sys::HtmlElement;
use words::say;
use yew::prelude::*;

/// The first sentence of a text, with the sign that ends a quotation in it.
fn first_sentence(text: &str) -> &str {
    let end = text.find(['.', '?', '!']).map_or(text.len(), |at| at + 1);
    let (sentence, rest) = text.split_at_checked(end).unwrap_or((text, ""));
    let quote = rest.chars().next().filter(|sign| matches!(sign, '"' | '”' | '“'));
    let more = quote.map_or(0, char::len_utf8);
    text.get(..sentence.len() + more).unwrap_or(sentence)
}

/// Puts the focus on the entry that lies so many places from the one that has it.
fn step(by: i32, list: &NodeRef) {
    let Some(list) = list.cast::<HtmlElement>() else {
        return;
    };
    let entries = list.children();
    let last = entries.length().saturating_sub(1);
    let here = browser::in_focus().and_then(|focus| {
        (0..=last).find(|n| entries.item(*n).is_some_and(|entry| entry.contains(Some(&focus))))
    });
    let next = match here {
        Some(n) => n.saturating_add_signed(by).min(last),
        None => 0,
    };
    let button = entries.item(next).and_then(|entry| entry.first_element_child());
    if let Some(button) = button.and_then(|button| button.dyn_into::<HtmlElement>().ok()) {
        let _ = button.focus();
    }
}

#[derive(Properties, PartialEq)]
pub(super) struct ListProps {
    /// The lessons in the reader's language.
    pub(super) told: Rc<Translations>,
}

#[function_component]
pub(super) fn List(props: &ListProps) -> Html {
    let words = use_words();
    let list = use_node_ref();
    {
        let (list, name) = (list.clone(), words.text("lessons-title"));
        use_effect_with((), move |()| {
            browser::name_page(&name);
            step(0, &list);
        });
    }
    // What was read of them is kept: seventeen jobs are not read again for every step of the focus.
    let entries = use_memo(props.told.clone(), |told| {
        LESSONS
            .iter()
            .map(|built_in| (built_in.key, told.lesson(built_in)))
            .collect::<Vec<_>>()
    });
    let onkeydown = {
        let list = list.clone();
        Callback::from(move |event: KeyboardEvent| {
            let by = match event.key().as_str() {
                "ArrowDown" => 1,
                "ArrowUp" => -1,
                "Home" => i32::MIN,
                "End" => i32::MAX,
                "Escape" => {
                    event.prevent_default();
                    return Route::Table.go();
                }
                _ => return,
            };
            event.prevent_default();
            step(by, &list);
        })
    };
    let back = Callback::from(|_: MouseEvent| Route::Table.go());
    let entry = |(key, lesson): &(&'static str, lessons::Lesson)| {
        let route = Route::Lesson((*key).to_owned(), View::Presenting);
        let onclick = Callback::from(move |_: MouseEvent| route.go());
        let about = lesson.story.first().map(|text| first_sentence(text).to_owned());
        let found: Vec<Html> = lesson
            .about
            .iter()
            .filter_map(|name| checks::check_named(name))
            .map(|check| html! { <span class="lessons__check">{ mark(check.grade) }<b>{ words.say(&check.grade.said()) }</b>{ " " }{ words.say(&check.title()) }</span> })
            .chain(
                lesson
                    .faults
                    .iter()
                    .filter(|fault| !lesson.about.contains(&fault.name))
                    .map(|fault| html! { <span class="lessons__check">{ title(&fault.name) }</span> }),
            )
            .collect();
        html! {
            <li key={*key}>
                <button type="button" class="lessons__entry" {onclick} data-testid={format!("lesson-{key}")}>
                    <b class="lessons__title">{ &lesson.title }</b>
                    <span class="lessons__about">{ about }</span>
                    <span class="lessons__checks">{ for found }</span>
                </button>
            </li>
        }
    };
    html! {
        <main class="lessons" data-testid="lessons" {onkeydown}>
            <header class="lessons__head">
                <button type="button" class="lesson__button" onclick={back} data-testid="to-table">{ words.text("lessons-back") }<kbd>{ "Esc" }</kbd></button>
                <h1>{ words.text("lessons-title") }</h1>
                <p>{ words.say(&say!("lessons-count", count = entries.len())) }</p>
            </header>
            <OwnList />
            <ol class="lessons__list" ref={list}>{ for entries.iter().map(entry) }</ol>
        </main>
    }
}
