//! The slip of paper beside what is picked: its name, its numbers, and the few fields that matter first.

use super::body_plan::Ways;
use super::field::Field;
use super::mark::mark;
use super::pictures::pictures;
use super::run_fields::{RunFields, set};
use super::tunings::tunings;
use super::under_legend::fate_of;
use crate::canvas::notes_width;
use crate::state::{Act, Store};
use editor::words::line_name;
use editor::{Action, Thing};
use model::conductor::FittedBy;
use model::edits::{
    Words, change_part, change_run, rename_part, rename_run, set_part_words, set_property, set_run_words,
    set_wire_property,
};
use model::handling::Handling;
use model::laying::Laying;
use model::mounting::Mounting;
use model::picture::PictureOf;
use model::property::{PropertySet, PropertyType};
use web_sys::{HtmlInputElement, HtmlSelectElement};
use words::{Saying, say};
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(crate) struct SlipProps {
    pub(crate) thing: Thing,
    /// Whether the tag's field is to take the focus.
    pub(crate) rename: bool,
    pub(crate) revision: u32,
}

/// How wide the slip is, in pixels.
const WIDTH_PX: f64 = 306.0;
/// How many fields are shown before one asks for more.
const FIRST: usize = 5;

/// Where the slip stands: right of the thing where there is room, else left of it.
pub(super) fn stand(store: &Store, thing: &Thing) -> String {
    store.desk.see(|editor| {
        let camera = editor.camera();
        let right_edge = camera.width - notes_width(camera.width) - 10.0;
        let area = editor.area_of(thing).unwrap_or_default();
        let low = camera.to_screen(area.origin());
        let high = camera.to_screen(kurbo::Point::new(area.x1, area.y1));
        let x = if high.x + 18.0 + WIDTH_PX < right_edge {
            high.x + 18.0
        } else if low.x - 18.0 - WIDTH_PX > 30.0 {
            low.x - 18.0 - WIDTH_PX
        } else {
            right_edge - WIDTH_PX
        };
        let y = (low.y - 10.0).clamp(34.0, (camera.height - 540.0).max(34.0));
        // Its foot stays above the tools; a long slip is wound.
        let room = (camera.height - y - camera.margins.bottom - 8.0).max(200.0);
        format!(
            "left:{:.0}px;top:{y:.0}px;width:{WIDTH_PX}px;max-height:{room:.0}px",
            x.max(30.0)
        )
    })
}

#[function_component]
pub(crate) fn Slip(props: &SlipProps) -> Html {
    let more = use_state(|| false);
    let tag_field = use_node_ref();
    let trouble = use_state(|| None::<String>);
    {
        let (field, rename) = (tag_field.clone(), props.rename);
        use_effect_with((props.thing.clone(), rename), move |(_, rename)| {
            if *rename && let Some(field) = field.cast::<HtmlInputElement>() {
                let _ = field.focus();
                field.select();
            }
        });
    }
    let Some(store) = use_context::<Store>() else {
        return html! {};
    };
    let said = store.words();
    let on = store.desk.see(editor::Editor::on);
    let written = |property: FittedBy| property.print();
    // A terminal's slip is its part's.
    let thing = match &props.thing {
        Thing::Terminal(at) => Thing::Part(at.part),
        other => other.clone(),
    };
    let seen = store.desk.see(|editor| match &thing {
        Thing::Part(id) => editor.sheet().parts.get(id).map(|part| {
            (
                part.tag.clone(),
                part.label.clone(),
                editor.words().say(&part.is.said()),
                part.note.clone(),
                part.fitted_by,
                editor.part_numbers(*id),
            )
        }),
        Thing::Run(id) => editor.sheet().runs.get(id).map(|run| {
            let between = editor.words().say(&editor.between(run));
            (
                run.tag.clone(),
                run.label.clone(),
                between,
                run.note.clone(),
                run.fitted_by,
                editor.run_numbers(*id),
            )
        }),
        Thing::Terminal(_) => None,
    });
    let Some((tag, label, kind, note, fitted_by, numbers)) = seen else {
        return html! {};
    };
    let on_tag = {
        let (store, thing, trouble) = (store.clone(), thing.clone(), trouble.clone());
        Callback::from(move |event: Event| {
            let Some(input) = event.target_dyn_into::<HtmlInputElement>() else {
                return;
            };
            let text = input.value();
            let made = set(&store, |job| match &thing {
                Thing::Part(id) => rename_part(job, on, *id, text.trim()),
                Thing::Run(id) => rename_run(job, on, *id, text.trim()),
                Thing::Terminal(at) => rename_part(job, on, at.part, text.trim()),
            });
            trouble.set(made.err());
        })
    };
    let words = |which: Words| {
        let (store, thing, trouble) = (store.clone(), thing.clone(), trouble.clone());
        Callback::from(move |event: Event| {
            let Some(input) = event.target_dyn_into::<HtmlInputElement>() else {
                return;
            };
            let text = input.value();
            let made = set(&store, |job| match &thing {
                Thing::Run(id) => set_run_words(job, on, *id, which, &text),
                Thing::Part(id) => set_part_words(job, on, *id, which, &text),
                Thing::Terminal(at) => set_part_words(job, on, at.part, which, &text),
            });
            trouble.set(made.err());
        })
    };
    let on_fitted = {
        let (store, thing, tag) = (store.clone(), thing.clone(), tag.clone());
        Callback::from(move |event: Event| {
            let chosen = event
                .target_dyn_into::<HtmlSelectElement>()
                .and_then(|select| FittedBy::from_word(&select.value()));
            let Some(by) = chosen else { return };
            let name = say!("edit-fitted-by", tag = &tag);
            let _ = set(&store, |job| match &thing {
                Thing::Run(id) => change_run(job, on, *id, name, |run| run.fitted_by = by),
                Thing::Part(id) => change_part(job, on, *id, name, |part| part.fitted_by = by),
                Thing::Terminal(at) => change_part(job, on, at.part, name, |part| part.fitted_by = by),
            });
        })
    };
    let fields = match &thing {
        Thing::Run(id) => {
            html! { <><RunFields run={*id} revision={props.revision} /><Ways run={*id} /></> }
        }
        Thing::Part(id) => {
            let id = *id;
            let Some(part) = store.desk.see(|editor| editor.sheet().parts.get(&id).cloned()) else {
                return html! {};
            };
            let all = part.is.properties();
            let shown = if *more { all.len() } else { FIRST.min(all.len()) };
            let toggle = {
                let more = more.clone();
                Callback::from(move |_: MouseEvent| more.set(!*more))
            };
            html! {
                <>
                    <div>{ for all.iter().take(shown).map(|property| {
                        let store = store.clone();
                        let on_set = Callback::from(move |text: String| set(&store, |job| set_property(job, on, id, property.name, &text)));
                        html! { <Field key={format!("{id}-{}", property.name)} {property} written={part.is.get(property.name).unwrap_or_default()} {on_set} /> }
                    }) }</div>
                    if all.len() > FIRST {
                        <button type="button" class="slip__more" onclick={toggle} data-testid="more-fields">
                            { if *more { said.text("slip-fewer") } else { said.say(&say!("slip-more", count = all.len() - FIRST)) } }
                        </button>
                    }
                </>
            }
        }
        Thing::Terminal(_) => html! {},
    };
    let beside = beside(&store, &thing);
    let findings = store.desk.see(|editor| {
        let places = editor.findings_of(&thing);
        let all = &editor.analysis().findings;
        places
            .into_iter()
            .filter_map(|place| {
                all.get(place)
                    .map(|f| (place, f.grade, editor.words().say(&f.what)))
            })
            .collect::<Vec<_>>()
    });
    let act = |action: Action| {
        let desk = store.desk.clone();
        Callback::from(move |_: MouseEvent| desk.perform(action))
    };
    let close = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| {
            store.dispatch(Act::Close);
            crate::browser::focus_board();
        })
    };
    let is_run = matches!(thing, Thing::Run(_));
    let is_bent = store.desk.see(|editor| match &thing {
        Thing::Run(id) => editor
            .sheet()
            .runs
            .get(id)
            .is_some_and(|run| !run.bends.is_empty()),
        _ => false,
    });
    html! {
        <aside class="slip" style={stand(&store, &props.thing)} data-testid="slip" aria-label={said.say(&say!("slip-details", tag = &tag))}>
            <header class="slip__head">
                <input ref={tag_field} class="slip__tag" key={format!("tag-{tag}")} value={tag.clone()} maxlength="24" aria-label={said.text("slip-tag")} data-testid="slip-tag" onchange={on_tag} />
                <span class="slip__kind">{ kind }</span>
                <button type="button" class="slip__close" onclick={close} aria-label={said.text("close")} data-testid="close">{ said.text("key-esc") }</button>
            </header>
            if let Some(trouble) = &*trouble { <p class="field__trouble" role="alert">{ trouble }</p> }
            { store.desk.see(|editor| fate_of(editor, &thing)) }
            if !numbers.is_empty() {
                <dl class="numbers" data-testid="numbers">
                    { for numbers.into_iter().map(|(name, value)| html! { <><dt>{ said.say(&line_name(name)) }</dt><dd>{ value }</dd></> }) }
                </dl>
            }
            <div>{ for findings.into_iter().map(|(place, grade, what)| {
                let desk = store.desk.clone();
                let onclick = Callback::from(move |_: MouseEvent| { desk.change(|editor| editor.go_to_finding(place)); });
                html! { <button type="button" class={classes!("slip__finding", super::mark::grade_class(grade))} {onclick}>{ mark(grade) }<span>{ what }</span></button> }
            }) }</div>
            <div>{ fields }</div>
            <label class="field"><span class="field__name">{ said.text("slip-name") }</span>
                <input class="field__input" key={format!("label-{label}")} value={label.clone()} maxlength="400" onchange={words(Words::Label)} data-testid="slip-label" placeholder="—" />
            </label>
            <label class="field"><span class="field__name">{ said.text("slip-note") }</span>
                <input class="field__input" key={format!("note-{note}")} value={note.clone()} maxlength="4000" onchange={words(Words::Note)} placeholder="—" />
            </label>
            <label class="field"><span class="field__name">{ said.text("slip-fitted-by") }</span>
                <select class="field__input" onchange={on_fitted} data-testid="slip-fitted-by">
                    { for FittedBy::ALL.iter().map(|by| html! { <option value={by.word()} selected={written(*by) == written(fitted_by)}>{ said.say(&by.said()) }</option> }) }
                </select>
            </label>
            { beside }
            { pictures(&store, PictureOf::Thing, &tag) }
            <footer class="slip__foot">
                <button type="button" onclick={act(Action::WhatFeeds)}>{ said.text("slip-feeds") }<kbd>{ "F" }</kbd></button>
                if is_run {
                    <button type="button" onclick={act(Action::Splice)}>{ said.text("slip-splice") }<kbd>{ "J" }</kbd></button>
                    <button type="button" onclick={act(Action::MoveEnd)} data-testid="slip-move-end">{ said.text("slip-move-end") }<kbd>{ "E" }</kbd></button>
                    if is_bent { <button type="button" onclick={act(Action::Straighten)} data-testid="slip-straighten">{ said.text("slip-straighten") }</button> }
                } else {
                    <button type="button" onclick={act(Action::Turn)}>{ said.text("slip-turn") }<kbd>{ "R" }</kbd></button>
                    <button type="button" onclick={act(Action::Duplicate)}>{ said.text("slip-duplicate") }</button>
                }
                <button type="button" onclick={act(Action::Delete)} data-testid="slip-delete">{ said.text("slip-delete") }</button>
            </footer>
        </aside>
    }
}

/// How the thing is fixed or laid, and what becomes of it: behind a word each, which says how much of it is told.
fn beside(store: &Store, thing: &Thing) -> Html {
    let words = store.words();
    let on = store.desk.see(editor::Editor::on);
    let group = |title: fn(usize) -> Saying, of: &dyn PropertySet, plain: &dyn PropertySet| {
        let list = of.properties();
        let told = list
            .iter()
            .filter(|it| of.get(it.name) != plain.get(it.name))
            .count();
        let fields = list.iter().map(|property| {
            let (store, thing) = (store.clone(), thing.clone());
            let on_set = Callback::from(move |text: String| {
                set(&store, |job| match &thing {
                    Thing::Run(id) => set_wire_property(job, on, *id, property.name, &text),
                    Thing::Part(id) => set_property(job, on, *id, property.name, &text),
                    Thing::Terminal(at) => set_property(job, on, at.part, property.name, &text),
                })
            });
            html! { <Field key={property.name} {property} written={of.get(property.name).unwrap_or_default()} {on_set} /> }
        });
        html! {
            <details class="slip__beside" data-testid="slip-beside">
                <summary class="slip__more">{ words.say(&title(told)) }</summary>
                { for fields }
            </details>
        }
    };
    store.desk.see(|editor| match thing {
        Thing::Part(id) => editor.sheet().parts.get(id).map(|part| {
            html! { <>{ tunings(store, &part.tag, &part.is) }{ group(|count| say!("slip-mounting", count = count), &part.mounting, &Mounting::default()) }{ group(|count| say!("slip-handling", count = count), &part.handling, &Handling::default()) }</> }
        }),
        Thing::Run(id) => editor.sheet().runs.get(id).map(|run| {
            html! { <>{ group(|count| say!("slip-laying", count = count), &run.laying, &Laying::default()) }{ group(|count| say!("slip-handling", count = count), &run.handling, &Handling::default()) }</> }
        }),
        Thing::Terminal(_) => None,
    })
    .unwrap_or_default()
}
