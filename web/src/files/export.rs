//! Exports that are downloads: a text, and the picture on a canvas.

use super::error::FileTrouble;
use gloo_timers::callback::Timeout;
use js_sys::{Array, Promise};
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, BlobPropertyBag, HtmlAnchorElement, HtmlCanvasElement, Url};

/// How long a download's address stays valid. Browsers read it after the click, at a time they do not tell.
const KEPT_MS: u32 = 60_000;

/// Downloads a text of this media type, as `image/svg+xml`.
pub(crate) fn export_text(name: &str, text: &str, media_type: &str) -> Result<(), FileTrouble> {
    download(name, &[text.into()], media_type)
}

/// Downloads what is on a canvas as PNG.
///
/// # Errors
/// [`FileTrouble::PictureTooLarge`] when the browser cannot, which is how it tells that the canvas is too large.
pub(crate) async fn export_png(name: &str, canvas: &HtmlCanvasElement) -> Result<(), FileTrouble> {
    let png = png_of(canvas).await?;
    download_blob(name, &png)
}

/// What is on a canvas, as PNG.
pub(super) async fn png_of(canvas: &HtmlCanvasElement) -> Result<Blob, FileTrouble> {
    let mut failed = None;
    let blob = Promise::new(&mut |resolve, _| {
        let on_blob = Closure::once_into_js(move |blob: JsValue| {
            let _ = resolve.call1(&JsValue::NULL, &blob);
        });
        failed = canvas
            .to_blob_with_type(on_blob.unchecked_ref(), "image/png")
            .err();
    });
    if let Some(error) = failed {
        return Err(FileTrouble::of(&error));
    }
    let blob = JsFuture::from(blob)
        .await
        .map_err(|error| FileTrouble::of(&error))?;
    blob.dyn_into().map_err(|_| FileTrouble::PictureTooLarge)
}

/// Downloads these pieces as one file.
pub(super) fn download(name: &str, pieces: &[JsValue], media_type: &str) -> Result<(), FileTrouble> {
    let options = BlobPropertyBag::new();
    options.set_type(media_type);
    let pieces: Array = pieces.iter().collect();
    let blob = Blob::new_with_str_sequence_and_options(&pieces, &options)
        .map_err(|error| FileTrouble::of(&error))?;
    download_blob(name, &blob)
}

fn download_blob(name: &str, blob: &Blob) -> Result<(), FileTrouble> {
    let failed = |error: JsValue| FileTrouble::of(&error);
    let document = web_sys::window()
        .and_then(|window| window.document())
        .ok_or(FileTrouble::NotAllowed)?;
    let body = document.body().ok_or(FileTrouble::NotAllowed)?;
    let address = Url::create_object_url_with_blob(blob).map_err(failed)?;
    let link: HtmlAnchorElement = document.create_element("a").map_err(failed)?.unchecked_into();
    link.set_href(&address);
    link.set_download(name);
    body.append_child(&link).map_err(failed)?;
    link.click();
    link.remove();
    Timeout::new(KEPT_MS, move || {
        let _ = Url::revoke_object_url(&address);
    })
    .forget();
    Ok(())
}
