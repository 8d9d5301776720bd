//! A finding explained: what, the number against its limit, why it matters, what to do, where the rule comes from, and
//! the mends. The text is the same as on the command line.

use super::keys::key;
use super::mark::{grade_class, mark};
use super::mend_does::MendDoes;
use super::title_block::make;
use crate::canvas::notes_width;
use crate::state::{Act, Store};
use checks::{Grade, Measure};
use editor::Action;
use model::edits::leave_out;
use words::{Unit, Words, say, told};
use yew::prelude::*;

/// The finding at this place of the list.
pub(crate) fn explanation(store: &Store, place: usize) -> Html {
    let found = store
        .desk
        .see(|editor| editor.analysis().findings.get(place).cloned());
    let Some(finding) = found else { return html! {} };
    let words = store.words();
    let told = checks::explanation_of(finding.check);
    let close = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| {
            store.dispatch(Act::Close);
            crate::browser::focus_board();
        })
    };
    let step = |action: Action| {
        let desk = store.desk.clone();
        Callback::from(move |_: MouseEvent| desk.perform(action))
    };
    let mends = finding.mends.iter().enumerate().map(|(number, mend)| {
        let desk = store.desk.clone();
        let onclick = Callback::from(move |_: MouseEvent| {
            desk.change(|editor| editor.mend(place, number));
            crate::browser::focus_board();
        });
        html! {
            <div class="mending">
                <button type="button" class="mend" data-testid="mend" {onclick} aria-describedby={format!("mend-does-{number}")}>
                    { words.say(&mend.edit.name.said()) }if number == 0 { <kbd>{ words.say(&key(Action::MendFinding)) }</kbd> }
                </button>
                <MendDoes {place} {number} edits={store.edits} />
            </div>
        }
    });
    let leave = {
        let (store, check) = (store.clone(), finding.check);
        Callback::from(move |_: MouseEvent| {
            make(&store, |job| leave_out(job, check, true));
            crate::browser::focus_board();
        })
    };
    let looks_only = store.desk.see(editor::Editor::looks_only);
    let count = store.desk.see(|editor| editor.analysis().findings.len());
    let width = store.desk.see(|editor| editor.camera().width);
    let right = (notes_width(width) + 14.0).max(14.0);
    html! {
        <aside class={classes!("slip", "explanation", grade_class(finding.grade))} style={format!("right:{right:.0}px")} data-testid="explanation"
            aria-label={words.say(&say!("finding-number", number = place + 1))}>
            <header class="slip__head">
                { mark(finding.grade) }
                <b>{ words.say(&finding.grade.said()) }</b>
                <span class="slip__kind">{ checks::check_named(finding.check).map(|check| words.say(&check.title())) }</span>
                <button type="button" class="slip__close" onclick={close} aria-label={words.text("close")} data-testid="close">{ words.text("key-esc") }</button>
            </header>
            <p class="explanation__what">{ words.say(&finding.what) }</p>
            if let Some(measure) = &finding.measure { { ruler(*measure, &words) } }
            <p><b>{ words.text("finding-do") }{ " " }</b>{ words.say(&finding.remedy) }</p>
            if let Some(told) = &told {
                <p>{ words.say(&told.why) }</p>
                <p class="explanation__source"><b>{ words.text("finding-source") }{ " " }</b>{ words.say(&told.source) }</p>
            }
            if !finding.assumed.is_empty() {
                <p class="explanation__source"><b>{ words.text("finding-assumed") }{ " " }</b>{ finding.assumed.iter().map(|it| words.say(it)).collect::<Vec<_>>().join(", ") }</p>
            }
            if finding.grade == Grade::Stop { <p class="explanation__care">{ words.say(&checks::care()) }</p> }
            if !looks_only { <div class="explanation__mends">{ for mends }</div> }
            if !looks_only { <button type="button" class="explanation__leave" onclick={step(Action::MendAll)} data-testid="slip-mend-all">{ words.text("mend-all") }{ " " }<kbd>{ words.say(&key(Action::MendAll)) }</kbd></button> }
            if !looks_only { <button type="button" class="explanation__leave" onclick={leave} data-testid="leave-out"
                title={words.text("finding-leave-out-where")}>
                { words.text("finding-leave-out") }
            </button> }
            <footer class="slip__foot">
                <button type="button" onclick={step(Action::PreviousFinding)} data-testid="previous-finding">{ words.text("finding-before") }</button>
                <span>{ words.say(&say!("finding-of", number = place + 1, count = count)) }</span>
                <button type="button" onclick={step(Action::NextFinding)} data-testid="next-finding">{ words.text("finding-next") }<kbd>{ "N" }</kbd></button>
            </footer>
        </aside>
    }
}

/// The number against its limit, on a ruler.
fn ruler(measure: Measure, words: &Words) -> Html {
    let Measure {
        value, limit, unit, ..
    } = measure;
    let most = value.max(limit).max(f64::MIN_POSITIVE) * 1.15;
    let at = |number: f64| 4.0 + 292.0 * (number / most).clamp(0.0, 1.0);
    html! {
        <figure class="ruler" data-testid="measure">
            <svg viewBox="0 0 300 22" aria-hidden="true">
                <path class="ruler__rule" d={format!("M4 16H296{}", (0..=10).map(|n| format!("M{:.1} 16v-4", 4.0 + 29.2 * f64::from(n))).collect::<String>())} />
                <path class="ruler__limit" d={format!("M{:.1} 2V20", at(limit))} />
                <path class="ruler__value" d={format!("M{:.1} 15l-5-9h10z", at(value))} />
            </svg>
            <figcaption>{ words.say(&say!("finding-against", value = told(value, limit, Unit::of(unit)), limit = told(limit, value, Unit::of(unit)))) }</figcaption>
        </figure>
    }
}
