//! Scissors and lead on the board: what they cut and join, how a mark is drawn along and taken away, by mouse, finger and keys. The
//! answer is held against the engine asked directly.

mod hand;

use circuit::faults::Faults;
use editor::break_it::With;
use editor::{Action, Button, Editor, Input, Key, PointerKind, ScreenPoint, Thing};
use hand::{Hand, off};
use model::breaks::{Break, Contact};

const SYSTEM: &str = r#"
sheet plan
battery B1 agm 70Ah cranking=640A @0,0
fuse F1 strip61 60A @300,0
load L1 power=300W @700,0
ground E1 bare @0,300
run W1 B1.+ F1.in 16mm2 0.3m RD
run W2 F1.out L1.+ 16mm2 4m RD copper
run W3 L1.- B1.- 16mm2 2m BK
run W4 B1.- E1.stud 16mm2 0.3m BK
"#;

fn hand(with: With) -> Hand {
    let mut hand = Hand::new(SYSTEM);
    let _ = hand.editor.take_break_tool(with);
    hand
}

/// A place along a run on the screen.
fn along(hand: &Hand, tag: &str, share: f64) -> ScreenPoint {
    let (id, _) = hand.editor.sheet().run_by_tag(tag).expect("a run");
    let way = hand.editor.layout().run(id).expect("drawn");
    let whole: f64 = way.pieces().map(|(a, b)| a.distance(b)).sum();
    let mut left = share * whole;
    for (a, b) in way.pieces() {
        let length = a.distance(b);
        if left <= length {
            return hand.editor.camera().to_screen(a.lerp(b, left / length));
        }
        left -= length;
    }
    panic!("{tag} has no {share}")
}

fn thrown(editor: &Editor) -> Vec<String> {
    editor
        .breaks()
        .iter()
        .map(|broken| broken.written(editor.sheet()))
        .collect()
}

/// The current of the short at first, at most, as the engine has it for breaks written down.
fn most(editor: &Editor, written: &[&str]) -> f64 {
    let sheet = editor.sheet();
    let breaks: Vec<Break> = written
        .iter()
        .map(|text| Break::read(text, sheet).expect("a break"))
        .collect();
    let course = Faults::new(sheet, &editor.job().settings).course(&breaks);
    course.expect("a course").fault.map_or(0.0, |fault| fault.most.0)
}

fn shown(editor: &Editor) -> f64 {
    let course = editor.course().expect("a course").as_ref().expect("worked out");
    course.fault.map_or(0.0, |fault| fault.most.0)
}

/// What stands on the slip beside the pointer, and whatever else the tool writes.
fn words(editor: &Editor) -> String {
    let texts = editor
        .tool_picture()
        .items
        .into_iter()
        .filter_map(|item| match item.shape {
            drawing::Shape::Text { text, .. } => Some(text),
            drawing::Shape::Path { .. } => None,
        });
    texts.collect::<Vec<_>>().join(" | ")
}

#[test]
fn scissors_cut_where_they_are_let_go_and_undo_mends() {
    for kind in [PointerKind::Mouse, PointerKind::Touch] {
        let mut hand = hand(With::Scissors);
        hand.kind = kind;
        let before = hand.text();
        let at = along(&hand, "W2", 0.3);
        if kind == PointerKind::Mouse {
            // It is seen where they would cut before they do.
            hand.drag(at);
            assert!(words(&hand.editor).contains("30 %"), "{}", words(&hand.editor));
        }
        hand.press(at);
        assert_eq!(hand.address(), "break/cutting");
        hand.drag(along(&hand, "W2", 0.4));
        hand.release(along(&hand, "W2", 0.4));
        assert_eq!(thrown(&hand.editor), ["W2 cut at 40%"]);
        assert_eq!(hand.address(), "break/scissors");
        // The load is dead behind the cut.
        let load = hand.editor.sheet().part_by_tag("L1").expect("a load").0;
        assert_eq!(hand.editor.shown_study().parts[&load].on, Some(false));
        // On empty paper nothing is cut.
        hand.click(off(at, 60.0, 160.0));
        assert_eq!(thrown(&hand.editor).len(), 1);
        let _ = hand.editor.perform(Action::Undo);
        assert!(thrown(&hand.editor).is_empty() && !hand.editor.is_broken());
        let _ = hand.editor.perform(Action::Redo);
        assert_eq!(thrown(&hand.editor), ["W2 cut at 40%"]);
        assert_eq!(hand.text(), before, "the job is as it was");
    }
}

#[test]
fn a_lead_joins_what_it_is_drawn_between() {
    for kind in [PointerKind::Mouse, PointerKind::Touch] {
        let mut hand = hand(With::Lead);
        hand.kind = kind;
        let pairs = [
            (
                hand.terminal("B1", "+"),
                along(&hand, "W3", 0.5),
                "B1.+ joined W3 at 50%",
            ),
            (
                along(&hand, "W2", 0.25),
                along(&hand, "W3", 0.75),
                "W2 at 25% joined W3 at 75%",
            ),
            (
                hand.terminal("L1", "+"),
                hand.terminal("L1", "-"),
                "L1.+ joined L1.-",
            ),
            (along(&hand, "W2", 0.5), hand.part("E1"), "W2 grounded at 50%"),
        ];
        for (from, to, written) in pairs {
            hand.press(from);
            hand.drag(off(from, 30.0, 30.0));
            hand.drag(to);
            // While the end is held there the answer stands beside it already.
            assert_eq!(thrown(&hand.editor), [written], "{written}");
            let current = shown(&hand.editor);
            assert!((current - most(&hand.editor, &[written])).abs() < 1e-9 * current);
            assert!(words(&hand.editor).contains("draws"), "{}", words(&hand.editor));
            assert_eq!(hand.address(), "break/leading");
            hand.release(to);
            assert_eq!(thrown(&hand.editor), [written]);
            let _ = hand.editor.perform(Action::Undo);
            assert!(thrown(&hand.editor).is_empty(), "one step");
        }
        // Let go on empty paper it joins nothing, and Escape takes it back within.
        let from = hand.terminal("B1", "+");
        hand.press(from);
        hand.drag(along(&hand, "W3", 0.5));
        hand.drag(off(from, 200.0, 200.0));
        hand.release(off(from, 200.0, 200.0));
        assert!(thrown(&hand.editor).is_empty());
        hand.press(from);
        hand.drag(along(&hand, "W3", 0.5));
        hand.key(Key::Escape);
        assert!(thrown(&hand.editor).is_empty());
        assert_eq!(hand.address(), "break/lead");
        hand.release(from);
        hand.key(Key::Escape);
        assert_eq!(hand.address(), "pick/idle");
    }
}

#[test]
fn the_touch_is_drawn_along_the_wire_and_the_answer_follows() {
    for kind in [PointerKind::Mouse, PointerKind::Touch] {
        let mut hand = hand(With::Scissors);
        hand.kind = kind;
        let broken = Break::read("W2 grounded at 10 %", hand.editor.sheet()).expect("a break");
        let _ = hand.editor.throw(broken);
        let mut last = shown(&hand.editor);
        // Whatever tool is in hand, the mark can be taken.
        hand.press(along(&hand, "W2", 0.1));
        for percent in [30.0, 60.0, 90.0] {
            // A little off the wire it stays on it.
            hand.drag(off(along(&hand, "W2", percent / 100.0), 0.0, 12.0));
            assert_eq!(thrown(&hand.editor), [format!("W2 grounded at {percent}%")]);
            let now = shown(&hand.editor);
            assert!(now < 0.95 * last, "more wire in its way: {now} A after {last} A");
            last = now;
            assert!(words(&hand.editor).contains(&format!("{percent} %")));
        }
        hand.release(along(&hand, "W2", 0.9));
        assert_eq!(thrown(&hand.editor), ["W2 grounded at 90%"]);
        // All of it is one step.
        let _ = hand.editor.perform(Action::Undo);
        assert_eq!(thrown(&hand.editor), ["W2 grounded at 10%"]);
        // To another run, and away.
        hand.press(along(&hand, "W2", 0.1));
        hand.drag(along(&hand, "W1", 0.5));
        hand.release(along(&hand, "W1", 0.5));
        assert_eq!(thrown(&hand.editor), ["W1 grounded at 50%"]);
        hand.press(along(&hand, "W1", 0.5));
        let away = off(along(&hand, "W1", 0.5), 20.0, -250.0);
        hand.drag(away);
        assert!(
            words(&hand.editor).contains("take it away"),
            "{}",
            words(&hand.editor)
        );
        hand.release(away);
        assert!(thrown(&hand.editor).is_empty());
    }
}

#[test]
fn a_mark_is_picked_and_taken_away_by_its_ring_or_delete() {
    let mut hand = hand(With::Scissors);
    hand.kind = PointerKind::Touch;
    hand.click(along(&hand, "W2", 0.5));
    hand.click(along(&hand, "W1", 0.5));
    assert_eq!(thrown(&hand.editor), ["W2 cut", "W1 cut"]);
    let mark = along(&hand, "W2", 0.5);
    hand.click(mark);
    // Fine steps by the arrows.
    hand.key(Key::Left);
    assert_eq!(thrown(&hand.editor), ["W2 cut at 49%", "W1 cut"]);
    // The ring is as large as a finger: 22 pixels about its middle.
    hand.click(off(along(&hand, "W2", 0.49), -32.0 - 14.0, -32.0 - 14.0));
    assert_eq!(thrown(&hand.editor), ["W1 cut"]);
    hand.click(along(&hand, "W1", 0.5));
    hand.key(Key::Delete);
    assert!(thrown(&hand.editor).is_empty());
    assert_eq!(hand.editor.sheet().runs.len(), 4, "no run is deleted");
}

#[test]
fn two_taps_and_the_keys_alone_lay_a_lead() {
    let mut hand = hand(With::Lead);
    hand.kind = PointerKind::Touch;
    hand.click(hand.terminal("B1", "+"));
    assert_eq!(hand.address(), "break/holding");
    hand.click(along(&hand, "W3", 0.5));
    assert_eq!(thrown(&hand.editor), ["B1.+ joined W3 at 50%"]);
    let _ = hand.editor.take_all_back();

    let focus = |hand: &mut Hand, thing: Thing| {
        let _ = hand.editor.go_to(&thing);
    };
    let run = hand.editor.sheet().run_by_tag("W2").expect("a run").0;
    focus(&mut hand, Thing::Run(run));
    hand.key(Key::Enter);
    assert_eq!(hand.address(), "break/holding");
    hand.key(Key::Char('b'));
    assert_eq!(thrown(&hand.editor), ["W2 grounded at 50%"]);
    let _ = hand.editor.take_break_tool(With::Scissors);
    hand.key(Key::Enter);
    assert_eq!(thrown(&hand.editor), ["W2 grounded at 50%", "W2 cut"]);
}

#[test]
fn a_second_finger_takes_the_paper_and_leaves_what_was_thrown() {
    let mut hand = hand(With::Lead);
    hand.kind = PointerKind::Touch;
    let from = hand.terminal("B1", "+");
    hand.press(from);
    hand.drag(along(&hand, "W3", 0.5));
    assert_eq!(thrown(&hand.editor).len(), 1);
    let second = hand.pointer(2, ScreenPoint::new(900.0, 700.0));
    hand.editor.handle(Input::Down(second, Button::Primary));
    assert!(thrown(&hand.editor).is_empty());
    hand.editor.handle(Input::Up(second));
    hand.release(from);
    assert!(thrown(&hand.editor).is_empty());
    assert_eq!(hand.address(), "break/lead");
}

#[test]
fn a_cut_end_that_touches_the_body_is_live_on_the_side_of_the_source() {
    let mut hand = hand(With::Scissors);
    hand.click(along(&hand, "W2", 0.5));
    let _ = hand.editor.take_break_tool(With::Lead);
    let (id, _) = hand.editor.sheet().run_by_tag("W2").expect("a run");
    for (share, live) in [(0.4, true), (0.6, false)] {
        let from = along(&hand, "W2", share);
        hand.press(from);
        hand.drag(off(from, 30.0, 30.0));
        hand.drag(hand.part("E1"));
        hand.release(hand.part("E1"));
        assert!(matches!(hand.editor.breaks(), [_, Break::Grounded { run, .. }] if *run == id));
        assert_eq!(shown(&hand.editor) > 100.0, live, "{}", shown(&hand.editor));
        let _ = hand.editor.perform(Action::Undo);
    }
    assert!(Break::touching([Contact::Body, Contact::Body], model::quantity::Ohms(0.0)).is_none());
}
