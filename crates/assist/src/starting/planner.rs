//! What is put together while a system is planned, and what can be in its way.

use super::hookup::HookUp;
use super::sketch::Sketch;
use super::wish::Wish;
use model::{PartId, RunId};
use words::Saying;

/// Why a wish cannot be met, and what would do.
#[derive(Clone, Debug, PartialEq)]
pub struct Trouble {
    /// What is in the way.
    pub what: Saying,
    /// What would do.
    pub instead: Saying,
    /// Whether a second main feed could help.
    pub(super) shared: bool,
}

impl Trouble {
    pub(super) fn new(what: Saying, instead: Saying) -> Self {
        Self {
            what,
            instead,
            shared: false,
        }
    }
}

/// A size that several runs share, and the device that guards them.
pub(super) struct Limb {
    /// The runs.
    pub(super) runs: Vec<RunId>,
    /// The device: a part, and its output, from 1, of a block.
    pub(super) device: (PartId, Option<usize>),
    /// Devices of the same rating further along.
    pub(super) twins: Vec<PartId>,
    /// The limb that feeds this one, by its place; it stands before this one.
    pub(super) from: Option<usize>,
    /// The least cross-section that is laid here, in mm², whatever the current.
    pub(super) least: f64,
}

/// What is put together while a system is planned.
pub(super) struct Planner<'w> {
    pub(super) wish: &'w Wish,
    pub(super) sketch: Sketch<'w>,
    pub(super) limbs: Vec<Limb>,
    pub(super) choices: Vec<Saying>,
    pub(super) assumed: Vec<Saying>,
    pub(super) alternator: Option<PartId>,
    pub(super) hookup: HookUp,
    /// Main feeds that share what stands behind.
    pub(super) feeds: usize,
}
