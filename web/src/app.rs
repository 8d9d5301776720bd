//! The app: the sheet on the table, and what lies around it.

use crate::browser;
use crate::canvas::Board;
use crate::clipboard;
use crate::components::*;
use crate::copies;
use crate::desk::Desk;
use crate::hooks;
use crate::keeper::Keeper;
use crate::state::{Act, Panel, Paper, State, Store};
use drawing::{Ink, Palette};
use editor::{Action, Open};
use gloo_events::EventListener;
use lessons::WorkedJob;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// The whole page.
#[function_component]
pub(crate) fn App() -> Html {
    let store = use_reducer(|| {
        let job = lessons::WORKED_JOBS
            .first()
            .map(WorkedJob::job)
            .unwrap_or_default();
        State::new(Desk::new(job))
    });
    let keeper = {
        let (desk, tell) = (store.desk.clone(), store.dispatcher());
        use_memo((), move |()| Keeper::new(desk, tell))
    };
    let keeper: Rc<Keeper> = (*keeper).clone();
    {
        let (desk, tell, keeper) = (store.desk.clone(), store.dispatcher(), keeper.clone());
        use_effect_with((), move |()| {
            hooks::install(&desk);
            clipboard::listen(&desk);
            desk.listen(Callback::from(move |effects| tell.dispatch(Act::Came(effects))));
            let keeps = keeper.clone();
            desk.on_edit(Callback::from(move |()| keeps.keep()));
            keeper.start(
                browser::asked_for()
                    .as_deref()
                    .and_then(WorkedJob::of)
                    .map(WorkedJob::job),
            );
        });
    }
    {
        let (desk, paper) = (store.desk.clone(), store.paper);
        use_effect_with(paper, move |paper| {
            let palette = paper.palette();
            colour_page(&palette, paper.is_dark());
            desk.set_palette(palette);
            paper.remember();
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
    {
        let (store, keeper) = (store.clone(), keeper.clone());
        use_effect_with(store.outside, move |outside| {
            if let Some((action, _)) = outside {
                outside_act(*action, &store, &keeper);
            }
        });
    }
    {
        let desk = store.desk.clone();
        use_effect_with((), move |()| {
            let listener = browser::window().map(|window| {
                EventListener::new(&window, "beforeprint", move |_| copies::lay_out_for_print(&desk))
            });
            move || drop(listener)
        });
    }
    let beside = match &store.beside {
        Open::Details(thing) => {
            html! { <Slip thing={thing.clone()} rename=false revision={store.revision} /> }
        }
        Open::Rename(thing) => html! { <Slip thing={thing.clone()} rename=true revision={store.revision} /> },
        Open::Offer { from, at } => html! { <Offer from={from.clone()} at={*at} /> },
        Open::Finding(_) => match store.desk.see(editor::Editor::finding) {
            Some(place) => explanation(&store, place),
            None => html! {},
        },
        Open::Nothing => html! {},
    };
    let panel = match store.panel {
        Panel::Shelf => html! { <Shelf /> },
        Panel::Ask => html! { <Ask /> },
        Panel::Jobs => html! { <Jobs /> },
        Panel::Readings => readings(&store),
        Panel::Limits => limits(&store),
        Panel::Outline => outline(&store),
        Panel::Keys => keys(&store),
        Panel::None => html! {},
    };
    html! {
        <ContextProvider<Store> context={store.clone()}>
            <ContextProvider<Rc<Keeper>> context={keeper}>
                <main class="table" data-testid="table">
                    <Board />
                    { hover_slip(&store) }
                    { overlay_legend(&store) }
                    <Notes />
                    { title_block(&store, false) }
                    <div class="foot">
                        { meter_face(&store) }
                        { spoken(&store) }
                        <LowStrip />
                        { tray(&store) }
                    </div>
                    { beside }
                    { panel }
                    <DropHere />
                </main>
            </ContextProvider<Rc<Keeper>>>
        </ContextProvider<Store>>
    }
}

/// Actions that only the page can do.
fn outside_act(action: Action, store: &Store, keeper: &Rc<Keeper>) {
    match action {
        Action::OpenFile => keeper.open_file(),
        Action::SaveFile => keeper.save_file(),
        Action::NewJob => keeper.open_new(model::Job::default()),
        Action::ExportSvg => store.dispatch(Act::Say(copies::export_svg(&store.desk))),
        Action::ExportPng => {
            let (desk, tell) = (store.desk.clone(), store.dispatcher());
            spawn_local(async move { tell.dispatch(Act::Say(copies::export_png(&desk).await)) });
        }
        Action::Print => {
            copies::lay_out_for_print(&store.desk);
            if let Some(window) = browser::window() {
                let _ = window.print();
            }
        }
        _ => {}
    }
}

/// Gives the page the inks of the palette, so that panels and drawing never differ.
fn colour_page(palette: &Palette, dark: bool) {
    let Some(root) = browser::document().and_then(|document| document.document_element()) else {
        return;
    };
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
    ];
    let mut style = format!("color-scheme: {};", if dark { "dark" } else { "light" });
    for (name, ink) in inks {
        style.push_str(&format!("--{name}: {};", palette.ink(ink)));
    }
    let _ = root.set_attribute("style", &style);
}
