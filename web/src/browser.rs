//! Small questions to the browser: its window, its light, what it remembers.

use crate::storage::js;
use js_sys::Promise;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;
use web_sys::{Document, Element, HtmlElement, Window};

/// Under which key the address is remembered that this shop's links start with.
pub(crate) const ADDRESS: &str = "loomwright-address";

/// The window. Always there in a page; a worker has none.
pub(crate) fn window() -> Option<Window> {
    web_sys::window()
}

/// Its width and height within, in CSS pixels.
pub(crate) fn window_size() -> Option<(f64, f64)> {
    let window = window()?;
    let length = |it: Result<wasm_bindgen::JsValue, _>| it.ok()?.as_f64();
    Some((length(window.inner_width())?, length(window.inner_height())?))
}

/// The document.
pub(crate) fn document() -> Option<Document> {
    window()?.document()
}

/// Writes a panic to the console before the page stops, so that it can be told what happened.
pub(crate) fn report_panics() {
    std::panic::set_hook(Box::new(|info| {
        log(&info.to_string());
    }));
}

/// A line for whoever looks at the console.
pub(crate) fn log(text: &str) {
    let console = js_sys::Reflect::get(&js_sys::global(), &"console".into());
    if let Ok(console) = console
        && let Ok(error) = js_sys::Reflect::get(&console, &"error".into())
        && let Ok(error) = error.dyn_into::<js_sys::Function>()
    {
        let _ = error.call1(&console, &text.into());
    }
}

/// Whether all of the program is there. Of the page as it is shipped, most of it follows the first picture: web/rest/rest.js
/// tells of it. Any other page has all of it from the start.
pub(crate) fn all_is_there() -> bool {
    let told = js_sys::Reflect::get(&js_sys::global(), &"loomwright_rest".into());
    told.ok().and_then(|told| told.as_bool()) != Some(false)
}

/// Does something once nothing is lacking: now, or when it has come.
pub(crate) fn once_all_is_there(then: impl FnOnce() + 'static) {
    if all_is_there() {
        then();
    } else {
        once("loomwright-rest", then);
    }
}

/// What the window is told when the first picture stands.
const PICTURE: &str = "loomwright-picture";

/// Does something once the first picture stands, which it must not do yet.
pub(crate) fn once_picture_stands(then: impl FnOnce() + 'static) {
    once(PICTURE, then);
}

fn once(event: &'static str, then: impl FnOnce() + 'static) {
    let Some(window) = window() else { return };
    let mut then = Some(then);
    gloo_events::EventListener::once(&window, event, move |_| {
        if let Some(then) = then.take() {
            then();
        }
    })
    .forget();
}

/// Says that there is something to see: what follows may come.
pub(crate) fn first_picture_stands() {
    if let Some(window) = window()
        && let Ok(event) = web_sys::Event::new(PICTURE)
    {
        let _ = window.dispatch_event(&event);
    }
}

/// Whether the system asks for dark colours.
pub(crate) fn prefers_dark() -> bool {
    matches("(prefers-color-scheme: dark)")
}

/// Whether a media query holds.
pub(crate) fn matches(query: &str) -> bool {
    window()
        .and_then(|window| window.match_media(query).ok().flatten())
        .is_some_and(|found| found.matches())
}

/// What the browser remembers under a key. Nothing in private mode, where even asking may fail.
pub(crate) fn remembered(key: &str) -> Option<String> {
    window()?
        .local_storage()
        .ok()
        .flatten()?
        .get_item(key)
        .ok()
        .flatten()
}

/// Remembers a small thing; that it may be forgotten does no harm.
pub(crate) fn remember(key: &str, value: &str) {
    if let Some(storage) = window().and_then(|window| window.local_storage().ok().flatten()) {
        let _ = storage.set_item(key, value);
    }
}

/// The element in focus.
pub(crate) fn in_focus() -> Option<Element> {
    document()?.active_element()
}

/// Whether an element takes typing, so that keys belong to it.
pub(crate) fn takes_typing(element: &Element) -> bool {
    matches!(element.tag_name().as_str(), "INPUT" | "TEXTAREA" | "SELECT")
        || element.has_attribute("contenteditable")
}

/// Whether text of the page is marked.
pub(crate) fn text_is_marked() -> bool {
    // By way of a string: its own type would weigh more than it is used.
    let selection = js_sys::Reflect::get(&js_sys::global(), &"getSelection".into())
        .ok()
        .and_then(|get| get.dyn_into::<js_sys::Function>().ok())
        .and_then(|get| get.call0(&js_sys::global()).ok());
    selection.is_some_and(|marked| !String::from(js_sys::Object::from(marked).to_string()).is_empty())
}

/// Whether the table lies beneath something that covers all of it: keys, pointer and clipboard are not for it then.
pub(crate) fn table_is_covered() -> bool {
    document()
        .and_then(|document| document.query_selector(".room--covered").ok().flatten())
        .is_some()
}

/// Whether a drawer or the Ask box lies over the drawing. Asked of the document, as listeners outlive states.
pub(crate) fn panel_is_open() -> bool {
    document()
        .and_then(|document| document.query_selector(".drawer, .ask, .papers").ok().flatten())
        .is_some()
}

/// Where the drawer ends that lies over the left of the drawing, in pixels from the left edge of the window.
pub(crate) fn drawer_ends() -> Option<f64> {
    let drawer = document()?.query_selector("main .drawer").ok().flatten()?;
    Some(drawer.get_bounding_client_rect().right())
}

/// Whether the papers of the job lie over the drawing.
pub(crate) fn papers_are_open() -> bool {
    document()
        .and_then(|document| document.query_selector(".papers").ok().flatten())
        .is_some()
}

/// The drawing that lies over the table, where there is one.
pub(crate) const BOARD_OVER: &str = "board-over";

/// Puts the focus on the drawing.
pub(crate) fn focus_board() {
    let board = document().and_then(|document| {
        // Of two, the one that lies over the other.
        let over = document.get_element_by_id(BOARD_OVER);
        over.or_else(|| document.get_element_by_id("board"))
    });
    if let Some(board) = board
        && let Ok(board) = board.dyn_into::<HtmlElement>()
    {
        let _ = board.focus();
    }
}

/// The worked job that the address asks for, as in `?open=van`. It is taken out of the address, so that loading the page
/// again does not make another copy.
pub(crate) fn asked_for() -> Option<String> {
    let window = window()?;
    let search = window.location().search().ok()?;
    let key = search
        .trim_start_matches('?')
        .split('&')
        .find_map(|pair| pair.strip_prefix("open="))?
        .to_owned();
    let path = window.location().pathname().unwrap_or_default();
    if let Ok(history) = window.history() {
        let _ = history.replace_state_with_url(&wasm_bindgen::JsValue::NULL, "", Some(&path));
    }
    Some(key)
}

/// Calls back when the system turns from light to dark or back.
pub(crate) fn on_light_change(mut changed: impl FnMut() + 'static) -> Option<gloo_events::EventListener> {
    let query = window()?
        .match_media("(prefers-color-scheme: dark)")
        .ok()
        .flatten()?;
    Some(gloo_events::EventListener::new(&query, "change", move |_| {
        changed()
    }))
}

/// Scrolls what an element stands in, as little as it takes to see it.
pub(crate) fn bring_into_sight(element: &Element) {
    let options = js::object(&[("block", &"nearest".into())]);
    let _ = js::call(element, "scrollIntoView", &[&options]);
}

/// Height of the first element that a selector finds, in pixels.
pub(crate) fn height_of(selector: &str) -> Option<f64> {
    let found = document()?.query_selector(selector).ok().flatten()?;
    Some(found.get_bounding_client_rect().height())
}

/// What stands behind the `#` of the address.
pub(crate) fn fragment() -> String {
    let hash = window()
        .and_then(|window| window.location().hash().ok())
        .unwrap_or_default();
    hash.trim_start_matches('#').to_owned()
}

/// Puts something else behind the `#` and loads the page anew.
pub(crate) fn go_to_fragment(fragment: &str) {
    if let Some(window) = window() {
        let location = window.location();
        let _ = location.set_hash(fragment);
        let _ = location.reload();
    }
}

/// Puts something else behind the `#`; whoever listens for that goes there.
pub(crate) fn set_fragment(fragment: &str) {
    if let Some(window) = window() {
        let _ = window.location().set_hash(fragment);
    }
}

/// Takes what stands behind the `#` out of the address, so that loading the page again does not do it twice.
pub(crate) fn drop_fragment() {
    let Some(window) = window() else { return };
    let path = window.location().pathname().unwrap_or_default();
    if let Ok(history) = window.history() {
        let _ = history.replace_state_with_url(&wasm_bindgen::JsValue::NULL, "", Some(&path));
    }
}

/// A link put into the address of an open page loads it: the browser alone would not.
pub(crate) fn heed_links() {
    if let Some(window) = window() {
        let heed = gloo_events::EventListener::new(&window, "hashchange", |_| {
            if let Some(window) = self::window().filter(|_| fragment().starts_with(sharing::KEY)) {
                let _ = window.location().reload();
            }
        });
        // As long as the page lives.
        heed.forget();
    }
}

/// What stands in a page file's place for a job, or nothing in any other page.
pub(crate) fn carried() -> Option<String> {
    text_of(sharing::PAGE_PLACE)
}

/// Text of an element that the page carries.
pub(crate) fn text_of(id: &str) -> Option<String> {
    document()?.get_element_by_id(id)?.text_content()
}

/// The languages that the reader told the browser, the liked ones first.
pub(crate) fn languages() -> Vec<String> {
    window()
        .map(|window| window.navigator().languages())
        .into_iter()
        .flat_map(|all| all.iter().filter_map(|tag| tag.as_string()).collect::<Vec<_>>())
        .collect()
}

/// Name of the program, as the tab has it.
pub(crate) const PROGRAM: &str = "Loomwright";

/// Names the tab.
pub(crate) fn name_page(title: &str) {
    if let Some(document) = document().filter(|_| !title.is_empty()) {
        document.set_title(title);
    }
}

/// Text of a file that lies beside this page.
pub(crate) async fn file_beside(name: &str) -> Option<String> {
    let window = window()?;
    let answer = js::call(&window, "fetch", &[&name.into()]).ok()?;
    let answer = JsFuture::from(Promise::from(answer)).await.ok()?;
    if !js::get(&answer, "ok").is_truthy() {
        return None;
    }
    let text = js::call(&answer, "text", &[]).ok()?;
    JsFuture::from(Promise::from(text)).await.ok()?.as_string()
}

/// The root element, which carries what styles and screen readers are told of the page.
pub(crate) fn root() -> Option<HtmlElement> {
    document()?.document_element()?.dyn_into().ok()
}

/// The address of this page as others could ask for it, or nothing where it was opened from a file or is a page file.
pub(crate) fn own_address() -> Option<String> {
    if carried().is_some() {
        return None;
    }
    let location = window()?.location();
    let address = format!("{}{}", location.origin().ok()?, location.pathname().ok()?);
    address.starts_with("http").then_some(address)
}
