//! Beside the body plan: the form and size of the vehicle, and where each part is.

use super::field::Field;
use super::run_fields::set;
use super::title_block::make;
use super::told::ToldOf;
use crate::state::{Act, Panel, Store, escape_closes};
use editor::{Action, Thing};
use model::body::BodyShape;
use model::edits::set_body_property;
use model::property::PropertySet;
use model::{Edit, PartId};
use web_sys::HtmlSelectElement;
use words::say;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(crate) struct BodyPlanProps {
    /// Counts the edits: everything here reads the editor.
    pub(crate) revision: u32,
}

#[function_component]
pub(crate) fn BodyPlan(props: &BodyPlanProps) -> Html {
    let Some(store) = use_context::<Store>() else {
        return html! {};
    };
    let words = store.words();
    let close = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| {
            store.dispatch(Act::Toggle(Panel::Body));
            crate::browser::focus_board();
        })
    };
    let body = store.desk.see(|editor| editor.job().settings.body.clone());
    let shape = BodyShape::list().iter().map(|property| {
        let store = store.clone();
        let on_set = Callback::from(move |text: String| set(&store, |job| set_body_property(job, property.name, &text)));
        html! { <Field key={property.name} {property} written={body.shape.get(property.name).unwrap_or_default()} {on_set} /> }
    });
    let (places, parts, problems) = store.desk.see(|editor| {
        let words = editor.words();
        let places: Vec<(String, String)> = editor.plan_view().map_or_else(Vec::new, |view| {
            let all = view.plan.places.iter();
            all.map(|it| (it.name.clone(), words.say(&it.said()))).collect()
        });
        let parts: Vec<(PartId, String, String)> = editor
            .sheet()
            .parts
            .iter()
            .map(|(id, part)| {
                let name = format!("{} {}", part.tag, words.say(&part.said()));
                (*id, name, part.place.clone().unwrap_or_default())
            })
            .collect();
        let problems: Vec<String> = editor.plan_view().map_or_else(Vec::new, |view| {
            view.plan.problems.iter().map(|it| words.say(it)).collect()
        });
        (places, parts, problems)
    });
    let row = |(id, name, place): (PartId, String, String)| {
        let choose = {
            let store = store.clone();
            Callback::from(move |event: Event| {
                if let Some(select) = event.target_dyn_into::<HtmlSelectElement>() {
                    let place = select.value();
                    store.desk.change(|editor| {
                        let edit = editor.placed(id, &place);
                        editor.make(edit).unwrap_or_default()
                    });
                }
            })
        };
        let go = {
            let desk = store.desk.clone();
            Callback::from(move |_: MouseEvent| {
                desk.change(|editor| editor.go_to(&Thing::Part(id)));
            })
        };
        let label = words.say(&say!("body-place-of", part = &name));
        html! {
            <li class="thread__row" key={id.to_string()} data-testid="body-part">
                <button type="button" class="thread__link" onclick={go}>{ name }</button>
                <select class="field__input" onchange={choose} aria-label={label}>
                    <option value="" selected={place.is_empty()}>{ "—" }</option>
                    { for places.iter().map(|(written, said)| html! { <option value={written.clone()} selected={*written == place}>{ said.clone() }</option> }) }
                </select>
            </li>
        }
    };
    let (here, nowhere): (Vec<_>, Vec<_>) = parts.into_iter().partition(|(_, _, place)| !place.is_empty());
    let lay_all = {
        let desk = store.desk.clone();
        Callback::from(move |_: MouseEvent| desk.perform(Action::RouteAll))
    };
    let known = !places.is_empty();
    html! {
        <section onkeydown={escape_closes(&store)} class="drawer drawer--wide body-plan" data-testid="body-drawer" aria-label={words.text("body-plan")}>
            <header class="drawer__head"><b>{ words.text("body-plan") }</b><button type="button" class="slip__close" onclick={close}>{ words.text("key-esc") }</button></header>
            <div class="thread__body">
                { for shape }
                if !known { <p class="thread__about">{ words.text("body-no-form") }</p> }
                if !problems.is_empty() { <ul class="thread__open">{ for problems.into_iter().map(|it| html! { <li>{ it }</li> }) }</ul> }
                if known {
                    <button type="button" class="mend" onclick={lay_all} data-testid="route-all">{ words.text("body-lay-all") }</button>
                    <p class="thread__about">{ words.text("body-lay-all-how") }</p>
                    if !nowhere.is_empty() { <h3>{ words.text("body-nowhere") }</h3><ul>{ for nowhere.into_iter().map(row) }</ul> }
                    <h3>{ words.text("body-parts") }</h3>
                    <ul>{ for here.into_iter().map(row) }</ul>
                    <ToldOf revision={props.revision} />
                }
            </div>
        </section>
    }
}

/// The word that opens what stands beside the body plan.
pub(crate) fn body_plan_word(store: &Store) -> Html {
    let open = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| store.dispatch(Act::Toggle(Panel::Body)))
    };
    html! { <button type="button" class="mend body-plan__word" onclick={open} data-testid="open-body-drawer">{ store.words().text("body-plan-drawer") }</button> }
}

#[derive(Properties, PartialEq)]
pub(super) struct WaysProps {
    /// The run.
    pub(super) run: model::RunId,
}

/// The ways that a run can take through the body: each with its length and what speaks for and against it.
#[function_component]
pub(super) fn Ways(props: &WaysProps) -> Html {
    let run = props.run;
    let store = use_context::<Store>();
    // The search looks at all runs of the sheet: it is made after an edit, not whenever the slip is drawn again.
    let known = store
        .as_ref()
        .map(|store| (store.edits, store.desk.see(editor::Editor::on), store.words()));
    let offers = {
        let store = store.clone();
        use_memo((known, run), move |(_, run)| {
            store
                .map(|store| store.desk.see(|editor| editor.ways_of(*run)))
                .unwrap_or_default()
        })
    };
    let Some(store) = store else {
        return html! {};
    };
    let words = store.words();
    let on = store.desk.see(editor::Editor::on);
    if offers.is_empty() {
        return html! {};
    }
    let has_route = store.desk.see(|editor| {
        editor
            .sheet()
            .runs
            .get(&run)
            .is_some_and(|it| !it.route.is_empty())
    });
    let none = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| {
            make(&store, |job| -> Result<Edit, _> {
                model::edits::set_route(job, on, run, Vec::new())
            });
        })
    };
    html! {
        <details class="slip__beside" data-testid="ways">
            <summary class="slip__more">{ words.text("ways") }</summary>
            { for offers.iter().enumerate().map(|(number, offer)| {
                let desk = store.desk.clone();
                let route = offer.route.clone();
                let take = Callback::from(move |_: MouseEvent| {
                    desk.change(|editor| editor.lay_along(run, route.clone()).unwrap_or_default());
                });
                html! {
                    <div class="thread__line">
                        <b>{ words.say(&say!("ways-number", number = number + 1, length = &offer.length)) }</b>
                        <ul class="thread__open">{ for offer.reasons.iter().map(|it| html! { <li>{ it.clone() }</li> }) }</ul>
                        if offer.is_taken { <span>{ words.text("ways-taken") }</span> } else {
                            <button type="button" class="mend" onclick={take} data-testid={format!("take-way-{number}")}>{ words.text("ways-take") }</button>
                        }
                    </div>
                }
            }) }
            if has_route { <button type="button" class="slip__more" onclick={none} data-testid="no-way">{ words.text("ways-none") }</button> }
        </details>
    }
}
