//! The job that Loomwright works on: a vehicle, its sheets of parts and runs, and the settings they are judged by.
//!
//! Start at [`job`]. This crate knows nobody: no engine, no screen, no disk. Everything here is plain data that can be
//! written, read back and compared. *Invariant:* nothing in it panics, whatever a file holds.

pub mod body;
pub mod breaks;
pub mod compare;
pub mod conductor;
pub mod edit;
pub mod edits;
pub mod fact;
pub mod file;
pub mod handling;
pub mod history;
pub mod id;
pub mod job;
pub mod json;
pub mod kinds;
pub mod laying;
pub mod letters;
pub mod limits;
pub mod mounting;
pub mod picture;
pub mod property;
pub mod quantity;
pub mod readings;
pub mod said;
#[cfg(feature = "schema")]
pub mod schema;
pub mod terminals;
pub mod text;
pub mod thread;
pub mod tuning;
pub mod written;

pub use body::Body;
pub use edit::{Change, Edit, Name};
pub use fact::Fact;
pub use history::History;
pub use id::{PartId, RunId, TerminalName, TerminalRef};
pub use job::{BoardPoint, End, Ending, Job, Part, Run, Settings, Sheet, SheetKind, Turn, Wire};
pub use kinds::{Group, PartKind};
pub use property::{PropertySet, PropertyType};
pub use terminals::{Role, Side, Terminal};
