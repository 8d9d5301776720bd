//! Edits, and the entries of the journal.

use super::{Fields, FromJson, Misread, ToJson, choice, fields};
use crate::edit::{Change, Edit};
use crate::history::Entry;
use crate::job::SheetKind;
use crate::property::PropertySet;
use serde_json::Value;
use words::{Saying, say};

fn named(word: &str, inner: Value) -> Value {
    fields([(word, inner)])
}

/// A change of an item, or its going.
fn item(sheet: SheetKind, id: String, to: Option<Value>) -> Value {
    fields([
        ("sheet", sheet.word().into()),
        ("id", id.into()),
        ("to", to.unwrap_or(Value::Null)),
    ])
}

impl ToJson for Change {
    fn to_json(&self) -> Value {
        match self {
            Self::Part { sheet, id, to } => named(
                "part",
                item(*sheet, id.to_string(), to.as_ref().map(|part| part.to_json())),
            ),
            Self::Run { sheet, id, to } => named(
                "run",
                item(*sheet, id.to_string(), to.as_ref().map(|run| run.to_json())),
            ),
            Self::Readings { sheet, to } => named(
                "readings",
                fields([
                    ("sheet", sheet.word().into()),
                    ("to", to.iter().map(PropertySet::to_json).collect()),
                ]),
            ),
            Self::Tunings { sheet, to } => named(
                "tunings",
                fields([
                    ("sheet", sheet.word().into()),
                    ("to", to.iter().map(PropertySet::to_json).collect()),
                ]),
            ),
            Self::Sheet { sheet, there } => named(
                "sheet",
                fields([("sheet", sheet.word().into()), ("there", (*there).into())]),
            ),
            Self::Title(title) => named("title", title.as_str().into()),
            Self::Vehicle(vehicle) => named("vehicle", vehicle.to_json()),
            Self::Settings(settings) => named("settings", settings.to_json()),
            Self::Thread(thread) => named("thread", thread.to_json()),
            Self::Picture { key, to } => named(
                "picture",
                fields([
                    ("key", key.as_str().into()),
                    ("to", to.as_ref().map_or(Value::Null, ToJson::to_json)),
                ]),
            ),
        }
    }
}

impl FromJson for Change {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        let (word, inner) = choice(value, "change")?;
        let read = || {
            Ok(match word {
                "part" => {
                    let mut fields = Fields::of(inner)?;
                    Self::Part {
                        sheet: fields.need("sheet")?,
                        id: fields.need("id")?,
                        to: fields.find::<Option<_>>("to")?.flatten(),
                    }
                }
                "run" => {
                    let mut fields = Fields::of(inner)?;
                    Self::Run {
                        sheet: fields.need("sheet")?,
                        id: fields.need("id")?,
                        to: fields.find::<Option<_>>("to")?.flatten(),
                    }
                }
                "readings" => {
                    let mut fields = Fields::of(inner)?;
                    Self::Readings {
                        sheet: fields.need("sheet")?,
                        to: fields.need("to")?,
                    }
                }
                "tunings" => {
                    let mut fields = Fields::of(inner)?;
                    Self::Tunings {
                        sheet: fields.need("sheet")?,
                        to: fields.need("to")?,
                    }
                }
                "picture" => {
                    let mut fields = Fields::of(inner)?;
                    Self::Picture {
                        key: fields.need("key")?,
                        to: fields.find::<Option<_>>("to")?.flatten(),
                    }
                }
                "sheet" => {
                    let mut fields = Fields::of(inner)?;
                    Self::Sheet {
                        sheet: fields.need("sheet")?,
                        there: fields.need("there")?,
                    }
                }
                "title" => Self::Title(String::from_json(inner)?),
                "vehicle" => Self::Vehicle(FromJson::from_json(inner)?),
                "settings" => Self::Settings(FromJson::from_json(inner)?),
                "thread" => Self::Thread(FromJson::from_json(inner)?),
                other => return Err(Misread::new(say!("json-no-change", word = other))),
            })
        };
        read().map_err(|error: Misread| error.within(word))
    }
}

impl ToJson for Edit {
    fn to_json(&self) -> Value {
        fields([
            ("name", self.name.as_str().into()),
            ("changes", self.changes.iter().map(ToJson::to_json).collect()),
        ])
    }
}

impl FromJson for Edit {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        let mut fields = Fields::of(value)?;
        let name: String = fields.need("name")?;
        Ok(Self::new(name, fields.need("changes")?))
    }
}

impl ToJson for Entry {
    fn to_json(&self) -> Value {
        let (word, edit) = match self {
            Self::Did(edit) => ("did", edit),
            Self::Undid(edit) => ("undid", edit),
            Self::Redid(edit) => ("redid", edit),
        };
        named(word, edit.to_json())
    }
}

impl FromJson for Entry {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        let (word, inner) = choice(value, "entry")?;
        let entry = match word {
            "did" => Self::Did,
            "undid" => Self::Undid,
            "redid" => Self::Redid,
            other => return Err(Misread::new(say!("json-no-entry", word = other))),
        };
        Edit::from_json(inner)
            .map(entry)
            .map_err(|error| error.within(word))
    }
}

impl Entry {
    /// The entry as one line of the journal.
    #[must_use]
    pub fn line(&self) -> String {
        self.to_json().to_string()
    }
    /// Reads a line of the journal.
    ///
    /// # Errors
    /// Where in the line it is wrong, and what is wrong there.
    pub fn from_line(line: &str) -> Result<Self, Saying> {
        let value = crate::file::parse_json(line.as_bytes()).map_err(|error| error.said())?;
        Self::from_json(&value).map_err(|error| error.said())
    }
}
