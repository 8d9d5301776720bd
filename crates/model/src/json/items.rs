//! The parts, runs, sheets and settings of a job.

use super::{Fields, FromJson, Misread, ToJson, choice, fields, object, object_of, text};
use crate::body::{BodyShape, OwnPassage, OwnPlace};
use crate::conductor::FittedBy;
use crate::handling::Handling;
use crate::id::{PartId, RunId, TerminalName, TerminalRef};
use crate::job::{
    BoardPoint, Conditions, End, Ending, Job, Part, Run, Settings, Sheet, SheetKind, Turn, VehicleInfo, Wire,
    named,
};
use crate::kinds::PartKind;
use crate::laying::Laying;
use crate::mounting::Mounting;
use crate::picture::{Picture, PictureFacts};
use crate::property::PropertySet;
use crate::readings::Reading;
use crate::thread::{Complaint, IntakeNote, Offer, Rates, Thread};
use crate::tuning::Tuning;
use serde_json::{Map, Number, Value};
use words::say;

impl FromJson for PartId {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        text(value)?.parse().map_err(Misread::new)
    }
}

impl FromJson for RunId {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        text(value)?.parse().map_err(Misread::new)
    }
}

impl ToJson for BoardPoint {
    fn to_json(&self) -> Value {
        fields([("x", self.x.into()), ("y", self.y.into())])
    }
}

impl FromJson for BoardPoint {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        let mut fields = Fields::of(value)?;
        Ok(Self {
            x: fields.need("x")?,
            y: fields.need("y")?,
        })
    }
}

impl ToJson for TerminalRef {
    fn to_json(&self) -> Value {
        fields([
            ("part", self.part.to_string().into()),
            ("terminal", self.terminal.as_str().into()),
        ])
    }
}

impl FromJson for TerminalRef {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        let mut fields = Fields::of(value)?;
        Ok(Self {
            part: fields.need("part")?,
            terminal: TerminalName::new(fields.need::<String>("terminal")?),
        })
    }
}

impl ToJson for End {
    fn to_json(&self) -> Value {
        let (word, inner) = match self {
            Self::On(terminal) => ("on", terminal.to_json()),
            Self::Loose(point) => ("loose", point.to_json()),
        };
        fields([(word, inner)])
    }
}

impl FromJson for End {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        const WANTED: &str = "end";
        match choice(value, WANTED)? {
            ("on", inner) => TerminalRef::from_json(inner)
                .map(Self::On)
                .map_err(|error| error.within("on")),
            ("loose", inner) => BoardPoint::from_json(inner)
                .map(Self::Loose)
                .map_err(|error| error.within("loose")),
            (other, _) => Err(Misread::not_that(WANTED, format!("`{other}`"))),
        }
    }
}

impl ToJson for PartKind {
    fn to_json(&self) -> Value {
        fields([(self.word(), self.set_of().to_json())])
    }
}

impl FromJson for PartKind {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        let (word, inner) = choice(value, "kind")?;
        let mut kind = Self::from_word(word)
            .ok_or_else(|| Misread::new(say!("json-no-kind", word = word, words = Self::WORDS.join(", "))))?;
        kind.set_of_mut()
            .read_json(inner)
            .map_err(|error| error.within(word))?;
        Ok(kind)
    }
}

/// Puts a text into an object unless it is empty.
fn unless_empty(object: &mut Map<String, Value>, key: &str, text: &str) {
    if !text.is_empty() {
        object.insert(key.to_owned(), text.into());
    }
}

/// Puts a set of properties into an object unless it says nothing beyond its defaults.
fn unless_default<P: PropertySet + PartialEq>(
    object: &mut Map<String, Value>,
    key: &str,
    set: &P,
    plain: &P,
) {
    if set != plain {
        object.insert(key.to_owned(), set.to_json());
    }
}

impl ToJson for Part {
    fn to_json(&self) -> Value {
        let mut all = object(&self.extra);
        all.insert("tag".to_owned(), self.tag.as_str().into());
        unless_empty(&mut all, "label", &self.label);
        all.insert("is".to_owned(), self.is.to_json());
        all.insert("fitted_by".to_owned(), self.fitted_by.word().into());
        if let Some(at) = self.at {
            all.insert("at".to_owned(), at.to_json());
        }
        all.insert("turn".to_owned(), self.turn.word().into());
        if let Some(place) = &self.place {
            all.insert("place".to_owned(), place.as_str().into());
        }
        unless_default(&mut all, "mounting", &self.mounting, &Mounting::default());
        unless_default(&mut all, "handling", &self.handling, &Handling::default());
        unless_empty(&mut all, "note", &self.note);
        all.into()
    }
}

impl FromJson for Part {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        let mut fields = Fields::of(value)?;
        Ok(Self {
            tag: fields.need("tag")?,
            label: fields.find("label")?.unwrap_or_default(),
            is: fields.need("is")?,
            fitted_by: fields.find("fitted_by")?.unwrap_or(FittedBy::Us),
            at: fields.find::<Option<_>>("at")?.flatten(),
            turn: fields.find("turn")?.unwrap_or(Turn::None),
            place: fields.find::<Option<_>>("place")?.flatten().and_then(named),
            mounting: fields.find("mounting")?.unwrap_or_default(),
            handling: fields.find("handling")?.unwrap_or_default(),
            note: fields.find("note")?.unwrap_or_default(),
            extra: fields.rest(),
        })
    }
}

impl ToJson for Run {
    fn to_json(&self) -> Value {
        let mut all = object(&self.extra);
        all.insert("tag".to_owned(), self.tag.as_str().into());
        unless_empty(&mut all, "label", &self.label);
        all.insert("from".to_owned(), self.from.to_json());
        all.insert("to".to_owned(), self.to.to_json());
        all.insert("wire".to_owned(), self.wire.to_json());
        all.insert("from_ending".to_owned(), self.from_ending.to_json());
        all.insert("to_ending".to_owned(), self.to_ending.to_json());
        all.insert("fitted_by".to_owned(), self.fitted_by.word().into());
        if !self.route.is_empty() {
            all.insert(
                "route".to_owned(),
                self.route.iter().map(String::as_str).collect(),
            );
        }
        unless_default(&mut all, "laying", &self.laying, &Laying::default());
        unless_default(&mut all, "handling", &self.handling, &Handling::default());
        if !self.bends.is_empty() {
            all.insert(
                "bends".to_owned(),
                self.bends.iter().map(ToJson::to_json).collect(),
            );
        }
        unless_empty(&mut all, "note", &self.note);
        all.into()
    }
}

impl FromJson for Run {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        let mut fields = Fields::of(value)?;
        let route: Vec<String> = fields.find("route")?.unwrap_or_default();
        Ok(Self {
            tag: fields.need("tag")?,
            label: fields.find("label")?.unwrap_or_default(),
            from: fields.need("from")?,
            to: fields.need("to")?,
            wire: fields.find("wire")?.unwrap_or_default(),
            from_ending: fields.find("from_ending")?.unwrap_or_default(),
            to_ending: fields.find("to_ending")?.unwrap_or_default(),
            fitted_by: fields.find("fitted_by")?.unwrap_or(FittedBy::Us),
            route: route.into_iter().filter_map(named).collect(),
            laying: fields.find("laying")?.unwrap_or_default(),
            handling: fields.find("handling")?.unwrap_or_default(),
            bends: fields.find("bends")?.unwrap_or_default(),
            note: fields.find("note")?.unwrap_or_default(),
            extra: fields.rest(),
        })
    }
}

impl ToJson for Settings {
    fn to_json(&self) -> Value {
        let mut all = object(&self.extra);
        all.insert("conditions".to_owned(), self.conditions.to_json());
        let limits = object_of(
            &mut self
                .limits
                .iter()
                .map(|(name, limit)| (name.clone(), number(*limit))),
        );
        all.insert("limits".to_owned(), limits.into());
        all.insert(
            "allowed".to_owned(),
            self.allowed.iter().map(String::as_str).collect(),
        );
        if !self.body.is_untold() {
            all.insert("body".to_owned(), self.body.to_json());
        }
        all.into()
    }
}

impl FromJson for Settings {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        let mut fields = Fields::of(value)?;
        let conditions = fields.find("conditions")?.unwrap_or_default();
        let mut limits = ordered::OrderedMap::new();
        if let Some(value) = fields.value("limits") {
            let Value::Object(all) = value else {
                return Err(Misread::not("object", value).within("limits"));
            };
            for (name, value) in all {
                let limit = f64::from_json(value).map_err(|error| error.within(name).within("limits"))?;
                limits.insert(name.clone(), limit);
            }
        }
        let allowed: Vec<String> = fields.find("allowed")?.unwrap_or_default();
        Ok(Self {
            conditions,
            limits,
            allowed: allowed.into_iter().collect(),
            body: fields.find("body")?.unwrap_or_default(),
            extra: fields.rest(),
        })
    }
}

/// A number; null when it is not finite, which the door lets nobody bring in.
pub(crate) fn number(number: f64) -> Value {
    Number::from_f64(number).map_or(Value::Null, Value::Number)
}

impl ToJson for Sheet {
    fn to_json(&self) -> Value {
        let mut all = object(&self.extra);
        let parts = object_of(
            &mut self
                .parts
                .iter()
                .map(|(id, part)| (id.to_string(), part.to_json())),
        );
        let runs = object_of(&mut self.runs.iter().map(|(id, run)| (id.to_string(), run.to_json())));
        all.insert("parts".to_owned(), parts.into());
        all.insert("runs".to_owned(), runs.into());
        if !self.readings.is_empty() {
            all.insert(
                "readings".to_owned(),
                self.readings.iter().map(PropertySet::to_json).collect(),
            );
        }
        if !self.tunings.is_empty() {
            all.insert(
                "tunings".to_owned(),
                self.tunings.iter().map(PropertySet::to_json).collect(),
            );
        }
        all.into()
    }
}

/// An object whose keys `key` reads. One reader for all: each kind of item would bring the page one of its own.
fn each(
    fields: &mut Fields<'_>,
    name: &'static str,
    read: &mut dyn FnMut(&str, &Value) -> Result<(), Misread>,
) -> Result<(), Misread> {
    match fields.value(name) {
        Some(Value::Object(all)) => all
            .iter()
            .try_for_each(|(key, value)| read(key, value).map_err(|error| error.within(key).within(name))),
        Some(other) => Err(Misread::not("object", other).within(name)),
        None => Ok(()),
    }
}

impl FromJson for Sheet {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        let mut fields = Fields::of(value)?;
        let mut sheet = Self::default();
        each(&mut fields, "parts", &mut |key, value| {
            sheet
                .parts
                .insert(key.parse().map_err(Misread::new)?, Part::from_json(value)?);
            Ok(())
        })?;
        each(&mut fields, "runs", &mut |key, value| {
            sheet
                .runs
                .insert(key.parse().map_err(Misread::new)?, Run::from_json(value)?);
            Ok(())
        })?;
        sheet.readings = fields.find("readings")?.unwrap_or_default();
        sheet.tunings = fields.find("tunings")?.unwrap_or_default();
        sheet.extra = fields.rest();
        Ok(sheet)
    }
}

/// Whole or not at all, and held against nothing: see [`file::read_own`](crate::file::read_own).
impl FromJson for Job {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        let mut fields = Fields::of(value)?;
        let mut job = Self {
            title: fields.find("title")?.unwrap_or_default(),
            vehicle: fields.find("vehicle")?.unwrap_or_default(),
            settings: fields.find("settings")?.unwrap_or_default(),
            ..Self::default()
        };
        each(&mut fields, "sheets", &mut |key, value| {
            let kind = SheetKind::from_word(key).ok_or_else(|| {
                let words: Vec<&str> = SheetKind::ALL.iter().map(|kind| kind.word()).collect();
                Misread::new(say!("file-no-sheet", words = words.join(", ")))
            })?;
            job.sheets.insert(kind, Sheet::from_json(value)?);
            Ok(())
        })?;
        job.thread = fields.find("thread")?.unwrap_or_default();
        each(&mut fields, "pictures", &mut |key, value| {
            job.pictures.insert(key.to_owned(), Picture::from_json(value)?);
            Ok(())
        })?;
        job.extra = fields.rest();
        Ok(job)
    }
}

impl ToJson for Job {
    fn to_json(&self) -> Value {
        let mut all = object(&self.extra);
        all.insert("title".to_owned(), self.title.as_str().into());
        all.insert("vehicle".to_owned(), self.vehicle.to_json());
        let sheets = object_of(
            &mut self
                .sheets
                .iter()
                .map(|(kind, sheet)| (kind.word().to_owned(), sheet.to_json())),
        );
        all.insert("sheets".to_owned(), sheets.into());
        all.insert("settings".to_owned(), self.settings.to_json());
        if self.thread != Thread::default() {
            all.insert("thread".to_owned(), self.thread.to_json());
        }
        if !self.pictures.is_empty() {
            let pictures = object_of(
                &mut self
                    .pictures
                    .iter()
                    .map(|(key, picture)| (key.clone(), picture.to_json())),
            );
            all.insert("pictures".to_owned(), pictures.into());
        }
        all.into()
    }
}

macro_rules! by_properties {
    ($($name:ident),+) => {$(
        impl FromJson for $name {
            fn from_json(value: &Value) -> Result<Self, Misread> {
                let mut read = Self::default();
                read.read_json(value)?;
                Ok(read)
            }
        }
    )+};
}
by_properties!(
    VehicleInfo,
    Conditions,
    Wire,
    Ending,
    Reading,
    BodyShape,
    OwnPlace,
    OwnPassage,
    Mounting,
    Handling,
    Laying,
    Tuning,
    Complaint,
    IntakeNote,
    Offer,
    Rates,
    PictureFacts
);
