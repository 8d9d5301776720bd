//! What every section of the form is made with: changes of the lesson by buttons, fields and lists.

use crate::state::Store;
use lessons::{Lesson, Thing};
use std::rc::Rc;
use web_sys::HtmlSelectElement;
use words::{Words, say};
use yew::prelude::*;

/// What every section of the form needs.
pub(super) struct Form<'f> {
    pub(super) draft: &'f Rc<Lesson>,
    pub(super) set: &'f Callback<Lesson>,
    pub(super) words: &'f Words,
    pub(super) store: &'f Store,
    /// What is picked on the drawing: the name by which a lesson knows it.
    pub(super) picked: Option<(Thing, String)>,
    /// The fault that more places are added to, by its key in the list.
    pub(super) adding_to: UseStateHandle<Option<String>>,
}

impl Form<'_> {
    /// Does something to the lesson.
    pub(super) fn act(&self, how: impl Fn(&mut Lesson) + 'static) -> Callback<MouseEvent> {
        let (draft, set) = (self.draft.clone(), self.set.clone());
        Callback::from(move |_: MouseEvent| {
            let mut next = (*draft).clone();
            how(&mut next);
            set.emit(next);
        })
    }
    /// Puts a text into the lesson.
    pub(super) fn put(&self, how: impl Fn(&mut Lesson, String) + 'static) -> Callback<String> {
        let (draft, set) = (self.draft.clone(), self.set.clone());
        Callback::from(move |text: String| {
            let mut next = (*draft).clone();
            how(&mut next, text);
            set.emit(next);
        })
    }
    /// Puts paragraphs or lines into the lesson.
    pub(super) fn put_all(&self, how: impl Fn(&mut Lesson, Vec<String>) + 'static) -> Callback<Vec<String>> {
        let (draft, set) = (self.draft.clone(), self.set.clone());
        Callback::from(move |all: Vec<String>| {
            let mut next = (*draft).clone();
            how(&mut next, all);
            set.emit(next);
        })
    }
    /// Puts a choice of a list into the lesson.
    pub(super) fn choose(&self, how: impl Fn(&mut Lesson, String) + 'static) -> Callback<Event> {
        let put = self.put(how);
        Callback::from(move |event: Event| {
            if let Some(list) = event.target_dyn_into::<HtmlSelectElement>() {
                put.emit(list.value());
            }
        })
    }
    pub(super) fn button(&self, key: &str, onclick: Callback<MouseEvent>, testid: &'static str) -> Html {
        html! { <button type="button" class="lesson__button" {onclick} data-testid={testid}>{ self.words.text(key) }</button> }
    }
    /// A section that is shut until it is wanted.
    pub(super) fn fold(&self, key: &'static str, count: usize, inside: Html) -> Html {
        html! {
            <details class="paper__fold" data-testid={key}>
                <summary>{ self.words.text(key) }if count > 0 { { format!(" ({count})") } }</summary>
                { inside }
            </details>
        }
    }

    /// Adds what is picked on the drawing to a list of names in the lesson; `terminal` takes the terminal itself.
    pub(super) fn things(
        &self,
        names: &[String],
        terminal: bool,
        of: impl Fn(&mut Lesson) -> Option<&mut Vec<String>> + Copy + 'static,
    ) -> Html {
        let words = self.words;
        let name = self.picked.as_ref().map(|(_, name)| {
            let tag = name.split_once('.').map_or(name.as_str(), |(tag, _)| tag);
            if terminal { name.clone() } else { tag.to_owned() }
        });
        let add = name.clone().filter(|name| !names.contains(name)).map(|name| {
            let shown = words.say(&say!("own-add-thing", thing = name.as_str()));
            let onclick = self.act(move |lesson| {
                if let Some(all) = of(lesson) {
                    all.push(name.clone());
                }
            });
            html! { <button type="button" class="lesson__button" {onclick} data-testid="add-thing">{ shown }</button> }
        });
        let clear = self.act(move |lesson| {
            if let Some(all) = of(lesson) {
                all.clear();
            }
        });
        html! {
            <div class="paper__row">
                <span>{ if names.is_empty() { words.text("own-pick-things") } else { names.join(", ") } }</span>
                { add }
                if !names.is_empty() { { self.button("own-clear-things", clear, "clear-things") } }
            </div>
        }
    }
}
