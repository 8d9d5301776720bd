//! The shortest proof: one reading after the other, with the leads laid on the drawing and what is in order beside it. Made for one hand on a
//! tablet in a car: a large keypad, and one touch where the meter shows what was expected. What is read is kept with the job.

use super::find_fault::things;
use super::title_block::make;
use crate::browser;
use crate::state::{Act, Panel, Store, escape_closes};
use assist::proving::{
    Doing, Proof, Proving, Step, figure_of, said_doing, said_expected, said_faults, said_look, said_why,
};
use circuit::Probe;
use gloo_timers::callback::Timeout;
use model::edits::keep_reading;
use model::{Settings, Sheet};
use std::cell::RefCell;
use std::rc::Rc;
use web_sys::HtmlInputElement;
use words::{Unit, Words, precise, say};
use yew::prelude::*;

/// How long is waited until the list is worked out, so that the drawer is seen first, in milliseconds.
const REST_MS: u32 = 60;
/// How many faults are told of a reading outside of its limits.
const TOLD: usize = 6;

/// A list, and the sheet and settings that it is of, without readings: these change nothing of it.
struct Made {
    sheet: Sheet,
    settings: Settings,
    proof: Option<Proof>,
}

#[derive(Properties, PartialEq)]
pub(crate) struct ProofProps {
    /// Counts the edits: what was kept may be another.
    pub(crate) edits: u32,
}

/// Which reading is in hand, and what was typed of it.
#[derive(Clone, Debug, Default, PartialEq)]
struct InHand {
    at: Option<usize>,
    typed: String,
}

fn unread(sheet: &Sheet) -> Sheet {
    Sheet {
        readings: Vec::new(),
        ..sheet.clone()
    }
}

/// Goes on with the list, a step at a time, so that the page lives meanwhile; it stops when the timer that `next` holds is dropped.
fn work(
    mut proving: Proving,
    next: Rc<RefCell<Option<Timeout>>>,
    done: UseStateHandle<f64>,
    ready: Callback<Option<Proof>>,
) {
    let after = next.clone();
    let timer = Timeout::new(0, move || match proving.step() {
        Some(proof) => ready.emit(proof),
        None => {
            // Every hundredth is told, not every step.
            done.set((proving.done() * 100.0).floor() / 100.0);
            work(proving, after, done, ready);
        }
    });
    *next.borrow_mut() = Some(timer);
}

#[function_component]
pub(crate) fn ProofDrawer(props: &ProofProps) -> Html {
    let made = use_state(|| None::<Rc<Made>>);
    let done = use_state_eq(|| 0.0_f64);
    let hand = use_state(InHand::default);
    let Some(store) = use_context::<Store>() else {
        return html! {};
    };
    let words = store.words();
    let (on, sheet) = store.desk.see(|editor| (editor.on(), editor.sheet().clone()));
    {
        let (made, done, desk) = (made.clone(), done.clone(), store.desk.clone());
        use_effect_with((props.edits, on), move |_| {
            let next = Rc::new(RefCell::new(None));
            let wait = {
                let next = next.clone();
                Timeout::new(REST_MS, move || {
                    let (sheet, settings) =
                        desk.see(|editor| (unread(editor.sheet()), editor.job().settings.clone()));
                    let same = made
                        .as_ref()
                        .is_some_and(|made| made.sheet == sheet && made.settings == settings);
                    if !same {
                        made.set(None);
                        let proving = Proving::new(&sheet, &settings);
                        let ready = Callback::from(move |proof| {
                            let (sheet, settings) = (sheet.clone(), settings.clone());
                            made.set(Some(Rc::new(Made {
                                sheet,
                                settings,
                                proof,
                            })));
                        });
                        work(proving, next, done, ready);
                    }
                })
            };
            move || {
                drop(wait);
                drop(next.borrow_mut().take());
            }
        });
    }
    let proof = made.as_ref().and_then(|made| made.proof.as_ref());
    // Until another is taken in hand: the first of which nothing was read.
    let first = proof.map_or(0, |proof| {
        let open = |step: &Step| step.verdict(&sheet).is_none();
        proof.steps.iter().position(open).unwrap_or(proof.steps.len())
    });
    let at = hand.at.unwrap_or(first);
    let step = proof.and_then(|proof| proof.steps.get(at));
    {
        let (store, probe) = (store.clone(), step.map(|step| step.probe.clone()));
        use_effect_with(probe, move |probe| {
            if let Some(probe) = probe {
                store.desk.change(|editor| editor.put_leads(probe));
            }
        });
    }
    let close = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| {
            store.dispatch(Act::Toggle(Panel::Proof));
            browser::focus_board();
        })
    };
    let body = match (made.as_ref(), proof) {
        (None, _) => {
            let said = say!("proof-working", done = precise(*done, Unit::Percent, 0));
            html! { <p class="drawer__none" role="status" data-testid="proof-working">{ words.say(&said) }</p> }
        }
        (_, None) => html! { <p class="drawer__none">{ words.text("fault-no-supply") }</p> },
        (_, Some(proof)) if proof.hazards.is_empty() => {
            html! { <p class="drawer__none">{ words.text("proof-none-grave") }</p> }
        }
        (_, Some(proof)) => html! {
            <>
                { progress(&words, proof, &sheet, &hand, at) }
                { step.map_or_else(|| end(&store, proof, &sheet), |step| one(&store, proof, step, &sheet, &hand, at)) }
                { whole(&words, proof, &sheet) }
            </>
        },
    };
    html! {
        <section onkeydown={escape_closes(&store)} class="drawer proof" data-testid="proof-drawer" aria-label={words.text("proof-head")}>
            <header class="drawer__head"><b>{ words.text("proof-head") }</b><button type="button" class="slip__close" onclick={close}>{ words.text("key-esc") }</button></header>
            { body }
        </section>
    }
}

/// Takes a reading in hand.
fn take(hand: &UseStateHandle<InHand>, at: usize) {
    hand.set(InHand {
        at: Some(at),
        typed: String::new(),
    });
}

/// How far it has come: a mark for each reading, by shape as well as by colour, and the numbers.
fn progress(words: &Words, proof: &Proof, sheet: &Sheet, hand: &UseStateHandle<InHand>, at: usize) -> Html {
    let verdicts: Vec<Option<bool>> = proof.steps.iter().map(|step| step.verdict(sheet)).collect();
    let count = |wanted: Option<bool>| verdicts.iter().filter(|it| **it == wanted).count();
    let said = say!(
        "proof-progress",
        number = (at + 1).min(verdicts.len()),
        count = verdicts.len(),
        good = count(Some(true)),
        bad = count(Some(false)),
        left = count(None),
    );
    let marks = verdicts.iter().enumerate().map(|(place, verdict)| {
        let (sign, class) = match verdict {
            Some(true) => ("✓", "proof__mark--in"),
            Some(false) => ("✕", "proof__mark--out"),
            None => ("·", "proof__mark--open"),
        };
        let hand = hand.clone();
        let onclick = Callback::from(move |_: MouseEvent| take(&hand, place));
        let number = (place + 1).to_string();
        html! {
            <li><button type="button" class={classes!("proof__mark", class)} {onclick} aria-current={(place == at).then_some("step")}
                aria-label={format!("{number} {sign}")} data-testid={format!("proof-mark-{number}")}>{ number.clone() }<i aria-hidden="true">{ sign }</i></button></li>
        }
    });
    html! {
        <div class="proof__progress">
            <ol class="proof__marks">{ for marks }</ol>
            <p data-testid="proof-progress" aria-live="polite">{ words.say(&said) }</p>
        </div>
    }
}

/// Where the leads go, one line for each, and what is expected.
fn place(words: &Words, proof: &Proof, step: &Step, sheet: &Sheet) -> Html {
    let line = |class: &'static str, label: &str, at: &model::TerminalRef| {
        let part = sheet.parts.get(&at.part);
        let name = part.map_or_else(String::new, |part| words.say(&part.said()));
        html! {
            <li class="proof__lead"><i class={classes!("proof__clip", class)} aria-hidden="true"></i>
                <span>{ words.text(label) }</span><b>{ sheet.written(at) }</b><span class="proof__name">{ name }</span></li>
        }
    };
    let leads = match &step.probe {
        Probe::Volts(red, black) | Probe::Tone(red, black) => html! {
            <>{ line("proof__clip--black", "proof-black", black) }{ line("proof__clip--red", "proof-red", red) }</>
        },
        Probe::Ohms(red, black) => html! {
            <>{ line("proof__clip--black", "proof-lead", black) }{ line("proof__clip--red", "proof-lead", red) }</>
        },
        Probe::Amps(run) => {
            let tag = sheet.runs.get(run).map(|run| run.tag.clone()).unwrap_or_default();
            html! { <li class="proof__lead"><i class="proof__clip" aria-hidden="true"></i><span>{ words.text("proof-clamp") }</span><b>{ tag }</b></li> }
        }
    };
    let careful = matches!(step.doing, Doing::Tone | Doing::Idling);
    html! {
        <>
            <p class={classes!("proof__doing", careful.then_some("proof__doing--on"))} data-testid="proof-doing">{ words.say(&said_doing(step.doing, proof.played)) }</p>
            <ul class="proof__leads" data-testid="proof-leads">{ leads }</ul>
            <p class="proof__expected" data-testid="proof-expected">{ words.say(&said_expected(step)) }</p>
        </>
    }
}

/// One reading: where, what is expected, the keypad, and what was read.
fn one(
    store: &Store,
    proof: &Proof,
    step: &Step,
    sheet: &Sheet,
    hand: &UseStateHandle<InHand>,
    at: usize,
) -> Html {
    let words = store.words();
    let (unit, times) = step.shown_in();
    let keep = {
        let (store, step, hand) = (store.clone(), step.clone(), hand.clone());
        Callback::from(move |read: Option<f64>| {
            let held = step.limits.hold(read);
            let on = store.desk.see(|editor| editor.on());
            make(&store, |job| {
                let reading = step.reading(job.sheet(on).unwrap_or(&Sheet::default()), read);
                keep_reading(job, on, reading)
            });
            // One that is outside stays in hand: it says what it points to.
            take(&hand, if held { at + 1 } else { at });
        })
    };
    let typed = hand.typed.trim().replace(',', ".").replace('−', "-");
    let number = typed.parse::<f64>().ok().filter(|it| it.is_finite());
    let enter = {
        let keep = keep.clone();
        Callback::from(move |()| {
            if let Some(number) = number {
                keep.emit(Some(number / times));
            }
        })
    };
    let key = |sign: &'static str| {
        let (hand, typed) = (hand.clone(), hand.typed.clone());
        let onclick = Callback::from(move |_: MouseEvent| {
            let typed = match sign {
                "⌫" => typed
                    .chars()
                    .take(typed.chars().count().saturating_sub(1))
                    .collect(),
                "±" => typed
                    .strip_prefix('-')
                    .map_or_else(|| format!("-{typed}"), str::to_owned),
                sign => format!("{typed}{sign}"),
            };
            hand.set(InHand { typed, at: Some(at) });
        });
        let label = match sign {
            "⌫" => words.text("proof-erase"),
            "±" => words.text("proof-sign"),
            sign => sign.to_owned(),
        };
        html! { <button type="button" class="proof__key" {onclick} aria-label={label} data-testid={format!("proof-key-{sign}")}>{ sign }</button> }
    };
    let oninput = {
        let hand = hand.clone();
        Callback::from(move |event: InputEvent| {
            if let Some(field) = event.target_dyn_into::<HtmlInputElement>() {
                let typed = field.value();
                hand.set(InHand { typed, at: Some(at) });
            }
        })
    };
    let onsubmit = {
        let enter = enter.clone();
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            enter.emit(());
        })
    };
    let expected = {
        let (keep, expected) = (keep.clone(), step.expected);
        Callback::from(move |_: MouseEvent| keep.emit(expected))
    };
    let is_ohms = matches!(step.probe, Probe::Ohms(..));
    let opens = is_ohms && step.expected.is_some();
    let open = opens.then(|| {
        let onclick = Callback::from(move |_: MouseEvent| keep.emit(None));
        html! { <button type="button" class="proof__act" {onclick} data-testid="proof-open">{ words.text("fault-skip-open") }</button> }
    });
    let go = |to: Option<usize>| {
        let hand = hand.clone();
        Callback::from(move |_: MouseEvent| {
            if let Some(to) = to {
                take(&hand, to);
            }
        })
    };
    let skip = if step.verdict(sheet).is_some() {
        "proof-next"
    } else {
        "proof-skip"
    };
    html! {
        <form class="proof__one" {onsubmit} autocomplete="off">
            { place(&words, proof, step, sheet) }
            { outcome(store, proof, step, sheet) }
            <div class="proof__row">
                <label class="proof__reads">
                    <input class="proof__number" inputmode="none" maxlength="12" value={hand.typed.clone()} {oninput} data-testid="proof-number"
                        aria-label={words.say(&say!("fault-reads", unit = unit))} />
                    <span class="proof__unit">{ unit }</span>
                </label>
                <button type="button" class="proof__go" onclick={expected} data-testid="proof-as-expected">{ words.text("proof-as-expected") }</button>
            </div>
            <div class="proof__keys">
                { for ["7", "8", "9", "⌫", "4", "5", "6", "±", "1", "2", "3", ".", "0"].map(key) }
                { open.unwrap_or_default() }
                <button type="submit" class={classes!("proof__act", "proof__enter", (!opens).then_some("proof__enter--wide"))} disabled={number.is_none()} data-testid="proof-enter">{ words.text("proof-enter") }</button>
            </div>
            <div class="proof__row proof__foot">
                <button type="button" class="proof__act" disabled={at == 0} onclick={go(at.checked_sub(1))} data-testid="proof-back">{ words.text("proof-back") }</button>
                <button type="button" class="proof__act" onclick={go(Some(at + 1))} data-testid="proof-skip">{ words.text(skip) }</button>
            </div>
        </form>
    }
}

/// What was read of it, and, where that is outside of its limits, what it points to.
fn outcome(store: &Store, proof: &Proof, step: &Step, sheet: &Sheet) -> Html {
    let words = store.words();
    let kept = step.kept(sheet).and_then(|at| sheet.readings.get(at));
    let Some((kept, held)) = kept.zip(step.verdict(sheet)) else {
        return html! {};
    };
    let read = match kept.number() {
        Some(number) => words.figure(figure_of(step, number)),
        None => words.text("fault-open"),
    };
    let verdict = words.text(if held { "proof-pass" } else { "proof-fail" });
    let said = words.say(&say!("proof-kept", read = read, verdict = verdict));
    if held {
        return html! { <p class="proof__kept" data-testid="proof-kept">{ format!("✓ {said}") }</p> };
    }
    let hazards = proof.points_to(step, kept.number());
    let mut faults = said_faults(sheet, proof, hazards.iter().copied());
    let more = faults.len().saturating_sub(TOLD);
    faults.truncate(TOLD);
    let light = {
        let faults = hazards.iter().filter_map(|at| proof.hazards.get(*at)?.broken());
        let (store, things) = (store.clone(), things(&faults.collect::<Vec<_>>()));
        Callback::from(move |_: MouseEvent| {
            store.desk.change(|editor| editor.light(&things));
        })
    };
    let find = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| store.dispatch(Act::Toggle(Panel::FindKept)))
    };
    html! {
        <div class="proof__outside" role="status">
            <p data-testid="proof-kept"><b>{ format!("✕ {said}") }</b></p>
            <p>{ words.text("proof-points-to") }</p>
            <ul data-testid="proof-points">{ for faults.iter().map(|said| html! { <li>{ words.say(said) }</li> }) }
                if more > 0 { <li>{ words.say(&say!("proof-more", count = more)) }</li> }</ul>
            <div class="proof__row">
                <button type="button" class="proof__act" onclick={light} data-testid="proof-light">{ words.text("proof-light") }</button>
                <button type="button" class="proof__act" onclick={find} data-testid="proof-find">{ words.text("proof-find") }</button>
            </div>
        </div>
    }
}

/// All were gone through.
fn end(store: &Store, proof: &Proof, sheet: &Sheet) -> Html {
    let words = store.words();
    let verdicts = || proof.steps.iter().map(|step| step.verdict(sheet));
    let key = if verdicts().any(|it| it == Some(false)) {
        "proof-end-outside"
    } else if verdicts().any(|it| it.is_none()) {
        "proof-end-open"
    } else {
        "proof-end-good"
    };
    html! { <p class="proof__end" data-testid="proof-end">{ words.text(key) }</p> }
}

/// The list as a whole: what it exposes, how short it is, and what to look at instead of measuring.
fn whole(words: &Words, proof: &Proof, sheet: &Sheet) -> Html {
    let unseen: usize = proof.unseen.iter().map(|unseen| unseen.hazards.len()).sum();
    let summary = say!(
        "proof-summary",
        readings = say!("proof-count", count = proof.steps.len()),
        exposed = proof.hazards.len() - unseen,
        all = proof.hazards.len(),
        minutes = precise(proof.minutes, Unit::Bare, 0),
    );
    let bound = if proof.is_shortest() {
        say!("proof-shortest")
    } else {
        say!("proof-bound", least = proof.least)
    };
    let looks = proof.unseen.iter().map(|unseen| {
        let why = words.say(&said_why(&unseen.look));
        html! { <li>{ words.say(&said_look(sheet, &unseen.look)) }<span>{ why }</span></li> }
    });
    html! {
        <div class="proof__whole">
            <p data-testid="proof-summary">{ words.say(&summary) }{ " " }{ words.say(&bound) }</p>
            if proof.stops > 0 { <p><b>{ words.say(&say!("proof-stops", count = proof.stops)) }</b></p> }
            if !proof.unseen.is_empty() {
                <details data-testid="proof-unseen"><summary>{ words.text("proof-unseen") }</summary><ul>{ for looks }</ul></details>
            }
            <p class="proof__care">{ words.text("proof-caution") }</p>
        </div>
    }
}
