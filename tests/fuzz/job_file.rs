//! The job file: whatever it holds, it is read or refused with a reason; what was read keeps its bytes and can be analysed.

use crate::{Fate, fuzz};

fn target(bytes: &[u8]) -> Fate {
    // Salvage has to live with anything that is JSON at all.
    if let Ok(opened) = model::file::read_lenient(bytes) {
        let again = model::file::write(&opened.job);
        assert!(
            model::file::read_lenient(again.as_bytes()).is_ok(),
            "what was salvaged cannot be read again"
        );
    }
    match model::file::read(bytes) {
        Ok(job) => {
            let written = model::file::write(&job);
            let again = model::file::read(written.as_bytes()).expect("a written job is readable");
            assert_eq!(
                model::file::write(&again),
                written,
                "written, read and written again it is the same"
            );
            for sheet in job.sheets.values() {
                let first = checks::analyse(sheet, &job.settings);
                // The promise of the engine: it balances, or says that it has no answer. Numbers are never NaN.
                let text = format!("{first:?}");
                // A label may say the word: what is repeated from the file is no number.
                assert!(
                    written.contains("NaN") || !text.contains("NaN"),
                    "a number of the analysis is no number"
                );
            }
            Fate::Read
        }
        Err(error) => {
            assert!(!error.to_string().trim().is_empty(), "an error says why");
            Fate::Refused
        }
    }
}

#[test]
fn a_job_file_of_any_content_is_read_or_refused_with_a_reason() {
    let mut jobs: Vec<_> = lessons::WORKED_JOBS.iter().map(lessons::WorkedJob::job).collect();
    jobs.extend(
        testkit::sound_systems::sound_systems()
            .iter()
            .map(|(_, text)| testkit::job(text)),
    );
    let seeds = jobs
        .iter()
        .map(|job| model::file::write(job).into_bytes())
        .collect();
    let words = [
        "null",
        "true",
        "false",
        "\"format\"",
        "\"version\"",
        "\"sheets\"",
        "\"parts\"",
        "\"runs\"",
        "\"kind\"",
        "\"given\"",
        "\"assumed\"",
        "\"loomwright-job\"",
        "{}",
        "[]",
        "[[[[[[[[[[[[[[[[",
        "{\"a\":{\"a\":{\"a\":",
        "\"\\ud800\"",
        "\"\"",
    ];
    fuzz("job-file", seeds, &words, target);
}
