//! The form of an instructor's own lesson, on paper beside the drawing: title, story, the sheets it shows, the faults that are to
//! be found, what to look at, breaks, questions, the explanation; what it still lacks, and how it is given away. Every change is
//! kept at once.

mod breaks;
mod faults;
mod form;
mod looks;
mod questions;
mod sheets;

use super::fields::{Line, Prose, Sentence};
use super::handing::Handing;
use super::kept::{self, Source};
use super::over::{Badge, Sign, drawing, in_lesson, named, on_board, picked, use_drawing};
use super::reasons::ReasonBox;
use super::{Route, View, heading};
use crate::browser;
use crate::reader::use_words;
use crate::state::Act;
use ::drawing::Palette;
use breaks::Whole;
use editor::Open;
use form::Form;
use lessons::{Lesson, Thing, Told, fault_name, faults, reasons};
use std::rc::Rc;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;
use web_sys::HtmlElement;
use words::say;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct WritingProps {
    /// The lesson as it was opened.
    pub(super) lesson: Rc<Lesson>,
    pub(super) id: String,
    pub(super) palette: Rc<Palette>,
    pub(super) route: Route,
}

/// The form; taking other sheets of the job begins it anew, with all that was written.
#[function_component]
pub(super) fn Writing(props: &WritingProps) -> Html {
    let lesson = {
        let lesson = props.lesson.clone();
        use_state(move || (lesson, 0_u32))
    };
    let source = use_state(|| None::<Source>);
    {
        let source = source.clone();
        use_effect_with(props.id.clone(), move |id| {
            let id = id.clone();
            spawn_local(async move { source.set(kept::source(&id).await) });
        });
    }
    let on_take = {
        let (lesson, source, id) = (lesson.clone(), source.clone(), props.id.clone());
        Callback::from(move |(next, taken, list): (Lesson, Source, &'static str)| {
            let (id, kept_now) = (id.clone(), taken.clone());
            spawn_local(async move {
                // That nothing can be kept is said where the lesson itself is not kept.
                let _ = kept::keep_source(&id, kept_now).await;
            });
            source.set(Some(taken));
            lesson.set((Rc::new(next), lesson.1 + 1));
            // Once the form is there anew.
            gloo_timers::callback::Timeout::new(0, move || focus(list)).forget();
        })
    };
    let (lesson, turn) = &*lesson;
    html! {
        <Paper key={*turn} lesson={lesson.clone()} id={props.id.clone()} palette={props.palette.clone()} route={props.route.clone()}
            source={(*source).clone()} {on_take} />
    }
}

/// Puts the focus on an element by its id.
fn focus(id: &str) {
    let found = browser::document().and_then(|document| document.get_element_by_id(id));
    if let Some(field) = found.and_then(|field| field.dyn_into::<HtmlElement>().ok()) {
        let _ = field.focus();
    }
}

#[derive(Properties, PartialEq)]
struct PaperProps {
    lesson: Rc<Lesson>,
    id: String,
    palette: Rc<Palette>,
    route: Route,
    source: Option<Source>,
    /// The lesson with other sheets, which those are, and where that was chosen.
    on_take: Callback<(Lesson, Source, &'static str)>,
}

#[function_component]
fn Paper(props: &PaperProps) -> Html {
    let words = use_words();
    let store = use_drawing(&props.lesson, &props.palette);
    let draft = {
        let lesson = props.lesson.clone();
        use_state(move || lesson)
    };
    let trouble = use_state(|| None::<String>);
    let adding = use_state(|| None::<Thing>);
    let fresh = use_state(|| None::<usize>);
    let adding_to = use_state(|| None::<String>);
    let whole = use_memo((), |()| Whole(Told::of(&props.lesson).both()));
    let choices = use_memo((), |()| reasons(&props.lesson));
    {
        let name = words.text("lesson-writing");
        use_effect_with((), move |()| browser::name_page(&name));
    }
    let set = {
        let (draft, trouble, id, words) = (draft.clone(), trouble.clone(), props.id.clone(), words.clone());
        Callback::from(move |next: Lesson| {
            kept::hold(&id, next.clone());
            let (trouble, id, kept_now, words) = (trouble.clone(), id.clone(), next.clone(), words.clone());
            spawn_local(async move {
                let told = kept::keep(&id, &kept_now)
                    .await
                    .err()
                    .map(|error| words.say(&error.said()));
                trouble.set(told);
            });
            draft.set(Rc::new(next));
        })
    };
    {
        let adding = adding.clone();
        use_effect_with(store.beside.clone(), move |beside| {
            if let Open::Details(thing) = beside {
                adding.set(Some(in_lesson(thing)));
            }
        });
    }
    {
        // A fault that was just added wants its words.
        let fresh = fresh.clone();
        use_effect_with(*fresh, move |at| {
            if let Some(at) = at {
                focus(&format!("fault-{at}"));
                fresh.set(None);
            }
        });
    }
    let leave = {
        let (adding, store) = (adding.clone(), store.clone());
        Callback::from(move |()| {
            adding.set(None);
            store.dispatch(Act::Close);
            browser::focus_board();
        })
    };
    let add = {
        let (draft, set, whole, store) = (draft.clone(), set.clone(), whole.clone(), store.clone());
        let (adding, fresh) = (adding.clone(), fresh.clone());
        Callback::from(move |reason: String| {
            let Some(thing) = *adding else { return };
            let mut next = (**draft).clone();
            let there = faults(&next, whole.bad())
                .into_iter()
                .find(|it| it.reason == reason && it.things.contains(&thing));
            match there {
                Some(fault) => next.ask_for(&fault, true),
                None => drop(next.add_fault(&reason, &[thing], "")),
            }
            let at = faults(&next, whole.bad())
                .iter()
                .position(|it| it.reason == reason && it.things.contains(&thing));
            set.emit(next);
            adding.set(None);
            fresh.set(at);
            store.dispatch(Act::Close);
        })
    };
    let form = Form {
        draft: &draft,
        set: &set,
        words: &words,
        store: &store,
        picked: {
            let name = store.desk.see(|editor| {
                let thing = editor.selection().single().or_else(|| editor.focus().cloned());
                thing.map(|it| it.written(editor.sheet()))
            });
            picked(&store).zip(name)
        },
        adding_to,
    };
    let all = faults(&draft, whole.bad());
    let badges = all
        .iter()
        .filter(|fault| fault.wanted)
        .zip(1..)
        .filter_map(|(fault, number): (_, usize)| {
            Some(Badge {
                thing: on_board(*fault.things.first()?),
                sign: Sign::Mark,
                word: number.to_string(),
            })
        })
        .collect();
    let adding_form = adding.map(|thing| {
        let (tag, name) = store.desk.see(|editor| named(editor, thing));
        let shut = {
            let leave = leave.clone();
            Callback::from(move |_: MouseEvent| leave.emit(()))
        };
        let own = {
            let add = add.clone();
            Callback::from(move |typed: String| add.emit(fault_name(&typed)))
        };
        html! {
            <section class="marking" aria-label={words.say(&say!("exercise-marking", thing = tag.as_str()))} data-testid="adding" key={format!("{thing:?}")}>
                <header class="marking__head"><b>{ &tag }</b><span class="paper__faint">{ name }</span>
                    <button type="button" class="lesson__button" onclick={shut}>{ words.text("exercise-leave") }<kbd>{ "Esc" }</kbd></button></header>
                <p>{ words.text("own-fault-why") }</p>
                <ReasonBox reasons={choices.clone()} on_choose={add} on_own={own} on_leave={leave} />
            </section>
        }
    });
    let add_picked = {
        let (adding, thing) = (adding.clone(), form.picked.as_ref().map(|it| it.0));
        Callback::from(move |_: MouseEvent| adding.set(thing))
    };
    let on_take = {
        let (set, on_take) = (set.clone(), props.on_take.clone());
        Callback::from(move |taken: (Lesson, Source, &'static str)| {
            set.emit(taken.0.clone());
            on_take.emit(taken);
        })
    };
    let lacks = draft.lacks(whole.bad());
    let lacking = lacks.iter().map(|lack| lack.saying());
    let lacking = lacking.chain(Told::with(&draft, whole.0.clone()).unfilled());
    let lacking: Vec<String> = lacking.map(|lack| words.say(&lack)).collect();
    let is_whole = lacking.is_empty();
    let label = store.desk.see(|editor| {
        words.say(&say!(
            "own-drawing",
            parts = editor.sheet().parts.len(),
            runs = editor.sheet().runs.len()
        ))
    });
    let say_it = {
        let store = store.dispatcher();
        Callback::from(move |text: String| store.dispatch(Act::Say(text)))
    };
    html! {
        <main class="over" data-testid="writing">
            { drawing(&store, &words, label, badges) }
            { heading(&words, &draft, &props.route, View::Writing) }
            <section class="paper" aria-label={words.text("lesson-writing")} data-testid="paper">
                if let Some(trouble) = &*trouble { <p class="paper__trouble" role="alert" data-testid="own-trouble">{ trouble }</p> }
                <Sentence label={words.text("own-title")} value={draft.title.clone()} testid="own-title" on_change={form.put(|lesson, title| lesson.title = title)} />
                <Prose label={words.text("own-story")} hint={words.text("own-story-hint")} value={draft.story.clone()} testid="own-story" on_change={form.put_all(|lesson, story| lesson.story = story)} />
                if let Some(source) = &props.source { { form.sheets(source, &on_take) } }
                <p class="paper__faint">{ if draft.has_good() { words.text("own-with-good") } else { words.text("own-without-good") } }</p>
                <p class="paper__faint">{ words.text("own-numbers") }</p>
                <h2 class="paper__head">{ words.say(&say!("own-faults", count = all.iter().filter(|it| it.wanted).count())) }</h2>
                <p class="paper__how">{ words.text("own-faults-how") }</p>
                if let Some(adding) = adding_form { { adding } } else {
                    <button type="button" class="paper__main" onclick={add_picked} disabled={form.picked.is_none()} data-testid="add-fault">
                        { match &form.picked {
                            Some((_, name)) => words.say(&say!("own-add-fault", thing = name.as_str())),
                            None => words.text("own-add-fault-none"),
                        } }<kbd>{ "Enter" }</kbd>
                    </button>
                }
                <ul class="own-faults" data-testid="own-faults">{ for (0..all.len()).map(|at| form.fault(at, &all)) }</ul>
                { form.fold("own-looks", draft.looks.len(), form.looks()) }
                { form.fold("own-break", draft.breaks.len(), form.breaks(&whole)) }
                { form.fold("own-questions", draft.questions.len(), form.questions()) }
                { form.fold("own-explanation", draft.explanation.len(), html! {
                    <>
                        <Prose label={words.text("own-explain")} hint={words.text("own-explain-hint")} value={draft.explanation.clone()} testid="own-explain" on_change={form.put_all(|lesson, all| lesson.explanation = all)} />
                        <Line label={words.text("own-sources")} hint={words.text("own-sources-hint")} value={draft.sources.clone()} testid="own-sources" on_change={form.put_all(|lesson, all| lesson.sources = all)} />
                    </>
                }) }
                <h2 class="paper__head">{ words.text("own-give") }</h2>
                if lacking.is_empty() {
                    <p data-testid="own-whole">{ words.text("own-whole") }</p>
                } else {
                    <p>{ words.text("own-lacks") }</p>
                    <ul class="own-lacks" data-testid="own-lacks">{ for lacking.into_iter().map(|lack| html! { <li>{ lack }</li> }) }</ul>
                }
                <Handing lesson={(*draft).clone()} whole={is_whole} store={store.clone()} say={say_it} />
            </section>
        </main>
    }
}
