//! Conditions and limits of the job: what the vehicle is doing, how warm it is, which profile of limits holds, and each
//! limit with its source. What was set otherwise in this job is marked and can be taken back.

use super::field::Field;
use super::run_fields::set;
use super::title_block::make;
use crate::state::{Act, Panel, Store};
use checks::{LimitInForce, limits_in_force};
use drawing::numbers::figures;
use model::edits::{leave_out, set_condition, set_limit};
use model::job::Conditions;
use model::property::PropertySet;
use web_sys::HtmlInputElement;
use yew::prelude::*;

pub(crate) fn limits(store: &Store) -> Html {
    let close = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| {
            store.dispatch(Act::Toggle(Panel::Limits));
            crate::browser::focus_board();
        })
    };
    let settings = store.desk.see(|editor| editor.job().settings.clone());
    let conditions = Conditions::list().iter().map(|property| {
        let store = store.clone();
        let on_set =
            Callback::from(move |text: String| set(&store, |job| set_condition(job, property.name, &text)));
        let written = settings.conditions.get(property.name).unwrap_or_default();
        html! { <Field key={property.name} {property} {written} {on_set} /> }
    });
    let limits = limits_in_force(&settings);
    let own = limits.iter().filter(|limit| limit.set.is_some()).count();
    let rows = limits.into_iter().map(|limit| {
        let key = limit.key;
        html! { <LimitRow {key} {limit} /> }
    });
    let left_out = settings.allowed.iter().cloned().map(|check| {
        let take_in = {
            let (store, check) = (store.clone(), check.clone());
            Callback::from(move |_: MouseEvent| make(&store, |job| leave_out(job, &check, false)))
        };
        html! {
            <li class="limits__left-out"><span>{ check }</span><button type="button" onclick={take_in}>{ "take in again" }</button></li>
        }
    });
    html! {
        <section class="drawer drawer--wide" data-testid="limits-drawer" aria-label="Conditions and limits">
            <header class="drawer__head"><b>{ "Conditions and limits" }</b><button type="button" class="slip__close" onclick={close}>{ "Esc" }</button></header>
            <div class="limits__fields">{ for conditions }</div>
            <h3>{ "Limits" }</h3>
            <p class="jobs__words">
                { "Shares are written as such: 0.03 is 3 %. The law of the place and the vehicle's maker come first. " }
                { if own == 0 { "All are the profile's.".to_owned() } else { format!("{own} set in this job.") } }
            </p>
            <ul class="limits__list">{ for rows }</ul>
            if !settings.allowed.is_empty() {
                <h3>{ "Checks left out of this job" }</h3>
                <ul class="limits__list" data-testid="left-out">{ for left_out }</ul>
            }
        </section>
    }
}

#[derive(Properties, PartialEq)]
struct LimitRowProps {
    limit: LimitInForce,
}

/// One limit: what it limits, its number, where that comes from.
#[function_component]
fn LimitRow(props: &LimitRowProps) -> Html {
    let trouble = use_state(|| None::<String>);
    let Some(store) = use_context::<Store>() else {
        return html! {};
    };
    let limit = &props.limit;
    let words = store.words();
    let (key, published) = (limit.key, limit.published);
    let put = {
        let (store, trouble) = (store.clone(), trouble.clone());
        Callback::from(move |number: Option<f64>| {
            trouble.set(set(&store, |job| set_limit(job, key, number)).err());
        })
    };
    let onchange = {
        let (put, trouble) = (put.clone(), trouble.clone());
        Callback::from(move |event: Event| {
            let Some(input) = event.target_dyn_into::<HtmlInputElement>() else {
                return;
            };
            let text = input.value().trim().replace(',', ".");
            match text.parse::<f64>() {
                _ if text.is_empty() => put.emit(None),
                // The profile's own figure is nothing of this job's.
                Ok(number) if number == published => put.emit(None),
                Ok(number) => put.emit(Some(number)),
                Err(_) => trouble.set(Some(format!("`{text}` is no number"))),
            }
        })
    };
    let back = put.reform(|_: MouseEvent| None);
    let now = limit.set.unwrap_or(published);
    let own = limit.set.is_some();
    html! {
        <li class={classes!("limit", own.then_some("limit--own"))}>
            <label>
                <span>{ words.say(&limit.title) }</span>
                <span class="field__box">
                    <input class="field__input" inputmode="decimal" value={now.to_string()} {onchange} aria-invalid={trouble.is_some().to_string()} data-testid={format!("limit-{key}")} />
                    <span class="field__unit">{ limit.unit }</span>
                </span>
            </label>
            if let Some(trouble) = &*trouble { <p class="field__trouble" role="alert">{ trouble }</p> }
            if own {
                <p class="limit__own" data-testid={format!("limit-{key}-own")}>
                    <b>{ "Set in this job." }</b>
                    <button type="button" onclick={back} data-testid={format!("limit-{key}-back")}>{ format!("Back to {} {}", figures(published), limit.unit) }</button>
                </p>
            }
            <p class="limit__source">{ if own { "Profile: " } else { "" } }{ words.say(&limit.source) }{ "; " }{ words.say(&limit.note) }</p>
        </li>
    }
}
