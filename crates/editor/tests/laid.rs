//! Lengths that follow from ways through the vehicle's body, as they are written on the board.

mod hand;

use editor::{Action, Effects};
use hand::Hand;
use model::edits::{Words, set_body_property, set_part_words, set_route, set_wire_property};
use model::{RunId, SheetKind};

const SYSTEM: &str = r#"
job "In an estate car"
sheet plan
battery B1 @0,0 place=battery-tray
load L1 10A @700,0 place=load-floor
run W1 B1.+ L1.+ 16mm2 ~4m RD
run W2 L1.- B1.- 16mm2 3m BK
"#;

fn make(hand: &mut Hand, edit: Result<model::Edit, model::edits::EditError>) -> Effects {
    hand.editor.make(edit).expect("it can be made")
}

fn label(hand: &Hand, run: u32) -> String {
    let way = hand.editor.layout().run(RunId(run)).expect("it is drawn");
    way.label.as_ref().expect("it has room").text.clone()
}

#[test]
fn a_length_follows_from_the_way_and_changes_with_the_place() {
    let mut hand = Hand::new(SYSTEM);
    assert_eq!(label(&hand, 1), "W1  16 mm²  ~4 m");
    let edit = set_body_property(hand.editor.job(), "form", "estate");
    make(&mut hand, edit);
    assert_eq!(label(&hand, 1), "W1  16 mm²  ~4 m", "it has no way yet");
    let route = ["bulkhead-grommet-left", "sill-left", "sill-rear-left"]
        .map(str::to_owned)
        .to_vec();
    let edit = set_route(hand.editor.job(), SheetKind::Plan, RunId(1), route);
    make(&mut hand, edit);
    // Worked by hand beside the plans of the forms: 5.88 m.
    assert_eq!(label(&hand, 1), "W1  16 mm²  (5.88 m)");
    assert_eq!(label(&hand, 2), "W2  16 mm²  3 m", "what was measured stays");
    let (load, _) = hand.editor.sheet().part_by_tag("L1").expect("it is there");
    let edit = set_part_words(
        hand.editor.job(),
        SheetKind::Plan,
        load,
        Words::Place,
        "wheel-arch-left",
    );
    make(&mut hand, edit);
    // Less the way from the wheel arch over the side to the floor: 0.67 + 0.98 m.
    assert_eq!(label(&hand, 1), "W1  16 mm²  (4.23 m)");
    // Measured in the car, and taken back.
    let edit = set_wire_property(hand.editor.job(), SheetKind::Plan, RunId(1), "length", "4.4m");
    make(&mut hand, edit);
    assert_eq!(label(&hand, 1), "W1  16 mm²  4.4 m");
    hand.editor.perform(Action::Undo);
    hand.editor.perform(Action::Undo);
    assert_eq!(label(&hand, 1), "W1  16 mm²  (5.88 m)");
    // Opened anew it reads the same.
    let again = editor::Editor::new(hand.editor.job().clone());
    let way = again.layout().run(RunId(1)).expect("it is drawn");
    assert_eq!(
        way.label.as_ref().expect("it has room").text,
        "W1  16 mm²  (5.88 m)"
    );
    // And none of it is in the job.
    assert!(!hand.editor.sheet().runs[&RunId(1)].wire.length.is_computed());
}
