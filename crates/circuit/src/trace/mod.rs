//! Tracing: what feeds a part and how its return gets back, in networks of any shape.

mod blocks;
mod circuits;
mod view;
mod ways;

pub use blocks::Blocks;
pub(crate) use circuits::{Resistances, Tracer};
pub use view::View;
pub use ways::Ways;
