//! The built-in lessons: each reads, shows what it is about, is right in its good version, breaks as it says, and tells no
//! number that the engine did not compute.

// Stored lessons are rewritten in their one form when asked to.
#![allow(clippy::disallowed_methods)]

use lessons::{BuiltIn, LESSONS, Lesson, Mark, Thing, Told, Version, faults, read, reasons, score, write};
use model::compare::{Became, compare};
use model::{BoardPoint, PartId, Sheet};

fn all() -> Vec<(&'static BuiltIn, Lesson)> {
    LESSONS
        .iter()
        .map(|built_in| match read(built_in.text()) {
            Ok(lesson) => (built_in, lesson),
            Err(errors) => panic!("{}.lesson:\n{errors}", built_in.key),
        })
        .collect()
}

fn lesson(key: &str) -> Lesson {
    BuiltIn::of(key)
        .unwrap_or_else(|| panic!("no lesson `{key}`"))
        .lesson()
}

/// Every text of a lesson that people read.
fn texts(lesson: &Lesson) -> Vec<&str> {
    let mut all: Vec<&str> = vec![&lesson.title];
    all.extend(lesson.story.iter().chain(&lesson.explanation).map(String::as_str));
    all.extend(lesson.looks.iter().map(|it| it.says.as_str()));
    all.extend(lesson.breaks.iter().map(|it| it.says.as_str()));
    all.extend(lesson.faults.iter().map(|it| it.says.as_str()));
    for question in &lesson.questions {
        all.extend([question.asks.as_str(), &question.why]);
        all.extend(question.answers.iter().map(|it| it.says.as_str()));
    }
    all
}

/// The text without its places for numbers.
fn bare(text: &str) -> String {
    let cut = |piece: &str| piece.split_once('}').map_or(piece, |(_, rest)| rest).to_owned();
    let mut pieces = text.split('{');
    let first = pieces.next().unwrap_or_default().to_owned();
    first + &pieces.map(|piece| format!("_{}", cut(piece))).collect::<String>()
}

/// Parts that both versions have stand in the same place in both: laid out once, for everything that either of them has.
fn placed(lesson: &Lesson) -> Lesson {
    let mut both: Sheet = lesson.sheet(Version::Bad);
    let good = lesson.sheet(Version::Good);
    for (id, part) in good.parts {
        if !both.parts.contains_key(&id) {
            both.parts.insert(id, part);
        }
    }
    for (id, run) in good.runs {
        both.runs.insert(id, run);
    }
    for part in both.parts.values_mut() {
        part.at = None;
    }
    let places: Vec<(PartId, BoardPoint)> = drawing::arrange(&both).into_iter().collect();
    let mut lesson = lesson.clone();
    for sheet in lesson.job.sheets.values_mut() {
        for (id, at) in &places {
            if let Some(part) = sheet.parts.get_mut(id) {
                part.at = Some(*at);
            }
        }
    }
    lesson
}

#[test]
fn every_lesson_is_kept_in_its_one_form_and_reads_back_equal() {
    for (built_in, lesson) in all() {
        assert_eq!(lesson.key, built_in.key);
        assert_eq!(lesson.title, built_in.title());
        let text = write(&lesson);
        let again = read(&text).unwrap_or_else(|errors| panic!("{}:\n{errors}", built_in.key));
        assert_eq!(again, lesson, "{}", built_in.key);
        if std::env::var_os("UPDATE_EXPECT").is_some() {
            let unplaced = lesson
                .job
                .sheets
                .values()
                .any(|it| it.parts.values().any(|part| part.at.is_none()));
            let lesson = if unplaced { placed(&lesson) } else { lesson };
            let path = format!("{}/lessons/{}.lesson", env!("CARGO_MANIFEST_DIR"), built_in.key);
            std::fs::write(path, write(&lesson)).expect("can be written");
        } else {
            assert_eq!(
                text,
                built_in.text(),
                "{}: run with UPDATE_EXPECT=1",
                built_in.key
            );
        }
    }
}

#[test]
fn both_versions_of_a_lesson_are_laid_out_alike() {
    // The one that is about where the fuse stands shows it in two places.
    let moved = ("fuse-far-from-battery", "F1");
    for (built_in, lesson) in all() {
        let [bad, good] = Version::BOTH.map(|version| lesson.sheet(version));
        for (id, part) in &bad.parts {
            assert!(part.at.is_some(), "{}: {} has no place", built_in.key, part.tag);
            if (built_in.key, part.tag.as_str()) == moved {
                continue;
            }
            if let Some(other) = good.parts.get(id) {
                assert_eq!((part.at, &part.tag), (other.at, &other.tag), "{}", built_in.key);
            }
        }
    }
}

#[test]
fn all_seventeen_topologies_are_there() {
    assert_eq!(LESSONS.len(), 17);
    let text: usize = LESSONS.iter().map(|lesson| lesson.text().len()).sum();
    assert!(text < 90_000, "lessons are part of the page: {text} bytes");
}

/// What the lesson is about is found in the bad version; the good one has nothing of grade Stop or Fix; each break
/// does what the lesson says it does; every place for a number is filled in.
#[test]
fn nothing_is_wrong_with_any_lesson() {
    for (built_in, lesson) in all() {
        let problems: Vec<String> = Told::of(&lesson)
            .problems()
            .iter()
            .map(ToString::to_string)
            .collect();
        assert!(problems.is_empty(), "{}:\n{}", built_in.key, problems.join("\n"));
    }
}

#[test]
fn good_and_bad_differ_in_a_handful_of_things() {
    for (built_in, lesson) in all() {
        let compared = compare(&lesson.sheet(Version::Bad), &lesson.sheet(Version::Good));
        let tally = compared.tally();
        let differ = tally.changed + tally.new + tally.removed;
        assert!(
            (1..=6).contains(&differ),
            "{}: {differ} things differ: {tally:?}",
            built_in.key
        );
        let renamed = |became: &Became| matches!(became, Became::Changed(list) if list.iter().any(|it| it.to_string().starts_with("tag:")));
        assert!(
            !compared.parts.values().chain(compared.runs.values()).any(renamed),
            "{}",
            built_in.key
        );
    }
}

#[test]
fn every_lesson_is_whole() {
    for (built_in, lesson) in all() {
        let key = built_in.key;
        assert!((2..=4).contains(&lesson.questions.len()), "{key}: questions");
        for question in &lesson.questions {
            for right in [true, false] {
                assert!(
                    question.answers.iter().any(|it| it.right == right),
                    "{key}: {}",
                    question.asks
                );
            }
            assert!(!question.why.is_empty(), "{key}: {}", question.asks);
        }
        assert!((2..=4).contains(&lesson.looks.len()), "{key}: looks");
        assert!(
            !lesson.explanation.is_empty() && !lesson.all_sources(&words::Words::english()).is_empty(),
            "{key}"
        );
        let known = |source: &str| {
            let source = source.to_lowercase();
            source.contains("common practice")
                || source.contains("from memory")
                || source.contains("kirchhoff")
                || source
                    .split_whitespace()
                    .any(|word| word.chars().any(|c| c.is_ascii_digit()))
        };
        assert!(
            lesson
                .all_sources(&words::Words::english())
                .iter()
                .all(|source| known(source)),
            "{key}: {:?}",
            lesson.all_sources(&words::Words::english())
        );
        let sentences: usize = lesson
            .story
            .iter()
            .map(|it| it.matches(['.', '?', '!']).count())
            .sum();
        // A number of a standard or a quoted word may hold a full stop more.
        assert!((3..=8).contains(&sentences), "{key}: {sentences} sentences");
    }
}

/// A number with a unit stands in a text only where the engine put it. The nominal 12 V is a name, not a number.
#[test]
fn no_number_of_the_engine_is_typed_by_hand() {
    for (built_in, lesson) in all() {
        for text in texts(&lesson) {
            let text = bare(text);
            let words: Vec<&str> = text
                .split_whitespace()
                .map(|it| it.trim_matches(['.', ',', ';', ':', '"']))
                .collect();
            for pair in words.windows(2) {
                let number = pair[0].chars().next().is_some_and(|c| c.is_ascii_digit());
                let unit =
                    ["A", "V", "W", "Ω", "mΩ", "m", "mm²", "°C", "Ah", "h", "%", "mA"].contains(&pair[1]);
                assert!(
                    !(number && unit) || pair == ["12", "V"],
                    "{}: {} {}",
                    built_in.key,
                    pair[0],
                    pair[1]
                );
            }
        }
    }
}

/// Real names are capitalised words inside a sentence; there are none but tags, units and standards.
#[test]
fn nobody_is_named_and_nothing_is_called_what_it_cannot_be() {
    let unsaid = ["sa", "fe"].concat();
    for (built_in, lesson) in all() {
        assert!(
            !built_in.text().to_lowercase().contains(&unsaid),
            "{}",
            built_in.key
        );
        for text in texts(&lesson) {
            let text = bare(text);
            let mut begins = true;
            for word in text.split_whitespace() {
                let plain = word.trim_matches(|c: char| !c.is_alphanumeric());
                let capital = plain.chars().next().is_some_and(char::is_uppercase);
                let tag = plain.chars().any(|c| c.is_ascii_digit());
                // Days and units are capitalised in this language, and belong to nobody.
                let common = ["V", "A", "I", "Friday", "Sundays"].contains(&plain);
                assert!(
                    !capital || begins || tag || common || word.starts_with('"'),
                    "{}: {word}",
                    built_in.key
                );
                begins = word.ends_with(['.', '?', '!', ':', '"']);
            }
        }
    }
}

#[test]
fn who_marks_all_faults_finds_all_and_who_marks_none_misses_all() {
    for (built_in, lesson) in all() {
        let wanted: Vec<_> = faults(&lesson, &lesson.analyse(Version::Bad))
            .into_iter()
            .filter(|it| it.wanted)
            .collect();
        assert!(!wanted.is_empty(), "{}", built_in.key);
        for name in lesson.about.iter().chain(lesson.faults.iter().map(|it| &it.name)) {
            assert!(
                wanted.iter().any(|fault| fault.reason == *name),
                "{}: {name}",
                built_in.key
            );
            assert!(
                reasons(&lesson).iter().any(|reason| reason.name == *name),
                "{}: {name}",
                built_in.key
            );
        }
        let marks: Vec<Mark> = wanted
            .iter()
            .map(|it| Mark {
                thing: it.things[0],
                reason: it.reason.clone(),
            })
            .collect();
        let outcome = score(&lesson, &marks);
        assert_eq!(
            (outcome.missed.len(), outcome.accused.len()),
            (0, 0),
            "{}",
            built_in.key
        );
        assert_eq!(outcome.points(), (wanted.len(), wanted.len()), "{}", built_in.key);
        let nothing = score(&lesson, &[]);
        assert_eq!(
            (nothing.points(), nothing.missed),
            ((0, wanted.len()), wanted),
            "{}",
            built_in.key
        );
    }
}

#[test]
fn a_wrong_mark_costs_a_point_and_a_wrong_reason_none() {
    let lesson = lesson("fuse-far-from-battery");
    let sheet = lesson.sheet(Version::Bad);
    let run = |tag: &str| Thing::Run(sheet.run_by_tag(tag).expect("a run").0);
    let mark = |thing, reason: &str| Mark {
        thing,
        reason: reason.to_owned(),
    };
    let right = mark(run("W2"), "fuse-too-far");
    assert_eq!(score(&lesson, std::slice::from_ref(&right)).points(), (1, 1));
    let off = score(&lesson, &[right.clone(), mark(run("W6"), "lead-loss")]);
    assert_eq!(
        (off.points(), off.accused.len(), off.accused[0].right_place),
        ((0, 1), 1, false)
    );
    let nearly = score(&lesson, &[right, mark(run("W1"), "overloaded-run")]);
    assert_eq!(
        (
            nearly.points(),
            nearly.accused.len(),
            nearly.accused[0].right_place
        ),
        ((1, 1), 1, true)
    );
    assert_eq!(lessons::title("fuse-too-far"), "Fuse too far");
    // What the check marks is the radio; the wire that does it may be marked as well.
    let lesson = self::lesson("tied-outputs");
    let sheet = lesson.sheet(Version::Bad);
    let wire = Thing::Run(sheet.run_by_tag("W5").expect("a run").0);
    let outcome = score(&lesson, &[mark(wire, "output-touches-chassis")]);
    assert_eq!((outcome.points(), outcome.accused.len()), ((1, 1), 0));
}

/// Who always chooses the same place must not do well.
#[test]
fn the_right_answer_stands_in_no_favourite_place() {
    let mut places = [0; 3];
    for (_, lesson) in all() {
        for question in &lesson.questions {
            let first = question.answers.iter().position(|answer| answer.right);
            places[first.expect("a right answer").min(2)] += 1;
        }
    }
    let questions: usize = places.iter().sum();
    assert!(
        places.iter().all(|count| *count * 2 <= questions),
        "{places:?} of {questions}"
    );
}
