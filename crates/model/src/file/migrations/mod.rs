//! How files of older versions are brought up to this one: an append-only list of steps, without gaps, each working on
//! plain JSON, never on today's types, so that it does for ever what it did when it was written.
//!
//! *To add one:* write `mNNNN_what_it_does.rs` beside this, append it to [`STEPS`], and put a file of the old version
//! and the same brought up into `tests/jobs/vN/` and `tests/jobs/vN+1/`; a test notices when they are missing.

mod m0001_sheets_and_kinds;
mod m0002_pictures_among_what;

use serde_json::{Map, Value};

/// One step: its name, and what it does to the top of a file. It leaves alone what it does not recognise.
pub struct Step {
    /// Name of its file.
    pub name: &'static str,
    apply: fn(&mut Map<String, Value>),
}

/// The steps: the first brings version 0 to 1, the next 1 to 2, and so on.
pub const STEPS: &[Step] = &[
    Step {
        name: "m0001_sheets_and_kinds",
        apply: m0001_sheets_and_kinds::apply,
    },
    Step {
        name: "m0002_pictures_among_what",
        apply: m0002_pictures_among_what::apply,
    },
];

/// The version that this writes.
pub const VERSION: u32 = 2;

const _: () = assert!(
    STEPS.len() == VERSION as usize,
    "each version after 0 has one step that leads to it"
);

/// Brings the top of a file of an older version up to this one.
pub fn bring_up(top: &mut Map<String, Value>, version: u32) {
    let done = usize::try_from(version).unwrap_or(usize::MAX);
    for (step, to) in STEPS.iter().zip(1_u32..).skip(done) {
        (step.apply)(top);
        top.insert("version".to_owned(), to.into());
    }
}
