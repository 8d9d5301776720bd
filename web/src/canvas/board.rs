//! The drawing surface: a canvas that fills the window. Owns its size, its pixel ratio and its listeners, and hands
//! everything that happens to the editor as plain values.

use super::events;
use super::paint::Surface;
use crate::browser;
use crate::clipboard;
use crate::desk::Fit;
use crate::reader::use_words;
use crate::state::{Act, Store};
use editor::{Action, Input, Key, Margins, PointerKind};
use gloo_events::{EventListener, EventListenerOptions};
use gloo_timers::callback::Timeout;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use web_sys::{HtmlCanvasElement, KeyboardEvent, PointerEvent, WheelEvent};
use words::say;
use yew::prelude::*;

/// Width of the sheet's frame: `--frame-margin` in the styles.
const FRAME: f64 = 22.0;
/// Height of one row of tools.
const FOOT_ROW: f64 = 38.0;

/// Room that frame, notes and what stands at the foot take of the window. The foot is measured: how many rows it has depends
/// on the width, on the language and on whether fingers work here.
fn margins(width: f64) -> Margins {
    let foot = browser::height_of(".foot").unwrap_or(FOOT_ROW);
    Margins {
        left: 40.0,
        // The line that says what an overlay shows stands there.
        top: 58.0,
        right: (notes_width(width) + 12.0).max(40.0),
        bottom: FRAME + foot.max(FOOT_ROW) + 6.0,
    }
}

/// The least that a drawer has to leave of the window for the drawing to make room for it, in pixels.
const LEAST_BESIDE: f64 = 240.0;

/// The same with a drawer that lies open; one that covers most of the window takes no room, since none would be left.
fn margins_beside(width: f64, drawer: Option<f64>) -> Margins {
    let it = margins(width);
    let beside = drawer.filter(|end| width - end - it.right >= LEAST_BESIDE);
    Margins {
        left: beside.map_or(it.left, |end| it.left.max(end + 12.0)),
        ..it
    }
}

/// Width of the right margin, where notes and title block stand.
pub(crate) fn notes_width(width: f64) -> f64 {
    if width >= 1400.0 {
        340.0
    } else if width >= 900.0 {
        280.0
    } else {
        0.0
    }
}

/// Room that a strip above, tools below and a column of paper take of the window, where a drawing lies over the table:
/// `over.css` has the same numbers.
fn margins_over(width: f64, height: f64) -> Margins {
    let narrow = width < 900.0;
    Margins {
        left: 30.0,
        top: 76.0,
        right: if narrow { 30.0 } else { 430.0 },
        bottom: if narrow { height * 0.46 + 60.0 } else { 78.0 },
    }
}

fn fit_canvas(canvas: &HtmlCanvasElement, store: &Store, fit: Fit) {
    store.desk.set_surface(Surface::of(canvas));
    let (width, height) = (
        f64::from(canvas.client_width()),
        f64::from(canvas.client_height()),
    );
    let lies_over = canvas.id() == browser::BOARD_OVER;
    let margins = if lies_over {
        margins_over(width, height)
    } else {
        margins_beside(width, browser::drawer_ends())
    };
    store.desk.resize(width, height, margins, fit);
}

#[derive(Properties, PartialEq)]
pub(crate) struct BoardProps {
    /// Whether it lies over the table, with other things around it.
    #[prop_or_default]
    pub(crate) over: bool,
    /// What it shows, in words; without it the counts of the sheet.
    #[prop_or_default]
    pub(crate) label: Option<AttrValue>,
}

/// The drawing surface.
#[function_component]
pub(crate) fn Board(props: &BoardProps) -> Html {
    let canvas = use_node_ref();
    let store = use_context::<Store>();
    let is_said = use_words().is_complete();
    let Some(store) = store else { return html! {} };

    {
        let (canvas, store) = (canvas.clone(), store.clone());
        use_effect_with((), move |()| {
            let mut listeners = Vec::new();
            if let Some(canvas) = canvas.cast::<HtmlCanvasElement>() {
                fit_canvas(&canvas, &store, Fit::Anew);
                listeners = listen(&canvas, &store);
                browser::focus_board();
            }
            move || drop(listeners)
        });
    }
    // A drawer that opens or closes leaves the view as it is; what is brought into view from then on stands beside it. What lies
    // around the sheet takes its room when it comes.
    {
        let (canvas, store) = (canvas.clone(), store.clone());
        let was_whole = use_mut_ref(|| None);
        use_effect_with((store.panel, store.is_whole && is_said), move |(_, is_whole)| {
            let was_whole = was_whole.replace(Some(*is_whole));
            if let (Some(was_whole), Some(canvas)) = (was_whole, canvas.cast::<HtmlCanvasElement>()) {
                let came = was_whole != *is_whole;
                fit_canvas(&canvas, &store, if came { Fit::AsBefore } else { Fit::No });
            }
        });
    }
    let said = props.label.clone().unwrap_or_else(|| {
        store.desk.see(|editor| {
            editor
                .words()
                .say(&say!(
                    "board",
                    sheet = editor.on().said(),
                    parts = say!("things-parts", count = editor.sheet().parts.len()),
                    runs = say!("things-runs", count = editor.sheet().runs.len()),
                    counts = editor.counted()
                ))
                .into()
        })
    });
    let id = if props.over { browser::BOARD_OVER } else { "board" };
    let cursor = store.desk.see(|editor| match (editor.tool(), editor.hovered()) {
        (editor::Tool::Hand, _) => "board--hand",
        (
            editor::Tool::Pull(_)
            | editor::Tool::MoveEnd(_)
            | editor::Tool::Meter(_)
            | editor::Tool::Break(_)
            | editor::Tool::Place(_),
            _,
        ) => "board--aim",
        (_, Some(editor::Thing::Terminal(_))) => "board--aim",
        (_, Some(_)) => "board--thing",
        _ => "",
    });
    html! {
        <canvas ref={canvas} {id} class={classes!("board", cursor)} data-testid={id} tabindex="0" role="application" aria-label={said}>
        </canvas>
    }
}

/// All listeners of the surface; they go when they are dropped.
fn listen(canvas: &HtmlCanvasElement, store: &Store) -> Vec<EventListener> {
    let mut listeners = Vec::new();
    // A long press needs a clock, which the editor has not.
    let resting: Rc<RefCell<Option<Timeout>>> = Rc::default();
    for name in [
        "pointerdown",
        "pointermove",
        "pointerup",
        "pointercancel",
        "pointerleave",
    ] {
        let (store, surface, resting) = (store.clone(), canvas.clone(), resting.clone());
        let heed = move |event: &web_sys::Event| {
            let Some(event) = event.dyn_ref::<PointerEvent>() else {
                return;
            };
            on_pointer(event, &surface, &store, &resting);
        };
        listeners.push(EventListener::new_with_options(
            canvas,
            name,
            EventListenerOptions::enable_prevent_default(),
            heed,
        ));
    }
    let heeded = store.clone();
    listeners.push(EventListener::new_with_options(
        canvas,
        "wheel",
        EventListenerOptions::enable_prevent_default(),
        move |event| {
            if let Some(event) = event.dyn_ref::<WheelEvent>() {
                event.prevent_default();
                heeded.desk.input(events::wheel(event));
            }
        },
    ));
    let heeded = store.clone();
    listeners.push(EventListener::new(canvas, "dblclick", move |_| {
        heeded.desk.change(editor::Editor::double_click);
    }));
    listeners.push(EventListener::new_with_options(
        canvas,
        "contextmenu",
        EventListenerOptions::enable_prevent_default(),
        |event| event.prevent_default(),
    ));
    let (heeded, surface) = (store.clone(), canvas.clone());
    if let Some(window) = browser::window() {
        listeners.push(EventListener::new(&window, "resize", move |_| {
            fit_canvas(&surface, &heeded, Fit::WithSize)
        }));
        for name in ["keydown", "keyup"] {
            let store = store.clone();
            let surface = canvas.clone();
            let heed = move |event: &web_sys::Event| {
                // As `Desk::input` has it: what answers keys is not asked for where nothing was begun.
                if name == "keyup" && !browser::all_is_there() {
                    return;
                }
                if let Some(event) = event.dyn_ref::<KeyboardEvent>() {
                    on_key(event, &surface, &store);
                }
            };
            listeners.push(EventListener::new_with_options(
                &window,
                name,
                EventListenerOptions::enable_prevent_default(),
                heed,
            ));
        }
        let heeded = store.clone();
        listeners.push(EventListener::new(&window, "blur", move |_| {
            heeded.desk.input(Input::KeyUp(Key::Space));
        }));
    }
    listeners
}

fn on_pointer(
    event: &PointerEvent,
    surface: &HtmlCanvasElement,
    store: &Store,
    resting: &Rc<RefCell<Option<Timeout>>>,
) {
    let pointer = events::pointer(event);
    match event.type_().as_str() {
        "pointerdown" => {
            let _ = surface.set_pointer_capture(event.pointer_id());
            let _ = surface.focus();
            event.prevent_default();
            store.desk.input(Input::Down(pointer, events::button(event)));
            if pointer.kind != PointerKind::Mouse {
                let desk = store.desk.clone();
                let after = desk.see(|editor| editor.options().long_press_ms);
                *resting.borrow_mut() = Some(Timeout::new(after, move || {
                    desk.input(Input::Held);
                }));
            }
        }
        "pointermove" => {
            store.desk.input(Input::Move(pointer));
        }
        "pointerup" => {
            resting.borrow_mut().take();
            store.desk.input(Input::Up(pointer));
        }
        "pointerleave" => {
            store.desk.input(Input::Left);
        }
        _ => {
            resting.borrow_mut().take();
            store.desk.input(Input::Lost);
        }
    }
}

fn on_key(event: &KeyboardEvent, surface: &HtmlCanvasElement, store: &Store) {
    let id = surface.id();
    let is_covered = id != browser::BOARD_OVER && browser::table_is_covered();
    // A panel took it, and has perhaps given the focus back to the drawing since.
    if event.default_prevented() || is_covered {
        return;
    }
    let Some((key, mods)) = events::key(event) else {
        return;
    };
    if let Some(element) = browser::in_focus() {
        let on_board = element.id() == id || element.tag_name() == "BODY";
        let own = matches!(
            key,
            Key::Enter | Key::Space | Key::Left | Key::Right | Key::Up | Key::Down | Key::Home | Key::End
        );
        // Keys that a field or button needs are its own; Escape there closes the panel it stands in.
        if browser::takes_typing(&element) || (!on_board && own) {
            return;
        }
    }
    // Nobody sees what a key does to a drawing that lies beneath a paper.
    if browser::papers_are_open() && key != Key::Escape {
        match Action::of_key(key, mods) {
            Some(Action::Undo | Action::Redo | Action::Papers) => {}
            Some(Action::Print) => {
                event.prevent_default();
                crate::papers_print::print();
                return;
            }
            _ => return,
        }
    }
    if event.type_() == "keyup" {
        store.desk.input(Input::KeyUp(key));
        return;
    }
    // One thing at a time: what lies open over a drawing at rest goes first.
    if key == Key::Escape
        && browser::panel_is_open()
        && store.desk.see(|editor| editor.tool().address() == "pick/idle")
    {
        store.dispatch(Act::ShutPanel);
        browser::focus_board();
        event.prevent_default();
        return;
    }
    // These go by the browser's own events. Copying marked text stays with the browser.
    if let Some(action @ (Action::Copy | Action::Cut | Action::Paste)) = Action::of_key(key, mods) {
        if clipboard::is_for_drawing() {
            clipboard::keys_went_down(action, &store.desk);
        }
        return;
    }
    if store.desk.input(Input::Key(key, mods)) {
        event.prevent_default();
    }
}
