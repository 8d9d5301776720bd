//! Pictures on their way into the job: scaled down by the browser, so that a job with many stays small enough to keep.

use crate::storage::js;
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use js_sys::Promise;
use model::picture::Picture;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, CanvasRenderingContext2d, HtmlCanvasElement};
use words::Saying;

/// Longest side of a picture in the job, in pixels: enough to read a wire's print at arm's length.
const LONGEST_PX: f64 = 1600.0;
/// How well JPEG keeps it, from 0 to 1.
const QUALITY: f64 = 0.8;

/// The picture of a file as JPEG, its longest side at most [`LONGEST_PX`].
///
/// # Errors
/// What the browser says is wrong with it.
pub(crate) async fn scaled(file: &Blob) -> Result<Vec<u8>, Saying> {
    shrunk(file).await.map_err(|error| js::error_message(&error))
}

async fn shrunk(file: &Blob) -> Result<Vec<u8>, JsValue> {
    let window = web_sys::window().ok_or(JsValue::NULL)?;
    let drawn = js::call(&window, "createImageBitmap", &[file])?;
    let drawn = JsFuture::from(Promise::resolve(&drawn)).await?;
    let side = |name: &str| js::get(&drawn, name).as_f64().unwrap_or_default();
    let (width, height) = (side("width"), side("height"));
    let by = (LONGEST_PX / width.max(height).max(1.0)).min(1.0);
    let document = window.document().ok_or(JsValue::NULL)?;
    let canvas: HtmlCanvasElement = document.create_element("canvas")?.dyn_into()?;
    let pixels = |side: f64| {
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "between 1 and LONGEST_PX"
        )]
        let whole = (side * by).round().clamp(1.0, LONGEST_PX) as u32;
        whole
    };
    canvas.set_width(pixels(width));
    canvas.set_height(pixels(height));
    let context: CanvasRenderingContext2d = canvas
        .get_context("2d")?
        .ok_or(JsValue::NULL)?
        .dyn_into()
        .map_err(JsValue::from)?;
    let (wide, high) = (canvas.width().into(), canvas.height().into());
    js::call(
        &context,
        "drawImage",
        &[&drawn, &0.into(), &0.into(), &wide, &high],
    )?;
    let packed = canvas.to_data_url_with_type_and_encoder_options("image/jpeg", &QUALITY.into())?;
    let letters = packed
        .split_once(',')
        .map(|(_, letters)| letters)
        .unwrap_or_default();
    STANDARD
        .decode(letters)
        .map_err(|error| JsValue::from_str(&error.to_string()))
}

/// The address under which the page shows a picture of the job: the picture itself.
pub(crate) fn address_of(picture: &Picture) -> String {
    let letters = STANDARD.encode(picture.bytes.as_slice());
    format!("data:{};base64,{letters}", picture.facts.form.media_type())
}
