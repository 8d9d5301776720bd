//! The title block in the lower right corner, after ISO 7200: the job's form. Its last rows are the set index and the
//! revisions: what was done last, to be undone or done again.

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
use yew::prelude::*;

/// Makes an edit of the job, or says why not.
pub(crate) fn make(store: &Store, edit: impl FnOnce(&Job) -> Result<Edit, EditError>) {
    let mut trouble = None;
    store.desk.change(|editor| {
        let edit = edit(editor.job());
        editor.make(edit).unwrap_or_else(|error| {
            trouble = Some(error.to_string());
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
    let counts = store.desk.see(editor::Editor::counts);
    // Checks that the job leaves out are never out of sight.
    let left_out = store.desk.see(|editor| editor.job().settings.allowed.len());
    let step = |action: Action| {
        let desk = store.desk.clone();
        Callback::from(move |_: MouseEvent| desk.perform(action))
    };
    let (undo, redo) = store.desk.see(|editor| {
        (
            editor.history().undo_name().map(str::to_owned),
            editor.history().redo_name().map(str::to_owned),
        )
    });
    let scale = store
        .desk
        .see(|editor| format!("{:.0} %", editor.camera().zoom * 100.0));
    let readings = store.desk.see(|editor| editor.sheet().readings.len());
    let ambients = store.desk.see(|editor| {
        let settings = &editor.job().settings;
        let degrees = |fact: model::Fact<model::quantity::Celsius>| {
            fact.value()
                .map_or("? °C".to_owned(), |c| format!("{:.0} °C", c.0))
        };
        let own = match settings.limits.len() {
            0 => String::new(),
            1 => "; 1 limit set here".to_owned(),
            count => format!("; {count} limits set here"),
        };
        let conditions = &settings.conditions;
        format!(
            "cabin {}, load {}, engine {}{own}",
            degrees(conditions.cabin),
            degrees(conditions.load_area),
            degrees(conditions.engine_bay)
        )
    });
    html! {
        <section class="title-block" aria-label="Title block">
            <TitleCell name="Job" text={store.desk.see(|editor| editor.job().title.clone())} on_set={title} testid="title-job" wide=true />
            <TitleCell name="Vehicle" text={said("name")} on_set={vehicle("name")} testid="title-vehicle" wide=true />
            <div class="title-block__row">
                <TitleCell name="Drawn by" text={said("drawn-by")} on_set={vehicle("drawn-by")} testid="title-drawn-by" />
                <TitleCell name="Date" text={said("date")} on_set={vehicle("date")} testid="title-date" />
                <TitleCell name="Rev." text={said("revision")} on_set={vehicle("revision")} testid="title-revision" />
                <div class="cell cell--scale"><span class="cell__name">{ "Scale" }</span><span class="cell__value">{ scale }</span></div>
            </div>
            <div class="title-block__row">{ for ["state", "duty", "profile"].map(|name| condition(store, name)) }</div>
            <div class="cell cell--wide">
                <span class="cell__name">{ "Ambients and limits" }</span>
                <button type="button" class="cell__text" onclick={step(Action::Limits)} data-testid="open-limits">{ ambients }</button>
            </div>
            if readings > 0 {
                <div class="cell cell--wide">
                    <span class="cell__name">{ "Readings" }</span>
                    <button type="button" class="cell__text" onclick={step(Action::Readings)} data-testid="open-readings">{ format!("{readings} kept on this sheet") }</button>
                </div>
            }
            <div class="cell cell--wide cell--grades" data-testid="grades">
                <span class="cell__name">{ "Findings" }</span>
                <span class="cell__value">
                    { for [(Grade::Stop, counts[0]), (Grade::Fix, counts[1]), (Grade::Tidy, counts[2])].map(|(grade, count)| html! {
                        <span class={classes!("grade-count", (count == 0).then_some("grade-count--none"))}>{ mark(grade) }{ format!("{count} {}", grade.title()) }</span>
                    }) }
                    if left_out > 0 { <span class="cell__left-out">{ format!("{left_out} left out") }</span> }
                </span>
            </div>
            { super::set_index::set_index(store) }
            <ReaderCells />
            <div class="revisions">
                <button type="button" disabled={undo.is_none()} onclick={step(Action::Undo)} data-testid="undo" title="Ctrl+Z">
                    <span class="cell__name">{ "Undo" }</span>{ undo.unwrap_or_else(|| "nothing done yet".to_owned()) }
                </button>
                <button type="button" disabled={redo.is_none()} onclick={step(Action::Redo)} data-testid="redo" title="Ctrl+Shift+Z">
                    <span class="cell__name">{ "Redo" }</span>{ redo.unwrap_or_else(|| "—".to_owned()) }
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
        "state" => "State",
        "duty" => "Music",
        _ => "Limits",
    };
    html! {
        <label class="cell" title={property.doc}>
            <span class="cell__name">{ title }</span>
            <select class="cell__select" {onchange} data-testid={format!("condition-{name}")}>
                { for choices.iter().map(|(word, title)| html! {
                    <option value={*word} selected={*word == now}>{ *title }</option>
                }) }
            </select>
        </label>
    }
}
