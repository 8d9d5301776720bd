//! What another duty, alternator, battery or length moves: sizes, and findings that come or go.

use super::lines::{rating_text, size_text};
use super::{Answer, Asked, Found};
use assist::sizing::device_tag;
use checks::Finding;
use model::Sheet;
use words::{Saying, Words, say};
use yew::prelude::*;

/// Most lines of a kind; the rest is counted.
const MOST: usize = 6;

/// Whether two findings say the same of the same things, whatever the numbers are.
fn is_same(a: &Finding, b: &Finding) -> bool {
    (a.check, &a.parts, &a.runs, a.undecided) == (b.check, &b.parts, &b.runs, b.undecided)
}

/// The findings of one that another has not.
fn only_in<'a>(one: &'a Found, other: &Found) -> Vec<&'a Finding> {
    let lacks = |it: &&Finding| !other.findings.iter().any(|other| is_same(it, other));
    one.findings.iter().filter(lacks).collect()
}

/// Sizes that are others than they are as it is.
fn sizes(sheet: &Sheet, answer: &Answer, usual: &Answer, words: &Words) -> Vec<Saying> {
    let mut all = Vec::new();
    for line in &answer.sizing.runs {
        let before = usual.sizing.runs.iter().find(|it| it.run == line.run);
        let (Some(before), Some(run)) = (before, sheet.runs.get(&line.run)) else {
            continue;
        };
        if before.after != line.after {
            let (then, now) = (size_text(words, line.after), size_text(words, before.after));
            all.push(say!(
                "sizing-moved-size",
                thing = &run.tag,
                then = then,
                now = now
            ));
        }
    }
    for line in &answer.sizing.devices {
        let before = usual.sizing.devices.iter().find(|it| it.device == line.device);
        let Some(before) = before.filter(|before| before.after != line.after) else {
            continue;
        };
        let (then, now) = (rating_text(words, line.after), rating_text(words, before.after));
        let thing = device_tag(sheet, &line.device);
        all.push(say!("sizing-moved-size", thing = thing, then = then, now = now));
    }
    all
}

/// What moves against how it is.
pub(super) fn moved(
    sheet: &Sheet,
    answer: &Answer,
    usual: Option<&Answer>,
    found: Option<&Found>,
    usually: Option<&Found>,
    asked: Asked,
    words: &Words,
) -> Html {
    let mut all: Vec<(&'static str, Vec<Saying>)> = Vec::new();
    if let (Some(found), Some(usually)) = (found.filter(|it| it.asked == asked), usually) {
        let new = only_in(found, usually).into_iter();
        let gone = only_in(usually, found).into_iter();
        let new = new.map(|it| say!("sizing-moved-new", finding = &it.what));
        let gone = gone.map(|it| say!("sizing-moved-gone", finding = &it.what));
        all.push(("finding", new.chain(gone).collect()));
    }
    // Another series, or another aim, is no matter of what would be.
    let told = usual.filter(|usual| usual.asked == asked.as_it_is() && answer.asked == asked);
    if let Some(usual) = told {
        all.push(("size", sizes(sheet, answer, usual, words)));
    }
    let is_whole = all.len() == 2;
    let nothing = is_whole && all.iter().all(|(_, all)| all.is_empty());
    let items = all.iter().flat_map(|(kind, all)| {
        let rest = all.len().saturating_sub(MOST);
        let lines = all.iter().take(MOST).map(move |it| {
            html! { <li data-testid={format!("sizing-moved-{kind}")}>{ words.say(it) }</li> }
        });
        let more =
            (rest > 0).then(|| html! { <li>{ words.say(&say!("sizing-moved-more", count = rest)) }</li> });
        lines.chain(more).collect::<Vec<_>>()
    });
    html! {
        <div class="sizing__moved" aria-live="polite" hidden={asked.is_as_it_is()} data-testid="sizing-moved">
            <b>{ words.text("sizing-moved") }</b>
            if nothing { <p data-testid="sizing-moved-none">{ words.text("sizing-moved-none") }</p> }
            <ul>{ for items }</ul>
        </div>
    }
}
