//! Who reads this page: the language and the units, kept in this browser. Every component asks here for the [`Words`] that
//! it shows; a choice holds at once, without loading the page anew.
//!
//! English is part of the program. Other languages lie beside the page and are fetched when a reader asks for them; a page
//! file, which has nothing beside it, carries them inside.

use crate::browser;
use js_sys::{Array, Promise};
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::{JsFuture, spawn_local};
use words::{FIRST_THEMES, Language, Reader, THEMES, Words, say};
use yew::prelude::*;

/// Under which key the browser keeps how somebody reads.
const KEPT: &str = "loomwright-reader";

/// Who reads, for every component: the context that [`ReaderHere`] gives.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct ReadBy {
    /// What turns sayings into sentences.
    pub(crate) words: Words,
    /// Chooses how to read, and keeps it.
    pub(crate) choose: Callback<Reader>,
    /// Why the choice could not be followed, in words that can be read.
    pub(crate) trouble: Option<AttrValue>,
}

/// Who reads.
#[hook]
pub(crate) fn use_reader() -> ReadBy {
    use_context().unwrap_or_else(|| ReadBy {
        words: Words::english(),
        choose: Callback::noop(),
        trouble: None,
    })
}

/// The reader's words. A component that asks for them is painted anew when somebody chooses otherwise.
#[hook]
pub(crate) fn use_words() -> Words {
    use_reader().words
}

#[derive(Properties, PartialEq)]
pub(crate) struct ReaderHereProps {
    /// The words that [`arrive`] found.
    pub(crate) words: Words,
    /// Why they are not in the language that was chosen before.
    pub(crate) trouble: Option<AttrValue>,
    pub(crate) children: Html,
}

/// Gives everything within it who reads.
#[function_component]
pub(crate) fn ReaderHere(props: &ReaderHereProps) -> Html {
    let words = use_state(|| props.words.clone());
    let trouble = use_state(|| props.trouble.clone());
    // The last choice: texts that arrive late must not undo a later one.
    let chosen = use_mut_ref(|| props.words.reader());
    use_effect_with((*words).clone(), name_language);
    {
        let (begun, set, trouble, chosen) =
            ((*words).clone(), words.clone(), trouble.clone(), chosen.clone());
        use_effect_with((), move |()| {
            if !begun.is_complete() {
                browser::once_picture_stands(move || complete(begun, set, trouble, chosen));
            }
        });
    }
    let choose = {
        let (set, words, trouble) = (words.clone(), (*words).clone(), trouble.clone());
        Callback::from(move |reader: Reader| {
            *chosen.borrow_mut() = reader;
            trouble.set(None);
            let next = words.read_by(reader);
            if next.at_hand() {
                keep(reader);
                set.set(next);
                return;
            }
            let (set, trouble, chosen, before) =
                (set.clone(), trouble.clone(), chosen.clone(), words.clone());
            spawn_local(async move {
                let fetched = fetched(reader, THEMES).await;
                let now = *chosen.borrow();
                if now.language != reader.language {
                    return;
                }
                match fetched {
                    Some(words) => {
                        keep(now);
                        set.set(words.read_by(now));
                    }
                    None => {
                        *chosen.borrow_mut() = before.reader();
                        trouble.set(Some(not_there(&before, reader.language).into()));
                    }
                }
            });
        })
    };
    let context = ReadBy {
        words: (*words).clone(),
        choose,
        trouble: (*trouble).clone(),
    };
    html! { <ContextProvider<ReadBy> {context}>{ props.children.clone() }</ContextProvider<ReadBy>> }
}

fn not_there(words: &Words, language: Language) -> String {
    words.say(&say!("reader-not-there", language = language.own_name()))
}

/// The words to begin with: as this reader chose before, or as the browser's languages say. Without the texts of that
/// language it is English, in the reader's units, and why.
pub(crate) async fn arrive() -> (Words, Option<AttrValue>) {
    let reader = remembered();
    let words = Words::of(reader);
    if words.at_hand() {
        return (words, None);
    }
    // As much as the program itself has: the first picture does not wait for more.
    let themes = if browser::all_is_there() {
        THEMES
    } else {
        FIRST_THEMES
    };
    match fetched(reader, themes).await {
        Some(words) => (words, None),
        None => {
            let (words, trouble) = in_english(reader);
            (words, Some(trouble))
        }
    }
}

/// The words for a reader whose own are not to be had, and what he is told.
fn in_english(reader: Reader) -> (Words, AttrValue) {
    let words = Words::of(Reader {
        language: Language::English,
        ..reader
    });
    let trouble = not_there(&words, reader.language).into();
    (words, trouble)
}

/// Fetches what the first picture did not say.
fn complete(
    begun: Words,
    words: UseStateHandle<Words>,
    trouble: UseStateHandle<Option<AttrValue>>,
    chosen: Rc<RefCell<Reader>>,
) {
    spawn_local(async move {
        let asked = begun.reader().language;
        let fetched = fetched(begun.reader(), THEMES).await;
        let now = *chosen.borrow();
        if now.language != asked {
            return;
        }
        match fetched {
            Some(whole) => words.set(whole.read_by(now)),
            None => {
                let (english, told) = in_english(now);
                *chosen.borrow_mut() = english.reader();
                words.set(english);
                trouble.set(Some(told));
            }
        }
    });
}

/// How somebody reads whose texts are at hand without waiting, or nothing.
pub(crate) fn at_once() -> Option<Words> {
    Some(Words::of(remembered())).filter(Words::at_hand)
}

fn remembered() -> Reader {
    browser::remembered(KEPT)
        .and_then(|kept| serde_json::from_str(&kept).ok())
        .unwrap_or_else(|| Reader::of_tags(browser::languages().iter().map(String::as_str)))
}

fn keep(reader: Reader) {
    if let Ok(kept) = serde_json::to_string(&reader) {
        browser::remember(KEPT, &kept);
    }
}

/// The texts of a language, from within the page, or those of these themes from beside it.
async fn fetched(reader: Reader, themes: &[&str]) -> Option<Words> {
    let tag = reader.language.tag();
    if let Some(carried) = browser::text_of(&format!("loomwright-texts-{tag}")) {
        return Some(Words::fetched(reader, [carried.as_str()]));
    }
    let asked: Array = themes
        .iter()
        .map(|theme| {
            let name = format!("texts/{tag}/{theme}.ftl");
            wasm_bindgen_futures::future_to_promise(async move {
                browser::file_beside(&name)
                    .await
                    .map(Into::into)
                    .ok_or_else(|| name.into())
            })
        })
        .collect();
    let texts = JsFuture::from(Promise::all(&asked)).await.ok()?;
    let texts: Vec<String> = texts
        .dyn_into::<Array>()
        .ok()?
        .iter()
        .filter_map(|text| text.as_string())
        .collect();
    let texts = texts.iter().map(String::as_str);
    Some(if themes.len() < THEMES.len() {
        Words::begun(reader, texts)
    } else {
        Words::fetched(reader, texts)
    })
}

/// Tells the browser what language the page is in, for screen readers and hyphenation.
fn name_language(words: &Words) {
    if let Some(root) = browser::root() {
        let _ = root.set_attribute("lang", words.reader().language.tag());
    }
}
