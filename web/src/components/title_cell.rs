//! One cell of the title block: shows its text, becomes a field when clicked.

use crate::reader::use_words;
use web_sys::HtmlInputElement;
use words::say;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(crate) struct TitleCellProps {
    /// What the cell holds, in small letters.
    pub(crate) name: AttrValue,
    /// Its text.
    pub(crate) text: AttrValue,
    /// Called with a new text.
    pub(crate) on_set: Callback<String>,
    /// For tests.
    pub(crate) testid: AttrValue,
    #[prop_or_default]
    pub(crate) wide: bool,
}

#[function_component]
pub(crate) fn TitleCell(props: &TitleCellProps) -> Html {
    let words = use_words();
    let editing = use_state(|| false);
    let input = use_node_ref();
    {
        let input = input.clone();
        use_effect_with(*editing, move |editing| {
            if *editing && let Some(input) = input.cast::<HtmlInputElement>() {
                let _ = input.focus();
                input.select();
            }
        });
    }
    let begin = {
        let editing = editing.clone();
        Callback::from(move |_: MouseEvent| editing.set(true))
    };
    let done = {
        let (editing, input, on_set, before) = (
            editing.clone(),
            input.clone(),
            props.on_set.clone(),
            props.text.clone(),
        );
        Callback::from(move |keep: bool| {
            if let Some(field) = input.cast::<HtmlInputElement>().filter(|_| keep) {
                let text = field.value();
                if text != before.as_str() {
                    on_set.emit(text);
                }
            }
            editing.set(false);
        })
    };
    let onkeydown = {
        let done = done.clone();
        Callback::from(move |event: KeyboardEvent| match event.key().as_str() {
            "Enter" => {
                done.emit(true);
                crate::browser::focus_board();
            }
            "Escape" => {
                done.emit(false);
                crate::browser::focus_board();
            }
            _ => {}
        })
    };
    let class = classes!("cell", props.wide.then_some("cell--wide"));
    html! {
        <div {class}>
            <span class="cell__name">{ &props.name }</span>
            if *editing {
                <input ref={input} class="cell__field" value={props.text.clone()} maxlength="400" aria-label={props.name.clone()}
                    data-testid={format!("{}-field", props.testid)} {onkeydown} onblur={done.reform(|_: FocusEvent| true)} />
            } else {
                <button type="button" class="cell__text" onclick={begin} data-testid={props.testid.clone()}
                    aria-label={words.say(&say!("cell-edit", name = props.name.as_str(), text = props.text.as_str()))}>
                    { if props.text.is_empty() { "—" } else { &props.text } }
                </button>
            }
        </div>
    }
}
