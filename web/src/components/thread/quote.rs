//! The quote: what is offered, how much it is needed, what it costs with the shop's own prices, and what the customer said.

use super::complaints::{link, refers_to};
use super::{Told, lines};
use crate::components::field::Field;
use crate::components::run_fields::set;
use crate::components::title_block::make;
use crate::state::Store;
use checks::Grade;
use model::edits::{EditError, ThreadList, add_line, set_rate};
use model::property::{PropertySet, PropertyType};
use model::thread::{FindingRefs, Money, Need, Offer, Rates, Tags, Thread};
use model::{Edit, Job};
use words::say;
use yew::prelude::*;

pub(super) fn count(store: &Store) -> usize {
    store.desk.see(|editor| editor.job().thread.offers.len())
}

pub(super) fn quote(store: &Store, _: &Told) -> Html {
    let words = store.words();
    let thread = store.desk.see(|editor| editor.job().thread.clone());
    let rates = &thread.rates;
    let offer_all = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| {
            let wanted = store.desk.see(wanted);
            make(&store, |job| offered(job, &wanted));
        })
    };
    let sums = paperwork::quote(&thread);
    let written = |sum: Option<Money>| words.say(&paperwork::money_or_unknown(sum, rates));
    html! {
        <>
            { for Rates::list().iter().map(|property| {
                let store = store.clone();
                let on_set = Callback::from(move |text: String| set(&store, |job| set_rate(job, property.name, &text)));
                html! { <Field key={property.name} {property} written={rates.get(property.name).unwrap_or_default()} {on_set} /> }
            }) }
            { for thread.offers.iter().enumerate().map(|(place, offer)| one(store, place, offer, rates)) }
            <button type="button" class="mend" onclick={offer_all} data-testid="quote-findings">{ words.text("quote-findings") }</button>
            { lines::add(store, ThreadList::Offers, "thread-add-offer") }
            if !thread.offers.is_empty() {
                <dl class="numbers" data-testid="quote-sums">
                    { for sums.by_need.iter().map(|(need, _, sum)| html! { <><dt>{ words.say(&need.said()) }</dt><dd>{ written(*sum) }</dd></> }) }
                    <dt>{ words.text("quote-all") }</dt><dd>{ written(sums.all) }</dd>
                    <dt>{ words.text("quote-approved") }</dt><dd>{ written(sums.approved) }</dd>
                </dl>
            }
        </>
    }
}

fn one(store: &Store, place: usize, offer: &Offer, rates: &Rates) -> Html {
    let words = store.words();
    let price = offer.price(rates).map_or_else(
        || words.text("quote-no-price"),
        |it| words.say(&paperwork::money(it, rates)),
    );
    html! {
        <div class="thread__line" data-testid="offer-line">
            <b class="thread__tag">{ &offer.tag }</b><b class="thread__price" data-testid="offer-price">{ price }</b>
            { lines::fields(store, ThreadList::Offers, place, offer, [&["what", "need", "parts-price", "hours", "decision"], &["answers", "decided-on", "extra", "added-on", "done"]]) }
            if !offer.clears.0.is_empty() {
                <div class="thread__ties"><span class="field__name">{ words.say(&model::said::name_of("clears")) }</span>
                    <ul>{ for offer.clears.0.iter().map(|finding| html! { <li>{ link(store, finding) }</li> }) }</ul></div>
            }
            { lines::remove(store, ThreadList::Offers, place, &offer.tag) }
        </div>
    }
}

/// A line that a finding asks for.
struct Wanted {
    words: String,
    need: Need,
    clears: FindingRefs,
    answers: Tags,
}

/// What the findings of the sheet ask for that is not offered yet: one line for each, by its remedy.
fn wanted(editor: &editor::Editor) -> Vec<Wanted> {
    let thread = &editor.job().thread;
    let is_offered = |thread: &Thread, check: &str, thing: Option<&String>| {
        thread
            .offers
            .iter()
            .flat_map(|offer| &offer.clears.0)
            .any(|it| it.check == check && it.things.first() == thing)
    };
    let mut all: Vec<Wanted> = Vec::new();
    for finding in editor.analysis().findings.iter().filter(|it| !it.undecided) {
        let refers = refers_to(editor, finding);
        if is_offered(thread, &refers.check, refers.things.first()) {
            continue;
        }
        let answers = thread
            .complaints
            .iter()
            .filter(|complaint| {
                complaint
                    .explained_by
                    .0
                    .iter()
                    .any(|it| it.check == refers.check && it.things.first() == refers.things.first())
            })
            .map(|complaint| complaint.tag.clone())
            .collect();
        all.push(Wanted {
            words: editor.words().say(&finding.remedy).chars().take(200).collect(),
            need: match finding.grade {
                Grade::Stop => Need::Must,
                Grade::Fix => Need::Should,
                Grade::Tidy => Need::Could,
            },
            clears: FindingRefs(vec![refers]),
            answers: Tags(answers),
        });
    }
    all
}

/// All of them as one edit.
fn offered(job: &Job, wanted: &[Wanted]) -> Result<Edit, EditError> {
    let mut after = job.clone();
    for line in wanted {
        let values = [
            ("what", line.words.as_str()),
            ("need", line.need.word()),
            ("clears", &line.clears.print()),
            ("answers", &line.answers.print()),
        ];
        let (edit, _) = add_line(&after, ThreadList::Offers, &values)?;
        after.apply(edit);
    }
    let change = model::Change::Thread(Box::new(after.thread));
    Ok(Edit::new(
        say!("edit-quote-findings", count = wanted.len()),
        vec![change],
    ))
}
