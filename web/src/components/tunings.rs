//! How the channels of a piece of equipment are set: target volts, gain, filters and the rest, a line for each channel.

use super::field::Field;
use super::run_fields::set;
use super::title_block::make;
use crate::state::Store;
use model::PartKind;
use model::edits::set_tuning;
use model::property::PropertySet;
use model::tuning::Tuning;
use web_sys::HtmlInputElement;
use words::say;
use yew::prelude::*;

/// The settings of what has this tag; nothing for what has no channels.
pub(super) fn tunings(store: &Store, tag: &str, kind: &PartKind) -> Html {
    if !matches!(
        kind,
        PartKind::Amplifier(_) | PartKind::Processor(_) | PartKind::HeadUnit(_)
    ) {
        return html! {};
    }
    let words = store.words();
    let (on, lines): (_, Vec<Tuning>) = store.desk.see(|editor| {
        let all = editor.sheet().tunings.iter().filter(|it| it.of == tag);
        (editor.on(), all.cloned().collect())
    });
    let add = {
        let (store, tag) = (store.clone(), tag.to_owned());
        Callback::from(move |event: Event| {
            let Some(input) = event.target_dyn_into::<HtmlInputElement>() else {
                return;
            };
            let channel = input.value().trim().to_owned();
            input.set_value("");
            if !channel.is_empty() {
                make(&store, |job| set_tuning(job, on, (&tag, &channel), "remark", ""));
            }
        })
    };
    let of_channel = |line: &Tuning| {
        let named = |name: &str| matches!(name, "of" | "channel");
        let fields = Tuning::list().iter().filter(|property| !named(property.name)).map(|property| {
            let (store, of, channel) = (store.clone(), line.of.clone(), line.channel.clone());
            let on_set = Callback::from(move |text: String| {
                set(&store, |job| set_tuning(job, on, (&of, &channel), property.name, &text))
            });
            html! { <Field key={format!("{}-{}", line.channel, property.name)} {property} written={line.get(property.name).unwrap_or_default()} {on_set} /> }
        });
        html! {
            <div class="thread__line" data-testid="tuning"><b>{ words.say(&say!("tuning-channel", channel = &line.channel)) }</b>{ for fields }</div>
        }
    };
    html! {
        <details class="slip__beside" data-testid="tunings">
            <summary class="slip__more">{ words.say(&say!("slip-tunings", count = lines.len())) }</summary>
            { for lines.iter().map(of_channel) }
            <label class="field"><span class="field__name">{ words.text("tuning-add") }</span>
                <input class="field__input" placeholder="1" maxlength="20" onchange={add} data-testid="add-tuning" />
            </label>
        </details>
    }
}
