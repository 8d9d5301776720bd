//! The job file: what is written reads back, what is wrong is named with its place, and nothing is lost.
#![allow(
    clippy::disallowed_methods,
    reason = "a test reads its fixtures from the disk"
)]

use model::file::{
    FORMAT, FileError, Problem, UNREAD, VERSION, check, migrations, read, read_lenient, write,
};
use model::{Job, PartId, RunId, SheetKind};
use proptest::prelude::*;
use serde_json::{Value, json};
use std::path::{Path, PathBuf};

const TEXT: &str = "\
job \"A small system\"
battery B1 agm 70Ah
fuse F1 \"Main fuse\" 60A
load L1 5A
run W1 B1.+ F1.in 16mm2 0.3m
run W2 F1.out L1.+ 6AWG ~4.5m
";

/// The file of [`TEXT`] as JSON, to be spoilt.
fn value() -> Value {
    serde_json::from_str(&write(&testkit::job(TEXT))).expect("what is written is JSON")
}

fn bytes(value: &Value) -> Vec<u8> {
    value.to_string().into_bytes()
}

/// The file with the value at a place changed.
fn spoilt(pointer: &str, to: Value) -> Vec<u8> {
    let mut value = value();
    let (object, key) = pointer.rsplit_once('/').expect("a pointer");
    value
        .pointer_mut(object)
        .expect("the place")
        .as_object_mut()
        .expect("an object")
        .insert(key.to_owned(), to);
    bytes(&value)
}

/// The places of what was left out, and the job.
fn left_out(bytes: &[u8]) -> (Vec<String>, Job) {
    let opened = read_lenient(bytes).expect("it is readable in part");
    let places = opened
        .problems
        .iter()
        .filter(|p| p.left_out)
        .map(|p| p.place.clone())
        .collect();
    (places, opened.job)
}

#[test]
fn the_file_begins_and_ends_as_it_should() {
    let file = write(&Job::default());
    assert!(
        file.starts_with("{\n  \"format\": \"loomwright-job\",\n  \"settings\": {"),
        "{file}"
    );
    assert!(file.ends_with("\"version\": 2\n}\n"), "{file}");
    assert_eq!(read(file.as_bytes()), Ok(Job::default()));
}

#[test]
fn one_changed_property_is_one_changed_line() {
    let before = write(&testkit::job(TEXT));
    let after = write(&testkit::job(&TEXT.replace("60A", "80A")));
    let changed = before.lines().zip(after.lines()).filter(|(a, b)| a != b).count();
    assert_eq!((changed, before.lines().count()), (1, after.lines().count()));
}

#[test]
fn errors_name_the_place() {
    let cases: &[(&str, Value, &str, &str)] = &[
        (
            "/sheets/plan/parts/p2/is/fuse/rating",
            json!("sixty"),
            "sheets.plan.parts.p2.is.fuse.rating",
            "a number",
        ),
        (
            "/sheets/plan/parts/p2/is/fuse/rating",
            json!(-5),
            "sheets.plan.parts.p2.is.fuse.rating",
            "out of range",
        ),
        (
            "/sheets/plan/parts/p2/is/fuse/rating",
            json!({"assumed": "NaN"}),
            "sheets.plan.parts.p2.is.fuse.rating.assumed",
            "a number",
        ),
        (
            "/sheets/plan/parts/p2/is/fuse/rating",
            json!({"guessed": 5}),
            "sheets.plan.parts.p2.is.fuse.rating",
            "`assumed`",
        ),
        (
            "/sheets/plan/parts/p2/is/fuse/rating",
            json!({}),
            "sheets.plan.parts.p2.is.fuse.rating",
            "assumed",
        ),
        (
            "/sheets/plan/parts/p2/is/fuse/form",
            json!("strip16"),
            "sheets.plan.parts.p2.is.fuse.form",
            "strip61",
        ),
        (
            "/sheets/plan/parts/p2/label",
            json!(5),
            "sheets.plan.parts.p2.label",
            "string",
        ),
        (
            "/sheets/plan/parts/p2/label",
            json!("x".repeat(401)),
            "sheets.plan.parts.p2.label",
            "400",
        ),
        (
            "/sheets/plan/parts/p2/note",
            json!("x".repeat(4001)),
            "sheets.plan.parts.p2.note",
            "4000",
        ),
        (
            "/sheets/plan/parts/p2/at",
            json!({"x": 1, "y": 1_000_001}),
            "sheets.plan.parts.p2.at",
            "off the board",
        ),
        (
            "/sheets/plan/parts/p2/at",
            json!({"x": 1, "y": 1e12}),
            "sheets.plan.parts.p2.at.y",
            "whole number",
        ),
        (
            "/sheets/plan/parts/p2/turn",
            json!("45"),
            "sheets.plan.parts.p2.turn",
            "90",
        ),
        (
            "/sheets/plan/parts/p2/tag",
            json!("F 1"),
            "sheets.plan.parts.p2.tag",
            "letters, digits",
        ),
        (
            "/sheets/plan/parts/p2/tag",
            json!("B1"),
            "sheets.plan.parts.p2.tag",
            "twice",
        ),
        (
            "/sheets/plan/parts/p2/is",
            json!({"warp": {}}),
            "sheets.plan.parts.p2.is",
            "warp",
        ),
        ("/sheets/plan/parts/07", json!({}), "sheets.plan.parts.07", "p12"),
        (
            "/sheets/plan/runs/r1/wire/length",
            json!(1e300),
            "sheets.plan.runs.r1.wire.length",
            "200",
        ),
        (
            "/sheets/plan/runs/r1/wire/size",
            json!("5AWG"),
            "sheets.plan.runs.r1.wire.size",
            "5AWG",
        ),
        (
            "/sheets/plan/runs/r1/wire/bundle",
            json!(256),
            "sheets.plan.runs.r1.wire.bundle",
            "0 to 255",
        ),
        (
            "/sheets/plan/runs/r1/bends",
            json!([{"x": 1, "y": 2}, {"x": "a", "y": 2}]),
            "sheets.plan.runs.r1.bends.1.x",
            "whole number",
        ),
        (
            "/sheets/plan/runs/r1/from",
            json!({"on": {"part": "q1", "terminal": "+"}}),
            "sheets.plan.runs.r1.from.on.part",
            "p12",
        ),
        (
            "/sheets/plan/runs/r1/route",
            json!(vec!["a"; 101]),
            "sheets.plan.runs.r1.route",
            "100",
        ),
        ("/sheets/dream", json!({}), "sheets.dream", "found, plan, built"),
        (
            "/sheets/plan/parts",
            json!([]),
            "sheets.plan.parts",
            "not an object",
        ),
        (
            "/settings/conditions/cabin",
            json!(500),
            "settings.conditions.cabin",
            "90",
        ),
        (
            "/settings/limits",
            json!({"a": "b"}),
            "settings.limits.a",
            "a number",
        ),
        (
            "/settings/limits",
            json!({"drop-share": -5, "fuse-reach": 0.3}),
            "settings.limits.drop-share",
            "from 0 to a million",
        ),
        ("/vehicle/name", json!("x".repeat(401)), "vehicle.name", "400"),
        ("/title", json!(null), "title", "not a text"),
    ];
    for (pointer, to, place, saying) in cases {
        let bytes = spoilt(pointer, to.clone());
        let Err(FileError::Damaged(problems)) = read(&bytes) else {
            panic!("{pointer} {to}: read")
        };
        let [
            Problem {
                place: told, message, ..
            },
        ] = problems.as_slice()
        else {
            panic!("{pointer} {to}: {problems:#?}")
        };
        assert_eq!(told, place, "{to}: {message}");
        assert!(
            message.to_string().contains(saying),
            "{place}: `{saying}` is not in: {message}"
        );
        // The rest is there, what is wrong is kept, and what is saved then opens without a complaint.
        let (places, job) = left_out(&bytes);
        assert_eq!(places.len(), 1);
        assert!(job.extra.contains_key(UNREAD));
        let again = read(write(&job).as_bytes());
        assert_eq!(again.as_ref(), Ok(&job), "{place}");
        assert_eq!(check(&job).iter().filter(|p| p.left_out).count(), 0);
    }
}

#[test]
fn a_wrong_value_costs_itself_alone() {
    let (_, job) = left_out(&spoilt("/sheets/plan/parts/p2/is/fuse/rating", json!("sixty")));
    let part = &job.sheets[&SheetKind::Plan].parts[&PartId(2)];
    assert_eq!((part.tag.as_str(), part.label.as_str()), ("F1", "Main fuse"));
    assert_eq!(
        job.extra[UNREAD]["sheets.plan.parts.p2.is.fuse.rating"],
        json!("sixty")
    );
    // What it cannot do without costs the whole part; the runs to it stay, and are told of.
    let opened =
        read_lenient(&spoilt("/sheets/plan/parts/p2/is", json!({"warp": {"drive": 1}}))).expect("readable");
    let sheet = &opened.job.sheets[&SheetKind::Plan];
    assert!(!sheet.parts.contains_key(&PartId(2)) && sheet.runs.contains_key(&RunId(1)));
    let kept = &opened.job.extra[UNREAD]["sheets.plan.parts.p2"];
    assert_eq!(
        (&kept["is"], &kept["tag"]),
        (&json!({"warp": {"drive": 1}}), &json!("F1"))
    );
    let told: Vec<_> = opened
        .problems
        .iter()
        .map(|p| (p.place.as_str(), p.left_out))
        .collect();
    assert_eq!(
        told,
        [
            ("sheets.plan.parts.p2.is", true),
            ("sheets.plan.runs.r1.to", false),
            ("sheets.plan.runs.r2.from", false),
        ]
    );
    // A tag that is none is replaced, and kept.
    let (_, job) = left_out(&spoilt("/sheets/plan/parts/p2/tag", json!(["F1"])));
    assert_eq!(job.sheets[&SheetKind::Plan].parts[&PartId(2)].tag, "F9001");
    assert_eq!(job.extra[UNREAD]["sheets.plan.parts.p2.tag"], json!(["F1"]));
}

#[test]
fn a_place_without_a_name_is_none() {
    let part = read(&spoilt("/sheets/plan/parts/p2/place", json!(""))).expect("it is whole");
    assert_eq!(part.sheets[&SheetKind::Plan].parts[&PartId(2)].place, None);
    let route = json!(["", "sill-left", ""]);
    let run = read(&spoilt("/sheets/plan/runs/r1/route", route)).expect("it is whole");
    assert_eq!(run.sheets[&SheetKind::Plan].runs[&RunId(1)].route, ["sill-left"]);
}

#[test]
fn ends_on_nothing_are_read_and_told() {
    let bytes = spoilt(
        "/sheets/plan/runs/r1/from",
        json!({"on": {"part": "p99", "terminal": "+"}}),
    );
    let job = read(&bytes).expect("it is whole");
    let problems = check(&job);
    assert_eq!(problems.len(), 1);
    assert_eq!(problems[0].place, "sheets.plan.runs.r1.from");
    assert!(!problems[0].left_out);
}

#[test]
fn what_is_no_job_is_refused_with_the_reason() {
    let says = |bytes: &[u8]| read(bytes).expect_err("not a job").to_string();
    assert!(says(b"").contains("not JSON: line 1, column 0"), "{}", says(b""));
    assert!(says(b"{\"format\": \"loomwright-job\",\n oops").contains("line 2, column 2"));
    assert!(says(b"[]").contains("no JSON object"));
    assert!(says(b"{}").contains("\"format\": \"loomwright-job\""));
    assert!(says(b"{\"format\": \"loomwright-job\"}").contains("version"));
    assert!(says(b"{\"format\": \"loomwright-job\", \"version\": -1}").contains("version"));
    assert!(
        says(b"{\"format\": \"loomwright-job\", \"version\": 7, \"sheets\": 5}")
            .contains("made by version 7, this reads up to 2")
    );
    assert!(
        says(b"{\"format\": \"loomwright-job\", \"version\": 99999999999}").contains("version 99999999999")
    );
    assert!(says(b"\xff\xfe").contains("byte 0"));
    assert!(says(br#"{"a": "\ud800"}"#).contains("line 1"));
    assert!(says(b"{\"a\": 1e999}").contains("line 1"));
    assert!(says(b"{\"a\": NaN}").contains("line 1"));
    assert!(says(br#"{"a": {"b": 1, "b": 2}}"#).contains("a.b: the key stands twice"));
    let deep = format!("{}{}", "[".repeat(100_000), "]".repeat(100_000));
    assert!(says(deep.as_bytes()).contains("nested deeper"));
    assert!(says(&vec![b' '; 128 * 1024 * 1024 + 1]).contains("134217728"));
    let many: serde_json::Map<String, Value> = (0..10_001).map(|n| (format!("p{n}"), json!({}))).collect();
    assert!(says(&spoilt("/sheets/plan/parts", Value::Object(many))).contains("10001 of them"));
}

#[test]
fn harmless_dress_is_accepted() {
    let file = write(&testkit::job(TEXT));
    let dressed = format!("\u{feff}{}", file.replace('\n', "\r\n"));
    assert_eq!(read(dressed.as_bytes()), Ok(testkit::job(TEXT)));
}

#[test]
fn unknown_fields_survive_everywhere() {
    let mut value = value();
    for place in [
        "",
        "/vehicle",
        "/settings",
        "/settings/conditions",
        "/sheets/plan",
        "/sheets/plan/parts/p2",
        "/sheets/plan/parts/p2/is/fuse",
        "/sheets/plan/runs/r1",
        "/sheets/plan/runs/r1/wire",
        "/sheets/plan/runs/r1/from_ending",
        "/sheets/plan/runs/r1/to_ending",
    ] {
        let object = value
            .pointer_mut(place)
            .and_then(Value::as_object_mut)
            .expect(place);
        object.insert(
            "from-the-future".to_owned(),
            json!({"deep": [1, 2.5, null, {"x": "y"}]}),
        );
    }
    let job = read(&bytes(&value)).expect("it is whole");
    assert_eq!(serde_json::from_str::<Value>(&write(&job)).expect("JSON"), value);
    assert_eq!(model::text::unshown(&job).len(), 11);
}

fn folder(version: u32) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("tests/jobs/v{version}"))
}

#[test]
fn every_migration_has_a_file_before_and_after() {
    for (step, from) in migrations::STEPS.iter().zip(0..) {
        let mut count = 0;
        for entry in std::fs::read_dir(folder(from))
            .unwrap_or_else(|e| panic!("{}: tests/jobs/v{from}: {e}", step.name))
        {
            let before = entry.expect("a file").path();
            let name = before.file_name().expect("a name");
            let after = folder(from + 1).join(name);
            let json = |path: &Path| -> serde_json::Map<String, Value> {
                let text = std::fs::read_to_string(path)
                    .unwrap_or_else(|e| panic!("{}: {}: {e}", step.name, path.display()));
                serde_json::from_str(&text).expect("JSON")
            };
            let mut top = json(&before);
            migrations::bring_up(&mut top, from);
            // The file after holds the same job, written by the version after.
            let brought_up = read(&serde_json::to_vec(&top).expect("JSON")).expect("a whole job");
            let want = std::fs::read_to_string(&after)
                .unwrap_or_else(|e| panic!("{}: {}: {e}", step.name, after.display()));
            if from + 1 == VERSION {
                assert_eq!(write(&brought_up), want, "{}", step.name);
            }
            assert_eq!(read(want.as_bytes()).as_ref(), Ok(&brought_up), "{}", step.name);
            assert_eq!(
                read(&std::fs::read(&before).expect("a file")),
                Ok(brought_up),
                "{}",
                step.name
            );
            count += 1;
        }
        assert!(count > 0, "{}: there is no file in tests/jobs/v{from}", step.name);
    }
    assert!(
        folder(VERSION).is_dir(),
        "files of the version that is written now"
    );
    assert_eq!(FORMAT, "loomwright-job");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    /// What is written reads back equal, without a complaint, and is written equal again.
    #[test]
    fn any_job_reads_back(job in testkit::any::any_job()) {
        let file = write(&job);
        let opened = read_lenient(file.as_bytes()).expect("it was just written");
        prop_assert_eq!(&opened.problems, &vec![], "{}", file);
        prop_assert_eq!(&opened.job, &job);
        prop_assert_eq!(write(&opened.job), file);
        prop_assert!(check(&job).is_empty());
    }
}
