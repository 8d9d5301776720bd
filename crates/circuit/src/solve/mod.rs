//! The DC solution: from sparse factors up to a sheet at work, with everything that switches and limits.

mod components;
mod factor;
mod law;
mod levels;
mod operate;
mod system;
pub(crate) mod throwing;

pub(crate) use components::{join, shorten};
pub use factor::{Factor, Slot};
pub use law::{Element, LEAKAGE, Law};
pub use levels::Level;
pub(crate) use levels::{Demand, demands, stay_on};
pub(crate) use operate::{Operating, Operator, Piece, SourceModel};
pub use system::{Closure, LEAST_SUPPLY, NoAnswer, System};
