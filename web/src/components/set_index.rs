//! The set index: the sheets of the job, as drawing sets list theirs. A row puts that sheet on the table.

use crate::state::Store;
use editor::Action;
use model::SheetKind;
use model::edits::copy_sheet;
use words::say;
use yew::prelude::*;

pub(crate) fn set_index(store: &Store) -> Html {
    let words = store.words();
    let rows = SheetKind::ALL.iter().map(|kind| {
        let kind = *kind;
        let (parts, runs, on) = store.desk.see(|editor| {
            let sheet = editor.job().sheet(kind);
            (
                sheet.map_or(0, |sheet| sheet.parts.len()),
                sheet.map_or(0, |sheet| sheet.runs.len()),
                editor.on(),
            )
        });
        let open = {
            let desk = store.desk.clone();
            Callback::from(move |_: MouseEvent| {
                desk.change(|editor| editor.open_sheet(kind));
            })
        };
        let is_on = kind == on;
        let fill = {
            let desk = store.desk.clone();
            Callback::from(move |_: MouseEvent| {
                desk.change(|editor| {
                    let edit = copy_sheet(editor.job(), on, kind);
                    editor.make(Ok(edit)).unwrap_or_default()
                });
            })
        };
        let from_here = parts == 0 && !is_on && store.desk.see(|editor| !editor.sheet().parts.is_empty());
        html! {
            <li class={classes!("set__row", is_on.then_some("set__row--on"))}>
                <button type="button" class="set__sheet" onclick={open} aria-current={is_on.then_some("page")}
                    data-testid={format!("sheet-{}", kind.word())}>
                    <b>{ words.say(&kind.said()) }</b>
                    <span>{ if parts + runs == 0 { words.text("set-empty") } else { words.say(&say!("set-holds", parts = say!("things-parts", count = parts), runs = say!("things-runs", count = runs))) } }</span>
                </button>
                { lay_under(store, kind) }
                if from_here {
                    <button type="button" class="set__fill" onclick={fill} data-testid={format!("fill-{}", kind.word())}>
                        { words.say(&say!("set-fill", sheet = on.said())) }
                    </button>
                }
            </li>
        }
    });
    html! { <ol class="set" aria-label={words.text("set")}>{ for rows }{ leaves(store) }</ol> }
}

/// What goes with the sheets: the body plan, which is their second drawing, the thread of the job, and its papers.
fn leaves(store: &Store) -> Html {
    let words = store.words();
    let on_body = store.desk.see(editor::Editor::is_on_body);
    let leaf = |action: Action, word: &str, on: bool| {
        let desk = store.desk.clone();
        let onclick = Callback::from(move |_: MouseEvent| desk.perform(action));
        let title = format!(
            "{} ({})",
            words.say(&action.said()),
            words.say(&super::keys::key(action))
        );
        html! {
            <button type="button" class={classes!("set__leaf", on.then_some("set__leaf--on"))} {onclick} {title} aria-pressed={on.to_string()}
                data-testid={action.id()}>{ words.text(word) }</button>
        }
    };
    let offers = |action: Action| store.desk.see(|editor| editor.offers(action));
    html! {
        <li class="set__row set__leaves">
            { leaf(Action::BodyPlan, "body-plan", on_body) }
            if offers(Action::Thread) { { leaf(Action::Thread, "tool-thread", matches!(store.panel, crate::state::Panel::Thread | crate::state::Panel::Becomes)) } }
            if offers(Action::Papers) { { leaf(Action::Papers, "tool-papers", store.panel == crate::state::Panel::Papers) } }
        </li>
    }
}

/// Lays a sheet under the one on the table, or takes it away; nothing for one that cannot lie there.
fn lay_under(store: &Store, kind: SheetKind) -> Html {
    let (can, is_under) = store
        .desk
        .see(|editor| (editor.layable().contains(&kind), editor.under() == Some(kind)));
    if !can {
        return html! {};
    }
    let desk = store.desk.clone();
    let onclick = Callback::from(move |_: MouseEvent| {
        desk.change(|editor| editor.lay_under((!is_under).then_some(kind)));
    });
    html! {
        <button type="button" class={classes!("set__under", is_under.then_some("set__under--on"))} {onclick} aria-pressed={is_under.to_string()}
            title={store.words().say(&super::keys::key(Action::LayUnder))} data-testid={format!("under-{}", kind.word())}>
            { store.words().text(if is_under { "set-lies-under" } else { "set-lay-under" }) }
        </button>
    }
}

/// The sheets that a job has, where one only looks: none is filled from another.
pub(crate) fn sheets_there(store: &Store) -> Html {
    let words = store.words();
    let (on, there) = store.desk.see(|editor| {
        let sheets = editor.job().sheets.iter();
        let there: Vec<(SheetKind, usize)> = sheets
            .filter(|(_, sheet)| !sheet.parts.is_empty())
            .map(|(kind, sheet)| (*kind, sheet.parts.len()))
            .collect();
        (editor.on(), there)
    });
    html! {
        <ol class="set" aria-label={words.text("set")}>
            { for there.into_iter().map(|(kind, parts)| {
                let desk = store.desk.clone();
                let open = Callback::from(move |_: MouseEvent| { desk.change(|editor| editor.open_sheet(kind)); });
                let is_on = kind == on;
                html! {
                    <li class={classes!("set__row", is_on.then_some("set__row--on"))}>
                        <button type="button" class="set__sheet" onclick={open} aria-current={is_on.then_some("page")} data-testid={format!("sheet-{}", kind.word())}>
                            <b>{ words.say(&kind.said()) }</b><span>{ words.say(&say!("things-parts", count = parts)) }</span>
                        </button>
                        { lay_under(store, kind) }
                    </li>
                }
            }) }
            if store.desk.see(|editor| editor.job().settings.body.shape.form.value().is_some()) { { leaves(store) } }
        </ol>
    }
}
