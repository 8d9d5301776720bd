//! One part on the shelf: its symbol and its name. Dragged out, or taken with Enter.

use crate::browser;
use crate::state::{Act, Panel, Store};
use drawing::symbol;
use editor::{Input, Pointer, PointerKind, ScreenPoint};
use kurbo::BezPath;
use model::PartKind;
use web_sys::Element;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(crate) struct ShelfItemProps {
    pub(crate) word: &'static str,
}

fn path_data(path: &BezPath) -> String {
    path.to_svg()
}

/// The symbol of a kind as a small picture.
fn picture(kind: &PartKind) -> Html {
    let symbol = symbol(kind, &words::Words::english());
    let half = symbol.half.x.max(symbol.half.y).max(14.0) + 3.0;
    html! {
        <svg class="shelf__symbol" viewBox={format!("{} {} {} {}", -half, -half, 2.0 * half, 2.0 * half)} aria-hidden="true">
            { for symbol.lines.iter().map(|(path, width)| html! {
                <path d={path_data(path)} fill="none" stroke="currentColor" stroke-width={width.to_string()} />
            }) }
            { for symbol.dashed.iter().map(|path| html! { <path d={path_data(path)} fill="none" stroke="currentColor" stroke-dasharray="3 3" /> }) }
            { for symbol.filled.iter().map(|path| html! { <path d={path_data(path)} fill="currentColor" /> }) }
        </svg>
    }
}

fn pointer(event: &PointerEvent) -> Pointer {
    Pointer {
        id: event.pointer_id(),
        at: ScreenPoint::new(f64::from(event.client_x()), f64::from(event.client_y())),
        kind: if event.pointer_type() == "touch" {
            PointerKind::Touch
        } else {
            PointerKind::Mouse
        },
        mods: editor::Mods {
            shift: event.shift_key(),
            ..editor::Mods::default()
        },
    }
}

/// Whether a pointer is still over the shelf.
fn over_shelf(event: &PointerEvent) -> bool {
    let at = browser::document()
        .and_then(|d| d.element_from_point(event.client_x() as f32, event.client_y() as f32));
    at.and_then(|element| element.closest(".drawer").ok().flatten())
        .is_some()
}

#[function_component]
pub(crate) fn ShelfItem(props: &ShelfItemProps) -> Html {
    let dragging = use_mut_ref(|| false);
    let button = use_node_ref();
    let Some(store) = use_context::<Store>() else {
        return html! {};
    };
    let word = props.word;
    let Some(kind) = PartKind::from_word(word) else {
        return html! {};
    };
    let onpointerdown = {
        let (desk, dragging, button) = (store.desk.clone(), dragging.clone(), button.clone());
        Callback::from(move |event: PointerEvent| {
            if event.button() != 0 {
                return;
            }
            if let Some(element) = button.cast::<Element>() {
                let _ = element.set_pointer_capture(event.pointer_id());
            }
            *dragging.borrow_mut() = true;
            desk.change(|editor| editor.take_from_shelf(word, false));
        })
    };
    let onpointermove = {
        let (desk, dragging) = (store.desk.clone(), dragging.clone());
        Callback::from(move |event: PointerEvent| {
            if *dragging.borrow() {
                desk.input(if over_shelf(&event) {
                    Input::Left
                } else {
                    Input::Move(pointer(&event))
                });
            }
        })
    };
    let onpointerup = {
        let (store, dragging) = (store.clone(), dragging.clone());
        Callback::from(move |event: PointerEvent| {
            if !std::mem::take(&mut *dragging.borrow_mut()) {
                return;
            }
            // Let go over the shelf: the part stays in hand and is put down by the next click.
            if !over_shelf(&event) {
                store.desk.input(Input::Up(pointer(&event)));
                browser::focus_board();
            }
        })
    };
    let onkeydown = {
        let store = store.clone();
        Callback::from(move |event: KeyboardEvent| {
            if matches!(event.key().as_str(), "Enter" | " ") {
                event.prevent_default();
                store.dispatch(Act::Toggle(Panel::Shelf));
                store.desk.change(|editor| editor.take_from_shelf(word, true));
                browser::focus_board();
            }
        })
    };
    html! {
        <li>
            <button ref={button} type="button" class="shelf__item" data-testid={format!("shelf-{word}")} {onpointerdown} {onpointermove} {onpointerup} {onkeydown}>
                { picture(&kind) }<span>{ store.words().say(&kind.said()) }</span>
            </button>
        </li>
    }
}
