//! The handover: for whom, what of the private things stands in it, and the file itself.

use crate::files;
use crate::state::{Act, Store};
use paperwork::{Asked, Readers, handover};
use sharing::Showing;
use web_sys::{HtmlInputElement, HtmlSelectElement};
use words::{Saying, say};
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct HandoverProps {
    /// Counts the edits: the job is read from the editor.
    pub(super) revision: u32,
}

#[function_component]
pub(super) fn Handover(_: &HandoverProps) -> Html {
    let asked = use_state(|| (Showing::default(), 0_usize));
    let Some(store) = use_context::<Store>() else {
        return html! {};
    };
    let words = store.words();
    let (showing, reader) = *asked;
    let choose = {
        let asked = asked.clone();
        Callback::from(move |event: Event| {
            if let Some(select) = event.target_dyn_into::<HtmlSelectElement>() {
                let at = Readers::WORDS.iter().position(|word| *word == select.value());
                asked.set((showing, at.unwrap_or_default()));
            }
        })
    };
    let tick = |word: &'static str, on: bool, with: fn(Showing, bool) -> Showing| {
        let asked = asked.clone();
        let onchange = Callback::from(move |event: Event| {
            if let Some(input) = event.target_dyn_into::<HtmlInputElement>() {
                asked.set((with(showing, input.checked()), reader));
            }
        });
        let label = words.say(&say!("share-show", what = Saying::new(word)));
        html! { <label class="papers__step"><input type="checkbox" checked={on} {onchange} data-testid={format!("handover-{word}")} /><span>{ label }</span></label> }
    };
    let make = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| {
            let said = made(&store, showing, reader);
            store.dispatch(Act::Say(said));
        })
    };
    html! {
        <>
            <p class="papers__work">{ words.text("hand-out-what") }</p>
            <label class="papers__terms">{ words.text("hand-out-for") }
                <select class="field__input" onchange={choose} data-testid="handover-for">
                    { for Readers::WORDS.iter().enumerate().map(|(at, word)| html! { <option value={*word} selected={at == reader}>{ words.text(&format!("hand-out-for-{word}")) }</option> }) }
                </select>
            </label>
            { tick("share-names", showing.names, |showing, names| Showing { names, ..showing }) }
            { tick("share-notes", showing.notes, |showing, notes| Showing { notes, ..showing }) }
            { tick("share-prices", showing.prices, |showing, prices| Showing { prices, ..showing }) }
            { tick("hand-out-pictures", showing.pictures, |showing, pictures| Showing { pictures, ..showing }) }
            <button type="button" class="mend" onclick={make} data-testid="handover-make">{ words.text("hand-out-make") }</button>
            <p class="papers__note">{ words.text("hand-out-how") }</p>
        </>
    }
}

/// Hands the document out; gives back words for the user.
fn made(store: &Store, showing: Showing, reader: usize) -> String {
    let words = store.words();
    let readers = Readers::WORDS
        .get(reader)
        .and_then(|word| Readers::from_word(word))
        .unwrap_or_default();
    let made = store.desk.see(|editor| {
        let asked = Asked {
            kind: Some(editor.on()),
            showing,
            readers,
        };
        handover(editor.job(), asked, &words).map(|(page, _)| (page, editor.job().title.clone()))
    });
    let Some((page, title)) = made else {
        return words.text("papers-nothing");
    };
    let name = files::file_name(&format!("{title} {}", words.text("hand-out-file")), ".html");
    match files::export_text(&name, &page, "text/html") {
        Ok(()) => words.say(&say!("downloaded", name = name)),
        Err(trouble) => words.say(&trouble.said()),
    }
}
