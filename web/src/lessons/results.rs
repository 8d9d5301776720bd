//! The results of an exercise that this browser keeps: who, when, what came of it; handed out as a file, deleted on request.

use super::kept;
use crate::files;
use crate::reader::use_words;
use lessons::{Record, Records, Verdict};
use wasm_bindgen_futures::spawn_local;
use words::say;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct ResultsProps {
    /// Name of the lesson in records.
    pub(super) lesson: String,
    pub(super) title: String,
    /// Whether points are shown.
    pub(super) score: bool,
    /// Counts what was kept: then they are read anew.
    pub(super) turn: u32,
    /// The last result where it could not be kept: it is handed out with the others all the same.
    pub(super) unkept: Option<Record>,
    /// Says something.
    pub(super) say: Callback<String>,
}

#[function_component]
pub(super) fn Results(props: &ResultsProps) -> Html {
    let words = use_words();
    let found = use_state(Vec::<(String, Record)>::new);
    let turn = use_state(|| 0_u32);
    {
        let (found, lesson) = (found.clone(), props.lesson.clone());
        use_effect_with((props.turn, *turn), move |_| {
            spawn_local(async move {
                // That nothing can be kept is said where something was to be.
                found.set(kept::results(&lesson).await.unwrap_or_default());
            });
        });
    }
    let mut all: Vec<Record> = found.iter().map(|(_, record)| record.clone()).collect();
    all.extend(props.unkept.clone());
    if all.is_empty() {
        return html! { <p class="paper__none">{ words.text("exercise-no-results") }</p> };
    }
    let hand_out = |ending: &'static str, media: &'static str, text: String| {
        let (title, say_it, words) = (props.title.clone(), props.say.clone(), words.clone());
        Callback::from(move |_: MouseEvent| {
            let name = files::file_name(&title, ending);
            say_it.emit(match files::export_text(&name, &text, media) {
                Ok(()) => words.say(&say!("lesson-downloaded", name = name)),
                Err(trouble) => words.say(&trouble.said()),
            });
        })
    };
    let records = Records(all.clone());
    let as_text = hand_out("-results.txt", "text/plain", records.report(&words, props.score));
    let as_json = hand_out("-results.json", "application/json", records.json());
    let remove = |names: Vec<String>| {
        let (turn, say_it, words) = (turn.clone(), props.say.clone(), words.clone());
        Callback::from(move |_: MouseEvent| {
            let (turn, say_it, names) = (turn.clone(), say_it.clone(), names.clone());
            let words = words.clone();
            spawn_local(async move {
                if let Err(error) = kept::remove_results(names).await {
                    say_it.emit(words.say(&error.said()));
                }
                turn.set(turn.wrapping_add(1));
            });
        })
    };
    let row = |name: Option<&String>, record: &Record| {
        let learner = match record.learner.as_str() {
            "" => words.text("exercise-no-name"),
            name => name.to_owned(),
        };
        let told = words.say(&say!(
            "exercise-result",
            found = record.found.len(),
            missed = record.missed.len(),
            wrong = record.count(Verdict::Wrong) + record.count(Verdict::OtherReason)
        ));
        let points = format!("{} / {}", record.points.0, record.points.1);
        html! {
            <li class="results__one" data-testid="result">
                <p><b>{ &learner }</b>{ " " }<span class="paper__faint">{ &record.when }</span><br />{ told }
                    if props.score { <>{ " " }<b>{ points }</b></> }</p>
                if let Some(name) = name {
                    <button type="button" class="lesson__button" onclick={remove(vec![name.clone()])} aria-label={words.say(&say!("exercise-delete-one", learner = learner))}>{ words.text("exercise-delete") }</button>
                }
            </li>
        }
    };
    let names: Vec<String> = found.iter().map(|(name, _)| name.clone()).collect();
    html! {
        <>
            <ul class="results" data-testid="results">
                { for found.iter().map(|(name, record)| row(Some(name), record)) }
                { for props.unkept.iter().map(|record| row(None, record)) }
            </ul>
            <div class="paper__row">
                <button type="button" class="lesson__button" onclick={as_text} data-testid="results-text">{ words.text("exercise-as-text") }</button>
                <button type="button" class="lesson__button" onclick={as_json} data-testid="results-json">{ words.text("exercise-as-json") }</button>
                <button type="button" class="lesson__button" onclick={remove(names)} data-testid="results-delete">{ words.text("exercise-delete-all") }</button>
            </div>
        </>
    }
}
