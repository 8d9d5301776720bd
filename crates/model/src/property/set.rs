//! Sets of properties: all that is done over the list of a struct and the fields behind it.

use super::{Property, PropertyError, PropertyType};
use crate::job::Extra;
use crate::json::{Fields, Misread};
use serde_json::Value;
use words::say;

/// One property of a set, whatever its type: see [`PropertyType`].
pub trait Field {
    /// Whether it is a [`Fact`](crate::Fact) that is not known.
    fn is_open(&self) -> bool;
    /// Whether it is a [`Fact`](crate::Fact) that is assumed.
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
