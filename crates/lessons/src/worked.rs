//! A worked job in another language: the names in it, and nothing else.
//!
//! ```text
//! title Wohnmobil: Zusatzbatterie und Licht
//! vehicle Wohnmobil, Diesel
//! drawn-by Die Werkbank
//! remark Wie vorgefunden
//! names
//!   B1 Starterbatterie
//!   P1 Radiostecker
//!   P1.2 Zündungsplus
//! thread
//!   C1 Der Bass setzt aus
//!   C1.remark Steht jetzt
//!   Q1.decided-on 2. Juni, im Betrieb
//!   intake.1 Kratzer am Schweller
//!   built.reading.1 volle Lautstärke
//!   built.tuning.1.gain ein Drittel
//! ```
//!
//! `P1.2` names what a cavity of a plug is for. In the block `thread`, `C1` and `Q1` are what a complaint or an offer says;
//! lines without a tag of their own are counted from 1.

use crate::WorkedJob;
use crate::blocks::{Line, each_block, items};
use ::words::{Language, say};
use model::property::PropertySet;
use model::text::{TextError, TextErrors};
use model::{Job, PartKind, SheetKind};

/// What a file of names begins its lines with.
const BLOCKS: &str = "title, vehicle, drawn-by, remark, names, thread";

impl WorkedJob {
    /// The job with its names in a language. One whose names are not part of this program stays English; see
    /// [`WorkedJob::called`] for names that were fetched.
    #[must_use]
    pub fn job_in(&self, language: Language) -> Job {
        match (language, self.german) {
            (Language::German, Some(names)) => self.called(names).unwrap_or_else(|_| self.job()),
            _ => self.job(),
        }
    }
    /// The job with the names that a file of them gives.
    ///
    /// # Errors
    /// What does not fit the job, each with its line: a word that begins no line, a part or a cavity that is not there.
    pub fn called(&self, names: &str) -> Result<Job, TextErrors> {
        put(self.job(), names)
    }
}

/// Puts names into a job.
pub(crate) fn put(mut job: Job, names: &str) -> Result<Job, TextErrors> {
    let mut errors: Vec<TextError> = Vec::new();
    let lines = Line::all(names);
    let too_many = each_block(&lines, |head, block| {
        let (word, text) = head.text.split_once(' ').unwrap_or((head.text, ""));
        match word {
            "title" => text.clone_into(&mut job.title),
            "vehicle" => text.clone_into(&mut job.vehicle.name),
            "drawn-by" => text.clone_into(&mut job.vehicle.drawn_by),
            "remark" => text.clone_into(&mut job.vehicle.remark),
            "names" => errors.extend(
                items(block)
                    .into_iter()
                    .filter(|(_, tag, name)| !call(&mut job, tag, name))
                    .map(|(line, tag, _)| {
                        line.error(
                            say!("worked-words-no-thing", tag = tag),
                            say!("lesson-words-part-help"),
                        )
                    }),
            ),
            "thread" => errors.extend(
                items(block)
                    .into_iter()
                    .filter(|(_, what, text)| say_of_thread(&mut job, what, text).is_none())
                    .map(|(line, what, _)| {
                        line.error(
                            say!("worked-words-no-thing", tag = what),
                            say!("worked-words-thread-help"),
                        )
                    }),
            ),
            _ => errors.push(head.error(
                say!("lesson-text-no-block", word = word),
                say!("lesson-text-begins", words = BLOCKS),
            )),
        }
    });
    errors.extend(too_many);
    if errors.is_empty() {
        Ok(job)
    } else {
        Err(TextErrors(errors))
    }
}

/// Names a part, or what a cavity is for, on every sheet; whether there is such a thing.
fn call(job: &mut Job, tag: &str, name: &str) -> bool {
    let (tag, position) = tag
        .split_once('.')
        .map_or((tag, None), |(tag, at)| (tag, Some(at)));
    let mut found = false;
    for sheet in job.sheets.values_mut() {
        for part in sheet.parts.values_mut().filter(|part| part.tag == tag) {
            match (position, &mut part.is) {
                (None, _) => {
                    name.clone_into(&mut part.label);
                    found = true;
                }
                (Some(at), PartKind::Plug(plug)) => {
                    for cavity in plug.cavities.0.iter_mut().filter(|cavity| cavity.position == at) {
                        cavity.function = name.into();
                        found = true;
                    }
                }
                _ => {}
            }
        }
    }
    found
}

/// Puts a text into a line of the thread, or of what a sheet keeps besides its parts and runs.
fn say_of_thread(job: &mut Job, what: &str, text: &str) -> Option<()> {
    let mut steps = what.split('.');
    let first = steps.next()?;
    let counted = |steps: &mut std::str::Split<'_, char>| -> Option<usize> {
        steps.next()?.parse::<usize>().ok()?.checked_sub(1)
    };
    let line: &mut dyn PropertySet = if first == "intake" {
        job.thread.intake.get_mut(counted(&mut steps)?)?.as_set_mut()
    } else if let Some(kind) = SheetKind::from_word(first) {
        let sheet = job.sheets.get_mut(&kind)?;
        match steps.next()? {
            "reading" => sheet.readings.get_mut(counted(&mut steps)?)?.as_set_mut(),
            "tuning" => sheet.tunings.get_mut(counted(&mut steps)?)?.as_set_mut(),
            _ => return None,
        }
    } else if let Some(complaint) = job.thread.complaints.iter_mut().find(|it| it.tag == first) {
        complaint.as_set_mut()
    } else {
        let offer = job.thread.offers.iter_mut().find(|it| it.tag == first)?;
        offer.as_set_mut()
    };
    let usual = if SheetKind::from_word(first).is_some() {
        "remark"
    } else {
        "what"
    };
    line.set(steps.next().unwrap_or(usual), text).ok()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::WORKED_JOBS;

    /// Everything in words that a job holds, by what it belongs to.
    fn names(job: &Job) -> Vec<(String, String)> {
        let vehicle = &job.vehicle;
        let mut all = vec![
            ("title".to_owned(), job.title.clone()),
            ("vehicle".to_owned(), vehicle.name.clone()),
            ("drawn-by".to_owned(), vehicle.drawn_by.clone()),
            ("remark".to_owned(), vehicle.remark.clone()),
        ];
        for sheet in job.sheets.values() {
            for part in sheet.parts.values() {
                all.push((part.tag.clone(), part.label.clone()));
                all.push((format!("note of {}", part.tag), part.note.clone()));
                if let PartKind::Plug(plug) = &part.is {
                    let cavities = plug.cavities.0.iter();
                    all.extend(
                        cavities.map(|it| (format!("{}.{}", part.tag, it.position), it.function.to_string())),
                    );
                }
            }
            for run in sheet.runs.values() {
                all.push((run.tag.clone(), run.label.clone()));
                all.push((format!("note of {}", run.tag), run.note.clone()));
            }
        }
        for complaint in &job.thread.complaints {
            all.push((complaint.tag.clone(), complaint.words.clone()));
            all.push((format!("{}.remark", complaint.tag), complaint.remark.clone()));
        }
        for offer in &job.thread.offers {
            all.push((offer.tag.clone(), offer.words.clone()));
            all.push((format!("{}.decided-on", offer.tag), offer.decided_on.clone()));
        }
        for (at, note) in job.thread.intake.iter().enumerate() {
            all.push((format!("intake.{}", at + 1), note.words.clone()));
        }
        for (kind, sheet) in &job.sheets {
            let of = kind.word();
            for (at, reading) in sheet.readings.iter().enumerate() {
                all.push((format!("{of}.reading.{}", at + 1), reading.remark.clone()));
            }
            for (at, tuning) in sheet.tunings.iter().enumerate() {
                all.push((format!("{of}.tuning.{}.gain", at + 1), tuning.gain.clone()));
                all.push((format!("{of}.tuning.{}", at + 1), tuning.remark.clone()));
            }
        }
        all.retain(|(_, name)| !name.is_empty());
        all
    }

    /// Whether a name of [`names`] is one of the thread.
    fn of_thread(of: &str) -> bool {
        of.starts_with(['C', 'Q'])
            && of
                .get(1..2)
                .is_some_and(|it| it.chars().all(|c| c.is_ascii_digit()))
            || of.starts_with("intake.")
            || of.contains(".reading.")
            || of.contains(".tuning.")
    }

    #[test]
    #[allow(clippy::disallowed_methods, reason = "this test reads files from the disk")]
    fn every_name_of_a_worked_job_is_german_and_nothing_else_differs() {
        for worked in WORKED_JOBS {
            let path = format!("{}/jobs/de/{}.words", env!("CARGO_MANIFEST_DIR"), worked.key);
            let words = std::fs::read_to_string(&path).expect("there is a file of names");
            let english = worked.job();
            let german = worked
                .called(&words)
                .unwrap_or_else(|errors| panic!("{path}:\n{errors}"));
            let (before, after) = (names(&english), names(&german));
            assert_eq!(before.len(), after.len(), "{path}");
            for ((of, was), (same, is)) in before.iter().zip(&after) {
                assert_eq!(of, same, "{path}");
                // A word that both languages have.
                assert!(
                    was != is || is == "Subwoofer" || is == "Radio",
                    "{path}: {of} {is}"
                );
            }
            // With the English names back it is the same job.
            let mut back = String::new();
            for (of, name) in &before {
                match of.as_str() {
                    "title" | "vehicle" | "drawn-by" | "remark" => back.push_str(&format!("{of} {name}\n")),
                    of if of_thread(of) => back.push_str(&format!("thread\n  {of} {name}\n")),
                    _ => back.push_str(&format!("names\n  {of} {name}\n")),
                }
            }
            assert_eq!(put(german, &back), Ok(english), "{path}");
        }
    }

    #[test]
    fn a_name_for_what_is_not_there_is_told_with_its_line() {
        let worked = WORKED_JOBS.first().expect("a worked job");
        let errors = worked
            .called("title Kombi\nnames\n  B7 Batterie\n  P1.9 Licht\nparts\n")
            .expect_err("three");
        let lines: Vec<usize> = errors.0.iter().map(|error| error.line).collect();
        assert_eq!(lines, [3, 4, 5], "{errors}");
    }
}
