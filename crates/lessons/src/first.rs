//! The job that a newcomer finds on the table, read and arranged beforehand: the page draws it before the reader of the text
//! form and the arranging of a sheet have followed.

use model::Job;
use model::text::TextErrors;

/// The first of the worked jobs as a job file, each part in its place.
const LAID: &str = include_str!("../jobs/estate.json");

/// The first of the worked jobs, its parts in their places. The file is part of the program, and a test reads it.
#[must_use]
pub fn first_job() -> Job {
    model::file::read_own(LAID.as_bytes()).unwrap_or_default()
}

/// The same with the names that a file of them gives: see [`WorkedJob::called`](crate::WorkedJob::called).
///
/// # Errors
/// What does not fit the job, each with its line.
pub fn first_job_called(names: &str) -> Result<Job, TextErrors> {
    crate::worked::put(first_job(), names)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_job_is_the_worked_one_with_its_parts_in_the_places_that_arranging_gives_them() {
        let mut job = crate::WORKED_JOBS.first().expect("a worked job").job();
        for sheet in job.sheets.values_mut() {
            for (id, at) in drawing::arrange_unplaced(sheet) {
                sheet.parts.get_mut(&id).expect("a part of the sheet").at = Some(at);
            }
        }
        // After a change of the job or of the arranging: UPDATE_EXPECT=1 writes it.
        expect_test::expect_file!["../jobs/estate.json"].assert_eq(&model::file::write(&job));
        assert_eq!(first_job(), job);
    }
}
