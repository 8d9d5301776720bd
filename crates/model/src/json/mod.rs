//! How the values of a job stand in JSON, and how they are read back with an error that names the place.
//!
//! Every type goes through [`Value`] by these two traits and nothing else, so that there is one reader and one writer of
//! each: a part's two hundred properties are read by one function over [`crate::property::PropertySet`].

mod body;
mod edits;
pub(crate) mod items;
mod thread;

use crate::job::Extra;
use serde_json::{Map, Value};
use std::fmt;

/// A value that a file can hold.
pub trait ToJson {
    /// As it stands in a file.
    fn to_json(&self) -> Value;
}

/// A value that can be read from a file.
pub trait FromJson: Sized {
    /// Reads it.
    ///
    /// # Errors
    /// Where in the value the first thing is wrong, and what.
    fn from_json(value: &Value) -> Result<Self, Misread>;
}

/// One step into a value.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Step {
    /// Into an object.
    Key(String),
    /// Into a list, from 0.
    Index(usize),
}

impl fmt::Display for Step {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Key(key) => out.write_str(key),
            Self::Index(index) => write!(out, "{index}"),
        }
    }
}

/// Why a value could not be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Misread {
    /// What is wrong there, and what would do.
    pub message: String,
    /// The steps to the place, the innermost first.
    inner: Vec<Step>,
}

impl Misread {
    /// Here, this is wrong.
    pub fn new(message: impl Into<String>) -> Self {
        Self {
            message: message.into(),
            inner: Vec::new(),
        }
    }
    /// Something else stands here than what is taken.
    #[must_use]
    pub fn not(wanted: &str, found: &Value) -> Self {
        let found = match found {
            Value::Null => "null".to_owned(),
            Value::Bool(it) => it.to_string(),
            Value::Number(it) => format!("the number {it}"),
            Value::String(it) if it.chars().count() > 40 => {
                format!("the string \"{}…\"", it.chars().take(40).collect::<String>())
            }
            Value::String(it) => format!("the string \"{it}\""),
            Value::Array(_) => "a list".to_owned(),
            Value::Object(_) => "an object".to_owned(),
        };
        Self::new(format!("expected {wanted}, found {found}"))
    }
    /// The same, seen from one level further out.
    #[must_use]
    pub fn within(mut self, key: &str) -> Self {
        self.inner.push(Step::Key(key.to_owned()));
        self
    }
    /// The same, seen from the list around it.
    #[must_use]
    pub fn at(mut self, index: usize) -> Self {
        self.inner.push(Step::Index(index));
        self
    }
    /// The steps to the place, from the outermost.
    pub fn place(&self) -> impl Iterator<Item = &Step> {
        self.inner.iter().rev()
    }
}

impl fmt::Display for Misread {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (at, step) in self.place().enumerate() {
            write!(out, "{}{step}", if at == 0 { "" } else { "." })?;
        }
        if !self.inner.is_empty() {
            out.write_str(": ")?;
        }
        out.write_str(&self.message)
    }
}
impl std::error::Error for Misread {}

/// The fields of an object, taken out one by one.
pub struct Fields<'v> {
    object: &'v Map<String, Value>,
    known: Vec<&'static str>,
}

impl<'v> Fields<'v> {
    /// Of this value.
    ///
    /// # Errors
    /// When it is no object.
    pub fn of(value: &'v Value) -> Result<Self, Misread> {
        match value {
            Value::Object(object) => Ok(Self {
                object,
                known: Vec::new(),
            }),
            other => Err(Misread::not("an object", other)),
        }
    }
    /// The value of a field, which counts as known from now on.
    pub fn value(&mut self, key: &'static str) -> Option<&'v Value> {
        self.known.push(key);
        self.object.get(key)
    }
    /// A field that may be left out.
    ///
    /// # Errors
    /// When it cannot be read.
    pub fn find<T: FromJson>(&mut self, key: &'static str) -> Result<Option<T>, Misread> {
        match self.value(key) {
            Some(value) => T::from_json(value).map(Some).map_err(|error| error.within(key)),
            None => Ok(None),
        }
    }
    /// A field that must be there.
    ///
    /// # Errors
    /// When it is not, or cannot be read.
    pub fn need<T: FromJson>(&mut self, key: &'static str) -> Result<T, Misread> {
        self.find(key)?
            .ok_or_else(|| Misread::new(format!("`{key}` is missing")))
    }
    /// All fields that were not asked for: those of a newer version.
    #[must_use]
    pub fn rest(self) -> Extra {
        self.object
            .iter()
            .filter(|(key, _)| !self.known.contains(&key.as_str()))
            .map(|(key, value)| (key.clone(), value.clone()))
            .collect()
    }
}

/// Starts the object of a value that keeps fields it does not know.
pub(crate) fn object(extra: &Extra) -> Map<String, Value> {
    object_of(&mut extra.iter().map(|(key, value)| (key.clone(), value.clone())))
}

/// An object of these fields. One by one: collected, each kind of iterator would bring the page a sort of its own.
pub fn object_of(fields: &mut dyn Iterator<Item = (String, Value)>) -> Map<String, Value> {
    let mut object = Map::new();
    for (key, value) in fields {
        object.insert(key, value);
    }
    object
}

/// An object of a few fields whose names are known.
pub(crate) fn fields<const N: usize>(all: [(&str, Value); N]) -> Value {
    object_of(&mut all.into_iter().map(|(key, value)| (key.to_owned(), value))).into()
}

/// The one field of an object that names a choice: `{"fuse": {…}}`.
fn choice<'v>(value: &'v Value, wanted: &str) -> Result<(&'v str, &'v Value), Misread> {
    let Value::Object(object) = value else {
        return Err(Misread::not(wanted, value));
    };
    let mut all = object.iter();
    match (all.next(), all.next()) {
        (Some((word, inner)), None) => Ok((word, inner)),
        (None, _) => Err(Misread::new(format!("expected {wanted}, found an empty object"))),
        (Some((first, _)), Some((second, _))) => Err(Misread::new(format!(
            "expected {wanted}, found both `{first}` and `{second}`"
        ))),
    }
}

impl FromJson for String {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        text(value).map(str::to_owned)
    }
}

/// A string as it stands.
pub(crate) fn text(value: &Value) -> Result<&str, Misread> {
    value.as_str().ok_or_else(|| Misread::not("a string", value))
}

impl FromJson for f64 {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        value.as_f64().ok_or_else(|| Misread::not("a number", value))
    }
}

impl FromJson for i32 {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        value
            .as_i64()
            .and_then(|number| Self::try_from(number).ok())
            .ok_or_else(|| Misread::not("a whole number", value))
    }
}

impl FromJson for bool {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        value
            .as_bool()
            .ok_or_else(|| Misread::not("true or false", value))
    }
}

impl<T: FromJson> FromJson for Option<T> {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        if value.is_null() {
            Ok(None)
        } else {
            T::from_json(value).map(Some)
        }
    }
}

impl<T: FromJson> FromJson for Box<T> {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        T::from_json(value).map(Self::new)
    }
}

impl<T: FromJson> FromJson for Vec<T> {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        let all = value.as_array().ok_or_else(|| Misread::not("a list", value))?;
        all.iter()
            .enumerate()
            .map(|(at, one)| T::from_json(one).map_err(|error| error.at(at)))
            .collect()
    }
}
