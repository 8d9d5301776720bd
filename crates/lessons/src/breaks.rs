//! Breaks: what a teacher pulls off, turns round or lets touch, as data, and as the edit that does it.

use crate::effects::Effect;
use crate::lesson::Version;
use model::{Edit, Job, Sheet, SheetKind};
use words::{Saying, say};

/// What a break does.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum BreakKind {
    /// A run is cut, a plug pulled, a switch opened, a fuse blown.
    #[default]
    Open,
    /// Plus and minus of a part, or of one voice coil, are exchanged.
    Reversed,
    /// A part is dead: nothing is left of it but the joints of the wires on it.
    Dead,
    /// Two terminals touch.
    Joined,
}

impl BreakKind {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Open, Self::Reversed, Self::Dead, Self::Joined];
    /// The word in a lesson's text.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Open => "open",
            Self::Reversed => "reversed",
            Self::Dead => "dead",
            Self::Joined => "joined",
        }
    }
    /// The word beside its sign on the drawing, and in a list to choose from.
    #[must_use]
    pub fn said(self) -> Saying {
        match self {
            Self::Open => say!("lesson-sign-open"),
            Self::Reversed => say!("lesson-sign-reversed"),
            Self::Dead => say!("lesson-sign-dead"),
            Self::Joined => say!("lesson-sign-joined"),
        }
    }
    /// How many things it names.
    #[must_use]
    pub fn wants(self) -> usize {
        if self == Self::Joined { 2 } else { 1 }
    }
}

/// A break to try.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Break {
    /// What it does.
    pub kind: BreakKind,
    /// To what: the tag of a run or part; `LS1.a` for one coil that is reversed; two terminals for what is joined.
    pub things: Vec<String>,
    /// What follows.
    pub effects: Vec<Follows>,
    /// What is to be seen, in words.
    pub says: String,
}

/// Something that follows from a break, in one version.
#[derive(Clone, Debug, PartialEq)]
pub struct Follows {
    /// True for what was so before as well: `still`, not `then`.
    pub still: bool,
    /// In which version.
    pub version: Version,
    /// What is so.
    pub effect: Effect,
}

impl Break {
    /// What it is called: `W3 open`, `LS1.+ and E1.stud touch`.
    #[must_use]
    pub fn said(&self) -> Saying {
        let things = self.things.as_slice();
        match self.kind {
            BreakKind::Open => say!("lesson-break-open", things = things),
            BreakKind::Reversed => say!("lesson-break-reversed", things = things),
            BreakKind::Dead => say!("lesson-break-dead", things = things),
            BreakKind::Joined => say!("lesson-break-joined", things = things),
        }
    }

    /// The same as what the engine breaks, on a sheet.
    ///
    /// # Errors
    /// When the sheet has no such thing, or the thing cannot break in this way; the text says what would do.
    pub fn on(&self, sheet: &Sheet) -> Result<model::breaks::Break, Saying> {
        let first = self.things.first().map(String::as_str).unwrap_or_default();
        let written = match self.kind {
            BreakKind::Joined => {
                let second = self.things.get(1).map(String::as_str).unwrap_or_default();
                format!("{first} joined {second}")
            }
            kind => format!("{first} {}", kind.word()),
        };
        model::breaks::Break::read(&written, sheet)
    }

    /// The edit that throws this break on a sheet of a job. The usual history takes it back.
    ///
    /// # Errors
    /// As [`Break::on`].
    pub fn edit(&self, job: &Job, kind: SheetKind) -> Result<Edit, Saying> {
        let none = Sheet::default();
        let broken = self.on(job.sheet(kind).unwrap_or(&none))?;
        Ok(Edit::new(self.said(), broken.edit(job, kind)?.changes))
    }
}

/// The edit that throws a break on a job's last sheet, which is the only one of a version's job.
///
/// # Errors
/// As [`Break::edit`].
pub fn apply(broken: &Break, job: &Job) -> Result<Edit, Saying> {
    let kind = job.sheets.keys().next_back().copied().unwrap_or(SheetKind::Plan);
    broken.edit(job, kind)
}
