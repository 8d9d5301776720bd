//! The schema of the job file: what is written fits it, and what does not fit is found.
#![cfg(feature = "schema")]

use model::file::write;
use model::schema::job_schema;
use proptest::prelude::*;
use serde_json::{Value, json};

/// Holds a value against a schema, as far as JSON Schema 2020-12 is used here (its core and validation vocabularies);
/// a keyword that this does not know is an error, so that nothing passes unseen.
fn misfit(root: &Value, schema: &Value, value: &Value, place: &str) -> Result<(), String> {
    let Value::Object(schema) = schema else {
        return if schema == &json!(true) {
            Ok(())
        } else {
            Err(format!("{place}: nothing fits here"))
        };
    };
    let wrong = |why: String| Err(format!("{place}: {why}"));
    for (keyword, rule) in schema {
        match keyword.as_str() {
            "$schema" | "$defs" | "title" | "description" | "default" | "examples" => {}
            // Only notes, unless a validator is told otherwise.
            "format" => {}
            "$ref" => {
                let pointer = rule
                    .as_str()
                    .and_then(|r| r.strip_prefix('#'))
                    .expect("a reference within the schema");
                let target = root
                    .pointer(pointer)
                    .unwrap_or_else(|| panic!("{pointer} is not there"));
                misfit(root, target, value, place)?;
            }
            "const" => {
                if value != rule {
                    return wrong(format!("is not {rule}"));
                }
            }
            "enum" => {
                if !rule.as_array().expect("a list").contains(value) {
                    return wrong(format!("is not one of {rule}"));
                }
            }
            "type" => {
                let is = |name: &Value| match name.as_str().expect("a name") {
                    "object" => value.is_object(),
                    "array" => value.is_array(),
                    "string" => value.is_string(),
                    "number" => value.is_number(),
                    "integer" => value.as_f64().is_some_and(|n| n.fract() == 0.0),
                    "boolean" => value.is_boolean(),
                    "null" => value.is_null(),
                    other => panic!("there is no type {other}"),
                };
                if !rule.as_array().map_or_else(|| is(rule), |all| all.iter().any(is)) {
                    return wrong(format!("{value} is not of type {rule}"));
                }
            }
            "anyOf" | "oneOf" => {
                let forms = rule.as_array().expect("a list");
                let fitting = forms
                    .iter()
                    .filter(|form| misfit(root, form, value, place).is_ok())
                    .count();
                if fitting == 0 || (keyword == "oneOf" && fitting > 1) {
                    return wrong(format!("{value} fits {fitting} of the forms"));
                }
            }
            "minimum" => {
                if value
                    .as_f64()
                    .is_some_and(|n| n < rule.as_f64().expect("a number"))
                {
                    return wrong(format!("{value} is less than {rule}"));
                }
            }
            "maximum" => {
                if value
                    .as_f64()
                    .is_some_and(|n| n > rule.as_f64().expect("a number"))
                {
                    return wrong(format!("{value} is more than {rule}"));
                }
            }
            "maxLength" => {
                if value
                    .as_str()
                    .is_some_and(|s| s.chars().count() as u64 > rule.as_u64().expect("a number"))
                {
                    return wrong("is too long".to_owned());
                }
            }
            "maxProperties" => {
                if value
                    .as_object()
                    .is_some_and(|o| o.len() as u64 > rule.as_u64().expect("a number"))
                {
                    return wrong("has too many properties".to_owned());
                }
            }
            "uniqueItems" => {
                let all = value.as_array().map_or(&[][..], |all| all);
                if all.iter().enumerate().any(|(at, item)| all[..at].contains(item)) {
                    return wrong("has an item twice".to_owned());
                }
            }
            "pattern" => {
                let fits = fits_pattern(text_of(value), rule.as_str().expect("a pattern"));
                let text = text_of(value);
                if !fits {
                    return wrong(format!("`{text}` does not fit {rule}"));
                }
            }
            "items" => {
                for (at, item) in value.as_array().into_iter().flatten().enumerate() {
                    misfit(root, rule, item, &format!("{place}.{at}"))?;
                }
            }
            "required" => {
                for name in rule.as_array().into_iter().flatten() {
                    if value
                        .as_object()
                        .is_some_and(|o| !o.contains_key(name.as_str().expect("a name")))
                    {
                        return wrong(format!("lacks {name}"));
                    }
                }
            }
            "properties" => {
                for (name, rule) in rule.as_object().expect("an object") {
                    if let Some(inner) = value.get(name) {
                        misfit(root, rule, inner, &format!("{place}.{name}"))?;
                    }
                }
            }
            "propertyNames" => {
                for name in value.as_object().into_iter().flatten().map(|(name, _)| name) {
                    misfit(root, rule, &json!(name), &format!("{place}.{name}"))?;
                }
            }
            "patternProperties" => {
                for (pattern, rule) in rule.as_object().expect("an object") {
                    for (name, inner) in value.as_object().into_iter().flatten() {
                        if fits_pattern(name, pattern) {
                            misfit(root, rule, inner, &format!("{place}.{name}"))?;
                        }
                    }
                }
            }
            "additionalProperties" => {
                let patterns = schema.get("patternProperties").and_then(Value::as_object);
                let known = schema.get("properties").and_then(Value::as_object);
                for (name, inner) in value.as_object().into_iter().flatten() {
                    let known = known.is_some_and(|known| known.contains_key(name));
                    if !known
                        && !patterns.is_some_and(|all| all.keys().any(|pattern| fits_pattern(name, pattern)))
                    {
                        misfit(root, rule, inner, &format!("{place}.{name}"))?;
                    }
                }
            }
            other => panic!("{place}: the keyword {other} is not known to this test"),
        }
    }
    Ok(())
}

fn text_of(value: &Value) -> &str {
    value.as_str().unwrap_or_default()
}

/// The patterns there are: an id, a jacket.
fn fits_pattern(text: &str, pattern: &str) -> bool {
    match pattern {
        "^p(0|[1-9][0-9]*)$" => text.parse::<model::PartId>().is_ok(),
        "^r(0|[1-9][0-9]*)$" => text.parse::<model::RunId>().is_ok(),
        "^([?]|([A-Z]{2}){1,2})$" => {
            text == "?" || (matches!(text.len(), 2 | 4) && text.bytes().all(|b| b.is_ascii_uppercase()))
        }
        other => panic!("the pattern {other} is not known to this test"),
    }
}

fn fits(file: &Value) -> Result<(), String> {
    let schema = job_schema();
    misfit(&schema, &schema, file, "job")
}

fn small() -> Value {
    let job = testkit::job(
        "job A\nbattery B1 70Ah\nfuse F1 60A @1,2\nrun W1 B1.+ F1.in 16mm2 ~0.3m RDBK bends=1,2\n",
    );
    serde_json::from_str(&write(&job)).expect("JSON")
}

#[test]
fn a_written_job_fits() {
    assert_eq!(fits(&small()), Ok(()));
}

#[test]
fn what_the_reader_refuses_does_not_fit() {
    for (pointer, to) in [
        ("/sheets/plan/parts/p2/is/fuse/rating", json!("sixty")),
        ("/sheets/plan/parts/p2/is/fuse/rating", json!(-5)),
        ("/sheets/plan/parts/p2/is/fuse/rating", json!({"assumed": 5000})),
        ("/sheets/plan/parts/p2/is/fuse/rating", json!({"guessed": 5})),
        ("/sheets/plan/parts/p2/is/fuse/form", json!("strip16")),
        ("/sheets/plan/parts/p2/is", json!({"warp": {}})),
        ("/sheets/plan/parts/p2/tag", json!("x".repeat(25))),
        ("/sheets/plan/parts/p2/at", json!({"x": 1})),
        ("/sheets/plan/parts/07", json!({})),
        (
            "/sheets/plan/runs/r1/from",
            json!({"on": {"part": "q1", "terminal": "+"}}),
        ),
        ("/sheets/plan/runs/r1/wire/colour", json!("red")),
        ("/sheets/dream", json!({})),
        ("/settings/limits", json!({"a": "b"})),
        ("/settings/limits", json!({"a": -5})),
        ("/settings/limits", json!({"a": 1_000_001})),
        ("/version", json!(7)),
    ] {
        let mut file = small();
        let (object, key) = pointer.rsplit_once('/').expect("a pointer");
        let object = file
            .pointer_mut(object)
            .and_then(Value::as_object_mut)
            .expect("an object");
        object.insert(key.to_owned(), to.clone());
        assert!(
            model::file::read(file.to_string().as_bytes()).is_err(),
            "{pointer} {to} is read"
        );
        assert!(fits(&file).is_err(), "{pointer} {to} fits the schema");
    }
}

#[test]
fn every_property_of_every_kind_is_described() {
    let schema = job_schema();
    let forms = schema["$defs"]["PartKind"]["oneOf"].as_array().expect("forms");
    assert_eq!(forms.len(), model::PartKind::WORDS.len());
    for word in model::PartKind::WORDS {
        let kind = model::PartKind::from_word(word).expect("a word of the list");
        let form = forms
            .iter()
            .find(|form| !form["properties"][word].is_null())
            .expect(word);
        let pointer = form["properties"][word]["$ref"]
            .as_str()
            .expect("a reference")
            .trim_start_matches('#');
        let definition = schema.pointer(pointer).expect(pointer);
        for property in kind.properties() {
            let place = &definition["properties"][property.name];
            assert!(
                place["description"]
                    .as_str()
                    .is_some_and(|d| d.contains(property.doc.trim())),
                "{word}.{}",
                property.name
            );
            assert_eq!(
                place["maximum"].as_f64(),
                property.range.map(|r| r.1),
                "{word}.{}",
                property.name
            );
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    /// Any job that the door lets in fits the schema.
    #[test]
    fn any_written_job_fits(job in testkit::any::any_job()) {
        let file = serde_json::from_str(&write(&job)).expect("JSON");
        prop_assert_eq!(fits(&file), Ok(()));
    }
}
