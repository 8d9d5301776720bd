//! The pictures of one thing: small, each with what is to be seen on it; and the way in, by the camera where there is one.

use super::title_block::make;
use crate::desk::Desk;
use crate::pictures::{address_of, scaled};
use crate::state::Store;
use editor::Effects;
use model::edits::{add_picture, add_picture_of_intake, remove_picture, set_picture};
use model::picture::PictureOf;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use web_sys::{Blob, FileList, HtmlInputElement};
use words::{Words, say};
use yew::prelude::*;

/// What a picture shows.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Shows {
    /// What has this tag among these; the vehicle where it is empty.
    Tagged(PictureOf, String),
    /// The line at this place of the condition record, which need not have a tag yet.
    Intake(usize),
}

impl Shows {
    /// As an attribute of the page has it, for who pastes there.
    fn written(&self) -> String {
        match self {
            Self::Tagged(among, tag) => format!("{}={tag}", among.word()),
            Self::Intake(place) => place.to_string(),
        }
    }
    /// What [`Shows::written`] wrote.
    pub(crate) fn read(written: &str) -> Option<Self> {
        match written.split_once('=') {
            Some((among, tag)) => Some(Self::Tagged(PictureOf::from_word(among)?, tag.to_owned())),
            None => written.parse().ok().map(Self::Intake),
        }
    }
}

/// The attribute that says what pictures are of that are pasted within.
pub(crate) const OF: &str = "data-pictures-of";

/// Pictures of what has this tag among these; of the vehicle without one.
pub(super) fn pictures(store: &Store, among: PictureOf, of: &str) -> Html {
    shown(store, of, &Shows::Tagged(among, of.to_owned()))
}

/// Pictures of a line of the condition record.
pub(super) fn pictures_of_intake(store: &Store, place: usize, tag: &str) -> Html {
    shown(store, tag, &Shows::Intake(place))
}

fn shown(store: &Store, of: &str, shows: &Shows) -> Html {
    let words = store.words();
    // A line without a tag has no pictures yet; those without a tag are the vehicle's.
    let has_any = !of.is_empty() || matches!(shows, Shows::Tagged(..));
    let among = match shows {
        Shows::Tagged(among, _) => *among,
        Shows::Intake(_) => PictureOf::Intake,
    };
    let all: Vec<(String, String, String)> = store.desk.see(|editor| {
        let pictures = editor
            .job()
            .pictures
            .iter()
            .filter(|(_, it)| has_any && it.is_of(among, of));
        pictures
            .map(|(key, it)| (key.clone(), address_of(it), it.facts.words.clone()))
            .collect()
    });
    let onchange = {
        let (store, shows) = (store.clone(), shows.clone());
        Callback::from(move |event: Event| {
            let Some(input) = event.target_dyn_into::<HtmlInputElement>() else {
                return;
            };
            let files = input.files().map(|list| pictures_in(&list)).unwrap_or_default();
            input.set_value("");
            take_in(&store.desk, &shows, files);
        })
    };
    html! {
        <div class="pictures" data-pictures-of={shows.written()} data-testid="pictures">
            { for all.into_iter().map(|(key, address, what)| one(store, of, key, address, what)) }
            <label class="mend pictures__add">{ words.text("pictures-add") }
                <input class="pictures__input" type="file" accept="image/*" capture="environment" multiple=true {onchange} data-testid="add-picture" />
            </label>
        </div>
    }
}

fn one(store: &Store, of: &str, key: String, address: String, what: String) -> Html {
    let words = store.words();
    let tell = {
        let (store, key) = (store.clone(), key.clone());
        Callback::from(move |event: Event| {
            if let Some(input) = event.target_dyn_into::<HtmlInputElement>() {
                make(&store, |job| set_picture(job, &key, "words", &input.value()));
            }
        })
    };
    let remove = {
        let (store, key) = (store.clone(), key.clone());
        Callback::from(move |_: MouseEvent| make(&store, |job| remove_picture(job, &key)))
    };
    let alt = if what.is_empty() {
        words.say(&say!("pictures-of", of = called(of, &words)))
    } else {
        what.clone()
    };
    html! {
        <figure class="pictures__one" key={key} data-testid="picture">
            <img src={address} {alt} />
            <figcaption>
                <input class="field__input" data-testid="picture-words" value={what} onchange={tell} maxlength="400" placeholder={words.text("pictures-what")} aria-label={words.text("pictures-what")} />
                <button type="button" class="jobs__remove" onclick={remove} data-testid="remove-picture">{ words.text("remove") }</button>
            </figcaption>
        </figure>
    }
}

/// The pictures of a list of files.
pub(crate) fn pictures_in(list: &FileList) -> Vec<Blob> {
    (0..list.length())
        .filter_map(|at| list.item(at))
        .filter(|file| file.type_().starts_with("image/"))
        .map(Blob::from)
        .collect()
}

/// Takes pictures in, one after the other, scaled down.
pub(crate) fn take_in(desk: &Rc<Desk>, shows: &Shows, pictures: Vec<Blob>) {
    let (desk, shows) = (desk.clone(), shows.clone());
    spawn_local(async move {
        for picture in pictures {
            let scaled = scaled(&picture).await;
            desk.change(|editor| {
                let words = editor.words().clone();
                let bytes = match scaled {
                    Ok(bytes) => bytes,
                    Err(why) => return said(words.say(&say!("pictures-unread", why = why))),
                };
                let size = bytes.len().div_ceil(1000);
                let added = match &shows {
                    Shows::Tagged(among, tag) => add_picture(editor.job(), *among, tag, bytes),
                    Shows::Intake(place) => add_picture_of_intake(editor.job(), *place, bytes),
                };
                match editor.make(added.map(|(edit, _)| edit)) {
                    Ok(mut effects) => {
                        let of = called(&shown_of(editor, &shows), &words);
                        effects.say = Some(words.say(&say!("pictures-added", of = of, size = size)));
                        effects
                    }
                    Err(error) => said(words.say(&error.0)),
                }
            });
        }
    });
}

fn said(text: String) -> Effects {
    Effects {
        say: Some(text),
        ..Effects::default()
    }
}

/// The tag of what pictures are taken of, as it is now.
fn shown_of(editor: &editor::Editor, shows: &Shows) -> String {
    match shows {
        Shows::Tagged(_, tag) => tag.clone(),
        Shows::Intake(place) => {
            let note = editor.job().thread.intake.get(*place);
            note.map(|it| it.tag.clone()).unwrap_or_default()
        }
    }
}

/// What a picture shows, in words: a tag as it stands, or the vehicle.
fn called(of: &str, words: &Words) -> String {
    if of.is_empty() {
        words.text("pictures-vehicle")
    } else {
        of.to_owned()
    }
}
