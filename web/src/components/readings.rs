//! The readings that were kept on this sheet: what was measured where, what the meter showed, and the state it was in.

use super::title_block::make;
use crate::state::{Act, Panel, Store, escape_closes};
use editor::meter::line_of;
use editor::recording::choices;
use model::SheetKind;
use model::edits::{remove_reading, set_reading};
use model::laying::Moved;
use model::property::PropertyType;
use model::readings::Reading;
use web_sys::HtmlSelectElement;
use words::say;
use yew::prelude::*;

pub(crate) fn readings(store: &Store) -> Html {
    let words = store.words();
    let close = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| {
            store.dispatch(Act::Toggle(Panel::Readings));
            crate::browser::focus_board();
        })
    };
    let (on, readings) = store
        .desk
        .see(|editor| (editor.on(), editor.sheet().readings.clone()));
    let complaints: Vec<String> = store.desk.see(|editor| {
        let all = editor.job().thread.complaints.iter();
        all.map(|complaint| complaint.tag.clone()).collect()
    });
    let none = readings.is_empty();
    let lines = readings.iter().enumerate().map(|(place, reading)| {
        let (store, store_of) = (store.clone(), store.clone());
        let remove = Callback::from(move |_: MouseEvent| make(&store, |job| remove_reading(job, on, place)));
        let state = format!("{}, {}", words.say(&reading.state.said()), words.say(&reading.duty.said()));
        let remark = Some(&reading.remark).filter(|remark| reading.number().is_some() && !remark.is_empty());
        html! {
            <li class="jobs__row">
                <span class="jobs__job" data-testid="reading-line"><b>{ line_of(reading, &words) }</b><span>{ state }</span>
                    if let Some(remark) = remark { <span>{ remark }</span> }
                    { told(&store_of, on, place, reading, &complaints) }
                </span>
                <button type="button" class="jobs__remove" onclick={remove} data-testid="remove-reading"
                    aria-label={words.say(&say!("readings-remove", reading = line_of(reading, &words)))}>{ words.text("remove") }</button>
            </li>
        }
    });
    html! {
        <section onkeydown={escape_closes(store)} class="drawer jobs" data-testid="readings-drawer" aria-label={words.text("readings")}>
            <header class="drawer__head"><b>{ words.say(&say!("readings-sheet", sheet = on.said())) }</b><button type="button" class="slip__close" onclick={close}>{ words.text("key-esc") }</button></header>
            if none { <p class="drawer__none">{ words.text("readings-none") }</p> }
            <ol>{ for lines }</ol>
        </section>
    }
}

/// What was moved while it was read, and which complaint it proves to be mended.
fn told(store: &Store, on: SheetKind, place: usize, reading: &Reading, complaints: &[String]) -> Html {
    let words = store.words();
    let choose = |name: &'static str,
                  now: String,
                  all: Vec<(String, String)>,
                  none: &str,
                  testid: &'static str,
                  label: &str| {
        let store = store.clone();
        let onchange = Callback::from(move |event: Event| {
            if let Some(select) = event.target_dyn_into::<HtmlSelectElement>() {
                make(&store, |job| set_reading(job, on, place, name, &select.value()));
            }
        });
        html! {
            <label class="readings__told">{ words.text(label) }
                <select class="field__input" {onchange} data-testid={testid}>
                    <option value={none.to_owned()} selected={now == none}>{ "—" }</option>
                    { for all.into_iter().map(|(word, said)| { let selected = now == word; html! { <option {selected} value={word}>{ said }</option> } }) }
                </select>
            </label>
        }
    };
    let moved = choices::<Moved>()
        .into_iter()
        .map(|(word, said)| (word.to_owned(), words.say(&said)))
        .collect();
    let tags = complaints.iter().map(|tag| (tag.clone(), tag.clone())).collect();
    html! {
        <>
            { choose("with", reading.moved.print(), moved, "?", "reading-with", "readings-with") }
            if !complaints.is_empty() { { choose("proves", reading.proves.print(), tags, "", "reading-proves", "readings-proves") } }
        </>
    }
}
