//! The fields of a run: its wire first, then how each end is finished.

use super::field::Field;
use crate::state::Store;
use editor::Effects;
use model::edits::{EditError, RunSide, set_ending_property, set_wire_property};
use model::property::PropertySet;
use model::{Edit, Ending, Job, RunId, Wire};
use words::say;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(crate) struct RunFieldsProps {
    pub(crate) run: RunId,
    /// Counts the edits: the fields read the editor.
    pub(crate) revision: u32,
}

/// Makes an edit from a field, or gives back why not.
pub(crate) fn set(store: &Store, edit: impl FnOnce(&Job) -> Result<Edit, EditError>) -> Result<(), String> {
    let mut trouble = Ok(());
    store.desk.change(|editor| {
        let edit = edit(editor.job());
        editor.make(edit).unwrap_or_else(|error| {
            trouble = Err(editor.words().say(&error.0));
            Effects::default()
        })
    });
    trouble
}

#[function_component]
pub(crate) fn RunFields(props: &RunFieldsProps) -> Html {
    let more = use_state(|| false);
    let Some(store) = use_context::<Store>() else {
        return html! {};
    };
    let id = props.run;
    let found = store.desk.see(|editor| {
        // What follows from its way through the body stands in place of what was assumed.
        editor.laid_run(id).map(|run| (run, editor.on()))
    });
    let Some((run, on)) = found else { return html! {} };
    let words = store.words();
    let wire = |property: &'static model::property::Property| {
        let store = store.clone();
        let on_set = Callback::from(move |text: String| {
            set(&store, |job| set_wire_property(job, on, id, property.name, &text))
        });
        html! { <Field key={property.name} {property} written={run.wire.get(property.name).unwrap_or_default()} {on_set} /> }
    };
    let ending = |side: RunSide, ending: &Ending, end: &model::End| {
        let Some(property) = Ending::list().first() else {
            return html! {};
        };
        let store_for = store.clone();
        let on_set = Callback::from(move |text: String| {
            set(&store_for, |job| {
                set_ending_property(job, on, id, side, property.name, &text)
            })
        });
        let at = store.desk.see(|editor| {
            end.terminal()
                .map_or_else(|| words.text("slip-loose-end"), |at| editor.sheet().written(at))
        });
        html! { <Field {property} name={words.say(&say!("slip-at", at = at))} written={ending.get(property.name).unwrap_or_default()} {on_set} /> }
    };
    let toggle = {
        let more = more.clone();
        Callback::from(move |_: MouseEvent| more.set(!*more))
    };
    // Size, length and colour decide nearly everything.
    let list = Wire::list();
    let (first, rest) = list.split_at(list.len().min(3));
    html! {
        <>
            <div>{ for first.iter().map(wire) }</div>
            { ending(RunSide::From, &run.from_ending, &run.from) }
            { ending(RunSide::To, &run.to_ending, &run.to) }
            <div>if *more { { for rest.iter().map(wire) } }</div>
            <button type="button" class="slip__more" onclick={toggle} data-testid="more-fields">
                { words.text(if *more { "slip-fewer" } else { "slip-more-run" }) }
            </button>
        </>
    }
}
