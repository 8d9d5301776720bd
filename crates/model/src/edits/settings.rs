//! What holds for the whole job: its title and vehicle, the conditions, limits set in it, checks left out.

use super::{EditError, hold_length, set_name};
use crate::edit::{Change, Edit};
use crate::job::Job;
use crate::limits::{LONGEST_LABEL, MOST_SETTINGS, check_limit};
use crate::property::PropertySet;
use words::say;

/// Gives the job a title.
///
/// # Errors
/// When it is too long for a file.
pub fn set_title(title: &str) -> Result<Edit, EditError> {
    hold_length(title, LONGEST_LABEL, "title")?;
    Ok(Edit::new(
        say!("edit-title"),
        vec![Change::Title(title.to_owned())],
    ))
}

/// Sets a property of what the title block says, from its written form.
///
/// # Errors
/// When there is no such property, or the text does not fit.
pub fn set_vehicle_property(job: &Job, name: &str, text: &str) -> Result<Edit, EditError> {
    let mut vehicle = job.vehicle.clone();
    vehicle.set(name, text)?;
    Ok(Edit::new(
        say!("edit-set-alone", name = set_name(name)),
        vec![Change::Vehicle(Box::new(vehicle))],
    ))
}

/// Sets one of the conditions, from its written form.
///
/// # Errors
/// When there is no such condition, or the text does not fit.
pub fn set_condition(job: &Job, name: &str, text: &str) -> Result<Edit, EditError> {
    let mut settings = job.settings.clone();
    settings.conditions.set(name, text)?;
    Ok(Edit::new(
        say!("edit-set-alone", name = set_name(name)),
        vec![Change::Settings(Box::new(settings))],
    ))
}

/// Sets a limit that the checks hold things against, for this job; without a number the profile's holds again.
///
/// # Errors
/// When the number is none that a limit can be, its name is too long for a file, or it would be one more than a job may set.
pub fn set_limit(job: &Job, key: &str, number: Option<f64>) -> Result<Edit, EditError> {
    hold_length(key, LONGEST_LABEL, "limit")?;
    let mut settings = job.settings.clone();
    let limits = &mut settings.limits;
    let name = if let Some(number) = number {
        check_limit(number).map_err(EditError)?;
        if !limits.contains_key(key) && limits.len() >= MOST_SETTINGS {
            return Err(EditError(say!("error-limits", most = MOST_SETTINGS)));
        }
        limits.insert(key.to_owned(), number);
        say!("edit-limit", limit = key)
    } else {
        limits.remove(key);
        say!("edit-limit-back", limit = key)
    };
    Ok(Edit::new(name, vec![Change::Settings(Box::new(settings))]))
}

/// Leaves a check out of this job, or takes it in again.
///
/// # Errors
/// When its name is too long for a file, or it would be one more than a job may leave out.
pub fn leave_out(job: &Job, check: &str, out: bool) -> Result<Edit, EditError> {
    hold_length(check, LONGEST_LABEL, "check")?;
    let mut settings = job.settings.clone();
    if out && !settings.allowed.contains(check) && settings.allowed.len() >= MOST_SETTINGS {
        return Err(EditError(say!("error-left-out", most = MOST_SETTINGS)));
    }
    let name = if out {
        settings.allowed.insert(check.to_owned());
        say!("edit-leave-out", check = check)
    } else {
        settings.allowed.remove(check);
        say!("edit-take-in", check = check)
    };
    Ok(Edit::new(name, vec![Change::Settings(Box::new(settings))]))
}
