//! Ends of runs put elsewhere, and bends put by hand: by pointer, by finger, by keys.

mod hand;

use editor::{Action, Key, PointerKind, ScreenPoint, Thing};
use hand::{Hand, SYSTEM, off};
use kurbo::Point;
use model::{BoardPoint, End, RunId};

fn run(hand: &Hand, tag: &str) -> (RunId, model::Run) {
    let (id, run) = hand.editor.sheet().run_by_tag(tag).unwrap();
    (id, run.clone())
}
fn on_screen(hand: &Hand, x: f64, y: f64) -> ScreenPoint {
    hand.editor.camera().to_screen(Point::new(x, y))
}
fn carry(hand: &mut Hand, from: ScreenPoint, to: ScreenPoint) {
    hand.press(from);
    hand.drag(off(from, 6.0, 9.0));
    hand.drag(to);
    hand.release(to);
}

#[test]
fn an_end_on_a_terminal_is_put_on_another() {
    let mut hand = Hand::new(SYSTEM);
    let before = hand.job();
    let (from, to) = (hand.end_of("W2", true), hand.terminal("F1", "in"));
    hand.press(from);
    hand.drag(off(from, 6.0, 30.0));
    assert_eq!(hand.address(), "end/moving");
    assert_eq!(hand.job(), before, "nothing changes before it is dropped");
    hand.drag(to);
    hand.release(to);
    assert_eq!(run(&hand, "W2").1.from, End::On(hand.named("F1", "in")));
    assert_eq!(run(&hand, "W2").1.to, run_of(&before, "W2").to);
    assert_eq!(hand.editor.history().undo_name(), Some("Move end of run W2"));
    assert_eq!(hand.address(), "pick/idle");
    hand.editor.perform(Action::Undo);
    assert_eq!(hand.job(), before);
}

fn run_of(job: &model::Job, tag: &str) -> model::Run {
    let sheet = job.sheets.values().next().unwrap();
    sheet.run_by_tag(tag).unwrap().1.clone()
}

#[test]
fn the_terminal_itself_stays_free_to_pull_from() {
    let mut hand = Hand::new(SYSTEM);
    hand.click(hand.run("W2"));
    let (from, to) = (hand.terminal("F1", "out"), hand.part("E1"));
    hand.press(from);
    hand.drag(off(from, 0.0, 40.0));
    assert_eq!(hand.address(), "pull/drawing");
    hand.drag(to);
    hand.release(to);
}

#[test]
fn dropped_on_paper_it_lies_loose_and_can_be_taken_up_again() {
    let mut hand = Hand::new(SYSTEM);
    let (from, paper) = (hand.end_of("W2", false), on_screen(&hand, 452.0, 203.0));
    carry(&mut hand, from, paper);
    assert_eq!(run(&hand, "W2").1.to, End::Loose(BoardPoint { x: 450, y: 200 }));
    let (loose, back) = (on_screen(&hand, 450.0, 200.0), hand.part("E1"));
    carry(&mut hand, loose, back);
    // The far end is on F1.out, a feed; of a ground point its stud is the only terminal, whatever suits.
    let to = run(&hand, "W2").1.to;
    assert!(
        to.terminal().is_none_or(|at| *at == hand.named("E1", "stud")),
        "{to:?}"
    );
    let stud = hand.terminal("A1", "+");
    let loose = match to {
        End::Loose(at) => on_screen(&hand, f64::from(at.x), f64::from(at.y)),
        End::On(_) => hand.end_of("W2", false),
    };
    carry(&mut hand, loose, stud);
    assert_eq!(run(&hand, "W2").1.to, End::On(hand.named("A1", "+")));
}

#[test]
fn dropped_where_it_was_it_makes_no_step() {
    let mut hand = Hand::new(SYSTEM);
    let (from, to) = (hand.end_of("W2", false), hand.terminal("A1", "+"));
    carry(&mut hand, from, to);
    assert_eq!(hand.editor.history().undo_name(), None);
}

#[test]
fn dropped_on_another_run_it_is_spliced_in() {
    let mut hand = Hand::new(&SYSTEM.replace(
        "run W2",
        "load L1 @300,300\nrun W3 F1.out L1.+ 2.5mm2 1m RD\nrun W2",
    ));
    let before = hand.job();
    // Two runs leave that stud together: the picked one is taken.
    hand.click(hand.run("W3"));
    let (from, to) = (hand.end_of("W3", true), hand.run("W1"));
    carry(&mut hand, from, to);
    let (splice, _) = hand.editor.sheet().part_by_tag("J1").expect("a splice is there");
    assert_eq!(run(&hand, "W3").1.from.terminal().map(|at| at.part), Some(splice));
    hand.editor.perform(Action::Undo);
    assert_eq!(hand.job(), before);
}

#[test]
fn keys_put_an_end_elsewhere_or_leave_it_loose() {
    let mut hand = Hand::new(SYSTEM);
    let start = hand.named("F1", "out");
    hand.editor.go_to(&Thing::Terminal(start));
    hand.key(Key::Char('e'));
    assert_eq!(hand.address(), "end/stepping");
    hand.key(Key::Left);
    hand.key(Key::Enter);
    let landed = run(&hand, "W2").1.from;
    assert!(
        landed.terminal().is_some_and(|at| *at != hand.named("F1", "out")),
        "{landed:?}"
    );
    hand.key(Key::Char('e'));
    hand.key(Key::Delete);
    assert!(matches!(run(&hand, "W2").1.to, End::Loose(_)));
    hand.key(Key::Char('e'));
    hand.key(Key::Char('e'));
    hand.key(Key::Escape);
    assert_eq!(hand.address(), "pick/idle");
    hand.editor.perform(Action::Undo);
    hand.editor.perform(Action::Undo);
    assert_eq!(run(&hand, "W2").1.from, End::On(hand.named("F1", "out")));
}

#[test]
fn an_end_in_hand_by_keys_goes_to_the_terminal_that_is_gone_to() {
    let mut hand = Hand::new(SYSTEM);
    let before = hand.job();
    let start = hand.named("F1", "out");
    hand.editor.go_to(&Thing::Terminal(start));
    hand.key(Key::Char('e'));
    // Both ends of a run cannot lie on one terminal.
    let far = hand.named("A1", "+");
    let said = hand.editor.go_to(&Thing::Terminal(far)).say;
    assert_eq!(
        said.as_deref(),
        Some("The other end of W2 is on A1.+; this one goes elsewhere.")
    );
    assert_eq!(hand.address(), "end/stepping");
    let to = hand.named("B1", "+");
    let said = hand.editor.go_to(&Thing::Terminal(to.clone())).say;
    assert!(
        said.as_deref()
            .is_some_and(|said| said.starts_with("to terminal B1.+")),
        "{said:?}"
    );
    assert_eq!(hand.address(), "end/stepping");
    assert_eq!(hand.job(), before, "nothing is changed before Enter");
    hand.key(Key::Enter);
    assert_eq!(run(&hand, "W2").1.from, End::On(to));
}

#[test]
fn a_finger_takes_an_end_as_well() {
    let mut hand = Hand::new(SYSTEM);
    hand.kind = PointerKind::Touch;
    // Picked by a touch first, which shows where its ends are to be taken.
    hand.click(hand.run("W2"));
    let end = hand.end_of("W2", false);
    let from = off(end, -18.0, 0.0);
    let paper = on_screen(&hand, 500.0, 250.0);
    carry(&mut hand, from, paper);
    assert!(matches!(run(&hand, "W2").1.to, End::Loose(_)));
}

#[test]
fn a_piece_drawn_aside_stays_where_it_was_put_when_parts_move() {
    let mut hand = Hand::new(SYSTEM);
    let at = hand.run("W2");
    carry(&mut hand, at, off(at, 0.0, 80.0));
    assert_eq!(
        hand.editor.history().undo_name(),
        None,
        "along itself it goes nowhere"
    );
    carry(&mut hand, at, off(at, -60.0, 0.0));
    let (id, bent) = run(&hand, "W2");
    assert_eq!(bent.bends.len(), 2);
    let line = f64::from(bent.bends[0].x);
    let lies = |hand: &Hand| {
        let way = &hand.editor.layout().run(id).unwrap().points;
        way.windows(2)
            .any(|pair| pair[0].x == line && pair[1].x == line && pair[0].y != pair[1].y)
    };
    assert!(lies(&hand));
    let part = hand.part("A1");
    carry(&mut hand, part, off(part, 60.0, -90.0));
    assert_eq!(run(&hand, "W2").1.bends, bent.bends, "moving a part leaves them");
    assert!(lies(&hand));
    let part = hand.part("F1");
    carry(&mut hand, part, off(part, 0.0, 110.0));
    assert!(lies(&hand));
}

#[test]
fn a_bend_is_moved_and_taken_out() {
    let mut hand = Hand::new(&SYSTEM.replace("A1.+ 16mm2 4m RD", "A1.+ 16mm2 4m RD bends=420,90/560,90"));
    let bend = on_screen(&hand, 420.0, 90.0);
    let to = on_screen(&hand, 440.0, 150.0);
    carry(&mut hand, bend, to);
    let at = |x, y| BoardPoint { x, y };
    assert_eq!(run(&hand, "W2").1.bends, [at(440, 150), at(560, 150)]);
    assert_eq!(hand.editor.history().undo_name(), Some("Move a bend of W2"));
    hand.editor.perform(Action::Undo);
    hand.click(bend);
    hand.editor.double_click();
    assert_eq!(run(&hand, "W2").1.bends, [at(560, 90)]);
    hand.click(on_screen(&hand, 560.0, 90.0));
    hand.key(Key::Delete);
    assert!(run(&hand, "W2").1.bends.is_empty(), "the run itself stays");
}

#[test]
fn keys_bend_a_run_and_straighten_it() {
    let mut hand = Hand::new(SYSTEM);
    let (id, _) = run(&hand, "W2");
    hand.editor.go_to(&Thing::Run(id));
    hand.mods.shift = true;
    hand.key(Key::Down);
    assert_eq!(run(&hand, "W2").1.bends.len(), 2);
    let y = run(&hand, "W2").1.bends[0].y;
    hand.mods.shift = false;
    hand.key(Key::Char('k'));
    hand.mods.shift = true;
    hand.key(Key::Down);
    assert_eq!(run(&hand, "W2").1.bends[0].y, y + 10);
    hand.mods.shift = false;
    hand.key(Key::Delete);
    assert_eq!(run(&hand, "W2").1.bends.len(), 1);
    hand.editor.perform(Action::Straighten);
    assert!(run(&hand, "W2").1.bends.is_empty());
    assert_eq!(hand.editor.history().undo_name(), Some("Let W2 find its way"));
}

/// Targets of 44 px at any zoom (WCAG 2.2, 2.5.5), and yet a part between its studs can be taken.
#[test]
fn a_finger_hits_at_small_zoom() {
    let mut hand = Hand::new(SYSTEM);
    hand.kind = PointerKind::Touch;
    while hand.editor.camera().zoom > 0.35 {
        hand.editor.perform(Action::ZoomOut);
    }
    let on = |hand: &Hand, at: ScreenPoint| {
        let board = hand.editor.camera().to_board(at);
        hand.editor.thing_at(board, PointerKind::Touch)
    };
    let fuse = hand.part("F1");
    assert!(matches!(on(&hand, fuse), Some(Thing::Part(_))));
    let along = hand.run("W2");
    assert!(matches!(on(&hand, off(along, -20.0, 0.0)), Some(Thing::Run(_))));
    let stud = hand.terminal("E1", "stud");
    assert!(matches!(
        on(&hand, off(stud, 0.0, -20.0)),
        Some(Thing::Terminal(_))
    ));
}
