//! The exercise: the bad version without its findings. The learner picks a thing, chooses why it is wrong, hands in, and sees
//! on the drawing and in words what he found, missed and wrongly accused.

mod marks;
mod outcome;

use super::kept;
use super::over::{drawing, in_lesson, named, picked, use_drawing};
use super::results::Results;
use super::{Route, View, heading};
use crate::browser;
use crate::reader::use_words;
use crate::state::Act;
use ::drawing::Palette;
use editor::Open;
use lessons::{Lesson, Record, Sitting, Told, reasons, title_in};
use marks::{Acts, Marking, marking_form};
use outcome::{badges, outcome_list, outcome_words, points};
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use web_sys::{HtmlElement, HtmlInputElement};
use words::say;
use yew::prelude::*;

/// Under which key the browser remembers whether points are shown.
const SCORE: &str = "loomwright-score";

#[derive(Properties, PartialEq)]
pub(super) struct ExerciseProps {
    pub(super) lesson: Rc<Lesson>,
    pub(super) palette: Rc<Palette>,
    pub(super) route: Route,
}

#[function_component]
pub(super) fn Exercise(props: &ExerciseProps) -> Html {
    let words = use_words();
    let lesson = use_memo((props.lesson.clone(), words.clone()), |(lesson, words)| {
        Told::of(lesson).filled(words)
    });
    let store = use_drawing(&lesson, &props.palette);
    let at = props.route.fragment();
    let sitting = {
        let at = at.clone();
        use_state(move || kept::left(&at).unwrap_or_else(|| Sitting::new("")))
    };
    let marking = use_state(|| None::<Marking>);
    let score = use_state(|| browser::remembered(SCORE).as_deref() == Some("shown"));
    let turn = use_state(|| 0_u32);
    let unkept = use_state(|| None::<Record>);
    let outcome_head = use_node_ref();
    let choices = use_memo((), |()| reasons(&lesson));
    {
        let title = lesson.title.clone();
        use_effect_with((), move |()| browser::name_page(&title));
    }
    {
        // Enter, a click and a tap open what the drawing's details would be.
        let (marking, handed_in) = (marking.clone(), sitting.outcome().is_some());
        use_effect_with(store.beside.clone(), move |beside| {
            if let Open::Details(thing) = beside
                && !handed_in
            {
                marking.set(Some(Marking {
                    thing: in_lesson(thing),
                    at: None,
                }));
            }
        });
    }
    let put = {
        let (sitting, at) = (sitting.clone(), at.clone());
        Callback::from(move |next: Sitting| {
            kept::leave(&at, &next);
            sitting.set(next);
        })
    };
    let say_it = {
        let store = store.dispatcher();
        Callback::from(move |text: String| store.dispatch(Act::Say(text)))
    };
    let leave = {
        let (marking, store) = (marking.clone(), store.clone());
        Callback::from(move |()| {
            marking.set(None);
            store.dispatch(Act::Close);
            browser::focus_board();
        })
    };
    let choose = {
        let (sitting, put, lesson, leave) = (sitting.clone(), put.clone(), lesson.clone(), leave.clone());
        let (marking, say_it, words, store) = (marking.clone(), say_it.clone(), words.clone(), store.clone());
        Callback::from(move |reason: String| {
            let Some(now) = *marking else { return };
            let mut next = (*sitting).clone();
            let done = match now.at {
                None => next.mark(&lesson, now.thing, &reason, "").map(drop),
                Some(place) => {
                    let note = next
                        .marks()
                        .get(place)
                        .map(|it| it.note.clone())
                        .unwrap_or_default();
                    next.change(&lesson, place, &reason, &note)
                }
            };
            match done {
                Ok(()) => {
                    let (tag, _) = store.desk.see(|editor| named(editor, now.thing));
                    say_it.emit(words.say(&say!(
                        "exercise-marked",
                        thing = tag,
                        reason = title_in(&reason, &words)
                    )));
                    put.emit(next);
                    leave.emit(());
                }
                Err(refusal) => say_it.emit(words.say(&refusal.saying())),
            }
        })
    };
    let act = Acts {
        sitting: sitting.clone(),
        put: put.clone(),
        marking: marking.clone(),
        say_it: say_it.clone(),
        words: words.clone(),
        store: store.clone(),
    };
    let hand_in = {
        let (sitting, put, lesson, head) =
            (sitting.clone(), put.clone(), lesson.clone(), outcome_head.clone());
        let (marking, turn, unkept, say_it) = (marking.clone(), turn.clone(), unkept.clone(), say_it.clone());
        let (id, words) = (props.route.lesson_id(&lesson), words.clone());
        Callback::from(move |_: MouseEvent| {
            let mut next = (*sitting).clone();
            if next.hand_in(&lesson).is_err() {
                return;
            }
            marking.set(None);
            if let Some(outcome) = next.outcome() {
                say_it.emit(outcome_words(outcome, &words));
            }
            if let Some(record) = Record::of(&next, &lesson, &id, &kept::now()) {
                let (turn, unkept, say_it) = (turn.clone(), unkept.clone(), say_it.clone());
                let words = words.clone();
                spawn_local(async move {
                    match kept::keep_result(&record).await {
                        Ok(()) => unkept.set(None),
                        Err(error) => {
                            say_it.emit(words.say(&error.said()));
                            unkept.set(Some(record));
                        }
                    }
                    turn.set(turn.wrapping_add(1));
                });
            }
            put.emit(next);
            let head = head.clone();
            // Once it is on the page.
            gloo_timers::callback::Timeout::new(0, move || {
                if let Some(head) = head.cast::<HtmlElement>() {
                    let _ = head.focus();
                }
            })
            .forget();
        })
    };
    let again = {
        let (sitting, put, unkept) = (sitting.clone(), put.clone(), unkept.clone());
        Callback::from(move |_: MouseEvent| {
            let mut next = (*sitting).clone();
            next.again();
            unkept.set(None);
            put.emit(next);
            browser::focus_board();
        })
    };
    let toggle_score = {
        let score = score.clone();
        Callback::from(move |_: MouseEvent| {
            browser::remember(SCORE, if *score { "hidden" } else { "shown" });
            score.set(!*score);
        })
    };
    let name_learner = {
        let (sitting, put) = (sitting.clone(), put.clone());
        Callback::from(move |event: Event| {
            if let Some(field) = event.target_dyn_into::<HtmlInputElement>() {
                let mut next = (*sitting).clone();
                next.call_learner(&field.value());
                put.emit(next);
            }
        })
    };
    let badges = badges(&sitting, &words);
    let mark_picked = {
        let (marking, store) = (marking.clone(), store.clone());
        Callback::from(move |_: MouseEvent| {
            if let Some(thing) = picked(&store) {
                marking.set(Some(Marking { thing, at: None }));
            }
        })
    };
    let on_now = picked(&store).map(|thing| store.desk.see(|editor| named(editor, thing)));
    let label = store.desk.see(|editor| {
        words.say(&say!(
            "exercise-drawing",
            parts = editor.sheet().parts.len(),
            runs = editor.sheet().runs.len()
        ))
    });
    let is_own = !matches!(props.route, Route::Lesson(..));
    let story = || html! { <div class="paper__story">{ for lesson.story.iter().map(|it| html! { <p>{ it }</p> }) }</div> };
    let score_button = html! {
        <button type="button" class="lesson__button" onclick={toggle_score} data-testid="score">{ words.text(if *score { "exercise-hide-score" } else { "exercise-show-score" }) }</button>
    };
    let column = match sitting.outcome() {
        None => html! {
            <>
                <h2 class="paper__title">{ words.text("exercise-task") }</h2>
                if is_own { { story() } }
                <p class="paper__how">{ words.text("exercise-how") }</p>
                if let Some(now) = *marking {
                    { marking_form(now, &store, &words, &choices, &sitting, choose, leave) }
                } else {
                    <button type="button" class="paper__main" onclick={mark_picked} disabled={on_now.is_none()} data-testid="mark">
                        { match &on_now {
                            Some((tag, _)) => words.say(&say!("exercise-mark", thing = tag)),
                            None => words.text("exercise-mark-none"),
                        } }<kbd>{ "Enter" }</kbd>
                    </button>
                }
                <h3 class="paper__head">{ words.say(&say!("exercise-marks", count = sitting.marks().len())) }</h3>
                if sitting.marks().is_empty() { <p class="paper__none">{ words.text("exercise-no-marks") }</p> }
                <ol class="marks" data-testid="marks">{ for (0..sitting.marks().len()).map(|place| act.row(place)) }</ol>
                <label class="paper__field"><span>{ words.text("exercise-learner") }</span>
                    <input type="text" class="paper__input" maxlength="80" value={sitting.learner().to_owned()} onchange={name_learner} data-testid="learner" />
                </label>
                <div class="paper__row">
                    <button type="button" class="paper__main" onclick={hand_in} data-testid="hand-in">{ words.text("exercise-hand-in") }</button>
                    { score_button }
                </div>
            </>
        },
        Some(outcome) => html! {
            <>
                <h2 class="paper__title" tabindex="-1" ref={outcome_head} data-testid="outcome">{ outcome_words(outcome, &words) }</h2>
                if *score { <p class="paper__score" data-testid="points">{ points(outcome, &words) }</p> }
                { outcome_list(outcome, &sitting, &store, &words) }
                <div class="paper__row">
                    <button type="button" class="paper__main" onclick={again} data-testid="again">{ words.text("exercise-again") }</button>
                    { score_button }
                </div>
                <h3 class="paper__head">{ words.text("lesson-story") }</h3>
                { story() }
                <h3 class="paper__head">{ words.text("lesson-why") }</h3>
                { for lesson.why(&words).into_iter().map(|it| html! { <p class="paper__text">{ it }</p> }) }
                <p class="paper__faint">{ props.lesson.all_sources(&words).join("; ") }</p>
                <p class="paper__care"><b>{ words.text("lesson-care") }</b>{ " " }{ words.say(&checks::care()) }</p>
            </>
        },
    };
    let id = props.route.lesson_id(&props.lesson);
    html! {
        <main class="over" data-testid="exercise">
            { drawing(&store, &words, label, badges) }
            { heading(&words, &props.lesson, &props.route, View::Exercise) }
            <section class="paper" aria-label={words.text("lesson-exercise")} data-testid="paper">
                { column }
                <details class="paper__fold" data-testid="results-fold">
                    <summary>{ words.text("exercise-results") }</summary>
                    <p class="paper__faint">{ words.text("exercise-private") }</p>
                    <Results lesson={id} title={props.lesson.title.clone()} score={*score} turn={*turn} unkept={(*unkept).clone()} say={say_it} />
                </details>
            </section>
        </main>
    }
}
