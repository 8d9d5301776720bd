//! The app: the sheet on the table, and what lies around it.

use crate::canvas::Board;
use crate::desk::Desk;
use crate::state::{Act, State, Store};
use drawing::Ink;
use yew::prelude::*;

/// The whole page.
#[function_component]
pub(crate) fn App() -> Html {
    let store = use_reducer(|| {
        let job = lessons::WORKED_JOBS.first().map(lessons::WorkedJob::job).unwrap_or_default();
        State::new(Desk::new(job))
    });
    {
        let dispatcher = store.dispatcher();
        let desk = store.desk.clone();
        use_effect_with((), move |()| {
            desk.listen(Callback::from(move |effects| dispatcher.dispatch(Act::Came(effects))));
        });
    }
    {
        let desk = store.desk.clone();
        use_effect_with(store.paper, move |paper| {
            let palette = paper.palette();
            colour_page(&palette, paper.is_dark());
            desk.set_palette(palette);
        });
    }
    html! {
        <ContextProvider<Store> context={store.clone()}>
            <Board />
        </ContextProvider<Store>>
    }
}

/// Gives the page the inks of the palette, so that panels and drawing never differ.
fn colour_page(palette: &drawing::Palette, dark: bool) {
    let Some(root) = crate::browser::document().and_then(|document| document.document_element()) else { return };
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
