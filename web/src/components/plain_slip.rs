//! The slip beside a tapped thing where one only looks: what it is and does in plain words, and what was found about it.

use super::mark::{grade_class, mark};
use super::slip::stand;
use super::under_legend::fate_of;
use crate::state::{Act, Store};
use editor::{Action, Thing};
use yew::prelude::*;

pub(crate) fn plain_slip(store: &Store, thing: &Thing) -> Html {
    let (tag, name, told, findings, fate) = store.desk.see(|editor| {
        let (tag, name) = match thing {
            Thing::Part(id) => named(editor.sheet().parts.get(id)),
            Thing::Terminal(at) => named(editor.sheet().parts.get(&at.part)),
            Thing::Run(id) => match editor.sheet().runs.get(id) {
                Some(run) if run.label.is_empty() => (run.tag.clone(), "Wire".to_owned()),
                Some(run) => (run.tag.clone(), run.label.clone()),
                None => (String::new(), String::new()),
            },
        };
        let all = &editor.analysis().findings;
        let findings: Vec<_> = editor
            .findings_of(thing)
            .into_iter()
            .filter_map(|place| {
                all.get(place)
                    .map(|finding| (place, finding.grade, editor.words().say(&finding.what)))
            })
            .collect();
        (tag, name, editor.plain(thing), findings, fate_of(editor, thing))
    });
    if told.is_empty() {
        return html! {};
    }
    let close = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| {
            store.dispatch(Act::Close);
            crate::browser::focus_board();
        })
    };
    let feeds = {
        let desk = store.desk.clone();
        Callback::from(move |_: MouseEvent| desk.perform(Action::WhatFeeds))
    };
    html! {
        <aside class="slip slip--plain" style={stand(store, thing)} data-testid="plain-slip" aria-label={format!("About {tag}")}>
            <header class="slip__head">
                <b class="slip__tag">{ tag }</b>
                <span class="slip__kind">{ name }</span>
                <button type="button" class="slip__close" onclick={close} aria-label="Esc: close" data-testid="close">{ "Esc" }</button>
            </header>
            { fate }
            { for told.into_iter().map(|sentence| html! { <p>{ sentence }</p> }) }
            <div>{ for findings.into_iter().map(|(place, grade, what)| {
                let desk = store.desk.clone();
                let onclick = Callback::from(move |_: MouseEvent| { desk.change(|editor| editor.go_to_finding(place)); });
                html! { <button type="button" class={classes!("slip__finding", grade_class(grade))} {onclick}>{ mark(grade) }<span>{ what }</span></button> }
            }) }</div>
            <footer class="slip__foot">
                <button type="button" onclick={feeds}>{ "What feeds this" }<kbd>{ "F" }</kbd></button>
            </footer>
        </aside>
    }
}

fn named(part: Option<&model::Part>) -> (String, String) {
    part.map(|part| (part.tag.clone(), part.name().to_owned()))
        .unwrap_or_default()
}
