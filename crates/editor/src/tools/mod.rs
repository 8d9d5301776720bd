//! The tools: small trees of states. A state's data lives in its variant and states replace each other by value, so
//! nothing is left over from an earlier gesture. Every state can be left in three ways: completed, cancelled (Escape,
//! pointer lost) and interrupted (another tool taken, a second finger down).

mod bend;
pub mod break_it;
pub mod meter;
pub mod move_end;
mod ohms;
pub mod pick;
pub mod place;
pub mod pull;

pub use break_it::Breaking;
pub use meter::Meter;
pub use move_end::MoveEnd;
pub use pick::Pick;
pub use place::Place;
pub use pull::Pull;

use words::{Saying, say};

/// The tool in hand.
#[derive(Clone, Debug, PartialEq)]
pub enum Tool {
    /// Pick, move, fence in, bend.
    Pick(Pick),
    /// Pull a run from a terminal.
    Pull(Pull),
    /// Put one end of a run elsewhere.
    MoveEnd(MoveEnd),
    /// Put a part from the shelf.
    Place(Place),
    /// Shift the paper.
    Hand,
    /// Measure.
    Meter(Meter),
    /// Cut and join, to see what follows.
    Break(Breaking),
}

impl Default for Tool {
    fn default() -> Self {
        Self::Pick(Pick::Idle)
    }
}

impl Tool {
    /// The state's address, as tests and the status line show it: `pick/carrying`.
    #[must_use]
    pub fn address(&self) -> &'static str {
        match self {
            Self::Pick(pick) => pick.address(),
            Self::Pull(pull) => pull.address(),
            Self::MoveEnd(end) => end.address(),
            Self::Place(_) => "place/holding",
            Self::Hand => "hand",
            Self::Meter(meter) => meter.address(),
            Self::Break(tool) => tool.address(),
        }
    }
    /// What to do with it, in a few words.
    #[must_use]
    pub fn hint(&self) -> Saying {
        match self {
            Self::Pick(Pick::Idle | Pick::Pressing { .. }) => {
                say!("hint-pick")
            }
            Self::Pick(Pick::Carrying { .. }) => say!("hint-carry"),
            Self::Pick(Pick::Fencing { .. }) => say!("hint-fence"),
            Self::Pick(Pick::Bending { .. } | Pick::Cornering { .. }) => {
                say!("hint-bend")
            }
            Self::MoveEnd(end) => end.hint(),
            Self::Pull(Pull::Waiting) => say!("hint-pull"),
            Self::Pull(Pull::Drawing { keys: true, .. }) => {
                say!("hint-pull-keys")
            }
            Self::Pull(Pull::Drawing { .. }) => {
                say!("hint-pulling")
            }
            Self::Place(_) => {
                say!("hint-place")
            }
            Self::Hand => say!("hint-hand"),
            Self::Meter(meter) => meter.hint(),
            Self::Break(tool) => tool.hint(),
        }
    }
}
