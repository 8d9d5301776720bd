//! Lessons, as an instructor types them or a stranger sends them: read, or refused at a line that exists; what was read is
//! written in one form, tells its texts, throws its breaks and takes them back. Links that carry one are held to the same.

use crate::{Fate, fuzz};
use lessons::{Lesson, Records, Sitting, Told, Version, apply, faults, read, read_draft, score, write};

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
                assert!(error.column >= 1 && !error.message.to_string().is_empty());
                let _ = error.to_string();
            }
            if let Ok(draft) = read_draft(&text) {
                let written = write(&draft);
                let again = read_draft(&written).map(|again| write(&again));
                assert_eq!(again.as_deref(), Ok(written.as_str()), "a draft is kept as it is");
                let _ = draft.lacks(&draft.analyse(Version::Bad));
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
    let marks: Vec<lessons::Mark> = faults(&lesson, &told.shown(Version::Bad).analysis)
        .into_iter()
        .filter(|fault| fault.wanted)
        .filter_map(|fault| Some((*fault.things.first()?, fault.reason)))
        .map(|(thing, reason)| lessons::Mark { thing, reason })
        .collect();
    let outcome = score(&lesson, &marks);
    assert!(outcome.accused.is_empty() && outcome.found.len() >= marks.len().min(1));
    exercise(&lesson, &told);
    for broken in &lesson.breaks {
        for version in Version::BOTH {
            let before = lesson.version(version);
            let mut job = before.clone();
            if let Ok(edit) = apply(broken, &job) {
                let undo = job.apply(edit);
                job.apply(undo);
                assert!(job == before, "{} is not undone", broken.said());
            }
        }
    }
    Fate::Read
}

#[test]
fn a_lesson_of_any_content_is_read_or_refused_at_its_place() {
    let seeds = lessons::LESSONS
        .iter()
        .map(|lesson| lesson.text().as_bytes().to_vec())
        .collect();
    let words = [
        "lesson", "story", "look", "break", "question", "fault", "system", "about", "then", "still", "says",
        "right", "wrong", "why", "bad", "good", "open", "dead", "reversed", "joined", "silent", "opens",
        "{current", "{broken", "}", "W1", "W2", "B1.+", "B1", "F1", "A1", "A1.1", "LS1", "LS1.a", "  - ",
        "  + ", "\n", "\n  ", "> 5 A", "id=p1",
    ];
    fuzz("lesson", seeds, &words, target);
}

/// A learner marks the foremost thing of every fault that is wanted, and hands in; what is kept of it is read back equal. Each
/// fault can be asked for or not.
fn exercise(lesson: &Lesson, told: &Told<'_>) {
    let mut sitting = Sitting::new("A learner");
    let all = faults(lesson, &told.shown(Version::Bad).analysis);
    for fault in all.iter().filter(|fault| fault.wanted) {
        if let Some(thing) = fault.things.first() {
            let _ = sitting.mark(lesson, *thing, &fault.reason, &fault.says);
        }
    }
    let _ = sitting.hand_in(lesson);
    let record = lessons::Record::of(&sitting, lesson, &lesson.key, "");
    let records = Records(record.into_iter().collect());
    assert_eq!(Records::from_json(&records.json()).as_ref(), Ok(&records));
    for fault in all.iter().take(4) {
        let mut own = lesson.clone();
        own.ask_for(fault, !fault.wanted);
        own.explain(fault, "words");
        assert!(read_draft(&write(&own)).is_ok(), "{}", write(&own));
    }
}

#[test]
fn links_of_lessons() {
    let seeds = lessons::LESSONS
        .iter()
        .map(|lesson| {
            let fragment = lessons::lesson_fragment(&lesson.lesson()).expect("lessons fit into links");
            // The address is long, so that some changes leave the lesson as it was.
            let way = "a/long/way/to/the/board/".repeat(120);
            format!("https://wiring.example/{way}#{fragment}").into_bytes()
        })
        .collect();
    fuzz(
        "lesson-links",
        seeds,
        &["#", "job=", "own-lesson=", "lesson=", "AQ", "-", "_", "=", "%23"],
        |bytes| {
            let link = String::from_utf8_lossy(bytes);
            match lessons::open_lesson(&link) {
                Ok(lesson) => {
                    let again = lessons::lesson_fragment(&lesson).map(|it| lessons::open_lesson(&it));
                    assert_eq!(again, Ok(Ok(lesson)), "what opens packs again");
                    Fate::Read
                }
                Err(error) => {
                    assert!(!error.to_string().is_empty());
                    Fate::Refused
                }
            }
        },
    );
}
