//! The thread of the job: what the customer complained of, the condition at intake, what is still to be found out, what
//! becomes of things, and the quote. Each is a list of its own that unfolds.

mod becomes;
mod complaints;
mod find_out;
mod intake;
mod lines;
mod quote;

use crate::state::{Act, Store, escape_closes};
pub(crate) use becomes::is_of_under;
use paperwork::OpenEnd;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(crate) struct ThreadProps {
    /// Counts the edits: everything here reads the editor.
    pub(crate) revision: u32,
    /// Whether it opens on what becomes of things.
    #[prop_or_default]
    pub(crate) becomes: bool,
}

/// What takes an analysis to know: worked out for the list that is unfolded, after an edit, and not at every move of the
/// pointer.
#[derive(Default, PartialEq)]
struct Told {
    open_ends: Vec<OpenEnd>,
    /// What comes of the work since the sheet before.
    comes: becomes::Comes,
}

/// A list of the drawer: the key of its title, how much is in it, and what it shows.
type Section = (&'static str, fn(&Store) -> usize, fn(&Store, &Told) -> Html);

const SECTIONS: &[Section] = &[
    (COMPLAINTS, complaints::count, complaints::complaints),
    ("thread-condition", intake::count, intake::intake),
    ("thread-find-out", find_out::count, find_out::find_out),
    (BECOMES, becomes::count, becomes::becomes),
    ("thread-quote", quote::count, quote::quote),
];
const COMPLAINTS: &str = "thread-complaints";
const BECOMES: &str = "thread-becomes";

fn told(store: &Store, unfolded: Option<&str>) -> Told {
    let mut told = Told::default();
    store.desk.see(|editor| match unfolded {
        Some(COMPLAINTS) => told.open_ends = paperwork::open_ends(editor.job()),
        Some(BECOMES) => told.comes = becomes::what_comes(editor).unwrap_or_default(),
        _ => {}
    });
    told
}

#[function_component]
pub(crate) fn Thread(props: &ThreadProps) -> Html {
    let first = if props.becomes { BECOMES } else { COMPLAINTS };
    let open = use_state(|| SECTIONS.iter().position(|(title, ..)| *title == first));
    let store = use_context::<Store>();
    let known = store.as_ref().map(|store| {
        (
            store.edits,
            store.desk.see(|editor| (editor.on(), editor.under())),
        )
    });
    let told = {
        let store = store.clone();
        use_memo((known, *open), move |(_, open)| {
            let unfolded = open.and_then(|open| SECTIONS.get(open)).map(|(title, ..)| *title);
            store.map(|store| told(&store, unfolded)).unwrap_or_default()
        })
    };
    let Some(store) = store else {
        return html! {};
    };
    let words = store.words();
    let close = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| {
            store.dispatch(Act::ShutPanel);
            crate::browser::focus_board();
        })
    };
    let sections = SECTIONS.iter().enumerate().map(|(number, (title, count, list))| {
        let is_open = *open == Some(number);
        let count = count(&store);
        let open = open.clone();
        let onclick = Callback::from(move |_: MouseEvent| open.set((!is_open).then_some(number)));
        html! {
            <section class="thread__section">
                <h3><button type="button" class="thread__title" aria-expanded={is_open.to_string()} {onclick} data-testid={*title}>
                    <b>{ words.text(title) }</b><span>{ count }</span>
                </button></h3>
                if is_open { <div class="thread__body" data-testid={format!("{title}-list")}>{ list(&store, &told) }</div> }
            </section>
        }
    });
    html! {
        <section onkeydown={escape_closes(&store)} class="drawer drawer--wide thread" data-testid="thread-drawer" aria-label={words.text("thread")}>
            <header class="drawer__head"><b>{ words.text("thread") }</b><button type="button" class="slip__close" onclick={close}>{ words.text("key-esc") }</button></header>
            { for sections }
        </section>
    }
}
