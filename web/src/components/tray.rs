//! The strip along the lower edge of the frame: tools, overlays and zoom as words, for those who do not know the keys
//! yet and for fingers.

use crate::state::Store;
use drawing::Overlay;
use editor::Action;
use yew::prelude::*;

/// Tools, with the word for each on the strip.
const TOOLS: &[(Action, &str)] = &[
    (Action::OpenShelf, "Shelf"),
    (Action::PullRun, "Pull run"),
    (Action::Meter, "Meter"),
    (Action::WhatFeeds, "Feeds"),
    (Action::Ask, "Ask"),
    (Action::Jobs, "Jobs"),
    (Action::Share, "Share"),
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
    (Action::ZoomOut, "−"),
    (Action::ZoomIn, "+"),
    (Action::Fit, "Fit"),
];

pub(crate) fn tray(store: &Store) -> Html {
    let (overlay, address) = store
        .desk
        .see(|editor| (editor.overlay(), editor.tool().address()));
    let word = |action: Action, word: &str, on: bool| {
        let desk = store.desk.clone();
        let onclick = Callback::from(move |_: MouseEvent| desk.perform(action));
        let title = format!("{} ({})", action.name(), action.key());
        let class = classes!("tray__word", on.then_some("tray__word--on"));
        html! {
            <button type="button" {class} {onclick} {title} aria-pressed={on.to_string()} data-testid={action.id()}>
                { word }<kbd>{ action.key() }</kbd>
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
        <nav class="tray" aria-label="Tools and overlays">
            <div class="tray__group">{ for TOOLS.iter().filter(|(action, _)| store.desk.see(|editor| editor.offers(*action))).map(|(action, name)| word(*action, name, is_on(*action))) }</div>
            <div class="tray__group" role="group" aria-label="Overlays">
                { for OVERLAYS.iter().map(|(action, lays)| word(*action, lays.title(), overlay == *lays)) }
            </div>
            <div class="tray__group tray__zoom">{ for ZOOM.iter().map(|(action, name)| word(*action, name, false)) }</div>
        </nav>
    }
}
