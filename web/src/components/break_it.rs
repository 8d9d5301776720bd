//! Breaking something to see what follows: cut, touching the body, open, dead; then through time on the drawing, what opens, what warms,
//! what goes off. Nothing of the job changes, and closing the drawer shows again how the sheet works.

use crate::browser;
use crate::state::{Act, Panel, Store, escape_closes};
use circuit::faults::{Certainty, Course};
use editor::break_it::With;
use editor::{Editor, Thing};
use model::breaks::{Break, HALF_WAY};
use model::quantity::{Ohms, Share};
use model::{PartKind, Sheet};
use web_sys::{HtmlInputElement, HtmlSelectElement};
use words::{Saying, Words, say};
use yew::prelude::*;

/// The cases of a course, as [`Course::scenarios`] has them.
const CASES: [&str; 4] = [
    "breaking-case-strong-slow",
    "breaking-case-strong-fast",
    "breaking-case-weak-slow",
    "breaking-case-weak-fast",
];

/// A break in its written form, which is the same in every language.
const WRITTEN: &str = "B1.+ joined E1.stud";

/// What was typed.
#[derive(Clone, Debug, Default, PartialEq)]
struct Typed {
    text: String,
    wrong: Option<Saying>,
}

#[derive(Properties, PartialEq)]
pub(crate) struct BreakItProps {
    /// Counts what changed on the table: another thing may be picked, something else be thrown.
    pub(crate) revision: u32,
}

#[function_component]
pub(crate) fn BreakIt(_props: &BreakItProps) -> Html {
    let typed = use_state(Typed::default);
    let Some(store) = use_context::<Store>() else {
        return html! {};
    };
    {
        // The tool is in hand as long as the drawer is open, and what is thrown is taken back with it.
        let desk = store.desk.clone();
        use_effect_with((), move |()| {
            desk.change(|editor| editor.take_break_tool(With::Scissors));
            move || {
                desk.change(editor::Editor::heal);
            }
        });
    }
    let words = store.words();
    let sheet = store.desk.see(|editor| editor.sheet().clone());
    let close = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| {
            store.dispatch(Act::Toggle(Panel::Breaking));
            browser::focus_board();
        })
    };
    let told = store.desk.see(|editor| match editor.course() {
        Some(Ok(course)) => {
            html! { <>{ outcome(&words, &sheet, course) }{ case(&store, editor) }{ events(&store, editor, course) }</> }
        }
        Some(Err(why)) => html! { <p class="drawer__none" role="alert">{ words.say(why) }</p> },
        None => html! {},
    });
    html! {
        <section onkeydown={escape_closes(&store)} class="drawer" data-testid="break-drawer" aria-label={words.text("breaking-head")}>
            <header class="drawer__head"><b>{ words.text("breaking-head") }</b><button type="button" class="slip__close" onclick={close}>{ words.text("key-esc") }</button></header>
            { choose(&store, &typed, &sheet) }
            { list(&store, &sheet) }
            { told }
            <p class="drawer__none">{ words.text("break-caution") }</p>
        </section>
    }
}

/// What can be done to the thing that is picked, with the message of its button.
fn offers(thing: &Thing, sheet: &Sheet) -> Vec<(&'static str, Break)> {
    let (run, part) = match thing {
        Thing::Run(run) => (Some(*run), None),
        Thing::Part(part) => (None, Some(*part)),
        Thing::Terminal(at) => (None, Some(at.part)),
    };
    let mut all = Vec::new();
    if let Some(run) = run {
        let touches = Break::Grounded {
            run,
            at: Share(0.5),
            through: Ohms(0.0),
        };
        all.push(("breaking-grounded", touches));
        all.push(("breaking-cut", Break::Cut { run, at: HALF_WAY }));
    }
    if let Some(part) = part {
        let output = match (thing, sheet.parts.get(&part).map(|part| &part.is)) {
            (Thing::Terminal(at), Some(PartKind::Block(_))) => Some(at.terminal.clone()),
            _ => None,
        };
        all.push(("breaking-open", Break::Open { part, output }));
        all.push(("breaking-reversed", Break::Reversed { part, coil: None }));
        all.push(("breaking-dead", Break::Dead { part }));
    }
    // What the thing cannot do is not offered.
    all.retain(|(_, broken)| broken.thrown(sheet).is_ok());
    all
}

fn choose(store: &Store, typed: &UseStateHandle<Typed>, sheet: &Sheet) -> Html {
    let words = store.words();
    let picked = store.desk.see(|editor| editor.selection().single());
    let buttons = match &picked {
        None => html! { <p class="fault__effort">{ words.text("breaking-pick") }</p> },
        Some(thing) => {
            let acts = offers(thing, sheet).into_iter().map(|(key, broken)| {
                let desk = store.desk.clone();
                let onclick = Callback::from(move |_: MouseEvent| {
                    let broken = broken.clone();
                    desk.change(|editor| editor.throw(broken));
                });
                html! { <button type="button" class="fault__act" {onclick} data-testid={key}>{ words.text(key) }</button> }
            });
            html! {
                <>
                    <p class="fault__at" data-testid="breaking-picked">{ thing.written(sheet) }</p>
                    <div class="fault__row">{ for acts }</div>
                </>
            }
        }
    };
    let oninput = {
        let typed = typed.clone();
        Callback::from(move |event: InputEvent| {
            if let Some(field) = event.target_dyn_into::<HtmlInputElement>() {
                typed.set(Typed {
                    text: field.value(),
                    wrong: typed.wrong.clone(),
                });
            }
        })
    };
    let onsubmit = {
        let (typed, sheet, desk) = (typed.clone(), sheet.clone(), store.desk.clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            match Break::read(&typed.text, &sheet) {
                Ok(broken) => {
                    typed.set(Typed::default());
                    desk.change(|editor| editor.throw(broken));
                }
                Err(why) => typed.set(Typed {
                    text: typed.text.clone(),
                    wrong: Some(why),
                }),
            }
        })
    };
    let wrong = typed
        .wrong
        .as_ref()
        .map(|why| html! { <p class="fault__effort" role="alert" data-testid="breaking-wrong">{ words.say(why) }</p> });
    html! {
        <form class="fault" {onsubmit}>
            { buttons }
            <div class="fault__row">
                <input class="field__input" autocomplete="off" spellcheck="false" value={typed.text.clone()} {oninput} data-testid="breaking-written" aria-label={words.text("breaking-write")} placeholder={WRITTEN} />
                <button type="submit" class="fault__act" data-testid="breaking-throw">{ words.text("breaking-throw") }</button>
            </div>
            { wrong.unwrap_or_default() }
        </form>
    }
}

/// What is thrown; where along its run, to be dragged.
fn list(store: &Store, sheet: &Sheet) -> Html {
    let words = store.words();
    let breaks = store.desk.see(|editor| editor.breaks().to_vec());
    if breaks.is_empty() {
        return html! {};
    }
    let lines = breaks.iter().enumerate().map(|(place, broken)| {
        let said = words.say(&broken.said(sheet));
        let remove = {
            let desk = store.desk.clone();
            Callback::from(move |_: MouseEvent| {
                desk.change(|editor| editor.take_back(place));
            })
        };
        let along = match broken {
            Break::Grounded { run, at, .. } | Break::Cut { run, at } => {
                let desk = store.desk.clone();
                let oninput = Callback::from(move |event: InputEvent| {
                    if let Some(value) = number_of::<f64>(&event) {
                        desk.change(|editor| editor.slide_break(place, Share(value / 100.0)));
                    }
                });
                let tag = sheet.runs.get(run).map_or_else(String::new, |run| run.tag.clone());
                let name = words.say(&say!("breaking-along", run = tag));
                html! { <input type="range" class="breaking__slider" min="0" max="100" step="1" value={format!("{:.0}", at.0 * 100.0)} {oninput} aria-label={name} data-testid="breaking-along" /> }
            }
            _ => html! {},
        };
        html! {
            <li data-testid="breaking-thrown">
                <div class="fault__line"><span>{ said.clone() }</span><button type="button" class="jobs__remove" onclick={remove} aria-label={words.say(&say!("breaking-remove", what = said))}>{ words.text("remove") }</button></div>
                { along }
            </li>
        }
    });
    let all_back = {
        let desk = store.desk.clone();
        Callback::from(move |_: MouseEvent| {
            desk.change(editor::Editor::take_all_back);
        })
    };
    html! {
        <div class="fault">
            <h3>{ words.text("breaking-thrown") }</h3>
            <ul class="fault__list">{ for lines }</ul>
            <button type="button" class="fault__act" onclick={all_back} data-testid="breaking-all-back">{ words.text("breaking-all-back") }</button>
        </div>
    }
}

/// The number that a slider was put on.
pub(super) fn number_of<T: std::str::FromStr>(event: &InputEvent) -> Option<T> {
    let field = event.target_dyn_into::<HtmlInputElement>()?;
    field.value().parse().ok()
}

/// What becomes of the short.
fn outcome(words: &Words, sheet: &Sheet, course: &Course) -> Html {
    let draws = editor::draws(course)
        .map(|said| html! { <p class="fault__effort" data-testid="breaking-draws">{ words.say(&said) }</p> });
    let class = if course.outcome.is_grave() {
        "fault__at breaking__grave"
    } else {
        "fault__at"
    };
    html! {
        <div class="fault" aria-live="polite">
            <p {class} data-testid="breaking-outcome">{ words.say(&course.outcome.said(sheet)) }</p>
            { draws.unwrap_or_default() }
        </div>
    }
}

/// For which case the moments are told.
fn case(store: &Store, editor: &Editor) -> Html {
    let words = editor.words();
    let (chosen, _) = editor.moment();
    let onchange = {
        let desk = store.desk.clone();
        Callback::from(move |event: Event| {
            if let Some(value) = event
                .target_dyn_into::<HtmlSelectElement>()
                .and_then(|select| select.value().parse::<usize>().ok())
            {
                desk.change(|editor| editor.look_at_moment(value.min(CASES.len() - 1), 0));
            }
        })
    };
    html! {
        <div class="fault">
            <label class="fault__effort">{ words.text("breaking-case") }
                <select class="field__input" {onchange} data-testid="breaking-case">
                    { for CASES.iter().enumerate().map(|(at, key)| html! { <option value={at.to_string()} selected={chosen == at}>{ words.text(key) }</option> }) }
                </select>
            </label>
        </div>
    }
}

/// What happens, in order; a touch leads to the moment.
fn events(store: &Store, editor: &Editor, course: &Course) -> Html {
    let (words, sheet) = (editor.words(), editor.sheet());
    let (chosen, _) = editor.moment();
    if course.events.is_empty() {
        return html! { <p class="drawer__none">{ words.text("breaking-none") }</p> };
    }
    let lines = course.events.iter().map(|event| {
        let case = course.scenarios.get(chosen);
        // The moment of it in the case that is looked at, else nothing to go to.
        let moment = case.and_then(|case| {
            let when = case.moments.iter().find(|it| it.happening == event.happening)?.time;
            case.frames.iter().position(|frame| frame.time.0 >= when.0)
        });
        let onclick = {
            let desk = store.desk.clone();
            Callback::from(move |_: MouseEvent| {
                if let Some(moment) = moment {
                    desk.change(|editor| editor.look_at_moment(chosen, moment));
                }
            })
        };
        let certainty = match event.certainty {
            Certainty::Certain => html! { <b>{ words.say(&event.certainty.said()) }</b> },
            _ => html! { { words.say(&event.certainty.said()) } },
        };
        html! {
            <tr data-testid="breaking-event">
                <td>{ words.say(&event.time.said()) }</td>
                <td><button type="button" class="fault__suspect" {onclick} disabled={moment.is_none()}>{ words.say(&event.said(sheet)) }</button></td>
                <td>{ certainty }</td>
            </tr>
        }
    });
    html! {
        <div class="fault">
            <h3>{ words.text("breaking-events") }</h3>
            <table class="breaking__events">
                <thead><tr><th scope="col">{ words.text("breaking-when") }</th><th scope="col">{ words.text("breaking-what") }</th><th scope="col">{ words.text("breaking-sure") }</th></tr></thead>
                <tbody>{ for lines }</tbody>
            </table>
        </div>
    }
}
