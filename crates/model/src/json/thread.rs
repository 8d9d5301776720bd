//! The thread of a job and its pictures.

use super::{Fields, FromJson, Misread, ToJson, object, text};
use crate::picture::{Picture, PictureFacts};
use crate::property::PropertySet;
use crate::thread::{Rates, Thread};
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use serde_json::Value;
use std::sync::Arc;
use words::say;

impl ToJson for Thread {
    fn to_json(&self) -> Value {
        let mut all = object(&self.extra);
        let mut list = |key: &str, of: Vec<Value>| {
            if !of.is_empty() {
                all.insert(key.to_owned(), of.into());
            }
        };
        list(
            "complaints",
            self.complaints.iter().map(PropertySet::to_json).collect(),
        );
        list("intake", self.intake.iter().map(PropertySet::to_json).collect());
        list("offers", self.offers.iter().map(PropertySet::to_json).collect());
        list(
            "done",
            self.done.iter().map(|step| step.as_str().into()).collect(),
        );
        if self.rates != Rates::default() {
            all.insert("rates".to_owned(), self.rates.to_json());
        }
        all.into()
    }
}

impl FromJson for Thread {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        let mut fields = Fields::of(value)?;
        let done: Vec<String> = fields.find("done")?.unwrap_or_default();
        Ok(Self {
            complaints: fields.find("complaints")?.unwrap_or_default(),
            intake: fields.find("intake")?.unwrap_or_default(),
            offers: fields.find("offers")?.unwrap_or_default(),
            rates: fields.find("rates")?.unwrap_or_default(),
            done: done.into_iter().collect(),
            extra: fields.rest(),
        })
    }
}

impl ToJson for Picture {
    fn to_json(&self) -> Value {
        let mut all = object(&self.extra);
        all.insert("facts".to_owned(), self.facts.to_json());
        all.insert("bytes".to_owned(), STANDARD.encode(self.bytes.as_slice()).into());
        all.into()
    }
}

impl FromJson for Picture {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        let mut fields = Fields::of(value)?;
        let facts: PictureFacts = fields.find("facts")?.unwrap_or_default();
        let bytes = fields
            .value("bytes")
            .ok_or_else(|| Misread::new(say!("json-missing", key = "bytes")))?;
        let bytes = STANDARD
            .decode(text(bytes).map_err(|error| error.within("bytes"))?)
            .map_err(|_| Misread::new(say!("json-no-base64")).within("bytes"))?;
        Ok(Self {
            facts,
            bytes: Arc::new(bytes),
            extra: fields.rest(),
        })
    }
}
