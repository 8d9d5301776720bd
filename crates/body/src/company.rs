//! Which runs lie together: what a run is for, and what lies in each passage.

use crate::plan::Plan;
use crate::walk::Walk;
use model::{PartId, PartKind, Role, Run, RunId, Sheet};
use ordered::OrderedSet;

/// What a run is for, as far as the terminals it lands on tell. The engine knows more, but only of what works; a route
/// is chosen before that.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Class {
    /// Carries supply current: a feed or a return.
    Supply,
    /// From a channel to a speaker, or to a speaker-level input.
    Speaker,
    /// A turn-on lead, or to the coil of a relay.
    Control,
    /// Between line-level jacks.
    Signal,
    /// The terminals do not tell: from plug to plug.
    Other,
}

impl Class {
    /// Of a run on this sheet.
    #[must_use]
    pub fn of(sheet: &Sheet, run: &Run) -> Self {
        // What a terminal is for takes a while to find: each end is asked once.
        let ends = run.ends().map(|end| {
            let at = end.terminal()?;
            let part = sheet.parts.get(&at.part)?;
            Some((part.role(&at.terminal)?, &part.is))
        });
        let any = |which: fn(Role) -> bool| ends.iter().flatten().any(|(role, _)| which(*role));
        if any(Role::is_line) {
            Self::Signal
        } else if any(|role| {
            matches!(
                role,
                Role::SpeakerOut { .. } | Role::Coil { .. } | Role::SpeakerThrough | Role::LevelIn { .. }
            )
        }) {
            Self::Speaker
        } else if any(|role| matches!(role, Role::TurnOnIn | Role::TurnOnOut | Role::Control)) {
            Self::Control
        } else if any(|role| matches!(role, Role::SupplyPlus | Role::SupplyMinus | Role::Body))
            || ends.iter().flatten().any(|(_, kind)| {
                matches!(
                    kind,
                    PartKind::Fuse(_) | PartKind::Breaker(_) | PartKind::Block(_) | PartKind::Bus(_)
                )
            })
        {
            Self::Supply
        } else {
            Self::Other
        }
    }
}

impl Class {
    /// Whether runs of these classes are kept apart: feeds and signal leads.
    pub(crate) fn keeps_from(self, other: Self) -> bool {
        matches!(
            (self, other),
            (Self::Supply, Self::Signal) | (Self::Signal, Self::Supply)
        )
    }
}

/// The equipment whose signal a run carries: what it brings it to.
fn serves(sheet: &Sheet, run: &Run) -> OrderedSet<PartId> {
    run.ends()
        .into_iter()
        .filter_map(|end| end.terminal())
        .filter(|at| matches!(sheet.role(at), Some(Role::LineIn(_) | Role::LevelIn { .. })))
        .map(|at| at.part)
        .collect()
}

/// A run that lies somewhere.
#[derive(Clone, Debug)]
pub(crate) struct Neighbour {
    pub(crate) run: RunId,
    pub(crate) class: Class,
    /// Of signal leads: the equipment that they lead to.
    pub(crate) serves: OrderedSet<PartId>,
}

impl Neighbour {
    pub(crate) fn of(sheet: &Sheet, id: RunId, run: &Run) -> Self {
        let class = Class::of(sheet, run);
        Self {
            run: id,
            class,
            serves: if class == Class::Signal {
                serves(sheet, run)
            } else {
                OrderedSet::new()
            },
        }
    }
}

/// What lies in each passage.
#[derive(Clone, Debug, Default)]
pub(crate) struct Company {
    all: Vec<Neighbour>,
    /// By passage: places in `all`.
    in_passage: Vec<Vec<usize>>,
}

impl Company {
    /// Nothing yet.
    pub(crate) fn none(plan: &Plan) -> Self {
        Self {
            all: Vec::new(),
            in_passage: vec![Vec::new(); plan.passages.len()],
        }
    }
    /// All runs of a sheet that have a way, but those that `leave_out` names.
    pub(crate) fn of(plan: &Plan, sheet: &Sheet, leave_out: &dyn Fn(RunId, &Run) -> bool) -> Self {
        let mut company = Self::none(plan);
        for (id, run) in &sheet.runs {
            if run.route.is_empty() || leave_out(*id, run) {
                continue;
            }
            if let Ok(walk) = plan.walk(sheet, run) {
                company.put(Neighbour::of(sheet, *id, run), &walk);
            }
        }
        company
    }
    /// Puts a run into the passages of its way.
    pub(crate) fn put(&mut self, neighbour: Neighbour, walk: &Walk) {
        let place = self.all.len();
        self.all.push(neighbour);
        for passage in walk.passages() {
            if let Some(list) = self.in_passage.get_mut(passage) {
                list.push(place);
            }
        }
    }
    /// Whether anything lies anywhere that runs of this class are kept away from.
    pub(crate) fn has_unwelcome(&self, class: Class) -> bool {
        self.all.iter().any(|it| class.keeps_from(it.class))
    }
    /// What lies in a passage.
    pub(crate) fn in_passage(&self, passage: usize) -> impl Iterator<Item = &Neighbour> {
        let list = self
            .in_passage
            .get(passage)
            .map(Vec::as_slice)
            .unwrap_or_default();
        list.iter().filter_map(|at| self.all.get(*at))
    }
}
