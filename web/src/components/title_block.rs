//! The title block in the lower right corner, after ISO 7200: the job's form. Its last rows are the set index and the
//! revisions: what was done last, to be undone or done again.

use super::keys::key;
use super::mark::mark;
use super::reader_cells::ReaderCells;
use super::title_cell::TitleCell;
use crate::canvas::notes_width;
use crate::state::{Act, Store};
use checks::Grade;
use editor::Action;
use model::Edit;
use model::edits::{EditError, set_condition, set_title, set_vehicle_property};
use model::job::{Conditions, Job};
use model::property::{PropertySet, Shape};
use web_sys::HtmlSelectElement;
use words::{Unit, precise, say};
use yew::prelude::*;

/// Makes an edit of the job, or says why not.
pub(crate) fn make(store: &Store, edit: impl FnOnce(&Job) -> Result<Edit, EditError>) {
    let mut trouble = None;
    store.desk.change(|editor| {
        let edit = edit(editor.job());
        editor.make(edit).unwrap_or_else(|error| {
            trouble = Some(editor.words().say(&error.0));
            editor::Effects::default()
        })
    });
    if let Some(trouble) = trouble {
        store.dispatch(Act::Say(trouble));
    }
}

/// The block. `low`: it unfolds from the strip of a narrow window; else it stands in the corner of a wide one.
pub(crate) fn title_block(store: &Store, low: bool) -> Html {
    let narrow = store.desk.see(|editor| notes_width(editor.camera().width) == 0.0);
    if narrow != low {
        return html! {};
    }
    let words = store.words();
    let vehicle = |name: &'static str| {
        let store = store.clone();
        Callback::from(move |text: String| make(&store, |job| set_vehicle_property(job, name, &text)))
    };
    let title = {
        let store = store.clone();
        Callback::from(move |text: String| make(&store, |_| set_title(&text)))
    };
    let said = |name: &str| {
        store
            .desk
            .see(|editor| editor.job().vehicle.get(name).unwrap_or_default())
    };
    let (counts, checked) = store.desk.see(|editor| (editor.counts(), editor.is_studied()));
    // Checks that the job leaves out are never out of sight.
    let left_out = store.desk.see(|editor| editor.job().settings.allowed.len());
    let step = |action: Action| {
        let desk = store.desk.clone();
        Callback::from(move |_: MouseEvent| desk.perform(action))
    };
    let (undo, redo) = store.desk.see(|editor| {
        (
            editor.history().undo_said().map(|said| editor.words().say(&said)),
            editor.history().redo_said().map(|said| editor.words().say(&said)),
        )
    });
    let scale = store
        .desk
        .see(|editor| format!("{:.0} %", editor.camera().zoom * 100.0));
    let readings = store.desk.see(|editor| editor.sheet().readings.len());
    let ambients = store.desk.see(|editor| {
        let settings = &editor.job().settings;
        // The unit stands once, at the end: the cell is narrow.
        let degrees = |fact: model::Fact<model::quantity::Celsius>, unit: Unit| {
            let number = fact.value().map_or(f64::NAN, |c| c.0);
            words.figure(precise(number, unit, 0))
        };
        let own = settings.limits.len();
        let conditions = &settings.conditions;
        let ambients = say!(
            "title-ambients",
            cabin = degrees(conditions.cabin, Unit::Bare),
            load = degrees(conditions.load_area, Unit::Bare),
            engine = degrees(conditions.engine_bay, Unit::Plain("°C"))
        );
        words.say(&if own == 0 {
            ambients
        } else {
            say!("title-ambients-own", ambients = ambients, count = own)
        })
    });
    html! {
        <section class="title-block" aria-label={words.text("title-block")}>
            <TitleCell name={words.text("title-job")} text={store.desk.see(|editor| editor.job().title.clone())} on_set={title} testid="title-job" wide=true />
            <TitleCell name={words.text("title-vehicle")} text={said("name")} on_set={vehicle("name")} testid="title-vehicle" wide=true />
            <div class="title-block__row">
                <TitleCell name={words.text("title-drawn-by")} text={said("drawn-by")} on_set={vehicle("drawn-by")} testid="title-drawn-by" />
                <TitleCell name={words.text("title-date")} text={said("date")} on_set={vehicle("date")} testid="title-date" />
                <TitleCell name={words.text("title-revision")} text={said("revision")} on_set={vehicle("revision")} testid="title-revision" />
                <div class="cell cell--scale"><span class="cell__name">{ words.text("title-scale") }</span><span class="cell__value">{ scale }</span></div>
            </div>
            <div class="title-block__row">{ for ["state", "duty", "profile"].map(|name| condition(store, name)) }</div>
            <div class="cell cell--wide">
                <span class="cell__name">{ words.text("title-ambients-limits") }</span>
                <button type="button" class="cell__text" onclick={step(Action::Limits)} data-testid="open-limits">{ ambients }</button>
            </div>
            if readings > 0 {
                <div class="cell cell--wide">
                    <span class="cell__name">{ words.text("readings") }</span>
                    <button type="button" class="cell__text" onclick={step(Action::Readings)} data-testid="open-readings">{ words.say(&say!("readings-kept", count = readings)) }</button>
                </div>
            }
            <button type="button" class="cell cell--wide cell--grades" disabled={counts.iter().sum::<usize>() == 0} onclick={step(Action::MendAll)}
                data-testid="grades" title={words.say(&key(Action::MendAll))}>
                <span class="cell__name cell__name--does">{ words.text("title-findings") }<u>{ words.text("mend-all-short") }</u></span>
                <span class="cell__value">
                    if checked {
                        { for [(Grade::Stop, counts[0]), (Grade::Fix, counts[1]), (Grade::Tidy, counts[2])].map(|(grade, count)| html! {
                            <span class={classes!("grade-count", (count == 0).then_some("grade-count--none"))}>{ mark(grade) }{ format!("{count} {}", words.say(&grade.said())) }</span>
                        }) }
                    } else {
                        { words.text("title-unchecked") }
                    }
                    if left_out > 0 { <span class="cell__left-out">{ words.say(&say!("title-left-out", count = left_out)) }</span> }
                </span>
            </button>
            { super::set_index::set_index(store) }
            <ReaderCells />
            <div class="revisions">
                <button type="button" disabled={undo.is_none()} onclick={step(Action::Undo)} data-testid="undo" title={words.say(&key(Action::Undo))}>
                    <span class="cell__name">{ words.text("title-undo") }</span>{ undo.unwrap_or_else(|| words.text("title-nothing-done")) }
                </button>
                <button type="button" disabled={redo.is_none()} onclick={step(Action::Redo)} data-testid="redo" title={words.say(&key(Action::Redo))}>
                    <span class="cell__name">{ words.text("title-redo") }</span>{ redo.unwrap_or_else(|| "—".to_owned()) }
                </button>
            </div>
        </section>
    }
}

/// A cell with one of the conditions that the sheets are judged under.
fn condition(store: &Store, name: &'static str) -> Html {
    let Some(property) = Conditions::list().iter().find(|property| property.name == name) else {
        return html! {};
    };
    let Shape::Choice(choices) = property.shape else {
        return html! {};
    };
    let words = store.words();
    let now = store
        .desk
        .see(|editor| editor.job().settings.conditions.get(name).unwrap_or_default());
    let onchange = {
        let store = store.clone();
        Callback::from(move |event: Event| {
            if let Some(select) = event.target_dyn_into::<HtmlSelectElement>() {
                let text = select.value();
                make(&store, |job| set_condition(job, name, &text));
            }
        })
    };
    let title = match name {
        "state" => "title-state",
        "duty" => "title-music",
        _ => "title-limits",
    };
    html! {
        <label class="cell" title={words.say(&property.about())}>
            <span class="cell__name">{ words.text(title) }</span>
            <select class="cell__select" {onchange} data-testid={format!("condition-{name}")}>
                { for choices.iter().map(|(word, title)| html! {
                    <option value={*word} selected={*word == now}>{ words.say(&model::said::choice(title)) }</option>
                }) }
            </select>
        </label>
    }
}
