//! The vehicle's body: a plan of its places and of the passages between them, made from its form and size; what a sheet
//! says once it is laid in that body; and the routes that runs can take.
//!
//! Start at [`Plan::of`], then [`lay`] and [`propose`]. A body without a form has no plan, and then nothing here changes
//! anything. *Invariant:* pure functions, as in all of the engine: no clock, no randomness, no hash order, and no panic on
//! any body. *Invariant:* what is computed here stands only in the laid copy of a sheet; [`settle`] keeps it out of edits.

mod build;
mod company;
mod facts;
mod forms;
mod laid;
mod metal;
mod places;
mod plan;
mod rear;
mod routes;
mod walk;
mod ways;

pub use company::Class;
pub use facts::{Facts, Hazard};
pub use forms::{Size, usual_size};
pub use laid::{lay, settle};
pub use metal::{Metal, MetalPoint};
pub use places::{Passage, Place, Point};
pub use plan::Plan;
pub use routes::{Proposal, Routed, alternatives, assess, hazards_on, propose, route_all, route_those};
pub use walk::{NoWalk, Step, Walk};
