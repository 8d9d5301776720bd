//! A value and how it is known. What was measured or read off counts more than what was taken for granted, and what
//! nobody knows must stay visible as such.

use serde::de::{self, IntoDeserializer, MapAccess, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::fmt;
use std::marker::PhantomData;

/// A value that is given, assumed, or not known.
///
/// In a file: a given value stands bare (`4.5`), an assumed one as `{"assumed": 4.5}`, an unknown one as `null`.
/// In the text form: `4.5m`, `~4.5m`, `?`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Fact<T> {
    /// Read off, measured or decided by the user.
    Given(T),
    /// Taken for granted by the tool or the user; shown wherever it decides something.
    Assumed(T),
    /// Nobody knows yet. A check that hinges on it is undecided.
    #[default]
    Unknown,
}

impl<T: Copy> Fact<T> {
    /// The value, whichever way it is known.
    pub fn value(&self) -> Option<T> {
        match self {
            Self::Given(value) | Self::Assumed(value) => Some(*value),
            Self::Unknown => None,
        }
    }
    /// The value, or what the caller takes in its place.
    pub fn or(&self, instead: T) -> T {
        self.value().unwrap_or(instead)
    }
}

impl<T> Fact<T> {
    /// The value by reference, whichever way it is known.
    pub fn as_ref(&self) -> Option<&T> {
        match self {
            Self::Given(value) | Self::Assumed(value) => Some(value),
            Self::Unknown => None,
        }
    }
    /// True for a value that the user gave.
    pub fn is_given(&self) -> bool {
        matches!(self, Self::Given(_))
    }
    /// True for a value taken for granted.
    pub fn is_assumed(&self) -> bool {
        matches!(self, Self::Assumed(_))
    }
    /// True where nobody knows.
    pub fn is_unknown(&self) -> bool {
        matches!(self, Self::Unknown)
    }
}

#[derive(Serialize)]
struct AssumedForm<T> {
    assumed: T,
}

impl<T: Serialize> Serialize for Fact<T> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Given(value) => value.serialize(serializer),
            Self::Assumed(assumed) => AssumedForm { assumed }.serialize(serializer),
            Self::Unknown => serializer.serialize_none(),
        }
    }
}

/// Reads the form by what it finds, so that an error names the place in the value and says what `T` takes.
impl<'de, T: Deserialize<'de>> Deserialize<'de> for Fact<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(FactVisitor(PhantomData))
    }
}

struct FactVisitor<T>(PhantomData<T>);

macro_rules! given {
    ($($visit:ident: $ty:ty),+) => {$(
        fn $visit<E: de::Error>(self, value: $ty) -> Result<Fact<T>, E> {
            T::deserialize(value.into_deserializer()).map(Fact::Given)
        }
    )+};
}

impl<'de, T: Deserialize<'de>> Visitor<'de> for FactVisitor<T> {
    type Value = Fact<T>;
    fn expecting(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("a value, {\"assumed\": value}, or null for one that nobody knows")
    }
    given!(visit_bool: bool, visit_i64: i64, visit_u64: u64, visit_f64: f64, visit_str: &str, visit_string: String);
    fn visit_borrowed_str<E: de::Error>(self, value: &'de str) -> Result<Fact<T>, E> {
        T::deserialize(de::value::BorrowedStrDeserializer::new(value)).map(Fact::Given)
    }
    fn visit_unit<E>(self) -> Result<Fact<T>, E> {
        Ok(Fact::Unknown)
    }
    fn visit_none<E>(self) -> Result<Fact<T>, E> {
        Ok(Fact::Unknown)
    }
    fn visit_some<D: Deserializer<'de>>(self, deserializer: D) -> Result<Fact<T>, D::Error> {
        deserializer.deserialize_any(self)
    }
    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Fact<T>, A::Error> {
        match map.next_key::<String>()?.as_deref() {
            Some("assumed") => {}
            Some(other) => {
                return Err(de::Error::custom(format!(
                    "it has `{other}`, but only `assumed` may stand here"
                )));
            }
            None => {
                return Err(de::Error::custom(
                    "an empty object; it should be {\"assumed\": value}",
                ));
            }
        }
        let value = map.next_value()?;
        match map.next_key::<String>()? {
            None => Ok(Fact::Assumed(value)),
            Some(other) => Err(de::Error::custom(format!("it has `{other}` besides `assumed`"))),
        }
    }
}

#[cfg(feature = "schema")]
impl<T: schemars::JsonSchema> schemars::JsonSchema for Fact<T> {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        format!("Fact_of_{}", T::schema_name()).into()
    }
    fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
        let value = generator.subschema_for::<T>();
        schemars::json_schema!({
            "description": "Given, assumed or not known.",
            "anyOf": [
                value,
                {
                    "type": "object",
                    "properties": {"assumed": value},
                    "required": ["assumed"],
                    "additionalProperties": false
                },
                {"type": "null"}
            ]
        })
    }
}
