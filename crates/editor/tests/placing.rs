//! Parts put down: from the shelf by pointer and keys, into a run, beside others, and as copies.

mod hand;

use editor::{Action, Key, Thing};
use hand::{Hand, SYSTEM, off};

#[test]
fn a_fuse_from_the_shelf_is_put_into_the_run_it_is_dropped_on() {
    let mut hand = Hand::new(SYSTEM);
    let before = hand.job();
    let on = hand.run("W2");
    hand.editor.take_from_shelf("fuse", false);
    hand.drag(on);
    hand.release(on);
    let (fuse, part) = hand.editor.sheet().part_by_tag("F2").expect("the fuse is there");
    assert_eq!(hand.editor.sheet().runs_of(fuse).count(), 2);
    assert!(part.at.is_some());
    assert_eq!(hand.editor.history().undo_name(), Some("Put F2 into W2"));
    hand.editor.perform(Action::Undo);
    assert_eq!(hand.job(), before);
}

#[test]
fn a_fuse_put_into_a_run_suits_its_wire_and_what_it_carries() {
    // Ratings of ISO 8820-3 blades and ISO 8820-5 strips; that a fuse is not above what its wire bears is common practice.
    let text = |size: &str, load: u32| {
        format!(
            "job \"One feed\"\nsheet plan\nbattery B1 @0,0\nload L1 current current={load}A @700,0\n\
             ground E1 @700,300\nground E2 @0,300\nrun W1 B1.+ L1.+ {size} 2m RD\n\
             run W2 L1.- E1.stud {size} 0.3m BK\nrun W3 B1.- E2.stud {size} 0.3m BK\n"
        )
    };
    for (size, load, word) in [
        ("1mm2", 5, "fuse"),
        ("4mm2", 20, "fuse"),
        ("4mm2", 20, "breaker"),
        ("35mm2", 20, "fuse"),
        ("50mm2", 110, "fuse"),
    ] {
        let mut hand = Hand::new(&text(size, load));
        let (run, _) = hand.editor.sheet().run_by_tag("W1").unwrap();
        let allowable = hand.editor.analysis().study.runs[&run].allowable.unwrap();
        let on = hand.run("W1");
        hand.editor.take_from_shelf(word, false);
        hand.drag(on);
        hand.release(on);
        let rating = hand
            .editor
            .sheet()
            .parts
            .values()
            .find_map(|part| match &part.is {
                model::PartKind::Fuse(fuse) => Some(fuse.rating),
                model::PartKind::Breaker(breaker) => Some(breaker.rating),
                _ => None,
            });
        let Some(model::Fact::Assumed(rating)) = rating else {
            panic!("{size}: it is there, and its rating still counts as assumed: {rating:?}")
        };
        assert!(
            rating <= allowable && rating.0 > f64::from(load),
            "{size}: {rating:?} for {load} A on wire that bears {allowable:?}"
        );
        let found: Vec<&str> = hand
            .editor
            .analysis()
            .findings
            .iter()
            .map(|it| it.check)
            .collect();
        for check in ["fuse-outsizes-wire", "fuse-undersized"] {
            assert!(!found.contains(&check), "{size}: {found:?}");
        }
        // The usual one stays where the wire bears it, and it the load at 80 % of its rating.
        let usual_suits = allowable.0 >= 60.0 && f64::from(load) <= 0.8 * 60.0;
        assert_eq!(rating.0 == 60.0, usual_suits, "{size}: {rating:?}");
    }
}

#[test]
fn a_fuse_is_put_into_a_run_by_keys() {
    let mut hand = Hand::new(SYSTEM);
    let before = hand.job();
    // Who stands on the run takes the fuse, and it goes into that run.
    let (run, _) = hand.editor.sheet().run_by_tag("W2").unwrap();
    hand.editor.go_to(&Thing::Run(run));
    let said = hand.editor.take_from_shelf("fuse", true).say;
    assert_eq!(said.as_deref(), Some("Enter puts it into W2"));
    hand.key(Key::Enter);
    assert_eq!(hand.editor.history().undo_name(), Some("Put F2 into W2"));
    hand.editor.perform(Action::Undo);
    assert_eq!(hand.job(), before);
    // Carried off it by the arrows it stands by itself, carried back it goes in.
    hand.editor.go_to(&Thing::Run(run));
    hand.editor.take_from_shelf("fuse", true);
    let off = hand.key(Key::Left);
    assert_eq!(off.say.as_deref(), Some("Beside W2: Enter puts it on the sheet"));
    assert_eq!(hand.key(Key::Left).say, None, "said once");
    hand.key(Key::Right);
    let on = hand.key(Key::Right);
    assert_eq!(on.say.as_deref(), Some("Enter puts it into W2"));
    hand.key(Key::Enter);
    assert_eq!(hand.editor.history().undo_name(), Some("Put F2 into W2"));
}

#[test]
fn a_pointer_that_carries_a_part_off_a_run_leaves_no_word_of_it() {
    let mut hand = Hand::new(SYSTEM);
    let (run, _) = hand.editor.sheet().run_by_tag("W2").unwrap();
    hand.editor.go_to(&Thing::Run(run));
    hand.editor.take_from_shelf("fuse", true);
    let empty = hand.editor.camera().to_screen(kurbo::Point::new(400.0, 300.0));
    assert_eq!(hand.drag(empty).say.as_deref(), Some(""));
    assert_eq!(hand.drag(off(empty, 5.0, 5.0)).say, None);
}

#[test]
fn a_part_keeps_its_turn_when_it_goes_into_a_run() {
    let mut hand = Hand::new(SYSTEM);
    let on = hand.run("W2");
    hand.editor.take_from_shelf("fuse", false);
    hand.key(Key::Char('r'));
    hand.drag(on);
    hand.release(on);
    assert_eq!(hand.editor.history().undo_name(), Some("Put F2 into W2"));
    let turn = |tag: &str| hand.editor.sheet().part_by_tag(tag).unwrap().1.turn;
    assert_eq!(turn("F2"), model::Turn::Quarter);
    assert_eq!(turn("F1"), model::Turn::None);
}

#[test]
fn of_two_parts_put_down_by_keys_in_one_place_the_second_goes_into_no_run() {
    let mut hand = Hand::new(SYSTEM);
    let (run, _) = hand.editor.sheet().run_by_tag("W2").unwrap();
    hand.editor.go_to(&Thing::Run(run));
    hand.editor.take_from_shelf("fuse", true);
    hand.mods.shift = true;
    hand.key(Key::Enter);
    assert_eq!(hand.editor.history().undo_name(), Some("Put F2 into W2"));
    assert_eq!(hand.address(), "place/holding");
    // That run ends at the first one now.
    hand.mods.shift = false;
    hand.key(Key::Enter);
    assert_eq!(hand.editor.history().undo_name(), Some("Add F3"));
}

#[test]
fn what_is_put_down_covers_no_other_part_and_is_one_step() {
    let mut hand = Hand::new(
        "job \"Crowded\"\nsheet plan\nbattery B1 @0,0\namplifier A1 @190,60\nrun W1 B1.+ A1.+ 16mm2 0.3m RD",
    );
    let before = hand.job();
    let covers = |hand: &Hand, tag: &str| {
        let (id, _) = hand.editor.sheet().part_by_tag(tag).unwrap();
        let mut parts = hand.editor.layout().parts();
        let own = hand.editor.layout().part(id).unwrap().outline;
        parts.any(|(other, it)| other != id && it.outline.overlaps(own))
    };
    assert!(!covers(&hand, "B1"));
    // A fuse into a run that has no room for it, and a speaker upon the amplifier.
    for (word, tag, on, name) in [
        ("fuse", "F1", hand.run("W1"), "Put F1 into W1"),
        ("speaker", "LS1", hand.part("A1"), "Add LS1"),
    ] {
        hand.editor.take_from_shelf(word, false);
        hand.drag(on);
        hand.release(on);
        assert_eq!(hand.editor.history().undo_name(), Some(name));
        assert!(!covers(&hand, tag), "{tag}: {}", hand.text());
        hand.editor.perform(Action::Undo);
        assert_eq!(hand.job(), before);
    }
}

#[test]
fn copies_cover_no_part_and_keep_their_places_to_each_other() {
    let mut hand = Hand::new(SYSTEM);
    let before = hand.job();
    let outlines = |hand: &Hand| -> Vec<(model::PartId, kurbo::Rect)> {
        let parts = hand.editor.layout().parts();
        parts.map(|(id, part)| (id, part.outline)).collect()
    };
    let covers = |hand: &Hand| {
        let all = outlines(hand);
        let mut pairs = all
            .iter()
            .flat_map(|(a, own)| all.iter().map(move |(b, other)| (a < b, own, other)));
        pairs.any(|(once, own, other)| once && own.overlaps(*other))
    };
    let count = outlines(&hand).len();
    // All of it, then one part, then all of that again from the clipboard, and once more.
    hand.editor.perform(Action::PickAll);
    hand.editor.perform(Action::Duplicate);
    let after = outlines(&hand);
    assert_eq!(after.len(), 2 * count);
    let moved: Vec<kurbo::Vec2> = (0..count)
        .map(|at| after[count + at].1.origin() - after[at].1.origin())
        .collect();
    assert!(
        moved.iter().all(|by| (*by - moved[0]).hypot() < 1e-9),
        "{moved:?}"
    );
    assert!(!covers(&hand));
    hand.editor.perform(Action::Undo);
    assert_eq!(hand.job(), before);
    let (id, _) = hand.editor.sheet().part_by_tag("F1").unwrap();
    hand.editor.go_to(&Thing::Part(id));
    hand.editor.perform(Action::Duplicate);
    assert!(!covers(&hand), "{}", hand.text());
    hand.editor.perform(Action::PickAll);
    hand.editor.perform(Action::Copy);
    for _ in 0..3 {
        hand.editor.perform(Action::Paste);
        assert!(!covers(&hand), "{}", hand.text());
    }
}

#[test]
fn a_part_dropped_on_another_goes_beside_it_in_the_same_step() {
    let mut hand = Hand::new(SYSTEM);
    let before = hand.job();
    let outline = |hand: &Hand, tag: &str| {
        let (id, _) = hand.editor.sheet().part_by_tag(tag).unwrap();
        hand.editor.layout().part(id).unwrap().outline
    };
    let (from, onto) = (hand.part("F1"), hand.part("A1"));
    hand.press(from);
    hand.drag(onto);
    assert!(
        outline(&hand, "F1").overlaps(outline(&hand, "A1")),
        "it follows the pointer"
    );
    hand.release(onto);
    assert!(
        !outline(&hand, "F1").overlaps(outline(&hand, "A1")),
        "{}",
        hand.text()
    );
    hand.editor.perform(Action::Undo);
    assert_eq!(hand.job(), before, "one step");
}

#[test]
fn what_keys_put_down_is_in_view_and_covers_no_other_part() {
    let mut hand = Hand::new("job \"Empty\"\nsheet plan\n");
    let margins = editor::Margins {
        left: 40.0,
        top: 58.0,
        right: 352.0,
        bottom: 66.0,
    };
    hand.editor.resize(1440.0, 900.0, margins);
    for (word, steps) in [
        ("battery", 0),
        ("fuse", 0),
        ("block", 4),
        ("amplifier", 6),
        ("head", 0),
        ("ground", 0),
        ("speaker", 3),
    ] {
        hand.editor.take_from_shelf(word, true);
        for _ in 0..steps {
            hand.key(Key::Right);
        }
        hand.key(Key::Enter);
        let thing = hand.editor.focus().cloned().expect("it has the keys");
        let area = hand.editor.area_of(&thing).expect("it is drawn");
        let camera = hand.editor.camera();
        let free = camera.free_area();
        for corner in [area.origin(), kurbo::Point::new(area.x1, area.y1)] {
            let at = camera.to_screen(corner);
            assert!(
                free.contains(kurbo::Point::new(at.x, at.y)),
                "{word} at {at:?} of {free:?}"
            );
        }
    }
    let boxes: Vec<_> = hand.editor.layout().parts().map(|(_, it)| it.outline).collect();
    for (place, one) in boxes.iter().enumerate() {
        let others = boxes.get(place + 1..).unwrap_or_default();
        assert!(!others.iter().any(|other| other.overlaps(*one)), "{boxes:?}");
    }
}

#[test]
fn a_part_is_turned_in_hand_and_placed() {
    let mut hand = Hand::new(SYSTEM);
    hand.editor.take_from_shelf("speaker", false);
    let at = hand.editor.camera().to_screen(kurbo::Point::new(400.0, 300.0));
    hand.drag(at);
    hand.key(Key::Char('r'));
    hand.release(at);
    let (_, part) = hand
        .editor
        .sheet()
        .part_by_tag("LS1")
        .expect("the speaker is there");
    assert_eq!(part.turn, model::Turn::Quarter);
    assert_eq!(part.at, Some(model::BoardPoint { x: 400, y: 300 }));
}
