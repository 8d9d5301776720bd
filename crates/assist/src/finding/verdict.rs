//! What comes of the search: who is suspected, what to measure next, and whether it is at its end.

use super::evidence::State;
use circuit::Probe;
use model::breaks::Break;

/// What is suspected, by thing.
#[derive(Clone, Debug, PartialEq)]
pub struct Suspect {
    /// What is broken: one thing, or two. Nothing where all is as drawn.
    pub breaks: Vec<Break>,
    /// Its share of the suspicion, 0 to 1.
    pub share: f64,
    /// What each reading that was given would have been, in the order in which they were given.
    pub foretold: Vec<Option<f64>>,
}

/// A set of suspicions that nothing that can be measured tells apart.
pub type Group = Vec<Suspect>;

/// What to measure next.
#[derive(Clone, Debug, PartialEq)]
pub struct Proposal {
    /// Where to put the leads.
    pub probe: Probe,
    /// What the vehicle does.
    pub state: State,
    /// What it is expected to tell, in bits.
    pub bits: f64,
    /// What it takes, in minutes.
    pub minutes: f64,
    /// What each of the leading suspicions would read there, in their order; `None` for an open circuit.
    pub foretold: Vec<(Suspect, Option<f64>)>,
}

/// How far it has come.
#[derive(Clone, Debug, PartialEq)]
pub enum Verdict {
    /// One thing is left.
    Found(Suspect),
    /// These are left, and no measurement tells them apart.
    Alike(Group),
    /// There is something to measure.
    Open(Proposal),
    /// Nothing is known yet that speaks of a fault.
    Nothing,
}
