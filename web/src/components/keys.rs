//! The list of keys: every action with its name.

use crate::state::{Act, Panel, Store};
use editor::actions::Chord;
use editor::{Action, Key};
use words::{Saying, say};
use yew::prelude::*;

/// The first key of an action as it is printed on the reader's keyboard, or nothing.
pub(crate) fn key(action: Action) -> Saying {
    action
        .chords()
        .first()
        .map_or_else(|| "".into(), |chord| written(*chord))
}

/// A key with what is held besides, as it is printed on the reader's keyboard.
fn written(chord: Chord) -> Saying {
    let pressed: Saying = match chord.key {
        Key::Char(letter) => letter.to_ascii_uppercase().to_string().into(),
        Key::Enter => say!("key-enter"),
        Key::Escape => say!("key-esc"),
        Key::Delete => say!("key-delete"),
        Key::Home => say!("key-home"),
        Key::PageUp => say!("key-page-up"),
        Key::PageDown => say!("key-page-down"),
        _ => chord.written().into(),
    };
    let named = !matches!(chord.key, Key::Char(_));
    match (chord.command, chord.shift) {
        _ if named
            && !matches!(
                chord.key,
                Key::Enter | Key::Escape | Key::Delete | Key::Home | Key::PageUp | Key::PageDown
            ) =>
        {
            pressed
        }
        (true, true) => say!("key-command-shift", key = pressed),
        (true, false) => say!("key-command", key = pressed),
        (false, true) => say!("key-shift", key = pressed),
        (false, false) => pressed,
    }
}

pub(crate) fn keys(store: &Store) -> Html {
    let close = {
        let store = store.clone();
        Callback::from(move |_: MouseEvent| {
            store.dispatch(Act::Toggle(Panel::Keys));
            crate::browser::focus_board();
        })
    };
    let words = store.words();
    let others = [
        ("key-arrows", "key-arrows-do"),
        ("key-shift-arrows", "key-shift-arrows-do"),
        ("key-double-click", "key-double-click-do"),
        ("key-space-drag", "key-space-drag-do"),
        ("key-wheel", "key-wheel-do"),
        ("key-alt", "key-alt-do"),
        ("key-shift-placing", "key-shift-placing-do"),
        ("key-esc", "key-esc-do"),
    ];
    html! {
        <section class="drawer" data-testid="keys-list" aria-label={words.text("keys")}>
            <header class="drawer__head"><b>{ words.text("keys") }</b><button type="button" class="slip__close" onclick={close}>{ "Esc" }</button></header>
            <dl class="keys">
                { for others.map(|(key, name)| html! { <><dt><kbd>{ words.text(key) }</kbd></dt><dd>{ words.text(name) }</dd></> }) }
                { for Action::ALL.iter().filter(|action| !action.chords().is_empty() && store.desk.see(|editor| editor.offers(**action))).map(|action| html! {
                    <><dt>{ for action.chords().iter().map(|chord| html! { <kbd>{ words.say(&written(*chord)) }</kbd> }) }</dt><dd>{ words.say(&action.said()) }</dd></>
                }) }
            </dl>
        </section>
    }
}
