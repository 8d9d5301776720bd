//! The lesson that the address asks for: one that comes with the program, one that was written in this browser, or one that
//! the address carries inside itself.

use super::Route;
use super::kept;
use super::translated::Translations;
use lessons::{BuiltIn, Lesson};
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use words::Saying;
use yew::prelude::*;

/// What became of opening it.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Opened {
    /// The address asks for none, or for one that does not exist.
    None,
    /// It is read from the browser's storage.
    Waiting,
    /// It is open.
    Lesson(Rc<Lesson>),
    /// It does not open, and why.
    Trouble(Saying),
}

/// The lesson of the address, told in the reader's language where it is one of the program's.
#[hook]
pub(super) fn use_opened(route: &Route, told: Option<&Rc<Translations>>) -> Opened {
    // A view of it is another address, and the same lesson.
    let which = route.seen(super::View::default());
    let at_once = use_memo((which.clone(), told.cloned()), |(which, told)| match which {
        Route::Lesson(key, _) => match (BuiltIn::of(key), told) {
            (Some(built_in), Some(told)) => Opened::Lesson(Rc::new(told.lesson(built_in))),
            (Some(_), None) => Opened::Waiting,
            (None, _) => Opened::None,
        },
        Route::Carried(packed, _) => match lessons::open_lesson(packed) {
            Ok(lesson) => Opened::Lesson(Rc::new(lesson)),
            Err(error) => Opened::Trouble(error.said()),
        },
        Route::Own(..) => Opened::Waiting,
        Route::Table | Route::List => Opened::None,
    });
    let read = use_state(|| None::<(String, Opened)>);
    // What is written on in one view is shown in the others: each view reads it anew.
    let read_on = match route {
        Route::Own(id, _) => Some((id.clone(), route.view())),
        _ => None,
    };
    {
        let read = read.clone();
        use_effect_with(read_on.clone(), move |own| {
            if let Some((id, view)) = own.clone() {
                spawn_local(async move {
                    let opened = match kept::own(&id).await {
                        Ok(lesson) => Opened::Lesson(Rc::new(lesson)),
                        Err(error) => Opened::Trouble(error.said()),
                    };
                    read.set(Some((format!("{id} {view:?}"), opened)));
                });
            }
        });
    }
    match read_on {
        Some((id, view)) => match &*read {
            Some((key, opened)) if *key == format!("{id} {view:?}") => opened.clone(),
            _ => Opened::Waiting,
        },
        None => (*at_once).clone(),
    }
}
