//! Starting a system: one line of text with what is understood of it, the short form beside it for fingers, and what would be
//! drawn. The line is all there is: the form writes it anew, and what it says is read as it is typed.

use super::title_block::make;
use crate::browser;
use crate::keeper::Keeper;
use crate::state::{Act, Store, escape_closes};
use assist::starting::*;
use gloo_timers::callback::Timeout;
use model::body::{BatteryPlace, BodyForm, DriveSide};
use model::kinds::supply::Chemistry;
use model::quantity::{Ohms, Watts};
use model::{Change, Edit, Job, SheetKind};
use std::rc::Rc;
use web_sys::{HtmlElement, HtmlInputElement, HtmlTextAreaElement};
use words::{Language, Unit, Words, figure, precise, say};
use yew::prelude::*;

/// How long the line rests before it is planned, in milliseconds: planning takes longer than a key.
const REST: u32 = 180;

/// What came of planning the line.
type Planned = Option<Rc<Result<Started, Vec<Trouble>>>>;

#[derive(Properties, PartialEq)]
pub(crate) struct StartProps {
    /// Counts the edits: what is planned depends on what is on the sheet.
    pub(crate) revision: u32,
}

#[function_component]
pub(crate) fn Start(props: &StartProps) -> Html {
    let text = use_state(String::new);
    let planned = use_state(|| Planned::None);
    let found = use_state(Vec::<Offer>::new);
    let field = use_node_ref();
    let store = use_context::<Store>();
    let keeper = use_context::<Rc<Keeper>>();
    {
        let field = field.clone();
        use_effect_with((), move |()| {
            if let Some(field) = field.cast::<HtmlElement>() {
                let _ = field.focus();
            }
        });
    }
    {
        let (planned, found, store) = (planned.clone(), found.clone(), store.clone());
        let line: String = (*text).clone();
        let language = store.as_ref().map(|store| store.words().reader());
        use_effect_with((line, props.revision, language), move |(line, ..)| {
            let wish = read(line).wish;
            let rest = Timeout::new(REST, move || {
                let Some(store) = store else { return };
                found.set(Vec::new());
                planned.set((!wish.is_empty()).then(|| Rc::new(plan(&store, &wish))));
            });
            move || drop(rest)
        });
    }
    let (Some(store), Some(keeper)) = (store, keeper) else {
        return html! {};
    };
    let words = store.words();
    let language = words.reader().language;
    let understood = read(&text);
    let empty = super::start_offer::is_empty(&store);
    let close = {
        let store = store.clone();
        Callback::from(move |()| {
            store.dispatch(Act::ShutPanel);
            browser::focus_board();
        })
    };
    let write = {
        let text = text.clone();
        Callback::from(move |line: String| text.set(line))
    };
    let draw = {
        let (store, keeper, close, planned) = (store.clone(), keeper.clone(), close.clone(), planned.clone());
        Callback::from(move |()| {
            let Some(planned) = (*planned).clone() else { return };
            if let Ok(started) = planned.as_ref() {
                put(&store, &keeper, started);
                close.emit(());
            }
        })
    };
    let onkeydown = {
        let draw = draw.clone();
        Callback::from(move |event: KeyboardEvent| {
            if event.key() == "Enter" && !event.shift_key() {
                event.prevent_default();
                draw.emit(());
            }
        })
    };
    let oninput = {
        let write = write.clone();
        Callback::from(move |event: InputEvent| {
            if let Some(field) = event.target_dyn_into::<HtmlTextAreaElement>() {
                write.emit(field.value());
            }
        })
    };
    let chips = phrases(&understood.wish, language)
        .into_iter()
        .map(|it| html! { <li class="start__chip">{ it.text }</li> });
    let not = understood.not.iter().map(|it| {
        html! { <li class="start__not"><b>{ &it.text }</b><span>{ words.say(&it.why) }</span></li> }
    });
    let click = |act: Callback<()>| Callback::from(move |_: MouseEvent| act.emit(()));
    let examples = ["start-example-1", "start-example-2", "start-example-3"].map(|key| {
        let (write, line) = (write.clone(), words.text(key));
        let onclick = Callback::from(move |_: MouseEvent| write.emit(line.clone()));
        html! { <li><button type="button" class="start__example" {onclick} data-testid={key}>{ words.text(key) }</button></li> }
    });
    let told = |title: &'static str, all: Vec<String>| {
        if all.is_empty() {
            return html! {};
        }
        let lines = all.into_iter().map(|it| html! { <li>{ it }</li> });
        html! { <><h3>{ words.text(title) }</h3><ul class="start__list" data-testid={title}>{ for lines }</ul></> }
    };
    let preview = match (*planned).as_deref() {
        None => html! {
            <><h3>{ words.text("start-examples") }</h3><ul class="start__examples">{ for examples }</ul></>
        },
        Some(Err(troubles)) => trouble(&words, troubles),
        Some(Ok(started)) => {
            let offers =
                (!started.troubles.is_empty()).then(|| offered(&store, &write, &found, &understood.wish));
            html! {
                <>
                    <p class="start__sums" data-testid="start-sums">{ words.say(&sums(started)) }</p>
                    if started.troubles.is_empty() { <p class="start__clean">{ words.text("start-clean") }</p> }
                    else { { trouble(&words, &started.troubles) }{ for offers } }
                    { told("start-chosen", started.choices.iter().map(|it| words.say(it)).collect()) }
                    { told("start-assumed", started.assumed.iter().map(|it| words.say(it)).collect()) }
                </>
            }
        }
    };
    let may = matches!((*planned).as_deref(), Some(Ok(_)));
    let go = match (empty, understood.not.is_empty()) {
        (true, true) => "start-draw",
        (false, true) => "start-draw-new",
        (true, false) => "start-draw-rest",
        (false, false) => "start-draw-new-rest",
    };
    html! {
        <section onkeydown={escape_closes(&store)} class="drawer start" data-testid="start-drawer" aria-label={words.text("start-title")}>
            <header class="drawer__head"><b>{ words.text("start-title") }</b><button type="button" class="slip__close" onclick={click(close)}>{ words.text("key-esc") }</button></header>
            <div class="start__halves">
                <div class="start__half">
                    <label class="record__label" for="start-line">{ words.text("start-line") }</label>
                    <textarea ref={field} id="start-line" class="record__field start__line" rows="4" value={(*text).clone()} {oninput} {onkeydown} maxlength="2000"
                        placeholder={words.text("start-example-1")} spellcheck="false" data-testid="start-line" />
                    <div role="status" aria-label={words.text("start-understood")}>
                        <ul class="start__chips" data-testid="start-chips">{ for chips }</ul>
                        if !understood.not.is_empty() { <ul class="start__nots" data-testid="start-nots">{ for not }</ul> }
                    </div>
                    { preview }
                </div>
                <div class="start__half start__form" role="group" aria-label={words.text("start-form")}>{ form(&words, &understood, &write) }</div>
            </div>
            <div class="record__foot start__foot">
                <button type="button" class="record__go" disabled={!may} onclick={click(draw)} data-testid="start-draw">{ words.text(go) }</button>
                <p class="start__care">{ words.text("start-care") }</p>
            </div>
        </section>
    }
}

/// The job and the sheet that a system is planned for: the sheet on the table where it is empty, else a new job.
fn ground(store: &Store) -> (Job, SheetKind) {
    store.desk.see(|editor| {
        if editor.sheet().is_empty() {
            (editor.job().clone(), editor.on())
        } else {
            (Job::default(), SheetKind::Plan)
        }
    })
}

fn plan(store: &Store, wish: &Wish) -> Result<Started, Vec<Trouble>> {
    let (job, on) = ground(store);
    start(wish, &job, on, &store.words())
}

/// Draws it as one edit, everything at its place on the board.
fn put(store: &Store, keeper: &Rc<Keeper>, started: &Started) {
    let places = drawing::arrange(&started.sheet);
    let mut changes = started.edit.changes.clone();
    for change in &mut changes {
        if let Change::Part {
            id, to: Some(part), ..
        } = change
        {
            part.at = places.get(id).copied();
        }
    }
    let edit = Edit::new(started.edit.name.clone(), changes);
    if super::start_offer::is_empty(store) {
        make(store, |_| Ok(edit));
        store.desk.perform(editor::Action::Fit);
    } else {
        let mut job = Job::default();
        job.apply(edit);
        keeper.open_new(job);
    }
}

fn sums(started: &Started) -> words::Saying {
    let sums = started.sums();
    say!(
        "start-sums",
        parts = sums.parts,
        runs = sums.runs,
        draw = figure(sums.draw.0, Unit::Plain("A")),
        available = figure(sums.available.0, Unit::Plain("A")),
        wire = figure(sums.wire.0, Unit::Metre),
        copper = precise(sums.copper, Unit::Plain("kg"), 1)
    )
}

fn trouble(words: &Words, troubles: &[Trouble]) -> Html {
    let all = troubles.iter().map(|it| {
        html! { <li class="start__not"><b>{ words.say(&it.what) }</b><span>{ words.say(&it.instead) }</span></li> }
    });
    html! { <><h3>{ words.text("start-troubles") }</h3><ul class="start__nots" data-testid="start-troubles">{ for all }</ul></> }
}

/// What would do, tried out when it is asked for: that takes a moment.
fn offered(store: &Store, write: &Callback<String>, found: &UseStateHandle<Vec<Offer>>, wish: &Wish) -> Html {
    let words = store.words();
    let language = words.reader().language;
    let ask = {
        let (store, found, wish) = (store.clone(), found.clone(), wish.clone());
        Callback::from(move |_: MouseEvent| {
            let (job, on) = ground(&store);
            let all = offers(&wish, &job, on, &store.words());
            if all.is_empty() {
                store.dispatch(Act::Say(store.words().text("start-nothing-does")));
            }
            found.set(all);
        })
    };
    let all = found.iter().enumerate().map(|(at, offer)| {
        let (write, line) = (write.clone(), line(&offer.wish, language));
        let onclick = Callback::from(move |_: MouseEvent| write.emit(line.clone()));
        html! { <li><button type="button" class="start__example" {onclick} data-testid={format!("start-offer-{at}")}>{ words.say(&offer.what) }</button></li> }
    });
    html! {
        <ul class="start__examples">
            { for all }
            if found.is_empty() { <li><button type="button" class="mend" onclick={ask} data-testid="start-what-does">{ words.text("start-what-does") }</button></li> }
        </ul>
    }
}

/// A button of the form: what it says, whether it is on, and the wish when it is pressed.
struct Choice {
    id: String,
    text: String,
    on: bool,
    wish: Wish,
}

/// The short form: rows of large buttons, each of which changes the line.
fn form(words: &Words, understood: &Understood, write: &Callback<String>) -> Html {
    let language = words.reader().language;
    let wish = &understood.wish;
    // What was not understood stays in the line, for whoever typed it.
    let rest: Vec<&str> = understood.not.iter().map(|it| it.text.as_str()).collect();
    let rest = rest.join(", ");
    let written = move |wish: &Wish| {
        let line = line(wish, language);
        match (line.is_empty(), rest.is_empty()) {
            (_, true) => line,
            (true, false) => rest.clone(),
            (false, false) => format!("{line}, {rest}"),
        }
    };
    let row = |title: String, all: Vec<Choice>| {
        let buttons = all.into_iter().map(|it| {
            let (write, line) = (write.clone(), written(&it.wish));
            let onclick = Callback::from(move |_: MouseEvent| write.emit(line.clone()));
            html! { <button type="button" class={classes!("record__seen", it.on.then_some("record__seen--on"))} aria-pressed={it.on.to_string()} {onclick} data-testid={format!("start-{}", it.id)}>{ it.text }</button> }
        });
        html! { <div class="record__row" role="group" aria-label={title.clone()}><span class="record__title" aria-hidden="true">{ title }</span><div class="record__choices start__choices">{ for buttons }</div></div> }
    };
    let with = |id: String, text: String, on: bool, change: &dyn Fn(&mut Wish)| {
        let mut wish = wish.clone();
        change(&mut wish);
        Choice { id, text, on, wish }
    };
    let ohms = |load: f64| words.figure(figure(load, Unit::Plain("Ω")));
    let bodies = BodyForm::ALL.iter().map(|form| {
        let on = wish.body == Some(*form);
        let text = words.say(&form.said());
        with(form.word().to_owned(), text, on, &|wish| {
            wish.body = (!on).then_some(*form)
        })
    });
    let drives = DriveSide::ALL.iter().map(|side| {
        let on = wish.drive == Some(*side);
        let text = words.say(&side.said());
        with(side.word().to_owned(), text, on, &|wish| {
            wish.drive = (!on).then_some(*side)
        })
    });
    let batteries = BatteryPlace::ALL.iter().map(|at| {
        let on = wish.battery_at == Some(*at);
        let text = words.say(&at.said());
        with(at.word().to_owned(), text, on, &|wish| {
            wish.battery_at = (!on).then_some(*at)
        })
    });
    let factory = wish.head.factory;
    let mut heads = vec![with(
        "factory".to_owned(),
        words.text("start-factory"),
        factory,
        &|wish| {
            wish.head = HeadWish {
                factory: !factory,
                ..HeadWish::default()
            };
        },
    )];
    heads.extend((1..=3_u8).map(|pairs| {
        let on = wish.head.line_pairs == Some(pairs);
        let text = words.say(&say!("start-pairs", pairs = usize::from(pairs)));
        with(format!("pairs-{pairs}"), text, on, &|wish| {
            wish.head.factory = false;
            wish.head.speaker_outputs = wish.head.speaker_outputs.or(Some(4));
            wish.head.line_pairs = (!on).then_some(pairs);
        })
    }));
    let amplifiers = [(1, 500.0, 2.0), (2, 100.0, 4.0), (4, 75.0, 4.0)].map(|(count, power, load)| {
        let text = format!("+ {count} × {}", words.figure(figure(power, Unit::Plain("W"))));
        with(format!("amp-{count}"), text, false, &|wish| {
            if wish.amplifiers.len() < MOST_AMPLIFIERS {
                let mut channels = ChannelsWish::new(count);
                channels.power.push(PowerAt {
                    power: Watts(power),
                    load: Some(Ohms(load)),
                });
                wish.amplifiers.push(AmplifierWish {
                    channels: vec![channels],
                    class: None,
                });
            }
        })
    });
    let own_amplifiers = wish
        .amplifiers
        .iter()
        .enumerate()
        .map(|(at, it)| amplifier_row(words, wish, at, it, write, &written));
    let groups = [Where::Front, Where::Rear, Where::Centre, Where::Bass].map(|at| {
        let now = wish.speakers_at(at);
        let kinds: &[(&str, u8, u8, u8)] = match at {
            Where::Bass => &[
                ("start-one-single", 1, 1, 1),
                ("start-one-dual", 1, 1, 2),
                ("start-two-single", 1, 2, 1),
                ("start-two-dual", 1, 2, 2),
            ],
            Where::Centre => &[("start-one", 1, 1, 1)],
            _ => &[
                ("start-full", 1, 2, 1),
                ("start-components", 2, 2, 1),
                ("start-three-way", 3, 2, 1),
            ],
        };
        let word = match at {
            Where::Front => "front",
            Where::Rear => "rear",
            Where::Centre => "centre",
            Where::Bass => "bass",
        };
        let mut all: Vec<Choice> = kinds
            .iter()
            .enumerate()
            .map(|(number, (key, ways, count, coils))| {
                let on = now.is_some_and(|it| {
                    it.ways == *ways
                        && it.count.unwrap_or(*count) == *count
                        && it.coils.unwrap_or(1) == *coils
                });
                with(format!("{word}-{number}"), words.text(key), on, &|wish| {
                    let before = wish.speakers_at(at).copied();
                    wish.speakers.retain(|it| it.at != at);
                    if !on {
                        wish.speakers.push(SpeakersWish {
                            ways: *ways,
                            active: before.is_some_and(|it| it.active && *ways > 1),
                            count: Some(*count),
                            coils: (at == Where::Bass).then_some(*coils),
                            ..before.unwrap_or_else(|| SpeakersWish::new(at))
                        });
                    }
                })
            })
            .collect();
        if let Some(now) = now.filter(|it| it.ways > 1 || it.at == Where::Bass) {
            let active = now.active;
            all.push(with(
                format!("{word}-active"),
                words.text("start-active"),
                active,
                &|wish| {
                    if let Some(it) = wish.speakers.iter_mut().find(|it| it.at == at) {
                        it.active = !active;
                    }
                },
            ));
        }
        if let Some(now) = now {
            all.extend([1.0, 2.0, 4.0, 8.0].map(|load| {
                let on = now.impedance == Some(Ohms(load));
                with(format!("{word}-{load}-ohm"), ohms(load), on, &|wish| {
                    if let Some(it) = wish.speakers.iter_mut().find(|it| it.at == at) {
                        it.impedance = (!on).then_some(Ohms(load));
                    }
                })
            }));
        }
        row(words.text(&format!("start-speakers-{word}")), all)
    });
    let seconds = Chemistry::ALL.iter().map(|chemistry| {
        let on = wish
            .second
            .is_some_and(|it| it.battery.chemistry == Some(*chemistry));
        let text = words.say(&chemistry.said());
        with(format!("second-{}", chemistry.word()), text, on, &|wish| {
            let mut second = wish.second.unwrap_or_default();
            second.battery.chemistry = Some(*chemistry);
            wish.second = (!on).then_some(second);
        })
    });
    let loads = LoadKind::ALL.iter().map(|kind| {
        let on = wish.loads.iter().any(|it| it.kind == *kind);
        let text = words.say(&kind.said());
        with(format!("load-{}", *kind as u8), text, on, &|wish| {
            if on {
                wish.loads.retain(|it| it.kind != *kind);
            } else if wish.loads.len() < MOST_LOADS {
                wish.loads.push(LoadWish {
                    kind: *kind,
                    power: None,
                    current: None,
                });
            }
        })
    });
    let wired = wish.wired_return == Some(true);
    let bare = wish.harness == Some(false);
    let processor = wish.processor.is_some();
    let others = vec![
        with(
            "processor".to_owned(),
            words.text("start-processor"),
            processor,
            &|wish| {
                wish.processor = (!processor).then(ProcessorWish::default);
            },
        ),
        with("wired".to_owned(), words.text("start-wired"), wired, &|wish| {
            wish.wired_return = (!wired).then_some(true);
        }),
        with(
            "no-harness".to_owned(),
            words.text("start-no-harness"),
            bare,
            &|wish| {
                wish.harness = (!bare).then_some(false);
            },
        ),
    ];
    html! {
        <>
            { row(words.text("start-vehicle"), bodies.collect()) }
            { row(words.text("start-driver"), drives.collect()) }
            { row(words.text("start-battery"), batteries.collect()) }
            { row(words.text("start-head"), heads) }
            { row(words.text("start-amplifiers"), amplifiers.into()) }
            { for own_amplifiers }
            { for groups }
            { row(words.text("start-second"), seconds.collect()) }
            { row(words.text("start-loads"), loads.collect()) }
            { row(words.text("start-others"), others) }
        </>
    }
}

/// An amplifier that was told: its channels and power, and a button that takes it out.
fn amplifier_row(
    words: &Words,
    wish: &Wish,
    at: usize,
    it: &AmplifierWish,
    write: &Callback<String>,
    written: &dyn Fn(&Wish) -> String,
) -> Html {
    let language: Language = words.reader().language;
    let alone = Wish {
        amplifiers: vec![it.clone()],
        ..Wish::default()
    };
    let mut without = wish.clone();
    without.amplifiers.remove(at);
    let remove = {
        let (write, line) = (write.clone(), written(&without));
        Callback::from(move |_: MouseEvent| write.emit(line.clone()))
    };
    let first = it
        .channels
        .first()
        .and_then(|it| it.power.first())
        .map(|it| it.power.0);
    // The number alone is changed here; loads and bridging are told in the line.
    let onchange = {
        let (wish, write, name) = (wish.clone(), write.clone(), words.clone());
        Callback::from(move |event: Event| {
            let typed = event
                .target_dyn_into::<HtmlInputElement>()
                .map(|field| field.value());
            let power = typed.and_then(|it| it.replace(',', ".").parse::<f64>().ok());
            let mut wish = wish.clone();
            let slot = wish
                .amplifiers
                .get_mut(at)
                .and_then(|it| it.channels.first_mut()?.power.first_mut());
            if let (Some(slot), Some(power)) = (slot, power.filter(|it| (1.0..=10_000.0).contains(it))) {
                slot.power = Watts(power);
                write.emit(line(&wish, name.reader().language));
            }
        })
    };
    let name = line(&alone, language);
    html! {
        <div class="start__amp">
            <span>{ &name }</span>
            if let Some(power) = first {
                <label class="start__watts"><input class="field__input" type="number" min="1" max="10000" step="5" value={format!("{power}")} {onchange} aria-label={words.say(&say!("start-watts-of", amplifier = &name))} data-testid={format!("start-watts-{at}")} />{ "W" }</label>
            }
            <button type="button" class="jobs__remove" onclick={remove} aria-label={words.say(&say!("start-without", amplifier = &name))} data-testid={format!("start-without-{at}")}>{ words.text("remove") }</button>
        </div>
    }
}
