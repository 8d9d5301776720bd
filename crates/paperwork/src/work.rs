//! What is to be done between two sheets of a job: what becomes of every part and run, what we lay and what we buy.
//!
//! A thing keeps its id from sheet to sheet. Which article it is may change all the same: a fuse of another rating, a run
//! of another size is another thing on the bench, though it is the same one on the drawing.

use crate::articles::joined;
use model::compare::{Became, Comparison, compare};
use model::conductor::{Condition, EndingMethod, FittedBy};
use model::handling::{Fate, Handling, OnceOut};
use model::quantity::Metres;
use model::{Job, Part, PartId, PartKind, Run, RunId, Settings, Sheet, SheetKind};
use words::{Saying, say};

/// What becomes of a thing between two sheets.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Becomes {
    /// It stays as it is.
    Kept,
    /// It is taken out and put back.
    Refitted,
    /// It goes to another place, or takes another way.
    Moved,
    /// It stays, but something about it is done otherwise.
    Changed,
    /// Its like, or something better, comes in its place.
    Replaced,
    /// It is there for the first time.
    New,
    /// It goes for good.
    Removed,
}

impl Becomes {
    /// All of them.
    pub const ALL: &'static [Self] = &[
        Self::Kept,
        Self::Refitted,
        Self::Moved,
        Self::Changed,
        Self::Replaced,
        Self::New,
        Self::Removed,
    ];
    /// The written word.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Kept => "kept",
            Self::Refitted => "refitted",
            Self::Moved => "moved",
            Self::Changed => "changed",
            Self::Replaced => "replaced",
            Self::New => "new",
            Self::Removed => "removed",
        }
    }
    /// The words of a list.
    #[must_use]
    pub fn said(self) -> Saying {
        Saying::new(format!("paper-becomes-{}", self.word()))
    }
}

/// The work between two sheets of a job.
#[derive(Clone, Debug)]
pub struct Work<'j> {
    /// The job.
    pub job: &'j Job,
    /// Which sheet is made.
    pub kind: SheetKind,
    /// What is on it, with the lengths that follow from routes.
    pub sheet: Sheet,
    /// The sheet that it starts from; `None` where the job has none before it: then all that is ours is new.
    pub before: Option<(SheetKind, Sheet)>,
    /// What differs.
    pub compared: Comparison,
    /// The plan of the body, where the job tells its form.
    pub plan: Option<body::Plan>,
}

/// A sheet as it is worked by: lengths and surroundings that follow from routes stand in it as computed.
fn laid(sheet: &Sheet, settings: &Settings) -> Sheet {
    body::lay(sheet, settings).into_owned()
}

impl<'j> Work<'j> {
    /// The work that makes a sheet of a job, from the sheet `since`; without one from the first sheet before it. `None` when the
    /// job has no such sheet, or `since` does not come before it.
    #[must_use]
    pub fn of(job: &'j Job, kind: SheetKind, since: Option<SheetKind>) -> Option<Self> {
        let sheet = laid(job.sheet(kind)?, &job.settings);
        let before = match since {
            Some(since) if since < kind => Some((since, job.sheet(since)?)),
            Some(_) => return None,
            None => job
                .sheets
                .iter()
                .next()
                .map(|(first, sheet)| (*first, sheet))
                .filter(|(first, _)| *first < kind),
        };
        // As drawn, not as laid: what merely follows from other runs, such as a bundle, is no change of this one.
        let compared = match (&before, job.sheet(kind)) {
            (Some((_, before)), Some(after)) => compare(before, after),
            _ => Comparison::default(),
        };
        let before = before.map(|(since, sheet)| (since, laid(sheet, &job.settings)));
        Some(Self {
            job,
            kind,
            sheet,
            before,
            compared,
            plan: body::Plan::of(&job.settings.body),
        })
    }
    /// The work of a job as it stands: its last sheet, from its first.
    #[must_use]
    pub fn latest(job: &'j Job) -> Option<Self> {
        let last = job.sheets.keys().next_back()?;
        Self::of(job, *last, None)
    }
    /// A part before.
    #[must_use]
    pub fn part_before(&self, id: PartId) -> Option<&Part> {
        self.before.as_ref()?.1.parts.get(&id)
    }
    /// A run before.
    #[must_use]
    pub fn run_before(&self, id: RunId) -> Option<&Run> {
        self.before.as_ref()?.1.runs.get(&id)
    }
    /// What becomes of a part of either sheet.
    #[must_use]
    pub fn part(&self, id: PartId) -> Becomes {
        match (self.part_before(id), self.sheet.parts.get(&id)) {
            (Some(_), None) => Becomes::Removed,
            (None, Some(part)) if self.before.is_none() && part.fitted_by != FittedBy::Us => Becomes::Kept,
            (None, _) => Becomes::New,
            (Some(before), Some(after)) => {
                let changed = matches!(self.compared.parts.get(&id), Some(Became::Changed(_)));
                let another = is_another_article(before, after);
                let moved = before.place.is_some() && after.place.is_some() && before.place != after.place;
                becomes(&after.handling, another, moved, changed)
            }
        }
    }
    /// What becomes of a run of either sheet.
    #[must_use]
    pub fn run(&self, id: RunId) -> Becomes {
        match (self.run_before(id), self.sheet.runs.get(&id)) {
            (Some(_), None) => Becomes::Removed,
            (None, Some(run)) if self.before.is_none() && run.fitted_by != FittedBy::Us => Becomes::Kept,
            (None, _) => Becomes::New,
            (Some(before), Some(after)) => {
                let changed = matches!(self.compared.runs.get(&id), Some(Became::Changed(_)));
                let moved =
                    !before.route.is_empty() && !after.route.is_empty() && before.route != after.route;
                becomes(&after.handling, is_another_wire(before, after), moved, changed)
            }
        }
    }
    /// What differs about a part that is on both sheets, in the reader's words.
    #[must_use]
    pub fn part_changes(&self, id: PartId) -> Vec<Saying> {
        crate::differs::part_differs(self, id)
    }
    /// What differs about a run that is on both sheets, in the reader's words.
    #[must_use]
    pub fn run_changes(&self, id: RunId) -> Vec<Saying> {
        crate::differs::run_differs(self, id)
    }
    /// Whether a part is bought: it is new and ours, or its like comes in its place.
    #[must_use]
    pub fn is_bought(&self, id: PartId) -> bool {
        match self.part(id) {
            Becomes::Replaced => true,
            Becomes::New => self
                .sheet
                .parts
                .get(&id)
                .is_some_and(|part| part.fitted_by == FittedBy::Us),
            _ => false,
        }
    }
    /// Whether a run is cut from the reel: it is new and ours, or its like comes in its place.
    #[must_use]
    pub fn is_laid(&self, id: RunId) -> bool {
        match self.run(id) {
            Becomes::Replaced => true,
            Becomes::New => self
                .sheet
                .runs
                .get(&id)
                .is_some_and(|run| run.fitted_by == FittedBy::Us),
            _ => false,
        }
    }
    /// Whether an end of a run, 0 or 1, is finished by us: on a run that we lay, or made anew on one that stays.
    #[must_use]
    pub fn is_finished(&self, id: RunId, end: usize) -> bool {
        let Some(after) = self.sheet.runs.get(&id) else {
            return false;
        };
        if self.is_laid(id) {
            return true;
        }
        let Some(before) = self.run_before(id) else {
            return false;
        };
        let method = |run: &Run| endings(run)[end.min(1)].method.value();
        let moved = before.ends()[end.min(1)].terminal() != after.ends()[end.min(1)].terminal();
        match (method(before), method(after)) {
            (_, None | Some(EndingMethod::Factory | EndingMethod::Loose)) => false,
            // What was not known before and is known now was found out, not made.
            (None, Some(_)) => moved,
            (Some(before), Some(after)) => moved || before != after,
        }
    }
    /// Where a thing goes that comes out.
    #[must_use]
    pub fn once_out(&self, before: Option<&Handling>, after: Option<&Handling>) -> Option<OnceOut> {
        before
            .and_then(|it| it.once_out.value())
            .or_else(|| after.and_then(|it| it.once_out.value()))
    }
    /// Tag of a part, as the sheet that is made calls it, or the one before.
    #[must_use]
    pub fn part_tag(&self, id: PartId) -> &str {
        let part = self.sheet.parts.get(&id).or_else(|| self.part_before(id));
        part.map_or("", |part| part.tag.as_str())
    }
    /// Tag of a run, likewise.
    #[must_use]
    pub fn run_tag(&self, id: RunId) -> &str {
        let run = self.sheet.runs.get(&id).or_else(|| self.run_before(id));
        run.map_or("", |run| run.tag.as_str())
    }
    /// Every part of either sheet, those of the sheet that is made first.
    #[must_use]
    pub fn all_parts(&self) -> Vec<PartId> {
        let before = self.before.iter().flat_map(|(_, sheet)| sheet.parts.keys());
        let gone = before.filter(|id| !self.sheet.parts.contains_key(id));
        self.sheet.parts.keys().chain(gone).copied().collect()
    }
    /// Every run of either sheet, likewise.
    #[must_use]
    pub fn all_runs(&self) -> Vec<RunId> {
        let before = self.before.iter().flat_map(|(_, sheet)| sheet.runs.keys());
        let gone = before.filter(|id| !self.sheet.runs.contains_key(id));
        self.sheet.runs.keys().chain(gone).copied().collect()
    }
    /// What a place of the body is called.
    #[must_use]
    pub fn place_said(&self, name: &str) -> Saying {
        match self.plan.as_ref().and_then(|plan| plan.place(name)) {
            Some(place) => place.said(),
            None => name.into(),
        }
    }
    /// What a passage of the body is called.
    #[must_use]
    pub fn passage_said(&self, name: &str) -> Saying {
        let plan = self.plan.as_ref();
        match plan.and_then(|plan| Some((plan, plan.passage(name)?))) {
            Some((plan, passage)) => plan.said_passage(passage),
            None => name.into(),
        }
    }
    /// How long a passage of the body is; `None` where the body has no plan or no such passage.
    #[must_use]
    pub fn passage_length(&self, name: &str) -> Option<Metres> {
        let passage = self.plan.as_ref()?.passage(name)?;
        Some(passage.metres()).filter(|long| long.0 > 0.0)
    }
    /// The way that a run takes, from place to place; as the route is written where the body has no plan or no such way. `None`
    /// for a run without a route.
    #[must_use]
    pub fn way_said(&self, run: &Run) -> Option<Saying> {
        if run.route.is_empty() {
            return None;
        }
        let walked = self
            .plan
            .as_ref()
            .and_then(|plan| plan.walk(&self.sheet, run).ok().map(|walk| (plan, walk)));
        let places: Vec<Saying> = match &walked {
            Some((plan, walk)) => walk
                .places()
                .filter_map(|at| plan.places.get(at))
                .map(body::Place::said)
                .collect(),
            None => run.route.iter().map(|name| self.place_said(name)).collect(),
        };
        Some(joined(places, "paper-then"))
    }
    /// What stands above a paper: the job, and which sheet it was made from.
    #[must_use]
    pub fn heading(&self) -> Saying {
        let title: Saying = if self.job.title.is_empty() {
            say!("paper-untitled")
        } else {
            self.job.title.as_str().into()
        };
        match &self.before {
            Some((before, _)) => say!(
                "paper-heading-since",
                title = title,
                sheet = self.kind.said(),
                since = before.said()
            ),
            None => say!("paper-heading", title = title, sheet = self.kind.said()),
        }
    }
}

/// How both ends of a run are finished.
pub(crate) fn endings(run: &Run) -> [&model::Ending; 2] {
    [&run.from_ending, &run.to_ending]
}

fn becomes(handling: &Handling, another: bool, moved: bool, changed: bool) -> Becomes {
    match handling.fate.value() {
        Some(Fate::Replace) => Becomes::Replaced,
        _ if another => Becomes::Replaced,
        Some(Fate::Move) => Becomes::Moved,
        _ if moved => Becomes::Moved,
        Some(Fate::Refit) => Becomes::Refitted,
        _ if changed => Becomes::Changed,
        _ => Becomes::Kept,
    }
}

/// Properties that say in which state a part is, how it is set, or what it is joined to; all others say which article it is.
const NO_ARTICLE: &[&str] = &[
    "state",
    "charge",
    "closed",
    "mated",
    "loops",
    "position",
    "when",
    "share",
    "surface",
    "contact",
    "body",
    "cavities",
    "running-load",
    "standing-load",
    "resistance",
    "leakage",
];

/// Whether a part is another article than before. What was not known, or merely assumed, and is known now was found out.
fn is_another_article(before: &Part, after: &Part) -> bool {
    if matches!(after.is, PartKind::Ground(_) | PartKind::Vehicle(_)) {
        return false;
    }
    if before.is.word() != after.is.word() {
        return true;
    }
    let known = |part: &Part, name: &str| {
        part.is
            .get(name)
            .filter(|written| written != "?" && !written.starts_with('~'))
    };
    before
        .is
        .properties()
        .iter()
        .filter(|property| !NO_ARTICLE.contains(&property.name))
        .any(
            |property| match (known(before, property.name), known(after, property.name)) {
                (Some(was), Some(is)) => was != is,
                _ => false,
            },
        )
}

/// Lengths that differ by less, in metres, are the same piece of wire measured twice.
const SAME_LENGTH: f64 = 0.05;

/// Whether a run is another piece of wire than before: other in size, material, colour or insulation, longer, or sound where the
/// one before was not. A shorter one is cut from it.
fn is_another_wire(before: &Run, after: &Run) -> bool {
    let (was, is) = (&before.wire, &after.wire);
    let size = match (was.size.value(), is.size.value()) {
        (Some(was), Some(is)) if before.wire.size.is_settled() => was != is,
        _ => false,
    };
    let material = was.material.is_settled() && is.material.value() != was.material.value();
    let material = material && is.material.value().is_some();
    let insulation = was.insulation.is_given() && is.insulation.is_given() && was.insulation != is.insulation;
    let longer = match (was.length.value(), is.length.value()) {
        (Some(long), Some(now)) if was.length.is_settled() && is.length.is_settled() => {
            now.0 > long.0 + SAME_LENGTH
        }
        _ => false,
    };
    // Water and dirt are dried and cleaned off; what is cut, crushed, burnt or green inside is not mended.
    let spoilt = |condition: Option<Condition>| {
        condition.is_some_and(|it| !matches!(it, Condition::Sound | Condition::Wet))
    };
    let sound = spoilt(was.condition.value()) && is.condition.value() == Some(Condition::Sound);
    // A colour that was not known and is known now was looked at.
    let colour = was.jacket.base.is_some() && is.jacket.base.is_some() && was.jacket != is.jacket;
    size || material || insulation || longer || sound || colour
}
