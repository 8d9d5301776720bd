//! What is kept of a sitting: names and tags, no sentences, so that it stays small and can be read in any language; and how
//! a teacher gets it, as a table of words or as JSON.

use crate::exercise::{Fault, Verdict, tag};
use crate::lesson::{Lesson, Version};
use crate::sitting::{LONGEST_NOTE, MOST_MARKS, Sitting};
use model::json::{Fields, FromJson, Misread, ToJson, object_of};
use serde_json::Value;
use words::{Saying, say};

/// Most records that are read at once.
const MOST_RECORDS: usize = 10_000;
/// Most faults of one record that are read.
const MOST_FAULTS: usize = 1_000;

/// A mark as it is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MarkRecord {
    /// Tag of the part or run.
    pub thing: String,
    /// Name of the reason.
    pub reason: String,
    /// The learner's own words; may be empty.
    pub note: String,
    /// What became of it.
    pub came: Verdict,
}

/// One sitting that was handed in.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Record {
    /// Which lesson, as the one who keeps it calls it.
    pub lesson: String,
    /// The lesson's title at that time.
    pub title: String,
    /// The learner's name; may be empty.
    pub learner: String,
    /// When it was handed in, as the one who keeps it writes it; may be empty.
    pub when: String,
    /// Which try it was, from 1.
    pub try_number: u32,
    /// Points, and how many there were to be had.
    pub points: (u32, u32),
    /// The marks.
    pub marks: Vec<MarkRecord>,
    /// Faults found: the reason, and the tag of the foremost thing.
    pub found: Vec<(String, String)>,
    /// Faults missed, likewise.
    pub missed: Vec<(String, String)>,
}

/// Several records, as a teacher exports them.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Records(pub Vec<Record>);

/// Why kept records cannot be read.
#[derive(Clone, Debug, PartialEq)]
pub struct RecordError(pub Saying);

impl Verdict {
    const ALL: [Self; 4] = [Self::Right, Self::Unasked, Self::OtherReason, Self::Wrong];
    /// The word in a record.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Right => "right",
            Self::Unasked => "unasked",
            Self::OtherReason => "other-reason",
            Self::Wrong => "wrong",
        }
    }
}

fn small(count: usize) -> u32 {
    u32::try_from(count).unwrap_or(u32::MAX)
}

impl Record {
    /// The record of a sitting; nothing before it is handed in.
    #[must_use]
    pub fn of(sitting: &Sitting, lesson: &Lesson, id: &str, when: &str) -> Option<Self> {
        let outcome = sitting.outcome()?;
        let sheet = lesson.sheet(Version::Bad);
        let told = |faults: &[Fault]| -> Vec<(String, String)> {
            let foremost = |fault: &Fault| fault.things.first().map_or("", |it| tag(&sheet, *it)).to_owned();
            faults
                .iter()
                .map(|fault| (fault.reason.clone(), foremost(fault)))
                .collect()
        };
        let (points, of) = outcome.points();
        let marks = sitting.marks().iter().map(|it| MarkRecord {
            thing: tag(&sheet, it.mark.thing).to_owned(),
            reason: it.mark.reason.clone(),
            note: it.note.clone(),
            came: outcome.verdict(&it.mark),
        });
        Some(Self {
            // As long as reading takes it, so that what is kept is read back equal.
            lesson: short(id.to_owned()),
            title: short(lesson.title.clone()),
            learner: sitting.learner().to_owned(),
            when: short(when.to_owned()),
            try_number: sitting.try_number(),
            points: (small(points), small(of)),
            marks: marks.collect(),
            found: told(&outcome.found),
            missed: told(&outcome.missed),
        })
    }
    /// Marks of a kind.
    #[must_use]
    pub fn count(&self, came: Verdict) -> usize {
        self.marks.iter().filter(|mark| mark.came == came).count()
    }
}

fn object<const N: usize>(fields: [(&str, Value); N]) -> Value {
    object_of(&mut fields.into_iter().map(|(key, value)| (key.to_owned(), value))).into()
}

fn pairs(all: &[(String, String)]) -> Value {
    all.iter()
        .map(|(reason, thing)| {
            object([
                ("reason", reason.as_str().into()),
                ("thing", thing.as_str().into()),
            ])
        })
        .collect()
}

/// A text of a record: the storage of a browser can be written by hand, so its length is bounded.
fn short(text: String) -> String {
    let (text, _) = text.split_at(text.floor_char_boundary(LONGEST_NOTE));
    text.to_owned()
}

/// A reason and a thing.
struct Pair(String, String);

impl FromJson for Pair {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        let mut fields = Fields::of(value)?;
        Ok(Self(short(fields.need("reason")?), short(fields.need("thing")?)))
    }
}

impl ToJson for MarkRecord {
    fn to_json(&self) -> Value {
        object([
            ("thing", self.thing.as_str().into()),
            ("reason", self.reason.as_str().into()),
            ("note", self.note.as_str().into()),
            ("came", self.came.word().into()),
        ])
    }
}

impl FromJson for MarkRecord {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        let mut fields = Fields::of(value)?;
        let came: String = fields.need("came")?;
        let came = Verdict::ALL
            .into_iter()
            .find(|it| it.word() == came)
            .ok_or_else(|| Misread::new(say!("exercise-results-came")).within("came"))?;
        Ok(Self {
            thing: short(fields.need("thing")?),
            reason: short(fields.need("reason")?),
            note: short(fields.find("note")?.unwrap_or_default()),
            came,
        })
    }
}

impl ToJson for Record {
    fn to_json(&self) -> Value {
        object([
            ("lesson", self.lesson.as_str().into()),
            ("title", self.title.as_str().into()),
            ("learner", self.learner.as_str().into()),
            ("when", self.when.as_str().into()),
            ("try", self.try_number.into()),
            ("points", self.points.0.into()),
            ("of", self.points.1.into()),
            ("marks", self.marks.iter().map(ToJson::to_json).collect()),
            ("found", pairs(&self.found)),
            ("missed", pairs(&self.missed)),
        ])
    }
}

/// A number of a record: none of them is ever large.
fn count(fields: &mut Fields<'_>, key: &'static str) -> Result<u32, Misread> {
    let number: i32 = fields.need(key)?;
    u32::try_from(number).map_err(|_| Misread::new(say!("exercise-results-count")).within(key))
}

impl FromJson for Record {
    fn from_json(value: &Value) -> Result<Self, Misread> {
        let mut fields = Fields::of(value)?;
        let mut marks: Vec<MarkRecord> = fields.need("marks")?;
        marks.truncate(MOST_MARKS);
        let mut faults = |key| {
            let all: Vec<Pair> = fields.need(key)?;
            let all = all.into_iter().take(MOST_FAULTS);
            Ok::<_, Misread>(all.map(|pair| (pair.0, pair.1)).collect())
        };
        let (found, missed) = (faults("found")?, faults("missed")?);
        Ok(Self {
            lesson: short(fields.need("lesson")?),
            title: short(fields.find("title")?.unwrap_or_default()),
            learner: short(fields.find("learner")?.unwrap_or_default()),
            when: short(fields.find("when")?.unwrap_or_default()),
            try_number: count(&mut fields, "try")?,
            points: (count(&mut fields, "points")?, count(&mut fields, "of")?),
            marks,
            found,
            missed,
        })
    }
}

impl Records {
    /// The records as JSON.
    #[must_use]
    pub fn json(&self) -> String {
        let all: Value = self.0.iter().map(ToJson::to_json).collect();
        let mut text = serde_json::to_string_pretty(&all).unwrap_or_default();
        text.push('\n');
        text
    }
    /// Reads what [`Records::json`] wrote.
    ///
    /// # Errors
    /// Where it is not that, and what stands there.
    pub fn from_json(text: &str) -> Result<Self, RecordError> {
        let value: Value = serde_json::from_str(text).map_err(|error| {
            RecordError(if error.is_eof() {
                say!("json-cut")
            } else {
                say!("json-syntax")
            })
        })?;
        let mut all: Vec<Record> = Vec::from_json(&value).map_err(|error| RecordError(error.said()))?;
        all.truncate(MOST_RECORDS);
        Ok(Self(all))
    }
}
