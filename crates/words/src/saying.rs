//! A saying: the key of a message and the values that go into it.

use crate::figure::Figure;
use serde::ser::SerializeMap;
use serde::{Serialize, Serializer};
use std::borrow::Cow;
use std::fmt;

/// What somebody is told, in no language yet.
///
/// Ordered by key and values, so that what holds sayings can be sorted without a language.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Saying {
    key: Cow<'static, str>,
    values: Vec<(&'static str, Value)>,
}

/// A value of a message.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Value {
    /// As it stands: tags, names, words of the job.
    Text(String),
    /// How many: also chooses between singular and plural.
    Count(usize),
    /// A number with a unit.
    Figure(Figure),
    /// Several, joined by commas and "and". It chooses between singular and plural by how many there are.
    List(Vec<Value>),
    /// All of these, however many, with this between them.
    Joined(Vec<Saying>, &'static str),
    /// Another saying.
    Saying(Box<Saying>),
}

impl Saying {
    /// A saying without values.
    #[must_use]
    pub fn new(key: impl Into<Cow<'static, str>>) -> Self {
        Self {
            key: key.into(),
            values: Vec::new(),
        }
    }
    /// The same with one more value.
    #[must_use]
    pub fn with(mut self, name: &'static str, value: impl Into<Value>) -> Self {
        self.values.push((name, value.into()));
        self
    }
    /// Key of its message.
    #[must_use]
    pub fn key(&self) -> &str {
        &self.key
    }
    /// Its values by name.
    #[must_use]
    pub fn values(&self) -> &[(&'static str, Value)] {
        &self.values
    }
    pub(crate) fn value(&self, name: &str) -> Option<&Value> {
        self.values
            .iter()
            .find(|(known, _)| *known == name)
            .map(|(_, value)| value)
    }
}

/// Makes a [`Saying`]: `say!("key")`, `say!("key", fuse = tag, far = figure(1.7, Unit::Metre))`.
#[macro_export]
macro_rules! say {
    ($key:literal $(, $name:ident = $value:expr)* $(,)?) => {
        $crate::Saying::new($key)$(.with(stringify!($name), $value))*
    };
}

impl fmt::Display for Saying {
    /// In English with metric units, for developers and for programs.
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&crate::Words::english().say(self))
    }
}

/// Words that stand as they are, in every language.
impl From<String> for Saying {
    fn from(text: String) -> Self {
        Self::new("as-it-stands").with("text", text)
    }
}
impl From<&str> for Saying {
    fn from(text: &str) -> Self {
        text.to_owned().into()
    }
}

impl Serialize for Saying {
    /// As `{"key": …, "english": …, "fuse": …}`: data for another program, and the sentence for who reads that data.
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let mut map = to.serialize_map(Some(self.values.len() + 2))?;
        map.serialize_entry("key", &self.key)?;
        map.serialize_entry("english", &crate::Words::english().say(self))?;
        for (name, value) in &self.values {
            map.serialize_entry(name, value)?;
        }
        map.end()
    }
}

impl Serialize for Value {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Text(text) => text.serialize(to),
            Self::Count(count) => count.serialize(to),
            Self::Figure(figure) => figure.serialize(to),
            Self::List(all) => all.serialize(to),
            Self::Joined(all, _) => all.serialize(to),
            Self::Saying(saying) => saying.serialize(to),
        }
    }
}

impl From<&str> for Value {
    fn from(text: &str) -> Self {
        Self::Text(text.to_owned())
    }
}
impl From<String> for Value {
    fn from(text: String) -> Self {
        Self::Text(text)
    }
}
impl From<&String> for Value {
    fn from(text: &String) -> Self {
        Self::Text(text.clone())
    }
}
impl From<usize> for Value {
    fn from(count: usize) -> Self {
        Self::Count(count)
    }
}
impl From<Figure> for Value {
    fn from(figure: Figure) -> Self {
        Self::Figure(figure)
    }
}
impl From<Saying> for Value {
    fn from(saying: Saying) -> Self {
        Self::Saying(Box::new(saying))
    }
}
impl From<&Saying> for Value {
    fn from(saying: &Saying) -> Self {
        saying.clone().into()
    }
}
impl<T: Into<Value>> From<Vec<T>> for Value {
    fn from(all: Vec<T>) -> Self {
        Self::List(all.into_iter().map(Into::into).collect())
    }
}
impl<T: Clone + Into<Value>> From<&[T]> for Value {
    fn from(all: &[T]) -> Self {
        Self::List(all.iter().cloned().map(Into::into).collect())
    }
}
impl<T: Clone + Into<Value>> From<&Vec<T>> for Value {
    fn from(all: &Vec<T>) -> Self {
        all.as_slice().into()
    }
}
