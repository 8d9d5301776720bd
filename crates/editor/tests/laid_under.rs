//! Another sheet laid under the one on the table: which, when it goes, and that it keeps step with edits.

mod hand;

use editor::{Action, Editor, Input, Key, Margins, Mods, Open, Thing};
use hand::Hand;
use model::SheetKind::{Built, Found, Plan};
use model::compare::{Became, compare};
use model::edits::{copy_sheet, set_property};
use model::{PartId, SheetKind};

/// Said when somebody tries to change what is only looked at.
const LOOK_ONLY: &str = "This drawing is for looking at. Make a copy of your own to change it.";

const JOB: &str = r#"
job "Bench"
sheet found
battery B1 @0,0
fuse F1 strip61 200A @300,0
load L1 @700,0
run W1 B1.+ F1.in 16mm2 2m RD
run W2 F1.out L1.+ 16mm2 4m RD
sheet plan
battery B1 @0,0
fuse F1 strip61 60A @300,0
amplifier A1 @700,0
run W1 B1.+ F1.in 16mm2 2m RD
run W3 F1.out A1.+ 16mm2 4m RD
sheet built
battery B1 @0,0
"#;

fn part(editor: &Editor, tag: &str) -> PartId {
    let mut sheets = editor.job().sheets.values();
    sheets
        .find_map(|sheet| sheet.part_by_tag(tag))
        .map(|(id, _)| id)
        .unwrap_or_else(|| panic!("no {tag}"))
}

/// What the editor tells is what a fresh comparison of the two sheets tells.
fn assert_in_step(editor: &Editor) {
    let under = editor.under().expect("a sheet is laid under");
    let sheet = |kind| editor.job().sheet(kind).cloned().unwrap_or_default();
    let (earlier, later) = if under < editor.on() {
        (under, editor.on())
    } else {
        (editor.on(), under)
    };
    assert_eq!(editor.comparison(), Some(compare(&sheet(earlier), &sheet(later))));
    let laid = editor.laid().expect("laid");
    assert_eq!((&laid.sheet, laid.on), (&sheet(under), editor.on()));
    assert_eq!(laid.layout, drawing::Layout::of(&sheet(under)));
}

/// What stands in the upper left corner of the window, in pixels below the frame.
const LEGEND: f64 = 90.0;

#[test]
fn a_sheet_that_is_seen_whole_stays_clear_of_the_legend_and_one_that_is_not_stays_where_it_is() {
    let mut hand = Hand::new(JOB);
    let margins = Margins {
        left: 40.0,
        top: 40.0,
        right: 280.0,
        bottom: 96.0,
    };
    let top = |hand: &Hand| {
        let place = |tag: &str| {
            let id = part(&hand.editor, tag);
            let at = hand
                .editor
                .sheet()
                .parts
                .get(&id)
                .and_then(|it| it.at)
                .expect("a place");
            hand.editor
                .camera()
                .to_screen(kurbo::Point::new(f64::from(at.x), f64::from(at.y)))
                .y
        };
        ["B1", "F1", "A1"].map(place).into_iter().fold(f64::MAX, f64::min)
    };
    // A window so low that the whole sheet fills it from top to bottom.
    hand.editor.resize(2000.0, 290.0, margins);
    hand.editor.fit();
    assert!(top(&hand) < 40.0 + LEGEND, "{}", top(&hand));
    hand.editor.lay_under(Some(Found));
    assert!(top(&hand) >= 40.0 + LEGEND, "{}", top(&hand));
    // Who looks at a part of it is left there.
    hand.editor.lay_under(None);
    hand.editor.resize(400.0, 290.0, margins);
    let before = hand.editor.camera().origin;
    hand.editor.lay_under(Some(Found));
    assert_eq!(hand.editor.camera().origin, before);
}

#[test]
fn it_steps_through_the_other_sheets_and_none() {
    let mut hand = Hand::new(JOB);
    assert_eq!((hand.editor.on(), hand.editor.under()), (Plan, None));
    assert_eq!(hand.editor.comparison(), None);
    let mut steps = Vec::new();
    let mut said = Vec::new();
    for _ in 0..4 {
        hand.mods = Mods {
            shift: true,
            ..Mods::default()
        };
        said.push(hand.key(Key::Char('u')).say.unwrap_or_default());
        steps.push(hand.editor.under());
        if hand.editor.under().is_some() {
            assert_in_step(&hand.editor);
        }
    }
    assert_eq!(steps, [Some(Found), Some(Built), None, Some(Found)]);
    // Battery and W1 alike; fuse and length of none changed; A1 and W3 new; L1 and W2 gone.
    assert_eq!(said[0], "Found under Plan: 2 kept, 1 changed, 2 new, 2 removed");
    assert_eq!(said[1], "Built under Plan: 1 kept, 0 changed, 0 new, 4 removed");
    assert_eq!(said[2], "Nothing is laid under this sheet.");
}

#[test]
fn a_job_of_one_sheet_says_so() {
    let mut hand = Hand::new(hand::SYSTEM);
    let said = hand.editor.perform(Action::LayUnder).say.unwrap_or_default();
    assert!(said.contains("nothing on the other sheets"), "{said}");
    assert_eq!(hand.editor.under(), None);
    // Nor can a sheet be laid under itself, or one that is not there.
    for kind in SheetKind::ALL {
        hand.editor.lay_under(Some(*kind));
        assert_eq!(hand.editor.under(), None, "{kind:?}");
    }
}

#[test]
fn it_stays_when_another_sheet_is_turned_to_and_goes_when_it_is_turned_to_itself() {
    let mut hand = Hand::new(JOB);
    hand.editor.lay_under(Some(Found));
    hand.editor.open_sheet(Built);
    assert_eq!(hand.editor.under(), Some(Found));
    assert_in_step(&hand.editor);
    hand.editor.open_sheet(Found);
    assert_eq!((hand.editor.under(), hand.editor.comparison()), (None, None));
    hand.editor.lay_under(Some(Plan));
    assert_in_step(&hand.editor);
    assert!(!hand.editor.fates().is_empty());
}

#[test]
fn edits_undo_and_gestures_keep_it_in_step() {
    let mut hand = Hand::new(JOB);
    hand.editor.lay_under(Some(Found));
    let amplifier = part(&hand.editor, "A1");
    let mut seen = hand.editor.seen();
    let mut changed = |editor: &Editor, what: &str| {
        assert_in_step(editor);
        let now = editor.seen();
        assert_ne!(now.still, seen.still, "{what}: the kept picture is out of date");
        seen = now;
    };
    // Deleted, and brought back.
    hand.click(hand.part("A1"));
    hand.editor.perform(Action::Delete);
    changed(&hand.editor, "deleted");
    assert_eq!(hand.editor.became(&Thing::Part(amplifier)), None);
    hand.editor.perform(Action::Undo);
    changed(&hand.editor, "undone");
    assert_eq!(hand.editor.became(&Thing::Part(amplifier)), Some(&Became::New));
    // A property.
    let fuse = part(&hand.editor, "F1");
    let edit = set_property(hand.editor.job(), Plan, fuse, "rating", "80A");
    hand.editor.make(edit).expect("a rating");
    changed(&hand.editor, "set");
    assert_eq!(
        hand.editor.became_words(&Thing::Part(fuse)),
        ["rating: 200A, now 80A"]
    );
    // Carried: the car does not change by it.
    let before = hand.editor.comparison();
    let from = hand.part("A1");
    hand.press(from);
    hand.drag(hand::off(from, 30.0, 20.0));
    hand.drag(hand::off(from, 60.0, 40.0));
    assert_eq!(hand.editor.comparison(), before);
    hand.release(hand::off(from, 60.0, 40.0));
    changed(&hand.editor, "carried");
    assert_eq!(hand.editor.comparison(), before);
    // A gesture that is abandoned.
    hand.press(from);
    hand.drag(hand::off(from, 90.0, 20.0));
    hand.key(Key::Escape);
    assert_in_step(&hand.editor);
    // The sheet beneath changes: it is filled anew from the one on the table.
    let edit = copy_sheet(hand.editor.job(), Plan, Found);
    hand.editor.make(Ok(edit)).expect("copied");
    changed(&hand.editor, "copied");
    assert_eq!(hand.editor.fates(), vec![]);
    assert_eq!(hand.editor.became_words(&Thing::Part(fuse)), Vec::<String>::new());
}

#[test]
fn what_has_no_place_yet_stands_at_the_same_place_on_every_sheet() {
    let editor = Editor::new(testkit::text::job(
        "sheet found\nbattery B1\nfuse F1 strip61 200A @300,0\nload L1\nrun W1 B1.+ F1.in 16mm2 2m RD\n\
         sheet plan\nbattery B1\nfuse F1 strip61 60A\namplifier A1\nrun W1 B1.+ F1.in 16mm2 2m RD\n",
    ));
    let at = |kind, tag: &str| {
        let sheet = editor.job().sheet(kind).expect("a sheet");
        sheet
            .part_by_tag(tag)
            .and_then(|(_, part)| part.at)
            .unwrap_or_else(|| panic!("{tag} has no place"))
    };
    assert_eq!(at(Plan, "B1"), at(Found, "B1"));
    assert_eq!(at(Plan, "F1"), model::BoardPoint { x: 300, y: 0 });
    assert_ne!(at(Plan, "A1"), at(Plan, "B1"));
}

#[test]
fn an_emptied_sheet_lies_under_nothing() {
    let mut hand = Hand::new("sheet plan\nbattery B1 @0,0\n");
    let edit = copy_sheet(hand.editor.job(), Plan, Built);
    hand.editor.make(Ok(edit)).expect("copied");
    hand.editor.lay_under(Some(Built));
    assert_eq!(hand.editor.under(), Some(Built));
    hand.editor.perform(Action::Undo);
    assert_eq!(hand.editor.under(), None);
}

#[test]
fn what_became_of_things_leads_to_them() {
    let mut hand = Hand::new(JOB);
    hand.editor.lay_under(Some(Found));
    let told: Vec<String> = hand
        .editor
        .fates()
        .iter()
        .map(|fate| format!("{} {:?}", fate.written, fate.sign))
        .collect();
    assert_eq!(
        told,
        [
            "F1 Fuse Changed",
            "A1 Amplifier New",
            "W3 New",
            "L1 Load Gone",
            "W2 Gone"
        ]
    );
    let fuse = Thing::Part(part(&hand.editor, "F1"));
    let effects = hand.editor.go_to_either(&fuse);
    assert_eq!(effects.open, Some(Open::Details(fuse.clone())));
    assert_eq!(hand.editor.selection().single(), Some(fuse.clone()));
    // What lies beneath is brought into view and lit there; nothing of the sheet on top is picked with it.
    let load = Thing::Part(part(&hand.editor, "L1"));
    let effects = hand.editor.go_to_either(&load);
    assert_eq!(effects.say.as_deref(), Some("L1 Load is on Found alone."));
    assert!(hand.editor.selection().is_empty());
    let seen = hand.editor.seen();
    let Thing::Part(id) = load else { panic!("a part") };
    assert!(seen.picked.contains(&drawing::Owner::UnderPart(id)));
    let outline = hand
        .editor
        .laid()
        .and_then(|laid| laid.layout.part(id))
        .map(|part| part.outline);
    let visible = hand.editor.camera().visible();
    assert!(
        outline.is_some_and(|outline| visible.union(outline) == visible),
        "in view"
    );
    hand.key(Key::Escape);
    assert_ne!(hand.editor.seen(), seen);
    assert!(hand.editor.under().is_some(), "Escape takes back one thing");
}

#[test]
fn a_tap_on_what_lies_beneath_tells_what_it_is() {
    let mut hand = Hand::new(&JOB.replace("load L1 @700,0", "load L1 @700,300"));
    hand.editor.lay_under(Some(Found));
    hand.editor.fit();
    let load = part(&hand.editor, "L1");
    let outline = hand
        .editor
        .laid()
        .and_then(|laid| laid.layout.part(load))
        .map(|part| part.outline);
    let at = hand
        .editor
        .camera()
        .to_screen(outline.map(|outline| outline.center()).unwrap_or_default());
    assert_eq!(hand.click(at).say.as_deref(), Some("L1 Load is on Found alone."));
    assert!(
        hand.editor
            .seen()
            .picked
            .contains(&drawing::Owner::UnderPart(load))
    );
    // A click elsewhere lets go of it; a click on a part takes the part.
    hand.click(hand::off(at, 0.0, 150.0));
    assert!(hand.editor.seen().picked.is_empty());
    hand.click(at);
    hand.click(hand.part("A1"));
    assert!(
        !hand
            .editor
            .seen()
            .picked
            .contains(&drawing::Owner::UnderPart(load))
    );
}

#[test]
fn what_the_picture_depends_on_tells_it() {
    let mut hand = Hand::new(JOB);
    let bare = hand.editor.seen();
    hand.editor.lay_under(Some(Found));
    let found = hand.editor.seen();
    assert_ne!(found, bare);
    hand.editor.lay_under(Some(Built));
    assert_ne!(hand.editor.seen(), found);
    // The picture on screen and the one on paper show the same ghosts.
    let ghosts = |list: &drawing::DisplayList| {
        let owners = list.items.iter().map(|item| item.owner);
        owners
            .filter(|owner| matches!(owner, drawing::Owner::UnderPart(_) | drawing::Owner::UnderRun(_)))
            .collect::<ordered::OrderedSet<_>>()
    };
    hand.editor.lay_under(Some(Found));
    hand.editor.fit();
    let (paper, bounds) = hand.editor.whole_sheet();
    assert_eq!(ghosts(&hand.editor.picture()), ghosts(&paper));
    assert_eq!(ghosts(&paper).len(), 2, "L1 and W2");
    assert!(
        paper
            .items
            .iter()
            .all(
                |item| bounds.inflate(1.0, 1.0).union(item.bounds) == bounds.inflate(1.0, 1.0)
                    || item.owner == drawing::Owner::Sheet
            )
    );
    let words = |item: &drawing::Item| matches!(&item.shape, drawing::Shape::Text { text, .. } if text.starts_with("Found under Plan"));
    assert!(paper.items.iter().any(words), "the key stands on the paper");
}

#[test]
fn it_is_there_where_one_only_looks() {
    let mut editor = Editor::looking(testkit::text::job(JOB));
    editor.resize(1600.0, 900.0, Margins::default());
    let before = editor.job().clone();
    let effects = editor.handle(Input::Key(
        Key::Char('u'),
        Mods {
            shift: true,
            ..Mods::default()
        },
    ));
    assert_ne!(effects.say.as_deref(), Some(LOOK_ONLY));
    assert_eq!(editor.under(), Some(Found));
    assert_in_step(&editor);
    assert_eq!(editor.job(), &before);
    assert!(!Action::LayUnder.changes());
}
