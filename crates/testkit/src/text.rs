//! Jobs from their text form, for tests that know what they write.

use model::{Job, Sheet, SheetKind};

/// The job of a text.
///
/// # Panics
/// When the text has an error, with all of them shown in their lines.
#[must_use]
#[track_caller]
pub fn job(text: &str) -> Job {
    match model::text::parse(text) {
        Ok(job) => job,
        Err(errors) => panic!("the text of a test has errors:\n{errors}\n"),
    }
}

/// The plan of a text that has one sheet, or the first sheet when it has no plan. An empty text gives an empty sheet.
///
/// # Panics
/// When the text has an error, with all of them shown in their lines.
#[must_use]
#[track_caller]
pub fn sheet(text: &str) -> Sheet {
    let mut job = job(text);
    job.sheets
        .remove(&SheetKind::Plan)
        .or_else(|| job.sheets.pop_first().map(|(_, sheet)| sheet))
        .unwrap_or_default()
}
