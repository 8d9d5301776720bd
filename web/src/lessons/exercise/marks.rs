//! A learner's marks: the form of the one that is being put, and the list of those that stand.

use crate::browser;
use crate::lessons::over::{named, on_board};
use crate::lessons::reasons::ReasonBox;
use crate::state::Store;
use lessons::{Sitting, Thing, title_in};
use std::rc::Rc;
use web_sys::HtmlInputElement;
use words::{Words, say};
use yew::prelude::*;

/// The mark that is being put or changed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Marking {
    pub(super) thing: Thing,
    /// The place of the mark whose reason is chosen anew.
    pub(super) at: Option<usize>,
}

/// What the rows of marks do.
pub(super) struct Acts {
    pub(super) sitting: UseStateHandle<Sitting>,
    pub(super) put: Callback<Sitting>,
    pub(super) marking: UseStateHandle<Option<Marking>>,
    pub(super) say_it: Callback<String>,
    pub(super) words: Words,
    pub(super) store: Store,
}

impl Acts {
    /// A mark in the list: what, why, a note, and ways to change it.
    pub(super) fn row(&self, place: usize) -> Html {
        let Some(marked) = self.sitting.marks().get(place) else {
            return html! {};
        };
        let words = &self.words;
        let thing = marked.mark.thing;
        let (tag, name) = self.store.desk.see(|editor| named(editor, thing));
        let go = {
            let desk = self.store.desk.clone();
            Callback::from(move |_: MouseEvent| {
                desk.change(|editor| editor.go_to(&on_board(thing)));
            })
        };
        let change = {
            let marking = self.marking.clone();
            Callback::from(move |_: MouseEvent| {
                marking.set(Some(Marking {
                    thing,
                    at: Some(place),
                }))
            })
        };
        let take_back = {
            let (sitting, put, say_it, words) = (
                self.sitting.clone(),
                self.put.clone(),
                self.say_it.clone(),
                words.clone(),
            );
            let (marking, tag) = (self.marking.clone(), tag.clone());
            Callback::from(move |_: MouseEvent| {
                let mut next = (*sitting).clone();
                say_it.emit(match next.take_back(place) {
                    Ok(_) => words.say(&say!("exercise-taken-back", thing = tag.as_str())),
                    Err(refusal) => words.say(&refusal.saying()),
                });
                // The places behind it have moved up.
                marking.set(None);
                put.emit(next);
                browser::focus_board();
            })
        };
        let note = {
            let (sitting, put) = (self.sitting.clone(), self.put.clone());
            Callback::from(move |event: Event| {
                if let Some(field) = event.target_dyn_into::<HtmlInputElement>() {
                    let mut next = (*sitting).clone();
                    if next.note(place, &field.value()).is_ok() {
                        put.emit(next);
                    }
                }
            })
        };
        let about = format!("{tag}, {}", title_in(&marked.mark.reason, words));
        html! {
            <li class="marks__one" data-testid="marked">
                <button type="button" class="marks__what" onclick={go}>
                    <b class="marks__number">{ place + 1 }</b>
                    <span><b>{ &tag }</b>{ " " }<span class="paper__faint">{ name }</span><br />{ title_in(&marked.mark.reason, words) }</span>
                </button>
                <input type="text" class="paper__input" maxlength="300" placeholder={words.text("exercise-note")} aria-label={words.say(&say!("exercise-note-on", mark = about.as_str()))}
                    value={marked.note.clone()} onchange={note} />
                <span class="marks__acts">
                    <button type="button" class="lesson__button" onclick={change} aria-label={words.say(&say!("exercise-change-mark", mark = about.as_str()))}>{ words.text("exercise-change") }</button>
                    <button type="button" class="lesson__button" onclick={take_back} aria-label={words.say(&say!("exercise-take-back-mark", mark = about.as_str()))} data-testid="take-back">{ words.text("exercise-take-back") }</button>
                </span>
            </li>
        }
    }
}

/// The form of the mark that is being put.
pub(super) fn marking_form(
    now: Marking,
    store: &Store,
    words: &Words,
    choices: &Rc<Vec<lessons::Reason>>,
    sitting: &Sitting,
    choose: Callback<String>,
    leave: Callback<()>,
) -> Html {
    let (tag, name) = store.desk.see(|editor| named(editor, now.thing));
    let chosen = now
        .at
        .and_then(|at| sitting.marks().get(at))
        .map(|it| it.mark.reason.clone());
    let shut = {
        let leave = leave.clone();
        Callback::from(move |_: MouseEvent| leave.emit(()))
    };
    html! {
        <section class="marking" aria-label={words.say(&say!("exercise-marking", thing = tag.as_str()))} data-testid="marking" key={format!("{now:?}")}>
            <header class="marking__head"><b>{ &tag }</b><span class="paper__faint">{ name }</span>
                <button type="button" class="lesson__button" onclick={shut}>{ words.text("exercise-leave") }<kbd>{ "Esc" }</kbd></button></header>
            <p>{ words.text("exercise-why") }</p>
            <ReasonBox reasons={choices.clone()} chosen={chosen.unwrap_or_default()} on_choose={choose} on_leave={leave} />
        </section>
    }
}
