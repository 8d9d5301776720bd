//! Breaking something to see what follows: cut, touching the body, open, dead; then through time on the drawing, what opens, what warms,
//! what goes off. Nothing of the job changes, and closing the drawer shows again how the sheet works.

use crate::browser;
use crate::state::{Act, Panel, Store, escape_closes};
use circuit::faults::{Certainty, Course, Faults, Frame, Happening, time_said};
use editor::{BrokenSign, SignAt, Thing};
use model::breaks::Break;
use model::quantity::{Ohms, Share};
use model::{PartKind, Sheet};
use std::rc::Rc;
use web_sys::{HtmlInputElement, HtmlSelectElement};
use words::{Saying, Unit, Words, drawn, say};
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

/// What is thrown, and which moment is looked at.
#[derive(Clone, Debug, Default, PartialEq)]
struct Thrown {
    breaks: Vec<Break>,
    case: usize,
    moment: usize,
    typed: String,
    wrong: Option<Saying>,
}

/// What follows from the breaks, worked out once for each set of them.
#[derive(Clone)]
struct Known {
    edits: u32,
    breaks: Vec<Break>,
    course: Result<Rc<Course>, Saying>,
}

#[derive(Properties, PartialEq)]
pub(crate) struct BreakItProps {
    /// Counts the edits: a course holds for one sheet.
    pub(crate) edits: u32,
    /// Counts what changed on the table: another thing may be picked.
    pub(crate) revision: u32,
}

#[function_component]
pub(crate) fn BreakIt(props: &BreakItProps) -> Html {
    let thrown = use_state(Thrown::default);
    let faults = use_mut_ref(|| None::<(u32, Rc<Faults>)>);
    let known = use_mut_ref(|| None::<Known>);
    let store = use_context::<Store>();
    let edits = props.edits;
    let desk = store.as_ref().map(|store| store.desk.clone());
    {
        // The drawing shows the moment; it is healed when the drawer goes.
        let (desk, faults, known) = (desk.clone(), faults.clone(), known.clone());
        let words = store.as_ref().map(|store| store.words());
        use_effect_with(
            (
                edits,
                thrown.breaks.clone(),
                thrown.case,
                thrown.moment,
                words.as_ref().map(|words| words.text("breaking-head")),
            ),
            move |(_, breaks, case, moment, _)| {
                let course = known
                    .borrow()
                    .as_ref()
                    .and_then(|known| known.course.clone().ok());
                if let (Some(desk), Some(words)) = (desk, words) {
                    let shown = course.filter(|_| !breaks.is_empty()).zip(faults.borrow().clone());
                    match shown {
                        Some((course, (_, faults))) => {
                            let sheet = desk.see(|editor| editor.sheet().clone());
                            if let Some((frame, signs)) =
                                picture(&words, &sheet, &faults, &course, breaks, *case, *moment)
                            {
                                desk.change(|editor| editor.show_broken(&faults, frame, signs));
                            }
                        }
                        None => {
                            desk.change(editor::Editor::heal);
                        }
                    }
                }
            },
        );
    }
    {
        // What was thrown last is brought into view; not while it is dragged along its run.
        let (desk, last) = (desk.clone(), thrown.breaks.last().cloned());
        use_effect_with(thrown.breaks.len(), move |_| {
            if let (Some(desk), Some(at)) = (desk, last.and_then(|last| SignAt::of(&last).into_iter().next()))
            {
                desk.change(|editor| editor.show_sign(&at));
            }
        });
    }
    {
        let desk = desk.clone();
        use_effect_with((), move |()| {
            move || {
                if let Some(desk) = desk {
                    desk.change(editor::Editor::heal);
                }
            }
        });
    }
    let Some(store) = store else {
        return html! {};
    };
    let words = store.words();
    let sheet = store.desk.see(|editor| editor.sheet().clone());
    if faults.borrow().as_ref().is_none_or(|(at, _)| *at != edits) {
        let made = store
            .desk
            .see(|editor| Faults::new(editor.sheet(), &editor.job().settings));
        *faults.borrow_mut() = Some((edits, Rc::new(made)));
    }
    let is_known = known
        .borrow()
        .as_ref()
        .is_some_and(|known| known.edits == edits && known.breaks == thrown.breaks);
    if !is_known && let Some((_, faults)) = faults.borrow().as_ref() {
        *known.borrow_mut() = Some(Known {
            edits,
            breaks: thrown.breaks.clone(),
            course: faults.course(&thrown.breaks).map(Rc::new),
        });
    }
    let course = known.borrow().as_ref().map(|known| known.course.clone());
    let close = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| {
            store.dispatch(Act::Toggle(Panel::Breaking));
            browser::focus_board();
        })
    };
    let told = match course {
        Some(Ok(course)) if !thrown.breaks.is_empty() => {
            html! { <>{ outcome(&words, &sheet, &course) }{ moments(&words, &sheet, &thrown, &course, faults.borrow().as_ref().map(|it| &*it.1)) }{ events(&words, &sheet, &thrown, &course) }</> }
        }
        Some(Err(why)) => html! { <p class="drawer__none" role="alert">{ words.say(&why) }</p> },
        _ => html! {},
    };
    html! {
        <section onkeydown={escape_closes(&store)} class="drawer" data-testid="break-drawer" aria-label={words.text("breaking-head")}>
            <header class="drawer__head"><b>{ words.text("breaking-head") }</b><button type="button" class="slip__close" onclick={close}>{ words.text("key-esc") }</button></header>
            { choose(&store, &words, &thrown, &sheet) }
            { list(&words, &thrown, &sheet) }
            { told }
            <p class="drawer__none">{ words.text("break-caution") }</p>
        </section>
    }
}

/// A change of what is thrown; the moment looked at is the first one again where the breaks are others.
fn change(thrown: &UseStateHandle<Thrown>, how: impl FnOnce(&mut Thrown)) {
    let mut next = (**thrown).clone();
    how(&mut next);
    thrown.set(next);
}

fn throw(thrown: &UseStateHandle<Thrown>, broken: Break) {
    change(thrown, |thrown| {
        thrown.wrong = None;
        thrown.moment = 0;
        if !thrown.breaks.contains(&broken) {
            thrown.breaks.push(broken);
        }
    });
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
        all.push(("breaking-cut", Break::Cut { run }));
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

fn choose(store: &Store, words: &Words, thrown: &UseStateHandle<Thrown>, sheet: &Sheet) -> Html {
    let picked = store.desk.see(|editor| editor.selection().single());
    let buttons = match &picked {
        None => html! { <p class="fault__effort">{ words.text("breaking-pick") }</p> },
        Some(thing) => {
            let acts = offers(thing, sheet).into_iter().map(|(key, broken)| {
                let thrown = thrown.clone();
                let onclick = Callback::from(move |_: MouseEvent| throw(&thrown, broken.clone()));
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
        let thrown = thrown.clone();
        Callback::from(move |event: InputEvent| {
            if let Some(field) = event.target_dyn_into::<HtmlInputElement>() {
                change(&thrown, |thrown| thrown.typed = field.value());
            }
        })
    };
    let onsubmit = {
        let (thrown, sheet) = (thrown.clone(), sheet.clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            match Break::read(&thrown.typed, &sheet) {
                Ok(broken) => change(&thrown, |thrown| {
                    thrown.typed.clear();
                    thrown.wrong = None;
                    thrown.moment = 0;
                    if !thrown.breaks.contains(&broken) {
                        thrown.breaks.push(broken);
                    }
                }),
                Err(why) => change(&thrown, |thrown| thrown.wrong = Some(why)),
            }
        })
    };
    let wrong = thrown
        .wrong
        .as_ref()
        .map(|why| html! { <p class="fault__effort" role="alert" data-testid="breaking-wrong">{ words.say(why) }</p> });
    html! {
        <form class="fault" {onsubmit}>
            { buttons }
            <div class="fault__row">
                <input class="field__input" autocomplete="off" spellcheck="false" value={thrown.typed.clone()} {oninput} data-testid="breaking-written" aria-label={words.text("breaking-write")} placeholder={WRITTEN} />
                <button type="submit" class="fault__act" data-testid="breaking-throw">{ words.text("breaking-throw") }</button>
            </div>
            { wrong.unwrap_or_default() }
        </form>
    }
}

/// What is thrown; of what touches the body, where along the run, to be dragged.
fn list(words: &Words, thrown: &UseStateHandle<Thrown>, sheet: &Sheet) -> Html {
    if thrown.breaks.is_empty() {
        return html! {};
    }
    let lines = thrown.breaks.iter().enumerate().map(|(place, broken)| {
        let said = words.say(&broken.said(sheet));
        let remove = {
            let thrown = thrown.clone();
            Callback::from(move |_: MouseEvent| {
                change(&thrown, |thrown| {
                    thrown.breaks.remove(place);
                    thrown.moment = 0;
                });
            })
        };
        let along = match broken {
            Break::Grounded { run, at, .. } => {
                let thrown = thrown.clone();
                let oninput = Callback::from(move |event: InputEvent| {
                    let Some(value) = event
                        .target_dyn_into::<HtmlInputElement>()
                        .and_then(|field| field.value().parse::<f64>().ok())
                    else {
                        return;
                    };
                    change(&thrown, |thrown| {
                        if let Some(Break::Grounded { at, .. }) = thrown.breaks.get_mut(place) {
                            *at = Share(value / 100.0);
                        }
                    });
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
        let thrown = thrown.clone();
        Callback::from(move |_: MouseEvent| change(&thrown, |thrown| *thrown = Thrown::default()))
    };
    html! {
        <div class="fault">
            <h3>{ words.text("breaking-thrown") }</h3>
            <ul class="fault__list">{ for lines }</ul>
            <button type="button" class="fault__act" onclick={all_back} data-testid="breaking-all-back">{ words.text("breaking-all-back") }</button>
        </div>
    }
}

/// What becomes of the short.
fn outcome(words: &Words, sheet: &Sheet, course: &Course) -> Html {
    let draws = course
        .fault
        .as_ref()
        .map(|fault| html! { <p class="fault__effort">{ words.say(&say!("breaking-draws", current = fault.said())) }</p> });
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

/// The frame of a course that is looked at; the last one where there are fewer.
fn frame_of(course: &Course, case: usize, moment: usize) -> Option<&Frame> {
    let frames = &course.scenarios.get(case)?.frames;
    frames.get(moment).or_else(|| frames.last())
}

/// The run that is hottest against what it bears.
fn hottest<'c>(
    course: &'c Course,
    faults: &Faults,
    frame: &Frame,
) -> Option<(model::RunId, f64, &'c circuit::faults::RunCourse)> {
    faults
        .runs()
        .zip(&frame.runs)
        .filter_map(|(id, now)| Some((id, now.temperature.0, course.runs.get(&id)?)))
        .max_by(|(_, a, x), (_, b, y)| (a - x.limit.0).total_cmp(&(b - y.limit.0)))
}

/// The moment that is looked at, to be dragged through.
fn moments(
    words: &Words,
    sheet: &Sheet,
    thrown: &UseStateHandle<Thrown>,
    course: &Course,
    faults: Option<&Faults>,
) -> Html {
    let Some(frame) = frame_of(course, thrown.case, thrown.moment) else {
        return html! {};
    };
    let last = course
        .scenarios
        .get(thrown.case)
        .map_or(0, |case| case.frames.len().saturating_sub(1));
    let oninput = {
        let thrown = thrown.clone();
        Callback::from(move |event: InputEvent| {
            if let Some(value) = event
                .target_dyn_into::<HtmlInputElement>()
                .and_then(|field| field.value().parse::<usize>().ok())
            {
                change(&thrown, |thrown| thrown.moment = value);
            }
        })
    };
    let onchange = {
        let thrown = thrown.clone();
        Callback::from(move |event: Event| {
            if let Some(value) = event
                .target_dyn_into::<HtmlSelectElement>()
                .and_then(|select| select.value().parse::<usize>().ok())
            {
                change(&thrown, |thrown| {
                    thrown.case = value.min(CASES.len() - 1);
                    thrown.moment = 0;
                });
            }
        })
    };
    let at = if frame.time.0 > 0.0 {
        words.say(&say!("breaking-at", time = time_said(frame.time)))
    } else {
        words.text("breaking-at-first")
    };
    let flows = frame.fault.map(|amps| {
        let said = say!(
            "breaking-flows",
            current = drawn(amps.0, Unit::Plain("A")),
            volts = drawn(frame.source.0, Unit::Plain("V")),
        );
        html! { <p class="fault__effort">{ words.say(&said) }</p> }
    });
    let hot = faults
        .and_then(|faults| hottest(course, faults, frame))
        .map(|(id, temperature, it)| {
            let tag = sheet
                .runs
                .get(&id)
                .map_or_else(String::new, |run| run.tag.clone());
            let said = say!(
                "breaking-hottest",
                run = tag,
                temperature = words::precise(temperature, Unit::Plain("°C"), 0),
                limit = words::precise(it.limit.0, Unit::Plain("°C"), 0),
            );
            html! { <p class="fault__effort" data-testid="breaking-hottest">{ words.say(&said) }</p> }
        });
    html! {
        <div class="fault">
            <h3>{ words.text("breaking-moment") }</h3>
            <p class="fault__at" data-testid="breaking-at">{ at.clone() }</p>
            <input type="range" class="breaking__slider" min="0" max={last.to_string()} step="1" value={thrown.moment.min(last).to_string()} {oninput} aria-label={words.text("breaking-moment")} aria-valuetext={at} data-testid="breaking-moment" />
            { flows.unwrap_or_default() }
            { hot.unwrap_or_default() }
            <label class="fault__effort">{ words.text("breaking-case") }
                <select class="field__input" {onchange} data-testid="breaking-case">
                    { for CASES.iter().enumerate().map(|(at, key)| html! { <option value={at.to_string()} selected={thrown.case == at}>{ words.text(key) }</option> }) }
                </select>
            </label>
        </div>
    }
}

/// What happens, in order; a touch leads to the moment.
fn events(words: &Words, sheet: &Sheet, thrown: &UseStateHandle<Thrown>, course: &Course) -> Html {
    if course.events.is_empty() {
        return html! { <p class="drawer__none">{ words.text("breaking-none") }</p> };
    }
    let lines = course.events.iter().map(|event| {
        let case = course.scenarios.get(thrown.case);
        // The moment of it in the case that is looked at, else nothing to go to.
        let moment = case.and_then(|case| {
            let when = case.moments.iter().find(|it| it.happening == event.happening)?.time;
            case.frames.iter().position(|frame| frame.time.0 >= when.0)
        });
        let onclick = {
            let thrown = thrown.clone();
            Callback::from(move |_: MouseEvent| {
                if let Some(moment) = moment {
                    change(&thrown, |thrown| thrown.moment = moment);
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

/// What the drawing shows of a moment: currents and heat, and signs of what is broken, open, off and damaged by then.
fn picture<'c>(
    words: &Words,
    sheet: &Sheet,
    faults: &Faults,
    course: &'c Course,
    breaks: &[Break],
    case: usize,
    moment: usize,
) -> Option<(&'c Frame, Vec<BrokenSign>)> {
    let frame = frame_of(course, case, moment)?;
    let mut signs: Vec<BrokenSign> = Vec::new();
    for broken in breaks {
        // The word stands once, at the first of two terminals that touch.
        for (place, at) in SignAt::of(broken).into_iter().enumerate() {
            let word = if place == 0 {
                words.text("breaking-sign-here")
            } else {
                String::new()
            };
            signs.push(BrokenSign {
                at,
                word,
                grave: true,
            });
        }
    }
    let mut sign = |thing: Thing, key: &str, grave: bool| {
        let word = words.text(key);
        let at = SignAt::Thing(thing);
        if thing_is_on(&at, sheet) && !signs.iter().any(|sign| sign.at == at) {
            signs.push(BrokenSign { at, word, grave });
        }
    };
    let happened = course
        .scenarios
        .get(case)?
        .moments
        .iter()
        .filter(|it| it.time.0 <= frame.time.0);
    for it in happened {
        if let Happening::Damaged(run) | Happening::Melts(run) = &it.happening {
            sign(Thing::Run(*run), "breaking-sign-damaged", true);
        }
    }
    for (device, now) in faults.devices().zip(&frame.devices) {
        if now.open {
            sign(Thing::Part(device.part), "breaking-sign-open", false);
        }
    }
    for part in &frame.off {
        sign(Thing::Part(*part), "breaking-sign-off", false);
    }
    Some((frame, signs))
}

fn thing_is_on(at: &SignAt, sheet: &Sheet) -> bool {
    match at {
        SignAt::Thing(thing) => thing.is_on(sheet),
        SignAt::Along(run, _) => sheet.runs.contains_key(run),
    }
}
