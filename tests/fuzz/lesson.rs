//! Lessons, as an instructor types them or a stranger sends them: read, or refused at a line that exists; what was read is
//! written in one form, tells its texts, throws its breaks and takes them back.

use crate::{Fate, fuzz};
use lessons::{Told, Version, apply, faults, read, score, write};

fn target(bytes: &[u8]) -> Fate {
    let text = String::from_utf8_lossy(bytes);
    let lesson = match read(&text) {
        Ok(lesson) => lesson,
        Err(errors) => {
            assert!(!errors.is_empty(), "a refusal has a reason");
            let lines = text.lines().count().max(1);
            for error in &errors.0 {
                assert!(
                    (1..=lines).contains(&error.line),
                    "line {} of {lines}",
                    error.line
                );
                assert!(error.column >= 1 && !error.message.is_empty());
                let _ = error.to_string();
            }
            return Fate::Refused;
        }
    };
    let written = write(&lesson);
    let again = match read(&written) {
        Ok(again) => again,
        Err(errors) => panic!("what was written cannot be read:\n{errors}\n{written}"),
    };
    assert_eq!(
        write(&again),
        written,
        "written, read and written again it is the same"
    );
    let told = Told::of(&lesson);
    let _ = told.problems();
    let marks: Vec<lessons::Mark> = faults(&lesson, &told.bad.analysis)
        .into_iter()
        .filter(|fault| fault.wanted)
        .filter_map(|fault| Some((*fault.things.first()?, fault.reason)))
        .map(|(thing, reason)| lessons::Mark { thing, reason })
        .collect();
    let outcome = score(&lesson, &marks);
    assert!(outcome.accused.is_empty() && outcome.found.len() >= marks.len().min(1));
    for broken in &lesson.breaks {
        for version in Version::BOTH {
            let before = lesson.version(version);
            let mut job = before.clone();
            if let Ok(edit) = apply(broken, &job) {
                let undo = job.apply(edit);
                job.apply(undo);
                assert!(job == before, "{} is not undone", broken.title());
            }
        }
    }
    Fate::Read
}

#[test]
fn a_lesson_of_any_content_is_read_or_refused_at_its_place() {
    let seeds = lessons::LESSONS
        .iter()
        .map(|lesson| lesson.text.as_bytes().to_vec())
        .collect();
    let words = [
        "lesson", "story", "look", "break", "question", "fault", "system", "about", "then", "still", "says",
        "right", "wrong", "why", "bad", "good", "open", "dead", "reversed", "joined", "silent", "opens",
        "{current", "{broken", "}", "W1", "W2", "B1.+", "B1", "F1", "A1", "A1.1", "LS1", "LS1.a", "  - ",
        "  + ", "\n", "\n  ", "> 5 A", "id=p1",
    ];
    fuzz("lesson", seeds, &words, target);
}
