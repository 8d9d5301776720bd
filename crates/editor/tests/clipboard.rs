//! What goes to the system's clipboard and what comes from it.

mod hand;

use editor::{Action, Editor};
use hand::{Hand, SYSTEM};

fn said(effects: editor::Effects) -> String {
    effects.say.unwrap_or_default()
}

#[test]
fn copied_text_is_pasted_into_another_job() {
    let mut hand = Hand::new(SYSTEM);
    hand.editor.perform(Action::PickAll);
    let (_, text) = hand.editor.copy_out(false);
    let text = text.expect("text");
    let mut other = Editor::new(model::Job::default());
    other.resize(1600.0, 900.0, editor::Margins::default());
    other.paste_in(&text);
    assert_eq!((other.sheet().parts.len(), other.sheet().runs.len()), (4, 2));
    assert!(!other.analysis().study.voltages.is_empty() || other.is_stale());
    // It is one step, and comes again beside itself.
    other.perform(Action::Undo);
    assert!(other.sheet().parts.is_empty());
}

#[test]
fn the_same_clip_again_stands_beside_the_first() {
    let mut hand = Hand::new(SYSTEM);
    hand.click(hand.part("A1"));
    let (_, text) = hand.editor.copy_out(false);
    let text = text.expect("text");
    hand.editor.paste_in(&text);
    hand.editor.paste_in(&text);
    let at = |tag| hand.editor.sheet().part_by_tag(tag).and_then(|(_, part)| part.at);
    let (first, second) = (at("A2").expect("A2"), at("A3").expect("A3"));
    assert_ne!(first, second);
}

#[test]
fn what_is_pasted_without_a_place_can_be_carried() {
    let mut hand = Hand::new(SYSTEM);
    hand.editor
        .paste_in("fuse F9 30A\nload L9 60W\nrun W90 F9.out L9.+ 2.5mm2 1m BU");
    hand.editor.fit();
    let from = hand.part("F9");
    hand.press(from);
    for step in 1..4 {
        hand.drag(hand::off(from, 0.0, 30.0 * f64::from(step)));
    }
    hand.release(hand::off(from, 0.0, 90.0));
    let now = hand.part("F9");
    assert!((now.y - from.y - 90.0).abs() < 15.0, "{from:?} {now:?}");
    // Two steps: pasted, carried.
    hand.editor.perform(Action::Undo);
    assert_eq!(hand.editor.history().undo_name(), Some("Paste 2 parts"));
    hand.editor.perform(Action::Undo);
    assert!(hand.editor.sheet().part_by_tag("F9").is_none());
}

#[test]
fn cut_takes_away_and_gives_the_text() {
    let mut hand = Hand::new(SYSTEM);
    let before = hand.job();
    hand.click(hand.part("A1"));
    let (_, text) = hand.editor.copy_out(true);
    assert!(text.expect("text").contains("amplifier A1"));
    assert!(hand.editor.sheet().part_by_tag("A1").is_none());
    hand.editor.perform(Action::Undo);
    assert_eq!(hand.job(), before);
}

#[test]
fn foreign_text_is_told_and_loses_nothing() {
    let mut hand = Hand::new(SYSTEM);
    hand.click(hand.part("A1"));
    hand.editor.copy_out(false);
    let before = hand.job();
    for text in [
        "Dear Sir or Madam,\nplease find enclosed",
        "{\"format\": 1}",
        "job \"Bare\"\nsheet plan\n",
        "\u{0}\u{ffff}",
    ] {
        let words = said(hand.editor.paste_in(text));
        assert!(words.starts_with("Nothing was pasted"), "{text:?}: {words}");
        assert_eq!(hand.job(), before);
        assert_eq!(hand.editor.history().undo_name(), None);
    }
    // What was copied before is still there.
    hand.editor.perform(Action::Paste);
    assert!(hand.editor.sheet().part_by_tag("A2").is_some());
}

#[test]
fn with_nothing_picked_the_clipboard_is_left_alone() {
    let mut hand = Hand::new(SYSTEM);
    let (effects, text) = hand.editor.copy_out(true);
    assert_eq!(text, None);
    assert!(said(effects).contains("Pick parts"));
}
