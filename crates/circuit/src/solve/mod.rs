//! The DC solution: from sparse factors up to a sheet at work, with everything that switches and limits.

mod factor;
mod levels;
mod operate;
mod system;

pub use factor::{Factor, Slot};
pub use levels::Level;
pub(crate) use levels::{Demand, demands};
pub(crate) use operate::{Operating, Operator, Piece, SourceModel};
pub use system::{Closure, Element, LEAKAGE, LEAST_SUPPLY, Law, NoAnswer, System};
