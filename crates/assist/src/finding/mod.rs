//! Finding the fault: from what a meter reads and what can be seen and heard to what is broken, and which measurement tells most next.
//!
//! - **Suspicions.** Every single fault of a sheet (`suspects`): each run cut, resistive or touching the body, each fuse, switch, relay and
//!   plug open, each ground poor, each part dead, each speaker open, shorted or reversed. Each has a weight: how often such a thing is what is
//!   wrong (common practice, our own judgement; no count of repairs is known to us).
//! - **Likelihood.** Every suspicion foretells every reading ([`circuit::Bench`]). A reading counts for a suspicion as a normal
//!   distribution round what it foretells, as wide as a hand meter and typical contacts make it, over a floor for what nobody thought of.
//! - **Next measurement.** Of all places where leads can be put the one whose reading is expected to tell most (Shannon's mutual
//!   information between what is broken and what is read, in bits) for the effort: what comes off to get there, what has to be
//!   isolated (`probes`).
//! - **Pairs.** Where no single fault explains what was read, pairs of those that explain part of it are added.
//!
//! The foretold readings come from a few changes of factored networks; those that lead are solved anew by the engine before they count.

mod belief;
pub(crate) mod effort;
mod evidence;
mod next;
pub(crate) mod probes;
mod read;
mod said;
pub(crate) mod scale;
pub(crate) mod suspects;
mod symptoms;
mod verdict;

pub use belief::Finder;
pub use evidence::{Reading, State, Symptom};
pub use read::{read_point, read_reading, read_shown, read_symptom};
pub use said::{said_number, said_probe, said_suspect, said_unexplained};
pub use verdict::{Group, Proposal, Suspect, Verdict};
