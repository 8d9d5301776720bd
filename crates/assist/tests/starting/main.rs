//! Planned systems from a few words: what is read, which hook-up is chosen, and that the sheet that comes of it is in order.

#![allow(clippy::disallowed_methods, reason = "tests keep lines of text in files")]

mod asked;
mod hookup;
mod random;
mod reading;
