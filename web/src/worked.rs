//! Worked jobs in the reader's language, as a copy of one's own: from then on their names are the job's own words. English is
//! part of the program; names in other languages lie beside the page, a file for each job.

use crate::browser;
use lessons::{WORKED_JOBS, WorkedJob};
use model::Job;
use words::Language;

/// A worked job with its names in a language; in English where they are not to be had.
pub(crate) async fn in_language(worked: &WorkedJob, language: Language) -> Job {
    if language.built_in() {
        return worked.job_in(language);
    }
    names(worked, language)
        .await
        .and_then(|names| worked.called(&names).ok())
        .unwrap_or_else(|| worked.job())
}

/// The job that lies there at first with its names in a language; nothing where it is in that language as it is, or the names
/// are not to be had.
pub(crate) async fn first_in_language(language: Language) -> Option<Job> {
    let worked = WORKED_JOBS.first().filter(|_| language != Language::English)?;
    lessons::first_job_called(&names(worked, language).await?).ok()
}

async fn names(worked: &WorkedJob, language: Language) -> Option<String> {
    let name = format!("jobs/{}/{}.words", language.tag(), worked.key);
    browser::file_beside(&name).await
}
