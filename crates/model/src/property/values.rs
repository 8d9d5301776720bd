//! The types that a value of a property can have: quantities, counts, yes or no, texts, and facts about any of these.

use super::{PropertyError, PropertyType, Shape, check_number, parse_number};
use crate::fact::Fact;
use crate::json::{FromJson, Misread, fields, items::number};
use crate::quantity::Quantity;
use serde_json::{Map, Value};
use words::say;

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
