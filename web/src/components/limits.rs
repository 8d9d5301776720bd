//! Conditions and limits of the job: what the vehicle is doing, how warm it is, which profile of limits holds, and each
//! limit with its source. What was set otherwise in this job is marked and can be taken back.

use super::field::{Field, length_shown, with_decimal};
use super::run_fields::set;
use super::title_block::make;
use crate::state::{Act, Panel, Store};
use checks::{LimitInForce, limits_in_force};
use model::edits::{leave_out, set_condition, set_limit};
use model::job::Conditions;
use model::property::{PropertySet, parse_number};
use web_sys::HtmlInputElement;
use words::{Unit, drawn, say};
use yew::prelude::*;

pub(crate) fn limits(store: &Store) -> Html {
    let close = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| {
            store.dispatch(Act::Toggle(Panel::Limits));
            crate::browser::focus_board();
        })
    };
    let words = store.words();
    let take_in_again = words.text("limits-take-in");
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
    let left_out = settings.allowed.iter().map(|check| {
        // A check of another version of the program has no title here.
        let title = checks::check_named(check).map_or_else(|| check.clone(), |known| words.say(&known.title()));
        let take_in = {
            let (store, check) = (store.clone(), check.clone());
            Callback::from(move |_: MouseEvent| make(&store, |job| leave_out(job, &check, false)))
        };
        html! {
            <li class="limits__left-out"><span>{ title }</span><button type="button" onclick={take_in}>{ take_in_again.clone() }</button></li>
        }
    });
    html! {
        <section class="drawer drawer--wide" data-testid="limits-drawer" aria-label={words.text("limits")}>
            <header class="drawer__head"><b>{ words.text("limits") }</b><button type="button" class="slip__close" onclick={close}>{ words.text("key-esc") }</button></header>
            <div class="limits__fields">{ for conditions }</div>
            <h3>{ words.text("title-limits") }</h3>
            <p class="jobs__words">
                { words.text("limits-shares") }{ " " }
                { if own == 0 { words.text("limits-profile") } else { words.say(&say!("limits-own", count = own)) } }
            </p>
            <ul class="limits__list">{ for rows }</ul>
            if !settings.allowed.is_empty() {
                <h3>{ words.text("limits-left-out") }</h3>
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
    let now = limit.set.unwrap_or(published);
    let (shown, unit) = if limit.unit == "m" {
        length_shown(now, &words)
    } else {
        (with_decimal(&now.to_string(), &words), limit.unit.to_owned())
    };
    let onchange = {
        let (put, trouble, words) = (put.clone(), trouble.clone(), words.clone());
        let (shown, unit, is_length) = (shown.clone(), unit.clone(), limit.unit == "m");
        Callback::from(move |event: Event| {
            let Some(input) = event.target_dyn_into::<HtmlInputElement>() else {
                return;
            };
            let text = input.value().trim().replace(',', ".");
            let bare = text.parse::<f64>();
            let number = match bare {
                // Lengths are taken as their reader writes them: bare in the unit behind the field, or with a unit typed.
                Ok(_) if is_length => parse_number(&format!("{text} {unit}"), "m", "m").ok(),
                Err(_) if is_length => parse_number(&text, "m", "m").ok(),
                bare => bare.ok(),
            };
            match number {
                _ if text.is_empty() => put.emit(None),
                // Typed over and back again: it stays what it was, to the last digit.
                _ if text == shown.replace(',', ".") => trouble.set(None),
                // The profile's own figure is nothing of this job's.
                Some(number) if number == published => put.emit(None),
                Some(number) => put.emit(Some(number)),
                None => trouble.set(Some(words.say(&say!("limit-no-number", text = text)))),
            }
        })
    };
    let back = put.reform(|_: MouseEvent| None);
    let own = limit.set.is_some();
    html! {
        <li class={classes!("limit", own.then_some("limit--own"))}>
            <label>
                <span>{ words.say(&limit.title) }</span>
                <span class="field__box">
                    <input class="field__input" inputmode={if limit.unit == "m" { "text" } else { "decimal" }} value={shown} {onchange} aria-invalid={trouble.is_some().to_string()} data-testid={format!("limit-{key}")} />
                    <span class="field__unit">{ unit }</span>
                </span>
            </label>
            if let Some(trouble) = &*trouble { <p class="field__trouble" role="alert">{ trouble }</p> }
            if own {
                <p class="limit__own" data-testid={format!("limit-{key}-own")}>
                    <b>{ words.text("limit-own") }</b>
                    <button type="button" onclick={back} data-testid={format!("limit-{key}-back")}>{ words.say(&say!("limit-back", number = drawn(published, Unit::of(limit.unit)))) }</button>
                </p>
            }
            <p class="limit__source">{ if own { words.text("limit-profile") + " " } else { String::new() } }{ words.say(&limit.source) }{ "; " }{ words.say(&limit.note) }</p>
        </li>
    }
}
