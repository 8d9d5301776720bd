//! Identities: stable numbers for parts and runs, written `p12` and `r7`, and the names of terminals.
//!
//! A tag (`F1`) is what people read and may change; an id never does, also across the sheets of a job, so that the
//! job always knows what became of a thing.

use serde::{Serialize, Serializer};
use smol_str::SmolStr;
use std::fmt;
use words::{Saying, say};

macro_rules! id {
    ($(#[$doc:meta])* $name:ident, $letter:literal) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $name(pub u32);
        impl fmt::Display for $name {
            fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
                write!(out, concat!($letter, "{}"), self.0)
            }
        }
        impl std::str::FromStr for $name {
            type Err = Saying;
            fn from_str(text: &str) -> Result<Self, Saying> {
                text.strip_prefix($letter)
                    // Only the canonical writing: `p07` and `p+7` would be second names for p7.
                    .filter(|digits| digits.bytes().all(|b| b.is_ascii_digit()) && (*digits == "0" || !digits.starts_with('0')))
                    .and_then(|digits| digits.parse().ok())
                    .map(Self)
                    .ok_or_else(|| say!("error-no-id", text = text, like = concat!($letter, "12")))
            }
        }
        impl Serialize for $name {
            fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.collect_str(self)
            }
        }
        #[cfg(feature = "schema")]
        impl schemars::JsonSchema for $name {
            fn schema_name() -> std::borrow::Cow<'static, str> {
                stringify!($name).into()
            }
            fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
                schemars::json_schema!({"type": "string", "pattern": concat!("^", $letter, "(0|[1-9][0-9]*)$")})
            }
        }
    };
}

id!(/// Identity of a part, the same on every sheet of a job.
    PartId, "p");
id!(/// Identity of a run of wire, the same on every sheet of a job.
    RunId, "r");

/// Name of a terminal on its part, such as `+`, `in`, `out2-` or `30`.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(transparent)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TerminalName(#[cfg_attr(feature = "schema", schemars(with = "String"))] pub SmolStr);

impl TerminalName {
    /// A terminal name from text.
    pub fn new(text: impl AsRef<str>) -> Self {
        Self(SmolStr::new(text))
    }
    /// The name as text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl From<&str> for TerminalName {
    fn from(text: &str) -> Self {
        Self::new(text)
    }
}

impl fmt::Display for TerminalName {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.0)
    }
}

/// One terminal of one part.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TerminalRef {
    /// The part.
    pub part: PartId,
    /// The terminal on it.
    pub terminal: TerminalName,
}

impl TerminalRef {
    /// The terminal `terminal` of `part`.
    pub fn new(part: PartId, terminal: impl AsRef<str>) -> Self {
        Self {
            part,
            terminal: TerminalName::new(terminal),
        }
    }
}
