//! The circuit engine: turns a sheet into a network, traces it, solves it, and finds what each channel drives.
//!
//! Start at [`study`]. *Invariant:* a pure function of sheet and settings: no clock, no randomness, no hash order, the
//! same numbers natively and in wasm. *Invariant:* it never panics; what cannot be known is absent, not guessed.

pub mod speakers;
mod study;
pub use study::*;

use model::{Settings, Sheet};

/// Everything the engine can say of a sheet under these settings.
#[must_use]
pub fn study(_sheet: &Sheet, _settings: &Settings) -> Study {
    Study::default()
}
