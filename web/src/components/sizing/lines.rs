//! The table of the sizing drawer: what changes first, what stays folded away; each line with what it is, should be and why.

use super::Answer;
use crate::components::title_block::make;
use crate::state::Store;
use assist::sizing::{DeviceLine, Limit, RunLine, device_tag, size_value};
use circuit::DeviceRef;
use model::conductor::Size;
use model::quantity::Amps;
use model::{Change, Edit, Job, PartKind, RunId, Sheet, SheetKind};
use std::rc::Rc;
use words::{Unit, Value, Words, figure, say};
use yew::prelude::*;

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

/// What the rows share.
pub(super) struct Table<'a> {
    pub(super) store: &'a Store,
    pub(super) on: SheetKind,
    pub(super) sheet: &'a Sheet,
    pub(super) answer: &'a Rc<Answer>,
    /// Whether another answer is on its way: then nothing is taken from this one.
    pub(super) is_late: bool,
    pub(super) words: &'a Words,
}

/// A size in words.
pub(super) fn size_text(words: &Words, size: Option<Size>) -> String {
    size.map_or_else(|| "?".to_owned(), |size| shown(words, size_value(size)))
}

/// A rating in words.
pub(super) fn rating_text(words: &Words, rating: Option<Amps>) -> String {
    let value = |rating: Amps| shown(words, figure(rating.0, Unit::Plain("A")).into());
    rating.map_or_else(|| "?".to_owned(), value)
}

fn shown(words: &Words, value: Value) -> String {
    words.say(&say!("as-it-stands", text = value))
}

impl Table<'_> {
    /// Both halves.
    pub(super) fn html(&self) -> Html {
        let (mut changes, mut stays) = (Vec::new(), Vec::new());
        let sizing = &self.answer.sizing;
        let mut put = |moves: bool, row: Html| if moves { changes.push(row) } else { stays.push(row) };
        for line in &sizing.runs {
            put(line.changes, self.run(line));
        }
        for line in &sizing.devices {
            put(line.changes, self.device(line));
        }
        let words = self.words;
        let head = || {
            html! { <thead><tr><th scope="col">{ words.text("sizing-thing") }</th><th scope="col">{ words.text("sizing-now") }</th><th scope="col">{ words.text("sizing-then") }</th><td></td></tr></thead> }
        };
        let count = stays.len();
        html! {
            <>
                if !changes.is_empty() {
                    <table class="sizing__lines" data-testid="sizing-lines">{ head() }<tbody>{ for changes }</tbody></table>
                }
                if count > 0 {
                    <details class="sizing__stay" data-testid="sizing-stay">
                        <summary>{ words.say(&say!("sizing-stay", count = count)) }</summary>
                        <table class="sizing__lines">{ head() }<tbody>{ for stays }</tbody></table>
                    </details>
                }
            </>
        }
    }

    fn run(&self, line: &RunLine) -> Html {
        let tag = self
            .sheet
            .runs
            .get(&line.run)
            .map_or_else(String::new, |run| run.tag.clone());
        let texts = [
            tag,
            size_text(self.words, line.before),
            size_text(self.words, line.after),
        ];
        self.row(Line::Run(line.run), texts, line.changes, &line.limit)
    }

    fn device(&self, line: &DeviceLine) -> Html {
        let texts = [
            device_tag(self.sheet, &line.device),
            rating_text(self.words, line.before),
            rating_text(self.words, line.after),
        ];
        self.row(
            Line::Device(line.device.clone()),
            texts,
            line.changes,
            &line.limit,
        )
    }

    fn row(&self, line: Line, [tag, before, after]: [String; 3], changes: bool, limit: &Limit) -> Html {
        let Self {
            store,
            on,
            sheet,
            answer,
            is_late,
            words,
        } = *self;
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
            Callback::from(move |_: MouseEvent| {
                make(&store, |job| Ok(lock(job, on, &line).unwrap_or_default()))
            })
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
                        <button type="button" class="sizing__take" onclick={take} disabled={is_late} aria-label={take_label} data-testid={format!("sizing-take-{tag}")}>{ after }</button>
                    } else { { "=" } }
                    <div class="sizing__why">{ words.say(&limit.said(sheet)) }</div>
                </td>
                <td><button type="button" class="sizing__lock" aria-pressed={locked.to_string()} aria-label={label} onclick={lock_it} data-testid={format!("sizing-lock-{tag}")}>{ words.text(name) }</button></td>
            </tr>
        }
    }
}
