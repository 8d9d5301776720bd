//! Files: what comes in, what goes out. Pickers need a person; a file in the browser's private folder stands in for the
//! picked one, with the same handle behind it.

use super::help::job;
use crate::files::{self, FileHandle, FileTrouble, Saved};
use crate::storage::js;
use js_sys::{Array, Promise, Uint8Array};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use wasm_bindgen_test::wasm_bindgen_test;
use web_sys::{Blob, DataTransfer, File, HtmlAnchorElement, HtmlCanvasElement};

async fn awaited(target: &JsValue, method: &str, arguments: &[&JsValue]) -> JsValue {
    let promise: Promise = js::call(target, method, arguments).unwrap().unchecked_into();
    JsFuture::from(promise).await.unwrap()
}

/// A new file of the browser's private folder.
async fn private_file(name: &str) -> FileHandle {
    let storage = js::get(&web_sys::window().unwrap().navigator(), "storage");
    let folder = awaited(&storage, "getDirectory", &[]).await;
    let create = js::object(&[("create", &JsValue::TRUE)]);
    FileHandle::from_js(awaited(&folder, "getFileHandle", &[&name.into(), &create]).await)
}

fn file(name: &str, text: &str) -> File {
    File::new_with_str_sequence(&Array::of1(&text.into()), name).unwrap()
}

#[wasm_bindgen_test]
async fn a_file_is_saved_through_its_handle_and_replaced_as_a_whole() {
    let handle = private_file("saved.loom.json").await;
    let long = model::file::write(&job("A title that makes this text longer than the next one"));
    let short = model::file::write(&job("Van"));
    for text in [&long, &short] {
        assert!(matches!(files::save(&handle, text).await.unwrap(), Saved::To(_)));
    }
    let opened = files::read(&file_of(&handle).await, Some(handle.clone()), 1_000_000)
        .await
        .unwrap();
    assert_eq!(opened.name, "saved.loom.json");
    assert_eq!(model::file::read(&opened.bytes).unwrap(), job("Van"));
    assert_eq!(opened.handle.unwrap().name(), "saved.loom.json");
}

async fn file_of(handle: &FileHandle) -> File {
    awaited(handle.as_js(), "getFile", &[]).await.unchecked_into()
}

#[wasm_bindgen_test]
async fn a_handle_survives_in_the_store() {
    let (store, name) = super::help::store("handle").await;
    let (key, written) = store.create(&job("Van"));
    written.await.unwrap();
    assert!(store.handle(&key).await.unwrap().is_none());
    let handle = private_file("kept.loom.json").await;
    store.set_handle(&key, handle.as_js()).await.unwrap();
    drop(store);
    let store = crate::storage::Store::open_named(&name).await.unwrap();
    let kept = FileHandle::from_js(store.handle(&key).await.unwrap().unwrap());
    files::save(&kept, "{}").await.unwrap();
    assert_eq!(
        files::read(&file_of(&handle).await, None, 10)
            .await
            .unwrap()
            .bytes,
        b"{}"
    );
}

#[wasm_bindgen_test]
async fn a_file_that_was_deleted_is_named_so() {
    let handle = private_file("deleted.loom.json").await;
    files::save(&handle, "{}").await.unwrap();
    let gone = file_of(&handle).await;
    awaited(handle.as_js(), "remove", &[]).await;
    assert_eq!(files::read(&gone, None, 10).await.unwrap_err(), FileTrouble::Gone);
}

#[wasm_bindgen_test]
async fn a_file_that_is_too_large_is_not_read() {
    let error = files::read(&file("film.json", "0123456789"), None, 9)
        .await
        .unwrap_err();
    assert_eq!(
        error,
        FileTrouble::TooLarge {
            name: "film.json".to_owned(),
            bytes: 10.0,
            most: 9
        }
    );
    assert!(
        files::read(&file("film.json", "0123456789"), None, 10)
            .await
            .is_ok()
    );
}

#[wasm_bindgen_test]
async fn one_dropped_file_is_opened() {
    let transfer = DataTransfer::new().unwrap();
    transfer
        .items()
        .add_with_file(&file("van.loom.json", "{ }"))
        .unwrap();
    let opened = files::dropped(Some(transfer), 100).await.unwrap();
    assert_eq!(
        (opened.name.as_str(), opened.bytes.as_slice()),
        ("van.loom.json", b"{ }".as_slice())
    );
}

#[wasm_bindgen_test]
async fn dropped_text_and_several_files_are_told_apart() {
    let transfer = DataTransfer::new().unwrap();
    transfer.set_data("text/plain", "not a file").unwrap();
    assert_eq!(
        files::dropped(Some(transfer), 100).await.unwrap_err(),
        FileTrouble::NoFile
    );
    assert_eq!(files::dropped(None, 100).await.unwrap_err(), FileTrouble::NoFile);
    let transfer = DataTransfer::new().unwrap();
    for name in ["a.json", "b.json"] {
        transfer.items().add_with_file(&file(name, "{}")).unwrap();
    }
    assert_eq!(
        files::dropped(Some(transfer), 100).await.unwrap_err(),
        FileTrouble::SeveralFiles { count: 2 }
    );
}

#[wasm_bindgen_test]
fn names_of_files_are_such_that_every_disk_takes_them() {
    for (title, name) in [
        ("Estate, red (2)", "Estate-red-(2).loom.json"),
        ("../../etc/passwd", "etc-passwd.loom.json"),
        ("  ", "job.loom.json"),
        ("Große Änderung", "Große-Änderung.loom.json"),
        ("a:b\\c|d\u{0}e", "a-b-c-d-e.loom.json"),
    ] {
        assert_eq!(files::file_name(title, files::ENDING), name);
    }
    assert!(files::file_name(&"ü".repeat(500), ".svg").len() < 80);
}

/// Runs an export and gives the name and the bytes of the file it puts before the person.
async fn downloaded(export: impl Future<Output = Result<(), FileTrouble>>) -> (String, String, Vec<u8>) {
    let document = web_sys::window().unwrap().document().unwrap();
    let caught = std::rc::Rc::new(std::cell::RefCell::new(None));
    let catching = caught.clone();
    let on_click =
        wasm_bindgen::prelude::Closure::<dyn FnMut(web_sys::Event)>::new(move |event: web_sys::Event| {
            let link: HtmlAnchorElement = event.target().unwrap().unchecked_into();
            event.prevent_default();
            catching.replace(Some((link.download(), link.href())));
        });
    document
        .add_event_listener_with_callback("click", on_click.as_ref().unchecked_ref())
        .unwrap();
    let outcome = export.await;
    document
        .remove_event_listener_with_callback("click", on_click.as_ref().unchecked_ref())
        .unwrap();
    outcome.unwrap();
    let (name, address) = caught.take().expect("a link was clicked");
    let answer = awaited(&web_sys::window().unwrap(), "fetch", &[&address.into()]).await;
    let blob: Blob = awaited(&answer, "blob", &[]).await.unchecked_into();
    let buffer = JsFuture::from(blob.array_buffer()).await.unwrap();
    (name, blob.type_(), Uint8Array::new(&buffer).to_vec())
}

#[wasm_bindgen_test]
async fn an_exported_drawing_is_the_text_that_was_given() {
    let svg = "<svg xmlns=\"http://www.w3.org/2000/svg\"><text>Ω</text></svg>";
    let (name, kind, bytes) = downloaded(async { files::export_text("van.svg", svg, "image/svg+xml") }).await;
    assert_eq!(
        (name.as_str(), kind.as_str(), bytes.as_slice()),
        ("van.svg", "image/svg+xml", svg.as_bytes())
    );
}

#[wasm_bindgen_test]
async fn an_exported_picture_is_png_of_the_size_of_the_canvas() {
    let (name, kind, bytes) = downloaded(files::export_png("van.png", &canvas(30, 20))).await;
    assert_eq!((name.as_str(), kind.as_str()), ("van.png", "image/png"));
    // Signature and header chunk: PNG specification (ISO/IEC 15948), 5.2 and 11.2.2.
    assert_eq!(bytes[..8], [0x89, b'P', b'N', b'G', b'\r', b'\n', 0x1a, b'\n']);
    assert_eq!(bytes[16..24], [0, 0, 0, 30, 0, 0, 0, 20]);
}

#[wasm_bindgen_test]
async fn a_canvas_without_a_picture_is_told_in_words() {
    let error = files::export_png("van.png", &canvas(0, 20)).await.unwrap_err();
    assert_eq!(error, FileTrouble::PictureTooLarge);
}

fn canvas(width: u32, height: u32) -> HtmlCanvasElement {
    let document = web_sys::window().unwrap().document().unwrap();
    let canvas: HtmlCanvasElement = document.create_element("canvas").unwrap().unchecked_into();
    canvas.set_width(width);
    canvas.set_height(height);
    canvas
}
