//! Files of the person's own: opening by picker or drop, saving to the same file where the browser offers that, as a
//! download where not, and exports of the drawing.
//!
//! What is in a job file is not this module's matter: bytes in, bytes out.

mod error;
mod export;
mod open;
mod save;

pub(crate) use error::FileTrouble;
pub(crate) use export::{export_png, export_text};
pub(crate) use open::{Opened, dropped, pick, read};
pub(crate) use save::{FileHandle, Saved, file_name, save, save_as};

/// Ending of a job file.
pub(crate) const ENDING: &str = ".loom.json";
