//! A line of a list of the thread, as fields; and the button that adds one.

use crate::components::field::Field;
use crate::components::run_fields::set;
use crate::components::title_block::make;
use crate::state::Store;
use model::edits::{ThreadList, add_line, remove_line, set_line};
use model::property::PropertySet;
use words::say;
use yew::prelude::*;

/// The fields of a line: the first ones at once, the others behind a word.
pub(super) fn fields(
    store: &Store,
    list: ThreadList,
    place: usize,
    line: &dyn PropertySet,
    [first, rest]: [&[&str]; 2],
) -> Html {
    let some = |names: &[&str]| {
        let properties = line.properties().iter().filter(|it| names.contains(&it.name));
        properties
            .map(|property| {
                let store = store.clone();
                let on_set = Callback::from(move |text: String| {
                    set(&store, |job| set_line(job, list, place, property.name, &text))
                });
                html! { <Field key={format!("{place}-{}", property.name)} {property} written={line.get(property.name).unwrap_or_default()} {on_set} /> }
            })
            .collect::<Html>()
    };
    html! {
        <>
            { some(first) }
            if !rest.is_empty() {
                <details><summary class="slip__more">{ store.words().text("thread-more") }</summary>{ some(rest) }</details>
            }
        </>
    }
}

/// A button that takes a line away.
pub(super) fn remove(store: &Store, list: ThreadList, place: usize, called: &str) -> Html {
    let words = store.words();
    let label = words.say(&say!("thread-remove", line = called));
    let store = store.clone();
    let onclick = Callback::from(move |_: MouseEvent| make(&store, |job| remove_line(job, list, place)));
    html! { <button type="button" class="jobs__remove" {onclick} aria-label={label} data-testid="remove-line">{ words.text("remove") }</button> }
}

/// A button that adds a line.
pub(super) fn add(store: &Store, list: ThreadList, word: &'static str) -> Html {
    let words = store.words();
    let store = store.clone();
    let onclick = Callback::from(move |_: MouseEvent| {
        make(&store, |job| add_line(job, list, &[]).map(|(edit, _)| edit))
    });
    html! { <button type="button" class="mend" {onclick} data-testid={word}>{ words.text(word) }</button> }
}

/// Sets one value of a line, and says what is wrong with it if it does not fit.
pub(super) fn put(store: &Store, list: ThreadList, place: usize, name: &str, text: &str) {
    make(store, |job| set_line(job, list, place, name, text));
}
