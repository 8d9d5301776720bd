//! Calls by name to those interfaces of the browser that the bindings do not have in a form we could use: locks,
//! file pickers, options of transactions. Everything that may be absent is asked for here, and absence is an error
//! value, never a panic.

use js_sys::{Array, Function, Object, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use words::{Saying, say};

/// The property of this name, or undefined.
pub(crate) fn get(target: &JsValue, name: &str) -> JsValue {
    Reflect::get(target, &name.into()).unwrap_or(JsValue::UNDEFINED)
}

/// Whether the target has a method of this name.
pub(crate) fn has_method(target: &JsValue, name: &str) -> bool {
    get(target, name).is_function()
}

/// Calls a method by its name.
///
/// # Errors
/// What it throws; a `TypeError` when there is no such method.
pub(crate) fn call(target: &JsValue, name: &str, arguments: &[&JsValue]) -> Result<JsValue, JsValue> {
    let Ok(method) = get(target, name).dyn_into::<Function>() else {
        return Err(js_sys::TypeError::new(&format!("{name} is not offered here")).into());
    };
    let list = Array::new();
    for argument in arguments {
        list.push(argument);
    }
    method.apply(target, &list)
}

/// An object with these properties.
pub(crate) fn object(properties: &[(&str, &JsValue)]) -> JsValue {
    let object = Object::new();
    for (name, value) in properties {
        // Setting a property of a plain object that was made here cannot fail.
        let _ = Reflect::set(&object, &(*name).into(), value);
    }
    object.into()
}

/// Name of an error, as `QuotaExceededError`; empty when it has none.
pub(crate) fn error_name(error: &JsValue) -> String {
    get(error, "name").as_string().unwrap_or_default()
}

/// What an error says about itself, for the reader who wants to know more.
pub(crate) fn error_message(error: &JsValue) -> Saying {
    let message = get(error, "message").as_string().unwrap_or_default();
    match (error_name(error), message) {
        (name, message) if name.is_empty() && message.is_empty() => error
            .as_string()
            .map_or_else(|| say!("browser-no-reason"), Saying::from),
        (name, message) if name.is_empty() => message.into(),
        (name, message) if message.is_empty() => name.into(),
        (name, message) => format!("{name}: {message}").into(),
    }
}
