//! One property as a field: its value with its unit, whether it is assumed, and what is wrong with what was typed.

use crate::reader::use_words;
use model::conductor::Size;
use model::property::{Property, PropertyType, Shape};
use web_sys::{HtmlInputElement, HtmlSelectElement};
use words::{Language, Lengths, Sizes, Unit, Words, drawn, figure};
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

/// How a value is known, as its written form tells.
#[derive(Clone, Copy, PartialEq)]
enum Known {
    Given,
    Assumed,
    /// It follows from the body; no job holds it, and what is typed takes its place.
    Computed,
    Unknown,
}

/// The written form without its mark, and what the mark says.
fn read(property: &Property, written: &str) -> (String, Known) {
    if written == "?" {
        return (String::new(), Known::Unknown);
    }
    if let Some(rest) = written.strip_prefix('~') {
        return (rest.to_owned(), Known::Assumed);
    }
    let inner = written.strip_prefix('(').and_then(|rest| rest.strip_suffix(')'));
    match (inner, property.shape) {
        (Some(inner), _) if !property.may_be_assumed => (inner.to_owned(), Known::Given),
        (Some(inner), Shape::Number { ascii, .. }) => {
            let number = inner
                .strip_suffix(ascii)
                .and_then(|bare| bare.parse::<f64>().ok());
            let text = number.map_or_else(
                || inner.to_owned(),
                |number| format!("{}{ascii}", (number * 100.0).round() / 100.0),
            );
            (text, Known::Computed)
        }
        (Some(inner), Shape::Count | Shape::Choice(_)) => (inner.to_owned(), Known::Computed),
        _ => (written.to_owned(), Known::Given),
    }
}

/// A number as the reader writes it: with the reader's sign before the tenths.
pub(crate) fn with_decimal(number: &str, words: &Words) -> String {
    match words.reader().language {
        Language::German => number.replace('.', ","),
        Language::English => number.to_owned(),
    }
}

/// A length in metres as a field shows it: the number, and the unit that a bare number is taken in.
pub(crate) fn length_shown(metres: f64, words: &Words) -> (String, String) {
    if words.reader().lengths == Lengths::Metres {
        return (with_decimal(&metres.to_string(), words), "m".to_owned());
    }
    // As on the drawing: a field and the label of the run never say two numbers.
    let written = words.figure(drawn(metres, Unit::Metre));
    let (number, unit) = written.rsplit_once(' ').unwrap_or((&written, ""));
    (number.to_owned(), unit.to_owned())
}

/// What a field shows of a value.
#[derive(Clone, PartialEq)]
struct Shown {
    /// What stands in the field.
    text: String,
    /// The unit behind it: one that a bare number is taken in.
    unit: String,
    /// The same in the series of sizes that the reader reads, where the value is of the other.
    beside: String,
}

/// A written value in the reader's units. What is not changed stays as it was typed: only what is typed anew is set.
fn shown(property: &Property, value: &str, words: &Words) -> Shown {
    let reader = words.reader();
    let plain = |text: String, unit: &str| Shown {
        text,
        unit: unit.to_owned(),
        beside: String::new(),
    };
    match property.shape {
        Shape::Number { symbol, ascii, .. } => {
            let bare = value.strip_suffix(ascii).unwrap_or(value);
            match (symbol, bare.parse::<f64>()) {
                ("m", Ok(metres)) if reader.lengths == Lengths::Feet => {
                    let (number, unit) = length_shown(metres, words);
                    plain(number, &unit)
                }
                ("m", Err(_)) if reader.lengths == Lengths::Feet => plain(bare.to_owned(), "ft"),
                ("mm²", Ok(area)) if reader.sizes == Sizes::Awg => Shown {
                    text: with_decimal(bare, words),
                    unit: symbol.to_owned(),
                    beside: words.figure(figure(area, Unit::SquareMillimetre)),
                },
                _ => plain(with_decimal(bare, words), symbol),
            }
        }
        Shape::Text { .. } if property.name == "size" => match Size::parse(value, None) {
            Ok(size) => {
                let metric = matches!(size, Size::Metric(_));
                let other = if metric {
                    Sizes::Awg
                } else {
                    Sizes::SquareMillimetres
                };
                let beside = if reader.sizes == other {
                    words.figure(figure(size.area().0, Unit::SquareMillimetre))
                } else {
                    String::new()
                };
                Shown {
                    text: drawing::size_as_marked(size, words),
                    unit: String::new(),
                    beside,
                }
            }
            Err(_) => plain(value.to_owned(), ""),
        },
        _ => plain(value.to_owned(), ""),
    }
}

/// What was typed, with the unit that the reader left out.
fn with_unit(property: &Property, typed: &str, shown: &Shown, words: &Words) -> String {
    let typed = typed.trim();
    let is_bare = |text: &str| {
        let number = text.replace(',', ".");
        number.parse::<f64>().is_ok() || matches!(text, "1/0" | "2/0" | "3/0" | "4/0")
    };
    let (mark, number) = match typed.strip_prefix('~') {
        Some(rest) => ("~", rest.trim()),
        None => ("", typed),
    };
    if !is_bare(number) {
        return typed.to_owned();
    }
    match property.shape {
        Shape::Number { symbol: "m", .. } if matches!(shown.unit.as_str(), "ft" | "in") => {
            format!("{mark}{number} {}", shown.unit)
        }
        Shape::Text { .. } if property.name == "size" && words.reader().sizes == Sizes::Awg => {
            format!("{mark}{number}AWG")
        }
        _ => typed.to_owned(),
    }
}

#[function_component]
pub(crate) fn Field(props: &FieldProps) -> Html {
    // What is wrong, and the text that is: it stays in the field until it is put right.
    let trouble = use_state(|| None::<(String, String)>);
    let words = use_words();
    let property = props.property;
    let (value, known) = read(property, &props.written);
    let value = value.as_str();
    let unknown = known == Known::Unknown;
    let seen = shown(property, value, &words);
    let drafted = |value: String| trouble.as_ref().map_or(value, |(_, typed)| typed.clone());
    let set = {
        let (on_set, trouble) = (props.on_set.clone(), trouble.clone());
        Callback::from(move |text: String| {
            trouble.set(on_set.emit(text.clone()).err().map(|why| (why, text)))
        })
    };
    let typed = {
        let (set, may_be_assumed) = (set.clone(), property.may_be_assumed);
        let (seen, words, trouble) = (seen.clone(), words.clone(), trouble.clone());
        Callback::from(move |event: Event| {
            if let Some(input) = event.target_dyn_into::<HtmlInputElement>() {
                let text = input.value();
                // Typed over and back again: it stays what it was, to the last digit.
                if text == seen.text && !unknown {
                    trouble.set(None);
                    return;
                }
                // Emptied: nobody knows.
                set.emit(if text.trim().is_empty() && may_be_assumed {
                    "?".to_owned()
                } else {
                    with_unit(property, &text, &seen, &words)
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
        .unwrap_or_else(|| words.say(&property.said()).into());
    let testid = format!("field-{}", property.name);
    let doc = words.say(&property.about());
    let not_known = words.text("nothing-known");
    let option = |word: &'static str, title: String, selected: bool| html! { <option value={word} {selected}>{ title }</option> };
    let (input, unit) = match property.shape {
        Shape::Number { .. } => (
            text_input(
                drafted(seen.text.clone()),
                // Units may be typed behind the number: a keyboard of digits alone would not do.
                if seen.unit == "m" || matches!(seen.unit.as_str(), "ft" | "in") {
                    "text"
                } else {
                    "decimal"
                },
                &testid,
                &typed,
                &keys,
                trouble.is_some(),
                not_known.clone(),
            ),
            seen.unit.clone(),
        ),
        Shape::Count => (
            text_input(
                drafted(value.to_owned()),
                "numeric",
                &testid,
                &typed,
                &keys,
                trouble.is_some(),
                not_known.clone(),
            ),
            String::new(),
        ),
        Shape::Text { example } => {
            let hint = if example.is_empty() { "—" } else { example };
            (
                text_input(
                    drafted(seen.text.clone()),
                    "text",
                    &testid,
                    &typed,
                    &keys,
                    trouble.is_some(),
                    hint.to_owned(),
                ),
                String::new(),
            )
        }
        Shape::YesNo => (
            html! {
                <select class="field__input" data-testid={testid.clone()} onchange={chosen}>
                    if property.may_be_assumed { { option("?", not_known.clone(), unknown) } }
                    { option("yes", words.text("yes"), value == "yes") }{ option("no", words.text("no"), value == "no") }
                </select>
            },
            String::new(),
        ),
        Shape::Choice(choices) => (
            html! {
                <select class="field__input" data-testid={testid.clone()} onchange={chosen}>
                    if property.may_be_assumed { { option("?", not_known, unknown) } }
                    { for choices.iter().map(|(word, title)| option(word, words.say(&model::said::choice(title)), *word == value)) }
                </select>
            },
            String::new(),
        ),
    };
    let toggle = property.may_be_assumed.then(|| {
        let assumed = known == Known::Assumed;
        let written = if assumed { value.to_owned() } else { format!("~{value}") };
        let onclick = set.reform(move |_: MouseEvent| written.clone());
        let (word, title) = match known {
            Known::Unknown => ("mark-unknown", "mark-unknown-what"),
            Known::Assumed => ("mark-assumed", "mark-assumed-what"),
            Known::Computed => ("mark-computed", "mark-computed-what"),
            Known::Given => ("mark-given", "mark-given-what"),
        };
        // Neither can be marked: nothing is known, or it is not the job's own.
        let fixed = matches!(known, Known::Unknown | Known::Computed);
        html! {
            <button type="button" class={classes!("field__mark", assumed.then_some("field__mark--assumed"))} disabled={fixed} {onclick} title={words.text(title)}
                data-testid={format!("{testid}-mark")}>{ words.text(word) }</button>
        }
    });
    html! {
        <div class={classes!("field", trouble.is_some().then_some("field--wrong"))}>
            <label title={doc}>
                <span class="field__name">{ name }</span>
                <span class="field__box">{ input }<span class="field__unit">{ unit }</span>
                    if !seen.beside.is_empty() { <span class="field__unit" data-testid={format!("{testid}-beside")}>{ &seen.beside }</span> }
                </span>
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
    placeholder: String,
) -> Html {
    html! {
        <input class="field__input" type="text" inputmode={mode} {value} {placeholder} autocomplete="off" spellcheck="false" aria-invalid={wrong.to_string()}
            data-testid={testid.to_owned()} onchange={onchange.clone()} onkeydown={onkeydown.clone()} />
    }
}
