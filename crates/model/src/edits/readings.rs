//! Keeping readings of the meter, and taking them away again.

use super::EditError;
use crate::edit::{Change, Edit};
use crate::job::{Job, SheetKind};
use crate::limits::MOST_READINGS;
use crate::property::PropertySet;
use crate::readings::Reading;
use words::say;

fn readings(job: &Job, on: SheetKind) -> &[Reading] {
    job.sheet(on).map_or(&[], |sheet| &sheet.readings)
}

/// Keeps a reading as the last line of the meter sheet.
///
/// # Errors
/// When there are as many as a sheet may have.
pub fn keep_reading(job: &Job, on: SheetKind, reading: Reading) -> Result<Edit, EditError> {
    let mut to = readings(job, on).to_vec();
    if to.len() >= MOST_READINGS {
        return Err(EditError(say!("error-readings", most = MOST_READINGS)));
    }
    let name = say!("edit-keep-reading", at = &reading.at);
    to.push(reading);
    Ok(Edit::new(name, vec![Change::Readings { sheet: on, to }]))
}

/// Takes a kept reading away, by its place in the list.
///
/// # Errors
/// When there is none at that place.
pub fn remove_reading(job: &Job, on: SheetKind, place: usize) -> Result<Edit, EditError> {
    let mut to = readings(job, on).to_vec();
    if place >= to.len() {
        return Err(EditError(say!("error-reading-gone")));
    }
    let gone = to.remove(place);
    let name = say!("edit-remove-reading", at = &gone.at);
    Ok(Edit::new(name, vec![Change::Readings { sheet: on, to }]))
}

/// Sets one value of a kept reading, by its place in the list.
///
/// # Errors
/// When there is none at that place, or the text does not fit.
pub fn set_reading(
    job: &Job,
    on: SheetKind,
    place: usize,
    name: &str,
    text: &str,
) -> Result<Edit, EditError> {
    let mut to = readings(job, on).to_vec();
    let reading = to
        .get_mut(place)
        .ok_or_else(|| EditError(say!("error-reading-gone")))?;
    reading.set(name, text)?;
    let said = say!("edit-set-reading", at = &reading.at);
    Ok(Edit::new(said, vec![Change::Readings { sheet: on, to }]))
}

/// What renaming something does to the readings taken on it; nothing when there are none.
pub(super) fn renamed(job: &Job, on: SheetKind, before: &str, after: &str) -> Option<Change> {
    let all = readings(job, on);
    let to: Vec<Reading> = all
        .iter()
        .map(|reading| reading.renamed(before, after).unwrap_or_else(|| reading.clone()))
        .collect();
    (to != all).then_some(Change::Readings { sheet: on, to })
}
