//! The ways of runs through the body: which there are, and the one that is taken.

use crate::editor::Editor;
use crate::effects::Effects;
use model::RunId;
use model::edits::{EditError, set_route};
use words::say;

/// A route that a run can take, for a choice.
#[derive(Clone, Debug, PartialEq)]
pub struct WayOffer {
    /// The places and passages on it.
    pub route: Vec<String>,
    /// Its length, in words.
    pub length: String,
    /// What speaks for and against it, in sentences.
    pub reasons: Vec<String>,
    /// Whether the run has it now.
    pub is_taken: bool,
}

impl Editor {
    /// A run with what follows from its way through the body.
    #[must_use]
    pub fn laid_run(&self, run: RunId) -> Option<model::Run> {
        body::lay(self.sheet(), &self.job.settings)
            .runs
            .get(&run)
            .cloned()
    }

    /// The best routes of a run through the body, with what speaks for and against each.
    #[must_use]
    pub fn ways_of(&self, run: RunId) -> Vec<WayOffer> {
        let Some(plan) = body::Plan::of(&self.job.settings.body) else {
            return Vec::new();
        };
        // A route may name its passages alone, or its places too: the way is the same.
        let has = self
            .sheet()
            .runs
            .get(&run)
            .filter(|run| !run.route.is_empty())
            .and_then(|run| plan.walk(self.sheet(), run).ok())
            .map(|walk| walk.passages().collect::<Vec<_>>());
        body::propose(&plan, self.sheet(), run)
            .into_iter()
            .map(|offer| WayOffer {
                length: self
                    .words
                    .figure(words::drawn(offer.length.0, words::Unit::Metre)),
                reasons: offer.reasons.iter().map(|it| self.words.say(it)).collect(),
                is_taken: has
                    .as_ref()
                    .is_some_and(|has| offer.walk.passages().eq(has.iter().copied())),
                route: offer.route,
            })
            .collect()
    }

    /// Lays a run along a route.
    ///
    /// # Errors
    /// When the run is not on the sheet.
    pub fn lay_along(&mut self, run: RunId, route: Vec<String>) -> Result<Effects, EditError> {
        let edit = set_route(&self.job, self.on, run, route);
        self.make(edit)
    }

    /// Lays all runs through the body anew, but those whose way is locked.
    pub(crate) fn route_everything(&mut self) {
        if self.refuses() {
            return;
        }
        let Some(plan) = body::Plan::of(&self.job.settings.body) else {
            self.tell(say!("body-form-unknown"));
            return;
        };
        self.interrupt();
        let routed = body::route_all(&plan, self.sheet(), self.on);
        let (changed, without) = (routed.changed.len(), routed.without.len());
        if changed > 0 {
            self.apply(routed.edit);
        }
        self.tell(say!("body-routed", changed = changed, without = without));
    }
}
