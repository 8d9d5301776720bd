//! The built-in lessons in German: whole, with the same numbers in the same places, and a damaged translation says where.

use lessons::{BuiltIn, LESSONS, Lesson, Version, translate};
use words::Language;

/// The texts of a lesson, each with where it stands.
fn texts(lesson: &Lesson) -> Vec<(String, String)> {
    let mut all = vec![("title".to_owned(), lesson.title.clone())];
    let mut add = |place: &str, text: &str| all.push((place.to_owned(), text.to_owned()));
    add("story", &lesson.story.join(" "));
    add("explain", &lesson.explanation.join(" "));
    for it in &lesson.looks {
        add("look", &it.says);
    }
    for it in &lesson.breaks {
        add("break", &it.says);
    }
    for it in &lesson.faults {
        add("fault", &it.says);
    }
    for question in &lesson.questions {
        add("question", &question.asks);
        add("why", &question.why);
        for answer in &question.answers {
            add("answer", &answer.says);
        }
    }
    all
}

/// The places for numbers, sorted.
fn places(text: &str) -> Vec<String> {
    let mut all: Vec<String> = text
        .split('{')
        .skip(1)
        .filter_map(|piece| piece.split_once('}'))
        .map(|(place, _)| place.split_whitespace().collect::<Vec<_>>().join(" "))
        .collect();
    all.sort();
    all.dedup();
    all
}

#[test]
fn every_lesson_is_there_in_german_with_the_same_numbers() {
    for built_in in LESSONS {
        let english = built_in.lesson();
        let path = format!("{}/lessons/de/{}.words", env!("CARGO_MANIFEST_DIR"), built_in.key);
        #[allow(
            clippy::disallowed_methods,
            reason = "a test reads the file that the program has inside"
        )]
        let words = std::fs::read_to_string(&path).expect("every lesson has its words in German");
        let german = translate(english.clone(), &words).unwrap_or_else(|errors| panic!("{path}:\n{errors}"));
        assert_eq!(german, built_in.lesson_in(Language::German));
        for ((place, was), (_, now)) in texts(&english).iter().zip(texts(&german)) {
            assert_ne!(*was, now, "{}: {place} is still English", built_in.key);
            assert_eq!(places(was), places(&now), "{}: {place}: {now}", built_in.key);
        }
        // What is said in words changed; what is drawn and computed did not.
        for version in Version::BOTH {
            let unnamed = |lesson: &Lesson| {
                let mut sheet = lesson.sheet(version);
                for part in sheet.parts.values_mut() {
                    part.label.clear();
                }
                sheet
            };
            assert_eq!(unnamed(&english), unnamed(&german), "{}", built_in.key);
            for (id, part) in &english.sheet(version).parts {
                let german = &german.sheet(version).parts[id].label;
                let same_word = ["Radio", "Subwoofer"].contains(&part.label.as_str());
                assert!(
                    part.label.is_empty() || same_word || *german != part.label,
                    "{}: {} is still called {}",
                    built_in.key,
                    part.tag,
                    part.label
                );
            }
        }
    }
}

#[test]
fn a_translation_that_does_not_fit_says_where() {
    let lesson = BuiltIn::of("tied-outputs").expect("it is built in").lesson();
    let errors = translate(
        lesson,
        "title Kurz\nlook\n  Eins.\nlook\n  Zwei.\nlook\n  Drei.\nquestion Was?\n  answer Nur eine.\nnames\n  B7 Batterie\nnonsense\n",
    )
    .expect_err("it does not fit")
    .to_string();
    for told in [
        "the lesson has no further `look`",
        "1 answer where the lesson has 3",
        "the system has no `B7`",
        "`nonsense` opens no block",
        "1 of 2 blocks `question`",
        "0 of 1 blocks `break`",
    ] {
        assert!(errors.contains(told), "{told}:\n{errors}");
    }
}
