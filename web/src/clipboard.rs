//! Copy, cut and paste, of pictures too, through the system's clipboard, by the browser's own events: they need no permission and come from
//! the menu of the browser as well. Where a browser sends none for a drawing, the clip inside of the editor does.

use crate::browser;
use crate::components::pictures::{OF, Shows, pictures_in, take_in};
use crate::desk::Desk;
use crate::storage::js;
use editor::{Action, Thing};
use gloo_events::{EventListener, EventListenerOptions};
use gloo_timers::callback::Timeout;
use model::picture::PictureOf;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, ClipboardEvent, Element};

/// How long after the keys the browser's event may come, in milliseconds.
const PATIENCE_MS: u32 = 120;

thread_local! {
    /// What is done when the browser's event stays away. There is one keyboard, so one of these.
    static WAITING: RefCell<Option<Timeout>> = const { RefCell::new(None) };
}

/// The keys of copy, cut or paste went down. The browser's event follows; if it does not, the editor's own clip is used.
pub(crate) fn keys_went_down(action: Action, desk: &Rc<Desk>) {
    let desk = desk.clone();
    let late = Timeout::new(PATIENCE_MS, move || desk.perform(action));
    WAITING.with(|waiting| *waiting.borrow_mut() = Some(late));
}

/// Copy, cut or paste asked for by its name, where the browser sends no event. Reading the clipboard is asked of the user
/// by the browser; refused or not offered, the editor's own clip is pasted.
pub(crate) fn by_word(action: Action, desk: &Rc<Desk>) {
    let desk = desk.clone();
    if action == Action::Paste {
        wasm_bindgen_futures::spawn_local(async move {
            let pictures = taken_pictures().await.unwrap_or_default();
            if !pictures.is_empty() {
                return take_in(&desk, &pasted_on(&desk), pictures);
            }
            match taken().await {
                Some(text) => desk.change(|editor| editor.paste_in(&text)),
                None => desk.change(|editor| editor.perform(Action::Paste)),
            };
        });
        return;
    }
    let mut copied = None;
    desk.change(|editor| {
        let (effects, text) = editor.copy_out(action == Action::Cut);
        copied = text;
        effects
    });
    if let Some(text) = copied {
        // Where the page may not write there, the editor's own clip holds it all the same.
        wasm_bindgen_futures::spawn_local(async move {
            put(text).await;
        });
    }
}

/// The text on the clipboard, where the browser and its user let a page read it.
async fn taken() -> Option<String> {
    let clipboard = js::get(&browser::window()?.navigator(), "clipboard");
    let promise = js::call(&clipboard, "readText", &[]).ok()?;
    JsFuture::from(js_sys::Promise::from(promise))
        .await
        .ok()?
        .as_string()
}

/// The pictures on the clipboard, where the browser and its user let a page read them.
async fn taken_pictures() -> Option<Vec<Blob>> {
    let clipboard = js::get(&browser::window()?.navigator(), "clipboard");
    let promise = js::call(&clipboard, "read", &[]).ok()?;
    let items = JsFuture::from(js_sys::Promise::from(promise)).await.ok()?;
    let mut pictures = Vec::new();
    for item in js_sys::Array::from(&items) {
        let forms = js_sys::Array::from(&js::get(&item, "types"));
        let is_picture = |form: &JsValue| form.as_string().is_some_and(|form| form.starts_with("image/"));
        let Some(form) = forms.iter().find(is_picture) else {
            continue;
        };
        if let Ok(promise) = js::call(&item, "getType", &[&form])
            && let Ok(blob) = JsFuture::from(js_sys::Promise::from(promise)).await
            && let Ok(blob) = blob.dyn_into()
        {
            pictures.push(blob);
        }
    }
    Some(pictures)
}

/// The pictures that an event brings, where it brings no text: a field would want that.
fn pictures_of(event: &ClipboardEvent) -> Vec<Blob> {
    let Some(data) = event.clipboard_data() else {
        return Vec::new();
    };
    match data.get_data("text/plain") {
        Ok(text) if !text.is_empty() => Vec::new(),
        _ => data.files().map(|list| pictures_in(&list)).unwrap_or_default(),
    }
}

/// What a pasted picture is of: what the focus is in and has pictures of its own, as a complaint, a line of the condition record
/// or a slip; else the one part or run that is picked; else the vehicle.
fn pasted_on(desk: &Rc<Desk>) -> Shows {
    let within = JsValue::from_str(&format!("[{OF}]"));
    let mut around = browser::in_focus().filter(|it| it.id() != "board");
    while let Some(element) = around {
        let found = js::call(&element, "querySelectorAll", &[&within]).unwrap_or(JsValue::UNDEFINED);
        let count = js::get(&found, "length").as_f64().unwrap_or_default();
        let only = js::get(&found, "0").dyn_into::<Element>().ok();
        if count > 0.0 {
            let written = only.filter(|_| count < 2.0).and_then(|it| it.get_attribute(OF));
            if let Some(shows) = written.and_then(|it| Shows::read(&it)) {
                return shows;
            }
            break;
        }
        around = element.parent_element();
    }
    let tag = desk.see(|editor| {
        let sheet = editor.sheet();
        let tag = |thing: &Thing| match thing {
            Thing::Part(id) => sheet.parts.get(id).map(|part| part.tag.clone()),
            Thing::Run(id) => sheet.runs.get(id).map(|run| run.tag.clone()),
            Thing::Terminal(at) => sheet.parts.get(&at.part).map(|part| part.tag.clone()),
        };
        editor.selection().single().as_ref().and_then(tag)
    });
    Shows::Tagged(PictureOf::Thing, tag.unwrap_or_default())
}

/// Whether the clipboard's keys and events are for the drawing, and not for a field or for text that is marked elsewhere.
pub(crate) fn is_for_drawing() -> bool {
    !browser::table_is_covered()
        && browser::in_focus().is_none_or(|element| {
            element.id() == "board" || !(browser::takes_typing(&element) || browser::text_is_marked())
        })
}

/// Listens for as long as the page lives.
pub(crate) fn listen(desk: &Rc<Desk>) {
    let Some(window) = browser::window() else { return };
    for name in ["copy", "cut", "paste"] {
        let desk = desk.clone();
        let heed = move |event: &web_sys::Event| {
            WAITING.with(|waiting| waiting.borrow_mut().take());
            let Some(event) = event.dyn_ref::<ClipboardEvent>() else {
                return;
            };
            let pictures = match event.type_().as_str() {
                "paste" if !browser::table_is_covered() => pictures_of(event),
                _ => Vec::new(),
            };
            if !pictures.is_empty() {
                event.prevent_default();
                take_in(&desk, &pasted_on(&desk), pictures);
            } else if is_for_drawing() {
                came(event, &desk);
            }
        };
        EventListener::new_with_options(
            &window,
            name,
            EventListenerOptions::enable_prevent_default(),
            heed,
        )
        .forget();
    }
}

fn came(event: &ClipboardEvent, desk: &Rc<Desk>) {
    let data = event.clipboard_data();
    if event.type_() == "paste" {
        let text = data.and_then(|data| data.get_data("text/plain").ok());
        desk.change(|editor| editor.paste_in(&text.unwrap_or_default()));
        event.prevent_default();
        return;
    }
    let mut copied = None;
    desk.change(|editor| {
        let (effects, text) = editor.copy_out(event.type_() == "cut");
        copied = text;
        effects
    });
    if let (Some(text), Some(data)) = (copied, data) {
        let _ = data.set_data("text/plain", &text);
        event.prevent_default();
    }
}

/// Puts text on the clipboard. False where the browser does not let a page do that, as on an address without https.
pub(crate) async fn put(text: String) -> bool {
    let Some(window) = browser::window() else {
        return false;
    };
    let clipboard = js::get(&window.navigator(), "clipboard");
    match js::call(&clipboard, "writeText", &[&JsValue::from_str(&text)]) {
        Ok(promise) => JsFuture::from(js_sys::Promise::from(promise)).await.is_ok(),
        Err(_) => false,
    }
}
