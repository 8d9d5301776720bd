//! The drawing surface: its component, the translation of browser events, and the painter.

mod board;
pub(crate) mod events;
pub(crate) mod paint;
mod pens;

pub(crate) use board::{Board, notes_width};
