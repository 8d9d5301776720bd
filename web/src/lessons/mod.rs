//! The lessons in the page. [`Root`] shows the table or the lessons, by the address; the table stays where it is beneath, so
//! that going back loses nothing. `#lessons` is the list, `#lesson=KEY` a lesson presented, `#lesson=KEY/exercise` and so on
//! its other views: see [`View`]. Nothing here writes into the browser.

mod keys;
mod list;
mod picture;
mod scene;
mod stage;
mod told;
mod translated;

use crate::app::{App, colour_page};
use crate::browser;
use crate::reader::use_words;
use crate::state::Paper;
use drawing::Palette;
use gloo_events::EventListener;
use lessons::BuiltIn;
use list::List;
use model::Job;
use stage::Stage;
use std::rc::Rc;
use translated::use_translations;
use yew::prelude::*;

/// How a lesson is shown.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum View {
    /// To a class: good and bad side by side, one thing at a time.
    #[default]
    Presenting,
}

impl View {
    const ALL: [Self; 1] = [Self::Presenting];
    /// What stands behind the lesson's key in the address.
    fn word(self) -> &'static str {
        match self {
            Self::Presenting => "",
        }
    }
}

/// What the address asks for.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Route {
    /// The table with a job on it.
    Table,
    /// The list of lessons.
    List,
    /// A lesson by its key.
    Lesson(String, View),
}

impl Route {
    fn of(fragment: &str) -> Self {
        if fragment == "lessons" {
            return Self::List;
        }
        let Some(lesson) = fragment.strip_prefix("lesson=") else {
            return Self::Table;
        };
        let (key, word) = lesson.split_once('/').unwrap_or((lesson, ""));
        let view = View::ALL.into_iter().find(|view| view.word() == word);
        Self::Lesson(key.to_owned(), view.unwrap_or_default())
    }
    fn fragment(&self) -> String {
        match self {
            Self::Table => String::new(),
            Self::List => "lessons".to_owned(),
            Self::Lesson(key, view) if view.word().is_empty() => format!("lesson={key}"),
            Self::Lesson(key, view) => format!("lesson={key}/{}", view.word()),
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
    let key = match &props.route {
        Route::Lesson(key, _) => key.clone(),
        _ => String::new(),
    };
    let told = use_translations(words.reader().language);
    let lesson = use_memo((key, told.clone()), |(key, told)| {
        let told = told.as_ref()?;
        BuiltIn::of(key).map(|built_in| Rc::new(told.lesson(built_in)))
    });
    let Some(told) = told else {
        return html! {};
    };
    let palette: Rc<Palette> = (*palette).clone();
    match (&props.route, &*lesson) {
        (Route::Lesson(_, View::Presenting), Some(lesson)) => {
            html! { <Stage key={format!("{} {}", lesson.key, words.reader().language.tag())} lesson={lesson.clone()} {palette} open={props.open.clone()} /> }
        }
        _ => html! { <List {told} /> },
    }
}
