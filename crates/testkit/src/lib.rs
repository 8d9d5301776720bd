//! Helpers for tests, one module per area. Nothing here is shipped.

pub mod any;
pub mod breaks;
mod conditions;
pub mod faults;
pub mod random;
pub mod sound_systems;
pub mod text;

pub use conditions::conditions;
pub use text::{job, sheet};
