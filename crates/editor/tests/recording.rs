//! Recording what is found: by a few letters, with what is not known left unknown.

use editor::Editor;
use editor::recording::{FoundAt, SeenOfRun};
use model::conductor::{Condition, EndingMethod, FittedBy, Size};
use model::quantity::SquareMm;
use model::{End, Fact, PartKind, SheetKind};

fn found(text: &str) -> Editor {
    let job = model::text::parse(text).unwrap_or_else(|errors| panic!("{errors}"));
    let mut editor = Editor::new(job);
    editor.open_sheet(SheetKind::Found);
    editor
}

/// The first offer for what was typed.
fn first(editor: &Editor, typed: &str) -> FoundAt {
    let offers = editor.ends_like(typed, 6);
    offers
        .first()
        .unwrap_or_else(|| panic!("nothing is offered for `{typed}`"))
        .at
        .clone()
}

fn record(editor: &mut Editor, from: &str, to: &str, seen: &SeenOfRun) {
    let (from, to) = (first(editor, from), first(editor, to));
    editor
        .record(&from, &to, seen)
        .unwrap_or_else(|why| panic!("{why}"));
}

#[test]
fn a_feed_is_recorded_from_an_empty_sheet_in_four_lines() {
    let mut editor = found("sheet found");
    let seen = SeenOfRun {
        size: "16mm2".into(),
        colour: "RD".into(),
        ..SeenOfRun::default()
    };
    record(&mut editor, "batt", "fuse", &seen);
    record(&mut editor, "F1", "distr", &seen);
    record(&mut editor, "D1", "amp", &seen);
    record(&mut editor, "A1", "ground", &SeenOfRun::default());
    let sheet = editor.sheet();
    let kinds: Vec<&str> = sheet.parts.values().map(|part| part.is.word()).collect();
    assert_eq!(kinds, ["battery", "fuse", "block", "amplifier", "ground"]);
    let ends: Vec<String> = sheet
        .runs
        .values()
        .map(|run| {
            let ends: Vec<String> = run
                .ends()
                .iter()
                .filter_map(|end| end.terminal())
                .map(|at| sheet.written(at))
                .collect();
            ends.join(" ")
        })
        .collect();
    // Each on the terminal that suits, none on one that is taken.
    assert_eq!(
        ends,
        ["B1.+ F1.in", "F1.out D1.in", "D1.out1 A1.+", "A1.- E1.stud"]
    );
    assert!(
        sheet
            .parts
            .values()
            .all(|part| part.fitted_by == FittedBy::Earlier)
    );
    for run in sheet.runs.values() {
        assert!(
            run.wire.length.is_unknown() && run.wire.condition.is_unknown(),
            "{run:?}"
        );
        assert!(run.from_ending.method.is_unknown(), "{run:?}");
    }
    let first = sheet.run_by_tag("W1").expect("W1").1;
    assert_eq!(first.wire.size, Fact::Given(Size::Metric(SquareMm(16.0))));
    let last = sheet.run_by_tag("W4").expect("W4").1;
    assert!(last.wire.size.is_unknown());
    // No two parts stand on each other.
    let boxes: Vec<_> = editor.layout().parts().map(|(_, it)| it.outline).collect();
    for (at, one) in boxes.iter().enumerate() {
        assert!(boxes.iter().skip(at + 1).all(|other| !other.overlaps(*one)));
    }
    // What is not known stays open, and says what to find out.
    editor.analyse();
    let open = editor
        .analysis()
        .findings
        .iter()
        .filter(|finding| finding.undecided)
        .count();
    assert!(open > 0, "{:?}", editor.analysis().findings);
}

#[test]
fn one_end_may_go_somewhere_and_everything_is_one_step() {
    let mut editor = found("sheet found\nfuse F1 \"Under the seat\" regular 15A by=earlier @0,0");
    let before = model::file::write(editor.job());
    let seen = SeenOfRun {
        condition: "chafed".into(),
        endings: "twisted".into(),
        length: "1,5 m".into(),
        opens_when: "doors-open".into(),
        ..SeenOfRun::default()
    };
    let from = first(&editor, "seat");
    let to = editor.somewhere().at;
    editor.record(&from, &to, &seen).expect("one end is known");
    let run = editor.sheet().run_by_tag("W1").expect("W1").1.clone();
    assert!(matches!(run.to, End::Loose(_)));
    assert_eq!(run.wire.condition, Fact::Given(Condition::Chafed));
    assert_eq!(run.from_ending.method, Fact::Given(EndingMethod::Twisted));
    assert!(run.to_ending.method.is_unknown());
    assert_eq!(run.laying.opens_when, Fact::Given(model::laying::Moved::Doors));
    assert!(editor.record(&to, &to, &seen).is_err());
    let wrong = SeenOfRun {
        size: "thick".into(),
        ..SeenOfRun::default()
    };
    let why = editor
        .record(&from, &to, &wrong)
        .expect_err("no size")
        .to_string();
    assert!(why.starts_with("size: "), "{why}");
    editor.perform(editor::Action::Undo);
    assert_eq!(model::file::write(editor.job()), before);
}

#[test]
fn a_terminal_is_named_outright_and_a_new_part_of_any_kind_can_be_recorded() {
    let mut editor = found("sheet found\nblock D1 \"Block\" outputs=4 by=earlier @0,0");
    assert!(matches!(first(&editor, "d1.out3"), FoundAt::Terminal(at) if at.terminal.as_str() == "out3"));
    for word in PartKind::WORDS {
        let name = PartKind::from_word(word).expect("a word").said().to_string();
        let offers = editor.ends_like(&name, 8);
        assert!(
            offers.iter().any(|it| it.at == FoundAt::New(word)),
            "{name}: {offers:?}"
        );
        let block = first(&editor, "D1");
        editor
            .record(&FoundAt::New(word), &block, &SeenOfRun::default())
            .unwrap_or_else(|why| panic!("{word}: {why}"));
    }
    assert_eq!(editor.sheet().runs.len(), PartKind::WORDS.len());
}

#[test]
fn a_colour_that_was_not_seen_stays_unknown() {
    let mut editor = found("sheet found");
    record(&mut editor, "batt", "fuse", &SeenOfRun::default());
    let run = editor.sheet().runs.values().next().expect("a run");
    assert_eq!(run.wire.jacket, model::conductor::Jacket::UNKNOWN);
    let text = model::text::print(editor.job());
    assert!(text.contains("colour=?"), "{text}");
    assert_eq!(
        model::text::parse(&text).expect("its own text").sheets,
        editor.job().sheets
    );
    // It is told as unknown, and drawn in no colour.
    let list = drawing::draw(
        editor.sheet(),
        editor.layout(),
        None,
        &drawing::Look::default(),
        editor.layout().bounds().expect("parts"),
    );
    let coloured = list.items.iter().any(|item| match &item.shape {
        drawing::Shape::Path { stroke, .. } => {
            matches!(stroke, Some(stroke) if matches!(stroke.ink, drawing::Ink::Insulation(_)))
        }
        drawing::Shape::Text { .. } => false,
    });
    assert!(!coloured);
}

/// Two amplifiers, which are higher than most parts, one recorded after the other from the same block: nothing that was
/// recorded lies on anything else, and a run finds its way between.
#[test]
fn parts_that_are_recorded_keep_clear_of_one_another() {
    let mut editor = found("");
    record(
        &mut editor,
        "new battery",
        "new distribution",
        &SeenOfRun::default(),
    );
    for _ in 0..3 {
        record(&mut editor, "D1", "new amplifier", &SeenOfRun::default());
        record(&mut editor, "D1", "new load", &SeenOfRun::default());
    }
    let boxes: Vec<kurbo::Rect> = editor.layout().parts().map(|(_, part)| part.outline).collect();
    assert_eq!(boxes.len(), 8);
    for (at, one) in boxes.iter().enumerate() {
        for other in boxes.iter().skip(at + 1) {
            let apart = one.inflate(20.0, 20.0);
            assert!(!apart.overlaps(*other), "{one:?} and {other:?}");
        }
    }
}
