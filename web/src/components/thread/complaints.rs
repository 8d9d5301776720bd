//! The complaints: each tied to the findings that explain it, the offers that answer it, and the readings that prove it
//! mended. What is still open is said.

use super::{Told, lines};
use crate::components::pictures::pictures;
use crate::state::Store;
use editor::Editor;
use model::edits::ThreadList;
use model::picture::PictureOf;
use model::property::PropertyType;
use model::thread::{Complaint, FindingRef, FindingRefs};
use paperwork::OpenEnd;
use web_sys::HtmlSelectElement;
use words::{Saying, say};
use yew::prelude::*;

/// A finding as the thread refers to it.
pub(super) fn refers_to(editor: &Editor, finding: &checks::Finding) -> FindingRef {
    paperwork::reference(editor.sheet(), finding)
}

/// The finding of the sheet on the table that is meant, by its place: the same check on the same foremost thing.
pub(super) fn meant(editor: &Editor, wanted: &FindingRef) -> Option<usize> {
    editor.analysis().findings.iter().position(|finding| {
        let there = refers_to(editor, finding);
        there.check == wanted.check
            && match wanted.things.first() {
                Some(thing) => there.things.contains(thing),
                None => true,
            }
    })
}

/// A finding that is referred to, in words.
pub(super) fn called(store: &Store, finding: &FindingRef) -> String {
    let words = store.words();
    let title = checks::check_named(&finding.check)
        .map_or_else(|| finding.check.clone(), |it| words.say(&it.title()));
    if finding.things.is_empty() {
        title
    } else {
        format!("{title}: {}", finding.things.join(" "))
    }
}

/// A button for a finding that is referred to: goes to it where it is still there, else says that it is cleared.
pub(super) fn link(store: &Store, finding: &FindingRef) -> Html {
    let name = called(store, finding);
    match store.desk.see(|editor| meant(editor, finding)) {
        Some(place) => {
            let desk = store.desk.clone();
            let onclick = Callback::from(move |_: MouseEvent| {
                desk.change(|editor| editor.go_to_finding(place));
            });
            html! { <button type="button" class="thread__link" {onclick}>{ name }</button> }
        }
        None => {
            html! { <span class="thread__cleared"><s>{ name }</s>{ " " }{ store.words().text("thread-not-here") }</span> }
        }
    }
}

pub(super) fn count(store: &Store) -> usize {
    store.desk.see(|editor| editor.job().thread.complaints.len())
}

pub(super) fn complaints(store: &Store, told: &Told) -> Html {
    let words = store.words();
    let all = store.desk.see(|editor| editor.job().thread.complaints.clone());
    html! {
        <>
            { for all.iter().enumerate().map(|(place, complaint)| one(store, place, complaint, told)) }
            if all.is_empty() { <p class="thread__about">{ words.text("thread-complaints-about") }</p> }
            { lines::add(store, ThreadList::Complaints, "thread-add-complaint") }
        </>
    }
}

fn one(store: &Store, place: usize, complaint: &Complaint, told: &Told) -> Html {
    let words = store.words();
    let explained = &complaint.explained_by.0;
    let tie = {
        let (store, known) = (store.clone(), explained.clone());
        Callback::from(move |event: Event| {
            let chosen = event
                .target_dyn_into::<HtmlSelectElement>()
                .and_then(|select| select.value().parse::<usize>().ok());
            let finding = chosen.and_then(|place| {
                store.desk.see(|editor| {
                    editor
                        .analysis()
                        .findings
                        .get(place)
                        .map(|it| refers_to(editor, it))
                })
            });
            if let Some(finding) = finding {
                let mut all = known.clone();
                all.push(finding);
                lines::put(
                    &store,
                    ThreadList::Complaints,
                    place,
                    "explained-by",
                    &FindingRefs(all).print(),
                );
            }
        })
    };
    let untie = |number: usize| {
        let (store, known) = (store.clone(), explained.clone());
        Callback::from(move |_: MouseEvent| {
            let mut rest = known.clone();
            if number < rest.len() {
                rest.remove(number);
            }
            lines::put(
                &store,
                ThreadList::Complaints,
                place,
                "explained-by",
                &FindingRefs(rest).print(),
            );
        })
    };
    let findings: Vec<String> = store.desk.see(|editor| {
        editor
            .analysis()
            .findings
            .iter()
            .map(|it| editor.words().say(&it.what))
            .collect()
    });
    let (offers, proofs) = store.desk.see(|editor| {
        let job = editor.job();
        let offers: Vec<String> = job
            .thread
            .offers
            .iter()
            .filter(|it| it.answers.0.contains(&complaint.tag))
            .map(|it| {
                format!(
                    "{} {} ({})",
                    it.tag,
                    it.words,
                    editor.words().say(&it.decision.said())
                )
            })
            .collect();
        let proofs: Vec<String> = job
            .sheets
            .values()
            .flat_map(|sheet| &sheet.readings)
            .filter(|it| it.proves.0.contains(&complaint.tag))
            .map(|it| editor::meter::line_of(it, editor.words()))
            .collect();
        (offers, proofs)
    });
    let open = store.desk.see(|editor| open_ends(editor, complaint, told));
    html! {
        <div class="thread__line" data-testid="complaint-line">
            <b class="thread__tag">{ &complaint.tag }</b>
            { lines::fields(store, ThreadList::Complaints, place, complaint, [&["what", "happens-with", "closed"], &["remark"]]) }
            <div class="thread__ties">
                <span class="field__name">{ words.say(&model::said::name_of("explained-by")) }</span>
                <ul>{ for explained.iter().enumerate().map(|(number, finding)| html! {
                    <li>{ link(store, finding) }<button type="button" class="jobs__remove" onclick={untie(number)}
                        aria-label={words.say(&say!("thread-untie", finding = called(store, finding)))}>{ words.text("thread-untie-word") }</button></li>
                }) }</ul>
                <select class="field__input" onchange={tie} aria-label={words.text("thread-tie")} data-testid="tie-finding">
                    <option value="" selected=true>{ words.text("thread-tie") }</option>
                    { for findings.into_iter().enumerate().map(|(number, what)| html! { <option value={number.to_string()}>{ what }</option> }) }
                </select>
            </div>
            if !offers.is_empty() { <p>{ words.text("thread-answered-by") }{ " " }{ offers.join("; ") }</p> }
            if !proofs.is_empty() { <p>{ words.text("thread-proven-by") }{ " " }{ proofs.join("; ") }</p> }
            if !open.is_empty() {
                <ul class="thread__open" data-testid="open-ends">{ for open.iter().map(|it| html! { <li>{ words.say(it) }</li> }) }</ul>
            }
            { pictures(store, PictureOf::Complaint, &complaint.tag) }
            { lines::remove(store, ThreadList::Complaints, place, &complaint.tag) }
        </div>
    }
}

/// What of a complaint is still open.
fn open_ends(editor: &Editor, complaint: &Complaint, told: &Told) -> Vec<Saying> {
    let answers = |offer: &String| {
        let offers = &editor.job().thread.offers;
        offers
            .iter()
            .any(|it| it.tag == *offer && it.answers.0.contains(&complaint.tag))
    };
    let is_its = |end: &OpenEnd| match end {
        OpenEnd::Unexplained { complaint: tag }
        | OpenEnd::Unanswered { complaint: tag }
        | OpenEnd::Unproven { complaint: tag }
        | OpenEnd::NotClosed { complaint: tag } => *tag == complaint.tag,
        OpenEnd::NotOffered { complaint: tag, .. } => tag.as_ref() == Some(&complaint.tag),
        OpenEnd::Undecided { offer } | OpenEnd::NotDone { offer } | OpenEnd::StillFound { offer, .. } => {
            answers(offer)
        }
    };
    told.open_ends
        .iter()
        .filter(|end| is_its(end))
        .map(OpenEnd::said)
        .collect()
}
