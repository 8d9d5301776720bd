//! The instructor's own lessons in the list: those that this browser keeps, and the way in for one that came as a file.

use super::kept::{self, Source};
use super::{Route, View};
use crate::files;
use crate::reader::use_words;
use gloo_events::{EventListener, EventListenerOptions};
use lessons::Lesson;
use model::Job;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;
use web_sys::DragEvent;
use words::{Words, say};
use yew::prelude::*;

/// Most bytes of a lesson's file: far more than a large drawing with its words.
const MOST_BYTES: usize = 4 * 1024 * 1024;

/// Puts a lesson that came as a file among one's own, and opens its exercise; says why not where it cannot be read.
pub(crate) fn open_file(name: &str, bytes: &[u8], words: &Words) -> Result<(), String> {
    let read = match std::str::from_utf8(bytes) {
        Ok(text) => lessons::read_draft(text).map_err(|errors| match errors.0.first() {
            Some(first) => words.say(&say!(
                "own-line",
                line = first.line,
                wrong = &first.message,
                help = first.help.as_ref().map_or_else(|| "".into(), words::Value::from)
            )),
            None => errors.to_string(),
        }),
        Err(error) => Err(error.to_string()),
    };
    match read {
        Ok(lesson) => {
            keep(&lesson, View::Exercise);
            Ok(())
        }
        Err(why) => Err(words.say(&say!("own-not-read", name = name, why = why))),
    }
}

/// Makes a lesson of a job and goes to its form.
pub(crate) fn make_of(job: &Job) {
    let id = keep(&Lesson::of_job(job), View::Writing);
    if job.sheets.len() > 1 {
        let (bad, good) = Lesson::sheets_of(job);
        let job = Rc::new(job.clone());
        spawn_local(async move {
            // As with the lesson: it is held all the same.
            let _ = kept::keep_source(&id, Source { job, bad, good }).await;
        });
    }
}

/// Begins a lesson of one's own, keeps it and goes to a view of it; gives its id.
fn keep(lesson: &Lesson, view: View) -> String {
    let id = kept::begin(lesson.clone());
    let (begun, lesson) = (id.clone(), lesson.clone());
    spawn_local(async move {
        // That it cannot be kept is said by its form; until then it is held.
        let _ = kept::keep(&begun, &lesson).await;
    });
    Route::Own(id.clone(), view).go();
    id
}

#[function_component]
pub(super) fn OwnList() -> Html {
    let words = use_words();
    let all = use_state(Vec::<(String, Lesson)>::new);
    let trouble = use_state(|| None::<String>);
    let turn = use_state(|| 0_u32);
    {
        let (all, trouble, words) = (all.clone(), trouble.clone(), words.clone());
        use_effect_with(*turn, move |_| {
            spawn_local(async move {
                match kept::own_lessons().await {
                    Ok(found) => all.set(found),
                    Err(error) => trouble.set(Some(words.say(&error.said()))),
                }
            });
        });
    }
    let read = {
        let (trouble, words) = (trouble.clone(), words.clone());
        Callback::from(
            move |opened: Result<Option<files::Opened>, files::FileTrouble>| match opened {
                Ok(Some(opened)) => trouble.set(open_file(&opened.name, &opened.bytes, &words).err()),
                Ok(None) => {}
                Err(error) => trouble.set(Some(words.say(&error.said()))),
            },
        )
    };
    {
        let read = read.clone();
        use_effect_with((), move |()| {
            let options = EventListenerOptions::enable_prevent_default();
            let listeners = crate::browser::window().map(|window| {
                let over = EventListener::new_with_options(&window, "dragover", options, |event| {
                    event.prevent_default()
                });
                let drop = EventListener::new_with_options(&window, "drop", options, move |event| {
                    event.prevent_default();
                    let Some(event) = event.dyn_ref::<DragEvent>() else {
                        return;
                    };
                    let dropped = files::dropped(event.data_transfer(), MOST_BYTES);
                    let read = read.clone();
                    spawn_local(async move { read.emit(dropped.await.map(Some)) });
                });
                [over, drop]
            });
            move || drop(listeners)
        });
    }
    let picks = words.clone();
    let pick = Callback::from(move |_: MouseEvent| {
        let (read, words) = (read.clone(), picks.clone());
        spawn_local(async move { read.emit(files::pick(MOST_BYTES, &words).await) });
    });
    let one = |(id, lesson): &(String, Lesson)| {
        let go = |view: View, key: &str| {
            let route = Route::Own(id.clone(), view);
            let onclick = Callback::from(move |_: MouseEvent| route.go());
            html! { <button type="button" class="lesson__button" {onclick} data-testid={format!("own-{}", view.word())}>{ words.text(key) }</button> }
        };
        let remove = {
            let (turn, trouble, id, words) = (turn.clone(), trouble.clone(), id.clone(), words.clone());
            Callback::from(move |_: MouseEvent| {
                let (turn, trouble, id, words) = (turn.clone(), trouble.clone(), id.clone(), words.clone());
                spawn_local(async move {
                    trouble.set(
                        kept::remove(&id)
                            .await
                            .err()
                            .map(|error| words.say(&error.said())),
                    );
                    turn.set(turn.wrapping_add(1));
                });
            })
        };
        let title = match lesson.title.as_str() {
            "" => words.text("own-untitled"),
            title => title.to_owned(),
        };
        html! {
            <li class="own-entry" key={id.clone()} data-testid="own-entry">
                <b class="lessons__title">{ &title }</b>
                <span class="lesson__group">
                    { go(View::Writing, "lesson-writing") }{ go(View::Exercise, "lesson-exercise") }{ go(View::Presenting, "lesson-presenting") }
                    <button type="button" class="lesson__button" onclick={remove} aria-label={words.say(&say!("own-delete", lesson = title))}>{ words.text("exercise-delete") }</button>
                </span>
            </li>
        }
    };
    html! {
        <section class="own-list" aria-label={words.text("own-lessons")} data-testid="own-lessons">
            <header class="own-list__head"><h2>{ words.text("own-lessons") }</h2>
                <button type="button" class="lesson__button" onclick={pick} data-testid="open-lesson">{ words.text("own-open") }</button></header>
            if let Some(trouble) = &*trouble { <p class="paper__trouble" role="alert" data-testid="own-list-trouble">{ trouble }</p> }
            if all.is_empty() { <p class="paper__faint">{ words.text("own-none") }</p> }
            <ul>{ for all.iter().map(one) }</ul>
        </section>
    }
}
