//! The tools: small trees of states. A state's data lives in its variant and states replace each other by value, so
//! nothing is left over from an earlier gesture. Every state can be left in three ways: completed, cancelled (Escape,
//! pointer lost) and interrupted (another tool taken, a second finger down).

mod bend;
pub mod meter;
pub mod move_end;
mod ohms;
pub mod pick;
pub mod place;
pub mod pull;

pub use meter::Meter;
pub use move_end::MoveEnd;
pub use pick::Pick;
pub use place::Place;
pub use pull::Pull;

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
        }
    }
    /// What to do with it, in a few words.
    #[must_use]
    pub fn hint(&self) -> &'static str {
        match self {
            Self::Pick(Pick::Idle | Pick::Pressing { .. }) => {
                "Drag a part to move it, a terminal to pull a run, the paper to fence things in."
            }
            Self::Pick(Pick::Carrying { .. }) => "Let go to put it down. Esc puts it back.",
            Self::Pick(Pick::Fencing { .. }) => "Everything inside the fence is picked.",
            Self::Pick(Pick::Bending { .. } | Pick::Cornering { .. }) => {
                "Let go to keep the bend. Esc takes it back."
            }
            Self::MoveEnd(end) => end.hint(),
            Self::Pull(Pull::Waiting) => "Take a terminal to start the run from.",
            Self::Pull(Pull::Drawing { keys: true, .. }) => {
                "Arrows go to terminals that fit, Enter connects, Esc gives up."
            }
            Self::Pull(Pull::Drawing { .. }) => {
                "Glowing terminals fit. Drop on paper for parts that make sense, on a run to splice it."
            }
            Self::Place(_) => {
                "Click or Enter puts it down, on a run it is put into it. R turns it, Esc puts it back."
            }
            Self::Hand => "Drag the paper.",
            Self::Meter(meter) => meter.hint(),
        }
    }
}
