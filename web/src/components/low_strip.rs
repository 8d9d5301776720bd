//! What stands in the right margin of a wide window, for a narrow one: a strip above the tools with the count of the
//! findings and the job's name. Either unfolds upwards: the notes in the order of the list, or the title block.

use super::mark::mark;
use super::note::{Note, grade_said, note};
use super::notes::measured;
use super::title_plate::title_block_or_plate;
use crate::canvas::notes_width;
use crate::state::{Act, Store};
use checks::Grade;
use editor::Action;
use web_sys::HtmlElement;
use yew::prelude::*;

/// What is unfolded.
#[derive(Clone, Copy, PartialEq)]
enum Fold {
    Nothing,
    Notes,
    Title,
}

#[function_component]
pub(crate) fn LowStrip() -> Html {
    let fold = use_state(|| Fold::Nothing);
    let strip = use_node_ref();
    let Some(store) = use_context::<Store>() else {
        return html! {};
    };
    if store.desk.see(|editor| notes_width(editor.camera().width) > 0.0) {
        return html! {};
    }
    let words = store.words();
    let (counts, checked) = store.desk.see(|editor| (editor.counts(), editor.is_studied()));
    let total: usize = counts.iter().sum();
    let title = store.desk.see(|editor| editor.job().title.clone());
    let toggle = |which: Fold| {
        let fold = fold.clone();
        Callback::from(move |_: MouseEvent| fold.set(if *fold == which { Fold::Nothing } else { which }))
    };
    let onkeydown = {
        let (fold, strip) = (fold.clone(), strip.clone());
        Callback::from(move |event: KeyboardEvent| {
            if event.key() == "Escape" && *fold != Fold::Nothing {
                event.prevent_default();
                fold.set(Fold::Nothing);
                if let Some(strip) = strip.cast::<HtmlElement>() {
                    let _ = strip.focus();
                }
            }
        })
    };
    let on_open = {
        let (desk, fold) = (store.desk.clone(), fold.clone());
        Callback::from(move |place: usize| {
            fold.set(Fold::Nothing);
            desk.change(|editor| editor.go_to_finding(place));
        })
    };
    let on_point = {
        let store = store.clone();
        Callback::from(move |place| store.dispatch(Act::Point(place)))
    };
    let mends = store.desk.see(|editor| editor.offers(Action::MendAll));
    let mend_all = {
        let (desk, fold) = (store.desk.clone(), fold.clone());
        Callback::from(move |_: MouseEvent| {
            fold.set(Fold::Nothing);
            desk.perform(Action::MendAll);
        })
    };
    let notes = || {
        let analysis = store.desk.see(|editor| editor.analysis().clone());
        let current = store.desk.see(editor::Editor::finding);
        html! {
            <section class="low__notes" id="low-notes" aria-label={words.text("title-findings")}>
                if mends && total > 0 { <button type="button" class="low__mend" onclick={mend_all.clone()} data-testid="low-mend-all">{ words.text("mend-all-short") }</button> }
                if let Some(words) = store.desk.see(measured) { <p class="low__words" data-testid="notes-words">{ words }</p> }
                <ol data-testid="notes">
                    { for analysis.findings.iter().enumerate().map(|(place, finding)| note(&Note {
                place,
                grade: finding.grade,
                said: grade_said(&words, finding.grade, finding.undecided),
                what: words.say(&finding.what).into(),
                top: 0.0,
                is_current: current == Some(place),
                short: false,
                on_open: on_open.clone(),
                on_point: on_point.clone(),
            })) }
                </ol>
            </section>
        }
    };
    let grades = [Grade::Stop, Grade::Fix, Grade::Tidy].into_iter().zip(counts);
    html! {
        <div class="low" {onkeydown}>
            if *fold == Fold::Notes { { notes() } }
            if *fold == Fold::Title { { title_block_or_plate(&store, true) } }
            <div class="low__strip" ref={strip} tabindex="-1">
                <button type="button" onclick={toggle(Fold::Notes)} aria-expanded={(*fold == Fold::Notes).to_string()} aria-controls="low-notes" data-testid="low-notes">
                    if total == 0 { { words.text(if checked { "low-none" } else { "title-unchecked" }) } }
                    { for grades.filter(|(_, count)| *count > 0).map(|(grade, count)| html! {
                        <span class="grade-count">{ mark(grade) }{ format!("{count} {}", words.say(&grade.said())) }</span>
                    }) }
                </button>
                <button type="button" class="low__title" onclick={toggle(Fold::Title)} aria-expanded={(*fold == Fold::Title).to_string()} data-testid="low-title">
                    { if title.is_empty() { words.text("untitled") } else { title } }
                </button>
            </div>
        </div>
    }
}
