//! What the engine is asked again and again to find: sizes of wires and fuses, mends of all that is wrong, a whole
//! planned system from a few words, the fault behind what a meter reads, and the fewest readings that rule all grave faults out.
//!
//! *Invariant:* nothing here decides what is right. Every proposal is an edit, and [`checks::analyse`] judges what comes of it.

pub mod finding;
pub mod mending;
pub mod proving;
pub mod sizing;
pub mod starting;
