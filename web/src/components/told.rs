//! What is told of a place of the body or of a passage between two: what differs in this vehicle from what its form usually
//! has, and places and passages that only this vehicle has.

use super::field::Field;
use super::run_fields::set;
use super::title_block::make;
use crate::state::Store;
use editor::{Input, Key, Mods};
use model::Job;
use model::body::{OwnPassage, OwnPlace};
use model::edits::{EditError, Told, add_passage, add_place, remove_told, set_told_property};
use model::property::{Property, PropertySet};
use web_sys::HtmlSelectElement;
use words::{Words, say};
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct ToldOfProps {
    /// Counts the edits: everything here reads the editor.
    pub(super) revision: u32,
}

/// What is chosen, by its written name.
type Chosen = (Told, String);

fn word(of: Told) -> &'static str {
    match of {
        Told::Place => "place",
        Told::Passage => "passage",
    }
}

/// Written name and name on screen of every place and passage, own ones that the plan cannot have yet among them.
struct Known {
    places: Vec<(String, String)>,
    passages: Vec<(String, String)>,
}

impl Known {
    fn of(store: &Store) -> Self {
        store.desk.see(|editor| {
            let words = editor.words();
            let (mut places, mut passages) = (Vec::new(), Vec::new());
            if let Some(view) = editor.plan_view() {
                let plan = &view.plan;
                places.extend(
                    plan.places
                        .iter()
                        .map(|it| (it.name.clone(), words.say(&it.said()))),
                );
                passages.extend(
                    plan.passages
                        .iter()
                        .map(|it| (it.name.clone(), words.say(&plan.said_passage(it)))),
                );
            }
            let body = &editor.job().settings.body;
            for name in body.passages.keys() {
                if passages.iter().all(|(known, _)| known != name) {
                    passages.push((name.clone(), name.clone()));
                }
            }
            Self { places, passages }
        })
    }
}

/// What endangers a wire there, as the form and what is told have it.
fn dangers(store: &Store, (of, name): &Chosen) -> Option<String> {
    store.desk.see(|editor| {
        let plan = &editor.plan_view()?.plan;
        let facts = match of {
            Told::Place => &plan.places.iter().find(|it| it.name == *name)?.facts,
            Told::Passage => &plan.passages.iter().find(|it| it.name == *name)?.facts,
        };
        let words = editor.words();
        let all: Vec<String> = facts.hazards().iter().map(|it| words.say(&it.said())).collect();
        Some(if all.is_empty() {
            words.text("told-no-danger")
        } else {
            words.say(&say!("told-dangers", dangers = all.join("; ")))
        })
    })
}

/// A name that nothing told has yet.
fn free_name(job: &Job, of: Told) -> String {
    let body = &job.settings.body;
    let taken = |name: &String| match of {
        Told::Place => body.places.contains_key(name),
        Told::Passage => body.passages.contains_key(name),
    };
    let mut names = (1..).map(|number| format!("own-{}-{number}", word(of)));
    names.find(|name| !taken(name)).unwrap_or_default()
}

#[function_component]
pub(super) fn ToldOf(_: &ToldOfProps) -> Html {
    let chosen = use_state(|| None::<Chosen>);
    let Some(store) = use_context::<Store>() else {
        return html! {};
    };
    let words = store.words();
    let known = Known::of(&store);
    // What is taken in hand on the plan is what is told of here, and the other way round.
    let held = store.desk.see(|editor| editor.held_place().map(str::to_owned));
    {
        let chosen = chosen.clone();
        use_effect_with(held.clone(), move |held| {
            if let Some(name) = held {
                chosen.set(Some((Told::Place, name.clone())));
            }
        });
    }
    let choose = {
        let (chosen, desk) = (chosen.clone(), store.desk.clone());
        Callback::from(move |event: Event| {
            let Some(select) = event.target_dyn_into::<HtmlSelectElement>() else {
                return;
            };
            let value = select.value();
            let found = [Told::Place, Told::Passage]
                .into_iter()
                .find_map(|of| Some((of, value.strip_prefix(word(of))?.strip_prefix(' ')?.to_owned())));
            let place = match &found {
                Some((Told::Place, name)) => Some(name.clone()),
                _ => None,
            };
            desk.change(|editor| editor.take_place(place));
            chosen.set(found);
        })
    };
    let add = |of: Told| {
        let (store, chosen) = (store.clone(), chosen.clone());
        Callback::from(move |_: MouseEvent| {
            let name = store.desk.see(|editor| free_name(editor.job(), of));
            let label = store.words().text(match of {
                Told::Place => "told-new-place",
                Told::Passage => "told-new-passage",
            });
            let added = set(&store, |job| match of {
                Told::Place => add_place(
                    job,
                    &name,
                    OwnPlace {
                        label,
                        ..OwnPlace::default()
                    },
                ),
                Told::Passage => add_passage(
                    job,
                    &name,
                    OwnPassage {
                        label,
                        ..OwnPassage::default()
                    },
                ),
            });
            if added.is_ok() {
                if of == Told::Place {
                    let place = Some(name.clone());
                    store.desk.change(|editor| editor.take_place(place));
                }
                chosen.set(Some((of, name)));
            }
        })
    };
    let options = |of: Told, all: &[(String, String)]| -> Html {
        all.iter()
            .map(|(written, said)| {
                let on = chosen.as_ref().is_some_and(|it| it.0 == of && it.1 == *written);
                html! { <option value={format!("{} {written}", word(of))} selected={on}>{ said.clone() }</option> }
            })
            .collect()
    };
    let (is_own, fields) = chosen.as_ref().map_or_else(
        || (false, html! {}),
        |chosen| told_fields(&store, chosen, &known.places),
    );
    let take_back = {
        let (store, chosen) = (store.clone(), chosen.clone());
        Callback::from(move |_: MouseEvent| {
            if let Some((of, name)) = (*chosen).clone() {
                make(&store, |job| -> Result<_, EditError> {
                    remove_told(job, of, &name)
                });
            }
        })
    };
    html! {
        <>
            <h3>{ words.text("body-places") }</h3>
            <p class="thread__about">{ words.text("body-places-how") }</p>
            <select class="field__input" onchange={choose} aria-label={words.text("body-places")} data-testid="told-place">
                <option value="" selected={chosen.is_none()}>{ "—" }</option>
                <optgroup label={words.text("told-places")}>{ options(Told::Place, &known.places) }</optgroup>
                <optgroup label={words.text("told-passages")}>{ options(Told::Passage, &known.passages) }</optgroup>
            </select>
            if let Some(chosen) = chosen.as_ref() {
                if let Some(dangers) = dangers(&store, chosen) { <p class="thread__about" data-testid="told-dangers">{ dangers }</p> }
                if held.as_deref() == Some(chosen.1.as_str()) && chosen.0 == Told::Place { { steps(&store) } }
                <div data-testid="told">{ fields }</div>
                if is_own { <button type="button" class="slip__more" onclick={take_back} data-testid="told-take-back">{ words.text("told-take-back") }</button> }
            }
            <p>
                <button type="button" class="mend" onclick={add(Told::Place)} data-testid="add-place">{ words.text("told-add-place") }</button>
                { " " }
                <button type="button" class="mend" onclick={add(Told::Passage)} data-testid="add-passage">{ words.text("told-add-passage") }</button>
            </p>
        </>
    }
}

/// Buttons that move the place in hand by a step, for who has neither a pointer that drags nor arrow keys.
fn steps(store: &Store) -> Html {
    let words = store.words();
    let one = |key: Key, sign: &'static str, label: &str| {
        let desk = store.desk.clone();
        let onclick = Callback::from(move |_: MouseEvent| {
            desk.input(Input::Key(key, Mods::default()));
        });
        html! { <button type="button" class="mend" {onclick} aria-label={words.text(label)} data-testid={format!("move-place-{sign}")}>{ sign }</button> }
    };
    html! {
        <p class="drawer__row" role="group" aria-label={words.text("told-move")} data-testid="move-place">
            <span class="thread__about">{ words.say(&say!("told-move-how", step = words::drawn(0.05, words::Unit::Metre))) }</span>{ " " }
            { one(Key::Left, "←", "told-move-front") }{ " " }{ one(Key::Right, "→", "told-move-rear") }{ " " }
            { one(Key::Up, "↑", "told-move-right") }{ " " }{ one(Key::Down, "↓", "told-move-left") }
        </p>
    }
}

/// The fields of what is chosen, and whether anything is told of it.
fn told_fields(store: &Store, (of, name): &Chosen, places: &[(String, String)]) -> (bool, Html) {
    let body = store.desk.see(|editor| editor.job().settings.body.clone());
    let (place, passage) = (body.places.get(name), body.passages.get(name));
    let is_told = match of {
        Told::Place => place.is_some(),
        Told::Passage => passage.is_some(),
    };
    let (place, passage) = (
        place.cloned().unwrap_or_default(),
        passage.cloned().unwrap_or_default(),
    );
    let told: &dyn PropertySet = match of {
        Told::Place => &place,
        Told::Passage => &passage,
    };
    let words = store.words();
    let fields = told.properties().iter().map(|property| {
        let (store, of, name) = (store.clone(), *of, name.clone());
        let on_set = Callback::from(move |text: String| {
            set(&store, |job| {
                set_told_property(job, of, &name, property.name, &text)
            })
        });
        let now = told.get(property.name).unwrap_or_default();
        if of == Told::Passage && matches!(property.name, "from" | "to") {
            return end(property, &now, places, &words, on_set);
        }
        html! { <Field key={property.name} {property} written={now} {on_set} /> }
    });
    (is_told, fields.collect())
}

/// An end of a passage: one of the places.
fn end(
    property: &'static Property,
    now: &str,
    places: &[(String, String)],
    words: &Words,
    on_set: Callback<String, Result<(), String>>,
) -> Html {
    let title = words.say(&property.said());
    let onchange = Callback::from(move |event: Event| {
        if let Some(select) = event.target_dyn_into::<HtmlSelectElement>() {
            // A name that is chosen from the list fits.
            let _ = on_set.emit(select.value());
        }
    });
    html! {
        <label class="field" key={property.name}>
            <span class="field__name">{ title }</span>
            <select class="field__input" {onchange} data-testid={format!("told-{}", property.name)}>
                <option value="" selected={now.is_empty()}>{ "—" }</option>
                { for places.iter().map(|(written, said)| html! { <option value={written.clone()} selected={now == written.as_str()}>{ said.clone() }</option> }) }
            </select>
        </label>
    }
}
