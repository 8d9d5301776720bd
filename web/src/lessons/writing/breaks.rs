//! Breaks to try: what breaks and how, what the analysis says follows from it, and what there is to see.

use super::form::Form;
use crate::lessons::fields::Sentence;
use crate::lessons::told::happening;
use crate::reader::use_words;
use checks::Analysis;
use lessons::{Break, BreakKind, Shown, Version, aftermath};
use std::rc::Rc;
use words::{Words, say};
use yew::prelude::*;

/// Sentences on what follows that are listed; the rest is counted.
const MOST_LISTED: usize = 6;

/// Both versions whole, with their analysis, the bad one first.
#[derive(Clone)]
pub(super) struct Whole(pub(super) Rc<[Shown; 2]>);

impl Whole {
    /// The analysis of the bad version.
    pub(super) fn bad(&self) -> &Analysis {
        let [bad, _] = &*self.0;
        &bad.analysis
    }
}

impl PartialEq for Whole {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

#[derive(Properties, PartialEq)]
struct FollowsProps {
    broken: Break,
    whole: Whole,
    has_good: bool,
}

/// What follows from a break, by the analysis, version by version.
#[function_component]
fn Follows(props: &FollowsProps) -> Html {
    let words = use_words();
    let told = use_memo(
        (props.broken.clone(), props.whole.clone(), words),
        |(broken, whole, words)| {
            let [bad, good] = &*whole.0;
            [(Version::Bad, bad), (Version::Good, good)]
                .map(|(version, whole)| follows(broken, version, whole, words))
        },
    );
    let words = use_words();
    let [bad, good] = &*told;
    let versions = [(Version::Bad, bad), (Version::Good, good)];
    let shown = versions
        .into_iter()
        .filter(|(version, _)| *version == Version::Bad || props.has_good);
    html! {
        <div class="own-follows" data-testid="follows">
            { for shown.map(|(version, told)| html! {
                <>
                    <b>{ words.say(&version.said()) }</b>
                    { match told {
                        Ok(all) => html! { <ul>{ for all.iter().map(|it| html! { <li>{ it }</li> }) }</ul> },
                        Err(why) => html! { <p class="paper__trouble">{ why }</p> },
                    } }
                </>
            }) }
        </div>
    }
}

/// The sentences of a version, or why it cannot break like this.
fn follows(broken: &Break, version: Version, whole: &Shown, words: &Words) -> Result<Vec<String>, String> {
    let after = whole.broken(broken).map_err(|why| words.say(&why))?;
    let all = aftermath(broken, version, whole, &after);
    let mut told: Vec<String> = all
        .iter()
        .take(MOST_LISTED)
        .map(|it| words.say(&happening(it, words)))
        .collect();
    match all.len() {
        0 => told.push(words.text("lesson-nothing-happens")),
        count if count > MOST_LISTED => {
            told.push(words.say(&say!("lesson-more", count = count - MOST_LISTED)));
        }
        _ => {}
    }
    Ok(told)
}

impl Form<'_> {
    pub(super) fn breaks(&self, whole: &Whole) -> Html {
        let words = self.words;
        let one = |(at, broken): (usize, &Break)| {
            let kind = self.choose(move |lesson, word| {
                let chosen = BreakKind::ALL.into_iter().find(|it| it.word() == word);
                if let (Some(broken), Some(kind)) = (lesson.breaks.get_mut(at), chosen) {
                    broken.kind = kind;
                    broken.things.clear();
                }
            });
            let options = BreakKind::ALL.into_iter().map(|it| {
                html! { <option value={it.word()} selected={it == broken.kind}>{ words.say(&it.said()) }</option> }
            });
            let most = broken.kind.wants();
            let gone = self.act(move |lesson| {
                if at < lesson.breaks.len() {
                    lesson.breaks.remove(at);
                }
            });
            let is_named = broken.things.len() == most;
            // Its words say nothing to the analysis, and it is not made anew at each letter of them.
            let told = Break {
                says: String::new(),
                ..broken.clone()
            };
            html! {
                <li class="own-one" key={format!("{at} of {}", self.draft.breaks.len())}>
                    <label class="paper__field"><span>{ words.text("own-break-kind") }</span><select class="paper__input" onchange={kind}>{ for options }</select></label>
                    { self.things(&broken.things, broken.kind == BreakKind::Joined, move |lesson| {
                        let broken = lesson.breaks.get_mut(at)?;
                        // One too many takes the place of all.
                        if broken.things.len() >= most { broken.things.clear(); }
                        Some(&mut broken.things)
                    }) }
                    if is_named { <Follows broken={told} whole={whole.clone()} has_good={self.draft.has_good()} /> }
                    <Sentence label={words.text("own-break-says")} value={broken.says.clone()} testid="break-says" long=true on_change={self.put(move |lesson, says| {
                        if let Some(broken) = lesson.breaks.get_mut(at) { broken.says = says; }
                    })} />
                    { self.button("own-take-out", gone, "take-out") }
                </li>
            }
        };
        let add = self.act(|lesson| lesson.breaks.push(Break::default()));
        html! { <><ol>{ for self.draft.breaks.iter().enumerate().map(one) }</ol>{ self.button("own-add-break", add, "add-break") }</> }
    }
}
