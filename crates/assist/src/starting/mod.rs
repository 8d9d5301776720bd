//! A whole planned sheet from a few words: what there is and what is wanted, as a short form ([`Wish`]) or as one line of text
//! ([`read`]), becomes parts, runs, hook-up, sizes, fuses, places and routes ([`start`]).
//!
//! ```text
//! hatchback, 4 × 75 W amp, mono 500 W at 2 ohm, front components, rear pair, 2 × 4 ohm dual coil sub
//! ```
//!
//! Which output drives which speakers is the choice that gives most power within what both bear ([`hookup::choose`]). What was
//! taken for granted is marked so on the sheet and told; what cannot be met is told with what would do. Places on the board
//! are left to whoever shows the sheet.
//!
//! *Left out:* several head units; solar panels, for which the engine has no source.

mod amps;
pub mod hookup;
mod lex;
mod lexicon;
mod phrase;
mod places;
mod plan;
mod planner;
mod read;
mod signal;
mod sizes;
mod sketch;
mod sound;
mod speakers;
mod supply;
mod vehicle;
mod wish;
mod write;

pub use phrase::NotUnderstood;
pub use plan::{Offer, Started, Sums, offers, start};
pub use planner::Trouble;
pub use read::{LONGEST, Understood, read};
pub use wish::*;
pub use write::{Phrase, line, phrases};
