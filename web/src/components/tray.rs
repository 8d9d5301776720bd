//! The strip along the lower edge of the frame: tools, overlays and zoom as words, for those who do not know the keys
//! yet and for fingers.

use super::keys::key;
use crate::browser;
use crate::state::Store;
use drawing::Overlay;
use editor::Action;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{HtmlElement, ResizeObserver};
use yew::prelude::*;

/// Tools, with the word for each on the strip.
const TOOLS: &[(Action, &str)] = &[
    (Action::OpenShelf, "tool-shelf"),
    (Action::PullRun, "tool-pull"),
    (Action::Meter, "tool-meter"),
    (Action::WhatFeeds, "tool-feeds"),
    (Action::Ask, "tool-ask"),
    (Action::Record, "tool-record"),
    (Action::Jobs, "tool-jobs"),
    (Action::Share, "tool-share"),
];
const OVERLAYS: &[(Action, Overlay)] = &[
    (Action::OverlayCurrent, Overlay::Current),
    (Action::OverlayVoltage, Overlay::Voltage),
    (Action::OverlayHeat, Overlay::Heat),
    (Action::OverlayProtection, Overlay::Protection),
    (Action::OverlaySignal, Overlay::Signal),
    (Action::OverlaySpeakers, Overlay::Speakers),
];
const ZOOM: &[(Action, &str)] = &[
    (Action::ZoomOut, "tool-zoom-out"),
    (Action::ZoomIn, "tool-zoom-in"),
    (Action::Fit, "tool-fit"),
];

pub(crate) fn tray(store: &Store) -> Html {
    let words = store.words();
    let (overlay, address) = store
        .desk
        .see(|editor| (editor.overlay(), editor.tool().address()));
    let word = |action: Action, word: &str, on: bool| {
        let desk = store.desk.clone();
        let onclick = Callback::from(move |_: MouseEvent| desk.perform(action));
        let title = format!("{} ({})", words.say(&action.said()), words.say(&key(action)));
        let class = classes!("tray__word", on.then_some("tray__word--on"));
        html! {
            <button type="button" {class} {onclick} {title} aria-pressed={on.to_string()} data-testid={action.id()}>
                { word }<kbd>{ words.say(&key(action)) }</kbd>
            </button>
        }
    };
    let is_on = |action: Action| match action {
        Action::PullRun => address.starts_with("pull"),
        Action::Meter => address.starts_with("meter"),
        Action::WhatFeeds => store.desk.see(|editor| editor.feeds().is_some()),
        Action::OpenShelf => store.panel == crate::state::Panel::Shelf || address.starts_with("place"),
        _ => false,
    };
    html! {
        <Strip label={words.text("tray")}>
            <div class="tray__group">{ for TOOLS.iter().filter(|(action, _)| store.desk.see(|editor| editor.offers(*action))).map(|(action, name)| word(*action, &words.text(name), is_on(*action))) }</div>
            <div class="tray__group" role="group" aria-label={words.text("tray-overlays")}>
                { for OVERLAYS.iter().map(|(action, lays)| word(*action, &words.say(&lays.said()), overlay == *lays)) }
            </div>
            <div class="tray__group tray__zoom">{ for ZOOM.iter().map(|(action, name)| word(*action, &words.text(name), false)) }</div>
        </Strip>
    }
}

#[derive(Properties, PartialEq)]
struct StripProps {
    label: AttrValue,
    children: Html,
}

/// The strip itself. It tells the styles its height, as `--tray`: in how many rows its words lie depends on the window and on
/// the language, and what slides in from the left ends above it.
#[function_component]
fn Strip(props: &StripProps) -> Html {
    let strip = use_node_ref();
    {
        let strip = strip.clone();
        use_effect_with((), move |()| {
            let told = strip.clone();
            let tell = Closure::<dyn Fn()>::new(move || {
                if let (Some(strip), Some(root)) = (told.cast::<HtmlElement>(), browser::root()) {
                    let height = format!("{}px", strip.offset_height());
                    let _ = root.style().set_property("--tray", &height);
                }
            });
            let observer = ResizeObserver::new(tell.as_ref().unchecked_ref()).ok();
            if let (Some(observer), Some(strip)) = (&observer, strip.cast::<HtmlElement>()) {
                observer.observe(&strip);
            }
            move || {
                if let Some(observer) = observer {
                    observer.disconnect();
                }
                drop(tell);
            }
        });
    }
    html! { <nav ref={strip} class="tray" aria-label={props.label.clone()}>{ props.children.clone() }</nav> }
}
