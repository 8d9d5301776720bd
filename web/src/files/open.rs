//! Opening: by the browser's picker, by drop, by an input of the page. At most one file at a time, its size looked at
//! before a byte of it is read.

use super::error::FileTrouble;
use super::save::FileHandle;
use crate::storage::js;
use js_sys::{Array, Function, Promise, Uint8Array};
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{DataTransfer, File, HtmlInputElement};
use words::Words;

/// A file that was opened.
#[derive(Clone, Debug)]
pub(crate) struct Opened {
    /// Its name, without folder.
    pub(crate) name: String,
    /// What is in it.
    pub(crate) bytes: Vec<u8>,
    /// By which it can be saved to again, where the browser offers that.
    pub(crate) handle: Option<FileHandle>,
}

/// Lets the person pick a file. `None` when they changed their mind. To be called from a click or a key.
///
/// # Errors
/// When the file cannot be read, or is larger than `most` bytes.
pub(crate) async fn pick(most: usize, words: &Words) -> Result<Option<Opened>, FileTrouble> {
    let window = web_sys::window().ok_or(FileTrouble::NotAllowed)?;
    if !js::has_method(&window, "showOpenFilePicker") {
        return match pick_by_input().await? {
            Some(file) => read(&file, None, most).await.map(Some),
            None => Ok(None),
        };
    }
    let options = js::object(&[
        ("id", &"job".into()),
        ("types", &super::save::opened_types(words)),
    ]);
    let picked = match js::call(&window, "showOpenFilePicker", &[&options]) {
        Ok(promise) => JsFuture::from(Promise::resolve(&promise)).await,
        Err(error) => Err(error),
    };
    match picked {
        Ok(handles) => match handles.dyn_into::<Array>().unwrap_or_default().get(0) {
            handle if handle.is_undefined() => Ok(None),
            handle => from_handle(&FileHandle::from_js(handle), most).await.map(Some),
        },
        Err(error) if FileTrouble::is_cancel(&error) => Ok(None),
        Err(error) => Err(FileTrouble::of(&error)),
    }
}

/// Reads the one file that was dropped. Call it within the `drop` event: what was dropped is only there until that
/// ends; the future it gives can be awaited later.
pub(crate) fn dropped(
    transfer: Option<DataTransfer>,
    most: usize,
) -> impl Future<Output = Result<Opened, FileTrouble>> + use<> {
    let (file, handle) = transfer
        .as_ref()
        .map_or((Err(FileTrouble::NoFile), None), |transfer| {
            (file_in(transfer), handle_in(transfer))
        });
    async move {
        let file = file?;
        let handle = match handle {
            Some(promise) => JsFuture::from(promise).await.ok().filter(JsValue::is_object),
            None => None,
        };
        // A folder comes as a file that cannot be read; its handle tells.
        if handle
            .as_ref()
            .is_some_and(|handle| js::get(handle, "kind") != "file")
        {
            return Err(FileTrouble::NoFile);
        }
        read(&file, handle.map(FileHandle::from_js), most).await
    }
}

/// Reads a file, unless it has more than `most` bytes.
pub(crate) async fn read(
    file: &File,
    handle: Option<FileHandle>,
    most: usize,
) -> Result<Opened, FileTrouble> {
    let (name, bytes) = (file.name(), file.size());
    if bytes > most as f64 {
        return Err(FileTrouble::TooLarge { name, bytes, most });
    }
    let buffer = JsFuture::from(file.array_buffer())
        .await
        .map_err(|error| FileTrouble::of(&error))?;
    Ok(Opened {
        name,
        bytes: Uint8Array::new(&buffer).to_vec(),
        handle,
    })
}

async fn from_handle(handle: &FileHandle, most: usize) -> Result<Opened, FileTrouble> {
    let file = handle.file().await?;
    read(&file, Some(handle.clone()), most).await
}

fn file_in(transfer: &DataTransfer) -> Result<File, FileTrouble> {
    let files = transfer.files().ok_or(FileTrouble::NoFile)?;
    match files.length() {
        0 => Err(FileTrouble::NoFile),
        1 => files.get(0).ok_or(FileTrouble::NoFile),
        count => Err(FileTrouble::SeveralFiles { count }),
    }
}

/// The promise of a handle, where the browser gives handles of dropped files.
fn handle_in(transfer: &DataTransfer) -> Option<Promise> {
    let items = js::get(transfer, "items");
    let item = js::get(&items, "0");
    js::call(&item, "getAsFileSystemHandle", &[])
        .ok()?
        .dyn_into()
        .ok()
}

/// By an input that is never seen. It stays in the page until the person has chosen: some browsers forget one that
/// stands nowhere.
async fn pick_by_input() -> Result<Option<File>, FileTrouble> {
    let failed = |error: JsValue| FileTrouble::of(&error);
    let document = web_sys::window()
        .and_then(|window| window.document())
        .ok_or(FileTrouble::NotAllowed)?;
    let body = document.body().ok_or(FileTrouble::NotAllowed)?;
    let input: HtmlInputElement = document.create_element("input").map_err(failed)?.unchecked_into();
    input.set_type("file");
    input.set_accept(".json,application/json,.lesson");
    input.set_hidden(true);
    body.append_child(&input).map_err(failed)?;
    let mut done: Option<Closure<dyn FnMut()>> = None;
    let chosen = Promise::new(&mut |resolve: Function, _| {
        done = Some(Closure::new(move || {
            let _ = resolve.call0(&JsValue::NULL);
        }));
    });
    if let Some(done) = &done {
        // `cancel` is not known everywhere; where it is not, an input that nobody answers is left behind, and no more.
        for event in ["change", "cancel"] {
            input
                .add_event_listener_with_callback(event, done.as_ref().unchecked_ref())
                .map_err(failed)?;
        }
    }
    input.click();
    let _ = JsFuture::from(chosen).await;
    input.remove();
    Ok(input.files().and_then(|files| files.get(0)))
}
