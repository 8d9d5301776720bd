//! The app: the sheet on the table, and what lies around it.

use crate::browser;
use crate::canvas::Board;
use crate::clipboard;
use crate::components::*;
use crate::copies;
use crate::desk::Desk;
use crate::hooks;
use crate::keeper::Keeper;
use crate::lessons::{Asked, Route};
use crate::offline;
use crate::reader::{ReadBy, use_reader};
use crate::state::{Act, Panel, Paper, State, Store};
use crate::worked;
use drawing::{Ink, Palette};
use editor::{Action, Open};
use gloo_events::EventListener;
use lessons::WorkedJob;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use words::{Language, Lengths, Reader, Sizes};
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(crate) struct AppProps {
    /// A job that somebody asked to have on the table as one of its own.
    pub(crate) asked: Option<Asked>,
}

/// The table.
#[function_component]
pub(crate) fn App(props: &AppProps) -> Html {
    let reader = use_reader();
    let store = {
        let words = reader.words.clone();
        use_reducer(|| State::new(Desk::new(lessons::first_job(), words)))
    };
    let keeper = {
        let (desk, tell) = (store.desk.clone(), store.dispatcher());
        use_memo((), move |()| Keeper::new(desk, tell))
    };
    let keeper: Rc<Keeper> = (*keeper).clone();
    use_looked_at(&store);
    use_read_by(&store, &reader);
    use_paper(&store);
    use_whole(&store);
    {
        let (desk, keeper, tell) = (store.desk.clone(), keeper.clone(), store.dispatcher());
        let asked = props.asked.clone();
        use_effect_with((), move |()| {
            let keeps = keeper.clone();
            desk.on_edit(Callback::from(move |()| keeps.keep()));
            let language = desk.see(|editor| editor.words().reader().language);
            spawn_local(async move {
                let address = asked_for(language).await;
                keeper.start(address.or(asked.map(|asked| (*asked.job).clone())), language);
            });
            // What the browser keeps it fetches: the line is for what is seen first.
            browser::once_all_is_there(move || offline::keep_program(tell));
        });
    }
    {
        let keeper = keeper.clone();
        let is_first = use_mut_ref(|| true);
        use_effect_with(props.asked.clone(), move |asked| {
            // The first one is put there by the start itself.
            let is_first = is_first.replace(false);
            if let Some(asked) = asked.as_ref().filter(|_| !is_first) {
                keeper.open_new((*asked.job).clone());
            }
        });
    }
    {
        let (store, keeper, reader) = (store.clone(), keeper.clone(), reader.clone());
        use_effect_with(store.outside, move |outside| {
            if let Some((action, _)) = outside
                && !chosen_by(*action, &reader)
            {
                outside_act(*action, &store, &keeper);
            }
        });
    }
    html! {
        <ContextProvider<Store> context={store.clone()}>
            <ContextProvider<Rc<Keeper>> context={keeper}>
                <main class="table" data-testid="table">
                    <Board />
                    if store.is_whole && reader.words.is_complete() { { on_the_table(&store) } }
                </main>
            </ContextProvider<Rc<Keeper>>>
        </ContextProvider<Store>>
    }
}

/// What lies around the sheet of who edits it.
fn on_the_table(store: &Store) -> Html {
    html! {
        <>
            { around_the_sheet(store, panel(store), offline::newer(store)) }
            if store.on_body && store.panel == Panel::None { { body_plan_word(store) } }
            <DropHere />
        </>
    }
}

/// What is open over the drawing.
fn panel(store: &Store) -> Html {
    match store.panel {
        Panel::Shelf => html! { <Shelf /> },
        Panel::Ask => html! { <Ask /> },
        Panel::Jobs => html! { <Jobs /> },
        Panel::Share => html! { <Share /> },
        Panel::Readings => readings(store),
        Panel::Mending => html! { <MendAll edits={store.edits} /> },
        Panel::Breaking => html! { <BreakIt revision={store.revision} /> },
        Panel::FindFault => html! { <FindFault edits={store.edits} /> },
        Panel::FindKept => html! { <FindFault edits={store.edits} with_kept=true key="kept" /> },
        Panel::Proof => html! { <ProofDrawer edits={store.edits} /> },
        Panel::Record => html! { <Record /> },
        Panel::Body => html! { <BodyPlan revision={store.revision} /> },
        Panel::Papers => html! { <Papers revision={store.revision} /> },
        Panel::Thread => html! { <Thread revision={store.revision} /> },
        Panel::Becomes => html! { <Thread revision={store.revision} becomes=true key="becomes" /> },
        Panel::Sizing => html! { <SizingDrawer revision={store.revision} edits={store.edits} /> },
        Panel::Limits => limits(store),
        Panel::Outline => outline(store),
        Panel::Start => html! { <Start revision={store.revision} /> },
        Panel::Keys => keys(store),
        Panel::None => html! {},
    }
}

/// Actions that only the page can do.
fn outside_act(action: Action, store: &Store, keeper: &Rc<Keeper>) {
    match action {
        Action::OpenFile => keeper.open_file(),
        Action::SaveFile => keeper.save_file(),
        Action::Lessons => Route::List.go(),
        Action::MakeLesson => store.desk.see(|editor| crate::lessons::make_of(editor.job())),
        Action::NewJob => keeper.open_new(model::Job::default()),
        other => copies::hand_out(other, store),
    }
}

/// The job that the address asks for: a copy of what a link showed, or a worked job.
async fn asked_for(language: Language) -> Option<model::Job> {
    let copied = browser::fragment().strip_prefix(COPY).map(sharing::open);
    if let Some(copied) = copied {
        browser::drop_fragment();
        return copied.ok();
    }
    let worked = WorkedJob::of(&browser::asked_for()?)?;
    Some(worked::in_language(worked, language).await)
}

/// What every page with a drawing on the table has: it hears of what came of inputs, lets the clipboard and tests look, and
/// can be printed.
#[hook]
pub(crate) fn use_looked_at(store: &Store) {
    let (desk, tell) = (store.desk.clone(), store.dispatcher());
    use_effect_with((), move |()| {
        hooks::install(&desk);
        clipboard::listen(&desk);
        desk.listen(Callback::from(move |effects| tell.dispatch(Act::Came(effects))));
        let listener = browser::window().map(|window| {
            EventListener::new(&window, "beforeprint", move |_| copies::lay_out_for_print(&desk))
        });
        move || drop(listener)
    });
}

/// Hears of it when what was lacking of the program has come.
#[hook]
pub(crate) fn use_whole(store: &Store) {
    let (tell, was_whole) = (store.dispatcher(), store.is_whole);
    use_effect_with((), move |()| {
        // What the first picture asked for may have come since the state was made.
        if !was_whole {
            browser::once_all_is_there(move || tell.dispatch(Act::Whole));
        }
    });
}

/// Tells the editor who reads, and the reader what could not be followed.
#[hook]
pub(crate) fn use_read_by(store: &Store, reader: &ReadBy) {
    let desk = store.desk.clone();
    use_effect_with(reader.words.clone(), move |words| desk.read_by(words));
    let tell = store.dispatcher();
    use_effect_with(reader.trouble.clone(), move |trouble| {
        if let Some(trouble) = trouble {
            tell.dispatch(Act::Say(trouble.to_string()));
        }
    });
}

/// Chooses how to read, where that is what the action does.
pub(crate) fn chosen_by(action: Action, reader: &ReadBy) -> bool {
    let now = reader.words.reader();
    let next = match action {
        Action::English => Reader {
            language: Language::English,
            ..now
        },
        Action::German => Reader {
            language: Language::German,
            ..now
        },
        Action::Metres => Reader {
            lengths: Lengths::Metres,
            ..now
        },
        Action::Feet => Reader {
            lengths: Lengths::Feet,
            ..now
        },
        Action::SquareMillimetres => Reader {
            sizes: Sizes::SquareMillimetres,
            ..now
        },
        Action::Gauge => Reader {
            sizes: Sizes::Awg,
            ..now
        },
        _ => return false,
    };
    reader.choose.emit(next);
    true
}

/// Colours the page by the paper chosen, and follows the system's light where that is chosen.
#[hook]
pub(crate) fn use_paper(store: &Store) {
    let (desk, paper) = (store.desk.clone(), store.paper);
    use_effect_with(paper, move |paper| {
        let palette = paper.palette();
        colour_page(&palette, paper.is_dark());
        desk.set_palette(palette);
        // Nothing is written where one only looks.
        if !desk.see(editor::Editor::looks_only) {
            paper.remember();
        }
    });
    let (desk, tell) = (store.desk.clone(), store.dispatcher());
    use_effect_with(paper, move |paper| {
        let follows = *paper == Paper::System;
        let listener = browser::on_light_change(move || {
            if follows {
                let palette = Paper::System.palette();
                colour_page(&palette, Paper::System.is_dark());
                desk.set_palette(palette);
                tell.dispatch(Act::Paper(Paper::System));
            }
        });
        move || drop(listener)
    });
}

/// What lies around the sheet, the same where one edits and where one only looks. `news` stands above the tools. What
/// is open comes right after the sheet, so that Tab leads there first and not through every note and tool.
pub(crate) fn around_the_sheet(store: &Store, panel: Html, news: Html) -> Html {
    html! {
        <>
            { panel }
            { beside(store) }
            { hover_slip(store) }
            { legends(store) }
            <Notes />
            { start_offer(store) }
            { title_block_or_plate(store, false) }
            <div class="foot">
                { meter_face(store) }
                { moment_strip(store) }
                { news }
                { spoken(store) }
                <LowStrip />
                { tray(store) }
            </div>
        </>
    }
}

/// What is open beside a thing.
fn beside(store: &Store) -> Html {
    match &store.beside {
        Open::Details(thing) | Open::Rename(thing) if store.desk.see(editor::Editor::looks_only) => {
            plain_slip(store, thing)
        }
        Open::Details(thing) => {
            html! { <Slip thing={thing.clone()} rename=false revision={store.revision} /> }
        }
        Open::Rename(thing) => html! { <Slip thing={thing.clone()} rename=true revision={store.revision} /> },
        Open::Offer { from, at } => html! { <Offer from={from.clone()} at={*at} /> },
        Open::Finding(_) => match store.desk.see(editor::Editor::finding) {
            Some(place) => explanation(store, place),
            None => html! {},
        },
        Open::Nothing => html! {},
    }
}

/// Gives the page the inks of the palette, so that panels and drawing never differ.
pub(crate) fn colour_page(palette: &Palette, dark: bool) {
    let Some(root) = browser::root() else { return };
    let style = root.style();
    let inks = [
        ("paper", Ink::Paper),
        ("ruling", Ink::Ruling),
        ("frame", Ink::Frame),
        ("line", Ink::Line),
        ("text", Ink::Text),
        ("faint", Ink::Faint),
        ("picked", Ink::Picked),
        ("lit", Ink::Lit),
        ("slip", Ink::PartFill),
        ("stop", Ink::Stop),
        ("fix", Ink::Fix),
        ("tidy", Ink::Tidy),
        ("wash", Ink::Wash),
        ("wash-edge", Ink::WashEdge),
    ];
    // A property that the browser does not take leaves its colour as the style sheets have it.
    let _ = style.set_property("color-scheme", if dark { "dark" } else { "light" });
    for (name, ink) in inks {
        let _ = style.set_property(&format!("--{name}"), palette.ink(ink));
    }
}
