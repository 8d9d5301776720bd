//! What to measure next, and the field for what the meter shows.

use super::{Known, change};
use crate::state::Store;
use assist::finding::{Reading, Verdict, read_shown, said_probe};
use circuit::Probe;
use model::Sheet;
use web_sys::HtmlInputElement;
use words::{Unit, precise, say};
use yew::prelude::*;

/// What to measure next, and the field for what the meter shows.
pub(super) fn next(store: &Store, known: &UseStateHandle<Known>, verdict: &Verdict, sheet: &Sheet) -> Html {
    let words = store.words();
    let Verdict::Open(proposal) = verdict else {
        return html! {};
    };
    let probe = proposal.probe.clone();
    let add = {
        let (known, probe, state) = (known.clone(), probe.clone(), proposal.state);
        Callback::from(move |(number, tolerance): (Option<f64>, Option<f64>)| {
            change(&known, |known| {
                known.readings.push(Reading {
                    probe: probe.clone(),
                    state,
                    number,
                    tolerance,
                });
                known.typed.clear();
            });
        })
    };
    let number = read_shown(&known.typed);
    let enter = {
        let add = add.clone();
        move || {
            if let Some((number, tolerance)) = number {
                add.emit((Some(number), tolerance));
            }
        }
    };
    let onsubmit = {
        let enter = enter.clone();
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            enter();
        })
    };
    let oninput = {
        let known = known.clone();
        Callback::from(move |event: InputEvent| {
            if let Some(field) = event.target_dyn_into::<HtmlInputElement>() {
                change(&known, |known| known.typed = field.value());
            }
        })
    };
    let show = {
        let (store, probe) = (store.clone(), probe.clone());
        Callback::from(move |_: MouseEvent| {
            store.desk.change(|editor| editor.put_leads(&probe));
        })
    };
    let open = matches!(probe, Probe::Ohms(..)).then(|| {
        let onclick = Callback::from(move |_: MouseEvent| add.emit((None, None)));
        html! { <button type="button" class="fault__act" {onclick} data-testid="fault-open">{ words.text("fault-skip-open") }</button> }
    });
    let effort = say!(
        "fault-effort",
        minutes = precise(proposal.minutes, Unit::Bare, 0),
        bits = precise(proposal.bits, Unit::Bare, 1),
    );
    html! {
        <form class="fault" {onsubmit}>
            <h3>{ words.text("fault-measure") }</h3>
            <p class="fault__at" data-testid="fault-next">{ words.say(&said_probe(sheet, &probe)) }</p>
            <div class="fault__row">
                <button type="button" class="fault__act" onclick={show} data-testid="fault-show">{ words.text("fault-show") }</button>
            </div>
            <div class="fault__row">
                <input class="field__input" inputmode="decimal" autocomplete="off" value={known.typed.clone()} {oninput} data-testid="fault-number" aria-label={words.say(&say!("fault-reads", unit = unit(&probe)))} placeholder={unit(&probe)} />
                <button type="submit" class="fault__act" data-testid="fault-enter">{ words.text("fault-enter") }</button>
                { open.unwrap_or_default() }
            </div>
            <p class="fault__effort">{ words.say(&effort) }</p>
        </form>
    }
}

fn unit(probe: &Probe) -> &'static str {
    match probe {
        Probe::Volts(..) | Probe::Tone(..) => "V",
        Probe::Ohms(..) => "Ω",
        Probe::Amps(_) => "A",
    }
}
