//! Breaks: their written form, what they do to a sheet, and that undo takes it back to the byte.

use model::breaks::Break;
use model::file::{check, write};
use model::{End, Job, SheetKind};
use proptest::prelude::*;
use words::Words;

const PLAN: SheetKind = SheetKind::Plan;

const TEXT: &str = "\
battery B1
block D1 inputs=1 outputs=3 fuses=30A,20A,-
fuse F1 60A
isolator I1 kind=sensing
plug P1 cavities=\"1 RD; 2 BK\"
amplifier A1
speaker LS1 coils=2
ground E1
ground E2
run W1 B1.+ F1.in 16mm2 0.2m
run W2 F1.out D1.in 16mm2 4m
run W3 D1.out1 A1.+ 10mm2 1m
run W4 A1.- E1.stud 16mm2 0.5m
run W5 LS1.a- E1.stud 2.5mm2 0.5m
run W6 A1.out1+ LS1.a+ 2.5mm2 3m
run W7 D1.out2 P1.1a 2.5mm2 1m
run W8 I1.main F1.out 10mm2 1m
run W9 I1.aux E2.stud 10mm2 1m
";

fn job() -> Job {
    testkit::job(TEXT)
}

fn read(text: &str) -> Result<Break, String> {
    let job = job();
    Break::read(text, &job.sheets[&PLAN]).map_err(|why| Words::english().say(&why))
}

fn broken(text: &str) -> Job {
    let mut job = job();
    let edit = read(text)
        .and_then(|it| it.edit(&job, PLAN).map_err(|why| Words::english().say(&why)))
        .unwrap_or_else(|why| panic!("{text}: {why}"));
    job.apply(edit);
    assert_eq!(check(&job), Vec::new(), "{text}");
    job
}

#[test]
fn the_written_form_reads_back() {
    let job = job();
    let sheet = &job.sheets[&PLAN];
    for (text, said) in [
        ("W3 cut", "W3 cut"),
        ("W3 off A1.+", "W3 off A1.+"),
        ("W3 grounded at 50%", "W3 touches the body at 50 %"),
        (
            "W3 grounded at 7% through 0.005ohm",
            "W3 touches the body at 7 % through 5 mΩ",
        ),
        ("F1 open", "F1 open"),
        ("D1.out2 open", "D1.out2 open"),
        ("LS1 reversed", "LS1 reversed"),
        ("LS1.b reversed", "LS1.b reversed"),
        ("A1 dead", "A1 dead"),
        ("B1.+ joined E1.stud", "B1.+ and E1.stud touch"),
        (
            "B1.+ joined E1.stud through 0.01ohm",
            "B1.+ and E1.stud touch through 10 mΩ",
        ),
        ("B1.+ joined body", "B1.+ and the body touch"),
        ("W3 at 40% joined E1.stud", "W3 at 40 % and E1.stud touch"),
        ("W3 at 40% joined W3 at 90%", "W3 at 40 % and W3 at 90 % touch"),
        ("W3 cut at 30%", "W3 cut at 30 %"),
        ("W3 resistive 0.2ohm", "W3 with 0.2 Ω too much"),
        ("E1 poor 0.5ohm", "E1 with 0.5 Ω too much"),
    ] {
        let made = read(text).unwrap_or_else(|why| panic!("{text}: {why}"));
        assert_eq!(made.written(sheet), text);
        assert_eq!(Words::english().say(&made.said(sheet)), said);
    }
    // What people type beside that.
    assert_eq!(read("W3 grounded"), read("W3 grounded at 0.5"));
    assert_eq!(
        read("W3 grounded at 50 % through 5 mΩ"),
        read("W3 grounded at 50% through 5mohm")
    );
    assert_eq!(read("W3 open"), read("W3 cut"));
    assert_eq!(read("W3 cut at 50 %"), read("W3 cut"));
    assert_eq!(read("W3 joined B1.+"), read("W3 at 50 % joined B1.+"));
    // A run that touches the body is one thing, however it is written.
    assert_eq!(
        read("body joined W3 at 20 % through 5 mΩ"),
        read("W3 grounded at 20 % through 5 mΩ")
    );
    assert_eq!(read("W3 off to"), read("W3 off A1.+"));
}

#[test]
fn what_cannot_be_read_says_what_would_do() {
    for (text, why) in [
        ("", "Say what breaks, for example “W3 cut”."),
        (
            "W3",
            "Say what happens to W3: cut, off, open, grounded, joined, resistive, poor, reversed, dead.",
        ),
        (
            "W3 melted",
            "“melted” says no break; cut, off, open, grounded, joined, resistive, poor, reversed, dead do.",
        ),
        ("W99 cut", "There is no run “W99”."),
        ("F1 cut", "“F1” is a part; only a run can break so."),
        ("W3 dead", "“W3” is a run; only a part can break so."),
        (
            "W3 off",
            "Say which end of W3 is off: D1.out1 and A1.+, or “from” or “to”.",
        ),
        ("W3 cut twice", "Nothing is known of “twice” after “cut”."),
        (
            "W3 grounded near 5 %",
            "Nothing is known of “near 5 %” after “grounded”.",
        ),
        ("W3 resistive", "Say how many ohms too much, for example “0.2 Ω”."),
        (
            "B1 joined E1.stud",
            "Say which terminal of B1 is meant, for example “B1.in”.",
        ),
        (
            "B1.x joined E1.stud",
            "“B1” has no terminal “x”; it has B1.+ and B1.-.",
        ),
        ("body joined body", "body cannot touch itself."),
        ("B1.+ joined W3 at 120 %", "1.2 is out of range: it takes 0 to 1"),
        ("B1.+ joined B1.+", "B1.+ cannot touch itself."),
        (
            "LS1.c reversed",
            "“LS1” has no coil “c”; coils are called a and b.",
        ),
    ] {
        assert_eq!(read(text), Err(why.to_owned()), "{text}");
    }
    assert!(read("W3 grounded at 150 %").is_err());
    assert!(read("W3 resistive -1ohm").is_err());
    let block = read("D1 open").and_then(|it| {
        it.edit(&job(), PLAN)
            .map(|_| ())
            .map_err(|why| Words::english().say(&why))
    });
    assert_eq!(
        block,
        Err("“D1” has several outputs; one of them can be opened: D1.out1, D1.out2 and D1.out3.".to_owned())
    );
}

/// Where the ends of a run are afterwards.
fn ends(job: &Job, run: &str) -> [String; 2] {
    let sheet = &job.sheets[&PLAN];
    let (_, run) = sheet.run_by_tag(run).expect("a run");
    run.ends().map(|end| match end {
        End::On(at) => sheet.written(at),
        End::Loose(_) => "loose".to_owned(),
    })
}

#[test]
fn what_breaks_do_to_a_sheet() {
    let job = broken("W3 off A1.+");
    assert_eq!(ends(&job, "W3"), ["D1.out1", "loose"]);
    // A single wire ends loose, two that shared the stud stay joined.
    let job = broken("D1.out1 open");
    assert_eq!(ends(&job, "W3"), ["loose", "A1.+"]);
    let job = broken("E1 open");
    assert_eq!(ends(&job, "W4"), ["A1.-", "E1_1.1"]);
    assert_eq!(ends(&job, "W5"), ["LS1.a-", "E1_1.2"]);
    assert!(job.sheets[&PLAN].part_by_tag("E1").is_some());
    // A sensing isolator closes by itself: it is opened where it goes on.
    let job = broken("I1 open");
    assert_eq!(ends(&job, "W8"), ["I1.main", "F1.out"]);
    assert_eq!(ends(&job, "W9"), ["loose", "E2.stud"]);
    let job = broken("P1 open");
    let plug = &job.sheets[&PLAN].part_by_tag("P1").expect("there").1.is;
    assert!(matches!(plug, model::PartKind::Plug(it) if !it.mated));
    // A touch a quarter along 4 m: 1 m before it and 3 m behind.
    let job = broken("W2 grounded at 25 % through 5 mΩ");
    let sheet = &job.sheets[&PLAN];
    let metres = |tag: &str| {
        let run = sheet.run_by_tag(tag).expect("a run").1;
        run.wire.length.value().map_or(0.0, |it| it.0)
    };
    assert_eq!([metres("W2"), metres("W10")], [1.0, 3.0]);
    assert_eq!(ends(&job, "W2"), ["F1.out", "W2_1.1"]);
    assert_eq!(ends(&job, "W10"), ["W2_1.2", "D1.in"]);
    assert_eq!(ends(&job, "W11"), ["W2_1.3", "E3.stud"]);
    let touch = sheet.run_by_tag("W11").expect("a run").1;
    assert_eq!(
        touch.from_ending.resistance.value(),
        Some(model::quantity::Ohms(0.005))
    );
    // Whatever was on the stud comes to it through the resistance.
    let job = broken("E1 poor 0.5 Ω");
    assert_eq!(ends(&job, "W10"), ["E1_1.1", "E1.stud"]);
    assert_eq!(ends(&job, "W4"), ["A1.-", "E1_1.2"]);
}

#[test]
fn undo_takes_every_break_back_to_the_byte() {
    let before = write(&job());
    let sheet = job().sheets[&PLAN].clone();
    let mut thrown = 0;
    for it in testkit::breaks::every_break(&sheet) {
        let mut job = job();
        let Ok(edit) = it.edit(&job, PLAN) else { continue };
        thrown += 1;
        let back = job.apply(edit);
        assert_eq!(check(&job), Vec::new(), "{it:?}");
        assert!(write(&job) != before, "{it:?} did nothing");
        job.apply(back);
        assert!(write(&job) == before, "{it:?} was not taken back");
    }
    assert!(thrown > 60, "{thrown}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn any_job_can_be_broken_and_mended(job in testkit::any::any_job()) {
        let before = write(&job);
        for (&kind, sheet) in &job.sheets {
            for it in testkit::breaks::every_break(sheet) {
                let _ = it.said(sheet);
                let written = it.written(sheet);
                if let Ok(edit) = it.edit(&job, kind) {
                    let mut job = job.clone();
                    let back = job.apply(edit);
                    job.apply(back);
                    prop_assert!(write(&job) == before, "{}", written);
                }
            }
        }
    }

    #[test]
    fn no_words_make_reading_panic(text in "[A-Z]{1,2}[0-9.%+ a-zΩ]{0,40}") {
        let job = job();
        let _ = Break::read(&text, &job.sheets[&PLAN]);
    }
}
