//! What is told of one part or one run: its properties, its words, where a run's ends are.

use super::{
    EditError, RunSide, connect, hold_length, part_of, put_part, put_run, run_of, set_name, sheet_of,
};
use crate::edit::{Edit, Name};
use crate::id::{PartId, RunId};
use crate::job::{End, Job, Part, Run, SheetKind, named};
use crate::limits::{LONGEST_LABEL, LONGEST_NOTE};
use crate::property::PropertySet;
use words::{Saying, say};

/// Changes one part by a function, under a name.
///
/// # Errors
/// When the part is not there.
pub fn change_part(
    job: &Job,
    on: SheetKind,
    id: PartId,
    name: impl Into<Name>,
    how: impl FnOnce(&mut Part),
) -> Result<Edit, EditError> {
    let mut part = part_of(job, on, id)?.clone();
    how(&mut part);
    Ok(Edit::new(name, vec![put_part(on, id, part)]))
}

/// Changes one run by a function, under a name.
///
/// # Errors
/// When the run is not there.
pub fn change_run(
    job: &Job,
    on: SheetKind,
    id: RunId,
    name: impl Into<Name>,
    how: impl FnOnce(&mut Run),
) -> Result<Edit, EditError> {
    let mut run = run_of(job, on, id)?.clone();
    how(&mut run);
    Ok(Edit::new(name, vec![put_run(on, id, run)]))
}

/// Sets a property of a part, or of how it is fixed, from its written form. Runs on a terminal that the part then no longer has stay on its
/// name, so that setting it back brings them back.
///
/// # Errors
/// When the part or the property is not there, or the text does not fit.
pub fn set_property(job: &Job, on: SheetKind, id: PartId, name: &str, text: &str) -> Result<Edit, EditError> {
    let mut part = part_of(job, on, id)?.clone();
    part.set_with(name).set(name, text)?;
    Ok(Edit::new(
        say!("edit-set", name = set_name(name), of = &part.tag),
        vec![put_part(on, id, part)],
    ))
}

/// Sets a property of a run's wire, or of how it is laid, from its written form.
///
/// # Errors
/// When the run or the property is not there, or the text does not fit.
pub fn set_wire_property(
    job: &Job,
    on: SheetKind,
    id: RunId,
    name: &str,
    text: &str,
) -> Result<Edit, EditError> {
    let mut run = run_of(job, on, id)?.clone();
    run.set_with(name).set(name, text)?;
    Ok(Edit::new(
        say!("edit-set", name = set_name(name), of = &run.tag),
        vec![put_run(on, id, run)],
    ))
}

/// Sets a property of how one end of a run is finished, from its written form.
///
/// # Errors
/// When the run or the property is not there, or the text does not fit.
pub fn set_ending_property(
    job: &Job,
    on: SheetKind,
    id: RunId,
    side: RunSide,
    name: &str,
    text: &str,
) -> Result<Edit, EditError> {
    let mut run = run_of(job, on, id)?.clone();
    match side {
        RunSide::From => run.from_ending.set(name, text)?,
        RunSide::To => run.to_ending.set(name, text)?,
    }
    Ok(Edit::new(
        say!("edit-set-end", name = set_name(name), of = &run.tag),
        vec![put_run(on, id, run)],
    ))
}

/// Puts one end of a run somewhere else; how it is finished there becomes what is usual, unless it was given. Bends put by
/// hand stay where the end stays at its part; on the way to another part they mean nothing.
///
/// # Errors
/// When the run or the terminal is not there.
pub fn set_end(job: &Job, on: SheetKind, id: RunId, side: RunSide, to: End) -> Result<Edit, EditError> {
    let sheet = sheet_of(job, on)?;
    let mut run = run_of(job, on, id)?.clone();
    connect::check_end(sheet, &to)?;
    let name = say!("edit-move-end", run = &run.tag);
    let (end, ending) = match side {
        RunSide::From => (&mut run.from, &mut run.from_ending),
        RunSide::To => (&mut run.to, &mut run.to_ending),
    };
    if !ending.method.is_given() {
        ending.method = connect::ending_at(sheet, &to);
    }
    if !matches!((&*end, &to), (End::On(was), End::On(now)) if was.part == now.part) {
        run.bends.clear();
    }
    *end = to;
    Ok(Edit::new(name, vec![put_run(on, id, run)]))
}

/// Turns a run round: what was its start becomes its end.
///
/// # Errors
/// When the run is not there.
pub fn reverse_run(job: &Job, on: SheetKind, id: RunId) -> Result<Edit, EditError> {
    let tag = run_of(job, on, id)?.tag.clone();
    change_run(job, on, id, say!("edit-reverse", run = tag), |run| {
        std::mem::swap(&mut run.from, &mut run.to);
        std::mem::swap(&mut run.from_ending, &mut run.to_ending);
        run.route.reverse();
        run.bends.reverse();
    })
}

/// A text that the user gives to a part or run.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Words {
    /// Its name in words.
    Label,
    /// A remark.
    Note,
    /// The spot in the body where it is mounted; of parts only.
    Place,
}

impl Words {
    fn word(self) -> &'static str {
        match self {
            Self::Label => "label",
            Self::Note => "note",
            Self::Place => "place",
        }
    }
    /// The name of an edit that gives this text to what has this tag, if it is none too long.
    fn name_of_edit(self, text: &str, tag: &str) -> Result<Saying, EditError> {
        let most = if self == Self::Note {
            LONGEST_NOTE
        } else {
            LONGEST_LABEL
        };
        hold_length(text, most, self.word())?;
        Ok(say!("edit-set", name = set_name(self.word()), of = tag))
    }
}

/// Gives a part a label, a note or a place; an empty text takes it away.
///
/// # Errors
/// When the part is not there, or the text is too long for a file.
pub fn set_part_words(
    job: &Job,
    on: SheetKind,
    id: PartId,
    which: Words,
    text: &str,
) -> Result<Edit, EditError> {
    let name = which.name_of_edit(text, &part_of(job, on, id)?.tag)?;
    change_part(job, on, id, name, |part| match which {
        Words::Label => text.clone_into(&mut part.label),
        Words::Note => text.clone_into(&mut part.note),
        Words::Place => part.place = named(text.to_owned()),
    })
}

/// Gives a run a label or a note; an empty text takes it away.
///
/// # Errors
/// When the run is not there, the text is too long for a file, or a place is meant, which a run has none of.
pub fn set_run_words(
    job: &Job,
    on: SheetKind,
    id: RunId,
    which: Words,
    text: &str,
) -> Result<Edit, EditError> {
    let mut run = run_of(job, on, id)?.clone();
    let name = which.name_of_edit(text, &run.tag)?;
    let told = match which {
        Words::Label => &mut run.label,
        Words::Note => &mut run.note,
        Words::Place => return Err(EditError(say!("error-run-place"))),
    };
    text.clone_into(told);
    Ok(Edit::new(name, vec![put_run(on, id, run)]))
}
