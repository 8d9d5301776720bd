//! Tracing: what feeds a part and how its return gets back, in networks of any shape.

mod blocks;
mod circuits;
mod marks;
mod resistances;
mod trail;
mod view;
mod ways;

pub use blocks::Blocks;
pub(crate) use circuits::Tracer;
pub(crate) use resistances::Resistances;
pub use view::{Cursor, View};
pub use ways::Ways;
