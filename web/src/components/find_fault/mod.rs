//! Finding the fault: what is seen and heard, what to measure next with the leads laid on the drawing, what is suspected.
//! A touch for a symptom, a number for a reading, and on to the next: the other hand holds a lead.

mod kept;
mod next;
mod readings;
mod suspects;
mod symptoms;

pub(super) use suspects::things;

use crate::browser;
use crate::state::{Act, Panel, Store, escape_closes};
use assist::finding::{Finder, Reading, Suspect, Symptom, Verdict, said_unexplained};
use circuit::Probe;
use editor::Suspected;
use kept::from_kept;
use model::PartId;
use model::laying::Moved;
use next::next;
use readings::readings;
use suspects::suspects;
use symptoms::symptoms;
use words::Saying;
use yew::prelude::*;

/// How many suspects are listed and drawn in any case, and at most.
const LISTED: (usize, usize) = (8, 24);

/// From which share of the suspicion on one is listed and drawn besides.
const LIKELY: f64 = 0.02;

/// What is known so far, and what was typed.
#[derive(Clone, Debug, Default, PartialEq)]
struct Known {
    readings: Vec<Reading>,
    /// What was moved, or done to a wire, while all of them were read: what fails only then shows only then.
    moved: Option<Moved>,
    symptoms: Vec<Symptom>,
    thing: Option<PartId>,
    typed: String,
    /// A reading of the reader's own choice, and what is wrong with it.
    own: String,
    own_wrong: Option<Saying>,
}

#[derive(Properties, PartialEq)]
pub(crate) struct FindFaultProps {
    /// Counts the edits: what was worked out holds for one sheet.
    pub(crate) edits: u32,
    /// Begins with the readings that were kept on this sheet.
    #[prop_or_default]
    pub(crate) with_kept: bool,
}

#[function_component]
pub(crate) fn FindFault(props: &FindFaultProps) -> Html {
    let store = use_context::<Store>();
    let known = use_state(|| begin(store.as_ref().filter(|_| props.with_kept)));
    let finder = use_mut_ref(|| None::<Finder>);
    let made_for = use_mut_ref(|| None::<u32>);
    let told = use_mut_ref(|| None::<(u32, Known)>);
    let outcome = use_mut_ref(|| None::<Outcome>);
    {
        // What is suspected, and where to measure next, is drawn on the sheet as long as the drawer is open.
        let (desk, outcome) = (store.as_ref().map(|store| store.desk.clone()), outcome.clone());
        let is_known = !(known.readings.is_empty() && known.symptoms.is_empty());
        use_effect_with(
            (props.edits, known.readings.clone(), known.symptoms.clone()),
            move |_| {
                if let (Some(desk), Some(outcome)) = (desk, outcome.borrow().as_ref()) {
                    let (suspects, next) = drawn_of(&outcome.verdict, &outcome.ranking, is_known);
                    desk.change(|editor| editor.hunt(suspects, next));
                }
            },
        );
    }
    {
        let desk = store.as_ref().map(|store| store.desk.clone());
        use_effect_with((), move |()| {
            move || {
                if let Some(desk) = desk {
                    desk.change(|editor| editor.hunt(Vec::new(), None));
                }
            }
        });
    }
    let Some(store) = store else {
        return html! {};
    };
    let words = store.words();
    if *made_for.borrow() != Some(props.edits) {
        *finder.borrow_mut() = store
            .desk
            .see(|editor| Finder::new(editor.sheet(), &editor.job().settings));
        *made_for.borrow_mut() = Some(props.edits);
        *told.borrow_mut() = None;
    }
    let sheet = store.desk.see(|editor| editor.sheet().clone());
    // Typing a number changes nothing of what is known.
    let fresh = told.borrow().as_ref().is_none_or(|(edits, before)| {
        *edits != props.edits || before.readings != known.readings || before.symptoms != known.symptoms
    });
    if fresh {
        if let Some(finder) = finder.borrow_mut().as_mut() {
            finder.know(&known.readings, &known.symptoms);
        }
        *told.borrow_mut() = Some((props.edits, (*known).clone()));
        let finder = finder.borrow();
        *outcome.borrow_mut() = finder.as_ref().map(|finder| Outcome {
            verdict: finder.verdict(),
            ranking: listed(finder),
            unexplained: said_unexplained(&sheet, finder, &known.readings),
        });
    }
    let outcome = outcome.borrow();
    let panel = if props.with_kept {
        Panel::FindKept
    } else {
        Panel::FindFault
    };
    let close = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| {
            store.dispatch(Act::Toggle(panel));
            browser::focus_board();
        })
    };
    let body = match outcome.as_ref() {
        None => html! { <p class="drawer__none">{ words.text("fault-no-supply") }</p> },
        Some(outcome) => html! {
            <>
                { symptoms(&store, &known, &sheet) }
                { next(&store, &known, &outcome.verdict, &sheet) }
                { suspects(&store, &known, outcome, &sheet) }
                { readings(&store, &known, &sheet) }
                <p class="drawer__none">{ words.text("fault-caution") }</p>
            </>
        },
    };
    html! {
        <section onkeydown={escape_closes(&store)} class="drawer" data-testid="find-fault-drawer" aria-label={words.text("fault-head")}>
            <header class="drawer__head"><b>{ words.text("fault-head") }</b><button type="button" class="slip__close" onclick={close}>{ words.text("key-esc") }</button></header>
            { body }
        </section>
    }
}

/// What came of what is known.
struct Outcome {
    verdict: Verdict,
    ranking: Vec<Suspect>,
    unexplained: Vec<Saying>,
}

/// What is drawn of the search: what is at all likely, as the list has it, and the next measurement.
fn drawn_of(verdict: &Verdict, ranking: &[Suspect], is_known: bool) -> (Vec<Suspected>, Option<Probe>) {
    let next = match verdict {
        Verdict::Open(proposal) => Some(proposal.probe.clone()),
        _ => None,
    };
    let left = match verdict {
        _ if !is_known => &[],
        Verdict::Found(suspect) => std::slice::from_ref(suspect),
        _ => ranking,
    };
    let suspects = left.iter().map(|suspect| Suspected {
        breaks: suspect.breaks.clone(),
        share: suspect.share,
    });
    (suspects.collect(), next)
}

/// What the list shows: all that are likely, and a few besides.
fn listed(finder: &Finder) -> Vec<Suspect> {
    let mut ranking = finder.ranking();
    ranking.retain(|suspect| suspect.share >= 0.005);
    let likely = ranking.iter().filter(|suspect| suspect.share >= LIKELY).count();
    ranking.truncate(likely.clamp(LISTED.0, LISTED.1));
    ranking
}

/// What is known at first: nothing, or what was kept on the sheet.
fn begin(kept_on: Option<&Store>) -> Known {
    let kept = kept_on.map(|store| {
        store.desk.see(|editor| {
            let sheet = editor.sheet();
            let kept = sheet.readings.iter();
            kept.filter_map(|reading| from_kept(sheet, None, reading))
                .collect()
        })
    });
    Known {
        readings: kept.unwrap_or_default(),
        ..Known::default()
    }
}

/// A change of what is known, made from what it was.
fn change(known: &UseStateHandle<Known>, how: impl FnOnce(&mut Known)) {
    let mut next = (**known).clone();
    how(&mut next);
    known.set(next);
}
