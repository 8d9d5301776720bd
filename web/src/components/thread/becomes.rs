//! What becomes of things between the sheet on the table and the one before it: counted, told one by one, and what that
//! does to the findings.

use super::Told;
use crate::components::title_block::make;
use crate::state::Store;
use editor::recording::choices;
use editor::{Editor, Thing};
use model::compare::{Became, compare};
use model::edits::{set_property, set_wire_property};
use model::handling::{Fate, OnceOut};
use model::property::PropertyType;
use model::{Sheet, SheetKind};
use web_sys::HtmlSelectElement;
use words::{Saying, say};
use yew::prelude::*;

/// The sheet before this one: the one that is laid under where that is one, else the nearest that something is on.
fn earlier(editor: &Editor) -> Option<(SheetKind, &Sheet)> {
    let before = |kind: SheetKind, sheet: &Sheet| kind < editor.on() && !sheet.parts.is_empty();
    let laid = editor
        .under()
        .and_then(|kind| Some((kind, editor.job().sheet(kind)?)))
        .filter(|(kind, sheet)| before(*kind, sheet));
    let mut sheets = editor.job().sheets.iter();
    let nearest = sheets.rfind(|(kind, sheet)| before(**kind, sheet));
    laid.or(nearest.map(|(kind, sheet)| (*kind, sheet)))
}

/// A line: the thing, what it is called, what became of it, and what is decided of it.
struct Line {
    thing: Thing,
    name: String,
    became: Saying,
    became_of_it: Became,
    /// The written form of what is decided of it: its fate where it stays, else where it goes.
    decided: String,
}

fn name(editor: &Editor, sheet: &Sheet, thing: &Thing) -> String {
    match thing {
        Thing::Part(id) => sheet
            .parts
            .get(id)
            .map(|part| format!("{} {}", part.tag, editor.words().say(&part.said()))),
        Thing::Run(id) => sheet.runs.get(id).map(|run| format!("{} {}", run.tag, run.label)),
        Thing::Terminal(_) => None,
    }
    .unwrap_or_default()
    .trim_end()
    .to_owned()
}

fn said(became: &Became) -> Saying {
    match became {
        Became::Kept => say!("becomes-kept"),
        Became::Changed(_) => say!("becomes-changed"),
        Became::New => say!("becomes-new"),
        Became::Removed => say!("becomes-removed"),
    }
}

/// What comes of the work since the sheet before.
#[derive(Default, PartialEq)]
pub(super) struct Comes {
    /// Findings cleared, left and brought.
    findings: [usize; 3],
    /// Metal and money: what of, how much, in which unit.
    worth: Vec<Vec<String>>,
    /// What of it is not known.
    notes: Vec<Saying>,
}

pub(super) fn what_comes(editor: &Editor) -> Option<Comes> {
    let (before, _) = earlier(editor)?;
    let work = paperwork::Work::of(editor.job(), editor.on(), Some(before))?;
    let all = paperwork::what_becomes(&work);
    let worth = all.worth(&work);
    Some(Comes {
        findings: [all.cleared.len(), all.left.len(), all.added.len()],
        worth: worth.shown(editor.words()),
        notes: worth.notes,
    })
}

/// Whether the sheet that is laid under is the one that the drawer compares with.
pub(crate) fn is_of_under(editor: &Editor) -> bool {
    editor.under().is_some() && editor.under() == earlier(editor).map(|(kind, _)| kind)
}

/// How many things are not as they were.
pub(super) fn count(store: &Store) -> usize {
    store.desk.see(|editor| {
        let tally = earlier(editor).map(|(_, before)| compare(before, editor.sheet()).tally());
        tally.map_or(0, |it| it.changed + it.new + it.removed)
    })
}

pub(super) fn becomes(store: &Store, told: &Told) -> Html {
    let words = store.words();
    let Some((before, lines, counts)) = store.desk.see(|editor| {
        let (kind, before) = earlier(editor)?;
        let compared = compare(before, editor.sheet());
        let here = editor.sheet();
        let all = compared
            .parts
            .iter()
            .map(|(id, became)| (Thing::Part(*id), became))
            .chain(compared.runs.iter().map(|(id, became)| (Thing::Run(*id), became)));
        let lines: Vec<Line> = all
            .map(|(thing, became)| {
                let is_gone = *became == Became::Removed;
                let sheet = if is_gone { before } else { here };
                let handling = match &thing {
                    Thing::Part(id) => sheet.parts.get(id).map(|it| &it.handling),
                    Thing::Run(id) => sheet.runs.get(id).map(|it| &it.handling),
                    Thing::Terminal(_) => None,
                };
                let decided = handling.map(|it| {
                    if is_gone {
                        it.once_out.print()
                    } else {
                        it.fate.print()
                    }
                });
                Line {
                    name: name(editor, sheet, &thing),
                    became: said(became),
                    decided: decided.unwrap_or_default(),
                    became_of_it: became.clone(),
                    thing,
                }
            })
            .collect();
        Some((kind, lines, compared.tally()))
    }) else {
        return html! { <p class="thread__about">{ words.text("becomes-none") }</p> };
    };
    let [cleared, left, brought] = told.comes.findings;
    let on = store.desk.see(Editor::on);
    let row = |line: Line| {
        let go = {
            let (desk, thing) = (store.desk.clone(), line.thing.clone());
            Callback::from(move |_: MouseEvent| {
                desk.change(|editor| {
                    if editor.under() != Some(before) && !thing.is_on(editor.sheet()) {
                        editor.lay_under(Some(before));
                    }
                    editor.go_to_either(&thing)
                });
            })
        };
        let is_gone = line.became_of_it == Became::Removed;
        // What is gone is decided on the sheet that still has it.
        let (sheet, property) = if is_gone {
            (before, "once-out")
        } else {
            (on, "fate")
        };
        let choose = {
            let (store, thing) = (store.clone(), line.thing.clone());
            Callback::from(move |event: Event| {
                if let Some(select) = event.target_dyn_into::<HtmlSelectElement>() {
                    let word = select.value();
                    make(&store, |job| match &thing {
                        Thing::Run(id) => set_wire_property(job, sheet, *id, property, &word),
                        Thing::Part(id) => set_property(job, sheet, *id, property, &word),
                        Thing::Terminal(at) => set_property(job, sheet, at.part, property, &word),
                    });
                }
            })
        };
        let choices = if is_gone {
            choices::<OnceOut>()
        } else {
            choices::<Fate>()
        };
        html! {
            <li class="thread__row" data-testid="becomes-line">
                <button type="button" class="thread__link" onclick={go}>{ line.name }</button>
                <span>{ words.say(&line.became) }</span>
                if line.became_of_it != Became::New {
                    <select class="field__input" onchange={choose} aria-label={words.say(&model::said::name_of(property))}>
                        <option value="?" selected={line.decided == "?"}>{ "—" }</option>
                        { for choices.into_iter().map(|(word, said)| html! { <option value={word} selected={line.decided == word}>{ words.say(&said) }</option> }) }
                    </select>
                }
            </li>
        }
    };
    let (kept, others): (Vec<Line>, Vec<Line>) = lines
        .into_iter()
        .partition(|line| line.became_of_it == Became::Kept);
    html! {
        <>
            <p class="thread__about">{ words.say(&say!("becomes-from", sheet = before.said())) }</p>
            <p data-testid="becomes-counts">{ words.say(&say!("becomes-counts", kept = counts.kept, changed = counts.changed, new = counts.new, removed = counts.removed)) }</p>
            <p data-testid="becomes-findings">{ words.say(&say!("becomes-findings", cleared = cleared, left = left, brought = brought)) }</p>
            if !told.comes.worth.is_empty() {
                <dl class="thread__worth" data-testid="becomes-worth">{ for told.comes.worth.iter().map(|row| html! {
                    <div><dt>{ row.first().cloned() }</dt><dd>{ row.iter().skip(1).cloned().collect::<Vec<_>>().join("\u{a0}") }</dd></div>
                }) }</dl>
            }
            { for told.comes.notes.iter().map(|note| html! { <p class="thread__about">{ words.say(note) }</p> }) }
            <ul>{ for others.into_iter().map(row) }</ul>
            <details><summary class="slip__more">{ words.say(&say!("becomes-kept-all", count = kept.len())) }</summary><ul>{ for kept.into_iter().map(row) }</ul></details>
        </>
    }
}
