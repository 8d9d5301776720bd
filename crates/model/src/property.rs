//! Properties: every editable value of a part or run has a name, a shape, a range and one written form, declared once
//! beside its field by [`crate::properties!`]. The text form, the details slip on screen, the check at the file's door and
//! the help all read this one list.

use crate::fact::Fact;
use crate::job::Extra;
use crate::json::{Fields, FromJson, Misread, fields, items::number, text};
use crate::quantity::Quantity;
use serde_json::{Map, Value};
use std::fmt;
use words::{Saying, Unit, say, told};

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
    /// True for [`Fact`]s.
    const MAY_BE_ASSUMED: bool = false;
    /// Whether it is a [`Fact`] that is assumed.
    fn is_guess(&self) -> bool {
        false
    }
    /// Whether it is a [`Fact`] that is not known.
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

/// Holds one number against a range, ends included.
pub fn check_number(number: f64, range: Option<(f64, f64)>, unit: &'static str) -> Result<(), PropertyError> {
    if !number.is_finite() {
        return Err(PropertyError::new(say!("error-not-finite")));
    }
    match range {
        Some((least, most)) if number < least || number > most => {
            let unit = Unit::of(unit);
            // A number just beyond its bound must not read like the bound.
            let bound = if number < least { least } else { most };
            Err(PropertyError::new(say!(
                "error-out-of-range",
                number = told(number, bound, unit),
                least = told(least, number, unit),
                most = told(most, number, unit)
            )))
        }
        _ => Ok(()),
    }
}

/// Reads `12.5mohm` as 0.0125 for the unit `ohm`. A bare number counts as in the unit itself; `k`, `m`, `u`, `µ` and
/// `n` may stand before the unit, `%` reads as hundredths where the unit is empty. Metres also read as `cm`, `mm`, feet and
/// inches: `6 ft`, `6'`, `18 in`, `5' 6"`. The sign before the tenths may be a comma.
pub fn parse_number(text: &str, ascii: &str, symbol: &str) -> Result<f64, PropertyError> {
    let text = text.trim();
    let (number, unit) = leading_number(text).ok_or_else(|| {
        PropertyError::new(say!(
            "error-no-number",
            text = text,
            like = format!("12.5{ascii}")
        ))
    })?;
    // Thousandths and the like are made by dividing: 450 / 1000 is 0.45 exactly as written, 450 × 0.001 is not.
    let scaled = |prefix: &str| match prefix {
        "" => Some(number),
        "k" => Some(number * 1000.0),
        "m" => Some(number / 1000.0),
        "u" | "µ" => Some(number / 1e6),
        "n" => Some(number / 1e9),
        _ => None,
    };
    let read = if unit.is_empty() {
        Some(number)
    } else if ascii.is_empty() {
        (unit == "%").then_some(number / 100.0)
    } else if ascii == "m" && unit == "cm" {
        Some(number / 100.0)
    } else {
        let feet = if ascii == "m" {
            feet_and_inches(number, unit)
        } else {
            None
        };
        feet.or_else(|| {
            unit.strip_suffix(ascii)
                .or_else(|| unit.strip_suffix(symbol))
                .and_then(|prefix| scaled(prefix.trim_end()))
        })
    };
    read.filter(|value| value.is_finite()).ok_or_else(|| {
        let wanted = if ascii.is_empty() { "%" } else { ascii };
        PropertyError::new(say!(
            "error-other-unit",
            text = text,
            like = format!("12.5{wanted}")
        ))
    })
}

/// The number that a text begins with, and the rest without the space between.
fn leading_number(text: &str) -> Option<(f64, &str)> {
    let mut split = text.len();
    let mut comma = false;
    for (at, c) in text.char_indices() {
        let rest = text.get(at + c.len_utf8()..).unwrap_or_default();
        let digit_follows = rest.starts_with(|d: char| d.is_ascii_digit());
        let belongs = c.is_ascii_digit()
            || c == '.'
            // One comma, between digits, where no point stands.
            || (c == ',' && at > 0 && !comma && digit_follows && !text.contains('.'))
            || ((c == '-' || c == '+') && (at == 0 || text.get(..at).is_some_and(|before| before.ends_with('e'))))
            // An exponent only when digits follow it, so that no unit is eaten.
            || (c == 'e' && rest.trim_start_matches(['-', '+']).starts_with(|d: char| d.is_ascii_digit()));
        if !belongs {
            split = at;
            break;
        }
        comma |= c == ',';
    }
    let (digits, unit) = text.split_at_checked(split)?;
    Some((digits.replace(',', ".").parse().ok()?, unit.trim()))
}

/// Metres of a number of feet or inches; `5' 6"` has both.
fn feet_and_inches(number: f64, unit: &str) -> Option<f64> {
    // International yard and pound agreement, 1959: one inch is 25.4 mm exactly.
    const FEET: &[&str] = &["feet", "foot", "ft", "Fuß", "'", "′", "’"];
    const INCHES: &[&str] = &["inches", "inch", "in", "Zoll", "\"", "″", "”"];
    let is_inch = |unit: &str| INCHES.contains(&unit.trim());
    if is_inch(unit) {
        return Some(number * 254.0 / 10_000.0);
    }
    let rest = FEET.iter().find_map(|feet| unit.strip_prefix(feet))?.trim();
    if rest.is_empty() {
        return Some(number * 3048.0 / 10_000.0);
    }
    let (inches, unit) = leading_number(rest)?;
    (is_inch(unit) && inches >= 0.0).then_some((number * 3048.0 + inches * 254.0) / 10_000.0)
}

/// Every quantity is a property.
impl<Q: Quantity> PropertyType for Q {
    const SHAPE: Shape = Shape::Number {
        symbol: Q::SYMBOL,
        ascii: Q::ASCII,
        what: Q::NAME,
    };
    fn print(&self) -> String {
        format!("{}{}", self.number(), Q::ASCII)
    }
    fn parse(text: &str, range: Option<(f64, f64)>) -> Result<Self, PropertyError> {
        let number = parse_number(text, Q::ASCII, Q::SYMBOL)?;
        check_number(number, range, Q::SYMBOL)?;
        Ok(Q::of(number))
    }
    fn check(&self, range: Option<(f64, f64)>) -> Result<(), PropertyError> {
        check_number(self.number(), range, Q::SYMBOL)
    }
    fn to_json(&self) -> Value {
        number(self.number())
    }
    fn from_json(value: &Value) -> Result<Self, Misread> {
        f64::from_json(value).map(Q::of)
    }
}

macro_rules! whole_numbers {
    ($($whole:ty, $wanted:literal;)+) => {$(
        impl PropertyType for $whole {
            const SHAPE: Shape = Shape::Count;
            fn print(&self) -> String {
                self.to_string()
            }
            fn parse(text: &str, range: Option<(f64, f64)>) -> Result<Self, PropertyError> {
                let count: Self = text
                    .trim()
                    .parse()
                    .map_err(|_| PropertyError::new(say!("error-no-count", text = text)))?;
                check_number(f64::from(count), range, "")?;
                Ok(count)
            }
            fn check(&self, range: Option<(f64, f64)>) -> Result<(), PropertyError> {
                check_number(f64::from(*self), range, "")
            }
            fn to_json(&self) -> Value {
                (*self).into()
            }
            fn from_json(value: &Value) -> Result<Self, Misread> {
                value
                    .as_u64()
                    .and_then(|count| Self::try_from(count).ok())
                    .ok_or_else(|| Misread::not($wanted, value))
            }
        }
    )+};
}
whole_numbers! {
    u8, "byte";
    u16, "two-bytes";
}

impl PropertyType for bool {
    const SHAPE: Shape = Shape::YesNo;
    fn print(&self) -> String {
        if *self { "yes" } else { "no" }.to_owned()
    }
    fn parse(text: &str, _: Option<(f64, f64)>) -> Result<Self, PropertyError> {
        match text.trim() {
            "yes" | "true" => Ok(true),
            "no" | "false" => Ok(false),
            other => Err(PropertyError::new(say!("error-no-yes-no", text = other))),
        }
    }
    fn check(&self, _: Option<(f64, f64)>) -> Result<(), PropertyError> {
        Ok(())
    }
    fn to_json(&self) -> Value {
        (*self).into()
    }
    fn from_json(value: &Value) -> Result<Self, Misread> {
        FromJson::from_json(value)
    }
}

/// Longest text that a property or a name may hold, in bytes.
pub const LONGEST_TEXT: usize = 400;

impl PropertyType for String {
    const SHAPE: Shape = Shape::Text { example: "" };
    fn print(&self) -> String {
        self.clone()
    }
    fn parse(text: &str, _: Option<(f64, f64)>) -> Result<Self, PropertyError> {
        let made = text.to_owned();
        PropertyType::check(&made, None)?;
        Ok(made)
    }
    fn check(&self, _: Option<(f64, f64)>) -> Result<(), PropertyError> {
        if self.len() > LONGEST_TEXT {
            return Err(PropertyError::new(say!(
                "error-text-too-long",
                most = LONGEST_TEXT
            )));
        }
        Ok(())
    }
}

impl<T: PropertyType> PropertyType for Fact<T> {
    const SHAPE: Shape = T::SHAPE;
    const MAY_BE_ASSUMED: bool = true;
    fn is_guess(&self) -> bool {
        self.is_assumed()
    }
    fn is_not_known(&self) -> bool {
        self.is_unknown()
    }
    fn print(&self) -> String {
        self.marked("?", T::print)
    }
    fn parse(text: &str, range: Option<(f64, f64)>) -> Result<Self, PropertyError> {
        let text = text.trim();
        if text == "?" {
            return Ok(Self::Unknown);
        }
        // What is computed is shown, never written: the number alone is given in its place.
        if T::parse(text, range).is_err()
            && let Some(inner) = text.strip_prefix('(').and_then(|rest| rest.strip_suffix(')'))
        {
            return Err(PropertyError::new(say!("error-computed", inner = inner)));
        }
        match text.strip_prefix('~') {
            Some(rest) => T::parse(rest, range).map(Self::Assumed),
            None => T::parse(text, range).map(Self::Given),
        }
    }
    fn check(&self, range: Option<(f64, f64)>) -> Result<(), PropertyError> {
        match self {
            Self::Given(value) | Self::Assumed(value) | Self::Computed(value) => value.check(range),
            Self::Unknown => Ok(()),
        }
    }
    /// A given value stands bare, an assumed one under `assumed`, an unknown one is null. No job holds a computed one; it
    /// would stand as an assumed one.
    fn to_json(&self) -> Value {
        match self {
            Self::Given(value) => value.to_json(),
            Self::Assumed(value) | Self::Computed(value) => fields([(ASSUMED, value.to_json())]),
            Self::Unknown => Value::Null,
        }
    }
    fn from_json(value: &Value) -> Result<Self, Misread> {
        match value {
            Value::Null => Ok(Self::Unknown),
            Value::Object(object) => T::from_json(assumed(object)?)
                .map(Self::Assumed)
                .map_err(|error| error.within(ASSUMED)),
            bare => T::from_json(bare).map(Self::Given),
        }
    }
}

/// Key of an assumed value in a file.
const ASSUMED: &str = "assumed";

/// What stands under `assumed`, beside which nothing else may stand.
fn assumed(object: &Map<String, Value>) -> Result<&Value, Misread> {
    if let Some(other) = object.keys().find(|key| *key != ASSUMED) {
        return Err(Misread::new(say!("json-beside-assumed", key = other)));
    }
    object
        .get(ASSUMED)
        .ok_or_else(|| Misread::new(say!("json-assumed-empty")))
}

/// One property of a set, whatever its type: see [`PropertyType`].
pub trait Field {
    /// Whether it is a [`Fact`] that is not known.
    fn is_open(&self) -> bool;
    /// Whether it is a [`Fact`] that is assumed.
    fn is_guessed(&self) -> bool;
    /// Its written form.
    fn written(&self) -> String;
    /// Sets it from its written form.
    ///
    /// # Errors
    /// When the text is not of the shape or out of `range`.
    fn read(&mut self, text: &str, range: Option<(f64, f64)>) -> Result<(), PropertyError>;
    /// Holds it against the range.
    ///
    /// # Errors
    /// When it is out of `range` or not finite.
    fn hold(&self, range: Option<(f64, f64)>) -> Result<(), PropertyError>;
    /// As it stands in a file; `None` where it is left out.
    fn json(&self) -> Option<Value>;
    /// Sets it to what stands in a file.
    ///
    /// # Errors
    /// When that is of another form.
    fn read_json(&mut self, value: &Value) -> Result<(), Misread>;
}

impl<T: PropertyType> Field for T {
    fn is_open(&self) -> bool {
        PropertyType::is_not_known(self)
    }
    fn is_guessed(&self) -> bool {
        PropertyType::is_guess(self)
    }
    fn written(&self) -> String {
        PropertyType::print(self)
    }
    fn read(&mut self, text: &str, range: Option<(f64, f64)>) -> Result<(), PropertyError> {
        *self = <T as PropertyType>::parse(text, range)?;
        Ok(())
    }
    fn hold(&self, range: Option<(f64, f64)>) -> Result<(), PropertyError> {
        PropertyType::check(self, range)
    }
    fn json(&self) -> Option<Value> {
        (!PropertyType::is_left_out(self)).then(|| PropertyType::to_json(self))
    }
    fn read_json(&mut self, value: &Value) -> Result<(), Misread> {
        *self = <T as PropertyType>::from_json(value)?;
        Ok(())
    }
}

/// A struct whose fields are properties; implemented by [`crate::properties!`]. All that is done with properties is done
/// once, over the list and the fields behind it, not once for each of the structs: there are many, and the page pays for
/// every function.
pub trait PropertySet {
    /// Its properties, in the order in which they matter.
    fn list() -> &'static [Property]
    where
        Self: Sized;
    /// The same, of a set whose type is not known here.
    fn properties(&self) -> &'static [Property];
    /// The field of the property at this place of the list.
    fn field(&self, at: usize) -> Option<&dyn Field>;
    /// The same, to be changed.
    fn field_mut(&mut self, at: usize) -> Option<&mut dyn Field>;
    /// Fields that a newer version wrote and this one does not know.
    fn extra(&self) -> &Extra;
    /// The same, to be changed.
    fn extra_mut(&mut self) -> &mut Extra;
    /// Itself, its type forgotten.
    fn as_set(&self) -> &dyn PropertySet;
    /// The same, to be changed.
    fn as_set_mut(&mut self) -> &mut dyn PropertySet;

    /// The written form of one property; `None` when there is no such property.
    fn get(&self, name: &str) -> Option<String> {
        let set = self.as_set();
        set.field(place(set, name)?).map(Field::written)
    }
    /// Whether this property is a fact that is assumed; false when there is no such property.
    fn is_assumed(&self, name: &str) -> bool {
        let set = self.as_set();
        place(set, name)
            .and_then(|at| set.field(at))
            .is_some_and(Field::is_guessed)
    }
    /// The names of those that are facts that are not known, in the order of the list.
    fn not_known(&self) -> Vec<&'static str> {
        not_known(self.as_set())
    }
    /// Sets one property from its written form.
    ///
    /// # Errors
    /// When there is no such property or the text does not fit.
    fn set(&mut self, name: &str, text: &str) -> Result<(), PropertyError> {
        set_property(self.as_set_mut(), name, text)
    }
    /// Holds all against their ranges: the name of the first that is out, and why.
    ///
    /// # Errors
    /// The first property that is out of range.
    fn check(&self) -> Result<(), (&'static str, PropertyError)> {
        check_properties(self.as_set())
    }
    /// As it stands in a file.
    fn to_json(&self) -> Value {
        properties_to_json(self.as_set())
    }
    /// Takes over what stands in a file; a property that does not stand there is left as it is.
    ///
    /// # Errors
    /// The first property that cannot be read.
    fn read_json(&mut self, value: &Value) -> Result<(), Misread> {
        read_properties(self.as_set_mut(), value)
    }
}

/// The place of a property in the list of a set.
fn place(set: &dyn PropertySet, name: &str) -> Option<usize> {
    set.properties().iter().position(|property| property.name == name)
}

fn not_known(set: &dyn PropertySet) -> Vec<&'static str> {
    let list = set.properties().iter().enumerate();
    list.filter(|(at, _)| set.field(*at).is_some_and(Field::is_open))
        .map(|(_, property)| property.name)
        .collect()
}

fn set_property(set: &mut dyn PropertySet, name: &str, text: &str) -> Result<(), PropertyError> {
    let list = set.properties();
    let at = place(set, name);
    match (
        at.and_then(|at| list.get(at)),
        at.and_then(|at| set.field_mut(at)),
    ) {
        (Some(property), Some(field)) => field.read(text, property.range),
        _ if list.is_empty() => Err(PropertyError::new(say!("error-no-properties"))),
        _ => {
            let names: Vec<&str> = list.iter().map(|property| property.name).collect();
            Err(PropertyError::new(say!(
                "error-no-such-property",
                names = names.join(", ")
            )))
        }
    }
}

fn check_properties(set: &dyn PropertySet) -> Result<(), (&'static str, PropertyError)> {
    for (at, property) in set.properties().iter().enumerate() {
        if let Some(field) = set.field(at) {
            field
                .hold(property.range)
                .map_err(|error| (property.name, error))?;
        }
    }
    Ok(())
}

fn properties_to_json(set: &dyn PropertySet) -> Value {
    let mut all = crate::json::object(set.extra());
    for (at, property) in set.properties().iter().enumerate() {
        if let Some(value) = set.field(at).and_then(Field::json) {
            all.insert(property.name.to_owned(), value);
        }
    }
    all.into()
}

fn read_properties(set: &mut dyn PropertySet, value: &Value) -> Result<(), Misread> {
    let mut fields = Fields::of(value)?;
    for (at, property) in set.properties().iter().enumerate() {
        if let (Some(value), Some(field)) = (fields.value(property.name), set.field_mut(at)) {
            field
                .read_json(value)
                .map_err(|error| error.within(property.name))?;
        }
    }
    *set.extra_mut() = fields.rest();
    Ok(())
}

/// The error of a word that is none of a choice.
#[must_use]
pub fn not_one_of(text: &str, words: &[&str]) -> PropertyError {
    PropertyError::new(say!("error-not-one-of", text = text, words = words.join(", ")))
}

/// Declares a choice: an enum with a written word and words on screen for each of its values.
#[macro_export]
macro_rules! choice {
    ($(#[$doc:meta])* pub enum $name:ident { $($(#[$vdoc:meta])* $variant:ident = $word:literal, $title:literal;)+ }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema, serde::Serialize))]
        pub enum $name { $($(#[$vdoc])* #[doc = $title] #[cfg_attr(feature = "schema", serde(rename = $word))] $variant,)+ }
        impl $name {
            /// All values, in order.
            pub const ALL: &'static [Self] = &[$(Self::$variant),+];
            /// The written word.
            #[must_use]
            pub fn word(self) -> &'static str { match self { $(Self::$variant => $word),+ } }
            /// The words on screen.
            #[must_use]
            pub fn title(self) -> &'static str { match self { $(Self::$variant => $title),+ } }
            /// The same, in the reader's language.
            #[must_use]
            pub fn said(self) -> ::words::Saying { $crate::said::choice(self.title()) }
            /// The value of a written word.
            #[must_use]
            pub fn from_word(word: &str) -> Option<Self> { match word { $($word => Some(Self::$variant),)+ _ => None } }
        }
        impl $crate::property::PropertyType for $name {
            const SHAPE: $crate::property::Shape = $crate::property::Shape::Choice(&[$(($word, $title)),+]);
            fn print(&self) -> String { self.word().to_owned() }
            fn parse(text: &str, _: Option<(f64, f64)>) -> Result<Self, $crate::property::PropertyError> {
                Self::from_word(text.trim()).ok_or_else(|| {
                    let words: Vec<&str> = Self::ALL.iter().map(|value| value.word()).collect();
                    $crate::property::not_one_of(text, &words)
                })
            }
            fn check(&self, _: Option<(f64, f64)>) -> Result<(), $crate::property::PropertyError> { Ok(()) }
        }
        impl $crate::json::FromJson for $name {
            fn from_json(value: &serde_json::Value) -> Result<Self, $crate::json::Misread> {
                $crate::property::PropertyType::from_json(value)
            }
        }
    };
}

/// Declares a struct whose fields are properties, each with a sentence, a default and, for numbers, a range.
#[macro_export]
macro_rules! properties {
    ($(#[$doc:meta])* pub struct $name:ident {
        $($(#[doc = $fdoc:literal])+ $field:ident as $word:literal: $ty:ty = $default:expr $(, $least:literal to $most:literal)?;)*
    }) => {
        $(#[$doc])*
        #[derive(Clone, Debug, PartialEq)]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema, serde::Serialize), serde(default))]
        pub struct $name {
            $($(#[doc = $fdoc])+ #[cfg_attr(feature = "schema", serde(rename = $word))] pub $field: $ty,)*
            /// Fields that a newer version wrote and this one does not know; kept as they are.
            #[cfg_attr(feature = "schema", serde(flatten))]
            pub extra: $crate::job::Extra,
        }
        impl Default for $name {
            fn default() -> Self { Self { $($field: $default,)* extra: $crate::job::Extra::default() } }
        }
        impl $crate::property::PropertySet for $name {
            fn list() -> &'static [$crate::property::Property] {
                const LIST: &[$crate::property::Property] = &[$($crate::property::Property {
                    name: $word,
                    doc: concat!($($fdoc),+),
                    shape: <$ty as $crate::property::PropertyType>::SHAPE,
                    range: $crate::properties!(@range $($least to $most)?),
                    may_be_assumed: <$ty as $crate::property::PropertyType>::MAY_BE_ASSUMED,
                }),*];
                LIST
            }
            fn properties(&self) -> &'static [$crate::property::Property] { Self::list() }
            fn field(&self, at: usize) -> Option<&dyn $crate::property::Field> {
                let fields: &[&dyn $crate::property::Field] = &[$(&self.$field),*];
                fields.get(at).copied()
            }
            fn field_mut(&mut self, at: usize) -> Option<&mut dyn $crate::property::Field> {
                let fields: Vec<&mut dyn $crate::property::Field> = vec![$(&mut self.$field),*];
                fields.into_iter().nth(at)
            }
            fn extra(&self) -> &$crate::job::Extra { &self.extra }
            fn extra_mut(&mut self) -> &mut $crate::job::Extra { &mut self.extra }
            fn as_set(&self) -> &dyn $crate::property::PropertySet { self }
            fn as_set_mut(&mut self) -> &mut dyn $crate::property::PropertySet { self }
        }
    };
    (@range) => { None };
    (@range $least:literal to $most:literal) => { Some(($least as f64, $most as f64)) };
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Metres, Ohms, Share};

    #[test]
    fn numbers_read_with_prefixes_and_print_back() {
        assert_eq!(parse_number("12.5mohm", "ohm", "Ω"), Ok(0.0125));
        assert_eq!(parse_number("450mm", "m", "m"), Ok(0.45));
        assert_eq!(parse_number("4Ω", "ohm", "Ω"), Ok(4.0));
        assert_eq!(parse_number("80%", "", ""), Ok(0.8));
        assert_eq!(
            Fact::<Metres>::parse("~4.5m", None),
            Ok(Fact::Assumed(Metres(4.5)))
        );
        assert_eq!(Fact::Assumed(Ohms(0.002)).print(), "~0.002ohm");
        assert_eq!(Share::parse("0.5", Some((0.0, 1.0))), Ok(Share(0.5)));
    }

    #[test]
    fn lengths_read_in_feet_and_inches_and_with_a_decimal_comma() {
        // One inch is 25.4 mm, one foot 304.8 mm, exactly (international yard and pound agreement, 1959).
        for (text, metres) in [
            ("6 ft", 1.8288),
            ("6'", 1.8288),
            ("6ft", 1.8288),
            ("18 in", 0.4572),
            ("18\"", 0.4572),
            ("5' 6\"", 1.6764),
            ("5 ft 6 in", 1.6764),
            ("2,5 ft", 0.762),
            ("1,7 m", 1.7),
            ("1,7", 1.7),
            ("170 cm", 1.7),
            ("4 Fuß", 1.2192),
        ] {
            assert_eq!(parse_number(text, "m", "m"), Ok(metres), "{text}");
        }
        assert_eq!(parse_number("12,5 mΩ", "ohm", "Ω"), Ok(0.0125));
        // Feet are a length and nothing else; a second comma or a point beside one is a slip.
        for (text, ascii) in [
            ("6 ft", "A"),
            ("1,000.5", "m"),
            ("1,2,3", "m"),
            ("6 ft 2 m", "m"),
            (",5", "m"),
        ] {
            assert!(parse_number(text, ascii, ascii).is_err(), "{text}");
        }
    }

    #[test]
    fn bad_numbers_say_what_would_do() {
        for text in ["", "x", "1e", "nan", "inf", "4kg", "1e999m", "--3", "µ"] {
            assert!(parse_number(text, "m", "m").is_err(), "{text}");
        }
        assert!(
            Metres::parse("70m", Some((0.0, 50.0))).is_err_and(|e| e.to_string().contains("0 m to 50 m"))
        );
        // The reader's own unit, and never like the bound itself: 50 m are 164.04 ft.
        let feet = ::words::Words::of(::words::Reader {
            lengths: ::words::Lengths::Feet,
            ..::words::Reader::default()
        });
        let error = Metres::parse("50.02m", Some((0.0, 50.0))).expect_err("it is beyond");
        assert_eq!(
            feet.say(&error.said),
            "164.1 ft is out of range: it takes 0 in to 164 ft"
        );
    }
}
