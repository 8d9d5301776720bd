//! What a mend would do, worked out once its finding is open: what it clears, what it would bring, what is left to choose.

use crate::state::Store;
use assist::mending::{Preview, preview};
use gloo_timers::callback::Timeout;
use words::say;
use yew::prelude::*;

/// Parts on a sheet up to which it is worked out unasked: it is one analysis for each mend.
const AT_ONCE: usize = 400;

#[derive(Properties, PartialEq)]
pub(crate) struct MendDoesProps {
    /// The finding and its mend, by their places.
    pub(crate) place: usize,
    pub(crate) number: usize,
    /// Counts the edits: after one it is another mend.
    pub(crate) edits: u32,
}

#[function_component]
pub(crate) fn MendDoes(props: &MendDoesProps) -> Html {
    let asked = use_state(|| false);
    // With what it was worked out for.
    let does = use_state(|| None::<((usize, usize, u32), Preview)>);
    let store = use_context::<Store>();
    let of = (props.place, props.number, props.edits);
    let is_large = store
        .as_ref()
        .is_some_and(|store| store.desk.see(|editor| editor.sheet().parts.len()) > AT_ONCE);
    {
        let (does, desk) = (does.clone(), store.as_ref().map(|store| store.desk.clone()));
        let wanted = !is_large || *asked;
        use_effect_with((of, wanted), move |((place, number, _), _)| {
            let (place, number) = (*place, *number);
            // The slip is painted first.
            let later = Timeout::new(0, move || {
                let found = desk.filter(|_| wanted).and_then(|desk| {
                    desk.see(|editor| {
                        let findings = &editor.analysis().findings;
                        let mend = findings.get(place)?.mends.get(number)?;
                        Some(preview(editor.job(), editor.on(), findings, &mend.edit))
                    })
                });
                if let Some(found) = found {
                    does.set(Some((of, found)));
                }
            });
            move || drop(later)
        });
    }
    let Some(store) = store else { return html! {} };
    let words = store.words();
    let choice = store.desk.see(|editor| {
        let finding = editor.analysis().findings.get(props.place)?;
        finding.mends.get(props.number)?.choice.clone()
    });
    let said = does
        .as_ref()
        .filter(|(known, _)| *known == of)
        .map(|(_, does)| does.said());
    let ask = Callback::from(move |_: MouseEvent| asked.set(true));
    html! {
        <p class="mending__does" id={format!("mend-does-{}", props.number)} data-testid="mend-does" data-known={said.is_some().to_string()}>
            if let Some(choice) = choice { <span class="mending__choice">{ words.say(&say!("mending-choice", choice = choice)) }</span> }
            if let Some(said) = &said { { for said.iter().map(|said| html! { <span>{ words.say(said) }</span> }) } }
            else if is_large { <button type="button" onclick={ask} data-testid="mend-look">{ words.text("mend-look") }</button> }
        </p>
    }
}
