//! Breaks: what a teacher pulls off, turns round or lets touch, as data, and as the edit that does it.

use crate::effects::Effect;
use crate::lesson::Version;
use model::conductor::{Colour, Condition, Jacket, Material, Size};
use model::fact::Fact;
use model::kinds::PartKind;
use model::kinds::supply::Splice;
use model::quantity::{Metres, SquareMm};
use model::{Change, Edit, End, Job, Part, PartId, Run, Sheet, SheetKind, TerminalRef};
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

    /// The edit that throws this break on a sheet of a job. The usual history takes it back.
    ///
    /// # Errors
    /// When the sheet has no such thing, or the thing cannot break in this way; the text says what would do.
    pub fn edit(&self, job: &Job, kind: SheetKind) -> Result<Edit, Saying> {
        let none = Sheet::default();
        let sheet = job.sheet(kind).unwrap_or(&none);
        let first = self.things.first().map(String::as_str).unwrap_or_default();
        let changes = match self.kind {
            BreakKind::Open => open(sheet, kind, first)?,
            BreakKind::Reversed => reversed(sheet, kind, first)?,
            BreakKind::Dead => dead(job, sheet, kind, first)?,
            BreakKind::Joined => {
                let second = self.things.get(1).map(String::as_str).unwrap_or_default();
                joined(job, sheet, kind, [first, second])?
            }
        };
        Ok(Edit::new(self.said(), changes))
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

fn part<'s>(sheet: &'s Sheet, tag: &str) -> Result<(PartId, &'s Part), Saying> {
    sheet
        .part_by_tag(tag)
        .ok_or_else(|| say!("lesson-no-part", part = tag))
}

fn changed_run(sheet: SheetKind, id: model::RunId, run: Run) -> Change {
    Change::Run {
        sheet,
        id,
        to: Some(Box::new(run)),
    }
}

fn open(sheet: &Sheet, kind: SheetKind, tag: &str) -> Result<Vec<Change>, Saying> {
    if let Some((id, run)) = sheet.run_by_tag(tag) {
        let mut run = run.clone();
        run.wire.condition = Fact::Given(Condition::Cut);
        return Ok(vec![changed_run(kind, id, run)]);
    }
    let (id, part) = part(sheet, tag).map_err(|_| say!("lesson-no-thing", thing = tag))?;
    let (property, value) = match part.is {
        PartKind::Fuse(_) | PartKind::Breaker(_) => ("state", "open"),
        PartKind::Switch(_) | PartKind::Isolator(_) => ("closed", "no"),
        PartKind::Plug(_) => ("mated", "no"),
        _ => {
            return Err(say!("lesson-cannot-open", part = tag));
        }
    };
    let mut part = part.clone();
    part.is.set(property, value).map_err(|error| error.said)?;
    Ok(vec![Change::Part {
        sheet: kind,
        id,
        to: Some(Box::new(part)),
    }])
}

fn reversed(sheet: &Sheet, kind: SheetKind, name: &str) -> Result<Vec<Change>, Saying> {
    let (tag, coil) = name.split_once('.').unwrap_or((name, ""));
    let (id, _) = part(sheet, tag)?;
    let turned = |end: &End| match end {
        End::On(at) if at.part == id && at.terminal.as_str().starts_with(coil) => {
            let name = at.terminal.as_str();
            let other = match (name.strip_suffix('+'), name.strip_suffix('-')) {
                (Some(stem), _) => format!("{stem}-"),
                (_, Some(stem)) => format!("{stem}+"),
                _ => return end.clone(),
            };
            End::On(TerminalRef::new(id, other))
        }
        _ => end.clone(),
    };
    let mut changes = Vec::new();
    for (run_id, run) in sheet.runs_of(id) {
        let [from, to] = [turned(&run.from), turned(&run.to)];
        if from != run.from || to != run.to {
            changes.push(changed_run(
                kind,
                run_id,
                Run {
                    from,
                    to,
                    ..run.clone()
                },
            ));
        }
    }
    if changes.is_empty() {
        return Err(say!("lesson-cannot-reverse", part = name));
    }
    Ok(changes)
}

/// The part goes; wires that shared one of its terminals stay joined by a splice, a wire alone ends loose.
fn dead(job: &Job, sheet: &Sheet, kind: SheetKind, tag: &str) -> Result<Vec<Change>, Saying> {
    let (id, gone) = part(sheet, tag)?;
    let mut free = job.free_part_ids();
    let mut splices: Vec<(&TerminalRef, PartId, u8)> = Vec::new();
    let ends = |at: &TerminalRef| {
        sheet
            .runs
            .values()
            .flat_map(Run::ends)
            .filter(|end| end.terminal() == Some(at))
            .count()
    };
    let mut changes = Vec::new();
    let mut runs = Vec::new();
    for (run_id, run) in sheet.runs_of(id) {
        let mut run = run.clone();
        let before = sheet.runs.get(&run_id);
        for (end, was) in [&mut run.from, &mut run.to]
            .into_iter()
            .zip(before.iter().flat_map(|run| run.ends()))
        {
            let Some(at) = was.terminal().filter(|at| at.part == id) else {
                continue;
            };
            if ends(at) < 2 {
                *end = End::Loose(gone.at.unwrap_or_default());
                continue;
            }
            let place = match splices.iter_mut().find(|splice| splice.0 == at) {
                Some(splice) => {
                    splice.2 = splice.2.saturating_add(1);
                    (splice.1, splice.2)
                }
                None => {
                    let new = free.next().ok_or_else(|| say!("lesson-job-full"))?;
                    splices.push((at, new, 1));
                    (new, 1)
                }
            };
            *end = End::On(TerminalRef::new(place.0, place.1.to_string()));
        }
        runs.push(changed_run(kind, run_id, run));
    }
    for (_, new, places) in splices {
        let mut joint = PartKind::from(Splice::default());
        joint
            .set("places", &places.max(2).to_string())
            .map_err(|error| error.said)?;
        // Its tag says of what it is left; a name would stand on the drawing in one language only.
        let splice = Part::new(format!("{tag}_{}", new.0), joint);
        changes.push(Change::Part {
            sheet: kind,
            id: new,
            to: Some(Box::new(splice)),
        });
    }
    changes.extend(runs);
    changes.push(Change::Part {
        sheet: kind,
        id,
        to: None,
    });
    Ok(changes)
}

/// A bridge of thick copper, a centimetre long: what touches, touches well.
fn joined(job: &Job, sheet: &Sheet, kind: SheetKind, names: [&str; 2]) -> Result<Vec<Change>, Saying> {
    let end = |name: &str| {
        let (tag, terminal) = name.split_once('.').unwrap_or((name, ""));
        let (id, part) = part(sheet, tag)?;
        let at = TerminalRef::new(id, terminal);
        match part.role(&at.terminal) {
            Some(_) => Ok(End::On(at)),
            None => Err(say!("lesson-no-terminal", part = tag, terminal = terminal)),
        }
    };
    let [from, to] = names;
    let mut run = Run::new(sheet.free_tag("W"), end(from)?, end(to)?);
    run.wire.size = Fact::Given(Size::Metric(SquareMm(35.0)));
    run.wire.length = Fact::Given(Metres(0.01));
    run.wire.material = Fact::Given(Material::Copper);
    run.wire.jacket = Jacket::plain(Colour::Black);
    Ok(vec![changed_run(kind, job.free_run_id(), run)])
}
