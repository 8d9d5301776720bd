//! Breaks: each kind does what it says, what does not fit says so, and all of them are undone.

use lessons::{LESSONS, Version, apply, read, write};
use model::History;

#[test]
fn a_break_is_undone_to_the_last_byte() {
    for built_in in LESSONS {
        let lesson = built_in.lesson();
        assert!(!lesson.breaks.is_empty(), "{}", built_in.key);
        for broken in &lesson.breaks {
            assert!(
                broken.effects.iter().any(|it| !it.still),
                "{}: nothing follows",
                built_in.key
            );
            let mut thrown = 0;
            for version in Version::BOTH {
                let mut job = lesson.version(version);
                let before = model::file::write(&job);
                let Ok(edit) = apply(broken, &job) else { continue };
                let mut history = History::new();
                history.apply(&mut job, edit);
                // A plug that is apart already cannot be pulled once more.
                thrown += usize::from(model::file::write(&job) != before);
                history.undo(&mut job);
                assert!(model::file::write(&job) == before, "{}: not undone", built_in.key);
            }
            assert!(thrown > 0, "{}: {} breaks nowhere", built_in.key, broken.said());
        }
    }
}

/// A break that does not fit says so; a dead part leaves the joints of its wires.
#[test]
fn breaks_by_kind() {
    let lesson = read(
        "lesson a\nsystem\n    battery B1\n    load L1 power=60W\n    load L2 power=60W\n    run W1 B1.+ L1.+ 4mm2 1m\n    \
         run W2 L1.+ L2.+ 4mm2 1m\n    run W3 L1.- B1.- 4mm2 1m\n    run W4 L2.- B1.- 4mm2 1m\n",
    )
    .unwrap_or_else(|errors| panic!("{errors}"));
    let broken = |words: &str| {
        let text = write(&lesson).replace("system", &format!("break {words}\nsystem"));
        let made = read(&text).unwrap_or_else(|errors| panic!("{errors}"));
        let mut job = made.version(Version::Bad);
        let edit = apply(&made.breaks[0], &job).map_err(|why| why.to_string())?;
        job.apply(edit);
        let sheet = job.sheet(Version::Bad.sheet()).cloned().unwrap_or_default();
        let analysis = checks::analyse(&sheet, &job.settings);
        let amps = |tag: &str| {
            let id = sheet.part_by_tag(tag).map(|(id, _)| id);
            id.and_then(|id| analysis.study.parts.get(&id))
                .map_or(0.0, |flow| flow.current.mean.0)
        };
        Ok::<_, String>([amps("L1"), amps("L2")].map(|amps| amps > 1.0))
    };
    assert_eq!(broken("open W2"), Ok([true, false]));
    assert_eq!(broken("open W1"), Ok([false, false]));
    assert_eq!(
        broken("dead L1"),
        Ok([false, true]),
        "its terminal still joins W1 and W2"
    );
    assert_eq!(broken("dead B1"), Ok([false, false]));
    assert_eq!(broken("joined B1.+ L2.+"), Ok([true, true]));
    assert!(broken("reversed B1").is_ok());
    assert_eq!(
        broken("open B1"),
        Err("“B1” cannot be opened; a run, plug, switch, relay, isolator, fuse, breaker, ground point or terminal can.".to_owned())
    );
    assert_eq!(
        broken("joined B1.+ L2.x"),
        Err("“L2” has no terminal “x”; it has L2.+ and L2.-.".to_owned())
    );
    assert!(broken("reversed W1").is_err() && broken("dead W1").is_err());
}
