//! From what is stored to a job: the last full text, and what was done since. Damage costs what is damaged: the rest
//! of the text is read, and the journal is played up to the first entry that is missing or unreadable. An edit after a
//! gap is not played: it was made on a job that is not there.

use super::record::{Line, Snapshot};
use model::Job;
use model::file::{FileError, Problem};
use model::history::{self, Entry};
use words::say;

/// A job as far as it could be read.
#[derive(Debug)]
pub(super) struct Restored {
    pub(super) job: Job,
    /// Of the text and of the journal.
    pub(super) problems: Vec<Problem>,
    /// Entries that were not played, as they were stored.
    pub(super) unplayed: Vec<String>,
    /// How many entries were played.
    pub(super) played: u64,
}

/// Reads the text and plays the journal, whose lines come in the order of their revisions.
///
/// # Errors
/// When not even a part of the text can be read.
pub(super) fn restore(snapshot: &Snapshot, journal: &[Line]) -> Result<Restored, FileError> {
    let opened = model::file::read_lenient(snapshot.text.as_bytes())?;
    let mut restored = Restored {
        job: opened.job,
        problems: opened.problems,
        unplayed: Vec::new(),
        played: 0,
    };
    let mut expected = snapshot.revision.saturating_add(1);
    let since = journal.iter().filter(|line| line.revision > snapshot.revision);
    for line in since {
        if restored.unplayed.is_empty() {
            let read = if line.revision == expected {
                Entry::from_line(&line.entry)
            } else {
                Err(say!("journal-missing", edit = expected.to_string()))
            };
            match read {
                Ok(entry) => {
                    history::replay(&mut restored.job, [entry]);
                    restored.played = restored.played.saturating_add(1);
                    expected = expected.saturating_add(1);
                    continue;
                }
                Err(reason) => restored.problems.push(Problem {
                    place: format!("journal.{}", line.revision),
                    message: say!("journal-unplayed", why = reason),
                    left_out: true,
                }),
            }
        }
        restored.unplayed.push(line.entry.clone());
    }
    Ok(restored)
}
