//! What is known of the fault: readings of a meter, and what can be seen and heard.

use circuit::Probe;
use model::job::{Duty, VehicleState};
use model::{PartId, TerminalName};

/// What the vehicle does while something is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct State {
    /// The state of the vehicle.
    pub vehicle: VehicleState,
    /// What is played.
    pub duty: Duty,
}

impl State {
    /// In which everything is on and draws, and the engine is not needed: measurements are proposed in it.
    pub const ON: Self = Self {
        vehicle: VehicleState::EngineOff,
        duty: Duty::Music,
    };
}

/// A reading of a meter.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// Where the leads were. Ohms are read with the supply isolated, whatever the state.
    pub probe: Probe,
    /// What the vehicle did.
    pub state: State,
    /// The number read, in V, A or Ω; `None` where an ohmmeter showed an open circuit.
    pub number: Option<f64>,
    /// By how much it may be wrong, in its unit, where that is told: as two standard deviations.
    pub tolerance: Option<f64>,
}

/// What can be seen and heard.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Symptom {
    /// Nothing comes out of a speaker.
    Silent(PartId),
    /// Less than it should comes out of a speaker, or no bass.
    Weak(PartId),
    /// A speaker plays as it should.
    Plays(PartId),
    /// A part does not turn on.
    Off(PartId),
    /// A part turns on.
    On(PartId),
    /// A fuse, or one output of a block, has opened.
    Opened(PartId, Option<TerminalName>),
    /// A hum in the sound of an amplifier, or what is on a speaker.
    Hum(PartId),
}
