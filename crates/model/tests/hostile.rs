//! Files and texts that are broken by accident or on purpose: whatever they hold, reading ends, with a job or with an
//! error that names the place, and never in a panic.
//!
//! Bounded runs of a mutating fuzzer with shrinking. What it ever found is kept in `tests/cases/` and read each time.
#![allow(clippy::disallowed_methods, reason = "a test reads its cases from the disk")]

use model::file::{check, read, read_lenient, write};
use model::limits::{LARGEST_FILE, MOST_PARTS, MOST_RUNS};
use model::text::{parse, parse_lenient, print, unshown};
use model::{History, Job, SheetKind};
use proptest::prelude::*;
use proptest::sample::{Index, select};
use serde_json::{Value, json};

const TEXT: &str = r#"job "A \"small\" system"
vehicle-info name="An estate" date=2024-05-01
conditions idle music cabin=~30C
limit drop-share 0.04
allow feed-order
sheet found
battery B1 flooded 70Ah ~640A charge=~0.8 @0,0
plug P1 cavities="1 YE permanent; 2 RDWH switched; 3" loops=1-3
sheet plan
battery B1 agm 70Ah
fuse F1 "Main fuse" strip61 60A @200,80 turn=90 by=earlier place=engine-bay note="found\nloose"
block D1 inputs=2 outputs=3 30A,-,20A
amplifier A1 sections="4x 75W@4ohm bridged 220W@4ohm min 4ohm hp 80Hz; 1x 300W@2ohm lp 80Hz" ab
load L1 5A
run W1 B1.+ F1.in 16mm2 0.3m RD copper ends=ring/ring end-ohms=0.001ohm/?
run W2 F1.out D1.in "feed" 6AWG ~4.5m RDWH sheathed chafed bends=10,20/30,40 route=bulkhead/sill
run W3 D1.out1 L1.+ 2.5mm2 condition=?
run W4 L1.- loose@-5,7 1.5mm2 BK id=r40
run W5 A1.hi1+ *p77.in
"#;

/// Pieces that upset parsers.
const PIECES: &[&str] = &[
    "",
    " ",
    "\n",
    "\r\n",
    "\t",
    "\u{0}",
    "\u{feff}",
    "\"",
    "\\",
    "\\u0000",
    "\\ud800",
    "{",
    "}",
    "[",
    "]",
    ":",
    ",",
    "null",
    "true",
    "-0",
    "1e308",
    "1e999",
    "-1",
    "99999999999999999999",
    "4294967295",
    "NaN",
    "p1",
    "p01",
    "r1",
    "assumed",
    "unread",
    "{\"assumed\":",
    "=",
    "~",
    "?",
    "#",
    "@",
    "/",
    ".",
    "*p1.",
    "é",
    "🔧",
    "loose@",
    "id=p1",
    "sheet",
    "run",
    "fuse ",
    "AWG",
    "mm2",
    "ohm",
    ";",
    "-",
    "x",
    "@4ohm",
    "bridged",
    "min",
];

/// One thing done to a text, at places told by shares of its length.
#[derive(Clone, Debug)]
enum Spoil {
    Insert(Index, &'static str),
    Delete(Index, usize),
    Repeat(Index, Index, u8),
    Swap(Index, Index),
    Byte(Index, u8),
}

fn any_spoil() -> impl Strategy<Value = Spoil> {
    prop_oneof![
        4 => (any::<Index>(), select(PIECES)).prop_map(|(at, piece)| Spoil::Insert(at, piece)),
        4 => (any::<Index>(), 1..30_usize).prop_map(|(at, count)| Spoil::Delete(at, count)),
        1 => (any::<Index>(), any::<Index>(), 1..4_u8).prop_map(|(from, to, times)| Spoil::Repeat(from, to, times)),
        2 => (any::<Index>(), any::<Index>()).prop_map(|(a, b)| Spoil::Swap(a, b)),
        2 => (any::<Index>(), any::<u8>()).prop_map(|(at, byte)| Spoil::Byte(at, byte)),
    ]
}

fn spoil(mut bytes: Vec<u8>, all: &[Spoil]) -> Vec<u8> {
    for one in all {
        let length = bytes.len().max(1);
        match one {
            Spoil::Insert(at, piece) => {
                let at = at.index(length).min(bytes.len());
                bytes.splice(at..at, piece.bytes());
            }
            Spoil::Delete(at, count) => {
                let at = at.index(length).min(bytes.len());
                bytes.drain(at..(at + count).min(bytes.len()));
            }
            Spoil::Repeat(from, to, times) => {
                let (from, to) = (from.index(length), to.index(length));
                let piece = bytes.get(from.min(to)..from.max(to)).unwrap_or_default().to_vec();
                for _ in 0..*times {
                    bytes.splice(from..from, piece.iter().copied());
                }
            }
            Spoil::Swap(a, b) => {
                if !bytes.is_empty() {
                    bytes.swap(a.index(length), b.index(length));
                }
            }
            Spoil::Byte(at, byte) => {
                if let Some(place) = bytes.get_mut(at.index(length)) {
                    *place = *byte;
                }
            }
        }
    }
    bytes
}

/// What must hold of every job that was read, from whatever.
fn holds_of_a_job(job: &Job) {
    let wrong: Vec<_> = check(job).into_iter().filter(|p| p.left_out).collect();
    assert!(wrong.is_empty(), "it was let in: {wrong:?}");
    let file = write(job);
    assert_eq!(read(file.as_bytes()).as_ref(), Ok(job), "{file}");
    let text = print(job);
    match parse(&text) {
        Ok(back) if unshown(job).is_empty() => assert_eq!(&back, job, "{text}"),
        Ok(_) => {}
        Err(errors) => panic!("{text}\n{errors}"),
    }
    // Its terminals can be told, and it can be worked on.
    let mut copy = job.clone();
    let mut history = History::new();
    for kind in SheetKind::ALL {
        let parts = job
            .sheet(*kind)
            .map(|s| s.parts.keys().copied().collect())
            .unwrap_or_default();
        if let Ok(pasted) = model::edits::duplicate(job, *kind, &parts, i32::MAX, i32::MIN) {
            history.apply(&mut copy, pasted.edit);
        }
        let edit = model::edits::remove_parts(&copy, *kind, &parts);
        history.apply(&mut copy, edit);
    }
    while history.undo(&mut copy).is_some() {}
    assert_eq!(&copy, job);
}

/// What must hold of any bytes taken for a file.
fn holds_of_a_file(bytes: &[u8]) {
    match read_lenient(bytes) {
        Ok(opened) => {
            for problem in &opened.problems {
                assert!(
                    !problem.place.is_empty() && !problem.message.to_string().is_empty(),
                    "{problem:?}"
                );
            }
            match read(bytes) {
                Ok(job) => assert_eq!(job, opened.job),
                Err(error) => assert!(opened.is_damaged() && error.to_string().contains(": "), "{error}"),
            }
            holds_of_a_job(&opened.job);
        }
        Err(error) => {
            assert!(read(bytes).is_err());
            assert!(error.to_string().starts_with("the file "), "{error}");
        }
    }
}

/// What must hold of any text taken for the text form.
fn holds_of_a_text(text: &str) {
    let (job, errors) = parse_lenient(text);
    let lines = text.split('\n').count();
    for error in &errors.0 {
        assert!(
            (1..=lines).contains(&error.line) && error.column >= 1,
            "{error:?}"
        );
        assert!(error.to_string().contains('^'));
    }
    holds_of_a_job(&job);
}

#[test]
fn every_case_ever_found_is_survived() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/cases");
    let mut count = 0;
    for entry in std::fs::read_dir(folder).expect("the folder of cases") {
        let path = entry.expect("a case").path();
        let bytes = std::fs::read(&path).expect("a case");
        // Shown when it fails.
        eprintln!("{}", path.display());
        holds_of_a_file(&bytes);
        holds_of_a_text(&String::from_utf8_lossy(&bytes));
        count += 1;
    }
    assert!(count >= 5, "the cases are there");
}

/// Replaces the value at a random place of a JSON value.
fn graft(value: &mut Value, way: &[Index], graft_in: &Value) {
    match (value, way.split_first()) {
        (Value::Object(object), Some((at, rest))) if !object.is_empty() => {
            let key = object.keys().nth(at.index(object.len())).cloned().expect("a key");
            graft(&mut object[&key], rest, graft_in);
        }
        (Value::Array(all), Some((at, rest))) if !all.is_empty() => {
            let at = at.index(all.len());
            graft(&mut all[at], rest, graft_in);
        }
        (value, _) => *value = graft_in.clone(),
    }
}

fn any_graft() -> impl Strategy<Value = Value> {
    select(vec![
        json!(null),
        json!(true),
        json!(0),
        json!(-1),
        json!(1e308),
        json!(-0.0),
        json!(u64::MAX),
        json!(i64::MIN),
        json!(""),
        json!("F1"),
        json!("W1"),
        json!("x".repeat(5000)),
        json!("\u{0}\n\"\\#=~"),
        json!([]),
        json!({}),
        json!({"assumed": 1}),
        json!({"assumed": {"assumed": 1}}),
        json!([1, "a", {}]),
        json!({"x": 1, "y": 2}),
        json!({"loose": {"x": 1, "y": 2}}),
        json!({"on": {"part": "p2", "terminal": "weird name.#\""}}),
        json!({"fuse": {}}),
        json!({"fuse": {}, "load": {}}),
        json!("16mm2"),
    ])
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 600, max_shrink_iters: 4000, ..ProptestConfig::default() })]

    /// The job file as bytes.
    #[test]
    fn spoilt_files(all in proptest::collection::vec(any_spoil(), 0..8)) {
        holds_of_a_file(&spoil(write(&testkit::job(TEXT)).into_bytes(), &all));
    }

    /// The job file as JSON that is well built and says something else.
    #[test]
    fn grafted_files(
        grafts in proptest::collection::vec((proptest::collection::vec(any::<Index>(), 1..9), any_graft()), 1..6),
    ) {
        let mut value: Value = serde_json::from_str(&write(&testkit::job(TEXT))).expect("JSON");
        for (way, with) in grafts {
            graft(&mut value, &way, &with);
        }
        if let Value::Object(top) = &mut value {
            top.insert("format".to_owned(), json!("loomwright-job"));
            top.insert("version".to_owned(), json!(1));
        }
        holds_of_a_file(value.to_string().as_bytes());
    }

    /// Old files, grafted likewise.
    #[test]
    fn grafted_old_files(
        grafts in proptest::collection::vec((proptest::collection::vec(any::<Index>(), 1..7), any_graft()), 1..4),
    ) {
        let mut value: Value = serde_json::from_str(include_str!("jobs/v0/small.loom.json")).expect("JSON");
        for (way, with) in grafts {
            graft(&mut value, &way, &with);
        }
        holds_of_a_file(value.to_string().as_bytes());
    }

    /// The text form.
    #[test]
    fn spoilt_texts(all in proptest::collection::vec(any_spoil(), 0..8)) {
        holds_of_a_text(&String::from_utf8_lossy(&spoil(TEXT.as_bytes().to_vec(), &all)));
    }
}

/// Large inputs must not take more than their size: far below a quadratic effort, which would take minutes here.
#[test]
fn large_and_wrong_is_answered_soon() {
    let bad_ends: String = (0..MOST_RUNS)
        .map(|n| format!("run W{n} X{n}.in Y{n}.out\n"))
        .collect();
    let (_, errors) = parse_lenient(&format!("fuse F1\n{bad_ends}"));
    assert_eq!(errors.0.len(), 100);
    let parts = (0..MOST_PARTS).map(|n| format!("fuse F{n}\n"));
    let runs = (0..MOST_RUNS).map(|n| format!("run W{n} F{}.in F{}.out\n", n % MOST_PARTS, n % 777));
    let good: String = parts.chain(runs).collect();
    let file = write(&testkit::job(&good));
    assert!(
        file.len() * 3 < LARGEST_FILE,
        "three full sheets are {} bytes, and would not be read again",
        file.len() * 3
    );
    let mut value: Value = serde_json::from_str(&file).expect("JSON");
    let runs = value["sheets"]["plan"]["runs"].as_object_mut().expect("runs");
    runs.clear();
    for part in value["sheets"]["plan"]["parts"]
        .as_object_mut()
        .expect("parts")
        .values_mut()
    {
        part["tag"] = json!("bad tag");
        part["is"]["fuse"]["rating"] = json!("bad");
    }
    let opened = read_lenient(value.to_string().as_bytes()).expect("readable in part");
    assert_eq!(opened.problems.len(), 2 * MOST_PARTS);
    assert_eq!(opened.job.sheets[&SheetKind::Plan].parts.len(), MOST_PARTS);
}
