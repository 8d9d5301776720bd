//! A checklist: steps in their order, each with a name that lasts, by which the job remembers that it is done.

use crate::becomes::run_said;
use crate::table::{Cell, Column, Table};
use crate::work::{Becomes, Work};
use model::conductor::FittedBy;
use model::handling::OnceOut;
use model::{Part, PartId, PartKind, Run, RunId};
use words::{Saying, say};

/// What a group of steps is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Phase {
    /// The supply is taken off before anything else.
    Isolate,
    /// What is there is recorded.
    Record,
    /// Trim comes off.
    Trim,
    /// Runs come out.
    RunsOut,
    /// Parts come out.
    PartsOut,
    /// Nothing is left lying about.
    Sweep,
    /// Ground points and returns.
    Ground,
    /// Fuse holders, blocks, breakers.
    Protection,
    /// Everything else that is mounted.
    Parts,
    /// Grommets, sleeves and tubes.
    Passages,
    /// Runs that are not returns.
    Runs,
    /// What can be measured without the supply.
    Cold,
    /// Fuses and battery.
    Battery,
    /// Measured, set, proven.
    Prove,
}

impl Phase {
    /// The written word.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Isolate => "isolate",
            Self::Record => "record",
            Self::Trim => "trim",
            Self::RunsOut => "runs-out",
            Self::PartsOut => "parts-out",
            Self::Sweep => "sweep",
            Self::Ground => "ground",
            Self::Protection => "protection",
            Self::Parts => "parts",
            Self::Passages => "passages",
            Self::Runs => "runs",
            Self::Cold => "cold",
            Self::Battery => "battery",
            Self::Prove => "prove",
        }
    }
    /// The words above the group.
    #[must_use]
    pub fn said(self) -> Saying {
        Saying::new(format!("step-phase-{}", self.word()))
    }
}

/// One step.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// Its name, made of ids: it stays when something is renamed, and when other steps come or go.
    pub name: String,
    /// Its group.
    pub phase: Phase,
    /// What to do.
    pub what: Saying,
    /// What it is about.
    pub tags: Vec<String>,
    /// Whether it is done.
    pub done: bool,
}

/// A checklist.
#[derive(Clone, Debug, PartialEq)]
pub struct Checklist {
    /// Its written name: `strip-out`, `build`.
    pub name: &'static str,
    /// What everybody who does such work is told.
    pub care: Saying,
    /// Its steps, in their order.
    pub steps: Vec<Step>,
}

impl Checklist {
    /// How many steps are done.
    #[must_use]
    pub fn done(&self) -> usize {
        self.steps.iter().filter(|step| step.done).count()
    }
    /// The checklist as a list.
    #[must_use]
    pub fn table(&self) -> Table {
        let mut table = Table::new(
            self.name,
            &[
                Column::words("done"),
                Column::words("phase"),
                Column::words("step"),
                Column::words("for"),
                Column::words("step-name"),
            ],
        );
        for step in &self.steps {
            table.rows.push(vec![
                if step.done {
                    Cell::Said(say!("paper-done"))
                } else {
                    Cell::Empty
                },
                Cell::Said(step.phase.said()),
                Cell::Said(step.what.clone()),
                Cell::tags(step.tags.iter().map(String::as_str)),
                Cell::text(&step.name),
            ]);
        }
        table.notes.push(self.care.clone());
        table
    }
}

/// Steps in the making.
pub(crate) struct Steps<'w, 'j> {
    pub(crate) work: &'w Work<'j>,
    list: &'static str,
    pub(crate) steps: Vec<Step>,
}

impl<'w, 'j> Steps<'w, 'j> {
    pub(crate) fn of(list: &'static str, work: &'w Work<'j>) -> Self {
        Self {
            work,
            list,
            steps: Vec::new(),
        }
    }
    /// Adds a step; `name` is what tells it from the others of its list.
    pub(crate) fn add(&mut self, phase: Phase, name: &str, what: Saying, tags: &[&str]) {
        let name = format!("{}/{name}", self.list);
        self.steps.push(Step {
            done: self.work.job.thread.done.contains(&name),
            name,
            phase,
            what,
            tags: tags
                .iter()
                .filter(|tag| !tag.is_empty())
                .map(|tag| (*tag).to_owned())
                .collect(),
        });
    }
    pub(crate) fn finish(self) -> Checklist {
        Checklist {
            name: self.list,
            care: checks::care(),
            steps: self.steps,
        }
    }
    /// A step for a part that comes out.
    pub(crate) fn part_out(&mut self, id: PartId, part: &Part) {
        let becomes = self.work.part(id);
        let now = self.work.sheet.parts.get(&id).map(|it| &it.handling);
        let out = self.work.once_out(Some(&part.handling), now);
        let what = say!(
            "step-part-out",
            tag = &part.tag,
            name = part.said(),
            then = then(becomes, out, part.fitted_by)
        );
        self.add(Phase::PartsOut, &format!("part/{id}"), what, &[&part.tag]);
    }
    /// A step for a run that comes out.
    pub(crate) fn run_out(&mut self, id: RunId, run: &Run) {
        let becomes = self.work.run(id);
        let now = self.work.sheet.runs.get(&id).map(|it| &it.handling);
        let out = self.work.once_out(Some(&run.handling), now);
        let sheet = self
            .work
            .before
            .as_ref()
            .map_or(&self.work.sheet, |(_, sheet)| sheet);
        let what = say!(
            "step-run-out",
            tag = &run.tag,
            way = run_said(sheet, run),
            then = then(becomes, out, run.fitted_by)
        );
        self.add(Phase::RunsOut, &format!("run/{id}"), what, &[&run.tag]);
    }
}

/// What happens to a thing that comes out.
fn then(becomes: Becomes, out: Option<OnceOut>, by: FittedBy) -> Saying {
    match (becomes, out) {
        (Becomes::Refitted, _) => say!("step-then-refit"),
        (Becomes::Moved, _) => say!("step-then-move"),
        (_, Some(out)) => model::said::choice(out.title()),
        // What the maker fitted is kept until somebody says otherwise.
        (_, None) if by == FittedBy::Maker => say!("step-then-keep"),
        (_, None) => say!("step-then-ask"),
    }
}

/// Whether a thing of the sheet before comes out, for good or for a time.
pub(crate) fn comes_out(becomes: Becomes) -> bool {
    matches!(
        becomes,
        Becomes::Removed | Becomes::Replaced | Becomes::Refitted | Becomes::Moved
    )
}

/// Whether a run lands on a battery.
pub(crate) fn at_battery(parts: &ordered::OrderedMap<PartId, Part>, run: &Run) -> bool {
    run.ends().into_iter().any(|end| {
        end.terminal()
            .and_then(|at| parts.get(&at.part))
            .is_some_and(|part| matches!(part.is, PartKind::Battery(_)))
    })
}
