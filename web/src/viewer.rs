//! The page where one only looks: a drawing that came by a link or in a page file. It has no tools to change anything, and writes nothing into
//! the browser.

use crate::app::{
    around_the_sheet, chosen_by, colour_page, use_looked_at, use_paper, use_read_by, use_whole,
};
use crate::browser;
use crate::canvas::Board;
use crate::components::*;
use crate::copies;
use crate::desk::Desk;
use crate::reader::{use_reader, use_words};
use crate::state::{Panel, Paper, State, Store};
use model::Job;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(crate) struct ViewerProps {
    /// The job that came.
    pub(crate) job: Rc<Job>,
}

/// The whole page of a link or a page file.
#[function_component]
pub(crate) fn Viewer(props: &ViewerProps) -> Html {
    let job = props.job.clone();
    let reader = use_reader();
    let store = {
        let words = reader.words.clone();
        use_reducer(move || State::new(Desk::looking((*job).clone(), words)))
    };
    use_looked_at(&store);
    use_read_by(&store, &reader);
    use_paper(&store);
    use_whole(&store);
    {
        let (store, outside, reader) = (store.clone(), store.outside, reader.clone());
        use_effect_with(outside, move |outside| {
            if let Some((action, _)) = outside
                && !chosen_by(*action, &reader)
            {
                copies::hand_out(*action, &store);
            }
        });
    }
    html! {
        <ContextProvider<Store> context={store.clone()}>
            <main class="table" data-testid="viewer">
                <Board />
                if store.is_whole && reader.words.is_complete() { { around_the_sheet(&store, panel(&store), html! {}) } }
            </main>
        </ContextProvider<Store>>
    }
}

/// What is open over the drawing.
fn panel(store: &Store) -> Html {
    match store.panel {
        Panel::Ask => html! { <Ask /> },
        Panel::Outline => outline(store),
        Panel::Keys => keys(store),
        _ => html! {},
    }
}

#[derive(Properties, PartialEq)]
pub(crate) struct NoDrawingProps {
    /// What does not open.
    pub(crate) trouble: AttrValue,
    /// Why it does not open, and what to do.
    pub(crate) why: AttrValue,
}

/// A link or a page file that does not open.
#[function_component]
pub(crate) fn NoDrawing(props: &NoDrawingProps) -> Html {
    let words = use_words();
    colour_page(&Paper::System.palette(), Paper::System.is_dark());
    html! {
        <main class="no-drawing" data-testid="no-drawing">
            <h1>{ &props.trouble }</h1>
            <p role="alert">{ &props.why }</p>
            if browser::carried().is_none() { <p><a href="./">{ words.text("viewer-without") }</a></p> }
        </main>
    }
}
