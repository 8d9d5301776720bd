//! All mends that need no choice: what would be done, what would be left and why; made by one press, undone by one.

use super::mark::{grade_class, mark};
use crate::state::{Act, Panel, Store, escape_closes};
use assist::mending::{Mended, Mending, counts};
use checks::Grade;
use gloo_timers::callback::Timeout;
use model::SheetKind;
use std::cell::RefCell;
use std::rc::Rc;
use web_sys::HtmlElement;
use words::{Words, say};
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(crate) struct MendAllProps {
    /// Counts the edits: after one all of it is another.
    pub(crate) edits: u32,
}

/// How far it is.
#[derive(Clone)]
enum Known {
    /// So many mends so far.
    Working(usize),
    /// All of it.
    All(Rc<Mended>),
}

/// Goes on with the work, a step at a time, so that the page lives meanwhile; it stops when the timer that `next` holds is
/// dropped.
fn work(mut mending: Mending, next: Rc<RefCell<Option<Timeout>>>, known: UseStateHandle<Known>) {
    let after = next.clone();
    let timer = Timeout::new(0, move || {
        if mending.step() {
            known.set(Known::Working(mending.made()));
            work(mending, after, known);
        } else {
            known.set(Known::All(Rc::new(mending.done())));
        }
    });
    *next.borrow_mut() = Some(timer);
}

#[function_component]
pub(crate) fn MendAll(props: &MendAllProps) -> Html {
    let store = use_context::<Store>();
    let known = use_state(|| Known::Working(0));
    let make = use_node_ref();
    let on = store.as_ref().map(|store| store.desk.see(editor::Editor::on));
    {
        let (desk, known) = (store.as_ref().map(|store| store.desk.clone()), known.clone());
        use_effect_with((props.edits, on), move |_| {
            let next = Rc::new(RefCell::new(None));
            if let Some(desk) = desk {
                known.set(Known::Working(0));
                work(
                    desk.see(|editor| Mending::new(editor.job(), editor.on())),
                    next.clone(),
                    known,
                );
            }
            move || drop(next.borrow_mut().take())
        });
    }
    let is_known = matches!(*known, Known::All(_));
    {
        // One more press of a key makes them.
        let make = make.clone();
        use_effect_with(is_known, move |_| {
            if let Some(make) = make.cast::<HtmlElement>() {
                let _ = make.focus();
            }
        });
    }
    let Some(store) = store else { return html! {} };
    let words = store.words();
    let close = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| {
            store.dispatch(Act::Toggle(Panel::Mending));
            crate::browser::focus_board();
        })
    };
    let body = match &*known {
        Known::Working(made) => html! {
            <p class="drawer__none" role="status">{ words.say(&say!("mend-all-working", made = *made)) }</p>
        },
        Known::All(mended) => told(&store, &words, mended, make),
    };
    html! {
        <section onkeydown={escape_closes(&store)} class="drawer drawer--wide mend-all" data-testid="mend-all-drawer" data-known={is_known.to_string()}
            aria-label={words.text("mend-all")}>
            <header class="drawer__head"><b>{ words.text("mend-all") }</b><button type="button" class="slip__close" onclick={close} data-testid="mend-all-close">{ words.text("key-esc") }</button></header>
            if on == Some(SheetKind::Found) { <p class="mend-all__found">{ words.text("mending-found") }</p> }
            { body }
        </section>
    }
}

fn told(store: &Store, words: &Words, mended: &Rc<Mended>, make: NodeRef) -> Html {
    let count = mended.steps.len();
    let onclick = {
        let (store, mended) = (store.clone(), mended.clone());
        Callback::from(move |_: MouseEvent| {
            store.dispatch(Act::ShutPanel);
            let edit = mended.edit.clone();
            store.desk.change(|editor| editor.mend_all(edit, count));
            crate::browser::focus_board();
        })
    };
    let steps = mended.steps.iter().map(|step| {
        html! {
            <li class={classes!("mend-all__step", grade_class(step.finding.grade))}>
                { mark(step.finding.grade) }<b>{ words.say(&step.said) }</b><span>{ words.say(&step.finding.what) }</span>
            </li>
        }
    });
    let left = mended.left.iter().map(|left| {
        html! {
            <li class={classes!("mend-all__step", grade_class(left.finding.grade))}>
                { mark(left.finding.grade) }<b>{ words.say(&left.finding.what) }</b><span>{ words.say(&left.said()) }</span>
            </li>
        }
    });
    let grave = mended.left.iter().any(|left| left.finding.grade == Grade::Stop);
    html! {
        <>
            if count > 0 {
                <p class="mend-all__counts" data-testid="mend-all-counts">{ words.say(&counts(mended.before, mended.after)) }</p>
                <button type="button" class="mend" ref={make} {onclick} data-testid="mend-all-make">{ words.say(&say!("mend-all-make", count = count)) }</button>
                <p class="mend-all__undo">{ words.text("mend-all-undo") }</p>
                <h3>{ words.text("mend-all-steps") }</h3>
                <ol data-testid="mend-all-steps">{ for steps }</ol>
            } else {
                <p class="drawer__none">{ words.text("mend-all-nothing") }</p>
            }
            if mended.left.is_empty() {
                <p class="drawer__none">{ words.text("mend-all-none-left") }</p>
            } else {
                <h3>{ words.text("mend-all-left") }</h3>
                <ul data-testid="mend-all-left">{ for left }</ul>
            }
            if grave { <p class="mend-all__care">{ words.say(&checks::care()) }</p> }
        </>
    }
}
