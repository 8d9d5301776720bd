//! Worked jobs in the reader's language, as a copy of one's own: from then on their names are the job's own words. English is
//! part of the program; names in other languages lie beside the page, a file for each job.

use crate::browser;
use lessons::WorkedJob;
use model::Job;
use words::Language;

/// A worked job with its names in a language; in English where they are not to be had.
pub(crate) async fn in_language(worked: &WorkedJob, language: Language) -> Job {
    if language.built_in() {
        return worked.job_in(language);
    }
    let name = format!("jobs/{}/{}.words", language.tag(), worked.key);
    let names = browser::file_beside(&name).await;
    names
        .and_then(|names| worked.called(&names).ok())
        .unwrap_or_else(|| worked.job())
}
