//! The pictures of one thing: small, each with what is to be seen on it; and the way in, by the camera where there is one.

use super::title_block::make;
use crate::pictures::{address_of, scaled};
use crate::state::{Act, Store};
use model::edits::{add_picture, remove_picture, set_picture};
use wasm_bindgen_futures::spawn_local;
use web_sys::{File, HtmlInputElement};
use words::{Words, say};
use yew::prelude::*;

/// Pictures of what has this tag; of the vehicle without one.
pub(super) fn pictures(store: &Store, of: &str) -> Html {
    let words = store.words();
    let all: Vec<(String, String, String)> = store.desk.see(|editor| {
        let pictures = editor.job().pictures.iter().filter(|(_, it)| it.facts.of == of);
        pictures
            .map(|(key, it)| (key.clone(), address_of(it), it.facts.words.clone()))
            .collect()
    });
    let onchange = {
        let (store, of) = (store.clone(), of.to_owned());
        Callback::from(move |event: Event| {
            let Some(input) = event.target_dyn_into::<HtmlInputElement>() else {
                return;
            };
            let files: Vec<File> = input
                .files()
                .map(|list| (0..list.length()).filter_map(|at| list.item(at)).collect())
                .unwrap_or_default();
            input.set_value("");
            take_in(&store, &of, files);
        })
    };
    html! {
        <div class="pictures" data-testid="pictures">
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
                make(&store, |job| set_picture(job, &key, "what", &input.value()));
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
                <input class="field__input" value={what} onchange={tell} maxlength="400" placeholder={words.text("pictures-what")} aria-label={words.text("pictures-what")} />
                <button type="button" class="jobs__remove" onclick={remove} data-testid="remove-picture">{ words.text("remove") }</button>
            </figcaption>
        </figure>
    }
}

/// Takes pictures in, one after the other, scaled down.
pub(crate) fn take_in(store: &Store, of: &str, files: Vec<File>) {
    let (store, of) = (store.clone(), of.to_owned());
    spawn_local(async move {
        for file in files {
            let words = store.words();
            match scaled(&file).await {
                Ok(bytes) => {
                    let size = bytes.len().div_ceil(1000);
                    make(&store, |job| add_picture(job, &of, bytes).map(|(edit, _)| edit));
                    store.dispatch(Act::Say(words.say(&say!(
                        "pictures-added",
                        of = &of,
                        size = size
                    ))));
                }
                Err(why) => {
                    store.dispatch(Act::Say(words.say(&say!("pictures-unread", why = why))));
                }
            }
        }
    });
}

/// What a picture shows, in words: a tag as it stands, or the vehicle.
fn called(of: &str, words: &Words) -> String {
    if of.is_empty() {
        words.text("pictures-vehicle")
    } else {
        of.to_owned()
    }
}
