//! Helpers shared by the test targets of this package.

// Tests may talk to the disk, the environment and the clock; the ban in `clippy.toml` is for core crates.
#![allow(clippy::disallowed_methods)]

#[cfg(feature = "browser")]
pub mod browser;
pub mod chase;
pub mod python;
