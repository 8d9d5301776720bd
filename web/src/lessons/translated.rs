//! The lessons in the reader's language. English is part of the program; the words of other languages lie beside the page, one
//! file for each lesson, and are fetched once, when somebody who reads that language comes to the lessons.

use crate::browser;
use js_sys::{Array, Promise};
use lessons::{BuiltIn, LESSONS, Lesson, translate};
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};
use words::Language;
use yew::prelude::*;

thread_local! {
    /// What was fetched, for as long as the page is open.
    static FETCHED: RefCell<Vec<Rc<Translations>>> = const { RefCell::new(Vec::new()) };
}

/// The words of all lessons in one language.
#[derive(Debug)]
pub(super) struct Translations {
    language: Language,
    /// In the order of [`LESSONS`]; nothing where a file was not to be had.
    words: Vec<Option<String>>,
}

impl PartialEq for Translations {
    /// There is one of each language.
    fn eq(&self, other: &Self) -> bool {
        self.language == other.language
    }
}

impl Translations {
    /// A built-in lesson in this language; in English where its words are missing.
    pub(super) fn lesson(&self, built_in: &BuiltIn) -> Lesson {
        let english = built_in.lesson_in(self.language);
        let at = LESSONS.iter().position(|lesson| lesson.key == built_in.key);
        match at.and_then(|at| self.words.get(at)) {
            Some(Some(words)) => translate(english.clone(), words).unwrap_or(english),
            _ => english,
        }
    }
}

/// The lessons in a language; nothing for the moment in which they are fetched.
#[hook]
pub(super) fn use_translations(language: Language) -> Option<Rc<Translations>> {
    let ready = use_state(|| at_hand(language));
    {
        let ready = ready.clone();
        use_effect_with(language, move |language| {
            let language = *language;
            match at_hand(language) {
                Some(found) => ready.set(Some(found)),
                None => {
                    ready.set(None);
                    spawn_local(async move {
                        let words = fetched(language).await;
                        let found = Rc::new(Translations { language, words });
                        FETCHED.with_borrow_mut(|all| all.push(found.clone()));
                        ready.set(Some(found));
                    });
                }
            }
        });
    }
    // What another language left behind is not shown.
    (*ready).clone().filter(|found| found.language == language)
}

fn at_hand(language: Language) -> Option<Rc<Translations>> {
    if language.built_in() {
        let words = Vec::new();
        return Some(Rc::new(Translations { language, words }));
    }
    FETCHED.with_borrow(|all| all.iter().find(|found| found.language == language).cloned())
}

async fn fetched(language: Language) -> Vec<Option<String>> {
    let asked: Array = LESSONS
        .iter()
        .map(|lesson| {
            let name = format!("lessons/{}/{}.words", language.tag(), lesson.key);
            wasm_bindgen_futures::future_to_promise(async move {
                Ok(browser::file_beside(&name)
                    .await
                    .map_or(JsValue::NULL, JsValue::from))
            })
        })
        .collect();
    let texts = JsFuture::from(Promise::all(&asked)).await.ok();
    texts
        .and_then(|texts| texts.dyn_into::<Array>().ok())
        .map(|texts| texts.iter().map(|text| text.as_string()).collect())
        .unwrap_or_default()
}
