//! Properties: every editable value of a part or run has a name, a shape, a range and one written form, declared once
//! beside its field by [`crate::properties!`]. The text form, the details slip on screen, the check at the file's door and
//! the help all read this one list.

mod declare;
mod numbers;
mod set;
mod values;

pub use numbers::{check_number, parse_number};
pub use set::{Field, PropertySet};
pub use values::LONGEST_TEXT;

use crate::json::{Misread, text};
use serde_json::Value;
use std::fmt;
use words::{Saying, say};

/// How a property is written and which values it takes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Shape {
    /// A number with a unit.
    Number {
        /// Unit shown after the number.
        symbol: &'static str,
        /// Unit in ASCII, as the text form writes it.
        ascii: &'static str,
        /// What is measured.
        what: &'static str,
    },
    /// A whole number.
    Count,
    /// Yes or no.
    YesNo,
    /// One of a list: the written word and the words on screen.
    Choice(&'static [(&'static str, &'static str)]),
    /// A short text with a grammar of its own, told by an example.
    Text {
        /// An example of the written form.
        example: &'static str,
    },
}

/// What is known about one property of a kind.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Property {
    /// Written name, kebab-case.
    pub name: &'static str,
    /// One sentence: what it is and what it decides.
    pub doc: &'static str,
    /// How it is written.
    pub shape: Shape,
    /// Least and largest number allowed, both included; for numbers and counts only.
    pub range: Option<(f64, f64)>,
    /// Whether the value may be marked as assumed or left unknown.
    pub may_be_assumed: bool,
}

/// Why a property could not be set. Says what was written and what would do.
#[derive(Clone, Debug, PartialEq)]
pub struct PropertyError {
    /// What is wrong, without the name of the property.
    pub said: Saying,
}

impl PropertyError {
    /// An error that says this.
    pub fn new(said: impl Into<Saying>) -> Self {
        Self { said: said.into() }
    }
}

impl fmt::Display for PropertyError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.said.fmt(out)
    }
}
impl std::error::Error for PropertyError {}

/// A type that can be the value of a property. `print` and `parse` are inverse.
pub trait PropertyType: Sized {
    /// Its shape.
    const SHAPE: Shape;
    /// True for [`Fact`](crate::Fact)s.
    const MAY_BE_ASSUMED: bool = false;
    /// Whether it is a [`Fact`](crate::Fact) that is assumed.
    fn is_guess(&self) -> bool {
        false
    }
    /// Whether it is a [`Fact`](crate::Fact) that is not known.
    fn is_not_known(&self) -> bool {
        false
    }
    /// Whether it says nothing and is left out of a file: of properties that came after files were written without them.
    fn is_left_out(&self) -> bool {
        false
    }
    /// The written form: no spaces unless the shape is [`Shape::Text`].
    fn print(&self) -> String;
    /// Reads the written form.
    ///
    /// # Errors
    /// When the text is not of the shape or out of `range`.
    fn parse(text: &str, range: Option<(f64, f64)>) -> Result<Self, PropertyError>;
    /// Holds the value against the range, as a file may carry anything.
    ///
    /// # Errors
    /// When it is out of `range` or not finite.
    fn check(&self, range: Option<(f64, f64)>) -> Result<(), PropertyError>;
    /// As it stands in a file: its written form, unless its type has a better one.
    fn to_json(&self) -> Value {
        self.print().into()
    }
    /// Reads what stands in a file. The range is not looked at.
    ///
    /// # Errors
    /// When it is of another form.
    fn from_json(value: &Value) -> Result<Self, Misread> {
        Self::parse(text(value)?, None).map_err(|error| Misread::new(error.said))
    }
}

/// The error of a word that is none of a choice.
#[must_use]
pub fn not_one_of(text: &str, words: &[&str]) -> PropertyError {
    PropertyError::new(say!("error-not-one-of", text = text, words = words.join(", ")))
}
