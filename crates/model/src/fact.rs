//! A value and how it is known. What was measured or read off counts more than what was taken for granted, and what
//! nobody knows must stay visible as such.

/// A value that is given, assumed, computed, or not known.
///
/// In a file: a given value stands bare (`4.5`), an assumed one as `{"assumed": 4.5}`, an unknown one as `null`.
/// In the text form: `4.5m`, `~4.5m`, `?`.
///
/// *Invariant:* a job holds no computed value. It stands only in the copy of a sheet that is studied and drawn, see the
/// crate `body`, and is shown in parentheses, `(4.5m)`, as drawings have dimensions that follow from others (ISO 129-1,
/// auxiliary dimensions).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Fact<T> {
    /// Read off, measured or decided by the user.
    Given(T),
    /// Taken for granted by the tool or the user; shown wherever it decides something.
    Assumed(T),
    /// It follows from what else the job says, as the length of a run does from its route. Never part of a job.
    Computed(T),
    /// Nobody knows yet. A check that hinges on it is undecided.
    #[default]
    Unknown,
}

impl<T: Copy> Fact<T> {
    /// The value, whichever way it is known.
    pub fn value(&self) -> Option<T> {
        match self {
            Self::Given(value) | Self::Assumed(value) | Self::Computed(value) => Some(*value),
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
            Self::Given(value) | Self::Assumed(value) | Self::Computed(value) => Some(value),
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
    /// True for a value that follows from what else the job says.
    pub fn is_computed(&self) -> bool {
        matches!(self, Self::Computed(_))
    }
    /// True for a value that was not taken for granted: given or computed.
    pub fn is_settled(&self) -> bool {
        matches!(self, Self::Given(_) | Self::Computed(_))
    }
    /// The value as it is told: `shown` it, with the mark of how it is known, or `unknown`.
    pub fn marked(&self, unknown: &str, shown: impl FnOnce(&T) -> String) -> String {
        match self {
            Self::Given(value) => shown(value),
            Self::Assumed(value) => format!("~{}", shown(value)),
            Self::Computed(value) => format!("({})", shown(value)),
            Self::Unknown => unknown.to_owned(),
        }
    }
    /// True where nobody knows.
    pub fn is_unknown(&self) -> bool {
        matches!(self, Self::Unknown)
    }
}

/// Only the schema, which shows defaults, writes through this.
#[cfg(feature = "schema")]
impl<T: serde::Serialize> serde::Serialize for Fact<T> {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Given(value) => value.serialize(serializer),
            Self::Assumed(value) | Self::Computed(value) => {
                std::collections::BTreeMap::from([("assumed", value)]).serialize(serializer)
            }
            Self::Unknown => serializer.serialize_none(),
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
