//! The editor: tools as state machines, camera, selection and hit testing. It knows pointers and keys as plain values,
//! never browser events, so that every gesture can be replayed in a test.
//!
//! Start at [`Editor`]: it takes an [`Input`] or an [`Action`] and tells by [`Effects`] what came of it. *Invariant:*
//! the job changes only by named edits through the history; a gesture that is cancelled or interrupted leaves the job as
//! it was when the gesture began.

mod acting;
pub mod actions;
pub mod ask;
mod breaking;
pub mod camera;
mod clip;
mod doing;
mod editor;
mod effects;
pub mod fingers;
mod hunting;
pub mod input;
mod laid_under;
mod looking;
pub mod margin_notes;
mod on_body;
pub mod options;
pub mod outline;
mod picture;
mod plain;
mod printed;
pub mod recording;
pub mod roles;
pub mod selection;
mod settling;
pub mod side_by_side;
mod sketch;
pub mod tools;
mod tracing;
pub mod walk;
pub mod words;

pub use actions::Action;
pub use breaking::draws;
pub use camera::{Camera, Margins, ScreenPoint};
pub use editor::Editor;
pub use effects::{Effects, Open};
pub use hunting::Suspected;
pub use input::{Button, Input, Key, Mods, Pointer, PointerKind};
pub use laid_under::Fate;
pub use on_body::{SeenOnBody, WayOffer};
pub use picture::Seen;
pub use selection::{Selection, Thing};
pub use tools::{Tool, break_it, meter, move_end, pick, place, pull};
