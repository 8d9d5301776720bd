//! Undo and redo: whatever was done, taking it back gives the same bytes as before.

use model::file::write;
use model::history::{Entry, History, MOST_STEPS, Touched, replay};
use model::{Change, Edit, Job, PartId, SheetKind};
use proptest::collection::vec;
use proptest::prelude::*;
use testkit::any::{any_edit, any_job};

fn title(to: &str) -> Edit {
    Edit::new(format!("Call it {to}"), vec![Change::Title(to.to_owned())])
}

#[test]
fn names_marks_and_redo() {
    let (mut job, mut history) = (Job::default(), History::new());
    assert!(!history.is_changed());
    assert_eq!((history.undo(&mut job), history.redo(&mut job)), (None, None));
    history.apply(&mut job, title("a"));
    history.apply(&mut job, title("b"));
    assert_eq!(
        (history.undo_name(), history.redo_name()),
        (Some("Call it b"), None)
    );
    assert_eq!(history.names().collect::<Vec<_>>(), ["Call it b", "Call it a"]);
    history.mark_saved();
    history.undo(&mut job);
    assert_eq!(
        (job.title.as_str(), history.redo_name(), history.is_changed()),
        ("a", Some("Call it b"), true)
    );
    history.redo(&mut job);
    assert!(!history.is_changed());
    // Undo and a fresh edit: the saved state can never be reached again, though as many steps lie behind.
    history.undo(&mut job);
    history.apply(&mut job, title("c"));
    assert_eq!((history.redo_name(), history.is_changed()), (None, true));
}

#[test]
fn what_changes_nothing_is_no_step() {
    let (mut job, mut history) = (Job::default(), History::new());
    let nothing = Change::Part {
        sheet: SheetKind::Plan,
        id: PartId(4),
        to: None,
    };
    assert_eq!(history.apply(&mut job, Edit::new("Delete", vec![nothing])), None);
    assert_eq!(history.undo_name(), None);
    history.begin("Move");
    assert_eq!(history.commit(), None);
    assert!(!history.is_changed());
}

#[test]
fn a_gesture_is_one_step_and_a_drag_one_change() {
    let (mut job, mut history) = (testkit::job("fuse F1 @0,0\n"), History::new());
    let start = job.clone();
    let id = PartId(1);
    history.begin("Move fuse");
    for x in 1..1000 {
        let mut part = job.sheets[&SheetKind::Plan].parts[&id].clone();
        part.at = Some(model::BoardPoint { x, y: 0 });
        let to = Some(Box::new(part));
        history.extend(
            &mut job,
            Edit::new(
                "",
                vec![Change::Part {
                    sheet: SheetKind::Plan,
                    id,
                    to,
                }],
            ),
        );
    }
    let Some(Entry::Did(edit)) = history.commit() else {
        panic!("it was a step")
    };
    assert_eq!((edit.name.as_str(), edit.changes.len()), ("Move fuse", 1));
    assert_eq!(
        Touched::by(&edit).parts.into_iter().collect::<Vec<_>>(),
        [(SheetKind::Plan, id)]
    );
    history.undo(&mut job);
    assert_eq!(job, start);
    history.redo(&mut job);
    assert_eq!(
        job.sheets[&SheetKind::Plan].parts[&id].at.map(|at| at.x),
        Some(999)
    );
}

#[test]
fn the_oldest_steps_are_forgotten() {
    let (mut job, mut history) = (Job::default(), History::new());
    for n in 0..MOST_STEPS + 10 {
        history.apply(&mut job, title(&n.to_string()));
    }
    let mut undone = 0;
    while history.undo(&mut job).is_some() {
        undone += 1;
    }
    assert_eq!((undone, job.title.as_str()), (MOST_STEPS, "9"));
    // The state as it was opened, which counted as saved, lies behind what was forgotten.
    assert!(history.is_changed());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(150))]

    /// Random edits, undone, give the same bytes; done again, the same bytes too.
    #[test]
    fn undo_all_and_redo_all(job in any_job(), edits in vec(any_edit(), 0..12)) {
        let (mut job, mut history) = (job, History::new());
        let mut states = vec![write(&job)];
        for edit in edits {
            if history.apply(&mut job, edit).is_some() {
                states.push(write(&job));
            } else {
                prop_assert_eq!(states.last(), Some(&write(&job)));
            }
        }
        for state in states.iter().rev().skip(1) {
            prop_assert!(history.undo(&mut job).is_some());
            prop_assert_eq!(&write(&job), state);
        }
        prop_assert!(history.undo(&mut job).is_none());
        prop_assert!(!history.is_changed());
        for state in states.iter().skip(1) {
            prop_assert!(history.redo(&mut job).is_some());
            prop_assert_eq!(&write(&job), state);
        }
        prop_assert!(history.redo(&mut job).is_none());
    }

    /// A gesture is one step, a cancelled one leaves no trace, and the journal tells it all.
    #[test]
    fn gestures(
        start in any_job(),
        gestures in vec((vec(any_edit(), 0..6), 0..5_u8), 0..8),
    ) {
        let (mut job, mut history) = (start.clone(), History::new());
        let mut journal = Vec::new();
        for (edits, ending) in gestures {
            let (before, redo) = (write(&job), history.redo_name().map(str::to_owned));
            prop_assert!(history.begin("Gesture").is_none());
            for (at, edit) in edits.into_iter().enumerate() {
                if ending == 4 && at % 2 == 1 { history.replace(&mut job, edit) } else { history.extend(&mut job, edit) }
            }
            match ending {
                0 => {
                    history.cancel(&mut job);
                    prop_assert_eq!(write(&job), before);
                    prop_assert_eq!(history.redo_name().map(str::to_owned), redo);
                }
                1 => {
                    // Undo amid a gesture drops it.
                    prop_assert!(history.undo(&mut job).is_none());
                    prop_assert_eq!(write(&job), before);
                    journal.extend(history.undo(&mut job));
                }
                _ => {
                    let after = write(&job);
                    let entry = history.commit();
                    prop_assert_eq!(&write(&job), &after);
                    if let Some(entry) = entry {
                        journal.push(entry);
                        journal.extend(history.undo(&mut job));
                        prop_assert_eq!(write(&job), before);
                        if ending > 2 {
                            journal.extend(history.redo(&mut job));
                            prop_assert_eq!(write(&job), after);
                        }
                    } else {
                        prop_assert_eq!(before, after);
                    }
                }
            }
        }
        // The journal survives being written down, and gives the job as it stands.
        let written: Vec<String> = journal.iter().map(Entry::line).collect();
        let read: Vec<Entry> = written.iter().map(|line| Entry::from_line(line).expect("what was written")).collect();
        let mut replayed = start;
        replay(&mut replayed, read);
        prop_assert_eq!(write(&replayed), write(&job));
    }
}
