//! The slip beside a tapped thing where one only looks: what it is and does in plain words, and what was found about it.

use super::mark::{grade_class, mark};
use super::slip::stand;
use super::under_legend::fate_of;
use crate::state::{Act, Store};
use editor::{Action, Thing};
use words::say;
use yew::prelude::*;

pub(crate) fn plain_slip(store: &Store, thing: &Thing) -> Html {
    let (tag, name, told, findings, fate) = store.desk.see(|editor| {
        let (tag, name) = match thing {
            Thing::Part(id) => named(editor, *id),
            Thing::Terminal(at) => named(editor, at.part),
            Thing::Run(id) => match editor.sheet().runs.get(id) {
                Some(run) if run.label.is_empty() => (run.tag.clone(), editor.words().text("plain-run")),
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
    let words = store.words();
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
        <aside class="slip slip--plain" style={stand(store, thing)} data-testid="plain-slip" aria-label={words.say(&say!("slip-about", tag = &tag))}>
            <header class="slip__head">
                <b class="slip__tag">{ tag }</b>
                <span class="slip__kind">{ name }</span>
                <button type="button" class="slip__close" onclick={close} aria-label={words.text("close")} data-testid="close">{ words.text("key-esc") }</button>
            </header>
            { fate }
            { for told.into_iter().map(|sentence| html! { <p>{ sentence }</p> }) }
            <div>{ for findings.into_iter().map(|(place, grade, what)| {
                let desk = store.desk.clone();
                let onclick = Callback::from(move |_: MouseEvent| { desk.change(|editor| editor.go_to_finding(place)); });
                html! { <button type="button" class={classes!("slip__finding", grade_class(grade))} {onclick}>{ mark(grade) }<span>{ what }</span></button> }
            }) }</div>
            <footer class="slip__foot">
                <button type="button" onclick={feeds}>{ words.text("slip-feeds") }<kbd>{ "F" }</kbd></button>
            </footer>
        </aside>
    }
}

fn named(editor: &editor::Editor, id: model::PartId) -> (String, String) {
    let part = editor.sheet().parts.get(&id);
    part.map(|part| (part.tag.clone(), editor.words().say(&part.said())))
        .unwrap_or_default()
}
