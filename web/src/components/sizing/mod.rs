//! Sizes for all runs and fuses: what each is and should be, and why; what would be with another duty, alternator, battery or
//! length. Nothing of the job changes until it is taken.
//!
//! Findings follow a slider at once. Sizes follow in steps between which the page lives; a newer question drops what is worked out for
//! an older one, and what is shown meanwhile is marked as late.

mod lines;
mod moved;
mod questions;

use super::papers;
use super::title_block::make;
use crate::state::{Act, Panel, Store, escape_closes};
use assist::sizing::{Prices, Series, Sizer, Sizing, WhatIf};
use checks::{Finding, Grade, analyse};
use gloo_timers::callback::Timeout;
use model::{Job, Settings, Sheet, SheetKind};
use paperwork::PriceList;
use std::cell::RefCell;
use std::rc::Rc;
use words::{Unit, Words, precise, say};
use yew::prelude::*;

/// How long sizes are worked out before the page has its turn, in milliseconds: less than the hand feels.
const TURN_MS: f64 = 12.0;
/// How long the hand has to rest before findings that take long are looked for anew, in milliseconds.
const REST_MS: u32 = 120;
/// What takes no longer than this follows the hand, in milliseconds.
const QUICK_MS: f64 = 50.0;

/// What is asked.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Asked {
    what_if: WhatIf,
    series: Option<Series>,
    by_cost: bool,
}

impl Asked {
    /// The same, of the job as it is.
    fn as_it_is(self) -> Self {
        Self {
            what_if: WhatIf::default(),
            ..self
        }
    }
    fn is_as_it_is(self) -> bool {
        self == self.as_it_is()
    }
}

/// What came of a question.
struct Answer {
    /// Of which sheet after how many edits.
    of: (SheetKind, u32),
    asked: Asked,
    sizing: Sizing,
    /// Findings of grade Stop and Fix with the sizes taken.
    after: usize,
}

/// Findings of grade Stop and Fix, as it would be.
struct Found {
    asked: Asked,
    findings: Vec<Finding>,
}

#[derive(Properties, PartialEq)]
pub(crate) struct SizingProps {
    pub(crate) revision: u32,
    pub(crate) edits: u32,
}

fn grave(sheet: &Sheet, settings: &Settings) -> Vec<Finding> {
    let mut all = analyse(sheet, settings).findings;
    all.retain(|finding| finding.grade != Grade::Tidy);
    all
}

fn look(job: &Job, on: SheetKind, asked: Asked) -> Option<Found> {
    let (sheet, settings) = asked.what_if.of(job.sheet(on)?, &job.settings);
    let findings = grave(&sheet, &settings);
    Some(Found { asked, findings })
}

/// An answer on its way.
struct Work {
    of: (SheetKind, u32),
    asked: Asked,
    sheet: Sheet,
    settings: Settings,
    sizer: Sizer,
    /// The sizes, once they are known and only the findings are not.
    sizing: Option<Sizing>,
}

impl Work {
    fn of(job: &Job, of: (SheetKind, u32), asked: Asked, prices: &Rc<PriceList>) -> Option<Self> {
        let (sheet, settings) = asked.what_if.of(job.sheet(of.0)?, &job.settings);
        let by_cost = asked.by_cost && !prices.by_article.is_empty();
        let prices = by_cost.then(|| prices.clone() as Rc<dyn Prices>);
        let as_set = asked.what_if.duty.is_some();
        let sizer = Sizer::new(sheet.clone(), settings.clone(), asked.series, prices, as_set);
        Some(Self {
            of,
            asked,
            sheet,
            settings,
            sizer,
            sizing: None,
        })
    }

    /// A moment's work; the answer once it is there.
    fn step(&mut self) -> Option<Answer> {
        let Some(sizing) = self.sizing.take() else {
            self.sizing = self.sizer.step();
            return None;
        };
        let after = grave(&sizing.taken(&self.sheet), &self.settings).len();
        Some(Answer {
            of: self.of,
            asked: self.asked,
            sizing,
            after,
        })
    }
}

/// Goes on with an answer, a few steps at a time; it stops when the timer that `next` holds is dropped.
fn go_on(mut work: Work, next: Rc<RefCell<Option<Timeout>>>, ready: Callback<Answer>) {
    let after = next.clone();
    let timer = Timeout::new(0, move || {
        let begun = js_sys::Date::now();
        loop {
            if let Some(answer) = work.step() {
                ready.emit(answer);
                return;
            }
            if js_sys::Date::now() - begun >= TURN_MS {
                break;
            }
        }
        go_on(work, after, ready);
    });
    *next.borrow_mut() = Some(timer);
}

/// Does work when its turn comes: at once where it was quick the last time, else once the hand rests. A newer question takes the
/// timer of the older one away.
fn in_turn(cost: &Rc<std::cell::Cell<f64>>, work: impl FnOnce() + 'static) -> Timeout {
    let wait = if cost.get() > QUICK_MS { REST_MS } else { 0 };
    let cost = cost.clone();
    Timeout::new(wait, move || {
        let begun = js_sys::Date::now();
        work();
        cost.set(js_sys::Date::now() - begun);
    })
}

#[function_component]
pub(crate) fn SizingDrawer(props: &SizingProps) -> Html {
    let asked = use_state(Asked::default);
    let prices = use_state(|| None::<Rc<PriceList>>);
    let answer = use_state(|| None::<Rc<Answer>>);
    let found = use_state(|| None::<Rc<Found>>);
    // The same of the job as it is, to be held against.
    let usual = use_state(|| None::<Rc<Answer>>);
    let usually_found = use_state(|| None::<Rc<Found>>);
    let look_cost = use_memo((), |()| std::cell::Cell::new(0.0));
    let Some(store) = use_context::<Store>() else {
        return html! {};
    };
    let words = store.words();
    let on = store.desk.see(|editor| editor.on());
    let list = (*prices)
        .clone()
        .unwrap_or_else(|| Rc::new(papers::terms(&words).prices));
    {
        let (found, usually, desk, given) =
            (found.clone(), usually_found.clone(), store.desk.clone(), *asked);
        use_effect_with((props.edits, on, given), move |(_, on, given)| {
            let (on, given) = (*on, *given);
            let wait = in_turn(&look_cost, move || {
                let looked = desk.see(|editor| look(editor.job(), on, given)).map(Rc::new);
                if given.is_as_it_is() {
                    usually.set(looked.clone());
                }
                found.set(looked);
            });
            move || drop(wait)
        });
    }
    {
        let (answer, usual, desk, given) = (answer.clone(), usual.clone(), store.desk.clone(), *asked);
        let list = list.clone();
        let counted = list.by_article.len();
        use_effect_with((props.edits, on, given, counted), move |(edits, on, given, _)| {
            let (of, given) = ((*on, *edits), *given);
            let next = Rc::new(RefCell::new(None));
            let work = desk.see(|editor| Work::of(editor.job(), of, given, &list));
            match work {
                Some(work) => {
                    let ready = Callback::from(move |found: Answer| {
                        let found = Some(Rc::new(found));
                        if given.is_as_it_is() {
                            usual.set(found.clone());
                        }
                        answer.set(found);
                    });
                    go_on(work, next.clone(), ready);
                }
                None => answer.set(None),
            }
            move || drop(next.borrow_mut().take())
        });
    }
    let close = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| {
            store.dispatch(Act::Toggle(Panel::Sizing));
            crate::browser::focus_board();
        })
    };
    let take_in = {
        let (store, prices) = (store.clone(), prices.clone());
        Callback::from(move |()| prices.set(Some(Rc::new(papers::terms(&store.words()).prices))))
    };
    let sheet = store.desk.see(|editor| editor.sheet().clone());
    let is_empty = answer
        .as_ref()
        .is_some_and(|it| it.sizing.runs.is_empty() && it.sizing.devices.is_empty());
    let body = match &*answer {
        None => html! { <p class="drawer__none" aria-live="polite">{ words.text("sizing-works") }</p> },
        Some(_) if is_empty => html! { <p class="drawer__none">{ words.text("sizing-none") }</p> },
        Some(answer) => {
            let is_late = answer.asked != *asked || answer.of != (on, props.edits);
            let now = found.as_ref().map_or(answer.after, |found| found.findings.len());
            let table = lines::Table {
                store: &store,
                on,
                sheet: &sheet,
                answer,
                is_late,
                words: &words,
            };
            html! {
                <>
                    { sum(&store, on, answer, now, is_late, !list.by_article.is_empty(), &words) }
                    { questions::questions(&store, &asked, &list, &take_in, &words) }
                    { moved::moved(&sheet, answer, usual.as_deref(), found.as_deref(), usually_found.as_deref(), *asked, &words) }
                    <div class="sizing__sum">
                        { for answer.sizing.short.iter().map(|short| html! { <p class="sizing__short">{ words.say(&short.said(&sheet)) }</p> }) }
                        <p data-testid="sizing-proof">{ words.say(&answer.sizing.proof()) }</p>
                        <p>{ words.text(if answer.asked.what_if.duty.is_some() { "sizing-judged-set" } else { "sizing-judged-worst" }) }</p>
                    </div>
                    <div class={classes!(is_late.then_some("sizing--late"))}>{ table.html() }</div>
                </>
            }
        }
    };
    html! {
        <section onkeydown={escape_closes(&store)} class="drawer drawer--wide sizing" data-testid="sizing-drawer" aria-label={words.text("sizing")}>
            <header class="drawer__head"><b>{ words.text("sizing") }</b><button type="button" class="slip__close" onclick={close}>{ words.text("key-esc") }</button></header>
            { body }
            <p class="jobs__words sizing__care">{ words.text("sizing-care") }</p>
        </section>
    }
}

/// What came of it in numbers, and the button that takes all of it. As many lines whatever it is: the slider that is being dragged
/// stands below, and a browser lets go of one that moves.
fn sum(
    store: &Store,
    on: SheetKind,
    answer: &Rc<Answer>,
    now: usize,
    is_late: bool,
    has_prices: bool,
    words: &Words,
) -> Html {
    let sizing = &answer.sizing;
    let [before, after] = sizing.metal().map(|kg| precise(kg, Unit::Plain("kg"), 2));
    let take_all = {
        let (store, answer) = (store.clone(), answer.clone());
        Callback::from(move |_: MouseEvent| {
            let edit = |job: &Job| answer.sizing.edit(job.sheet(on)?, on);
            make(&store, |job| Ok(edit(job).unwrap_or_default()));
        })
    };
    let rates = store.desk.see(|editor| editor.job().thread.rates.clone());
    let cost = (answer.asked.by_cost && has_prices).then(|| match sizing.cost() {
        [Some(before), Some(after)] => {
            let [before, after] = [before, after].map(|money| paperwork::money(money, &rates));
            say!("sizing-cost", before = before, after = after)
        }
        [None, Some(after)] => say!("sizing-cost-then", after = paperwork::money(after, &rates)),
        _ => say!("sizing-cost-unknown"),
    });
    let count = sizing.changes();
    html! {
        <div class="sizing__sum" aria-busy={is_late.to_string()}>
            <p data-testid="sizing-metal">{ words.say(&say!("sizing-metal", before = before, after = after)) }</p>
            if let Some(cost) = cost { <p data-testid="sizing-cost">{ words.say(&cost) }</p> }
            <p data-testid="sizing-findings">{ words.say(&say!("sizing-findings", now = now, then = answer.after)) }</p>
            if answer.asked.what_if != WhatIf::default() { <p data-testid="sizing-imagined">{ words.text("sizing-imagined") }</p> }
            <div class="sizing__do">
            if count == 0 {
                <p data-testid="sizing-nothing">{ words.text("sizing-nothing") }</p>
            } else {
                <button type="button" class="mend" onclick={take_all} disabled={is_late} data-testid="sizing-take">{ words.say(&say!("sizing-take", count = count)) }</button>
            }
            if is_late { <span class="sizing__late" data-testid="sizing-late">{ words.text("sizing-works") }</span> }
            </div>
        </div>
    }
}
