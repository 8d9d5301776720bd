//! Helpers for tests, one module per area. Nothing here is shipped.

pub mod any;
pub mod breaks;
pub mod faults;
pub mod random;
pub mod sound_systems;
pub mod text;

pub use text::{job, sheet};
