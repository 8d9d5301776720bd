//! A value and how it is known. What was measured or read off counts more than what was taken for granted, and what
//! nobody knows must stay visible as such.

use serde::{Deserialize, Deserializer, Serialize, Serializer};

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

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
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

#[derive(Deserialize)]
#[serde(untagged)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
enum FileForm<T> {
    Assumed(AssumedForm<T>),
    Given(T),
    Unknown(()),
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for Fact<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Ok(match FileForm::deserialize(deserializer)? {
            FileForm::Assumed(form) => Self::Assumed(form.assumed),
            FileForm::Given(value) => Self::Given(value),
            FileForm::Unknown(()) => Self::Unknown,
        })
    }
}

#[cfg(feature = "schema")]
impl<T: schemars::JsonSchema> schemars::JsonSchema for Fact<T> {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        format!("Fact_of_{}", T::schema_name()).into()
    }
    fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
        FileForm::<T>::json_schema(generator)
    }
}
