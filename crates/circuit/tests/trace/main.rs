//! Tracing and protection against two others: brute force on small random networks, and the algorithms of a general graph
//! library on larger ones.

mod brute_force;
mod library;
mod networks;
