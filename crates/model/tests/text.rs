//! The text form: what is read from it, what its errors say, and that it reads back.

use model::fact::Fact::{Assumed, Given};
use model::kinds::supply::{Chemistry, FuseForm, LoadLaw};
use model::quantity::{Amps, Metres, Share};
use model::text::{parse, parse_lenient, print, unshown};
use model::{BoardPoint, End, PartId, PartKind, RunId, SheetKind, TerminalRef};
use proptest::prelude::*;

const SMALL: &str = r#"# The feed of an amplifier.
job "Small \"system\""
vehicle-info name="An estate car" date=2024-05-01
conditions idle music cabin=30C
limit drop-share 0.04
allow feed-colour feed-order

battery B1 agm 70Ah charge=~80% @0,0
fuse F1 "Main fuse" strip61 60A @200,80 turn=90 by=earlier place=engine-bay note="found\nloose"
load L1 5A
run W1 B1.+ F1.in 16mm2 0.3m RD copper ends=ring/ring end-ohms=0.001ohm/? #~ name
run W2 F1.out L1.+ "feed" 6AWG ~4.5m RDWH sheathed chafed bends=10,20/30,40 route=bulkhead/sill
run W3 L1.- loose@-5,7 1.5mm2 BK
"#;

#[test]
fn reads_every_kind_of_line() {
    let job = testkit::job(SMALL);
    assert_eq!(job.title, "Small \"system\"");
    assert_eq!(job.vehicle.date, "2024-05-01");
    assert_eq!(job.settings.limits.get("drop-share"), Some(&0.04));
    assert_eq!(job.settings.allowed.len(), 2);
    let sheet = job.sheet(SheetKind::Plan).expect("parts go to the plan");
    let PartKind::Battery(battery) = &sheet.parts[&PartId(1)].is else {
        panic!("not a battery")
    };
    assert_eq!(
        (battery.chemistry, battery.charge),
        (Chemistry::Agm, Assumed(Share(0.8)))
    );
    let fuse = &sheet.parts[&PartId(2)];
    let PartKind::Fuse(is) = &fuse.is else {
        panic!("not a fuse")
    };
    assert_eq!((is.form, is.rating), (FuseForm::Strip61, Given(Amps(60.0))));
    assert_eq!(
        (fuse.label.as_str(), fuse.note.as_str()),
        ("Main fuse", "found\nloose")
    );
    assert_eq!(fuse.at, Some(BoardPoint { x: 200, y: 80 }));
    let PartKind::Load(load) = &sheet.parts[&PartId(3)].is else {
        panic!("not a load")
    };
    assert_eq!(
        (load.law, load.current),
        (LoadLaw::Current, Given(Amps(5.0))),
        "5 A tells the law"
    );
    let run = &sheet.runs[&RunId(2)];
    assert_eq!(run.from, End::On(TerminalRef::new(PartId(2), "out")));
    assert_eq!(run.wire.length, Assumed(Metres(4.5)));
    assert!(run.wire.sheathed);
    assert_eq!(
        (run.label.as_str(), run.route.len(), run.bends.len()),
        ("feed", 2, 2)
    );
    assert_eq!(sheet.runs[&RunId(3)].to, End::Loose(BoardPoint { x: -5, y: 7 }));
}

#[test]
fn prints_what_it_read() {
    let printed = print(&testkit::job(SMALL));
    assert_eq!(
        printed,
        r#"job "Small \"system\""
vehicle-info name="An estate car" date=2024-05-01
conditions idle music cabin=30C
limit drop-share 0.04
allow feed-colour
allow feed-order
battery B1 70Ah charge=~0.8 @0,0
fuse F1 "Main fuse" 60A by=earlier place=engine-bay note="found\nloose" @200,80 turn=90
load L1 current 5A
run W1 B1.+ F1.in 16mm2 0.3m copper ends=ring/ring end-ohms=0.001ohm/?
run W2 F1.out L1.+ "feed" 6AWG ~4.5m RDWH sheathed chafed route=bulkhead/sill bends=10,20/30,40
run W3 L1.- loose@-5,7 1.5mm2 BK
"#
    );
    assert_eq!(print(&testkit::job(&printed)), printed);
}

#[test]
fn a_tag_keeps_its_id_from_sheet_to_sheet() {
    let job = testkit::job(
        "sheet found\nfuse F1\nload L1\nsheet plan\nload L1\nbreaker Q1\nfuse F1\nload L2 id=p40\nload L3\n",
    );
    let ids = |kind| -> Vec<(u32, String)> {
        job.sheets[&kind]
            .parts
            .iter()
            .map(|(id, part)| (id.0, part.tag.clone()))
            .collect()
    };
    let is = |all: &[(u32, &str)]| {
        all.iter()
            .map(|(id, tag)| (*id, (*tag).to_owned()))
            .collect::<Vec<_>>()
    };
    assert_eq!(ids(SheetKind::Found), is(&[(1, "F1"), (2, "L1")]));
    assert_eq!(
        ids(SheetKind::Plan),
        is(&[(1, "F1"), (2, "L1"), (3, "Q1"), (40, "L2"), (41, "L3")])
    );
    assert_eq!(testkit::job(&print(&job)), job);
}

#[test]
fn ends_that_the_sheet_does_not_have_are_kept_by_id() {
    let job = testkit::job("fuse F1\nrun W1 *p1.elsewhere *p9.in\n");
    let run = &job.sheets[&SheetKind::Plan].runs[&RunId(1)];
    assert_eq!(run.to, End::On(TerminalRef::new(PartId(9), "in")));
    assert!(print(&job).contains("run W1 *p1.elsewhere *p9.in"));
}

/// Place, message and help of each error.
fn errors(text: &str) -> Vec<(usize, usize, String)> {
    parse_lenient(text)
        .1
        .0
        .into_iter()
        .map(|e| {
            (
                e.line,
                e.column,
                format!(
                    "{} / {}",
                    e.message,
                    e.help.map(|help| help.to_string()).unwrap_or_default()
                ),
            )
        })
        .collect()
}

/// Holds that there is one error, there, saying all of that.
#[track_caller]
fn one(text: &str, line: usize, column: usize, saying: &[&str]) {
    let all = errors(text);
    let [(at_line, at_column, says)] = all.as_slice() else {
        panic!("{text}: {all:#?}")
    };
    assert_eq!((*at_line, *at_column), (line, column), "{text}: {says}");
    for piece in saying {
        assert!(says.contains(piece), "{text}: `{piece}` is not in: {says}");
    }
}

#[test]
fn errors_point_and_say_what_would_do() {
    one("fues F1", 1, 1, &["no kind", "`fuse`"]);
    one("fuse", 1, 1, &["tag is missing", "F1"]);
    one("fuse F-1", 1, 6, &["letters, digits"]);
    one("fuse F1 strip16", 1, 9, &["`strip61`"]);
    one("fuse F1 60", 1, 9, &["rating=60"]);
    one("fuse F1 ?", 1, 9, &["rating=?"]);
    one("fuse F1 6000A", 1, 9, &["rating", "out of range", "1000"]);
    one("fuse F1 60A 500A 40A", 1, 18, &["set already"]);
    one("switch S1 ~closed", 1, 11, &["takes no value", "closed"]);
    one("fuse F1 ~strip61", 1, 9, &["cannot be assumed"]);
    one("fuse F1\nrun W1 F1.in F1.out rd", 2, 21, &["RD"]);
    one("fuse F1\nrun W1 F1.in F1.out 5AWG", 2, 21, &["size", "5AWG"]);
    one("fuse F1 ratng=60A", 1, 9, &["no `ratng`", "`rating`"]);
    one("fuse F1 rating=60V", 1, 16, &["unit", "0.1A to 1000A"]);
    one("fuse F1 rating=60A rating=5A", 1, 20, &["second time"]);
    one("fuse F1 \"a\" \"b\"", 1, 13, &["`label` is set a second time"]);
    one("fuse F1 by=nobody", 1, 12, &["maker, earlier or us"]);
    one("fuse F1 turn=45", 1, 14, &["0, 90, 180"]);
    one("fuse F1 @1", 1, 9, &["200,80"]);
    one("fuse F1 @1000001,0", 1, 9, &["off the board"]);
    one("fuse F1 note=\"open", 1, 14, &["not closed"]);
    one("fuse F1\nload F1", 2, 6, &["already", "tag of its own"]);
    one("fuse F1\nload L1 id=p1", 2, 6, &["p1 belongs to `F1`"]);
    one("amplifier A1 \"2x 50W@4ohm\"", 1, 14, &["sections="]);
    one("sheet plans", 1, 7, &["`plan`"]);
    one("limit a b", 1, 9, &["not a number"]);
    one("job a b", 1, 1, &["\"Title\""]);
    one("job a\njob b", 2, 1, &["second time"]);
    one("conditions duty=lowd", 1, 17, &["`loud`"]);
    one("fuse F1\nrun W1 F1.in", 2, 13, &["two ends"]);
    one(
        "fuse F1\nrun W1 F1.in F1.ot",
        2,
        17,
        &["no terminal `ot`", "F1.out", "it has in, out"],
    );
    one("fuse F1\nrun W1 F1 F1.out", 2, 8, &["not an end", "in, out"]);
    one("fuse F1\nrun W1 F1.in F2.in", 2, 14, &["no part `F2`", "`F1`"]);
    one("fuse F1\nrun W1 F1.in F1.out ends=rong/?", 2, 26, &["`ring`"]);
    one(
        "fuse F1\nrun W1 F1.in F1.out 3mm4",
        2,
        21,
        &["takes no value `3mm4`", "size"],
    );
    one("fuse F1\nrun W1 F1.in F1.out 100000m", 2, 21, &["out of range"]);
    one(
        "fuse F1\nrun W1 F1.in F1.out\nrun W2 W1.in F1.in",
        3,
        8,
        &["is a run", "splice"],
    );
    one(
        "block D1 outputs=12\nrun W1 D1.in D1.out13",
        2,
        17,
        &["in, out1 … out12"],
    );
    // An unreadable part is reported once, not again at each run on it.
    one("fues F1\nload L1\nrun W1 F1.in L1.+", 1, 1, &["fuse"]);
}

#[test]
fn all_errors_are_told_in_order_and_the_rest_is_read() {
    let text = "run W1 F1.in L1.+ 3kg\nfuse F1 xyz 60A\nload L1 -5V\nbogus\n";
    let (job, errors) = parse_lenient(text);
    assert_eq!(errors.0.iter().map(|e| e.line).collect::<Vec<_>>(), [1, 2, 3, 4]);
    let sheet = &job.sheets[&SheetKind::Plan];
    assert_eq!((sheet.parts.len(), sheet.runs.len()), (2, 1));
    assert_eq!(sheet.parts[&PartId(1)].is.get("rating").as_deref(), Some("60A"));
    let shown = errors.to_string();
    assert!(shown.contains("line 2, column 9:"), "{shown}");
    assert!(
        shown.contains(" 2 | fuse F1 xyz 60A\n   |         ^^^"),
        "{shown}"
    );
}

#[test]
fn windows_line_ends_and_a_byte_order_mark_do_no_harm() {
    assert_eq!(
        testkit::job("\u{feff}job A\r\nfuse F1\r\n"),
        testkit::job("job A\nfuse F1\n")
    );
}

#[test]
fn keys_of_lines_are_not_names_of_properties() {
    use model::property::PropertySet;
    for word in PartKind::WORDS {
        let kind = PartKind::from_word(word).expect("a word of the list");
        for property in kind.properties() {
            assert!(
                !["label", "by", "place", "note", "turn", "id"].contains(&property.name),
                "{word}"
            );
        }
    }
    for property in model::Wire::list() {
        assert!(
            !["label", "ends", "end-ohms", "bends", "route", "by", "note", "id"].contains(&property.name)
        );
    }
}

#[test]
fn fields_of_newer_versions_are_told_as_not_shown() {
    let mut job = testkit::job("fuse F1\n");
    job.extra.insert("future".to_owned(), 1.into());
    if let Some(PartKind::Fuse(fuse)) = job
        .sheets
        .get_mut(&SheetKind::Plan)
        .and_then(|s| s.parts.get_mut(&PartId(1)))
        .map(|p| &mut p.is)
    {
        fuse.extra.insert("glow".to_owned(), true.into());
    }
    assert_eq!(unshown(&job), ["future", "sheets.plan.parts.p1.is.fuse.glow"]);
}

#[test]
fn a_line_has_one_tag_and_it_is_one() {
    let twice = ["`tag` is set a second time", "leave one of them out"];
    one("complaint C1 tag=C2 \"x\"", 1, 14, &twice);
    one("intake I1 \"x\" tag=I2", 1, 15, &twice);
    one("offer Q1 \"x\" must tag=Q1", 1, 19, &twice);
    one("complaint tag=C1 tag=C2", 1, 18, &twice);
    one(
        "complaint tag=\"C 1\" \"x\"",
        1,
        15,
        &["tag:", "letters, digits", "` `"],
    );
    one("offer tag=Q-1", 1, 11, &["tag:", "letters, digits", "`-`"]);
    one(
        &format!("intake tag={} \"x\"", "I".repeat(25)),
        1,
        12,
        &["24 bytes", "25"],
    );
    let (job, _) = parse_lenient("complaint C1 tag=C2 \"x\"");
    assert_eq!(job.thread.complaints[0].tag, "C1", "the first one stands");
    // None at all is told so, where a word would be read as the tag.
    let job = testkit::job("complaint tag=\"\" closed\nintake tag=I7 \"x\"\n");
    let complaint = &job.thread.complaints[0];
    assert_eq!((complaint.tag.as_str(), complaint.closed), ("", true));
    assert_eq!(job.thread.intake[0].tag, "I7");
    assert_eq!(testkit::job(&print(&job)), job);
}

#[test]
fn a_place_without_a_name_is_none() {
    let place = |text: &str| {
        parse_lenient(text).0.sheets[&SheetKind::Plan].parts[&PartId(1)]
            .place
            .clone()
    };
    let route = |text: &str| {
        parse_lenient(text).0.sheets[&SheetKind::Plan].runs[&RunId(1)]
            .route
            .clone()
    };
    assert_eq!(errors("fuse F1 place=\"\""), []);
    assert_eq!(place("fuse F1 place=\"\""), None);
    assert_eq!(place("fuse F1 place=sill"), Some("sill".to_owned()));
    let long = "x".repeat(401);
    one(&format!("fuse F1 place={long}"), 1, 15, &["401 bytes", "400"]);
    assert_eq!(place(&format!("fuse F1 place={long}")), None);
    let run = |told: &str| format!("run W1 loose@1,1 loose@2,2 {told}");
    assert_eq!(errors(&run("route=\"\"")), []);
    assert_eq!(route(&run("route=\"\"")), Vec::<String>::new());
    assert_eq!(route(&run("route=a//b/")), ["a", "b"]);
    one(&run(&format!("route=a/{long}")), 1, 34, &["401 bytes", "400"]);
    assert_eq!(route(&run(&format!("route=a/{long}"))), Vec::<String>::new());
}

#[test]
fn limits_are_held_to_what_edits_and_files_take() {
    for bad in ["-5", "1000001", "1e999", "-inf", "NaN"] {
        one(
            &format!("limit drop-share {bad}"),
            1,
            18,
            &["0 to a million", "in the unit"],
        );
        let (job, _) = parse_lenient(&format!("limit drop-share {bad}"));
        assert!(job.settings.limits.is_empty(), "{bad}");
    }
    for good in ["0", "1000000", "0.04"] {
        assert_eq!(errors(&format!("limit drop-share {good}")), []);
    }
    let long = "x".repeat(401);
    one(&format!("limit {long} 1"), 1, 7, &["401 bytes", "400"]);
    one(&format!("allow {long}"), 1, 7, &["401 bytes", "400"]);
    // Of a full list, what is in it may be told again, and is told to be there twice.
    let full: String = (0..1_000)
        .map(|at| format!("limit l{at} 1\nallow c{at}\n"))
        .collect();
    assert_eq!(errors(&full), []);
    one(
        &format!("{full}limit l7 2"),
        2001,
        1,
        &["`l7` is set a second time"],
    );
    assert_eq!(errors(&format!("{full}allow c7")), []);
    one(
        &format!("{full}limit l1000 2"),
        2001,
        1,
        &["more than 1000 limits"],
    );
}

#[test]
fn a_part_beyond_a_full_sheet_is_told_and_not_the_runs_on_it() {
    let mut text: String = (1..=10_001).map(|at| format!("fuse F{at}\n")).collect();
    text.push_str("run W1 F10001.in F1.out\nrun W2 F2.in F10001.out\n");
    one(&text, 10_001, 6, &["more than 10000 parts"]);
    let mut text: String = (1..=20_000)
        .map(|at| format!("run W{at} loose@1,1 loose@2,2\n"))
        .collect();
    text.insert_str(0, "run W0 W20000.in loose@1,1\n");
    one(&text, 20_001, 5, &["more than 20000 runs"]);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    /// Job to text to job is equal, and text to job to text too.
    #[test]
    fn any_job_reads_back(job in testkit::any::any_job()) {
        let text = print(&job);
        let back = parse(&text).unwrap_or_else(|errors| panic!("{text}\n{errors}"));
        prop_assert_eq!(&back, &job, "{}", text);
        prop_assert_eq!(print(&back), text);
    }

    /// Any scramble of likely words gives errors, never a panic, and what was read prints and reads back.
    #[test]
    fn any_scramble_is_survived(words in proptest::collection::vec(proptest::sample::select(vec![
        "fuse", "F1", "F2", "run", "W1", "F1.in", "F1.out", "F2.in", "60A", "~60A", "?", "16mm2", "4AWG", "\n", "\n", "\n",
        "\"", "\"a\"", "=", "a=", "id=p1", "id=r4294967295", "id=p4294967295", "sheet", "plan", "found", "@1,2", "@", "ends=/",
        "bends=1,2/3", "route=a//b", "loose@1,2", "*p1.in", "*p", ".", "job", "limit", "1e999", "allow", "conditions", "loud",
        "\\", "\u{0}", "ü", "🔧", "#", "load", "L1", "law=power", "5A", "12W", "sheathed", "sections=4x",
    ]), 0..60), seps in proptest::collection::vec(0..4_u8, 60)) {
        let mut text = String::new();
        for (word, sep) in words.iter().zip(seps) {
            text.push_str(word);
            if sep > 0 { text.push(' '); }
        }
        let (job, errors) = parse_lenient(&text);
        let _ = errors.to_string();
        let printed = print(&job);
        let back = parse(&printed);
        prop_assert_eq!(back.as_ref(), Ok(&job), "{}\n{}", text, printed);
    }

    /// Any characters at all.
    #[test]
    fn any_characters_are_survived(text in ".{0,200}") {
        let (_, errors) = parse_lenient(&text);
        let _ = errors.to_string();
    }
}
