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
use words::{Saying, Value as Word, say};

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
    pub message: Saying,
    /// The steps to the place, the innermost first.
    inner: Vec<Step>,
}

impl Misread {
    /// Here, this is wrong.
    pub fn new(message: impl Into<Saying>) -> Self {
        Self {
            message: message.into(),
            inner: Vec::new(),
        }
    }
    /// Something else stands here than what is taken.
    #[must_use]
    pub fn not(wanted: &'static str, found: &Value) -> Self {
        let found: Word = match found {
            Value::Null => "null".into(),
            Value::Bool(it) => it.to_string().into(),
            Value::Number(it) => say!("json-number", number = it.to_string()).into(),
            Value::String(it) if it.chars().count() > 40 => {
                let text = it.chars().take(40).collect::<String>() + "…";
                say!("json-string", text = text).into()
            }
            Value::String(it) => say!("json-string", text = it).into(),
            Value::Array(_) => say!("json-wanted", of = "list").into(),
            Value::Object(_) => say!("json-wanted", of = "object").into(),
        };
        Self::not_that(wanted, found)
    }
    /// What is taken here, and what was found. What is taken is a word that the message knows, or stands as it is.
    fn not_that(wanted: &'static str, found: impl Into<Word>) -> Self {
        Self::new(say!(
            "json-not",
            wanted = say!("json-wanted", of = wanted),
            found = found
        ))
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
    /// Where it is wrong, and what is wrong there.
    #[must_use]
    pub fn said(&self) -> Saying {
        if self.inner.is_empty() {
            return self.message.clone();
        }
        let place: Vec<String> = self.place().map(Step::to_string).collect();
        say!("file-problem", place = place.join("."), what = &self.message)
    }
    /// The steps to the place, from the outermost.
    pub fn place(&self) -> impl Iterator<Item = &Step> {
        self.inner.iter().rev()
    }
}

impl fmt::Display for Misread {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.said().fmt(out)
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
            other => Err(Misread::not("object", other)),
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
            .ok_or_else(|| Misread::new(say!("json-missing", key = key)))
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
fn choice<'v>(value: &'v Value, wanted: &'static str) -> Result<(&'v str, &'v Value), Misread> {
    let Value::Object(object) = value else {
        return Err(Misread::not(wanted, value));
    };
    let mut all = object.iter();
    match (all.next(), all.next()) {
        (Some((word, inner)), None) => Ok((word, inner)),
        (None, _) => Err(Misread::not_that(wanted, say!("json-wanted", of = "empty"))),
        (Some((first, _)), Some((second, _))) => Err(Misread::not_that(
            wanted,
            say!("json-both", first = first, second = second),
        )),
    }
}

impl FromJson for String {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        text(value).map(str::to_owned)
    }
}

/// A string as it stands.
pub(crate) fn text(value: &Value) -> Result<&str, Misread> {
    value.as_str().ok_or_else(|| Misread::not("string", value))
}

impl FromJson for f64 {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        value.as_f64().ok_or_else(|| Misread::not("number", value))
    }
}

impl FromJson for i32 {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        value
            .as_i64()
            .and_then(|number| Self::try_from(number).ok())
            .ok_or_else(|| Misread::not("whole", value))
    }
}

impl FromJson for bool {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        value.as_bool().ok_or_else(|| Misread::not("truth", value))
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
        let all = value.as_array().ok_or_else(|| Misread::not("list", value))?;
        all.iter()
            .enumerate()
            .map(|(at, one)| T::from_json(one).map_err(|error| error.at(at)))
            .collect()
    }
}
