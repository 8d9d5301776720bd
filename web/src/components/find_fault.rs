//! Finding the fault: what is seen and heard, what to measure next with the leads laid on the drawing, what is suspected.
//! A touch for a symptom, a number for a reading, and on to the next: the other hand holds a lead.

use crate::browser;
use crate::state::{Act, Panel, Store, escape_closes};
use assist::finding::{
    Finder, Reading, State, Suspect, Symptom, Verdict, read_reading, read_shown, said_number, said_probe,
    said_suspect, said_unexplained,
};
use circuit::Probe;
use editor::{Suspected, Thing};
use model::breaks::Break;
use model::laying::Moved;
use model::readings::Measured;
use model::{Fact, PartId, PartKind, Sheet};
use web_sys::{HtmlInputElement, HtmlSelectElement};
use words::{Saying, Unit, Value, precise, say};
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

/// What can be said of a part, by word and message.
fn sayable(kind: &PartKind) -> &'static [&'static str] {
    match kind {
        PartKind::Speaker(_) => &["silent", "weak", "plays", "hum"],
        PartKind::Amplifier(_) | PartKind::HeadUnit(_) | PartKind::Processor(_) => &["off", "on", "hum"],
        PartKind::Load(_) => &["off", "on"],
        PartKind::Fuse(_) | PartKind::Breaker(_) | PartKind::Block(_) => &["opened"],
        _ => &[],
    }
}

fn symptom(word: &str, part: PartId) -> Symptom {
    match word {
        "silent" => Symptom::Silent(part),
        "weak" => Symptom::Weak(part),
        "plays" => Symptom::Plays(part),
        "on" => Symptom::On(part),
        "opened" => Symptom::Opened(part, None),
        "hum" => Symptom::Hum(part),
        _ => Symptom::Off(part),
    }
}

fn symptom_said(symptom: &Symptom, sheet: &Sheet) -> Saying {
    let (part, key) = match symptom {
        Symptom::Silent(part) => (part, "fault-silent"),
        Symptom::Weak(part) => (part, "fault-weak"),
        Symptom::Plays(part) => (part, "fault-plays"),
        Symptom::Off(part) => (part, "fault-off"),
        Symptom::On(part) => (part, "fault-on"),
        Symptom::Opened(part, _) => (part, "fault-opened"),
        Symptom::Hum(part) => (part, "fault-hum"),
    };
    let tag = sheet
        .parts
        .get(part)
        .map_or_else(|| part.to_string(), |part| part.tag.clone());
    say!("fault-symptom-line", tag = tag, what = Saying::new(key))
}

/// What is seen and heard: a part, then what about it.
fn symptoms(store: &Store, known: &UseStateHandle<Known>, sheet: &Sheet) -> Html {
    let words = store.words();
    let parts: Vec<(PartId, String)> = sheet
        .parts
        .iter()
        .filter(|(_, part)| !sayable(&part.is).is_empty())
        .map(|(id, part)| (*id, format!("{} {}", part.tag, words.say(&part.said()))))
        .collect();
    let chosen = known.thing;
    let onchange = {
        let known = known.clone();
        Callback::from(move |event: Event| {
            if let Some(select) = event.target_dyn_into::<HtmlSelectElement>() {
                let id = select.value().parse::<u32>().ok().map(PartId);
                change(&known, |known| known.thing = id);
            }
        })
    };
    let about = chosen
        .and_then(|id| Some((id, sheet.parts.get(&id)?)))
        .map(|(id, part)| {
            sayable(&part.is)
                .iter()
                .map(|word| {
                    let known = known.clone();
                    let word = *word;
                    let onclick = Callback::from(move |_: MouseEvent| {
                        change(&known, |known| {
                            known.symptoms.push(symptom(word, id));
                            known.thing = None;
                        });
                    });
                    html! { <button type="button" class="fault__act" {onclick} data-testid={format!("fault-{word}")}>{ words.text(&format!("fault-{word}")) }</button> }
                })
                .collect::<Html>()
        });
    let lines = known.symptoms.iter().enumerate().map(|(place, told)| {
        let said = words.say(&symptom_said(told, sheet));
        let known = known.clone();
        let onclick = Callback::from(move |_: MouseEvent| change(&known, |known| { known.symptoms.remove(place); }));
        html! {
            <li class="fault__line" data-testid="fault-symptom"><span>{ said.clone() }</span>
                <button type="button" class="jobs__remove" {onclick} aria-label={words.say(&say!("fault-remove", what = said))}>{ words.text("remove") }</button></li>
        }
    });
    html! {
        <div class="fault">
            <h3>{ words.text("fault-known") }</h3>
            <ul class="fault__list">{ for lines }</ul>
            <div class="fault__row">
                <select class="field__input" {onchange} data-testid="fault-thing" aria-label={words.text("fault-thing")}>
                    <option value="" selected={chosen.is_none()}>{ words.text("fault-thing-none") }</option>
                    { for parts.into_iter().map(|(id, name)| html! { <option value={id.0.to_string()} selected={chosen == Some(id)}>{ name }</option> }) }
                </select>
                { about.unwrap_or_default() }
            </div>
        </div>
    }
}

fn unit(probe: &Probe) -> &'static str {
    match probe {
        Probe::Volts(..) | Probe::Tone(..) => "V",
        Probe::Ohms(..) => "Ω",
        Probe::Amps(_) => "A",
    }
}

/// What to measure next, and the field for what the meter shows.
fn next(store: &Store, known: &UseStateHandle<Known>, verdict: &Verdict, sheet: &Sheet) -> Html {
    let words = store.words();
    let Verdict::Open(proposal) = verdict else {
        return html! {};
    };
    let probe = proposal.probe.clone();
    let add = {
        let (known, probe, state) = (known.clone(), probe.clone(), proposal.state);
        Callback::from(move |(number, tolerance): (Option<f64>, Option<f64>)| {
            change(&known, |known| {
                known.readings.push(Reading {
                    probe: probe.clone(),
                    state,
                    number,
                    tolerance,
                });
                known.typed.clear();
            });
        })
    };
    let number = read_shown(&known.typed);
    let enter = {
        let add = add.clone();
        move || {
            if let Some((number, tolerance)) = number {
                add.emit((Some(number), tolerance));
            }
        }
    };
    let onsubmit = {
        let enter = enter.clone();
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            enter();
        })
    };
    let oninput = {
        let known = known.clone();
        Callback::from(move |event: InputEvent| {
            if let Some(field) = event.target_dyn_into::<HtmlInputElement>() {
                change(&known, |known| known.typed = field.value());
            }
        })
    };
    let show = {
        let (store, probe) = (store.clone(), probe.clone());
        Callback::from(move |_: MouseEvent| {
            store.desk.change(|editor| editor.put_leads(&probe));
        })
    };
    let open = matches!(probe, Probe::Ohms(..)).then(|| {
        let onclick = Callback::from(move |_: MouseEvent| add.emit((None, None)));
        html! { <button type="button" class="fault__act" {onclick} data-testid="fault-open">{ words.text("fault-skip-open") }</button> }
    });
    let effort = say!(
        "fault-effort",
        minutes = precise(proposal.minutes, Unit::Bare, 0),
        bits = precise(proposal.bits, Unit::Bare, 1),
    );
    html! {
        <form class="fault" {onsubmit}>
            <h3>{ words.text("fault-measure") }</h3>
            <p class="fault__at" data-testid="fault-next">{ words.say(&said_probe(sheet, &probe)) }</p>
            <div class="fault__row">
                <button type="button" class="fault__act" onclick={show} data-testid="fault-show">{ words.text("fault-show") }</button>
            </div>
            <div class="fault__row">
                <input class="field__input" inputmode="decimal" autocomplete="off" value={known.typed.clone()} {oninput} data-testid="fault-number" aria-label={words.say(&say!("fault-reads", unit = unit(&probe)))} placeholder={unit(&probe)} />
                <button type="submit" class="fault__act" data-testid="fault-enter">{ words.text("fault-enter") }</button>
                { open.unwrap_or_default() }
            </div>
            <p class="fault__effort">{ words.say(&effort) }</p>
        </form>
    }
}

/// The things that breaks are on.
pub(super) fn things<'b>(breaks: impl IntoIterator<Item = &'b Break>) -> Vec<Thing> {
    let mut all = Vec::new();
    for broken in breaks {
        let (runs, parts) = broken.on();
        all.extend(runs.into_iter().map(Thing::Run));
        all.extend(parts.into_iter().map(Thing::Part));
    }
    all
}

/// What is suspected, likeliest first; a touch lights it on the drawing.
fn suspects(store: &Store, known: &UseStateHandle<Known>, outcome: &Outcome, sheet: &Sheet) -> Html {
    let words = store.words();
    let (verdict, ranking) = (&outcome.verdict, outcome.ranking.as_slice());
    if known.readings.is_empty() && known.symptoms.is_empty() {
        return html! { <p class="drawer__none">{ words.text("fault-start") }</p> };
    }
    let (title, ranking) = match verdict {
        Verdict::Found(suspect) => ("fault-done", std::slice::from_ref(suspect)),
        Verdict::Alike(_) => ("fault-left", ranking),
        _ => ("fault-suspects", ranking),
    };
    let lines = ranking.iter().zip(1..).map(|(suspect, place): (_, usize)| {
        let (store, things) = (store.clone(), things(&suspect.breaks));
        let onclick = Callback::from(move |_: MouseEvent| {
            if let Some(first) = things.first() {
                store.desk.change(|editor| editor.go_to(first));
            }
            store.desk.change(|editor| editor.light(&things));
        });
        let share = words.figure(precise(suspect.share, Unit::Percent, 0));
        let would = known.readings.iter().zip(&suspect.foretold);
        let would = would.map(|(reading, foretold)| said_number(&reading.probe, *foretold));
        let would: Vec<Saying> = would.map(|number| say!("as-it-stands", text = number)).collect();
        let would = (!would.is_empty()).then(|| say!("fault-foretold", numbers = Value::Joined(would, " · ")));
        html! {
            <li><button type="button" class="fault__suspect" {onclick} data-testid="fault-suspect">
                <span><b class="fault__place">{ place }</b>{ words.say(&said_suspect(sheet, suspect)) }
                    if let Some(would) = would { <small class="fault__would">{ words.say(&would) }</small> }</span><span>{ share }</span>
                <i class="fault__bar" style={format!("width:{:.0}%", suspect.share * 100.0)} aria-hidden="true"></i>
            </button></li>
        }
    });
    html! {
        <div class="fault" aria-live="polite">
            <h3 data-testid="fault-outcome">{ words.text(title) }</h3>
            <ol class="fault__list">{ for lines }</ol>
            { for outcome.unexplained.iter().map(|said| html! { <p class="fault__doubt" data-testid="fault-unexplained">{ words.say(said) }</p> }) }
        </div>
    }
}

/// The field for a reading that nobody proposed, as it is written on the command line.
fn own(store: &Store, known: &UseStateHandle<Known>, sheet: &Sheet) -> Html {
    let words = store.words();
    let oninput = {
        let known = known.clone();
        Callback::from(move |event: InputEvent| {
            if let Some(field) = event.target_dyn_into::<HtmlInputElement>() {
                change(&known, |known| {
                    (known.own, known.own_wrong) = (field.value(), None)
                });
            }
        })
    };
    let onsubmit = {
        let (known, read) = (known.clone(), read_reading(&known.own, sheet));
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            change(&known, |known| match read.clone() {
                Ok(reading) => {
                    known.readings.push(reading);
                    known.own.clear();
                }
                Err(said) => known.own_wrong = Some(said),
            });
        })
    };
    html! {
        <form class="fault__row" {onsubmit} autocomplete="off">
            <input class="field__input" value={known.own.clone()} {oninput} data-testid="fault-own" aria-label={words.text("fault-own")} placeholder={words.text("fault-own-like")} />
            <button type="submit" class="fault__act" disabled={known.own.trim().is_empty()} data-testid="fault-own-enter">{ words.text("fault-enter") }</button>
            if let Some(said) = &known.own_wrong { <p class="fault__doubt" role="alert" data-testid="fault-own-wrong">{ words.say(said) }</p> }
        </form>
    }
}

/// What was measured, and what was kept on this sheet before.
fn readings(store: &Store, known: &UseStateHandle<Known>, sheet: &Sheet) -> Html {
    let words = store.words();
    let kept: Vec<Reading> = sheet
        .readings
        .iter()
        .filter_map(|reading| from_kept(sheet, known.moved, reading))
        .filter(|reading| !known.readings.contains(reading))
        .collect();
    let lines = known.readings.iter().enumerate().map(|(place, reading)| {
        let number = said_number(&reading.probe, reading.number);
        let number = match reading.tolerance {
            Some(tolerance) => {
                let tolerance = said_number(&reading.probe, Some(tolerance));
                say!("fault-within", number = number, tolerance = tolerance).into()
            }
            None => number,
        };
        let said = words.say(&say!("fault-line", at = said_probe(sheet, &reading.probe), number = number));
        let known = known.clone();
        let onclick = Callback::from(move |_: MouseEvent| change(&known, |known| { known.readings.remove(place); }));
        html! {
            <li class="fault__line" data-testid="fault-reading"><span>{ said.clone() }</span>
                <button type="button" class="jobs__remove" {onclick} aria-label={words.say(&say!("fault-remove", what = said))}>{ words.text("remove") }</button></li>
        }
    });
    let stand: Vec<Option<Reading>> = sheet
        .readings
        .iter()
        .map(|it| from_kept(sheet, known.moved, it))
        .collect();
    let new: Vec<model::readings::Reading> = known
        .readings
        .iter()
        .filter(|reading| !stand.contains(&Some((*reading).clone())))
        .map(|reading| to_kept(sheet, known.moved, reading))
        .collect();
    let new_count = if store.desk.see(editor::Editor::looks_only) {
        0
    } else {
        new.len()
    };
    let keep = {
        let desk = store.desk.clone();
        Callback::from(move |_: MouseEvent| {
            let new = new.clone();
            desk.change(|editor| editor.keep_readings(new));
        })
    };
    let count = kept.len();
    let take = {
        let known = known.clone();
        Callback::from(move |_: MouseEvent| change(&known, |known| known.readings.extend(kept.clone())))
    };
    html! {
        <div class="fault">
            <h3>{ words.text("fault-readings") }</h3>
            { measured_while(store, known) }
            <ul class="fault__list">{ for lines }</ul>
            if new_count > 0 { <button type="button" class="fault__act" onclick={keep} data-testid="fault-keep">{ words.say(&say!("fault-keep", count = new_count)) }</button> }
            { own(store, known, sheet) }
            if count > 0 { <button type="button" class="fault__act" onclick={take} data-testid="fault-kept">{ words.say(&say!("fault-kept", count = count)) }</button> }
        </div>
    }
}

/// Asks what was moved while all of this was measured.
fn measured_while(store: &Store, known: &UseStateHandle<Known>) -> Html {
    let words = store.words();
    let nothing = html! { <option value="" selected={known.moved.is_none()}>{ words.text("fault-while-nothing") }</option> };
    let options = Moved::ALL.iter().map(|moved| {
        let is_chosen = known.moved == Some(*moved);
        html! { <option value={moved.word()} selected={is_chosen}>{ words.say(&moved.said()) }</option> }
    });
    let choose = {
        let known = known.clone();
        Callback::from(move |event: Event| {
            if let Some(select) = event.target_dyn_into::<HtmlSelectElement>() {
                let moved = Moved::from_word(&select.value());
                change(&known, |known| known.moved = moved);
            }
        })
    };
    html! {
        <label class="fault__row">{ words.text("fault-while") }
            <select class="field__input" onchange={choose} data-testid="fault-while">{ nothing }{ for options }</select></label>
    }
}

/// A reading as the meter sheet keeps it.
fn to_kept(sheet: &Sheet, moved: Option<Moved>, reading: &Reading) -> model::readings::Reading {
    let (measured, at, against) = match &reading.probe {
        Probe::Volts(red, black) => (Measured::Volts, sheet.written(red), sheet.written(black)),
        Probe::Tone(red, black) => (Measured::VoltsAc, sheet.written(red), sheet.written(black)),
        Probe::Ohms(red, black) => (Measured::Ohms, sheet.written(red), sheet.written(black)),
        Probe::Amps(run) => (Measured::Amps, Thing::Run(*run).written(sheet), String::new()),
    };
    let kept = model::readings::Reading {
        measured,
        at,
        against,
        state: reading.state.vehicle,
        duty: reading.state.duty,
        moved: moved.map_or(Fact::Unknown, Fact::Given),
        ..model::readings::Reading::default()
    };
    match reading.number {
        Some(number) => kept.with_number(number),
        None => model::readings::Reading {
            remark: editor::meter::OPEN.to_owned(),
            ..kept
        },
    }
}

/// A reading that was kept, as the finder takes it; nothing where its place is not on the sheet any more, and of one that was
/// taken while something else was moved: what fails then and what fails at rest are not one fault to look for.
fn from_kept(sheet: &Sheet, moved: Option<Moved>, kept: &model::readings::Reading) -> Option<Reading> {
    if kept.moved.value() != moved {
        return None;
    }
    let probe = match kept.measured {
        Measured::Amps => Probe::Amps(sheet.run_by_tag(&kept.at)?.0),
        measured => {
            let (red, black) = (
                paperwork::terminal(sheet, &kept.at)?,
                paperwork::terminal(sheet, &kept.against)?,
            );
            match measured {
                Measured::Volts => Probe::Volts(red, black),
                Measured::VoltsAc => Probe::Tone(red, black),
                _ => Probe::Ohms(red, black),
            }
        }
    };
    // With the fuses out a sheet is another one than is searched.
    if kept.fuses_out {
        return None;
    }
    let number = kept.number();
    // Volts and amps without a number say nothing that could be weighed; an open circuit does.
    (number.is_some() || matches!(probe, Probe::Ohms(..))).then_some(Reading {
        probe,
        state: State {
            vehicle: kept.state,
            duty: kept.duty,
        },
        number,
        tolerance: None,
    })
}
