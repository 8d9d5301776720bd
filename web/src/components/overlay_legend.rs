//! What lies over and under the drawing, told in its upper left corner: the sheet laid under, the tracing paper, what feeds
//! what one asked for.

use super::under_legend::under_legend;
use crate::state::Store;
use drawing::Overlay;
use editor::Thing;
use yew::prelude::*;

/// What an overlay shows.
pub(crate) fn legend(overlay: Overlay) -> &'static str {
    match overlay {
        Overlay::None => "",
        Overlay::Current => "amps in each run, arrow by direction, width by load against what the run bears",
        Overlay::Voltage => "volts at the terminals against battery negative",
        Overlay::Heat => "temperature of each conductor",
        Overlay::Protection => {
            "each conductor in the hue of the device that guards it; unguarded ones dashed"
        }
        Overlay::Signal => "signal and turn-on leads",
        Overlay::Speakers => "what each channel sees, what each speaker gets",
    }
}

pub(crate) fn legends(store: &Store) -> Html {
    let (overlay, feeds) = store.desk.see(|editor| {
        let feeds = editor.feeds().map(|thing| {
            let written = thing.written(editor.sheet());
            let fed: Vec<String> = editor
                .fed_by(thing)
                .iter()
                .filter_map(|id| {
                    let circuit = editor.analysis().study.circuits.get(id)?;
                    let amps = editor
                        .analysis()
                        .study
                        .parts
                        .get(id)
                        .map_or(0.0, |flow| flow.current.mean.0.abs());
                    let drop = circuit
                        .drop
                        .map_or(String::new(), |drop| format!(", {:.2} V lost", drop.0));
                    let ways: Vec<String> = circuit
                        .feeds
                        .iter()
                        .map(|feed| {
                            let through: Vec<String> = feed
                                .parts
                                .iter()
                                .map(|part| Thing::Part(*part).written(editor.sheet()))
                                .collect();
                            format!("{} → {}", editor.tag(feed.source), through.join(" → "))
                        })
                        .collect();
                    Some(format!(
                        "{} ({:.1} A{drop}) from {}",
                        editor.tag(*id),
                        amps,
                        ways.join("; ")
                    ))
                })
                .collect();
            (written, fed)
        });
        (editor.overlay(), feeds)
    });
    html! {
        <div class="legends">
            { under_legend(store) }
            if overlay != Overlay::None {
                <p class="legend" data-testid="overlay-legend" aria-live="polite"><b>{ overlay.title() }</b>{ ": " }{ legend(overlay) }</p>
            }
            if let Some((written, fed)) = feeds {
                <div class="legend legend--feeds" data-testid="feeds-legend" aria-live="polite">
                    <b>{ format!("What feeds {written}") }</b>
                    if fed.is_empty() { <span>{ ": nothing on this sheet" }</span> }
                    <ul>{ for fed.into_iter().take(6).map(|line| html! { <li>{ line }</li> }) }</ul>
                </div>
            }
        </div>
    }
}
