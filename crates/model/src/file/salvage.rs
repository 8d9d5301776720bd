//! From a JSON value to a job, item by item: one wrong value costs itself, not the part around it, nor the file.

use super::check::{Checked, Wrong, ends_on_nothing};
use super::{FileError, Problem, UNREAD};
use crate::id::{PartId, RunId};
use crate::job::{Job, Part, Run, Sheet, SheetKind};
use crate::json::{FromJson, Misread, Step};
use crate::limits;
use crate::picture::Picture;
use crate::thread::Thread;
use ordered::{OrderedMap, OrderedSet};
use serde_json::{Map, Value};
use words::{Saying, say};

/// Tries to read an item; else what is wrong, and the place of what must be taken out for that.
type Attempt<'a> = dyn FnMut(&Value) -> Result<(), (Wrong, Vec<String>)> + 'a;

/// Collects what had to be left out.
#[derive(Default)]
struct Salvage {
    problems: Vec<Problem>,
    unread: Map<String, Value>,
    /// Number of the last tag that was made up.
    made_up: u32,
}

impl Salvage {
    /// Leaves a value out: says why, and keeps it.
    fn leave_out(&mut self, told: String, kept: String, message: Saying, raw: Value) {
        self.keep(told, kept, message, raw);
    }

    /// Does so, and returns the name under which it is kept.
    fn keep(&mut self, told: String, kept: String, message: Saying, raw: Value) -> String {
        self.problems.push(Problem {
            place: told,
            message,
            left_out: true,
        });
        let mut key = kept.clone();
        let mut count = 1_u32;
        // What an earlier opening kept from the same place is not overwritten.
        while self.unread.contains_key(&key) {
            count += 1;
            key = format!("{kept} ({count})");
        }
        self.unread.insert(key.clone(), raw);
        key
    }

    /// Reads one item; values in it that are wrong are left out when it can do without them, else the item is,
    /// and the name under which it is kept is the error.
    fn item<T: FromJson + Checked>(&mut self, place: &str, raw: Value) -> Result<T, String> {
        let mut read = None;
        self.settle(place, raw, &mut |value| {
            let item = T::from_json(value).map_err(reach)?;
            if let Some(wrong) = item.wrong() {
                let reach = wrong.0.clone();
                return Err((wrong, reach));
            }
            read = Some(item);
            Ok(())
        })?;
        read.ok_or_else(|| place.to_owned())
    }

    /// The same for an item of any type, which `attempt` reads, keeps when it is good, or tells what to take out.
    fn settle(&mut self, place: &str, raw: Value, attempt: &mut Attempt<'_>) -> Result<(), String> {
        let mut value = raw;
        // Each round takes one value out; an item has no more than this many that it could do without.
        let mut taken: Vec<(Vec<String>, Wrong, Value)> = Vec::new();
        for _ in 0..200 {
            let (wrong, reach) = match attempt(&value) {
                Ok(()) => {
                    for (reach, (told, message), raw) in taken {
                        self.leave_out(join(place, &told), join(place, &reach), message, raw);
                    }
                    return Ok(());
                }
                Err(wrong) => wrong,
            };
            // What stands around a value that was taken out cannot do without it: it goes as a whole, for the first reason.
            let mut wrong = wrong;
            while let Some(at) = taken.iter().rposition(|(inner, ..)| inner.starts_with(&reach)) {
                let (inner, first, raw) = taken.remove(at);
                put_back(&mut value, &inner, raw);
                wrong = first;
            }
            match take(&mut value, &reach) {
                Some(raw) => taken.push((reach, wrong, raw)),
                None => {
                    taken.insert(0, (Vec::new(), wrong, Value::Null));
                    break;
                }
            }
        }
        // The item cannot do without: everything goes back, and what was wrong is told.
        let first = taken.first().map(|(_, wrong, _)| wrong.clone());
        for (reach, _, raw) in taken.into_iter().rev() {
            put_back(&mut value, &reach, raw);
        }
        let (told, message) = first.unwrap_or_else(|| (Vec::new(), say!("file-unreadable")));
        Err(self.keep(join(place, &told), place.to_owned(), message, value))
    }
}

impl Salvage {
    /// Gives an item that could not be read its tag back, which was put aside for it.
    fn restore_tag(&mut self, kept: &str, aside: Option<Value>) {
        let item = self.unread.get_mut(kept).and_then(Value::as_object_mut);
        if let (Some(item), Some(tag)) = (item, aside) {
            item.insert("tag".to_owned(), tag);
        }
    }
}

/// What is wrong in an item, and how much must be taken out for that.
fn reach(error: Misread) -> (Wrong, Vec<String>) {
    let mut told = Vec::new();
    let mut reach = Vec::new();
    let mut whole = false;
    for step in error.place() {
        // A list goes as a whole, since taking one out would move the others; an assumption goes with its mark.
        whole = whole || matches!(step, Step::Index(_)) || matches!(step, Step::Key(key) if key == "assumed");
        if !whole {
            reach.push(step.to_string());
        }
        told.push(step.to_string());
    }
    ((told, error.message), reach)
}

fn join(place: &str, inner: &[String]) -> String {
    let mut out = place.to_owned();
    for step in inner {
        if !out.is_empty() {
            out.push('.');
        }
        out.push_str(step);
    }
    out
}

/// Takes the value at a place out of its object.
fn take(value: &mut Value, place: &[String]) -> Option<Value> {
    let (last, way) = place.split_last()?;
    let mut at = value;
    for step in way {
        at = at.as_object_mut()?.get_mut(step)?;
    }
    at.as_object_mut()?.remove(last)
}

fn put_back(value: &mut Value, place: &[String], raw: Value) {
    let Some((last, way)) = place.split_last() else {
        return;
    };
    let mut at = value;
    for step in way {
        match at.as_object_mut().and_then(|object| object.get_mut(step)) {
            Some(inner) => at = inner,
            None => return,
        }
    }
    if let Some(object) = at.as_object_mut() {
        object.entry(last.clone()).or_insert(raw);
    }
}

/// Reads the top of a file, from which format and version are taken already.
pub(super) fn job(mut top: Map<String, Value>) -> Result<(Job, Vec<Problem>), FileError> {
    let mut salvage = Salvage::default();
    let mut job = Job::default();
    let mut notes = Vec::new();
    match top.remove(UNREAD) {
        Some(Value::Object(kept)) => {
            notes.push(Problem {
                place: UNREAD.to_owned(),
                message: say!("file-keeps", count = kept.len()),
                left_out: false,
            });
            salvage.unread = kept;
        }
        Some(other) => {
            salvage.unread.insert(UNREAD.to_owned(), other);
        }
        None => {}
    }
    match top.remove("title") {
        Some(Value::String(title)) => match limits::check_length(&title, limits::LONGEST_LABEL) {
            Ok(()) => job.title = title,
            Err(why) => salvage.leave_out("title".to_owned(), "title".to_owned(), why, title.into()),
        },
        Some(other) => {
            let message = say!("file-not-a", of = "text");
            salvage.leave_out("title".to_owned(), "title".to_owned(), message, other);
        }
        None => {}
    }
    if let Some(raw) = top.remove("vehicle") {
        job.vehicle = salvage.item("vehicle", raw).unwrap_or_default();
    }
    if let Some(raw) = top.remove("settings") {
        job.settings = salvage.item("settings", raw).unwrap_or_default();
    }
    if let Some(raw) = top.remove("thread") {
        job.thread = thread(&mut salvage, raw)?;
    }
    if let Some(raw) = top.remove("pictures") {
        job.pictures = pictures(&mut salvage, raw)?;
    }
    match top.remove("sheets") {
        Some(Value::Object(sheets)) => {
            for (key, raw) in sheets {
                let place = format!("sheets.{key}");
                match (SheetKind::from_word(&key), raw) {
                    (Some(kind), Value::Object(raw)) => {
                        let sheet = sheet(&mut salvage, &place, raw)?;
                        ends_on_nothing(&place, &sheet, &mut notes);
                        job.sheets.insert(kind, sheet);
                    }
                    (Some(_), raw) => {
                        salvage.leave_out(place.clone(), place, say!("file-not-a", of = "object"), raw)
                    }
                    (None, raw) => {
                        let words: Vec<&str> = SheetKind::ALL.iter().map(|kind| kind.word()).collect();
                        let message = say!("file-no-sheet", words = words.join(", "));
                        salvage.leave_out(place.clone(), place, message, raw);
                    }
                }
            }
        }
        Some(other) => {
            salvage.leave_out(
                "sheets".to_owned(),
                "sheets".to_owned(),
                say!("file-not-a", of = "object"),
                other,
            );
        }
        None => {}
    }
    job.extra = top.into_iter().collect();
    if !salvage.unread.is_empty() {
        job.extra.insert(UNREAD.to_owned(), Value::Object(salvage.unread));
    }
    salvage.problems.append(&mut notes);
    Ok((job, salvage.problems))
}

fn sheet(salvage: &mut Salvage, place: &str, mut raw: Map<String, Value>) -> Result<Sheet, FileError> {
    let mut sheet = Sheet::default();
    let mut tags = OrderedSet::new();
    let mut parts = Vec::new();
    for (key, tag, raw) in items(salvage, place, "parts", &mut raw, limits::MOST_PARTS)? {
        let place = format!("{place}.parts.{key}");
        let id = match key.parse::<PartId>() {
            Ok(id) => id,
            Err(why) => {
                salvage.leave_out(place.clone(), place, why, raw);
                continue;
            }
        };
        match salvage.item::<Part>(&place, raw) {
            Ok(mut part) => {
                let letter = part.is.letter();
                retag(salvage, &place, &mut part.tag, tag, letter, &mut tags);
                parts.push((id, part));
            }
            Err(kept) => salvage.restore_tag(&kept, tag),
        }
    }
    let mut runs = Vec::new();
    for (key, tag, raw) in items(salvage, place, "runs", &mut raw, limits::MOST_RUNS)? {
        let place = format!("{place}.runs.{key}");
        let id = match key.parse::<RunId>() {
            Ok(id) => id,
            Err(why) => {
                salvage.leave_out(place.clone(), place, why, raw);
                continue;
            }
        };
        match salvage.item::<Run>(&place, raw) {
            Ok(mut run) => {
                retag(salvage, &place, &mut run.tag, tag, "W", &mut tags);
                runs.push((id, run));
            }
            Err(kept) => salvage.restore_tag(&kept, tag),
        }
    }
    sheet.readings = lines(salvage, place, "readings", &mut raw, limits::MOST_READINGS)?;
    sheet.tunings = lines(salvage, place, "tunings", &mut raw, limits::MOST_TUNINGS)?;
    // A file has them in the order of their names, p1 and p10 before p2.
    sheet.parts = parts.into_iter().collect();
    sheet.runs = runs.into_iter().collect();
    sheet.extra = raw.into_iter().collect();
    Ok(sheet)
}

/// A list of lines, each read by itself.
fn lines<T: FromJson + Checked>(
    salvage: &mut Salvage,
    place: &str,
    key: &str,
    from: &mut Map<String, Value>,
    most: usize,
) -> Result<Vec<T>, FileError> {
    let inner = format!("{place}.{key}");
    let mut out = Vec::new();
    match from.remove(key) {
        Some(Value::Array(all)) if all.len() > most => {
            return Err(FileError::Misbuilt {
                place: inner,
                message: say!("file-too-many", of = "them", count = all.len(), most = most),
            });
        }
        Some(Value::Array(all)) => {
            for (number, raw) in all.into_iter().enumerate() {
                if let Ok(line) = salvage.item(&format!("{inner}.{number}"), raw) {
                    out.push(line);
                }
            }
        }
        Some(other) => salvage.leave_out(inner.clone(), inner, say!("file-not-a", of = "list"), other),
        None => {}
    }
    Ok(out)
}

fn thread(salvage: &mut Salvage, raw: Value) -> Result<Thread, FileError> {
    const PLACE: &str = "thread";
    let mut thread = Thread::default();
    let Value::Object(mut raw) = raw else {
        salvage.leave_out(
            PLACE.to_owned(),
            PLACE.to_owned(),
            say!("file-not-a", of = "object"),
            raw,
        );
        return Ok(thread);
    };
    thread.complaints = lines(salvage, PLACE, "complaints", &mut raw, limits::MOST_LINES)?;
    thread.intake = lines(salvage, PLACE, "intake", &mut raw, limits::MOST_LINES)?;
    thread.offers = lines(salvage, PLACE, "offers", &mut raw, limits::MOST_LINES)?;
    if let Some(rates) = raw.remove("rates") {
        thread.rates = salvage.item("thread.rates", rates).unwrap_or_default();
    }
    if let Some(done) = raw.remove("done") {
        let inner = "thread.done".to_owned();
        match Vec::<String>::from_json(&done) {
            Ok(steps)
                if steps.len() <= limits::MOST_DONE
                    && steps.iter().all(|step| step.len() <= limits::LONGEST_LABEL) =>
            {
                thread.done = steps.into_iter().collect();
            }
            Ok(_) => salvage.leave_out(inner.clone(), inner, say!("file-steps"), done),
            Err(why) => salvage.leave_out(inner.clone(), inner, why.message, done),
        }
    }
    thread.extra = raw.into_iter().collect();
    Ok(thread)
}

fn pictures(salvage: &mut Salvage, raw: Value) -> Result<OrderedMap<String, Picture>, FileError> {
    const PLACE: &str = "pictures";
    let mut pictures = OrderedMap::new();
    let Value::Object(raw) = raw else {
        salvage.leave_out(
            PLACE.to_owned(),
            PLACE.to_owned(),
            say!("file-not-a", of = "object"),
            raw,
        );
        return Ok(pictures);
    };
    if raw.len() > limits::MOST_PICTURES {
        return Err(FileError::Misbuilt {
            place: PLACE.to_owned(),
            message: say!(
                "file-too-many",
                of = "them",
                count = raw.len(),
                most = limits::MOST_PICTURES
            ),
        });
    }
    for (key, raw) in raw {
        let place = format!("{PLACE}.{key}");
        if let Err(why) = limits::check_tag(&key) {
            salvage.leave_out(place.clone(), place, why, raw);
        } else if let Ok(picture) = salvage.item::<Picture>(&place, raw) {
            pictures.insert(key, picture);
        }
    }
    Ok(pictures)
}

/// An item of a sheet: its key, its tag as the file has it when that is no tag, and itself with a tag that is one.
type Item = (String, Option<Value>, Value);

/// The items of a sheet. A part is worth more than its tag: one that is missing or against the rule is put aside and
/// replaced by a makeshift, for [`retag`] to find a good one.
fn items(
    salvage: &mut Salvage,
    place: &str,
    key: &str,
    sheet: &mut Map<String, Value>,
    most: usize,
) -> Result<Vec<Item>, FileError> {
    let inner = format!("{place}.{key}");
    match sheet.remove(key) {
        Some(Value::Object(all)) if all.len() > most => Err(FileError::Misbuilt {
            place: inner,
            message: say!("file-too-many", of = "them", count = all.len(), most = most),
        }),
        Some(Value::Object(all)) => Ok(all
            .into_iter()
            .map(|(key, mut raw)| {
                let good = raw
                    .get("tag")
                    .and_then(Value::as_str)
                    .is_some_and(|tag| limits::check_tag(tag).is_ok());
                let mut aside = None;
                if let (false, Some(item)) = (good, raw.as_object_mut()) {
                    aside = Some(
                        item.insert("tag".to_owned(), MAKESHIFT.into())
                            .unwrap_or(Value::Null),
                    );
                }
                (key, aside, raw)
            })
            .collect()),
        Some(other) => {
            salvage.leave_out(inner.clone(), inner, say!("file-not-a", of = "object"), other);
            Ok(Vec::new())
        }
        None => Ok(Vec::new()),
    }
}

/// Stands for a tag that is none, while its item is read.
const MAKESHIFT: &str = "_";

/// Gives an item a tag of its own when its tag is none, or taken.
fn retag(
    salvage: &mut Salvage,
    place: &str,
    tag: &mut String,
    aside: Option<Value>,
    letter: &str,
    tags: &mut OrderedSet<String>,
) {
    let (raw, why) = match aside {
        Some(raw) => {
            let why = match raw.as_str() {
                Some(text) => limits::check_tag(text).err(),
                None => None,
            };
            (raw, why.unwrap_or_else(|| say!("file-no-tag")))
        }
        None if tags.insert(tag.clone()) => return,
        None => (
            Value::from(tag.as_str()),
            say!("file-tag-twice", tag = tag.as_str()),
        ),
    };
    // Far from the numbers that people give, so that no later item of the file loses its own.
    let fresh = loop {
        salvage.made_up += 1;
        let fresh = format!("{letter}{}", 9_000 + salvage.made_up);
        if !tags.contains(&fresh) {
            break fresh;
        }
    };
    let place = format!("{place}.tag");
    salvage.leave_out(
        place.clone(),
        place,
        say!("file-called", why = why, tag = &fresh),
        raw,
    );
    tags.insert(fresh.clone());
    *tag = fresh;
}
