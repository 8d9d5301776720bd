//! The papers of the job, one at a time on a sheet of paper over the drawing: lists to buy, cut, label, measure and set by,
//! checklists to be ticked on the tablet, and what becomes of each thing. Each is printed as it stands, or handed out as
//! comma-separated values.

use super::handover::Handover;
use super::title_block::make;
use crate::files;
use crate::state::{Act, Panel, Store, escape_closes};
use crate::{browser, papers_print};
use model::edits::tick;
use model::quantity::Share;
use paperwork::{Checklist, List, PriceList, Table, Terms, Work};
use wasm_bindgen_futures::spawn_local;
use web_sys::{HtmlElement, HtmlInputElement};
use words::{Words, say};
use yew::prelude::*;

/// Under which keys the browser remembers the shop's terms.
const PRICES: &str = "loomwright-prices";
const WASTE: &str = "loomwright-waste";
/// Largest price list, in bytes: what a browser remembers beside its jobs is little.
const LARGEST_PRICES: usize = 1_000_000;

#[derive(Properties, PartialEq)]
pub(crate) struct PapersProps {
    /// Counts the edits: everything here reads the editor.
    pub(crate) revision: u32,
}

/// What the shop reckons with, as this browser remembers it.
pub(super) fn terms(words: &Words) -> Terms {
    let mut terms = Terms::read_by(words);
    if let Some(percent) = browser::remembered(WASTE).and_then(|it| it.parse::<f64>().ok()) {
        terms.waste = Share((percent / 100.0).clamp(0.0, 1.0));
    }
    if let Some(prices) = browser::remembered(PRICES) {
        terms.prices = PriceList::read(&prices, words);
    }
    terms
}

/// The way in for a price list that a shop filled in; this browser keeps it.
pub(super) fn prices_in(store: &Store, taken_in: Callback<()>, testid: &'static str) -> Html {
    let words = store.words();
    let store = store.clone();
    let onchange = Callback::from(move |event: Event| {
        let Some(input) = event.target_dyn_into::<HtmlInputElement>() else {
            return;
        };
        let file = input.files().and_then(|list| list.item(0));
        input.set_value("");
        let (store, taken_in) = (store.clone(), taken_in.clone());
        spawn_local(async move {
            let words = store.words();
            let Some(file) = file else { return };
            let text = match files::read(&file, None, LARGEST_PRICES).await {
                Ok(opened) => String::from_utf8_lossy(&opened.bytes).into_owned(),
                Err(trouble) => {
                    store.dispatch(Act::Say(words.say(&trouble.said())));
                    return;
                }
            };
            let read = PriceList::read(&text, &words);
            if read.by_article.is_empty() {
                store.dispatch(Act::Say(words.text("papers-no-prices")));
            } else {
                browser::remember(PRICES, &text);
                let count = read.by_article.len();
                let mut said = words.say(&say!("papers-prices-read", count = count));
                if let Some(line) = read.unread.first() {
                    let more = say!("papers-prices-unread", count = read.unread.len(), line = *line);
                    said = format!("{said} {}", words.say(&more));
                }
                store.dispatch(Act::Say(said));
                taken_in.emit(());
            }
        });
    });
    html! {
        <label class="mend pictures__add">{ words.text("papers-prices") }<input class="pictures__input" type="file" accept=".csv,text/csv" {onchange} data-testid={testid} /></label>
    }
}

/// A paper as it is shown.
enum Shown {
    List(Table),
    /// Sheets of labels to cut out, and the same as a list.
    Labels(Vec<String>, Table),
    Steps(Checklist),
}

fn shown(work: &Work<'_>, list: List, terms: &Terms, words: &Words) -> Option<Shown> {
    Some(match list {
        List::StripOut => Shown::Steps(paperwork::strip_out(work)),
        List::Build => Shown::Steps(paperwork::build(work, terms)),
        List::Labels => {
            let study = circuit::study(&work.sheet, &work.job.settings);
            Shown::Labels(
                paperwork::label_pages(work, &study, words),
                paperwork::label_sheet(work),
            )
        }
        list => Shown::List(paperwork::lists(work, terms, &[list]).pop()?),
    })
}

#[function_component]
pub(crate) fn Papers(_: &PapersProps) -> Html {
    // None: the handover.
    let list = use_state(|| Some(List::Order));
    let turn = use_state(|| 0_u32);
    let sheet = use_node_ref();
    {
        let sheet = sheet.clone();
        use_effect_with((), move |()| {
            if let Some(sheet) = sheet.cast::<HtmlElement>() {
                let _ = sheet.focus();
            }
        });
    }
    let Some(store) = use_context::<Store>() else {
        return html! {};
    };
    let words = store.words();
    let close = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| {
            store.dispatch(Act::Toggle(Panel::Papers));
            browser::focus_board();
        })
    };
    let terms = terms(&words);
    let (heading, paper) = store.desk.see(|editor| {
        let Some(work) = Work::of(editor.job(), editor.on(), None) else {
            return (words.text("papers-nothing"), None);
        };
        let paper = list.and_then(|list| shown(&work, list, &terms, &words));
        (words.say(&work.heading()), paper)
    });
    let tabs = List::ALL.iter().copied().map(Some).chain([None]).map(|one| {
        let list = list.clone();
        let on = *list == one;
        let onclick = Callback::from(move |_: MouseEvent| list.set(one));
        let (word, title) = match one {
            Some(one) => (one.word(), words.say(&one.title())),
            None => ("handover", words.text("hand-out-title")),
        };
        html! { <li><button type="button" class={classes!("papers__tab", on.then_some("papers__tab--on"))} aria-current={on.then_some("page")} {onclick}
            data-testid={format!("paper-{word}")}>{ title }</button></li> }
    });
    let csv = {
        let (store, list) = (store.clone(), *list);
        Callback::from(move |_: MouseEvent| {
            let Some(list) = list else { return };
            let words = store.words();
            let text = store.desk.see(|editor| {
                let work = Work::of(editor.job(), editor.on(), None)?;
                let table = paperwork::lists(&work, &self::terms(&words), &[list]).pop()?;
                Some(paperwork::csv(&table, &words))
            });
            let title = store.desk.see(|editor| editor.job().title.clone());
            let name = files::file_name(&format!("{title} {}", list.word()), ".csv");
            if let Some(text) = text {
                store.dispatch(Act::Say(match files::export_text(&name, &text, "text/csv") {
                    Ok(()) => words.say(&say!("downloaded", name = name)),
                    Err(trouble) => words.say(&trouble.said()),
                }));
            }
        })
    };
    let taken_in = {
        let turn = turn.clone();
        Callback::from(move |()| turn.set(*turn + 1))
    };
    let waste = {
        let turn = turn.clone();
        Callback::from(move |event: Event| {
            if let Some(input) = event.target_dyn_into::<HtmlInputElement>() {
                browser::remember(WASTE, input.value().trim());
                turn.set(*turn + 1);
            }
        })
    };
    let print = Callback::from(|_: MouseEvent| papers_print::print());
    let is_order = matches!(*list, Some(List::Order | List::Prices | List::Cut));
    let title = list.map_or_else(|| words.text("hand-out-title"), |list| words.say(&list.title()));
    let is_list = list.is_some();
    // What has many columns lies: upright it would be cut, or made small by the printer.
    let wide = matches!(
        *list,
        Some(List::Becomes | List::Wiring | List::Settings | List::Quote | List::Cut | List::Fuses)
    );
    html! {
        <section onkeydown={escape_closes(&store)} class={classes!("papers", wide.then_some("papers--wide"))} data-testid="papers-page" aria-label={words.text("papers")}>
            <header class="papers__head">
                <b>{ words.text("papers") }</b>
                if is_list { <button type="button" class="mend" onclick={print} data-testid="paper-print">{ words.text("papers-print") }</button>
                <button type="button" class="mend" onclick={csv} data-testid="paper-csv">{ words.text("papers-csv") }</button> }
                <button type="button" class="slip__close" onclick={close} data-testid="close">{ words.text("key-esc") }</button>
            </header>
            <nav class="papers__tabs" aria-label={words.text("papers-which")}><ul>{ for tabs }</ul></nav>
            <article ref={sheet} class="papers__sheet" data-paper={list.map(List::word)} data-testid="paper" tabindex="0">
                <h2>{ title }</h2>
                <p class="papers__work">{ heading }</p>
                if is_order {
                    <div class="papers__terms">
                        <label>{ words.text("papers-waste") }<input class="field__input" type="number" min="0" max="100" value={format!("{:.0}", terms.waste.0 * 100.0)} onchange={waste} data-testid="paper-waste" />{ "%" }</label>
                        { prices_in(&store, taken_in, "paper-prices") }
                    </div>
                }
                { match paper {
                    Some(Shown::List(table)) => listed(&table, &words),
                    Some(Shown::Labels(sheets, table)) => html! {
                        <>
                            { for sheets.into_iter().map(|svg| Html::from_html_unchecked(svg.into())) }
                            <div class={(!table.rows.is_empty()).then_some("papers__list")}>{ listed(&table, &words) }</div>
                        </>
                    },
                    Some(Shown::Steps(steps)) => stepped(&store, &steps, &words),
                    None if !is_list => html! { <Handover revision={store.revision} /> },
                    None => html! {},
                } }
            </article>
        </section>
    }
}

/// A list as a table.
fn listed(table: &Table, words: &Words) -> Html {
    // Written names are for programs; they stand in the table file.
    let table = table.clone().without(&["article"]);
    let empty = table.empty_columns();
    let table = &table.without(&empty);
    let numbers: Vec<bool> = (0..table.columns.len())
        .map(|at| {
            table
                .rows
                .iter()
                .any(|row| row.get(at).is_some_and(paperwork::Cell::is_number))
        })
        .collect();
    let class = |at: usize| {
        numbers
            .get(at)
            .copied()
            .unwrap_or_default()
            .then_some("papers__number")
    };
    // Tags and the like are not parted; a long row of them may be.
    let shown = |at: usize, text: String| {
        let short = text.chars().count() < 14 && table.columns.get(at).is_some_and(|it| it.is_unbroken());
        html! { <td class={classes!(class(at), short.then_some("papers__word"))}>{ text }</td> }
    };
    html! {
        <>
            if table.rows.is_empty() { <p>{ words.text("papers-empty") }</p> } else {
                <table>
                    // Each heading has the name of its column, for the style sheet to give it room.
                    <thead><tr>{ for table.headings(words).into_iter().zip(&table.columns).enumerate().map(|(at, (it, column))| html! {
                        <th scope="col" class={classes!(class(at), format!("papers__column-{}", column.name))}>{ it }</th>
                    }) }</tr></thead>
                    <tbody>{ for table.shown(words).into_iter().map(|row| html! {
                        <tr data-testid="paper-row">{ for row.into_iter().enumerate().map(|(at, it)| shown(at, it)) }</tr>
                    }) }</tbody>
                </table>
            }
            { for table.notes.iter().map(|note| html! { <p class="papers__note">{ words.say(note) }</p> }) }
        </>
    }
}

/// A checklist, to be ticked.
fn stepped(store: &Store, list: &Checklist, words: &Words) -> Html {
    let mut phase = None;
    let steps: Vec<Html> = list
        .steps
        .iter()
        .map(|step| {
            let begins = phase.replace(step.phase) != Some(step.phase);
            let onchange = {
                let (store, step) = (store.clone(), step.clone());
                Callback::from(move |event: Event| {
                    if let Some(input) = event.target_dyn_into::<HtmlInputElement>() {
                        make(&store, |job| tick(job, &step.name, step.what.clone(), input.checked()));
                    }
                })
            };
            html! {
                <>
                    if begins { <h3>{ words.say(&step.phase.said()) }</h3> }
                    <label class="papers__step" data-testid="paper-step"><input type="checkbox" checked={step.done} {onchange} /><span>{ words.say(&step.what) }</span></label>
                </>
            }
        })
        .collect();
    html! {
        <>
            <p class="papers__care">{ words.say(&list.care) }</p>
            <p data-testid="steps-done">{ words.say(&say!("papers-done", done = list.done(), count = list.steps.len())) }</p>
            { for steps }
        </>
    }
}
