//! What is suspected, likeliest first; a touch lights it on the drawing.

use super::{Known, Outcome};
use crate::state::Store;
use assist::finding::{Verdict, said_number, said_suspect};
use editor::Thing;
use model::Sheet;
use model::breaks::Break;
use words::{Saying, Unit, Value, precise, say};
use yew::prelude::*;

/// What is suspected, likeliest first; a touch lights it on the drawing.
pub(super) fn suspects(
    store: &Store,
    known: &UseStateHandle<Known>,
    outcome: &Outcome,
    sheet: &Sheet,
) -> Html {
    let words = store.words();
    let (verdict, ranking) = (&outcome.verdict, outcome.ranking.as_slice());
    if known.readings.is_empty() && known.symptoms.is_empty() {
        return html! { <p class="drawer__none">{ words.text("fault-start") }</p> };
    }
    let (title, ranking) = match verdict {
        Verdict::Found(suspect) => ("fault-done", std::slice::from_ref(suspect)),
        Verdict::Alike(_) => ("fault-left", ranking),
        _ => ("fault-suspects", ranking),
    };
    let lines = ranking.iter().zip(1..).map(|(suspect, place): (_, usize)| {
        let (store, things) = (store.clone(), things(&suspect.breaks));
        let onclick = Callback::from(move |_: MouseEvent| {
            if let Some(first) = things.first() {
                store.desk.change(|editor| editor.go_to(first));
            }
            store.desk.change(|editor| editor.light(&things));
        });
        let share = words.figure(precise(suspect.share, Unit::Percent, 0));
        let would = known.readings.iter().zip(&suspect.foretold);
        let would = would.map(|(reading, foretold)| said_number(&reading.probe, *foretold));
        let would: Vec<Saying> = would.map(|number| say!("as-it-stands", text = number)).collect();
        let would = (!would.is_empty()).then(|| say!("fault-foretold", numbers = Value::Joined(would, " · ")));
        html! {
            <li><button type="button" class="fault__suspect" {onclick} data-testid="fault-suspect">
                <span><b class="fault__place">{ place }</b>{ words.say(&said_suspect(sheet, suspect)) }
                    if let Some(would) = would { <small class="fault__would">{ words.say(&would) }</small> }</span><span>{ share }</span>
                <i class="fault__bar" style={format!("width:{:.0}%", suspect.share * 100.0)} aria-hidden="true"></i>
            </button></li>
        }
    });
    html! {
        <div class="fault" aria-live="polite">
            <h3 data-testid="fault-outcome">{ words.text(title) }</h3>
            <ol class="fault__list">{ for lines }</ol>
            { for outcome.unexplained.iter().map(|said| html! { <p class="fault__doubt" data-testid="fault-unexplained">{ words.say(said) }</p> }) }
        </div>
    }
}

/// The things that breaks are on.
pub(crate) fn things<'b>(breaks: impl IntoIterator<Item = &'b Break>) -> Vec<Thing> {
    let mut all = Vec::new();
    for broken in breaks {
        let (runs, parts) = broken.on();
        all.extend(runs.into_iter().map(Thing::Run));
        all.extend(parts.into_iter().map(Thing::Part));
    }
    all
}
