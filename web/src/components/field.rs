//! One property as a field: its value with its unit, whether it is assumed, and what is wrong with what was typed.

use model::property::{Property, Shape};
use web_sys::{HtmlInputElement, HtmlSelectElement};
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(crate) struct FieldProps {
    pub(crate) property: &'static Property,
    /// The written form.
    pub(crate) written: AttrValue,
    /// Sets the written form; gives back why not.
    pub(crate) on_set: Callback<String, Result<(), String>>,
    /// Name on screen where it is not the property's own.
    #[prop_or_default]
    pub(crate) name: Option<AttrValue>,
}

/// The written form without its mark, and whether it is assumed or unknown.
fn read(written: &str) -> (&str, bool, bool) {
    if written == "?" {
        return ("", false, true);
    }
    match written.strip_prefix('~') {
        Some(rest) => (rest, true, false),
        None => (written, false, false),
    }
}

#[function_component]
pub(crate) fn Field(props: &FieldProps) -> Html {
    // What is wrong, and the text that is: it stays in the field until it is put right.
    let trouble = use_state(|| None::<(String, String)>);
    let property = props.property;
    let (value, assumed, unknown) = read(&props.written);
    let drafted = |value: String| trouble.as_ref().map_or(value, |(_, typed)| typed.clone());
    let set = {
        let (on_set, trouble) = (props.on_set.clone(), trouble.clone());
        Callback::from(move |text: String| {
            trouble.set(on_set.emit(text.clone()).err().map(|why| (why, text)))
        })
    };
    let typed = {
        let (set, may_be_assumed) = (set.clone(), property.may_be_assumed);
        Callback::from(move |event: Event| {
            if let Some(input) = event.target_dyn_into::<HtmlInputElement>() {
                let text = input.value();
                // Emptied: nobody knows.
                set.emit(if text.trim().is_empty() && may_be_assumed {
                    "?".to_owned()
                } else {
                    text
                });
            }
        })
    };
    let chosen = {
        let set = set.clone();
        Callback::from(move |event: Event| {
            if let Some(select) = event.target_dyn_into::<HtmlSelectElement>() {
                set.emit(select.value());
            }
        })
    };
    let keys = Callback::from(|event: KeyboardEvent| {
        if matches!(event.key().as_str(), "Escape") {
            crate::browser::focus_board();
        }
    });
    let name = props
        .name
        .clone()
        .unwrap_or_else(|| AttrValue::from(property.name.replace('-', " ")));
    let testid = format!("field-{}", property.name);
    let doc = property.doc.trim();
    let option = |word: &'static str, title: &'static str, selected: bool| html! { <option value={word} {selected}>{ title }</option> };
    let (input, unit) = match property.shape {
        Shape::Number { symbol, ascii, .. } => {
            let bare = value.strip_suffix(ascii).unwrap_or(value).to_owned();
            (
                text_input(
                    drafted(bare),
                    "decimal",
                    &testid,
                    &typed,
                    &keys,
                    trouble.is_some(),
                    "not known",
                ),
                symbol,
            )
        }
        Shape::Count => (
            text_input(
                drafted(value.to_owned()),
                "numeric",
                &testid,
                &typed,
                &keys,
                trouble.is_some(),
                "not known",
            ),
            "",
        ),
        Shape::Text { example } => {
            let hint = if example.is_empty() { "—" } else { example };
            (
                text_input(
                    drafted(value.to_owned()),
                    "text",
                    &testid,
                    &typed,
                    &keys,
                    trouble.is_some(),
                    hint,
                ),
                "",
            )
        }
        Shape::YesNo => (
            html! {
                <select class="field__input" data-testid={testid.clone()} onchange={chosen}>
                    { option("yes", "yes", value == "yes") }{ option("no", "no", value == "no") }
                </select>
            },
            "",
        ),
        Shape::Choice(choices) => (
            html! {
                <select class="field__input" data-testid={testid.clone()} onchange={chosen}>
                    if property.may_be_assumed { { option("?", "not known", unknown) } }
                    { for choices.iter().map(|(word, title)| option(word, title, *word == value)) }
                </select>
            },
            "",
        ),
    };
    let toggle = property.may_be_assumed.then(|| {
        let written = if assumed { value.to_owned() } else { format!("~{value}") };
        let onclick = set.reform(move |_: MouseEvent| written.clone());
        let (word, title) = if unknown {
            ("unknown", "Nobody has said what this is")
        } else if assumed {
            ("assumed", "Taken for granted: click when you know that it is so")
        } else {
            ("given", "Known: click to mark it as assumed")
        };
        html! {
            <button type="button" class={classes!("field__mark", assumed.then_some("field__mark--assumed"))} disabled={unknown} {onclick} {title}
                data-testid={format!("{testid}-mark")}>{ word }</button>
        }
    });
    html! {
        <div class={classes!("field", trouble.is_some().then_some("field--wrong"))}>
            <label title={doc.to_owned()}>
                <span class="field__name">{ name }</span>
                <span class="field__box">{ input }<span class="field__unit">{ unit }</span></span>
            </label>
            { toggle.unwrap_or_default() }
            if let Some((trouble, _)) = &*trouble {
                <p class="field__trouble" role="alert" data-testid={format!("{testid}-trouble")}>{ trouble }</p>
            }
        </div>
    }
}

fn text_input(
    value: String,
    mode: &'static str,
    testid: &str,
    onchange: &Callback<Event>,
    onkeydown: &Callback<KeyboardEvent>,
    wrong: bool,
    placeholder: &'static str,
) -> Html {
    html! {
        <input class="field__input" type="text" inputmode={mode} {value} {placeholder} autocomplete="off" spellcheck="false" aria-invalid={wrong.to_string()}
            data-testid={testid.to_owned()} onchange={onchange.clone()} onkeydown={onkeydown.clone()} />
    }
}
