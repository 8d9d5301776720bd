//! The meter's face: what is measured, where the leads are, and the reading.

use crate::state::Store;
use editor::{Action, Tool, meter::Mode};
use yew::prelude::*;

pub(crate) fn meter_face(store: &Store) -> Html {
    let seen = store.desk.see(|editor| match editor.tool() {
        Tool::Meter(meter) => Some((meter.clone(), editor.reading())),
        _ => None,
    });
    let Some((meter, reading)) = seen else {
        return html! {};
    };
    let words = store.words();
    let modes = [
        (Mode::Volts, Action::MeterVolts, "V"),
        (Mode::Amps, Action::MeterAmps, "A"),
        (Mode::Tone, Action::MeterTone, "V~"),
        (Mode::Ohms, Action::MeterOhms, "Ω"),
    ];
    let shown = reading
        .as_ref()
        .map_or("— — —".to_owned(), |reading| reading.shown.clone());
    let lead = |black: bool, word: &'static str, key: &'static str| {
        let desk = store.desk.clone();
        let onclick = Callback::from(move |_: MouseEvent| {
            desk.change(|editor| editor.black_next(black));
        });
        let on = meter.black_next == black;
        html! { <button type="button" {onclick} aria-pressed={on.to_string()} class={classes!(on.then_some("meter__lead--on"))} data-testid={format!("lead-{word}")}>{ words.text(key) }</button> }
    };
    let away = {
        let desk = store.desk.clone();
        Callback::from(move |_: MouseEvent| desk.perform(Action::Pick))
    };
    let keep = {
        let desk = store.desk.clone();
        Callback::from(move |_: MouseEvent| desk.perform(Action::KeepReading))
    };
    html! {
        <section class="meter" aria-label={words.text("meter")} data-testid="meter-face">
            <output class="meter__reading" data-testid="reading">{ shown }</output>
            <p class="meter__between">{ reading.as_ref().map_or_else(|| words.say(&meter.hint()), |reading| reading.between.clone()) }</p>
            if let Some(remark) = reading.as_ref().map(|reading| reading.remark.clone()).filter(|remark| !remark.is_empty()) {
                <p class="meter__between">{ remark }</p>
            }
            <div class="meter__row" role="group" aria-label={words.text("meter-what")}>
                { for modes.map(|(mode, action, word)| {
                    let desk = store.desk.clone();
                    let onclick = Callback::from(move |_: MouseEvent| desk.perform(action));
                    let on = meter.mode == mode;
                    html! { <button type="button" {onclick} aria-pressed={on.to_string()} title={words.say(&action.said())} data-testid={action.id()}>{ word }</button> }
                }) }
                if meter.mode != Mode::Amps { <span class="meter__leads">{ words.text("meter-next") }{ " " }{ lead(false, "red", "meter-red") }{ lead(true, "black", "meter-black") }</span> }
                <button type="button" onclick={keep} disabled={reading.is_none()} data-testid="keep-reading" title={words.say(&Action::KeepReading.said())}>
                    { words.text("meter-keep") }<kbd>{ Action::KeepReading.key() }</kbd>
                </button>
                <button type="button" onclick={away} data-testid="meter-away">{ words.text("meter-away") }</button>
            </div>
        </section>
    }
}
