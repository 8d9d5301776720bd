//! The questions of the sizing drawer: sliders for what would be, the series, and what is to be least.

use super::Asked;
use crate::components::papers;
use crate::files;
use crate::state::{Act, Store};
use assist::sizing::{Series, WhatIf};
use model::job::Duty;
use paperwork::{List, PriceList, Work};
use web_sys::{HtmlInputElement, HtmlSelectElement};
use words::{Unit, Words, figure, say};
use yew::prelude::*;

/// The sliders, the series, and metal or cost.
pub(super) fn questions(
    store: &Store,
    asked: &UseStateHandle<Asked>,
    list: &PriceList,
    taken_in: &Callback<()>,
    words: &Words,
) -> Html {
    let slider = |name: &'static str,
                  min: &'static str,
                  max: &'static str,
                  step: &'static str,
                  value: f64,
                  shown: String,
                  set: fn(&mut WhatIf, f64)| {
        let asked = asked.clone();
        let oninput = Callback::from(move |event: InputEvent| {
            if let Some(input) = event.target_dyn_into::<HtmlInputElement>() {
                let mut next = *asked;
                set(&mut next.what_if, input.value_as_number());
                asked.set(next);
            }
        });
        html! {
            <label class="sizing__slider">
                <span>{ words.text(name) }</span>
                <input type="range" {min} {max} {step} value={value.to_string()} {oninput} aria-valuetext={shown.clone()} data-testid={name} />
                <output>{ shown }</output>
            </label>
        }
    };
    let it = asked.what_if;
    let percent = |factor: f64| words.figure(figure(factor, Unit::Percent));
    #[expect(clippy::cast_precision_loss, reason = "one of five")]
    let place = it.duty.map_or(Duty::ALL.len() as f64, |duty| {
        Duty::ALL.iter().position(|other| *other == duty).unwrap_or(0) as f64
    });
    let duty = it
        .duty
        .map_or_else(|| words.text("sizing-worst"), |duty| words.say(&duty.said()));
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a place on a slider of six"
    )]
    let set_duty: fn(&mut WhatIf, f64) =
        |it, value| it.duty = Duty::ALL.get(value.max(0.0) as usize).copied();
    let choose = {
        let asked = asked.clone();
        Callback::from(move |event: Event| {
            if let Some(select) = event.target_dyn_into::<HtmlSelectElement>() {
                let mut next = *asked;
                next.series = match &*select.value() {
                    "metric" => Some(Series::Metric),
                    "awg" => Some(Series::Gauge),
                    _ => None,
                };
                asked.set(next);
            }
        })
    };
    let aim = {
        let asked = asked.clone();
        Callback::from(move |event: Event| {
            if let Some(select) = event.target_dyn_into::<HtmlSelectElement>() {
                let by_cost = select.value() == "cost";
                asked.set(Asked { by_cost, ..*asked });
            }
        })
    };
    let back = {
        let asked = asked.clone();
        Callback::from(move |_: MouseEvent| asked.set(asked.as_it_is()))
    };
    let by_cost = asked.by_cost;
    let series = [
        ("", "sizing-series-own", None),
        ("metric", "sizing-series-metric", Some(Series::Metric)),
        ("awg", "sizing-series-awg", Some(Series::Gauge)),
    ];
    html! {
        <fieldset class="sizing__if">
            <legend>{ words.text("sizing-if") }</legend>
            { slider("sizing-duty", "0", "5", "1", place, duty, set_duty) }
            { slider("sizing-alternator", "0.5", "2", "0.1", it.alternator, percent(it.alternator), |it, value| it.alternator = value) }
            { slider("sizing-battery", "0.5", "2", "0.1", it.battery, percent(it.battery), |it, value| it.battery = value) }
            { slider("sizing-length", "0.5", "2", "0.1", it.length, percent(it.length), |it, value| it.length = value) }
            <label class="sizing__slider"><span>{ words.text("sizing-series") }</span>
                <select class="field__input" onchange={choose} data-testid="sizing-series">
                    { for series.map(|(value, name, is)| html! { <option {value} selected={asked.series == is}>{ words.text(name) }</option> }) }
                </select>
            </label>
            <label class="sizing__slider"><span>{ words.text("sizing-by") }</span>
                <select class="field__input" onchange={aim} data-testid="sizing-by">
                    <option value="metal" selected={!by_cost}>{ words.text("sizing-by-metal") }</option>
                    <option value="cost" selected={by_cost}>{ words.text("sizing-by-cost") }</option>
                </select>
            </label>
            if by_cost { { prices(store, list, taken_in, words) } }
            // Always there: where an element comes in beside it, a browser lets go of the slider that is being dragged.
            <button type="button" class="mend" onclick={back} disabled={asked.is_as_it_is()} data-testid="sizing-back">{ words.text("sizing-back") }</button>
        </fieldset>
    }
}

/// The price list that is kept: how much is on it, or that there is none, with the ways to get one.
fn prices(store: &Store, list: &PriceList, taken_in: &Callback<()>, words: &Words) -> Html {
    let out = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| {
            let words = store.words();
            let text = store.desk.see(|editor| {
                let work = Work::of(editor.job(), editor.on(), None)?;
                let table = paperwork::lists(&work, &papers::terms(&words), &[List::Prices]).pop()?;
                Some(paperwork::csv(&table, &words))
            });
            let name = files::file_name(&words.say(&List::Prices.title()), ".csv");
            if let Some(text) = text {
                store.dispatch(Act::Say(match files::export_text(&name, &text, "text/csv") {
                    Ok(()) => words.say(&say!("downloaded", name = name)),
                    Err(trouble) => words.say(&trouble.said()),
                }));
            }
        })
    };
    let count = list.by_article.len();
    html! {
        <div class="sizing__prices" data-testid="sizing-prices">
            <p>{ if count == 0 { words.text("sizing-no-list") } else { words.say(&say!("sizing-list", count = count)) } }</p>
            <button type="button" class="mend" onclick={out} data-testid="sizing-list-out">{ words.text("sizing-list-out") }</button>
            { papers::prices_in(store, taken_in.clone(), "sizing-list-in") }
        </div>
    }
}
