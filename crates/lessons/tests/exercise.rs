//! The exercise as learners have it: marks put and taken back, what is handed in, what is kept of it.

use lessons::{BuiltIn, Fault, Lesson, Record, Records, Refusal, Sitting, Thing, Verdict, Version, faults};

fn lesson(key: &str) -> Lesson {
    BuiltIn::of(key).map_or_else(|| panic!("no lesson {key}"), BuiltIn::lesson)
}

fn thing(lesson: &Lesson, name: &str) -> Thing {
    let sheet = lesson.sheet(Version::Bad);
    lessons::thing(&sheet, name).unwrap_or_else(|| panic!("no {name}"))
}

fn all_faults(lesson: &Lesson) -> Vec<Fault> {
    faults(lesson, &lesson.analyse(Version::Bad))
}

#[test]
fn a_learner_marks_changes_takes_back_and_hands_in() {
    let lesson = lesson("fuse-far-from-battery");
    let [w1, w2, w6] = ["W1", "W2", "W6"].map(|name| thing(&lesson, name));
    let mut sitting = Sitting::new("  Learner seven ");
    assert_eq!((sitting.learner(), sitting.try_number()), ("Learner seven", 1));
    assert_eq!(sitting.mark(&lesson, w2, "overloaded-run", ""), Ok(0));
    assert_eq!(
        sitting.mark(&lesson, w2, "overloaded-run", ""),
        Err(Refusal::Twice)
    );
    assert_eq!(sitting.mark(&lesson, w6, "lead-loss", "looks thin"), Ok(1));
    assert_eq!(
        sitting.mark(&lesson, w1, "no-such-check", ""),
        Err(Refusal::NoSuchReason)
    );
    let gone = Thing::Run(model::RunId(9999));
    assert_eq!(
        sitting.mark(&lesson, gone, "lead-loss", ""),
        Err(Refusal::NoSuchThing)
    );
    assert_eq!(sitting.change(&lesson, 0, "fuse-too-far", "long way"), Ok(()));
    assert_eq!(
        sitting.change(&lesson, 7, "fuse-too-far", ""),
        Err(Refusal::NoSuchMark)
    );
    assert_eq!(sitting.take_back(7), Err(Refusal::NoSuchMark));
    assert!(sitting.outcome().is_none() && Record::of(&sitting, &lesson, "x", "").is_none());

    let outcome = sitting.hand_in(&lesson).cloned().unwrap_or_default();
    assert_eq!(
        (outcome.found.len(), outcome.missed.len(), outcome.points()),
        (1, 0, (0, 1))
    );
    let verdicts: Vec<Verdict> = sitting
        .marks()
        .iter()
        .map(|it| outcome.verdict(&it.mark))
        .collect();
    assert_eq!(verdicts, [Verdict::Right, Verdict::Wrong]);
    // Nothing changes after that.
    assert_eq!(sitting.hand_in(&lesson), Err(Refusal::HandedIn));
    assert_eq!(sitting.take_back(1), Err(Refusal::HandedIn));
    assert_eq!(sitting.mark(&lesson, w1, "lead-loss", ""), Err(Refusal::HandedIn));
    assert_eq!(
        sitting.change(&lesson, 0, "lead-loss", ""),
        Err(Refusal::HandedIn)
    );

    sitting.again();
    assert_eq!((sitting.marks().len(), sitting.try_number()), (0, 2));
    assert_eq!(sitting.mark(&lesson, w2, "fuse-too-far", ""), Ok(0));
    assert_eq!(sitting.hand_in(&lesson).map(lessons::Outcome::points), Ok((1, 1)));
}

#[test]
fn marks_have_an_end() {
    let van = lessons::WorkedJob::of("van").expect("a worked job").job();
    let lesson = Lesson::of_job(&van);
    let sheet = lesson.sheet(Version::Bad);
    let mut sitting = Sitting::new(&"x".repeat(9000));
    assert_eq!(sitting.learner().len(), lessons::LONGEST_NOTE);
    let reasons = lessons::reasons(&lesson);
    let mut last = Ok(0);
    for id in sheet.runs.keys() {
        for reason in &reasons {
            last = sitting.mark(&lesson, Thing::Run(*id), &reason.name, "");
        }
    }
    assert_eq!(last, Err(Refusal::TooMany));
    assert_eq!(sitting.marks().len(), lessons::MOST_MARKS);
}

#[test]
fn results_are_kept_read_back_and_told() {
    let lesson = lesson("fuse-far-from-battery");
    let mut sitting = Sitting::new("");
    for (name, reason, note) in [
        ("W2", "fuse-too-far", "a long way \"bare\"\nto the fuse"),
        ("W6", "lead-loss", ""),
        ("W2", "overloaded-run", ""),
    ] {
        assert!(sitting.mark(&lesson, thing(&lesson, name), reason, note).is_ok());
    }
    assert!(sitting.hand_in(&lesson).is_ok());
    let record = Record::of(
        &sitting,
        &lesson,
        "built-in/fuse-far-from-battery",
        "2026-03-02 10:15",
    );
    let records = Records(record.into_iter().collect());
    let first = &records.0[0];
    assert_eq!(first.found, [("fuse-too-far".to_owned(), "F1".to_owned())]);
    assert_eq!(
        [
            Verdict::Right,
            Verdict::Wrong,
            Verdict::OtherReason,
            Verdict::Unasked
        ]
        .map(|it| first.count(it)),
        [1, 1, 1, 0]
    );
    // A general-purpose reader of JSON finds the same.
    let value: serde_json::Value = serde_json::from_str(&records.json()).unwrap_or_default();
    assert_eq!(value[0]["marks"][1]["came"], "wrong");
    assert_eq!((&value[0]["points"], &value[0]["of"]), (&0.into(), &1.into()));
    assert_eq!(Records::from_json(&records.json()), Ok(records.clone()));
    let told = records.report(&words::Words::english(), true);
    for part in [
        "No name",
        "try 1, 2026-03-02 10:15",
        "Points: 0 of 1",
        "Found: Fuse too far (F1)",
        "Wrongly accused: W6",
        "Noted on W2: a long way",
    ] {
        assert!(told.contains(part), "{part}\n{told}");
    }
    assert!(!records.report(&words::Words::english(), false).contains("Points"));
}

#[test]
fn kept_results_that_are_damaged_are_refused() {
    for text in [
        "",
        "{}",
        "[1]",
        "[{\"lesson\":\"a\"}]",
        "[{\"lesson\":\"a\",\"try\":-1,\"points\":0,\"of\":0,\"marks\":[],\"found\":[],\"missed\":[]}]",
        "[{\"lesson\":\"a\",\"try\":1,\"points\":0,\"of\":0,\"marks\":[{\"thing\":\"W1\",\"reason\":\"x\",\"came\":\"maybe\"}],\"found\":[],\"missed\":[]}]",
    ] {
        let error = words::Words::english().say(&Records::from_json(text).expect_err(text).saying());
        assert!(error.starts_with("These results cannot be read"), "{error}");
    }
    let long = format!(
        "[{{\"lesson\":\"{}\",\"try\":1,\"points\":0,\"of\":0,\"marks\":[],\"found\":[],\"missed\":[]}}]",
        "é".repeat(5000)
    );
    assert!(Records::from_json(&long).is_ok_and(|it| it.0[0].lesson.len() <= lessons::LONGEST_NOTE));
}

/// What a learner reads has its numbers in it, also the words on a fault.
#[test]
fn a_learner_reads_numbers_and_no_places_for_them() {
    let mut lesson = lesson("daisy-chained-grounds");
    lesson.faults.push(lessons::ByHand {
        name: "of-ones-own".to_owned(),
        things: vec!["W7".to_owned()],
        says: "W7 carries {burst W7}.".to_owned(),
    });
    let filled = lessons::Told::of(&lesson).filled(&words::Words::english());
    let told = all_faults(&filled);
    let own = told.iter().find(|it| it.reason == "of-ones-own").expect("told");
    assert!(
        own.says.ends_with(" A.") && !own.says.contains('{'),
        "{}",
        own.says
    );
    assert!(!filled.story.join(" ").contains('{'));
}
