//! Presenting: both versions pinned side by side at one scale, below them one thing at a time in large letters.

use super::keys::{self, OVERLAYS, meant};
use super::picture::{Picture, point_at};
use super::scene::{Do, Scene, Side, editors};
use super::told;
use super::{Route, View, views};
use crate::browser;
use crate::components::{legend, mark};
use crate::reader::use_words;
use checks::Grade;
use drawing::{Overlay, Palette};
use editor::side_by_side::{frame_of, frame_of_lit};
use gloo_events::{EventListener, EventListenerOptions};
use kurbo::Rect;
use lessons::{Lesson, Version, break_of, lit, title_in};
use model::Job;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement, KeyboardEvent};
use words::{Words, say};
use yew::prelude::*;

/// Findings that are listed under a picture; the rest is counted.
const MOST_LISTED: usize = 4;
/// Room around what is lit where it fills the pictures, in board units.
const AROUND: f64 = 70.0;

#[derive(Properties, PartialEq)]
pub(super) struct StageProps {
    pub(super) lesson: Rc<Lesson>,
    pub(super) palette: Rc<Palette>,
    pub(super) route: Route,
    /// Puts a job on the table as one of its own.
    pub(super) open: Callback<Rc<Job>>,
}

#[function_component]
pub(super) fn Stage(props: &StageProps) -> Html {
    let words = &use_words();
    let lesson = props.lesson.clone();
    let scene = {
        let (lesson, words) = (lesson.clone(), words.clone());
        use_reducer(move || Scene::new(lesson, words))
    };
    let page = use_node_ref();
    {
        let (page, lesson) = (page.clone(), lesson.clone());
        use_effect_with((), move |()| {
            browser::name_page(&lesson.title);
            if let Some(page) = page.cast::<HtmlElement>() {
                let _ = page.focus();
            }
        });
    }
    {
        let scene = scene.clone();
        use_effect_with((scene.pointing, scene.keys), move |_| {
            let listener = browser::window().map(|window| {
                let options = EventListenerOptions::enable_prevent_default();
                EventListener::new_with_options(&window, "keydown", options, move |event| {
                    if let Some(event) = event.dyn_ref::<KeyboardEvent>() {
                        on_key(event, &scene);
                    }
                })
            });
            move || drop(listener)
        });
    }
    let act = |what: Do| {
        let scene = scene.clone();
        Callback::from(move |_: MouseEvent| scene.dispatch(what))
    };
    // A button pressed by the pointer does not keep the focus: the next space bar is a step, not that button again.
    let keep_focus = Callback::from(|event: MouseEvent| event.prevent_default());
    let leave = Callback::from(|_: MouseEvent| Route::List.go());
    let onpointermove = scene.pointing.then(|| Callback::from(point));
    let (place, count) = scene.at.place(&lesson);
    let overlay = scene.at.overlay(&lesson);
    let things = scene.at.things(&lesson);
    let lights = [Version::Bad, Version::Good].map(|version| lit(&lesson.sheet(version), things));
    let [whole_bad, whole_good] = editors(&scene.whole);
    let frame = {
        let [bad, good] = &lights;
        let close = frame_of_lit(&[(whole_bad, bad), (whole_good, good)]).filter(|_| scene.close);
        close
            .map(|close| close.inflate(AROUND, AROUND))
            .or_else(|| frame_of(&[whole_bad, whole_good]))
            .unwrap_or(Rect::new(0.0, 0.0, 100.0, 100.0))
    };
    let broken =
        break_of(&lesson, scene.at.thrown()).map(|broken| (broken.clone(), words.say(&broken.kind.said())));
    let own_job = |version: Version| {
        let (open, lesson, words) = (props.open.clone(), lesson.clone(), words.clone());
        Callback::from(move |_: MouseEvent| open.emit(Rc::new(lesson.taken(version, &words))))
    };
    // An own lesson may have no good version: then the bad one has the room of both.
    let has_good = lesson.has_good();
    let shown = scene
        .sides
        .iter()
        .zip(lights)
        .filter(|(side, _)| has_good || side.version == Version::Bad);
    let sheets = shown.map(|(side, lit)| {
        html! {
            <section class={classes!("pinned", format!("pinned--{}", side.version.word()))} aria-label={words.say(&side.version.said())}
                data-testid={format!("sheet-{}", side.version.word())}>
                { head(side, words, own_job(side.version)) }
                <Picture sides={scene.sides.clone()} whole={scene.whole.clone()} version={side.version} palette={props.palette.clone()} {overlay} {lit}
                    marks={scene.marks} {frame} broken={broken.clone()} spot={scene.spot.as_ref().map(|spot| spot.1)} pointing={scene.pointing}
                    label={picture_label(side, words)} />
                { foot(side, &scene, words) }
                { outline(side, words) }
            </section>
        }
    });
    let step_button = |what: Do, name: String, key: &'static str, is_off: bool, id: &'static str| {
        html! { <button type="button" class="lesson__button" disabled={is_off} onclick={act(what)} data-testid={id}>{ name }<kbd>{ key }</kbd></button> }
    };
    let switch = |what: Do, name: String, key: String, is_on: bool, id: String| {
        html! {
            <button type="button" class={classes!("lesson__button", is_on.then_some("lesson__button--on"))} aria-pressed={is_on.to_string()} onclick={act(what)}
                data-testid={id}>{ name }<kbd>{ key }</kbd></button>
        }
    };
    let overlays = OVERLAYS.map(|(key, lays)| {
        switch(
            Do::Lay(lays),
            words.say(&lays.said()),
            key.to_string(),
            overlay == lays,
            format!("lay-{key}"),
        )
    });
    html! {
        <main class="lesson" ref={page} tabindex="-1" data-testid="lesson">
            <header class="lesson__head" onmousedown={keep_focus.clone()}>
                <button type="button" class="lesson__button" onclick={leave} data-testid="to-list">{ words.text("lessons-title") }<kbd>{ "Esc" }</kbd></button>
                <h1>{ &lesson.title }</h1>
                { views(words, &props.route, View::Presenting) }
                { switch(Do::Keys, words.text("lesson-keys"), "?".to_owned(), scene.keys, "keys".to_owned()) }
            </header>
            <div id="sheets" class={classes!("sheets", scene.pointing.then_some("sheets--pointing"), (!has_good).then_some("sheets--one"))} {onpointermove}>{ for sheets }</div>
            <section class="told" aria-label={words.text("lesson-step")}>
                <div class="told__head">
                    <p class="told__place"><b data-testid="place">{ format!("{place} / {count}") }</b>{ " " }<span data-testid="kind">{ told::kind(&scene, words) }</span></p>
                    <p class="told__legend" data-testid="overlay-legend">if overlay != Overlay::None { <b>{ words.say(&overlay.said()) }</b>{ ": " }{ words.say(&legend(overlay)) } }</p>
                </div>
                <div class={classes!("told__text", told::is_long(&scene, words).then_some("told__text--long"))} tabindex="0" role="region" aria-label={told::kind(&scene, words)} data-testid="told">{ told::text(&scene, words) }</div>
            </section>
            <p class="unseen" aria-live="polite" data-testid="spoken">{ spoken(&scene, words) }</p>
            <footer class="lesson__foot" onmousedown={keep_focus}>
                <div class="lesson__group">
                    { step_button(Do::Back, words.text("lesson-back"), "←", place == 1, "back") }
                    { step_button(Do::Next, words.text("lesson-next"), "→", place == count, "next") }
                    if !lesson.breaks.is_empty() { { switch(Do::Throw, words.text("lesson-throw"), "B".to_owned(), scene.at.thrown().is_some(), "throw".to_owned()) } }
                </div>
                <div class="lesson__group" role="group" aria-label={words.text("lesson-overlays")}>{ for overlays }</div>
                <div class="lesson__group">
                    { switch(Do::Marks, words.text("lesson-findings"), "F".to_owned(), scene.marks, "marks".to_owned()) }
                    { switch(Do::Close, words.text("lesson-close"), "Z".to_owned(), scene.close, "close".to_owned()) }
                    { switch(Do::Point, words.text("lesson-pointer"), "P".to_owned(), scene.pointing, "pointer".to_owned()) }
                </div>
            </footer>
            if scene.keys { { keys::list(&scene, words) } }
        </main>
    }
}

fn on_key(event: &KeyboardEvent, scene: &UseReducerHandle<Scene>) {
    let what = if event.key() == "Escape" {
        // The innermost first.
        if scene.keys {
            Some(Do::Keys)
        } else if scene.pointing {
            Some(Do::Point)
        } else {
            event.prevent_default();
            return Route::List.go();
        }
    } else {
        meant(event, scene.pointing)
    };
    if let Some(what) = what {
        event.prevent_default();
        scene.dispatch(what);
    }
}

/// The pointer moved over a sheet: its rings follow, at the same place on both.
fn point(event: PointerEvent) {
    let under = event
        .target()
        .and_then(|target| target.dyn_into::<Element>().ok());
    let picture = under.and_then(|under| under.closest(".picture").ok().flatten());
    if let Some(picture) = picture {
        let area = picture.get_bounding_client_rect();
        point_at(
            f64::from(event.client_x()) - area.x(),
            f64::from(event.client_y()) - area.y(),
        );
    }
}

/// Name of the version, by word and by sign, its findings counted, and the way to a job of one's own.
fn head(side: &Side, words: &Words, onclick: Callback<MouseEvent>) -> Html {
    let counts = side.editor.counts();
    let grades = [Grade::Stop, Grade::Fix, Grade::Tidy].into_iter().zip(counts);
    let sign = match side.version {
        Version::Bad => "M3 3 13 13M13 3 3 13",
        Version::Good => "M2 9 6 13 14 3",
    };
    html! {
        <header class="pinned__head">
            <svg class="pinned__sign" viewBox="0 0 16 16" aria-hidden="true"><path d={sign} /></svg>
            <h2>{ words.say(&side.version.said()) }</h2>
            <p class="pinned__counts" data-testid={format!("counts-{}", side.version.word())}>
                { for grades.map(|(grade, count)| html! {
                    <span class={classes!("grade-count", (count == 0).then_some("grade-count--none"))}>{ mark(grade) }{ format!("{count} {}", words.say(&grade.said())) }</span>
                }) }
            </p>
            <button type="button" class="lesson__button" {onclick} data-testid={format!("open-{}", side.version.word())}>
                { words.text("lesson-open") }<span class="unseen">{ words.say(&side.version.said()) }</span>
            </button>
        </header>
    }
}

/// What the break did, sentence by sentence.
fn happenings(side: &Side, words: &Words) -> Vec<String> {
    match &side.happened {
        None => vec![words.text("lesson-cannot-break")],
        Some(none) if none.is_empty() => vec![words.text("lesson-nothing-happens")],
        Some(all) => all
            .iter()
            .map(|it| words.say(&told::happening(it, words)))
            .collect(),
    }
}

/// Under a picture: what the break did, or what is found, in short.
fn foot(side: &Side, scene: &Scene, words: &Words) -> Html {
    let id = format!("foot-{}", side.version.word());
    if scene.at.thrown().is_some() {
        let told = happenings(side, words);
        return html! { <ul class="pinned__foot" data-testid={id}>{ for told.into_iter().map(|told| html! { <li>{ told }</li> }) }</ul> };
    }
    let findings = &side.editor.analysis().findings;
    // By the numbers of their marks on the drawing.
    let listed = findings
        .iter()
        .take(MOST_LISTED)
        .enumerate()
        .map(|(number, finding)| {
            html! { <li>{ mark(finding.grade) }<b>{ number + 1 }</b>{ title_in(finding.check, words) }</li> }
        });
    let more = findings.len().saturating_sub(MOST_LISTED);
    html! {
        <ul class="pinned__foot" data-testid={id}>
            if scene.marks {
                { for listed }
                if more > 0 { <li>{ words.say(&say!("lesson-more", count = more)) }</li> }
                if findings.is_empty() { <li>{ words.text("lesson-nothing-found") }</li> }
            }
        </ul>
    }
}

fn picture_label(side: &Side, words: &Words) -> String {
    let sheet = side.editor.sheet();
    words.say(&say!(
        "lesson-picture",
        version = side.version.said(),
        parts = sheet.parts.len(),
        runs = sheet.runs.len()
    ))
}

/// The same for those who do not see it.
fn outline(side: &Side, words: &Words) -> Html {
    let lines = side.editor.outline();
    html! {
        <div class="unseen" data-testid={format!("outline-{}", side.version.word())}>
            <h3>{ words.say(&say!("lesson-outline", version = side.version.said())) }</h3>
            <ul>{ for lines.into_iter().map(|line| html! { <li>{ line.text }</li> }) }</ul>
        </div>
    }
}

/// What is said aloud: the step that is on, what the break did, or what the pointer stands on.
fn spoken(scene: &Scene, words: &Words) -> String {
    if let Some((thing, _)) = scene.spot.as_ref().filter(|_| scene.pointing) {
        let of = |side: &Side| {
            let there = side.editor.area_of(thing).is_some();
            let told = if there {
                side.editor.spoken(thing)
            } else {
                words.text("lesson-not-there")
            };
            words.say(&say!(
                "lesson-of-version",
                version = side.version.said(),
                told = told
            ))
        };
        return scene.sides.iter().map(of).collect::<Vec<_>>().join(" ");
    }
    let (place, count) = scene.at.place(&scene.lesson);
    let mut all = words.say(&say!(
        "lesson-step-on",
        place = place,
        count = count,
        kind = told::kind(scene, words)
    ));
    if scene.at.thrown().is_some() {
        for side in scene.sides.iter() {
            let told = happenings(side, words);
            all.push(' ');
            all.push_str(&words.say(&say!(
                "lesson-of-version",
                version = side.version.said(),
                told = told.join(" ")
            )));
        }
    }
    all
}
