//! Gestures replayed: a scripted hand presses, moves and lets go, and the tool's address and the job are looked at.
//! Every state is left in its three ways: completed, cancelled, interrupted.

mod hand;

use editor::{Action, Button, Input, Key, Open, PointerKind, ScreenPoint, Thing};
use hand::{Hand, SYSTEM, off};

#[test]
fn a_part_is_carried_and_put_down_in_one_step() {
    let mut hand = Hand::new(SYSTEM);
    let before = hand.job();
    let from = hand.part("A1");
    hand.press(from);
    assert_eq!(hand.address(), "pick/pressing");
    hand.drag(off(from, 2.0, 1.0));
    assert_eq!(hand.address(), "pick/pressing", "within the slop");
    for step in 1..=10 {
        hand.drag(off(from, 0.0, 12.0 * f64::from(step)));
        assert_eq!(hand.address(), "pick/carrying");
    }
    let effects = hand.release(off(from, 0.0, 120.0));
    assert!(effects.edited);
    assert_eq!(hand.address(), "pick/idle");
    assert_eq!(hand.editor.history().undo_name(), Some("Move A1"));
    let (id, part) = hand.editor.sheet().part_by_tag("A1").unwrap();
    let at = part.at.unwrap();
    assert_eq!(at.x, 700);
    assert!(at.y > 60 && at.y % 10 == 0, "{at:?}");
    // The drawing shows it where the job says it is.
    let middle = hand.editor.layout().part(id).unwrap().outline.center();
    assert_eq!((middle.x, middle.y), (f64::from(at.x), f64::from(at.y)));
    hand.editor.perform(Action::Undo);
    assert_eq!(hand.job(), before);
    hand.editor.perform(Action::Redo);
    assert_eq!(hand.editor.sheet().part_by_tag("A1").unwrap().1.at, Some(at));
}

#[test]
fn where_a_part_ends_does_not_depend_on_the_way_there() {
    let way = |steps: &[(f64, f64)]| {
        let mut hand = Hand::new(SYSTEM);
        let from = hand.part("E1");
        hand.press(from);
        for (dx, dy) in steps {
            hand.drag(off(from, *dx, *dy));
        }
        let (dx, dy) = steps[steps.len() - 1];
        hand.release(off(from, dx, dy));
        hand.text()
    };
    let straight = way(&[(50.0, 43.0)]);
    let roundabout = way(&[
        (13.0, -200.0),
        (400.0, 7.0),
        (-77.0, 3.0),
        (49.0, 44.0),
        (50.0, 43.0),
    ]);
    assert_eq!(straight, roundabout);
}

/// Every gesture that is cancelled or interrupted leaves the job exactly as it was, and nothing to undo or do again.
#[test]
fn cancelled_and_interrupted_gestures_leave_no_trace() {
    type Begin = fn(&mut Hand);
    let gestures: [(&str, Begin); 9] = [
        ("pick/carrying", |hand| {
            let from = hand.part("A1");
            hand.press(from);
            hand.drag(off(from, 90.0, 40.0));
        }),
        ("pick/fencing", |hand| {
            let corner = off(hand.part("E1"), -200.0, 150.0);
            hand.press(corner);
            hand.drag(off(corner, 300.0, -300.0));
        }),
        ("pick/bending", |hand| {
            let from = hand.run("W2");
            hand.press(from);
            hand.drag(off(from, 0.0, 60.0));
        }),
        ("pick/cornering", |hand| {
            let at = hand.editor.camera().to_screen(kurbo_point(420.0, 90.0));
            hand.press(at);
            hand.drag(off(at, 30.0, 30.0));
        }),
        ("end/moving", |hand| {
            let at = hand.end_of("W2", false);
            hand.press(at);
            hand.drag(off(at, 30.0, 130.0));
        }),
        ("end/stepping", |hand| {
            hand.click(hand.run("W2"));
            hand.key(Key::Char('e'));
            hand.key(Key::Down);
        }),
        ("pull/drawing", |hand| {
            let from = hand.terminal("A1", "-");
            hand.press(from);
            hand.drag(off(from, 10.0, 80.0));
        }),
        ("place/holding", |hand| {
            hand.editor.take_from_shelf("speaker", false);
            let at = hand.editor.camera().to_screen(kurbo_point(500.0, 400.0));
            hand.drag(at);
        }),
        ("pull/stepping", |hand| {
            let from = hand.named("A1", "-");
            hand.editor.go_to(&Thing::Terminal(from));
            hand.editor.perform(Action::PullRun);
            hand.key(Key::Down);
        }),
    ];
    type Leave = fn(&mut Hand);
    let ways_out: [(&str, Leave); 5] = [
        ("Escape", |hand| {
            hand.key(Key::Escape);
        }),
        ("pointer lost", |hand| {
            hand.editor.handle(Input::Lost);
        }),
        ("another tool", |hand| {
            hand.editor.perform(Action::Meter);
            hand.editor.perform(Action::Pick);
        }),
        ("two fingers", |hand| {
            hand.kind = PointerKind::Touch;
            let (a, b) = (
                hand.pointer(7, ScreenPoint::new(200.0, 200.0)),
                hand.pointer(8, ScreenPoint::new(300.0, 300.0)),
            );
            hand.editor.handle(Input::Down(a, Button::Primary));
            hand.editor.handle(Input::Down(b, Button::Primary));
            hand.editor.handle(Input::Up(a));
            hand.editor.handle(Input::Up(b));
        }),
        ("the middle button", |hand| {
            let pointer = hand.pointer(9, ScreenPoint::new(200.0, 200.0));
            hand.editor.handle(Input::Down(pointer, Button::Middle));
            hand.editor.handle(Input::Up(pointer));
        }),
    ];
    for (address, begin) in gestures {
        for (way, leave) in ways_out {
            let mut hand = Hand::new(&bent_system());
            let (before, layout) = (hand.job(), hand.editor.layout().clone());
            begin(&mut hand);
            assert_eq!(hand.address(), address);
            leave(&mut hand);
            assert_eq!(hand.job(), before, "{address} left by {way}");
            assert_eq!(hand.editor.history().undo_name(), None, "{address} left by {way}");
            assert!(!hand.editor.history().is_changed(), "{address} left by {way}");
            assert_eq!(hand.address(), "pick/idle", "{address} left by {way}");
            // The drawing went back with the job.
            for (id, part) in layout.parts() {
                assert_eq!(
                    hand.editor.layout().part(id).map(|p| p.outline),
                    Some(part.outline),
                    "{address} left by {way}"
                );
            }
            // A pointer that goes up later finds nothing to do.
            hand.release(ScreenPoint::new(400.0, 400.0));
            assert_eq!(hand.job(), before, "{address} left by {way}, then let go");
        }
    }
}

/// The same with bends put into W2 by hand.
fn bent_system() -> String {
    SYSTEM.replace("A1.+ 16mm2 4m RD", "A1.+ 16mm2 4m RD bends=420,90/560,90")
}

fn kurbo_point(x: f64, y: f64) -> kurbo::Point {
    kurbo::Point::new(x, y)
}

#[test]
fn a_run_is_pulled_from_terminal_to_terminal() {
    let mut hand = Hand::new(SYSTEM);
    let (from, to) = (hand.terminal("A1", "-"), hand.terminal("E1", "stud"));
    hand.press(from);
    hand.drag(off(from, 0.0, 30.0));
    hand.drag(to);
    hand.release(to);
    let (_, run) = hand.editor.sheet().run_by_tag("W3").expect("the run is there");
    assert_eq!(run.from.terminal(), Some(&hand.named("A1", "-")));
    assert_eq!(run.to.terminal(), Some(&hand.named("E1", "stud")));
    // What nobody said is marked as assumed.
    assert!(run.wire.size.is_assumed() && run.wire.length.is_assumed());
    assert_eq!(hand.editor.history().undo_name(), Some("Pull W3"));
    hand.editor.perform(Action::Undo);
    assert!(hand.editor.sheet().run_by_tag("W3").is_none());
}

#[test]
fn a_run_dropped_on_a_part_takes_the_terminal_that_suits_it() {
    let mut hand = Hand::new(SYSTEM);
    let (from, to) = (hand.terminal("A1", "-"), hand.part("E1"));
    hand.press(from);
    hand.drag(to);
    hand.release(to);
    let (_, run) = hand.editor.sheet().run_by_tag("W3").expect("the run is there");
    assert_eq!(run.to.terminal(), Some(&hand.named("E1", "stud")));
}

#[test]
fn two_clicks_pull_a_run_as_well() {
    let mut hand = Hand::new(SYSTEM);
    hand.editor.perform(Action::PullRun);
    assert_eq!(hand.address(), "pull/waiting");
    let (from, to) = (hand.terminal("A1", "-"), hand.terminal("E1", "stud"));
    hand.click(from);
    assert_eq!(hand.address(), "pull/drawing");
    hand.drag(to);
    hand.click(to);
    assert!(hand.editor.sheet().run_by_tag("W3").is_some());
    assert_eq!(hand.address(), "pick/idle");
}

#[test]
fn a_run_dropped_on_paper_offers_parts_and_connects_the_chosen_one() {
    let mut hand = Hand::new(SYSTEM);
    let before = hand.job();
    let from = hand.terminal("A1", "-");
    hand.press(from);
    let nowhere = hand.editor.camera().to_screen(kurbo_point(450.0, 320.0));
    hand.drag(nowhere);
    let effects = hand.release(nowhere);
    let Some(Open::Offer { from, at }) = effects.open else {
        panic!("no offer: {effects:?}")
    };
    assert_eq!(hand.job(), before, "an offer alone changes nothing");
    hand.editor.accept_offer(&from, at, "ground");
    let (ground, _) = hand
        .editor
        .sheet()
        .part_by_tag("E2")
        .expect("a ground point is there");
    assert!(hand.editor.sheet().runs_of(ground).count() == 1);
    hand.editor.perform(Action::Undo);
    assert_eq!(hand.job(), before, "part and run are one step");
}

#[test]
fn a_run_dropped_on_a_run_is_spliced_in() {
    let mut hand = Hand::new(
        r#"
job "Bench"
sheet plan
battery B1 @0,0
load L1 @700,0
load L2 @700,300
run W1 B1.+ L1.+ 4mm2 4m RD
"#,
    );
    let before = hand.job();
    let (from, to) = (hand.terminal("L2", "+"), hand.run("W1"));
    hand.press(from);
    hand.drag(to);
    hand.release(to);
    let (splice, _) = hand.editor.sheet().part_by_tag("J1").expect("a splice is there");
    assert_eq!(hand.editor.sheet().runs_of(splice).count(), 3);
    hand.editor.perform(Action::Undo);
    assert_eq!(hand.job(), before);
}

#[test]
fn a_terminal_is_found_by_typing_also_while_a_run_is_pulled() {
    let mut hand = Hand::new(SYSTEM);
    let found = |hand: &Hand, typed: &str| match hand.editor.ask(typed, 3).into_iter().next() {
        Some(editor::ask::Answer {
            leads: editor::ask::Leads::To(thing),
            ..
        }) => thing,
        other => panic!("{typed}: {other:?}"),
    };
    let from = found(&hand, "e1.stud");
    hand.editor.go_to(&from);
    hand.key(Key::Char('w'));
    let to = found(&hand, "A1.-");
    hand.editor.go_to(&to);
    assert_eq!(hand.address(), "pull/stepping");
    hand.key(Key::Enter);
    assert_eq!(hand.address(), "pick/idle");
    let ends: Vec<Thing> = hand
        .editor
        .sheet()
        .runs
        .values()
        .last()
        .expect("a run")
        .ends()
        .iter()
        .filter_map(|end| end.terminal().cloned().map(Thing::Terminal))
        .collect();
    assert_eq!(ends, [from, to]);
}

#[test]
fn a_run_that_waits_for_its_beginning_begins_at_the_terminal_that_is_gone_to() {
    let mut hand = Hand::new(SYSTEM);
    hand.key(Key::Char('w'));
    assert_eq!(hand.address(), "pull/waiting");
    let (from, to) = (hand.named("E1", "stud"), hand.named("A1", "-"));
    let said = hand.editor.go_to(&Thing::Terminal(from.clone())).say;
    assert_eq!(hand.address(), "pull/stepping");
    assert_eq!(
        said.as_deref(),
        Some("Run from E1.stud. Arrows go to terminals that fit.")
    );
    // Where it begins it does not end; it stays in hand.
    let said = hand.editor.go_to(&Thing::Terminal(from.clone())).say;
    assert_eq!(
        said.as_deref(),
        Some("The run begins at E1.stud; it goes to another terminal.")
    );
    assert_eq!(hand.address(), "pull/stepping");
    hand.editor.go_to(&Thing::Terminal(to.clone()));
    hand.key(Key::Enter);
    let sheet = hand.editor.sheet();
    let run = sheet.runs.values().last().expect("a run");
    assert_eq!(
        run.ends().map(|end| end.terminal().cloned()),
        [Some(from), Some(to)]
    );
}

#[test]
fn a_fence_picks_what_lies_inside_and_shift_keeps_what_was_picked() {
    let mut hand = Hand::new(SYSTEM);
    let camera = *hand.editor.camera();
    let corner = |x, y| camera.to_screen(kurbo_point(x, y));
    hand.press(corner(150.0, -150.0));
    hand.drag(corner(450.0, 150.0));
    hand.release(corner(450.0, 150.0));
    let tags = |hand: &Hand| {
        hand.editor
            .selection()
            .parts
            .iter()
            .map(|id| hand.editor.tag(*id))
            .collect::<Vec<_>>()
    };
    assert_eq!(tags(&hand), ["F1"]);
    hand.mods.shift = true;
    hand.press(corner(550.0, 200.0));
    hand.drag(corner(850.0, 420.0));
    hand.release(corner(850.0, 420.0));
    assert_eq!(tags(&hand), ["F1", "E1"]);
}

#[test]
fn a_bent_run_keeps_its_ends_and_its_bends() {
    let mut hand = Hand::new(SYSTEM);
    let (id, _) = hand.editor.sheet().run_by_tag("W2").unwrap();
    let ends = |hand: &Hand| {
        let points = &hand.editor.layout().run(id).unwrap().points;
        (points[0], points[points.len() - 1])
    };
    let before = ends(&hand);
    let from = hand.run("W2");
    hand.press(from);
    hand.drag(off(from, -60.0, 0.0));
    hand.release(off(from, -60.0, 0.0));
    let (_, run) = hand.editor.sheet().run_by_tag("W2").unwrap();
    assert!(!run.bends.is_empty());
    assert_eq!(ends(&hand), before);
    assert_eq!(hand.editor.history().undo_name(), Some("Bend W2"));
    hand.editor.perform(Action::Straighten);
    assert!(hand.editor.sheet().run_by_tag("W2").unwrap().1.bends.is_empty());
}

#[test]
fn two_fingers_shift_and_enlarge_about_their_middle() {
    let mut hand = Hand::new(SYSTEM);
    hand.kind = PointerKind::Touch;
    let before = *hand.editor.camera();
    let (a, b) = (ScreenPoint::new(700.0, 400.0), ScreenPoint::new(900.0, 400.0));
    let held = before.to_board(a.middle(b));
    hand.editor
        .handle(Input::Down(hand.pointer(1, a), Button::Primary));
    hand.editor
        .handle(Input::Down(hand.pointer(2, b), Button::Primary));
    let (a, b) = (ScreenPoint::new(650.0, 500.0), ScreenPoint::new(950.0, 500.0));
    hand.editor.handle(Input::Move(hand.pointer(1, a)));
    hand.editor.handle(Input::Move(hand.pointer(2, b)));
    let after = *hand.editor.camera();
    assert!((after.zoom / before.zoom - 1.5).abs() < 1e-9);
    let now = after.to_screen(held);
    assert!((now.x - 800.0).abs() < 1e-6 && (now.y - 500.0).abs() < 1e-6);
}

#[test]
fn a_long_press_opens_details() {
    let mut hand = Hand::new(SYSTEM);
    hand.kind = PointerKind::Touch;
    let at = hand.part("F1");
    hand.press(at);
    let effects = hand.editor.handle(Input::Held);
    assert!(matches!(effects.open, Some(Open::Details(Thing::Part(_)))));
    hand.release(at);
    assert_eq!(hand.address(), "pick/idle");
}

#[test]
fn the_keyboard_walks_from_terminal_to_terminal_along_runs() {
    let mut hand = Hand::new(SYSTEM);
    let (battery, _) = hand.editor.sheet().part_by_tag("B1").unwrap();
    hand.editor.go_to(&Thing::Part(battery));
    let focus = |hand: &Hand| {
        hand.editor
            .focus()
            .map(|thing| thing.written(hand.editor.sheet()))
            .unwrap_or_default()
    };
    let mut walked = vec![focus(&hand)];
    for _ in 0..9 {
        hand.key(Key::Right);
        walked.push(focus(&hand));
    }
    assert_eq!(
        walked,
        [
            "B1", "B1.+", "W1", "F1.in", "F1", "F1.out", "W2", "A1.+", "A1", "A1.out2-"
        ]
    );
}

#[test]
fn a_system_is_drawn_by_keys_alone() {
    let mut hand = Hand::new("job \"Empty\"\nsheet plan\n");
    for (word, steps) in [("battery", 0), ("load", 8)] {
        hand.editor.take_from_shelf(word, true);
        for _ in 0..steps {
            hand.key(Key::Right);
        }
        hand.key(Key::Enter);
    }
    assert_eq!(hand.editor.sheet().parts.len(), 2);
    for (from, to) in [("+", "+"), ("-", "-")] {
        let start = hand.named("B1", from);
        hand.editor.go_to(&Thing::Terminal(start));
        hand.key(Key::Char('w'));
        assert_eq!(hand.address(), "pull/stepping");
        hand.key(Key::Right);
        hand.key(Key::Enter);
        let end = hand.named("L1", to);
        assert!(
            hand.editor
                .sheet()
                .runs
                .values()
                .any(|run| run.to.terminal() == Some(&end)),
            "{}",
            hand.text()
        );
    }
    assert_eq!(hand.editor.sheet().runs.len(), 2);
}

#[test]
fn delete_copy_paste_and_duplicate_are_steps_with_names() {
    let mut hand = Hand::new(SYSTEM);
    let before = hand.job();
    hand.click(hand.part("F1"));
    hand.key(Key::Delete);
    assert!(hand.editor.sheet().part_by_tag("F1").is_none());
    assert_eq!(hand.editor.sheet().runs.len(), 0, "its runs go with it");
    hand.editor.perform(Action::Undo);
    assert_eq!(hand.job(), before);
    assert_eq!(hand.editor.selection().parts.len(), 1, "what came back is picked");
    hand.editor.perform(Action::PickAll);
    hand.editor.perform(Action::Copy);
    hand.editor.perform(Action::Paste);
    assert_eq!(
        (hand.editor.sheet().parts.len(), hand.editor.sheet().runs.len()),
        (8, 4)
    );
    hand.editor.perform(Action::Undo);
    hand.click(hand.part("A1"));
    hand.editor.perform(Action::Duplicate);
    assert!(hand.editor.sheet().part_by_tag("A2").is_some());
    assert_eq!(hand.editor.history().undo_name(), Some("Duplicate A1"));
}

#[test]
fn undo_and_redo_of_everything_gives_equal_jobs() {
    let mut hand = Hand::new(SYSTEM);
    let mut states = vec![hand.text()];
    let from = hand.part("A1");
    hand.press(from);
    hand.drag(off(from, 40.0, 90.0));
    hand.release(off(from, 40.0, 90.0));
    states.push(hand.text());
    hand.editor.perform(Action::Turn);
    states.push(hand.text());
    hand.editor.perform(Action::Duplicate);
    states.push(hand.text());
    hand.editor.perform(Action::TidySheet);
    states.push(hand.text());
    for state in states.iter().rev().skip(1) {
        hand.editor.perform(Action::Undo);
        assert_eq!(hand.text(), *state);
    }
    for state in states.iter().skip(1) {
        hand.editor.perform(Action::Redo);
        assert_eq!(hand.text(), *state);
    }
}

#[test]
fn the_meter_reads_what_the_engine_knows() {
    let mut hand = Hand::new(
        r#"
job "Meter"
conditions state=engine-off
sheet plan
battery B1 @0,0
load L1 law=resistance resistance=2ohm @600,0
run W1 B1.+ L1.+ 4mm2 1m RD
run W2 L1.- B1.- 4mm2 1m BK
"#,
    );
    hand.editor.analyse();
    hand.editor.perform(Action::Meter);
    assert_eq!(hand.address(), "meter/volts");
    hand.click(hand.terminal("L1", "+"));
    let study = hand.editor.analysis().study.clone();
    let volts = study.voltages[&circuit::voltage_key(&hand.named("L1", "+"))].0;
    assert!(volts > 10.0, "{volts}");
    assert_eq!(
        hand.editor.reading().map(|reading| reading.shown),
        Some(format!("{volts:.2} V"))
    );
    // The black lead stays on battery negative until it is moved; across the load it reads less than across the battery.
    hand.mods.shift = true;
    hand.click(hand.terminal("L1", "-"));
    hand.mods.shift = false;
    let lower = study.voltages[&circuit::voltage_key(&hand.named("L1", "-"))].0;
    assert_eq!(
        hand.editor.reading().map(|reading| reading.shown),
        Some(format!("{:.2} V", volts - lower))
    );
    // Ohm's law: the clamp shows the load's volts over its ohms.
    hand.editor.perform(Action::MeterAmps);
    hand.click(hand.run("W1"));
    let shown = hand
        .editor
        .reading()
        .map(|reading| reading.shown)
        .unwrap_or_default();
    // Ohms, supply isolated: the load and both leads, and a little for their endings.
    hand.editor.perform(Action::MeterOhms);
    hand.editor.black_next(true);
    hand.click(hand.terminal("B1", "-"));
    hand.click(hand.terminal("B1", "+"));
    let ohms = hand
        .editor
        .reading()
        .map(|reading| reading.shown)
        .unwrap_or_default();
    let ohms: f64 = ohms.trim_end_matches(" Ω").parse().unwrap();
    // Copper of 4 mm²: about 4.9 mΩ a metre (IEC 60228 class 5: 4.95 mΩ/m at 20 °C).
    assert!((ohms - 2.01).abs() < 0.02, "{ohms}");
    let amps: f64 = shown.trim_end_matches(" A").parse().unwrap();
    assert!(
        (amps - (volts - lower) / 2.0).abs() < 0.06,
        "{shown} for {volts} V over 2 ohm"
    );
}

#[test]
fn nothing_panics_on_odd_numbers() {
    let mut hand = Hand::new(SYSTEM);
    for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e300, -1e300] {
        let at = ScreenPoint::new(bad, bad);
        hand.press(at);
        hand.drag(ScreenPoint::new(0.0, bad));
        hand.release(at);
        hand.editor.handle(Input::Wheel {
            at,
            dx: bad,
            dy: bad,
            zooms: true,
        });
        hand.editor.handle(Input::Wheel {
            at,
            dx: bad,
            dy: bad,
            zooms: false,
        });
        hand.editor.resize(bad, bad, editor::Margins::default());
        hand.editor.fit();
        let _ = hand.editor.picture();
    }
}

#[test]
fn a_click_on_a_mark_goes_to_its_finding() {
    let mut hand = Hand::new(SYSTEM);
    assert!(!hand.editor.analysis().findings.is_empty());
    for kind in [PointerKind::Mouse, PointerKind::Touch] {
        hand.kind = kind;
        for number in 0..hand.editor.analysis().findings.len() {
            hand.editor.fit();
            let spot = drawing::mark_spot(hand.editor.layout(), &hand.editor.look(), number as u32);
            let at = hand.editor.camera().to_screen(spot.expect("a mark"));
            let effects = hand.click(at);
            assert_eq!(effects.open, Some(Open::Finding(number)), "{kind:?}");
        }
    }
    // With Shift things are picked, marks are not.
    hand.mods.shift = true;
    hand.editor.fit();
    let spot = drawing::mark_spot(hand.editor.layout(), &hand.editor.look(), 0).expect("a mark");
    let effects = hand.click(hand.editor.camera().to_screen(spot));
    assert!(!matches!(effects.open, Some(Open::Finding(_))), "{effects:?}");
}
