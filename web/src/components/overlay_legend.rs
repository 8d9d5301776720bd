//! What lies over and under the drawing, told in its upper left corner: the sheet laid under, the tracing paper, what feeds
//! what one asked for.

use super::under_legend::under_legend;
use crate::state::Store;
use drawing::Overlay;
use editor::Thing;
use words::{Saying, Unit, precise, say};
use yew::prelude::*;

/// What an overlay shows.
pub(crate) fn legend(overlay: Overlay) -> Saying {
    match overlay {
        Overlay::None => "".into(),
        Overlay::Current => say!("legend-current"),
        Overlay::Voltage => say!("legend-voltage"),
        Overlay::Heat => say!("legend-heat"),
        Overlay::Protection => say!("legend-protection"),
        Overlay::Signal => say!("legend-signal"),
        Overlay::Speakers => say!("legend-speakers"),
    }
}

pub(crate) fn legends(store: &Store) -> Html {
    let words = store.words();
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
                    let amps = precise(amps, Unit::Plain("A"), 1);
                    let amps = match circuit.drop {
                        Some(drop) => say!(
                            "legend-lost",
                            amps = amps,
                            drop = precise(drop.0, Unit::Plain("V"), 2)
                        ),
                        None => say!("as-it-stands", text = amps),
                    };
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
                    Some(editor.words().say(&say!(
                        "legend-fed",
                        part = editor.tag(*id),
                        amps = amps,
                        ways = ways.join("; ")
                    )))
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
                <p class="legend" data-testid="overlay-legend" aria-live="polite"><b>{ words.say(&overlay.said()) }</b>{ ": " }{ words.say(&legend(overlay)) }</p>
            }
            if let Some((written, fed)) = feeds {
                <div class="legend legend--feeds" data-testid="feeds-legend" aria-live="polite">
                    <b>{ words.say(&say!("legend-feeds", thing = written)) }</b>
                    if fed.is_empty() { <span>{ ": " }{ words.text("legend-feeds-nothing") }</span> }
                    <ul>{ for fed.into_iter().take(6).map(|line| html! { <li>{ line }</li> }) }</ul>
                </div>
            }
        </div>
    }
}
