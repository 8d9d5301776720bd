//! The JSON Schema of the job file, made from the types, with the ranges of all properties. Only with the feature
//! `schema`: the page does not need it.

use crate::body::{BodyShape, OwnPassage, OwnPlace};
use crate::file::{FORMAT, VERSION};
use crate::handling::Handling;
use crate::job::{Conditions, Ending, Job, SheetKind, VehicleInfo, Wire};
use crate::kinds::PartKind;
use crate::laying::Laying;
use crate::limits;
use crate::mounting::Mounting;
use crate::picture::PictureFacts;
use crate::property::{Property, PropertySet, Shape};
use crate::readings::Reading;
use crate::thread::{Complaint, IntakeNote, Offer, Rates};
use crate::tuning::Tuning;
use serde_json::{Map, Value, json};

/// The schema of the job file, JSON Schema 2020-12. What a schema cannot say (tags unique, ends on terminals that are
/// there) the reader checks.
#[must_use]
pub fn job_schema() -> Value {
    let mut schema = schemars::schema_for!(Job).to_value();
    if let Some(top) = schema.as_object_mut() {
        top.insert("title".to_owned(), "A Loomwright job".into());
        let properties = top.entry("properties").or_insert_with(|| json!({}));
        if let Some(properties) = properties.as_object_mut() {
            properties.insert(
                "format".to_owned(),
                json!({"const": FORMAT, "description": "Marks the file as a job."}),
            );
            let version = json!({"const": VERSION, "description": "Version of the file's form."});
            properties.insert("version".to_owned(), version);
            if let Some(sheets) = properties.get_mut("sheets").and_then(Value::as_object_mut) {
                let words: Vec<&str> = SheetKind::ALL.iter().map(|kind| kind.word()).collect();
                sheets.insert("propertyNames".to_owned(), json!({"enum": words}));
            }
        }
        top.insert("required".to_owned(), json!(["format", "version"]));
    }
    let Some(definitions) = schema.get_mut("$defs").and_then(Value::as_object_mut) else {
        return schema;
    };
    for kind in PartKind::WORDS
        .iter()
        .filter_map(|word| PartKind::from_word(word))
    {
        // The definitions bear the names of the types.
        if let Some(name) = type_of(&kind, definitions) {
            describe(definitions, &name, kind.properties());
        }
    }
    for (name, list) in [
        ("VehicleInfo", VehicleInfo::list()),
        ("Conditions", Conditions::list()),
        ("Ending", Ending::list()),
        ("Wire", Wire::list()),
        ("Reading", Reading::list()),
        ("BodyShape", BodyShape::list()),
        ("OwnPlace", OwnPlace::list()),
        ("OwnPassage", OwnPassage::list()),
        ("Mounting", Mounting::list()),
        ("Handling", Handling::list()),
        ("Laying", Laying::list()),
        ("Tuning", Tuning::list()),
        ("Complaint", Complaint::list()),
        ("IntakeNote", IntakeNote::list()),
        ("Offer", Offer::list()),
        ("Rates", Rates::list()),
        ("PictureFacts", PictureFacts::list()),
    ] {
        describe(definitions, name, list);
    }
    for (definition, property, most) in [
        ("Part", "tag", limits::LONGEST_TAG),
        ("Part", "label", limits::LONGEST_LABEL),
        ("Part", "note", limits::LONGEST_NOTE),
        ("Run", "tag", limits::LONGEST_TAG),
        ("Run", "label", limits::LONGEST_LABEL),
        ("Run", "note", limits::LONGEST_NOTE),
    ] {
        if let Some(place) = property_of(definitions, definition, property) {
            place.insert("maxLength".to_owned(), most.into());
        }
    }
    let set = property_of(definitions, "Settings", "limits");
    let each = set.and_then(|set| set.get_mut("additionalProperties")?.as_object_mut());
    if let Some(each) = each {
        each.insert("minimum".to_owned(), json!(limits::LIMIT.start()));
        each.insert("maximum".to_owned(), json!(limits::LIMIT.end()));
    }
    for (definition, of, most) in [
        ("Sheet", "parts", limits::MOST_PARTS),
        ("Sheet", "runs", limits::MOST_RUNS),
        ("Body", "places", limits::MOST_OWN_PLACES),
        ("Body", "passages", limits::MOST_OWN_PLACES),
    ] {
        if let Some(place) = property_of(definitions, definition, of) {
            place.insert("maxProperties".to_owned(), most.into());
        }
    }
    schema
}

/// Bytes as a file has them.
pub(crate) fn as_base64<S: serde::Serializer>(
    bytes: &std::sync::Arc<Vec<u8>>,
    serializer: S,
) -> Result<S::Ok, S::Error> {
    use base64::Engine as _;
    serializer.serialize_str(&base64::engine::general_purpose::STANDARD.encode(bytes.as_slice()))
}

/// Name of the definition that a kind's properties have, as the enum of kinds refers to it.
fn type_of(kind: &PartKind, definitions: &Map<String, Value>) -> Option<String> {
    let forms = definitions.get("PartKind")?.get("oneOf")?.as_array()?;
    let reference = forms
        .iter()
        .find_map(|form| form.get("properties")?.get(kind.word())?.get("$ref")?.as_str())?;
    reference.rsplit('/').next().map(str::to_owned)
}

fn property_of<'d>(
    definitions: &'d mut Map<String, Value>,
    definition: &str,
    property: &str,
) -> Option<&'d mut Map<String, Value>> {
    definitions
        .get_mut(definition)?
        .get_mut("properties")?
        .get_mut(property)?
        .as_object_mut()
}

/// Adds ranges, units and lengths to a definition.
fn describe(definitions: &mut Map<String, Value>, definition: &str, list: &[Property]) {
    for property in list {
        let Some(place) = property_of(definitions, definition, property.name) else {
            continue;
        };
        if let Some((least, most)) = property.range {
            place.insert("minimum".to_owned(), json!(least));
            place.insert("maximum".to_owned(), json!(most));
            if property.may_be_assumed {
                let assumed = json!({"minimum": least, "maximum": most});
                place.insert("properties".to_owned(), json!({"assumed": assumed}));
            }
        }
        let unit = match property.shape {
            Shape::Number { ascii: "", .. } => " 1 is all of it.".to_owned(),
            Shape::Number { symbol, .. } => format!(" In {symbol}."),
            _ => String::new(),
        };
        place.insert(
            "description".to_owned(),
            format!("{}{unit}", property.doc.trim()).into(),
        );
    }
}
