//! The condition record: what was seen before any trim came off.

use super::{Told, lines};
use crate::components::pictures::{pictures, pictures_of_intake};
use crate::state::Store;
use model::edits::ThreadList;
use model::picture::PictureOf;
use yew::prelude::*;

pub(super) fn count(store: &Store) -> usize {
    store.desk.see(|editor| editor.job().thread.intake.len())
}

pub(super) fn intake(store: &Store, _: &Told) -> Html {
    let words = store.words();
    let notes = store.desk.see(|editor| editor.job().thread.intake.clone());
    html! {
        <>
            <p class="thread__about">{ words.text("thread-condition-about") }</p>
            { for notes.iter().enumerate().map(|(place, note)| html! {
                <div class="thread__line" data-testid="intake-line">
                    { lines::fields(store, ThreadList::Intake, place, note, [&["what", "where", "date"], &[]]) }
                    { pictures_of_intake(store, place, &note.tag) }
                    { lines::remove(store, ThreadList::Intake, place, &note.words) }
                </div>
            }) }
            { lines::add(store, ThreadList::Intake, "thread-add-intake") }
            // Of the vehicle as a whole.
            { pictures(store, PictureOf::Thing, "") }
        </>
    }
}
