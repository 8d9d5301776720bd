//! Saving a job file: to the file it came from, to one that is picked, or as a download where the browser offers
//! neither. A file is replaced as a whole when all of it is written; a failure leaves the old one as it was.

use super::ENDING;
use super::error::FileTrouble;
use super::export::download;
use crate::storage::js;
use js_sys::{Array, Promise};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::File;
use words::Words;

/// A file that can be written again. The browser may ask the person before it is.
#[derive(Clone, Debug)]
pub(crate) struct FileHandle(JsValue);

impl FileHandle {
    /// A handle as the browser gave it, or as it was stored.
    pub(crate) fn from_js(handle: JsValue) -> Self {
        Self(handle)
    }

    /// The handle for the store.
    pub(crate) fn as_js(&self) -> &JsValue {
        &self.0
    }

    /// Name of the file.
    pub(crate) fn name(&self) -> String {
        js::get(&self.0, "name").as_string().unwrap_or_default()
    }

    pub(super) async fn file(&self) -> Result<File, FileTrouble> {
        Ok(asked(&self.0, "getFile", &[]).await?.unchecked_into())
    }

    /// Makes sure that it may be written; after a reload the browser asks again.
    async fn allow_writing(&self) -> Result<(), FileTrouble> {
        if !js::has_method(&self.0, "requestPermission") {
            return Ok(());
        }
        let mode = js::object(&[("mode", &"readwrite".into())]);
        let state = asked(&self.0, "requestPermission", &[&mode]).await?;
        if state == "granted" {
            Ok(())
        } else {
            Err(FileTrouble::NotAllowed)
        }
    }

    async fn write(&self, text: &str) -> Result<(), FileTrouble> {
        self.allow_writing().await?;
        let stream = asked(&self.0, "createWritable", &[]).await?;
        let written = asked(&stream, "write", &[&text.into()]).await;
        if written.is_err() {
            // What is written so far is thrown away, the old file stays.
            let _ = asked(&stream, "abort", &[]).await;
        }
        written?;
        asked(&stream, "close", &[]).await.map(drop)
    }
}

/// How a job was saved.
#[derive(Clone, Debug)]
pub(crate) enum Saved {
    /// To a file that `Save` finds again.
    To(FileHandle),
    /// As a download; whether the person kept it, the browser does not tell.
    Download {
        /// Under this name.
        name: String,
    },
    /// The person changed their mind.
    Cancelled,
}

/// Saves to the file the job came from; see [`save_as`] for a job without one. To be called from a click or a key.
pub(crate) async fn save(handle: &FileHandle, text: &str) -> Result<Saved, FileTrouble> {
    handle.write(text).await?;
    Ok(Saved::To(handle.clone()))
}

/// Saves to a file that the person picks, or as a download where the browser has no picker. The name comes from
/// [`file_name`]. To be called from a click or a key.
pub(crate) async fn save_as(name: &str, text: &str, words: &Words) -> Result<Saved, FileTrouble> {
    let window = web_sys::window().ok_or(FileTrouble::NotAllowed)?;
    if !js::has_method(&window, "showSaveFilePicker") {
        download(name, &[text.into()], "application/json")?;
        return Ok(Saved::Download {
            name: name.to_owned(),
        });
    }
    let options = js::object(&[
        ("id", &"job".into()),
        ("suggestedName", &name.into()),
        ("types", &job_types(words)),
    ]);
    let picked = match js::call(&window, "showSaveFilePicker", &[&options]) {
        Ok(promise) => JsFuture::from(Promise::resolve(&promise)).await,
        Err(error) => Err(error),
    };
    match picked {
        Ok(handle) => save(&FileHandle::from_js(handle), text).await,
        Err(error) if FileTrouble::is_cancel(&error) => Ok(Saved::Cancelled),
        Err(error) => Err(FileTrouble::of(&error)),
    }
}

/// A file name from a title: letters, digits and a few signs of it that every disk takes, and the ending.
pub(crate) fn file_name(title: &str, ending: &str) -> String {
    const LONGEST: usize = 60;
    let mut name = String::new();
    for sign in title.chars() {
        if name.len() >= LONGEST {
            break;
        }
        if sign.is_alphanumeric() || matches!(sign, '_' | '(' | ')' | '+') {
            name.push(sign);
        } else if !name.is_empty() && !name.ends_with('-') {
            name.push('-');
        }
    }
    let name = name.trim_end_matches('-');
    format!("{}{ending}", if name.is_empty() { "job" } else { name })
}

/// The kind of file that the pickers show.
pub(super) fn job_types(words: &Words) -> JsValue {
    // Pickers refuse endings with a second dot here; the suggested name has the full one.
    debug_assert!(ENDING.ends_with(".json"));
    let job = kind_of_file(&words.text("file-kind-job"), "application/json", ".json");
    Array::of1(&job).into()
}

/// What an opening picker offers: job files, and lessons.
pub(super) fn opened_types(words: &Words) -> JsValue {
    let job = kind_of_file(&words.text("file-kind-job"), "application/json", ".json");
    let lesson = kind_of_file(&words.text("file-kind-lesson"), "text/plain", ".lesson");
    Array::of2(&job, &lesson).into()
}

fn kind_of_file(name: &str, media_type: &str, ending: &str) -> JsValue {
    let accept = js::object(&[(media_type, &Array::of1(&ending.into()))]);
    js::object(&[("description", &name.into()), ("accept", &accept)])
}

/// Calls a method that gives a promise, and awaits it.
async fn asked(target: &JsValue, method: &str, arguments: &[&JsValue]) -> Result<JsValue, FileTrouble> {
    let promise = js::call(target, method, arguments).map_err(|error| FileTrouble::of(&error))?;
    JsFuture::from(Promise::resolve(&promise))
        .await
        .map_err(|error| FileTrouble::of(&error))
}
