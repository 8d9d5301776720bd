//! Lessons as text: an error names its line and what to do, nothing damaged panics, and what is made of any job comes back.

use lessons::{LESSONS, Lesson, Version, read, write};

#[test]
fn an_error_names_its_line_and_what_to_do() {
    let told = |text: &str| match read(text) {
        Ok(_) => panic!("reads: {text}"),
        Err(errors) => errors.to_string(),
    };
    for (text, line, help) in [
        ("title x", "line 1", "write `lesson fuse-too-far`"),
        ("lesson Big One", "line 1", "a key is made of small letters"),
        ("lesson a\nstroy\n  x", "line 2", "did you mean `story`?"),
        (
            "lesson a\nabout fuse-to-far",
            "line 2",
            "did you mean `fuse-too-far`?",
        ),
        (
            "lesson a\nlook colour W1\n  x",
            "line 2",
            "there are none, current, voltage",
        ),
        ("lesson a\nlook heat\n  x", "line 2", "a look needs things"),
        ("lesson a\nlook heat W1\n  x", "line 2", "the system has no `W1`"),
        ("lesson a\nbreak tear W1", "line 2", "write `break open W3`"),
        ("lesson a\nbreak joined W1", "line 2", "name 2 things"),
        (
            "lesson a\nbreak open W1\n  then silent LS1",
            "line 3",
            "write `then bad silent LS1`",
        ),
        (
            "lesson a\nbreak open W1\n  then bad quiet LS1",
            "line 3",
            "`quiet` is no effect",
        ),
        (
            "lesson a\nbreak open W1\n  then bad current W1 > much A",
            "line 3",
            "write a number and its unit",
        ),
        (
            "lesson a\nbreak open W1\n  next",
            "line 3",
            "write then, still or says",
        ),
        (
            "lesson a\nquestion Why?\n  right Because.",
            "line 2",
            "a right answer and a wrong one",
        ),
        (
            "lesson a\nfault beside W1\n  x",
            "line 2",
            "the system has no `W1`",
        ),
        (
            "lesson a\nsystem\n  - fuze F1 60A",
            "line 3, column 5",
            "did you mean `fuse`?",
        ),
        (
            "lesson a\nsystem\n    sheet found",
            "line 3",
            "take this line out",
        ),
    ] {
        let error = told(text);
        assert!(
            error.contains(line) && error.contains(help),
            "{text}\ngives\n{error}"
        );
    }
    let many = "look heat W1\n  x\n".repeat(300);
    assert!(told(&many).contains("more than 200 blocks"));
    let named = "W1 ".repeat(60);
    assert!(told(&format!("lesson a\nlook heat {named}\n  x")).contains("more than 50 things"));
    assert!(read(&"nonsense\n".repeat(5000)).is_err_and(|errors| errors.0.len() <= 100));
    let twice = told("lesson a\nsystem\n    fuze F1 60A");
    assert_eq!(
        twice.matches("line 3").count(),
        1,
        "an error in both versions is told once:\n{twice}"
    );
}

#[test]
fn damaged_lessons_never_panic() {
    for built_in in LESSONS {
        let text = built_in.text();
        for at in (0..text.len())
            .step_by(211)
            .filter(|at| text.is_char_boundary(*at))
        {
            let (front, back) = text.split_at(at);
            let (Ok(lesson), ..) = (read(front), read(back), read(&format!("{front}\n{{ {back}"))) else {
                continue;
            };
            let _ = (write(&lesson), lesson.why(&words::Words::english()));
        }
    }
}

/// Whatever an instructor types, and whatever job he takes, comes back; only blanks and line breaks are evened out.
#[test]
fn a_lesson_made_from_any_job_comes_back() {
    for worked in lessons::WORKED_JOBS {
        let mut made = Lesson::of_job(&worked.job());
        made.title = "then # wrong {current".to_owned();
        made.story = vec![
            "# right \u{1F50A}".to_owned(),
            format!("- {} + b", "word ".repeat(60).trim()),
        ];
        made.looks = vec![lessons::Look {
            overlay: drawing::Overlay::Heat,
            things: vec!["W1".to_owned()],
            says: "system".to_owned(),
        }];
        made.questions = vec![lessons::Question {
            asks: "why \"so\"?".to_owned(),
            answers: [true, false]
                .map(|right| lessons::Answer {
                    right,
                    says: "then ".repeat(50).trim().to_owned(),
                })
                .to_vec(),
            why: "why".to_owned(),
        }];
        made.sources = vec!["common practice".to_owned()];
        let text = write(&made);
        let again = read(&text).unwrap_or_else(|errors| panic!("{}:\n{errors}\n{text}", worked.key));
        assert!(again == made, "{}", worked.key);
        assert!(!made.sheet(Version::Bad).parts.is_empty(), "{}", worked.key);
        made.title = "two\nlines".to_owned();
        assert!(read(&write(&made)).is_ok_and(|again| again.title == "two lines"));
    }
    assert_eq!(Lesson::of_job(&model::Job::default()).key, "lesson");
    let titled = model::Job {
        title: "A van: what is wrong?".to_owned(),
        ..model::Job::default()
    };
    assert_eq!(Lesson::of_job(&titled).key, "a-van-what-is-wrong");
}
