//! The readings that were kept on this sheet: what was measured where, what the meter showed, and the state it was in.

use super::title_block::make;
use crate::state::{Act, Panel, Store};
use editor::meter::line_of;
use model::edits::remove_reading;
use yew::prelude::*;

pub(crate) fn readings(store: &Store) -> Html {
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
        let state = format!("{}, {}", reading.state.title(), reading.duty.title());
        let remark = Some(&reading.remark).filter(|remark| reading.number().is_some() && !remark.is_empty());
        html! {
            <li class="jobs__row">
                <span class="jobs__job" data-testid="reading-line"><b>{ line_of(reading) }</b><span>{ state }</span>
                    if let Some(remark) = remark { <span>{ remark }</span> }
                </span>
                <button type="button" class="jobs__remove" onclick={remove} data-testid="remove-reading"
                    aria-label={format!("Remove {}", line_of(reading))}>{ "Remove" }</button>
            </li>
        }
    });
    html! {
        <section class="drawer jobs" data-testid="readings-drawer" aria-label="Readings">
            <header class="drawer__head"><b>{ format!("Readings, sheet {}", on.title()) }</b><button type="button" class="slip__close" onclick={close}>{ "Esc" }</button></header>
            if none { <p class="drawer__none">{ "None yet. Take the meter in hand (M), put its leads on, and keep what it shows (S)." }</p> }
            <ol>{ for lines }</ol>
        </section>
    }
}
