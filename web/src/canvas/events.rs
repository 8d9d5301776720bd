//! From browser events to the editor's plain inputs. Nothing else reads a browser event's coordinates or keys.

use editor::{Button, Input, Key, Mods, Pointer, PointerKind, ScreenPoint};
use model::letters::lower;
use web_sys::{KeyboardEvent, PointerEvent, WheelEvent};

/// Pixels in a line, for mice that count the wheel in lines.
const LINE_PX: f64 = 18.0;

/// The surface fills the window (`layout.css`), so a point of the window is one of the surface. To ask the document where
/// the surface stands would lay the page out anew at every move of the pointer.
fn at(client_x: i32, client_y: i32) -> ScreenPoint {
    ScreenPoint::new(f64::from(client_x), f64::from(client_y))
}

pub(crate) fn pointer(event: &PointerEvent) -> Pointer {
    Pointer {
        id: event.pointer_id(),
        at: at(event.client_x(), event.client_y()),
        kind: match event.pointer_type().as_str() {
            "touch" => PointerKind::Touch,
            "pen" => PointerKind::Pen,
            _ => PointerKind::Mouse,
        },
        mods: Mods {
            shift: event.shift_key(),
            command: event.ctrl_key() || event.meta_key(),
            alt: event.alt_key(),
        },
    }
}

pub(crate) fn button(event: &PointerEvent) -> Button {
    match event.button() {
        1 => Button::Middle,
        2 => Button::Secondary,
        _ => Button::Primary,
    }
}

pub(crate) fn wheel(event: &WheelEvent) -> Input {
    let unit = if event.delta_mode() == WheelEvent::DOM_DELTA_LINE {
        LINE_PX
    } else {
        1.0
    };
    let (dx, dy) = (event.delta_x() * unit, event.delta_y() * unit);
    // A touch pad's pinch arrives as a wheel with Control held and small steps.
    let pinch = event.ctrl_key() && dy.abs() < 50.0;
    let sideways = event.shift_key() && dx == 0.0;
    let mouse_wheel = dx == 0.0 && dy.abs() >= 50.0;
    let zooms = event.ctrl_key() || event.meta_key() || (mouse_wheel && !event.shift_key());
    let (dx, dy) = if sideways { (dy, 0.0) } else { (dx, dy) };
    Input::Wheel {
        at: at(event.client_x(), event.client_y()),
        dx,
        dy: if pinch { dy * 6.0 } else { dy },
        zooms,
    }
}

pub(crate) fn key(event: &KeyboardEvent) -> Option<(Key, Mods)> {
    let name = event.key();
    let key = match name.as_str() {
        "Enter" => Key::Enter,
        "Escape" => Key::Escape,
        "Delete" | "Backspace" => Key::Delete,
        "ArrowLeft" => Key::Left,
        "ArrowRight" => Key::Right,
        "ArrowUp" => Key::Up,
        "ArrowDown" => Key::Down,
        "Home" => Key::Home,
        "End" => Key::End,
        "PageUp" => Key::PageUp,
        "PageDown" => Key::PageDown,
        "F2" => Key::F2,
        " " => Key::Space,
        _ => {
            let mut letters = name.chars();
            match (letters.next(), letters.next()) {
                (Some(letter), None) => Key::Char(lower(letter)),
                _ => return None,
            }
        }
    };
    let mods = Mods {
        shift: event.shift_key(),
        command: event.ctrl_key() || event.meta_key(),
        alt: event.alt_key(),
    };
    Some((key, mods))
}
