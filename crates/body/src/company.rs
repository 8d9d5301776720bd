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
        let ends = || {
            run.ends()
                .into_iter()
                .filter_map(|end| end.terminal())
                .filter_map(|at| Some((sheet.role(at)?, &sheet.parts.get(&at.part)?.is)))
        };
        let any = |which: fn(Role) -> bool| ends().any(|(role, _)| which(role));
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
            || ends().any(|(_, kind)| {
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
pub(crate) fn serves(sheet: &Sheet, run: &Run) -> OrderedSet<PartId> {
    run.ends()
        .into_iter()
        .filter_map(|end| end.terminal())
        .filter(|at| matches!(sheet.role(at), Some(Role::LineIn(_) | Role::LevelIn { .. })))
        .map(|at| at.part)
        .collect()
}

/// A run in a passage.
#[derive(Clone, Debug)]
pub(crate) struct Neighbour {
    pub(crate) run: RunId,
    pub(crate) class: Class,
    pub(crate) serves: OrderedSet<PartId>,
}

/// What lies in each passage.
#[derive(Clone, Debug, Default)]
pub(crate) struct Company(Vec<Vec<Neighbour>>);

impl Company {
    /// Nothing yet.
    pub(crate) fn none(plan: &Plan) -> Self {
        Self(vec![Vec::new(); plan.passages.len()])
    }
    /// All runs of a sheet that have a way, but those that `leave_out` names.
    pub(crate) fn of(plan: &Plan, sheet: &Sheet, leave_out: &dyn Fn(RunId, &Run) -> bool) -> Self {
        let mut company = Self::none(plan);
        for (id, run) in &sheet.runs {
            if run.route.is_empty() || leave_out(*id, run) {
                continue;
            }
            if let Ok(walk) = plan.walk(sheet, run) {
                company.put(sheet, *id, run, &walk);
            }
        }
        company
    }
    /// Puts a run into the passages of its way.
    pub(crate) fn put(&mut self, sheet: &Sheet, id: RunId, run: &Run, walk: &Walk) {
        let neighbour = Neighbour {
            run: id,
            class: Class::of(sheet, run),
            serves: serves(sheet, run),
        };
        for passage in walk.passages() {
            if let Some(list) = self.0.get_mut(passage) {
                list.push(neighbour.clone());
            }
        }
    }
    /// Whether anything lies anywhere that runs of this class are kept away from.
    pub(crate) fn has_unwelcome(&self, class: Class) -> bool {
        self.0.iter().flatten().any(|it| class.keeps_from(it.class))
    }
    /// What lies in a passage.
    pub(crate) fn in_passage(&self, passage: usize) -> &[Neighbour] {
        self.0.get(passage).map(Vec::as_slice).unwrap_or_default()
    }
}
