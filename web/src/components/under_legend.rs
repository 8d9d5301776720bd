//! What became of things between the sheet on the table and the one laid under it: the counts in words, what each sign on the
//! drawing means, and a list whose lines lead to their things.

use crate::canvas::notes_width;
use crate::components::thread::is_of_under;
use crate::desk::Desk;
use crate::state::{Act, Panel, Store};
use drawing::Sign;
use editor::{Editor, Thing};
use model::compare::Became;
use web_sys::Element;
use words::{Words, say};
use yew::prelude::*;

pub(crate) fn under_legend(store: &Store) -> Html {
    let seen = store.desk.see(|editor| {
        let under = editor.laid()?;
        Some((under.words(), under.key(), editor.fates(), is_of_under(editor)))
    });
    let Some((words, key, fates, counted)) = seen else {
        return html! {};
    };
    let said = store.words();
    let take_away = {
        let desk = store.desk.clone();
        Callback::from(move |_: MouseEvent| {
            desk.change(|editor| editor.lay_under(None));
        })
    };
    let numbers = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| store.dispatch(Act::Toggle(Panel::Becomes)))
    };
    let count = fates.len();
    html! {
        <section class="legend legend--under" data-testid="under-legend" aria-label={said.text("under-laid")}>
            <header class="under__head">
                <b data-testid="under-words">{ words }</b>
                <button type="button" class="under__away" onclick={take_away} data-testid="under-away">{ said.text("under-away") }</button>
            </header>
            <ul class="under__key">
                { for key.into_iter().map(|(sign, said)| html! { <li>{ sample(sign) }{ said }</li> }) }
            </ul>
            if counted {
                <button type="button" class="under__numbers" onclick={numbers} data-testid="under-numbers">{ said.text("under-numbers") }</button>
            }
            if count > 0 {
                <details class="under__fates">
                    <summary data-testid="under-list">{ said.say(&say!("under-changed", count = count)) }</summary>
                    <ol>
                        { for fates.into_iter().map(|fate| {
                            let (desk, thing) = (store.desk.clone(), fate.thing.clone());
                            let onclick = Callback::from(move |event: MouseEvent| {
                                fold_where_narrow(&desk, &event);
                                desk.change(|editor| editor.go_to_either(&thing));
                            });
                            html! {
                                <li><button type="button" class="under__fate" {onclick} data-testid="under-fate">
                                    { sample(fate.sign) }
                                    <span><b>{ fate.written }</b>{ " " }{ told(&fate.became, &said) }</span>
                                </button></li>
                            }
                        }) }
                    </ol>
                </details>
            }
        </section>
    }
}

/// In a narrow window the list would lie over what it leads to.
fn fold_where_narrow(desk: &Desk, event: &MouseEvent) {
    let narrow = desk.see(|editor| notes_width(editor.camera().width) < 300.0);
    let list = event
        .target_dyn_into::<Element>()
        .and_then(|on| on.closest("details").ok().flatten());
    if let Some(list) = list.filter(|_| narrow) {
        let _ = list.remove_attribute("open");
        crate::browser::focus_board();
    }
}

fn told(became: &Became, words: &Words) -> String {
    match became {
        Became::Kept => words.text("became-kept"),
        Became::Changed(lines) => {
            let lines: Vec<String> = lines.iter().map(|line| words.say(line)).collect();
            lines.join("; ")
        }
        Became::New => words.text("became-new"),
        Became::Removed => words.text("became-removed"),
    }
}

/// What became of a thing, for its slip; nothing where it was kept or no sheet is laid under.
pub(super) fn fate_of(editor: &Editor, thing: &Thing) -> Html {
    let lines = editor.became_words(thing);
    let Some(under) = editor.laid().filter(|_| !lines.is_empty()) else {
        return html! {};
    };
    html! {
        <div class="slip__fate" data-testid="slip-fate">
            <b>{ editor.words().say(&say!("under-against", sheet = under.kind.said())) }</b>
            <ul>{ for lines.into_iter().map(|line| html! { <li>{ line }</li> }) }</ul>
        </div>
    }
}

/// A sign as the drawing has it, on a small box.
fn sample(sign: Sign) -> Html {
    let (body, dash) = if sign.is_beneath() {
        ("none", "3 2.5")
    } else {
        ("var(--slip)", "none")
    };
    let sleeve = match sign {
        Sign::New => Some("M3 3H27V15H3Z"),
        Sign::Changed => Some("M3 7V3H10M20 3H27V7M27 11V15H20M10 15H3V11"),
        Sign::Goes | Sign::Gone | Sign::Comes => None,
    };
    html! {
        <svg class="under__sign" viewBox="0 0 30 18" width="30" height="18" aria-hidden="true">
            if let Some(path) = sleeve {
                <path d={path} fill="none" stroke="var(--wash-edge)" stroke-width="5.4" />
                <path d={path} fill="none" stroke="var(--wash)" stroke-width="3.4" />
            }
            <path d="M5.5 5.5H24.5V12.5H5.5Z" fill={body} stroke={if sign.is_beneath() { "var(--faint)" } else { "var(--line)" }} stroke-width="1.2" stroke-dasharray={dash} />
            if matches!(sign, Sign::Goes | Sign::Gone) {
                <path d="M5 14L25 4" fill="none" stroke="var(--wash-edge)" stroke-width="1.5" />
            }
        </svg>
    }
}
