//! Sizes for all runs and fuses: what each is and should be, and why; what would be with another duty, alternator, battery or
//! length. Nothing of the job changes until it is taken.

use super::title_block::make;
use crate::state::{Act, Panel, Store, escape_closes};
use assist::sizing::{Ask, Limit, Series, Sizing, WhatIf, device_tag, size, size_value};
use checks::{Grade, analyse};
use circuit::DeviceRef;
use gloo_timers::callback::Timeout;
use model::job::Duty;
use model::{Change, Edit, Job, PartKind, RunId, Sheet, SheetKind};
use std::rc::Rc;
use web_sys::{HtmlInputElement, HtmlSelectElement};
use words::{Unit, Value, Words, figure, precise, say};
use yew::prelude::*;

/// How long the hand has to rest before the sizes are worked out anew, in milliseconds.
const REST_MS: u32 = 120;

/// What is asked, and what came of it.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Asked {
    what_if: WhatIf,
    series: Option<Series>,
}

struct Answer {
    sizing: Sizing,
    /// Findings of grade Stop and Fix as it would be, without and with the sizes taken.
    findings: [usize; 2],
}

#[derive(Properties, PartialEq)]
pub(crate) struct SizingProps {
    pub(crate) revision: u32,
    pub(crate) edits: u32,
}

fn work_out(job: &Job, on: SheetKind, asked: Asked) -> Option<Answer> {
    let (sheet, settings) = asked.what_if.of(job.sheet(on)?, &job.settings);
    let ask = Ask {
        series: asked.series,
        as_set: asked.what_if.duty.is_some(),
        ..Ask::default()
    };
    let sizing = size(&sheet, &settings, &ask);
    let count = |sheet: &Sheet| {
        let all = analyse(sheet, &settings).findings;
        all.iter().filter(|finding| finding.grade != Grade::Tidy).count()
    };
    let before = count(&sheet);
    let after = sizing.edit(&sheet, on).map_or(before, |edit| {
        let mut would = Job::default();
        would.sheets.insert(on, sheet.clone());
        would.apply(edit);
        would.sheet(on).map_or(before, count)
    });
    Some(Answer {
        sizing,
        findings: [before, after],
    })
}

/// A run or a device of the table.
#[derive(Clone, PartialEq)]
enum Line {
    Run(RunId),
    Device(DeviceRef),
}

/// Locks a line, or lets it go.
fn lock(job: &Job, on: SheetKind, line: &Line) -> Option<Edit> {
    let sheet = job.sheet(on)?;
    let named = |locked: bool, thing: String| {
        if locked {
            say!("sizing-edit-lock", thing = thing)
        } else {
            say!("sizing-edit-unlock", thing = thing)
        }
    };
    match line {
        Line::Run(id) => {
            let mut run = sheet.runs.get(id)?.clone();
            run.laying.size_locked = !run.laying.size_locked;
            let name = named(run.laying.size_locked, run.tag.clone());
            let change = Change::Run {
                sheet: on,
                id: *id,
                to: Some(Box::new(run)),
            };
            Some(Edit::new(name, vec![change]))
        }
        Line::Device(device) => {
            let mut part = sheet.parts.get(&device.part)?.clone();
            let locked = match &mut part.is {
                PartKind::Fuse(it) => &mut it.rating_locked,
                PartKind::Breaker(it) => &mut it.rating_locked,
                PartKind::Block(it) => &mut it.rating_locked,
                _ => return None,
            };
            *locked = !*locked;
            let name = named(*locked, part.tag.clone());
            let change = Change::Part {
                sheet: on,
                id: device.part,
                to: Some(Box::new(part)),
            };
            Some(Edit::new(name, vec![change]))
        }
    }
}

#[function_component]
pub(crate) fn SizingDrawer(props: &SizingProps) -> Html {
    let asked = use_state(Asked::default);
    let answer = use_state(|| None::<Rc<Answer>>);
    let Some(store) = use_context::<Store>() else {
        return html! {};
    };
    {
        let (answer, desk, given) = (answer.clone(), store.desk.clone(), *asked);
        let on = store.desk.see(|editor| editor.on());
        use_effect_with((props.edits, on, given), move |(_, on, given)| {
            let (on, given) = (*on, *given);
            // A newer question takes the timer of the older one away.
            let wait = Timeout::new(REST_MS, move || {
                let found = desk.see(|editor| work_out(editor.job(), on, given));
                answer.set(found.map(Rc::new));
            });
            move || drop(wait)
        });
    }
    let words = store.words();
    let on = store.desk.see(|editor| editor.on());
    let close = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| {
            store.dispatch(Act::Toggle(Panel::Sizing));
            crate::browser::focus_board();
        })
    };
    let sheet = store.desk.see(|editor| editor.sheet().clone());
    let body = match &*answer {
        None => html! { <p class="drawer__none" aria-live="polite">{ words.text("sizing-works") }</p> },
        Some(answer) => told(&store, on, &sheet, answer, &words),
    };
    html! {
        <section onkeydown={escape_closes(&store)} class="drawer drawer--wide sizing" data-testid="sizing-drawer" aria-label={words.text("sizing")}>
            <header class="drawer__head"><b>{ words.text("sizing") }</b><button type="button" class="slip__close" onclick={close}>{ words.text("key-esc") }</button></header>
            { body }
            { questions(&asked, &words) }
            <p class="jobs__words sizing__care">{ words.text("sizing-care") }</p>
        </section>
    }
}

/// The sliders, and the series.
fn questions(asked: &UseStateHandle<Asked>, words: &Words) -> Html {
    let slider = |name: &'static str,
                  min: &'static str,
                  max: &'static str,
                  step: &'static str,
                  value: f64,
                  shown: String,
                  set: fn(&mut WhatIf, f64)| {
        let asked = asked.clone();
        let oninput = Callback::from(move |event: InputEvent| {
            if let Some(input) = event.target_dyn_into::<HtmlInputElement>() {
                let mut next = *asked;
                set(&mut next.what_if, input.value_as_number());
                asked.set(next);
            }
        });
        html! {
            <label class="sizing__slider">
                <span>{ words.text(name) }</span>
                <input type="range" {min} {max} {step} value={value.to_string()} {oninput} aria-valuetext={shown.clone()} data-testid={name} />
                <output>{ shown }</output>
            </label>
        }
    };
    let it = asked.what_if;
    let percent = |factor: f64| words.figure(figure(factor, Unit::Percent));
    #[expect(clippy::cast_precision_loss, reason = "one of five")]
    let place = it.duty.map_or(Duty::ALL.len() as f64, |duty| {
        Duty::ALL.iter().position(|other| *other == duty).unwrap_or(0) as f64
    });
    let duty = it
        .duty
        .map_or_else(|| words.text("sizing-worst"), |duty| words.say(&duty.said()));
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a place on a slider of six"
    )]
    let set_duty: fn(&mut WhatIf, f64) =
        |it, value| it.duty = Duty::ALL.get(value.max(0.0) as usize).copied();
    let choose = {
        let asked = asked.clone();
        Callback::from(move |event: Event| {
            if let Some(select) = event.target_dyn_into::<HtmlSelectElement>() {
                let mut next = *asked;
                next.series = match &*select.value() {
                    "metric" => Some(Series::Metric),
                    "awg" => Some(Series::Gauge),
                    _ => None,
                };
                asked.set(next);
            }
        })
    };
    let back = {
        let asked = asked.clone();
        Callback::from(move |_: MouseEvent| asked.set(Asked::default()))
    };
    let series = [
        ("", "sizing-series-own", None),
        ("metric", "sizing-series-metric", Some(Series::Metric)),
        ("awg", "sizing-series-awg", Some(Series::Gauge)),
    ];
    html! {
        <fieldset class="sizing__if">
            <legend>{ words.text("sizing-if") }</legend>
            { slider("sizing-duty", "0", "5", "1", place, duty, set_duty) }
            { slider("sizing-alternator", "0.5", "2", "0.1", it.alternator, percent(it.alternator), |it, value| it.alternator = value) }
            { slider("sizing-battery", "0.5", "2", "0.1", it.battery, percent(it.battery), |it, value| it.battery = value) }
            { slider("sizing-length", "0.5", "2", "0.1", it.length, percent(it.length), |it, value| it.length = value) }
            <label class="sizing__slider"><span>{ words.text("sizing-series") }</span>
                <select class="field__input" onchange={choose} data-testid="sizing-series">
                    { for series.map(|(value, name, is)| html! { <option {value} selected={asked.series == is}>{ words.text(name) }</option> }) }
                </select>
            </label>
            if **asked != Asked::default() {
                <button type="button" class="mend" onclick={back} data-testid="sizing-back">{ words.text("sizing-back") }</button>
            }
        </fieldset>
    }
}

/// What came of it.
fn told(store: &Store, on: SheetKind, sheet: &Sheet, answer: &Rc<Answer>, words: &Words) -> Html {
    let sizing = &answer.sizing;
    if sizing.runs.is_empty() && sizing.devices.is_empty() {
        return html! { <p class="drawer__none">{ words.text("sizing-none") }</p> };
    }
    let kilograms = sizing.metal().map(|kg| precise(kg, Unit::Plain("kg"), 2));
    let [before, after] = kilograms;
    let take_all = {
        let (store, answer) = (store.clone(), answer.clone());
        Callback::from(move |_: MouseEvent| {
            let edit = |job: &Job| answer.sizing.edit(job.sheet(on)?, on);
            make(&store, |job| Ok(edit(job).unwrap_or_default()));
        })
    };
    let size_text = |size: Option<model::conductor::Size>| {
        size.map_or_else(|| "?".to_owned(), |size| shown(words, size_value(size)))
    };
    let rating_text = |rating: Option<model::quantity::Amps>| {
        rating.map_or_else(
            || "?".to_owned(),
            |rating| shown(words, figure(rating.0, Unit::Plain("A")).into()),
        )
    };
    let runs = sizing.runs.iter().filter_map(|line| {
        let tag = sheet.runs.get(&line.run)?.tag.clone();
        let texts = [tag, size_text(line.before), size_text(line.after)];
        Some(row(
            store,
            on,
            sheet,
            answer,
            words,
            Line::Run(line.run),
            texts,
            line.changes,
            &line.limit,
        ))
    });
    let devices = sizing.devices.iter().map(|line| {
        let texts = [
            device_tag(sheet, &line.device),
            rating_text(line.before),
            rating_text(line.after),
        ];
        row(
            store,
            on,
            sheet,
            answer,
            words,
            Line::Device(line.device.clone()),
            texts,
            line.changes,
            &line.limit,
        )
    });
    let count = sizing.changes();
    let [now, then] = answer.findings;
    html! {
        <>
            <div class="sizing__sum">
                <p data-testid="sizing-metal">{ words.say(&say!("sizing-metal", before = before, after = after)) }</p>
                <p data-testid="sizing-findings">{ words.say(&say!("sizing-findings", now = now, then = then)) }</p>
                { for sizing.short.iter().map(|short| html! { <p class="sizing__short">{ words.say(&short.said(sheet)) }</p> }) }
                <p data-testid="sizing-proof">{ words.say(&sizing.proof()) }</p>
                if count == 0 {
                    <p data-testid="sizing-nothing">{ words.text("sizing-nothing") }</p>
                } else {
                    <button type="button" class="mend" onclick={take_all} data-testid="sizing-take">{ words.say(&say!("sizing-take", count = count)) }</button>
                }
            </div>
            <table class="sizing__lines" data-testid="sizing-lines">
                <thead><tr><th scope="col">{ words.text("sizing-thing") }</th><th scope="col">{ words.text("sizing-now") }</th><th scope="col">{ words.text("sizing-then") }</th><td></td></tr></thead>
                <tbody>{ for runs }{ for devices }</tbody>
            </table>
        </>
    }
}

fn shown(words: &Words, value: Value) -> String {
    words.say(&say!("as-it-stands", text = value))
}

#[allow(clippy::too_many_arguments, reason = "one row, made in one place")]
fn row(
    store: &Store,
    on: SheetKind,
    sheet: &Sheet,
    answer: &Rc<Answer>,
    words: &Words,
    line: Line,
    [tag, before, after]: [String; 3],
    changes: bool,
    limit: &Limit,
) -> Html {
    let locked = match &line {
        Line::Run(id) => sheet.runs.get(id).is_some_and(|run| run.laying.size_locked),
        Line::Device(device) => sheet.parts.get(&device.part).is_some_and(|part| match &part.is {
            PartKind::Fuse(it) => it.rating_locked,
            PartKind::Breaker(it) => it.rating_locked,
            PartKind::Block(it) => it.rating_locked,
            _ => false,
        }),
    };
    let take = {
        let (store, answer, line) = (store.clone(), answer.clone(), line.clone());
        Callback::from(move |_: MouseEvent| {
            let edit = |job: &Job| {
                let is = |other: Line| other == line;
                answer.sizing.edit_of(
                    job.sheet(on)?,
                    on,
                    |run| is(Line::Run(run)),
                    |device| is(Line::Device(device.clone())),
                )
            };
            make(&store, |job| Ok(edit(job).unwrap_or_default()));
        })
    };
    let lock_it = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| make(&store, |job| Ok(lock(job, on, &line).unwrap_or_default())))
    };
    let name = if locked { "sizing-unlock" } else { "sizing-lock" };
    let label = words.say(&if locked {
        say!("sizing-unlock-of", thing = tag.clone())
    } else {
        say!("sizing-lock-of", thing = tag.clone())
    });
    let take_label = words.say(&say!(
        "sizing-take-one",
        thing = tag.clone(),
        size = after.clone()
    ));
    html! {
        <tr class={classes!(changes.then_some("sizing__changes"))} data-testid={format!("sizing-{tag}")}>
            <th scope="row">{ tag.clone() }</th>
            <td>{ before }</td>
            <td>
                if changes {
                    <button type="button" class="sizing__take" onclick={take} aria-label={take_label} data-testid={format!("sizing-take-{tag}")}>{ after }</button>
                } else { { "=" } }
                <div class="sizing__why">{ words.say(&limit.said(sheet)) }</div>
            </td>
            <td><button type="button" class="sizing__lock" aria-pressed={locked.to_string()} aria-label={label} onclick={lock_it} data-testid={format!("sizing-lock-{tag}")}>{ words.text(name) }</button></td>
        </tr>
    }
}
