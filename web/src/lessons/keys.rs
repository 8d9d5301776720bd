//! The presenter's keys: what each does, and the list of them.

use super::scene::{Do, Scene};
use crate::browser;
use crate::canvas::events;
use drawing::Overlay;
use editor::Key;
use web_sys::KeyboardEvent;
use words::{Words, say};
use yew::prelude::*;

/// The overlays with their keys.
pub(super) const OVERLAYS: [(char, Overlay); 6] = [
    ('1', Overlay::Current),
    ('2', Overlay::Voltage),
    ('3', Overlay::Heat),
    ('4', Overlay::Protection),
    ('5', Overlay::Signal),
    ('6', Overlay::Speakers),
];

/// What a key press asks for; nothing where it belongs to what is in focus, or to the browser.
pub(super) fn meant(event: &KeyboardEvent, pointing: bool) -> Option<Do> {
    if event.default_prevented() {
        return None;
    }
    let (key, mods) = events::key(event)?;
    if mods.command || mods.alt {
        return None;
    }
    let focus = browser::in_focus();
    let on_button = focus
        .as_ref()
        .is_some_and(|element| element.tag_name() == "BUTTON");
    if focus.as_ref().is_some_and(browser::takes_typing)
        || (on_button && matches!(key, Key::Enter | Key::Space))
    {
        return None;
    }
    Some(match key {
        Key::Left | Key::Right | Key::Up | Key::Down if pointing => Do::Walk(key),
        Key::Space if mods.shift => Do::Back,
        Key::PageDown | Key::Right | Key::Space => Do::Next,
        Key::PageUp | Key::Left => Do::Back,
        Key::Home => Do::First,
        Key::End => Do::Last,
        Key::Enter => Do::Answer,
        Key::Char('a') => Do::Answer,
        Key::Char('b') if mods.shift => Do::ThrowOther,
        // A presenter's clicker sends one of these for a dark screen.
        Key::Char('b' | '.') => Do::Throw,
        Key::Char('f') => Do::Marks,
        Key::Char('z') => Do::Close,
        Key::Char('p') => Do::Point,
        Key::Char('?') => Do::Keys,
        Key::Char('0') => Do::Lay(Overlay::None),
        Key::Char(letter) => Do::Lay(OVERLAYS.iter().find(|(key, _)| *key == letter)?.1),
        _ => return None,
    })
}

/// The list of keys.
pub(super) fn list(scene: &Scene, words: &Words) -> Html {
    let mut rows = vec![
        (
            format!("→ ␣ {}", words.text("key-page-down")),
            words.text("lesson-key-next"),
        ),
        (
            format!("← {}", words.text("key-page-up")),
            words.text("lesson-key-back"),
        ),
        (
            format!("{} {}", words.text("key-home"), words.text("lesson-key-end")),
            words.text("lesson-key-ends"),
        ),
        (
            format!("A {}", words.text("key-enter")),
            words.text("lesson-key-answer"),
        ),
        ("B .".to_owned(), words.text("lesson-key-break")),
    ];
    if scene.lesson.breaks.len() > 1 {
        let other = words.say(&say!("key-shift", key = "B"));
        rows.push((other, words.text("lesson-key-other-break")));
    }
    rows.extend([
        ("1 – 6, 0".to_owned(), words.text("lesson-key-overlay")),
        ("F".to_owned(), words.text("lesson-key-findings")),
        ("Z".to_owned(), words.text("lesson-key-close")),
        ("P".to_owned(), words.text("lesson-key-pointer")),
        ("← ↑ → ↓".to_owned(), words.text("lesson-key-walk")),
        ("?".to_owned(), words.text("lesson-key-keys")),
        (words.text("key-esc"), words.text("lesson-key-leave")),
    ]);
    html! {
        <section class="lesson__keys" aria-label={words.text("lesson-keys")} data-testid="lesson-keys">
            <h2>{ words.text("lesson-keys") }</h2>
            <dl class="keys">{ for rows.into_iter().map(|(key, does)| html! { <><dt><kbd>{ key }</kbd></dt><dd>{ does }</dd></> }) }</dl>
        </section>
    }
}
