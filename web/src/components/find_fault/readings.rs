//! What was measured: the list of it, a reading of the reader's own choice, what was moved meanwhile.

use super::kept::{from_kept, to_kept};
use super::{Known, change};
use crate::state::Store;
use assist::finding::{Reading, read_reading, said_number, said_probe};
use model::Sheet;
use model::laying::Moved;
use web_sys::{HtmlInputElement, HtmlSelectElement};
use words::say;
use yew::prelude::*;

/// What was measured, and what was kept on this sheet before.
pub(super) fn readings(store: &Store, known: &UseStateHandle<Known>, sheet: &Sheet) -> Html {
    let words = store.words();
    let kept: Vec<Reading> = sheet
        .readings
        .iter()
        .filter_map(|reading| from_kept(sheet, known.moved, reading))
        .filter(|reading| !known.readings.contains(reading))
        .collect();
    let lines = known.readings.iter().enumerate().map(|(place, reading)| {
        let number = said_number(&reading.probe, reading.number);
        let number = match reading.tolerance {
            Some(tolerance) => {
                let tolerance = said_number(&reading.probe, Some(tolerance));
                say!("fault-within", number = number, tolerance = tolerance).into()
            }
            None => number,
        };
        let said = words.say(&say!("fault-line", at = said_probe(sheet, &reading.probe), number = number));
        let known = known.clone();
        let onclick = Callback::from(move |_: MouseEvent| change(&known, |known| { known.readings.remove(place); }));
        html! {
            <li class="fault__line" data-testid="fault-reading"><span>{ said.clone() }</span>
                <button type="button" class="jobs__remove" {onclick} aria-label={words.say(&say!("fault-remove", what = said))}>{ words.text("remove") }</button></li>
        }
    });
    let stand: Vec<Option<Reading>> = sheet
        .readings
        .iter()
        .map(|it| from_kept(sheet, known.moved, it))
        .collect();
    let new: Vec<model::readings::Reading> = known
        .readings
        .iter()
        .filter(|reading| !stand.contains(&Some((*reading).clone())))
        .map(|reading| to_kept(sheet, known.moved, reading))
        .collect();
    let new_count = if store.desk.see(editor::Editor::looks_only) {
        0
    } else {
        new.len()
    };
    let keep = {
        let desk = store.desk.clone();
        Callback::from(move |_: MouseEvent| {
            let new = new.clone();
            desk.change(|editor| editor.keep_readings(new));
        })
    };
    let count = kept.len();
    let take = {
        let known = known.clone();
        Callback::from(move |_: MouseEvent| change(&known, |known| known.readings.extend(kept.clone())))
    };
    html! {
        <div class="fault">
            <h3>{ words.text("fault-readings") }</h3>
            { measured_while(store, known) }
            <ul class="fault__list">{ for lines }</ul>
            if new_count > 0 { <button type="button" class="fault__act" onclick={keep} data-testid="fault-keep">{ words.say(&say!("fault-keep", count = new_count)) }</button> }
            { own(store, known, sheet) }
            if count > 0 { <button type="button" class="fault__act" onclick={take} data-testid="fault-kept">{ words.say(&say!("fault-kept", count = count)) }</button> }
        </div>
    }
}

/// The field for a reading that nobody proposed, as it is written on the command line.
fn own(store: &Store, known: &UseStateHandle<Known>, sheet: &Sheet) -> Html {
    let words = store.words();
    let oninput = {
        let known = known.clone();
        Callback::from(move |event: InputEvent| {
            if let Some(field) = event.target_dyn_into::<HtmlInputElement>() {
                change(&known, |known| {
                    (known.own, known.own_wrong) = (field.value(), None)
                });
            }
        })
    };
    let onsubmit = {
        let (known, read) = (known.clone(), read_reading(&known.own, sheet));
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            change(&known, |known| match read.clone() {
                Ok(reading) => {
                    known.readings.push(reading);
                    known.own.clear();
                }
                Err(said) => known.own_wrong = Some(said),
            });
        })
    };
    html! {
        <form class="fault__row" {onsubmit} autocomplete="off">
            <input class="field__input field__input--line" value={known.own.clone()} {oninput} data-testid="fault-own" aria-label={words.text("fault-own")} placeholder={words.text("fault-own-like")} />
            <button type="submit" class="fault__act" disabled={known.own.trim().is_empty()} data-testid="fault-own-enter">{ words.text("fault-enter") }</button>
            if let Some(said) = &known.own_wrong { <p class="fault__doubt" role="alert" data-testid="fault-own-wrong">{ words.say(said) }</p> }
        </form>
    }
}

/// Asks what was moved while all of this was measured.
fn measured_while(store: &Store, known: &UseStateHandle<Known>) -> Html {
    let words = store.words();
    let nothing = html! { <option value="" selected={known.moved.is_none()}>{ words.text("fault-while-nothing") }</option> };
    let options = Moved::ALL.iter().map(|moved| {
        let is_chosen = known.moved == Some(*moved);
        html! { <option value={moved.word()} selected={is_chosen}>{ words.say(&moved.said()) }</option> }
    });
    let choose = {
        let known = known.clone();
        Callback::from(move |event: Event| {
            if let Some(select) = event.target_dyn_into::<HtmlSelectElement>() {
                let moved = Moved::from_word(&select.value());
                change(&known, |known| known.moved = moved);
            }
        })
    };
    html! {
        <label class="fault__row">{ words.text("fault-while") }
            <select class="field__input" onchange={choose} data-testid="fault-while">{ nothing }{ for options }</select></label>
    }
}
