//! What is seen and heard: a part, then what about it.

use super::{Known, change};
use crate::state::Store;
use assist::finding::Symptom;
use model::{PartId, PartKind, Sheet};
use web_sys::HtmlSelectElement;
use words::{Saying, say};
use yew::prelude::*;

/// What is seen and heard: a part, then what about it.
pub(super) fn symptoms(store: &Store, known: &UseStateHandle<Known>, sheet: &Sheet) -> Html {
    let words = store.words();
    let parts: Vec<(PartId, String)> = sheet
        .parts
        .iter()
        .filter(|(_, part)| !sayable(&part.is).is_empty())
        .map(|(id, part)| (*id, format!("{} {}", part.tag, words.say(&part.said()))))
        .collect();
    let chosen = known.thing;
    let onchange = {
        let known = known.clone();
        Callback::from(move |event: Event| {
            if let Some(select) = event.target_dyn_into::<HtmlSelectElement>() {
                let id = select.value().parse::<u32>().ok().map(PartId);
                change(&known, |known| known.thing = id);
            }
        })
    };
    let about = chosen
        .and_then(|id| Some((id, sheet.parts.get(&id)?)))
        .map(|(id, part)| {
            sayable(&part.is)
                .iter()
                .map(|word| {
                    let known = known.clone();
                    let word = *word;
                    let onclick = Callback::from(move |_: MouseEvent| {
                        change(&known, |known| {
                            known.symptoms.push(symptom(word, id));
                            known.thing = None;
                        });
                    });
                    html! { <button type="button" class="fault__act" {onclick} data-testid={format!("fault-{word}")}>{ words.text(&format!("fault-{word}")) }</button> }
                })
                .collect::<Html>()
        });
    let lines = known.symptoms.iter().enumerate().map(|(place, told)| {
        let said = words.say(&symptom_said(told, sheet));
        let known = known.clone();
        let onclick = Callback::from(move |_: MouseEvent| change(&known, |known| { known.symptoms.remove(place); }));
        html! {
            <li class="fault__line" data-testid="fault-symptom"><span>{ said.clone() }</span>
                <button type="button" class="jobs__remove" {onclick} aria-label={words.say(&say!("fault-remove", what = said))}>{ words.text("remove") }</button></li>
        }
    });
    html! {
        <div class="fault">
            <h3>{ words.text("fault-known") }</h3>
            <ul class="fault__list">{ for lines }</ul>
            <div class="fault__row">
                <select class="field__input" {onchange} data-testid="fault-thing" aria-label={words.text("fault-thing")}>
                    <option value="" selected={chosen.is_none()}>{ words.text("fault-thing-none") }</option>
                    { for parts.into_iter().map(|(id, name)| html! { <option value={id.0.to_string()} selected={chosen == Some(id)}>{ name }</option> }) }
                </select>
                { about.unwrap_or_default() }
            </div>
        </div>
    }
}

/// What can be said of a part, by word and message.
fn sayable(kind: &PartKind) -> &'static [&'static str] {
    match kind {
        PartKind::Speaker(_) => &["silent", "weak", "plays", "hum"],
        PartKind::Amplifier(_) | PartKind::HeadUnit(_) | PartKind::Processor(_) => &["off", "on", "hum"],
        PartKind::Load(_) => &["off", "on"],
        PartKind::Fuse(_) | PartKind::Breaker(_) | PartKind::Block(_) => &["opened"],
        _ => &[],
    }
}

fn symptom(word: &str, part: PartId) -> Symptom {
    match word {
        "silent" => Symptom::Silent(part),
        "weak" => Symptom::Weak(part),
        "plays" => Symptom::Plays(part),
        "on" => Symptom::On(part),
        "opened" => Symptom::Opened(part, None),
        "hum" => Symptom::Hum(part),
        _ => Symptom::Off(part),
    }
}

fn symptom_said(symptom: &Symptom, sheet: &Sheet) -> Saying {
    let (part, key) = match symptom {
        Symptom::Silent(part) => (part, "fault-silent"),
        Symptom::Weak(part) => (part, "fault-weak"),
        Symptom::Plays(part) => (part, "fault-plays"),
        Symptom::Off(part) => (part, "fault-off"),
        Symptom::On(part) => (part, "fault-on"),
        Symptom::Opened(part, _) => (part, "fault-opened"),
        Symptom::Hum(part) => (part, "fault-hum"),
    };
    let tag = sheet
        .parts
        .get(part)
        .map_or_else(|| part.to_string(), |part| part.tag.clone());
    say!("fault-symptom-line", tag = tag, what = Saying::new(key))
}
