//! From bytes to a JSON value, with the limits that a plain parser does not hold: depth, number of values, and no key
//! twice in one object, since two readers could take different ones of them.

use super::FileError;
use crate::limits;
use serde::de::{DeserializeSeed, Error, MapAccess, SeqAccess, Visitor};
use serde_json::{Map, Number, Value};
use std::cell::RefCell;
use std::fmt;
use words::{Saying, say};

/// Most values in one file: bounds the memory that a small file can make the reader take.
const MOST_VALUES: usize = 4_000_000;

/// Reads bytes as JSON.
pub(crate) fn parse(bytes: &[u8]) -> Result<Value, FileError> {
    if bytes.len() > limits::LARGEST_FILE {
        return Err(FileError::TooLarge { bytes: bytes.len() });
    }
    let text = std::str::from_utf8(bytes).map_err(|e| FileError::NotText {
        byte: e.valid_up_to(),
    })?;
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let state = RefCell::new(State::default());
    let mut deserializer = serde_json::Deserializer::from_str(text);
    let read = Seed {
        state: &state,
        depth: 0,
    }
    .deserialize(&mut deserializer)
    .and_then(|value| deserializer.end().map(|()| value));
    read.map_err(|error| {
        let state = state.take();
        match state.misbuilt {
            Some(message) => FileError::Misbuilt {
                place: state.place.join("."),
                message,
            },
            None => {
                let message = if error.is_eof() {
                    say!("json-cut")
                } else {
                    say!("json-syntax")
                };
                FileError::NotJson {
                    line: error.line(),
                    column: error.column(),
                    message,
                }
            }
        }
    })
}

#[derive(Default)]
struct State {
    values: usize,
    place: Vec<String>,
    misbuilt: Option<Saying>,
}

#[derive(Clone, Copy)]
struct Seed<'s> {
    state: &'s RefCell<State>,
    depth: usize,
}

impl Seed<'_> {
    fn misbuilt<E: Error>(self, message: Saying) -> E {
        self.state.borrow_mut().misbuilt = Some(message);
        E::custom("misbuilt")
    }
    /// One level further in, at this key or index.
    fn enter<E: Error>(self, at: String) -> Result<Self, E> {
        self.state.borrow_mut().place.push(at);
        if self.depth >= limits::DEEPEST {
            return Err(self.misbuilt(say!("json-deep", most = limits::DEEPEST)));
        }
        Ok(Self {
            depth: self.depth + 1,
            ..self
        })
    }
    /// Back out of it.
    fn leave(self) {
        self.state.borrow_mut().place.pop();
    }
}

impl<'de> DeserializeSeed<'de> for Seed<'_> {
    type Value = Value;
    fn deserialize<D: serde::Deserializer<'de>>(self, deserializer: D) -> Result<Value, D::Error> {
        let count = {
            let mut state = self.state.borrow_mut();
            state.values += 1;
            state.values
        };
        if count > MOST_VALUES {
            return Err(self.misbuilt(say!("json-many", most = MOST_VALUES)));
        }
        deserializer.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Seed<'_> {
    type Value = Value;
    fn expecting(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("JSON")
    }
    fn visit_bool<E>(self, it: bool) -> Result<Value, E> {
        Ok(it.into())
    }
    fn visit_i64<E>(self, it: i64) -> Result<Value, E> {
        Ok(it.into())
    }
    fn visit_u64<E>(self, it: u64) -> Result<Value, E> {
        Ok(it.into())
    }
    fn visit_f64<E>(self, it: f64) -> Result<Value, E> {
        Ok(Number::from_f64(it).map_or(Value::Null, Value::Number))
    }
    fn visit_str<E>(self, it: &str) -> Result<Value, E> {
        Ok(it.into())
    }
    fn visit_string<E>(self, it: String) -> Result<Value, E> {
        Ok(it.into())
    }
    fn visit_unit<E>(self) -> Result<Value, E> {
        Ok(Value::Null)
    }
    fn visit_seq<A: SeqAccess<'de>>(self, mut seq: A) -> Result<Value, A::Error> {
        let mut all = Vec::new();
        loop {
            let inner = self.enter(all.len().to_string())?;
            match seq.next_element_seed(inner)? {
                Some(value) => all.push(value),
                None => break,
            }
            self.leave();
        }
        self.leave();
        Ok(Value::Array(all))
    }
    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Value, A::Error> {
        let mut all = Map::new();
        while let Some(key) = map.next_key::<String>()? {
            let inner = self.enter(key.chars().take(60).collect())?;
            if all.contains_key(&key) {
                return Err(self.misbuilt(say!("json-key-twice")));
            }
            let value = map.next_value_seed(inner)?;
            all.insert(key, value);
            self.leave();
        }
        Ok(Value::Object(all))
    }
}
