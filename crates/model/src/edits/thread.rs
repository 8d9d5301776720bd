//! The thread of a job: complaints, condition record, quote, ticks; and how equipment is set, and pictures.

use super::EditError;
use crate::edit::{Change, Edit, Name};
use crate::job::{Job, SheetKind};
use crate::limits::{
    LARGEST_PICTURE, LONGEST_LABEL, MOST_DONE, MOST_LINES, MOST_PICTURES, MOST_TUNINGS, check_line_tag,
};
use crate::picture::{Picture, PictureForm, PictureOf};
use crate::property::PropertySet;
use crate::thread::{Complaint, IntakeNote, Offer, Thread};
use crate::tuning::Tuning;
use words::{Saying, say};

/// One of the lists of a job's thread.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum ThreadList {
    /// What the customer complained of.
    Complaints,
    /// The condition record.
    Intake,
    /// The quote.
    Offers,
}

impl ThreadList {
    /// What a line of it is called, for the name of an edit.
    fn said(self) -> Saying {
        match self {
            Self::Complaints => say!("thread-complaint"),
            Self::Intake => say!("thread-intake"),
            Self::Offers => say!("thread-offer"),
        }
    }
    /// The line at a place of the list.
    fn line(self, thread: &mut Thread, place: usize) -> Option<&mut dyn PropertySet> {
        match self {
            Self::Complaints => thread.complaints.get_mut(place).map(|it| it.as_set_mut()),
            Self::Intake => thread.intake.get_mut(place).map(|it| it.as_set_mut()),
            Self::Offers => thread.offers.get_mut(place).map(|it| it.as_set_mut()),
        }
    }
    /// The tag of the line at a place; empty where it has none.
    fn tag(self, thread: &Thread, place: usize) -> String {
        let tag = match self {
            Self::Complaints => thread.complaints.get(place).map(|it| &it.tag),
            Self::Intake => thread.intake.get(place).map(|it| &it.tag),
            Self::Offers => thread.offers.get(place).map(|it| &it.tag),
        };
        tag.cloned().unwrap_or_default()
    }
    /// Among what pictures are of its lines, where they may have some.
    fn pictures(self) -> Option<PictureOf> {
        match self {
            Self::Complaints => Some(PictureOf::Complaint),
            Self::Intake => Some(PictureOf::Intake),
            Self::Offers => None,
        }
    }
    fn len(self, thread: &Thread) -> usize {
        match self {
            Self::Complaints => thread.complaints.len(),
            Self::Intake => thread.intake.len(),
            Self::Offers => thread.offers.len(),
        }
    }
}

fn put(name: impl Into<Name>, thread: Thread) -> Edit {
    Edit::new(name, vec![Change::Thread(Box::new(thread))])
}

/// The least free tag of a letter: with `C1` taken, `C2`.
fn free_tag<'t>(letter: char, taken: impl Iterator<Item = &'t str>) -> String {
    let taken: ordered::OrderedSet<&str> = taken.collect();
    let mut number = 1_u32;
    loop {
        let tag = format!("{letter}{number}");
        if !taken.contains(tag.as_str()) {
            return tag;
        }
        number = number.saturating_add(1);
    }
}

/// Sets one value of a line; its tag only to what can be one.
fn set_in(line: &mut dyn PropertySet, name: &str, text: &str) -> Result<(), EditError> {
    if name == "tag" {
        check_line_tag(text).map_err(EditError)?;
    }
    Ok(line.set(name, text)?)
}

fn free_intake_tag(thread: &Thread) -> String {
    free_tag('I', thread.intake.iter().map(|it| it.tag.as_str()))
}

/// Adds a line to a list of the thread, and says at which place. Each gets a tag of its own.
///
/// # Errors
/// When the list is full, or a text does not fit.
pub fn add_line(job: &Job, list: ThreadList, values: &[(&str, &str)]) -> Result<(Edit, usize), EditError> {
    let mut thread = job.thread.clone();
    let place = list.len(&thread);
    if place >= MOST_LINES {
        return Err(EditError(say!("error-thread-full", most = MOST_LINES)));
    }
    match list {
        ThreadList::Complaints => {
            let tag = free_tag('C', thread.complaints.iter().map(|it| it.tag.as_str()));
            thread.complaints.push(Complaint {
                tag,
                ..Complaint::default()
            });
        }
        ThreadList::Intake => {
            let tag = free_intake_tag(&thread);
            thread.intake.push(IntakeNote {
                tag,
                ..IntakeNote::default()
            });
        }
        ThreadList::Offers => {
            let tag = free_tag('Q', thread.offers.iter().map(|it| it.tag.as_str()));
            thread.offers.push(Offer {
                tag,
                ..Offer::default()
            });
        }
    }
    if let Some(line) = list.line(&mut thread, place) {
        for (name, text) in values {
            set_in(line, name, text)?;
        }
    }
    Ok((put(say!("edit-thread-add", what = list.said()), thread), place))
}

/// Sets one value of a line of the thread.
///
/// # Errors
/// When there is no such line or property, or the text does not fit.
pub fn set_line(
    job: &Job,
    list: ThreadList,
    place: usize,
    name: &str,
    text: &str,
) -> Result<Edit, EditError> {
    let mut thread = job.thread.clone();
    let before = list.tag(&thread, place);
    let line = list
        .line(&mut thread, place)
        .ok_or_else(|| EditError(say!("error-thread-gone")))?;
    set_in(line, name, text)?;
    let said = say!(
        "edit-thread-set",
        name = crate::said::name_of(name),
        what = list.said()
    );
    let after = list.tag(&thread, place);
    let mut edit = put(said, thread);
    if let (Some(among), true) = (list.pictures(), before != after) {
        edit.changes.extend(pictures_follow(job, among, &before, &after));
    }
    Ok(edit)
}

/// Takes a line of the thread away, and the pictures that are of it.
///
/// # Errors
/// When there is no such line.
pub fn remove_line(job: &Job, list: ThreadList, place: usize) -> Result<Edit, EditError> {
    let mut thread = job.thread.clone();
    if place >= list.len(&thread) {
        return Err(EditError(say!("error-thread-gone")));
    }
    let tag = list.tag(&thread, place);
    match list {
        ThreadList::Complaints => drop(thread.complaints.remove(place)),
        ThreadList::Intake => drop(thread.intake.remove(place)),
        ThreadList::Offers => drop(thread.offers.remove(place)),
    }
    let among = list.pictures();
    let of_it = |picture: &Picture| !tag.is_empty() && among.is_some_and(|among| picture.is_of(among, &tag));
    let pictures = job.pictures.iter().filter(|(_, picture)| of_it(picture));
    let mut changes: Vec<Change> = pictures
        .map(|(key, _)| Change::Picture {
            key: key.clone(),
            to: None,
        })
        .collect();
    changes.push(Change::Thread(Box::new(thread)));
    Ok(Edit::new(say!("edit-thread-remove", what = list.said()), changes))
}

/// Sets one of the shop's terms.
///
/// # Errors
/// When there is no such term, or the text does not fit.
pub fn set_rate(job: &Job, name: &str, text: &str) -> Result<Edit, EditError> {
    let mut thread = job.thread.clone();
    thread.rates.set(name, text)?;
    let said = say!("edit-rate", name = crate::said::name_of(name));
    Ok(put(said, thread))
}

/// Ticks a step of a checklist off, or takes the tick away. `called` is what the list calls it.
///
/// # Errors
/// When the name of the step is too long, or there are as many ticks as a job may have.
pub fn tick(job: &Job, step: &str, called: Saying, done: bool) -> Result<Edit, EditError> {
    super::hold_length(step, LONGEST_LABEL, "label")?;
    let mut thread = job.thread.clone();
    if done {
        if !thread.done.contains(step) && thread.done.len() >= MOST_DONE {
            return Err(EditError(say!("error-thread-full", most = MOST_DONE)));
        }
        thread.done.insert(step.to_owned());
    } else {
        thread.done.remove(step);
    }
    let name = if done {
        say!("edit-tick", step = called)
    } else {
        say!("edit-untick", step = called)
    };
    Ok(put(name, thread))
}

fn tunings(job: &Job, on: SheetKind) -> &[Tuning] {
    job.sheet(on).map_or(&[], |sheet| &sheet.tunings)
}

/// Sets one value of how a channel is set; its line is made when there is none.
///
/// # Errors
/// When there is no such property, the text does not fit, or there are too many lines.
pub fn set_tuning(
    job: &Job,
    on: SheetKind,
    (of, channel): (&str, &str),
    name: &str,
    text: &str,
) -> Result<Edit, EditError> {
    let mut to = tunings(job, on).to_vec();
    let there = to.iter().position(|it| it.of == of && it.channel == channel);
    let place = match there {
        Some(place) => place,
        None if to.len() >= MOST_TUNINGS => {
            return Err(EditError(say!("error-thread-full", most = MOST_TUNINGS)));
        }
        None => {
            let mut tuning = Tuning::default();
            tuning.set("of", of)?;
            tuning.set("channel", channel)?;
            to.push(tuning);
            to.len() - 1
        }
    };
    if let Some(tuning) = to.get_mut(place) {
        tuning.set(name, text)?;
    }
    let said = say!("edit-set", name = crate::said::name_of(name), of = of);
    Ok(Edit::new(said, vec![Change::Tunings { sheet: on, to }]))
}

/// Adds a picture of what has this tag among these, and says under which name.
///
/// # Errors
/// When it is too large, of a form that is not known, or there are as many as a job may have.
pub fn add_picture(
    job: &Job,
    among: PictureOf,
    of: &str,
    bytes: Vec<u8>,
) -> Result<(Edit, String), EditError> {
    if bytes.len() > LARGEST_PICTURE {
        return Err(EditError(say!(
            "error-picture-large",
            bytes = bytes.len(),
            most = LARGEST_PICTURE
        )));
    }
    if job.pictures.len() >= MOST_PICTURES {
        return Err(EditError(say!("error-pictures", most = MOST_PICTURES)));
    }
    let form = PictureForm::of(&bytes).ok_or_else(|| EditError(say!("error-picture-form")))?;
    let key = free_tag('b', job.pictures.keys().map(String::as_str));
    let mut picture = Picture {
        bytes: std::sync::Arc::new(bytes),
        ..Picture::default()
    };
    picture.facts.form = form;
    picture.facts.among = among;
    picture.facts.set("of", of)?;
    let change = Change::Picture {
        key: key.clone(),
        to: Some(picture),
    };
    Ok((Edit::new(say!("edit-picture-add", of = of), vec![change]), key))
}

/// Adds a picture of a line of the condition record, which gets a tag if it has none.
///
/// # Errors
/// As [`add_picture`]; when there is no such line.
pub fn add_picture_of_intake(job: &Job, place: usize, bytes: Vec<u8>) -> Result<(Edit, String), EditError> {
    let mut thread = job.thread.clone();
    let tag = free_intake_tag(&thread);
    let note = thread
        .intake
        .get_mut(place)
        .ok_or_else(|| EditError(say!("error-thread-gone")))?;
    if !note.tag.is_empty() {
        return add_picture(job, PictureOf::Intake, &note.tag, bytes);
    }
    note.tag.clone_from(&tag);
    let (mut edit, key) = add_picture(job, PictureOf::Intake, &tag, bytes)?;
    edit.changes.insert(0, Change::Thread(Box::new(thread)));
    Ok((edit, key))
}

/// Sets what is said of a picture.
///
/// # Errors
/// When there is no such picture or property, or the text does not fit.
pub fn set_picture(job: &Job, key: &str, name: &str, text: &str) -> Result<Edit, EditError> {
    let mut picture = picture_of(job, key)?.clone();
    picture.facts.set(name, text)?;
    let said = say!("edit-picture-set");
    let change = Change::Picture {
        key: key.to_owned(),
        to: Some(picture),
    };
    Ok(Edit::new(said, vec![change]))
}

/// Takes a picture away.
///
/// # Errors
/// When there is no such picture.
pub fn remove_picture(job: &Job, key: &str) -> Result<Edit, EditError> {
    picture_of(job, key)?;
    let change = Change::Picture {
        key: key.to_owned(),
        to: None,
    };
    Ok(Edit::new(say!("edit-picture-remove"), vec![change]))
}

/// Pictures of what is called otherwise now.
fn pictures_follow(job: &Job, among: PictureOf, before: &str, after: &str) -> Vec<Change> {
    let of_it = job
        .pictures
        .iter()
        .filter(|(_, picture)| !before.is_empty() && picture.is_of(among, before));
    of_it
        .map(|(key, picture)| {
            let mut picture = picture.clone();
            after.clone_into(&mut picture.facts.of);
            Change::Picture {
                key: key.clone(),
                to: Some(picture),
            }
        })
        .collect()
}

fn picture_of<'j>(job: &'j Job, key: &str) -> Result<&'j Picture, EditError> {
    job.pictures
        .get(key)
        .ok_or_else(|| EditError(say!("error-picture-gone")))
}

/// What renaming a part or run does to all that refers to it by its tag; nothing while another sheet still has that tag.
pub(super) fn renamed(job: &Job, on: SheetKind, before: &str, after: &str) -> Vec<Change> {
    let elsewhere = job.sheets.iter().any(|(kind, sheet)| {
        *kind != on && (sheet.part_by_tag(before).is_some() || sheet.run_by_tag(before).is_some())
    });
    let mut changes = Vec::new();
    let to: Vec<Tuning> = tunings(job, on)
        .iter()
        .map(|tuning| Tuning {
            of: if tuning.of == before {
                after.to_owned()
            } else {
                tuning.of.clone()
            },
            ..tuning.clone()
        })
        .collect();
    if to != tunings(job, on) {
        changes.push(Change::Tunings { sheet: on, to });
    }
    if elsewhere {
        return changes;
    }
    if let Some(thread) = job.thread.renamed(before, after) {
        changes.push(Change::Thread(Box::new(thread)));
    }
    changes.extend(pictures_follow(job, PictureOf::Thing, before, after));
    changes
}
