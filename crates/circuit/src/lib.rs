//! The circuit engine: turns a sheet into a network, traces it, solves it, and finds what each channel drives.
//!
//! Start at [`study`]. *Invariant:* a pure function of sheet and settings: no clock, no randomness, no hash order, the
//! same numbers natively and in wasm. *Invariant:* it never panics; what cannot be known is absent, not guessed.

mod assemble;
mod beside;
mod conductor;
mod deck;
mod devices;
mod energy;
pub mod faults;
mod flows;
pub mod heat;
mod measured;
mod meter;
mod narrow;
pub mod network;
mod protection;
mod purpose;
pub mod signal;
pub mod solve;
pub mod speakers;
mod study;
pub mod trace;
mod trial;
mod wired;

pub use assemble::{MANY_PARTS, study, study_laid, study_steady};
pub use beside::beside;
pub use conductor::{Conductor, device_resistance, ending_range};
pub use deck::{OperatingPoint, deck, deck_and_point, operating_point};
pub use measured::{Measured, cold_per_metre, measured};
pub use meter::{
    Bench, Fault, Foreseen, Isolated, METER_INPUT, METER_LEADS, MOST_OHMS, Meter, OhmsShown, Placed, Probe,
    Shown, Tones, ohms_between,
};
pub use study::*;
pub use trial::{Trial, TrialNet, Tried, WithJoint};
