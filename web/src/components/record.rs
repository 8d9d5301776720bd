//! Recording what is found: two ends by a few letters each, what was seen of the run by large buttons, and on to the next.
//! Made for one hand on a tablet in a car: two touches for the ends, one to record.

use crate::browser;
use crate::state::{Act, Panel, Store};
use editor::recording::{FoundAt, FoundEnd, SeenOfRun, USUAL_COLOURS, choices, usual_sizes};
use model::SheetKind;
use model::conductor::{Condition, EndingMethod, Jacket, Size};
use model::edits::EditError;
use model::laying::Moved;
use model::property::PropertyType;
use web_sys::HtmlInputElement;
use words::say;
use yew::prelude::*;

/// How many offers stand under a field.
const MOST: usize = 6;

/// One of the two ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Side {
    From,
    To,
}

/// What was typed and chosen so far.
#[derive(Clone, Debug, Default, PartialEq)]
struct Draft {
    typed: [String; 2],
    chosen: [Option<FoundAt>; 2],
    seen: SeenOfRun,
    trouble: Option<String>,
}

impl Draft {
    fn choose(&self, side: Side, end: &FoundEnd) -> Self {
        let mut next = self.clone();
        if let (Some(typed), Some(chosen)) = (
            next.typed.get_mut(side as usize),
            next.chosen.get_mut(side as usize),
        ) {
            end.text.clone_into(typed);
            *chosen = Some(end.at.clone());
        }
        next.trouble = None;
        next
    }
}

#[function_component]
pub(crate) fn Record() -> Html {
    let draft = use_state(Draft::default);
    let active = use_state(|| Side::From);
    let fields = [use_node_ref(), use_node_ref()];
    {
        let field = fields[0].clone();
        use_effect_with((), move |()| focus(&field));
    }
    let Some(store) = use_context::<Store>() else {
        return html! {};
    };
    let words = store.words();
    let close = {
        let store = store.clone();
        Callback::from(move |()| {
            store.dispatch(Act::Toggle(Panel::Record));
            browser::focus_board();
        })
    };
    let record = {
        let (store, draft, active, fields) = (store.clone(), draft.clone(), active.clone(), fields.clone());
        Callback::from(move |()| match recorded(&store, &draft) {
            Ok((said, next)) => {
                store.dispatch(Act::Say(said));
                // A feed goes on where the last piece ended.
                let side = if next.chosen[0].is_some() {
                    Side::To
                } else {
                    Side::From
                };
                draft.set(next);
                active.set(side);
                focus(&fields[side as usize]);
            }
            Err(trouble) => {
                let mut next = (*draft).clone();
                next.trouble = Some(trouble);
                draft.set(next);
            }
        })
    };
    let end = |side: Side| {
        let place = side as usize;
        let typed = draft.typed.get(place).cloned().unwrap_or_default();
        let is_chosen = draft.chosen.get(place).is_some_and(Option::is_some);
        let offers = if *active == side && !is_chosen {
            store.desk.see(|editor| {
                let mut all = editor.ends_like(&typed, MOST);
                all.push(editor.somewhere());
                all
            })
        } else {
            Vec::new()
        };
        let choose = {
            let (draft, active, fields) = (draft.clone(), active.clone(), fields.clone());
            Callback::from(move |end: FoundEnd| {
                draft.set(draft.choose(side, &end));
                if side == Side::From {
                    active.set(Side::To);
                    focus(&fields[1]);
                }
            })
        };
        let oninput = {
            let draft = draft.clone();
            Callback::from(move |event: InputEvent| {
                if let Some(field) = event.target_dyn_into::<HtmlInputElement>() {
                    let mut next = (*draft).clone();
                    next.typed[place] = field.value();
                    next.chosen[place] = None;
                    draft.set(next);
                }
            })
        };
        let onkeydown = {
            let (choose, record, close, first) = (
                choose.clone(),
                record.clone(),
                close.clone(),
                offers.first().cloned(),
            );
            Callback::from(move |event: KeyboardEvent| {
                match (event.key().as_str(), &first) {
                    ("Enter", Some(first)) => choose.emit(first.clone()),
                    ("Enter", None) => record.emit(()),
                    ("Escape", _) => close.emit(()),
                    _ => return,
                }
                event.prevent_default();
            })
        };
        let onfocus = {
            let active = active.clone();
            Callback::from(move |_: FocusEvent| active.set(side))
        };
        let (name, testid) = match side {
            Side::From => ("record-from", "record-from"),
            Side::To => ("record-to", "record-to"),
        };
        html! {
            <div class="record__end">
                <label class="record__label">{ words.text(name) }
                    <input ref={fields[place].clone()} class="record__field" type="text" value={typed} {oninput} {onkeydown} {onfocus} autocomplete="off" spellcheck="false"
                        maxlength="60" data-testid={testid} />
                </label>
                <div class="record__offers">{ for offers.into_iter().enumerate().map(|(number, offer)| {
                    let (choose, chosen) = (choose.clone(), offer.clone());
                    let onclick = Callback::from(move |_: MouseEvent| choose.emit(chosen.clone()));
                    html! { <button type="button" class="record__offer" {onclick} data-testid={format!("{testid}-{number}")}>{ offer.text }</button> }
                }) }</div>
            </div>
        }
    };
    let row = |title: &'static str, all: Vec<(String, Html)>, now: &str, put: fn(&mut SeenOfRun, String)| {
        let buttons = all.into_iter().map(|(written, shown)| {
            let on = now == written;
            let (draft, testid) = (draft.clone(), format!("seen-{written}"));
            let onclick = Callback::from(move |_: MouseEvent| {
                let mut next = (*draft).clone();
                // A second touch takes it back: not seen.
                put(&mut next.seen, if on { String::new() } else { written.clone() });
                draft.set(next);
            });
            html! { <button type="button" class={classes!("record__seen", on.then_some("record__seen--on"))} aria-pressed={on.to_string()} {onclick} data-testid={testid}>{ shown }</button> }
        });
        html! { <div class="record__row" role="group" aria-label={words.text(title)}><span class="record__title" aria-hidden="true">{ words.text(title) }</span><div class="record__choices">{ for buttons }</div></div> }
    };
    let sizes = usual_sizes(words.reader().sizes)
        .iter()
        .filter_map(|size| Some((*size, Size::parse(size, None).ok()?)))
        .map(|(written, size)| {
            (
                written.to_owned(),
                html! { drawing::size_as_marked(size, &words) },
            )
        })
        .collect();
    let palette = store.paper.palette();
    let colours = USUAL_COLOURS
        .iter()
        .filter_map(|colour| Some((*colour, Jacket::parse(colour, None).ok()?.base?)))
        .map(|(written, base)| {
            let style = format!("background:{}", palette.ink(drawing::Ink::Insulation(base)));
            let said = words.say(&base.said());
            (written.to_owned(), html! { <><i class="record__swatch" {style} aria-hidden="true" /><span title={said}>{ written }</span></> })
        })
        .collect();
    let said = |all: Vec<(&'static str, words::Saying)>| {
        all.into_iter()
            .map(|(word, said)| (word.to_owned(), html! { words.say(&said) }))
            .collect()
    };
    let length = {
        let draft = draft.clone();
        Callback::from(move |event: InputEvent| {
            if let Some(field) = event.target_dyn_into::<HtmlInputElement>() {
                let mut next = (*draft).clone();
                next.seen.length = field.value();
                draft.set(next);
            }
        })
    };
    let (on, found) = store
        .desk
        .see(|editor| (editor.on(), editor.on() == SheetKind::Found));
    let to_found = {
        let (desk, field) = (store.desk.clone(), fields[0].clone());
        Callback::from(move |_: MouseEvent| {
            desk.change(|editor| editor.open_sheet(SheetKind::Found));
            focus(&field);
        })
    };
    let onclick = {
        let record = record.clone();
        Callback::from(move |_: MouseEvent| record.emit(()))
    };
    let shut = {
        let close = close.clone();
        Callback::from(move |_: MouseEvent| close.emit(()))
    };
    let seen = draft.seen.clone();
    html! {
        <section class="drawer drawer--wide record" data-testid="record-drawer" aria-label={words.text("record")}>
            <header class="drawer__head"><b>{ words.say(&say!("record-on", sheet = on.said())) }</b><button type="button" class="slip__close" onclick={shut}>{ words.text("key-esc") }</button></header>
            if !found {
                <p class="drawer__none">{ words.say(&say!("record-other-sheet", sheet = on.said())) }{ " " }
                    <button type="button" class="mend" onclick={to_found} data-testid="record-to-found">{ words.text("record-to-found") }</button></p>
            }
            { end(Side::From) }
            { end(Side::To) }
            { row("record-size", sizes, &seen.size, |seen, it| seen.size = it) }
            { row("record-colour", colours, &seen.colour, |seen, it| seen.colour = it) }
            { row("record-condition", said(choices::<Condition>()), &seen.condition, |seen, it| seen.condition = it) }
            { row("record-endings", said(choices::<EndingMethod>()), &seen.endings, |seen, it| seen.endings = it) }
            { row("record-opens-when", said(choices::<Moved>()), &seen.opens_when, |seen, it| seen.opens_when = it) }
            <label class="record__label">{ words.text("record-length") }
                <input class="record__field" type="text" value={seen.length} oninput={length} placeholder={words.text("record-not-measured")} maxlength="20" inputmode="decimal" data-testid="record-length" />
            </label>
            if let Some(trouble) = &draft.trouble { <p class="field__trouble" role="alert" data-testid="record-trouble">{ trouble }</p> }
            <div class="record__foot"><button type="button" class="record__go" {onclick} data-testid="record-go">{ words.text("record-go") }</button></div>
            <p class="drawer__none">{ words.text("record-unseen") }</p>
        </section>
    }
}

fn focus(field: &NodeRef) {
    if let Some(field) = field.cast::<HtmlInputElement>() {
        let _ = field.focus();
        field.select();
    }
}

/// Records what is in the draft: what to say, and the draft of the next run. Else what is wrong.
fn recorded(store: &Store, draft: &Draft) -> Result<(String, Draft), String> {
    let mut came = Err(String::new());
    store.desk.change(|editor| {
        let meant = |place: usize| {
            let chosen = draft.chosen.get(place).cloned().flatten();
            let typed = draft.typed.get(place).map(String::as_str).unwrap_or_default();
            chosen.or_else(|| {
                let first = editor.ends_like(typed, 1).into_iter().next();
                first.filter(|_| !typed.trim().is_empty()).map(|end| end.at)
            })
        };
        let (Some(from), Some(to)) = (meant(0), meant(1)) else {
            came = Err(editor.words().text("record-two-ends"));
            return editor::Effects::default();
        };
        let effects = editor
            .record(&from, &to, &draft.seen)
            .unwrap_or_else(|EditError(why)| {
                came = Err(editor.words().say(&why));
                editor::Effects::default()
            });
        if effects.edited {
            came = Ok(next(editor));
        }
        effects
    });
    came
}

/// What is said of the run just recorded, and the draft that goes on from its far end.
fn next(editor: &editor::Editor) -> (String, Draft) {
    let mut draft = Draft::default();
    let run = match editor.selection().single() {
        Some(editor::Thing::Run(id)) => editor.sheet().runs.get(&id),
        _ => None,
    };
    let Some(run) = run else {
        return (String::new(), draft);
    };
    let between = editor.words().say(&editor.between(run));
    let said = editor
        .words()
        .say(&say!("record-done", run = &run.tag, between = between));
    if let Some(at) = run.to.terminal()
        && let Some(part) = editor.sheet().parts.get(&at.part)
    {
        draft.typed[0] = format!("{} {}", part.tag, editor.words().say(&part.said()));
        draft.chosen[0] = Some(FoundAt::Part(at.part));
    }
    (said, draft)
}
