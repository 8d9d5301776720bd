//! The jobs kept in this browser, the worked examples, and the ways in and out: files, exports, print.

use super::keys::key;
use crate::keeper::{Keeper, Kept};
use crate::state::{Act, Panel, Store};
use crate::storage::Keeping;
use crate::worked;
use editor::Action;
use lessons::{LESSONS, WORKED_JOBS};
use model::body::BodyForm;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use words::say;
use yew::prelude::*;

#[function_component]
pub(crate) fn Jobs() -> Html {
    let jobs = use_state(Kept::default);
    let turn = use_state(|| 0_u32);
    let store = use_context::<Store>();
    let keeper = use_context::<Rc<Keeper>>();
    {
        let (jobs, keeper) = (jobs.clone(), keeper.clone());
        use_effect_with(*turn, move |_| {
            if let Some(keeper) = keeper {
                spawn_local(async move { jobs.set(keeper.list().await) });
            }
        });
    }
    let (Some(store), Some(keeper)) = (store, keeper) else {
        return html! {};
    };
    let words = store.words();
    let close = {
        let store = store.clone();
        Callback::from(move |()| {
            store.dispatch(Act::Toggle(Panel::Jobs));
            crate::browser::focus_board();
        })
    };
    let act = |action: Action| {
        let (desk, close) = (store.desk.clone(), close.clone());
        let onclick = Callback::from(move |_: MouseEvent| {
            close.emit(());
            desk.perform(action);
        });
        html! { <li><button type="button" {onclick} data-testid={format!("do-{}", action.id())}>{ words.say(&action.said()) }<kbd>{ words.say(&key(action)) }</kbd></button></li> }
    };
    let language = words.reader().language;
    let worked = WORKED_JOBS.iter().map(|job| {
        let (keeper, close) = (keeper.clone(), close.clone());
        let onclick = Callback::from(move |_: MouseEvent| {
            close.emit(());
            let keeper = keeper.clone();
            spawn_local(async move { keeper.open_new(worked::in_language(job, language).await) });
        });
        // Each is called by the form of its vehicle.
        let name = BodyForm::from_word(job.key).map_or_else(|| job.key.to_owned(), |form| words.say(&form.said()));
        html! { <li><button type="button" class="jobs__job" {onclick} data-testid={format!("worked-{}", job.key)}><b>{ name }</b><span>{ words.text(&format!("worked-{}", job.key)) }</span></button></li> }
    });
    let lessons = {
        let (desk, close) = (store.desk.clone(), close.clone());
        let onclick = Callback::from(move |_: MouseEvent| {
            close.emit(());
            desk.perform(Action::Lessons);
        });
        let shows = words.say(&say!("lessons-shows", count = LESSONS.len()));
        html! { <li><button type="button" class="jobs__job" {onclick} data-testid="do-lessons"><b>{ words.text("lessons-title") }<kbd>{ words.say(&key(Action::Lessons)) }</kbd></b><span>{ shows }</span></button></li> }
    };
    let here = jobs.here.clone();
    let kept = jobs.jobs.iter().map(|job| {
        let is_here = here.as_ref() == Some(&job.key);
        let open = {
            let (keeper, close, key) = (keeper.clone(), close.clone(), job.key.clone());
            Callback::from(move |_: MouseEvent| {
                close.emit(());
                keeper.open_key(key.clone());
            })
        };
        let remove = {
            let (keeper, key, turn) = (keeper.clone(), job.key.clone(), turn.clone());
            Callback::from(move |_: MouseEvent| {
                let (keeper, key, turn) = (keeper.clone(), key.clone(), turn.clone());
                spawn_local(async move {
                    keeper.remove(&key).await;
                    turn.set(*turn + 1);
                });
            })
        };
        let title = if job.title.is_empty() { words.text("untitled") } else { job.title.clone() };
        let when = js_sys::Date::new(&job.changed_at.into()).to_locale_string(words.reader().language.tag(), &wasm_bindgen::JsValue::UNDEFINED);
        html! {
            <li class="jobs__row" key={job.key.as_str().to_owned()}>
                <button type="button" class="jobs__job" disabled={is_here} onclick={open} data-testid="kept-job"><b>{ title }</b><span>{ String::from(when) }</span></button>
                if is_here { <span class="jobs__here">{ words.text("jobs-here") }</span> } else { <button type="button" class="jobs__remove" onclick={remove}>{ words.text("remove") }</button> }
            </li>
        }
    });
    let damaged = jobs.damaged.iter().map(|(title, original)| {
        let save = {
            let (keeper, title, original) = (keeper.clone(), title.clone(), original.clone());
            Callback::from(move |_: MouseEvent| keeper.save_original(&title, &original))
        };
        let title = if title.is_empty() { words.text("untitled") } else { title.clone() };
        let when = js_sys::Date::new(&original.found_at.into()).to_locale_string(words.reader().language.tag(), &wasm_bindgen::JsValue::UNDEFINED);
        html! {
            <li class="jobs__row">
                <span class="jobs__job"><b>{ title }</b><span>{ words.say(&say!("jobs-damaged", when = String::from(when))) }</span></span>
                <button type="button" class="jobs__remove" onclick={save} data-testid="save-damaged">{ words.text("jobs-save-damaged") }</button>
            </li>
        }
    });
    let take_over = {
        let (keeper, close) = (keeper.clone(), close.clone());
        Callback::from(move |_: MouseEvent| {
            close.emit(());
            keeper.take_over();
        })
    };
    let keeping = match &store.keeping {
        Keeping::Opening => words.text("keeping-opening"),
        Keeping::Kept => words.text("keeping-kept"),
        Keeping::Writing => words.text("keeping-writing"),
        Keeping::Failed(why) => why.clone(),
        Keeping::Elsewhere => words.text("keeping-elsewhere"),
    };
    html! {
        <section class="drawer jobs" data-testid="jobs-drawer" aria-label={words.text("tool-jobs")}>
            <header class="drawer__head"><b>{ words.text("tool-jobs") }</b><button type="button" class="slip__close" onclick={close.reform(|_: MouseEvent| ())} aria-label={words.text("close")}>{ words.text("key-esc") }</button></header>
            <p class="jobs__words" data-testid="keeping">{ keeping }</p>
            if store.keeping == Keeping::Elsewhere { <button type="button" class="mend" onclick={take_over} data-testid="take-over">{ words.text("jobs-take-over") }</button> }
            <ul class="jobs__acts">{ for [Action::NewJob, Action::StartSystem, Action::OpenFile, Action::SaveFile, Action::ExportSvg, Action::ExportPng, Action::Print, Action::Limits, Action::Readings, Action::BreakIt, Action::FindFault, Action::Prove, Action::Outline, Action::Keys, Action::TidySheet, Action::Paper].map(act) }</ul>
            // The kept ones arrive a moment later: they stand last, so that nothing moves away from under a finger.
            <h3>{ words.text("jobs-worked") }</h3>
            <ul>{ for worked }{ lessons }</ul>
            <h3>{ words.text("jobs-kept") }</h3>
            <ul>{ for kept }</ul>
            if !jobs.damaged.is_empty() {
                <h3>{ words.text("jobs-damaged-list") }</h3>
                <ul data-testid="damaged-jobs">{ for damaged }</ul>
            }
        </section>
    }
}
