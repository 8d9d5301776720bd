//! Version 0 to 1. Before the first release a file held one sheet under `sheet`, and a part told what it is by `kind`
//! and `properties`. From version 1 there are three sheets under `sheets`, the old one being the plan, and a part is
//! `"is": {"fuse": {…}}`.

use serde_json::{Map, Value};

pub(super) fn apply(top: &mut Map<String, Value>) {
    let Some(mut sheet) = top.remove("sheet") else {
        return;
    };
    if let Some(Value::Object(parts)) = sheet.get_mut("parts") {
        for part in parts.values_mut().filter_map(Value::as_object_mut) {
            if let Some(Value::String(kind)) = part.remove("kind") {
                let properties = part
                    .remove("properties")
                    .unwrap_or_else(|| Value::Object(Map::new()));
                part.insert("is".to_owned(), crate::json::fields([(&kind, properties)]));
            }
        }
    }
    match top.entry("sheets").or_insert_with(|| Value::Object(Map::new())) {
        Value::Object(sheets) if !sheets.contains_key("plan") => {
            sheets.insert("plan".to_owned(), sheet);
        }
        // No file of version 0 had both; what cannot be placed stays under its old name, and so is not lost.
        _ => {
            top.insert("sheet".to_owned(), sheet);
        }
    }
}
