//! Version 1 to 2. A picture named the tag of what it shows, and nothing else: those of a part C1 stood at a complaint C1 as
//! well. From version 2 it says among what that tag stands. A picture of a tag that only a complaint or a line of the
//! condition record has goes there. Where a part or run has the tag too, the picture stays with that, and the line of the
//! thread gets the same picture for itself, since nobody knows whose it was; so each still shows what it showed.

use serde_json::{Map, Value};

/// Lists of the thread whose lines have pictures, and what they are called since.
const LISTS: [(&str, &str); 2] = [("complaints", "complaint"), ("intake", "intake")];

/// Most pictures of a job when version 2 came.
const MOST_PICTURES: usize = 500;

fn has_tag<'v>(mut all: impl Iterator<Item = &'v Value>, tag: &str) -> bool {
    all.any(|it| it.get("tag").and_then(Value::as_str) == Some(tag))
}

/// Whether a part or run of any sheet has this tag.
fn is_thing(top: &Map<String, Value>, tag: &str) -> bool {
    let sheets = top.get("sheets").and_then(Value::as_object);
    sheets.into_iter().flat_map(|all| all.values()).any(|sheet| {
        ["parts", "runs"].iter().any(|list| {
            let items = sheet.get(list).and_then(Value::as_object);
            has_tag(items.into_iter().flat_map(|all| all.values()), tag)
        })
    })
}

fn put(picture: &mut Value, among: &str) {
    if let Some(facts) = picture.get_mut("facts").and_then(Value::as_object_mut) {
        facts.insert("among".to_owned(), among.into());
    }
}

pub(super) fn apply(top: &mut Map<String, Value>) {
    let Some(pictures) = top.get("pictures").and_then(Value::as_object) else {
        return;
    };
    let mut after = pictures.clone();
    for (key, picture) in pictures {
        let Some(of) = picture
            .pointer("/facts/of")
            .and_then(Value::as_str)
            .filter(|of| !of.is_empty())
        else {
            continue;
        };
        // What is the picture's own, then what needs one like it.
        let mut owners = Vec::new();
        if is_thing(top, of) {
            owners.push("thing");
        }
        for (list, among) in LISTS {
            let lines = top
                .get("thread")
                .and_then(|thread| thread.get(list))
                .and_then(Value::as_array);
            if has_tag(lines.into_iter().flatten(), of) {
                owners.push(among);
            }
        }
        for (at, among) in owners.into_iter().enumerate() {
            let mut own = picture.clone();
            put(&mut own, among);
            let mut name = key.clone();
            if at > 0 {
                // More than a job may have would keep the whole file from being read.
                if after.len() >= MOST_PICTURES {
                    continue;
                }
                let free = (1..)
                    .map(|number| format!("b{number}"))
                    .find(|name| !after.contains_key(name));
                let Some(free) = free else { continue };
                name = free;
            }
            after.insert(name, own);
        }
    }
    top.insert("pictures".to_owned(), Value::Object(after));
}
