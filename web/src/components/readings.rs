//! The readings that were kept on this sheet: what was measured where, what the meter showed, and the state it was in.

use super::title_block::make;
use crate::state::{Act, Panel, Store};
use editor::meter::line_of;
use model::edits::remove_reading;
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
    let none = readings.is_empty();
    let lines = readings.iter().enumerate().map(|(place, reading)| {
        let store = store.clone();
        let remove = Callback::from(move |_: MouseEvent| make(&store, |job| remove_reading(job, on, place)));
        let state = format!("{}, {}", words.say(&reading.state.said()), words.say(&reading.duty.said()));
        let remark = Some(&reading.remark).filter(|remark| reading.number().is_some() && !remark.is_empty());
        html! {
            <li class="jobs__row">
                <span class="jobs__job" data-testid="reading-line"><b>{ line_of(reading, &words) }</b><span>{ state }</span>
                    if let Some(remark) = remark { <span>{ remark }</span> }
                </span>
                <button type="button" class="jobs__remove" onclick={remove} data-testid="remove-reading"
                    aria-label={words.say(&say!("readings-remove", reading = line_of(reading, &words)))}>{ words.text("remove") }</button>
            </li>
        }
    });
    html! {
        <section class="drawer jobs" data-testid="readings-drawer" aria-label={words.text("readings")}>
            <header class="drawer__head"><b>{ words.say(&say!("readings-sheet", sheet = on.said())) }</b><button type="button" class="slip__close" onclick={close}>{ words.text("key-esc") }</button></header>
            if none { <p class="drawer__none">{ words.text("readings-none") }</p> }
            <ol>{ for lines }</ol>
        </section>
    }
}
