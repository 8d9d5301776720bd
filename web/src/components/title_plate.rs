//! The title block where one only looks: the same cells, to be read and not to be filled in.

use super::mark::mark;
use super::reader_cells::ReaderCells;
use super::set_index::sheets_there;
use super::title_block::title_block;
use crate::browser;
use crate::canvas::notes_width;
use crate::files;
use crate::state::{Act, Store};
use checks::Grade;
use words::say;
use yew::prelude::*;

/// The title block as a form, or as a plate where one only looks. `low`: it unfolds from the strip of a narrow window; else
/// it stands in the corner of a wide one.
pub(crate) fn title_block_or_plate(store: &Store, low: bool) -> Html {
    if store.desk.see(editor::Editor::looks_only) {
        plate(store, low)
    } else {
        title_block(store, low)
    }
}

fn plate(store: &Store, low: bool) -> Html {
    let narrow = store.desk.see(|editor| notes_width(editor.camera().width) == 0.0);
    if narrow != low {
        return html! {};
    }
    let words = store.words();
    let (title, vehicle, conditions, limits, counts, checked) = store.desk.see(|editor| {
        let job = editor.job();
        let set = &job.settings.conditions;
        let conditions = [
            ("title-state", words.say(&set.state.said())),
            ("title-music", words.say(&set.duty.said())),
        ];
        (
            job.title.clone(),
            job.vehicle.clone(),
            conditions,
            words.say(&set.profile.said()),
            editor.counts(),
            editor.is_studied(),
        )
    });
    let cell = |name: &'static str, text: &str, wide: bool| {
        html! {
            <div class={classes!("cell", wide.then_some("cell--wide"))}>
                <span class="cell__name">{ words.text(name) }</span>
                <span class="cell__value">{ if text.is_empty() { "—" } else { text } }</span>
            </div>
        }
    };
    let copy = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| own_copy(&store))
    };
    html! {
        <section class="title-block" aria-label={words.text("title-block")} data-testid="title-plate">
            { cell("title-job", &title, true) }
            if !vehicle.name.is_empty() { { cell("title-vehicle", &vehicle.name, true) } }
            <div class="title-block__row">
                if !vehicle.drawn_by.is_empty() { { cell("title-drawn-by", &vehicle.drawn_by, false) } }
                { cell("title-date", &vehicle.date, false) }
                { cell("title-revision", &vehicle.revision, false) }
            </div>
            if !vehicle.remark.is_empty() { { cell("title-remark", &vehicle.remark, true) } }
            <div class="title-block__row">{ for conditions.map(|(name, text)| cell(name, &text, false)) }</div>
            { cell("title-limits", &limits, true) }
            <div class="cell cell--wide cell--grades" data-testid="grades">
                <span class="cell__name">{ words.text("title-findings") }</span>
                <span class="cell__value">
                    if checked {
                        { for [(Grade::Stop, counts[0]), (Grade::Fix, counts[1]), (Grade::Tidy, counts[2])].map(|(grade, count)| html! {
                            <span class={classes!("grade-count", (count == 0).then_some("grade-count--none"))}>{ mark(grade) }{ format!("{count} {}", words.say(&grade.said())) }</span>
                        }) }
                    } else {
                        { words.text("title-unchecked") }
                    }
                </span>
            </div>
            { sheets_there(store) }
            <ReaderCells />
            <div class="revisions">
                <button type="button" onclick={copy} data-testid="own-copy">
                    <span class="cell__name">{ words.text("title-look-only") }</span>{ words.text("title-own-copy") }
                </button>
            </div>
        </section>
    }
}

/// Makes a copy that may be changed: the page opens anew with it, or hands it out as a job file where it could not keep it.
fn own_copy(store: &Store) {
    let packed = store.desk.see(|editor| sharing::fragment(editor.job()));
    match packed {
        Ok(fragment) if browser::own_address().is_some() => {
            browser::go_to_fragment(&format!("{COPY}{}", fragment.trim_start_matches(sharing::KEY)));
        }
        _ => {
            let (name, text) = store.desk.see(|editor| {
                (
                    files::file_name(&editor.job().title, files::ENDING),
                    model::file::write(editor.job()),
                )
            });
            store.dispatch(Act::Say(
                match files::export_text(&name, &text, "application/json") {
                    Ok(()) => store.words().say(&say!("title-copy-downloaded", name = name)),
                    Err(trouble) => store.words().say(&trouble.said()),
                },
            ));
        }
    }
}

/// What stands before the packed job where a copy of one's own is to be made.
pub(crate) const COPY: &str = "copy=";
