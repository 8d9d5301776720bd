//! A job that is only looked at: whatever is pressed, dragged, typed or pasted, it stays as it is.

mod hand;

use editor::ask::Leads;
use editor::{
    Action, Button, Editor, Input, Key, Margins, Mods, Open, Pointer, PointerKind, ScreenPoint, Thing,
};
use hand::{Hand, SYSTEM};
use testkit::random::Dice;

/// Said when somebody tries to change what is only looked at.
const LOOK_ONLY: &str = "This drawing is for looking at. Make a copy of your own to change it.";

/// A hand on a job that is only looked at.
fn looking(text: &str) -> Hand {
    let mut editor = Editor::looking(testkit::text::job(text));
    editor.resize(1600.0, 900.0, Margins::default());
    editor.fit();
    Hand {
        editor,
        kind: PointerKind::Mouse,
        mods: Mods::default(),
    }
}

const KEYS: &[Key] = &[
    Key::Enter,
    Key::Escape,
    Key::Delete,
    Key::Left,
    Key::Right,
    Key::Up,
    Key::Down,
    Key::Home,
    Key::End,
    Key::PageUp,
    Key::PageDown,
    Key::F2,
    Key::Space,
];

/// One random thing that somebody does.
fn anything(dice: &mut Dice, editor: &mut Editor) {
    let at = ScreenPoint::new(dice.between(0.0, 1600.0), dice.between(0.0, 900.0));
    let kind = dice.one(&[PointerKind::Mouse, PointerKind::Touch, PointerKind::Pen]);
    let mods = Mods {
        shift: dice.chance(0.3),
        command: dice.chance(0.3),
        alt: dice.chance(0.1),
    };
    let id = dice.below(2) as i32;
    // Mostly on something: bare paper teaches little.
    let at = match editor.sheet().parts.keys().nth(dice.below(6)).copied() {
        Some(part) if dice.chance(0.7) => editor.area_of(&Thing::Part(part)).map_or(at, |area| {
            let x = dice.between(area.x0 - 12.0, area.x1 + 12.0);
            let y = dice.between(area.y0 - 12.0, area.y1 + 12.0);
            editor.camera().to_screen(kurbo::Point::new(x, y))
        }),
        _ => at,
    };
    let pointer = Pointer { id, at, kind, mods };
    match dice.below(12) {
        0 | 1 => {
            editor.handle(Input::Down(
                pointer,
                dice.one(&[Button::Primary, Button::Middle, Button::Secondary]),
            ));
        }
        2..=4 => {
            editor.handle(Input::Move(pointer));
        }
        5 => {
            editor.handle(Input::Up(pointer));
        }
        6 => {
            editor.handle(dice.one(&[Input::Held, Input::Left, Input::Lost, Input::KeyUp(Key::Space)]));
        }
        7 => {
            let key = if dice.chance(0.5) {
                dice.one(KEYS)
            } else {
                Key::Char(char::from(b' ' + dice.below(90) as u8).to_ascii_lowercase())
            };
            editor.handle(Input::Key(key, mods));
        }
        8 => {
            editor.perform(dice.one(Action::ALL));
        }
        9 => {
            editor.mend(dice.below(3), 0);
            editor.double_click();
        }
        10 => {
            editor.take_from_shelf("fuse", dice.chance(0.5));
            editor.paste_in("fuse F9 30A\n");
            editor.copy_out(true);
        }
        _ => {
            let part = editor.sheet().parts.keys().next().copied();
            if let Some(part) = part {
                let edit = model::edits::move_parts(
                    editor.job(),
                    editor.on(),
                    &[part].into_iter().collect(),
                    10,
                    10,
                );
                let _ = editor.make(Ok(edit));
            }
        }
    }
}

#[test]
fn nothing_that_one_does_changes_it() {
    for seed in 0..40 {
        let mut hand = looking(SYSTEM);
        let before = hand.job();
        let mut dice = Dice::new(seed);
        for step in 0..400 {
            anything(&mut dice, &mut hand.editor);
            assert_eq!(hand.editor.job(), &before, "seed {seed}, step {step}");
        }
        assert!(hand.editor.take_journal().is_empty());
    }
}

/// The same hand on a job that may be changed does change it: the test above can fail.
#[test]
fn the_same_hand_changes_a_job_that_may_be_changed() {
    let mut hand = Hand::new(SYSTEM);
    let before = hand.job();
    let mut dice = Dice::new(1);
    for _ in 0..400 {
        anything(&mut dice, &mut hand.editor);
    }
    assert_ne!(hand.editor.job(), &before);
}

#[test]
fn what_would_change_it_says_why_not() {
    let mut hand = looking(SYSTEM);
    for action in Action::ALL.iter().filter(|action| action.changes()) {
        assert_eq!(
            hand.editor.perform(*action).say.as_deref(),
            Some(LOOK_ONLY),
            "{}",
            action.id()
        );
    }
    assert_eq!(
        hand.editor.paste_in("fuse F9 30A").say.as_deref(),
        Some(LOOK_ONLY)
    );
}

#[test]
fn a_drag_that_begins_on_a_part_shifts_the_paper() {
    let mut hand = looking(SYSTEM);
    let before = *hand.editor.camera();
    let from = hand.part("A1");
    hand.press(from);
    hand.drag(hand::off(from, 40.0, 30.0));
    hand.drag(hand::off(from, 80.0, 60.0));
    hand.release(hand::off(from, 80.0, 60.0));
    let now = hand.part("A1");
    assert!(
        (now.x - from.x - 80.0).abs() < 1e-6 && (now.y - from.y - 60.0).abs() < 1e-6,
        "{from:?} {now:?}"
    );
    assert_eq!(hand.editor.camera().zoom, before.zoom);
}

#[test]
fn a_tap_tells_about_a_part() {
    let mut hand = looking(SYSTEM);
    let at = hand.part("A1");
    let effects = hand.click(at);
    let (id, _) = hand.editor.sheet().part_by_tag("A1").unwrap();
    assert_eq!(effects.open, Some(Open::Details(Thing::Part(id))));
}

#[test]
fn ask_offers_nothing_that_would_change_it() {
    let hand = looking(SYSTEM);
    for typed in ["", "new", "delete", "fuse", "undo", "move"] {
        for answer in hand.editor.ask(typed, 200) {
            match answer.leads {
                Leads::Does(action) => assert!(!action.changes(), "{typed}: {}", action.id()),
                Leads::Takes(word) => panic!("{typed}: {word}"),
                Leads::To(_) | Leads::Finding(_) => {}
            }
        }
    }
}

/// In an exercise neither findings nor numbers tell what is wrong; the meter still reads what it would read.
#[test]
fn an_exercise_does_not_tell() {
    let job = testkit::text::job(
        "battery B1 agm 70Ah\nload L1 power 60W\nrun W1 B1.+ L1.+ 1.5mm2 3m\nrun W2 L1.- B1.- 1.5mm2 3m\n",
    );
    let open = Editor::looking(job.clone());
    let mut shut = Editor::exercise(job);
    assert!(!open.analysis().findings.is_empty() && shut.analysis().findings.is_empty());
    assert!(shut.conceals() && shut.looks_only());
    let run = *shut.sheet().runs.keys().next().expect("a run");
    let part = *shut.sheet().parts.keys().next().expect("a part");
    assert!(!open.run_numbers(run).is_empty() && shut.run_numbers(run).is_empty());
    assert!(!open.part_numbers(part).is_empty() && shut.part_numbers(part).is_empty());
    assert!(shut.findings_of(&Thing::Run(run)).is_empty() && !open.findings_of(&Thing::Run(run)).is_empty());
    assert_eq!(shut.counts(), [0; 3]);
    // The same sheet is drawn, without what the analysis would write on it.
    let texts = |editor: &Editor| {
        let items = editor.picture().items;
        items
            .iter()
            .filter(|item| matches!(item.shape, drawing::Shape::Text { .. }))
            .count()
    };
    assert!(texts(&shut) < texts(&open), "{} {}", texts(&shut), texts(&open));
    for action in Action::ALL.iter().filter(|action| action.tells()) {
        let said = shut.perform(*action).say.unwrap_or_default();
        assert!(said.contains("exercise"), "{}: {said}", action.id());
        assert_eq!(shut.overlay(), drawing::Overlay::None);
    }
    // Nor does a stray key lead away from the drawing, to a leaf on which there is nothing.
    let on = shut.on();
    for action in Action::ALL {
        shut.perform(*action);
        assert!(!shut.is_on_body() && shut.on() == on, "{}", action.id());
    }
    // What is measured is there to be measured.
    assert_eq!(shut.analysis().study.voltages, open.analysis().study.voltages);
    assert!(shut.offers(Action::Meter) && shut.offers(Action::WhatFeeds) && shut.offers(Action::Details));
}
