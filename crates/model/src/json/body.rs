//! The body of the vehicle, as the settings of a job hold it.

use super::{Fields, FromJson, Misread, ToJson, object, object_of};
use crate::body::Body;
use crate::property::PropertySet;
use serde_json::Value;

impl ToJson for Body {
    fn to_json(&self) -> Value {
        let mut all = object(&self.extra);
        all.insert("shape".to_owned(), self.shape.to_json());
        if !self.places.is_empty() {
            let mut places = self
                .places
                .iter()
                .map(|(name, place)| (name.clone(), place.to_json()));
            all.insert("places".to_owned(), object_of(&mut places).into());
        }
        if !self.passages.is_empty() {
            let mut passages = self
                .passages
                .iter()
                .map(|(name, it)| (name.clone(), it.to_json()));
            all.insert("passages".to_owned(), object_of(&mut passages).into());
        }
        all.into()
    }
}

impl FromJson for Body {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        let mut fields = Fields::of(value)?;
        Ok(Self {
            shape: fields.find("shape")?.unwrap_or_default(),
            places: named(fields.value("places")).map_err(|error| error.within("places"))?,
            passages: named(fields.value("passages")).map_err(|error| error.within("passages"))?,
            extra: fields.rest(),
        })
    }
}

/// Values by their names; none where nothing stands.
fn named<T: FromJson>(value: Option<&Value>) -> Result<ordered::OrderedMap<String, T>, Misread> {
    match value {
        None => Ok(ordered::OrderedMap::new()),
        Some(Value::Object(all)) => all
            .iter()
            .map(|(name, value)| match T::from_json(value) {
                Ok(read) => Ok((name.clone(), read)),
                Err(error) => Err(error.within(name)),
            })
            .collect(),
        Some(other) => Err(Misread::not("object", other)),
    }
}
