//! The lessons in the page. [`Root`] shows the table or the lessons, by the address; the table stays where it is beneath, so
//! that going back loses nothing. `#lessons` is the list, `#lesson=KEY` a lesson presented, `#lesson=KEY/exercise` and so on
//! its other views: see [`View`]. `#my-lesson=ID` is a lesson that was written in this browser, and `#own-lesson=…` one that the
//! address carries ([`sharing::LESSON_KEY`]). What an instructor writes and what came of exercises is kept on this device, see
//! [`kept`]; nothing else here writes into the browser.

mod exercise;
mod fields;
mod handing;
mod kept;
mod keys;
mod list;
mod opened;
mod over;
mod own_list;
mod picture;
mod reasons;
mod results;
mod scene;
mod stage;
mod told;
mod translated;
mod writing;

use crate::app::{App, colour_page};
use crate::browser;
use crate::reader::use_words;
use crate::state::Paper;
use drawing::Palette;
use exercise::Exercise;
use gloo_events::EventListener;
use lessons::Lesson;
use list::List;
use model::Job;
use opened::{Opened, use_opened};
pub(crate) use own_list::{make_of, open_file};
use stage::Stage;
use std::rc::Rc;
use translated::use_translations;
use words::Words;
use writing::Writing;
use yew::prelude::*;

/// How a lesson is shown.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum View {
    /// To a class: good and bad side by side, one thing at a time.
    #[default]
    Presenting,
    /// To a learner: the bad version without findings.
    Exercise,
    /// To the instructor whose own it is: its form.
    Writing,
}

impl View {
    const ALL: [Self; 3] = [Self::Presenting, Self::Exercise, Self::Writing];
    /// What stands behind the lesson's key in the address.
    fn word(self) -> &'static str {
        match self {
            Self::Presenting => "present",
            Self::Exercise => "exercise",
            Self::Writing => "write",
        }
    }
}

/// What stands before the id of an own lesson in the address.
const OWN: &str = "my-lesson=";

/// What the address asks for.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Route {
    /// The table with a job on it.
    Table,
    /// The list of lessons.
    List,
    /// A lesson by its key.
    Lesson(String, View),
    /// A lesson that was written in this browser, by its id.
    Own(String, View),
    /// A lesson that the address carries, packed.
    Carried(String, View),
}

impl Route {
    fn of(fragment: &str) -> Self {
        if fragment == "lessons" {
            return Self::List;
        }
        let (front, word) = fragment.split_once('/').unwrap_or((fragment, ""));
        let view = View::ALL.into_iter().find(|view| view.word() == word);
        if let Some(key) = front.strip_prefix("lesson=") {
            Self::Lesson(key.to_owned(), view.unwrap_or_default())
        } else if let Some(id) = front.strip_prefix(OWN) {
            Self::Own(id.to_owned(), view.unwrap_or_default())
        } else if front.starts_with(sharing::LESSON_KEY) {
            // Whoever gets a lesson by a link is to do it.
            Self::Carried(front.to_owned(), view.unwrap_or(View::Exercise))
        } else {
            Self::Table
        }
    }
    fn fragment(&self) -> String {
        match self {
            Self::Table => String::new(),
            Self::List => "lessons".to_owned(),
            Self::Lesson(key, View::Presenting) => format!("lesson={key}"),
            Self::Lesson(key, view) => format!("lesson={key}/{}", view.word()),
            Self::Own(id, view) => format!("{OWN}{id}/{}", view.word()),
            Self::Carried(packed, View::Exercise) => packed.clone(),
            Self::Carried(packed, view) => format!("{packed}/{}", view.word()),
        }
    }
    /// The same lesson in another view.
    fn seen(&self, view: View) -> Self {
        match self {
            Self::Lesson(key, _) => Self::Lesson(key.clone(), view),
            Self::Own(id, _) => Self::Own(id.clone(), view),
            Self::Carried(packed, _) => Self::Carried(packed.clone(), view),
            other => other.clone(),
        }
    }
    /// The view that is asked for.
    fn view(&self) -> View {
        match self {
            Self::Lesson(_, view) | Self::Own(_, view) | Self::Carried(_, view) => *view,
            Self::Table | Self::List => View::default(),
        }
    }
    /// Name of the lesson in kept results: one of another's making never stands among those of a built-in one.
    fn lesson_id(&self, lesson: &Lesson) -> String {
        match self {
            Self::Own(id, _) => format!("own/{id}"),
            Self::Carried(..) => format!("carried/{}", lesson.key),
            _ => lesson.key.clone(),
        }
    }
    /// Goes there.
    pub(crate) fn go(&self) {
        browser::set_fragment(&self.fragment());
    }
}

/// A job that is to be put on the table as one of its own.
#[derive(Clone)]
pub(crate) struct Asked {
    /// The job.
    pub(crate) job: Rc<Job>,
    /// Counts these wishes: the same job may be asked for twice.
    pub(crate) count: u32,
}

impl PartialEq for Asked {
    fn eq(&self, other: &Self) -> bool {
        self.count == other.count
    }
}

/// The whole page.
#[function_component]
pub(crate) fn Root() -> Html {
    let route = use_state(|| Route::of(&browser::fragment()));
    let asked = use_state(|| None::<Asked>);
    // The table is laid when it is first seen, not before: who only looks at a lesson leaves nothing in the browser.
    let is_laid = use_mut_ref(|| false);
    {
        let route = route.clone();
        use_effect_with((), move |()| {
            let listener = browser::window().map(|window| {
                EventListener::new(&window, "hashchange", move |_| {
                    let next = Route::of(&browser::fragment());
                    if next == Route::Table {
                        browser::drop_fragment();
                    }
                    route.set(next);
                })
            });
            move || drop(listener)
        });
    }
    use_effect_with((*route).clone(), |route| {
        if *route == Route::Table {
            browser::name_page(browser::PROGRAM);
            browser::focus_board();
        }
    });
    let open = {
        let asked = asked.clone();
        Callback::from(move |job: Rc<Job>| {
            let count = asked.as_ref().map_or(0, |asked| asked.count) + 1;
            asked.set(Some(Asked { job, count }));
            Route::Table.go();
        })
    };
    let is_covered = *route != Route::Table;
    if !is_covered {
        *is_laid.borrow_mut() = true;
    }
    let is_laid = *is_laid.borrow();
    html! {
        <>
            if is_laid {
                <div class={classes!("room", is_covered.then_some("room--covered"))} inert={is_covered}>
                    <App asked={(*asked).clone()} />
                </div>
            }
            if is_covered { <Lessons route={(*route).clone()} {open} /> }
        </>
    }
}

#[derive(Properties, PartialEq)]
struct LessonsProps {
    route: Route,
    /// Puts a job on the table.
    open: Callback<Rc<Job>>,
}

/// The list of lessons, or the one that is open.
#[function_component]
fn Lessons(props: &LessonsProps) -> Html {
    let palette = use_state(|| Rc::new(Paper::remembered().palette()));
    {
        let palette = palette.clone();
        use_effect_with((), move |()| {
            let paper = Paper::remembered();
            colour_page(&paper.palette(), paper.is_dark());
            let listener = browser::on_light_change(move || {
                colour_page(&paper.palette(), paper.is_dark());
                palette.set(Rc::new(paper.palette()));
            });
            move || drop(listener)
        });
    }
    let words = use_words();
    let told = use_translations(words.reader().language);
    let opened = use_opened(&props.route, told.as_ref());
    let Some(told) = told else {
        return html! {};
    };
    let palette: Rc<Palette> = (*palette).clone();
    let (route, view) = (props.route.clone(), props.route.view());
    let lesson = match opened {
        Opened::None => return html! { <List {told} /> },
        Opened::Waiting => return html! { <main class="over" aria-busy="true"></main> },
        Opened::Trouble(why) => return no_lesson(&words, &words.say(&why)),
        Opened::Lesson(lesson) => lesson,
    };
    let key = format!("{} {}", route.fragment(), words.reader().language.tag());
    match view {
        View::Presenting => html! { <Stage {key} {lesson} {palette} {route} open={props.open.clone()} /> },
        View::Exercise | View::Writing => match &route {
            Route::Own(id, View::Writing) => {
                let id = id.clone();
                html! { <Writing {key} {lesson} {id} {palette} {route} /> }
            }
            _ => html! { <Exercise {key} {lesson} {palette} {route} /> },
        },
    }
}

/// The strip above a lesson: the way back, its title, its other views.
fn heading(words: &Words, lesson: &Lesson, route: &Route, view: View) -> Html {
    let leave = Callback::from(|_: MouseEvent| Route::List.go());
    html! {
        <header class="lesson__head over__head">
            <button type="button" class="lesson__button" onclick={leave} data-testid="to-list">{ words.text("lessons-title") }</button>
            <h1>{ if lesson.title.is_empty() { words.text("own-untitled") } else { lesson.title.clone() } }</h1>
            { views(words, route, view) }
        </header>
    }
}

/// The views of a lesson, to go from one to the other.
fn views(words: &Words, route: &Route, view: View) -> Html {
    let all = View::ALL
        .into_iter()
        .filter(|it| *it != View::Writing || matches!(route, Route::Own(..)));
    let all = all.map(|it| {
        let to = route.seen(it);
        let onclick = Callback::from(move |_: MouseEvent| to.go());
        let name = words.text(match it {
            View::Presenting => "lesson-presenting",
            View::Exercise => "lesson-exercise",
            View::Writing => "lesson-writing",
        });
        let is_on = it == view;
        html! {
            <button type="button" class={classes!("lesson__button", is_on.then_some("lesson__button--on"))} {onclick} aria-current={is_on.then_some("page")}
                data-testid={format!("view-{}", it.word())}>{ name }</button>
        }
    });
    html! { <nav class="lesson__group" aria-label={words.text("lesson-views")}>{ for all }</nav> }
}

/// A lesson that does not open, and why.
fn no_lesson(words: &Words, why: &str) -> Html {
    let leave = Callback::from(|_: MouseEvent| Route::List.go());
    html! {
        <main class="no-drawing no-drawing--over" data-testid="no-lesson">
            <h1>{ words.text("lesson-not-open") }</h1>
            <p role="alert">{ why.to_owned() }</p>
            <button type="button" class="lesson__button" onclick={leave}>{ words.text("lessons-title") }</button>
        </main>
    }
}
