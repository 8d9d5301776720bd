//! Every error of the text form, of a lesson's text and of a job file: each is made once, by its message, and reads in
//! German without a word of English. The lists of messages are those of the texts themselves, so that a new error is missing
//! here until something makes it.

use model::file::FileError;
use model::text::TextErrors;
use std::collections::BTreeSet;
use words::{Language, Reader, Saying, Value, Words};

fn german() -> Words {
    Words::of(Reader {
        language: Language::German,
        ..Reader::default()
    })
}

/// Keys of a saying and of all sayings within it.
fn keys_of(saying: &Saying, into: &mut BTreeSet<String>) {
    fn of_value(value: &Value, into: &mut BTreeSet<String>) {
        match value {
            Value::Saying(saying) => keys_of(saying, into),
            Value::List(all) => all.iter().for_each(|value| of_value(value, into)),
            Value::Joined(all, _) => all.iter().for_each(|saying| keys_of(saying, into)),
            _ => {}
        }
    }
    into.insert(saying.key().to_owned());
    for (_, value) in saying.values() {
        of_value(value, into);
    }
}

/// Words that English sentences cannot do without and German ones never have. What stands in backticks or quotes, and
/// names of properties (`of`, `at`, `with`) belongs to the text form, which is the same in every language.
const ENGLISH: &[&str] = &[
    "the", "is", "it", "and", "or", "not", "has", "have", "write", "this", "there", "takes", "are", "be",
    "may", "than", "more", "most", "only", "as", "one", "each", "expected", "missing", "you", "mean",
    "cannot", "second", "stands",
];

fn english_in(text: &str) -> Vec<String> {
    let mut bare = String::new();
    let mut within = None;
    for c in text.chars() {
        match (within, c) {
            (None, '`' | '"') => within = Some(c),
            (Some(mark), c) if mark == c => within = None,
            (None, c) => bare.push(c),
            _ => {}
        }
    }
    bare.split(|c: char| !c.is_alphanumeric())
        .filter(|word| ENGLISH.contains(word))
        .map(str::to_owned)
        .collect()
}

#[test]
fn english_is_seen() {
    assert_eq!(english_in("die sheet `the` is missing"), ["is", "missing"]);
    let english = Words::english();
    let caught = |text: &str| {
        let (_, errors) = model::text::parse_lenient(text);
        errors
            .0
            .iter()
            .all(|error| !english_in(&english.say(&error.message)).is_empty())
    };
    let plain: Vec<(String, &[&str])> = wrong_texts();
    let seen = plain.iter().filter(|(text, _)| caught(text)).count();
    // The rest are sentences as short as `fuse: …`, whose words are looked at elsewhere.
    assert!(seen * 10 > plain.len() * 8, "{seen} of {}", plain.len());
}

/// The keys of a theme that begin so.
fn declared(theme: &str, family: &str) -> BTreeSet<String> {
    theme
        .lines()
        .filter_map(|line| line.split_once(" =").map(|(key, _)| key.to_owned()))
        .filter(|key| key.starts_with(family))
        .collect()
}

/// Notes the messages of some errors, and looks at them in German.
fn look(saying: &Saying, from: &str, seen: &mut BTreeSet<String>) {
    keys_of(saying, seen);
    let (german, english) = (german(), Words::english());
    let (said, other) = (german.say(saying), english.say(saying));
    let left = english_in(&said);
    assert!(left.is_empty(), "{from:?}: {left:?} in: {said}");
    assert_ne!(said, other, "{from:?}");
    assert!(!said.contains('$'), "{from:?}: {said}");
}

fn look_all(errors: &TextErrors, from: &str, seen: &mut BTreeSet<String>) {
    for error in &errors.0 {
        look(&error.said(), from, seen);
        error.help.iter().for_each(|help| look(help, from, seen));
        let told = error.told(&german());
        assert!(
            told.starts_with(&format!("Zeile {}, Spalte {}: ", error.line, error.column)),
            "{told}"
        );
    }
}

/// One text for each error; its message, or that of its help, is named beside it.
fn wrong_texts() -> Vec<(String, &'static [&'static str])> {
    let long = "x".repeat(500);
    let many = |line: &str, count: usize| line.repeat(count);
    let numbered = |count: usize, line: &dyn Fn(usize) -> String| (0..count).map(line).collect::<String>();
    let plain: &[(&str, &[&str])] = &[
        ("job \"a\"b", &["text-quote-joined", "text-quote-joined-help"]),
        ("job a\"b", &["text-quote-inside", "text-quote-inside-help"]),
        ("job \"a", &["text-quote-open", "text-quote-open-help"]),
        (
            "job \"a\\q\"",
            &["text-escape-unknown", "text-escape-unknown-help"],
        ),
        ("\"x\"", &["text-begins-nothing", "text-line-words"]),
        ("fues F1", &["text-no-such-word", "text-meant"]),
        ("zzzzzz F1", &["text-no-such-word", "text-kinds"]),
        ("job A\njob B", &["text-line-twice", "text-join-lines"]),
        ("job A B", &["text-title", "text-title-help"]),
        ("limit", &["text-limit", "text-limit-help"]),
        ("limit a 1\nlimit a 2", &["text-limit-twice"]),
        ("limit a x", &["text-limit-number", "text-limit-number-help"]),
        ("limit a -5", &["error-limit", "text-limit-number-help"]),
        ("allow", &["text-allow"]),
        ("allow a=b", &["text-allow-name"]),
        ("sheet", &["text-sheet"]),
        ("sheet zzzzzz", &["text-no-sheet", "text-sheets"]),
        ("place", &["text-name-missing", "text-name-missing-help"]),
        ("place a\nplace a", &["text-name-twice"]),
        ("done a=b", &["text-step-word", "text-step-word-help"]),
        ("conditions zz=1", &["text-no-property", "text-there-are"]),
        ("fuse F1 zz=1", &["text-no-property", "text-whose-part"]),
        (
            "vehicle-info name=a name=b",
            &["text-key-twice", "text-leave-one"],
        ),
        ("fuse F1 \"a\" \"b\"", &["text-key-twice", "text-key-twice-help"]),
        ("conditions \"a\"", &["text-unnamed", "text-unnamed-help"]),
        ("fuse F1 rating=9000000A", &["text-value", "text-range"]),
        (
            "conditions state=zzzzzz",
            &["text-value", "text-choices", "text-choice"],
        ),
        ("speaker LS1 coils=99", &["text-value", "text-count"]),
        (
            "body estate 4.7m\nplace a wet=maybe",
            &["text-value", "text-yes-no"],
        ),
        (
            "battery B1\nload L1\nrun W1 B1.+ L1.+ colour=QQ",
            &["text-value", "text-like"],
        ),
        ("fuse F1 60", &["text-of-what", "text-with-name"]),
        (
            "fuse F1 60A 10000A 40A",
            &["text-set-already", "text-set-already-help"],
        ),
        (
            "run W1 loose@1,2 loose@3,4 ~RD ~RD",
            &["text-not-assumed", "text-not-assumed-help"],
        ),
        ("fuse F1 zzzzzz", &["text-no-value", "text-has"]),
        ("fuse F1 rating", &["text-no-value", "text-write-key"]),
        (
            "battery B1\nload L1\nrun W1 B1.+ L1.+ rd",
            &["text-no-value", "text-colours"],
        ),
        ("fuse F1 by=nobody", &["text-no-fitter", "text-no-fitter-help"]),
        ("fuse F1 turn=45", &["text-no-turn", "text-no-turn-help"]),
        ("fuse F1 @x,y", &["text-no-point", "text-no-point-help"]),
        ("fuse F1 @9000000,0", &["error-off-board"]),
        (
            "amplifier A1 \"4x 75W@4ohm\"",
            &["text-channels", "text-channels-help"],
        ),
        ("complaint C-1 \"No bass\"", &["error-tag-sign", "text-tag-first"]),
        ("fuse", &["text-tag-missing", "text-tag-like"]),
        ("fuse F1\nfuse F1", &["text-tag-taken", "text-tag-taken-help"]),
        (
            "fuse F1 id=p1\nfuse F2 id=p1",
            &["text-id-taken", "text-id-taken-help"],
        ),
        ("fuse F1 id=7", &["error-no-id"]),
        ("run W1", &["text-two-ends", "text-two-ends-help"]),
        ("run W1 x y", &["text-no-end", "text-end-form"]),
        ("fuse F1\nrun W1 F1 F1.in", &["text-no-end", "text-end-terminals"]),
        (
            "run W1 F1.aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa loose@1,1",
            &["text-terminal-long"],
        ),
        (
            "fuse F1\nrun W1 F1.middle loose@1,1",
            &["text-no-terminal", "text-has"],
        ),
        (
            "fuse F1\nrun W1 F1.imn loose@1,1",
            &["text-no-terminal", "text-meant-has"],
        ),
        (
            "run W1 loose@1,1 loose@2,2\nrun W2 W1.a loose@1,1",
            &["text-is-run", "text-is-run-help"],
        ),
        ("run W1 F1.in loose@1,1", &["text-no-part", "text-no-parts"]),
        (
            "fuse F9\nrun W1 QQQQ.in loose@1,1",
            &["text-no-part", "text-parts-are"],
        ),
    ];
    let mut all: Vec<(String, &'static [&'static str])> = plain
        .iter()
        .map(|(text, keys)| ((*text).to_owned(), *keys))
        .collect();
    let others: [(String, &'static [&'static str]); 20] = [
        (
            " ".repeat(model::limits::LARGEST_FILE + 1),
            &["text-too-long", "text-too-long-help"],
        ),
        (format!("job {long}"), &["text-title-long", "error-length"]),
        (format!("done {long}"), &["text-step-long"]),
        (format!("fuse F1 label={long}"), &["text-text-long"]),
        (
            format!("run W1 loose@1,1 loose@2,2 route={long}"),
            &["error-route-place", "error-length"],
        ),
        (
            format!("run W1 loose@1,1 loose@2,2 route=a{}", "/a".repeat(200)),
            &["error-route-long"],
        ),
        (
            format!("run W1 loose@1,1 loose@2,2 bends=1,1{}", "/1,1".repeat(300)),
            &["text-full"],
        ),
        (numbered(1_001, &|at| format!("limit l{at} 1\n")), &["text-full"]),
        (
            format!("allow {}", numbered(1_001, &|at| format!("c{at} "))),
            &["text-full"],
        ),
        (numbered(201, &|at| format!("place p{at}\n")), &["text-full"]),
        (many("reading volts at=B1.+ 12V\n", 2_001), &["text-full"]),
        (many("tuning of=A1\n", 1_001), &["text-full"]),
        (many("complaint \"a\"\n", 1_001), &["text-full"]),
        (many("intake \"a\"\n", 1_001), &["text-full"]),
        (many("offer \"a\"\n", 1_001), &["text-full"]),
        (numbered(10_001, &|at| format!("fuse F{at}\n")), &["text-full"]),
        (
            numbered(20_001, &|at| format!("run W{at} loose@1,1 loose@2,2\n")),
            &["text-full"],
        ),
        (
            format!("done {}", numbered(60_001, &|at| format!("s{at} "))),
            &["text-full"],
        ),
        (
            "passage\nrates zz=1\nintake zz=1\noffer zz=1\ntuning zz=1\nreading zz=1\ncomplaint zz=1"
                .to_owned(),
            &["text-whose"],
        ),
        (
            "body zz=1\nvehicle-info zz=1\nrun W1 loose@1,1 loose@2,2 zz=1".to_owned(),
            &["text-whose"],
        ),
    ];
    all.extend(others);
    all
}

#[test]
fn every_error_of_the_text_form_is_made_and_told_in_german() {
    let (mut seen, mut unsaid) = (BTreeSet::new(), Vec::<String>::new());
    for (text, keys) in wrong_texts() {
        let (_, errors) = model::text::parse_lenient(&text);
        let from: String = text.chars().take(70).collect();
        assert!(!errors.is_empty(), "{from:?} reads");
        let mut here = BTreeSet::new();
        look_all(&errors, &from, &mut here);
        for key in keys.iter().filter(|key| !here.contains(**key)) {
            unsaid.push(format!("{from:?} does not say {key}, but {here:?}"));
        }
        seen.append(&mut here);
    }
    assert!(unsaid.is_empty(), "{}", unsaid.join("\n"));
    let wanted = declared(include_str!("../../crates/words/texts/en/text.ftl"), "text-");
    // No kind is without properties today; the sentence waits for one.
    let missing: Vec<&String> = wanted
        .difference(&seen)
        .filter(|key| *key != "text-no-properties")
        .collect();
    assert!(missing.is_empty(), "made by nothing here: {missing:?}");
}

/// A job file with these fields.
fn file(fields: &str) -> String {
    let version = model::file::VERSION;
    format!(
        "{{\"format\":\"{}\",\"version\":{version},{fields}}}",
        model::file::FORMAT
    )
}

/// A job file with these parts and runs on its plan.
fn plan(parts: &str, runs: &str) -> String {
    file(&format!(
        "\"sheets\":{{\"plan\":{{\"parts\":{{{parts}}},\"runs\":{{{runs}}}}}}}"
    ))
}

const FUSE: &str = r#""p1":{"tag":"F1","is":{"fuse":{}}}"#;

fn run(fields: &str) -> String {
    let end = r#"{"loose":{"x":1,"y":1}}"#;
    plan(
        "",
        &format!("\"r1\":{{\"tag\":\"W1\",\"from\":{end},\"to\":{end},{fields}}}"),
    )
}

fn wrong_files() -> Vec<(String, &'static str)> {
    let point = r#"{"x":1,"y":1}"#;
    vec![
        ("{".to_owned(), "json-cut"),
        ("{]".to_owned(), "json-syntax"),
        ("[".repeat(100), "json-deep"),
        (format!("[{}1]", "1,".repeat(4_000_001)), "json-many"),
        (r#"{"a":1,"a":2}"#.to_owned(), "json-key-twice"),
        ("[]".to_owned(), "file-no-object"),
        ("{}".to_owned(), "file-no-format"),
        (
            format!("{{\"format\":\"{}\"}}", model::file::FORMAT),
            "file-no-version",
        ),
        (file(r#""unread":{"a":1}"#), "file-keeps"),
        (file(r#""title":1"#), "file-not-a"),
        (file(r#""sheets":{"plan":{"readings":{}}}"#), "file-not-a"),
        (file(r#""sheets":[]"#), "file-problem"),
        (file(r#""sheets":{"planned":{}}"#), "file-no-sheet"),
        (
            run(&format!("\"route\":[{}\"a\"]", "\"a\",".repeat(200))),
            "error-route-long",
        ),
        (
            run(&format!("\"bends\":[{}{point}]", format!("{point},").repeat(300))),
            "file-too-many",
        ),
        (
            file(&format!(
                "\"sheets\":{{\"plan\":{{\"readings\":[{}{{}}]}}}}",
                "{},".repeat(3_000)
            )),
            "file-too-many",
        ),
        (
            file(&format!("\"thread\":{{\"done\":[\"{}\"]}}", "x".repeat(500))),
            "file-steps",
        ),
        (
            plan(&format!("{FUSE},{}", FUSE.replace("p1", "p2")), ""),
            "file-tag-twice",
        ),
        (plan(r#""p1":{"is":{"fuse":{}}}"#, ""), "file-no-tag"),
        (plan(r#""p1":{"tag":"F-1","is":{"fuse":{}}}"#, ""), "file-called"),
        (
            plan(
                "",
                &format!(
                    r#""r1":{{"tag":"W1","from":{{"on":{{"part":"p9","terminal":"in"}}}},"to":{{"loose":{point}}}}}"#
                ),
            ),
            "file-end-nowhere",
        ),
        (
            plan(
                FUSE,
                &format!(
                    r#""r1":{{"tag":"W1","from":{{"on":{{"part":"p1","terminal":"no"}}}},"to":{{"loose":{point}}}}}"#
                ),
            ),
            "file-end-no-terminal",
        ),
        (
            file(r#""pictures":{"P1":{"facts":{"form":"png"},"bytes":"AAAA"}}"#),
            "file-picture-form",
        ),
        (file(r#""pictures":{"P1":{"bytes":"???"}}"#), "json-no-base64"),
        (file(r#""pictures":{"P1":{}}"#), "json-missing"),
        (plan(r#""p1":{"tag":"F1","is":{"fues":{}}}"#, ""), "json-no-kind"),
        (
            plan(r#""p1":{"tag":"F1","is":{"fuse":{},"load":{}}}"#, ""),
            "json-both",
        ),
        (plan(r#""p1":{"tag":"F1","is":{}}"#, ""), "json-wanted"),
        (
            plan(r#""p1":{"tag":"F1","is":{"fuse":{"rating":"x"}}}"#, ""),
            "json-string",
        ),
        (
            plan(r#""p1":{"tag":"F1","label":7,"is":{"fuse":{}}}"#, ""),
            "json-number",
        ),
        (
            plan(
                r#""p1":{"tag":"F1","is":{"fuse":{"rating":{"assumed":1,"b":2}}}}"#,
                "",
            ),
            "json-beside-assumed",
        ),
        (
            plan(r#""p1":{"tag":"F1","is":{"fuse":{"rating":{}}}}"#, ""),
            "json-assumed-empty",
        ),
        (
            plan(r#""p1":{"tag":"F1","is":{"speaker":{"coils":300}}}"#, ""),
            "json-not",
        ),
        (
            plan("", r#""r1":{"tag":"W1","from":{"at":1},"to":{"at":1}}"#),
            "json-not",
        ),
    ]
}

#[test]
fn every_error_of_a_job_file_is_made_and_told_in_german() {
    let mut seen = BTreeSet::new();
    for (text, key) in wrong_files() {
        let from: String = text.chars().take(120).collect();
        let mut here = BTreeSet::new();
        match model::file::read_lenient(text.as_bytes()) {
            Ok(opened) => {
                assert!(!opened.problems.is_empty(), "{from} reads");
                for problem in &opened.problems {
                    keys_of(&problem.said(), &mut here);
                    look(&problem.message, &from, &mut here);
                }
            }
            Err(error) => look(&error.said(), &from, &mut here),
        }
        assert!(here.contains(key), "{from} does not say {key}, but {here:?}");
        seen.append(&mut here);
    }
    // Many at once: the first are told one below the other, the rest is counted.
    let parts: Vec<String> = (0..30)
        .map(|at| format!("\"p{at}\":{{\"tag\":\"F{at}\"}}"))
        .collect();
    let Err(error @ FileError::Damaged(_)) = model::file::read(plan(&parts.join(","), "").as_bytes()) else {
        panic!("it reads")
    };
    look(&error.said(), "thirty", &mut seen);
    assert_eq!(german().say(&error.said()).lines().count(), 22);
    for line in [
        "{\"did\":{\"name\":\"a\",\"changes\":[{\"zz\":1}]}}",
        "{\"did\":{\"name\":\"a\",\"changes\":[7]}}",
        "{\"zz\":1}",
        "7",
    ] {
        let wrong = model::history::Entry::from_line(line).expect_err(line);
        look(&wrong, line, &mut seen);
    }
    // A job with more than a sheet may have comes from a program, not from a file: `file::check` holds it.
    let mut job = model::Job::default();
    let sheet = job.sheets.entry(model::SheetKind::Plan).or_default();
    for at in 0..=model::limits::MOST_PARTS as u32 {
        let kind = model::PartKind::from_word("fuse").expect("a kind");
        sheet
            .parts
            .insert(model::PartId(at), model::Part::new(format!("F{at}"), kind));
    }
    for problem in model::file::check(&job) {
        look(&problem.message, "full", &mut seen);
    }
    let theme = include_str!("../../crates/words/texts/en/file.ftl");
    let mut wanted = declared(theme, "file-");
    wanted.extend(declared(theme, "json-"));
    // Said where an item fails without a reason, which no reader does today.
    let missing: Vec<&String> = wanted
        .difference(&seen)
        .filter(|key| *key != "file-unreadable")
        .collect();
    assert!(missing.is_empty(), "made by nothing here: {missing:?}");
}

fn wrong_lessons() -> Vec<(String, &'static [&'static str])> {
    let begin = "lesson a\n";
    let with = |text: &str| format!("{begin}{text}");
    vec![
        (
            (0..201).map(|at| format!("source s{at}\n")).collect(),
            &["lesson-text-blocks", "lesson-text-two"],
        ),
        (
            "\n".repeat(model::limits::LARGEST_FILE + 1),
            &["lesson-text-long"],
        ),
        (String::new(), &["lesson-text-key-first", "lesson-text-key-help"]),
        ("lesson A B".to_owned(), &["lesson-text-key"]),
        (
            with(&format!("look heat {}", "W1 ".repeat(60))),
            &["lesson-text-things", "lesson-text-things-help"],
        ),
        (with("fault x"), &["lesson-text-fault", "lesson-text-fault-help"]),
        (
            with("unasked"),
            &["lesson-text-unasked", "lesson-text-unasked-help"],
        ),
        (with("zzzzzz"), &["lesson-text-no-block", "lesson-text-begins"]),
        (with("stori"), &["lesson-text-no-block", "text-meant"]),
        (with("look zz"), &["lesson-text-overlay", "text-there-are"]),
        (with("look heat"), &["lesson-text-look", "lesson-text-look-help"]),
        (with("break zz"), &["lesson-text-break", "lesson-text-break-help"]),
        (
            with("break open W1 W2"),
            &["lesson-text-break-things", "lesson-text-break-things-help"],
        ),
        (
            with("break open W1\n  then zz"),
            &["lesson-text-version", "lesson-text-version-help"],
        ),
        (
            with("break open W1\n  then bad zz W1"),
            &["lesson-text-effect", "lesson-text-effect-word"],
        ),
        (
            with("break open W1\n  then bad zz"),
            &["lesson-text-effect", "lesson-text-effect-form"],
        ),
        (
            with("break open W1\n  zz a"),
            &["lesson-text-in-break", "lesson-text-in-break-help"],
        ),
        (
            with("question Why?\n  zz a"),
            &["lesson-text-in-question", "lesson-text-in-question-help"],
        ),
        (
            with("question Why?"),
            &["lesson-text-question", "lesson-text-question-help"],
        ),
        (
            with("system\n  sheet found"),
            &["lesson-text-own-line", "lesson-text-own-line-help"],
        ),
        (
            with("look heat W1\n  There."),
            &["lesson-text-no-thing", "lesson-text-no-thing-help"],
        ),
        (
            with("about zzzzzz"),
            &["lesson-text-no-check", "lesson-text-about-help"],
        ),
        (
            with("unasked zzzzzz"),
            &["lesson-text-no-check", "lesson-text-checks-help"],
        ),
    ]
}

#[test]
fn every_error_of_a_lesson_is_made_and_told_in_german() {
    let (mut seen, mut unsaid) = (BTreeSet::new(), Vec::<String>::new());
    for (text, keys) in wrong_lessons() {
        let from: String = text.chars().take(70).collect();
        let errors = lessons::read(&text).expect_err(&from);
        let mut here = BTreeSet::new();
        look_all(&errors, &from, &mut here);
        for key in keys.iter().filter(|key| !here.contains(**key)) {
            unsaid.push(format!("{from:?} does not say {key}, but {here:?}"));
        }
        seen.append(&mut here);
    }
    assert!(unsaid.is_empty(), "{}", unsaid.join("\n"));
    let theme = include_str!("../../crates/words/texts/en/lessons.ftl");
    let missing: Vec<String> = declared(theme, "lesson-text-")
        .difference(&seen)
        .cloned()
        .collect();
    assert!(missing.is_empty(), "made by nothing here: {missing:?}");
}

/// The same of the words of a lesson and of a worked job in another language, and of kept results of an exercise.
#[test]
fn every_error_of_words_and_results_is_made_and_told_in_german() {
    let mut seen = BTreeSet::new();
    let lesson = lessons::BuiltIn::of("tied-outputs")
        .expect("it is built in")
        .lesson();
    let words = "look\nlook\nlook\nquestion Q\n  answer One.\n  right No.\nnames\n  B7 Battery\nzzzzzz\n";
    let errors = lessons::translate(lesson, words).expect_err("it does not fit");
    look_all(&errors, words, &mut seen);
    let names = "names\n  B7 Battery\nthread\n  C99 Noise\nzzzzzz\n";
    let worked = lessons::WORKED_JOBS.first().expect("a worked job");
    look_all(
        &worked.called(names).expect_err("it does not fit"),
        names,
        &mut seen,
    );
    let lessons_said = include_str!("../../crates/words/texts/en/lessons.ftl");
    let mut wanted = declared(lessons_said, "lesson-words-");
    wanted.extend(declared(lessons_said, "worked-words-"));

    let record = |number: i32, came: &str| {
        format!(
            "[{{\"lesson\":\"a\",\"try\":{number},\"points\":0,\"of\":0,\
             \"marks\":[{{\"thing\":\"W1\",\"reason\":\"x\",\"came\":\"{came}\"}}],\"found\":[],\"missed\":[]}}]"
        )
    };
    for text in ["[", "[}", &record(-1, "right"), &record(1, "maybe"), "[1]"] {
        let error = lessons::Records::from_json(text).expect_err(text);
        look(&error.saying(), text, &mut seen);
    }
    let exercise_said = include_str!("../../crates/words/texts/en/exercise.ftl");
    wanted.extend(declared(exercise_said, "exercise-results-"));
    wanted.extend(["json-cut".to_owned(), "json-syntax".to_owned()]);
    let missing: Vec<&String> = wanted.difference(&seen).collect();
    assert!(missing.is_empty(), "made by nothing here: {missing:?}");
}
