//! Fields of the form: one sentence, paragraphs, lines. Each keeps what was typed as it was typed; the lesson gets it cleaned.

use web_sys::{HtmlInputElement, HtmlTextAreaElement};
use yew::prelude::*;

/// Longest text of a field, in characters.
const LONGEST: &str = "8000";

#[derive(Properties, PartialEq)]
pub(super) struct SentenceProps {
    pub(super) label: String,
    /// Whether the label is for those who do not see the field.
    #[prop_or_default]
    pub(super) unseen: bool,
    #[prop_or_default]
    pub(super) hint: Option<String>,
    #[prop_or_default]
    pub(super) id: Option<String>,
    pub(super) value: String,
    pub(super) testid: &'static str,
    /// Whether it has room for more than a line.
    #[prop_or_default]
    pub(super) long: bool,
    #[prop_or("2")]
    pub(super) rows: &'static str,
    pub(super) on_change: Callback<String>,
}

/// One sentence, or a few.
#[function_component]
pub(super) fn Sentence(props: &SentenceProps) -> Html {
    // What is kept has no blanks at its ends, and nobody can type a word behind a blank that is taken away at once.
    let typed = use_state(|| props.value.clone());
    let on_change = props.on_change.clone();
    let put = {
        let typed = typed.clone();
        move |text: String| {
            on_change.emit(text.split_whitespace().collect::<Vec<_>>().join(" "));
            typed.set(text);
        }
    };
    let class = "paper__input";
    let field = if props.long {
        let oninput = Callback::from(move |event: InputEvent| {
            if let Some(field) = event.target_dyn_into::<HtmlTextAreaElement>() {
                put(field.value());
            }
        });
        html! { <textarea {class} id={props.id.clone()} rows={props.rows} maxlength={LONGEST} placeholder={props.hint.clone()} value={(*typed).clone()} {oninput} data-testid={props.testid} /> }
    } else {
        let oninput = Callback::from(move |event: InputEvent| {
            if let Some(field) = event.target_dyn_into::<HtmlInputElement>() {
                put(field.value());
            }
        });
        html! { <input type="text" {class} id={props.id.clone()} maxlength="300" placeholder={props.hint.clone()} value={(*typed).clone()} {oninput} data-testid={props.testid} /> }
    };
    html! {
        <label class="paper__field"><span class={classes!(props.unseen.then_some("unseen"))}>{ &props.label }</span>{ field }</label>
    }
}

#[derive(Properties, PartialEq)]
pub(super) struct ManyProps {
    pub(super) label: String,
    pub(super) hint: String,
    pub(super) value: Vec<String>,
    pub(super) testid: &'static str,
    pub(super) on_change: Callback<Vec<String>>,
}

fn many(
    props: &ManyProps,
    typed: &UseStateHandle<String>,
    rows: &'static str,
    cut: fn(&str) -> Vec<String>,
) -> Html {
    let (typed_now, on_change) = (typed.clone(), props.on_change.clone());
    let oninput = Callback::from(move |event: InputEvent| {
        if let Some(field) = event.target_dyn_into::<HtmlTextAreaElement>() {
            on_change.emit(cut(&field.value()));
            typed_now.set(field.value());
        }
    });
    html! {
        <label class="paper__field"><span>{ &props.label }</span>
            <textarea class="paper__input" {rows} maxlength={LONGEST} placeholder={props.hint.clone()} value={(**typed).clone()} {oninput} data-testid={props.testid} /></label>
    }
}

/// Words of a text, one blank between two.
fn even(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Paragraphs, an empty line between two.
#[function_component]
pub(super) fn Prose(props: &ManyProps) -> Html {
    let typed = use_state(|| props.value.join("\n\n"));
    many(props, &typed, "5", |text| {
        let lines: Vec<&str> = text.lines().collect();
        let all = lines.split(|line| line.trim().is_empty());
        all.map(|lines| even(&lines.join(" ")))
            .filter(|it| !it.is_empty())
            .collect()
    })
}

/// Lines, each for itself.
#[function_component]
pub(super) fn Line(props: &ManyProps) -> Html {
    let typed = use_state(|| props.value.join("\n"));
    many(props, &typed, "2", |text| {
        text.lines().map(even).filter(|it| !it.is_empty()).collect()
    })
}
